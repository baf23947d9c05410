/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-options.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "cli/base/arguments.h"
#include "cli/base/output.h"
#include "core/raster/colour-system.h"

#define AT(member) G_STRUCT_OFFSET (BwDetailOptions, member)

/* Options that are members of a monitor or a source, read and checked as in a bench sheet. */
static const struct
{
  const char *option;
  gsize offset;
  gboolean of_source;
  const char *key;
} members[] = {
  { "--diagonal", AT (diagonal), FALSE, "diagonal" },
  { "--aspect", AT (aspect), FALSE, "aspect" },
  { "--mask", AT (mask), FALSE, "mask" },
  { "--pitch", AT (pitch), FALSE, "pitch" },
  { "--spot", AT (spot), FALSE, "spot" },
  { "--bandwidth", AT (bandwidth), FALSE, "bandwidth" },
  { "--claim", AT (claim), FALSE, "claimed_lines" },
  { "--kind", AT (kind), TRUE, "signal" },
  { "--system", AT (system), TRUE, "system" },
  { "--detail", AT (highest), TRUE, "detail" },
};

static gboolean
read_member (gsize i, const char *raw, const BwDetailChain *chain)
{
  const BwFieldTable *table = members[i].of_source ? &bw_source_fields : &bw_monitor_fields;
  gpointer object = members[i].of_source ? (gpointer) chain->source : chain->monitor;
  const BwField *field = bw_field_find (table, members[i].key);
  g_autoptr (GError) error = NULL;
  g_autofree char *given = bw_argument_utf8 (raw);
  gsize length = strlen (given);
  gboolean bare = field->dimension == BW_DIMENSION_TV_LINES && length > 0
                  && g_ascii_isdigit (given[length - 1]);
  g_autofree char *text = bare ? g_strconcat (given, " lines", NULL) : g_strdup (given);

  if (bw_field_parse (field, object, text, bw_argument_mark (text), &error))
    return TRUE;
  bw_cli_complain ("%s: %s", members[i].option, error->message);
  return FALSE;
}

/**
 * bw_detail_options_read_chain:
 * @chain: its monitor, input and source take what was given in place of their own figures
 *
 * Returns: %FALSE, having said why in one line, if a figure is not right
 */
gboolean
bw_detail_options_read_chain (const BwDetailOptions *own, const BwDetailChain *chain)
{
  for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
    {
      const char *raw = G_STRUCT_MEMBER (char *, own, members[i].offset);
      if (raw != NULL && !read_member (i, raw, chain))
        return FALSE;
    }
  if (own->bandwidth != NULL && chain->input != NULL)
    chain->input->bandwidth_hz = 0; /* or it would stand before the option */
  return TRUE;
}

/* A plain number above zero and up to one; @factor keeps its value if @raw is NULL. */
static gboolean
read_factor (const char *option, const char *raw, double *factor)
{
  if (raw == NULL)
    return TRUE;
  g_autofree char *text = bw_argument_utf8 (raw);
  const char *rest;
  double value;
  if (!bw_argument_number (text, &value, &rest) || *rest != '\0' || !(value > 0 && value <= 1))
    {
      bw_cli_complain (_ ("%1$s: “%2$s” is not a factor above 0 and up to 1, such as 0.7"), option,
                       text);
      return FALSE;
    }
  *factor = value;
  return TRUE;
}

/* What the digits of a claim leave open; that it is a claim was looked at before. */
static void
take_claim_digits (const BwDetailOptions *own, BwDetailCase *what)
{
  if (own->claim == NULL)
    return;
  g_autofree char *text = bw_argument_utf8 (own->claim);
  const BwReadAs as = { .mark = bw_argument_mark (text), .allowed = { 10, 5000 } };
  BwMeasured measured;
  if (bw_quantity_read (text, BW_DIMENSION_TV_LINES, &as, &measured, NULL))
    what->claimed_half_digit = measured.half_digit;
}

/**
 * bw_detail_options_read_case:
 * @what: takes what was given of its filter, lead and factors
 *
 * Returns: as bw_detail_options_read_chain()
 */
gboolean
bw_detail_options_read_case (const BwDetailOptions *own, BwDetailCase *what)
{
  take_claim_digits (own, what);
  return (own->filter == NULL
          || bw_argument_kind (&bw_luma_filters, '-', own->filter, &what->filter))
         && (own->lead == NULL
             || bw_argument_quantity ("--lead", own->lead, BW_DIMENSION_FREQUENCY, &what->lead_hz))
         && read_factor ("--kell", own->kell, &what->kell)
         && read_factor ("--interlace", own->interlace, &what->interlace);
}

/* Options that have no meaning without a raster. */
static char *
needs_raster (const BwDetailOptions *own)
{
  const struct
  {
    const char *option;
    const char *given;
  } needing[] = {
    { "--kind", own->kind },
    { "--detail", own->highest },
    { "--filter", own->filter },
    { "--lead", own->lead },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (needing); i++)
    if (needing[i].given != NULL)
      return g_strdup_printf (_ ("%s needs --raster"), needing[i].option);
  return NULL;
}

static gboolean
is_of_raster (BwColourSystem system, const BwRaster *raster)
{
  BwRasterFigures figures;

  bw_raster_figures (raster, &figures);
  return bw_system_suits_field_rate (system, figures.field_rate_hz);
}

static char *
system_clash (const BwDetailOptions *own, const BwDetailChain *chain)
{
  BwColourSystem system = chain->source->system;

  if (own->kind == NULL && own->system == NULL && own->raster == NULL)
    return NULL; /* a sheet's own, which was checked */
  if (!bw_signal_is_coded (chain->source->signal))
    return NULL;
  if (own->kind != NULL && own->system == NULL && system == BW_SYSTEM_NONE)
    return g_strdup_printf (_ ("--kind %s needs --system"),
                            bw_kind_id (&bw_signals, chain->source->signal));
  if (!is_of_raster (system, chain->raster))
    return g_strdup_printf (_ ("%1$s is a system of other field rates than raster %2$s"),
                            bw_kind_id (&bw_colour_systems, system), chain->raster->id);
  return NULL;
}

/* A tube is no narrower than it is high, and no wider than this. */
#define ASPECT_MAX 4

/**
 * bw_detail_options_clash:
 * @chain: has read its figures, and has its raster
 *
 * Returns: (transfer full) (nullable): what does not go together of the options, translated
 */
char *
bw_detail_options_clash (const BwDetailOptions *own, const BwDetailChain *chain)
{
  double aspect = bw_ratio_to_double (chain->monitor->aspect);

  if (own->aspect != NULL && !(aspect >= 1 && aspect <= ASPECT_MAX))
    return g_strdup_printf (_ ("--aspect: a tube of %1$d:%2$d is not between 1:1 and %3$d:1"),
                            (int) chain->monitor->aspect.num, (int) chain->monitor->aspect.den,
                            ASPECT_MAX);
  if (own->pitch != NULL && chain->monitor->mask == BW_MASK_MONO)
    return g_strdup (_ ("--pitch is of a mask, and a mono tube has none"));
  return chain->raster == NULL ? needs_raster (own) : system_clash (own, chain);
}

/**
 * bw_detail_options_warn:
 *
 * Says in one line which of the options are not counted for want of a raster.
 */
void
bw_detail_options_warn (const BwDetailOptions *own, const BwDetailChain *chain)
{
  g_autoptr (GString) list = g_string_new (own->bandwidth != NULL ? "--bandwidth" : "");

  if (chain->raster != NULL)
    return;
  if (own->kell != NULL)
    g_string_append_printf (list, "%s--kell", list->len > 0 ? ", " : "");
  if (own->interlace != NULL)
    g_string_append_printf (list, "%s--interlace", list->len > 0 ? ", " : "");
  if (list->len > 0)
    bw_cli_complain (_ ("not counted without --raster: %s"), list->str);
}

/**
 * bw_detail_options_entries:
 * @own: (out): set to nothing given; must outlive the returned entries, and be cleared with
 *   bw_detail_options_clear()
 *
 * Returns: (transfer full) (element-type GOptionEntry): the options that fill @own; ends in an
 * empty one
 */
GArray *
bw_detail_options_entries (BwDetailOptions *own)
{
  *own = (BwDetailOptions){ 0 };
  const GOptionEntry entries[] = {
    { "source", 's', 0, G_OPTION_ARG_FILENAME, &own->source,
      N_ ("The source of the sheet, by name or number"), N_ ("SOURCE") },
    { "input", 'i', 0, G_OPTION_ARG_FILENAME, &own->input,
      N_ ("The input of the sheet, by name or number"), N_ ("INPUT") },
    { "diagonal", 0, 0, G_OPTION_ARG_FILENAME, &own->diagonal, N_ ("Viewable diagonal of the tube"),
      N_ ("LENGTH") },
    { "aspect", 0, 0, G_OPTION_ARG_FILENAME, &own->aspect, N_ ("Its width to height"), N_ ("W:H") },
    { "mask", 0, 0, G_OPTION_ARG_FILENAME, &own->mask, N_ ("Its mask: grille, slot, dot or mono"),
      N_ ("grille|slot|dot|mono") },
    { "pitch", 'p', 0, G_OPTION_ARG_FILENAME, &own->pitch, N_ ("Its pitch, as quoted"),
      N_ ("LENGTH") },
    { "spot", 0, 0, G_OPTION_ARG_FILENAME, &own->spot, N_ ("Width of the spot at half of its peak"),
      N_ ("LENGTH") },
    { "bandwidth", 0, 0, G_OPTION_ARG_FILENAME, &own->bandwidth,
      N_ ("Of the video amplifiers, at -3 dB; needs a raster"), N_ ("FREQUENCY") },
    { "raster", 'r', 0, G_OPTION_ARG_FILENAME, &own->raster,
      N_ ("The raster that is shown, of the catalogue"), N_ ("ID") },
    { "kind", 'k', 0, G_OPTION_ARG_FILENAME, &own->kind, N_ ("The signal kind"), N_ ("KIND") },
    { "system", 0, 0, G_OPTION_ARG_FILENAME, &own->system,
      N_ ("The colour system of composite or Y/C"), N_ ("ID") },
    { "detail", 0, 0, G_OPTION_ARG_FILENAME, &own->highest,
      N_ ("The highest frequency of the source, in place of its samples"), N_ ("FREQUENCY") },
    { "filter", 0, 0, G_OPTION_ARG_FILENAME, &own->filter,
      N_ ("What parts colour from composite: trap (assumed) or comb"), N_ ("trap|comb") },
    { "lead", 0, 0, G_OPTION_ARG_FILENAME, &own->lead, N_ ("Where the lead has lost 3 dB"),
      N_ ("FREQUENCY") },
    { "kell", 0, 0, G_OPTION_ARG_FILENAME, &own->kell,
      N_ ("Lines resolved for each line scanned; 0.7 if not given"), N_ ("FACTOR") },
    { "interlace", 0, 0, G_OPTION_ARG_FILENAME, &own->interlace,
      N_ ("A further factor where there are two fields; 1 if not given"), N_ ("FACTOR") },
    { "claim", 0, 0, G_OPTION_ARG_FILENAME, &own->claim,
      N_ ("TV lines per picture height that are claimed"), N_ ("LINES") },
    G_OPTION_ENTRY_NULL,
  };
  GArray *array = g_array_new (TRUE, TRUE, sizeof (GOptionEntry));
  return g_array_append_vals (array, entries, G_N_ELEMENTS (entries));
}

/**
 * bw_detail_options_clear:
 *
 * Frees what the options left.
 */
void
bw_detail_options_clear (BwDetailOptions *own)
{
  char **texts[] = { &own->source, &own->input, &own->raster,   &own->filter,
                     &own->lead,   &own->kell,  &own->interlace };
  for (gsize i = 0; i < G_N_ELEMENTS (texts); i++)
    g_clear_pointer (texts[i], g_free);
  for (gsize i = 0; i < G_N_ELEMENTS (members); i++)
    g_clear_pointer (&G_STRUCT_MEMBER (char *, own, members[i].offset), g_free);
}
