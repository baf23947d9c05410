/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/* What stands between a source and an input: leads, passive parts and boxes, each by what it takes
 * and what it gives. They are generic classes; the user's own come from adaptors.ini. */

typedef enum
{
  BW_ADAPTOR_LEAD,             /* joins two connectors, changes nothing else */
  BW_ADAPTOR_TERMINATOR,       /* 75 Ω at an input or its loop-through */
  BW_ADAPTOR_SYNC_ATTENUATOR,  /* series resistor in a sync conductor; its value is worked out */
  BW_ADAPTOR_VIDEO_ATTENUATOR, /* matched pad in each video conductor; the same */
  BW_ADAPTOR_CAPACITOR,        /* coupling capacitor in each video conductor */
  BW_ADAPTOR_BOX,              /* needs a supply; keeps the raster */
  BW_ADAPTOR_CONVERTER,        /* stores the picture and gives it in another raster */
  BW_N_ADAPTORS
} BwAdaptorKind;

typedef enum
{
  BW_LEVELS_PASSED,   /* as they come, but for what gives_* names */
  BW_LEVELS_STANDARD, /* those of the standard for what it gives, but for what gives_* names */
  BW_N_LEVELS
} BwAdaptorLevels;

/**
 * BwAdaptor:
 * @origin: the standard or custom that gives the figures
 * @kind: BwAdaptorKind
 * @takes_connectors: set of BwConnector; empty: any. Likewise the other sets of what it takes
 * @takes_signals: set of BwSignal
 * @takes_systems: set of BwColourSystem; matters for composite and Y/C
 * @takes_syncs: set of BwSyncKind that it works with
 * @takes_shapes: set of BwSyncShape
 * @takes_polarities: set of BwPolarity, for sync on its own conductors
 * @takes_scans: set of BwScan
 * @takes_line_rates_hz: bands; none given: any
 * @takes_field_rates_hz: bands; none given: any
 * @takes_video_v: one band: black to white across 75 Ω; none given: any
 * @takes_sync_v: one band: peak to peak at its terminals; none given: any
 * @takes_sync_ohm: what its input is for sync on a conductor of its own
 * @gives_connectors: set of BwConnector, any one of them; empty: that which it takes
 * @gives_signals: set of BwSignal, any one of them; empty: as it comes
 * @gives_systems: set of BwColourSystem, any one of them; empty: as it comes
 * @gives_syncs: set of BwSyncKind, all that go with the signal at once; empty: as they come
 * @gives_shapes: set of one BwSyncShape; empty: as it comes
 * @gives_polarities: set of one BwPolarity; empty: as it comes
 * @gives_rasters: ids set apart by ";", any one of them; empty: as it comes
 * @levels: BwAdaptorLevels
 * @gives_video_v: black to white across 75 Ω; zero: as @levels says
 * @gives_sync_v: peak to peak; zero: as @levels says
 * @gives_sync_load: BwStatedLoad of @gives_sync_v
 * @gives_sync_ohm: resistance of the output that carries sync alone
 * @gives_setup_ire: one band of no width; none given: as @levels says
 * @gives_couplings: set of one BwCoupling; empty: as it comes
 * @gives_aspect: width to height of what it gives; %BW_RATIO_NONE: as it comes
 * @underscan: it can bring the whole picture inside the glass
 * @detail_hz: the highest video frequency that it passes; zero: not known
 * @rank: how reluctantly it is used; zero: by its kind
 * @price: such as "40 EUR"; empty: not known
 */
typedef struct
{
  char *id;
  char *name;
  char *origin;
  char *note;
  guint kind;
  guint takes_connectors;
  guint takes_signals;
  guint takes_systems;
  guint takes_syncs;
  guint takes_shapes;
  guint takes_polarities;
  guint takes_scans;
  BwBands takes_line_rates_hz;
  BwBands takes_field_rates_hz;
  BwBands takes_video_v;
  BwBands takes_sync_v;
  double takes_sync_ohm;
  guint gives_connectors;
  guint gives_signals;
  guint gives_systems;
  guint gives_syncs;
  guint gives_shapes;
  guint gives_polarities;
  char *gives_rasters;
  guint levels;
  double gives_video_v;
  double gives_sync_v;
  guint gives_sync_load;
  double gives_sync_ohm;
  BwBands gives_setup_ire;
  guint gives_couplings;
  BwRatio gives_aspect;
  gboolean underscan;
  double detail_hz;
  int rank;
  char *price;
} BwAdaptor;

#define BW_ADAPTOR_ERROR (bw_adaptor_error_quark ())

typedef enum
{
  BW_ADAPTOR_ERROR_GIVES,  /* gives nothing, or what its kind cannot */
  BW_ADAPTOR_ERROR_SYNC,   /* sync that cannot come with what it gives, or of no level */
  BW_ADAPTOR_ERROR_SYSTEM, /* composite or Y/C out of nothing without a colour system */
  BW_ADAPTOR_ERROR_RASTER, /* a raster where there must be none, or none, or an unknown one */
  BW_ADAPTOR_ERROR_ONE,    /* several where only one can be given */
  BW_ADAPTOR_ERROR_PRICE
} BwAdaptorError;

extern const BwKindTable bw_adaptor_kinds;
extern const BwKindTable bw_adaptor_levels;
extern const BwFieldTable bw_adaptor_fields;

GQuark bw_adaptor_error_quark (void);

BwAdaptor *bw_adaptor_new (void);
BwAdaptor *bw_adaptor_copy (const BwAdaptor *adaptor);
void bw_adaptor_free (BwAdaptor *adaptor);
gboolean bw_adaptor_check (const BwAdaptor *adaptor, GError **error);

gboolean bw_adaptor_is_box (const BwAdaptor *adaptor);
guint bw_adaptor_rank (const BwAdaptor *adaptor);
gboolean bw_adaptor_price (const BwAdaptor *adaptor, double *money, const char **unit);
char **bw_adaptor_rasters (const BwAdaptor *adaptor);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwAdaptor, bw_adaptor_free)

G_END_DECLS
