/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <gtk/gtk.h>

G_BEGIN_DECLS

/* The columns of a table of findings. */
typedef enum
{
  BW_FINDING_WORD,
  BW_FINDING_RULE,
  BW_FINDING_VALUE,
  BW_FINDING_ALLOWED,
  BW_FINDING_MARGIN,
  BW_N_FINDING_COLUMNS, /* that are as wide in all rows as in the widest */
  BW_FINDING_SAYS = BW_N_FINDING_COLUMNS,
  BW_FINDING_REMEDY
} BwFindingColumn;

#define BW_TYPE_FINDING_LAYOUT (bw_finding_layout_get_type ())
G_DECLARE_FINAL_TYPE (BwFindingLayout, bw_finding_layout, BW, FINDING_LAYOUT, GtkLayoutManager)

G_END_DECLS
