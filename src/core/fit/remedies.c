/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/bench/match.h"
#include "mains.h"

/* The table of remedies, made of their list, and their words: the part to add or the setting to
 * change, with its value. A member that is missing here, or empty in the list, is an error. */
#pragma GCC diagnostic error "-Wmissing-field-initializers"

static const BwKind kinds[] = {
#define KIND(NAME, id, sort, value, says, words, brief) { id, words },
  BW_REMEDY_LIST (KIND)
#undef KIND
};
const BwKindTable bw_remedies = { BW_N_REMEDIES, kinds };

typedef enum
{
  REMEDY_NOTHING,
  REMEDY_PART,
  REMEDY_SETTING
} RemedySort;

/* How the value of a remedy is written. */
typedef enum
{
  VALUE_NONE,
  VALUE_OHM,     /* a resistance: the nearest preferred value */
  VALUE_DECIBEL, /* a ratio of voltages, with its sign */
  VALUE_SHARE    /* a part of the whole, in per cent */
} RemedyValue;

/* The remedy of @f with its value, for which @value stands. */
typedef char *(*RemedySaysFunc) (const BwFinding *f, const BwCase *c, const char *value, char mark);

typedef struct
{
  RemedySort sort;
  RemedyValue value;
  RemedySaysFunc says;
  const char *brief;
} RemedyDescriptor;

static const char *
part_of (const BwFinding *f)
{
  return bw_kind_label (&bw_remedies, f->remedy.kind);
}

static char *
says_plain (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  return g_strdup (part_of (f));
}

static char *
says_series_resistor (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  g_assert (f->rule == BW_RULE_SYNC_LEVEL || f->rule == BW_RULE_SYNC_DRIVE);
  if (f->rule == BW_RULE_SYNC_DRIVE)
    return g_strdup (_ ("the series resistor that brings the level down"));

  const BwLevelFigures *figures = &f->as.sync_level;
  BwSyncMatch match;
  bw_match_own_sync (c->source, c->input, &match);
  double level_v = match.way[0].attenuator.level_v;
  g_autofree char *level = bw_quantity_format (level_v, BW_DIMENSION_VOLTAGE, 3, mark);
  g_autofree char *ideal = bw_quantity_format (f->remedy.value, BW_DIMENSION_RESISTANCE, 4, mark);
  g_autofree char *wanted = bw_quantity_format (figures->wanted_v, BW_DIMENSION_VOLTAGE, 3, mark);

  if (figures->with_load)
    return g_strdup_printf (_ ("series resistor of %1$s at the source's end of the sync lead, and "
                               "a 75 Ω terminator at the input: %2$s (exactly %3$s for %4$s)"),
                            value, level, ideal, wanted);
  if (figures->without_load)
    return g_strdup_printf (_ ("series resistor of %1$s at the source's end of the sync lead, and "
                               "the termination switch to high impedance: %2$s (exactly %3$s for "
                               "%4$s)"),
                            value, level, ideal, wanted);
  return g_strdup_printf (_ ("series resistor of %1$s at the source's end of the sync lead: %2$s "
                             "(exactly %3$s for %4$s)"),
                          value, level, ideal, wanted);
}

static char *
says_converter (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  guint wanted = f->remedy.kind == BW_REMEDY_ENCODER
                     ? BW_BIT (BW_SIGNAL_YC) | BW_BIT (BW_SIGNAL_COMPOSITE)
                     : BW_BIT (BW_SIGNAL_RGB) | BW_BIT (BW_SIGNAL_COMPONENT);
  guint to = 0;
  while (to < BW_N_SIGNALS - 1 && !(c->input->signals & wanted & BW_BIT (to)))
    to++;
  /* Translators: a converter and the kinds of signal: "encoder, RGB to composite" */
  return g_strdup_printf (_ ("%1$s, %2$s to %3$s"), part_of (f),
                          bw_kind_label (&bw_signals, c->source->signal),
                          bw_kind_label (&bw_signals, to));
}

static char *
says_gain (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  gboolean with_load = f->rule == BW_RULE_SYNC_LEVEL ? f->as.sync_level.with_load
                                                     : f->as.video_level.with_load;
  if (with_load)
    return g_strdup_printf (_ ("%1$s: %2$s, and one 75 Ω load at the end of the line"),
                            part_of (f), value);
  /* Translators: an attenuator or amplifier and what it does: "video amplifier: +6.0 dB" */
  return g_strdup_printf (_ ("%1$s: %2$s"), part_of (f), value);
}

/* Where it goes: the loop-through carries video alone. */
static char *
says_terminator (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  gboolean own = f->rule == BW_RULE_SYNC_LEVEL && f->as.sync_level.own;
  if (own)
    return g_strdup (_ ("75 Ω terminator at the sync input"));
  return g_strdup (c->input->loop_through == TRUE ? _ ("75 Ω terminator at the loop-through")
                                          : _ ("75 Ω terminator at the input"));
}

/* Its size, if the rated current is known: bw_mains_judge(). */
static char *
says_transformer (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  return bw_mains_transformer_words (c->monitor, c->supply_v, mark);
}

/* Which resistors it is made of, and at which end it stands. */
static char *
says_minimum_loss (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  gboolean at_input = f->rule == BW_RULE_TERMINATION || f->reason == BW_REASON_CURED_BY_TERMINATION;
  double input_ohm = bw_input_load_ohm (c->input, FALSE), series_ohm = 0, shunt_ohm = 0;
  BwNetwork pad;

  if (at_input ? bw_match_end (BW_END_MINIMUM_LOSS, 1, BW_VIDEO_OHM, input_ohm, &pad)
               : bw_match_pad (c->source, BW_PAD_MINIMUM_LOSS, 0, &pad))
    for (guint i = 0; i < pad.n; i++)
      *(pad.at[i].place == BW_PLACE_SERIES ? &series_ohm : &shunt_ohm)
          = bw_preferred_value (pad.at[i].ohm, BW_USUAL_SERIES);
  g_autofree char *series = bw_quantity_format (series_ohm, BW_DIMENSION_RESISTANCE, 3, mark);
  g_autofree char *shunt = bw_quantity_format (shunt_ohm, BW_DIMENSION_RESISTANCE, 3, mark);
  if (at_input)
    return g_strdup_printf (_ ("%1$s at the input's end of the lead, %2$s in series and %3$s to the "
                               "return: %4$s"),
                            part_of (f), series, shunt, value);
  return g_strdup_printf (_ ("%1$s at the source's end of the lead, %2$s in series and %3$s to the "
                             "return: %4$s"),
                          part_of (f), series, shunt, value);
}

static char *
says_matching (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  g_autofree char *ideal = bw_quantity_format (f->remedy.value, BW_DIMENSION_RESISTANCE, 4, mark);
  if (f->remedy.kind == BW_REMEDY_MATCHING_RESISTOR)
    return g_strdup_printf (_ ("matching resistor of %1$s in series at the input's end of the lead (exactly "
                               "%2$s): the lead then ends in 75 Ω"),
                            value, ideal);
  return g_strdup_printf (_ ("shunt resistor of %1$s across the input (exactly %2$s): the lead then ends in "
                             "75 Ω"),
                          value, ideal);
}

static char *
says_size (const BwFinding *f, const BwCase *c, const char *value, char mark)
{
  g_assert (f->rule == BW_RULE_VISIBLE_AREA || f->rule == BW_RULE_ASPECT);

  if (f->reason == BW_REASON_OVERSCANNED)
    return g_strdup (_ ("underscan switch if the set has one, else width and height controls: "
                        "bring the whole picture inside the glass"));
  return f->as.aspect.sets_height
             ? g_strdup_printf (_ ("height control: set the height to %s"), value)
             : g_strdup_printf (_ ("width control: set the width to %s"), value);
}

static const RemedyDescriptor descriptors[] = {
#define DESCRIPTOR(NAME, id, sort, value, says, words, brief)                                      \
  { REMEDY_##sort, VALUE_##value, says_##says, brief },
  BW_REMEDY_LIST (DESCRIPTOR)
#undef DESCRIPTOR
};

/* A ratio of voltages in decibels, with its sign. */
static char *
decibel_text (double ratio, char mark)
{
  char text[32];
  g_ascii_formatd (text, sizeof text, "%+.1f", 20 * log10 (ratio));
  if (mark != '.')
    g_strdelimit (text, ".", mark);
  return g_strdup_printf (_ ("%s dB"), text);
}

/* The value of the remedy with its unit; empty if it has none. */
static char *
value_text (const BwFinding *f, char mark)
{
  switch (descriptors[f->remedy.kind].value)
    {
    case VALUE_OHM:
      return bw_quantity_format (bw_preferred_value (f->remedy.value, BW_USUAL_SERIES),
                                 BW_DIMENSION_RESISTANCE, 3, mark);
    case VALUE_DECIBEL:
      return decibel_text (f->remedy.value, mark);
    case VALUE_SHARE:
      return bw_quantity_format (f->remedy.value, BW_DIMENSION_FRACTION, 3, mark);
    case VALUE_NONE:
    default:
      return g_strdup ("");
    }
}

/**
 * bw_remedy_is_setting:
 *
 * Returns: whether @kind is a setting of what is on the bench, and not a part that is added
 */
gboolean
bw_remedy_is_setting (BwRemedyKind kind)
{
  g_return_val_if_fail (kind < BW_N_REMEDIES, FALSE);
  return descriptors[kind].sort == REMEDY_SETTING;
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
bw_finding_remedy (const BwFinding *finding, const BwFit *fit, const BwCase *c, char mark)
{
  g_return_val_if_fail (finding != NULL && finding->remedy.kind < BW_N_REMEDIES, NULL);
  g_return_val_if_fail (fit != NULL && c != NULL, NULL);

  if (finding->remedy.kind == BW_REMEDY_NONE)
    return NULL;
  g_autofree char *value = value_text (finding, mark);
  return descriptors[finding->remedy.kind].says (finding, c, value, mark);
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
  g_return_val_if_fail (finding != NULL && finding->remedy.kind < BW_N_REMEDIES, NULL);

  const RemedyDescriptor *descriptor = &descriptors[finding->remedy.kind];
  if (finding->remedy.kind == BW_REMEDY_NONE)
    return NULL;
  if (descriptor->value != VALUE_OHM) /* only resistors are told apart by their value alone */
    return g_strdup (_ (descriptor->brief));
  g_autofree char *value = value_text (finding, mark);
  /* Translators: the value of a resistor, and where it stands: "1.1 kΩ in sync" */
  return g_strdup_printf (_ ("%1$s %2$s"), value, _ (descriptor->brief));
}
