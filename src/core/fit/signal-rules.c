/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "fit-private.h"

#include <glib/gi18n-lib.h>

#include "core/connector/plug.h"
#include "core/raster/colour-system.h"

/* Rules on what the source gives and the input takes: the kind of signal, its colour system, and
 * the lead between their connectors. */

/* What must be known besides to say what turns the signal into one that the input takes: composite
 * without a subcarrier is luminance, and encoders and scan converters take some rasters only. */
static gboolean
needs_for_converter (BwFinding *f, const BwCase *c)
{
  guint coded = BW_BIT (BW_SIGNAL_YC) | BW_BIT (BW_SIGNAL_COMPOSITE);
  gboolean three = c->source->signal == BW_SIGNAL_RGB || c->source->signal == BW_SIGNAL_COMPONENT;

  if (c->source->signal == BW_SIGNAL_COMPOSITE && !BW_NEEDS_SOURCE (f, c, system))
    return FALSE;
  return !(three && (c->input->signals & coded)) || bw_finding_needs_raster (f, c);
}

/**
 * bw_rule_signal_kind_judge:
 *
 * The input takes the source's kind of signal, or something turns the one into the other. An input for
 * luminance alone is given that of component video and of Y/C, and of RGB green, which is the largest part
 * of it: 0.587 (ITU-R BT.601), so that pure red and blue come out black.
 */
void
bw_rule_signal_kind_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  BwSignal signal = bw_case_signal (c);
  BwRemedyKind converter = bw_case_signal_converter (c);

  if (!BW_NEEDS_SOURCE (f, c, signal) || !BW_NEEDS_INPUT (f, c, signals)
      || (c->input->signals & BW_BIT (c->source->signal)) || !needs_for_converter (f, c))
    return;
  if (converter != BW_REMEDY_NONE)
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_NOT_TAKEN, converter);
  else if (signal == BW_SIGNAL_LUMA)
    f->reason = BW_REASON_MONOCHROME;
  else if (signal == BW_SIGNAL_RGB && c->input->signals == BW_BIT (BW_SIGNAL_LUMA))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_GREEN_ALONE, BW_REMEDY_LUMA_MATRIX);
  else if (signal == BW_SIGNAL_COMPOSITE)
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_SUBCARRIER_SEEN, BW_REMEDY_NONE);
  else if (c->input->signals == BW_BIT (BW_SIGNAL_LUMA))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_COLOUR_LOST, BW_REMEDY_NONE);
  else
    bw_finding_set (f, BW_SEVERITY_FATAL, BW_REASON_OUT_OF_REACH, BW_REMEDY_NONE);
}

char *
bw_rule_signal_kind_says (const BwSaying *s)
{
  const char *signal = bw_kind_label (&bw_signals, s->c->source->signal);
  g_autofree char *takes = bw_kind_set_labels (&bw_signals, s->c->input->signals);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_TAKEN:
      return g_strdup_printf (_ ("The source gives %1$s; this input takes %2$s."), signal, takes);
    case BW_REASON_MONOCHROME:
      return g_strdup_printf (_ ("The source gives %1$s, which this input (%2$s) shows in "
                                 "monochrome."),
                              signal, takes);
    case BW_REASON_COLOUR_LOST:
      return g_strdup_printf (_ ("Only the luminance of %s is connected: the picture is in "
                                 "monochrome."),
                              signal);
    case BW_REASON_GREEN_ALONE:
      return g_strdup (_ ("A monochrome input: green alone, through a lead, gives a picture in which red "
                          "and blue are black. A matrix of R, G and B gives each its right grey."));
    case BW_REASON_SUBCARRIER_SEEN:
      return g_strdup (_ ("This input takes luminance only: the picture is in monochrome and the "
                          "colour subcarrier shows as fine dots."));
    case BW_REASON_OUT_OF_REACH:
      return g_strdup_printf (_ ("The source gives %1$s; this input takes %2$s, and neither an "
                                 "encoder nor a scan converter takes this raster."),
                              signal, takes);
    default:
      return g_strdup_printf (_ ("This input takes %s."), signal);
    }
}

/**
 * bw_rule_colour_system_judge:
 *
 * The input's decoder handles the colour system of a composite or Y/C source. RGB and component
 * need no decoder; a converter in the way makes its own. The value is the subcarrier. Of a system that
 * it does not decode it shows the luminance: the remedy is for those who want the colour as well.
 */
void
bw_rule_colour_system_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  guint coded = BW_BIT (BW_SIGNAL_COMPOSITE) | BW_BIT (BW_SIGNAL_YC);
  BwColourSystem system = c->source->system;

  if (!BW_NEEDS_SOURCE (f, c, signal) || !BW_NEEDS_INPUT (f, c, signals))
    return;
  if (!(coded & BW_BIT (c->source->signal)) || !(c->input->signals & coded))
    {
      f->reason = BW_REASON_NOT_NEEDED;
      return;
    }
  if (!BW_NEEDS_SOURCE (f, c, system))
    return;
  if (system == BW_SYSTEM_NONE)
    {
      f->reason = BW_REASON_MONOCHROME;
      return;
    }
  if (!BW_NEEDS_INPUT (f, c, systems))
    return;
  bw_finding_measure (f, BW_DIMENSION_FREQUENCY,
                      bw_ratio_to_double (bw_system_facts (system)->subcarrier_hz));
  if (c->input->systems == BW_BIT (BW_SYSTEM_NONE))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_SUBCARRIER_SEEN, BW_REMEDY_NONE);
  else if (!(c->input->systems & bw_systems_decoded_alike (system)))
    bw_finding_set (f, BW_SEVERITY_TIGHT, BW_REASON_COLOUR_LOST, BW_REMEDY_COLOUR_TRANSCODER);
}

static char *
colour_lost_text (const BwSaying *s, const char *system)
{
  /* That it takes monochrome as well is no system that it decodes. */
  guint systems = s->c->input->systems & ~BW_BIT (BW_SYSTEM_NONE);
  g_autofree char *decodes = bw_kind_set_labels (&bw_colour_systems, systems);
  return g_strdup_printf (_ ("The source is %1$s (subcarrier %2$s); this input decodes %3$s: a lead "
                             "alone gives a picture in monochrome. Colour takes a transcoder."),
                          system, s->value, decodes);
}

char *
bw_rule_colour_system_says (const BwSaying *s)
{
  const char *system = bw_kind_label (&bw_colour_systems, s->c->source->system);

  switch (s->f->reason)
    {
    case BW_REASON_NOT_NEEDED:
      return g_strdup (_ ("No colour decoder of this input is in the way."));
    case BW_REASON_MONOCHROME:
      return g_strdup (_ ("The source has no subcarrier: the picture is in monochrome, as it is "
                          "meant to be."));
    case BW_REASON_SUBCARRIER_SEEN:
      return g_strdup_printf (_ ("A monochrome set: the picture is in monochrome and the colour "
                                 "subcarrier of %s shows as fine dots."),
                              s->value);
    case BW_REASON_COLOUR_LOST:
      return colour_lost_text (s, system);
    default:
      return g_strdup_printf (_ ("This input decodes %1$s (subcarrier %2$s)."), system, s->value);
    }
}

/* What nobody says at the connector of the input that says most. */
static guint
open_at_input (const BwCase *c, BwSyncKind sync)
{
  guint least = G_MAXUINT;

  for (guint i = 0; i < BW_N_CONNECTORS; i++)
    {
      if (!(c->input->connectors & BW_BIT (i))
          || !bw_connector_takes (i, bw_case_signal (c), sync, FALSE))
        continue;
      guint open = bw_connector_open_pins (i, &c->input->pins, bw_case_signal (c), sync, FALSE);
      if (least == G_MAXUINT || open == 0)
        least = open;
    }
  return least != G_MAXUINT ? least : 0;
}

/* The contacts that the lead ends at and that nobody lays down. Of a plan they are known. */
static BwOpenPins
open_pins (const BwCase *c, BwSyncKind sync)
{
  if (c->source->joined)
    return c->source->open;
  if (c->source->signal >= BW_N_SIGNALS || c->source->syncs == 0)
    return (BwOpenPins){ 0 };
  return (BwOpenPins){ bw_connector_open_pins (c->source->connector, &c->source->pins,
                                               bw_case_signal (c), sync, TRUE),
                       open_at_input (c, sync) };
}

/* Without its pins a lead cannot be made, and is not called whole. */
static void
judge_pins (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  BwOpenPins open = open_pins (c, sync);

  if (bw_open_pins_count (&open) == 0)
    return;
  bw_finding_lack (f, open.at_source != 0
                          ? (BwLack){ bw_field_find (&bw_source_fields, "pins"), BW_OWNER_SOURCE }
                          : (BwLack){ bw_field_find (&bw_input_fields, "pins"), BW_OWNER_INPUT });
  f->reason = BW_REASON_OPEN_PINS;
  f->as.lead.open = open;
}

/**
 * bw_rule_lead_judge:
 *
 * Which lead joins the two connectors, and whether each pin of it is known. The two 21-pin forms fit
 * each other mechanically and must never be joined pin to pin.
 */
void
bw_rule_lead_judge (const BwCase *c, BwSyncKind sync, BwFinding *f)
{
  guint crossing = BW_BIT (BW_CONNECTOR_PERITELEVISION) | BW_BIT (BW_CONNECTOR_JAPANESE_21);

  if (!BW_NEEDS_SOURCE (f, c, connector) || !BW_NEEDS_INPUT (f, c, connectors))
    return;
  guint from = BW_BIT (c->source->connector);
  guint to = c->input->connectors;
  if (to & from)
    f->reason = BW_REASON_SAME_CONNECTOR;
  else if ((from & crossing) && (to & crossing))
    bw_finding_set (f, BW_SEVERITY_CURABLE, BW_REASON_CROSSED, BW_REMEDY_CROSSED_LEAD);
  else
    f->reason = BW_REASON_ADAPTING_LEAD;
  if (f->severity == BW_SEVERITY_OK)
    judge_pins (c, sync, f);
}

static char *
open_pins_text (const BwSaying *s, const char *from, const char *to)
{
  const BwOpenPins *open = &s->f->as.lead.open;
  g_autofree char *name = bw_open_pins_name (open);
  guint n = bw_open_pins_count (open);

  /* Translators: %3$s is what the pins carry and where, such as: R, G, B, ground at the source */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "A lead from %1$s to %2$s, complete but for %4$u pin: %3$s. No "
                                       "standard lays it down: enter it from the papers.",
                                       "A lead from %1$s to %2$s, complete but for %4$u pins: %3$s. No "
                                       "standard lays them down: enter them from the papers.",
                                       n),
                          from, to, name, n);
}

char *
bw_rule_lead_says (const BwSaying *s)
{
  const char *from = bw_kind_label (&bw_connectors, s->c->source->connector);
  g_autofree char *to = bw_kind_set_labels (&bw_connectors, s->c->input->connectors);

  switch (s->f->reason)
    {
    case BW_REASON_SAME_CONNECTOR:
      return g_strdup_printf (_ ("A lead with %s at both ends."), from);
    case BW_REASON_OPEN_PINS:
      return open_pins_text (s, from, to);
    case BW_REASON_CROSSED:
      return g_strdup (_ ("The two 21-pin forms fit each other and differ in their pins: a "
                          "straight lead puts a supply on a ground. Never join them pin to pin."));
    default:
      return g_strdup_printf (_ ("A lead from %1$s to %2$s."), from, to);
    }
}
