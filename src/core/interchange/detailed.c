/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* The detailed timing of VESA E-EDID release A, section "18 Byte Descriptors", which CTA-861
 * extensions use as well. Vertical figures are those of one field; of an interlaced raster they are
 * the whole lines of field 1, and field 2 has half a line more in each porch. Blanking includes
 * the borders, as edid-decode reads it too. The text of the standard was not read: the layout
 * comes from programs that use it. */

#define CLOCK_STEP_HZ 10000

enum
{
  AT_CLOCK = 0,
  AT_H_ACTIVE = 2,
  AT_H_BLANKING = 3,
  AT_H_HIGH = 4,
  AT_V_ACTIVE = 5,
  AT_V_BLANKING = 6,
  AT_V_HIGH = 7,
  AT_H_FRONT_PORCH = 8,
  AT_H_SYNC = 9,
  AT_V_LOW = 10,
  AT_SYNC_HIGH = 11,
  AT_H_BORDER = 15,
  AT_V_BORDER = 16,
  AT_FLAGS = 17
};

/* The numbers of a detailed timing. */
typedef struct
{
  int clock;
  int h_active;
  int h_blanking;
  int h_front_porch;
  int h_sync;
  int h_border;
  int v_active;
  int v_blanking;
  int v_front_porch;
  int v_sync;
  int v_border;
} Detailed;

static const struct
{
  const char *what;
  gsize offset;
  int max;
} numbers[] = {
  { N_ ("pixel clock, in 10 kHz"), G_STRUCT_OFFSET (Detailed, clock), 65535 },
  { N_ ("active pixels"), G_STRUCT_OFFSET (Detailed, h_active), 4095 },
  { N_ ("line blanking with borders, in pixels"), G_STRUCT_OFFSET (Detailed, h_blanking), 4095 },
  { N_ ("horizontal front porch, in pixels"), G_STRUCT_OFFSET (Detailed, h_front_porch), 1023 },
  { N_ ("line sync, in pixels"), G_STRUCT_OFFSET (Detailed, h_sync), 1023 },
  { N_ ("border at each side, in pixels"), G_STRUCT_OFFSET (Detailed, h_border), 255 },
  { N_ ("active lines of a field"), G_STRUCT_OFFSET (Detailed, v_active), 4095 },
  { N_ ("field blanking with borders, in lines"), G_STRUCT_OFFSET (Detailed, v_blanking), 4095 },
  { N_ ("vertical front porch, in lines"), G_STRUCT_OFFSET (Detailed, v_front_porch), 63 },
  { N_ ("field sync, in lines"), G_STRUCT_OFFSET (Detailed, v_sync), 63 },
  { N_ ("border above and below, in lines"), G_STRUCT_OFFSET (Detailed, v_border), 255 },
};

/* Writing */

static gboolean
check_fields (const BwRaster *raster, GError **error)
{
  const BwFieldTiming *one = &raster->field[0];
  const BwFieldTiming *two = &raster->field[1];
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  int later = interlaced ? 1 : 0; /* half lines */

  if (interlaced && bw_raster_half_lines (raster) / 2 % 2 == 0)
    return bw_interchange_fault (
        error, BW_INTERCHANGE_ERROR_UNWRITABLE,
        _ ("%1$s: a detailed timing cannot state an interlaced raster with "
           "an even total of lines (%2$d): it would be read with one more"),
        raster->id, bw_raster_half_lines (raster) / 2);
  if (one->active % 2 != 0 || one->front_porch % 2 != 0 || one->sync % 2 != 0
      || one->back_porch % 2 != 0 || two->active != one->active || two->sync != one->sync
      || two->front_porch != one->front_porch + later || two->back_porch != one->back_porch + later)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_UNWRITABLE,
                                 _ ("%s: a detailed timing counts whole lines, with half a line "
                                    "more in each porch of the second field of an interlaced "
                                    "raster, and these fields are not so"),
                                 raster->id);
  return TRUE;
}

static gboolean
check_ranges (const BwRaster *raster, const Detailed *d, GError **error)
{
  for (gsize i = 0; i < G_N_ELEMENTS (numbers); i++)
    {
      int value = G_STRUCT_MEMBER (int, d, numbers[i].offset);
      if (value > numbers[i].max)
        return bw_interchange_fault (
            error, BW_INTERCHANGE_ERROR_UNWRITABLE,
            _ ("%1$s: %2$s: %3$d is more than the %4$d that a detailed timing has "
               "room for"),
            raster->id, _ (numbers[i].what), value, numbers[i].max);
    }
  return TRUE;
}

static gboolean
count (const BwRaster *raster, Detailed *d, GError **error)
{
  const BwFieldTiming *field = &raster->field[0];
  BwLineEdges line = bw_line_edges (raster);
  double steps = round (bw_ratio_to_double (raster->pixel_clock_hz) / CLOCK_STEP_HZ);

  if (steps < 1)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_UNWRITABLE,
                                 _ ("%s: its pixel clock is below the 10 kHz at which a detailed "
                                    "timing begins"),
                                 raster->id);
  *d = (Detailed){
    .clock = (int) MIN (steps, G_MAXINT),
    .h_active = raster->h_active,
    .h_blanking = line.front_porch + line.sync + line.back_porch + 2 * raster->h_border,
    .h_front_porch = line.front_porch,
    .h_sync = line.sync,
    .h_border = raster->h_border,
    .v_active = field->active / 2,
    .v_blanking = (field->front_porch + field->sync + field->back_porch) / 2 + 2 * raster->v_border,
    .v_front_porch = field->front_porch / 2,
    .v_sync = field->sync / 2,
    .v_border = raster->v_border,
  };
  return check_ranges (raster, d, error);
}

static void
pack (const Detailed *d, guint8 *out)
{
  memset (out, 0, BW_EDID_DETAILED_BYTES);
  out[AT_CLOCK] = (guint8) (d->clock & 0xff);
  out[AT_CLOCK + 1] = (guint8) (d->clock >> 8);
  out[AT_H_ACTIVE] = (guint8) (d->h_active & 0xff);
  out[AT_H_BLANKING] = (guint8) (d->h_blanking & 0xff);
  out[AT_H_HIGH] = (guint8) (d->h_active >> 8 << 4 | d->h_blanking >> 8);
  out[AT_V_ACTIVE] = (guint8) (d->v_active & 0xff);
  out[AT_V_BLANKING] = (guint8) (d->v_blanking & 0xff);
  out[AT_V_HIGH] = (guint8) (d->v_active >> 8 << 4 | d->v_blanking >> 8);
  out[AT_H_FRONT_PORCH] = (guint8) (d->h_front_porch & 0xff);
  out[AT_H_SYNC] = (guint8) (d->h_sync & 0xff);
  out[AT_V_LOW] = (guint8) ((d->v_front_porch & 0xf) << 4 | (d->v_sync & 0xf));
  out[AT_SYNC_HIGH] = (guint8) (d->h_front_porch >> 8 << 6 | d->h_sync >> 8 << 4
                                | d->v_front_porch >> 4 << 2 | d->v_sync >> 4);
  out[AT_H_BORDER] = (guint8) d->h_border;
  out[AT_V_BORDER] = (guint8) d->v_border;
}

/**
 * bw_edid_detailed_from_raster:
 * @raster: defined in pixels
 * @out: (out caller-allocates): its detailed timing, with separate sync of the raster's polarities
 *   and without an image size
 *
 * The clock is rounded to 10 kHz, tri-level sync becomes the bi-level pulse that starts at its
 * datum, and repeated pixels, equalising and serration are not stated.
 *
 * Returns: %FALSE with @error in %BW_INTERCHANGE_ERROR if @raster is defined in time alone, or has
 * figures beyond the bit fields (a clock over 655.35 MHz among them), or fields that are not alike
 * up to the half line
 */
gboolean
bw_edid_detailed_from_raster (const BwRaster *raster, guint8 out[BW_EDID_DETAILED_BYTES],
                              GError **error)
{
  g_return_val_if_fail (raster != NULL && out != NULL, FALSE);
  Detailed d;
  if (!bw_interchange_writable (raster, error) || !check_fields (raster, error)
      || !count (raster, &d, error))
    return FALSE;
  pack (&d, out);
  out[AT_FLAGS] = BW_EDID_SYNC_SEPARATE
                  | (raster->scan == BW_SCAN_INTERLACED ? BW_EDID_INTERLACED : 0)
                  | (raster->h_polarity == BW_POLARITY_POSITIVE ? BW_EDID_H_POSITIVE : 0)
                  | (raster->v_polarity == BW_POLARITY_POSITIVE ? BW_EDID_V_POSITIVE : 0);
  return TRUE;
}

/* Reading */

static Detailed
unpack (const guint8 *in)
{
  return (Detailed){
    .clock = in[AT_CLOCK] | in[AT_CLOCK + 1] << 8,
    .h_active = in[AT_H_ACTIVE] | (in[AT_H_HIGH] & 0xf0) << 4,
    .h_blanking = in[AT_H_BLANKING] | (in[AT_H_HIGH] & 0x0f) << 8,
    .h_front_porch = in[AT_H_FRONT_PORCH] | (in[AT_SYNC_HIGH] & 0xc0) << 2,
    .h_sync = in[AT_H_SYNC] | (in[AT_SYNC_HIGH] & 0x30) << 4,
    .h_border = in[AT_H_BORDER],
    .v_active = in[AT_V_ACTIVE] | (in[AT_V_HIGH] & 0xf0) << 4,
    .v_blanking = in[AT_V_BLANKING] | (in[AT_V_HIGH] & 0x0f) << 8,
    .v_front_porch = in[AT_V_LOW] >> 4 | (in[AT_SYNC_HIGH] & 0x0c) << 2,
    .v_sync = (in[AT_V_LOW] & 0x0f) | (in[AT_SYNC_HIGH] & 0x03) << 4,
    .v_border = in[AT_V_BORDER],
  };
}

/* The byte at which each fault is found, for the sentence. */
static gboolean
check_unpacked (const Detailed *d, GError **error)
{
  const struct
  {
    gboolean wrong;
    int byte;
    const char *says;
  } faults[] = {
    { d->clock == 0, AT_CLOCK, N_ ("the pixel clock is zero: this is no detailed timing") },
    { d->h_active == 0, AT_H_ACTIVE, N_ ("there are no active pixels") },
    { d->v_active == 0, AT_V_ACTIVE, N_ ("there are no active lines") },
    { d->h_sync == 0, AT_H_SYNC, N_ ("the line has no sync") },
    { d->v_sync == 0, AT_V_LOW, N_ ("the field has no sync") },
    { d->h_front_porch + d->h_sync + 2 * d->h_border > d->h_blanking, AT_H_BLANKING,
      N_ ("line blanking must be at least front porch, sync and both borders together") },
    { d->v_front_porch + d->v_sync + 2 * d->v_border > d->v_blanking, AT_V_BLANKING,
      N_ ("field blanking must be at least front porch, sync and both borders together") },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (faults); i++)
    if (faults[i].wrong)
      return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_DESCRIPTOR,
                                   _ ("byte %1$d of the detailed timing: %2$s"), faults[i].byte,
                                   _ (faults[i].says));
  return TRUE;
}

static void
set_sync (guint8 form, BwRaster *raster)
{
  gboolean h_positive = (form & BW_EDID_H_POSITIVE) != 0;
  gboolean v_positive = (form & BW_EDID_V_POSITIVE) != 0;

  switch (form & BW_EDID_SYNC_MASK)
    {
    case BW_EDID_SYNC_SEPARATE:
      raster->note = g_strdup ("");
      break;
    case BW_EDID_SYNC_COMPOSITE: /* one pulse train; the other bit tells of serration */
      v_positive = h_positive;
      raster->note = g_strdup (_ ("Composite sync on a conductor of its own."));
      break;
    default: /* on video, where sync is always negative; bit 1 is then no polarity */
      h_positive = v_positive = FALSE;
      raster->note = g_strdup (form & BW_EDID_H_POSITIVE ? _ ("Composite sync on red, green and "
                                                              "blue.")
                                                         : _ ("Composite sync on green."));
    }
  raster->h_polarity = h_positive ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
  raster->v_polarity = v_positive ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
}

static void
set_fields (const Detailed *d, gboolean interlaced, BwRaster *raster)
{
  raster->scan = interlaced ? BW_SCAN_INTERLACED : BW_SCAN_PROGRESSIVE;
  raster->v_border = d->v_border;
  raster->field[0] = (BwFieldTiming){
    .active = 2 * d->v_active,
    .front_porch = 2 * d->v_front_porch,
    .sync = 2 * d->v_sync,
    .back_porch = 2 * (d->v_blanking - d->v_front_porch - d->v_sync - 2 * d->v_border),
  };
  raster->field[1] = raster->field[0];
  if (interlaced)
    {
      raster->field[1].front_porch++;
      raster->field[1].back_porch++;
    }
}

static void
set_names (BwRaster *raster)
{
  BwRasterFigures f;
  gboolean interlaced = raster->scan == BW_SCAN_INTERLACED;
  bw_raster_figures (raster, &f);
  int lines = raster->field[0].active / (interlaced ? 1 : 2);
  char rate[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (rate, sizeof rate, "%.2f", f.field_rate_hz);
  raster->id = g_strdup_printf ("edid-%dx%d%s-%s", raster->h_active, lines, interlaced ? "i" : "",
                                rate);
  raster->name = g_strdup_printf (interlaced ? _ ("%1$d×%2$d interlaced, %3$s Hz")
                                             /* Translators: width, height and field rate of a picture. */
                                             : _ ("%1$d×%2$d, %3$s Hz"),
                                  raster->h_active, lines, rate);
  raster->source = g_strdup (_ ("EDID"));
  raster->aliases = g_strdup ("");
}

/**
 * bw_edid_detailed_to_raster:
 *
 * Where sync is not separate the raster has the polarity of the composite sync, and its note says
 * in what form the timing asks for it. Stereo bits are not looked at.
 *
 * Returns: (transfer full): the checked raster, or %NULL with @error in %BW_INTERCHANGE_ERROR; the
 * sentence counts bytes from the start of @in
 */
BwRaster *
bw_edid_detailed_to_raster (const guint8 in[BW_EDID_DETAILED_BYTES], GError **error)
{
  g_return_val_if_fail (in != NULL, NULL);
  g_autoptr (BwRaster) raster = bw_raster_new ();
  g_autoptr (GError) trouble = NULL;
  Detailed d = unpack (in);

  if (!check_unpacked (&d, error))
    return NULL;
  raster->h_active = d.h_active;
  raster->h_front_porch = d.h_front_porch;
  raster->h_sync = d.h_sync;
  raster->h_back_porch = d.h_blanking - d.h_front_porch - d.h_sync - 2 * d.h_border;
  raster->h_border = d.h_border;
  raster->pixel_clock_hz = (BwRatio){ (gint64) d.clock * CLOCK_STEP_HZ, 1 };
  set_fields (&d, (in[AT_FLAGS] & BW_EDID_INTERLACED) != 0, raster);
  bw_ratio_make (raster->pixel_clock_hz.num, bw_raster_h_total (raster), &raster->line_rate_hz);
  if (!bw_raster_check (raster, &trouble))
    {
      bw_interchange_fault (error, BW_INTERCHANGE_ERROR_RASTER,
                            _ ("byte %1$d of the detailed timing: %2$s"), AT_CLOCK,
                            trouble->message);
      return NULL;
    }
  set_sync (in[AT_FLAGS], raster);
  set_names (raster);
  return g_steal_pointer (&raster);
}
