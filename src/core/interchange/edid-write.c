/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* The base block of VESA E-EDID 1.4 for a picture-tube monitor. Of the versions, 1.4 alone can say
 * that a display takes the listed rasters only and not all that lie between them, which is the
 * truth for one with several bands. */

#define MAKER "BWZ"
#define YEAR 2006 /* of EDID 1.4 itself: the block has no way to leave it out */
#define NAME_LENGTH 13
#define OTHER_RATE 0.01 /* share by which field rates differ that are not a pair 1000/1001 */

/**
 * bw_edid_note:
 * @format: a sentence, translated
 *
 * Adds to what the caller is told.
 */
void
bw_edid_note (BwEdidWriter *writer, const char *format, ...)
{
  va_list arguments;
  va_start (arguments, format);
  g_ptr_array_add (writer->notes, g_strdup_vprintf (format, arguments));
  va_end (arguments);
}

/* What is listed */

static void
widen (BwRange *range, double value)
{
  range->low = range->high > 0 ? MIN (range->low, value) : value;
  range->high = MAX (range->high, value);
}

static void
list (BwEdidWriter *writer, const BwEdidPick *pick)
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
second_to (const BwEdidWriter *writer, const BwEdidPick *first)
{
  const BwEdidPick *other = NULL;
  for (guint i = 0; i < writer->picks->len; i++)
    {
      const BwEdidPick *pick = &g_array_index (writer->picks, BwEdidPick, i);
      if (!pick->fits)
        continue;
      if (fabs (pick->field_rate_hz / first->field_rate_hz - 1) > OTHER_RATE)
        return pick;
      if (other == NULL && !same_but_clock (pick, first))
        other = pick;
    }
  return other;
}

static void
choose_detailed (BwEdidWriter *writer)
{
  for (guint i = 0; writer->detailed[0] == NULL; i++)
    if (g_array_index (writer->picks, BwEdidPick, i).fits)
      writer->detailed[0] = &g_array_index (writer->picks, BwEdidPick, i);
  writer->detailed[1] = second_to (writer, writer->detailed[0]);
  for (gsize i = 0; i < 2 && writer->detailed[i] != NULL; i++)
    list (writer, writer->detailed[i]);
}

static void
put_established (BwEdidWriter *writer)
{
  for (guint bit = 0; bit < BW_EDID_N_ESTABLISHED; bit++)
    {
      g_autofree char *id = g_strdup_printf ("vesa-dmt-%02x",
                                             (guint) bw_edid_established_dmt (bit));
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
note_losses (BwEdidWriter *writer, const BwEdidPick *pick)
{
  const BwRaster *raster = pick->raster;
  double stated_hz = (pick->bytes[0] | pick->bytes[1] << 8) * 10e3;
  char mark = bw_quantity_locale_mark ();

  if (!bw_near (stated_hz, pick->clock_hz, 0.5))
    {
      g_autofree char *is = bw_quantity_format (pick->clock_hz, BW_DIMENSION_FREQUENCY, 8, mark);
      g_autofree char *said = bw_quantity_format (stated_hz, BW_DIMENSION_FREQUENCY, 8, mark);
      bw_edid_note (writer, _ ("%1$s: its pixel clock of %2$s is stated as %3$s."), raster->name,
                    is, said);
    }
  if (raster->pixel_repeat > 1)
    bw_edid_note (writer,
                  g_dngettext (GETTEXT_PACKAGE,
                               "%1$s: each pixel is sent %2$d time, which the block cannot say.",
                               "%1$s: each pixel is sent %2$d times, which the block cannot say.",
                               (gulong) raster->pixel_repeat),
                  raster->name, raster->pixel_repeat);
  if (raster->h_border > 0 || raster->v_border > 0)
    bw_edid_note (writer, _ ("%s: its borders are stated as part of the porches."), raster->name);
}

static void
put_detailed (BwEdidWriter *writer, double width_m, double height_m)
{
  guint width_mm = (guint) lround (width_m * 1e3);
  guint height_mm = (guint) lround (height_m * 1e3);

  for (gsize i = 0; i < 2; i++)
    {
      guint8 *d = writer->block + BW_EDID_AT_DESCRIPTORS + i * BW_EDID_DETAILED_BYTES;
      if (writer->detailed[i] == NULL)
        {
          d[3] = BW_EDID_TAG_DUMMY;
          bw_edid_note (writer, _ ("There is no second raster to state."));
          continue;
        }
      memcpy (d, writer->detailed[i]->bytes, BW_EDID_DETAILED_BYTES);
      d[12] = (guint8) (width_mm & 0xff);
      d[13] = (guint8) (height_mm & 0xff);
      d[14] = (guint8) (width_mm >> 8 << 4 | height_mm >> 8);
      note_losses (writer, writer->detailed[i]);
    }
}

/* Name, size, identity */

static void
put_name (BwEdidWriter *writer, guint8 *d)
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
  g_autofree char *stated = g_strndup ((const char *) d + 5, length);
  if (length != strlen (writer->monitor->name)
      || memcmp (d + 5, writer->monitor->name, length) != 0)
    bw_edid_note (
        writer,
        g_dngettext (GETTEXT_PACKAGE,
                     "The name is stated as “%1$s”: at most %2$d ASCII character is allowed.",
                     "The name is stated as “%1$s”: at most %2$d ASCII characters are allowed.",
                     NAME_LENGTH),
        stated, NAME_LENGTH);
}

static void
put_size (BwEdidWriter *writer, double width_m, double height_m)
{
  long width_cm = lround (width_m * 100);
  long height_cm = lround (height_m * 100);

  if (width_cm >= 1 && height_cm >= 1 && width_cm <= 255 && height_cm <= 255)
    {
      writer->block[21] = (guint8) width_cm;
      writer->block[22] = (guint8) height_cm;
    }
  else
    bw_edid_note (writer,
                  _ ("The size of the screen is left out: the block states 1 cm to 255 cm."));
}

static void
put_identity (BwEdidWriter *writer)
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
  bw_edid_note (
      writer,
      _ ("Maker's code %1$s and year %2$d are made up; gamma and the colours of the phosphors "
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
put_block (BwEdidWriter *writer, GError **error)
{
  double aspect = bw_ratio_to_double (writer->monitor->aspect);
  double height_m = writer->monitor->diagonal_m / hypot (aspect, 1);
  double width_m = height_m * aspect;
  guint8 *descriptors = writer->block + BW_EDID_AT_DESCRIPTORS;
  gboolean colour = writer->monitor->mask != BW_MASK_MONO;

  put_identity (writer);
  bw_edid_put_input (writer);
  put_size (writer, width_m, height_m);
  choose_detailed (writer);
  put_established (writer);
  put_detailed (writer, width_m, height_m);
  writer->continuous = bw_edid_is_continuous (writer);
  writer->block[24] = (guint8) ((colour ? 0x08 : 0) | (writer->continuous ? 0x01 : 0));
  if (!bw_edid_put_range (writer, descriptors + 2 * BW_EDID_DETAILED_BYTES, error))
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
 * Returns: %FALSE with @error in %BW_INTERCHANGE_ERROR if a figure that it needs is not known, the
 *   monitor has no RGB input, or one of
 * levels or sync that no EDID can state, or if no raster can be given as a detailed timing
 */
gboolean
bw_edid_write (const BwSheet *sheet, const BwCatalogue *catalogue,
               guint8 block[BW_EDID_BLOCK_BYTES], GPtrArray *notes, GError **error)
{
  g_return_val_if_fail (sheet != NULL && catalogue != NULL && block != NULL, FALSE);
  guint8 made[BW_EDID_BLOCK_BYTES];
  g_autoptr (GPtrArray) said = g_ptr_array_new_with_free_func (g_free);
  BwEdidWriter writer = { .monitor = sheet->monitor, .block = made, .notes = said };
  BwLack lack;

  if (bw_lacks_deflection (sheet->monitor, &lack) || bw_lacks_tube (sheet->monitor, &lack))
    {
      g_autofree char *says = bw_lack_says (&lack);
      return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_UNWRITABLE, "%s", says);
    }

  if (!bw_edid_choose_input (&writer, error) || !bw_edid_choose_level (&writer, error))
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
