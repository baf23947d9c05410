/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "field.h"

/* Where a text comes from: an old file may hold what nobody may type any more. */
typedef enum
{
  BW_TEXT_TYPED,
  BW_TEXT_FROM_FILE
} BwTextOrigin;

gboolean bw_field_read (const BwField *field, gpointer object, const char *text, char mark,
                        BwTextOrigin origin, GError **error);

/* The member of a struct that a field describes, as an lvalue of its type. */
#define BW_MEMBER(type, field, object) (*(type *) ((char *) (object) + (field)->offset))
#define BW_CONST_MEMBER(type, field, object)                                                      \
  (*(const type *) ((const char *) (object) + (field)->offset))
