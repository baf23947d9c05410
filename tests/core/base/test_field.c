/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/field.h"

#include <string.h>

#include "properties.h"
#include "support.h"

/* A struct with one member of each type, and its table. */

typedef struct
{
  char *text;
  double level_v;
  int count;
  int half_lines;
  BwRatio rate_hz;
  BwRatio aspect;
  guint choice;
  guint set;
  gboolean on;
  BwBands bands_hz;
  BwBands one_band_hz;
  double unknown_v;
  double wide_v;
  char *required;
  char *lines;
} Sample;

#define AT(member) .offset = G_STRUCT_OFFSET (Sample, member)

static const BwField sample_fields[] = {
  { .key = "text", .label = "Text", .type = BW_FIELD_TEXT, AT (text) },
  { .key = "level",
    .label = "Level",
    .type = BW_FIELD_QUANTITY,
    AT (level_v),
    .dimension = BW_DIMENSION_VOLTAGE,
    .low = 0.01,
    .high = 5 },
  { .key = "count", .label = "Count", .type = BW_FIELD_COUNT, AT (count), .low = 1, .high = 1000 },
  { .key = "half",
    .label = "Half lines",
    .type = BW_FIELD_HALF_LINES,
    AT (half_lines),
    .low = 0,
    .high = 1250 },
  { .key = "rate",
    .label = "Rate",
    .type = BW_FIELD_RATE,
    AT (rate_hz),
    .dimension = BW_DIMENSION_FREQUENCY,
    .low = 1e3,
    .high = 1e9 },
  { .key = "aspect", .label = "Aspect", .type = BW_FIELD_ASPECT, AT (aspect) },
  { .key = "choice", .label = "Choice", .type = BW_FIELD_CHOICE, AT (choice), .kinds = &bw_scans },
  { .key = "set",
    .label = "Set",
    .type = BW_FIELD_SET,
    AT (set),
    .flags = BW_FIELD_UNKNOWN,
    .kinds = &bw_signals },
  { .key = "on", .label = "On", .type = BW_FIELD_SWITCH, AT (on) },
  { .key = "bands",
    .label = "Bands",
    .type = BW_FIELD_BANDS,
    AT (bands_hz),
    .dimension = BW_DIMENSION_FREQUENCY,
    .low = 1,
    .high = 1e6,
    .unit = "kHz" },
  { .key = "one_band",
    .label = "One band",
    .type = BW_FIELD_BANDS,
    AT (one_band_hz),
    .flags = BW_FIELD_ONE_BAND,
    .dimension = BW_DIMENSION_FREQUENCY,
    .low = 1,
    .high = 1e6 },
  { .key = "unknown",
    .label = "Unknown",
    .type = BW_FIELD_QUANTITY,
    AT (unknown_v),
    .flags = BW_FIELD_UNKNOWN,
    .dimension = BW_DIMENSION_VOLTAGE,
    .low = 0.01,
    .high = 5,
    .help = "Help." },
  { .key = "wide",
    .label = "Wide",
    .type = BW_FIELD_QUANTITY,
    AT (wide_v),
    .dimension = BW_DIMENSION_VOLTAGE,
    .low = 0,
    .high = 10 },
  { .key = "required",
    .label = "Required",
    .type = BW_FIELD_TEXT,
    AT (required),
    .flags = BW_FIELD_REQUIRED },
  { .key = "lines", .label = "Lines", .type = BW_FIELD_TEXT, AT (lines), .flags = BW_FIELD_LINES },
};
static const BwFieldTable sample_table = { G_N_ELEMENTS (sample_fields), sample_fields };

static void
sample_init (Sample *sample)
{
  *sample = (Sample){ .text = g_strdup ("before"),
                      .required = g_strdup ("before"),
                      .lines = g_strdup ("before"),
                      .level_v = 1,
                      .count = 7,
                      .half_lines = 525,
                      .rate_hz = { 15625, 1 },
                      .aspect = { 4, 3 } };
}

/* One value at a time: what is written, what it becomes when written back, or the fault */

typedef struct
{
  const char *name;
  const char *key;
  const char *written;
  char mark;
  const char *back; /* NULL: refused */
  int code;         /* of BW_FIELD_ERROR; −1 for one of BW_QUANTITY_ERROR */
} ParseCase;

#define QUANTITY_FAULT (-1)

static const ParseCase parse_cases[] = {
  { "text", "text", "A set", '.', "A set", 0 },
  { "text-spaces-cut", "text", "  A set  ", '.', "A set", 0 },
  { "text-empty", "text", "", '.', "", 0 },
  { "text-utf8", "text", "75 \u03a9", '.', "75 \u03a9", 0 },
  { "text-newline", "text", "A\nset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-tab", "text", "A\tset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-bell", "text", "A\aset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-delete", "text", "A\x7fset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-escape", "text", "A\x1b[31mset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-c1", "text", "A\xc2\x9b" "31mset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-override", "text", "A\u202eset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-isolate", "text", "A\u2066set", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-separator", "text", "A\u2028set", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-no-character", "text", "A\ufffeset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-not-utf8", "text", "A\xffset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "text-direction-mark", "text", "\u05d0\u200f!", '.', "\u05d0\u200f!", 0 },
  { "text-joiner", "text", "\u0646\u200c\u0647", '.', "\u0646\u200c\u0647", 0 },
  { "lines-one", "lines", "A set", '.', "A set", 0 },
  { "lines-three", "lines", "One\ntwo\n\nthree\n", '.', "One\ntwo\n\nthree", 0 },
  { "lines-dos", "lines", "One\r\ntwo\rthree", '.', "One\ntwo\nthree", 0 },
  { "lines-of-unicode", "lines", "One\u2028two\u2029three\xc2\x85" "four", '.',
    "One\ntwo\nthree\nfour", 0 },
  { "lines-tab", "lines", "R12\t75 \u03a9", '.', "R12\t75 \u03a9", 0 },
  { "lines-empty", "lines", "\n \n", '.', "", 0 },
  { "lines-bell", "lines", "A\aset", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "lines-override", "lines", "One\n\u202etwo", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "quantity", "level", "0.7 V", '.', "700 mV", 0 },
  { "quantity-comma", "level", "0,7 V", ',', "700 mV", 0 },
  { "quantity-least", "level", "10 mV", '.', "10 mV", 0 },
  { "quantity-most", "level", "5 V", '.', "5 V", 0 },
  { "quantity-below", "level", "9.9 mV", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "quantity-above", "level", "5.1 V", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "quantity-negative", "level", "-0.7 V", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "quantity-no-unit", "level", "0.7", '.', "700 mV", 0 },
  { "quantity-no-unit-either", "wide", "7", '.', NULL, QUANTITY_FAULT },
  { "quantity-wrong-unit", "level", "0.7 Hz", '.', NULL, QUANTITY_FAULT },
  { "quantity-other-mark", "level", "0,7 V", '.', "700 mV", 0 },
  { "quantity-empty-where-zero-is-out-of-range", "level", "", '.', NULL, BW_FIELD_ERROR_MISSING },
  { "count", "count", "525", '.', "525", 0 },
  { "count-spaces", "count", " 525 ", '.', "525", 0 },
  { "count-whole-with-mark", "count", "525.0", '.', "525", 0 },
  { "count-fraction", "count", "262.5", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-below", "count", "0", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-above", "count", "1001", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-beyond-int", "count", "99999999999999999999", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-negative", "count", "-5", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-word", "count", "many", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-unit", "count", "525 lines", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-hex", "count", "0x1f4", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-exponent", "count", "1e2", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-infinite", "count", "inf", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-nan", "count", "nan", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-empty-where-zero-is-out-of-range", "count", "", '.', NULL, BW_FIELD_ERROR_MISSING },
  { "half-lines", "half", "262.5", '.', "262.5", 0 },
  { "half-lines-comma", "half", "262,5", ',', "262.5", 0 },
  { "half-lines-point-where-comma", "half", "262.5", ',', "262.5", 0 },
  { "half-lines-named", "half", "262.5\u00a0lines", '.', "262.5", 0 },
  { "half-lines-other-unit", "half", "262.5 px", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "half-lines-whole", "half", "262", '.', "262", 0 },
  { "half-lines-named-spaces", "half", " 262.5 lines ", '.', "262.5", 0 },
  { "half-lines-almost-named", "half", "262.5 lineage", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "half-lines-comma-where-point", "half", "262,5", '.', "262.5", 0 },
  { "half-lines-thousands", "half", "1,000", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "count-thousands", "count", "1,000", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "half-lines-quarter", "half", "262.25", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "half-lines-most", "half", "625", '.', "625", 0 },
  { "half-lines-above", "half", "625.5", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "rate", "rate", "4.5 MHz / 286", '.', "15.75 kHz * 1000 / 1001", 0 },
  { "rate-below", "rate", "999 Hz", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "rate-above", "rate", "1.1 GHz", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "rate-negative", "rate", "-15 kHz", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "rate-not-exact", "rate", "4.5 MHz / 0", '.', NULL, QUANTITY_FAULT },
  { "aspect", "aspect", "16:9", '.', "16:9", 0 },
  { "aspect-spaces", "aspect", " 16 : 9 ", '.', "16:9", 0 },
  { "aspect-lowest-terms", "aspect", "8:6", '.', "4:3", 0 },
  { "aspect-zero", "aspect", "16:0", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-negative", "aspect", "-16:9", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-one-number", "aspect", "1.33", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-three-numbers", "aspect", "16:9:4", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-decimals", "aspect", "2.35:1", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-hex", "aspect", "0x10:9", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "aspect-too-large", "aspect", "1001:9", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "choice", "choice", "interlaced", '.', "interlaced", 0 },
  { "choice-spaces", "choice", " interlaced ", '.', "interlaced", 0 },
  { "choice-other-case", "choice", "Interlaced", '.', NULL, BW_FIELD_ERROR_KIND },
  { "choice-unknown", "choice", "sideways", '.', NULL, BW_FIELD_ERROR_KIND },
  { "choice-two", "choice", "interlaced; progressive", '.', NULL, BW_FIELD_ERROR_KIND },
  { "set-one", "set", "rgb", '.', "rgb", 0 },
  { "set-in-another-order", "set", "composite;rgb ;yc", '.', "rgb; yc; composite", 0 },
  { "set-trailing-separator", "set", "rgb;", '.', "rgb", 0 },
  { "set-twice", "set", "rgb; rgb", '.', "rgb", 0 },
  { "set-unknown", "set", "rgb; smoke", '.', NULL, BW_FIELD_ERROR_KIND },
  { "set-comma", "set", "rgb, yc", '.', NULL, BW_FIELD_ERROR_KIND },
  { "set-empty", "set", "", '.', "", 0 },
  { "switch-yes", "on", "yes", '.', "yes", 0 },
  { "switch-no", "on", "no", '.', "no", 0 },
  { "switch-true", "on", "true", '.', NULL, BW_FIELD_ERROR_KIND },
  { "switch-one", "on", "1", '.', NULL, BW_FIELD_ERROR_KIND },
  { "bands", "bands", "15.5 kHz .. 16 kHz; 31 kHz", '.', "15.5 kHz .. 16 kHz; 31 kHz", 0 },
  { "bands-empty", "bands", "", '.', "", 0 },
  { "bands-above", "bands", "15.5 kHz .. 2 MHz", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "bands-below", "bands", "0.5 Hz .. 16 kHz", '.', NULL, BW_FIELD_ERROR_RANGE },
  { "bands-reversed", "bands", "16 kHz .. 15 kHz", '.', NULL, QUANTITY_FAULT },
  { "one-band", "one_band", "48 Hz .. 62 Hz", '.', "48 Hz .. 62 Hz", 0 },
  { "one-band-hyphen", "one_band", "48-62 Hz", '.', "48 Hz .. 62 Hz", 0 },
  { "one-band-either", "one_band", "50/60 Hz", '.', "50 Hz .. 60 Hz", 0 },
  { "one-band-selector", "one_band", "110/220 Hz", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "one-band-selector-of-ranges", "one_band", "100-120/200-240 Hz", '.', NULL,
    BW_FIELD_ERROR_VALUE },
  { "one-band-two", "one_band", "48 Hz .. 52 Hz; 58 Hz .. 62 Hz", '.', NULL, BW_FIELD_ERROR_VALUE },
  { "unknown", "unknown", "", '.', "", 0 },
  { "unknown-spaces", "unknown", " \t ", '.', "", 0 },
  { "required", "required", "there", '.', "there", 0 },
  { "required-empty", "required", "", '.', NULL, BW_FIELD_ERROR_MISSING },
  { "required-spaces", "required", "   ", '.', NULL, BW_FIELD_ERROR_MISSING },
};

static void
test_parse (gconstpointer data)
{
  const ParseCase *c = data;
  const BwField *field = bw_field_find (&sample_table, c->key);
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  g_autofree char *before = bw_field_to_file (field, &sample);
  gboolean taken = bw_field_parse (field, &sample, c->written, c->mark, &error);
  g_autofree char *after = bw_field_to_file (field, &sample);

  g_assert_cmpint (taken, ==, c->back != NULL);
  g_assert_cmpstr (after, ==, c->back != NULL ? c->back : before);
  if (c->back != NULL)
    g_assert_no_error (error);
  else if (error != NULL && c->code == QUANTITY_FAULT)
    g_assert_cmpuint (error->domain, ==, BW_QUANTITY_ERROR);
  else
    g_assert_error (error, BW_FIELD_ERROR, c->code);
  bw_fields_clear (&sample_table, &sample);
}

/* What a message must name besides the fault: all that is allowed. */

typedef struct
{
  const char *name;
  const char *key;
  const char *written;
  const char *says[4];
} SaysCase;

static const SaysCase says_cases[] = {
  { "range", "level", "9 V", { "9 V", "10", "mV", "5" } },
  { "count", "count", "1.5", { "1.5", "whole number", "1", "1000" } },
  { "half-lines", "half", "1.25", { "1.25", "half lines", "625" } },
  { "kind", "choice", "sideways", { "sideways", "progressive", "interlaced" } },
  { "set", "set", "smoke", { "smoke", "rgb", "component", "composite" } },
  { "switch", "on", "maybe", { "maybe", "yes", "no" } },
  { "aspect", "aspect", "wide", { "wide", "4:3" } },
  { "missing", "required", "", { "needed" } },
  { "rate", "rate", "1 Hz", { "1 Hz", "1\u00a0kHz", "1\u00a0GHz" } },
};

static void
test_says (gconstpointer data)
{
  const SaysCase *c = data;
  const char *words[] = { c->says[0], c->says[1], c->says[2], c->says[3], NULL };
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  bw_field_parse (bw_field_find (&sample_table, c->key), &sample, c->written, '.', &error);
  if (error != NULL)
    bw_test_assert_words (error->message, words);
  else
    g_test_fail ();
  bw_fields_clear (&sample_table, &sample);
}

/* A whole struct: the message of a fault names file, group and key. */
static void
test_load_fault (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  g_key_file_set_value (keys, "thing 1", "required", "yes");
  g_key_file_set_value (keys, "thing 1", "level", "0.7 furlongs");
  g_assert_false (bw_fields_load (&sample_table, &sample, keys, "thing 1", "some.bench", &error));
  g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE);
  if (error != NULL)
    bw_test_assert_words (error->message,
                          WORDS ("some.bench", "[thing 1]", "level", "furlongs", "V, mV"));
  bw_fields_clear (&sample_table, &sample);
}

/* A file has one decimal mark, in lines as in every quantity. */
static void
test_load_comma (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  g_key_file_set_value (keys, "g", "required", "yes");
  g_key_file_set_value (keys, "g", "half", "262,5");
  g_assert_false (bw_fields_load (&sample_table, &sample, keys, "g", "f", &error));
  g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE);
  bw_fields_clear (&sample_table, &sample);
}

/* “\\q” is no escape of key files, and the text after it must not be taken for sound. */
static void
test_load_bad_escape (void)
{
  static const char *const texts[] = { "a\\qb", "a\\qb\\nc", "a\\" };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      g_autoptr (GKeyFile) keys = g_key_file_new ();
      g_autoptr (GError) error = NULL;
      Sample sample;

      sample_init (&sample);
      g_key_file_set_value (keys, "g", "required", "yes");
      g_key_file_set_value (keys, "g", "text", texts[i]);
      g_assert_false (bw_fields_load (&sample_table, &sample, keys, "g", "f", &error));
      g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE);
      if (error != NULL)
        bw_test_assert_words (error->message, WORDS ("f: [g] text: ", "backslash"));
      bw_fields_clear (&sample_table, &sample);
    }
}

static void
test_load_missing (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  g_key_file_set_value (keys, "thing 1", "level", "0.7 V");
  g_assert_false (bw_fields_load (&sample_table, &sample, keys, "thing 1", "some.bench", &error));
  g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_MISSING);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS ("some.bench", "[thing 1]", "required"));
  bw_fields_clear (&sample_table, &sample);
}

/* Keys that are not written leave what the struct held. */
static void
test_load_presets (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;
  Sample sample;

  sample_init (&sample);
  g_key_file_set_value (keys, "g", "required", "yes");
  g_key_file_set_value (keys, "g", "from the future", "ignored");
  g_assert_true (bw_fields_load (&sample_table, &sample, keys, "g", "f", &error));
  g_assert_no_error (error);
  g_assert_cmpfloat (sample.level_v, ==, 1);
  g_assert_cmpint (sample.count, ==, 7);
  g_assert_cmpstr (sample.text, ==, "before");
  bw_fields_clear (&sample_table, &sample);
}

/* Saving keeps foreign keys and comments, drops what is not known, and reads back alike. */
static void
test_save (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  Sample sample, back;

  sample_init (&sample);
  sample_init (&back);
  sample.unknown_v = 0;
  sample.bands_hz = (BwBands){ 1, { { 15500, 16000 } } };
  g_key_file_set_value (keys, "g", "colour of the case", "beige");
  g_key_file_set_comment (keys, "g", "colour of the case", " faded", NULL);
  g_key_file_set_value (keys, "g", "unknown", "2 V");
  bw_fields_save (&sample_table, &sample, keys, "g");
  g_autofree char *comment = g_key_file_get_comment (keys, "g", "colour of the case", NULL);

  g_assert_true (g_key_file_has_key (keys, "g", "colour of the case", NULL));
  g_assert_cmpstr (comment, !=, NULL);
  g_assert_false (g_key_file_has_key (keys, "g", "unknown", NULL));
  g_assert_true (bw_fields_load (&sample_table, &back, keys, "g", "f", NULL));
  g_assert_true (bw_fields_equal (&sample_table, &sample, &back));
  bw_fields_clear (&sample_table, &sample);
  bw_fields_clear (&sample_table, &back);
}

/* Texts that a key file has to escape */
static void
test_save_odd_texts (void)
{
  static const char *const texts[] = { "back\\slash", "\\n",  "semi;colon",        "# hash",
                                       "[group]",     "a=b",  "75 \u03a9 \u00b5s", "\\",
                                       "a  b",        "%s %n" };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    {
      Sample sample, back;
      sample_init (&sample);
      sample_init (&back);
      g_free (sample.text);
      sample.text = g_strdup (texts[i]);
      g_autofree char *fault = bw_property_fields_kept (&sample_table, &sample, &back);
      g_assert_cmpstr (fault, ==, NULL);
      g_assert_cmpstr (back.text, ==, texts[i]);
      bw_fields_clear (&sample_table, &sample);
      bw_fields_clear (&sample_table, &back);
    }
}

/* A text of several lines, and one line beside it. */
typedef struct
{
  char *lines;
  char *line;
} Texts;

static const BwField text_fields[] = {
  { .key = "lines",
    .label = "Lines",
    .type = BW_FIELD_TEXT,
    .flags = BW_FIELD_LINES,
    .offset = G_STRUCT_OFFSET (Texts, lines) },
  { .key = "line",
    .label = "Line",
    .type = BW_FIELD_TEXT,
    .offset = G_STRUCT_OFFSET (Texts, line) },
};
static const BwFieldTable text_table = { G_N_ELEMENTS (text_fields), text_fields };

static const struct
{
  const char *written;
  const char *lines; /* NULL: refused */
} lines_cases[] = {
  { "one\ntwo\nthree", "one\ntwo\nthree" },
  { "one\r\ntwo\rthree", "one\ntwo\nthree" }, /* however the ends of lines are written */
  { "a column\tanother", "a column\tanother" },
  { "\n one\n\n two \n", "one\n\n two" },
  { "bell \a", NULL },
  { "a colour \033[1m", NULL },
};

/* Lines are taken where the field is marked so, survive a file, and are refused where it is not. */
static void
test_lines (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (lines_cases); i++)
    {
      Texts texts = { NULL, NULL }, back = { NULL, NULL };
      const char *written = lines_cases[i].written;
      g_autoptr (GError) error = NULL, refusal = NULL;
      gboolean taken = bw_field_parse (&text_fields[0], &texts, written, '.', &error);

      g_assert_false (bw_field_parse (&text_fields[1], &texts, written, '.', &refusal));
      g_assert_error (refusal, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE);
      g_assert_nonnull (strstr (refusal->message, "one line of plain text"));
      g_assert_true (taken == (lines_cases[i].lines != NULL));
      g_assert_cmpstr (texts.lines, ==, lines_cases[i].lines);
      if (taken)
        {
          g_autofree char *fault = bw_property_fields_kept (&text_table, &texts, &back);
          g_assert_cmpstr (fault, ==, NULL);
          g_assert_cmpstr (back.lines, ==, lines_cases[i].lines);
        }
      else
        {
          g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE);
          g_assert_nonnull (strstr (error->message, "lines of plain text are allowed"));
        }
      bw_fields_clear (&text_table, &texts);
      bw_fields_clear (&text_table, &back);
    }
}

static void
test_copy (void)
{
  Sample sample, copy;

  sample_init (&sample);
  sample_init (&copy);
  sample.set = 5;
  sample.on = TRUE;
  sample.bands_hz = (BwBands){ 1, { { 50, 60 } } };
  bw_fields_copy (&sample_table, &copy, &sample);
  g_assert_true (bw_fields_equal (&sample_table, &sample, &copy));
  g_assert_true (copy.text != sample.text);
  copy.bands_hz.at[0].high = 61;
  g_assert_false (bw_fields_equal (&sample_table, &sample, &copy));
  bw_fields_clear (&sample_table, &sample);
  bw_fields_clear (&sample_table, &copy);
  g_assert_null (copy.text);
}

static void
test_is_set (void)
{
  Sample sample = { .text = NULL };
  const char *const unset[] = { "text", "rate", "aspect", "set", "bands", "one_band", "unknown" };
  const char *const set[] = { "level", "count", "half", "choice", "on" };

  for (gsize i = 0; i < G_N_ELEMENTS (unset); i++)
    g_assert_false (bw_field_is_set (bw_field_find (&sample_table, unset[i]), &sample));
  for (gsize i = 0; i < G_N_ELEMENTS (set); i++)
    g_assert_true (bw_field_is_set (bw_field_find (&sample_table, set[i]), &sample));
}

static void
test_find (void)
{
  g_assert_true (bw_field_find (&sample_table, "count") == &sample_fields[2]);
  g_assert_null (bw_field_find (&sample_table, "Count"));
  g_assert_null (bw_field_find (&sample_table, ""));
  g_assert_cmpstr (bw_field_help (bw_field_find (&sample_table, "count")), ==, "");
  g_assert_cmpstr (bw_field_help (bw_field_find (&sample_table, "unknown")), ==, "Help.");
}

/* The tables of the program */

/* What a message, and the editor, say of what may be written. */
static void
test_allowed (void)
{
  static const struct
  {
    const char *key;
    char mark;
    const char *says;
  } cases[] = {
    { "text", '.', "a text" },
    { "level", '.', "10\u00a0mV to 5\u00a0V" },
    { "count", '.', "a whole number from 1 to 1000" },
    { "half", '.', "lines or half lines from 0 to 625" },
    { "rate", '.', "a frequency, such as “4.5 MHz / 286”" },
    { "aspect", '.', "width:height, such as “4:3”" },
    { "choice", '.', "progressive, interlaced" },
    { "set", '.', "rgb, component, yc, composite, luminance" },
    { "on", '.', "yes, no" },
    { "bands", '.', "1\u00a0Hz to 1\u00a0MHz" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      const BwField *field = bw_field_find (&sample_table, cases[i].key);
      g_autofree char *allowed = bw_field_allowed (field, cases[i].mark);
      g_assert_cmpstr (allowed, ==, cases[i].says);
    }
}

typedef struct
{
  const char *name;
  const BwFieldTable *table;
} TableCase;

static const TableCase table_cases[] = {
  { "monitor", &bw_monitor_fields },
  { "input", &bw_input_fields },
  { "source", &bw_source_fields },
  { "sheet", &bw_sheet_fields },
};

static void
test_table (gconstpointer data)
{
  const TableCase *c = data;
  for (guint i = 0; i < c->table->n; i++)
    {
      const BwField *field = &c->table->at[i];
      g_autofree char *allowed = bw_field_allowed (field, '.');
      g_assert_true (bw_field_find (c->table, field->key) == field); /* no key twice */
      g_assert_cmpstr (bw_field_label (field), !=, "");
      g_assert_cmpstr (allowed, !=, "");
      g_assert_cmpfloat (field->low, <=, field->high);
      if (field->type == BW_FIELD_CHOICE || field->type == BW_FIELD_SET)
        g_assert_nonnull (field->kinds);
    }
}

static gpointer
new_object (const BwFieldTable *table)
{
  if (table == &bw_monitor_fields)
    return bw_monitor_new ();
  if (table == &bw_input_fields)
    return bw_input_new ();
  return table == &bw_source_fields ? (gpointer) bw_source_new () : (gpointer) bw_sheet_new ();
}

static void
free_object (const BwFieldTable *table, gpointer object)
{
  if (table == &bw_monitor_fields)
    bw_monitor_free (object);
  else if (table == &bw_input_fields)
    bw_input_free (object);
  else if (table == &bw_source_fields)
    bw_source_free (object);
  else
    bw_sheet_free (object);
}

static double
random_inside (GRand *rand, const BwField *field)
{
  double value = g_rand_double_range (rand, field->low, field->high);
  return g_rand_int_range (rand, 0, 10) == 0 ? field->high : value;
}

/* A made-up value of the field, as it would be written, with all the digits of a double. */
static char *
random_text (GRand *rand, const BwField *field)
{
  double a = field->low < field->high ? random_inside (rand, field) : 0;
  double b = field->low < field->high ? random_inside (rand, field) : 0;
  BwBands bands = { 1, { { MIN (a, b), MAX (a, b) } } };

  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      return bw_quantity_to_file (a, field->dimension, field->unit);
    case BW_FIELD_BANDS:
      return bw_quantity_bands_to_file (&bands, field->dimension, field->unit);
    case BW_FIELD_COUNT:
      return g_strdup_printf ("%.0f", a);
    case BW_FIELD_HALF_LINES:
      return g_strdup_printf ("%.0f.5", a / 4);
    case BW_FIELD_RATE:
      return g_strdup_printf ("%.0f Hz / 1001", a * 1001);
    case BW_FIELD_ASPECT:
      return g_strdup_printf ("%d:%d", g_rand_int_range (rand, 1, 1000),
                              g_rand_int_range (rand, 1, 1000));
    case BW_FIELD_CHOICE:
    case BW_FIELD_SET:
      return g_strdup (field->kinds->at[g_rand_int_range (rand, 0, (gint32) field->kinds->n)].id);
    case BW_FIELD_SWITCH:
      return g_strdup (g_rand_boolean (rand) ? "yes" : "no");
    case BW_FIELD_PINS:
      return g_strdup_printf ("%d %s; %d ground", g_rand_int_range (rand, 1, 13),
                              bw_pin_uses.at[g_rand_int_range (rand, 0, BW_N_PIN_USES)].id,
                              g_rand_int_range (rand, 13, BW_PINOUT_MAX + 1));
    case BW_FIELD_TEXT:
    default:
      return g_strdup_printf ("text %u", g_rand_int (rand));
    }
}

/* Whatever is allowed in a field is written back as it was, exactly, for files and for editing
 * with either mark. */
static void
test_round_trip (gconstpointer data)
{
  const BwFieldTable *table = ((const TableCase *) data)->table;
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);
  gpointer object = new_object (table), other = new_object (table);

  for (guint i = 0; i < 300 * table->n && !g_test_failed (); i++)
    {
      const BwField *field = &table->at[i % table->n];
      char mark = i % 3 == 0 ? ',' : '.';
      g_autofree char *text = random_text (rand, field);
      g_assert_true (bw_field_parse (field, object, text, '.', NULL));
      g_autofree char *entry = bw_field_to_entry (field, object, mark);
      g_assert_true (bw_field_parse (field, other, entry, mark, NULL));
      g_assert_true (bw_field_equal (field, object, other));
    }
  g_autofree char *fault = bw_property_fields_kept (table, object, other);
  g_assert_cmpstr (fault, ==, NULL);
  free_object (table, object);
  free_object (table, other);
}

/* A field that may be left empty can be left empty: what is then written reads back. */
static void
test_empty (gconstpointer data)
{
  const BwFieldTable *table = ((const TableCase *) data)->table;
  gpointer object = new_object (table);

  for (guint i = 0; i < table->n; i++)
    {
      const BwField *field = &table->at[i];
      if (!bw_field_parse (field, object, "", '.', NULL))
        continue;
      g_autofree char *text = bw_field_to_file (field, object);
      if (!bw_field_parse (field, object, text, '.', NULL))
        {
          g_test_message ("%s: empty is written “%s”, which does not read back", field->key, text);
          g_test_fail ();
        }
    }
  free_object (table, object);
}

/* Half lines are kept as a number and told in lines: 4 to 100 of them are 2 to 50 lines. */
static void
test_allowed_lines (void)
{
  const BwField half = {
    .key = "half", .type = BW_FIELD_HALF_LINES, AT (half_lines), .low = 4, .high = 100
  };
  g_autofree char *words = bw_field_allowed (&half, '.');
  bw_test_assert_words (words, WORDS ("2 to 50"));
}

/* Sides of 1 to 1000, our own limit. */
static void
test_aspect_limits (void)
{
  static const struct
  {
    const char *text;
    gboolean taken;
  } cases[] = {
    { "1000:1", TRUE }, { "1:1000", TRUE }, { "1001:1", FALSE }, { "1:1001", FALSE },
    { "0:1", FALSE },   { "1:0", FALSE },
  };
  const BwField *aspect = bw_field_find (&sample_table, "aspect");
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Sample sample = { 0 };
      g_assert_cmpint (bw_field_parse (aspect, &sample, cases[i].text, '.', NULL), ==,
                       cases[i].taken);
    }
}

/* What is set is what is got, and nothing beside it. */
static void
test_set_uint (void)
{
  Sample sample = { .choice = 0, .set = 5, .half_lines = 7 };
  const BwField *choice = bw_field_find (&sample_table, "choice");
  bw_field_set_uint (choice, &sample, 1);
  g_assert_cmpuint (bw_field_get_uint (choice, &sample), ==, 1);
  g_assert_cmpuint (sample.choice, ==, 1);
  g_assert_cmpuint (sample.set, ==, 5);
}

/* Whether @error is the one for @text: not a number, a unit that the field has not, a value beyond what
 * the field takes; or for kinds and counts, no kind and no count. */
static gboolean
is_refusal_of (const GError *error, const BwField *field, const char *text)
{
  if (field->type == BW_FIELD_CHOICE || field->type == BW_FIELD_SET
      || field->type == BW_FIELD_SWITCH)
    return g_error_matches (error, BW_FIELD_ERROR, BW_FIELD_ERROR_KIND);
  if (field->type == BW_FIELD_COUNT) /* says what is allowed, as for a count out of range */
    return g_error_matches (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE);
  if (field->type != BW_FIELD_QUANTITY && field->type != BW_FIELD_BANDS)
    return g_error_matches (error, BW_FIELD_ERROR, BW_FIELD_ERROR_VALUE);
  if (strcmp (text, "1e999 V") == 0 && field->dimension == BW_DIMENSION_VOLTAGE)
    return g_error_matches (error, BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE);
  if (strcmp (text, "-1e6 MHz") == 0 && field->dimension == BW_DIMENSION_FREQUENCY)
    return g_error_matches (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE);
  gboolean is_number = g_ascii_isdigit (*text) || *text == '-';
  return g_error_matches (error, BW_QUANTITY_ERROR,
                          is_number ? BW_QUANTITY_ERROR_UNIT : BW_QUANTITY_ERROR_NUMBER);
}

/* Far out of range, or not a value at all: refused with what is allowed, and the member stays. */
static void
test_refuse (gconstpointer data)
{
  const BwFieldTable *table = ((const TableCase *) data)->table;
  static const char *const odd[] = { "1e999 V", "-1e6 MHz", "nan", "inf s", "\x01", "0x7fffffff" };
  gpointer object = new_object (table);

  for (guint i = 0; i < table->n * G_N_ELEMENTS (odd); i++)
    {
      const BwField *field = &table->at[i / G_N_ELEMENTS (odd)];
      const char *text = odd[i % G_N_ELEMENTS (odd)];
      g_autofree char *before = bw_field_to_file (field, object);
      g_autoptr (GError) error = NULL;
      if (field->type == BW_FIELD_TEXT && *text != '\x01')
        continue;
      g_assert_false (bw_field_parse (field, object, text, '.', &error));
      g_assert_true (is_refusal_of (error, field, text));
      g_autofree char *after = bw_field_to_file (field, object);
      g_assert_cmpstr (before, ==, after);
    }
  free_object (table, object);
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/field/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (parse_cases); i++)
    add ("parse", parse_cases[i].name, &parse_cases[i], test_parse);
  for (gsize i = 0; i < G_N_ELEMENTS (says_cases); i++)
    add ("says", says_cases[i].name, &says_cases[i], test_says);
  for (gsize i = 0; i < G_N_ELEMENTS (table_cases); i++)
    {
      add ("table", table_cases[i].name, &table_cases[i], test_table);
      add ("round-trip", table_cases[i].name, &table_cases[i], test_round_trip);
      add ("empty", table_cases[i].name, &table_cases[i], test_empty);
      add ("refuse", table_cases[i].name, &table_cases[i], test_refuse);
    }
  g_test_add_func ("/field/load/fault", test_load_fault);
  g_test_add_func ("/field/load/comma", test_load_comma);
  g_test_add_func ("/field/load/bad-escape", test_load_bad_escape);
  g_test_add_func ("/field/load/missing", test_load_missing);
  g_test_add_func ("/field/load/presets", test_load_presets);
  g_test_add_func ("/field/save", test_save);
  g_test_add_func ("/field/save-odd-texts", test_save_odd_texts);
  g_test_add_func ("/field/lines", test_lines);
  g_test_add_func ("/field/copy", test_copy);
  g_test_add_func ("/field/is-set", test_is_set);
  g_test_add_func ("/field/allowed", test_allowed);
  g_test_add_func ("/field/find", test_find);
  g_test_add_func ("/field/allowed-lines", test_allowed_lines);
  g_test_add_func ("/field/set-uint", test_set_uint);
  g_test_add_func ("/field/aspect-limits", test_aspect_limits);
  return g_test_run ();
}
