/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Circuits with a known fault, read with a scope of 3 %: the likeliest cause must be that fault. The
 * readings are those of cause_cases.py, which solves the circuits by their nodes with numpy. */
#include "test_cause-case.h"

#include <string.h>

/* Of the cases, the share that must come out right. */
#define RIGHT_FIRST 0.95

static guint
kind_of (const BwKindTable *table, const BwTable *cases, guint row, const char *head)
{
  guint kind = 0;
  if (!bw_kind_find (table, bw_test_cell (cases, row, head), &kind))
    g_error ("row %u: %s", row, head);
  return kind;
}

/* The resistor of the place with one belongs to 5 V logic behind 50 Ω into 75 Ω. */
static void
case_of (const BwTable *cases, guint row, BwCauseCase *c)
{
  const char *place = bw_test_cell (cases, row, "place");
  BwColourSystem system = kind_of (&bw_colour_systems, cases, row, "system");

  bw_cause_case_standard (system, kind_of (&bw_signals, cases, row, "kind"),
                          kind_of (&bw_sync_kinds, cases, row, "sync_kind"),
                          kind_of (&bw_conductors, cases, row, "conductor"), c);
  bw_cause_case_time (c, bw_test_raster (system == BW_SYSTEM_NTSC_M ? "525-59.94-interlaced"
                                                                     : "625-50-interlaced"));
  if (strcmp (place, "logic-1k1") != 0)
    return;
  c->form.own_sync_v = 5;
  c->sync_stated = BW_LOAD_OPEN;
  c->sync_ohm = 50;
  c->series_ohm = 1100;
}

static void
readings_of (const BwTable *cases, guint row, BwScopeReadings *readings)
{
  static const char *const heads[BW_N_SCOPE_READINGS] = {
    [BW_SCOPE_SYNC] = "sync",   [BW_SCOPE_POLARITY] = "polarity", [BW_SCOPE_WHITE] = "white",
    [BW_SCOPE_BLACK] = "black", [BW_SCOPE_BURST] = "burst",       [BW_SCOPE_DC] = "dc",
    [BW_SCOPE_FIELD_TILT] = "tilt",
  };
  *readings = (BwScopeReadings){ 0 };
  for (guint i = 0; i < BW_N_SCOPE_READINGS; i++)
    {
      const char *cell = heads[i] != NULL ? bw_test_cell (cases, row, heads[i]) : "-";
      if (strcmp (cell, "-") != 0)
        g_assert_true (bw_scope_readings_set (readings, i, g_ascii_strtod (cell, NULL)));
    }
}

/* "two-loads+setup-added" for two faults, in either order; "none" for none. */
static gboolean
is_cause (const BwCause *cause, const char *id)
{
  g_auto (GStrv) faults = g_strsplit (id, "+", -1);
  guint found = 0;

  if (strcmp (id, "none") == 0)
    return cause->known && cause->n_faults == 0;
  for (char **fault = faults; *fault != NULL; fault++)
    for (guint i = 0; i < cause->n_faults; i++)
      found += strcmp (bw_kind_id (&bw_faults, cause->faults[i].kind), *fault) == 0;
  return found == g_strv_length (faults) && found == cause->n_faults;
}

static gboolean
is_right (const BwTable *cases, guint row)
{
  g_auto (GStrv) accept = g_strsplit (bw_test_cell (cases, row, "accept"), "|", -1);
  BwCauseCase c;
  BwScopeReadings readings;

  case_of (cases, row, &c);
  readings_of (cases, row, &readings);
  BwCause first = first_cause (&c, &readings);
  for (char **id = accept; *id != NULL; id++)
    if (is_cause (&first, *id))
      return TRUE;
  g_autofree char *says = bw_cause_says (&c, &readings, &first, '.');
  g_test_message ("%s: %s", bw_test_cell (cases, row, "name"), says);
  return FALSE;
}

static void
test_cases (void)
{
  g_autoptr (BwTable) cases = bw_test_table_new ("cause-cases.tsv");
  guint right = 0;

  g_assert_cmpuint (cases->rows->len, >=, 120);
  for (guint row = 0; row < cases->rows->len; row++)
    right += is_right (cases, row);
  g_test_message ("%u of %u right", right, cases->rows->len);
  g_assert_cmpfloat (right, >=, RIGHT_FIRST * cases->rows->len);
}

/* The table is what the script makes. */
static void
test_table (void)
{
  g_autofree char *path = bw_test_reference ("cause-cases.tsv");
  gboolean well;
  g_autofree char *out = bw_test_python ("cause/cause_cases.py", WORDS ("--check", path), NULL,
                                         &well);
  g_assert_true (well);
}

/* The answers that a technician was once given wrongly, to the figures of the readings alone. */
static void
test_half (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  read_levels (&readings, 0.15, 0.35, 0, 0.15);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  const BwCause *first = &g_array_index (causes, BwCause, 0);
  const BwCause *second = &g_array_index (causes, BwCause, 1);

  /* 25 Ω behind 75 Ω is half of 75 Ω behind 75 Ω, and so is 6 dB but for 0.2 %: 25 or 75 Ω decides */
  g_assert_cmpuint (causes->len, >=, 2);
  g_assert_true (is_cause (first, "three-loads"));
  g_assert_true (is_cause (second, "attenuator-added"));
  g_assert_true (second->alike);
  assert_says (&c, &readings, second, WORDS ("6.0 dB"));
  g_autofree char *next = bw_cause_decider_says (&c, &readings, first, second, '.');
  g_assert_nonnull (next);
  if (next != NULL)
    bw_test_assert_words (next, WORDS ("ohmmeter", "25", "75"));

  /* of white alone, sync would tell two loads from a picture that is too small */
  BwScopeReadings white = { 0 };
  bw_scope_readings_set (&white, BW_SCOPE_WHITE, 0.35);
  g_assert_null (bw_cause_decider_says (&c, &white, first, first, '.'));
}

/* A picture that the input does not take is refused in words, and no cause is given. */
static void
test_refused (void)
{
  BwCauseCase c = pal_composite ();
  BwScopeReadings readings = { 0 };
  c.refused = TRUE;
  read_levels (&readings, 0.3, 0.7, 0, 0.3);
  g_autoptr (GArray) causes = bw_causes (&c, &readings);
  g_assert_cmpuint (causes->len, ==, 0);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/cause-cases/right-first", test_cases);
  g_test_add_func ("/cause-cases/table", test_table);
  g_test_add_func ("/cause-cases/half", test_half);
  g_test_add_func ("/cause-cases/refused", test_refused);
  return g_test_run ();
}
