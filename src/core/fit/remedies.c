/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/bench/match.h"

/* The words for remedies: the part to add or the setting to change, with its value. */

static const BwKind remedies[BW_N_REMEDIES] = {
  [BW_REMEDY_NONE] = { "none", N_ ("none") },
  [BW_REMEDY_TERMINATOR] = { "terminator", N_ ("75 Ω terminator at the input or its loop-through") },
  [BW_REMEDY_SWITCH_ON] = { "termination-on", N_ ("termination switch to 75 Ω") },
  [BW_REMEDY_SWITCH_OFF] = { "termination-off", N_ ("termination switch to high impedance") },
  [BW_REMEDY_UNLOAD_LOOP] = { "unload-loop", N_ ("take the 75 Ω load off the loop-through") },
  [BW_REMEDY_SERIES_RESISTOR] = { "series-resistor", N_ ("series resistor in the sync conductor") },
  [BW_REMEDY_VIDEO_PAD] = { "video-pad", N_ ("matched 75 Ω attenuator") },
  [BW_REMEDY_VIDEO_AMPLIFIER] = { "video-amplifier", N_ ("video amplifier") },
  [BW_REMEDY_SYNC_AMPLIFIER] = { "sync-amplifier", N_ ("sync amplifier") },
  [BW_REMEDY_SYNC_COMBINER] = { "sync-combiner", N_ ("sync combiner, composite sync from H and V") },
  [BW_REMEDY_SYNC_ADDER] = { "sync-adder", N_ ("sync adder, onto green or Y") },
  [BW_REMEDY_SYNC_MOVER] = { "sync-mover", N_ ("sync separator and adder, onto green or Y") },
  [BW_REMEDY_SYNC_SEPARATOR] = { "sync-separator", N_ ("sync separator") },
  [BW_REMEDY_SYNC_INVERTER] = { "sync-inverter", N_ ("sync inverter") },
  [BW_REMEDY_SYNC_RESHAPER] = { "sync-reshaper", N_ ("converter of tri-level and bi-level sync") },
  [BW_REMEDY_ENCODER] = { "encoder", N_ ("encoder") },
  [BW_REMEDY_DECODER] = { "decoder", N_ ("colour decoder") },
  [BW_REMEDY_TRANSCODER] = { "transcoder", N_ ("transcoder") },
  [BW_REMEDY_YC_MIXER] = { "yc-mixer", N_ ("mixer of Y and C into composite") },
  [BW_REMEDY_YC_SEPARATOR] = { "yc-separator", N_ ("separator of composite into Y and C") },
  [BW_REMEDY_LUMA_MATRIX] = { "luma-matrix", N_ ("matrix of R, G and B into luminance") },
  [BW_REMEDY_DISTRIBUTOR] = { "distributor", N_ ("distribution amplifier, luminance to R, G and B") },
  [BW_REMEDY_COLOUR_TRANSCODER] = { "colour-transcoder", N_ ("colour system transcoder") },
  [BW_REMEDY_SCAN_CONVERTER] = { "scan-converter", N_ ("scan converter") },
  [BW_REMEDY_COUPLING_CAPACITOR] = { "coupling-capacitor", N_ ("coupling capacitor in the lead") },
  [BW_REMEDY_CLAMP] = { "clamp", N_ ("clamp (d.c. restorer)") },
  [BW_REMEDY_BLACK_LEVEL] = { "black-level", N_ ("set the black level (setup switch or brightness)") },
  [BW_REMEDY_ASPECT_SWITCH] = { "aspect-switch", N_ ("aspect switch of the set") },
  [BW_REMEDY_SIZE] = { "size", N_ ("size control of the set") },
  [BW_REMEDY_CROSSED_LEAD] = { "crossed-lead", N_ ("lead wired from one 21-pin form to the other") },
};
const BwKindTable bw_remedies = { BW_N_REMEDIES, remedies };

/* In a word or two, for a cell of the table. */
static const BwKind shorts[BW_N_REMEDIES] = {
  [BW_REMEDY_NONE] = { "none", N_ ("none") },
  [BW_REMEDY_TERMINATOR] = { "terminator", N_ ("75 Ω terminator") },
  [BW_REMEDY_SWITCH_ON] = { "termination-on", N_ ("termination on") },
  [BW_REMEDY_SWITCH_OFF] = { "termination-off", N_ ("termination off") },
  [BW_REMEDY_UNLOAD_LOOP] = { "unload-loop", N_ ("unload loop-through") },
  [BW_REMEDY_SERIES_RESISTOR] = { "series-resistor", N_ ("in sync") },
  [BW_REMEDY_VIDEO_PAD] = { "video-pad", N_ ("attenuator") },
  [BW_REMEDY_VIDEO_AMPLIFIER] = { "video-amplifier", N_ ("video amplifier") },
  [BW_REMEDY_SYNC_AMPLIFIER] = { "sync-amplifier", N_ ("sync amplifier") },
  [BW_REMEDY_SYNC_COMBINER] = { "sync-combiner", N_ ("sync combiner") },
  [BW_REMEDY_SYNC_ADDER] = { "sync-adder", N_ ("sync adder") },
  [BW_REMEDY_SYNC_MOVER] = { "sync-mover", N_ ("sync separator, adder") },
  [BW_REMEDY_SYNC_SEPARATOR] = { "sync-separator", N_ ("sync separator") },
  [BW_REMEDY_SYNC_INVERTER] = { "sync-inverter", N_ ("sync inverter") },
  [BW_REMEDY_SYNC_RESHAPER] = { "sync-reshaper", N_ ("sync converter") },
  [BW_REMEDY_ENCODER] = { "encoder", N_ ("encoder") },
  [BW_REMEDY_DECODER] = { "decoder", N_ ("colour decoder") },
  [BW_REMEDY_TRANSCODER] = { "transcoder", N_ ("transcoder") },
  [BW_REMEDY_YC_MIXER] = { "yc-mixer", N_ ("Y/C mixer") },
  [BW_REMEDY_YC_SEPARATOR] = { "yc-separator", N_ ("Y/C separator") },
  [BW_REMEDY_LUMA_MATRIX] = { "luma-matrix", N_ ("luminance matrix") },
  [BW_REMEDY_DISTRIBUTOR] = { "distributor", N_ ("distributor") },
  [BW_REMEDY_COLOUR_TRANSCODER] = { "colour-transcoder", N_ ("colour transcoder") },
  [BW_REMEDY_SCAN_CONVERTER] = { "scan-converter", N_ ("scan converter") },
  [BW_REMEDY_COUPLING_CAPACITOR] = { "coupling-capacitor", N_ ("capacitor") },
  [BW_REMEDY_CLAMP] = { "clamp", N_ ("clamp") },
  [BW_REMEDY_BLACK_LEVEL] = { "black-level", N_ ("black level") },
  [BW_REMEDY_ASPECT_SWITCH] = { "aspect-switch", N_ ("aspect switch") },
  [BW_REMEDY_SIZE] = { "size", N_ ("size controls") },
  [BW_REMEDY_CROSSED_LEAD] = { "crossed-lead", N_ ("crossed lead") },
};
static const BwKindTable remedies_short = { BW_N_REMEDIES, shorts };

static char *
series_resistor (const BwCase *c, char mark)
{
  BwSyncMatch match;
  bw_match_own_sync (c->source, c->input, &match);
  const BwSyncWay *way = &match.way[0];
  const BwSyncAttenuator *it = &way->attenuator;
  g_autofree char *ideal = bw_quantity_format (it->exact_ohm, BW_DIMENSION_RESISTANCE, 4, mark);
  g_autofree char *value = bw_quantity_format (it->resistor_ohm, BW_DIMENSION_RESISTANCE, 3, mark);
  g_autofree char *wanted = bw_quantity_format (it->wanted_v, BW_DIMENSION_VOLTAGE, 3, mark);
  g_autofree char *level = bw_quantity_format (it->level_v, BW_DIMENSION_VOLTAGE, 3, mark);
  if (way->change == BW_LOAD_SWITCH && !bw_load_is_one (way->load_ohm))
    return g_strdup_printf (_ ("series resistor of %s at the source's end of the sync lead, and "
                               "the termination switch to high impedance: %s (exactly %s for %s)"),
                            value, level, ideal, wanted);
  if (way->change != BW_LOAD_AS_IT_IS)
    return g_strdup_printf (_ ("series resistor of %s at the source's end of the sync lead, and a "
                               "75 Ω terminator at the input: %s (exactly %s for %s)"),
                            value, level, ideal, wanted);
  return g_strdup_printf (_ ("series resistor of %s at the source's end of the sync lead: %s "
                             "(exactly %s for %s)"),
                          value, level, ideal, wanted);
}

/* "encoder, RGB to composite" */
static char *
converter (const BwFinding *f, const BwCase *c)
{
  guint wanted = f->remedy.kind == BW_REMEDY_ENCODER
                     ? BW_BIT (BW_SIGNAL_YC) | BW_BIT (BW_SIGNAL_COMPOSITE)
                     : BW_BIT (BW_SIGNAL_RGB) | BW_BIT (BW_SIGNAL_COMPONENT);
  guint to = 0;
  while (to < BW_N_SIGNALS - 1 && !(c->input->signals & wanted & BW_BIT (to)))
    to++;
  return g_strdup_printf (_ ("%s, %s to %s"), bw_kind_label (&bw_remedies, f->remedy.kind),
                          bw_kind_label (&bw_signals, c->source->signal),
                          bw_kind_label (&bw_signals, to));
}

static char *
gain (const BwFinding *f, const char *part, char mark)
{
  double ratio_db = 20 * log10 (f->remedy.value);
  char text[32];
  g_ascii_formatd (text, sizeof text, "%+.1f", ratio_db);
  if (mark != '.')
    g_strdelimit (text, ".", mark);
  if (f->remedy.kind == BW_REMEDY_VIDEO_PAD && f->extra[2] > 0)
    return g_strdup_printf (_ ("%s: %s dB, and one 75 Ω load at the end of the line"), part, text);
  return g_strdup_printf (_ ("%s: %s dB"), part, text);
}

static char *
size (const BwFinding *f, char mark)
{
  if (f->reason == BW_REASON_OVERSCANNED)
    return g_strdup (_ ("underscan switch if the set has one, else width and height controls: bring "
                        "the whole picture inside the glass"));
  g_autofree char *share = bw_quantity_format (f->remedy.value, BW_DIMENSION_FRACTION, 3, mark);
  return f->extra[2] > 0 ? g_strdup_printf (_ ("height control: set the height to %s"), share)
                         : g_strdup_printf (_ ("width control: set the width to %s"), share);
}

/**
 * bw_finding_remedy:
 * @finding: a finding of @fit
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (nullable): the part or setting that cures the finding's rule, with its
 * value; %NULL if none is needed or none helps
 */
char *
bw_finding_remedy (const BwFinding *finding, const BwFit *fit G_GNUC_UNUSED, const BwCase *c,
                   char mark)
{
  const char *part = bw_kind_label (&bw_remedies, finding->remedy.kind);

  switch (finding->remedy.kind)
    {
    case BW_REMEDY_NONE:
      return NULL;
    case BW_REMEDY_SERIES_RESISTOR:
      return series_resistor (c, mark);
    case BW_REMEDY_ENCODER:
    case BW_REMEDY_DECODER:
    case BW_REMEDY_TRANSCODER:
      return converter (finding, c);
    case BW_REMEDY_VIDEO_PAD:
    case BW_REMEDY_VIDEO_AMPLIFIER:
      return gain (finding, part, mark);
    case BW_REMEDY_SIZE:
      return size (finding, mark);
    default:
      return g_strdup (part);
    }
}

/**
 * bw_finding_remedy_short:
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (nullable): the remedy in a word or two, for a cell of a table: "1.1 kΩ
 * in sync"; %NULL if there is none
 */
char *
bw_finding_remedy_short (const BwFinding *finding, char mark)
{
  const char *words = bw_kind_label (&remedies_short, finding->remedy.kind);
  if (finding->remedy.kind == BW_REMEDY_NONE)
    return NULL;
  if (finding->remedy.kind != BW_REMEDY_SERIES_RESISTOR)
    return g_strdup (words);
  double preferred_ohm = bw_preferred_value (finding->remedy.value, BW_USUAL_SERIES);
  g_autofree char *value = bw_quantity_format (preferred_ohm, BW_DIMENSION_RESISTANCE, 3, mark);
  return g_strdup_printf ("%s %s", value, words);
}
