/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "app/widgets/result-head.h"
#include "core/bench/tube-raster.h"
#include "work-out.h"

G_BEGIN_DECLS

#define BW_N_STARTS (BW_START_MODELINE + 1)

struct _BwWorkOut
{
  GtkWidget parent_instance;

  GtkLabel *from;
  GtkLabel *says;
  GtkLabel *fault;
  GtkLabel *why;
  GtkWidget *use;
  GtkWidget *copy;
  BwResultHead *table;
  GtkWidget *from_source;
  GtkWidget *others_row;
  GtkDropDown *others;
  GtkBox *rates;
  GtkBox *line;
  GtkBox *field;
  GtkMenuButton *starts[BW_N_STARTS];

  char *labels[BW_N_FIGURES];
  BwField fields[BW_N_FIGURES];
  BwEditorRow *rows[BW_N_FIGURES]; /* borrowed; children */
  BwEditorRow *interlaced;

  BwSolver solver;
  BwSolver before;  /* as it stood before the last edit */
  guint32 wrong;    /* set of entered figures that contradict each other */
  BwRaster *base;   /* nullable: what the figures were taken from */
  char *base_id;    /* nullable: of the selected source's raster, if it was that */
  gboolean changed; /* a figure differs from the base */
  BwRaster *raster; /* nullable: what the figures make */
  GPtrArray *answers; /* nullable (element-type BwTubeAnswer): what was made for the monitor */
  BwDocument *document;
};

/* work-out-show.c */
void bw_work_out_show_figures (BwWorkOut *self);

/* work-out-raster.c */
guint32 bw_solver_conflict (const BwSolver *solver);
BwRaster *bw_work_out_make (const BwSolver *solver, const BwRaster *base, GError **error);

G_END_DECLS
