/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What levels say of a coupling capacitor. */
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

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/levels-result/sync-behind-a-capacitor", test_sync_behind_a_capacitor);
  return g_test_run ();
}
