/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "kinds.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#define TABLE(name, entries)                                                                      \
  const BwKindTable name = { G_N_ELEMENTS (entries), entries }

static const BwKind signals[BW_N_SIGNALS] = {
  [BW_SIGNAL_RGB] = { "rgb", N_ ("RGB") },
  [BW_SIGNAL_COMPONENT] = { "component", N_ ("component (Y Pb Pr)") },
  [BW_SIGNAL_YC] = { "yc", N_ ("Y/C (S-video)") },
  [BW_SIGNAL_COMPOSITE] = { "composite", N_ ("composite") },
  [BW_SIGNAL_LUMA] = { "luminance", N_ ("luminance only") },
};
TABLE (bw_signals, signals);

static const BwKind sync_kinds[BW_N_SYNC_KINDS] = {
  [BW_SYNC_SEPARATE] = { "separate", N_ ("separate H and V") },
  [BW_SYNC_COMPOSITE] = { "composite-sync", N_ ("composite sync") },
  [BW_SYNC_ON_GREEN] = { "on-green", N_ ("sync on green") },
  [BW_SYNC_ON_Y] = { "on-y", N_ ("sync on Y") },
  [BW_SYNC_IN_VIDEO] = { "in-video", N_ ("sync in the video") },
};
TABLE (bw_sync_kinds, sync_kinds);

static const BwKind sync_shapes[BW_N_SHAPES] = {
  [BW_SHAPE_BILEVEL] = { "bi-level", N_ ("bi-level") },
  [BW_SHAPE_TRILEVEL] = { "tri-level", N_ ("tri-level") },
};
TABLE (bw_sync_shapes, sync_shapes);

static const BwKind polarities[BW_N_POLARITIES] = {
  [BW_POLARITY_NEGATIVE] = { "negative", N_ ("negative") },
  [BW_POLARITY_POSITIVE] = { "positive", N_ ("positive") },
};
TABLE (bw_polarities, polarities);

static const BwKind scans[BW_N_SCANS] = {
  [BW_SCAN_PROGRESSIVE] = { "progressive", N_ ("progressive") },
  [BW_SCAN_INTERLACED] = { "interlaced", N_ ("interlaced") },
};
TABLE (bw_scans, scans);

static const BwKind colour_systems[BW_N_SYSTEMS] = {
  [BW_SYSTEM_NONE] = { "none", N_ ("none (monochrome)") },
  [BW_SYSTEM_NTSC_M] = { "ntsc-m", N_ ("NTSC M") },
  [BW_SYSTEM_NTSC_J] = { "ntsc-j", N_ ("NTSC Japan") },
  [BW_SYSTEM_NTSC_443] = { "ntsc-4.43", N_ ("NTSC 4.43") },
  [BW_SYSTEM_PAL_B] = { "pal-b", N_ ("PAL B/D/G/H/I") },
  [BW_SYSTEM_PAL_M] = { "pal-m", N_ ("PAL M") },
  [BW_SYSTEM_PAL_N] = { "pal-n", N_ ("PAL N") },
  [BW_SYSTEM_PAL_60] = { "pal-60", N_ ("525-line PAL 4.43") },
  [BW_SYSTEM_SECAM_L] = { "secam-l", N_ ("SECAM") },
};
TABLE (bw_colour_systems, colour_systems);

static const BwKind masks[BW_N_MASKS] = {
  [BW_MASK_GRILLE] = { "grille", N_ ("aperture grille") },
  [BW_MASK_SLOT] = { "slot", N_ ("slot mask") },
  [BW_MASK_DOT] = { "dot", N_ ("dot mask") },
  [BW_MASK_MONO] = { "mono", N_ ("monochrome") },
};
TABLE (bw_masks, masks);

static const BwKind terminations[BW_N_TERMINATIONS] = {
  [BW_TERMINATION_FIXED] = { "fixed", N_ ("75 Ω, fixed") },
  [BW_TERMINATION_SWITCHED] = { "switched", N_ ("75 Ω, switched") },
  [BW_TERMINATION_NONE] = { "none", N_ ("none (high impedance)") },
};
TABLE (bw_terminations, terminations);

static const BwKind couplings[BW_N_COUPLINGS] = {
  [BW_COUPLING_DC] = { "dc", N_ ("d.c.") },
  [BW_COUPLING_AC] = { "ac", N_ ("a.c.") },
};
TABLE (bw_couplings, couplings);

static const BwKind clamps[BW_N_CLAMPS] = {
  [BW_CLAMP_BACK_PORCH] = { "back-porch", N_ ("a.c. coupled, clamped on the back porch") },
  [BW_CLAMP_NONE_AC] = { "none-ac", N_ ("a.c. coupled, no clamp") },
  [BW_CLAMP_NONE_DC] = { "none-dc", N_ ("d.c. coupled, no clamp") },
};
TABLE (bw_clamps, clamps);

static const BwKind blankings[BW_N_BLANKINGS] = {
  [BW_BLANKING_NOT_SAID] = { "not-said", N_ ("not said") },
  [BW_BLANKING_BLACK] = { "black", N_ ("black") },
  [BW_BLANKING_BORDER] = { "border", N_ ("colour of the border") },
  [BW_BLANKING_PICTURE] = { "picture", N_ ("picture or colour") },
};
TABLE (bw_blankings, blankings);

static const BwKind connectors[BW_N_CONNECTORS] = {
  [BW_CONNECTOR_BNC] = { "bnc", N_ ("BNC") },
  [BW_CONNECTOR_PHONO] = { "phono", N_ ("phono") },
  [BW_CONNECTOR_MINI_DIN_4] = { "mini-din-4", N_ ("4-pin mini-DIN") },
  [BW_CONNECTOR_DE_15] = { "de-15", N_ ("15-pin DE-15") },
  [BW_CONNECTOR_PERITELEVISION] = { "peritelevision", N_ ("21-pin peritelevision") },
  [BW_CONNECTOR_JAPANESE_21] = { "japanese-21", N_ ("21-pin Japanese RGB") },
  [BW_CONNECTOR_DIN_6] = { "din-6", N_ ("6-pin DIN") },
  [BW_CONNECTOR_DE_9] = { "de-9", N_ ("9-pin DE-9") },
};
TABLE (bw_connectors, connectors);

static const BwKind pin_uses[BW_N_PIN_USES] = {
  [BW_CONDUCTOR_R] = { "r", N_ ("R") },
  [BW_CONDUCTOR_G] = { "g", N_ ("G") },
  [BW_CONDUCTOR_B] = { "b", N_ ("B") },
  [BW_CONDUCTOR_Y] = { "y", N_ ("Y") },
  [BW_CONDUCTOR_PB] = { "pb", N_ ("Pb") },
  [BW_CONDUCTOR_PR] = { "pr", N_ ("Pr") },
  [BW_CONDUCTOR_C] = { "c", N_ ("C") },
  [BW_CONDUCTOR_VIDEO] = { "video", N_ ("Video") },
  [BW_CONDUCTOR_SYNC] = { "sync", N_ ("Sync") },
  [BW_CONDUCTOR_H] = { "h", N_ ("H") },
  [BW_CONDUCTOR_V] = { "v", N_ ("V") },
  [BW_PIN_USE_GROUND] = { "ground", N_ ("ground") },
  [BW_PIN_USE_SUPPLY] = { "supply", N_ ("supply") },
  [BW_PIN_USE_SOUND] = { "sound", N_ ("sound") },
  [BW_PIN_USE_OTHER] = { "other", N_ ("other, or not connected") },
};
TABLE (bw_pin_uses, pin_uses);
const BwKindTable bw_conductors = { BW_N_CONDUCTORS, pin_uses };

static const BwKind stated_loads[BW_N_LOADS] = {
  [BW_LOAD_75_OHM] = { "75-ohm", N_ ("across 75 Ω") },
  [BW_LOAD_OPEN] = { "open", N_ ("without load") },
};
TABLE (bw_stated_loads, stated_loads);

static const BwKind sync_polarities[BW_N_SYNC_POLARITIES] = {
  [BW_SYNC_POLARITY_STANDARD] = { "standard", N_ ("as the raster says") },
  [BW_SYNC_POLARITY_NEGATIVE] = { "negative", N_ ("negative") },
  [BW_SYNC_POLARITY_POSITIVE] = { "positive", N_ ("positive") },
};
TABLE (bw_sync_polarities, sync_polarities);

/**
 * bw_kind_find:
 * @value: (out): the kind whose id is @id
 *
 * Returns: %FALSE, leaving @value alone, if no kind of @table has this id
 */
gboolean
bw_kind_find (const BwKindTable *table, const char *id, guint *value)
{
  g_return_val_if_fail (table != NULL && id != NULL && value != NULL, FALSE);
  for (guint i = 0; i < table->n; i++)
    if (strcmp (table->at[i].id, id) == 0)
      {
        *value = i;
        return TRUE;
      }
  return FALSE;
}

/**
 * bw_kind_id:
 *
 * Returns: (transfer none): the id of kind @value, as files write it
 */
const char *
bw_kind_id (const BwKindTable *table, guint value)
{
  g_return_val_if_fail (value < table->n, "");
  return table->at[value].id;
}

/**
 * bw_kind_label:
 *
 * @value: one of the kinds, or their number for one that is not known
 *
 * Returns: (transfer none): the word for kind @value on screen, translated
 */
const char *
bw_kind_label (const BwKindTable *table, guint value)
{
  g_return_val_if_fail (table != NULL && value <= table->n, "");
  return value < table->n ? _ (table->at[value].label) : _ ("not known");
}

/**
 * bw_kind_set_count:
 *
 * Returns: how many kinds are in @set, which has a bit for each
 */
guint
bw_kind_set_count (guint set)
{
  guint n = 0;
  for (; set != 0; set &= set - 1)
    n++;
  return n;
}

/**
 * bw_kind_set_labels:
 *
 * Returns: (transfer full): the translated words for the members of @set, set apart by commas;
 * "nothing" for the empty set
 */
char *
bw_kind_set_labels (const BwKindTable *table, guint set)
{
  g_return_val_if_fail (table != NULL, NULL);
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < table->n; i++)
    if (set & BW_BIT (i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? ", " : "", bw_kind_label (table, i));
  if (text->len == 0)
    g_string_append (text, _ ("nothing"));
  return g_string_free (text, FALSE);
}

/**
 * bw_kind_set_ids:
 *
 * Returns: (transfer full): the ids of the members of @set, set apart by @separator
 */
char *
bw_kind_set_ids (const BwKindTable *table, guint set, const char *separator)
{
  g_return_val_if_fail (table != NULL && separator != NULL, NULL);
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < table->n; i++)
    if (set & BW_BIT (i))
      g_string_append_printf (text, "%s%s", text->len > 0 ? separator : "", bw_kind_id (table, i));
  return g_string_free (text, FALSE);
}

/**
 * bw_kind_ids:
 *
 * Returns: (transfer full): all ids of @table, set apart by @separator, for error messages
 */
char *
bw_kind_ids (const BwKindTable *table, const char *separator)
{
  g_return_val_if_fail (table != NULL && separator != NULL, NULL);
  GString *text = g_string_new (NULL);
  for (guint i = 0; i < table->n; i++)
    g_string_append_printf (text, "%s%s", i > 0 ? separator : "", table->at[i].id);
  return g_string_free (text, FALSE);
}

/**
 * bw_signal_syncs:
 *
 * Returns: the set of sync kinds that a signal of this kind can come with
 */
guint
bw_signal_syncs (BwSignal signal)
{
  guint own = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE);
  switch (signal)
    {
    case BW_SIGNAL_RGB: /* with composite video as its sync on the 21-pin connectors */
      return own | BW_BIT (BW_SYNC_ON_GREEN) | BW_BIT (BW_SYNC_IN_VIDEO);
    case BW_SIGNAL_COMPONENT:
      return own | BW_BIT (BW_SYNC_ON_Y);
    case BW_SIGNAL_YC:
    case BW_SIGNAL_COMPOSITE:
    case BW_SIGNAL_LUMA:
    case BW_N_SIGNALS:
    default:
      return own | BW_BIT (BW_SYNC_IN_VIDEO);
    }
}

/**
 * bw_signal_is_coded:
 * @signal: a BwSignal, or their number for one that is not known
 *
 * Returns: whether colour comes on a subcarrier, where there is colour: composite and Y/C
 */
gboolean
bw_signal_is_coded (guint signal)
{
  return signal == BW_SIGNAL_COMPOSITE || signal == BW_SIGNAL_YC;
}

/**
 * bw_sync_has_own_conductor:
 *
 * Returns: whether sync of this kind comes on a conductor that carries no picture
 */
gboolean
bw_sync_has_own_conductor (BwSyncKind sync)
{
  return sync == BW_SYNC_SEPARATE || sync == BW_SYNC_COMPOSITE;
}

/**
 * bw_signal_usual_sync:
 *
 * Returns: the sync that @signal comes with where none is named
 */
BwSyncKind
bw_signal_usual_sync (BwSignal signal)
{
  switch (signal)
    {
    case BW_SIGNAL_RGB:
      return BW_SYNC_COMPOSITE;
    case BW_SIGNAL_COMPONENT:
      return BW_SYNC_ON_Y;
    case BW_SIGNAL_YC:
    case BW_SIGNAL_COMPOSITE:
    case BW_SIGNAL_LUMA:
    case BW_N_SIGNALS:
    default:
      return BW_SYNC_IN_VIDEO;
    }
}
