/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* The sentences on detail, for a person at a bench. */

static char *
lines (double tvl, char mark)
{
  return bw_quantity_format (round (tvl), BW_DIMENSION_TV_LINES, 5, mark);
}

static void
append_limit (GString *to, const char *label, double tvl, char mark)
{
  if (!(tvl > 0))
    return;
  g_autofree char *figure = lines (tvl, mark);
  g_string_append_printf (to, "%s%s %s", to->len > 0 ? ", " : "", label, figure);
}

/* "The limits: mask 514 lines (429 lines in practice), video bandwidth 632 lines." */
static char *
limits_sentence (const BwDetail *detail, char mark)
{
  g_autoptr (GString) list = g_string_new (NULL);

  append_limit (list, bw_kind_label (&bw_detail_links, BW_LINK_MASK), detail->mask_tvl, mark);
  if (detail->mask_tvl > 0)
    {
      g_autofree char *practical = lines (detail->mask_practical_tvl, mark);
      g_string_append_c (list, ' ');
      g_string_append_printf (list, _ ("(%s in practice)"), practical);
    }
  append_limit (list, bw_kind_label (&bw_detail_links, BW_LINK_SPOT), detail->spot_tvl, mark);
  append_limit (list, bw_kind_label (&bw_detail_links, BW_LINK_AMPLIFIER), detail->bandwidth_tvl,
                mark);
  return list->len > 0 ? g_strdup_printf (_ ("The limits: %s."), list->str) : g_strdup ("");
}

/* What is needed in place of a limit that falls short of the claim; %NULL if it does not. */
static char *
need (double limit_tvl, const BwDetailCase *what, double value, BwDimension dimension, char mark)
{
  if (!(limit_tvl > 0) || limit_tvl >= bw_detail_least_claim (what))
    return NULL;
  return bw_quantity_format (value, dimension, 3, mark);
}

/* "It would take a pitch of 0.686 mm, a bandwidth of 7.59 MHz." */
static char *
needs_sentence (const BwDetailCase *what, const BwDetail *detail, char mark)
{
  g_autofree char *pitch = need (detail->mask_tvl, what, detail->pitch_for_claim_m,
                                 BW_DIMENSION_LENGTH, mark);
  g_autofree char *spot = need (detail->spot_tvl, what, detail->spot_for_claim_m,
                                BW_DIMENSION_LENGTH, mark);
  g_autofree char *bandwidth = need (detail->bandwidth_tvl, what, detail->bandwidth_for_claim_hz,
                                     BW_DIMENSION_FREQUENCY, mark);
  g_autoptr (GPtrArray) parts = g_ptr_array_new_with_free_func (g_free);

  if (pitch != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_ ("a pitch of %s"), pitch));
  if (spot != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_ ("a spot of %s"), spot));
  if (bandwidth != NULL)
    g_ptr_array_add (parts, g_strdup_printf (_ ("a bandwidth of %s"), bandwidth));
  if (parts->len == 0)
    return g_strdup ("");
  g_ptr_array_add (parts, NULL);
  g_autofree char *list = g_strjoinv (", ", (char **) parts->pdata);
  return g_strdup_printf (_ ("It would take %s."), list);
}

static char *
verdict_sentence (const BwDetailCase *what, const BwDetail *detail, char mark)
{
  g_autofree char *claimed = lines (what->claimed_lines, mark);
  gboolean tube_known = detail->mask_tvl > 0 || detail->spot_tvl > 0;

  switch (detail->claim)
    {
    case BW_CLAIM_SUPPORTED:
      return detail->mask_tvl > 0 && detail->mask_practical_tvl < bw_detail_least_claim (what)
                 ? g_strdup_printf (_ ("The claim of %s holds at the mask's very limit: one column "
                                       "to a line."),
                                    claimed)
                 : g_strdup_printf (_ ("The claim of %s holds, by what is known."), claimed);
    case BW_CLAIM_BY_BANDWIDTH:
      return tube_known
                 ? g_strdup_printf (_ ("The claim of %s is a figure of the bandwidth alone: this "
                                       "tube cannot show it."),
                                    claimed)
                 : g_strdup_printf (_ ("The bandwidth carries the claim of %s; whether the tube "
                                       "shows it is not known."),
                                    claimed);
    case BW_CLAIM_BY_TUBE:
      return g_strdup_printf (_ ("The tube could show the claim of %s, but the bandwidth does not "
                                 "carry it."),
                              claimed);
    case BW_CLAIM_NOT_TOGETHER:
      return g_strdup_printf (_ ("The claim of %s does not hold: each part of the set alone carries "
                                 "it, all together do not."),
                              claimed);
    case BW_CLAIM_NOT_SUPPORTED:
      return g_strdup_printf (_ ("The claim of %s does not hold."), claimed);
    case BW_CLAIM_UNKNOWN:
      if (what->pitch_m > 0 || what->spot_m > 0)
        return g_strdup_printf (_ ("The claim of %s is not judged: the size and the shape of the "
                                   "glass and the kind of mask are not all known."),
                                claimed);
      return g_strdup_printf (_ ("The claim of %s is not judged: neither pitch, spot nor bandwidth "
                                 "with a raster is known."),
                              claimed);
    case BW_CLAIM_NONE:
    case BW_N_CLAIMS:
    default:
      return g_strdup (_ ("Nothing is claimed."));
    }
}

/* "Together they leave 495 lines.": of a claim that each limit carries. */
static char *
together_sentence (const BwDetailCase *what, const BwDetail *detail, char mark)
{
  double tvl = bw_detail_claim_together_tvl (detail);
  gboolean each = detail->claim == BW_CLAIM_SUPPORTED || detail->claim == BW_CLAIM_NOT_TOGETHER;
  if (!each || !(tvl > 0) || round (tvl) >= bw_detail_least_claim (what))
    return g_strdup ("");
  g_autofree char *left = lines (tvl, mark);
  return g_strdup_printf (_ ("Together they leave %s (1/TVL² adds)."), left);
}

/* @a and @b, and a space between them if both say something. */
static char *
join (const char *a, const char *b)
{
  return g_strconcat (a, *a != '\0' && *b != '\0' ? " " : "", b, NULL);
}

/**
 * bw_claim_says:
 * @what: the case that was computed
 * @detail: what followed from it
 * @mark: the decimal mark
 *
 * Returns: (transfer full): whether the claim is true, the limits that it was held against, and
 * what it would take, translated
 */
char *
bw_claim_says (const BwDetailCase *what, const BwDetail *detail, char mark)
{
  g_return_val_if_fail (what != NULL && detail != NULL, NULL);
  g_autofree char *verdict = verdict_sentence (what, detail, mark);
  if (detail->claim == BW_CLAIM_NONE || detail->claim >= BW_N_CLAIMS)
    return g_steal_pointer (&verdict);
  g_autofree char *limits = limits_sentence (detail, mark);
  g_autofree char *needs = needs_sentence (what, detail, mark);
  g_autofree char *together = together_sentence (what, detail, mark);
  g_autofree char *more = join (needs, together);
  g_autofree char *reasons = join (limits, more);
  return join (verdict, reasons);
}

/**
 * bw_detail_says:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): which link limits first and what all together leave, translated
 */
char *
bw_detail_says (const BwDetail *detail, char mark)
{
  g_return_val_if_fail (detail != NULL, NULL);
  if (detail->limited_by >= BW_N_LINKS)
    return g_strdup (_ ("No limit of detail is known."));
  g_autofree char *limiting = lines (detail->limiting_tvl, mark);
  g_autofree char *share = bw_quantity_format (round (100 * detail->loss[detail->limited_by]) / 100,
                                               BW_DIMENSION_FRACTION, 3, mark);
  return g_strdup_printf (_ ("All links together leave %1$s, as read off a wedge: there 3 %% of the "
                             "modulation is left (common practice, no source). The %2$s limits "
                             "first, with %3$s of the loss."),
                          limiting, bw_kind_label (&bw_detail_links, detail->limited_by), share);
}

/**
 * bw_detail_spot_says:
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (nullable): which width of the spot is assumed for the line structure, and where that
 *   figure is from, translated; %NULL if the width was entered, or none can be assumed
 */
char *
bw_detail_spot_says (const BwDetail *detail, char mark)
{
  g_return_val_if_fail (detail != NULL, NULL);
  if (detail->line_spot_from == BW_SPOT_GIVEN || !(detail->line_spot_m > 0))
    return NULL;
  g_autofree char *spot = bw_quantity_format (detail->line_spot_m, BW_DIMENSION_LENGTH, 2, mark);
  return detail->line_spot_from == BW_SPOT_BY_PITCH
             ? g_strdup_printf (_ ("The width of the spot is not known: %s is assumed for the line "
                                   "structure, twice the pitch of the mask, as of a tube with a spot of "
                                   "0.63 mm at 0.31 mm (Poynton, Digital Video and HDTV). No limit of "
                                   "detail is taken from it."),
                                spot)
             : g_strdup_printf (_ ("The width of the spot is not known: %s is assumed for the line "
                                   "structure, by the size of the tube, as of a tube of 355 mm with a spot "
                                   "of 0.8 mm (one published source). No limit of detail is taken from "
                                   "it."),
                                spot);
}
