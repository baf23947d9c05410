/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "draw/hookup/view.h"
#include "support.h"

/* What the tests of the drawn hook-up share: every source of a sheet at every input. */

typedef void (*TestHookupFunc) (const BwHookup *hookup, gpointer data);

/* The demonstration, or the sheet with plans of every kind. */
static BwSheet *
test_hookup_sheet (const BwCatalogue *catalogue, gboolean demo)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  const char *root = g_getenv ("BW_SOURCE_ROOT");
  g_autofree char *path = demo ? g_build_filename (root, "data", "demo.bench", NULL)
                               : g_build_filename (g_getenv ("BW_TEST_DATA"), "draw", "plans.bench",
                                                   NULL);
  BwSheet *sheet = bw_sheet_load (path, catalogue, faults);
  for (guint i = 0; i < faults->len; i++)
    g_test_message ("%s", ((GError *) faults->pdata[i])->message);
  g_assert_nonnull (sheet);
  return sheet;
}

static guint
call_one (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
          guint alternative, TestHookupFunc call, gpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwHookup) hookup = bw_hookup_new (sheet, catalogue, source, input, alternative,
                                               &error);
  g_assert_no_error (error);
  call (hookup, data);
  return hookup->alternatives->len;
}

/* Calls @call for every source at every input. */
static void
test_each_hookup (gboolean demo, gboolean alternatives, TestHookupFunc call, gpointer data)
{
  g_autoptr (BwCatalogue) catalogue = test_catalogue ();
  g_autoptr (BwSheet) sheet = test_hookup_sheet (catalogue, demo);
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        guint n = call_one (sheet, catalogue, source, input, 0, call, data);
        for (guint i = 1; alternatives && i < n; i++)
          call_one (sheet, catalogue, source, input, i, call, data);
      }
}
