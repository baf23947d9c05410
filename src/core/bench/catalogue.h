/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "adaptor.h"
#include "core/raster/colour-system.h"
#include "monitor.h"
#include "source.h"

G_BEGIN_DECLS

/**
 * BwCatalogue:
 *
 * The shipped rasters, monitors, sources and adaptors, and the user's own, which add to them and
 * replace those of the same id.
 */
typedef struct _BwCatalogue BwCatalogue;

typedef enum
{
  BW_CATALOGUE_RASTERS,
  BW_CATALOGUE_MONITORS,
  BW_CATALOGUE_SOURCES,
  BW_CATALOGUE_ADAPTORS, /* after the rasters, which they name */
  BW_N_CATALOGUES
} BwCatalogueKind;

BwCatalogue *bw_catalogue_new_empty (void);
BwCatalogue *bw_catalogue_new (const char *user_folder, GPtrArray *faults);
void bw_catalogue_free (BwCatalogue *catalogue);
char *bw_catalogue_user_folder (void);

void bw_catalogue_add_text (BwCatalogue *catalogue, BwCatalogueKind kind, const char *text,
                            gsize length, const char *file, GPtrArray *faults);

GPtrArray *bw_catalogue_rasters (const BwCatalogue *catalogue);
GPtrArray *bw_catalogue_monitors (const BwCatalogue *catalogue);
GPtrArray *bw_catalogue_sources (const BwCatalogue *catalogue);
GPtrArray *bw_catalogue_adaptors (const BwCatalogue *catalogue);

const BwRaster *bw_catalogue_raster (const BwCatalogue *catalogue, const char *id);
const BwRaster *bw_catalogue_usual_raster (const BwCatalogue *catalogue, BwColourSystem system);
gboolean bw_catalogue_is_shipped (const BwCatalogue *catalogue, const BwRaster *raster);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwCatalogue, bw_catalogue_free)

G_END_DECLS
