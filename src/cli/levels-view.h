/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "json-out.h"
#include "signal-levels.h"

G_BEGIN_DECLS

/* What `levels` shows. */
typedef struct
{
  BwColourSystem system;
  BwSignal signal;
  BwBarsForm form;
} BwLevelsView;

void bw_levels_view_to_json (const BwLevelsView *view, BwJson *json);
void bw_levels_view_append_text (const BwLevelsView *view, GString *text);

G_END_DECLS
