/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "figures.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The numbers beside the drawings of detail. What is not known is left out. */

#define DIGITS 4
#define LINE_DIGITS 5

/* Less modulation than this is none. */
#define NO_MODULATION 1e-4

typedef struct
{
  GPtrArray *figures;
  const BwDetailCase *what;
  const BwDetail *d;
  char mark;
} Table;

static void
add (Table *t, const char *name, double value, BwDimension dimension)
{
  if (!(value > 0))
    return;
  g_autofree char *text = bw_quantity_format (value, dimension, DIGITS, t->mark);
  g_ptr_array_add (t->figures, bw_figure_new (name, NULL, text));
}

static void
add_length (Table *t, const char *name, double length_m)
{
  add (t, name, length_m, BW_DIMENSION_LENGTH);
}

static char *
lines (const Table *t, double tvl)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, LINE_DIGITS, t->mark);
}

static void
add_lines (Table *t, const char *name, double tvl)
{
  if (!(tvl > 0))
    return;
  g_autofree char *text = lines (t, tvl);
  g_ptr_array_add (t->figures, bw_figure_new (name, NULL, text));
}

static void
add_glass (Table *t)
{
  add_length (t, _ ("Screen width"), t->d->width_m);
  add_length (t, _ ("Screen height"), t->d->height_m);
  if (t->d->stripes_across > 0)
    {
      g_autofree char *across = g_strdup_printf ("%.0f", t->d->stripes_across);
      g_ptr_array_add (t->figures, bw_figure_new (_ ("Mask columns across"), NULL, across));
    }
}

/* A limit over the whole line, with the frequency that makes it, and what overscan leaves of it. */
static void
add_path_limit (Table *t, const char *name, double tvl, BwDetailLink link)
{
  double hz = bw_hz_from_tvl (tvl, t->what->active_s, bw_ratio_to_double (t->what->aspect));
  if (!(tvl > 0))
    return;
  g_autofree char *limit = lines (t, tvl);
  g_autofree char *frequency = bw_quantity_format (hz, BW_DIMENSION_FREQUENCY, DIGITS, t->mark);
  g_autofree char *glass = lines (t, t->d->limit_tvl[link]);
  g_autofree char *text = t->what->overscan_h > 0
                              ? g_strdup_printf (_ ("%s at %s; %s on the glass"), limit, frequency,
                                                 glass)
                              : g_strdup_printf (_ ("%s at %s"), limit, frequency);
  g_ptr_array_add (t->figures, bw_figure_new (name, NULL, text));
}

static void
add_limits (Table *t)
{
  add_path_limit (t, _ ("Source"), t->d->source_tvl, BW_LINK_SOURCE);
  add_path_limit (t, _ ("Signal kind"), t->d->signal_tvl, BW_LINK_SIGNAL);
  add_path_limit (t, _ ("Lead, −3 dB"), t->d->lead_tvl, BW_LINK_LEAD);
  add_path_limit (t, _ ("Video bandwidth, −3 dB"), t->d->bandwidth_tvl, BW_LINK_AMPLIFIER);
  add_lines (t, _ ("Spot, 3 % left"), t->d->spot_tvl);
  add_lines (t, _ ("Mask, one column a line"), t->d->mask_tvl);
  add_lines (t, _ ("Mask, 1.2 columns a line"), t->d->mask_practical_tvl);
  add_lines (t, _ ("All together, 1/TVL²"), t->d->combined_tvl);
  add_lines (t, _ ("All together, 50 % left"), t->d->mtf_tvl[2]);
  add_lines (t, _ ("All together, 10 % left"), t->d->mtf_tvl[1]);
  add_lines (t, _ ("All together, 3 % left"), t->d->mtf_tvl[0]);
}

static void
add_structure (Table *t)
{
  if (t->d->seen_lines > 0)
    {
      g_autofree char *seen = bw_quantity_format (round (10 * t->d->seen_lines) / 10,
                                                  BW_DIMENSION_LINES, LINE_DIGITS, t->mark);
      g_ptr_array_add (t->figures, bw_figure_new (_ ("Scanning lines in view"), NULL, seen));
    }
  add_lines (t, _ ("Vertical detail, with Kell"), t->d->vertical_lines);
  add_length (t, _ ("Line pitch"), t->d->line_pitch_m);
  if (t->d->line_modulation >= 0)
    {
      double depth = t->d->line_modulation < NO_MODULATION ? 0 : t->d->line_modulation;
      g_autofree char *text = bw_quantity_format (depth, BW_DIMENSION_FRACTION, 3, t->mark);
      g_ptr_array_add (t->figures, bw_figure_new (_ ("Line structure, modulation"), NULL, text));
    }
  add_length (t, _ ("Moiré of samples and mask"), t->d->moire_samples_mask_m);
  add_length (t, _ ("Moiré of lines and mask"), t->d->moire_lines_mask_m);
  add_length (t, _ ("A line is one arc minute at"), t->d->arc_minute_m);
}

static void
add_claim (Table *t)
{
  if (!(t->what->claimed_lines > 0))
    return;
  add_lines (t, _ ("Claimed"), t->what->claimed_lines);
  g_ptr_array_add (t->figures, bw_figure_new (_ ("The claim is"), NULL,
                                              bw_kind_label (&bw_claims, t->d->claim)));
  add_length (t, _ ("It needs a pitch of"), t->d->pitch_for_claim_m);
  add_length (t, _ ("It needs a spot of"), t->d->spot_for_claim_m);
  add (t, _ ("It needs a bandwidth of"), t->d->bandwidth_for_claim_hz, BW_DIMENSION_FREQUENCY);
}

/**
 * bw_detail_table:
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (element-type BwTableFigure): every figure of @detail that is known, for
 * reading
 */
GPtrArray *
bw_detail_table (const BwDetailCase *what, const BwDetail *detail, char mark)
{
  Table t = { bw_figures_new (), what, detail, mark };

  add_glass (&t);
  add_limits (&t);
  add_structure (&t);
  add_claim (&t);
  return t.figures;
}
