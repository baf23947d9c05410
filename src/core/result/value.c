/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "value.h"

#include <float.h>
#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

/* A unit follows its number after a no-break space. */
#define UNIT_SPACE "\u00a0"
#define MINUS "\u2212"

/* Digits before the decimal mark of the longest number: a double has 309. */
#define NUMBER_SIZE 400

/**
 * bw_value_quantity:
 * @digits: significant digits that people read, in the unit that suits the size
 *
 * Returns: a number in the base unit of @dimension
 */
BwValue
bw_value_quantity (const char *key, double value, BwDimension dimension, int digits)
{
  return (BwValue){
    .kind = BW_VALUE_NUMBER, .key = key, .number = value, .dimension = dimension, .digits = digits
  };
}

/**
 * bw_value_fixed:
 * @unit: that people read it in, with @decimals digits after the mark, so that such values can be
 *   compared at a glance
 *
 * Returns: a number in the base unit of @dimension
 */
BwValue
bw_value_fixed (const char *key, double value, BwDimension dimension, const char *unit,
                int decimals)
{
  return (BwValue){ .kind = BW_VALUE_NUMBER,
                    .key = key,
                    .number = value,
                    .dimension = dimension,
                    .unit = unit,
                    .digits = decimals,
                    .fixed = TRUE };
}

/**
 * bw_value_range:
 * @key: (nullable): JSON has it as two numbers, @key with "_low" and "_high" after it
 *
 * Returns: an interval in the base unit of @dimension
 */
BwValue
bw_value_range (const char *key, BwRange range, BwDimension dimension, int digits)
{
  BwValue value = bw_value_quantity (key, range.low, dimension, digits);
  value.kind = BW_VALUE_RANGE;
  value.high = range.high;
  return value;
}

/**
 * bw_value_number:
 *
 * Returns: a plain number, that people read with @decimals digits after the mark
 */
BwValue
bw_value_number (const char *key, double number, int decimals)
{
  return bw_value_fixed (key, number, BW_DIMENSION_NONE, NULL, decimals);
}

/**
 * bw_value_exact:
 *
 * Returns: a number in the base unit of @dimension, for a member that scripts alone read, who get all of it
 */
BwValue
bw_value_exact (const char *key, double number, BwDimension dimension)
{
  return (BwValue){ .kind = BW_VALUE_NUMBER, .key = key, .number = number, .dimension = dimension };
}

/**
 * bw_value_count:
 *
 * Returns: a whole number of things
 */
BwValue
bw_value_count (const char *key, double count)
{
  return bw_value_number (key, count, 0);
}

/**
 * bw_value_words:
 * @words: (nullable): what was entered, which a script gets letter by letter; %NULL is null there
 *
 * Returns: words
 */
BwValue
bw_value_words (const char *key, const char *words)
{
  return (BwValue){ .kind = words != NULL ? BW_VALUE_WORDS : BW_VALUE_NOTHING,
                    .key = key,
                    .words = words };
}

/**
 * bw_value_says:
 * @says: (nullable): the program's own words, in which a script gets plain spaces
 *
 * Returns: a sentence, or a part of one
 */
BwValue
bw_value_says (const char *key, const char *says)
{
  return (BwValue){ .kind = says != NULL ? BW_VALUE_SAYS : BW_VALUE_NOTHING,
                    .key = key,
                    .words = says };
}

/**
 * bw_value_kind:
 *
 * Returns: a kind: its label for people, its id for scripts
 */
BwValue
bw_value_kind (const char *key, const BwKindTable *table, guint kind)
{
  if (kind == table->n)
    return bw_value_or (bw_value_nothing (key), bw_kind_label (table, kind));
  return (BwValue){ .kind = BW_VALUE_KIND,
                    .key = key,
                    .words = bw_kind_label (table, kind),
                    .id = bw_kind_id (table, kind) };
}

/**
 * bw_value_set:
 *
 * Returns: a set of kinds: their labels for people, an array of their ids for scripts
 */
BwValue
bw_value_set (const char *key, const BwKindTable *kinds, guint set)
{
  return (BwValue){ .kind = BW_VALUE_SET, .key = key, .kinds = kinds, .set = set };
}

/**
 * bw_value_flag:
 *
 * Returns: true or false; for people “yes” or “no”
 */
BwValue
bw_value_flag (const char *key, gboolean flag)
{
  return (BwValue){
    .kind = BW_VALUE_FLAG, .key = key, .number = flag, .words = flag ? _ ("yes") : _ ("no")
  };
}

/**
 * bw_value_list:
 * @list: (array zero-terminated=1): words
 *
 * Returns: a list of words
 */
BwValue
bw_value_list (const char *key, const char *const *list)
{
  return (BwValue){ .kind = BW_VALUE_LIST, .key = key, .list = list };
}

/**
 * bw_value_nothing:
 *
 * Returns: a value that is not known: null for scripts, nothing for people
 */
BwValue
bw_value_nothing (const char *key)
{
  return (BwValue){ .kind = BW_VALUE_NOTHING, .key = key };
}

/**
 * bw_value_if:
 *
 * Returns: @value if it is @known, else a value that is not known, of which people read nothing
 */
BwValue
bw_value_if (gboolean known, BwValue value)
{
  if (known)
    return value;
  if (value.kind == BW_VALUE_RANGE) /* still two numbers for scripts */
    return bw_value_range (value.key, (BwRange){ (double) NAN, (double) NAN }, value.dimension, 1);
  return bw_value_nothing (value.key);
}

/**
 * bw_value_or:
 * @why: what people read if there is nothing else to read of @value, such as “–” or “not known”
 *
 * Returns: @value otherwise unchanged
 */
BwValue
bw_value_or (BwValue value, const char *why)
{
  if (!bw_value_is_seen (&value))
    value.read = why;
  return value;
}

/**
 * bw_value_read_as:
 * @words: (nullable): what people read in place of the value; %NULL leaves it as it is
 *
 * Returns: @value otherwise unchanged
 */
BwValue
bw_value_read_as (BwValue value, const char *words)
{
  if (words != NULL)
    value.read = words;
  return value;
}

/**
 * bw_value_signed:
 *
 * Returns: @value with a plus before it where it is above zero
 */
BwValue
bw_value_signed (BwValue value)
{
  value.has_sign = TRUE;
  return value;
}

/**
 * bw_value_marked:
 *
 * Returns: @value with @mark before it
 */
BwValue
bw_value_marked (BwValue value, BwMark mark)
{
  value.mark = mark;
  return value;
}

/* For people */

/**
 * bw_value_is_seen:
 *
 * Returns: whether people read something of it
 */
gboolean
bw_value_is_seen (const BwValue *value)
{
  if (value->read != NULL)
    return *value->read != '\0';
  switch (value->kind)
    {
    case BW_VALUE_NUMBER:
      return isfinite (value->number);
    case BW_VALUE_RANGE:
      return isfinite (value->number) && isfinite (value->high);
    case BW_VALUE_SET:
      return value->set != 0;
    case BW_VALUE_LIST:
      return value->list != NULL && value->list[0] != NULL;
    default:
      return value->words != NULL && *value->words != '\0';
    }
}

/* The share of a number by which the arithmetic before it may have made it wrong. */
#define ARITHMETIC (8 * DBL_EPSILON)

/* Rounds to @decimals digits after the decimal mark. A half goes away from zero, also where the
 * arithmetic has left it a little short of a half. */
static double
rounded (double number, int decimals)
{
  double scale = pow (10, decimals);
  return copysign (round (number * scale * (1 + ARITHMETIC)) / scale, number);
}

/* Writes @decimals digits after @mark. A number that rounds to zero has no sign. */
static char *
fixed_text (double number, int decimals, char mark)
{
  char format[16], text[NUMBER_SIZE];

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (text, sizeof text, format, rounded (number, decimals));
  gboolean zero = text[strspn (text, "-0.")] == '\0';
  return g_strdelimit (g_strdup (text + (zero && *text == '-' ? 1 : 0)), ".", mark);
}

static char *
fixed_quantity_text (const BwValue *value, char mark)
{
  double number = value->number;
  if (value->unit != NULL)
    number = bw_quantity_in_unit (number, value->dimension, value->unit);
  g_autofree char *text = fixed_text (number, value->digits, mark);
  if (value->dimension == BW_DIMENSION_NONE)
    return g_steal_pointer (&text);
  return g_strconcat (text, UNIT_SPACE, bw_quantity_screen_unit (value->dimension, value->unit),
                      NULL);
}

static char *
unsigned_text (const BwValue *value, char mark)
{
  if (value->kind == BW_VALUE_RANGE)
    return bw_quantity_format_range ((BwRange){ value->number, value->high }, value->dimension,
                                     value->digits, mark);
  return value->fixed ? fixed_quantity_text (value, mark)
                      : bw_quantity_format (value->number, value->dimension, value->digits, mark);
}

static char *
number_text (const BwValue *value, char mark, gboolean plain)
{
  char *text = unsigned_text (value, mark);
  const char *sign = value->has_sign && value->number > 0 ? "+" : "";
  gboolean below = *text == '-';
  char *whole = g_strconcat (below ? (plain ? "-" : MINUS) : sign, text + (below ? 1 : 0), NULL);
  g_free (text);
  return whole;
}

static char *
text_of (const BwValue *value, char mark, gboolean plain)
{
  if (!bw_value_is_seen (value))
    return g_strdup ("");
  if (value->read != NULL)
    return g_strdup (value->read);
  if (value->kind == BW_VALUE_SET)
    return bw_kind_set_labels (value->kinds, value->set);
  if (value->kind == BW_VALUE_LIST)
    return g_strjoinv (", ", (char **) value->list);
  return value->words != NULL ? g_strdup (value->words) : number_text (value, mark, plain);
}

/**
 * bw_value_text:
 * @mark: the decimal mark
 *
 * Returns: (transfer full): what people read: a number with its unit after a no-break space, or
 *   words
 */
char *
bw_value_text (const BwValue *value, char mark)
{
  g_return_val_if_fail (value != NULL, NULL);
  return text_of (value, mark, FALSE);
}

/**
 * bw_value_split:
 * @mark: the decimal mark
 * @plain: whether a minus is that of ASCII
 * @number: (out) (transfer full): what people read, without the unit
 * @unit: (out) (transfer full): the unit; empty where there is none
 *
 * Returns: whether it is a number, which wants to stand at the right edge
 */
gboolean
bw_value_split (const BwValue *value, char mark, gboolean plain, char **number, char **unit)
{
  g_return_val_if_fail (value != NULL && number != NULL && unit != NULL, FALSE);
  gboolean is_number = (value->kind == BW_VALUE_NUMBER || value->kind == BW_VALUE_RANGE)
                       && value->read == NULL;
  char *text = text_of (value, mark, plain);
  char *space = is_number ? strstr (text, UNIT_SPACE) : NULL;

  *unit = g_strdup (space != NULL ? space + strlen (UNIT_SPACE) : "");
  if (space != NULL)
    *space = '\0';
  *number = text;
  return is_number;
}
