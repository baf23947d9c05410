/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/base/field.h"

G_BEGIN_DECLS

/* Coaxial leads: delay and loss. Law: loss in decibels grows with the root of frequency and with
 * length (skin effect). It is not true below @law_from_hz, where current flows in a plated-steel
 * centre, nor above @law_to_hz, where the dielectric adds its own loss: real loss is higher. */

/**
 * BwLeadType:
 * @id: in the catalogue
 * @source: standard or custom that gives the figures
 * @z_ohm: characteristic resistance
 * @velocity: of the signal, as a share of that of light
 * @loss_text: decibels over 100 m at @loss_hz, as written: "3.6 dB"
 * @loss_db_per_m: from @loss_text
 * @loss_hz: where the loss is stated
 * @law_from_hz: lowest frequency at which the law holds
 * @law_to_hz: highest
 */
typedef struct
{
  char *id;
  char *name;
  char *source;
  char *note;
  double z_ohm;
  double velocity;
  char *loss_text;
  double loss_db_per_m;
  double loss_hz;
  double law_from_hz;
  double law_to_hz;
} BwLeadType;

/**
 * BwLead:
 * @type: (nullable): borrowed; %NULL: no lead that matters
 * @length_m: zero: no lead
 * @mismatch_m: longest conductor less shortest
 */
typedef struct
{
  const BwLeadType *type;
  double length_m;
  double mismatch_m;
} BwLead;

/**
 * BwLeadFigures:
 * @delay_s: of the whole lead
 * @loss_db: at @top_hz of the case
 * @outside_law: that figure is outside of the law, so that the real loss is higher
 * @lead_hz: frequency at which the lead loses 3 dB; zero: no lead. BwDetailCase.lead_hz
 * @lead_hz_outside_law: likewise of @lead_hz
 * @lost_share: share of the source's TV lines that the lead takes (limits combine as 1/TVL²)
 * @lost_tvl: TV lines lost; zero where @source_tvl is not known
 * @shift_s: between the fastest and the slowest conductor
 * @shift_m: on the glass; zero where the tube or the raster is not known
 * @shift_px: in pixels; zero where the raster has none
 */
typedef struct
{
  double delay_s;
  double loss_db;
  gboolean outside_law;
  double lead_hz;
  gboolean lead_hz_outside_law;
  double lost_share;
  double lost_tvl;
  double shift_s;
  double shift_m;
  double shift_px;
} BwLeadFigures;

/**
 * BwLeadCase:
 * @top_hz: highest frequency of the source; zero: not known
 * @source_tvl: TV lines that @top_hz gives (bw_tvl_from_hz()); zero: not known
 * @active_s: active line time of the raster; zero: no raster
 * @pixel_clock_hz: of the raster; zero: none
 * @width_m: viewable width of the tube; zero: no tube
 * @overscan_h: share of the scanned width beyond the viewable area
 */
typedef struct
{
  BwLead lead;
  double top_hz;
  double source_tvl;
  double active_s;
  double pixel_clock_hz;
  double width_m;
  double overscan_h;
} BwLeadCase;

#define BW_LEAD_TOLERANCE 0.30 /* of the losses in the catalogue, which no maker states */
#define BW_LIGHT_M_PER_S 299792458.0

#define BW_LEAD_ERROR (bw_lead_error_quark ())

typedef enum
{
  BW_LEAD_ERROR_LOSS, /* not a number of decibels */
  BW_LEAD_ERROR_LAW   /* its band is empty or does not hold the frequency of the stated loss */
} BwLeadError;

extern const BwFieldTable bw_lead_fields;

GQuark bw_lead_error_quark (void);

GPtrArray *bw_lead_types_load (const char *text, gsize length, const char *file, GPtrArray *faults);
GPtrArray *bw_lead_types_shipped (void);
GPtrArray *bw_lead_types_new (const char *user_folder, GPtrArray *faults);
const BwLeadType *bw_lead_type_find (const GPtrArray *types, const char *id);
void bw_lead_type_free (BwLeadType *type);

double bw_lead_loss_db (double loss_db, double at_hz, double frequency_hz);
double bw_lead_3_db_hz (double loss_db, double at_hz);
double bw_lead_delay_s_per_m (const BwLeadType *type);
double bw_lead_type_loss_db (const BwLeadType *type, double length_m, double frequency_hz);
double bw_lead_type_3_db_hz (const BwLeadType *type, double length_m);
gboolean bw_lead_in_law (const BwLeadType *type, double frequency_hz);
void bw_lead_compute (const BwLeadCase *what, BwLeadFigures *figures);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwLeadType, bw_lead_type_free)

int bw_lead_loss_decimals (double loss_db);

G_END_DECLS
