/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "window-private.h"

#include "app/widgets/template.h"

/* Where the person has left the handles: that of the bench, and those between the drawings and their
 * figures. A new window has them as they were last left, and the session has those of each window. */

/* The bench is as wide as so many letters, but leaves the page most of the window where the text is
 * large. */
#define SIDE_CHARS 36
#define SIDE_SHARE 0.3

static void
place_side (BwWindow *self, int set)
{
  gtk_paned_set_position (self->panes, set > 0 ? set : self->usual_side);
}

/* Puts the handles of a new window. */
void
bw_window_place_handles (BwWindow *self)
{
  g_autoptr (GVariant) shares = g_settings_get_value (self->settings, "drawing-shares");
  int side = SIDE_CHARS * bw_char_width (GTK_WIDGET (self)) / PANGO_SCALE;
  int width = g_settings_get_int (self->settings, "window-width");

  self->usual_side = MIN (side, (int) (width * SIDE_SHARE));
  self->shares = g_variant_dict_new (shares);
  place_side (self, g_settings_get_int (self->settings, "side-width"));
}

/* Keeps the handles for the next window. */
void
bw_window_remember_handles (BwWindow *self)
{
  g_settings_set_int (self->settings, "side-width", bw_window_get_side_width (self));
  g_settings_set_value (self->settings, "drawing-shares", bw_window_get_shares (self));
}

/**
 * bw_window_get_side_width:
 *
 * Returns: the width of the bench as the person has set it, in logical pixels; 0 for the usual one
 */
int
bw_window_get_side_width (BwWindow *self)
{
  g_return_val_if_fail (BW_IS_WINDOW (self), 0);
  int position = gtk_paned_get_position (self->panes);
  int least;

  /* The panes do not give the bench less than it needs. */
  g_object_get (self->panes, "min-position", &least, NULL);
  return position == MAX (self->usual_side, least) ? 0 : position;
}

/* What each page that has been made says of its handles; of the others what is known stays. */
static void
gather_shares (BwWindow *self)
{
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  for (guint i = 0; i < n; i++)
    {
      GtkWidget *page = gtk_stack_get_child_by_name (self->pages, kinds[i].id);
      if (page != NULL)
        bw_page_keep_handles (BW_PAGE (page), kinds[i].id, self->shares);
    }
}

/**
 * bw_window_get_shares:
 *
 * Returns: (transfer floating): what share of its page each drawing has been given by the person, by
 *   page and view: a dictionary of numbers between 0 and 1
 */
GVariant *
bw_window_get_shares (BwWindow *self)
{
  g_return_val_if_fail (BW_IS_WINDOW (self), NULL);
  gather_shares (self);
  GVariant *shares = g_variant_dict_end (self->shares); /* which empties it */

  g_variant_dict_unref (self->shares);
  self->shares = g_variant_dict_new (shares);
  return shares;
}

/**
 * bw_window_put_handles:
 * @side_width: as bw_window_get_side_width() gives it
 * @shares: as bw_window_get_shares() gives them
 *
 * Puts all handles where they were left.
 */
void
bw_window_put_handles (BwWindow *self, int side_width, GVariant *shares)
{
  g_return_if_fail (BW_IS_WINDOW (self));
  g_return_if_fail (shares != NULL && g_variant_is_of_type (shares, G_VARIANT_TYPE_VARDICT));
  guint n;
  const BwPageKind *kinds = bw_page_kinds (&n);

  place_side (self, side_width);
  g_variant_dict_unref (self->shares);
  self->shares = g_variant_dict_new (shares);
  for (guint i = 0; i < n; i++)
    {
      GtkWidget *page = gtk_stack_get_child_by_name (self->pages, kinds[i].id);
      if (page != NULL)
        bw_page_put_handles (BW_PAGE (page), kinds[i].id, self->shares);
    }
}
