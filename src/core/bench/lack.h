/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "monitor.h"
#include "source.h"

G_BEGIN_DECLS

/* Which figure is lacking. What works with the figures of a monitor, an input or a source asks here
 * first whether it has all that it needs, and says what it lacks in place of an answer. */

/* Whose figure it is. */
typedef enum
{
  BW_OWNER_MONITOR,
  BW_OWNER_INPUT,
  BW_OWNER_SOURCE,
  BW_OWNER_SHEET
} BwFigureOwner;

/**
 * BwLack:
 * @field: (nullable): the figure that would decide; %NULL if none is lacking
 * @owner: whose it is
 */
typedef struct
{
  const BwField *field;
  BwFigureOwner owner;
} BwLack;

char *bw_lack_name (const BwLack *lack);
char *bw_lack_key (const BwLack *lack);
char *bw_lack_says (const BwLack *lack);

gboolean bw_lacks_monitor (const BwMonitor *monitor, gsize offset, BwLack *lack);
gboolean bw_lacks_input (const BwInput *input, gsize offset, BwLack *lack);
gboolean bw_lacks_source (const BwSource *source, gsize offset, BwLack *lack);

gboolean bw_lacks_load (const BwInput *input, gboolean own_sync, BwLack *lack);
gboolean bw_lacks_wire (const BwSource *source, BwLack *lack);
gboolean bw_lacks_drive (const BwSource *source, BwLack *lack);
gboolean bw_lacks_plan (const BwSource *source, const BwInput *input, BwLack *lack);
gboolean bw_lacks_way (const BwSource *source, const BwInput *input, BwLack *lack);
gboolean bw_lacks_signal (const BwSource *source, const BwInput *input, BwLack *lack);
gboolean bw_lacks_deflection (const BwMonitor *monitor, BwLack *lack);
gboolean bw_lacks_tube (const BwMonitor *monitor, BwLack *lack);

G_END_DECLS
