/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "result.h"

G_BEGIN_DECLS

/* What the walkers share. */

/**
 * BwMember:
 * @key: its name
 * @node: (nullable): an object, an array or a sentence; %NULL: @value
 * @label: (nullable): what people read beside @value
 *
 * A member of an object as scripts get it.
 */
typedef struct
{
  const char *key;
  const BwNode *node;
  BwValue value;
  const char *label;
} BwMember;

GArray *bw_node_members (const BwNode *node, const char *order);
void bw_number_shortest (GString *to, double number);
char *bw_column_head (const BwColumn *column);

G_END_DECLS
