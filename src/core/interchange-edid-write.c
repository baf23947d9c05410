/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "fit-private.h"

/* The base block of VESA E-EDID 1.4 for a picture-tube monitor. Of the versions, 1.4 alone can say
 * that a display takes the listed rasters only and not all that lie between them, which is the
 * truth for one with several bands. */

#define MAKER "BWZ"
#define YEAR 2006 /* of EDID 1.4 itself: the block has no way to leave it out */
#define RATE_MAX 510 /* in hertz or kilohertz: a byte and the 255 that a bit adds */
#define NAME_LENGTH 13
#define OTHER_RATE 0.01 /* share by which field rates differ that are not a pair 1000/1001 */

/* What is known while the block is made. */
typedef struct
{
  const BwSheet *sheet;
  const BwMonitor *monitor;
  const BwInput *input;
  guint syncs; /* set of BwSyncKind that is stated */
  guint level; /* code of bits 6 and 5 of byte 20 */
  GArray *picks;
  const BwEdidPick *detailed[2];
  BwRange line_rates_hz; /* of what is listed */
  BwRange field_rates_hz;
  double clock_hz; /* the highest of what is listed */
  gboolean continuous;
  guint8 *block;
  GPtrArray *notes;
} Writer;

static void
add_note (Writer *writer, const char *format, ...) G_GNUC_PRINTF (2, 3);

static void
add_note (Writer *writer, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_ptr_array_add (writer->notes, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

static char *
kilohertz (BwRange range)
{
  return bw_quantity_format_range (range, BW_DIMENSION_FREQUENCY, 4, bw_quantity_locale_mark ());
}

/* The input */

static gboolean
choose_input (Writer *writer, GError **error)
{
  guint n = 0;
  for (guint i = 0; i < writer->monitor->inputs->len; i++)
    if (bw_monitor_input (writer->monitor, i)->signals & BW_BIT (BW_SIGNAL_RGB))
      {
        if (n++ == 0)
          writer->input = bw_monitor_input (writer->monitor, i);
      }
  if (n == 0)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("“%s” has no input for RGB, and an EDID describes no other."),
                                 writer->monitor->name);
  if (!(writer->input->shapes & BW_BIT (BW_SHAPE_BILEVEL)))
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("Input “%s” takes tri-level sync only, which an EDID cannot "
                                    "say."),
                                 writer->input->name);
  if (n > 1)
    add_note (writer, _ ("The block describes input “%s”; other inputs take RGB too."),
              writer->input->name);
  return TRUE;
}

static gboolean
within (const BwBands *bands, double value)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low - 1e-9 && value <= bands->at[i].high + 1e-9)
      return TRUE;
  return bands->n == 0;
}

/* The first of @codes whose white, and sync where it is on video, the input takes. */
static gboolean
find_level (Writer *writer, const guint *codes, gboolean on_video)
{
  for (gsize i = 0; i < 3; i++)
    {
      const BwEdidLevel *level = &bw_edid_levels[codes[i]];
      if (within (&writer->input->video_v, level->white_v)
          && (!on_video || within (&writer->input->sync_v, level->sync_v)))
        {
          writer->level = codes[i];
          return TRUE;
        }
    }
  return FALSE;
}

static gboolean
choose_level (Writer *writer, GError **error)
{
  static const guint with_sync[] = { 0, 1, 2 };
  static const guint without_sync[] = { 3, 1, 2 };
  guint green = BW_BIT (BW_SYNC_ON_GREEN);

  writer->syncs = bw_edid_input_syncs (writer->input);
  if ((writer->syncs & green) && find_level (writer, with_sync, TRUE))
    return TRUE;
  if (writer->syncs & green)
    add_note (writer, _ ("Sync on green is left out: none of the sync levels that an EDID can state "
                         "is one that input “%s” takes."),
              writer->input->name);
  writer->syncs &= ~green;
  if (writer->syncs == 0)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("Input “%s” takes no sync that an EDID can state: separate, "
                                    "composite, or on green at 0.3 V, 0.286 V or 0.4 V."),
                                 writer->input->name);
  if (find_level (writer, without_sync, FALSE))
    return TRUE;
  return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                               _ ("Input “%s” takes none of the white levels that an EDID can "
                                  "state: 0.7 V, 0.714 V or 1 V."),
                               writer->input->name);
}

static void
put_input (Writer *writer)
{
  guint syncs = writer->syncs;
  guint on_one = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN);
  const BwBands *setup = &writer->input->setup_ire;
  gboolean pedestal = within (setup, 7.5) && !within (setup, 0);

  writer->block[20] = (guint8) (writer->level << 5 | (pedestal ? 0x10 : 0)
                                | (syncs & BW_BIT (BW_SYNC_SEPARATE) ? 0x08 : 0)
                                | (syncs & BW_BIT (BW_SYNC_COMPOSITE) ? 0x04 : 0)
                                | (syncs & BW_BIT (BW_SYNC_ON_GREEN) ? 0x02 : 0)
                                | (syncs & on_one ? 0x01 : 0));
  if ((syncs & BW_BIT (BW_SYNC_COMPOSITE))
      && !(writer->input->syncs & BW_BIT (BW_SYNC_COMPOSITE)))
    add_note (writer, _ ("Input “%s” takes its sync from the composite video conductor; the block "
                         "calls that composite sync. Check the sync level there."),
              writer->input->name);
}

/* What is listed */

static void
widen (BwRange *range, double value)
{
  range->low = range->high > 0 ? MIN (range->low, value) : value;
  range->high = MAX (range->high, value);
}

static void
list (Writer *writer, const BwEdidPick *pick)
{
  widen (&writer->line_rates_hz, pick->line_rate_hz);
  widen (&writer->field_rates_hz, pick->field_rate_hz);
  writer->clock_hz = MAX (writer->clock_hz, pick->clock_hz);
}

static gboolean
same_but_clock (const BwEdidPick *a, const BwEdidPick *b)
{
  return memcmp (a->bytes + 2, b->bytes + 2, BW_EDID_DETAILED_BYTES - 2) == 0;
}

/* Beside the best comes the best at another field rate. If there is none, it is the next that
 * differs in more than its clock: partners of a pair 1000/1001 would say the same twice. */
static const BwEdidPick *
second_to (const Writer *writer, const BwEdidPick *first)
{
  const BwEdidPick *other = NULL;
  for (guint i = 0; i < writer->picks->len; i++)
    {
      const BwEdidPick *pick = &g_array_index (writer->picks, BwEdidPick, i);
      if (!pick->fits || same_but_clock (pick, first))
        continue;
      if (fabs (pick->field_rate_hz / first->field_rate_hz - 1) > OTHER_RATE)
        return pick;
      if (other == NULL)
        other = pick;
    }
  return other;
}

static void
choose_detailed (Writer *writer)
{
  for (guint i = 0; writer->detailed[0] == NULL; i++)
    if (g_array_index (writer->picks, BwEdidPick, i).fits)
      writer->detailed[0] = &g_array_index (writer->picks, BwEdidPick, i);
  writer->detailed[1] = second_to (writer, writer->detailed[0]);
  for (gsize i = 0; i < 2 && writer->detailed[i] != NULL; i++)
    list (writer, writer->detailed[i]);
}

static void
put_established (Writer *writer)
{
  for (guint bit = 0; bit < BW_EDID_N_ESTABLISHED; bit++)
    {
      g_autofree char *id
          = g_strdup_printf ("vesa-dmt-%02x", (guint) bw_edid_established_dmt (bit));
      for (guint i = 0; i < writer->picks->len; i++)
        {
          const BwEdidPick *pick = &g_array_index (writer->picks, BwEdidPick, i);
          if (pick->own || strcmp (pick->raster->id, id) != 0)
            continue;
          writer->block[BW_EDID_AT_ESTABLISHED + bit / 8] |= (guint8) (0x80 >> bit % 8);
          list (writer, pick);
        }
    }
}

static void
note_losses (Writer *writer, const BwEdidPick *pick)
{
  const BwRaster *raster = pick->raster;
  double stated_hz = (pick->bytes[0] | pick->bytes[1] << 8) * 10e3;
  char mark = bw_quantity_locale_mark ();

  if (!bw_near (stated_hz, pick->clock_hz, 0.5))
    {
      g_autofree char *is = bw_quantity_format (pick->clock_hz, BW_DIMENSION_FREQUENCY, 8, mark);
      g_autofree char *said = bw_quantity_format (stated_hz, BW_DIMENSION_FREQUENCY, 8, mark);
      add_note (writer, _ ("%s: its pixel clock of %s is stated as %s."), raster->name, is, said);
    }
  if (raster->pixel_repeat > 1)
    add_note (writer, _ ("%s: each pixel is sent %d times, which the block cannot say."),
              raster->name, raster->pixel_repeat);
  if (raster->h_border > 0 || raster->v_border > 0)
    add_note (writer, _ ("%s: its borders are stated as part of the porches."), raster->name);
}

static void
put_detailed (Writer *writer, double width_m, double height_m)
{
  guint width_mm = (guint) lround (width_m * 1e3);
  guint height_mm = (guint) lround (height_m * 1e3);

  for (gsize i = 0; i < 2; i++)
    {
      guint8 *d = writer->block + BW_EDID_AT_DESCRIPTORS + i * BW_EDID_DETAILED_BYTES;
      if (writer->detailed[i] == NULL)
        {
          d[3] = BW_EDID_TAG_DUMMY;
          add_note (writer, _ ("There is no second raster to state."));
          continue;
        }
      memcpy (d, writer->detailed[i]->bytes, BW_EDID_DETAILED_BYTES);
      d[12] = (guint8) (width_mm & 0xff);
      d[13] = (guint8) (height_mm & 0xff);
      d[14] = (guint8) (width_mm >> 8 << 4 | height_mm >> 8);
      note_losses (writer, writer->detailed[i]);
    }
}

/* Range limits */

static BwRange
whole (const BwBands *bands)
{
  BwRange range = bands->at[0];
  for (guint i = 1; i < bands->n; i++)
    {
      range.low = MIN (range.low, bands->at[i].low);
      range.high = MAX (range.high, bands->at[i].high);
    }
  return range;
}

static BwRange
rounded (BwRange range, double step, gboolean inward)
{
  double low = range.low / step;
  double high = range.high / step;
  double slip = 1e-9; /* 70 kHz is not to become 71 by an error in the last place */
  return inward ? (BwRange){ ceil (low - slip) * step, floor (high + slip) * step }
                : (BwRange){ floor (low + slip) * step, ceil (high - slip) * step };
}

static gboolean
holds (BwRange range, BwRange listed)
{
  return range.low <= listed.low && listed.high <= range.high;
}

/* A computer may choose any raster within the range of a continuous display. That is said only
 * where it is safe: one band each, with its ends rounded inward, and nothing listed outside. */
static gboolean
is_continuous (const Writer *writer)
{
  const BwMonitor *monitor = writer->monitor;
  return monitor->line_rates_hz.n == 1 && monitor->field_rates_hz.n == 1
         && writer->input->line_counts.n == 0
         && holds (rounded (whole (&monitor->line_rates_hz), 1e3, TRUE), writer->line_rates_hz)
         && holds (rounded (whole (&monitor->field_rates_hz), 1, TRUE), writer->field_rates_hz);
}

/* Two bytes of a range, and the bits of byte 4 that add 255: 2 to the greatest, 3 to both. */
static guint8
put_pair (guint8 *d, BwRange range, double step)
{
  int low = (int) lround (range.low / step);
  int high = (int) lround (range.high / step);

  d[0] = (guint8) (low > 255 ? low - 255 : low);
  d[1] = (guint8) (high > 255 ? high - 255 : high);
  return low > 255 ? 3 : high > 255 ? 2 : 0;
}

static void
note_range (Writer *writer, const BwBands *bands, BwRange stated, const char *what)
{
  BwRange overall = whole (bands);
  g_autofree char *is = kilohertz (overall);
  g_autofree char *said = kilohertz (stated);

  if (bands->n > 1)
    add_note (writer,
              _ ("%s: the block can state one range only, %s, and the monitor takes %u bands within "
                 "it. It tells the computer to keep to the rasters that it lists."),
              what, said, bands->n);
  else if (!bw_near (overall.low, stated.low, 1e-6) || !bw_near (overall.high, stated.high, 1e-6))
    add_note (writer, _ ("%s: %s is stated as %s, in whole steps."), what, is, said);
}

static double
max_clock_hz (const Writer *writer)
{
  BwCase c = { .monitor = writer->monitor, .input = writer->input };
  return MAX (writer->clock_hz, 2 * bw_case_input_bandwidth_hz (&c));
}

static gboolean
put_range (Writer *writer, guint8 *d, GError **error)
{
  const BwMonitor *monitor = writer->monitor;
  gboolean inward = writer->continuous;
  BwRange lines = rounded (whole (&monitor->line_rates_hz), 1e3, inward);
  BwRange fields = rounded (whole (&monitor->field_rates_hz), 1, inward);

  if (lines.high > RATE_MAX * 1e3 || fields.high > RATE_MAX)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("“%s”: an EDID can state line rates up to %d kHz and field "
                                    "rates up to %d Hz, and its bands reach further."),
                                 monitor->name, RATE_MAX, RATE_MAX);
  d[3] = BW_EDID_TAG_RANGE;
  d[4] = put_pair (d + 5, fields, 1);
  d[4] |= (guint8) (put_pair (d + 7, lines, 1e3) << 2);
  d[9] = (guint8) ceil (max_clock_hz (writer) / 10e6 - 1e-9);
  d[10] = 0x01; /* limits only, no formula */
  d[11] = '\n';
  memset (d + 12, ' ', 6);
  note_range (writer, &monitor->line_rates_hz, lines, _ ("Line rates"));
  note_range (writer, &monitor->field_rates_hz, fields, _ ("Field rates"));
  return TRUE;
}

/* Name, size, identity */

static void
put_name (Writer *writer, guint8 *d)
{
  g_autofree char *ascii = g_str_to_ascii (writer->monitor->name, "C");
  gsize length = 0;

  d[3] = BW_EDID_TAG_NAME;
  memset (d + 5, ' ', NAME_LENGTH);
  for (const char *p = g_strstrip (ascii); *p != '\0' && length < NAME_LENGTH; p++)
    d[5 + length++] = (guint8) (g_ascii_isprint (*p) ? *p : '?');
  while (length > 0 && d[5 + length - 1] == ' ')
    length--;
  if (length < NAME_LENGTH)
    d[5 + length] = '\n';
  if (length != strlen (writer->monitor->name)
      || memcmp (d + 5, writer->monitor->name, length) != 0)
    add_note (writer, _ ("The name is stated as “%.*s”: at most %d ASCII characters are allowed."),
              (int) length, (const char *) d + 5, NAME_LENGTH);
}

static void
put_size (Writer *writer, double width_m, double height_m)
{
  long width_cm = lround (width_m * 100);
  long height_cm = lround (height_m * 100);

  if (width_cm >= 1 && height_cm >= 1 && width_cm <= 255 && height_cm <= 255)
    {
      writer->block[21] = (guint8) width_cm;
      writer->block[22] = (guint8) height_cm;
    }
  else
    add_note (writer, _ ("The size of the screen is left out: the block states 1 cm to 255 cm."));
}

static void
put_identity (Writer *writer)
{
  static const char maker[] = MAKER;
  guint8 *b = writer->block;
  guint packed = 0;

  memset (b, 0, BW_EDID_BLOCK_BYTES);
  memset (b + 1, 0xff, 6);
  for (int i = 0; i < 3; i++)
    packed = packed << 5 | (guint) (maker[i] - 'A' + 1);
  b[8] = (guint8) (packed >> 8);
  b[9] = (guint8) (packed & 0xff);
  b[17] = YEAR - 1990;
  b[18] = 1;
  b[19] = 4;
  b[23] = 0xff; /* gamma is not stated */
  memset (b + BW_EDID_AT_STANDARD, 1, 2 * BW_EDID_N_STANDARD);
  add_note (writer,
            _ ("Maker's code %s and year %d are made up; gamma and the colours of the phosphors "
               "are left unstated."),
            maker, YEAR);
}

static void
put_checksum (guint8 *block)
{
  guint sum = 0;
  for (gsize i = 0; i < BW_EDID_BLOCK_BYTES - 1; i++)
    sum += block[i];
  block[BW_EDID_BLOCK_BYTES - 1] = (guint8) (256 - sum % 256);
}

static gboolean
put_block (Writer *writer, GError **error)
{
  double aspect = bw_ratio_to_double (writer->monitor->aspect);
  double height_m = writer->monitor->diagonal_m / hypot (aspect, 1);
  double width_m = height_m * aspect;
  guint8 *descriptors = writer->block + BW_EDID_AT_DESCRIPTORS;
  gboolean colour = writer->monitor->mask != BW_MASK_MONO;

  put_identity (writer);
  put_input (writer);
  put_size (writer, width_m, height_m);
  choose_detailed (writer);
  put_established (writer);
  put_detailed (writer, width_m, height_m);
  writer->continuous = is_continuous (writer);
  writer->block[24] = (guint8) ((colour ? 0x08 : 0) | (writer->continuous ? 0x01 : 0));
  if (!put_range (writer, descriptors + 2 * BW_EDID_DETAILED_BYTES, error))
    return FALSE;
  put_name (writer, descriptors + 3 * BW_EDID_DETAILED_BYTES);
  put_checksum (writer->block);
  return TRUE;
}

/**
 * bw_edid_write:
 * @sheet: a checked sheet; its monitor is described, at its first input that takes RGB
 * @catalogue: where rasters are looked for, beside the sheet's own
 * @block: (out caller-allocates): a base block of EDID 1.4; left alone on error, as is @notes
 * @notes: (nullable) (element-type utf8): takes a sentence (to be freed with g_free()) for
 *   each thing that the block says otherwise than the sheet, or not at all
 *
 * An analogue input with the levels and syncs of the RGB input; a size from diagonal and aspect
 * ratio; up to two detailed timings, the best rasters that the monitor takes; the bits of those
 * established timings that it takes; one range of rates around all its bands; its name.
 *
 * The best are those that hold with margin, then the sheet's own, then those that show the most
 * distinct pixels in a field, as far as the bandwidth lets them through; the second timing is the
 * best at another field rate. The greatest clock stated is twice the bandwidth (common practice,
 * no source), or that of a listed raster if that is higher. Where sync is composite or on green,
 * serration is asked for (common practice, no source). The display is called continuous only if it
 * has one band of line rates and one of field rates.
 *
 * The maker's code is made up: it was not asked for from the registry, and nobody looked whether a
 * maker has it. Product and serial number are zero.
 *
 * Returns: %FALSE with @error in %BW_INTERCHANGE_ERROR if the monitor has no RGB input, or one of
 * levels or sync that no EDID can state, or if no raster can be given as a detailed timing
 */
gboolean
bw_edid_write (const BwSheet *sheet, const BwCatalogue *catalogue,
               guint8 block[BW_EDID_BLOCK_BYTES], GPtrArray *notes, GError **error)
{
  guint8 made[BW_EDID_BLOCK_BYTES];
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  Writer writer = { .sheet = sheet, .monitor = sheet->monitor, .block = made, .notes = said };

  if (!choose_input (&writer, error) || !choose_level (&writer, error))
    return FALSE;
  g_autoptr (GArray) picks = bw_edid_picks (sheet, catalogue, writer.input, writer.syncs, error);
  writer.picks = picks;
  if (picks == NULL || !put_block (&writer, error))
    return FALSE;
  memcpy (block, made, sizeof made);
  for (guint i = 0; notes != NULL && i < said->len; i++)
    g_ptr_array_add (notes, g_strdup (said->pdata[i]));
  return TRUE;
}
