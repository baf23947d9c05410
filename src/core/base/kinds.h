/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The kinds of things in the trade, each with the id that files use and the word that screens use.
 * A set of kinds is a guint with bit BW_BIT (kind) for each member. */

#define BW_BIT(kind) (1u << (kind))

typedef enum
{
  BW_SIGNAL_RGB,
  BW_SIGNAL_COMPONENT, /* Y Pb Pr */
  BW_SIGNAL_YC,        /* S-video */
  BW_SIGNAL_COMPOSITE,
  BW_SIGNAL_LUMA, /* luminance only, with its sync */
  BW_N_SIGNALS
} BwSignal;

typedef enum
{
  BW_SYNC_SEPARATE,  /* H and V, each on its own conductor */
  BW_SYNC_COMPOSITE, /* composite sync on its own conductor */
  BW_SYNC_ON_GREEN,
  BW_SYNC_ON_Y,     /* on Y of component */
  BW_SYNC_IN_VIDEO, /* in composite video, Y of Y/C or luminance */
  BW_N_SYNC_KINDS
} BwSyncKind;

typedef enum
{
  BW_SHAPE_BILEVEL,
  BW_SHAPE_TRILEVEL,
  BW_N_SHAPES
} BwSyncShape;

typedef enum
{
  BW_POLARITY_NEGATIVE,
  BW_POLARITY_POSITIVE,
  BW_N_POLARITIES
} BwPolarity;

typedef enum
{
  BW_SCAN_PROGRESSIVE,
  BW_SCAN_INTERLACED,
  BW_N_SCANS
} BwScan;

typedef enum
{
  BW_SYSTEM_NONE, /* no colour subcarrier: RGB, component, monochrome */
  BW_SYSTEM_NTSC_M,
  BW_SYSTEM_NTSC_J,
  BW_SYSTEM_NTSC_443,
  BW_SYSTEM_PAL_B, /* PAL B, D, G, H, I: one subcarrier */
  BW_SYSTEM_PAL_M,
  BW_SYSTEM_PAL_N,
  BW_SYSTEM_PAL_60,
  BW_SYSTEM_SECAM_L,
  BW_N_SYSTEMS
} BwColourSystem;

typedef enum
{
  BW_MASK_GRILLE, /* pitch quoted along the horizontal */
  BW_MASK_SLOT,   /* pitch quoted along the horizontal */
  BW_MASK_DOT,    /* pitch quoted on the diagonal of the triad */
  BW_MASK_MONO,   /* no mask */
  BW_N_MASKS
} BwMask;

typedef enum
{
  BW_TERMINATION_FIXED, /* 75 ohm, always */
  BW_TERMINATION_SWITCHED,
  BW_TERMINATION_NONE, /* high impedance */
  BW_N_TERMINATIONS
} BwTermination;

typedef enum
{
  BW_COUPLING_DC,
  BW_COUPLING_AC,
  BW_N_COUPLINGS
} BwCoupling;

typedef enum
{
  BW_CLAMP_BACK_PORCH, /* a.c. coupled, black restored by a clamp: source d.c. does not matter */
  BW_CLAMP_NONE_AC,    /* a.c. coupled without a clamp */
  BW_CLAMP_NONE_DC,    /* d.c. coupled through */
  BW_N_CLAMPS
} BwClamp;

typedef enum
{
  BW_CONNECTOR_BNC, /* one for each conductor */
  BW_CONNECTOR_PHONO, /* one for each conductor */
  BW_CONNECTOR_MINI_DIN_4,
  BW_CONNECTOR_DE_15,
  BW_CONNECTOR_PERITELEVISION, /* 21-pin, EN 50049-1 / IEC 60933-1 */
  BW_CONNECTOR_JAPANESE_21,    /* 21-pin RGB, same shell, other pins */
  BW_CONNECTOR_DIN_6,
  BW_CONNECTOR_DE_9,
  BW_N_CONNECTORS
} BwConnector;

/* The conductors of a video lead, each with its own return. */
typedef enum
{
  BW_CONDUCTOR_R,
  BW_CONDUCTOR_G,
  BW_CONDUCTOR_B,
  BW_CONDUCTOR_Y,
  BW_CONDUCTOR_PB,
  BW_CONDUCTOR_PR,
  BW_CONDUCTOR_C,
  BW_CONDUCTOR_VIDEO, /* composite, or luminance with its sync */
  BW_CONDUCTOR_SYNC,  /* composite sync alone */
  BW_CONDUCTOR_H,
  BW_CONDUCTOR_V,
  BW_N_CONDUCTORS
} BwConductor;

/* What a pin carries: a BwConductor, or one of these. */
typedef enum
{
  BW_PIN_USE_GROUND = BW_N_CONDUCTORS,
  BW_PIN_USE_SUPPLY,
  BW_PIN_USE_SOUND,
  BW_PIN_USE_OTHER, /* control, data, or not connected: a lead leaves it open */
  BW_N_PIN_USES
} BwPinUse;

/* What stands in the blanking of a source. */
typedef enum
{
  BW_BLANKING_NOT_SAID,
  BW_BLANKING_BLACK,
  BW_BLANKING_BORDER, /* the colour of its border */
  BW_BLANKING_PICTURE, /* picture, or another colour */
  BW_N_BLANKINGS
} BwBlanking;

typedef enum
{
  BW_LOAD_75_OHM, /* the stated level is across 75 ohm */
  BW_LOAD_OPEN,   /* the stated level is without load, as for logic levels */
  BW_N_LOADS
} BwStatedLoad;

typedef enum
{
  BW_SYNC_POLARITY_STANDARD, /* separate sync as the raster says; composite sync negative */
  BW_SYNC_POLARITY_NEGATIVE,
  BW_SYNC_POLARITY_POSITIVE,
  BW_N_SYNC_POLARITIES
} BwSyncPolarity;

/**
 * BwKind:
 * @id: the word in files and on the command line
 * @label: the word on screen, to be translated with bw_kind_label()
 */
typedef struct
{
  const char *id;
  const char *label;
} BwKind;

/**
 * BwKindTable:
 *
 * The kinds of one enumeration, in its order.
 */
typedef struct
{
  guint n;
  const BwKind *at;
} BwKindTable;

extern const BwKindTable bw_signals;
extern const BwKindTable bw_sync_kinds;
extern const BwKindTable bw_sync_shapes;
extern const BwKindTable bw_polarities;
extern const BwKindTable bw_scans;
extern const BwKindTable bw_colour_systems;
extern const BwKindTable bw_masks;
extern const BwKindTable bw_terminations;
extern const BwKindTable bw_couplings;
extern const BwKindTable bw_clamps;
extern const BwKindTable bw_blankings;
extern const BwKindTable bw_connectors;
extern const BwKindTable bw_conductors;
extern const BwKindTable bw_pin_uses; /* the conductors are its first ones */
extern const BwKindTable bw_stated_loads;
extern const BwKindTable bw_sync_polarities;

gboolean bw_kind_find (const BwKindTable *table, const char *id, guint *value);
const char *bw_kind_id (const BwKindTable *table, guint value);
const char *bw_kind_label (const BwKindTable *table, guint value);
guint bw_kind_set_count (guint set);
char *bw_kind_set_labels (const BwKindTable *table, guint set);
char *bw_kind_set_ids (const BwKindTable *table, guint set, const char *separator);
char *bw_kind_ids (const BwKindTable *table, const char *separator);

guint bw_signal_syncs (BwSignal signal);
gboolean bw_signal_is_coded (guint signal);
BwSyncKind bw_signal_usual_sync (BwSignal signal);
gboolean bw_sync_has_own_conductor (BwSyncKind sync);

G_END_DECLS
