/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "modeline-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/base/harmless.h"

/* The mode line of xorg.conf(5), "MONITOR SECTION", entry ModeLine:
 *
 *   ModeLine "name" clock hdisp hsyncstart hsyncend htotal vdisp vsyncstart vsyncend vtotal flags
 *
 * The clock is in megahertz. Vertical numbers are those of a whole frame, so that an interlaced
 * mode has two fields between vdisp and vtotal. */

#define WORDS_MAX 32
#define CLOCK_MAX_DIGITS 5 /* of whole megahertz */
#define CLOCK_MAX_DECIMALS 9
#define CLOCK_MIN_HZ 1e3
#define CLOCK_MAX_HZ 1e10

enum
{
  H_DISPLAY,
  H_SYNC_START,
  H_SYNC_END,
  H_TOTAL,
  V_DISPLAY,
  V_SYNC_START,
  V_SYNC_END,
  V_TOTAL
};

static const char *const number_names[BW_MODELINE_N_NUMBERS] = {
  "hdisp", "hsyncstart", "hsyncend", "htotal", "vdisp", "vsyncstart", "vsyncend", "vtotal"
};

static void
clear_word (gpointer data)
{
  g_free (((BwModelineWord *) data)->text);
}

/**
 * bw_modeline_word:
 *
 * Returns: (transfer none): word @i, from 0; it must be there
 */
const BwModelineWord *
bw_modeline_word (const BwModeline *line, guint i)
{
  return &g_array_index (line->words, BwModelineWord, i);
}

/**
 * bw_modeline_fault:
 * @i: the word at fault, from 0; it may be missing
 *
 * The sentence names the word by its place, counted from one, and by its text.
 *
 * Returns: %FALSE always, with @error set
 */
gboolean
bw_modeline_fault (const BwModeline *line, guint i, BwInterchangeError code, const char *says,
                   GError **error)
{
  if (i >= line->words->len)
    return bw_interchange_fault (error, code, _ ("Mode line, word %1$u is missing: %2$s"), i + 1,
                                 says);
  return bw_interchange_fault (error, code, _ ("Mode line, word %1$u (“%2$s”): %3$s"), i + 1,
                               bw_modeline_word (line, i)->text, says);
}

/* Words */

static const char *
skip_space (const char *p)
{
  while (g_ascii_isspace (*p) || *p == '#')
    {
      if (*p == '#')
        p += strcspn (p, "\n"); /* a comment runs to the end of its line */
      else
        p++;
    }
  return p;
}

/* Takes the word at @p; returns where it ends, or NULL if its quotation mark is never closed. */
static const char *
take_word (GArray *words, const char *p)
{
  BwModelineWord word = { NULL, *p == '"' };
  const char *start = word.quoted ? p + 1 : p;
  gsize length = word.quoted ? strcspn (start, "\"\n") : strcspn (start, " \t\n\v\f\r#\"");

  if (word.quoted && start[length] != '"')
    return NULL;
  word.text = g_strndup (start, length);
  g_array_append_val (words, word);
  return start + length + (word.quoted ? 1 : 0);
}

static gboolean
split_words (BwModeline *line, const char *text, GError **error)
{
  const char *end;
  gsize length = strlen (text);

  if (length > BW_MODELINE_MAX_BYTES)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_TEXT,
                                 g_dngettext (GETTEXT_PACKAGE,
                                              "Mode line: %1$zu byte; at most %2$d are allowed",
                                              "Mode line: %1$zu bytes; at most %2$d are allowed",
                                              length),
                                 length, BW_MODELINE_MAX_BYTES);
  if (!g_utf8_validate (text, (gssize) length, &end))
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_TEXT,
                                 _ ("Mode line, byte %td: not UTF-8 text"), end - text + 1);
  for (const char *p = skip_space (text); *p != '\0'; p = skip_space (p))
    {
      if (line->words->len == WORDS_MAX)
        return bw_modeline_fault (line, WORDS_MAX - 1, BW_INTERCHANGE_ERROR_TEXT,
                                  _ ("more words follow than any mode line has"), error);
      p = take_word (line->words, p);
      if (p == NULL)
        return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_TEXT,
                                     _ ("Mode line, word %u: its quotation mark is not closed"),
                                     line->words->len + 1);
    }
  return TRUE;
}

static gboolean
read_name (BwModeline *line, GError **error)
{
  if (line->words->len > 0 && !bw_modeline_word (line, 0)->quoted
      && g_ascii_strcasecmp (bw_modeline_word (line, 0)->text, "modeline") == 0)
    line->first = 1;
  if (line->words->len <= line->first || !bw_modeline_word (line, line->first)->quoted)
    return bw_modeline_fault (line, line->first, BW_INTERCHANGE_ERROR_TEXT,
                              _ ("the name of the mode is needed here, in quotation marks"), error);
  if (*bw_modeline_word (line, line->first)->text == '\0')
    return bw_modeline_fault (line, line->first, BW_INTERCHANGE_ERROR_TEXT,
                              _ ("the name of the mode is empty"), error);
  for (const char *p = bw_modeline_word (line, line->first)->text; *p != '\0';
       p = g_utf8_next_char (p))
    if (bw_char_is_refused (g_utf8_get_char (p)))
      return bw_interchange_fault (
          error, BW_INTERCHANGE_ERROR_TEXT,
          _ ("Mode line, word %1$u: the name of the mode holds U+%2$04X, a control character or one "
             "that is not seen"),
          line->first + 1, g_utf8_get_char (p));
  return TRUE;
}

/* Numbers */

/* Whole digits, a point and decimals, each part within its length: exact, in hertz. */
static gboolean
exact_clock (const char *text, BwRatio *clock_hz)
{
  gsize whole = strspn (text, "0123456789");
  const char *point = text + whole;
  gsize decimals = *point == '.' ? strspn (point + 1, "0123456789") : 0;
  gint64 value = 0;
  gint64 scale = 1000000; /* hertz to the last decimal, or 1 */
  gint64 beyond = 1;      /* parts of a hertz to the last decimal */

  if (whole < 1 || whole > CLOCK_MAX_DIGITS || decimals > CLOCK_MAX_DECIMALS
      || (*point == '.' && decimals == 0) || point[*point == '.' ? decimals + 1 : 0] != '\0')
    return FALSE;
  for (const char *p = text; *p != '\0'; p++)
    if (*p != '.')
      value = value * 10 + (*p - '0');
  for (gsize i = 0; i < decimals && i < 6; i++)
    scale /= 10;
  for (gsize i = 6; i < decimals; i++)
    beyond *= 10;
  return bw_ratio_make (value * scale, beyond, clock_hz);
}

static gboolean
read_clock (BwModeline *line, GError **error)
{
  guint i = line->first + 1;
  double clock_hz = 0;

  if (i < line->words->len && !bw_modeline_word (line, i)->quoted
      && exact_clock (bw_modeline_word (line, i)->text, &line->clock_hz))
    clock_hz = bw_ratio_to_double (line->clock_hz);
  if (clock_hz >= CLOCK_MIN_HZ && clock_hz <= CLOCK_MAX_HZ)
    return TRUE;
  return bw_modeline_fault (
      line, i, BW_INTERCHANGE_ERROR_NUMBER,
      _ ("the pixel clock in MHz is needed here: 0.001 to 10000, with a decimal "
         "point and at most nine decimals"),
      error);
}

/**
 * bw_modeline_number:
 * @value: (out): from 0 to %BW_MODELINE_NUMBER_MAX
 *
 * Returns: whether @word is a whole number within that range
 */
gboolean
bw_modeline_number (const BwModelineWord *word, int *value)
{
  gsize digits = strspn (word->text, "0123456789");
  if (word->quoted || digits < 1 || digits > 5 || word->text[digits] != '\0')
    return FALSE;
  *value = (int) g_ascii_strtoll (word->text, NULL, 10);
  return *value <= BW_MODELINE_NUMBER_MAX;
}

/* An edge may not come before the one that precedes it; picture and sync have some width. */
static gboolean
check_order (const BwModeline *line, guint n, GError **error)
{
  gboolean strict = n == H_DISPLAY || n == V_DISPLAY || n == H_SYNC_END || n == V_SYNC_END;
  int before = n == H_DISPLAY || n == V_DISPLAY ? 0 : line->at[n - 1];
  g_autofree char *says = NULL;

  if (strict ? line->at[n] > before : line->at[n] >= before)
    return TRUE;
  if (before == 0)
    says = g_strdup_printf (_ ("%s must be at least 1"), number_names[n]);
  else if (strict)
    says = g_strdup_printf (_ ("%1$s must be greater than %2$s, which is %3$d"), number_names[n],
                            number_names[n - 1], before);
  else
    says = g_strdup_printf (_ ("%1$s must not be less than %2$s, which is %3$d"), number_names[n],
                            number_names[n - 1], before);
  return bw_modeline_fault (line, line->first + 2 + n, BW_INTERCHANGE_ERROR_ORDER, says, error);
}

static gboolean
read_numbers (BwModeline *line, GError **error)
{
  for (guint n = 0; n < BW_MODELINE_N_NUMBERS; n++)
    {
      guint i = line->first + 2 + n;
      if (i >= line->words->len || !bw_modeline_number (bw_modeline_word (line, i), &line->at[n]))
        {
          g_autofree char *says = NULL;
          says = g_strdup_printf (_ ("%1$s is needed here: a whole number from 0 to %2$d"),
                                  number_names[n], BW_MODELINE_NUMBER_MAX);
          return bw_modeline_fault (line, i, BW_INTERCHANGE_ERROR_NUMBER, says, error);
        }
      if (!check_order (line, n, error))
        return FALSE;
    }
  return TRUE;
}

/* The raster */

/* An id must serve as part of a group's name in files. */
static char *
id_from_name (const char *name)
{
  GString *id = g_string_new (NULL);
  for (const char *p = name; *p != '\0'; p = g_utf8_next_char (p))
    g_string_append_c (id, g_ascii_isalnum (*p) || strchr ("._+-", *p) != NULL ? *p : '-');
  return g_string_free (id, FALSE);
}

/* Frame lines, counted in halves of one field: the same number. Where an odd total is shared by
 * two fields of whole lines, field 2 has half a line more before its sync and behind it (CTA-861
 * VIC 5: 1080 1084 1094 1125); where the picture itself has the half line, or the total is even
 * (VIC 39), the fields are alike. */
static gboolean
set_interlaced (const BwModeline *line, BwRaster *raster, GError **error)
{
  const int *at = line->at;
  BwFieldTiming field = { at[V_DISPLAY], at[V_SYNC_START] - at[V_DISPLAY],
                          at[V_SYNC_END] - at[V_SYNC_START], at[V_TOTAL] - at[V_SYNC_END] };

  raster->scan = BW_SCAN_INTERLACED;
  raster->field[0] = raster->field[1] = field;
  if (at[V_TOTAL] % 2 == 0 || at[V_DISPLAY] % 2 != 0)
    return TRUE;
  if (field.back_porch < 1)
    return bw_modeline_fault (
        line, line->first + 2 + V_TOTAL, BW_INTERCHANGE_ERROR_ORDER,
        _ ("an odd vtotal of an interlaced mode must be greater than vsyncend"), error);
  raster->field[0].back_porch--;
  raster->field[1].front_porch++;
  return TRUE;
}

static void
set_progressive (const BwModeline *line, BwRaster *raster)
{
  const int *at = line->at;
  int half_lines = line->doubled ? 4 : 2;

  raster->scan = BW_SCAN_PROGRESSIVE;
  raster->field[0] = (BwFieldTiming){ half_lines * at[V_DISPLAY],
                                      half_lines * (at[V_SYNC_START] - at[V_DISPLAY]),
                                      half_lines * (at[V_SYNC_END] - at[V_SYNC_START]),
                                      half_lines * (at[V_TOTAL] - at[V_SYNC_END]) };
  raster->field[1] = raster->field[0];
}

static void
set_polarities (BwModeline *line, BwRaster *raster)
{
  if (line->polarity[0] < 0 || line->polarity[1] < 0)
    bw_modeline_note (line,
                      _ ("The mode line does not state every sync polarity; negative is taken for "
                         "what it leaves out."));
  raster->h_polarity = line->polarity[0] < 0 ? BW_POLARITY_NEGATIVE : (guint) line->polarity[0];
  raster->v_polarity = line->polarity[1] < 0 ? BW_POLARITY_NEGATIVE : (guint) line->polarity[1];
}

static gboolean
check_whole (const BwModeline *line, BwRaster *raster, GError **error)
{
  g_autoptr (GError) trouble = NULL;
  BwRatio total = { line->at[H_TOTAL], 1 };

  if (!bw_ratio_divide (raster->pixel_clock_hz, total, &raster->line_rate_hz))
    raster->line_rate_hz = BW_RATIO_NONE; /* named by bw_raster_check() */
  if (line->doubled && line->at[V_TOTAL] > BW_MODELINE_NUMBER_MAX / 2)
    return bw_modeline_fault (line, line->first + 2 + V_TOTAL, BW_INTERCHANGE_ERROR_NUMBER,
                              _ ("doubled by doublescan it is more than 65535"), error);
  if (bw_raster_check (raster, &trouble))
    return TRUE;
  return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_RASTER,
                               _ ("Mode line, words %1$u to %2$u (clock to vtotal): %3$s"),
                               line->first + 2, line->first + 2 + BW_MODELINE_N_NUMBERS,
                               trouble->message);
}

static BwRaster *
build_raster (BwModeline *line, GError **error)
{
  g_autoptr (BwRaster) raster = bw_raster_new ();
  const int *at = line->at;

  raster->pixel_clock_hz = line->clock_hz;
  raster->h_active = at[H_DISPLAY];
  raster->h_front_porch = at[H_SYNC_START] - at[H_DISPLAY];
  raster->h_sync = at[H_SYNC_END] - at[H_SYNC_START];
  raster->h_back_porch = at[H_TOTAL] - at[H_SYNC_END];
  if (!line->interlaced)
    set_progressive (line, raster);
  else if (!set_interlaced (line, raster, error))
    return NULL;
  if (!check_whole (line, raster, error))
    return NULL;
  set_polarities (line, raster);
  raster->name = g_strdup (bw_modeline_word (line, line->first)->text);
  raster->id = id_from_name (raster->name);
  raster->source = g_strdup (_ ("Mode line"));
  raster->aliases = g_strdup ("");
  raster->note = g_strdup (line->note->str);
  return g_steal_pointer (&raster);
}

/**
 * bw_modeline_parse:
 * @text: one mode line as xorg.conf(5) describes it; the leading word Modeline may be left out,
 *   comments (# to the end of a line) are skipped, and words are taken in any case
 *
 * The clock is kept exactly. The raster's name is the mode's; its id is the name with "-" for all
 * but ASCII letters, digits and "._+-". What the raster has no place for (composite, csync, hskew,
 * doublescan) stands in its note.
 *
 * Returns: (transfer full): the checked raster, or %NULL with @error in %BW_INTERCHANGE_ERROR
 */
BwRaster *
bw_modeline_parse (const char *text, GError **error)
{
  g_return_val_if_fail (text != NULL, NULL);
  BwModeline line = { .polarity = { -1, -1 } };
  BwRaster *raster = NULL;

  line.words = g_array_new (FALSE, FALSE, sizeof (BwModelineWord));
  g_array_set_clear_func (line.words, clear_word);
  line.note = g_string_new (NULL);
  if (split_words (&line, text, error) && read_name (&line, error) && read_clock (&line, error)
      && read_numbers (&line, error) && bw_modeline_read_flags (&line, error))
    raster = build_raster (&line, error);
  g_array_unref (line.words);
  g_string_free (line.note, TRUE);
  return raster;
}
