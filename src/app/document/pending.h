/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib-object.h>

#include "part.h"

G_BEGIN_DECLS

#define BW_TYPE_PENDING (bw_pending_get_type ())
G_DECLARE_INTERFACE (BwPending, bw_pending, BW, PENDING, GObject)

/**
 * BwPendingInterface:
 * @take: puts what is typed where it belongs. %FALSE if it is refused: why stands at the field then
 * @reveal: brings the field into view and moves the focus there
 * @describe: what is typed and where it belongs; %NULL if that is no part of the sheet
 *
 * A field of the window in which something is typed that is not taken yet. The document keeps a list
 * of them: see bw_document_take_typed().
 */
struct _BwPendingInterface
{
  GTypeInterface parent_interface;

  gboolean (*take) (BwPending *self);
  void (*reveal) (BwPending *self);
  BwTyped *(*describe) (BwPending *self);
};

gboolean bw_pending_take (BwPending *self);
void bw_pending_reveal (BwPending *self);
BwTyped *bw_pending_describe (BwPending *self);

G_END_DECLS
