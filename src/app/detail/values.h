/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/circuit/lead.h"
#include "core/detail/detail.h"

G_BEGIN_DECLS

/* What can be moved on the Detail page. */
typedef enum
{
  BW_DETAIL_DIAGONAL,
  BW_DETAIL_PITCH_VALUE,
  BW_DETAIL_SPOT,
  BW_DETAIL_BANDWIDTH,
  BW_DETAIL_HIGHEST, /* frequency of the source */
  BW_DETAIL_LEAD_LENGTH,
  BW_DETAIL_LEAD_TYPE,
  BW_DETAIL_FILTER,
  BW_DETAIL_KELL,
  BW_DETAIL_INTERLACE,
  BW_DETAIL_CLAIM,
  BW_N_DETAIL_VALUES
} BwDetailValue;

/**
 * BwDetailValues:
 * @lead_m: length; zero: no lead that matters
 * @lead: which of the types of BwDetailFields
 * @kell: which of bw_kell_values
 *
 * What a form shows of a BwDetailState. The others are as the members of BwDetailCase of the same
 * names.
 */
typedef struct
{
  double diagonal_m;
  double pitch_m;
  double spot_m;
  double bandwidth_hz;
  double detail_hz;
  double lead_m;
  guint lead;
  guint filter;
  guint kell;
  double interlace;
  double claimed_lines;
  double claimed_half_digit;
} BwDetailValues;

/**
 * BwDetailFields:
 * @at: how each value is named, read and shown, as a member of BwDetailValues
 * @leads: (element-type BwLeadType): the shipped ones and the user's
 *
 * The fields of a form; not to be moved in memory.
 */
typedef struct
{
  BwField at[BW_N_DETAIL_VALUES];
  GPtrArray *leads;
  BwKind *lead_kinds;
  BwKindTable lead_table;
  BwKind kell_kinds[BW_N_KELL_VALUES];
  BwKindTable kell_table;
} BwDetailFields;

void bw_detail_fields_init (BwDetailFields *fields);
void bw_detail_fields_clear (BwDetailFields *fields);

void bw_detail_values_from (BwDetailValues *values, const BwDetailCase *what);
void bw_detail_value_copy (const BwField *field, BwDetailValues *to, const BwDetailValues *from);
gboolean bw_detail_value_differs (const BwField *field, const BwDetailValues *a,
                                  const BwDetailValues *b);

G_END_DECLS
