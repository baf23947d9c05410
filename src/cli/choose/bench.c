/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "bench.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/output.h"
#include "cli/base/streams.h"
#include "core/base/keyfile.h"

/**
 * bw_cli_load_catalogue:
 *
 * Faults of the user's own catalogue are warnings on standard error, one line each.
 *
 * Returns: (transfer full): the shipped catalogue with the user's additions
 */
BwCatalogue *
bw_cli_load_catalogue (void)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  g_autofree char *folder = bw_catalogue_user_folder ();
  BwCatalogue *catalogue = bw_catalogue_new (folder, faults);

  for (guint i = 0; i < faults->len; i++)
    bw_cli_complain (_ ("warning: %s"), ((const GError *) faults->pdata[i])->message);
  return catalogue;
}

/**
 * bw_cli_read_sheet:
 * @path: a bench sheet; "-" for standard input
 * @faults: (element-type GError): receives every fault
 *
 * Returns: (transfer full) (nullable): the sheet, as bw_sheet_load() reads it
 */
BwSheet *
bw_cli_read_sheet (const char *path, const BwCatalogue *catalogue, GPtrArray *faults)
{
  g_autofree char *text = NULL;
  GError *error = NULL;
  gsize length;

  if (strcmp (path, "-") != 0)
    return bw_sheet_load (path, catalogue, faults);
  if (bw_cli_read (path, BW_KEYFILE_MAX_BYTES, &text, &length, &error))
    return bw_sheet_parse (text, length, bw_cli_input_name (path), catalogue, faults);
  g_ptr_array_add (faults, error);
  return NULL;
}

/**
 * bw_cli_load_sheet:
 * @path: a bench sheet; "-" for standard input
 *
 * Says the first fault, and how many more there are, in one line on standard error.
 *
 * Returns: (transfer full) (nullable): the sheet
 */
BwSheet *
bw_cli_load_sheet (const char *path, const BwCatalogue *catalogue)
{
  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  BwSheet *sheet = bw_cli_read_sheet (path, catalogue, faults);
  if (sheet != NULL)
    return sheet;

  const GError *first = faults->pdata[0];
  g_autofree char *says = NULL;
  guint more = faults->len - 1;
  if (more == 0)
    says = g_strdup (first->message);
  else
    says = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%1$s (and %2$u more; sheet-check tells it)",
                                         "%1$s (and %2$u more; sheet-check tells them)", more),
                            first->message, more);
  bw_cli_fault (says);
  return NULL;
}
