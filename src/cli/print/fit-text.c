/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-view.h"

#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/table.h"
#include "cli/base/words.h"

/* So many inputs stand side by side within the columns of a terminal. */
#define INPUTS_ABREAST 3
#define INPUT_COLUMNS 16
#define SOURCE_COLUMNS 26

/**
 * bw_fit_view_judge:
 * @source: which of the view's sources
 * @input: which of the view's inputs
 * @cell: (out caller-allocates): the judged cell, which borrows from @view
 */
void
bw_fit_view_judge (const BwFitView *view, guint source, guint input, BwFitCell *cell)
{
  bw_case_init (&cell->c, &cell->figures, view->sheet, view->catalogue,
                g_array_index (view->sources, guint, source),
                g_array_index (view->inputs, guint, input));
  bw_fit_judge (&cell->c, &cell->fit);
}

/* The signs of the screen, or ASCII where the terminal does not have those. */
static const char *
sign_for (BwSeverity severity)
{
  return bw_cli_is_unicode () ? bw_severity_sign (severity) : bw_severity_plain_sign (severity);
}

static char *
sign_and_word (BwVerdict verdict)
{
  return g_strdup_printf ("%s %s", sign_for (bw_verdict_severity (verdict)),
                          bw_kind_label (&bw_verdicts, verdict));
}

static void
add_head (const BwFitView *view, BwTable *table, guint first, guint n)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new ();
  g_ptr_array_add (cells, (gpointer) "");
  for (guint i = first; i < first + n; i++)
    {
      guint input = g_array_index (view->inputs, guint, i);
      g_ptr_array_add (cells, bw_monitor_input (view->sheet->monitor, input)->name);
    }
  g_ptr_array_add (cells, NULL);
  bw_table_add_cells (table, (const char *const *) cells->pdata);
}

static void
add_source (const BwFitView *view, BwTable *table, guint source, guint first, guint n)
{
  g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (g_free);
  guint index = g_array_index (view->sources, guint, source);

  g_ptr_array_add (cells, g_strdup (bw_sheet_source (view->sheet, index)->name));
  for (guint i = first; i < first + n; i++)
    {
      BwFitCell cell;
      bw_fit_view_judge (view, source, i, &cell);
      g_ptr_array_add (cells, sign_and_word (cell.fit.verdict));
    }
  g_ptr_array_add (cells, NULL);
  bw_table_add_cells (table, (const char *const *) cells->pdata);
}

/* The verdicts at @n inputs from @first on. */
static void
append_block (const BwFitView *view, guint first, guint n, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (n + 1);

  bw_table_set_width (table, 0, 0, SOURCE_COLUMNS);
  for (guint column = 1; column <= n; column++)
    bw_table_set_width (table, column, 0, INPUT_COLUMNS);
  add_head (view, table, first, n);
  bw_table_add_rule (table);
  for (guint source = 0; source < view->sources->len; source++)
    add_source (view, table, source, first, n);
  bw_table_append_to (table, to, 0);
  g_string_append_c (to, '\n');
}

static void
append_legend (GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (2);
  for (guint i = 0; i < BW_N_VERDICTS; i++)
    {
      g_autofree char *word = sign_and_word (i);
      bw_table_add_row (table, word, bw_verdict_meaning (i), NULL);
    }
  bw_table_append_to (table, to, 0);
}

/* What holds without a setting needs no words. */
static void
append_finding (const BwFinding *finding, const BwFitCell *cell, GString *to)
{
  char decimal = bw_quantity_locale_mark ();
  g_autofree char *remedy = bw_finding_remedy (finding, &cell->fit, &cell->c, decimal);
  if (finding->severity == BW_SEVERITY_OK && remedy == NULL)
    return;

  g_autofree char *says = bw_finding_says (finding, &cell->fit, &cell->c, decimal);
  g_autofree char *line = g_strdup_printf ("%s %s: %s", sign_for (finding->severity),
                                           bw_kind_label (&bw_rules, finding->rule), says);
  bw_words_append_wrapped (to, "  ", 4, line);
  if (remedy == NULL)
    return;
  g_autofree char *cure = g_strdup_printf (_ ("Remedy: %s"), remedy);
  bw_words_append_wrapped (to, "    ", 6, cure);
}

static void
append_cell_findings (const BwFitCell *cell, GString *to)
{
  g_autofree char *verdict = sign_and_word (cell->fit.verdict);
  g_autofree char *title = g_strdup_printf (_ ("%s at %s: %s"), cell->c.source->name,
                                            cell->c.input->name, verdict);
  g_string_append_c (to, '\n');
  bw_words_append_wrapped (to, "", 4, title);
  if (cell->fit.verdict == BW_VERDICT_DIRECT)
    g_string_append_printf (to, "  %s\n", _ ("Every rule holds with margin."));
  for (guint i = 0; i < BW_N_RULES; i++)
    append_finding (&cell->fit.at[i], cell, to);
}

static void
append_all_findings (const BwFitView *view, GString *to)
{
  for (guint s = 0; s < view->sources->len; s++)
    for (guint i = 0; i < view->inputs->len; i++)
      {
        BwFitCell cell;
        bw_fit_view_judge (view, s, i, &cell);
        append_cell_findings (&cell, to);
      }
}

/**
 * bw_fit_view_append_text:
 * @with_findings: whether to say why: what does not hold in each cell, and the remedy
 *
 * Appends the table of sources by inputs, each cell with its mark and its word, and a legend.
 */
void
bw_fit_view_append_text (const BwFitView *view, gboolean with_findings, GString *to)
{
  bw_words_append_wrapped (to, "", 0, view->sheet->title);
  bw_words_append_wrapped (to, "", 0, view->sheet->monitor->name);
  g_string_append_c (to, '\n');
  if (view->sources->len == 0)
    g_string_append_printf (to, "%s\n\n", _ ("This sheet has no sources."));
  if (view->inputs->len == 0)
    g_string_append_printf (to, "%s\n\n", _ ("The monitor of this sheet has no inputs."));
  for (guint first = 0; first < view->inputs->len; first += INPUTS_ABREAST)
    append_block (view, first, MIN (INPUTS_ABREAST, view->inputs->len - first), to);
  append_legend (to);
  if (with_findings)
    append_all_findings (view, to);
}
