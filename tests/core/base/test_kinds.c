/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/base/kinds.h"

#include <string.h>

#include "core/fit/fit.h"
#include "support.h"

typedef struct
{
  const char *name;
  const BwKindTable *table;
  guint n;
} TableCase;

static const TableCase table_cases[] = {
  { "signals", &bw_signals, BW_N_SIGNALS },
  { "sync-kinds", &bw_sync_kinds, BW_N_SYNC_KINDS },
  { "sync-shapes", &bw_sync_shapes, BW_N_SHAPES },
  { "polarities", &bw_polarities, BW_N_POLARITIES },
  { "scans", &bw_scans, BW_N_SCANS },
  { "colour-systems", &bw_colour_systems, BW_N_SYSTEMS },
  { "masks", &bw_masks, BW_N_MASKS },
  { "terminations", &bw_terminations, BW_N_TERMINATIONS },
  { "couplings", &bw_couplings, BW_N_COUPLINGS },
  { "clamps", &bw_clamps, BW_N_CLAMPS },
  { "connectors", &bw_connectors, BW_N_CONNECTORS },
  { "stated-loads", &bw_stated_loads, BW_N_LOADS },
  { "sync-polarities", &bw_sync_polarities, BW_N_SYNC_POLARITIES },
  { "rules", &bw_rules, BW_N_RULES },
  { "severities", &bw_severities, BW_N_SEVERITIES },
  { "verdicts", &bw_verdicts, BW_N_VERDICTS },
  { "remedies", &bw_remedies, BW_N_REMEDIES },
};

static gboolean
is_id (const char *id)
{
  return *id != '\0' && strspn (id, "abcdefghijklmnopqrstuvwxyz0123456789-.") == strlen (id);
}

/* Each kind has an id of its own that finds it again, and a label of its own. */
static void
test_table (gconstpointer data)
{
  const TableCase *c = data;

  g_assert_cmpuint (c->table->n, ==, c->n);
  for (guint i = 0; i < c->n; i++)
    {
      guint found = 99;
      g_assert_true (is_id (bw_kind_id (c->table, i)));
      g_assert_true (bw_kind_find (c->table, bw_kind_id (c->table, i), &found));
      g_assert_cmpuint (found, ==, i);
      for (guint j = 0; j < i; j++)
        g_assert_cmpstr (bw_kind_label (c->table, i), !=, bw_kind_label (c->table, j));
    }
}

static void
test_unknown (gconstpointer data)
{
  const TableCase *c = data;
  static const char *const odd[] = { "", " ", "no such kind", "RGB", "0", "rgb " };

  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    {
      guint found = 99;
      g_assert_false (bw_kind_find (c->table, odd[i], &found));
      g_assert_cmpuint (found, ==, 99);
    }
}

static void
test_all_ids (gconstpointer data)
{
  const TableCase *c = data;
  g_autofree char *ids = bw_kind_ids (c->table, ", ");
  g_auto (GStrv) parts = g_strsplit (ids, ", ", -1);

  g_assert_cmpuint (g_strv_length (parts), ==, c->n);
  for (guint i = 0; i < c->n; i++)
    g_assert_cmpstr (parts[i], ==, bw_kind_id (c->table, i));
}

static void
test_set_labels (gconstpointer data)
{
  const TableCase *c = data;
  guint last = c->n - 1;
  g_autofree char *none = bw_kind_set_labels (c->table, 0);
  g_autofree char *one = bw_kind_set_labels (c->table, BW_BIT (last));
  g_autofree char *two = bw_kind_set_labels (c->table, BW_BIT (0) | BW_BIT (last));
  g_autofree char *wanted = g_strconcat (bw_kind_label (c->table, 0), ", ",
                                         bw_kind_label (c->table, last), NULL);

  g_assert_cmpstr (none, ==, "nothing");
  g_assert_cmpstr (one, ==, bw_kind_label (c->table, last));
  g_assert_cmpstr (two, ==, wanted);
}

typedef struct
{
  const char *name;
  BwSignal signal;
  BwSyncKind sync;
  gboolean carries;
} SyncCase;

static const SyncCase sync_cases[] = {
  /* EN 50049-1: on the 21-pin connector RGB takes its sync from composite video on pin 20. */
  { "rgb-in-video", BW_SIGNAL_RGB, BW_SYNC_IN_VIDEO, TRUE },
  { "rgb-on-green", BW_SIGNAL_RGB, BW_SYNC_ON_GREEN, TRUE },
  { "rgb-separate", BW_SIGNAL_RGB, BW_SYNC_SEPARATE, TRUE },
  { "rgb-on-y", BW_SIGNAL_RGB, BW_SYNC_ON_Y, FALSE },
  /* Component: sync on Y (SMPTE 274M and 293M by way of secondary sources). */
  { "component-on-y", BW_SIGNAL_COMPONENT, BW_SYNC_ON_Y, TRUE },
  { "component-on-green", BW_SIGNAL_COMPONENT, BW_SYNC_ON_GREEN, FALSE },
  { "component-in-video", BW_SIGNAL_COMPONENT, BW_SYNC_IN_VIDEO, FALSE },
  /* SMPTE 170M-2004: sync is part of composite video; in Y/C of its Y. */
  { "composite-in-video", BW_SIGNAL_COMPOSITE, BW_SYNC_IN_VIDEO, TRUE },
  { "composite-on-green", BW_SIGNAL_COMPOSITE, BW_SYNC_ON_GREEN, FALSE },
  { "yc-in-video", BW_SIGNAL_YC, BW_SYNC_IN_VIDEO, TRUE },
  { "yc-on-y-is-another-kind", BW_SIGNAL_YC, BW_SYNC_ON_Y, FALSE },
  { "luminance-in-video", BW_SIGNAL_LUMA, BW_SYNC_IN_VIDEO, TRUE },
  { "luminance-composite-sync", BW_SIGNAL_LUMA, BW_SYNC_COMPOSITE, TRUE },
};

static void
test_signal_syncs (gconstpointer data)
{
  const SyncCase *c = data;
  gboolean carries = (bw_signal_syncs (c->signal) & BW_BIT (c->sync)) != 0;
  g_assert_cmpint (carries, ==, c->carries);
}

static void
test_own_conductor (void)
{
  g_assert_true (bw_sync_has_own_conductor (BW_SYNC_SEPARATE));
  g_assert_true (bw_sync_has_own_conductor (BW_SYNC_COMPOSITE));
  g_assert_false (bw_sync_has_own_conductor (BW_SYNC_ON_GREEN));
  g_assert_false (bw_sync_has_own_conductor (BW_SYNC_ON_Y));
  g_assert_false (bw_sync_has_own_conductor (BW_SYNC_IN_VIDEO));
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/kinds/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (table_cases); i++)
    {
      add ("table", table_cases[i].name, &table_cases[i], test_table);
      add ("unknown", table_cases[i].name, &table_cases[i], test_unknown);
      add ("ids", table_cases[i].name, &table_cases[i], test_all_ids);
      if (table_cases[i].n <= 32) /* a set is a guint; of more kinds there are none */
        add ("labels", table_cases[i].name, &table_cases[i], test_set_labels);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (sync_cases); i++)
    add ("signal-syncs", sync_cases[i].name, &sync_cases[i], test_signal_syncs);
  g_test_add_func ("/kinds/own-conductor", test_own_conductor);
  return g_test_run ();
}
