/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any bytes as a bench sheet: refused with faults that name the file, or a sheet of which every
 * cell is judged soundly and which is written and read back the same. */
#include "fuzz.h"

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autoptr (GPtrArray) faults = faults_new ();
  make_criticals_fatal ();
  g_autoptr (BwSheet) sheet = bw_sheet_parse ((const char *) data, size, "fuzzed",
                                              shipped_catalogue (), faults);

  MUST ((sheet != NULL) == (faults->len == 0));
  must_name_file (faults, "fuzzed");
  if (sheet == NULL)
    return 0;
  must_hold (bw_property_sheet (sheet, shipped_catalogue ()));
  g_autoptr (BwSheet) copy = bw_sheet_copy (sheet);
  g_autofree char *text = bw_sheet_to_text (sheet, shipped_catalogue ());
  g_autofree char *copied = bw_sheet_to_text (copy, shipped_catalogue ());
  MUST (g_strcmp0 (text, copied) == 0);
  return 0;
}
