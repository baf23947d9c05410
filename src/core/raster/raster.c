/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "raster.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-raster-error-quark, bw_raster_error)

#define COUNT_MAX 65535

#define AT(member) .offset = G_STRUCT_OFFSET (BwRaster, member)
#define PIXELS(name, flag, text, member_)                                                         \
  { .key = name, .flags = flag, .label = text, .type = BW_FIELD_COUNT, AT (member_), .low = 0,   \
    .high = COUNT_MAX }
#define HALF_LINES(name, flag, text, member_)                                                     \
  { .key = name, .flags = flag, .label = text, .type = BW_FIELD_HALF_LINES, AT (member_),        \
    .low = 0, .high = COUNT_MAX }
#define DURATION(name, flag, text, member_)                                                       \
  { .key = name, .flags = flag, .label = text, .type = BW_FIELD_QUANTITY, AT (member_),          \
    .dimension = BW_DIMENSION_TIME, .low = 0, .high = 1e-3, .unit = "us" }
#define KIND(name, flag, text, member_, table)                                                    \
  { .key = name, .flags = flag, .label = text, .type = BW_FIELD_CHOICE, AT (member_),            \
    .kinds = &table }
#define TEXT(name, flag, text, member_)                                                           \
  { .key = name, .flags = flag, .label = text, .type = BW_FIELD_TEXT, AT (member_) }
#define RATE(name, text, member_)                                                                 \
  { .key = name, .flags = BW_FIELD_REQUIRED, .label = text, .type = BW_FIELD_RATE, AT (member_), \
    .dimension = BW_DIMENSION_FREQUENCY, .low = 1e3, .high = 1e10 }

/* Every raster has these. */
static const BwField common_fields[] = {
  TEXT ("name", BW_FIELD_REQUIRED, N_ ("Name"), name),
  TEXT ("source", BW_FIELD_REQUIRED, N_ ("Given by"), source),
  TEXT ("aliases", 0, N_ ("Also called"), aliases),
  TEXT ("note", BW_FIELD_LINES, N_ ("Note"), note),
  KIND ("scan", BW_FIELD_REQUIRED, N_ ("Scan"), scan, bw_scans),
  HALF_LINES ("v_active", BW_FIELD_REQUIRED, N_ ("Active lines"), field[0].active),
  HALF_LINES ("v_front_porch", BW_FIELD_REQUIRED, N_ ("Front porch"), field[0].front_porch),
  HALF_LINES ("v_sync", BW_FIELD_REQUIRED, N_ ("Field sync"), field[0].sync),
  HALF_LINES ("v_back_porch", BW_FIELD_REQUIRED, N_ ("Back porch"), field[0].back_porch),
  PIXELS ("v_border", BW_FIELD_UNKNOWN, N_ ("Border lines"), v_border),
  KIND ("h_polarity", 0, N_ ("Line sync polarity"), h_polarity, bw_polarities),
  KIND ("v_polarity", 0, N_ ("Field sync polarity"), v_polarity, bw_polarities),
  KIND ("sync_shape", 0, N_ ("Sync shape"), sync_shape, bw_sync_shapes),
  { .key = "equalising_before", .flags = BW_FIELD_UNKNOWN, .label = N_ ("Equalising pulses before"),
    .type = BW_FIELD_COUNT, AT (equalising_before), .low = 0, .high = 100 },
  { .key = "equalising_after", .flags = BW_FIELD_UNKNOWN, .label = N_ ("Equalising pulses after"),
    .type = BW_FIELD_COUNT, AT (equalising_after), .low = 0, .high = 100 },
  DURATION ("equalising_width", BW_FIELD_UNKNOWN, N_ ("Equalising width"), equalising_width_s),
  DURATION ("serration_width", BW_FIELD_UNKNOWN, N_ ("Serration width"), serration_width_s),
  DURATION ("broad_start", BW_FIELD_UNKNOWN, N_ ("Broad pulse from"), broad_start_s),
  DURATION ("broad_width", BW_FIELD_UNKNOWN, N_ ("Broad pulse width"), broad_width_s),
  { .key = "sync_recalled", .label = N_ ("Field sync is from memory"), .type = BW_FIELD_SWITCH,
    AT (sync_recalled) },
  { .key = "numbered_before_sync", .flags = BW_FIELD_UNKNOWN,
    .label = N_ ("Lines numbered before field sync"), .type = BW_FIELD_COUNT,
    AT (numbered_before_sync), .low = 0, .high = 20 },
};

/* The second field of an interlaced raster: what is not written is as in the first. */
static const BwField second_fields[] = {
  HALF_LINES ("v_active_2", 0, N_ ("Active lines, field 2"), field[1].active),
  HALF_LINES ("v_front_porch_2", 0, N_ ("Front porch, field 2"), field[1].front_porch),
  HALF_LINES ("v_sync_2", 0, N_ ("Field sync, field 2"), field[1].sync),
  HALF_LINES ("v_back_porch_2", 0, N_ ("Back porch, field 2"), field[1].back_porch),
};

static const BwField pixel_fields[] = {
  RATE ("pixel_clock", N_ ("Pixel clock"), pixel_clock_hz),
  PIXELS ("h_active", BW_FIELD_REQUIRED, N_ ("Active pixels"), h_active),
  PIXELS ("h_front_porch", BW_FIELD_REQUIRED, N_ ("Front porch"), h_front_porch),
  PIXELS ("h_sync", BW_FIELD_REQUIRED, N_ ("Line sync"), h_sync),
  PIXELS ("h_back_porch", BW_FIELD_REQUIRED, N_ ("Back porch"), h_back_porch),
  PIXELS ("h_border", BW_FIELD_UNKNOWN, N_ ("Border pixels"), h_border),
  { .key = "pixel_repeat", .label = N_ ("Times each sample is sent"), .type = BW_FIELD_COUNT,
    AT (pixel_repeat), .low = 1, .high = 10 },
};

static const BwField time_fields[] = {
  RATE ("line_rate", N_ ("Line rate"), line_rate_hz),
  DURATION ("h_front_porch", BW_FIELD_REQUIRED, N_ ("Front porch"), h_front_porch_s),
  DURATION ("h_sync", BW_FIELD_REQUIRED, N_ ("Line sync"), h_sync_s),
  DURATION ("h_back_porch", BW_FIELD_REQUIRED, N_ ("Back porch"), h_back_porch_s),
};

static const BwFieldTable common_table = { G_N_ELEMENTS (common_fields), common_fields };
static const BwFieldTable second_table = { G_N_ELEMENTS (second_fields), second_fields };
static const BwFieldTable pixel_table = { G_N_ELEMENTS (pixel_fields), pixel_fields };
static const BwFieldTable time_table = { G_N_ELEMENTS (time_fields), time_fields };

/**
 * bw_raster_keys:
 *
 * Returns: (transfer none): some of the keys that a raster has in a file
 */
const BwFieldTable *
bw_raster_keys (BwRasterKeys which)
{
  static const BwFieldTable *const tables[BW_N_RASTER_KEYS] = {
    [BW_RASTER_KEYS_ALL] = &common_table,
    [BW_RASTER_KEYS_SECOND_FIELD] = &second_table,
    [BW_RASTER_KEYS_IN_PIXELS] = &pixel_table,
    [BW_RASTER_KEYS_IN_TIME] = &time_table,
  };
  g_return_val_if_fail (which < BW_N_RASTER_KEYS, NULL);
  return tables[which];
}

/**
 * bw_raster_new:
 *
 * Returns: (transfer full): a raster with nothing in it but one sample for each pixel
 */
BwRaster *
bw_raster_new (void)
{
  BwRaster *raster = g_new0 (BwRaster, 1);
  raster->pixel_clock_hz = raster->line_rate_hz = BW_RATIO_NONE;
  raster->pixel_repeat = 1;
  return raster;
}

/**
 * bw_raster_copy:
 *
 * Returns: (transfer full): a copy that shares nothing with @raster
 */
BwRaster *
bw_raster_copy (const BwRaster *raster)
{
  g_return_val_if_fail (raster != NULL, NULL);
  BwRaster *copy = g_new (BwRaster, 1);
  *copy = *raster;
  copy->id = g_strdup (raster->id);
  copy->name = copy->source = copy->aliases = copy->note = NULL;
  bw_fields_copy (&common_table, copy, raster);
  return copy;
}

/**
 * bw_raster_free:
 * @raster: (nullable) (transfer full): freed with all it owns
 */
void
bw_raster_free (BwRaster *raster)
{
  if (raster == NULL)
    return;
  g_free (raster->id);
  bw_fields_clear (&common_table, raster);
  g_free (raster);
}

/* Checks, each with its named fault */

static gboolean
fault (GError **error, BwRasterError code, const char *says)
{
  g_set_error_literal (error, BW_RASTER_ERROR, (int) code, says);
  return FALSE;
}

static gboolean
check_horizontal (const BwRaster *raster, GError **error)
{
  gboolean pixels = !bw_ratio_is_none (raster->pixel_clock_hz);
  double period_s = 1 / bw_ratio_to_double (raster->line_rate_hz);

  if (pixels
      && (raster->h_front_porch < 0 || raster->h_back_porch < 0 || raster->h_border < 0))
    return fault (error, BW_RASTER_ERROR_PORCH, _ ("a horizontal porch or border is negative"));
  if (pixels ? raster->h_sync < 1 : raster->h_sync_s <= 0)
    return fault (error, BW_RASTER_ERROR_NO_SYNC, _ ("the line has no sync (h_sync)"));
  if (pixels)
    return raster->h_active >= 1
           || fault (error, BW_RASTER_ERROR_NO_PICTURE, _ ("the line has no picture (h_active)"));
  if (raster->h_border != 0 || raster->v_border != 0)
    return fault (error, BW_RASTER_ERROR_BORDER,
                  _ ("a raster that is defined in time has no borders"));
  if (raster->h_front_porch_s < 0 || raster->h_back_porch_s < 0)
    return fault (error, BW_RASTER_ERROR_PORCH, _ ("a horizontal porch is negative"));
  if (raster->h_front_porch_s + raster->h_sync_s + raster->h_back_porch_s >= period_s)
    return fault (error, BW_RASTER_ERROR_LINE_TOTAL,
                  _ ("porches and sync together are as long as the whole line"));
  return TRUE;
}

static int
field_half_lines (const BwFieldTiming *field)
{
  return field->active + field->front_porch + field->sync + field->back_porch;
}

static gboolean
check_vertical (const BwRaster *raster, GError **error)
{
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  for (int i = 0; i < 2; i++)
    {
      const BwFieldTiming *field = &raster->field[i];
      if (field->front_porch < 0 || field->back_porch < 0 || raster->v_border < 0)
        return fault (error, BW_RASTER_ERROR_PORCH, _ ("a vertical porch or border is negative"));
      if (field->sync < 1)
        return fault (error, BW_RASTER_ERROR_NO_SYNC, _ ("the field has no sync (v_sync)"));
      if (field->active < 2)
        return fault (error, BW_RASTER_ERROR_NO_PICTURE,
                      _ ("the field has no picture (v_active)"));
      if (!interlaced && field_half_lines (field) % 2 != 0)
        return fault (error, BW_RASTER_ERROR_HALF_LINE,
                      _ ("a progressive field must have a whole number of lines"));
    }
  if (!interlaced && memcmp (&raster->field[0], &raster->field[1], sizeof (BwFieldTiming)) != 0)
    return fault (error, BW_RASTER_ERROR_HALF_LINE,
                  _ ("a progressive raster has no second field of its own"));
  if (bw_raster_half_lines (raster) % 2 != 0)
    return fault (error, BW_RASTER_ERROR_HALF_LINE,
                  _ ("the two fields together must have a whole number of lines"));
  return TRUE;
}

static gboolean
check_pulses (const BwRaster *raster, GError **error)
{
  double half_line_s = 0.5 / bw_ratio_to_double (raster->line_rate_hz);
  gboolean equalising = raster->equalising_before > 0 || raster->equalising_after > 0;

  if (raster->equalising_before < 0 || raster->equalising_after < 0
      || (equalising && raster->equalising_width_s <= 0)
      || raster->equalising_width_s >= half_line_s || raster->serration_width_s >= half_line_s
      || raster->equalising_width_s < 0 || raster->serration_width_s < 0)
    return fault (error, BW_RASTER_ERROR_PULSES,
                  _ ("equalising pulses need a width (equalising_width), and pulses and serrations "
                     "must be shorter than half a line"));
  double broad_end_s = raster->broad_start_s + raster->broad_width_s;
  if (raster->broad_start_s < 0 || raster->broad_width_s < 0
      || broad_end_s >= (raster->scan == BW_SCAN_INTERLACED ? 1 : 2) * half_line_s)
    return fault (error, BW_RASTER_ERROR_PULSES,
                  _ ("a broad pulse (broad_start, broad_width) must end within its line, and within "
                     "its half line where the scan is interlaced"));
  int front = MIN (raster->field[0].front_porch, raster->field[1].front_porch);
  int back = MIN (raster->field[0].back_porch, raster->field[1].back_porch);
  if (raster->equalising_before > front || raster->equalising_after > back)
    return fault (error, BW_RASTER_ERROR_PULSES,
                  _ ("there are more equalising pulses than half lines in the porch"));
  if (raster->sync_shape == BW_SHAPE_TRILEVEL && raster->h_sync % 2 != 0)
    return fault (error, BW_RASTER_ERROR_SHAPE,
                  _ ("a tri-level sync has two halves of equal width: h_sync must be even"));
  return TRUE;
}

static gboolean
check_rates (const BwRaster *raster, GError **error)
{
  double line_rate_hz = bw_ratio_to_double (raster->line_rate_hz);
  double field_rate_hz = line_rate_hz * 4 / bw_raster_half_lines (raster);

  if (line_rate_hz < BW_LINE_RATE_MIN_HZ || line_rate_hz > BW_LINE_RATE_MAX_HZ)
    return fault (error, BW_RASTER_ERROR_RATE_RANGE,
                  _ ("the line rate is not between 1 kHz and 1 MHz"));
  if (field_rate_hz < BW_FIELD_RATE_MIN_HZ || field_rate_hz > BW_FIELD_RATE_MAX_HZ)
    return fault (error, BW_RASTER_ERROR_RATE_RANGE,
                  _ ("the field rate is not between 1 Hz and 1 kHz"));
  return TRUE;
}

/**
 * bw_raster_check:
 *
 * Checks that @raster can exist: totals add up, nothing is negative, the half lines are right for
 * its scan, pulses fit.
 *
 * Returns: %FALSE with the first fault as @error in %BW_RASTER_ERROR
 */
gboolean
bw_raster_check (const BwRaster *raster, GError **error)
{
  g_return_val_if_fail (raster != NULL, FALSE);
  if (bw_ratio_to_double (raster->line_rate_hz) <= 0
      || bw_ratio_to_double (raster->pixel_clock_hz) < 0)
    return fault (error, BW_RASTER_ERROR_NO_RATE, _ ("there is no line rate or pixel clock"));
  return check_horizontal (raster, error) && check_vertical (raster, error)
         && check_rates (raster, error) && check_pulses (raster, error);
}

/* Reading and writing */

/* The line rate follows from the pixel clock and the pixels of a line. */
static gboolean
derive_line_rate (BwRaster *raster)
{
  BwRatio total = { bw_raster_h_total (raster), 1 };
  return bw_ratio_divide (raster->pixel_clock_hz, total, &raster->line_rate_hz);
}

static gboolean
load_tables (BwRaster *raster, GKeyFile *keys, const char *group, const char *file, GError **error)
{
  gboolean pixels = g_key_file_has_key (keys, group, "pixel_clock", NULL);
  gboolean line_rate = g_key_file_has_key (keys, group, "line_rate", NULL);

  if (pixels == line_rate)
    {
      g_set_error (
          error, BW_RASTER_ERROR, BW_RASTER_ERROR_NO_RATE,
          _ ("%1$s: [%2$s]: either pixel_clock (intervals in pixels) or line_rate (intervals "
             "in time) is needed, and not both"),
          file, group);
      return FALSE;
    }
  if (!bw_fields_load (&common_table, raster, keys, group, file, error)
      || !bw_fields_load (pixels ? &pixel_table : &time_table, raster, keys, group, file, error))
    return FALSE;
  raster->field[1] = raster->field[0];
  if (raster->scan == BW_SCAN_INTERLACED
      && !bw_fields_load (&second_table, raster, keys, group, file, error))
    return FALSE;
  if (pixels && !derive_line_rate (raster))
    raster->line_rate_hz = BW_RATIO_NONE; /* named by bw_raster_check() */
  return TRUE;
}

/**
 * bw_raster_load:
 * @group: the group to read
 * @id: the raster's id
 * @file: the name to use in errors
 *
 * Returns: (transfer full): the checked raster, or %NULL with @error in %BW_FIELD_ERROR or
 * %BW_RASTER_ERROR that names @file, @group and the key or fault
 */
BwRaster *
bw_raster_load (GKeyFile *keys, const char *group, const char *id, const char *file,
                GError **error)
{
  g_return_val_if_fail (keys != NULL && group != NULL && id != NULL && file != NULL, NULL);
  g_autoptr (BwRaster) raster = bw_raster_new ();
  g_autoptr (GError) trouble = NULL;

  raster->id = g_strdup (id);
  if (!load_tables (raster, keys, group, file, error))
    return NULL;
  if (!bw_raster_check (raster, &trouble))
    {
      g_set_error (error, BW_RASTER_ERROR, trouble->code, "%s: [%s]: %s", file, group,
                   trouble->message);
      return NULL;
    }
  return g_steal_pointer (&raster);
}

/**
 * bw_raster_save:
 *
 * Writes @raster to @group of @keys as bw_raster_load() reads it.
 */
void
bw_raster_save (const BwRaster *raster, GKeyFile *keys, const char *group)
{
  g_return_if_fail (raster != NULL && keys != NULL && group != NULL);
  gboolean pixels = !bw_ratio_is_none (raster->pixel_clock_hz);
  /* Under the same id there may have stood a raster of the other kind. */
  g_key_file_remove_key (keys, group, pixels ? "line_rate" : "pixel_clock", NULL);
  bw_fields_save (&common_table, raster, keys, group);
  bw_fields_save (pixels ? &pixel_table : &time_table, raster, keys, group);
  for (guint i = 0; i < second_table.n && raster->scan == BW_SCAN_INTERLACED; i++)
    {
      BwFieldTable one = { 1, &second_table.at[i] };
      bw_fields_save (&one, raster, keys, group);
    }
}

/* Figures */

/**
 * bw_raster_h_total:
 *
 * Returns: the pixels of a whole line, borders included; zero if @raster is defined in time
 */
int
bw_raster_h_total (const BwRaster *raster)
{
  g_return_val_if_fail (raster != NULL, 0);
  return raster->h_active + 2 * raster->h_border + raster->h_front_porch + raster->h_sync
         + raster->h_back_porch;
}

/**
 * bw_raster_half_lines:
 *
 * Returns: the half lines of two fields: one interlaced frame, or two progressive ones
 */
int
bw_raster_half_lines (const BwRaster *raster)
{
  return field_half_lines (&raster->field[0]) + field_half_lines (&raster->field[1])
         + 8 * raster->v_border;
}

/**
 * bw_raster_field_rate:
 * @rate_hz: (out): fields a second, exactly: line rate × 4 / (half lines of two fields)
 *
 * A 262-line progressive raster thus has its own field rate and not that of half a 525-line frame.
 *
 * Returns: %FALSE if the ratio does not fit in 64 bits
 */
gboolean
bw_raster_field_rate (const BwRaster *raster, BwRatio *rate_hz)
{
  g_return_val_if_fail (raster != NULL && rate_hz != NULL, FALSE);
  BwRatio fields;
  return bw_ratio_make (4, bw_raster_half_lines (raster), &fields)
         && bw_ratio_multiply (raster->line_rate_hz, fields, rate_hz);
}

static void
horizontal_figures (const BwRaster *raster, BwRasterFigures *f)
{
  f->has_pixels = !bw_ratio_is_none (raster->pixel_clock_hz);
  f->line_rate_hz = bw_ratio_to_double (raster->line_rate_hz);
  f->line_period_s = 1 / f->line_rate_hz;
  if (f->has_pixels)
    {
      double pixel_s = 1 / bw_ratio_to_double (raster->pixel_clock_hz);
      f->pixel_clock_hz = bw_ratio_to_double (raster->pixel_clock_hz);
      f->h_total = bw_raster_h_total (raster);
      f->h_active_s = raster->h_active * pixel_s;
      f->h_border_s = raster->h_border * pixel_s;
      f->h_front_porch_s = raster->h_front_porch * pixel_s;
      f->h_sync_s = raster->h_sync * pixel_s;
      f->h_back_porch_s = raster->h_back_porch * pixel_s;
    }
  else
    {
      f->h_front_porch_s = raster->h_front_porch_s;
      f->h_sync_s = raster->h_sync_s;
      f->h_back_porch_s = raster->h_back_porch_s;
      f->h_active_s = f->line_period_s - f->h_front_porch_s - f->h_sync_s - f->h_back_porch_s;
    }
  f->h_blanking_s = f->h_front_porch_s + f->h_sync_s + f->h_back_porch_s;
  f->h_datum_s = raster->sync_shape == BW_SHAPE_TRILEVEL ? f->h_sync_s / 2 : 0;
}

static void
vertical_figures (const BwRaster *raster, BwRasterFigures *f)
{
  int half_lines = bw_raster_half_lines (raster);
  int active = raster->field[0].active + raster->field[1].active;
  int shorter = G_MAXINT;

  for (int i = 0; i < 2; i++)
    {
      const BwFieldTiming *field = &raster->field[i];
      shorter = MIN (shorter, field->front_porch + field->sync + field->back_porch);
    }
  f->lines_per_field = half_lines / 4.0;
  f->lines_per_frame = raster->scan == BW_SCAN_INTERLACED ? half_lines / 2 : half_lines / 4;
  f->v_active_lines = raster->field[0].active / 2.0;
  f->v_blanking_s = shorter / 2.0 * f->line_period_s;
  f->active_lines_frame = raster->scan == BW_SCAN_INTERLACED ? active / 2.0 : active / 4.0;
  f->field_rate_hz = f->line_rate_hz * 4 / half_lines;
  f->field_period_s = 1 / f->field_rate_hz;
  f->frame_rate_hz = f->line_rate_hz / f->lines_per_frame;
}

/**
 * bw_raster_figures:
 * @raster: a raster that bw_raster_check() accepts
 * @figures: (out caller-allocates): all that follows from it
 */
void
bw_raster_figures (const BwRaster *raster, BwRasterFigures *figures)
{
  g_return_if_fail (raster != NULL && figures != NULL);
  *figures = (BwRasterFigures){ 0 };
  horizontal_figures (raster, figures);
  vertical_figures (raster, figures);
}

/**
 * bw_raster_names:
 *
 * Returns: (transfer full) (element-type utf8): the id of @raster, then its other names
 */
GPtrArray *
bw_raster_names (const BwRaster *raster)
{
  g_return_val_if_fail (raster != NULL, NULL);
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_auto (GStrv) aliases = g_strsplit (raster->aliases != NULL ? raster->aliases : "", ";", -1);

  g_ptr_array_add (names, g_strdup (raster->id));
  for (char **alias = aliases; *alias != NULL; alias++)
    if (*g_strstrip (*alias) != '\0')
      g_ptr_array_add (names, g_strdup (*alias));
  return names;
}

/**
 * bw_raster_has_alias:
 *
 * Returns: whether @name is one of the other names of @raster
 */
gboolean
bw_raster_has_alias (const BwRaster *raster, const char *name)
{
  g_return_val_if_fail (raster != NULL && name != NULL, FALSE);
  g_auto (GStrv) aliases = g_strsplit (raster->aliases != NULL ? raster->aliases : "", ";", -1);
  for (char **alias = aliases; *alias != NULL; alias++)
    if (strcmp (g_strstrip (*alias), name) == 0)
      return TRUE;
  return FALSE;
}

/**
 * bw_raster_is_broad_by_line:
 *
 * Returns: whether the broad pulses of bi-level field sync follow each other a line apart. Pulses at
 * half lines are there for the sake of interlace; a progressive raster without equalising pulses has
 * none (SMPTE 293M, ITU-R BT.1358; from memory)
 */
gboolean
bw_raster_is_broad_by_line (const BwRaster *raster)
{
  g_return_val_if_fail (raster != NULL, FALSE);
  return raster->scan == BW_SCAN_PROGRESSIVE && raster->equalising_before == 0
         && raster->equalising_after == 0;
}

/**
 * bw_raster_broad_s:
 *
 * Returns: the width of a broad pulse of bi-level field sync, where that is serrated
 */
double
bw_raster_broad_s (const BwRaster *raster)
{
  g_return_val_if_fail (raster != NULL, 0);
  double line_s = 1 / bw_ratio_to_double (raster->line_rate_hz);
  return (bw_raster_is_broad_by_line (raster) ? line_s : line_s / 2) - raster->serration_width_s;
}
