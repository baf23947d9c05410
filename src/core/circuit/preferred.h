/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The series of preferred values of IEC 60063, in which resistors and capacitors alike are made. */
typedef enum
{
  BW_SERIES_E12,
  BW_SERIES_E24,
  BW_SERIES_E96,
  BW_N_SERIES
} BwSeries;

double bw_preferred_value (double ideal, BwSeries series);
double bw_preferred_value_from (double least, BwSeries series);
double bw_preferred_capacitor (double ideal);

G_END_DECLS
