/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "core/connector/plug.h"
#include "planner.h"
#include "selection.h"

G_BEGIN_DECLS

/* A plan in words and figures, as it is shown, printed and soldered: what stands in the chain,
 * which pin goes where and through what, what to buy, and what then stands at the input. */

/**
 * BwHookupChoice:
 * @alternative: counted from zero, below %BW_HOOKUP_MAX_ALTERNATIVES; the least chain is the first
 * @series: BwSeries of the resistors
 * @edition: BwEdition of every peritelevision connector on the way
 *
 * What a person chooses about a plan.
 */
typedef struct
{
  guint alternative;
  guint series;
  guint edition;
} BwHookupChoice;

/**
 * BwHookupStep:
 * @kind: BwStepKind
 * @id: of the adaptor in the catalogue; of a setting its own word
 * @name: translated
 * @purpose: what it is there for, in a few words
 * @is_setting: of the set, nothing to buy
 */
typedef struct
{
  guint kind;
  char *id;
  char *name;
  char *purpose;
  gboolean is_setting;
} BwHookupStep;

/**
 * BwHookupHop:
 * @from: the source, or a box
 * @to: a box, or the input
 * @from_connector: BwConnector
 * @to_connector: BwConnector
 * @from_plug: the pins of the first; likewise @to_plug
 * @signal: BwSignal in this lead
 * @sync: BwSyncKind in this lead
 *
 * One lead.
 */
typedef struct
{
  char *from;
  char *to;
  guint from_connector;
  guint to_connector;
  BwPlug from_plug;
  BwPlug to_plug;
  guint signal;
  guint sync;
} BwHookupHop;

/**
 * BwHookupConnection:
 * @hop: index into BwHookup.hops
 * @conductor: BwConductor; %BW_N_CONDUCTORS: none, but a selection pin
 * @select: BwSelect of a selection pin
 * @from_pin: as of BwConnection; of a selection pin zero. Likewise the other three
 * @n: how many resistors of @at there are, counted from the source's end
 * @n_at_end: how many of them, the last ones, stand at the input's end of the lead
 * @coupling_f: capacitor in the conductor; zero: none
 * @terminator_ohm: where the conductor ends at the set, bought for it; zero: none
 * @supply_v: of a selection pin; else zero
 * @signal: the conductor, or what a selection pin selects
 * @from: pin or plug; of a selection pin the supply
 * @from_return: its return
 * @through: what is in between: "straight through", "1.1 kΩ in series"
 */
typedef struct
{
  guint hop;
  guint conductor;
  guint select;
  int from_pin;
  int from_ground;
  int to_pin;
  int to_ground;
  guint n;
  guint n_at_end;
  BwElement at[BW_NETWORK_MAX];
  double coupling_f;
  double terminator_ohm;
  double supply_v;
  char *signal;
  char *from;
  char *from_return;
  char *to;
  char *to_return;
  char *through;
} BwHookupConnection;

/**
 * BwHookupRest:
 * @hop: index into BwHookup.hops
 * @at_far_end: of the connector where the lead ends, else where it begins
 * @number: of the pin, or as of BwConnection for a conductor that is not joined
 * @kind: BwRestKind
 * @pin: that carries none of the conductors
 * @state: what becomes of it: "left open", "to the common ground"
 */
typedef struct
{
  guint hop;
  gboolean at_far_end;
  int number;
  guint kind;
  char *pin;
  char *state;
} BwHookupRest;

/**
 * BwHookupPart:
 * @what: translated
 * @ideal_ohm: exact value; zero: not a resistor, or any of a range
 * @series: BwSeries of @value_ohm; %BW_N_SERIES: not a resistor
 * @value_ohm: preferred value; zero: not a resistor
 * @price: of one; empty: not known
 * @power_w: most that a resistor turns into heat, with the driver standing at its full voltage and
 *   its supply high by %BW_SUPPLY_TOLERANCE; zero: not a resistor
 * @rating_w: to buy: at least 1.5 times @power_w (common practice, no source); zero likewise
 */
typedef struct
{
  char *what;
  double ideal_ohm;
  guint series;
  double value_ohm;
  guint count;
  char *price;
  double power_w;
  double rating_w;
} BwHookupPart;

/**
 * BwHookupLevel:
 * @signal: the conductor
 * @nominal_v: peak to peak at the input: black to white, and sync where the conductor carries it
 * @min_v: the lowest over the tolerance of resistors, and of the supply of a logic output
 * @max_v: the highest over the same tolerances
 */
typedef struct
{
  char *signal;
  double nominal_v;
  double min_v;
  double max_v;
} BwHookupLevel;

/**
 * BwHookupAlternative:
 * @summary: its boxes and parts
 * @verdict_says: @verdict in words, with how many pins are not known
 * @price: empty: not all prices are known, or in different currencies
 */
typedef struct
{
  char *summary;
  guint cost;
  guint verdict;
  char *verdict_says;
  char *price;
} BwHookupAlternative;

/**
 * BwHookup:
 * @choice: as it was asked for
 * @alternative: which of @alternatives this is
 * @plan: (nullable): %NULL: there is none. It borrows from sheet and catalogue
 * @verdict_after: of the fit on what arrives by the plan; no, if there is none
 * @back_ohm: that the end of this lead looks back into: the output's own resistance, or an
 *   attenuator
 * @end_ohm: that the lead of the picture ends in, at the input or at what stands before it; zero
 *   without a plan
 * @monitor: the set; borrowed, as what is in @plan
 * @supply_v: mains at the bench; zero: not known. Likewise @supply_hz
 * @source_match: (nullable): what would match a source that is not of 75 Ω to the lead, and what it
 *   would leave of the picture; %NULL: it is of 75 Ω, or the plan matches it
 * @needs: (element-type utf8): where there is no plan: what stays in the way, and what would help
 *
 * All texts are owned and translated; all arrays own their elements, which are structs of the name.
 */
typedef struct
{
  char *source;
  char *input;
  BwVerdict verdict_before;
  BwVerdict verdict_after;
  BwHookupChoice choice;
  guint alternative;
  BwPlan *plan;
  BwFit fit_before;
  BwFit fit_after;
  double back_ohm;
  double end_ohm;
  const BwMonitor *monitor;
  double supply_v;
  double supply_hz;
  char *source_match;
  GPtrArray *alternatives; /* BwHookupAlternative */
  GPtrArray *steps;        /* BwHookupStep */
  GPtrArray *hops;         /* BwHookupHop */
  GPtrArray *connections;  /* BwHookupConnection */
  GPtrArray *rests;        /* BwHookupRest */
  GPtrArray *parts;        /* BwHookupPart */
  GPtrArray *levels;       /* BwHookupLevel */
  GPtrArray *warnings;     /* char * */
  GPtrArray *needs;        /* char * */
} BwHookup;

#define BW_HOOKUP_ALTERNATIVES 3
#define BW_HOOKUP_MAX_ALTERNATIVES 20

#define BW_HOOKUP_ERROR (bw_hookup_error_quark ())

typedef enum
{
  BW_HOOKUP_ERROR_SOURCE,     /* no such source, or its raster is nowhere */
  BW_HOOKUP_ERROR_INPUT,      /* no such input */
  BW_HOOKUP_ERROR_ALTERNATIVE /* there are fewer */
} BwHookupError;

GQuark bw_hookup_error_quark (void);

BwHookup *bw_hookup_new (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                         guint input, guint alternative, GError **error);
BwHookup *bw_hookup_new_chosen (const BwSheet *sheet, const BwCatalogue *catalogue, guint source,
                                guint input, const BwHookupChoice *choice, GError **error);
gboolean bw_hookup_is_open (const BwHookup *hookup);
void bw_hookup_free (BwHookup *hookup);
char **bw_plan_needs (const BwSheet *sheet, const BwCatalogue *catalogue, guint source, guint input,
                      char mark);
char *bw_hookup_connection_says (const BwHookupConnection *connection);
char *bw_rating_words (double rating_w);
char *bw_hookup_part_power (const BwHookupPart *part, char mark);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwHookup, bw_hookup_free)

G_END_DECLS
