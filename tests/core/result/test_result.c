/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The tree of a result and its walkers. JSON is read back by json-glib, HTML by GLib's own parser,
 * comma-separated values by a reader of RFC 4180 written here. */
#include <math.h>
#include <string.h>

#include <json-glib/json-glib.h>

#include "core/base/harmless.h"
#include "core/result/listing.h"
#include "core/result/result.h"

/* Reading back */

static JsonObject *
parse_json (const BwNode *node)
{
  g_autofree char *text = bw_node_to_json (node);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();
  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);
  g_assert_true (g_utf8_validate (text, -1, NULL) && g_str_has_suffix (text, "}\n"));
  return json_object_ref (json_node_get_object (json_parser_get_root (parser)));
}

/* One field from @at on, which is moved behind it. */
static char *
take_field (const char **at)
{
  GString *field = g_string_new (NULL);
  if (**at != '"')
    {
      gsize length = strcspn (*at, ",\r");
      g_string_append_len (field, *at, (gssize) length);
      *at += length;
      return g_string_free (field, FALSE);
    }
  for ((*at)++; **at != '"' || (*at)[1] == '"'; (*at)++)
    {
      g_assert_cmpint (**at, !=, '\0');
      if (**at == '"')
        (*at)++;
      g_string_append_c (field, **at);
    }
  (*at)++;
  return g_string_free (field, FALSE);
}

/* Lines of fields; every line must end in CR LF. */
static GPtrArray *
parse_csv (const char *text)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);
  for (const char *at = text; *at != '\0'; at += 2)
    {
      GPtrArray *line = g_ptr_array_new_with_free_func (g_free);
      g_ptr_array_add (lines, line);
      g_ptr_array_add (line, take_field (&at));
      while (*at == ',')
        {
          at++;
          g_ptr_array_add (line, take_field (&at));
        }
      g_assert_true (g_str_has_prefix (at, "\r\n"));
    }
  return lines;
}

static const char *
field_at (GPtrArray *lines, guint line, guint field)
{
  return ((GPtrArray *) lines->pdata[line])->pdata[field];
}

static void
assert_html (const char *html)
{
  const GMarkupParser nothing = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (GString) xml = g_string_new (html);
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (&nothing, 0, NULL, NULL);

  g_string_replace (xml, "<!DOCTYPE html>\n", "", 1);
  g_string_replace (xml, "<meta charset=\"utf-8\">", "", 1);
  g_assert_true (g_markup_parse_context_parse (context, xml->str, -1, &error));
  g_assert_true (g_markup_parse_context_end_parse (context, &error));
}

/* Numbers */

static double
random_double (void)
{
  double value;
  do
    {
      guint64 bits = (guint64) g_test_rand_int () << 32 | (guint32) g_test_rand_int ();
      memcpy (&value, &bits, sizeof value);
    }
  while (!isfinite (value));
  return value;
}

static void
assert_same_double (double a, double b)
{
  g_assert_cmpmem (&a, sizeof a, &b, sizeof b);
}

/* Of every size that a double can have, JSON and CSV give it back to the last bit. */
static void
test_numbers (void)
{
  static const double edges[] = { 0,           1,      -1,
                                  0.1,         1e-8,   1e21,
                                  4.5e6 / 286, 5e-324, 1.7976931348623157e308 };

  for (guint i = 0; i < 20000; i++)
    {
      double value = i < G_N_ELEMENTS (edges) ? edges[i] : random_double ();
      g_autoptr (BwResult) result = bw_result_new (',');
      bw_node_member (bw_result_root (result), bw_value_count ("n", value));
      g_autoptr (JsonObject) json = parse_json (bw_result_root (result));
      assert_same_double (json_object_get_double_member (json, "n"), value);
      g_autofree char *csv = bw_node_to_csv (bw_result_root (result));
      g_autoptr (GPtrArray) lines = parse_csv (csv);
      g_assert_cmpstr (field_at (lines, 0, 3), ==, "value");
      assert_same_double (g_ascii_strtod (field_at (lines, 1, 3), NULL), value);
    }
}

static void
assert_text (BwValue value, const char *text)
{
  g_autofree char *read = bw_value_text (&value, ',');
  g_assert_cmpstr (read, ==, text);
}

static void
test_for_people (void)
{
  assert_text (bw_value_fixed (NULL, 63.55558e-6, BW_DIMENSION_TIME, "us", 4), "63,5556\u00a0µs");
  assert_text (bw_value_fixed (NULL, -1e-9, BW_DIMENSION_VOLTAGE, "mV", 1), "0,0\u00a0mV");
  assert_text (bw_value_fixed (NULL, -0.2857, BW_DIMENSION_VOLTAGE, "mV", 1),
               "\u2212285,7\u00a0mV");
  /* 0.7 of a white of 0.886 at 75 %, and its like below zero: both are just off a half in binary */
  assert_text (bw_value_fixed (NULL, 0.7 * 0.75 * 0.886, BW_DIMENSION_VOLTAGE, "mV", 1),
               "465,2\u00a0mV");
  assert_text (bw_value_number (NULL, -1.005, 2), "\u22121,01");
  assert_text (bw_value_number (NULL, 1.0049, 2), "1,00");
  assert_text (bw_value_quantity (NULL, 15734.2657, BW_DIMENSION_FREQUENCY, 5), "15,734\u00a0kHz");
  assert_text (bw_value_signed (bw_value_number (NULL, 3.24, 1)), "+3,2");
  assert_text (bw_value_signed (bw_value_number (NULL, 0, 1)), "0,0");
  assert_text (bw_value_number (NULL, -0.01, 1), "0,0");
  assert_text (bw_value_range (NULL, (BwRange){ 15e3, 16e3 }, BW_DIMENSION_FREQUENCY, 3),
               "15–16\u00a0kHz");
  assert_text (bw_value_flag (NULL, TRUE), "yes");
  assert_text (bw_value_set (NULL, &bw_scans, 3), "progressive, interlaced");
  assert_text (bw_value_kind (NULL, &bw_scans, BW_SCAN_INTERLACED), "interlaced");
  assert_text (bw_value_read_as (bw_value_count (NULL, 2), "2 times"), "2 times");
}

/* What is not known is null for scripts, and for people nothing or the reason. */
static void
test_missing (void)
{
  const double none[] = { NAN, INFINITY, -INFINITY };
  BwValue unknown = bw_value_if (FALSE, bw_value_quantity ("a_hz", 5, BW_DIMENSION_FREQUENCY, 3));
  BwValue range = bw_value_if (FALSE,
                               bw_value_range ("r", (BwRange){ 1, 2 }, BW_DIMENSION_TIME, 3));

  assert_text (unknown, "");
  assert_text (range, "");
  assert_text (bw_value_or (unknown, "–"), "–");
  assert_text (bw_value_or (range, "not known"), "not known");
  assert_text (bw_value_words (NULL, NULL), "");
  for (guint i = 0; i < G_N_ELEMENTS (none); i++)
    {
      g_autoptr (BwResult) result = bw_result_new ('.');
      BwNode *root = bw_result_root (result);
      bw_node_figure (root, "Rate", bw_value_quantity ("n_hz", none[i], BW_DIMENSION_FREQUENCY, 3));
      bw_node_figure (root, "Other", unknown);
      bw_node_figure (root, "Range", range);
      g_assert_false (bw_node_is_seen (root));
      g_autofree char *text = bw_node_to_text (root, 80, FALSE);
      g_assert_cmpstr (text, ==, "");
      g_autoptr (JsonObject) json = parse_json (root);
      g_assert_cmpuint (json_object_get_size (json), ==, 4);
      g_assert_true (json_object_get_null_member (json, "n_hz"));
      g_assert_true (json_object_get_null_member (json, "a_hz"));
      g_assert_true (json_object_get_null_member (json, "r_low"));
      g_assert_true (json_object_get_null_member (json, "r_high"));
    }
}

/* A result with something of everything */

static BwResult *
sample (void)
{
  BwResult *result = bw_result_new ('.');
  BwNode *root = bw_result_root (result);
  g_autoptr (GPtrArray) notes = g_ptr_array_new ();
  const char *const names[] = { "one", "two", NULL };

  root->order = "z id line_s table";
  BwNode *head = bw_node_section (root, NULL, "Head: of it");
  bw_node_member (head, bw_value_words ("id", "x"));
  bw_node_figure (head, "Also called", bw_value_list ("aliases", names));
  BwNode *line = bw_node_section (root, NULL, "Line");
  bw_node_figure (line, "Rate",
                  bw_value_fixed ("rate_hz", 15734.2, BW_DIMENSION_FREQUENCY, "kHz", 3));
  bw_node_pair (line, "Whole", bw_value_fixed ("line", 858, BW_DIMENSION_PIXELS, NULL, 0),
                bw_value_fixed ("line_s", 64e-6, BW_DIMENSION_TIME, "us", 1));
  BwNode *table = bw_node_table (root, "table", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, "name", NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, "level", "mV");
  bw_node_column (table, BW_COLUMN_SAYS, "says", NULL);
  for (guint i = 0; i < 2; i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("name", i == 0 ? "first" : "second"));
      bw_node_cell (row,
                    bw_value_fixed ("level_v", i > 0 ? -0.3 : 0, BW_DIMENSION_VOLTAGE, "mV", 1));
      bw_node_cell (row,
                    bw_value_says (NULL, "a sentence that is rather long, so that it has to be "
                                         "wrapped at 1\u00a0V"));
      BwNode *inner = bw_node_table (row, "inner", NULL);
      bw_node_member (bw_node_row (inner), bw_value_count ("n", i));
    }
  BwNode *object = bw_node_section (root, "z", NULL);
  bw_node_member (object, bw_value_flag ("true", TRUE));
  g_ptr_array_add (notes, (gpointer) "note\u00a0one");
  bw_node_list (root, "notes", "Notes", notes);
  bw_node_say (root, BW_SAY_ANSWER, "answer", "It is 1\u00a0V.")->mark = BW_MARK (BW_SEVERITY_OK);
  return result;
}

static void
test_text (void)
{
  g_autoptr (BwResult) result = sample ();
  g_autofree char *text = bw_node_to_text (bw_result_root (result), 60, TRUE);
  g_assert_cmpstr (text, ==,
                   "Head: of it\n"
                   "  Also called  one, two\n"
                   "\n"
                   "Line\n"
                   "  Rate         15.734 kHz\n"
                   "  Whole           858 px   64.0 µs\n"
                   "\n"
                   "name    level (mV)  says\n"
                   "first          0.0  a sentence that is rather long, so that\n"
                   "                    it has to be wrapped at 1 V\n"
                   "second      -300.0  a sentence that is rather long, so that\n"
                   "                    it has to be wrapped at 1 V\n"
                   "\n"
                   "Notes\n"
                   "  - note one\n"
                   "\n"
                   "= It is 1 V.\n");
}

/* The name of a group stands over its rows. */
static void
test_groups (void)
{
  static const char *const cells[][2] = { { "Y", "white" }, { "Y", "black" }, { "Sync", "tip" } };
  g_autoptr (BwResult) result = bw_result_new ('.');
  BwNode *table = bw_node_table (bw_result_root (result), "levels", "Levels");

  table->is_grouped = TRUE;
  bw_node_column (table, BW_COLUMN_WORDS, "conductor", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, "level of", NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, "level", "mV");
  for (guint i = 0; i < G_N_ELEMENTS (cells); i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("conductor", cells[i][0]));
      bw_node_cell (row, bw_value_words ("level", cells[i][1]));
      bw_node_cell (row, bw_value_fixed ("level_v", -0.1 * i, BW_DIMENSION_VOLTAGE, "mV", 0));
    }
  g_autofree char *text = bw_node_to_text (bw_result_root (result), 60, TRUE);
  g_assert_cmpstr (text, ==,
                   "Levels\n"
                   "    level of  level (mV)\n"
                   "  Y\n"
                   "    white              0\n"
                   "    black           -100\n"
                   "  Sync\n"
                   "    tip             -200\n");
}

/* Lines below the first stand behind its number. */
static void
test_numbered (void)
{
  g_autoptr (BwResult) result = bw_result_new ('.');
  BwNode *root = bw_result_root (result);

  bw_node_say (root, BW_SAY_NOTE, NULL, "9. one step that somebody has to take");
  bw_node_say (root, BW_SAY_NOTE, NULL, "10. another that somebody has to take");
  bw_node_say (root, BW_SAY_NOTE, NULL, "525 lines begin this, which is no step");
  g_autofree char *text = bw_node_to_text (root, 30, TRUE);
  g_assert_cmpstr (text, ==,
                   "9. one step that somebody\n"
                   "   has to take\n"
                   "10. another that somebody\n"
                   "    has to take\n"
                   "525 lines begin this, which is\n"
                   "no step\n");
}

static void
test_json (void)
{
  g_autoptr (BwResult) result = sample ();
  g_autofree char *text = bw_node_to_json (bw_result_root (result));
  g_assert_cmpstr (text, ==,
                   "{\n"
                   "  \"z\": {\n"
                   "    \"true\": true\n"
                   "  },\n"
                   "  \"id\": \"x\",\n"
                   "  \"line_s\": 6.4e-05,\n"
                   "  \"table\": [\n"
                   "    {\n"
                   "      \"name\": \"first\",\n"
                   "      \"level_v\": 0,\n"
                   "      \"inner\": [\n"
                   "        {\n"
                   "          \"n\": 0\n"
                   "        }\n"
                   "      ]\n"
                   "    },\n"
                   "    {\n"
                   "      \"name\": \"second\",\n"
                   "      \"level_v\": -0.3,\n"
                   "      \"inner\": [\n"
                   "        {\n"
                   "          \"n\": 1\n"
                   "        }\n"
                   "      ]\n"
                   "    }\n"
                   "  ],\n"
                   "  \"aliases\": [\n"
                   "    \"one\",\n"
                   "    \"two\"\n"
                   "  ],\n"
                   "  \"rate_hz\": 15734.2,\n"
                   "  \"line\": 858,\n"
                   "  \"notes\": [\n"
                   "    \"note one\"\n"
                   "  ],\n"
                   "  \"answer\": \"It is 1 V.\"\n"
                   "}\n");
}

static void
test_csv (void)
{
  g_autoptr (BwResult) result = sample ();
  g_autofree char *text = bw_node_to_csv (bw_result_root (result));
  g_assert_cmpstr (text, ==,
                   "section,figure,key,value,unit\r\n"
                   "Head: of it,,id,x,\r\n"
                   "Head: of it,Also called,aliases,one; two,\r\n"
                   "Line,Rate,rate_hz,15734.2,Hz\r\n"
                   "Line,Whole,line,858,px\r\n"
                   "Line,Whole,line_s,6.4e-05,s\r\n"
                   "\r\n"
                   "name,level_v,says\r\n"
                   "first,0,\"a sentence that is rather long, so that it has to be wrapped at "
                   "1 V\"\r\n"
                   "second,-0.3,\"a sentence that is rather long, so that it has to be wrapped at "
                   "1 V\"\r\n"
                   "\r\n"
                   "table.name,inner.n\r\n"
                   "first,0\r\n"
                   "second,1\r\n"
                   "\r\n"
                   "section,figure,key,value,unit\r\n"
                   ",,true,true,\r\n");
}

static void
test_tsv_and_html (void)
{
  g_autoptr (BwResult) result = sample ();
  g_autofree char *tsv = bw_node_to_tsv (bw_result_root (result));
  g_autofree char *html = bw_node_to_html (bw_result_root (result));

  g_assert_true (g_str_has_prefix (tsv, "Head: of it\nAlso called\tone, two\n\nLine\n"
                                        "Rate\t15.734\tkHz\nWhole\t858\tpx\t64.0\tµs\n\n"
                                        "name\tlevel (mV)\tsays\nfirst\t0.0\t"));
  g_assert_nonnull (strstr (tsv, "\nsecond\t-300.0\t"));
  assert_html (html);
  g_assert_nonnull (strstr (html, "<td align=\"right\">\u2212300.0</td>"));
  g_assert_nonnull (strstr (html, "<th scope=\"col\">level (mV)</th>"));
}

/* Rows that share a first name stand side by side, two sources of one name apart. */
static void
test_cross (void)
{
  g_autoptr (BwResult) result = bw_result_new ('.');
  BwNode *table = bw_node_table (bw_result_root (result), "cells", NULL);

  bw_node_column (table, BW_COLUMN_WORDS, "Source", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, "Input", NULL);
  bw_node_column (table, BW_COLUMN_WORDS, "Verdict", NULL);
  table->across = 2;
  for (guint i = 0; i < 4; i++)
    {
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_words ("source", "same"));
      bw_node_cell (row, bw_value_words ("input", i % 2 == 0 ? "A" : "B"));
      bw_node_cell (row, bw_value_marked (bw_value_words ("verdict", i == 3 ? "no" : "direct"),
                                          i == 3 ? BW_MARK (BW_SEVERITY_FATAL)
                                                 : BW_MARK (BW_SEVERITY_OK)));
    }
  g_autofree char *text = bw_node_to_text (bw_result_root (result), 80, TRUE);
  g_assert_cmpstr (text, ==,
                   "Source  A         B\n"
                   "same    = direct  = direct\n"
                   "same    = direct  x no\n");
  g_autofree char *csv = bw_node_to_csv (bw_result_root (result));
  g_assert_true (g_str_has_prefix (csv, "source,input,verdict\r\nsame,A,direct\r\n"));
}

/* Words from files */

/* A name may hold anything. JSON gives it back letter by letter; CSV within quotes. */
static void
test_quoting (void)
{
  static const char *const names[] = {
    "plain",
    "comma, \"quoted\"",
    "two\nlines",
    "back\\slash",
    "<b>&amp;'</b>",
    "tab\tin it",
    "Ωµ–€ 日本語",
    "",
    "esc \x1b[31m red",
    "C1 \xc2\x9b"
    "31m and \xc2\x85",
    "override \u202eabc\u202c",
    "\u2066isolate\u2069",
    "separator\u2028x",
    "del \x7f",
  };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (BwResult) result = bw_result_new ('.');
      BwNode *table = bw_node_table (bw_result_root (result), "t", names[i]);
      bw_node_column (table, BW_COLUMN_WORDS, "name", NULL);
      bw_node_cell (bw_node_row (table), bw_value_words ("name", names[i]));
      g_autoptr (JsonObject) json = parse_json (bw_result_root (result));
      JsonObject *row = json_array_get_object_element (json_object_get_array_member (json, "t"), 0);
      g_assert_cmpstr (json_object_get_string_member (row, "name"), ==, names[i]);
      g_autofree char *html = bw_node_to_html (bw_result_root (result));
      assert_html (html);
      g_autofree char *csv = bw_node_to_csv (bw_result_root (result));
      g_autoptr (GPtrArray) lines = parse_csv (csv);
      if (i < 8 && strchr (names[i], '\t') == NULL)
        g_assert_cmpstr (field_at (lines, 1, 0), ==, names[i]);
    }
}

/* A spreadsheet takes words that begin so for a formula. */
static void
test_no_formula (void)
{
  static const char *const names[] = { "=1+1", "+1", "-1", "@x" };
  for (guint i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (BwResult) result = bw_result_new ('.');
      BwNode *table = bw_node_table (bw_result_root (result), "t", NULL);
      bw_node_member (bw_node_row (table), bw_value_words ("name", names[i]));
      g_autofree char *csv = bw_node_to_csv (bw_result_root (result));
      g_autofree char *expected = g_strdup_printf ("name\r\n'%s\r\n", names[i]);
      g_assert_cmpstr (csv, ==, expected);
    }
}

static gboolean
has_harmful (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      gunichar c = g_utf8_get_char (p);
      if (c != '\n' && c != '\r' && c != '\t' && c != 0x200e && bw_char_is_harmful (c))
        return TRUE;
    }
  return FALSE;
}

/* What JSON reads back from @text is @name itself (RFC 8259, 7). */
static void
assert_json_keeps (const char *text, const char *name)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_autoptr (GError) error = NULL;
  json_parser_load_from_data (parser, text, -1, &error);
  g_assert_no_error (error);
  JsonObject *root = json_node_get_object (json_parser_get_root (parser));
  g_assert_cmpstr (json_object_get_string_member (root, "name"), ==, name);
}

/* Unicode Bidirectional Algorithm (UAX #9) section 2: the characters that embed, override and
 * isolate; ECMA-48: C0 and C1, which a terminal obeys; The Unicode Standard, 23.7: what stands for no
 * character. */
static void
test_harmless (void)
{
  static const gunichar harmful[] = { 0x07,   0x1b,   0x7f,   0x80,   0x9b,   0x9f,   0x61c, 0x200e,
                                      0x200f, 0x2028, 0x2029, 0x202a, 0x202e, 0x2066, 0x2069,
                                      0xfffe, 0x1ffff };
  for (guint i = 0; i < G_N_ELEMENTS (harmful); i++)
    {
      char letter[8] = { 0 };
      g_unichar_to_utf8 (harmful[i], letter);
      g_autofree char *name = g_strdup_printf ("a%sb", letter);
      g_autoptr (BwResult) result = bw_result_new ('.');
      BwNode *root = bw_result_root (result);
      bw_node_figure (root, name, bw_value_words ("name", name));
      bw_node_say (root, BW_SAY_NOTE, NULL, name);
      BwNode *table = bw_node_table (root, "t", name);
      bw_node_column (table, BW_COLUMN_WORDS, name, name);
      bw_node_cell (bw_node_row (table), bw_value_words ("name", name));
      g_autofree char *forms[] = {
        bw_node_to_text (root, 80, FALSE),
        bw_node_to_json (root),
        bw_node_to_csv (root),
        bw_node_to_tsv (root),
        bw_node_to_html (root),
      };
      g_assert_true (bw_char_is_harmful (harmful[i]));
      assert_json_keeps (forms[1], name);
      for (guint form = 0; form < G_N_ELEMENTS (forms); form++)
        {
          g_assert_false (has_harmful (forms[form]));
          g_assert_true (form == 1 || strstr (forms[form], letter) == NULL);
          if (form > 0)
            g_free (g_steal_pointer (&forms[form]));
        }
    }
}

/* A name from right to left is shown whole, and does not draw the numbers after it to its left. */
static void
test_right_to_left (void)
{
  static const char name[] = "\u05de\u05e1\u05da"; /* Hebrew */
  g_autoptr (BwResult) result = bw_result_new ('.');
  BwNode *table = bw_node_table (bw_result_root (result), "t", NULL);

  bw_node_column (table, BW_COLUMN_WORDS, "name", NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, "n", NULL);
  BwNode *row = bw_node_row (table);
  bw_node_cell (row, bw_value_words ("name", name));
  bw_node_cell (row, bw_value_count ("n", 525));
  g_autofree char *text = bw_node_to_text (bw_result_root (result), 80, FALSE);
  g_autofree char *expected = g_strdup_printf ("name    n\n%s\u200e   525\n", name);
  g_assert_cmpstr (text, ==, expected);
  g_autofree char *html = bw_node_to_html (bw_result_root (result));
  g_autofree char *cell = g_strdup_printf ("<td dir=\"auto\">%s</td>", name);
  g_assert_nonnull (strstr (html, cell));
}

/* Looking things up */

static void
test_find (void)
{
  g_autoptr (BwResult) result = sample ();
  const BwNode *root = bw_result_root (result);
  g_autofree char *words = bw_node_words (root, "line_s");
  g_autofree char *nothing = bw_node_words (root, "no such key");

  g_assert_cmpstr (words, ==, "64.0\u00a0µs");
  g_assert_cmpstr (nothing, ==, "");
  g_assert_null (bw_node_find (root, "no such key"));
  g_assert_cmpuint (bw_node_find (root, "table")->children->len, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/result/numbers", test_numbers);
  g_test_add_func ("/result/for-people", test_for_people);
  g_test_add_func ("/result/missing", test_missing);
  g_test_add_func ("/result/text", test_text);
  g_test_add_func ("/result/groups", test_groups);
  g_test_add_func ("/result/numbered", test_numbered);
  g_test_add_func ("/result/json", test_json);
  g_test_add_func ("/result/csv", test_csv);
  g_test_add_func ("/result/tsv-and-html", test_tsv_and_html);
  g_test_add_func ("/result/cross", test_cross);
  g_test_add_func ("/result/quoting", test_quoting);
  g_test_add_func ("/result/no-formula", test_no_formula);
  g_test_add_func ("/result/harmless", test_harmless);
  g_test_add_func ("/result/right-to-left", test_right_to_left);
  g_test_add_func ("/result/find", test_find);
  return g_test_run ();
}
