/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Text, JSON and comma-separated values of one result hold the same figures: each is read as what it
 * is, by nothing that the program has, and held against the others. */
#include <math.h>
#include <string.h>

#include "run.h"

/**
 * Faces:
 * @json: numbers in it
 * @csv: likewise
 * @words: everything in both that is not a number
 * @keyed: the figures with a key among the comma-separated values, in pairs of key and value
 * @columns: the heads of its tables, one after the other
 */
typedef struct
{
  GArray *json;
  GArray *csv;
  GString *words;
  GPtrArray *keyed;
  GString *columns;
  JsonObject *root;
  char *text;
} Faces;

static void
faces_clear (Faces *f)
{
  g_array_unref (f->json);
  g_array_unref (f->csv);
  g_string_free (f->words, TRUE);
  g_ptr_array_unref (f->keyed);
  g_string_free (f->columns, TRUE);
  json_object_unref (f->root);
  g_free (f->text);
}

/* Reading */

static void
take_json (Faces *f, JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      g_autoptr (GList) values = json_object_get_values (json_node_get_object (node));
      for (GList *one = values; one != NULL; one = one->next)
        take_json (f, one->data);
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    {
      g_autoptr (GList) values = json_array_get_elements (json_node_get_array (node));
      for (GList *one = values; one != NULL; one = one->next)
        take_json (f, one->data);
    }
  else if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == G_TYPE_STRING)
    g_string_append_printf (f->words, " %s", json_node_get_string (node));
  else if (JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) != G_TYPE_BOOLEAN)
    {
      double number = json_node_get_double (node);
      g_array_append_val (f->json, number);
    }
}

/* The next field of a line, RFC 4180; @at is then behind it and its comma or line end. */
static char *
next_field (const char **at, gboolean *last)
{
  GString *field = g_string_new (NULL);
  const char *p = *at;
  gboolean quoted = *p == '"';

  for (p += quoted; quoted ? *p != '"' || p[1] == '"' : strchr (",\r", *p) == NULL; p++)
    {
      g_assert_true (*p != '\0' && (quoted || *p != '"'));
      g_string_append_c (field, *p);
      p += quoted && *p == '"';
    }
  p += quoted;
  *last = *p == '\r';
  g_assert_true (*last ? p[1] == '\n' : *p == ',');
  *at = p + (*last ? 2 : 1);
  return g_string_free (field, FALSE);
}

static GPtrArray *
next_line (const char **at)
{
  GPtrArray *fields = g_ptr_array_new_with_free_func (g_free);
  for (gboolean last = FALSE; !last;)
    g_ptr_array_add (fields, next_field (at, &last));
  return fields;
}

static void
take_field (Faces *f, const char *field)
{
  char *end;
  double number = g_ascii_strtod (field, &end);
  if (*field != '\0' && *end == '\0')
    g_array_append_val (f->csv, number);
  else
    g_string_append_printf (f->words, " %s", field);
}

static void
take_head (Faces *f, const GPtrArray *head)
{
  if (strcmp (head->pdata[0], "section") == 0)
    return; /* a list of figures, the same in each result */
  g_string_append (f->columns, f->columns->len > 0 ? "; " : "");
  for (guint i = 0; i < head->len; i++)
    g_string_append_printf (f->columns, "%s%s", i > 0 ? ", " : "", (const char *) head->pdata[i]);
}

/* Tables with a head each, and an empty line between them; all lines of a table are of one length. */
static void
take_csv (Faces *f, const char *csv)
{
  g_autoptr (GPtrArray) head = NULL;
  for (const char *at = csv; *at != '\0';)
    {
      g_autoptr (GPtrArray) line = next_line (&at);
      if (line->len == 1 && *(const char *) line->pdata[0] == '\0')
        {
          g_clear_pointer (&head, g_ptr_array_unref);
          continue;
        }
      for (guint i = 0; i < line->len; i++)
        take_field (f, line->pdata[i]);
      if (head == NULL)
        {
          head = g_steal_pointer (&line);
          take_head (f, head);
          continue;
        }
      g_assert_cmpuint (line->len, ==, head->len);
      if (strcmp (head->pdata[0], "section") != 0 || *(const char *) line->pdata[2] == '\0')
        continue;
      g_ptr_array_add (f->keyed, g_strdup (line->pdata[2]));
      g_ptr_array_add (f->keyed, g_strdup (line->pdata[3]));
    }
}

static char *
run_with (const char *command, const char *more)
{
  g_autofree char *all = g_strconcat (command, " ", more, NULL);
  g_auto (GStrv) args = NULL;
  g_assert_true (g_shell_parse_argv (all, NULL, &args, NULL));
  g_autoptr (Run) run = run_args ((const char *const *) args);
  if (run->status != 0)
    g_error ("%s: %s", all, run->err);
  return g_steal_pointer (&run->out);
}

static void
faces_read (Faces *f, const char *command)
{
  gboolean hookup = g_str_has_prefix (command, "hookup");
  g_autofree char *json = run_with (command, "--json");
  g_autofree char *csv = run_with (command, hookup ? "--csv -" : "--csv");
  g_autoptr (JsonNode) node = json_from_string (json, NULL);

  g_assert_nonnull (node);
  /* How it is written, which comma-separated values have no place for. */
  g_assert_cmpint (json_object_get_int_member (json_node_get_object (node), "format"), ==, 1);
  json_object_remove_member (json_node_get_object (node), "format");
  f->json = g_array_new (FALSE, FALSE, sizeof (double));
  f->csv = g_array_new (FALSE, FALSE, sizeof (double));
  f->words = g_string_new (command);
  f->keyed = g_ptr_array_new_with_free_func (g_free);
  f->columns = g_string_new (NULL);
  f->root = json_object_ref (json_node_get_object (node));
  f->text = run_with (command, "");
  take_json (f, node);
  take_csv (f, csv);
}

/* JSON and comma-separated values */

static gboolean
has_number (const GArray *numbers, double number)
{
  for (guint i = 0; i < numbers->len; i++)
    if (fabs (g_array_index (numbers, double, i) - number) <= 0)
      return TRUE;
  return FALSE;
}

/* To the last digit. */
static void
check_json_in_csv (const Faces *f, const char *command)
{
  for (guint i = 0; i < f->json->len; i++)
    if (!has_number (f->csv, g_array_index (f->json, double, i)))
      g_error ("%s: %.17g is in JSON alone", command, g_array_index (f->json, double, i));
}

/* The value of a key that JSON has somewhere in its objects; what is not known is null. */
static gboolean
has_member (JsonObject *object, const char *key, const char *value)
{
  g_autoptr (GList) members = json_object_get_members (object);
  for (GList *one = members; one != NULL; one = one->next)
    {
      JsonNode *node = json_object_get_member (object, one->data);
      if (JSON_NODE_HOLDS_OBJECT (node) && has_member (json_node_get_object (node), key, value))
        return TRUE;
      if (strcmp (one->data, key) != 0)
        continue;
      if (JSON_NODE_HOLDS_NULL (node))
        return *value == '\0';
      if (JSON_NODE_HOLDS_ARRAY (node) || json_node_get_value_type (node) == G_TYPE_BOOLEAN)
        return TRUE;
      if (json_node_get_value_type (node) == G_TYPE_STRING)
        return strcmp (json_node_get_string (node), value) == 0;
      return fabs (json_node_get_double (node) - g_ascii_strtod (value, NULL)) <= 0;
    }
  return FALSE;
}

static void
check_csv_in_json (const Faces *f, const char *command)
{
  for (guint i = 0; i < f->keyed->len; i += 2)
    if (!has_member (f->root, f->keyed->pdata[i], f->keyed->pdata[i + 1]))
      g_error ("%s: %s is not “%s” in JSON", command, (const char *) f->keyed->pdata[i],
               (const char *) f->keyed->pdata[i + 1]);
}

/* What the columns are called and in which order they stand: our own choice and a promise to whoever has a
 * spreadsheet that reads them, so that it is written down in tests/reference once more. */
static void
test_columns (void)
{
  g_autoptr (GPtrArray) promised = read_table ("columns.tsv");
  g_assert_cmpuint (promised->len, >=, 20);
  for (guint i = 0; i < promised->len; i++)
    {
      const char *command = cell (promised->pdata[i], "command");
      g_autofree char *demo = demo_path ();
      g_auto (GStrv) parts = g_strsplit (command, "demo.bench", -1);
      g_autofree char *quoted = g_shell_quote (demo);
      g_autofree char *whole = g_strjoinv (quoted, parts);
      Faces f = { 0 };
      faces_read (&f, whole);
      g_assert_cmpstr (f.columns->str, ==, cell (promised->pdata[i], "columns"));
      faces_clear (&f);
    }
}

/* Text */

/* What the text has beside figures: the numbers of steps, ratios, the ratings of resistors, and
 * constants of the method in sentences. */
static const char not_figures[] = "(?m)^ *\\d+\\. |\\d+:\\d+|1/\\d W|across 75 Ω|360° minus|-1/2"
                                  "|Of each line, \\d+ %|rates 200 ppm|lines per field 0\\.25"
                                  "|line sync 5 %";

/* A number of the text: not a part of a word, such as the id of a raster. */
static const char a_number[] = "(?<![\\w.])\\d+(\\.\\d+)?(?!\\w*-)";

/* Whether @token is the figure of @exact, whatever the unit it is read in, rounded to its digits. */
static gboolean
is_rounded (const char *token, double exact)
{
  static const double units[] = { 1e-12, 1e-9, 1e-6, 1e-3, 1e-2, 1, 1e3, 1e6, 1e9 };
  const char *point = strchr (token, '.');
  double read = g_ascii_strtod (token, NULL);
  double half = 0.5 * pow (10, point != NULL ? -(double) strlen (point + 1) : 0);

  for (guint i = 0; i < G_N_ELEMENTS (units); i++)
    if (fabs (fabs (exact) / units[i] - read) <= half * (1 + 1e-9) + 1e-9 * read)
      return TRUE;
  return FALSE;
}

static gboolean
is_in_words (const Faces *f, const char *token)
{
  g_autofree char *quoted = g_regex_escape_string (token, -1);
  g_autofree char *pattern = g_strdup_printf ("(?<![\\d.])%s(?!\\d)", quoted);
  return g_regex_match_simple (pattern, f->words->str, 0, 0);
}

static gboolean
is_known (const Faces *f, const char *token)
{
  for (guint i = 0; i < f->csv->len; i++)
    if (is_rounded (token, g_array_index (f->csv, double, i)))
      return TRUE;
  return is_in_words (f, token);
}

static guint
check_text (const Faces *f, const char *command)
{
  g_autoptr (GRegex) without = g_regex_new (not_figures, 0, 0, NULL);
  g_autoptr (GRegex) number = g_regex_new (a_number, 0, 0, NULL);
  g_autofree char *text = g_regex_replace_literal (without, f->text, -1, 0, "", 0, NULL);
  g_autoptr (GMatchInfo) match = NULL;
  guint n = 0;

  for (g_regex_match (number, text, 0, &match); g_match_info_matches (match); n++)
    {
      g_autofree char *token = g_match_info_fetch (match, 0);
      if (!is_known (f, token))
        g_error ("%s: the text alone has %s:\n%s", command, token, f->text);
      g_match_info_next (match, NULL);
    }
  return n;
}

/* The keys of the JSON, and those that --keys tells */

static void
collect_keys (GHashTable *keys, JsonNode *node, const char *path)
{
  if (JSON_NODE_HOLDS_ARRAY (node))
    {
      g_autofree char *below = g_strconcat (path, "[]", NULL);
      g_autoptr (GList) elements = json_array_get_elements (json_node_get_array (node));
      for (GList *one = elements; one != NULL; one = one->next)
        collect_keys (keys, one->data, below);
    }
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return;
  JsonObject *object = json_node_get_object (node);
  g_autoptr (GList) members = json_object_get_members (object);
  for (GList *key = members; key != NULL; key = key->next)
    {
      char *whole = *path != '\0' ? g_strconcat (path, ".", key->data, NULL) : g_strdup (key->data);
      collect_keys (keys, json_object_get_member (object, key->data), whole);
      g_hash_table_add (keys, whole);
    }
}

/* --keys tells the keys that --json prints, each once, and no others. */
static void
check_keys (const char *command)
{
  g_autofree char *json = run_with (command, "--json");
  g_autofree char *told = run_with (command, "--keys --json");
  g_autoptr (JsonNode) node = json_from_string (json, NULL);
  g_autoptr (JsonNode) said = json_from_string (told, NULL);
  g_autoptr (GHashTable) keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  JsonArray *list = json_object_get_array_member (json_node_get_object (said), "keys");

  collect_keys (keys, node, "");
  for (guint i = 0; i < json_array_get_length (list); i++)
    {
      const char *key = json_object_get_string_member (json_array_get_object_element (list, i),
                                                       "key");
      if (!g_hash_table_remove (keys, key))
        g_error ("%s: --keys tells of %s, which is not there", command, key);
    }
  GHashTableIter iter;
  gpointer left;
  g_hash_table_iter_init (&iter, keys);
  if (g_hash_table_iter_next (&iter, &left, NULL))
    g_error ("%s: --keys does not tell of %s", command, (const char *) left);
}

/* Zero and unknown */

/* The figures of each command that can be nothing at all: what begins where it is counted from, a level at
 * blanking, a picture without setup or border, pulses that a raster has none of, what is exactly as it
 * should be. Every other figure is above zero or is not known, which is null in JSON and never 0. */
static const struct
{
  const char *command;
  const char *keys;
} can_be_zero[] = {
  { "catalogue", " h_border v_border h_datum_s equalising_before equalising_after v_front_porch " },
  { "timing", " h_border v_border h_datum_s equalising_before equalising_after v_front_porch " },
  { "identify", " line_rate_error_ppm field_rate_error_ppm score certainty " },
  { "solve", " uncertainty " },
  { "readings", " value allowed_low deviation to_limit " },
  { "levels", " black_v blanking_v setup_ire v ire percent luma_v y_v pb_v pr_v r_v g_v b_v min_v max_v c_min_v "
              "c_max_v chroma_pp_v " },
  { "sync", " rest level at_s due_s late late_s phase_s v_offset_s delay_s static_s peak_s picture_s "
            "picture_share bend_s settle_lines glitches extra_edges half_line_edges inverted_pulses early "
            "missing equalising_before equalising_after serrations " },
  { "cause", " deviation low high expected_low expected_high " },
  { "detail", " gain " },
  { "fit", " value low high margin not_judged " },
  { "hookup", " echo count " }, /* of pins that are left open */
};

static gboolean
may_be_zero (const char *command, const char *key)
{
  g_autofree char *word = g_strdup_printf (" %s ", key);
  for (guint i = 0; i < G_N_ELEMENTS (can_be_zero); i++)
    if (g_str_has_prefix (command, can_be_zero[i].command))
      return strstr (can_be_zero[i].keys, word) != NULL;
  return FALSE;
}

static void
check_zeros (const char *command, const char *key, JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    {
      JsonObject *object = json_node_get_object (node);
      g_autoptr (GList) members = json_object_get_members (object);
      for (GList *one = members; one != NULL; one = one->next)
        check_zeros (command, one->data, json_object_get_member (object, one->data));
    }
  else if (JSON_NODE_HOLDS_ARRAY (node))
    {
      g_autoptr (GList) elements = json_array_get_elements (json_node_get_array (node));
      for (GList *one = elements; one != NULL; one = one->next)
        check_zeros (command, key, one->data);
    }
  else if (JSON_NODE_HOLDS_VALUE (node)
           && (json_node_get_value_type (node) == G_TYPE_INT64
               || json_node_get_value_type (node) == G_TYPE_DOUBLE)
           && !(fabs (json_node_get_double (node)) > 0) && !may_be_zero (command, key))
    g_error ("%s: %s is 0, where what is not known is null", command, key);
}

/* Returns how many numbers the text has. */
static guint
check (const char *command)
{
  Faces f = { 0 };
  faces_read (&f, command);
  check_json_in_csv (&f, command);
  check_csv_in_json (&f, command);
  check_keys (command);
  g_autoptr (JsonNode) root = json_node_init_object (json_node_alloc (), f.root);
  check_zeros (command, "", root);
  guint n = check_text (&f, command);
  faces_clear (&f);
  return n;
}

/* Tests */

static void
test_calculations (void)
{
  static const char *const commands[] = {
    "timing 525-59.94-interlaced",
    "timing 625-50-interlaced",
    "timing 525-59.94-progressive",
    "timing vesa-dmt-04",
    "catalogue rasters",
    "catalogue monitors",
    "catalogue sources",
    "catalogue adaptors",
    "sheet-check --list",
    "solve line-rate=15.734kHz field-rate=59.94Hz",
    "readings --list",
    "readings --standard smpte-170m line_sync=4.7us setup_level=0V front_porch=1.2us",
    "identify --line-rate 15.734kHz --field-rate 59.94Hz",
    "levels --system ntsc-m --kind composite --bars 75",
    "levels --system pal-b --kind yc",
    "levels --system pal-b --kind composite --capacitor 220uF",
    "levels --system none --kind rgb",
    "levels --system none --kind component --bars 100",
    "pad --from 5V --to 300mV --driver 50ohm",
    "pad --match --from 5V --to 300mV --driver 50ohm",
    "pad --match --driver 75ohm --load 50ohm",
    "pad --loss 6dB --from 2V",
    "work-back --open 2.45V --loaded 380mV",
    "work-back --level 1.4V",
    "sync 525-59.94-interlaced --gate xor",
    "sync 525-59.94-interlaced --gate standard",
    "cause --system pal-b --kind composite --white 1.4V --sync-level 0.6V",
    "detail --diagonal 19in --aspect 4:3 --mask slot --pitch 0.45mm",
  };
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    g_assert_cmpuint (check (commands[i]), >, 5);
}

static guint
count_groups (GKeyFile *sheet, const char *what)
{
  for (guint n = 0;; n++)
    {
      g_autofree char *group = g_strdup_printf ("%s %u", what, n + 1);
      if (!g_key_file_has_group (sheet, group))
        return n;
    }
}

/* What is said of a source at one of the inputs. */
static void
check_source (const char *path, guint source, guint inputs)
{
  static const char *const commands[] = { "hookup", "detail" };
  for (guint i = 0; i < G_N_ELEMENTS (commands); i++)
    {
      g_autofree char *command = g_strdup_printf ("%s '%s' --source %u --input %u", commands[i],
                                                  path, source, source % inputs + 1);
      guint figures = check (command);
      if (strstr (path, "nothing-known") == NULL) /* of which there is none to say */
        g_assert_cmpuint (figures, >, 0);
    }
}

/* Its fit, and @most of its sources, from number @first on. */
static void
check_sheet (const char *path, guint first, guint most)
{
  g_autoptr (GKeyFile) sheet = g_key_file_new ();
  g_autofree char *fit = g_strdup_printf ("fit '%s'", path);
  g_autofree char *findings = g_strdup_printf ("fit '%s' --findings", path);

  g_assert_true (g_key_file_load_from_file (sheet, path, 0, NULL));
  guint inputs = count_groups (sheet, "input"), sources = count_groups (sheet, "source");
  check (fit);
  check (findings);
  for (guint i = 0; i < MIN (most, sources) && inputs > 0; i++)
    check_source (path, (first + i) % sources + 1, inputs);
}

static void
test_demo (void)
{
  g_autofree char *demo = demo_path ();
  check_sheet (demo, 0, G_MAXUINT);
}

/* One source of each; the name says which, so that it is always the same. */
static void
test_sheets (void)
{
  g_autofree char *folder = source_path ("tests/sheets");
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  g_assert_nonnull (dir);
  for (const char *name = g_dir_read_name (dir); name != NULL; name = g_dir_read_name (dir))
    if (g_str_has_suffix (name, ".bench"))
      {
        g_autofree char *path = g_build_filename (folder, name, NULL);
        check_sheet (path, g_str_hash (name), 1);
        n++;
      }
  g_assert_cmpuint (n, >, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/faces/columns", test_columns);
  g_test_add_func ("/faces/calculations", test_calculations);
  g_test_add_func ("/faces/demo", test_demo);
  g_test_add_func ("/faces/sheets", test_sheets);
  return g_test_run ();
}
