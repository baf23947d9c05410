/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "work-out-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What is entered is kept in full, whatever is shown of it. */
#define DIGITS_ENTERED 10
#define DIGITS 7

static char *
figure_text (const BwSolver *solver, guint figure)
{
  const BwSolved *solved = &solver->at[figure];
  BwDimension dimension = bw_figure_dimension (figure);
  char mark = bw_quantity_locale_mark ();

  if (!solved->entered && !solved->known)
    return g_strdup ("");
  return bw_quantity_format (solved->value, dimension, solved->entered ? DIGITS_ENTERED : DIGITS,
                             mark);
}

static gboolean
has_moved (const BwSolved *before, const BwSolved *now)
{
  if (!now->known)
    return FALSE;
  return !before->known || !bw_near (before->value, now->value, 1e-9 * fabs (before->value));
}

/* How each figure came about: a mark, a word and an ink of its own. */
static const struct
{
  const char *note;
  const char *css_class;
} states[] = {
  { N_ ("– not known"), "bw-light" },
  { N_ ("follows"), "bw-light" },
  { N_ ("△ follows, moved"), "bw-moved" },
  { N_ ("● entered"), "bw-entered" },
};

static guint
state_of (BwWorkOut *self, guint figure)
{
  const BwSolved *now = &self->solver.at[figure];
  if (now->entered)
    return 3;
  if (!now->known)
    return 0;
  return has_moved (&self->before.at[figure], now) ? 2 : 1;
}

static void
show_figure (BwWorkOut *self, guint figure)
{
  BwEditorRow *row = self->rows[figure];
  guint state = state_of (self, figure);
  g_autofree char *text = figure_text (&self->solver, figure);

  bw_editor_row_follow_text (row, text);
  bw_editor_row_set_note (row, _ (states[state].note), states[state].css_class);
  if (self->solver.at[figure].entered)
    gtk_widget_remove_css_class (GTK_WIDGET (row), "bw-follows");
  else
    gtk_widget_add_css_class (GTK_WIDGET (row), "bw-follows");
  if ((self->wrong & (1u << figure)) && !bw_editor_row_is_edited (row))
    bw_editor_row_set_error (row, _ ("does not go with the others"));
}

static void
show_from (BwWorkOut *self)
{
  g_autofree char *words
      = self->base == NULL
            ? g_strdup (_ ("Type any figures that are known, each with its unit, and Enter: the "
                           "rest follows. Clear a figure to free it."))
            : g_strdup_printf (self->changed ? _ ("Changed from: %s") : _ ("From: %s"),
                               self->base->name);
  gtk_label_set_label (self->from, words);
}

/**
 * bw_work_out_show_figures:
 *
 * Shows all figures, and how each came about. What is typed and not taken stays.
 */
void
bw_work_out_show_figures (BwWorkOut *self)
{
  for (guint i = 0; i < BW_N_FIGURES; i++)
    show_figure (self, i);
  bw_editor_row_show_object (self->interlaced, &self->solver);
  show_from (self);
}
