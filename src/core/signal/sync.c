/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include "core/raster/waveform.h"

/* Which pulses and how much picture each line of a frame has, and the sync as features.
 *
 * Where field sync is not serrated, composite sync is at its tip for the whole of it (common
 * practice, no source). Tri-level sync goes on through field sync, where each line of a progressive
 * raster has one broad pulse and each line of an interlaced one two, at the lower level. A raster that
 * does not say where they lie has them from where the picture would begin to where it would end. */

#define CROSS_LINES 12 /* of the crosshatch, from top to bottom */

/* The half line of the frame, from line 1, for half line @h after the sync of @field. */
static int
slot_of (const BwSynthesis *s, int field, int h)
{
  gboolean middle;
  int line = bw_raster_line_at (s->raster, field, h, &middle);
  return 2 * (line - 1) + (middle ? 1 : 0);
}

static void
mark_pulses (BwSynthesis *s, int field, int end)
{
  int lines_after = (s->raster->field[field].active + 4 * s->raster->v_border + 1) / 2;
  g_autoptr (BwVerticalInterval) interval
      = bw_vertical_interval_new (s->raster, field, 0, lines_after);

  for (guint i = 0; i < interval->pulses->len; i++)
    {
      const BwPulse *pulse = &g_array_index (interval->pulses, BwPulse, i);
      if (pulse->start_s < (end - 0.25) * s->line_s / 2)
        s->signatures[pulse->line - 1] |= BW_SLOT_PULSE (pulse->half ? 1 : 0, pulse->kind);
    }
}

/* Line @row of the picture's @rows. */
static guint
row_marks (int row, int rows)
{
  guint marks = 4 * row >= rows && 4 * row < 3 * rows ? BW_LINE_WINDOWED : 0;
  for (int i = 0; i < CROSS_LINES; i++)
    if (row == (2 * i + 1) * rows / (2 * CROSS_LINES))
      marks |= BW_LINE_CROSSED;
  return marks;
}

static void
mark_picture (BwSynthesis *s, int field, int start)
{
  int active = s->raster->field[field].active;
  int middle = slot_of (s, field, start) % 2; /* the first line has but its second half */
  for (int i = 0; i < active; i++)
    {
      int slot = slot_of (s, field, start + i);
      s->signatures[slot / 2] |= (guint16) (BW_SLOT_PICTURE (slot % 2)
                                            | row_marks ((i + middle) / 2, (active + 1) / 2));
    }
}

void
bw_signatures_init (BwSynthesis *s)
{
  int fields = s->raster->scan == BW_SCAN_INTERLACED ? 2 : 1;

  s->signatures = g_new0 (guint16, (gsize) s->lines);
  for (int field = 0; field < fields; field++)
    {
      const BwFieldTiming *timing = &s->raster->field[field];
      int picture = timing->sync + timing->back_porch + 2 * s->raster->v_border;
      mark_pulses (s, field, picture + timing->active + 2 * s->raster->v_border);
      mark_picture (s, field, picture);
      for (int h = 0; h < timing->sync; h++)
        {
          int slot = slot_of (s, field, h);
          s->signatures[slot / 2] |= BW_SLOT_SYNC (slot % 2);
        }
    }
}

/**
 * Writer:
 * @volts: of the pulses, negative below the level between them
 * @signatures: of the line before, the line itself and the line after
 */
typedef struct
{
  const BwSynthesis *s;
  GArray *base;
  const guint *signatures;
  double volts;
} Writer;

static void
add_pulse (const Writer *w, double from_s, double to_s, double volts)
{
  bw_add_step (w->base, from_s, w->s->shapes.sync_s, volts);
  bw_add_step (w->base, to_s, w->s->shapes.sync_s, -volts);
}

/* The half lines of the three lines in one row: -2 and -1, 0 and 1, 2 and 3. */
static gboolean
is_field_sync (const Writer *w, int slot)
{
  guint signature = w->signatures[(slot + 2) / 2];
  return (signature & BW_SLOT_SYNC ((slot + 2) % 2)) != 0;
}

static double
slot_s (const Writer *w, int slot)
{
  return slot * w->s->line_s / 2;
}

/* Field sync as one pulse, of which the first and last edge may lie beyond the three lines. */
static void
add_field_pulse (const Writer *w)
{
  gboolean before = FALSE;
  for (int slot = -2; slot <= 4; slot++)
    {
      gboolean now = slot < 4 ? is_field_sync (w, slot) : FALSE;
      if (now != before)
        bw_add_step (w->base, slot_s (w, slot), w->s->shapes.sync_s, now ? w->volts : -w->volts);
      before = now;
    }
}

static void
add_line_pulses (const Writer *w)
{
  for (int line = -1; line <= 1; line++)
    add_pulse (w, line * w->s->line_s, line * w->s->line_s + w->s->sync_width_s, w->volts);
}

static double
pulse_width_s (const BwSynthesis *s, int kind)
{
  switch (kind)
    {
    case BW_PULSE_BROAD:
      return bw_raster_broad_s (s->raster);
    case BW_PULSE_EQUALISING:
      return s->raster->equalising_width_s;
    default:
      return s->sync_width_s;
    }
}

static void
add_composite (const Writer *w)
{
  gboolean serrated = w->s->raster->serration_width_s > 0;
  for (int slot = -2; slot < 4; slot++)
    {
      int kind = BW_SLOT_PULSE_OF (w->signatures[(slot + 2) / 2], (slot + 2) % 2);
      double from_s = slot_s (w, slot);
      if (kind >= 0 && (serrated || !is_field_sync (w, slot)))
        add_pulse (w, from_s, from_s + pulse_width_s (w->s, kind), w->volts);
    }
  if (!serrated)
    add_field_pulse (w);
}

/* The broad pulses of a raster that lays them down: one in each half line of an interlaced raster, else
 * one in each line. */
static void
add_laid_broad (const Writer *w, int slot, double datum_s)
{
  const BwRaster *raster = w->s->raster;
  gboolean second = slot % 2 != 0;
  double from_s = datum_s + (second ? w->s->line_s / 2 : 0) + raster->broad_start_s;

  if (raster->scan == BW_SCAN_INTERLACED || !second)
    add_pulse (w, from_s, from_s + raster->broad_width_s, w->volts);
}

/* The broad pulse of the half line @slot, whose line begins at @datum_s. */
static void
add_trilevel_broad (const Writer *w, int slot, double datum_s)
{
  if (w->s->raster->broad_width_s > 0)
    {
      add_laid_broad (w, slot, datum_s);
      return;
    }
  gboolean second = slot % 2 != 0;
  double middle_s = datum_s + w->s->line_s / 2;
  double from_s = second ? middle_s : datum_s + w->s->active_from_s;
  double to_s = second ? datum_s + w->s->active_to_s : middle_s;
  gboolean joined = is_field_sync (w, second ? slot - 1 : slot + 1);

  if (!(second && joined))
    bw_add_step (w->base, from_s, w->s->shapes.sync_s, w->volts);
  if (second || !joined)
    bw_add_step (w->base, to_s, w->s->shapes.sync_s, -w->volts);
}

static void
add_trilevel (const Writer *w)
{
  double width_s = w->s->shapes.sync_s, half_s = w->s->sync_width_s;

  for (int line = -1; line <= 1; line++)
    {
      double datum_s = line * w->s->line_s;
      bw_add_step (w->base, datum_s - half_s, width_s, w->volts);
      bw_add_step (w->base, datum_s, width_s, -2 * w->volts);
      bw_add_step (w->base, datum_s + half_s, width_s, w->volts);
    }
  for (int slot = -2; slot < 4; slot++)
    if (is_field_sync (w, slot))
      add_trilevel_broad (w, slot, (slot + 2) / 2 * w->s->line_s - w->s->line_s);
}

static double
own_volts (const BwSynthesis *s, BwConductor conductor)
{
  guint polarity = s->form.own_polarity[conductor == BW_CONDUCTOR_V ? 1 : 0];
  return polarity == BW_POLARITY_POSITIVE ? s->form.own_sync_v : -s->form.own_sync_v;
}

/* Logic with negative pulses rests high: from before the three lines on. */
static void
add_rest (const Writer *w)
{
  if (w->s->form.own_logic && w->volts < 0)
    bw_add_step (w->base, -1.5 * w->s->line_s, w->s->shapes.sync_s, -w->volts);
}

/* Adds the sync of the middle one of three lines, with the edges of the other two that reach into
 * it. */
void
bw_add_sync (const BwSynthesis *s, BwConductor conductor, const guint signatures[3], GArray *base)
{
  gboolean own = bw_conductor_is_sync_alone (conductor);
  Writer w = { s, base, signatures, own ? own_volts (s, conductor) : -s->form.sync_v };

  if (!bw_conductor_carries_sync (conductor, s->form.signal, s->form.sync))
    return;
  if (own)
    add_rest (&w);
  if (conductor == BW_CONDUCTOR_V)
    add_field_pulse (&w);
  else if (conductor == BW_CONDUCTOR_H)
    add_line_pulses (&w);
  else if (!own && s->form.shape == BW_SHAPE_TRILEVEL)
    add_trilevel (&w);
  else
    add_composite (&w);
}
