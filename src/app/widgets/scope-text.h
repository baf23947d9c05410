/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/quantity.h"
#include "draw/base/text.h"

G_BEGIN_DECLS

/* Readings as the drawings say them, with the decimal mark of the locale. All (transfer full). */

static inline char *
bw_scope_number (double value, int decimals)
{
  return bw_text_number (value, decimals, bw_quantity_locale_mark ());
}

static inline char *
bw_scope_volts (double volts)
{
  return bw_text_volts (volts, bw_quantity_locale_mark ());
}

static inline char *
bw_scope_time (double time_s)
{
  return bw_text_time (time_s, bw_quantity_locale_mark ());
}

G_END_DECLS
