/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/* The part of a bench sheet that a form edits. */
typedef enum
{
  BW_PART_SHEET,
  BW_PART_MONITOR,
  BW_PART_INPUT,
  BW_PART_SOURCE
} BwPart;

/* No source, or no input, is selected: there is none. */
#define BW_NO_INDEX G_MAXUINT

/**
 * BwEdit:
 * @field: a field of the part's table
 * @text: what was typed, as bw_field_parse() reads it
 */
typedef struct
{
  const BwField *field;
  const char *text;
} BwEdit;

/**
 * BwTyped:
 * @part: the part that @field belongs to
 * @index: which input or source; else without meaning
 * @field: a field of the part's table
 * @text: (owned): what was typed, which the sheet has not taken yet
 */
typedef struct
{
  BwPart part;
  guint index;
  const BwField *field;
  char *text;
} BwTyped;

BwTyped *bw_typed_new (BwPart part, guint index, const BwField *field, const char *text);
void bw_typed_free (BwTyped *typed);

const BwFieldTable *bw_part_fields (BwPart part);

G_END_DECLS
