/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "tube-raster-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "lack.h"

G_DEFINE_QUARK (bw-tube-error-quark, bw_tube_error)

/* How the raster is found: line rates and counts of lines are tried, those of the standards first, and
 * each that holds becomes an answer with its rank. A margin that is not kept, lines behind the edge of
 * the glass and the like make an answer rank lower and are said with it; they forbid nothing. */

/* How far the field rate of a standard may lie from the one that was asked for, as a share. */
#define FIELD_RATE_PLAY 0.006

/* A standard whose picture has far more lines than are asked for leaves most of the glass dark; so does a
 * count of lines found by trying. */
#define LEAST_OF_STANDARD 0.7
#define LEAST_OF_COMPUTERS 0.9
#define MOST_OF_STANDARD 1.02
#define MOST_LINES_FOR_PICTURE 1.45

#define FIELD_SYNC_LINES 3

/* What rank the origins have, and what it costs not to keep a margin. */
static const double origin_ranks[]
    = { [BW_TUBE_STANDARD] = 0, [BW_TUBE_NOMINAL] = -1, [BW_TUBE_EXACT] = 1,
        [BW_TUBE_INSIDE] = 1.5, [BW_TUBE_LOWEST] = 1.7 };
#define RANK_WITHOUT_MARGIN 2

/* Rates above this are those of computers, with their own shares of the line. */
#define COMPUTER_LINE_RATE_HZ 20e3

/**
 * bw_tube_answer_free:
 * @answer: (transfer full): freed with all it owns
 */
void
bw_tube_answer_free (BwTubeAnswer *answer)
{
  g_clear_pointer (&answer->raster, bw_raster_free);
  g_clear_pointer (&answer->why, g_ptr_array_unref);
  g_clear_pointer (&answer->costs, g_ptr_array_unref);
  g_free (answer);
}

/**
 * bw_clock_reach_of:
 *
 * Returns: the pixel clocks that @source can be set to
 */
BwClockReach
bw_clock_reach_of (const BwSource *source)
{
  g_return_val_if_fail (source != NULL, (BwClockReach){ 0 });
  return (BwClockReach){ source->lowest_clock_hz, source->highest_clock_hz, source->clock_step_hz,
                         source->pixel_multiple, source->no_interlace };
}

static BwTubeAnswer *
answer_new (void)
{
  BwTubeAnswer *answer = g_new0 (BwTubeAnswer, 1);
  answer->raster = bw_raster_new ();
  answer->why = g_ptr_array_new_with_free_func (g_free);
  answer->costs = g_ptr_array_new_with_free_func (g_free);
  return answer;
}

static char *
rate_text (double rate_hz)
{
  return bw_quantity_format (rate_hz, BW_DIMENSION_FREQUENCY, 5, bw_quantity_locale_mark ());
}

/**
 * bw_tube_band:
 * @margin: to keep from both edges, as a share
 * @with_pull_in: (out) (nullable): the rates that the band stands for
 *
 * Returns: (transfer none) (nullable): the band in which @value lies with its margin
 */
const BwRange *
bw_tube_band (const BwBands *bands, double value, double margin, BwRange *with_pull_in)
{
  for (guint i = 0; i < bands->n; i++)
    {
      BwRange band = bw_rate_band (bands->at[i]);
      if (value < band.low * (1 + margin) * (1 - 1e-12)
          || value > band.high * (1 - margin) * (1 + 1e-12))
        continue;
      if (with_pull_in != NULL)
        *with_pull_in = band;
      return &bands->at[i];
    }
  return NULL;
}

/* Whether blanking hides the retrace with @margin and has room for sync. The first field of an interlaced
 * raster is half a line the shorter. */
static gboolean
has_room (const BwTubeSearch *search, double line_rate_hz, int half_lines, int v_sync,
          double margin)
{
  int blanking = half_lines - (search->request->interlaced ? 1 : 0) - search->active_half_lines;
  double retrace = bw_tube_retrace_half_lines (search, line_rate_hz);
  return blanking >= retrace * (1 + margin) * (1 - 1e-12) && blanking >= v_sync + 4;
}

/* Answers */

static void
name_raster (const BwTubeSearch *search, BwRaster *raster)
{
  const BwTubeRequest *request = search->request;
  BwRasterFigures f;
  char plain[G_ASCII_DTOSTR_BUF_SIZE];

  bw_raster_figures (raster, &f);
  g_autofree char *rate = bw_quantity_format (f.field_rate_hz, BW_DIMENSION_FREQUENCY, 5,
                                              BW_FILE_MARK);
  g_ascii_formatd (plain, sizeof plain, "%.5g", bw_ratio_to_double (request->field_rate_hz));
  g_free (raster->id);
  g_free (raster->name);
  raster->id = g_strdup_printf ("tube-%dx%d-%s%s", request->width, request->height, plain,
                                request->interlaced ? "-interlaced" : "");
  raster->name = g_strdup_printf (_ ("%1$d×%2$d, %3$s, made for %4$s"), request->width,
                                  request->height, rate, search->monitor->name);
  g_free (raster->source);
  raster->source = g_strdup (_ ("computation for this monitor"));
}

static gboolean
keeps_margins (const BwTubeSearch *search, const BwRaster *raster)
{
  const BwLimits *limits = search->limits;
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  return bw_tube_band (search->line_rates_hz, f.line_rate_hz, limits->line_rate, NULL) != NULL
         && bw_tube_band (&search->monitor->field_rates_hz, f.field_rate_hz, limits->field_rate,
                          NULL) != NULL
         && f.v_blanking_s >= search->monitor->field_retrace_s * (1 + limits->blanking);
}

/* Whether it lies in the bands and the source has a clock for it. */
static gboolean
holds (BwTubeSearch *search, const BwRaster *raster)
{
  double highest_hz = search->request->clock.highest_hz;
  BwRasterFigures f;

  bw_raster_figures (raster, &f);
  if (bw_tube_band (search->line_rates_hz, f.line_rate_hz, 0, NULL) == NULL
      || bw_tube_band (&search->monitor->field_rates_hz, f.field_rate_hz, 0, NULL) == NULL
      || f.h_blanking_s < search->monitor->line_retrace_s * (1 - 1e-9))
    return FALSE;
  if (highest_hz <= 0 || f.pixel_clock_hz <= highest_hz * (1 + 1e-9))
    return bw_raster_check (raster, NULL);
  search->clock_hz = search->clock_hz > 0 ? MIN (search->clock_hz, f.pixel_clock_hz)
                                          : f.pixel_clock_hz;
  return FALSE;
}

/* Makes an answer of @skeleton if it holds. @penalty: less than one, added to its rank. */
static void
try (BwTubeSearch *search, const BwTubeSkeleton *skeleton, double penalty)
{
  double line_rate_hz = bw_ratio_to_double (skeleton->line_rate_hz);
  int widened = 1;

  if (bw_tube_band (search->line_rates_hz, line_rate_hz, 0, NULL) == NULL)
    return;
  BwTubeAnswer *answer = answer_new ();
  if (!has_room (search, line_rate_hz, skeleton->half_lines, skeleton->v_sync, 0)
      || !bw_tube_lay_out (search, skeleton, answer->raster, &widened)
      || !holds (search, answer->raster))
    {
      bw_tube_answer_free (answer);
      return;
    }
  answer->is_standard = skeleton->origin == BW_TUBE_STANDARD;
  answer->rank = origin_ranks[skeleton->origin] + penalty
                 + (keeps_margins (search, answer->raster) ? 0 : RANK_WITHOUT_MARGIN);
  name_raster (search, answer->raster);
  bw_tube_say_why (search, skeleton, widened, answer);
  bw_tube_say_costs (search, skeleton, answer);
  g_ptr_array_add (search->answers, answer);
}

/* The standards */

/* How far a standard is from what is asked for: its lines first, then, on computers, its pixels. Less
 * than one; negative if it will not do. */
static double
distance (const BwTubeSearch *search, const BwRaster *standard, const BwRasterFigures *f)
{
  double wanted_hz = bw_ratio_to_double (search->request->field_rate_hz);
  double lines = search->active_half_lines / 2.0 / f->v_active_lines;
  gboolean interlaced = standard->scan == BW_SCAN_INTERLACED;
  double least = f->has_pixels ? LEAST_OF_COMPUTERS : LEAST_OF_STANDARD;

  if (interlaced != search->request->interlaced || standard->sync_shape != BW_SHAPE_BILEVEL
      || fabs (f->field_rate_hz / wanted_hz - 1) > FIELD_RATE_PLAY || lines < least
      || lines > MOST_OF_STANDARD)
    return -1;
  double far = floor (fabs (1 - lines) / 0.02) * 0.02;
  if (f->line_rate_hz > COMPUTER_LINE_RATE_HZ && f->has_pixels
      && standard->h_active / standard->pixel_repeat != search->request->width)
    far += 0.01;
  return far;
}

static BwTubeSkeleton
skeleton_of (const BwTubeSearch *search, const BwRaster *standard, const BwRasterFigures *f)
{
  const BwFieldTiming *field = &standard->field[0];
  int border = 2 * standard->v_border;
  return (BwTubeSkeleton){
    .origin = BW_TUBE_STANDARD,
    .line_rate_hz = standard->line_rate_hz,
    .half_lines = (int) round (2 * f->lines_per_field),
    .front = (f->h_front_porch_s + f->h_border_s) / f->line_period_s,
    .sync = f->h_sync_s / f->line_period_s,
    .back = (f->h_back_porch_s + f->h_border_s) / f->line_period_s,
    .v_active = field->active,
    .v_front = field->front_porch + border,
    .v_sync = field->sync,
    .h_polarity = standard->h_polarity,
    .v_polarity = standard->v_polarity,
    .standard = standard,
  };
}

/* The nearest standard with just the field rate that was asked for in place of its own. */
static void
try_exact (BwTubeSearch *search, const BwTubeSkeleton *nearest)
{
  BwTubeSkeleton exact = *nearest;
  exact.origin = BW_TUBE_EXACT;
  if (bw_ratio_multiply (search->request->field_rate_hz, (BwRatio){ exact.half_lines, 2 },
                         &exact.line_rate_hz))
    try (search, &exact, 0);
}

static void
try_standards (BwTubeSearch *search)
{
  GPtrArray *rasters = bw_catalogue_rasters (search->request->catalogue);
  BwTubeSkeleton nearest = { 0 };
  double nearest_penalty = 1;

  for (guint i = 0; i < rasters->len; i++)
    {
      const BwRaster *standard = rasters->pdata[i];
      BwRasterFigures f;
      bw_raster_figures (standard, &f);
      double penalty = distance (search, standard, &f);
      if (penalty < 0)
        continue;
      /* The catalogue's order breaks ties. */
      penalty += 1e-5 * i;
      BwTubeSkeleton skeleton = skeleton_of (search, standard, &f);
      if (penalty < nearest_penalty)
        {
          nearest_penalty = penalty;
          nearest = skeleton;
        }
      try (search, &skeleton, penalty);
    }
  if (nearest.standard != NULL)
    try_exact (search, &nearest);
}

/* Without a standard */

/* The shares of the line in the 525- and 625-line systems (ITU-R BT.470-6: 1.5, 4.7 and 5.8 of 64 µs), and
 * in the commonest raster of computers (640×480 at 60 Hz, VESA DMT: 16, 96 and 48 of 800 pixels). */
static BwTubeSkeleton
plain_skeleton (BwTubeOrigin origin, BwRatio line_rate_hz, int half_lines)
{
  gboolean computer = bw_ratio_to_double (line_rate_hz) > COMPUTER_LINE_RATE_HZ;
  return (BwTubeSkeleton){
    .origin = origin,
    .line_rate_hz = line_rate_hz,
    .half_lines = half_lines,
    .front = computer ? 16.0 / 800 : 1.5 / 64,
    .sync = computer ? 96.0 / 800 : 4.7 / 64,
    .back = computer ? 48.0 / 800 : 5.8 / 64,
    .v_sync = 2 * FIELD_SYNC_LINES,
    .h_polarity = BW_POLARITY_NEGATIVE,
    .v_polarity = BW_POLARITY_NEGATIVE,
  };
}

/* The lowest line rate that does it. @inside: every line is seen. @margins: they are kept. */
static void
try_lowest (BwTubeSearch *search, gboolean inside, gboolean margins)
{
  const BwLimits *limits = search->limits;
  double rate_hz = bw_ratio_to_double (search->request->field_rate_hz);
  int least = search->active_half_lines + (search->request->interlaced ? 1 : 0);
  BwRatio line_rate_hz;

  for (int half_lines = least; half_lines <= MOST_LINES_FOR_PICTURE * search->active_half_lines;
       half_lines += 2)
    {
      double hz = rate_hz * half_lines / 2;
      if (bw_tube_band (search->line_rates_hz, hz, margins ? limits->line_rate : 0, NULL) == NULL
          || !has_room (search, hz, half_lines, 2 * FIELD_SYNC_LINES,
                        margins ? limits->blanking : 0)
          || (inside && bw_tube_hidden_lines (search, hz, half_lines) > 1e-9))
        continue;
      if (!bw_ratio_multiply (search->request->field_rate_hz, (BwRatio){ half_lines, 2 },
                              &line_rate_hz))
        {
          search->too_many_digits = TRUE;
          return;
        }
      BwTubeSkeleton skeleton
          = plain_skeleton (inside ? BW_TUBE_INSIDE : BW_TUBE_LOWEST, line_rate_hz, half_lines);
      try (search, &skeleton, 0);
      return;
    }
}

/* A set with one line rate: the nominal one, and the count of lines that comes nearest to the field rate. */
static void
try_nominal (BwTubeSearch *search)
{
  double rate_hz = bw_ratio_to_double (search->request->field_rate_hz);
  gboolean interlaced = search->request->interlaced;

  for (guint i = 0; i < search->line_rates_hz->n; i++)
    {
      BwRange band = search->line_rates_hz->at[i];
      double nominal_hz = (band.low + band.high) / 2;
      gboolean has_margin = band.high * (1 - search->limits->line_rate)
                            > band.low * (1 + search->limits->line_rate);
      BwRatio line_rate_hz;
      int half_lines = (int) round (2 * nominal_hz / rate_hz);
      if (has_margin || half_lines > MOST_LINES_FOR_PICTURE * search->active_half_lines
          || !bw_ratio_make ((gint64) llround (nominal_hz * 1000), 1000, &line_rate_hz))
        continue;
      half_lines = interlaced ? (int) floor (nominal_hz / rate_hz) * 2 + 1
                              : (int) round (nominal_hz / rate_hz) * 2;
      BwTubeSkeleton skeleton = plain_skeleton (BW_TUBE_NOMINAL, line_rate_hz, half_lines);
      try (search, &skeleton, 0);
    }
}

static void
try_all (BwTubeSearch *search)
{
  if (search->request->catalogue != NULL)
    try_standards (search);
  try_nominal (search);
  try_lowest (search, TRUE, TRUE);
  try_lowest (search, FALSE, TRUE);
  if (search->answers->len == 0)
    try_lowest (search, FALSE, FALSE);
}

/* What forbids it */

static gboolean
refuse_clock (const BwTubeSearch *search, GError **error)
{
  g_autofree char *needed = rate_text (search->clock_hz);
  g_autofree char *highest = rate_text (search->request->clock.highest_hz);
  g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_CLOCK,
               _ ("a picture %1$d px wide needs a pixel clock of %2$s; the source gives at most %3$s: a "
                  "narrower one does it"),
               search->request->width, needed, highest);
  return FALSE;
}

/* The lowest line rate at which the picture and the retrace have room in a field. */
static double
least_line_rate_hz (const BwTubeSearch *search)
{
  double rate_hz = bw_ratio_to_double (search->request->field_rate_hz);
  int half_lines = search->active_half_lines + (search->request->interlaced ? 1 : 0);
  while (half_lines < 40000
         && !has_room (search, rate_hz * half_lines / 2, half_lines, 2 * FIELD_SYNC_LINES, 0))
    half_lines += 2;
  return rate_hz * half_lines / 2;
}

static gboolean
refuse_line_rate (const BwTubeSearch *search, GError **error)
{
  const BwTubeRequest *request = search->request;
  int lines = search->active_half_lines / 2 / search->times;
  double least_hz = least_line_rate_hz (search);
  const BwBands *bands = search->line_rates_hz;
  g_autofree char *field_rate = rate_text (bw_ratio_to_double (request->field_rate_hz));
  g_autofree char *least = rate_text (least_hz);
  g_autofree char *takes = bw_quantity_bands_to_entry (bands, BW_DIMENSION_FREQUENCY, "kHz",
                                                       bw_quantity_locale_mark ());

  g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_LINE_RATE,
               g_dngettext (GETTEXT_PACKAGE,
                            "%1$d line a field at %2$s, with the field retrace, needs a line rate "
                            "of %3$s at least; this monitor takes %4$s: %5$s",
                            "%1$d lines a field at %2$s, with the field retrace, need a line rate "
                            "of %3$s at least; this monitor takes %4$s: %5$s",
                            (gulong) lines),
               lines, field_rate, least, takes,
               least_hz > bands->at[bands->n - 1].high
                   ? _ ("fewer lines, a lower field rate or interlace may do")
                   : _ ("more lines, a higher field rate or a progressive raster may do"));
  return FALSE;
}

static gboolean
refuse_field_rate (const BwTubeSearch *search, GError **error)
{
  g_autofree char *rate = rate_text (bw_ratio_to_double (search->request->field_rate_hz));
  g_autofree char *bands = bw_quantity_bands_to_entry (
      &search->monitor->field_rates_hz, BW_DIMENSION_FREQUENCY, "Hz", bw_quantity_locale_mark ());
  g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_FIELD_RATE,
               _ ("field rate %1$s: this monitor takes %2$s"), rate, bands);
  return FALSE;
}

static gboolean
is_near_field_band (const BwTubeSearch *search)
{
  double rate_hz = bw_ratio_to_double (search->request->field_rate_hz);
  return rate_hz > 0
         && bw_tube_band (&search->monitor->field_rates_hz, rate_hz, -FIELD_RATE_PLAY, NULL) != NULL;
}

static gboolean
check_request (const BwTubeSearch *search, GError **error)
{
  const BwTubeRequest *request = search->request;
  int multiple = MAX (request->clock.multiple, 1);

  if (request->width < 16 || request->width > 8192 || request->height < 16
      || request->height > 8192 || (request->interlaced && request->height % 2 != 0))
    g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                 _ ("%1$d×%2$d: from 16 to 8192 is allowed, and an even height if interlaced"),
                 request->width, request->height);
  else if (request->width % multiple != 0)
    g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                 _ ("%1$d px across: this source gives multiples of %2$d"), request->width,
                 multiple);
  else if (request->interlaced && request->clock.no_interlace)
    g_set_error_literal (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                         _ ("this source gives no interlaced raster"));
  else if (request->input != NULL && request->input->scans != 0
           && !(request->input->scans
                & BW_BIT (request->interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE)))
    g_set_error_literal (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
                         request->interlaced ? _ ("this input takes no interlaced raster")
                                             : _ ("this input takes no progressive raster"));
  else if (!is_near_field_band (search))
    return refuse_field_rate (search, error);
  else
    return TRUE;
  return FALSE;
}

static int
by_rank (gconstpointer a, gconstpointer b)
{
  const BwTubeAnswer *one = *(BwTubeAnswer *const *) a, *other = *(BwTubeAnswer *const *) b;
  return one->rank < other->rank ? -1 : one->rank > other->rank;
}

static gboolean
refuse_digits (GError **error)
{
  g_set_error (error, BW_TUBE_ERROR, BW_TUBE_ERROR_REQUEST,
               _ ("the field rate has too many digits; nine decimals are enough"));
  return FALSE;
}

/* Two that a set cannot tell apart: the same count of lines, and the same line rate, or that of another
 * standard which is hardly another one. */
static gboolean
are_alike (const BwTubeAnswer *one, const BwTubeAnswer *other)
{
  double play = one->is_standard && other->is_standard ? 3e-3 : 2e-5;
  double one_hz = bw_ratio_to_double (one->raster->line_rate_hz);
  double other_hz = bw_ratio_to_double (other->raster->line_rate_hz);
  return bw_raster_half_lines (one->raster) == bw_raster_half_lines (other->raster)
         && fabs (one_hz - other_hz) < play * one_hz;
}

/* The best first, none twice, and no more than people read. */
static void
put_in_order (GPtrArray *answers)
{
  g_ptr_array_sort (answers, by_rank);
  for (guint i = 1; i < answers->len;)
    {
      guint before = 0;
      while (before < i && !are_alike (answers->pdata[before], answers->pdata[i]))
        before++;
      if (before < i)
        g_ptr_array_remove_index (answers, i);
      else
        i++;
    }
  if (answers->len > BW_TUBE_ANSWERS_MAX)
    g_ptr_array_set_size (answers, BW_TUBE_ANSWERS_MAX);
}

/* Lines that the set scans too quickly for are sent twice. */
static void
search_for (BwTubeSearch *search)
{
  int once = search->request->interlaced ? search->request->height : 2 * search->request->height;
  for (search->times = 1; search->times <= (search->request->interlaced ? 1 : 2); search->times++)
    {
      search->active_half_lines = once * search->times;
      try_all (search);
      if (search->answers->len > 0)
        break;
    }
  if (search->answers->len == 0)
    {
      search->times = 1;
      search->active_half_lines = once;
    }
  put_in_order (search->answers);
}

/**
 * bw_tube_rasters:
 * @limits: the margins to keep where that can be
 *
 * Finds rasters that show @request on @monitor: those of the standards first, then the lowest line rate
 * that holds. A set with one line rate gets that. What an answer costs is said with it.
 *
 * Returns: (transfer full) (element-type BwTubeAnswer): at least one, the best first; or %NULL with
 * @error in %BW_TUBE_ERROR, which names the figure that forbids it
 */
GPtrArray *
bw_tube_rasters (const BwTubeRequest *request, const BwMonitor *monitor, const BwLimits *limits,
                 GError **error)
{
  g_return_val_if_fail (request != NULL && monitor != NULL && limits != NULL, NULL);
  gboolean own_rates = request->input != NULL && request->input->line_rates_hz.n > 0;
  g_autoptr (GPtrArray) answers
      = g_ptr_array_new_with_free_func ((GDestroyNotify) bw_tube_answer_free);
  BwTubeSearch search = {
    .request = request,
    .monitor = monitor,
    .limits = limits,
    .line_rates_hz = own_rates ? &request->input->line_rates_hz : &monitor->line_rates_hz,
    .answers = answers,
  };
  BwLack lack;

  if (bw_lacks_deflection (monitor, &lack))
    {
      g_autofree char *says = bw_lack_says (&lack);
      g_set_error_literal (error, BW_TUBE_ERROR, BW_TUBE_ERROR_UNKNOWN, says);
      return NULL;
    }
  if (!check_request (&search, error))
    return NULL;
  search_for (&search);
  if (answers->len > 0)
    return g_steal_pointer (&answers);
  if (search.too_many_digits)
    refuse_digits (error);
  else if (search.clock_hz > 0)
    refuse_clock (&search, error);
  else
    refuse_line_rate (&search, error);
  return NULL;
}
