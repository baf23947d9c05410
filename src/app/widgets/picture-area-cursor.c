/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "picture-area-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/quantity.h"

/* The two cursors of a picture. The pointer and the arrow keys move the active one; "c" sets the
 * second where the first is, "x" makes the other one active, Escape takes the second away. */

#define STEP 1.0
#define LARGE_STEP 10.0
#define SEARCH_STEP 16.0
#define ROW_STEP 6.0

static BwCursor *
active (BwPictureArea *self)
{
  return &self->cursors[self->active];
}

/* Whether @x, @y reads the same panel of the line as the cursor: there it reads the same time. */
static gboolean
in_panel (BwPictureArea *self, const BwCursor *cursor, double y)
{
  BwPicturePage page = bw_picture_area_page (self);
  BwPicturePoint other;
  return bw_picture_read (self->picture, &page, cursor->x, y, &other)
         && bw_near (other.along, cursor->point.along, 1e-9);
}

/* The y between @inside and @outside where the panel ends. */
static double
panel_edge (BwPictureArea *self, const BwCursor *cursor, double inside, double outside)
{
  while (fabs (inside - outside) > 0.5)
    {
      double between = (inside + outside) / 2;
      if (in_panel (self, cursor, between))
        inside = between;
      else
        outside = between;
    }
  return inside;
}

/* From @from towards @to in steps, the first place that can be read; along x if @across. */
static double
find_edge (BwPictureArea *self, const BwCursor *cursor, gboolean across, double from, double to)
{
  BwPicturePage page = bw_picture_area_page (self);
  BwPicturePoint other;
  double step = from < to ? ROW_STEP : -ROW_STEP;

  for (; (to - from) * step > 0; from += step)
    if (bw_picture_read (self->picture, &page, across ? from : cursor->x,
                         across ? cursor->y : from, &other))
      return from;
  return to;
}

/* Both fields, and all lines of the map, are read along one line: from the first place that can be
 * read down to the last. */
static void
find_rows (BwPictureArea *self, BwCursor *cursor)
{
  BwPicturePage page = bw_picture_area_page (self);

  cursor->top = find_edge (self, cursor, FALSE, 0, cursor->y);
  cursor->bottom = find_edge (self, cursor, FALSE, page.height - 1, cursor->y);
  if (self->picture->style != BW_CURSOR_CROSS)
    return;
  cursor->left = find_edge (self, cursor, TRUE, 0, cursor->x);
  cursor->right = find_edge (self, cursor, TRUE, page.width - 1, cursor->x);
}

/* Two panels of the line have scales of their own, so that a cursor is in one of them only. */
static void
find_panel (BwPictureArea *self, BwCursor *cursor)
{
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  double top = cursor->y, bottom = cursor->y;

  if (cursor->y >= cursor->top && cursor->y <= cursor->bottom)
    return;
  if (self->picture->style != BW_CURSOR_PANEL)
    {
      find_rows (self, cursor);
      return;
    }
  while (top > 0 && in_panel (self, cursor, top))
    top -= SEARCH_STEP;
  while (bottom < height && in_panel (self, cursor, bottom))
    bottom += SEARCH_STEP;
  cursor->top = panel_edge (self, cursor, cursor->y, top);
  cursor->bottom = panel_edge (self, cursor, cursor->y, bottom);
}

static void
place (BwPictureArea *self, BwCursor *cursor)
{
  BwPicturePage page = bw_picture_area_page (self);
  cursor->shown = cursor->set
                  && bw_picture_place (self->picture, &page, &cursor->point, &cursor->x,
                                       &cursor->y);
  cursor->top = cursor->bottom = -1;
  if (cursor->shown)
    find_panel (self, cursor);
}

/**
 * bw_picture_area_place_cursors:
 *
 * Finds where the cursors are after the size or what is shown has changed.
 */
void
bw_picture_area_place_cursors (BwPictureArea *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (self->cursors); i++)
    if (self->cursors[i].set)
      place (self, &self->cursors[i]);
}

/**
 * bw_picture_area_words:
 *
 * Returns: (transfer full): what the cursors read; empty if there are none
 */
char *
bw_picture_area_words (BwPictureArea *self)
{
  const BwCursor *one = active (self);
  if (!one->set)
    return g_strdup ("");
  g_autofree char *words = bw_picture_words (self->picture, &one->point);
  if (!self->cursors[0].set || !self->cursors[1].set)
    return g_steal_pointer (&words);
  g_autofree char *difference = bw_picture_difference (self->picture, &self->cursors[1].point,
                                                       &self->cursors[0].point);
  return *difference != '\0' ? g_strdup_printf ("%s. %s", words, difference)
                             : g_steal_pointer (&words);
}

/**
 * bw_picture_area_move_cursor:
 *
 * Moves the active cursor if there is something to read there.
 *
 * Returns: whether there is
 */
gboolean
bw_picture_area_move_cursor (BwPictureArea *self, double x, double y)
{
  BwPicturePage page = bw_picture_area_page (self);
  BwCursor *cursor = active (self);
  BwPicturePoint point;

  if (self->picture == NULL || !bw_picture_read (self->picture, &page, x, y, &point))
    return FALSE;
  if (!cursor->set)
    cursor->top = cursor->bottom = -1;
  cursor->set = cursor->shown = TRUE;
  cursor->point = point;
  cursor->x = x;
  cursor->y = y;
  find_panel (self, cursor);
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
  return TRUE;
}

/* The first reading by key: the middle of whatever is uppermost. */
static void
start_cursor (BwPictureArea *self)
{
  double width = gtk_widget_get_width (GTK_WIDGET (self));
  double height = gtk_widget_get_height (GTK_WIDGET (self));
  for (double y = SEARCH_STEP; y < height; y += SEARCH_STEP)
    if (bw_picture_area_move_cursor (self, width / 2, y))
      return;
}

static void
on_step (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  const BwCursor *cursor = active (self);
  if (cursor->shown)
    bw_picture_area_move_cursor (self, cursor->x + g_variant_get_double (parameter), cursor->y);
  else
    start_cursor (self);
}

static gboolean
is_elsewhere (BwPictureArea *self, const BwCursor *from, double y)
{
  BwPicturePage page = bw_picture_area_page (self);
  BwPicturePoint point;
  if (!bw_picture_read (self->picture, &page, from->x, y, &point))
    return FALSE;
  if (self->picture->style == BW_CURSOR_PANEL)
    return y < from->top || y > from->bottom;
  return point.row != from->point.row;
}

/* Up and down: through the lines of the map; to the other panel or field elsewhere. */
static void
on_row (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  BwCursor *cursor = active (self);
  double step = g_variant_get_double (parameter);
  double height = gtk_widget_get_height (widget);

  if (!cursor->shown)
    start_cursor (self);
  else if (self->picture->style == BW_CURSOR_CROSS)
    bw_picture_area_move_cursor (self, cursor->x, cursor->y + step);
  else
    for (double y = cursor->y; y > 0 && y < height; y += step > 0 ? SEARCH_STEP : -SEARCH_STEP)
      if (is_elsewhere (self, cursor, y))
        {
          bw_picture_area_move_cursor (self, cursor->x, y);
          return;
        }
}

/**
 * bw_picture_area_set_second:
 *
 * Sets the second cursor, or moves it, to where the first one is; the first one then goes on.
 */
void
bw_picture_area_set_second (BwPictureArea *self)
{
  if (self->picture == NULL)
    return;
  if (!active (self)->set)
    start_cursor (self);
  if (!active (self)->set)
    return;
  self->cursors[1] = *active (self);
  if (self->active == 1)
    self->active = self->cursors[0].set ? 0 : 1;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
on_second (GtkWidget *widget, const char *action, GVariant *parameter)
{
  bw_picture_area_set_second (BW_PICTURE_AREA (widget));
}

static void
on_other (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  if (!self->cursors[1 - self->active].set)
    return;
  self->active = 1 - self->active;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (widget);
}

static void
on_drop (GtkWidget *widget, const char *action, GVariant *parameter)
{
  BwPictureArea *self = BW_PICTURE_AREA (widget);
  self->cursors[1].set = self->cursors[1].shown = FALSE;
  self->active = 0;
  bw_picture_area_tell (self);
  gtk_widget_queue_draw (widget);
}

static void
bind (GtkWidgetClass *widget_class, guint key, const char *action, double step)
{
  gtk_widget_class_add_binding_action (widget_class, key, 0, action, "d", step * STEP);
  gtk_widget_class_add_binding_action (widget_class, key, GDK_CONTROL_MASK, action, "d",
                                       step * LARGE_STEP);
}

/**
 * bw_picture_area_install_cursor:
 *
 * Installs the keys of the cursors.
 */
void
bw_picture_area_install_cursor (GtkWidgetClass *widget_class)
{
  gtk_widget_class_install_action (widget_class, "cursor.step", "d", on_step);
  gtk_widget_class_install_action (widget_class, "cursor.row", "d", on_row);
  gtk_widget_class_install_action (widget_class, "cursor.second", NULL, on_second);
  gtk_widget_class_install_action (widget_class, "cursor.other", NULL, on_other);
  gtk_widget_class_install_action (widget_class, "cursor.drop", NULL, on_drop);
  bind (widget_class, GDK_KEY_Left, "cursor.step", -1);
  bind (widget_class, GDK_KEY_Right, "cursor.step", 1);
  bind (widget_class, GDK_KEY_Up, "cursor.row", -1);
  bind (widget_class, GDK_KEY_Down, "cursor.row", 1);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_c, 0, "cursor.second", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_x, 0, "cursor.other", NULL);
  gtk_widget_class_add_binding_action (widget_class, GDK_KEY_Escape, 0, "cursor.drop", NULL);
}
