/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What levels say of a coupling capacitor, and of a source with a load of its own. */
#include "core/signal/results.h"

#include "core/levels/forms.h"
#include "support.h"

/* The tilts that are said of component video with @sync of @shape, as text. */
static char *
tilts_of (BwSyncKind sync, BwSyncShape shape)
{
  BwWireForm form;
  BwCouplingAsk coupling = { .farad = 47e-6, .loop_ohm = 150 };
  g_autoptr (BwResult) result = bw_result_new ('.');
  bw_wire_form_standard (BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, sync, shape, &form);
  bw_picture_time (bw_test_raster ("cta-861-vic-4"), &coupling.time);
  bw_coupling_say (bw_result_root (result), &form, &coupling);
  const BwNode *table = bw_node_find (bw_result_root (result), "tilts");
  g_assert_nonnull (table);
  return bw_node_to_text (table, 80, TRUE);
}

/* Tri-level sync goes as far up as down (SMPTE 296M), so that a capacitor takes no notice of it: the picture tilts as it
 * does without sync. Bi-level sync makes the mean lower, and the tilt another one. */
static void
test_sync_behind_a_capacitor (void)
{
  g_autofree char *without = tilts_of (BW_SYNC_SEPARATE, BW_SHAPE_BILEVEL);
  g_autofree char *trilevel = tilts_of (BW_SYNC_ON_Y, BW_SHAPE_TRILEVEL);
  g_autofree char *bilevel = tilts_of (BW_SYNC_ON_Y, BW_SHAPE_BILEVEL);
  g_assert_cmpstr (trilevel, ==, without);
  g_assert_cmpstr (bilevel, !=, without);
}

/* The levels, or the phases, in the table of bars, row by row. */
static GArray *
bars_of (BwNode *root, gboolean phases)
{
  GArray *numbers = g_array_new (FALSE, FALSE, sizeof (double));
  const BwNode *table = bw_node_find (root, "bars");
  g_assert_nonnull (table);
  for (guint i = 0; i < table->children->len; i++)
    {
      const BwNode *row = table->children->pdata[i];
      for (guint j = 0; j < row->values->len; j++)
        {
          const BwValue *value = &g_array_index (row->values, BwValue, j);
          if (value->kind == BW_VALUE_NUMBER && g_str_equal (value->key, "phase_deg") == phases)
            g_array_append_val (numbers, value->number);
        }
    }
  return numbers;
}

static BwResult *
bars_here (BwColourSystem system, BwSignal signal, BwSyncKind sync, double gain)
{
  BwWireForm form;
  BwResult *result = bw_result_new ('.');
  BwLevelsHere here
      = { .load_ohm = 75, .gain = gain, .sync_load_ohm = 75, .sync_gain = gain, .bars = BW_BARS_75 };
  bw_wire_form_standard (system, signal, sync, BW_SHAPE_BILEVEL, &form);
  bw_wire_say (bw_result_root (result), &form, &here);
  return result;
}

static void
assert_times (const GArray *got, const GArray *of, double times)
{
  g_assert_cmpuint (got->len, ==, of->len);
  g_assert_cmpuint (of->len, >=, 6);
  for (guint i = 0; i < of->len; i++)
    g_assert_cmpfloat_with_epsilon (g_array_index (got, double, i), times * g_array_index (of, double, i), 1e-9);
}

/* A load divides every level by the same and turns no phase (a divider of resistors), and across the right load the
 * bars are those of the standard. */
static void
test_bars_with_a_load (void)
{
  static const struct
  {
    BwColourSystem system;
    BwSignal signal;
    BwSyncKind sync;
  } wires[] = {
    { BW_SYSTEM_PAL_B, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO }, { BW_SYSTEM_NTSC_M, BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO },
    { BW_SYSTEM_PAL_B, BW_SIGNAL_YC, BW_SYNC_ON_Y },            { BW_SYSTEM_NONE, BW_SIGNAL_RGB, BW_SYNC_COMPOSITE },
    { BW_SYSTEM_NONE, BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (wires); i++)
    {
      const BwLevelsAsk ask = {
        .system = wires[i].system, .signal = wires[i].signal, .sync = wires[i].sync, .bars = BW_BARS_75
      };
      gboolean coded = bw_signal_is_coded (wires[i].signal);
      g_autoptr (BwResult) standard = bw_result_new ('.');
      g_autoptr (BwResult) right = bars_here (wires[i].system, wires[i].signal, wires[i].sync, 1);
      g_autoptr (BwResult) high = bars_here (wires[i].system, wires[i].signal, wires[i].sync, 2);
      g_autoptr (BwResult) low = bars_here (wires[i].system, wires[i].signal, wires[i].sync, 0.5);
      bw_levels_say (bw_result_root (standard), &ask);
      g_autoptr (GArray) laid_down = bars_of (bw_result_root (standard), FALSE);
      g_autoptr (GArray) levels = bars_of (bw_result_root (right), FALSE);
      g_autoptr (GArray) twice = bars_of (bw_result_root (high), FALSE);
      g_autoptr (GArray) half = bars_of (bw_result_root (low), FALSE);
      assert_times (levels, laid_down, 1);
      assert_times (twice, levels, 2);
      assert_times (half, levels, 0.5);
      if (!coded)
        continue;
      g_autoptr (GArray) hues_laid_down = bars_of (bw_result_root (standard), TRUE);
      g_autoptr (GArray) hues = bars_of (bw_result_root (low), TRUE);
      assert_times (hues, hues_laid_down, 1);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/levels-result/sync-behind-a-capacitor", test_sync_behind_a_capacitor);
  g_test_add_func ("/levels-result/bars-with-a-load", test_bars_with_a_load);
  return g_test_run ();
}
