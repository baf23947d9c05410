/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/result/result.h"

G_BEGIN_DECLS

/* A result as lines of labels, for the widget that shows it. */

typedef enum
{
  BW_LABEL_NAME,   /* of a figure or a row, in lighter ink */
  BW_LABEL_NUMBER, /* at the right edge */
  BW_LABEL_UNIT,   /* in lighter ink */
  BW_LABEL_WORDS,  /* in a column */
  BW_LABEL_SAYS,   /* in the last column; wraps */
  BW_LABEL_HEAD,   /* over a column of words, in lighter ink */
  BW_LABEL_HEAD_AT_RIGHT,
  BW_LABEL_FREE,  /* takes the rest of the line, and wraps */
  BW_LABEL_LIGHT, /* the same in lighter ink */
  BW_LABEL_TITLE,
  BW_N_LABELS
} BwLabelLook;

typedef struct
{
  BwLabelLook look;
  char *text;
} BwLabelText;

/**
 * BwResultLine:
 * @block: lines of one block share the widths of their columns
 * @apart: it begins another block, and no title says so
 * @many_across: a figure with many values, whose name takes no more width than it needs
 * @stacked: the labels stand below each other; the second one beside the first
 * @row: (nullable): the row of a table that it shows
 * @mark: before the first label
 * @labels: (element-type BwLabelText)
 * @copy: what is copied of the line: its texts with tabs between
 */
typedef struct
{
  guint block;
  gboolean apart;
  gboolean many_across;
  gboolean stacked;
  const BwNode *row;
  BwMark mark;
  GArray *labels;
  char *copy;
} BwResultLine;

GPtrArray *bw_result_lines (const BwNode *node, gboolean cards);

G_END_DECLS
