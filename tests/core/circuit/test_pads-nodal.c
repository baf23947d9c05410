/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Every kind of network against a nodal analysis by numpy (nodal_check.py). */
#include <math.h>
#include <signal.h>

#include "core/circuit/pads.h"
#include "core/hookup/selection.h"
#include "support.h"

typedef struct
{
  BwNetwork network;
  double tolerance;
  double supply_tolerance;
} Sent;

/* Tolerances hold for the resistors of the network: not for the source's own and the load. */
static void
append_line (GString *text, const Sent *sent)
{
  BwBranch branches[BW_BRANCHES_MAX];
  guint load_node;
  guint n = bw_network_branches (&sent->network, branches, &load_node);
  guint first = sent->network.source_ohm > 0 ? 1 : 0;
  guint last = n - (isfinite (sent->network.load_ohm) ? 1 : 0);

  g_string_append_printf (text, "%.17g %.17g %u %u", sent->network.open_v, sent->supply_tolerance,
                          load_node, n);
  for (guint i = 0; i < n; i++)
    g_string_append_printf (text, " %u %u %.17g %.17g", branches[i].a, branches[i].b,
                            branches[i].ohm, i >= first && i < last ? sent->tolerance : 0);
  g_string_append_c (text, '\n');
}

static void
send (GArray *sent, const BwNetwork *network, double tolerance)
{
  Sent one = { *network, tolerance, tolerance };
  g_array_append_val (sent, one);
}

/* Logic sync into 75 Ω, the pads, and the selection pins, all with values of each series. */
static void
add_standard (GArray *sent, BwSeries series)
{
  BwNetwork ideal[8];
  BwPadChoice choice;
  double loss_db;
  guint n = 0;

  g_assert_true (bw_pad_series (5, 50, 75, 0.3, &ideal[n++], NULL));
  g_assert_true (bw_pad_series (3.3, 0, 75, 0.3, &ideal[n++], NULL));
  g_assert_true (bw_pad_l (5, 0, 75, 0.3, &ideal[n++], NULL));
  g_assert_true (bw_pad_matched (BW_PAD_T, 2, 75, 3.098, &ideal[n++], NULL));
  g_assert_true (bw_pad_matched (BW_PAD_PI, 2, 75, 6, &ideal[n++], NULL));
  g_assert_true (bw_pad_minimum_loss (2, 75, 50, &ideal[n++], &loss_db, NULL));
  g_assert_true (bw_pad_minimum_loss (2, 75, 300, &ideal[n++], &loss_db, NULL));
  for (guint i = 0; i < n; i++)
    {
      bw_network_choose (&ideal[i], series, 0.05, &choice);
      send (sent, &choice.network, bw_series_tolerance (series));
    }
  for (BwSelect select = 0; select < BW_N_SELECTS; select++)
    {
      BwSelection selection;
      g_assert_true (bw_selection_compute (BW_CONNECTOR_PERITELEVISION, select, 12, 0.05, series,
                                           &selection, NULL));
      send (sent, &selection.choice.network, bw_series_tolerance (series));
    }
}

static double
random_ohm (GRand *rand)
{
  return pow (10, g_rand_double_range (rand, 0, 5));
}

static void
add_random (GArray *sent, GRand *rand)
{
  BwNetwork network = { .open_v = g_rand_double_range (rand, 0.1, 24) };
  network.source_ohm = g_rand_int_range (rand, 0, 4) > 0 ? random_ohm (rand) : 0;
  network.load_ohm = g_rand_int_range (rand, 0, 4) > 0 ? random_ohm (rand) : (double) INFINITY;
  network.n = (guint) g_rand_int_range (rand, 0, BW_NETWORK_MAX + 1);
  for (guint i = 0; i < network.n; i++)
    network.at[i] = (BwElement){ g_rand_boolean (rand) ? BW_PLACE_SERIES : BW_PLACE_SHUNT,
                                 random_ohm (rand) };
  send (sent, &network, g_rand_double_range (rand, 0, 0.2));
}

static double
next_number (char **at)
{
  char *end;
  double value = g_ascii_strtod (*at, &end);
  g_assert_true (end != *at);
  *at = end;
  return value;
}

static void
assert_share (double got, double wanted, double whole)
{
  bw_test_near (got, wanted, 1e-6 * fabs (wanted) + 1e-9 * whole);
}

static void
assert_answer (const Sent *sent, char *line)
{
  const BwNetwork *network = &sent->network;
  BwNetworkFigures figures;
  BwRange level_v;

  bw_network_solve (network, &figures);
  bw_network_spread (network, sent->tolerance, sent->supply_tolerance, &level_v);
  assert_share (figures.level_v, next_number (&line), network->open_v);
  assert_share (level_v.low, next_number (&line), network->open_v);
  assert_share (level_v.high, next_number (&line), network->open_v);
  if (network->source_ohm > 0)
    assert_share (figures.source_w, next_number (&line), network->open_v);
  for (guint i = 0; i < network->n; i++)
    assert_share (figures.element_w[i], next_number (&line), network->open_v);
  if (isfinite (network->load_ohm))
    assert_share (figures.load_w, next_number (&line), network->open_v);
  g_assert_cmpstr (line, ==, "");
}

static void
test_nodal (void)
{
  g_autoptr (GArray) sent = g_array_new (FALSE, FALSE, sizeof (Sent));
  g_autoptr (GString) input = g_string_new (NULL);
  g_autoptr (GRand) rand = g_rand_new_with_seed (75);

  for (BwSeries series = 0; series < BW_N_SERIES; series++)
    add_standard (sent, series);
  for (guint i = 0; i < 1000; i++)
    add_random (sent, rand);
  for (guint i = 0; i < sent->len; i++)
    append_line (input, &g_array_index (sent, Sent, i));
  gboolean well = FALSE;
  g_autofree char *out = bw_test_python ("circuit/nodal_check.py", WORDS (NULL), input->str, &well);
  g_assert_true (well);
  g_auto (GStrv) lines = g_strsplit (g_strchomp (out), "\n", -1);
  g_assert_cmpuint (g_strv_length (lines), ==, sent->len);
  for (guint i = 0; lines[i] != NULL && !g_test_failed (); i++)
    assert_answer (&g_array_index (sent, Sent, i), lines[i]);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  signal (SIGPIPE, SIG_IGN); /* a script that ends early fails the test, and says why */
  g_test_add_func ("/pads/nodal", test_nodal);
  return g_test_run ();
}
