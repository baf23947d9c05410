/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/kinds.h"
#include "core/base/quantity.h"
#include "core/base/severity.h"

G_BEGIN_DECLS

/* One value of a result: what a script gets of it and how people read it stand side by side. */

typedef enum
{
  BW_VALUE_NOTHING, /* not known */
  BW_VALUE_NUMBER,
  BW_VALUE_RANGE,
  BW_VALUE_WORDS, /* a name, a note: what was entered, or comes from the catalogue */
  BW_VALUE_SAYS,  /* a sentence, or a part of one, of the program's own */
  BW_VALUE_KIND,  /* a word of the trade, with its id */
  BW_VALUE_SET,   /* of kinds */
  BW_VALUE_FLAG,
  BW_VALUE_LIST
} BwValueKind;

/* How well something stands: one more than its severity, so that zero is no mark. */
typedef guint BwMark;

#define BW_MARK_NONE 0
#define BW_MARK(severity) ((BwMark) (severity) + 1)
#define BW_MARK_SEVERITY(mark) ((mark) > BW_MARK_NONE ? (BwSeverity) ((mark) -1) : BW_N_SEVERITIES)

/* The dimension of a plain number, which measures nothing. */
#define BW_DIMENSION_NONE BW_N_DIMENSIONS

/**
 * BwValue:
 * @key: (nullable): its name in JSON and CSV, with the unit; %NULL: not there
 * @number: in the base unit of @dimension, or the low end of a range; of a flag 0 or 1
 * @high: the upper end of a range
 * @dimension: or %BW_DIMENSION_NONE
 * @unit: (nullable): that people read it in, as quantities name it; %NULL: the one that suits
 * @digits: significant digits that people read; with @fixed, digits after the decimal mark
 * @has_sign: whether a plus stands before a number above zero
 * @words: (nullable): of words, of a kind and of a flag
 * @read: (nullable): what people read in place of all that; %NULL for the value itself
 * @id: of a kind
 * @kinds: of a set: what it is of; @set has a bit for each
 * @list: (nullable): of a list, %NULL-terminated
 * @mark: what stands before it
 *
 * Made by the functions below. Strings are borrowed until the value is added to a node, which
 * copies them; keys and units are static.
 */
typedef struct
{
  BwValueKind kind;
  const char *key;
  double number;
  double high;
  BwDimension dimension;
  const char *unit;
  int digits;
  gboolean fixed;
  gboolean has_sign;
  const char *words;
  const char *read;
  const char *id;
  const BwKindTable *kinds;
  guint set;
  const char *const *list;
  BwMark mark;
} BwValue;

BwValue bw_value_quantity (const char *key, double value, BwDimension dimension, int digits);
BwValue bw_value_fixed (const char *key, double value, BwDimension dimension, const char *unit,
                        int decimals);
BwValue bw_value_range (const char *key, BwRange range, BwDimension dimension, int digits);
BwValue bw_value_number (const char *key, double number, int decimals);
BwValue bw_value_exact (const char *key, double number, BwDimension dimension);
BwValue bw_value_count (const char *key, double count);
BwValue bw_value_words (const char *key, const char *words);
BwValue bw_value_says (const char *key, const char *says);
BwValue bw_value_kind (const char *key, const BwKindTable *table, guint kind);
BwValue bw_value_set (const char *key, const BwKindTable *kinds, guint set);
BwValue bw_value_flag (const char *key, gboolean flag);
BwValue bw_value_list (const char *key, const char *const *list);
BwValue bw_value_nothing (const char *key);

BwValue bw_value_if (gboolean known, BwValue value);
BwValue bw_value_or (BwValue value, const char *why);
BwValue bw_value_read_as (BwValue value, const char *words);
BwValue bw_value_signed (BwValue value);
BwValue bw_value_marked (BwValue value, BwMark mark);

gboolean bw_value_is_seen (const BwValue *value);
char *bw_value_text (const BwValue *value, char mark);
gboolean bw_value_split (const BwValue *value, char mark, gboolean plain, char **number,
                         char **unit);

G_END_DECLS
