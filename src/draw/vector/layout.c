/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "view-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "draw/base/scale.h"

/* Where everything lies on the page, and its labels. */

#define FULL_SHARE 1.14  /* at the ring, of the longest vector */
#define LEAST_RADIUS 4.0 /* in heights of a line of text; likewise */
#define TICK_GAP 3.2     /* least from one line of the grid to the next */
#define COLUMN_GAP 1.2
#define DEGREES_STEP 30

void
bw_vector_init_scale (BwVectorLayout *layout)
{
  double gain = bw_levels_gain (&layout->what->video), longest_v = 1e-3;
  for (guint i = 0; i < layout->targets->len; i++)
    longest_v = fmax (longest_v, g_array_index (layout->targets, BwVectorTarget, i).amplitude_v);
  layout->full_v = FULL_SHARE * longest_v * fmax (gain, 1);
}

/* Right edges of the columns, from the left edge of the table; returns its width. */
static double
place_table (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double x = 0;

  layout->table = (BwBox){ 0 };
  if (!bw_vector_keeps (layout, BW_VECTOR_LEAVE_TABLE))
    return 0;
  for (guint column = 0; column < BW_VECTOR_COLUMNS; column++)
    {
      double widest = 0;
      for (guint row = 0; row < bw_vector_rows (layout->targets); row++)
        {
          g_autofree char *text = bw_vector_text_cell (layout->what, row, column, layout->targets);
          if (text[0] != '\0')
            widest = fmax (widest, bw_canvas_measure (canvas, text).width);
        }
      x += widest + (widest > 0 && column > 0 ? COLUMN_GAP * canvas->text_height : 0);
      layout->column_x[column] = x;
    }
  layout->table.width = x;
  layout->table.height = bw_vector_rows (layout->targets) * canvas->text_height * 1.1;
  return x;
}

void
bw_vector_place_all (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double table = place_table (layout), pad = canvas->pad;
  double beside = table > 0 ? table + 4 * pad : 0;
  gboolean degrees = bw_vector_keeps (layout, BW_VECTOR_LEAVE_DEGREES);
  double rim = degrees ? bw_canvas_measure (canvas, "000°").width + 1.5 * pad : pad;
  double rim_y = degrees ? canvas->text_height + 1.5 * pad : pad;
  double room_x = canvas->width - beside - 2 * pad, room_y = layout->words_y - pad;

  layout->radius = fmax (fmin (room_x / 2 - rim, room_y / 2 - rim_y), 1);
  double left = fmax ((room_x + pad - 2 * (layout->radius + rim)) / 2, 0);
  layout->x = left + pad / 2 + layout->radius + rim;
  layout->y = pad / 2 + room_y / 2;
  layout->table.x = fmin (layout->x + layout->radius + rim + 3 * pad + left / 3,
                          canvas->width - pad - table);
  layout->table.y = layout->y - layout->table.height / 2;
  layout->tick_v = bw_nice_tick (TICK_GAP * canvas->text_height * layout->full_v / layout->radius);
}

gboolean
bw_vector_is_large_enough (const BwVectorLayout *layout)
{
  const BwCanvas *canvas = layout->canvas;
  return layout->radius >= LEAST_RADIUS * canvas->text_height
         && layout->table.height < layout->words_y - canvas->pad
         && layout->radius * 2 >= 0.75 * fmin (canvas->width, layout->words_y);
}

/* Labels */

static gboolean
claim_table (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  gboolean all = TRUE;

  for (guint row = 0; row < bw_vector_rows (layout->targets); row++)
    for (guint column = 0; column < BW_VECTOR_COLUMNS; column++)
      {
        g_autofree char *text = bw_vector_text_cell (layout->what, row, column, layout->targets);
        double x = layout->table.x + (column > 0 ? layout->column_x[column] : 0);
        double y = layout->table.y + row * canvas->text_height * 1.1
                   + (row > 0 ? canvas->pad / 3 : 0);
        if (text[0] != '\0')
          all &= bw_canvas_claim_at (canvas, text,
                                     row == 0 ? BW_INK_GRAPHITE_LIGHT : BW_INK_GRAPHITE, x, y,
                                     column > 0 ? 1 : 0, 0);
      }
  return all;
}

static void
claim_degrees (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  for (int degrees = 0; degrees < 360; degrees += DEGREES_STEP)
    {
      double angle = degrees * G_PI / 180, out = layout->radius + 0.75 * canvas->pad;
      g_autofree char *text = g_strdup_printf ("%d°", degrees);
      bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE_LIGHT, layout->x + out * cos (angle),
                          layout->y - out * sin (angle), (1 - cos (angle)) / 2,
                          (1 + sin (angle)) / 2);
    }
}

static void
claim_axis (BwVectorLayout *layout, const char *name, double x, double y, double across,
            double down)
{
  BwLabel label = { (char *) name, bw_canvas_measure (layout->canvas, name), BW_INK_GRAPHITE_LIGHT,
                    PANGO_ALIGN_LEFT, .halo = TRUE };
  label.box.x = x - across * label.box.width;
  label.box.y = y - down * label.box.height;
  bw_canvas_claim (layout->canvas, &label);
}

/* The axes by their names, inside the ring at its right and at its top. */
static void
claim_axes (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  gboolean coded = bw_vector_is_coded (layout->what);
  double inside = layout->radius - canvas->pad / 2;

  claim_axis (layout, coded ? _ ("U (B−Y), mV") : _ ("Pb, mV"), layout->x + inside,
              layout->y - canvas->pad / 4, 1, 1);
  claim_axis (layout, coded ? _ ("V (R−Y), mV") : _ ("Pr, mV"), layout->x + canvas->pad / 2,
              layout->y - inside, 0, 0);
}

/* Beside the lines of the grid, which they do not cross. */
static void
claim_figures (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  double reach_v = layout->full_v * (1 - canvas->text_height / layout->radius);

  for (double v = layout->tick_v; v < reach_v; v += layout->tick_v)
    for (int sign = -1; sign <= 1; sign += 2)
      {
        g_autofree char *text = bw_levels_text_number (sign * v * 1e3, layout->what->mark);
        bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE_LIGHT,
                            bw_vector_x (layout, sign * v) - canvas->pad / 4,
                            layout->y + canvas->pad / 4, 1, 0);
        bw_canvas_claim_at (canvas, text, BW_INK_GRAPHITE_LIGHT, layout->x - canvas->pad / 3,
                            bw_vector_y (layout, sign * v), 1, 1);
      }
}

static gboolean
is_inside (const BwVectorLayout *layout, const BwBox *box)
{
  double dx = fmax (fabs (box->x - layout->x), fabs (box->x + box->width - layout->x));
  double dy = fmax (fabs (box->y - layout->y), fabs (box->y + box->height - layout->y));
  return hypot (dx, dy) < layout->radius;
}

/* Beside its box: first away from the middle, then around it. */
static void
claim_name (BwVectorLayout *layout, const BwVectorTarget *target)
{
  BwCanvas *canvas = layout->canvas;
  const char *name = bw_vector_name (layout->what, target);
  BwBox box = bw_canvas_measure (canvas, name);
  double away = BW_VECTOR_BOX_SHARE * layout->radius + canvas->pad / 2;
  double x = bw_vector_x (layout, target->u_v), y = bw_vector_y (layout, target->v_v);
  double aside_deg = fabs (target->v_v) < 1e-6 ? -45 : 0; /* not on the axis */

  for (int k = 0; k < 16; k++)
    {
      int step = k % 2 != 0 ? (k + 1) / 2 : -k / 2;
      double angle = (target->phase_deg + aside_deg) * G_PI / 180 + step * G_PI / 8;
      box.x = x + cos (angle) * (away + box.width / 2) - box.width / 2;
      box.y = y - sin (angle) * (away + box.height / 2) - box.height / 2;
      BwLabel label = { (char *) name, box, BW_INK_GRAPHITE, PANGO_ALIGN_LEFT, .halo = TRUE };
      if (target->bar == BW_N_BARS)
        label.role = BW_INK_ACCENT;
      if (is_inside (layout, &box) && bw_canvas_claim (canvas, &label))
        return;
    }
}

gboolean
bw_vector_claim_words (BwVectorLayout *layout)
{
  BwCanvas *canvas = layout->canvas;
  g_autofree char *caption = bw_vector_text_caption (layout->what);
  g_autofree char *note = bw_vector_keeps (layout, BW_VECTOR_LEAVE_NOTE)
                              ? bw_vector_text_note (layout->what)
                              : NULL;
  const BwFoot foot = { .caption = caption,
                        .caption_lines = bw_vector_keeps (layout, BW_VECTOR_LEAVE_LONG_CAPTION) ? 2
                                                                                                : 1,
                        .note = note,
                        .note_lines = 2,
                        .below = canvas->pad / 2 };
  return bw_canvas_claim_foot (canvas, &foot, &layout->words_y);
}

/**
 * bw_vector_claim_labels:
 *
 * Claims the places of all labels on and around the plane.
 *
 * Returns: whether those have one that can be left out by a step of #BwVectorLeave
 */
gboolean
bw_vector_claim_labels (BwVectorLayout *layout)
{
  gboolean all = TRUE;
  if (bw_vector_keeps (layout, BW_VECTOR_LEAVE_TABLE))
    all &= claim_table (layout);
  if (bw_vector_keeps (layout, BW_VECTOR_LEAVE_DEGREES))
    claim_degrees (layout);
  claim_axes (layout);
  for (guint i = 0; i < layout->targets->len; i++)
    {
      const BwVectorTarget *target = &g_array_index (layout->targets, BwVectorTarget, i);
      if (!target->switched || target->bar == BW_N_BARS)
        claim_name (layout, target);
    }
  claim_figures (layout);
  return all;
}
