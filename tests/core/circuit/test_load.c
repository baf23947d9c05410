/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>

#include "core/circuit/load.h"
#include "support.h"

/* −20 lg |(R − Z)/(R + Z)|: 50 Ω on 75 Ω 20 lg 5 = 13.98 dB, 37.5 Ω 20 lg 3 = 9.54 dB; of nothing all comes
 * back (arithmetic). */
static void
test_return_loss (void)
{
  bw_test_near (bw_return_loss_db (50, 75), 13.979, 5e-4);
  bw_test_near (bw_return_loss_db (37.5, 75), 9.542, 5e-4);
  bw_test_near (bw_return_loss_db (INFINITY, 75), 0, 1e-12);
  bw_test_near (bw_return_loss_db (0, 75), 0, 1e-12);
  g_assert_true (isinf (bw_return_loss_db (75, 75)));
}

/* Γ of the load times Γ of the source (the lattice of a line that is open or shorted at its ends). 10 m of
 * solid polyethylene, 5.054 ns a metre: there and back in 101 ns. */
static const struct
{
  const char *name;
  double source_ohm;
  double load_ohm;
  double echo;
} echoes[] = {
  { "matched", 75, 75, 0 },
  { "open-from-a-matched-source", 75, INFINITY, 0 },
  { "open-from-a-voltage", 0, INFINITY, -1 },
  { "two-loads-from-a-voltage", 0, 37.5, 1.0 / 3 },
  { "50-ohm-both", 50, 50, 0.04 },
};

static void
test_echo (gconstpointer data)
{
  gsize i = GPOINTER_TO_SIZE (data);
  const BwLine line = { echoes[i].source_ohm, echoes[i].load_ohm, 75, 10 * 5.054e-9 };
  BwLineEnd end;

  bw_line_end (&line, &end);
  bw_test_near (end.echo_ratio, echoes[i].echo, 1e-12);
  bw_test_near (end.echo_s, 101.08e-9, 0.01e-9);
  g_assert_cmpfloat (end.return_loss_db, ==, bw_return_loss_db (line.load_ohm, 75));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/load/return-loss", test_return_loss);
  for (gsize i = 0; i < G_N_ELEMENTS (echoes); i++)
    {
      g_autofree char *path = g_strconcat ("/load/echo/", echoes[i].name, NULL);
      g_test_add_data_func (path, GSIZE_TO_POINTER (i), test_echo);
    }
  return g_test_run ();
}
