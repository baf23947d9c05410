/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every CTA-861 format and every DMT of the catalogue against the printout of edid-decode (Debian
 * package edid-decode; the differences were reviewed with 0.1~git20220315.cb74358c2896-1). Where
 * the two differ, tests/reference/edid-decode-differences.tsv says so and why; the list may only
 * shrink. Without edid-decode these tests fail. */
#include <stdlib.h>
#include <string.h>

#include "printed.h"

/* Half of the last digit that edid-decode prints. */
#define CLOCK_ROUNDING_HZ 0.51
#define LINE_RATE_ROUNDING_HZ 0.51
#define FIELD_RATE_ROUNDING_HZ 5.1e-7

/* What edid-decode says of the catalogue entry @id: cta-861-vic-N..., or vesa-dmt-XX. */
static Printed
printed_for (const char *id)
{
  if (g_str_has_prefix (id, "vesa-dmt-"))
    {
      g_autofree char *code = g_strconcat ("0x", id + strlen ("vesa-dmt-"), NULL);
      return ask_edid_decode ("--dmt", code);
    }
  g_autofree char *code = g_strdup_printf ("%d", atoi (id + strlen ("cta-861-vic-")));
  return ask_edid_decode ("--vic", code);
}

/* Differences */

typedef struct
{
  const char *id;
  GPtrArray *listed; /* rows of the table */
} Comparison;

static GHashTable *
listed_difference (GPtrArray *rows, const char *id, const char *quantity)
{
  for (guint i = 0; i < rows->len; i++)
    if (strcmp (cell (rows->pdata[i], "catalogue_id"), id) == 0
        && strcmp (cell (rows->pdata[i], "quantity"), quantity) == 0)
      return rows->pdata[i];
  return NULL;
}

static void
compare (const Comparison *c, const char *quantity, double ours, double theirs, double rounding)
{
  GHashTable *row = listed_difference (c->listed, c->id, quantity);
  if (row == NULL)
    {
      if (!is_near (ours, theirs, rounding))
        g_test_fail_printf ("%s %s: %.17g, edid-decode prints %.17g", c->id, quantity, ours,
                            theirs);
      return;
    }
  if (is_near (ours, theirs, rounding))
    g_test_fail_printf ("%s %s no longer differs: take it off the list", c->id, quantity);
  g_assert_true (is_near (ours, number (row, "catalogue"), rounding));
  g_assert_true (is_near (theirs, number (row, "edid_decode"), rounding));
}

static void
compare_shape (const Comparison *c, JsonObject *timing, const Printed *printed)
{
  gboolean interlaced = strcmp (json_object_get_string_member (timing, "scan"), "interlaced") == 0;

  compare (c, "interlaced", interlaced, printed->interlaced, 0);
  compare (c, "h_active", figure_of (timing, "h_active"), printed->h_active, 0);
  compare (c, "h_front_porch", figure_of (timing, "h_front_porch"), printed->h_front_porch, 0);
  compare (c, "h_sync", figure_of (timing, "h_sync"), printed->h_sync, 0);
  compare (c, "h_back_porch", figure_of (timing, "h_back_porch"), printed->h_back_porch, 0);
  compare (c, "h_border", figure_of (timing, "h_border"), printed->h_border, 0);
  compare (c, "v_active", whole_frame (timing), printed->v_active, 0);
  compare (c, "v_sync", figure_of (timing, "v_sync"), printed->v_sync, 0);
  compare (c, "v_back_porch", figure_of (timing, "v_back_porch"), printed->v_back_porch, 0);
  compare (c, "v_border", figure_of (timing, "v_border"), printed->v_border, 0);
  compare (c, "h_polarity", is_positive (timing, "h_sync_polarity"), printed->h_positive, 0);
  compare (c, "v_polarity", is_positive (timing, "v_sync_polarity"), printed->v_positive, 0);
}

static void
test_entry (gconstpointer data)
{
  const Comparison *c = data;
  g_autoptr (JsonObject) timing = timing_of (c->id);
  Printed printed = printed_for (c->id);

  compare_shape (c, timing, &printed);
  compare (c, "v_front_porch", figure_of (timing, "v_front_porch"), printed.v_front_porch, 0);
  compare (c, "v_total", figure_of (timing, "lines_per_frame"), printed.v_total, 0);
  compare (c, "pixel_clock_hz", figure_of (timing, "pixel_clock_hz"), printed.pixel_clock_hz,
           CLOCK_ROUNDING_HZ);
  compare (c, "line_rate_hz", figure_of (timing, "line_rate_hz"), printed.line_rate_hz,
           LINE_RATE_ROUNDING_HZ);
  compare (c, "field_rate_hz", figure_of (timing, "field_rate_hz"), printed.field_rate_hz,
           FIELD_RATE_ROUNDING_HZ);
}

/* Relatives of a format under the same code: the other rate of a 1000/1001 pair, and the longer
 * line totals that CTA-861 allows, which lie in the front porch. */

static gboolean
is_line_total (const char *suffix)
{
  return strcmp (suffix, "263") == 0 || strcmp (suffix, "313") == 0 || strcmp (suffix, "314") == 0;
}

/* CTA-861 prints the clock of format 1 as 25.175 MHz; its pair is 25.2 MHz and 25.2 MHz/1.001. */
static double
pair_clock_hz (int vic, double printed_hz, gboolean to_1001)
{
  if (vic == 1)
    return to_1001 ? 25.2e6 / 1.001 : 25.2e6;
  return to_1001 ? printed_hz / 1.001 : printed_hz * 1.001;
}

static void
test_relative (gconstpointer data)
{
  const Comparison *c = data;
  g_auto (GStrv) parts = g_strsplit (c->id + strlen ("cta-861-vic-"), "-", -1);
  g_autoptr (JsonObject) timing = timing_of (c->id);
  Printed printed = printed_for (c->id);
  double clock_hz = printed.pixel_clock_hz;
  double lines = printed.v_total;

  for (char **part = parts + 1; *part != NULL; part++)
    if (is_line_total (*part))
      lines = g_ascii_strtod (*part, NULL);
    else
      clock_hz = pair_clock_hz (atoi (parts[0]), clock_hz, strchr (*part, '.') != NULL);
  double line_rate_hz = clock_hz / figure_of (timing, "h_total");

  compare_shape (c, timing, &printed);
  compare (c, "v_front_porch", figure_of (timing, "v_front_porch"),
           printed.v_front_porch + lines - printed.v_total, 0);
  compare (c, "v_total", figure_of (timing, "lines_per_frame"), lines, 0);
  compare (c, "pixel_clock_hz", figure_of (timing, "pixel_clock_hz"), clock_hz, CLOCK_ROUNDING_HZ);
  compare (c, "field_rate_hz", figure_of (timing, "field_rate_hz"),
           line_rate_hz / lines * (printed.interlaced ? 2 : 1), FIELD_RATE_ROUNDING_HZ * 2);
}

/* Each listed difference must still be one: a row whose entry went away fails here. */
static void
test_list_only_shrinks (gconstpointer data)
{
  GPtrArray *listed = (GPtrArray *) data;
  g_assert_cmpuint (listed->len, <=, 7); /* rows when the list was made */
  for (guint i = 0; i < listed->len; i++)
    {
      GHashTable *row = listed->pdata[i];
      const char *quantity = cell (row, "quantity");
      const char *key = strcmp (quantity, "v_total") == 0 ? "lines_per_frame" : quantity;
      g_autoptr (JsonObject) timing = timing_of (cell (row, "catalogue_id"));
      g_assert_true (
          is_near (figure_of (timing, key), number (row, "catalogue"), FIELD_RATE_ROUNDING_HZ));
      g_assert_false (
          is_near (number (row, "catalogue"), number (row, "edid_decode"), FIELD_RATE_ROUNDING_HZ));
    }
}

/* A format without a suffix is printed as it stands. */
static gboolean
is_relative (const char *id)
{
  return g_str_has_prefix (id, "cta-861-vic-")
         && strchr (id + strlen ("cta-861-vic-"), '-') != NULL;
}

static void
add_entries (GPtrArray *ids, GPtrArray *comparisons, GPtrArray *listed)
{
  for (guint i = 0; i < ids->len; i++)
    {
      const char *id = ids->pdata[i];
      if (!g_str_has_prefix (id, "cta-861-vic-") && !g_str_has_prefix (id, "vesa-dmt-"))
        continue;
      Comparison *c = g_new (Comparison, 1);
      *c = (Comparison){ id, listed };
      g_ptr_array_add (comparisons, c);
      g_autofree char *path = g_strconcat ("/edid-decode/", id, NULL);
      g_test_add_data_func (path, c, is_relative (id) ? test_relative : test_entry);
    }
}

static GPtrArray *
catalogue_ids (void)
{
  g_autoptr (Run) run = run_cli ("timing", "--list", "--json", NULL);
  g_autoptr (JsonObject) root = run_json (run);
  JsonArray *rasters = json_object_get_array_member (root, "rasters");
  GPtrArray *ids = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; i < json_array_get_length (rasters); i++)
    {
      JsonObject *raster = json_array_get_object_element (rasters, i);
      g_ptr_array_add (ids, g_strdup (json_object_get_string_member (raster, "id")));
    }
  return ids;
}

/* The catalogue must have what a picture tube may be asked to show; 86 of 88 DMT entries are no
 * wider than 2560 pixels, and CTA-861-H has that many formats without 4K ones. */
static void
test_all_are_there (gconstpointer data)
{
  const GPtrArray *comparisons = data;
  guint dmt = 0;
  guint vic = 0;
  for (guint i = 0; i < comparisons->len; i++)
    {
      const Comparison *c = comparisons->pdata[i];
      dmt += g_str_has_prefix (c->id, "vesa-dmt-");
      vic += !g_str_has_prefix (c->id, "vesa-dmt-") && !is_relative (c->id);
    }
  g_assert_cmpuint (dmt, >=, 86);
  g_assert_cmpuint (vic, >=, 90);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  GPtrArray *listed = read_table ("edid-decode-differences.tsv");
  GPtrArray *comparisons = g_ptr_array_new_with_free_func (g_free);
  GPtrArray *ids = catalogue_ids ();

  add_entries (ids, comparisons, listed);
  g_test_add_data_func ("/edid-decode/all-are-there", comparisons, test_all_are_there);
  g_test_add_data_func ("/edid-decode/list-only-shrinks", listed, test_list_only_shrinks);
  int status = g_test_run ();
  g_ptr_array_unref (ids);
  g_ptr_array_unref (comparisons);
  g_ptr_array_unref (listed);
  return status;
}
