/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "preview-figures.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#define DIGITS 3
#define COLUMN_PIXELS 2.0 /* a mask of finer columns is not drawn */

typedef struct
{
  BwNode *to;
  const BwPreviewResult *result;
  double scale; /* pixels of the page to a metre */
} Figures;

static const char *
length (const Figures *f, double length_m)
{
  return bw_node_quantity (f->to, length_m, BW_DIMENSION_LENGTH, DIGITS);
}

static void
add (const Figures *f, const char *label, const char *words)
{
  bw_node_figure (f->to, label, bw_value_says (NULL, words));
}

/* A length on the glass, in pixels of the picture and in millimetres. */
static void
add_pixels (const Figures *f, const char *label, double length_m, const char *remark)
{
  if (length_m > 0)
    add (f, label,
         bw_node_print (f->to, "%s (%s)%s",
                        bw_node_quantity (f->to, length_m * f->scale, BW_DIMENSION_PIXELS, DIGITS),
                        length (f, length_m), remark));
  else
    add (f, label, _ ("not known"));
}

static void
add_part (const Figures *f, const BwDetail *detail)
{
  const BwPreview *preview = &f->result->wish.preview;
  double scale = preview->pixels_per_m;

  add (f, _ ("Part of the screen"),
       /* Translators: width by height. */
       bw_node_print (f->to, _ ("%1$s by %2$s"), length (f, preview->width / scale),
                      length (f, preview->height / scale)));
  add (f, _ ("Its middle, from the left"), length (f, preview->centre_x * detail->width_m));
  add (f, _ ("Its middle, from the top"), length (f, preview->centre_y * detail->height_m));
  add (f, _ ("Picture"),
       bw_node_print (f->to, _ ("%1$d by %2$d\u00a0px"), preview->width, preview->height));
}

/* A spot narrower than the pixels can show is drawn wider. */
static void
add_spot (const Figures *f)
{
  double spot_m = f->result->wish.what.spot_m;
  gboolean wider = spot_m > 0 && spot_m * f->scale < BW_PREVIEW_SPOT_PIXELS;
  add_pixels (f, _ ("Spot"), spot_m, wider ? _ (", drawn as 2\u00a0px") : "");
}

static void
add_mask (const Figures *f, const BwDetail *detail)
{
  gboolean drawn = detail->pitch_h_m * f->scale >= COLUMN_PIXELS;

  if (f->result->wish.what.mask == BW_MASK_MONO)
    add (f, _ ("Mask column"), _ ("no mask"));
  else
    add_pixels (f, _ ("Mask column"), detail->pitch_h_m, drawn ? "" : _ (", too fine to be drawn"));
}

/* Bursts */

static BwValue
share_value (const char *key, double share)
{
  return bw_value_fixed (key, share, BW_DIMENSION_FRACTION, "%", 1);
}

static BwValue
measured_value (const BwPreviewResult *result, guint burst)
{
  static const char *const why[] = {
    [BW_BURST_ABSENT] = N_ ("not in it"),
    [BW_BURST_OUTSIDE] = N_ ("not in view"),
    [BW_BURST_TOO_FINE] = N_ ("too fine here"),
  };
  BwBurstState state = result->bursts[burst];

  if (state == BW_BURST_MEASURED)
    return share_value ("measured", result->modulation[burst]);
  return bw_value_or (bw_value_nothing ("measured"), _ (why[state]));
}

static void
add_bursts (BwNode *to, const BwPreviewResult *result)
{
  BwNode *table = bw_node_table (to, "bursts",
                                 _ ("Modulation left of each burst: computed from the "
                                    "links, and measured in the picture beside it"));

  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("burst, TV lines"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("computed"), NULL);
  bw_node_column (table, BW_COLUMN_NUMBERS, _ ("measured"), NULL);
  for (guint burst = 0; burst < BW_N_TEST_BURSTS; burst++)
    {
      double tvl = bw_test_burst_tvl[burst];
      BwNode *row = bw_node_row (table);
      bw_node_cell (row, bw_value_number ("burst_tvl", tvl, 0));
      bw_node_cell (row, share_value ("computed", bw_detail_mtf (&result->wish.what, tvl)));
      bw_node_cell (row, measured_value (result, burst));
    }
}

/**
 * bw_preview_say:
 * @density: pixels of the screen to those of the page
 *
 * Adds what part is shown, how large lines, spot and mask are in it, and the modulation left of each
 * burst, as the curves have it and as it was measured in the preview, if the picture has bursts.
 */
void
bw_preview_say (BwNode *to, const BwPreviewResult *result, double density)
{
  const Figures f = { to, result, result->wish.preview.pixels_per_m / density };
  BwDetail detail;

  bw_detail_compute (&result->wish.what, &detail);
  add_part (&f, &detail);
  add_pixels (&f, _ ("Line pitch"), detail.line_pitch_m, "");
  add_mask (&f, &detail);
  add_spot (&f);
  if (result->wish.kind == BW_TEST_LINES)
    add_bursts (to, result);
}
