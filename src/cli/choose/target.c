/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "target.h"

#include <string.h>

#include <glib/gstdio.h>

#include "cli/base/streams.h"

/**
 * bw_target_is:
 * @target: where a command is to write
 * @source: (nullable): what it reads, as it came
 *
 * Returns: whether both are the same file, by whatever names, so that it would be replaced
 */
gboolean
bw_target_is (const char *target, const char *source)
{
  GStatBuf to;
  GStatBuf from;
  return source != NULL && !bw_cli_is_standard (target) && strcmp (source, "-") != 0
         && g_stat (target, &to) == 0 && g_stat (source, &from) == 0 && to.st_dev == from.st_dev
         && to.st_ino == from.st_ino;
}
