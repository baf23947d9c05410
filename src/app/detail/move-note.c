/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "move-note.h"

#include <glib/gi18n-lib.h>

static char *
quantity (double value, BwDimension dimension)
{
  return bw_quantity_format (value, dimension, 3, bw_quantity_locale_mark ());
}

/* The frequency at which the lead has lost 3 dB, and whether the figures of its type reach that
 * far. */
static char *
lead_note (BwDetailState *state)
{
  const BwLead *lead = bw_detail_state_get_lead (state);
  if (lead->type == NULL)
    return g_strdup (_ ("without a length there is none"));
  double lead_hz = bw_detail_state_get_case (state)->lead_hz;
  g_autofree char *frequency = quantity (lead_hz, BW_DIMENSION_FREQUENCY);
  return g_strdup_printf (bw_lead_in_law (lead->type, lead_hz)
                              ? _ ("−3 dB at %s")
                              : _ ("−3 dB at %s by the root law, which does not hold there"),
                          frequency);
}

/* Who gives the factor. */
static char *
kell_note (BwDetailState *state)
{
  guint kell = bw_detail_state_get_values (state)->kell;
  return g_strdup_printf (_ ("of vertical detail alone; %s"), _ (bw_kell_values[kell].given_by));
}

/* What else there is to say of a value, whether it is moved or not; an empty text if there is
 * nothing. */
static char *
more_of (BwDetailState *state, BwDetailValue value)
{
  const BwDetailCase *what = bw_detail_state_get_case (state);

  switch (value)
    {
    case BW_DETAIL_PITCH_VALUE:
      if (what->mask == BW_MASK_MONO)
        return g_strdup (_ ("a monochrome tube has no mask"));
      return g_strdup (what->mask == BW_MASK_DOT ? _ ("on the diagonal") : _ ("along the line"));
    case BW_DETAIL_SPOT:
      return g_strdup (_ ("at half of its peak"));
    case BW_DETAIL_LEAD_TYPE:
      return lead_note (state);
    case BW_DETAIL_FILTER:
      return g_strdup (what->signal == BW_SIGNAL_COMPOSITE ? "" : _ ("this chain has none"));
    case BW_DETAIL_KELL:
      return kell_note (state);
    case BW_DETAIL_INTERLACE:
      return g_strdup (what->interlaced ? _ ("of vertical detail alone")
                                        : _ ("this picture has no two fields"));
    default:
      return g_strdup ("");
    }
}

static char *
unmoved_note (BwDetailState *state, BwDetailValue value, const char *own)
{
  if (value == BW_DETAIL_HIGHEST && *own == '\0')
    {
      double from_samples_hz = bw_detail_state_get_number (state, value);
      if (!(from_samples_hz > 0))
        return g_strdup (_ ("not known"));
      g_autofree char *frequency = quantity (from_samples_hz, BW_DIMENSION_FREQUENCY);
      return g_strdup_printf (_ ("from its samples: %s"), frequency);
    }
  if (value == BW_DETAIL_LEAD_LENGTH)
    return g_strdup (_ ("none that matters"));
  if (*own == '\0')
    return g_strdup (value == BW_DETAIL_CLAIM ? _ ("nothing is claimed") : _ ("not known"));
  return g_strdup ("");
}

static char *
moved_note (BwDetailValue value, const char *own)
{
  if (*own != '\0')
    return g_strdup_printf (_ ("● moved, from %s"), own);
  return g_strdup (value == BW_DETAIL_LEAD_LENGTH || value == BW_DETAIL_CLAIM
                       ? _ ("● moved, from none")
                       : _ ("● moved, from not known"));
}

/**
 * bw_move_note:
 *
 * Returns: (transfer full): whether @value is moved, and from what; and what else is to be said of
 * it, where that does not make it long
 */
char *
bw_move_note (BwDetailState *state, BwDetailValue value)
{
  gboolean moved = bw_detail_state_is_moved (state, value);
  gboolean measured = bw_detail_state_get_field (state, value)->type == BW_FIELD_QUANTITY;
  g_autofree char *own = bw_detail_state_dup_own_text (state, value);
  g_autofree char *more = moved && measured ? g_strdup ("") : more_of (state, value);
  g_autofree char *first = moved ? moved_note (value, own) : unmoved_note (state, value, own);
  return g_strconcat (first, *first != '\0' && *more != '\0' ? "; " : "", more, NULL);
}
