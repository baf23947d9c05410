/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Rasters that cannot exist, rasters in files, and made-up rasters. */
#include "core/raster/raster.h"

#include <math.h>
#include <string.h>

#include "properties.h"
#include "support.h"

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *word = bw_test_path_word (name);
  g_autofree char *path = g_strdup_printf ("/raster-faults/%s/%s", group, word);
  g_test_add_data_func (path, data, func);
}

static const BwRaster *
shipped (const char *id)
{
  const BwRaster *raster = bw_catalogue_raster (bw_test_catalogue (), id);
  if (raster == NULL)
    g_error ("there is no raster %s", id);
  return raster;
}

/* Saving and loading every raster of the catalogue */

static void
test_round_trip (gconstpointer data)
{
  const BwRaster *raster = data;
  g_autofree char *fault = bw_property_raster_kept (raster);
  g_assert_cmpstr (fault, ==, NULL);
  g_autofree char *odd = bw_property_raster (raster);
  g_assert_cmpstr (odd, ==, NULL);
}

static void
test_copy (void)
{
  const BwRaster *raster = shipped ("525-59.94-interlaced");
  g_autoptr (BwRaster) copy = bw_raster_copy (raster);
  g_autoptr (GKeyFile) a = g_key_file_new ();
  g_autoptr (GKeyFile) b = g_key_file_new ();

  bw_raster_save (raster, a, "g");
  bw_raster_save (copy, b, "g");
  g_autofree char *text_a = g_key_file_to_data (a, NULL, NULL);
  g_autofree char *text_b = g_key_file_to_data (b, NULL, NULL);
  g_assert_cmpstr (text_a, ==, text_b);
  g_assert_cmpstr (copy->id, ==, raster->id);
  g_assert_true (copy->id != raster->id && copy->name != raster->name);
}

/* Faults: a sound raster with one thing changed */

static BwRaster *
sound_pixels (void)
{
  BwRaster *raster = bw_raster_copy (shipped ("vesa-dmt-04"));
  g_assert_true (bw_raster_check (raster, NULL));
  return raster;
}

static BwRaster *
sound_time (void)
{
  BwRaster *raster = bw_raster_copy (shipped ("625-50-interlaced"));
  g_assert_true (bw_raster_check (raster, NULL));
  return raster;
}

#define CHANGE(name, statement)                                                                    \
  static void change_##name (BwRaster *r)                                                          \
  {                                                                                                \
    statement;                                                                                     \
  }

CHANGE (no_line_rate, r->line_rate_hz = BW_RATIO_NONE)
CHANGE (negative_line_rate, r->line_rate_hz.num = -15625)
CHANGE (negative_clock, r->pixel_clock_hz.num = -25175000)
CHANGE (no_pixels, r->h_active = 0)
CHANGE (negative_pixels, r->h_active = -640)
CHANGE (no_lines, r->field[0].active = r->field[1].active = 0)
CHANGE (one_half_line, r->field[1].active = 1)
CHANGE (no_line_sync, r->h_sync = 0)
CHANGE (negative_line_sync, r->h_sync = -96)
CHANGE (no_line_sync_s, r->h_sync_s = 0)
CHANGE (no_field_sync, r->field[0].sync = r->field[1].sync = 0)
CHANGE (no_field_sync_2, r->field[1].sync = 0)
CHANGE (negative_front, r->h_front_porch = -1)
CHANGE (negative_back, r->h_back_porch = -1)
CHANGE (negative_border, r->h_border = -8)
CHANGE (negative_front_s, r->h_front_porch_s = -1e-6)
CHANGE (negative_back_s, r->h_back_porch_s = -1e-6)
CHANGE (negative_v_front, r->field[0].front_porch = -1)
CHANGE (negative_v_back_2, r->field[1].back_porch = -1)
CHANGE (negative_v_border, r->v_border = -1)
CHANGE (long_sync, r->h_sync_s = 60e-6)
CHANGE (exactly_full, (r->h_front_porch_s = 2e-6, r->h_sync_s = 2e-6, r->h_back_porch_s = 60e-6))
CHANGE (odd_half_line, (r->field[0].back_porch++, r->field[1].back_porch++))
CHANGE (second_field, r->field[1].back_porch += 2)
CHANGE (interlaced_half_line, r->field[0].back_porch++)
CHANGE (border_in_time, r->v_border = 8)
CHANGE (h_border_in_time, r->h_border = 8)
CHANGE (pulses_without_width, r->equalising_width_s = 0)
CHANGE (pulses_too_wide, r->equalising_width_s = 32e-6)
CHANGE (negative_width, r->equalising_width_s = -1e-6)
CHANGE (negative_pulses, r->equalising_before = -5)
CHANGE (too_many_pulses, r->equalising_before = 6)
CHANGE (too_many_pulses_after, r->equalising_after = 41)
CHANGE (too_many_pulses_2, (r->field[1].front_porch -= 2, r->field[1].back_porch += 2))
CHANGE (serration_too_wide, r->serration_width_s = 32e-6)
CHANGE (negative_serration, r->serration_width_s = -1e-6)
CHANGE (odd_tri_level, (r->sync_shape = BW_SHAPE_TRILEVEL, r->h_sync = 97))
CHANGE (slow_lines, r->line_rate_hz = ((BwRatio){ 999, 1 }))
CHANGE (fast_lines, (r->line_rate_hz = ((BwRatio){ 1000001, 1 }), r->h_sync_s = 1e-8,
                     r->h_front_porch_s = r->h_back_porch_s = 1e-8))
CHANGE (slow_fields, r->field[0].active = r->field[1].active = 65534)
CHANGE (fast_fields, (r->v_border = 0, r->field[0] = r->field[1] = (BwFieldTiming){ 2, 0, 2, 0 }))

typedef struct
{
  const char *name;
  BwRaster *(*sound) (void);
  void (*change) (BwRaster *raster);
  BwRasterError code;
} FaultCase;

static const FaultCase fault_cases[] = {
  { "no-line-rate", sound_time, change_no_line_rate, BW_RASTER_ERROR_NO_RATE },
  { "negative-line-rate", sound_time, change_negative_line_rate, BW_RASTER_ERROR_NO_RATE },
  { "negative-clock", sound_pixels, change_negative_clock, BW_RASTER_ERROR_NO_RATE },
  { "no-pixels", sound_pixels, change_no_pixels, BW_RASTER_ERROR_NO_PICTURE },
  { "negative-pixels", sound_pixels, change_negative_pixels, BW_RASTER_ERROR_NO_PICTURE },
  { "no-lines", sound_pixels, change_no_lines, BW_RASTER_ERROR_NO_PICTURE },
  { "one-half-line-in-field-2", sound_time, change_one_half_line, BW_RASTER_ERROR_NO_PICTURE },
  { "no-line-sync", sound_pixels, change_no_line_sync, BW_RASTER_ERROR_NO_SYNC },
  { "negative-line-sync", sound_pixels, change_negative_line_sync, BW_RASTER_ERROR_NO_SYNC },
  { "no-line-sync-in-time", sound_time, change_no_line_sync_s, BW_RASTER_ERROR_NO_SYNC },
  { "no-field-sync", sound_pixels, change_no_field_sync, BW_RASTER_ERROR_NO_SYNC },
  { "no-field-sync-in-field-2", sound_time, change_no_field_sync_2, BW_RASTER_ERROR_NO_SYNC },
  { "negative-front-porch", sound_pixels, change_negative_front, BW_RASTER_ERROR_PORCH },
  { "negative-back-porch", sound_pixels, change_negative_back, BW_RASTER_ERROR_PORCH },
  { "negative-border", sound_pixels, change_negative_border, BW_RASTER_ERROR_PORCH },
  { "negative-front-porch-in-time", sound_time, change_negative_front_s, BW_RASTER_ERROR_PORCH },
  { "negative-back-porch-in-time", sound_time, change_negative_back_s, BW_RASTER_ERROR_PORCH },
  { "negative-field-front-porch", sound_time, change_negative_v_front, BW_RASTER_ERROR_PORCH },
  { "negative-back-porch-of-field-2", sound_time, change_negative_v_back_2, BW_RASTER_ERROR_PORCH },
  { "negative-field-border", sound_pixels, change_negative_v_border, BW_RASTER_ERROR_PORCH },
  { "sync-longer-than-the-line", sound_time, change_long_sync, BW_RASTER_ERROR_LINE_TOTAL },
  { "blanking-as-long-as-the-line", sound_time, change_exactly_full, BW_RASTER_ERROR_LINE_TOTAL },
  { "half-line-in-a-progressive-field", sound_pixels, change_odd_half_line,
    BW_RASTER_ERROR_HALF_LINE },
  { "two-fields-in-a-progressive-raster", sound_pixels, change_second_field,
    BW_RASTER_ERROR_HALF_LINE },
  { "half-line-in-an-interlaced-frame", sound_time, change_interlaced_half_line,
    BW_RASTER_ERROR_HALF_LINE },
  { "border-lines-in-time", sound_time, change_border_in_time, BW_RASTER_ERROR_BORDER },
  { "border-pixels-in-time", sound_time, change_h_border_in_time, BW_RASTER_ERROR_BORDER },
  { "pulses-without-width", sound_time, change_pulses_without_width, BW_RASTER_ERROR_PULSES },
  { "pulses-of-half-a-line", sound_time, change_pulses_too_wide, BW_RASTER_ERROR_PULSES },
  { "pulses-of-negative-width", sound_time, change_negative_width, BW_RASTER_ERROR_PULSES },
  { "pulses-of-negative-number", sound_time, change_negative_pulses, BW_RASTER_ERROR_PULSES },
  { "more-pulses-than-porch", sound_time, change_too_many_pulses, BW_RASTER_ERROR_PULSES },
  { "more-pulses-than-back-porch", sound_time, change_too_many_pulses_after,
    BW_RASTER_ERROR_PULSES },
  { "more-pulses-than-porch-of-field-2", sound_time, change_too_many_pulses_2,
    BW_RASTER_ERROR_PULSES },
  { "serration-of-half-a-line", sound_time, change_serration_too_wide, BW_RASTER_ERROR_PULSES },
  { "serration-of-negative-width", sound_time, change_negative_serration, BW_RASTER_ERROR_PULSES },
  { "tri-level-of-odd-width", sound_pixels, change_odd_tri_level, BW_RASTER_ERROR_SHAPE },
  { "line-rate-too-low", sound_time, change_slow_lines, BW_RASTER_ERROR_RATE_RANGE },
  { "line-rate-too-high", sound_time, change_fast_lines, BW_RASTER_ERROR_RATE_RANGE },
  { "field-rate-too-low", sound_pixels, change_slow_fields, BW_RASTER_ERROR_RATE_RANGE },
  { "field-rate-too-high", sound_pixels, change_fast_fields, BW_RASTER_ERROR_RATE_RANGE },
};

static void
test_fault (gconstpointer data)
{
  const FaultCase *c = data;
  g_autoptr (BwRaster) raster = c->sound ();
  g_autoptr (GError) error = NULL;

  c->change (raster);
  g_assert_false (bw_raster_check (raster, &error));
  g_assert_error (error, BW_RASTER_ERROR, (int) c->code);
}

/* Loading: faults name file and group, and the key where there is one */

typedef struct
{
  const char *name;
  const char *key;
  const char *value; /* NULL: the key is taken out */
  GQuark (*domain) (void);
  int code;
  const char *says[2];
} LoadCase;

static const LoadCase load_cases[] = {
  { "neither-clock-nor-rate",
    "pixel_clock",
    NULL,
    bw_raster_error_quark,
    BW_RASTER_ERROR_NO_RATE,
    { "pixel_clock", "line_rate" } },
  { "both-clock-and-rate",
    "line_rate",
    "31.5 kHz",
    bw_raster_error_quark,
    BW_RASTER_ERROR_NO_RATE,
    { "not both" } },
  { "no-scan",
    "scan",
    NULL,
    bw_field_error_quark,
    BW_FIELD_ERROR_MISSING,
    { "scan", "progressive" } },
  { "no-source", "source", NULL, bw_field_error_quark, BW_FIELD_ERROR_MISSING, { "source" } },
  { "no-name", "name", "", bw_field_error_quark, BW_FIELD_ERROR_MISSING, { "name" } },
  { "clock-without-unit",
    "pixel_clock",
    "25175000",
    bw_field_error_quark,
    BW_FIELD_ERROR_VALUE,
    { "pixel_clock", "MHz" } },
  { "clock-out-of-range",
    "pixel_clock",
    "1 Hz",
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "pixel_clock" } },
  { "clock-too-fine",
    "pixel_clock",
    "25175000.0000000000001 Hz",
    bw_field_error_quark,
    BW_FIELD_ERROR_VALUE,
    { "pixel_clock" } },
  { "time-for-pixels",
    "h_sync",
    "4.7 us",
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "h_sync", "whole number" } },
  { "negative-pixels", "h_sync", "-96", bw_field_error_quark, BW_FIELD_ERROR_RANGE, { "h_sync" } },
  { "no-pixels",
    "h_active",
    "0",
    bw_raster_error_quark,
    BW_RASTER_ERROR_NO_PICTURE,
    { "h_active" } },
  { "quarter-line",
    "v_sync",
    "2.25",
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "v_sync", "half lines" } },
  { "half-line",
    "v_back_porch",
    "33.5",
    bw_raster_error_quark,
    BW_RASTER_ERROR_HALF_LINE,
    { "whole number of lines" } },
  { "no-repeat",
    "pixel_repeat",
    "0",
    bw_field_error_quark,
    BW_FIELD_ERROR_RANGE,
    { "pixel_repeat", "from 1" } },
  { "empty-repeat",
    "pixel_repeat",
    "",
    bw_field_error_quark,
    BW_FIELD_ERROR_MISSING,
    { "pixel_repeat" } },
  { "unknown-polarity",
    "h_polarity",
    "up",
    bw_field_error_quark,
    BW_FIELD_ERROR_KIND,
    { "h_polarity", "negative, positive" } },
  { "line-rate-out-of-range",
    "pixel_clock",
    "900 MHz",
    bw_raster_error_quark,
    BW_RASTER_ERROR_RATE_RANGE,
    { "line rate" } },
};

static void
test_load (gconstpointer data)
{
  const LoadCase *c = data;
  const char *words[] = { "user.ini", "[mine]", c->says[0], c->says[1], NULL };
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;

  bw_raster_save (shipped ("vesa-dmt-04"), keys, "mine");
  if (c->value != NULL)
    g_key_file_set_value (keys, "mine", c->key, c->value);
  else
    g_key_file_remove_key (keys, "mine", c->key, NULL);
  g_autoptr (BwRaster) raster = bw_raster_load (keys, "mine", "mine", "user.ini", &error);
  g_assert_null (raster);
  g_assert_error (error, c->domain (), c->code);
  if (error != NULL)
    bw_test_assert_words (error->message, words);
}

/* What field 2 does not say is as in field 1. */
static void
test_load_second_field (void)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  bw_raster_save (shipped ("cta-861-vic-5"), keys, "g");
  g_key_file_remove_key (keys, "g", "v_sync_2", NULL);
  g_key_file_remove_key (keys, "g", "v_active_2", NULL);
  g_autofree char *fault = NULL;
  g_autoptr (BwRaster) raster = bw_raster_load (keys, "g", "g", "f", NULL);

  g_assert_nonnull (raster);
  if (raster == NULL)
    return;
  g_assert_cmpmem (raster->field, sizeof raster->field, shipped ("cta-861-vic-5")->field,
                   sizeof raster->field);
  fault = bw_property_raster (raster);
  g_assert_cmpstr (fault, ==, NULL);
}

/* Made-up rasters. About a third of them can exist. */

static int
random_count (GRand *rand, int usual)
{
  guint kind = g_rand_int (rand) % 64;
  if (kind == 0)
    return g_rand_int_range (rand, -100000, 100000);
  if (kind == 1)
    return 0;
  return g_rand_int_range (rand, 1, 2 * usual + 2);
}

static double
random_time_s (GRand *rand, double usual_s)
{
  guint kind = g_rand_int (rand) % 64;
  return kind == 0   ? g_rand_double_range (rand, -1e-3, 1e-3)
         : kind == 1 ? 0
                     : g_rand_double_range (rand, 0, 2) * usual_s;
}

static void
random_horizontal (GRand *rand, BwRaster *raster)
{
  gboolean pixels = g_rand_boolean (rand);
  BwRatio *rate_hz = pixels ? &raster->pixel_clock_hz : &raster->line_rate_hz;
  double rate = pow (10, g_rand_double_range (rand, pixels ? 7 : 3.5, pixels ? 9 : 5.5));

  bw_ratio_make ((gint64) (rate * 1001), g_rand_boolean (rand) ? 1001 : 1000, rate_hz);
  raster->h_active = pixels ? random_count (rand, 1000) : 0;
  raster->h_front_porch = pixels ? random_count (rand, 50) : 0;
  raster->h_sync = pixels ? random_count (rand, 100) : 0;
  raster->h_back_porch = pixels ? random_count (rand, 100) : 0;
  raster->h_border = pixels && g_rand_int (rand) % 8 == 0 ? random_count (rand, 8) : 0;
  raster->h_front_porch_s = pixels ? 0 : random_time_s (rand, 1 / rate * 0.03);
  raster->h_sync_s = pixels ? 0 : random_time_s (rand, 1 / rate * 0.07);
  raster->h_back_porch_s = pixels ? 0 : random_time_s (rand, 1 / rate * 0.09);
  if (pixels && bw_raster_h_total (raster) > 0)
    bw_ratio_divide (raster->pixel_clock_hz, (BwRatio){ bw_raster_h_total (raster), 1 },
                     &raster->line_rate_hz);
}

static void
random_vertical (GRand *rand, BwRaster *raster)
{
  raster->scan = g_rand_int (rand) % BW_N_SCANS;
  for (int i = 0; i < 2; i++)
    {
      BwFieldTiming *field = &raster->field[i];
      field->active = random_count (rand, 600);
      field->front_porch = random_count (rand, 6);
      field->sync = random_count (rand, 6);
      field->back_porch = random_count (rand, 40);
    }
  if (raster->scan == BW_SCAN_PROGRESSIVE && g_rand_int (rand) % 16 > 0)
    {
      raster->field[0].back_porch += (raster->field[0].active + raster->field[0].front_porch
                                      + raster->field[0].sync + raster->field[0].back_porch)
                                     & 1;
      raster->field[1] = raster->field[0];
    }
  raster->v_border = g_rand_int (rand) % 16 == 0 ? random_count (rand, 8) : 0;
}

static void
random_pulses (GRand *rand, BwRaster *raster)
{
  raster->sync_shape = g_rand_int (rand) % 8 == 0 ? BW_SHAPE_TRILEVEL : BW_SHAPE_BILEVEL;
  if (g_rand_int (rand) % 4 > 0)
    return;
  raster->equalising_before = random_count (rand, 3);
  raster->equalising_after = random_count (rand, 3);
  raster->equalising_width_s = random_time_s (rand, 2e-6);
  raster->serration_width_s = random_time_s (rand, 4e-6);
}

#define RANDOM_RASTERS 1000000

/* A million rasters, sound or not: the check never crashes and reaches each of its faults; what it
 * accepts has finite figures that add up. */
static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  guint sound = 0, faults[BW_RASTER_ERROR_RATE_RANGE + 1] = { 0 };

  for (guint i = 0; i < RANDOM_RASTERS && !g_test_failed (); i++)
    {
      BwRaster raster = { .id = (char *) "x",
                          .pixel_clock_hz = BW_RATIO_NONE,
                          .line_rate_hz = BW_RATIO_NONE,
                          .pixel_repeat = 1 };
      g_autoptr (GError) error = NULL;
      random_horizontal (rand, &raster);
      random_vertical (rand, &raster);
      random_pulses (rand, &raster);
      if (!bw_raster_check (&raster, &error))
        {
          faults[error->code]++;
          continue;
        }
      g_autofree char *odd = bw_property_raster (&raster);
      g_assert_cmpstr (odd, ==, NULL);
      sound++;
    }
  g_test_message ("%u of %u rasters were sound", sound, RANDOM_RASTERS);
  g_assert_cmpuint (sound, >, RANDOM_RASTERS / 5);
  for (guint i = 0; i < G_N_ELEMENTS (faults); i++)
    g_assert_cmpuint (faults[i], >, 100);
}

static void
add_faults (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (fault_cases); i++)
    add ("fault", fault_cases[i].name, &fault_cases[i], test_fault);
  for (gsize i = 0; i < G_N_ELEMENTS (load_cases); i++)
    add ("load", load_cases[i].name, &load_cases[i], test_load);
  g_test_add_func ("/raster-faults/load/second-field", test_load_second_field);
}

static void
add_round_trips (void)
{
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  for (guint i = 0; i < rasters->len; i++)
    add ("round-trip", ((BwRaster *) rasters->pdata[i])->id, rasters->pdata[i], test_round_trip);
  g_test_add_func ("/raster-faults/copy", test_copy);
}

/* What each number of a raster may be: our own choice, and a promise of the file format. Beyond, the number
 * itself is refused; at the limit it is not, whatever else may then be wrong with such a raster. */
static void
test_limits (void)
{
  static const struct
  {
    const char *key, *most, *more;
    gboolean in_pixels;
  } limits[] = {
    { "equalising_before", "100", "101", FALSE },
    { "equalising_after", "100", "101", FALSE },
    { "numbered_before_sync", "20", "21", FALSE },
    { "v_active", "32767.5", "32768", FALSE },
    { "v_front_porch", "32767.5", "32768", FALSE },
    { "v_sync", "32767.5", "32768", FALSE },
    { "v_back_porch", "32767.5", "32768", FALSE },
    { "v_border", "65535", "65536", FALSE },
    { "equalising_width", "1 ms", "1.01 ms", FALSE },
    { "serration_width", "1 ms", "1.01 ms", FALSE },
    { "h_front_porch", "1 ms", "1.01 ms", FALSE },
    { "h_sync", "1 ms", "1.01 ms", FALSE },
    { "h_back_porch", "1 ms", "1.01 ms", FALSE },
    { "line_rate", "10 GHz", "10.1 GHz", FALSE },
    { "h_active", "65535", "65536", TRUE },
    { "h_border", "65535", "65536", TRUE },
    { "h_front_porch", "65535", "65536", TRUE },
    { "h_sync", "65535", "65536", TRUE },
    { "h_back_porch", "65535", "65536", TRUE },
    { "pixel_clock", "10 GHz", "10.1 GHz", TRUE },
    { "pixel_repeat", "10", "11", TRUE },
    /* and the least, and one less */
    { "pixel_repeat", "1", "0", TRUE },
    { "pixel_clock", "1 kHz", "999 Hz", TRUE },
    { "line_rate", "1 kHz", "999 Hz", FALSE },
    { "h_active", "0", "-1", TRUE },
    { "h_border", "0", "-1", TRUE },
    { "h_sync", "0 us", "-1 ns", FALSE },
    { "equalising_width", "0 us", "-1 ns", FALSE },
    { "equalising_before", "0", "-1", FALSE },
    { "equalising_after", "0", "-1", FALSE },
    { "numbered_before_sync", "0", "-1", FALSE },
    { "v_active", "0", "-0.5", FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    for (int beyond = 0; beyond < 2; beyond++)
      {
        g_autoptr (GKeyFile) keys = g_key_file_new ();
        g_autoptr (GError) error = NULL;
        bw_raster_save (shipped (limits[i].in_pixels ? "cta-861-vic-1" : "525-59.94-interlaced"),
                        keys, "g");
        g_key_file_set_string (keys, "g", limits[i].key, beyond ? limits[i].more : limits[i].most);
        g_autoptr (BwRaster) raster = bw_raster_load (keys, "g", "g", "here", &error);
        if (g_error_matches (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE) != (beyond != 0))
          g_test_fail_printf ("%s=%s: %s", limits[i].key,
                              beyond ? limits[i].more : limits[i].most,
                              error != NULL ? error->message : "taken");
      }
}

/* Equalising pulses stand in the porches, of half a line each; the shorter one of the two fields decides. */
static void
test_room_for_pulses (void)
{
  for (int field = 0; field < 2; field++)
    for (int after = 0; after < 2; after++)
      for (int more = 0; more < 2; more++)
        {
          g_autoptr (BwRaster) raster = bw_raster_copy (shipped ("625-50-interlaced"));
          BwFieldTiming *shorter = &raster->field[field];
          int *porch = after ? &shorter->back_porch : &shorter->front_porch;
          g_autoptr (GError) error = NULL;
          shorter->active += *porch - 3;
          *porch = 3;
          raster->equalising_before = after ? 0 : 3 + more;
          raster->equalising_after = after ? 3 + more : 0;
          g_assert_cmpint (bw_raster_check (raster, &error), ==, !more);
          if (more)
            g_assert_error (error, BW_RASTER_ERROR, BW_RASTER_ERROR_PULSES);
        }
}

/* Each part of field 2 is written and read apart from that of field 1. */
static void
test_second_field_kept (void)
{
  for (int part = 0; part < 4; part++)
    {
      g_autoptr (BwRaster) raster = bw_raster_copy (shipped ("525-59.94-interlaced"));
      g_autoptr (GKeyFile) keys = g_key_file_new ();
      BwFieldTiming *two = &raster->field[1];
      int *const parts[] = { &two->active, &two->front_porch, &two->sync, &two->back_porch };
      raster->equalising_before = raster->equalising_after = 0;
      *parts[part] += 1;
      *parts[(part + 1) % 4] -= 1;
      bw_raster_save (raster, keys, "g");
      g_autoptr (BwRaster) back = bw_raster_load (keys, "g", "g", "here", NULL);
      g_assert_nonnull (back);
      g_assert_cmpmem (back->field, sizeof back->field, raster->field, sizeof raster->field);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_round_trips ();
  add_faults ();
  g_test_add_func ("/raster-faults/random", test_random);
  g_test_add_func ("/raster-faults/limits", test_limits);
  g_test_add_func ("/raster-faults/room-for-pulses", test_room_for_pulses);
  g_test_add_func ("/raster-faults/second-field-kept", test_second_field_kept);
  return g_test_run ();
}
