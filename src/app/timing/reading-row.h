/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

#include "app/widgets/editor-row.h"
#include "core/raster/results.h"

G_BEGIN_DECLS

#define BW_TYPE_READING_ROW (bw_reading_row_get_type ())
G_DECLARE_FINAL_TYPE (BwReadingRow, bw_reading_row, BW, READING_ROW, GtkBox)

BwReadingRow *bw_reading_row_new (BwReadingKind kind);
void bw_reading_row_hold_against (BwReadingRow *self, const BwStandardLimits *limits);
void bw_reading_row_set_accuracy (BwReadingRow *self, double accuracy);
void bw_reading_row_clear (BwReadingRow *self);
gboolean bw_reading_row_is_judged (BwReadingRow *self, BwJudgement *judgement);
void bw_reading_row_take (BwReadingRow *self, BwReadingsTaken *taken);
BwEditorRow *bw_reading_row_get_editor (BwReadingRow *self);
const char *bw_reading_row_get_result (BwReadingRow *self);

G_END_DECLS
