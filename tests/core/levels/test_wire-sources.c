/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What sources put on the wire, and what holds for any form. */
#include "test_wire.h"

/* The polarity of H and V is that of the raster, unless the source says otherwise: VESA DMT 640 ×
 * 480 at 60 Hz has both negative. */
static void
test_polarity (void)
{
  const BwRaster *raster = bw_test_raster ("vesa-dmt-04");
  g_autoptr (BwSource) source = bw_source_new ();
  BwWireForm form;
  source->signal = BW_SIGNAL_RGB;
  source->video_v = 0.7;
  source->sync_v = 3.5;

  bw_wire_form_of_source (source, raster, BW_SYNC_SEPARATE, &form);
  NEAR (levels_on (&form, BW_CONDUCTOR_H).sync_low_v, -3.5);
  NEAR (levels_on (&form, BW_CONDUCTOR_V).sync_low_v, -3.5);
  g_assert_false (form.own_logic);
  source->sync_polarity = BW_SYNC_POLARITY_POSITIVE;
  bw_wire_form_of_source (source, raster, BW_SYNC_SEPARATE, &form);
  NEAR (levels_on (&form, BW_CONDUCTOR_H).sync_high_v, 3.5);
  NEAR (levels_on (&form, BW_CONDUCTOR_H).sync_low_v, 0);
}

/* A composite source that gives more or less than the standard's white gives its burst in the same
 * ratio: SMPTE 170M table 1, 40 of 100 IRE; ITU-R BT.1700 table 2, 300 of 700 mV. Its sync is stated
 * apart. */
static void
test_burst (void)
{
  static const struct
  {
    BwColourSystem system;
    const char *raster;
    double video_v, burst_pp_v;
  } cases[] = {
    { BW_SYSTEM_NTSC_M, "525-59.94-interlaced", 1, 0.4 },
    { BW_SYSTEM_NTSC_M, "525-59.94-interlaced", 0.5, 0.2 },
    { BW_SYSTEM_PAL_B, "625-50-interlaced", 0.7, 0.3 },
    { BW_SYSTEM_PAL_B, "625-50-interlaced", 1.4, 0.6 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSource) source = bw_source_new ();
      BwWireForm form;
      source->signal = BW_SIGNAL_COMPOSITE;
      source->system = cases[i].system;
      source->video_v = cases[i].video_v;
      source->sync_v = 0.3;
      bw_wire_form_of_source (source, bw_test_raster (cases[i].raster), BW_SYNC_IN_VIDEO, &form);
      BwWireLevels on = levels_on (&form, BW_CONDUCTOR_VIDEO);
      NEAR (on.white_v, cases[i].video_v);
      NEAR (on.burst_pp_v, cases[i].burst_pp_v);
      NEAR (on.sync_low_v, -0.3);
    }
}

/* TTL never goes below its ground: its low is 0 to 0.8 V, its high above 2 V. With negative sync it
 * rests high and its pulses are low; with positive sync the other way round (common practice, no
 * source). Composite sync of 75 Ω lies below blanking. */
static void
test_logic (void)
{
  const BwRaster *raster = bw_test_raster ("vesa-dmt-04");
  g_autoptr (BwSource) source = bw_source_new ();
  BwWireForm form;
  source->signal = BW_SIGNAL_RGB;
  source->video_v = 0.7;
  source->sync_v = 5;
  source->sync_load = BW_LOAD_OPEN;

  for (int positive = 0; positive < 2; positive++)
    for (BwConductor c = BW_CONDUCTOR_SYNC; c <= BW_CONDUCTOR_V; c++)
      {
        source->sync_polarity = positive ? BW_SYNC_POLARITY_POSITIVE : BW_SYNC_POLARITY_NEGATIVE;
        bw_wire_form_of_source (
            source, raster, c == BW_CONDUCTOR_SYNC ? BW_SYNC_COMPOSITE : BW_SYNC_SEPARATE, &form);
        BwWireLevels on = levels_on (&form, c);
        NEAR (on.sync_low_v, 0);
        NEAR (on.sync_high_v, 5);
        NEAR (on.blanking_v, positive ? 0 : 5);
      }
  source->sync_load = BW_LOAD_75_OHM;
  source->sync_polarity = BW_SYNC_POLARITY_NEGATIVE;
  source->sync_v = 0.3;
  bw_wire_form_of_source (source, raster, BW_SYNC_COMPOSITE, &form);
  NEAR (levels_on (&form, BW_CONDUCTOR_SYNC).sync_low_v, -0.3);
  NEAR (levels_on (&form, BW_CONDUCTOR_SYNC).blanking_v, 0);
}

/* Every source of the catalogue: its own white, setup and sync stand on the wire. */
static void
test_sources (void)
{
  GPtrArray *sources = bw_catalogue_sources (bw_test_catalogue ());
  for (guint i = 0; i < sources->len; i++)
    {
      const BwSource *source = sources->pdata[i];
      const BwRaster *raster = bw_test_raster (source->raster);
      for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
        {
          BwWireForm form;
          BwWireLevels all[BW_N_CONDUCTORS];
          guint n_sync = 0;
          if (!(source->syncs & BW_BIT (sync)))
            continue;
          bw_wire_form_of_source (source, raster, sync, &form);
          guint n = bw_wire_levels (&form, all);
          for (guint k = 0; k < n; k++)
            {
              double amplitude_v = MAX (all[k].sync_high_v, -all[k].sync_low_v);
              if (amplitude_v > 0)
                {
                  NEAR (amplitude_v, source->sync_v);
                  n_sync++;
                }
              if (all[k].conductor <= BW_CONDUCTOR_Y || all[k].conductor == BW_CONDUCTOR_VIDEO)
                {
                  NEAR (all[k].white_v, source->video_v);
                  NEAR (all[k].black_v, source->video_v * source->setup_ire / 100);
                }
            }
          g_assert_cmpuint (n_sync, ==, sync == BW_SYNC_SEPARATE ? 2 : 1);
        }
    }
}

static void
test_order (void)
{
  for (BwColourSystem system = 0; system < BW_N_SYSTEMS; system++)
    for (BwSignal signal = 0; signal < BW_N_SIGNALS; signal++)
      for (BwSyncKind sync = 0; sync < BW_N_SYNC_KINDS; sync++)
        {
          BwWireForm form;
          BwWireLevels all[BW_N_CONDUCTORS];
          if (!(bw_signal_syncs (signal) & BW_BIT (sync)))
            continue;
          bw_wire_form_standard (system, signal, sync, BW_SHAPE_BILEVEL, &form);
          guint n = bw_wire_levels (&form, all);
          guint set = bw_signal_conductors (signal, sync);
          for (guint k = 0; k < n; k++)
            {
              g_assert_true (set & BW_BIT (all[k].conductor));
              set &= ~BW_BIT (all[k].conductor);
              g_assert_true (all[k].lowest_v <= all[k].black_v);
              g_assert_true (all[k].black_v <= all[k].white_v);
              g_assert_true (all[k].white_v <= all[k].highest_v);
              g_assert_true (all[k].sync_low_v <= 0 && all[k].sync_high_v >= 0);
              g_assert_true (isfinite (all[k].volts_per_ire));
            }
          g_assert_cmpuint (set, ==, 0);
        }
}

/* Separate H and V have the polarities of the raster: VESA DMT 02h negative H and positive V, DMT 01h the reverse. */
static void
test_raster_polarity (void)
{
  static const struct
  {
    const char *raster;
    guint h, v;
  } cases[] = {
    { "vesa-dmt-01", BW_POLARITY_POSITIVE, BW_POLARITY_NEGATIVE },
    { "vesa-dmt-02", BW_POLARITY_NEGATIVE, BW_POLARITY_POSITIVE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      g_autoptr (BwSource) source = bw_source_new ();
      BwWireForm form;
      source->signal = BW_SIGNAL_RGB;
      source->video_v = 0.7;
      source->sync_v = 5;
      source->sync_load = BW_LOAD_OPEN;
      bw_wire_form_of_source (source, bw_test_raster (cases[i].raster), BW_SYNC_SEPARATE, &form);
      g_assert_cmpuint (form.own_polarity[0], ==, cases[i].h);
      g_assert_cmpuint (form.own_polarity[1], ==, cases[i].v);
      /* composite sync is negative whatever the raster says */
      bw_wire_form_of_source (source, bw_test_raster (cases[i].raster), BW_SYNC_COMPOSITE, &form);
      g_assert_cmpuint (form.own_polarity[0], ==, BW_POLARITY_NEGATIVE);
      g_assert_cmpuint (form.own_polarity[1], ==, BW_POLARITY_NEGATIVE);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/wire-sources/polarity", test_polarity);
  g_test_add_func ("/wire-sources/logic", test_logic);
  g_test_add_func ("/wire-sources/burst", test_burst);
  g_test_add_func ("/wire-sources/sources", test_sources);
  g_test_add_func ("/wire-sources/order", test_order);
  g_test_add_func ("/wire-sources/raster-polarity", test_raster_polarity);
  return g_test_run ();
}
