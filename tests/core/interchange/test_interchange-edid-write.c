/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The EDID block that is written for a monitor: what it says of it, and when there is none. */
#include "core/interchange/interchange.h"

#include <string.h>

#include "support.h"

#define BLOCK BW_EDID_BLOCK_BYTES

static BwEdid *
parse (const guint8 *bytes, gsize length)
{
  g_autoptr (GError) error = NULL;
  BwEdid *edid = bw_edid_parse (bytes, length, &error);
  if (edid == NULL)
    g_error ("%s", error->message);
  return edid;
}

static gboolean
lists (const BwEdid *edid, BwEdidOrigin origin, const char *id, double rate_hz)
{
  for (guint i = 0; i < edid->modes->len; i++)
    {
      const BwEdidMode *mode = bw_edid_mode (edid, i);
      if (mode->origin == origin && g_strcmp0 (mode->id, id) == 0
          && bw_near (mode->field_rate_hz, rate_hz, 1e-9))
        return TRUE;
    }
  return FALSE;
}

static void
set_clock (BwRaster *raster, gint64 clock_hz)
{
  raster->pixel_clock_hz = (BwRatio){ clock_hz, 1 };
  bw_ratio_make (clock_hz, bw_raster_h_total (raster), &raster->line_rate_hz);
}

static gboolean
any_note (GPtrArray *notes, const char *says)
{
  for (guint i = 0; i < notes->len; i++)
    if (strstr (notes->pdata[i], says) != NULL)
      return TRUE;
  return FALSE;
}

static void
test_demo (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  guint8 block[BLOCK];

  g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, notes, &error));
  g_assert_no_error (error);
  g_autoptr (BwEdid) edid = parse (block, BLOCK);
  g_assert_cmpuint (edid->revision, ==, 4);
  g_assert_cmpuint (edid->syncs, ==, BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN));
  g_assert_true (edid->serration);
  g_assert_true (bw_near (edid->white_v, 0.7, 1e-9) && bw_near (edid->sync_v, 0.3, 1e-9));
  g_assert_false (edid->setup);
  g_assert_false (edid->continuous);                   /* two bands of line rates */
  g_assert_true (bw_near (edid->width_m, 0.39, 1e-9)); /* 19 in at 4:3: 38.6 cm by 29.0 cm */
  g_assert_true (bw_near (edid->height_m, 0.29, 1e-9));
  g_assert_true (bw_near (edid->line_rate_hz.low, 15e3, 1e-9));
  g_assert_true (bw_near (edid->line_rate_hz.high, 34e3, 1e-9));
  g_assert_true (bw_near (edid->field_rate_hz.low, 48, 1e-9));
  g_assert_true (bw_near (edid->field_rate_hz.high, 62, 1e-9));
  g_assert_cmpstr (edid->name, ==, "Foyer monitor");
  g_assert_cmpuint (block[24], ==, 0x08); /* colour, not continuous */
  g_assert_cmpuint (edid->timings->len, ==, 2);
  for (guint i = 0; i < 2; i++)
    {
      BwRasterFigures f;
      bw_raster_figures (bw_edid_timing (edid, i)->raster, &f);
      g_assert_true (bw_near (f.field_rate_hz, i == 0 ? 50 : 60 / 1.001, 1e-6));
      bw_test_assert_words (bw_edid_timing (edid, i)->raster->note, WORDS ("conductor of its own"));
    }
  g_assert_true (lists (edid, BW_EDID_ESTABLISHED, "vesa-dmt-04", 60));
  g_assert_true (any_note (notes, "2 bands"));
  g_assert_true (any_note (notes, "made up"));
  g_assert_true (any_note (notes, "logic level"));
  g_assert_false (any_note (notes, "name is stated"));
}

static gboolean
in_a_band (const BwBands *bands, double value)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low && value <= bands->at[i].high)
      return TRUE;
  return FALSE;
}

static gboolean
takes_rgb (const BwMonitor *monitor)
{
  for (guint i = 0; i < monitor->inputs->len; i++)
    if (bw_monitor_input (monitor, i)->signals & BW_BIT (BW_SIGNAL_RGB))
      return TRUE;
  return FALSE;
}

static BwSheet *
sheet_of (const BwMonitor *monitor)
{
  BwSheet *sheet = bw_sheet_new ();
  bw_monitor_free (sheet->monitor);
  sheet->monitor = bw_monitor_copy (monitor);
  return sheet;
}

/* The only monitor of the catalogue without RGB is refused; what is written for the others lies
 * inside their bands and their retrace. */
static void
test_catalogue (void)
{
  GPtrArray *monitors = bw_catalogue_monitors (bw_test_catalogue ());
  guint refused = 0;
  for (guint i = 0; i < monitors->len; i++)
    {
      const BwMonitor *monitor = monitors->pdata[i];
      g_autoptr (BwSheet) sheet = sheet_of (monitor);
      g_autoptr (GError) error = NULL;
      guint8 block[BLOCK];
      if (!takes_rgb (monitor))
        {
          refused++;
          g_assert_false (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, &error));
          g_assert_error (error, BW_INTERCHANGE_ERROR, BW_INTERCHANGE_ERROR_MONITOR);
          continue;
        }
      g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, &error));
      g_assert_no_error (error);
      g_autoptr (BwEdid) edid = parse (block, BLOCK);
      g_assert_cmpuint (edid->timings->len, >=, 1);
      for (guint j = 0; j < edid->timings->len; j++)
        {
          BwRasterFigures f;
          bw_raster_figures (bw_edid_timing (edid, j)->raster, &f);
          g_assert_true (in_a_band (&monitor->line_rates_hz, f.line_rate_hz));
          g_assert_true (in_a_band (&monitor->field_rates_hz, f.field_rate_hz));
          g_assert_cmpfloat (f.h_blanking_s, >=, monitor->line_retrace_s);
          g_assert_cmpfloat (f.v_blanking_s, >=, monitor->field_retrace_s);
        }
    }
  g_assert_cmpuint (refused, ==, 5); /* the monochrome ones */
}

/* Changes to the demonstration that leave nothing to write. */

static void
no_rgb (BwSheet *sheet)
{
  bw_monitor_input (sheet->monitor, 2)->signals = BW_BIT (BW_SIGNAL_COMPONENT);
}

static void
only_trilevel (BwSheet *sheet)
{
  bw_monitor_input (sheet->monitor, 2)->shapes = BW_BIT (BW_SHAPE_TRILEVEL);
}

static void
high_level (BwSheet *sheet)
{
  bw_monitor_input (sheet->monitor, 2)->video_v.at[0] = (BwRange){ 2, 4 };
}

static void
only_green_at_logic_level (BwSheet *sheet)
{
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  input->syncs = BW_BIT (BW_SYNC_ON_GREEN);
  input->sync_v.at[0] = (BwRange){ 2, 5 };
}

static void
empty_band (BwSheet *sheet)
{
  sheet->monitor->line_rates_hz.n = 1;
  sheet->monitor->line_rates_hz.at[0] = (BwRange){ 20e3, 20.1e3 };
}

static void
slow_retrace (BwSheet *sheet)
{
  sheet->monitor->line_retrace_s = 50e-6;
}

static void
fast_band (BwSheet *sheet)
{
  sheet->monitor->line_rates_hz.at[1] = (BwRange){ 31e3, 511e3 };
}

/* A band around one raster of the sheet, whose clock no detailed timing can state. */
static void
fast_clock (BwSheet *sheet)
{
  BwRaster *raster = bw_raster_copy (bw_test_raster ("cta-861-vic-16"));
  raster->h_back_porch += 2000;
  set_clock (raster, 700000000);
  g_ptr_array_add (sheet->rasters, raster);
  sheet->monitor->line_rates_hz.n = 1;
  sheet->monitor->line_rates_hz.at[0] = (BwRange){ 160e3, 185e3 };
  sheet->monitor->field_rates_hz.at[0] = (BwRange){ 140, 170 };
  sheet->monitor->field_retrace_s = 100e-6;
}

typedef struct
{
  const char *name;
  void (*change) (BwSheet *sheet);
  BwInterchangeError code;
  const char *says;
} Refusal;

static const Refusal refusals[] = {
  { "no-rgb", no_rgb, BW_INTERCHANGE_ERROR_MONITOR, "no input for RGB" },
  { "only-trilevel", only_trilevel, BW_INTERCHANGE_ERROR_MONITOR, "tri-level sync only" },
  { "high-level", high_level, BW_INTERCHANGE_ERROR_MONITOR, "0.7 V, 0.714 V or 1 V" },
  { "sync-level", only_green_at_logic_level, BW_INTERCHANGE_ERROR_MONITOR, "no sync" },
  { "empty-band", empty_band, BW_INTERCHANGE_ERROR_NO_TIMING, "takes none" },
  { "slow-retrace", slow_retrace, BW_INTERCHANGE_ERROR_NO_TIMING, "takes none" },
  { "fast-band", fast_band, BW_INTERCHANGE_ERROR_MONITOR, "510 kHz" },
  { "fast-clock", fast_clock, BW_INTERCHANGE_ERROR_NO_TIMING, "pixel clock" },
};

static void
test_refusal (gconstpointer data)
{
  const Refusal *refusal = data;
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GError) error = NULL;
  guint8 block[BLOCK];
  guint8 untouched[BLOCK];

  refusal->change (sheet);
  memset (block, 0x5a, BLOCK);
  memset (untouched, 0x5a, BLOCK);
  g_assert_false (bw_edid_write (sheet, bw_test_catalogue (), block, notes, &error));
  g_assert_error (error, BW_INTERCHANGE_ERROR, (int) refusal->code);
  if (error != NULL)
    bw_test_assert_words (error->message, WORDS (refusal->says));
  g_assert_cmpmem (block, BLOCK, untouched, BLOCK);
  g_assert_cmpuint (notes->len, ==, 0);
}

/* Levels, syncs, setup, range and name as the input has them. */

static BwEdid *
written (BwSheet *sheet, GPtrArray *notes)
{
  g_autoptr (GError) error = NULL;
  guint8 block[BLOCK];
  if (!bw_edid_write (sheet, bw_test_catalogue (), block, notes, &error))
    g_error ("%s", error->message);
  return parse (block, BLOCK);
}

static void
test_levels (void)
{
  const struct
  {
    BwRange video_v;
    BwRange sync_v;
    guint syncs;
    double white_v;
    double on_video_v;
  } levels[] = {
    { { 0.5, 1 }, { 0.2, 0.6 }, BW_BIT (BW_SYNC_ON_GREEN), 0.7, 0.3 },
    { { 0.71, 0.8 }, { 0.2, 0.6 }, BW_BIT (BW_SYNC_ON_GREEN), 0.714, 0.286 },
    { { 0.6, 0.8 }, { 0.28, 0.29 }, BW_BIT (BW_SYNC_ON_GREEN), 0.714, 0.286 },
    { { 0.9, 1.1 }, { 0.2, 0.6 }, BW_BIT (BW_SYNC_ON_GREEN), 1.0, 0.4 },
    { { 0.5, 1 }, { 2, 5 }, BW_BIT (BW_SYNC_SEPARATE), 0.7, 0 },
    { { 0.5, 1 }, { 2, 5 }, BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_ON_GREEN), 0.7, 0 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (levels); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      BwInput *input = bw_monitor_input (sheet->monitor, 2);
      g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
      input->video_v.at[0] = levels[i].video_v;
      input->sync_v.at[0] = levels[i].sync_v;
      input->syncs = levels[i].syncs;
      g_autoptr (BwEdid) edid = written (sheet, notes);
      g_assert_true (bw_near (edid->white_v, levels[i].white_v, 1e-9));
      g_assert_true (bw_near (edid->sync_v, levels[i].on_video_v, 1e-9));
      gboolean dropped = i == G_N_ELEMENTS (levels) - 1;
      g_assert_true (any_note (notes, "left out: none of the sync levels") == dropped);
      g_assert_cmpuint (edid->syncs, ==, dropped ? BW_BIT (BW_SYNC_SEPARATE) : levels[i].syncs);
      gboolean on_green = levels[i].syncs == BW_BIT (BW_SYNC_ON_GREEN);
      g_assert_cmpstr (bw_edid_timing (edid, 0)->raster->note, ==,
                       on_green ? "Composite sync on green." : "");
      g_assert_true (edid->serration == !(levels[i].syncs & BW_BIT (BW_SYNC_SEPARATE)));
    }
}

/* An input with tri-level sync alone is passed over for one that an EDID can describe. */
static void
test_inputs (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  BwInput *trilevel = bw_input_copy (bw_monitor_input (sheet->monitor, 2));
  BwInput *second = bw_input_copy (trilevel);

  trilevel->shapes = BW_BIT (BW_SHAPE_TRILEVEL);
  second->syncs = BW_BIT (BW_SYNC_SEPARATE);
  second->sync_v.at[0] = (BwRange){ 0.2, 5 };
  g_ptr_array_insert (sheet->monitor->inputs, 0, trilevel);
  g_ptr_array_add (sheet->monitor->inputs, second);
  g_autoptr (BwEdid) edid = written (sheet, notes);
  g_assert_cmpuint (edid->syncs, ==, BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN));
  g_assert_true (any_note (notes, "describes input “RGB, Y Pb Pr”"));
  g_ptr_array_remove_index (sheet->monitor->inputs, 3);
  g_ptr_array_set_size (notes, 0);
  g_autoptr (BwEdid) other = written (sheet, notes);
  g_assert_cmpuint (other->syncs, ==, BW_BIT (BW_SYNC_SEPARATE));
  g_assert_false (any_note (notes, "describes input"));
  g_assert_false (any_note (notes, "logic level"));
}

static void
test_setup (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  input->setup_ire.n = 1;
  input->setup_ire.at[0] = (BwRange){ 7.5, 7.5 };
  g_autoptr (BwEdid) edid = written (sheet, NULL);
  g_assert_true (edid->setup);
}

/* One band each, in whole kilohertz and hertz: any raster within is taken. Otherwise not. */
static void
test_continuous (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwMonitor *monitor = sheet->monitor;
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);

  monitor->line_rates_hz.n = 1;
  monitor->line_rates_hz.at[0] = (BwRange){ 30.4e3, 70.6e3 };
  g_autoptr (BwEdid) inward = written (sheet, notes);
  g_assert_true (inward->continuous);
  g_assert_true (bw_near (inward->line_rate_hz.low, 31e3, 1e-9));
  g_assert_true (bw_near (inward->line_rate_hz.high, 70e3, 1e-9));
  g_assert_true (any_note (notes, "in whole steps"));
  static const BwRange bands[] = { { 30e3, 70e3 }, { 30.4e3, 70e3 }, { 30e3, 70.6e3 } };
  for (gsize i = 0; i < G_N_ELEMENTS (bands); i++)
    {
      g_autoptr (GPtrArray) told = g_ptr_array_new_with_free_func (g_free);
      monitor->line_rates_hz.at[0] = bands[i];
      g_autoptr (BwEdid) edid = written (sheet, told);
      g_assert_cmpint (any_note (told, "in whole steps"), ==, i > 0);
    }
  monitor->line_rates_hz.at[0] = (BwRange){ 31.2e3, 31.8e3 };
  g_autoptr (BwEdid) outward = written (sheet, NULL);
  g_assert_false (outward->continuous);
  g_assert_true (bw_near (outward->line_rate_hz.low, 31e3, 1e-9));
  g_assert_true (bw_near (outward->line_rate_hz.high, 32e3, 1e-9));
}

static void
test_high_range (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  sheet->monitor->line_rates_hz.at[1] = (BwRange){ 31e3, 500e3 };
  sheet->monitor->field_rates_hz.at[0] = (BwRange){ 48, 300 };
  g_autoptr (BwEdid) edid = written (sheet, NULL);
  g_assert_true (bw_near (edid->line_rate_hz.low, 15e3, 1e-9));
  g_assert_true (bw_near (edid->line_rate_hz.high, 500e3, 1e-9));
  g_assert_true (bw_near (edid->field_rate_hz.low, 48, 1e-9));
  g_assert_true (bw_near (edid->field_rate_hz.high, 300, 1e-9));
}

static void
test_names (void)
{
  const struct
  {
    const char *name;
    const char *stated;
    gboolean noted;
  } names[] = {
    { "Tube", "Tube", FALSE },
    { "Thirteen char", "Thirteen char", FALSE },
    { "Fourteen chars", "Fourteen char", TRUE },
    { "Twelve chars and", "Twelve chars", TRUE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (names); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
      g_free (sheet->monitor->name);
      sheet->monitor->name = g_strdup (names[i].name);
      g_autoptr (BwEdid) edid = written (sheet, notes);
      g_assert_cmpstr (edid->name, ==, names[i].stated);
      g_assert_true (any_note (notes, "name is stated") == names[i].noted);
    }
}

/* The sheet's own raster comes before the catalogue's, at the monitor's own polarity and sync. */
static void
test_own_raster (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  BwInput *input = bw_monitor_input (sheet->monitor, 2);
  BwRaster *own = bw_raster_copy (bw_test_raster ("cta-861-vic-17"));
  own->h_active -= 80;
  own->h_back_porch += 80;
  own->h_polarity = BW_POLARITY_POSITIVE;
  g_ptr_array_add (sheet->rasters, own);
  input->syncs = BW_BIT (BW_SYNC_SEPARATE);
  input->polarities = BW_BIT (BW_POLARITY_POSITIVE) | BW_BIT (BW_POLARITY_NEGATIVE);
  g_autoptr (BwEdid) edid = written (sheet, NULL);
  guint8 wanted[BW_EDID_DETAILED_BYTES];
  guint8 stated[BW_EDID_DETAILED_BYTES];
  g_assert_true (bw_edid_detailed_from_raster (own, wanted, NULL));
  g_assert_true (bw_edid_detailed_from_raster (bw_edid_timing (edid, 0)->raster, stated, NULL));
  g_assert_cmpmem (wanted, sizeof wanted, stated, sizeof stated);
  g_assert_true (bw_near (bw_edid_timing (edid, 0)->image_width_m, 0.386, 1e-9));
  input->polarities = BW_BIT (BW_POLARITY_NEGATIVE);
  g_autoptr (BwEdid) negative = written (sheet, NULL);
  for (guint i = 0; i < negative->timings->len; i++)
    {
      const BwRaster *raster = bw_edid_timing (negative, i)->raster;
      g_assert_cmpuint (raster->h_polarity, ==, BW_POLARITY_NEGATIVE);
      g_assert_cmpuint (raster->v_polarity, ==, BW_POLARITY_NEGATIVE);
    }
}

/* What an EDID has no place for: borders go into the porches, tri-level sync is passed over. */
static void
test_own_oddities (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  BwRaster *trilevel = bw_raster_copy (bw_test_raster ("525-59.94-progressive"));

  trilevel->sync_shape = BW_SHAPE_TRILEVEL;
  g_ptr_array_add (sheet->rasters, trilevel);
  g_ptr_array_add (sheet->rasters, bw_raster_copy (bw_test_raster ("vesa-dmt-04")));
  g_autoptr (BwEdid) edid = written (sheet, notes);
  const BwRaster *first = bw_edid_timing (edid, 0)->raster;
  g_assert_cmpint (first->h_active, ==, 640);
  g_assert_cmpint (first->h_front_porch, ==, 16);
  g_assert_cmpint (first->h_back_porch, ==, 48);
  g_assert_cmpint (first->h_border, ==, 0);
  g_assert_cmpint (first->field[0].front_porch, ==, 2 * 10);
  g_assert_cmpint (first->field[0].back_porch, ==, 2 * 33);
  g_assert_true (any_note (notes, "borders are stated as part of the porches"));
  g_assert_true (any_note (notes, "is stated as 25.18"));
}

/* Of a pair 1000/1001 only one is stated, even if nothing else is left for the second place. */
static void
test_lone_pair (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  sheet->monitor->line_rates_hz.n = 1;
  sheet->monitor->line_rates_hz.at[0] = (BwRange){ 33.6e3, 33.9e3 };
  sheet->monitor->field_rates_hz.at[0] = (BwRange){ 59, 61 };
  g_autoptr (BwEdid) edid = written (sheet, notes);
  g_assert_cmpuint (edid->timings->len, ==, 1);
  g_assert_cmpint (bw_edid_timing (edid, 0)->raster->h_active, ==, 1920);
  g_assert_true (any_note (notes, "no second raster"));
}

static void
test_monochrome (void)
{
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  guint8 block[BLOCK];
  sheet->monitor->mask = BW_MASK_MONO;
  g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, NULL));
  g_assert_cmpuint (block[24], ==, 0);
}

/* Of two rasters of the sheet, which is stated first: by what bw_edid_write() says of the best. */
typedef struct
{
  int h_active, h_total, v_active, v_total; /* a field */
  gint64 clock_hz;
  gboolean interlaced;
  int repeat;
} Mode;

typedef struct
{
  const char *name;
  Mode better;
  Mode worse;
} Order;

static const Order orders[] = {
  { "more-pixels", { 648, 800, 480, 525, 25200000 }, { 640, 800, 480, 525, 25200000 } },
  { "more-lines", { 640, 800, 482, 525, 25200000 }, { 640, 800, 480, 525, 25200000 } },
  { "pixels-before-rate", { 648, 800, 480, 525, 25200000 }, { 640, 800, 480, 525, 26000000 } },
  /* sent twice, 1280 pixels are 640 */
  { "distinct-pixels",
    { 648, 800, 480, 525, 25200000 },
    { 1280, 1600, 480, 525, 50400000, FALSE, 2 } },
  { "interlaced", { 640, 800, 480, 525, 25200000, TRUE }, { 640, 800, 480, 525, 25200000 } },
  { "exact-clock", { 640, 800, 480, 525, 25200000 }, { 640, 800, 480, 525, 25205000 } },
  { "higher-rate", { 640, 800, 480, 525, 25500000 }, { 640, 800, 480, 525, 25200000 } },
  { "lower-clock", { 640, 800, 480, 525, 25200000 }, { 640, 840, 480, 525, 26460000 } },
};

static BwRaster *
raster_of (const Mode *mode, const char *id)
{
  BwRaster *raster = bw_raster_copy (bw_test_raster ("vesa-dmt-04"));
  g_free (raster->id);
  raster->id = g_strdup (id);
  raster->h_border = raster->v_border = 0;
  raster->pixel_repeat = MAX (mode->repeat, 1);
  raster->h_active = mode->h_active;
  raster->h_front_porch = 24;
  raster->h_sync = 64;
  raster->h_back_porch = mode->h_total - mode->h_active - 24 - 64;
  raster->field[0] = (BwFieldTiming){ 2 * mode->v_active, 20, 4,
                                      2 * (mode->v_total - mode->v_active) - 24 };
  raster->field[1] = raster->field[0];
  raster->scan = mode->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  if (mode->interlaced)
    {
      raster->field[1].front_porch++;
      raster->field[1].back_porch++;
    }
  set_clock (raster, mode->clock_hz);
  return raster;
}

/* A set that takes anything near VGA, and no raster but those of the sheet. */
static BwSheet *
wide_sheet (void)
{
  BwSheet *sheet = bw_test_demo ();
  BwMonitor *monitor = sheet->monitor;
  monitor->line_rates_hz = (BwBands){ 1, { { 15e3, 70e3 } } };
  monitor->field_rates_hz = (BwBands){ 1, { { 40, 130 } } };
  monitor->line_retrace_s = 1e-6;
  monitor->field_retrace_s = 100e-6;
  monitor->bandwidth_hz = 0;
  g_ptr_array_set_size (sheet->rasters, 0);
  return sheet;
}

static void
test_order (gconstpointer data)
{
  const Order *order = data;
  g_autoptr (BwCatalogue) none = bw_catalogue_new_empty ();
  for (int turned = 0; turned < 2; turned++)
    {
      g_autoptr (BwSheet) sheet = wide_sheet ();
      g_autoptr (GError) error = NULL;
      guint8 block[BLOCK], wanted[BW_EDID_DETAILED_BYTES];
      BwRaster *better = raster_of (&order->better, "better");
      BwRaster *worse = raster_of (&order->worse, "worse");
      g_ptr_array_add (sheet->rasters, turned ? worse : better);
      g_ptr_array_add (sheet->rasters, turned ? better : worse);
      g_assert_true (bw_edid_write (sheet, none, block, NULL, &error));
      g_assert_no_error (error);
      g_assert_true (bw_edid_detailed_from_raster (better, wanted, NULL));
      g_assert_cmpmem (block + 54, 12, wanted, 12); /* before the size */
    }
}

/* Beside the best stands the best at another field rate, higher or lower; one per cent is the same
 * rate, as of a pair 1000/1001. */
static void
test_second (void)
{
  static const struct
  {
    gint64 clocks_hz[3];
    int second;
  } cases[] = {
    { { 25200000, 25000000, 21000000 }, 2 }, /* 60, 59.5 and 50 Hz */
    { { 25200000, 24500000, 21000000 }, 1 }, /* 60, 58.3 and 50 Hz */
    { { 21000000, 20900000, 25200000 }, 2 }, /* the best shows more, and is slower */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwCatalogue) none = bw_catalogue_new_empty ();
      g_autoptr (BwSheet) sheet = wide_sheet ();
      guint8 block[BLOCK], wanted[BW_EDID_DETAILED_BYTES];
      for (int j = 0; j < 3; j++)
        {
          Mode mode = { 640 + (i == 2 ? 8 * (2 - j) : 0), 800, 480, 525, cases[i].clocks_hz[j] };
          g_ptr_array_add (sheet->rasters, raster_of (&mode, j == 0 ? "a" : j == 1 ? "b" : "c"));
        }
      g_assert_true (bw_edid_write (sheet, none, block, NULL, NULL));
      g_assert_true (bw_edid_detailed_from_raster (sheet->rasters->pdata[0], wanted, NULL));
      g_assert_cmpmem (block + 54, 12, wanted, 12);
      g_assert_true (
          bw_edid_detailed_from_raster (sheet->rasters->pdata[cases[i].second], wanted, NULL));
      g_assert_cmpmem (block + 72, 12, wanted, 12);
    }
}

/* Byte 21 and 22 count centimetres, a detailed timing millimetres (E-EDID 1.4, 3.6.2 and 3.10.2): the
 * sides of a diagonal, by Pythagoras. */
static void
test_size (void)
{
  static const struct
  {
    double diagonal_m;
    BwRatio aspect;
    int cm[2];
    int mm[2];
  } cases[] = {
    { 0.5, { 4, 3 }, { 40, 30 }, { 400, 300 } },
    { 0.5, { 3, 4 }, { 30, 40 }, { 300, 400 } },
    { 0.34, { 15, 8 }, { 30, 16 }, { 300, 160 } },
    { 0.9, { 16, 9 }, { 78, 44 }, { 784, 441 } },
    { 0.02, { 4, 3 }, { 2, 1 }, { 16, 12 } },
    { 4.2, { 4, 3 }, { 0, 0 }, { 3360, 2520 } }, /* 336 cm: a byte has no room */
    { 3.1, { 4, 3 }, { 248, 186 }, { 2480, 1860 } },
    { 3.1, { 3, 4 }, { 186, 248 }, { 1860, 2480 } },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
      guint8 block[BLOCK];
      sheet->monitor->diagonal_m = cases[i].diagonal_m;
      sheet->monitor->aspect = cases[i].aspect;
      g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, notes, NULL));
      g_assert_cmpint (block[21], ==, cases[i].cm[0]);
      g_assert_cmpint (block[22], ==, cases[i].cm[1]);
      g_assert_cmpint (block[54 + 12] | (block[54 + 14] & 0xf0) << 4, ==, cases[i].mm[0]);
      g_assert_cmpint (block[54 + 13] | (block[54 + 14] & 0x0f) << 8, ==, cases[i].mm[1]);
      g_assert_cmpint (any_note (notes, "size of the screen is left out"), ==, cases[i].cm[0] == 0);
    }
}

/* The greatest clock: twice the bandwidth, or that of a listed raster if that is higher, in steps of
 * 10 MHz, rounded up (E-EDID 1.4, table 3.26, byte 9). */
static void
test_greatest_clock (void)
{
  static const struct
  {
    double bandwidth_hz;
    int tens_of_mhz;
  } cases[] = { { 20e6, 4 }, { 20.1e6, 5 }, { 10e6, 3 }, { 0, 3 }, { 60e6, 12 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSheet) sheet = bw_test_demo ();
      guint8 block[BLOCK];
      sheet->monitor->bandwidth_hz = cases[i].bandwidth_hz;
      g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, NULL, NULL));
      g_assert_cmpint (block[90 + 9], ==, cases[i].tens_of_mhz); /* listed: 27 MHz */
    }
}

/* The block of the demonstration, byte for byte, by VESA E-EDID A2 (1.4) and by hand. */
static void
test_block (void)
{
  static const guint8 wanted[BLOCK] = {
    0x00, 0xff, 0xff, 0xff, 0xff, 0xff, 0xff, 0x00, /* 3.3: header */
    0x0a, 0xfa,                                     /* 3.4.1: B, W, Z as 2, 23, 26 of five bits */
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00,             /* no product, no serial number */
    0x00, 0x10,                                     /* no week; 2006 - 1990 = 16 */
    0x01, 0x04,                                     /* 3.5: 1.4 */
    0x07,                                           /* 3.6.1: analogue, 0.7/0.3 V, composite sync, on green, serrated */
    0x27, 0x1d,                                     /* 19 in at 4:3: 39 cm by 29 cm */
    0xff, 0x08,                                     /* no gamma; RGB colour */
    0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, 0x00, /* 3.7: no chromaticity */
    0x20, 0x00, 0x00,                                           /* 3.8: 640x480 at 60 Hz alone */
    0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01, 0x01,
    0x01, /* 3.9: eight unused standard timings */
    /* CTA-861 VIC 17: 27 MHz; 720 of 864 pixels, 576 of 625 lines; porches and sync of 12 and 64 px, 5 and
     * 5 lines; 386 mm by 290 mm; composite sync, serrated, negative */
    0x8c, 0x0a, 0xd0, 0x90, 0x20, 0x40, 0x31, 0x20, 0x0c, 0x40, 0x55, 0x00, 0x82, 0x22, 0x11, 0x00,
    0x00, 0x14,
    /* VIC 2: 27 MHz; 720 of 858 pixels, 480 of 525 lines; 16 and 62 px, 9 and 6 lines */
    0x8c, 0x0a, 0xd0, 0x8a, 0x20, 0xe0, 0x2d, 0x10, 0x10, 0x3e, 0x96, 0x00, 0x82, 0x22, 0x11, 0x00,
    0x00, 0x14,
    /* 3.10.3.3: 48 to 62 Hz, 15 to 34 kHz, at most 40 MHz, nothing but the limits */
    0x00, 0x00, 0x00, 0xfd, 0x00, 0x30, 0x3e, 0x0f, 0x22, 0x04, 0x01, 0x0a, 0x20, 0x20, 0x20, 0x20,
    0x20, 0x20,
    /* 3.10.3.4: the name, all thirteen characters */
    0x00, 0x00, 0x00, 0xfc, 0x00, 'F', 'o', 'y', 'e', 'r', ' ', 'm', 'o', 'n', 'i', 't', 'o', 'r',
    0x00, 0xec, /* no extension; all 128 bytes add up to 0 */
  };
  g_autoptr (BwSheet) sheet = bw_test_demo ();
  g_autoptr (GPtrArray) notes = g_ptr_array_new_with_free_func (g_free);
  guint8 block[BLOCK];
  g_assert_true (bw_edid_write (sheet, bw_test_catalogue (), block, notes, NULL));
  for (gsize i = 0; i < BLOCK; i++)
    if (block[i] != wanted[i])
      g_test_fail_printf ("byte %" G_GSIZE_FORMAT ": %02x, not %02x", i, block[i], wanted[i]);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/edid/write/demo", test_demo);
  g_test_add_func ("/edid/write/catalogue", test_catalogue);
  g_test_add_func ("/edid/write/levels", test_levels);
  g_test_add_func ("/edid/write/inputs", test_inputs);
  g_test_add_func ("/edid/write/setup", test_setup);
  g_test_add_func ("/edid/write/continuous", test_continuous);
  g_test_add_func ("/edid/write/high-range", test_high_range);
  g_test_add_func ("/edid/write/names", test_names);
  g_test_add_func ("/edid/write/own-raster", test_own_raster);
  g_test_add_func ("/edid/write/own-oddities", test_own_oddities);
  g_test_add_func ("/edid/write/lone-pair", test_lone_pair);
  g_test_add_func ("/edid/write/monochrome", test_monochrome);
  g_test_add_func ("/edid/write/second", test_second);
  g_test_add_func ("/edid/write/size", test_size);
  g_test_add_func ("/edid/write/greatest-clock", test_greatest_clock);
  for (guint i = 0; i < G_N_ELEMENTS (orders); i++)
    {
      g_autofree char *path = g_strconcat ("/edid/write/order/", orders[i].name, NULL);
      g_test_add_data_func (path, &orders[i], test_order);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refusals); i++)
    {
      g_autofree char *path = g_strconcat ("/edid/write/refused/", refusals[i].name, NULL);
      g_test_add_data_func (path, &refusals[i], test_refusal);
    }
  g_test_add_func ("/edid-write/block", test_block);
  return g_test_run ();
}
