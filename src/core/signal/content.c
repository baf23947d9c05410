/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <glib/gi18n-lib.h>

/* What the picture holds. The shares of the line and of the height are our own. */

static const BwKind contents[BW_N_CONTENTS] = {
  [BW_CONTENT_BARS] = { "bars", N_ ("colour bars") },
  [BW_CONTENT_RAMP] = { "ramp", N_ ("ramp") },
  [BW_CONTENT_MULTIBURST] = { "multiburst", N_ ("multiburst") },
  [BW_CONTENT_PULSE_AND_WINDOW] = { "pulse-and-window", N_ ("pulse and window") },
  [BW_CONTENT_CROSSHATCH] = { "crosshatch", N_ ("crosshatch") },
};
const BwKindTable bw_contents = { BW_N_CONTENTS, contents };

#define PACKETS 6
#define PACKET_SHARE 0.8 /* width of a packet, and of the white flag, in their parts of the line */
#define CROSS_COLUMNS 16
/* Where the pulse and the edges of the window are, as shares of the active line. */
#define PULSE_PLACE 0.2
#define WINDOW_FROM 0.4
#define WINDOW_TO 0.9

/**
 * Packets:
 * @peak_to_peak: as a share of white; the packets stand on half of white
 *
 * A multiburst. With @shares the frequencies are shares of the bandwidth.
 */
typedef struct
{
  double hz[PACKETS];
  double peak_to_peak;
  gboolean shares;
} Packets;

/* ITU-T J.63 table III; 50 IRE on 50 IRE (amplitude from a secondary source). */
static const Packets packets_525 = { { 0.5e6, 1e6, 2e6, 3e6, 3.58e6, 4.2e6 }, 0.5, FALSE };
/* ITU-T J.63 table I, element C2: 0.42 V of 0.7 V. */
static const Packets packets_625 = { { 0.5e6, 1e6, 2e6, 4e6, 4.8e6, 5.8e6 }, 0.6, FALSE };
/* Our own, for what no standard lays down. */
static const Packets packets_other = { { 0.1, 0.2, 0.4, 0.6, 0.8, 1 }, 0.5, TRUE };

/* J.63 is for the two broadcast rasters; its 625-line packets go beyond the band of system N. */
static const Packets *
packets_for (const BwSynthesis *s)
{
  gboolean broadcast = s->line_s > 60e-6 && s->raster->scan == BW_SCAN_INTERLACED;
  if (broadcast && s->lines == 525)
    return &packets_525;
  if (broadcast && s->lines == 625)
    return s->luma_hz < 4.8e6 ? &packets_525 : &packets_625;
  return &packets_other;
}

static double
packet_hz (const BwSynthesis *s, const Packets *packets, int i)
{
  return packets->hz[i] * (packets->shares ? s->luma_hz : 1);
}

/* The highest frequency in the picture without its subcarrier. */
double
bw_content_highest_hz (const BwSynthesis *s)
{
  const Packets *packets = packets_for (s);
  double packet_s = packet_hz (s, packets, PACKETS - 1);
  return s->content == BW_CONTENT_MULTIBURST ? MAX (packet_s, s->luma_hz) : s->luma_hz;
}

/* A line in which the picture begins or ends half way has half a picture: it begins in the middle
 * of the line, or ends a front porch before it (SMPTE 170M figure 7; ITU-R BT.470-6 figure 2-1).
 * Returns whether there is any. */
int
bw_content_spans (const BwSynthesis *s, guint signature, double *from_s, double *to_s)
{
  gboolean first = (signature & BW_SLOT_PICTURE (0)) != 0;
  gboolean second = (signature & BW_SLOT_PICTURE (1)) != 0;

  *from_s = first ? s->active_from_s : MAX (s->active_from_s, s->line_s / 2);
  *to_s = second ? s->active_to_s : s->active_to_s - s->line_s / 2;
  return (first || second) && *to_s > *from_s;
}

/**
 * Painter:
 * @at_s: 0H of the line, in the time of the features
 * @from_s: of the picture, after 0H
 * @painted: what the conductor carries so far, from the left
 *
 * Puts spans of one colour beside each other, from blanking to blanking.
 */
typedef struct
{
  const BwSynthesis *s;
  BwConductor conductor;
  guint signature;
  GArray *const *layers;
  double at_s;
  double from_s;
  double to_s;
  double luma_s; /* of an edge in the picture */
  BwWireColour painted;
  BwWireColour black;
  BwWireColour white;
} Painter;

static void
step_to (Painter *p, double time_s, double width_s, const BwWireColour *colour)
{
  double at_s = p->at_s + time_s, chroma_s = p->s->shapes.chroma_s;
  bw_add_step (p->layers[BW_LAYER_BASE], at_s, width_s, colour->base_v - p->painted.base_v);
  bw_add_step (p->layers[BW_LAYER_U], at_s, chroma_s, colour->u_v - p->painted.u_v);
  bw_add_step (p->layers[BW_LAYER_V], at_s, chroma_s, colour->v_v - p->painted.v_v);
  p->painted = *colour;
}

/* From @time_s on, up to where the next one begins. */
static void
paint (Painter *p, double time_s, double until_s, const BwRgb *rgb)
{
  BwWireColour colour;
  if (until_s <= p->from_s || time_s >= p->to_s)
    return;
  bw_wire_colour (&p->s->form, p->conductor, rgb, &colour);
  gboolean first = time_s <= p->from_s;
  step_to (p, first ? p->from_s : time_s, first ? p->s->shapes.blanking_s : p->luma_s, &colour);
}

static void
paint_grey (Painter *p, double from_s, double to_s, double y)
{
  paint (p, from_s, to_s, &(BwRgb){ y, y, y });
}

static void
finish (Painter *p)
{
  step_to (p, p->to_s, p->s->shapes.blanking_s, &(BwWireColour){ 0 });
}

/* The time at which @share of the active line has passed. */
static double
place_s (const Painter *p, double share)
{
  return p->s->active_from_s + share * (p->s->active_to_s - p->s->active_from_s);
}

/* Luma of a level that is a share of white above blanking. */
static double
luma_of_level (const Painter *p, double level)
{
  double setup = p->s->form.setup_ire / 100;
  return (level - setup) / (1 - setup);
}

static double
grey_range_v (const Painter *p)
{
  return p->white.base_v - p->black.base_v;
}

static void
add_feature (Painter *p, BwFeature feature)
{
  double left_s = feature.at_s, right_s = feature.at_s + feature.width_s;
  if (feature.kind == BW_FEATURE_PULSE)
    {
      left_s -= feature.width_s / 2;
      right_s -= feature.width_s / 2;
    }
  if (feature.volts > -1e-12 && feature.volts < 1e-12)
    return;
  if (left_s < p->from_s - 1e-12 || right_s > p->to_s + 1e-12)
    return; /* half a line has no room for it */
  feature.at_s += p->at_s;
  g_array_append_val (p->layers[BW_LAYER_BASE], feature);
}

/* Sine-squared, 2T wide at half amplitude. */
static void
add_pulse (Painter *p, double centre_s)
{
  add_feature (p, (BwFeature){ .kind = BW_FEATURE_PULSE,
                               .at_s = centre_s,
                               .width_s = p->luma_s,
                               .volts = grey_range_v (p) });
}

static void
paint_bars (Painter *p)
{
  for (BwBar bar = 0; bar < BW_N_BARS; bar++)
    {
      BwRgb rgb;
      bw_bar_rgb (bar, p->s->bars, &rgb);
      paint (p, place_s (p, bar / (double) BW_N_BARS), place_s (p, (bar + 1.0) / BW_N_BARS), &rgb);
    }
}

/* Black to white over the whole active line. */
static void
paint_ramp (Painter *p)
{
  double active_s = p->s->active_to_s - p->s->active_from_s;
  double first = (p->from_s - p->s->active_from_s) / active_s;
  double rise = (p->to_s - p->from_s) / active_s;
  double volts = rise * grey_range_v (p);

  paint_grey (p, p->from_s, p->to_s, first);
  add_feature (p, (BwFeature){ .kind = BW_FEATURE_RAMP,
                               .at_s = p->from_s,
                               .width_s = p->to_s - p->from_s,
                               .volts = volts });
  p->painted.base_v += volts;
}

/* A white flag and six packets, each in a seventh of the line. */
static void
paint_multiburst (Painter *p)
{
  const Packets *packets = packets_for (p->s);
  double part = 1.0 / (PACKETS + 1), middle = luma_of_level (p, 0.5);
  double volts = grey_range_v (p) * packets->peak_to_peak / 2 / (1 - p->s->form.setup_ire / 100);

  paint_grey (p, place_s (p, 0), place_s (p, PACKET_SHARE * part), 1);
  paint_grey (p, place_s (p, PACKET_SHARE * part), place_s (p, 1), middle);
  for (int i = 0; i < PACKETS; i++)
    {
      double from_s = place_s (p, (i + 1 + (1 - PACKET_SHARE) / 2) * part);
      double to_s = place_s (p, (i + 1 + (1 + PACKET_SHARE) / 2) * part);
      add_feature (p, (BwFeature){ .kind = BW_FEATURE_SINE,
                                   .at_s = from_s,
                                   .width_s = to_s - from_s,
                                   .edge_s = p->s->shapes.luma_s,
                                   .frequency_hz = packet_hz (p->s, packets, i),
                                   .volts = volts });
    }
}

static void
paint_pulse_and_window (Painter *p)
{
  gboolean window = (p->signature & BW_LINE_WINDOWED) != 0;
  paint_grey (p, place_s (p, 0), place_s (p, WINDOW_FROM), 0);
  paint_grey (p, place_s (p, WINDOW_FROM), place_s (p, WINDOW_TO), window ? 1 : 0);
  paint_grey (p, place_s (p, WINDOW_TO), place_s (p, 1), 0);
  add_pulse (p, place_s (p, PULSE_PLACE));
}

/* Of an interlaced picture each horizontal line is in both fields, so that it does not flicker. */
static void
paint_crosshatch (Painter *p)
{
  gboolean crossed = (p->signature & BW_LINE_CROSSED) != 0;
  paint_grey (p, place_s (p, 0), place_s (p, 1), crossed ? 1 : 0);
  for (int i = 0; i < CROSS_COLUMNS && !crossed; i++)
    add_pulse (p, place_s (p, (i + 0.5) / CROSS_COLUMNS));
}

/* The picture of the line whose 0H is @at_s in the time of the features; none on a line without. */
void
bw_add_content (const BwSynthesis *s, BwConductor conductor, guint signature, double at_s,
                GArray *const layers[BW_N_LAYERS])
{
  static void (*const painters[BW_N_CONTENTS]) (Painter *p) = {
    [BW_CONTENT_BARS] = paint_bars,
    [BW_CONTENT_RAMP] = paint_ramp,
    [BW_CONTENT_MULTIBURST] = paint_multiburst,
    [BW_CONTENT_PULSE_AND_WINDOW] = paint_pulse_and_window,
    [BW_CONTENT_CROSSHATCH] = paint_crosshatch,
  };
  gboolean difference = conductor == BW_CONDUCTOR_PB || conductor == BW_CONDUCTOR_PR;
  Painter p = { .s = s, .conductor = conductor, .signature = signature, .layers = layers,
                .at_s = at_s };

  if (bw_conductor_is_sync_alone (conductor)
      || !bw_content_spans (s, signature, &p.from_s, &p.to_s))
    return;
  p.luma_s = difference ? s->shapes.difference_s : s->shapes.luma_s;
  bw_wire_colour (&s->form, conductor, &(BwRgb){ 0, 0, 0 }, &p.black);
  bw_wire_colour (&s->form, conductor, &(BwRgb){ 1, 1, 1 }, &p.white);
  painters[s->content](&p);
  finish (&p);
}
