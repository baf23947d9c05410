/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The demonstration sheet, damaged in made-up ways. What comes of each is a sheet whose every cell
 * is judged with finite figures, or faults that name the file; never a crash. */
#include "core/bench/sheet.h"

#include <string.h>

#include "properties.h"
#include "support.h"

#define TIMES 25

typedef void (*MutateFunc) (GRand *rand, GString *text);

static gsize
somewhere (GRand *rand, const GString *text)
{
  return text->len > 0 ? g_rand_int (rand) % text->len : 0;
}

/* The line in which @at stands, with its newline. */
static void
line_at (const GString *text, gsize at, gsize *start, gsize *length)
{
  gsize end = at;
  while (at > 0 && text->str[at - 1] != '\n')
    at--;
  while (end < text->len && text->str[end] != '\n')
    end++;
  *start = at;
  *length = MIN (end + 1, text->len) - at;
}

static char *
take_line (GRand *rand, GString *text)
{
  gsize start, length;
  line_at (text, somewhere (rand, text), &start, &length);
  char *line = g_strndup (text->str + start, length);
  g_string_erase (text, (gssize) start, (gssize) length);
  return line;
}

static void
insert_line (GRand *rand, GString *text, const char *line)
{
  gsize start, length;
  line_at (text, somewhere (rand, text), &start, &length);
  g_string_insert (text, (gssize) start, line);
}

static void
delete_line (GRand *rand, GString *text)
{
  g_free (take_line (rand, text));
}

static void
delete_many_lines (GRand *rand, GString *text)
{
  for (guint i = 0; i < 20; i++)
    delete_line (rand, text);
}

static void
duplicate_line (GRand *rand, GString *text)
{
  gsize start, length;
  line_at (text, somewhere (rand, text), &start, &length);
  g_autofree char *line = g_strndup (text->str + start, length);
  insert_line (rand, text, line);
}

static void
move_line (GRand *rand, GString *text)
{
  g_autofree char *line = take_line (rand, text);
  insert_line (rand, text, line);
}

static void
swap_lines (GRand *rand, GString *text)
{
  for (guint i = 0; i < 10; i++)
    move_line (rand, text);
}

static void
flip_bit (GRand *rand, GString *text)
{
  text->str[somewhere (rand, text)] ^= (char) (1 << g_rand_int_range (rand, 0, 8));
}

static void
flip_many_bits (GRand *rand, GString *text)
{
  for (guint i = 0; i < 50; i++)
    flip_bit (rand, text);
}

static void
random_byte (GRand *rand, GString *text)
{
  text->str[somewhere (rand, text)] = (char) g_rand_int_range (rand, 0, 256);
}

static void
cut_short (GRand *rand, GString *text)
{
  g_string_truncate (text, somewhere (rand, text));
}

static void
cut_out (GRand *rand, GString *text)
{
  gsize at = somewhere (rand, text);
  gsize length = g_rand_int (rand) % 500;
  g_string_erase (text, (gssize) at, (gssize) MIN (text->len - at, length));
}

/* Puts @value into the place of a random line's value. */
static void
set_value (GRand *rand, GString *text, const char *value)
{
  for (guint attempt = 0; attempt < 100; attempt++)
    {
      gsize start, length;
      line_at (text, somewhere (rand, text), &start, &length);
      const char *line = text->str + start;
      const char *equals = memchr (line, '=', length);
      if (equals == NULL)
        continue;
      gsize at = (gsize) (equals + 1 - text->str);
      gsize end = start + length - (text->str[start + length - 1] == '\n');
      g_string_erase (text, (gssize) at, (gssize) (end - at));
      g_string_insert (text, (gssize) at, value);
      return;
    }
}

static void
huge_number (GRand *rand, GString *text)
{
  static const char *const numbers[] = { "1e308 Hz",
                                         "-1e308 V",
                                         "1e999 us",
                                         "99999999999999999999",
                                         "1e-320 V",
                                         "2147483648",
                                         "-1",
                                         "1e300 %",
                                         "9223372036854775807 MHz",
                                         "1e-30 s",
                                         "0.00000000000000000001 IRE" };
  set_value (rand, text, numbers[g_rand_int (rand) % G_N_ELEMENTS (numbers)]);
}

static void
odd_number (GRand *rand, GString *text)
{
  static const char *const numbers[] = { "nan",   "inf Hz", "-inf V", "0x1p3 V",      "0 Hz",
                                         "-0 V",  "+-1 V",  "1,5 V",  "1 V .. nan V", "0:0",
                                         "4:3:2", "1/0",    "%s%n" };
  set_value (rand, text, numbers[g_rand_int (rand) % G_N_ELEMENTS (numbers)]);
}

static void
other_unit (GRand *rand, GString *text)
{
  static const char *const units[] = { " Hz",    " kHz", " MHz", " V", " mV", " us",
                                       " ms",    " ohm", " IRE", " %", " in", " mm",
                                       " lines", " A",   " px",  "" };
  for (guint attempt = 0; attempt < 100; attempt++)
    {
      gsize start, length;
      line_at (text, somewhere (rand, text), &start, &length);
      g_autofree char *line = g_strndup (text->str + start, length);
      const char *unit = strrchr (line, ' ');
      if (unit == NULL || unit == line || strchr (line, '=') == NULL || !g_ascii_isdigit (unit[-1]))
        continue;
      gsize at = start + (gsize) (unit - line);
      g_string_erase (text, (gssize) at, (gssize) strcspn (unit, "\n"));
      g_string_insert (text, (gssize) at, units[g_rand_int (rand) % G_N_ELEMENTS (units)]);
      return;
    }
}

static void
empty_value (GRand *rand, GString *text)
{
  set_value (rand, text, "");
}

static void
many_empty_values (GRand *rand, GString *text)
{
  for (guint i = 0; i < 8; i++)
    set_value (rand, text, "");
}

/* The value of one line in the place of another's */
static void
other_value (GRand *rand, GString *text)
{
  g_autoptr (GString) copy = g_string_new (text->str);
  g_autofree char *line = take_line (rand, copy);
  const char *equals = strchr (line, '=');
  set_value (rand, text, g_strchomp (line + (equals != NULL ? equals + 1 - line : 0)));
}

static void
control_character (GRand *rand, GString *text)
{
  char character = (char) g_rand_int_range (rand, 1, 32);
  g_string_insert_c (text, (gssize) somewhere (rand, text), character);
}

static void
invalid_utf8 (GRand *rand, GString *text)
{
  static const char *const odd[] = { "\xff",     "\xc0\xaf", "\xed\xa0\x80",
                                     "\xe2\x84", "\x80",     "\xf8\x88" };
  g_string_insert (text, (gssize) somewhere (rand, text),
                   odd[g_rand_int (rand) % G_N_ELEMENTS (odd)]);
}

static void
odd_utf8 (GRand *rand, GString *text)
{
  static const char *const odd[] = { "\u00a0", "\u202f",     "\u2212", "\ufeff",
                                     "\u00e9", "\U0001f4fa", "\u200b", "\u202e" };
  g_string_insert (text, (gssize) somewhere (rand, text),
                   odd[g_rand_int (rand) % G_N_ELEMENTS (odd)]);
}

static void
nul (GRand *rand, GString *text)
{
  g_string_insert_c (text, (gssize) somewhere (rand, text), '\0');
}

static void
carriage_returns (GRand *rand, GString *text)
{
  g_string_replace (text, "\n", "\r\n", g_rand_int (rand) % 3 == 0 ? 0 : 5);
  delete_line (rand, text);
}

static void
brackets (GRand *rand, GString *text)
{
  static const char *const odd[] = { "[",
                                     "]",
                                     "[]\n",
                                     "[monitor]\n",
                                     "[input 1",
                                     "=\n",
                                     "\\",
                                     ";",
                                     "[raster x]\n",
                                     "#",
                                     "[source 1]\n[source 1]\n" };
  g_string_insert (text, (gssize) somewhere (rand, text),
                   odd[g_rand_int (rand) % G_N_ELEMENTS (odd)]);
}

static void
long_line (GRand *rand, GString *text)
{
  g_autofree char *filling = g_strnfill (100000, (char) ('a' + g_rand_int (rand) % 26));
  set_value (rand, text, filling);
}

static void
anything (GRand *rand, GString *text)
{
  static const MutateFunc all[] = { delete_line, move_line,   flip_bit,   random_byte,
                                    cut_out,     huge_number, other_unit, empty_value,
                                    other_value, brackets,    odd_utf8,   odd_number };
  for (guint i = 0; i < 5; i++)
    all[g_rand_int (rand) % G_N_ELEMENTS (all)](rand, text);
}

static const struct
{
  const char *name;
  MutateFunc mutate;
} mutations[] = {
  { "delete-line", delete_line },
  { "delete-many-lines", delete_many_lines },
  { "duplicate-line", duplicate_line },
  { "move-line", move_line },
  { "swap-lines", swap_lines },
  { "flip-bit", flip_bit },
  { "flip-many-bits", flip_many_bits },
  { "random-byte", random_byte },
  { "cut-short", cut_short },
  { "cut-out", cut_out },
  { "huge-number", huge_number },
  { "odd-number", odd_number },
  { "other-unit", other_unit },
  { "empty-value", empty_value },
  { "many-empty-values", many_empty_values },
  { "other-value", other_value },
  { "control-character", control_character },
  { "invalid-utf8", invalid_utf8 },
  { "odd-utf8", odd_utf8 },
  { "nul", nul },
  { "carriage-returns", carriage_returns },
  { "brackets", brackets },
  { "long-line", long_line },
  { "anything", anything },
};

#define N_MUTATIONS G_N_ELEMENTS (mutations)

static char *demo;

/* What came of them all, for the last test */
static guint n_sheets, n_refused;

static void
assert_faults_named (GPtrArray *faults)
{
  g_assert_cmpuint (faults->len, >, 0);
  for (guint i = 0; i < faults->len; i++)
    {
      const GError *fault = faults->pdata[i];
      g_assert_true (g_str_has_prefix (fault->message, "damaged.bench: "));
      g_assert_true (g_utf8_validate (fault->message, -1, NULL));
    }
}

static void
test_mutation (gconstpointer data)
{
  guint number = GPOINTER_TO_UINT (data);
  g_autoptr (GRand) rand = g_rand_new_with_seed (number);
  g_autoptr (GString) text = g_string_new (demo);
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();

  mutations[number / TIMES].mutate (rand, text);
  /* a copy of the bytes and no more: nothing may be read past them */
  g_autofree char *bytes = g_memdup2 (text->str, MAX (text->len, 1));
  g_autoptr (BwSheet) sheet = bw_sheet_parse (bytes, text->len, "damaged.bench",
                                              bw_test_catalogue (), faults);
  if (sheet == NULL)
    {
      assert_faults_named (faults);
      n_refused++;
      return;
    }
  g_assert_cmpuint (faults->len, ==, 0);
  g_autofree char *fault = bw_property_sheet (sheet, bw_test_catalogue ());
  g_assert_cmpstr (fault, ==, NULL);
  n_sheets++;
}

/* The damage is neither always found nor always harmless, or this file would test little. */
static void
test_both_happened (void)
{
  g_test_message ("%u damaged sheets were read, %u were refused", n_sheets, n_refused);
  if (n_sheets + n_refused < N_MUTATIONS * TIMES)
    {
      g_test_skip ("only some of the mutations were run");
      return;
    }
  g_assert_cmpuint (n_sheets, >, N_MUTATIONS * TIMES / 10);
  g_assert_cmpuint (n_refused, >, N_MUTATIONS * TIMES / 4);
}

int
main (int argc, char **argv)
{
  int result;

  bw_test_init (&argc, &argv);
  g_autofree char *path = bw_test_demo_path ();
  demo = bw_test_read (path, NULL);
  for (guint i = 0; i < N_MUTATIONS * TIMES; i++)
    {
      g_autofree char *name = g_strdup_printf ("/mutations/%s/%02u", mutations[i / TIMES].name,
                                               i % TIMES);
      g_test_add_data_func (name, GUINT_TO_POINTER (i), test_mutation);
    }
  g_test_add_func ("/mutations/zz/both-happened", test_both_happened);
  result = g_test_run ();
  g_free (demo);
  return result;
}
