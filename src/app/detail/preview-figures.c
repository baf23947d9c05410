/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-figures.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/column-table.h"
#include "app/widgets/figure-table.h"

#define DIGITS 3
#define COLUMN_PIXELS 2.0 /* below, the mask is not drawn */

typedef struct
{
  GPtrArray *figures;
  const BwPreviewResult *result;
  double scale; /* pixels of the page to a metre */
  char mark;
} Table;

static char *
length (const Table *t, double length_m)
{
  return bw_quantity_format (length_m, BW_DIMENSION_LENGTH, DIGITS, t->mark);
}

static void
add (Table *t, const char *name, const char *value)
{
  g_ptr_array_add (t->figures, bw_figure_new (name, NULL, value));
}

/* A length on the glass, in pixels of the picture and in millimetres. */
static void
add_pixels (Table *t, const char *name, double length_m, const char *remark)
{
  if (!(length_m > 0))
    {
      add (t, name, _ ("not known"));
      return;
    }
  g_autofree char *pixels = bw_quantity_format (length_m * t->scale, BW_DIMENSION_PIXELS, DIGITS,
                                                t->mark);
  g_autofree char *glass = length (t, length_m);
  g_autofree char *text = g_strdup_printf ("%s (%s)%s", pixels, glass, remark);
  add (t, name, text);
}

static void
add_part (Table *t, const BwDetail *detail)
{
  const BwPreview *preview = &t->result->wish.preview;
  double scale = preview->pixels_per_m;
  g_autofree char *width = length (t, preview->width / scale);
  g_autofree char *height = length (t, preview->height / scale);
  g_autofree char *part = g_strdup_printf (_ ("%s by %s"), width, height);
  g_autofree char *across = length (t, preview->centre_x * detail->width_m);
  g_autofree char *down = length (t, preview->centre_y * detail->height_m);
  g_autofree char *pixels = g_strdup_printf (_ ("%d by %d\u00a0px"), preview->width,
                                             preview->height);

  add (t, _ ("Part of the screen"), part);
  add (t, _ ("Its middle, from the left"), across);
  add (t, _ ("Its middle, from the top"), down);
  add (t, _ ("Picture"), pixels);
}

/* A spot narrower than the pixels can show is drawn wider. */
static void
add_spot (Table *t)
{
  double spot_m = t->result->wish.what.spot_m;
  gboolean wider = spot_m > 0 && spot_m * t->scale < BW_PREVIEW_SPOT_PIXELS;
  add_pixels (t, _ ("Spot"), spot_m, wider ? _ (", drawn as 2\u00a0px") : "");
}

static void
add_mask (Table *t, const BwDetail *detail)
{
  gboolean drawn = detail->pitch_h_m * t->scale >= COLUMN_PIXELS;

  if (t->result->wish.what.mask == BW_MASK_MONO)
    add (t, _ ("Mask column"), _ ("no mask"));
  else
    add_pixels (t, _ ("Mask column"), detail->pitch_h_m, drawn ? "" : _ (", too fine to be drawn"));
}

/**
 * bw_preview_table:
 * @density: pixels of the screen to those of the page
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (element-type BwTableFigure): what part is shown, and how large lines,
 *   spot and mask are in it
 */
GPtrArray *
bw_preview_table (const BwPreviewResult *result, double density, char mark)
{
  Table t = { bw_figures_new (), result, result->wish.preview.pixels_per_m / density, mark };
  BwDetail detail;

  bw_detail_compute (&result->wish.what, &detail);
  add_part (&t, &detail);
  add_pixels (&t, _ ("Line pitch"), detail.line_pitch_m, "");
  add_mask (&t, &detail);
  add_spot (&t);
  return t.figures;
}

/* Bursts */

static char *
percent (double share, char mark)
{
  return bw_quantity_format (round (1000 * share) / 1000, BW_DIMENSION_FRACTION,
                             share < 0.1 ? 2 : 3, mark);
}

static char *
measured_words (const BwPreviewResult *result, guint burst, char mark)
{
  switch (result->bursts[burst])
    {
    case BW_BURST_MEASURED:
      return percent (result->modulation[burst], mark);
    case BW_BURST_ABSENT:
      return g_strdup (_ ("not in it"));
    case BW_BURST_OUTSIDE:
      return g_strdup (_ ("not in view"));
    case BW_BURST_TOO_FINE:
    default:
      return g_strdup (_ ("too fine here"));
    }
}

/**
 * bw_preview_burst_table:
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (element-type BwTableLine): the modulation left of each burst, as the
 *   curves have it and as it was measured in the preview; empty if the picture has no bursts
 */
GPtrArray *
bw_preview_burst_table (const BwPreviewResult *result, char mark)
{
  GPtrArray *lines = bw_table_lines_new ();

  if (result->wish.kind != BW_TEST_LINES)
    return lines;
  BwTableLine *head = bw_table_lines_add (lines, BW_LINE_HEAD, _ ("Burst"));
  bw_table_line_add (head, g_strdup (_ ("Computed")));
  bw_table_line_add (head, g_strdup (_ ("Measured")));
  for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
    {
      double tvl = bw_test_burst_tvl[burst];
      g_autofree char *name = bw_quantity_format (tvl, BW_DIMENSION_TV_LINES, 5, mark);
      BwTableLine *line = bw_table_lines_add (lines, BW_LINE_FIGURES, name);
      bw_table_line_add (line, percent (bw_detail_mtf (&result->wish.what, tvl), mark));
      bw_table_line_add (line, measured_words (result, burst, mark));
    }
  return lines;
}
