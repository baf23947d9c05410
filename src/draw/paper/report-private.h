/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "flow.h"
#include "report.h"

G_BEGIN_DECLS

/* Of report.c, report-fit.c and report-parts.c alone. */

struct _BwReport
{
  const BwSheet *sheet;
  const BwCatalogue *catalogue;
  BwInk ink;
  char *font;
  double page_width_pt;
  double page_height_pt;
  double margin_pt;
  char mark;
  BwFlow *flow;
  GPtrArray *rasters; /* (element-type BwRaster): borrowed, each once, in the order of use */
};

void bw_report_say (BwReport *report, BwFlowStyle style, const char *text);
void bw_report_say_indented (BwReport *report, BwFlowStyle style, const char *text);

void bw_report_add_head (BwReport *report);
void bw_report_add_inputs (BwReport *report);
void bw_report_add_sources (BwReport *report);
void bw_report_add_timing (BwReport *report);
void bw_report_add_figures_from (BwReport *report);
void bw_report_add_fit (BwReport *report);

G_END_DECLS
