/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "interchange.h"

G_BEGIN_DECLS

/* The displays of this computer, and what their EDIDs make of a bench sheet. */

#define BW_DISPLAYS_FOLDER "/sys/class/drm" /* where Linux has them */

/**
 * BwDisplay:
 * @name: that the system has for its connector, such as card0-VGA-1
 * @path: of its EDID
 */
typedef struct
{
  char *name;
  char *path;
} BwDisplay;

GPtrArray *bw_displays_list (const char *folder);
BwEdid *bw_edid_load (const char *path, GError **error);

char *bw_edid_name (const BwEdid *edid);
BwMonitor *bw_edid_to_monitor (const BwEdid *edid, const BwCatalogue *catalogue, GPtrArray *notes,
                               GError **error);
BwSheet *bw_edid_to_sheet (const BwEdid *edid, const BwCatalogue *catalogue, GPtrArray *notes,
                           GError **error);

/**
 * bw_display_at:
 *
 * Returns: (transfer none): display @i of @displays
 */
static inline const BwDisplay *
bw_display_at (const GPtrArray *displays, guint i)
{
  return (const BwDisplay *) g_ptr_array_index (displays, i);
}

G_END_DECLS
