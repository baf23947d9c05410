/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "flow.h"
#include "hookup-report.h"

G_BEGIN_DECLS

/* Of hookup-report.c and hookup-report-parts.c alone. */

struct _BwHookupReport
{
  BwHookupView what;
  char *title;
  char *family; /* of the font */
  char *font;
  BwInk ink;
  double page_width_pt;
  double page_height_pt;
  double margin_pt;
  double drawing_pt; /* height of the drawing */
  BwFlow *flow;
};

void bw_hookup_report_fill (BwHookupReport *report);

G_END_DECLS
