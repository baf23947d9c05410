/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "quantity.h"

G_BEGIN_DECLS

/* Shared by quantity.c and the quantity-*.c. */

/**
 * BwUnit:
 * @name: as written in files: ASCII
 * @screen: as shown; %NULL for one that is a word, which bw_unit_after() has in the reader's language
 * @automatic: may be picked when a number is shown
 *
 * A value in this unit times @factor times 10^@exponent is the value in the base unit.
 */
typedef struct
{
  BwDimension dimension;
  const char *name;
  const char *screen;
  int exponent;
  double factor;
  gboolean automatic;
} BwUnit;

extern const BwUnit bw_units[];
extern const guint bw_n_units;

const BwUnit *bw_unit_find (BwDimension dimension, const char *name);
const BwUnit *bw_unit_base (BwDimension dimension);
const char *bw_unit_after (const BwUnit *unit, double number);

/**
 * BwPart:
 * @number: in C form: sign, digits with at most one point
 * @text: as it was written, without the space around it
 * @exponent: the power of ten that is written
 * @decimals: digits after the point
 * @unit: (nullable): borrowed; %NULL: none was written
 * @factor: from the base unit of @unit to that of what is measured: volts for an IRE unit
 *
 * One number with its unit, as it stands in a text.
 */
typedef struct
{
  GString *number;
  char *text;
  long exponent;
  int decimals;
  const BwUnit *unit;
  double factor;
} BwPart;

void bw_part_clear (BwPart *part);
gboolean bw_part_take (const char *text, BwDimension dimension, const BwReadAs *as, BwPart *part,
                       GError **error);
gboolean bw_part_measure (const BwPart *part, BwMeasured *measured, GError **error);
gboolean bw_parts_settle_unit (BwPart *const *parts, guint n, BwDimension dimension,
                               const BwReadAs *as, GError **error);

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (BwPart, bw_part_clear)

const char *bw_skip_space (const char *text);
char *bw_trimmed (const char *text);
gboolean bw_may_be_thousands (const char *digits, gsize before, gsize after);
gboolean bw_text_check_utf8 (const char *text, GError **error);

G_END_DECLS
