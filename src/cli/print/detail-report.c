/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-report.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "cli/base/table.h"
#include "cli/base/words.h"

#define DIGITS 4
#define LINE_DIGITS 5

/* Zero stands for "not known", and is null. */
static void
known_to_json (BwJson *json, const char *key, double value)
{
  bw_json_number_if (json, key, value > 0, value);
}

static void
claim_to_json (const BwDetailReport *report, BwJson *json)
{
  const BwDetail *detail = &report->detail;

  known_to_json (json, "claim_tvl", report->what.claimed_lines);
  if (detail->claim == BW_CLAIM_NONE || detail->claim == BW_CLAIM_UNKNOWN)
    bw_json_null (json, "claim_supported");
  else
    bw_json_boolean (json, "claim_supported", detail->claim == BW_CLAIM_SUPPORTED);
  known_to_json (json, "pitch_for_claim_m", detail->pitch_for_claim_m);
  known_to_json (json, "bandwidth_for_claim_hz", detail->bandwidth_for_claim_hz);
}

/* Each link: its limit, where it leaves 3 %, 10 % and 50 %, and its share of the loss. */
static void
links_to_json (const BwDetail *detail, BwJson *json)
{
  bw_json_begin_array (json, "links");
  for (guint link = 0; link < BW_N_LINKS; link++)
    {
      gboolean known = detail->limit_tvl[link] > 0;
      bw_json_begin_object (json, NULL);
      bw_json_string (json, "link", bw_kind_id (&bw_detail_links, link));
      bw_json_number_if (json, "limit_tvl", known, detail->limit_tvl[link]);
      bw_json_number_if (json, "mtf_3_tvl", known, detail->level_tvl[link][0]);
      bw_json_number_if (json, "mtf_10_tvl", known, detail->level_tvl[link][1]);
      bw_json_number_if (json, "mtf_50_tvl", known, detail->level_tvl[link][2]);
      bw_json_number_if (json, "loss_share", known, detail->loss[link]);
      bw_json_end_object (json);
    }
  bw_json_end_array (json);
}

static void
more_to_json (const BwDetailReport *report, BwJson *json)
{
  const BwDetail *detail = &report->detail;
  g_autofree char *says = bw_claim_says (&report->what, detail, BW_FILE_MARK);
  g_autofree char *limit_says = bw_detail_says (detail, BW_FILE_MARK);

  known_to_json (json, "spot_for_claim_m", detail->spot_for_claim_m);
  known_to_json (json, "lead_tvl", detail->lead_tvl);
  known_to_json (json, "mtf_3_tvl", detail->mtf_tvl[0]);
  known_to_json (json, "mtf_10_tvl", detail->mtf_tvl[1]);
  known_to_json (json, "mtf_50_tvl", detail->mtf_tvl[2]);
  bw_json_number (json, "kell", report->what.kell);
  bw_json_number (json, "interlace", report->what.interlace);
  known_to_json (json, "seen_lines", detail->seen_lines);
  known_to_json (json, "line_width_ratio", detail->line_width_ratio);
  known_to_json (json, "moire_samples_mask_m", detail->moire_samples_mask_m);
  known_to_json (json, "moire_lines_mask_m", detail->moire_lines_mask_m);
  known_to_json (json, "arc_minute_m", detail->arc_minute_m);
  links_to_json (detail, json);
  bw_json_string (json, "claim", bw_kind_id (&bw_claims, detail->claim));
  bw_json_string (json, "claim_says", says);
  bw_json_string (json, "limit_says", limit_says);
}

/**
 * bw_detail_report_to_json:
 *
 * Adds the figures to the object that @json is in. What is not known is null.
 */
void
bw_detail_report_to_json (const BwDetailReport *report, BwJson *json)
{
  const BwDetail *detail = &report->detail;

  known_to_json (json, "screen_width_m", detail->width_m);
  known_to_json (json, "screen_height_m", detail->height_m);
  known_to_json (json, "stripes_across", detail->stripes_across);
  known_to_json (json, "mask_tvl", detail->mask_tvl);
  known_to_json (json, "mask_practical_tvl", detail->mask_practical_tvl);
  known_to_json (json, "bandwidth_tvl", detail->bandwidth_tvl);
  known_to_json (json, "source_tvl", detail->source_tvl);
  known_to_json (json, "signal_tvl", detail->signal_tvl);
  known_to_json (json, "spot_tvl", detail->spot_tvl);
  known_to_json (json, "combined_tvl", detail->combined_tvl);
  if (detail->limited_by < BW_N_LINKS)
    bw_json_string (json, "limited_by", bw_kind_id (&bw_detail_links, detail->limited_by));
  else
    bw_json_null (json, "limited_by");
  known_to_json (json, "vertical_lines", detail->vertical_lines);
  known_to_json (json, "line_pitch_m", detail->line_pitch_m);
  bw_json_number_if (json, "line_modulation", detail->line_modulation >= 0,
                     detail->line_modulation);
  claim_to_json (report, json);
  more_to_json (report, json);
}

static void
add_figure (BwTable *table, const char *label, double value, BwDimension dimension, int digits)
{
  if (!(value > 0))
    return;
  g_autofree char *text = bw_quantity_format (value, dimension, digits, bw_quantity_locale_mark ());
  bw_table_add_row (table, label, text, NULL);
}

static void
add_length (BwTable *table, const char *label, double length_m)
{
  add_figure (table, label, length_m, BW_DIMENSION_LENGTH, DIGITS);
}

static void
add_lines (BwTable *table, const char *label, double tvl)
{
  add_figure (table, label, round (tvl), BW_DIMENSION_TV_LINES, LINE_DIGITS);
}

/* @judged: whether the pitch of both gratings is known. */
static void
add_moire (BwTable *table, const char *label, gboolean judged, double beat_m)
{
  if (beat_m > 0)
    add_length (table, label, beat_m);
  else if (judged)
    bw_table_add_row (table, label, _ ("none visible"), NULL);
}

static void
append_glass (const BwDetailReport *report, GString *to)
{
  const BwDetail *detail = &report->detail;
  g_autoptr (BwTable) table = bw_table_new (2);

  add_length (table, _ ("Width"), detail->width_m);
  add_length (table, _ ("Height"), detail->height_m);
  if (detail->stripes_across > 0)
    {
      g_autofree char *across = bw_words_fixed (detail->stripes_across, 0);
      bw_table_add_row (table, _ ("Mask columns across"), across, NULL);
    }
  add_lines (table, _ ("Mask, at its sampling limit"), detail->mask_tvl);
  add_lines (table, _ ("Mask, in practice (1.2 columns a line)"), detail->mask_practical_tvl);
  if (report->raster != NULL)
    bw_table_add_row (table, _ ("Raster"), report->raster, NULL);
  add_length (table, _ ("Line pitch"), detail->line_pitch_m);
  if (detail->line_modulation >= 0)
    {
      double depth = detail->line_modulation < 1e-4 ? 0 : detail->line_modulation;
      g_autofree char *text = bw_quantity_format (depth, BW_DIMENSION_FRACTION, 3,
                                                  bw_quantity_locale_mark ());
      bw_table_add_row (table, _ ("Line structure, modulation"), text, NULL);
    }
  add_lines (table, _ ("Vertical detail, with the Kell factor"), detail->vertical_lines);
  add_length (table, _ ("One line is one arc minute at"), detail->arc_minute_m);
  add_moire (table, _ ("Moire of samples and mask"),
             report->what.samples > 0 && detail->pitch_h_m > 0, detail->moire_samples_mask_m);
  add_moire (table, _ ("Moire of lines and mask"),
             report->what.mask == BW_MASK_DOT && report->what.pitch_m > 0
                 && detail->line_pitch_m > 0,
             detail->moire_lines_mask_m);
  bw_table_append_to (table, to, 0);
}

/* More than this is no figure of a picture tube. */
#define LINES_MAX 10000

static char *
lines_cell (double tvl)
{
  return tvl > LINES_MAX ? g_strdup ("") : bw_words_fixed (tvl, 0);
}

static void
add_link_row (BwTable *table, const char *label, double limit_tvl, const double levels_tvl[])
{
  g_autofree char *limit = lines_cell (limit_tvl);
  g_autofree char *lost = lines_cell (levels_tvl[0]);
  g_autofree char *seen = lines_cell (levels_tvl[1]);
  g_autofree char *crisp = lines_cell (levels_tvl[2]);
  bw_table_add_row (table, label, limit, lost, seen, crisp, NULL);
}

static void
append_links (const BwDetail *detail, GString *to)
{
  g_autoptr (BwTable) table = bw_table_new (5);

  for (guint column = 1; column < 5; column++)
    bw_table_set_right (table, column);
  bw_table_add_row (table, _ ("TV lines per picture height"), _ ("limit"), _ ("3 %"), _ ("10 %"),
                    _ ("50 %"), NULL);
  for (guint link = 0; link < BW_N_LINKS; link++)
    if (detail->limit_tvl[link] > 0)
      add_link_row (table, bw_kind_label (&bw_detail_links, link), detail->limit_tvl[link],
                    detail->level_tvl[link]);
  add_link_row (table, _ ("all together"), detail->combined_tvl, detail->mtf_tvl);
  g_string_append_c (to, '\n');
  bw_table_append_to (table, to, 0);
}

/* What stands in the first column of figures. */
static void
append_limit_note (GString *to)
{
  bw_words_append_wrapped (to, "", 0,
                           _ ("The limit is −3 dB of lead and video bandwidth, the sampling limit "
                              "of samples and mask, the edge of the band of the signal kind, and "
                              "3 % of the spot."));
}

/* Where the picture's shape is not the tube's, which area the figures are of. */
static void
append_area (const BwDetailReport *report, GString *to)
{
  const BwRatio *area = &report->what.aspect, *source = &report->source_aspect;
  g_autofree char *says = NULL;

  if (bw_ratio_is_none (*source))
    return;
  if (report->switched)
    says = g_strdup_printf (_ ("The set's switch is taken to scan a picture of %d:%d inside the "
                               "tube: the figures are of that area."),
                            (int) area->num, (int) area->den);
  else if (bw_ratio_compare (*area, *source) != 0)
    says = g_strdup_printf (_ ("The source is %d:%d; the picture is taken to fill the tube of "
                               "%d:%d."),
                            (int) source->num, (int) source->den, (int) area->num, (int) area->den);
  if (says != NULL)
    bw_words_append_wrapped (to, "", 0, says);
}

/* The limits above count what is on the glass. */
static void
append_overscan (const BwDetailCase *what, GString *to)
{
  if (!(what->overscan_h > 0) || !(what->active_s > 0))
    return;
  g_autofree char *share = bw_quantity_format (what->overscan_h, BW_DIMENSION_FRACTION, 3,
                                               bw_quantity_locale_mark ());
  g_autofree char *says = g_strdup_printf (_ ("Of each line, %s falls outside the glass and is not "
                                              "counted."),
                                           share);
  bw_words_append_wrapped (to, "", 0, says);
}

/**
 * bw_detail_report_append_text:
 *
 * Appends the figures of the glass, a table of the links, and what it comes to.
 */
void
bw_detail_report_append_text (const BwDetailReport *report, GString *to)
{
  char mark = bw_quantity_locale_mark ();
  g_autofree char *limit_says = bw_detail_says (&report->detail, mark);
  g_autofree char *claim_says = bw_claim_says (&report->what, &report->detail, mark);

  append_glass (report, to);
  if (report->detail.limited_by < BW_N_LINKS)
    append_links (&report->detail, to);
  g_string_append_c (to, '\n');
  if (report->detail.limited_by < BW_N_LINKS)
    append_limit_note (to);
  append_area (report, to);
  append_overscan (&report->what, to);
  bw_words_append_wrapped (to, "", 0, limit_says);
  bw_words_append_wrapped (to, "", 0, claim_says);
}
