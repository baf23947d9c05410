/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "results.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* What a tube, a path and a source can resolve. What is not known is null, and left out for
 * people. */

#define DIGITS 4

/* Less modulation than this is none. */
#define NO_MODULATION 1e-4

/* More than this is no figure of a picture tube. */
#define LINES_MAX 10000

static const char order[] =
    "format screen_width_m screen_height_m stripes_across mask_tvl mask_practical_tvl bandwidth_tvl "
    "source_tvl signal_tvl spot_tvl combined_tvl limited_by vertical_lines line_pitch_m "
    "line_modulation claim_tvl claim_supported pitch_for_claim_m bandwidth_for_claim_hz "
    "spot_for_claim_m lead_tvl mtf_3_tvl mtf_10_tvl mtf_50_tvl kell interlace seen_lines "
    "line_width_ratio moire_samples_mask_m moire_lines_mask_m arc_minute_m links claim claim_says "
    "limit_says limiting_tvl line_spot_m line_spot_from line_spot_says";

/* Zero stands for "not known". */
static BwValue
known (BwValue value)
{
  return bw_value_if (value.number > 0, value);
}

static BwValue
length (const char *key, double length_m)
{
  return known (bw_value_quantity (key, length_m, BW_DIMENSION_LENGTH, DIGITS));
}

static BwValue
lines (const char *key, double tvl)
{
  return known (bw_value_fixed (key, tvl, BW_DIMENSION_TV_LINES, NULL, 0));
}

/* The glass, and what is scanned on it */

/* @judged: whether the pitch of both gratings is known. */
static void
add_moire (BwNode *to, const char *label, const char *key, gboolean judged, double beat_m)
{
  bw_node_figure (to, label,
                  bw_value_or (length (key, beat_m), judged ? _ ("none visible") : NULL));
}

static void
add_modulation (BwNode *to, const BwDetail *d)
{
  BwValue depth = bw_value_quantity ("line_modulation", d->line_modulation, BW_DIMENSION_FRACTION,
                                     3);
  const char *none = d->line_modulation < NO_MODULATION
                         ? bw_node_quantity (to, 0, BW_DIMENSION_FRACTION, 3)
                         : NULL;
  bw_node_figure (to, _ ("Line structure, modulation"),
                  bw_value_if (d->line_modulation >= 0, bw_value_read_as (depth, none)));
}

static void
add_glass (BwNode *to, const BwDetailReport *report)
{
  const BwDetail *d = &report->detail;
  const BwDetailCase *what = &report->what;

  bw_node_figure (to, _ ("Width"), length ("screen_width_m", d->width_m));
  bw_node_figure (to, _ ("Height"), length ("screen_height_m", d->height_m));
  bw_node_figure (to, _ ("Mask columns across"),
                  known (bw_value_count ("stripes_across", d->stripes_across)));
  bw_node_figure (to, _ ("Mask, at its sampling limit"), lines ("mask_tvl", d->mask_tvl));
  bw_node_figure (to, _ ("Mask, at 1.2 columns a line"),
                  lines ("mask_practical_tvl", d->mask_practical_tvl));
  if (report->raster != NULL)
    bw_node_figure (to, _ ("Raster"), bw_value_words (NULL, report->raster));
  bw_node_figure (to, _ ("Scanning lines in view"),
                  known (
                      bw_value_fixed ("seen_lines", d->seen_lines, BW_DIMENSION_LINES, NULL, 1)));
  bw_node_figure (to, _ ("Line pitch"), length ("line_pitch_m", d->line_pitch_m));
  add_modulation (to, d);
  bw_node_figure (to, _ ("Vertical, with the Kell factor"),
                  lines ("vertical_lines", d->vertical_lines));
  bw_node_figure (to, _ ("One line is one arc minute at"),
                  length ("arc_minute_m", d->arc_minute_m));
  add_moire (to, _ ("Moiré of samples and mask"), "moire_samples_mask_m",
             what->samples > 0 && d->pitch_h_m > 0, d->moire_samples_mask_m);
  add_moire (to, _ ("Moiré of lines and mask"), "moire_lines_mask_m",
             what->mask == BW_MASK_DOT && what->pitch_m > 0 && d->line_pitch_m > 0,
             d->moire_lines_mask_m);
  bw_node_member (to, length ("line_spot_m", d->line_spot_m));
  bw_node_member (to, bw_value_if (d->line_spot_m > 0, bw_value_kind ("line_spot_from", &bw_spot_origins,
                                                                      d->line_spot_from)));
  bw_node_member (to, known (bw_value_count ("line_width_ratio", d->line_width_ratio)));
  bw_node_member (to, bw_value_count ("kell", what->kell));
  bw_node_member (to, bw_value_count ("interlace", what->interlace));
}

/* Links */

/* Over the whole line, and where JSON has it; zero of those that have none. */
static double
whole_line_tvl (const BwDetail *d, BwDetailLink link, const char **key)
{
  const struct
  {
    const char *key;
    double tvl;
  } all[BW_N_LINKS] = {
    [BW_LINK_SOURCE] = { "source_tvl", d->source_tvl },
    [BW_LINK_SIGNAL] = { "signal_tvl", d->signal_tvl },
    [BW_LINK_LEAD] = { "lead_tvl", d->lead_tvl },
    [BW_LINK_AMPLIFIER] = { "bandwidth_tvl", d->bandwidth_tvl },
    [BW_LINK_SPOT] = { "spot_tvl", d->spot_tvl },
    [BW_LINK_MASK] = { NULL, 0 },
  };
  *key = all[link].key;
  return all[link].tvl;
}

static BwValue
lines_cell (const char *key, gboolean is_known, double tvl)
{
  BwValue value = bw_value_number (key, tvl, 0);
  return bw_value_if (is_known, bw_value_read_as (value, tvl > LINES_MAX ? "" : NULL));
}

/* The frequency that makes a limit of the path. */
static BwValue
frequency_of (const BwDetailCase *what, BwDetailLink link, double tvl)
{
  gboolean of_path = link != BW_LINK_SPOT && link != BW_LINK_MASK && tvl > 0 && tvl < LINES_MAX;
  double hz = of_path ? bw_hz_from_tvl (tvl, what->active_s, bw_ratio_to_double (what->aspect)) : 0;
  return known (bw_value_quantity ("limit_hz", hz, BW_DIMENSION_FREQUENCY, DIGITS));
}

/* The limit, where it leaves 3 %, 10 % and 50 %, and its share of the loss. */
static void
add_link (BwNode *table, const BwDetailReport *report, BwDetailLink link)
{
  const BwDetail *d = &report->detail;
  gboolean is_known = d->limit_tvl[link] > 0;
  const char *key;
  double whole_tvl = whole_line_tvl (d, link, &key);
  BwNode *row = bw_node_row (table);

  bw_node_cell (row, bw_value_kind ("link", &bw_detail_links, link));
  bw_node_cell (row, lines_cell ("limit_tvl", is_known, d->limit_tvl[link]));
  bw_node_cell (row, frequency_of (&report->what, link, whole_tvl));
  bw_node_cell (row, lines_cell ("mtf_3_tvl", is_known, d->level_tvl[link][0]));
  bw_node_cell (row, lines_cell ("mtf_10_tvl", is_known, d->level_tvl[link][1]));
  bw_node_cell (row, lines_cell ("mtf_50_tvl", is_known, d->level_tvl[link][2]));
  bw_node_member (row, bw_value_if (is_known, bw_value_count ("loss_share", d->loss[link])));
}

static void
add_seen_link (BwNode *seen, const BwNode *row)
{
  BwNode *copy = bw_node_row (seen);
  for (guint i = 0; i < row->values->len; i++)
    bw_node_cell (copy, g_array_index (row->values, BwValue, i));
}

static void
add_all_together (BwNode *seen, const BwDetail *d)
{
  BwNode *row = bw_node_row (seen);
  bw_node_cell (row, bw_value_says (NULL, _ ("all together")));
  bw_node_cell (row, lines_cell (NULL, TRUE, d->limiting_tvl));
  bw_node_cell (row, bw_value_nothing (NULL));
  for (guint i = 0; i < BW_N_MODULATIONS; i++)
    bw_node_cell (row, lines_cell (NULL, TRUE, d->mtf_tvl[i]));
}

/* People see the links that are known, and all together below them. */
static void
add_links (BwNode *to, const BwDetailReport *report)
{
  const BwDetail *d = &report->detail;
  BwNode *links = bw_node_table (to, "links", NULL), *seen = bw_node_table (to, NULL, NULL);

  seen->for_people = TRUE;
  bw_node_column (seen, BW_COLUMN_WORDS, _ ("TV lines"), NULL);
  bw_node_column (seen, BW_COLUMN_NUMBERS, _ ("limit"), NULL);
  bw_node_column (seen, BW_COLUMN_NUMBERS, _ ("at"), NULL);
  bw_node_column (seen, BW_COLUMN_NUMBERS, _ ("3 %"), NULL);
  bw_node_column (seen, BW_COLUMN_NUMBERS, _ ("10 %"), NULL);
  bw_node_column (seen, BW_COLUMN_NUMBERS, _ ("50 %"), NULL);
  for (BwDetailLink link = 0; link < BW_N_LINKS; link++)
    {
      const char *key;
      double whole_tvl = whole_line_tvl (d, link, &key);
      if (key != NULL)
        bw_node_member (to, lines (key, whole_tvl));
      add_link (links, report, link);
      if (d->limit_tvl[link] > 0 && d->limited_by < BW_N_LINKS)
        add_seen_link (seen, links->children->pdata[link]);
    }
  if (d->limited_by < BW_N_LINKS)
    add_all_together (seen, d);
  bw_node_member (to, lines ("combined_tvl", d->combined_tvl));
  bw_node_member (to, lines ("limiting_tvl", d->limiting_tvl));
  bw_node_member (to, lines ("mtf_3_tvl", d->mtf_tvl[0]));
  bw_node_member (to, lines ("mtf_10_tvl", d->mtf_tvl[1]));
  bw_node_member (to, lines ("mtf_50_tvl", d->mtf_tvl[2]));
  bw_node_member (to, d->limited_by < BW_N_LINKS
                          ? bw_value_kind ("limited_by", &bw_detail_links, d->limited_by)
                          : bw_value_nothing ("limited_by"));
}

/* The claim */

static void
add_claim (BwNode *to, const BwDetailReport *report)
{
  const BwDetail *d = &report->detail;
  gboolean judged = d->claim != BW_CLAIM_NONE && d->claim != BW_CLAIM_UNKNOWN;
  BwValue claim = bw_value_kind ("claim", &bw_claims, d->claim);

  bw_node_figure (to, _ ("Claimed"), lines ("claim_tvl", report->what.claimed_lines));
  if (report->what.claimed_lines > 0)
    bw_node_figure (to, _ ("The claim is"), claim);
  else
    bw_node_member (to, claim);
  bw_node_member (to, bw_value_if (judged, bw_value_flag ("claim_supported",
                                                          d->claim == BW_CLAIM_SUPPORTED)));
  bw_node_figure (to, _ ("It needs a pitch of"),
                  length ("pitch_for_claim_m", d->pitch_for_claim_m));
  bw_node_figure (to, _ ("It needs a spot of"), length ("spot_for_claim_m", d->spot_for_claim_m));
  bw_node_figure (to, _ ("It needs a bandwidth of"),
                  known (bw_value_quantity ("bandwidth_for_claim_hz", d->bandwidth_for_claim_hz,
                                            BW_DIMENSION_FREQUENCY, DIGITS)));
}

/**
 * bw_detail_say_figures:
 *
 * Adds the figures of the glass, of each link, and of the claim.
 */
void
bw_detail_say_figures (BwNode *to, const BwDetailReport *report)
{
  g_return_if_fail (to != NULL && report != NULL);
  to->order = order;
  add_glass (to, report);
  add_claim (to, report);
  add_links (to, report);
}

/* The answer */

/* Which area of the tube the figures are for, if picture and tube have different aspects. */
static const char *
area_words (BwNode *to, const BwDetailReport *report)
{
  const BwRatio *area = &report->what.aspect, *source = &report->source_aspect;

  if (bw_ratio_is_none (*source))
    return NULL;
  if (report->switched)
    return bw_node_print (to,
                          _ ("The set's switch is taken to scan a picture of %1$d:%2$d inside the "
                             "tube: the figures are of that area."),
                          (int) area->num, (int) area->den);
  if (bw_ratio_compare (*area, *source) == 0)
    return NULL;
  return bw_node_print (to,
                        _ ("The source is %1$d:%2$d; the picture is taken to fill the tube of "
                           "%3$d:%4$d."),
                        (int) source->num, (int) source->den, (int) area->num, (int) area->den);
}

/* The limits count what is on the glass. */
static const char *
overscan_words (BwNode *to, const BwDetailCase *what)
{
  if (!(what->overscan_h > 0) || !(what->active_s > 0))
    return NULL;
  return bw_node_print (to, _ ("Of each line, %s falls outside the glass and is not counted."),
                        bw_node_quantity (to, what->overscan_h, BW_DIMENSION_FRACTION, 3));
}

/**
 * bw_detail_say_answer:
 *
 * Adds what the figures are of, which link limits, and whether the claim is true.
 */
void
bw_detail_say_answer (BwNode *to, const BwDetailReport *report)
{
  g_return_if_fail (to != NULL && report != NULL);
  char mark = bw_result_mark (to->result);

  if (report->detail.limited_by < BW_N_LINKS)
    bw_node_say (to, BW_SAY_NOTE, NULL,
                 /* xgettext:no-c-format */
                 _ ("The limit is −3 dB of lead and video bandwidth, the sampling limit of samples "
                    "and mask, the edge of the band of the signal kind, and 3 % of the spot; of all "
                    "together it is where 3 % of the modulation is left, as read off a wedge."));
  bw_node_say (to, BW_SAY_NOTE, NULL, area_words (to, report));
  bw_node_say (to, BW_SAY_NOTE, NULL, overscan_words (to, &report->what));
  const char *spot = bw_node_take (to, bw_detail_spot_says (&report->detail, mark));
  bw_node_member (to, bw_value_says ("line_spot_says", spot));
  if (spot != NULL && report->detail.line_width_ratio > 0)
    bw_node_say (to, BW_SAY_NOTE, NULL, spot);
  bw_node_say (to, BW_SAY_ANSWER, "limit_says",
               bw_node_take (to, bw_detail_says (&report->detail, mark)));
  bw_node_say (to, BW_SAY_ANSWER, "claim_says",
               bw_node_take (to, bw_claim_says (&report->what, &report->detail, mark)));
}

/* Other signal kinds */

static void
add_way (BwNode *table, const BwDetail *detail, const BwDetailWay *way)
{
  BwNode *row = bw_node_row (table);
  gboolean filtered = way->signal == BW_SIGNAL_COMPOSITE;
  char mark = bw_result_mark (row->result);

  bw_node_cell (row, bw_value_read_as (bw_value_kind ("kind", &bw_signals, way->signal),
                                       bw_node_take (row, bw_detail_way_name (way))));
  bw_node_cell (row, bw_value_number ("limiting_tvl", way->detail.limiting_tvl, 0));
  bw_node_cell (row,
                bw_value_says (NULL, bw_node_take (row, bw_detail_way_notes (detail, way, mark))));
  bw_node_member (row,
                  bw_value_if (filtered, bw_value_kind ("filter", &bw_luma_filters, way->filter)));
  bw_node_member (row, bw_value_exact ("combined_tvl", way->detail.combined_tvl, BW_DIMENSION_NONE));
  bw_node_member (row, bw_value_count ("gain", bw_detail_way_gain (detail, way)));
  bw_node_member (row, bw_value_flag ("is_own", way->is_own));
  bw_node_member (row, bw_value_flag ("is_taken", way->is_taken));
}

/**
 * bw_detail_say_ways:
 *
 * Adds a table of what all links leave by each signal kind, and how much more that is; "gain" is a
 * share of what there is now, and "is_taken" says whether an input takes the kind.
 */
void
bw_detail_say_ways (BwNode *to, const BwDetailReport *report)
{
  g_return_if_fail (to != NULL && report != NULL);
  if (report->n_ways == 0)
    return;
  BwNode *table = bw_node_table (to, "ways", _ ("All together, by each signal kind"));

  bw_node_column (table, BW_COLUMN_WORDS, _ ("signal kind"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("TV lines"), NULL);
  bw_node_column (table, BW_COLUMN_SAYS, _ ("against this one"), NULL);
  for (guint i = 0; i < report->n_ways && report->detail.limiting_tvl > 0; i++)
    add_way (table, &report->detail, &report->ways[i]);
}

/**
 * bw_detail_say_rgb:
 *
 * Adds whether RGB would help.
 */
void
bw_detail_say_rgb (BwNode *to, const BwDetailReport *report)
{
  g_return_if_fail (to != NULL && report != NULL);
  if (report->n_ways > 0)
    bw_node_say (to, BW_SAY_ANSWER, "rgb_says",
                 bw_node_take (to,
                               bw_detail_ways_say (&report->what, &report->detail, report->ways,
                                                   report->n_ways, bw_result_mark (to->result))));
}
