/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The series of preferred values of IEC 60063. */
typedef enum
{
  BW_SERIES_E12,
  BW_SERIES_E24,
  BW_SERIES_E96,
  BW_N_SERIES
} BwSeries;

double bw_preferred_ohm (double ideal_ohm, BwSeries series);
double bw_series_resistor_ohm (double open_v, double driver_ohm, double load_ohm, double wanted_v);

G_END_DECLS
