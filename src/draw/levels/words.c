/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#define MINUS "\u2212"

/* To a tenth, without trailing zeros, with a true minus. */
char *
bw_levels_text_number (double value, char mark)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  double tenths = floor (fabs (value) * 10 + 0.5);

  g_ascii_formatd (number, sizeof number, fmod (tenths, 10) < 0.5 ? "%.0f" : "%.1f", tenths / 10);
  g_strdelimit (number, ".", mark);
  return g_strconcat (value < 0 && tenths > 0 ? MINUS : "", number, NULL);
}

static char *
text_mv (double volts, char mark)
{
  g_autofree char *number = bw_levels_text_number (volts * 1e3, mark);
  return g_strconcat (number, "\u00a0mV", NULL);
}

static char *
text_ire (double ire, char mark)
{
  g_autofree char *number = bw_levels_text_number (ire, mark);
  return g_strconcat (number, "\u00a0IRE", NULL);
}

/* A level in mV, and in IRE where @panel has them and there is room. */
static char *
level_text (const BwLevelsPanel *panel, double volts, gboolean with_ire, char mark)
{
  g_autofree char *mv = text_mv (volts, mark);
  if (!with_ire || panel->levels.volts_per_ire <= 0)
    return g_steal_pointer (&mv);
  g_autofree char *ire = text_ire (bw_levels_ire (panel, volts), mark);
  return g_strconcat (mv, " · ", ire, NULL);
}

/* (nullable): the label of a level; %NULL if it is left out. */
char *
bw_levels_text_level (const BwLevelsLayout *layout, const BwLevelsPanel *panel, guint i)
{
  const BwLevelName *level = &panel->name[i];
  char mark = layout->what->mark;
  gboolean with_ire = bw_levels_keeps (layout, BW_LEVELS_LEAVE_IRE);
  g_autofree char *is = level_text (panel, level->volts * panel->gain, with_ire, mark);
  g_autofree char *right = text_mv (level->volts, mark);

  if (level->extreme && !bw_levels_keeps (layout, BW_LEVELS_LEAVE_EXTREMES))
    return NULL;
  if (fabs (panel->gain - 1) < 1e-6 || fabs (level->volts) < 1e-6
      || !bw_levels_keeps (layout, BW_LEVELS_LEAVE_RIGHT))
    return g_strconcat (level->name, "  ", is, NULL);
  g_autofree char *should = g_strdup_printf (_ ("should be %s"), right);
  return g_strconcat (level->name, "  ", is, "\n", should, NULL);
}

/* On so many lines, from one to three. */
char *
bw_levels_text_burst (const BwLevelsLayout *layout, const BwLevelsPanel *panel, guint lines)
{
  double volts = panel->levels.burst_pp_v * panel->gain;
  char mark = layout->what->mark;
  g_autofree char *mv = text_mv (volts, mark);
  gboolean with_ire = panel->levels.volts_per_ire > 0
                      && bw_levels_keeps (layout, BW_LEVELS_LEAVE_IRE);
  g_autofree char *ire = with_ire ? text_ire (bw_levels_ire (panel, volts), mark) : g_strdup ("");
  const char *join = !with_ire ? "" : lines > 1 ? "\n" : " · ";
  return g_strdup_printf (_ ("burst%1$s%2$s p-p%3$s%4$s"), lines > 2 ? "\n" : "  ", mv, join, ire);
}

static const char *
bars_words (BwBarsForm form)
{
  static const char *const words[BW_N_BARS_FORMS] = {
    [BW_BARS_100] = N_ ("colour bars at 100 %"),
    [BW_BARS_75] = N_ ("colour bars at 75 %"),
    [BW_BARS_75_WHITE_100] = N_ ("colour bars at 75 % with white at 100 %"),
  };
  return _ (words[form]);
}

/* Load */

/* Two 75 Ω loads, or any other resistance. */
static char *
resistance_text (double ohm, char mark)
{
  if (fabs (ohm - 37.5) < 0.5)
    return g_strdup (_ ("two 75\u00a0Ω loads"));
  return bw_quantity_format (ohm, BW_DIMENSION_RESISTANCE, 3, mark);
}

/* Returns: (transfer full): what the output works into, and what that does to the level */
static char *
text_load (const BwLevelsLoad *load, char mark)
{
  char number[G_ASCII_DTOSTR_BUF_SIZE];
  double gain = bw_levels_gain (load);

  if (load->load_ohm <= 0)
    return g_strdup (_ ("levels as stated"));
  g_autofree char *ohm = isinf (load->load_ohm) ? g_strdup (_ ("no load"))
                                                : resistance_text (load->load_ohm, mark);
  if (fabs (gain - 1) < 0.005)
    return g_strdup_printf (_ ("into %s (the right level)"), ohm);
  g_ascii_formatd (number, sizeof number, fabs (gain - 2) < 0.005 ? "%.0f" : "%.2f", gain);
  g_strdelimit (number, ".", mark);
  return g_strdup_printf (_ ("into %1$s (%2$s × the right level)"), ohm, number);
}

/* Caption */

static char *
signal_text (const BwSynthesisCase *from)
{
  const char *signal = bw_kind_label (&bw_signals, from->form.signal);
  gboolean coded = from->form.signal == BW_SIGNAL_COMPOSITE || from->form.signal == BW_SIGNAL_YC;

  if (!coded || from->form.system == BW_SYSTEM_NONE)
    return g_strdup (signal);
  return g_strdup_printf ("%s %s", signal, bw_kind_label (&bw_colour_systems, from->form.system));
}

static char *
where_text (const BwLevelsView *what)
{
  int frames = bw_synthesis_colour_frames (bw_levels_model_synthesis (what->model));
  if (what->span == BW_LEVELS_FIELD)
    return g_strdup_printf (_ ("a field’s time from line %d on"), what->line);
  if (frames <= 1)
    return g_strdup_printf (_ ("line %d"), what->line);
  return g_strdup_printf (_ ("line %1$d of frame %2$d of %3$d"), what->line,
                          (int) (what->frame % frames) + 1, frames);
}

/**
 * bw_levels_text_caption:
 *
 * Returns: (transfer full): what the drawing shows, by which standard, and into which load
 */
char *
bw_levels_text_caption (const BwLevelsView *what)
{
  g_return_val_if_fail (what != NULL, NULL);
  const BwSynthesisCase *from = bw_levels_model_case (what->model);
  const char *name = bw_or_empty (from->raster->name), *source = bw_or_empty (from->raster->source);
  const char *content = from->content == BW_CONTENT_BARS
                            ? bars_words (from->bars)
                            : bw_kind_label (&bw_contents, from->content);
  g_autofree char *signal = signal_text (from);
  g_autofree char *where = where_text (what);
  g_autofree char *load = text_load (&what->video, what->mark);
  GString *text = g_string_new (name);

  g_string_append_printf (text, ": %s, %s, %s, %s", signal, content, where, load);
  if (*source != '\0')
    g_string_append_printf (text, _ (", by %s"), source);
  else
    g_string_append (text, _ ("; no source is given for the figures"));
  double constant_s = bw_levels_model_time_constant_s (what->model);
  if (constant_s > 0)
    {
      g_autofree char *constant = bw_quantity_format (constant_s, BW_DIMENSION_TIME, 3, what->mark);
      g_string_append_printf (text, _ (", behind a coupling capacitor with a time constant of %s"), constant);
    }
  return g_string_free (text, FALSE);
}

static void
add_sentence (GString *text, const char *sentence)
{
  if (text->len > 0)
    g_string_append_c (text, ' ');
  g_string_append (text, sentence);
}

/* (nullable): what the dashed lines, the bands and the filled places are. */
char *
bw_levels_text_note (const BwLevelsView *what)
{
  const BwSynthesisCase *from = bw_levels_model_case (what->model);
  g_autoptr (GString) text = g_string_new (NULL);

  if (fabs (bw_levels_gain (&what->video) - 1) > 1e-6
      || fabs (bw_levels_gain (&what->own_sync) - 1) > 1e-6)
    add_sentence (text, _ ("Dashed: the levels as they should be, across the right load."));
  if (what->limits != NULL)
    {
      g_autofree char
          *bands = g_strdup_printf (_ ("Shaded: what is allowed across 75\u00a0Ω by %s."),
                                    bw_or_empty (what->limits->name));
      add_sentence (text, bands);
    }
  if (from->form.signal == BW_SIGNAL_COMPOSITE || from->form.signal == BW_SIGNAL_YC)
    add_sentence (text, _ ("The subcarrier is filled where it is too fine for the page."));
  if (what->span == BW_LEVELS_FIELD)
    add_sentence (text,
                  _ ("Where lines are too fine for the page, a level is drawn the stronger the "
                     "longer the signal stays there."));
  return text->len > 0 ? g_strdup (text->str) : NULL;
}

static void
describe_panel (GString *text, const BwLevelsPanel *panel, const BwLevelsLayout *layout)
{
  g_string_append_printf (text, " %s:", bw_kind_label (&bw_conductors, panel->levels.conductor));
  for (guint i = 0; i < panel->n_names; i++)
    {
      const BwLevelName *level = &panel->name[i];
      g_autofree char *is = level_text (panel, level->volts * panel->gain, TRUE,
                                        layout->what->mark);
      g_string_append_printf (text, "%s %s %s", i > 0 ? "," : "", level->name, is);
    }
  if (panel->levels.burst_pp_v > 0)
    {
      g_autofree char *burst = bw_levels_text_burst (layout, panel, 1);
      g_string_append_printf (text, ", %s", burst);
    }
  g_string_append_c (text, '.');
}

/* (transfer full): the caption, and every level of each conductor as it is on the wire. */
char *
bw_levels_describe (const BwLevelsLayout *layout)
{
  g_autofree char *caption = bw_levels_text_caption (layout->what);
  GString *text = g_string_new (caption);

  g_string_append_c (text, '.');
  for (guint i = 0; i < layout->n_panels; i++)
    describe_panel (text, &layout->panel[i], layout);
  return g_string_free (text, FALSE);
}
