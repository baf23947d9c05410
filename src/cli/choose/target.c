/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "target.h"

#include <glib/gstdio.h>

/**
 * bw_target_is:
 * @target: where a command is to write
 * @source: (nullable): what it reads
 *
 * Returns: whether both are the same file, by whatever names, so that it would be replaced
 */
gboolean
bw_target_is (const char *target, const char *source)
{
  GStatBuf to;
  GStatBuf from;
  return source != NULL && g_stat (target, &to) == 0 && g_stat (source, &from) == 0
         && to.st_dev == from.st_dev && to.st_ino == from.st_ino;
}
