/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Any text as a quantity, a ratio and bands, of every dimension and with either mark: an error that
 * says something, or a finite value that is written and read back exactly. */
#include "fuzz.h"

#include <math.h>
#include <string.h>

/* Longer texts find nothing new and take long. */
#define LENGTH_MAX 200

static void
must_be_error (const GError *error)
{
  MUST (error != NULL && error->domain == BW_QUANTITY_ERROR);
  MUST (*error->message != '\0' && g_utf8_validate (error->message, -1, NULL));
}

static void
must_read_back (double value, BwDimension dimension, char mark)
{
  g_autofree char *file = bw_quantity_to_file (value, dimension, NULL);
  g_autofree char *entry = bw_quantity_to_entry (value, dimension, NULL, mark);
  g_autofree char *shown = bw_quantity_format (value, dimension, 5, mark);
  double back = 0;

  MUST (bw_quantity_parse (file, dimension, BW_FILE_MARK, &back, NULL));
  MUST (fabs (back - value) <= 0);
  MUST (bw_quantity_parse (entry, dimension, mark, &back, NULL));
  MUST (fabs (back - value) <= 0);
  MUST (bw_property_plain (shown));
  MUST (bw_quantity_parse (shown, dimension, mark, &back, NULL));
}

static void
check_value (const char *text, BwDimension dimension, char mark)
{
  g_autoptr (GError) error = NULL;
  double value = -12345;

  if (!bw_quantity_parse (text, dimension, mark, &value, &error))
    {
      must_be_error (error);
      MUST (fabs (value + 12345) <= 0);
      return;
    }
  MUST (isfinite (value));
  must_read_back (value, dimension, mark);
}

static void
check_ratio (const char *text, BwDimension dimension)
{
  g_autoptr (GError) error = NULL;
  BwRatio ratio = BW_RATIO_NONE, back = BW_RATIO_NONE;

  if (!bw_quantity_parse_ratio (text, dimension, &ratio, &error))
    {
      must_be_error (error);
      return;
    }
  MUST (ratio.den > 0);
  /* Written exactly as long as its terms are exact as doubles. */
  if (ABS (ratio.num) > ((gint64) 1 << 43) || ratio.den > ((gint64) 1 << 43))
    return;
  g_autofree char *again = bw_quantity_format_ratio (ratio, dimension);
  MUST (bw_quantity_parse_ratio (again, dimension, &back, NULL));
  MUST (bw_ratio_compare (ratio, back) == 0);
}

static void
check_bands (const char *text, BwDimension dimension, char mark)
{
  g_autoptr (GError) error = NULL;
  BwBands bands = { 0 }, back = { 0 };

  if (!bw_quantity_parse_bands (text, dimension, mark, &bands, &error))
    {
      must_be_error (error);
      return;
    }
  MUST (bands.n <= BW_BANDS_MAX);
  for (guint i = 0; i < bands.n; i++)
    MUST (bands.at[i].low <= bands.at[i].high);
  g_autofree char *entry = bw_quantity_bands_to_entry (&bands, dimension, NULL, mark);
  MUST (bw_quantity_parse_bands (entry, dimension, mark, &back, NULL));
  MUST (bands.n == back.n);
  for (guint i = 0; i < bands.n; i++)
    {
      MUST (fabs (bands.at[i].low - back.at[i].low) <= 0);
      MUST (fabs (bands.at[i].high - back.at[i].high) <= 0);
    }
}

int
LLVMFuzzerTestOneInput (const uint8_t *data, size_t size)
{
  g_autofree char *text = g_strndup ((const char *) data, MIN (size, LENGTH_MAX));

  make_criticals_fatal ();
  for (BwDimension dimension = 0; dimension < BW_N_DIMENSIONS; dimension++)
    {
      check_value (text, dimension, '.');
      check_value (text, dimension, ',');
      if (dimension == BW_DIMENSION_FREQUENCY) /* all that ratios are kept for */
        check_ratio (text, dimension);
      check_bands (text, dimension, '.');
      check_bands (text, dimension, ',');
    }
  return 0;
}
