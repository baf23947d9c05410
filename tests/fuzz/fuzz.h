/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <signal.h>
#include <stddef.h>
#include <stdint.h>
#include <stdlib.h>

#include "properties.h"

/* What the fuzz targets for files share. A target aborts on what must not be. */

int LLVMFuzzerTestOneInput (const uint8_t *data, size_t size);

#define MUST(holds)                                                                                \
  do                                                                                               \
    if (!(holds))                                                                                  \
      g_error ("%s:%d: %s does not hold", __FILE__, __LINE__, #holds);                             \
  while (0)

/* @fault: (nullable) (transfer full): what a property test found */
static inline void
must_hold (char *fault)
{
  if (fault != NULL)
    g_error ("%s", fault);
}

static inline void
abort_on_trap (int number G_GNUC_UNUSED)
{
  abort ();
}

/* A wrong argument inside the program is a fault as well. GLib ends a fatal message with a trap, of
 * which libFuzzer knows nothing; with an abort it keeps the input that led there. */
static inline void
make_criticals_fatal (void)
{
  g_log_set_always_fatal (G_LOG_FATAL_MASK | G_LOG_LEVEL_CRITICAL | G_LOG_LEVEL_WARNING);
  signal (SIGTRAP, abort_on_trap);
}

static inline GPtrArray *
faults_new (void)
{
  return g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
}

/* Each fault says something, in UTF-8, and names @file. */
static inline void
must_name_file (GPtrArray *faults, const char *file)
{
  for (guint i = 0; i < faults->len; i++)
    {
      const GError *fault = faults->pdata[i];
      MUST (g_str_has_prefix (fault->message, file));
      MUST (g_utf8_validate (fault->message, -1, NULL));
    }
}

/* The shipped catalogue: read once, never freed. */
static inline const BwCatalogue *
shipped_catalogue (void)
{
  static BwCatalogue *catalogue = NULL;
  if (catalogue == NULL)
    catalogue = bw_catalogue_new (NULL, NULL);
  return catalogue;
}
