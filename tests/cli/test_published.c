/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every row of the published tables in tests/reference against `breezeway-cli timing ID --json`.
 * Each row of the tables names its source. */
#include <math.h>
#include <string.h>

#include "run.h"

/* Half of the last digit that the tables print for rates. */
#define RATE_ROUNDING_HZ 5.1e-7

static JsonObject *
cached_timing (const char *id)
{
  static GHashTable *cache;
  if (cache == NULL)
    cache = g_hash_table_new_full (g_str_hash, g_str_equal, g_free,
                                   (GDestroyNotify) json_object_unref);
  JsonObject *timing = g_hash_table_lookup (cache, id);
  if (timing == NULL)
    {
      timing = timing_of (id);
      g_hash_table_insert (cache, g_strdup (id), timing);
    }
  return timing;
}

/* rasters.tsv: CTA-861-H and VESA DMT */

static void
check_equal (JsonObject *timing, const char *key, GHashTable *row, const char *column)
{
  double published = number (row, column);
  double ours = figure_of (timing, key);
  if (!is_near (ours, published, 0))
    g_test_fail_printf ("%s: %.17g, published as %.17g", key, ours, published);
}

static void
check_rate (JsonObject *timing, const char *key, GHashTable *row, const char *column)
{
  double published = number (row, column);
  double ours = figure_of (timing, key);
  if (!is_near (ours, published, RATE_ROUNDING_HZ))
    g_test_fail_printf ("%s: %.17g, published as %.17g", key, ours, published);
}

/* Either both figures or neither. */
static void
check_optional (JsonObject *timing, const char *key, GHashTable *row, const char *column)
{
  if (*cell (row, column) == '\0')
    g_assert_true (is_null (timing, key));
  else
    check_equal (timing, key, row, column);
}

static void
check_vertical (JsonObject *timing, GHashTable *row)
{
  gboolean interlaced = strcmp (cell (row, "scan"), "interlaced") == 0;
  double active = figure_of (timing, "v_active");
  if (interlaced)
    active += figure_of (timing, "v_active_field_2");

  g_assert_true (is_near (active, number (row, "v_active"), 0));
  check_equal (timing, "v_front_porch", row, "v_front_porch");
  check_equal (timing, "v_sync", row, "v_sync");
  check_equal (timing, "v_back_porch", row, "v_back_porch");
  check_equal (timing, "v_border", row, "v_border");
  check_optional (timing, "v_front_porch_field_2", row, "v_front_porch_f2");
  check_optional (timing, "v_sync_field_2", row, "v_sync_f2");
  check_optional (timing, "v_back_porch_field_2", row, "v_back_porch_f2");
  check_equal (timing, "lines_per_frame", row, "v_total");
  g_assert_true (is_near (figure_of (timing, "lines_per_field"),
                          number (row, "v_total") / (interlaced ? 2 : 1), 0));
}

static void
test_raster (gconstpointer data)
{
  GHashTable *row = (GHashTable *) data;
  JsonObject *timing = cached_timing (cell (row, "catalogue_id"));

  g_assert_cmpstr (json_object_get_string_member (timing, "id"), ==, cell (row, "catalogue_id"));
  g_assert_cmpstr (json_object_get_string_member (timing, "scan"), ==, cell (row, "scan"));
  check_equal (timing, "h_active", row, "h_active");
  check_equal (timing, "h_front_porch", row, "h_front_porch");
  check_equal (timing, "h_sync", row, "h_sync");
  check_equal (timing, "h_back_porch", row, "h_back_porch");
  check_equal (timing, "h_border", row, "h_border");
  check_equal (timing, "h_total", row, "h_total");
  check_vertical (timing, row);
  check_rate (timing, "pixel_clock_hz", row, "pixel_clock_hz");
  check_rate (timing, "line_rate_hz", row, "line_rate_hz");
  check_rate (timing, "field_rate_hz", row, "field_rate_hz");
  g_assert_cmpstr (json_object_get_string_member (timing, "h_sync_polarity"), ==,
                   cell (row, "h_pol"));
  g_assert_cmpstr (json_object_get_string_member (timing, "v_sync_polarity"), ==,
                   cell (row, "v_pol"));
}

/* broadcast.tsv: the broadcast systems, in time */

static double
sum_of (JsonObject *timing, const char *a, const char *b, const char *c)
{
  return figure_of (timing, a) + figure_of (timing, b) + figure_of (timing, c);
}

static double
blanking_lines (JsonObject *timing)
{
  return sum_of (timing, "v_front_porch", "v_sync", "v_back_porch");
}

/* Field blanking as each standard counts it: SMPTE 170M ends it with the front porch of the line
 * that follows, ITU-R BT.470 with that line's whole blanking. */
static double
field_blanking_s (JsonObject *timing)
{
  gboolean smpte = is_near (figure_of (timing, "lines_per_frame"), 525, 0);
  return blanking_lines (timing) * figure_of (timing, "line_period_s")
         + figure_of (timing, smpte ? "h_front_porch_s" : "h_blanking_s");
}

static double
active_to_datum_s (JsonObject *timing)
{
  return figure_of (timing, "h_front_porch_s") + figure_of (timing, "h_datum_s");
}

static double
datum_to_active_s (JsonObject *timing)
{
  return figure_of (timing, "h_sync_s") + figure_of (timing, "h_back_porch_s")
         - figure_of (timing, "h_datum_s");
}

static double
field_period_s (JsonObject *timing)
{
  return 1 / figure_of (timing, "field_rate_hz");
}

static double
frame_period_s (JsonObject *timing)
{
  return 1 / figure_of (timing, "frame_rate_hz");
}

static double
broad_pulse_s (JsonObject *timing)
{
  return figure_of (timing, "line_period_s") / 2 - figure_of (timing, "serration_width_s");
}

static double
after_lines (JsonObject *timing)
{
  return figure_of (timing, "equalising_after") / 2;
}

static double
picture_lines (JsonObject *timing)
{
  return figure_of (timing, "v_active") + figure_of (timing, "v_active_field_2");
}

/* How each quantity of the table follows from the JSON: a key, or a function. What stands there
 * without either says nothing about a raster: it belongs to colour or to the shape of an edge. */
static const struct
{
  const char *quantity;
  const char *key;
  double (*figure) (JsonObject *timing);
} quantities[] = {
  { "lines_per_frame", "lines_per_frame", NULL },
  { "pixel_clock", "pixel_clock_hz", NULL },
  { "line_rate", "line_rate_hz", NULL },
  { "line_period", "line_period_s", NULL },
  { "field_rate", "field_rate_hz", NULL },
  { "field_period", NULL, field_period_s },
  { "frame_period", NULL, frame_period_s },
  { "h_front_porch", "h_front_porch_s", NULL },
  { "h_sync", "h_sync_s", NULL },
  { "h_back_porch", "h_back_porch_s", NULL },
  { "h_active", "h_active_s", NULL },
  { "h_blanking", "h_blanking_s", NULL },
  { "active_to_datum", NULL, active_to_datum_s },
  { "datum_to_active", NULL, datum_to_active_s },
  { "v_front_porch", "v_front_porch", NULL },
  { "v_sync", "v_sync", NULL },
  { "v_blanking", NULL, field_blanking_s },
  { "v_blanking_lines", NULL, blanking_lines },
  { "v_blanking_to_first_equalising", "h_front_porch_s", NULL },
  { "picture_lines_per_frame", NULL, picture_lines },
  { "equalising_before", "equalising_before", NULL },
  { "equalising_after", "equalising_after", NULL },
  { "equalising_after_lines", NULL, after_lines },
  { "equalising_width", "equalising_width_s", NULL },
  { "serration_width", "serration_width_s", NULL },
  { "broad_pulse_width", NULL, broad_pulse_s },
  { "subcarrier", NULL, NULL },
  { "datum_to_burst", NULL, NULL },
  { "breezeway", NULL, NULL },
  { "burst_cycles", NULL, NULL },
  { "burst_length", NULL, NULL },
  { "sync_rise_time", NULL, NULL },
  { "blanking_rise_time", NULL, NULL },
};

static gsize
find_quantity (const char *name)
{
  for (gsize i = 0; i < G_N_ELEMENTS (quantities); i++)
    if (strcmp (quantities[i].quantity, name) == 0)
      return i;
  g_error ("no test knows the quantity “%s”", name);
}

/* The row's unit in base units. Clocks are those of the raster's own pixel clock. */
static double
unit_of (GHashTable *row, JsonObject *timing)
{
  const char *unit = cell (row, "unit");
  if (strcmp (unit, "us") == 0)
    return 1e-6;
  if (strcmp (unit, "ms") == 0)
    return 1e-3;
  if (strcmp (unit, "clocks") == 0)
    return 1 / figure_of (timing, "pixel_clock_hz");
  if (strcmp (unit, "Hz") == 0 || strcmp (unit, "lines") == 0 || strcmp (unit, "pulses") == 0)
    return 1;
  g_error ("no test knows the unit “%s”", unit);
}

static double
figure_for (gsize quantity, JsonObject *timing)
{
  return quantities[quantity].key != NULL ? figure_of (timing, quantities[quantity].key)
                                          : quantities[quantity].figure (timing);
}

static gboolean
is_of_a_raster (gsize quantity)
{
  return quantities[quantity].key != NULL || quantities[quantity].figure != NULL;
}

/* What the source allows. Without a tolerance the value is exact, but for a value that the source
 * calls rounded. The last term is for the rounding of doubles and of the table's 17 digits. */
static double
tolerance (GHashTable *row, const char *column)
{
  double rounding = fabs (number (row, "value")) * 1e-12;
  if (*cell (row, column) != '\0')
    return number (row, column) + rounding;
  return strstr (cell (row, "source"), "rounded") != NULL ? 0.05 : rounding;
}

static void
test_nominal (gconstpointer data)
{
  GHashTable *row = (GHashTable *) data;
  gsize quantity = find_quantity (cell (row, "quantity"));
  JsonObject *timing = cached_timing (cell (row, "catalogue_id"));
  double ours = figure_for (quantity, timing) / unit_of (row, timing);
  double published = number (row, "value");

  if (ours > published + tolerance (row, "plus") || ours < published - tolerance (row, "minus"))
    g_test_fail_printf ("%.17g %s, published as %.17g by %s", ours, cell (row, "unit"), published,
                        cell (row, "source"));
}

/* One end of a range for which the source gives no nominal value. */
static void
test_range_end (gconstpointer data)
{
  GHashTable *row = (GHashTable *) data;
  gboolean is_max = g_str_has_suffix (cell (row, "quantity"), "_max");
  g_autofree char *name = g_strndup (cell (row, "quantity"), strlen (cell (row, "quantity")) - 4);
  JsonObject *timing = cached_timing (cell (row, "catalogue_id"));
  double ours = figure_for (find_quantity (name), timing) / unit_of (row, timing);
  double end = number (row, "value");

  if (is_max ? ours > end : ours < end)
    g_test_fail_printf ("%.17g %s is beyond %.17g of %s", ours, cell (row, "unit"), end,
                        cell (row, "source"));
}

static void
add_broadcast_row (GHashTable *row, guint index)
{
  const char *quantity = cell (row, "quantity");
  gboolean is_end = g_str_has_suffix (quantity, "_min") || g_str_has_suffix (quantity, "_max");
  g_autofree char *name = g_strndup (quantity, strlen (quantity) - (is_end ? 4 : 0));
  if (!is_of_a_raster (find_quantity (name)))
    return;
  g_autofree char *path = g_strdup_printf ("/published/broadcast/%s/%s/row-%u",
                                           cell (row, "catalogue_id"), quantity, index + 1);
  g_test_add_data_func (path, row, is_end ? test_range_end : test_nominal);
}

/* A table that lost its rows must not pass. */
static void
test_tables_are_whole (void)
{
  g_autoptr (GPtrArray) rasters = read_table ("rasters.tsv");
  g_autoptr (GPtrArray) broadcast = read_table ("broadcast.tsv");
  g_assert_cmpuint (rasters->len, >=, 76);
  g_assert_cmpuint (broadcast->len, >=, 215);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  GPtrArray *rasters = read_table ("rasters.tsv");
  GPtrArray *broadcast = read_table ("broadcast.tsv");

  g_test_add_func ("/published/tables-are-whole", test_tables_are_whole);
  for (guint i = 0; i < rasters->len; i++)
    {
      g_autofree char *path = g_strdup_printf ("/published/rasters/%s",
                                               cell (rasters->pdata[i], "catalogue_id"));
      g_test_add_data_func (path, rasters->pdata[i], test_raster);
    }
  for (guint i = 0; i < broadcast->len; i++)
    add_broadcast_row (broadcast->pdata[i], i);
  int status = g_test_run ();
  g_ptr_array_unref (rasters);
  g_ptr_array_unref (broadcast);
  return status;
}
