/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pending.h"

G_DEFINE_INTERFACE (BwPending, bw_pending, G_TYPE_OBJECT)

static void
bw_pending_default_init (BwPendingInterface *iface)
{
}

/**
 * bw_pending_take:
 *
 * Puts what is typed where it belongs.
 *
 * Returns: %FALSE if it is refused; why stands at the field then
 */
gboolean
bw_pending_take (BwPending *self)
{
  g_return_val_if_fail (BW_IS_PENDING (self), FALSE);
  return BW_PENDING_GET_IFACE (self)->take (self);
}

/**
 * bw_pending_reveal:
 *
 * Brings the field into view and moves the focus there.
 */
void
bw_pending_reveal (BwPending *self)
{
  g_return_if_fail (BW_IS_PENDING (self));
  BW_PENDING_GET_IFACE (self)->reveal (self);
}

/**
 * bw_pending_describe:
 *
 * Returns: (transfer full) (nullable): what is typed and where it belongs; of an input or a source
 * it does not say which. %NULL if the field is no part of the sheet
 */
BwTyped *
bw_pending_describe (BwPending *self)
{
  g_return_val_if_fail (BW_IS_PENDING (self), NULL);
  return BW_PENDING_GET_IFACE (self)->describe (self);
}
