/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/fit/fit.h"

G_BEGIN_DECLS

/* What must hold for anything that the readers accept, for the tests with made-up input and for
 * the fuzz targets. Each returns NULL, or an owned text that says what does not hold. */

char *bw_property_raster (const BwRaster *raster);
char *bw_property_raster_kept (const BwRaster *raster);
const char *bw_property_figures (const BwFinding *f);
char *bw_property_fit (const BwCase *c, const BwFit *fit);
char *bw_property_cells (const BwSheet *sheet, const BwCatalogue *catalogue);
char *bw_property_sheet (const BwSheet *sheet, const BwCatalogue *catalogue);
char *bw_property_fields_kept (const BwFieldTable *table, gpointer object, gpointer empty);

gboolean bw_property_plain (const char *text);

G_END_DECLS
