/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "part.h"

#include "core/bench/sheet.h"

/**
 * bw_part_fields:
 *
 * Returns: (transfer none): the table that describes an object of this part
 */
const BwFieldTable *
bw_part_fields (BwPart part)
{
  switch (part)
    {
    case BW_PART_MONITOR:
      return &bw_monitor_fields;
    case BW_PART_INPUT:
      return &bw_input_fields;
    case BW_PART_SOURCE:
      return &bw_source_fields;
    case BW_PART_SHEET:
    default:
      return &bw_sheet_fields;
    }
}

/**
 * bw_typed_new:
 * @field: static
 * @text: copied
 *
 * Returns: (transfer full): a typed value
 */
BwTyped *
bw_typed_new (BwPart part, guint index, const BwField *field, const char *text)
{
  g_return_val_if_fail (field != NULL && text != NULL, NULL);
  BwTyped *typed = g_new (BwTyped, 1);
  *typed = (BwTyped){ part, index, field, g_strdup (text) };
  return typed;
}

/**
 * bw_typed_free:
 * @typed: (transfer full): freed with its text
 */
void
bw_typed_free (BwTyped *typed)
{
  g_return_if_fail (typed != NULL);
  g_free (typed->text);
  g_free (typed);
}
