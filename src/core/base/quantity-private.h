/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "quantity.h"

G_BEGIN_DECLS

/* Shared by quantity.c, quantity-parse.c and quantity-format.c. */

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

G_END_DECLS
