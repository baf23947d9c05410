/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "properties.h"

#include <math.h>
#include <string.h>

/* Sums and products of figures that come from the same exact numbers: a few roundings of a double
 * and no more. */
#define ROUNDING 1e-14

static gboolean
same (double a, double b)
{
  return fabs (a - b) <= ROUNDING * MAX (fabs (a), fabs (b));
}

static gboolean
figures_finite (const BwRasterFigures *f)
{
  const double all[] = {
    f->pixel_clock_hz,     f->line_rate_hz,   f->field_rate_hz,  f->frame_rate_hz,
    f->line_period_s,      f->field_period_s, f->h_active_s,     f->h_border_s,
    f->h_front_porch_s,    f->h_sync_s,       f->h_back_porch_s, f->h_blanking_s,
    f->h_datum_s,          f->v_active_lines, f->v_blanking_s,   f->lines_per_field,
    f->active_lines_frame,
  };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (!isfinite (all[i]) || all[i] < 0)
      return FALSE;
  return TRUE;
}

static const char *
horizontal_fault (const BwRaster *raster, const BwRasterFigures *f)
{
  double parts_s = f->h_front_porch_s + f->h_sync_s + f->h_back_porch_s;

  if (!same (f->line_rate_hz * f->line_period_s, 1))
    return "line rate times line period is not one";
  if (!same (parts_s, f->h_blanking_s))
    return "porches and sync do not add up to the blanking";
  if (!same (parts_s + f->h_active_s + 2 * f->h_border_s, f->line_period_s))
    return "the intervals of the line do not add up to its period";
  if (f->h_active_s <= 0 || f->h_sync_s <= 0)
    return "the line has no picture or no sync";
  if (f->h_datum_s > f->h_sync_s)
    return "the datum lies behind the sync";
  if (f->has_pixels && !same (f->line_rate_hz * f->h_total, f->pixel_clock_hz))
    return "line rate times pixels is not the pixel clock";
  if (f->has_pixels && f->h_total != bw_raster_h_total (raster))
    return "two line totals";
  return NULL;
}

static const char *
vertical_fault (const BwRaster *raster, const BwRasterFigures *f)
{
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  BwRatio rate_hz;

  if (!same (f->field_rate_hz * f->field_period_s, 1))
    return "field rate times field period is not one";
  if (!same (f->field_rate_hz * f->lines_per_field, f->line_rate_hz))
    return "field rate times lines of a field is not the line rate";
  if (!same (f->frame_rate_hz * f->lines_per_frame, f->line_rate_hz))
    return "frame rate times lines of a frame is not the line rate";
  if (!same (f->frame_rate_hz * (interlaced ? 2 : 1), f->field_rate_hz))
    return "fields and frames do not go together";
  if (f->v_blanking_s >= f->field_period_s)
    return "field blanking is as long as the field";
  if (f->active_lines_frame <= 0 || f->active_lines_frame >= f->lines_per_frame)
    return "picture lines are none or more than there are";
  if (bw_raster_field_rate (raster, &rate_hz)
      && !same (bw_ratio_to_double (rate_hz), f->field_rate_hz))
    return "the exact field rate is another";
  return NULL;
}

/**
 * bw_property_raster:
 * @raster: a raster that bw_raster_check() accepts
 *
 * Figures are finite, sums add up, rates multiply.
 */
char *
bw_property_raster (const BwRaster *raster)
{
  BwRasterFigures figures;
  const char *fault;

  bw_raster_figures (raster, &figures);
  if (!figures_finite (&figures))
    return g_strdup ("a figure is negative or not finite");
  fault = horizontal_fault (raster, &figures);
  if (fault == NULL)
    fault = vertical_fault (raster, &figures);
  return g_strdup (fault);
}

/**
 * bw_property_raster_kept:
 *
 * A raster that is saved reads back, and reads back as it was.
 */
char *
bw_property_raster_kept (const BwRaster *raster)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GKeyFile) again = g_key_file_new ();
  g_autoptr (GError) error = NULL;

  bw_raster_save (raster, keys, "raster");
  g_autofree char *text = g_key_file_to_data (keys, NULL, NULL);
  g_autoptr (BwRaster) back = bw_raster_load (keys, "raster", raster->id, "saved", &error);
  if (back == NULL)
    return g_strdup_printf ("what was saved does not read back: %s\n%s", error->message, text);
  bw_raster_save (back, again, "raster");
  g_autofree char *text_again = g_key_file_to_data (again, NULL, NULL);
  if (strcmp (text, text_again) != 0)
    return g_strdup_printf ("saved twice, two texts:\n%s---\n%s", text, text_again);
  if (memcmp (back->field, raster->field, sizeof back->field) != 0
      || bw_ratio_compare (back->line_rate_hz, raster->line_rate_hz) != 0)
    return g_strdup ("the line rate or a field is another after saving");
  return NULL;
}

/**
 * bw_property_plain:
 *
 * Returns: whether @text is UTF-8 in which no number came out as "nan" or "inf"
 */
gboolean
bw_property_plain (const char *text)
{
  static const char *const odd[] = { "nan", "inf" };
  g_autofree char *lower = NULL;

  if (!g_utf8_validate (text, -1, NULL))
    return FALSE;
  lower = g_ascii_strdown (text, -1);
  for (gsize i = 0; i < G_N_ELEMENTS (odd); i++)
    for (const char *p = strstr (lower, odd[i]); p != NULL; p = strstr (p + 1, odd[i]))
      {
        gboolean starts = p == lower || !g_ascii_isalpha (p[-1]);
        if (starts && !g_ascii_isalpha (p[3]))
          return FALSE;
      }
  return TRUE;
}

/* The figures that a rule finds besides are finite, and none is less than zero that cannot be. */
static gboolean
own_figures_make_sense (const BwFinding *f)
{
  switch (f->rule)
    {
    case BW_RULE_SYNC_LEVEL:
      return isfinite (f->as.sync_level.load_ohm) && isfinite (f->as.sync_level.wanted_v)
             && f->as.sync_level.load_ohm >= 0 && f->as.sync_level.wanted_v >= 0;
    case BW_RULE_VIDEO_LEVEL:
      return isfinite (f->as.video_level.load_ohm) && isfinite (f->as.video_level.wanted_v)
             && f->as.video_level.load_ohm >= 0 && f->as.video_level.wanted_v >= 0;
    case BW_RULE_SETUP:
      return isfinite (f->as.setup.off_ire);
    case BW_RULE_TERMINATION:
      return isfinite (f->as.termination.source_ohm) && f->as.termination.source_ohm >= 0
             && isfinite (f->as.termination.level_ratio) && f->as.termination.level_ratio >= 0;
    case BW_RULE_BANDWIDTH:
      return isfinite (f->as.bandwidth.source_tvl) && f->as.bandwidth.source_tvl >= 0
             && isfinite (f->as.bandwidth.passed_tvl) && f->as.bandwidth.passed_tvl >= 0;
    case BW_RULE_MAINS_BEAT:
      return isfinite (f->as.mains_beat.crossing_s) && f->as.mains_beat.crossing_s >= 0
             && ABS (f->as.mains_beat.direction) <= 1;
    case BW_RULE_ASPECT:
      return f->as.aspect.sets_height == TRUE || f->as.aspect.sets_height == FALSE;
    case BW_RULE_VISIBLE_AREA:
      return isfinite (f->as.visible_area.hidden_lines) && f->as.visible_area.hidden_lines >= 0
             && isfinite (f->as.visible_area.hidden_columns)
             && f->as.visible_area.hidden_columns >= 0 && isfinite (f->as.visible_area.hidden_s)
             && f->as.visible_area.hidden_s >= 0;
    case BW_RULE_SYNC_POLARITY:
      return f->as.sync_polarity.given < BW_BIT (BW_N_POLARITIES);
    case BW_RULE_SYNC_DRIVE:
      return isfinite (f->as.sync_drive.load_ohm) && f->as.sync_drive.load_ohm >= 0;
    case BW_RULE_SYNC_SHAPE:
      return f->as.sync_shape.given < BW_N_SHAPES;
    default:
      return TRUE;
    }
}

/**
 * bw_property_figures:
 *
 * Every figure of a finding is finite.
 */
const char *
bw_property_figures (const BwFinding *f)
{
  const double all[] = { f->value, f->low, f->high, f->margin, f->remedy.value };
  for (gsize i = 0; i < G_N_ELEMENTS (all); i++)
    if (!isfinite (all[i]))
      return "a figure is not finite";
  return own_figures_make_sense (f) ? NULL : "a figure of the rule's own makes no sense";
}

static const char *
finding_fault (const BwFinding *f)
{
  const char *fault = bw_property_figures (f);
  if (fault != NULL)
    return fault;
  if (f->severity >= BW_N_SEVERITIES || f->remedy.kind >= BW_N_REMEDIES)
    return "no such severity or remedy";
  if (f->severity == BW_SEVERITY_CURABLE && f->remedy.kind == BW_REMEDY_NONE)
    return "curable, and nothing cures it";
  if (f->severity == BW_SEVERITY_FATAL && f->remedy.kind != BW_REMEDY_NONE)
    return "no cure, and one is named";
  if ((f->severity == BW_SEVERITY_UNJUDGED) != (f->lacks.field != NULL))
    return "not judged without a figure that is lacking, or the reverse";
  if (f->severity == BW_SEVERITY_UNJUDGED && (f->has_value || f->has_low || f->has_high))
    return "not judged, and there are figures";
  if (f->has_low && f->has_high && f->low > f->high)
    return "the limits are reversed";
  return NULL;
}

static const char *
words_fault (const BwFinding *f, const BwFit *fit, const BwCase *c, char mark)
{
  g_autofree char *says = bw_finding_says (f, fit, c, mark);
  g_autofree char *remedy = bw_finding_remedy (f, fit, c, mark);
  g_autofree char *value = bw_finding_value (f, mark);
  g_autofree char *allowed = bw_finding_allowed (f, mark);

  if (says == NULL || *says == '\0' || !bw_property_plain (says))
    return "the sentence is missing or odd";
  if ((remedy != NULL) != (f->remedy.kind != BW_REMEDY_NONE))
    return "words of a remedy without one, or the reverse";
  if (remedy != NULL && (*remedy == '\0' || !bw_property_plain (remedy)))
    return "the words of the remedy are odd";
  if (!bw_property_plain (value) || (*value != '\0') != f->has_value)
    return "the words of the value are odd";
  if (!bw_property_plain (allowed) || (*allowed != '\0') != (f->has_low || f->has_high))
    return "the words of the limits are odd";
  return NULL;
}

/**
 * bw_property_fit:
 *
 * Each rule has its finding, in order, with finite figures and plain words, and verdict and
 * limiting rule are those of the worst finding.
 */
char *
bw_property_fit (const BwCase *c, const BwFit *fit)
{
  BwSeverity worst = BW_SEVERITY_OK;
  guint not_judged = 0;

  for (guint i = 0; i < BW_N_RULES; i++)
    {
      const BwFinding *f = &fit->at[i];
      const char *fault = f->rule == i ? finding_fault (f) : "a finding of another rule";
      if (fault == NULL)
        fault = words_fault (f, fit, c, i % 2 == 0 ? '.' : ',');
      if (fault != NULL)
        return g_strdup_printf ("%s: %s", bw_kind_id (&bw_rules, i), fault);
      worst = MAX (worst, f->severity);
      not_judged += f->severity == BW_SEVERITY_UNJUDGED;
    }
  if (fit->not_judged != not_judged)
    return g_strdup ("the number of rules that are not judged is wrong");
  if ((guint) fit->verdict != (guint) worst)
    return g_strdup ("the verdict is not that of the worst finding");
  if (fit->at[fit->limiting].severity != worst)
    return g_strdup ("the limiting rule is not the worst");
  if (c->source->syncs != 0 && !(c->source->syncs & BW_BIT (fit->sync)))
    return g_strdup ("judged for a sync that the source does not give");
  return NULL;
}

/**
 * bw_property_cells:
 *
 * bw_property_fit() for each source at each input.
 */
char *
bw_property_cells (const BwSheet *sheet, const BwCatalogue *catalogue)
{
  for (guint source = 0; source < sheet->sources->len; source++)
    for (guint input = 0; input < sheet->monitor->inputs->len; input++)
      {
        BwRasterFigures figures;
        BwCase c;
        BwFit fit;
        bw_case_init (&c, &figures, sheet, catalogue, source, input);
        bw_fit_judge (&c, &fit);
        g_autofree char *fault = bw_property_fit (&c, &fit);
        if (fault == NULL && c.raster != NULL)
          fault = bw_property_raster (c.raster);
        if (fault != NULL)
          return g_strdup_printf ("source %u, input %u: %s", source + 1, input + 1, fault);
      }
  return NULL;
}

static char *
first_fault (GPtrArray *faults, const char *text)
{
  const GError *fault = faults->len > 0 ? faults->pdata[0] : NULL;
  return g_strdup_printf ("what was saved does not read back: %s\n%s",
                          fault != NULL ? fault->message : "no fault is named", text);
}

/**
 * bw_property_sheet:
 *
 * All cells are sound; the sheet that is saved reads back; saved again it is the same text.
 */
char *
bw_property_sheet (const BwSheet *sheet, const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *text = bw_sheet_to_text (sheet, catalogue);
  g_autoptr (BwSheet) back = bw_sheet_parse (text, strlen (text), "saved", catalogue, faults);

  if (back == NULL)
    return first_fault (faults, text);
  g_autofree char *again = bw_sheet_to_text (back, catalogue);
  if (strcmp (text, again) != 0)
    return g_strdup_printf ("saved twice, two texts:\n%s---\n%s", text, again);
  if (back->sources->len != sheet->sources->len
      || back->monitor->inputs->len != sheet->monitor->inputs->len)
    return g_strdup ("a source or an input is lost in saving");
  return bw_property_cells (sheet, catalogue);
}

/**
 * bw_property_fields_kept:
 * @empty: a new struct of the same kind
 *
 * What the fields of @object are written as reads back into @empty and is written alike.
 */
char *
bw_property_fields_kept (const BwFieldTable *table, gpointer object, gpointer empty)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  g_autoptr (GError) error = NULL;

  bw_fields_save (table, object, keys, "group");
  if (bw_fields_need_second_form (table, object)) /* in which a key that is absent is a figure that is not known */
    bw_fields_forget (table, empty);
  if (!bw_fields_load (table, empty, keys, "group", "saved", &error))
    return g_strdup_printf ("what was saved does not read back: %s", error->message);
  for (guint i = 0; i < table->n; i++)
    if (!bw_field_equal (&table->at[i], object, empty))
      return g_strdup_printf ("%s is another after saving", table->at[i].key);
  return NULL;
}
