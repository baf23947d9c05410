/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "adaptor.h"

#include <math.h>
#include <string.h>

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"

G_DEFINE_QUARK (bw-adaptor-error-quark, bw_adaptor_error)

static const BwKind adaptor_kinds[BW_N_ADAPTORS] = {
  [BW_ADAPTOR_LEAD] = { "lead", N_ ("lead") },
  [BW_ADAPTOR_TERMINATOR] = { "terminator", N_ ("terminator") },
  [BW_ADAPTOR_SYNC_ATTENUATOR] = { "sync-attenuator", N_ ("series resistor in sync") },
  [BW_ADAPTOR_VIDEO_ATTENUATOR] = { "video-attenuator", N_ ("matched attenuator") },
  [BW_ADAPTOR_CAPACITOR] = { "coupling-capacitor", N_ ("coupling capacitor") },
  [BW_ADAPTOR_BOX] = { "box", N_ ("box with a supply") },
  [BW_ADAPTOR_CONVERTER] = { "scan-converter", N_ ("scan converter") },
};
const BwKindTable bw_adaptor_kinds = { BW_N_ADAPTORS, adaptor_kinds };

static const BwKind levels[BW_N_LEVELS] = {
  [BW_LEVELS_PASSED] = { "passed", N_ ("as they come") },
  [BW_LEVELS_STANDARD] = { "standard", N_ ("as the standard says") },
};
const BwKindTable bw_adaptor_levels = { BW_N_LEVELS, levels };

#define AT(member) .offset = G_STRUCT_OFFSET (BwAdaptor, member)

static const BwField adaptor_fields[] = {
  { .key = "name", .label = N_ ("Name"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_REQUIRED,
    AT (name), .help = N_ ("What it is called in a plan.") },
  { .key = "origin", .label = N_ ("Figures from"), .type = BW_FIELD_TEXT,
    .flags = BW_FIELD_REQUIRED, AT (origin),
    .help = N_ ("The standard or the data sheet; else “common practice, no source”.") },
  { .key = "note", .label = N_ ("Note"), .type = BW_FIELD_TEXT, .flags = BW_FIELD_LINES,
    AT (note),
    .help = N_ ("What it does not do.") },
  { .key = "kind", .label = N_ ("Kind"), .type = BW_FIELD_CHOICE, .flags = BW_FIELD_REQUIRED,
    AT (kind), .kinds = &bw_adaptor_kinds },
  { .key = "takes_connectors", .label = N_ ("Connectors in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_connectors), .kinds = &bw_connectors },
  { .key = "takes_signals", .label = N_ ("Signal kinds in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_signals), .kinds = &bw_signals },
  { .key = "takes_systems", .label = N_ ("Colour systems in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_systems), .kinds = &bw_colour_systems },
  { .key = "takes_syncs", .label = N_ ("Sync kinds in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_syncs), .kinds = &bw_sync_kinds },
  { .key = "takes_shapes", .label = N_ ("Sync shapes in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_shapes), .kinds = &bw_sync_shapes },
  { .key = "takes_polarities", .label = N_ ("Sync polarities in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_polarities), .kinds = &bw_polarities },
  { .key = "takes_scans", .label = N_ ("Scans in"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (takes_scans), .kinds = &bw_scans },
  { .key = "takes_line_rates", .label = N_ ("Line rates in"), .type = BW_FIELD_BANDS,
    AT (takes_line_rates_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 1e3, .high = 1e6,
    .unit = "kHz" },
  { .key = "takes_field_rates", .label = N_ ("Field rates in"), .type = BW_FIELD_BANDS,
    AT (takes_field_rates_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 1, .high = 1e3,
    .unit = "Hz" },
  { .key = "takes_video", .label = N_ ("Video level in"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND, AT (takes_video_v), .dimension = BW_DIMENSION_VOLTAGE,
    .low = 0.01, .high = 10, .help = N_ ("Black to white, across 75 Ω.") },
  { .key = "takes_sync", .label = N_ ("Sync level in"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND, AT (takes_sync_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 15, .help = N_ ("Peak to peak, at its terminals.") },
  { .key = "takes_sync_resistance", .label = N_ ("Resistance of its sync input"),
    .type = BW_FIELD_QUANTITY, AT (takes_sync_ohm), .dimension = BW_DIMENSION_RESISTANCE,
    .low = 10, .high = 10e6, .unit = NULL,
    .help = N_ ("For sync on a conductor of its own.") },
  { .key = "gives_connectors", .label = N_ ("Connectors out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_connectors), .kinds = &bw_connectors },
  { .key = "gives_signals", .label = N_ ("Signal kinds out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_signals), .kinds = &bw_signals },
  { .key = "gives_systems", .label = N_ ("Colour systems out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_systems), .kinds = &bw_colour_systems },
  { .key = "gives_syncs", .label = N_ ("Sync kinds out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_syncs), .kinds = &bw_sync_kinds },
  { .key = "gives_shapes", .label = N_ ("Sync shape out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_shapes), .kinds = &bw_sync_shapes },
  { .key = "gives_polarities", .label = N_ ("Sync polarity out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_polarities), .kinds = &bw_polarities },
  { .key = "gives_rasters", .label = N_ ("Rasters out"), .type = BW_FIELD_TEXT,
    AT (gives_rasters), .help = N_ ("Ids of rasters, set apart by “;”.") },
  { .key = "levels", .label = N_ ("Levels out"), .type = BW_FIELD_CHOICE, AT (levels),
    .kinds = &bw_adaptor_levels },
  { .key = "gives_video", .label = N_ ("Video level out"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (gives_video_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 10, .help = N_ ("Black to white, across 75 Ω.") },
  { .key = "gives_sync", .label = N_ ("Sync level out"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (gives_sync_v), .dimension = BW_DIMENSION_VOLTAGE, .low = 0.01,
    .high = 15, .help = N_ ("Peak to peak.") },
  { .key = "gives_sync_stated", .label = N_ ("Sync level out is stated"), .type = BW_FIELD_CHOICE,
    AT (gives_sync_load), .kinds = &bw_stated_loads },
  { .key = "gives_sync_resistance", .label = N_ ("Resistance of its sync output"),
    .type = BW_FIELD_QUANTITY, AT (gives_sync_ohm), .dimension = BW_DIMENSION_RESISTANCE,
    .low = 0, .high = 10e3, .unit = "ohm" },
  { .key = "gives_setup", .label = N_ ("Setup out"), .type = BW_FIELD_BANDS,
    .flags = BW_FIELD_ONE_BAND, AT (gives_setup_ire), .dimension = BW_DIMENSION_IRE, .low = -5,
    .high = 20, .unit = "IRE" },
  { .key = "gives_couplings", .label = N_ ("Coupling out"), .type = BW_FIELD_SET,
    .flags = BW_FIELD_UNKNOWN, AT (gives_couplings), .kinds = &bw_couplings },
  { .key = "gives_aspect", .label = N_ ("Aspect ratio out"), .type = BW_FIELD_ASPECT,
    AT (gives_aspect), .help = N_ ("Only if it reshapes the picture, as with bars above it.") },
  { .key = "underscan", .label = N_ ("Can bring the whole picture inside"),
    .type = BW_FIELD_SWITCH, AT (underscan) },
  { .key = "detail", .label = N_ ("Highest video frequency"), .type = BW_FIELD_QUANTITY,
    .flags = BW_FIELD_UNKNOWN, AT (detail_hz), .dimension = BW_DIMENSION_FREQUENCY, .low = 100e3,
    .high = 1e9, .unit = "MHz", .help = N_ ("That it passes; empty: not known.") },
  { .key = "rank", .label = N_ ("Rank"), .type = BW_FIELD_COUNT, .flags = BW_FIELD_UNKNOWN,
    AT (rank), .low = 1, .high = 1000,
    .help = N_ ("How reluctantly it is used; empty: by its kind.") },
  { .key = "price", .label = N_ ("Price"), .type = BW_FIELD_TEXT, AT (price),
    .help = N_ ("A number and a currency, such as “40 EUR”; empty: not known.") },
};
const BwFieldTable bw_adaptor_fields = { G_N_ELEMENTS (adaptor_fields), adaptor_fields };

/**
 * bw_adaptor_new:
 *
 * Returns: (transfer full): an adaptor with the usual presets: 75 Ω for sync, levels as they come
 */
BwAdaptor *
bw_adaptor_new (void)
{
  BwAdaptor *adaptor = g_new0 (BwAdaptor, 1);
  adaptor->name = g_strdup ("");
  adaptor->origin = g_strdup ("");
  adaptor->note = g_strdup ("");
  adaptor->gives_rasters = g_strdup ("");
  adaptor->price = g_strdup ("");
  adaptor->takes_sync_ohm = BW_VIDEO_OHM;
  adaptor->gives_sync_ohm = BW_VIDEO_OHM;
  return adaptor;
}

/**
 * bw_adaptor_copy:
 *
 * Returns: (transfer full): a copy that shares nothing with @adaptor
 */
BwAdaptor *
bw_adaptor_copy (const BwAdaptor *adaptor)
{
  BwAdaptor *copy = g_new0 (BwAdaptor, 1);
  copy->id = g_strdup (adaptor->id);
  bw_fields_copy (&bw_adaptor_fields, copy, adaptor);
  return copy;
}

/**
 * bw_adaptor_free:
 * @adaptor: (nullable) (transfer full): freed with all it owns
 */
void
bw_adaptor_free (BwAdaptor *adaptor)
{
  if (adaptor == NULL)
    return;
  g_free (adaptor->id);
  bw_fields_clear (&bw_adaptor_fields, adaptor);
  g_free (adaptor);
}

/**
 * bw_adaptor_is_box:
 *
 * Returns: whether it needs a supply and changes the signal: a box or a scan converter
 */
gboolean
bw_adaptor_is_box (const BwAdaptor *adaptor)
{
  return adaptor->kind == BW_ADAPTOR_BOX || adaptor->kind == BW_ADAPTOR_CONVERTER;
}

/**
 * bw_adaptor_rank:
 *
 * Leads before passive parts, those before boxes, those before scan converters; a setting of the
 * set comes before all (our own order of reluctance, no source).
 *
 * Returns: how reluctantly it is used
 */
guint
bw_adaptor_rank (const BwAdaptor *adaptor)
{
  static const guint by_kind[BW_N_ADAPTORS] = {
    [BW_ADAPTOR_LEAD] = 2,
    [BW_ADAPTOR_TERMINATOR] = 4,
    [BW_ADAPTOR_SYNC_ATTENUATOR] = 5,
    [BW_ADAPTOR_VIDEO_ATTENUATOR] = 6,
    [BW_ADAPTOR_CAPACITOR] = 6,
    [BW_ADAPTOR_BOX] = 20,
    [BW_ADAPTOR_CONVERTER] = 60,
  };
  return adaptor->rank > 0 ? (guint) adaptor->rank : by_kind[adaptor->kind];
}

/**
 * bw_adaptor_price:
 * @money: (out): the number of the price
 * @unit: (out) (transfer none): what follows it; borrowed from @adaptor
 *
 * Returns: %FALSE if no price is entered, or it is not a number with a unit
 */
gboolean
bw_adaptor_price (const BwAdaptor *adaptor, double *money, const char **unit)
{
  char *end;
  if (!g_ascii_isdigit (*adaptor->price))
    return FALSE;
  *money = g_ascii_strtod (adaptor->price, &end);
  *unit = end + strspn (end, " ");
  return isfinite (*money) && *money <= 1e9 && end > adaptor->price && **unit != '\0'
         && !g_ascii_isdigit (**unit) && !g_ascii_ispunct (**unit);
}

/**
 * bw_adaptor_rasters:
 *
 * Returns: (transfer full): the ids of the rasters that it gives; empty if it keeps the raster
 */
char **
bw_adaptor_rasters (const BwAdaptor *adaptor)
{
  g_auto (GStrv) parts = g_strsplit (adaptor->gives_rasters, ";", -1);
  GPtrArray *ids = g_ptr_array_new ();
  for (char **part = parts; *part != NULL; part++)
    if (*g_strstrip (*part) != '\0')
      g_ptr_array_add (ids, g_strdup (*part));
  g_ptr_array_add (ids, NULL);
  return (char **) g_ptr_array_free (ids, FALSE);
}

static gboolean
fail (BwAdaptorError code, const char *key, const char *says, GError **error)
{
  g_set_error (error, BW_ADAPTOR_ERROR, (int) code, "%s: %s", key, says);
  return FALSE;
}

static gboolean
check_price (const BwAdaptor *adaptor, GError **error)
{
  double money;
  const char *unit;
  if (*adaptor->price == '\0' || bw_adaptor_price (adaptor, &money, &unit))
    return TRUE;
  return fail (BW_ADAPTOR_ERROR_PRICE, "price",
               _ ("not a price; write a number with a decimal point and a currency, such as "
                  "“40 EUR”"),
               error);
}

static gboolean
is_one (guint set)
{
  return (set & (set - 1)) == 0;
}

static gboolean
check_ones (const BwAdaptor *adaptor, GError **error)
{
  const char *key = !is_one (adaptor->gives_shapes)       ? "gives_shapes"
                    : !is_one (adaptor->gives_polarities) ? "gives_polarities"
                    : !is_one (adaptor->gives_couplings)  ? "gives_couplings"
                                                          : NULL;
  const BwBands *setup = &adaptor->gives_setup_ire;

  if (key != NULL)
    return fail (BW_ADAPTOR_ERROR_ONE, key, _ ("only one may be given"), error);
  if (setup->n == 1 && setup->at[0].high > setup->at[0].low)
    return fail (BW_ADAPTOR_ERROR_ONE, "gives_setup", _ ("one value is needed, not a range"),
                 error);
  return TRUE;
}

/* TRUE if it changes anything of the signal itself, and not only the connector. */
static gboolean
changes_signal (const BwAdaptor *adaptor)
{
  return adaptor->gives_signals != 0 || adaptor->gives_systems != 0 || adaptor->gives_syncs != 0
         || adaptor->gives_shapes != 0 || adaptor->gives_polarities != 0
         || *adaptor->gives_rasters != '\0' || adaptor->levels != BW_LEVELS_PASSED
         || adaptor->gives_video_v > 0 || adaptor->gives_sync_v > 0
         || adaptor->gives_setup_ire.n > 0 || adaptor->gives_couplings != 0
         || !bw_ratio_is_none (adaptor->gives_aspect) || adaptor->underscan;
}

static gboolean
check_kind (const BwAdaptor *adaptor, GError **error)
{
  gboolean changes = changes_signal (adaptor);
  gboolean converter = adaptor->kind == BW_ADAPTOR_CONVERTER;
  gboolean rasters = *adaptor->gives_rasters != '\0';

  if (!bw_adaptor_is_box (adaptor) && changes)
    return fail (BW_ADAPTOR_ERROR_GIVES, "kind",
                 _ ("a lead or a passive part gives the signal as it comes; only the kinds box and "
                    "scan-converter may change it"),
                 error);
  if (bw_adaptor_is_box (adaptor) && !changes)
    return fail (BW_ADAPTOR_ERROR_GIVES, "kind",
                 _ ("it changes nothing; name what it gives with one of the keys gives_…"), error);
  if (converter && !rasters)
    return fail (BW_ADAPTOR_ERROR_RASTER, "gives_rasters",
                 _ ("a scan converter needs at least one raster"), error);
  if (!converter && rasters)
    return fail (BW_ADAPTOR_ERROR_RASTER, "gives_rasters",
                 _ ("only a scan converter gives another raster"), error);
  if (converter && (adaptor->gives_signals == 0 || adaptor->gives_syncs == 0))
    return fail (BW_ADAPTOR_ERROR_GIVES, "gives_signals",
                 _ ("a scan converter needs gives_signals and gives_syncs"), error);
  return TRUE;
}

static gboolean
check_syncs (const BwAdaptor *adaptor, GError **error)
{
  guint syncs = adaptor->gives_syncs;

  for (guint signal = 0; signal < BW_N_SIGNALS && syncs != 0; signal++)
    if ((adaptor->gives_signals & BW_BIT (signal)) && !(syncs & bw_signal_syncs (signal)))
      {
        g_autofree char *words = bw_kind_set_labels (&bw_sync_kinds, syncs);
        g_set_error (error, BW_ADAPTOR_ERROR, BW_ADAPTOR_ERROR_SYNC,
                     _ ("gives_syncs: %1$s cannot come with %2$s"), words,
                     bw_kind_label (&bw_signals, signal));
        return FALSE;
      }
  if (syncs != 0 && adaptor->levels != BW_LEVELS_STANDARD && adaptor->gives_sync_v <= 0)
    return fail (BW_ADAPTOR_ERROR_SYNC, "gives_syncs",
                 _ ("the level of the new sync is missing: gives_sync, or levels=standard"), error);
  return TRUE;
}

static gboolean
check_systems (const BwAdaptor *adaptor, GError **error)
{
  guint coded = BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);
  gboolean all_coded = adaptor->takes_signals != 0 && !(adaptor->takes_signals & ~coded);

  if (!(adaptor->gives_signals & coded) || adaptor->gives_systems != 0 || all_coded)
    return TRUE;
  return fail (BW_ADAPTOR_ERROR_SYSTEM, "gives_systems",
               _ ("it makes composite or Y/C: name the colour system"), error);
}

/**
 * bw_adaptor_check:
 *
 * Checks what the fields alone cannot say: that it gives something, that sync kinds and colour
 * systems suit what it gives, and that the price is one.
 *
 * Returns: %FALSE with @error in %BW_ADAPTOR_ERROR that names the key
 */
gboolean
bw_adaptor_check (const BwAdaptor *adaptor, GError **error)
{
  return check_kind (adaptor, error) && check_ones (adaptor, error)
         && check_syncs (adaptor, error) && check_systems (adaptor, error)
         && check_price (adaptor, error);
}
