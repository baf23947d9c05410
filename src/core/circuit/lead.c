/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lead.h"

#include <math.h>
#include <string.h>

/**
 * bw_lead_delay_s_per_m:
 *
 * Returns: 1/(velocity factor × speed of light): about 5 ns for solid polyethylene
 */
double
bw_lead_delay_s_per_m (const BwLeadType *type)
{
  g_return_val_if_fail (type != NULL, 0);
  return 1 / (type->velocity * BW_LIGHT_M_PER_S);
}

/**
 * bw_lead_type_loss_db:
 *
 * By the root law of bw_lead_loss_db(). Good to %BW_LEAD_TOLERANCE at best.
 *
 * Returns: loss of @length_m at @frequency_hz, in decibels
 */
double
bw_lead_type_loss_db (const BwLeadType *type, double length_m, double frequency_hz)
{
  g_return_val_if_fail (type != NULL, 0);
  return bw_lead_loss_db (type->loss_db_per_m * length_m, type->loss_hz, frequency_hz);
}

/**
 * bw_lead_type_3_db_hz:
 *
 * Returns: the frequency at which @length_m loses half of the power; zero for no length
 */
double
bw_lead_type_3_db_hz (const BwLeadType *type, double length_m)
{
  g_return_val_if_fail (type != NULL, 0);
  return bw_lead_3_db_hz (type->loss_db_per_m * length_m, type->loss_hz);
}

/**
 * bw_lead_in_law:
 *
 * Returns: whether the root law holds at @frequency_hz; where it does not, the loss is higher
 */
gboolean
bw_lead_in_law (const BwLeadType *type, double frequency_hz)
{
  g_return_val_if_fail (type != NULL, FALSE);
  return frequency_hz >= type->law_from_hz && frequency_hz <= type->law_to_hz;
}

/**
 * bw_lead_loss_db:
 * @loss_db: of a lead, as a table gives it, at @at_hz
 *
 * By skin effect alone: ∝ √f. A lead with a plated steel centre loses more below a few megahertz
 * than a figure at 100 MHz scales to.
 *
 * Returns: its loss at @frequency_hz; zero if a frequency is not more than zero
 */
double
bw_lead_loss_db (double loss_db, double at_hz, double frequency_hz)
{
  return at_hz > 0 && frequency_hz > 0 ? loss_db * sqrt (frequency_hz / at_hz) : 0;
}

/**
 * bw_lead_3_db_hz:
 *
 * Returns: where a lead of this loss loses half of the power, as bw_lead_loss_db(); zero if
 * nothing is lost
 */
double
bw_lead_3_db_hz (double loss_db, double at_hz)
{
  double ratio = 10 * log10 (2) / loss_db;
  return loss_db > 0 && at_hz > 0 ? at_hz * ratio * ratio : 0;
}

/* Delay between conductors, as a time, on the glass and in pixels. */
static void
compute_shift (const BwLeadCase *what, BwLeadFigures *figures)
{
  figures->shift_s = what->lead.mismatch_m * bw_lead_delay_s_per_m (what->lead.type);
  figures->shift_px = figures->shift_s * what->pixel_clock_hz;
  if (what->active_s > 0)
    figures->shift_m = figures->shift_s / what->active_s * what->width_m / (1 - what->overscan_h);
}

/* As with all limits of detail: 1/TVL² adds, and TV lines go with frequency. */
static void
compute_loss (const BwLeadCase *what, BwLeadFigures *figures)
{
  const BwLead *lead = &what->lead;
  double ratio;

  figures->lead_hz = bw_lead_type_3_db_hz (lead->type, lead->length_m);
  figures->lead_hz_outside_law = !bw_lead_in_law (lead->type, figures->lead_hz);
  if (!(what->top_hz > 0))
    return;
  figures->loss_db = bw_lead_type_loss_db (lead->type, lead->length_m, what->top_hz);
  figures->outside_law = !bw_lead_in_law (lead->type, what->top_hz);
  ratio = what->top_hz / figures->lead_hz;
  figures->lost_share = 1 - 1 / sqrt (1 + ratio * ratio);
  figures->lost_tvl = what->source_tvl * figures->lost_share;
}

/**
 * bw_lead_compute:
 * @figures: (out caller-allocates): all zero without a lead
 *
 * Delay, loss and what they do to the picture.
 */
void
bw_lead_compute (const BwLeadCase *what, BwLeadFigures *figures)
{
  g_return_if_fail (what != NULL && figures != NULL);
  const BwLead *lead = &what->lead;
  *figures = (BwLeadFigures){ 0 };
  if (lead->type == NULL)
    return;
  compute_shift (what, figures);
  if (!(lead->length_m > 0))
    return;
  figures->delay_s = lead->length_m * bw_lead_delay_s_per_m (lead->type);
  compute_loss (what, figures);
}

/**
 * bw_lead_type_find:
 * @types: (element-type BwLeadType)
 *
 * Returns: (transfer none) (nullable): the type whose id is @id
 */
const BwLeadType *
bw_lead_type_find (const GPtrArray *types, const char *id)
{
  g_return_val_if_fail (types != NULL && id != NULL, NULL);
  for (guint i = 0; i < types->len; i++)
    {
      const BwLeadType *type = types->pdata[i];
      if (strcmp (type->id, id) == 0)
        return type;
    }
  return NULL;
}

/**
 * bw_lead_loss_decimals:
 * @loss_db: not negative
 *
 * Losses are known within 30 % at best (data/catalogue/leads.ini), so that two digits say all.
 *
 * Returns: how many digits after the mark a loss is written with, the same wherever it is said
 */
int
bw_lead_loss_decimals (double loss_db)
{
  g_return_val_if_fail (loss_db >= 0, 0);
  return loss_db < 0.1 ? 3 : loss_db < 1 ? 2 : loss_db < 10 ? 1 : 0;
}
