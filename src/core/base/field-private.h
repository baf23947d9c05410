/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "field.h"

/* The member of a struct that a field describes, as an lvalue of its type. */
#define BW_MEMBER(type, field, object) (*(type *) ((char *) (object) + (field)->offset))
#define BW_CONST_MEMBER(type, field, object)                                                      \
  (*(const type *) ((const char *) (object) + (field)->offset))
