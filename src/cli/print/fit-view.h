/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/json.h"
#include "core/fit/fit.h"

G_BEGIN_DECLS

/**
 * BwFitView:
 * @sheet: borrowed
 * @catalogue: borrowed
 * @sources: (element-type guint): the sources to show, in the sheet's order
 * @inputs: (element-type guint): likewise the inputs
 *
 * The part of a sheet's table that is asked for.
 */
typedef struct
{
  const BwSheet *sheet;
  const BwCatalogue *catalogue;
  GArray *sources;
  GArray *inputs;
} BwFitView;

/**
 * BwFitCell:
 *
 * One judged cell, with all that its sentences are made from.
 */
typedef struct
{
  BwCase c;
  BwRasterFigures figures;
  BwFit fit;
} BwFitCell;

void bw_fit_view_judge (const BwFitView *view, guint source, guint input, BwFitCell *cell);
void bw_fit_view_append_text (const BwFitView *view, gboolean with_findings, GString *to);
void bw_fit_view_to_json (const BwFitView *view, BwJson *json);

G_END_DECLS
