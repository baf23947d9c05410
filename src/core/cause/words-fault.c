/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "cause-private.h"

#include <math.h>

#include <glib/gi18n-lib.h>

/* One fault in words, with its numbers. */

#define DIGITS 3

typedef BwCauseWords Words;

static char *
volts (double value, char mark)
{
  return bw_quantity_format (value, BW_DIMENSION_VOLTAGE, DIGITS, mark);
}

static char *
ohms (double value, char mark)
{
  return bw_quantity_format (value, BW_DIMENSION_RESISTANCE, DIGITS, mark);
}

static char *
share (double value, char mark)
{
  return bw_quantity_format (value, BW_DIMENSION_FRACTION, DIGITS, mark);
}

static char *
number (const char *format, double value, char mark)
{
  char text[G_ASCII_DTOSTR_BUF_SIZE];
  g_ascii_formatd (text, sizeof text, format, value);
  g_strdelimit (text, ".", mark);
  return g_strdup (text);
}

static char *
farads (double value, char mark)
{
  return bw_quantity_format (value, BW_DIMENSION_CAPACITANCE, DIGITS, mark);
}

static char *
decibels (double value, char mark)
{
  g_autofree char *text = number ("%.1f", value, mark);
  return g_strdup_printf ("%s dB", text);
}

/* The reading that says most: white, else sync. */
static BwScopeReading
main_reading (const Words *w)
{
  return w->right->at[BW_SCOPE_WHITE].high > 0 ? BW_SCOPE_WHITE : BW_SCOPE_SYNC;
}

static const char *
main_name (const Words *w)
{
  return main_reading (w) == BW_SCOPE_WHITE ? _ ("white") : _ ("sync");
}

static char *
main_here (const Words *w)
{
  return volts (w->cause->predicted[main_reading (w)].high, w->mark);
}

static char *
main_right (const Words *w)
{
  return volts (w->right->at[main_reading (w)].high, w->mark);
}

static char *
says_load (const Words *w)
{
  g_autofree char *ratio = number ("%.2f", w->fault->ratio, w->mark);
  g_autofree char *db = number ("%+.2f", 20 * log10 (w->fault->ratio), w->mark);
  g_autofree char *ohm = ohms (w->fault->ohm, w->mark);
  g_autofree char *right_ohm = ohms (w->c->load_ohm, w->mark);
  g_autofree char *what = NULL;

  switch (w->fault->kind)
    {
    case BW_FAULT_UNTERMINATED:
      what = g_strdup_printf (_ ("the line is not terminated and ends in %1$s; %2$s at its end"),
                              ohm, right_ohm);
      break;
    case BW_FAULT_TERMINATED:
      what = g_strdup_printf (_ ("the line ends in %1$s; taking the 75 Ω away, to leave %2$s,"),
                              ohm, right_ohm);
      break;
    case BW_FAULT_TWO_LOADS:
      what = g_strdup_printf (_ ("the line is terminated twice and ends in %s; taking one 75 Ω "
                                 "away"),
                              ohm);
      break;
    case BW_FAULT_THREE_LOADS:
      what = g_strdup_printf (_ ("the line is terminated three times and ends in %s; taking two "
                                 "75 Ω away"),
                              ohm);
      break;
    default:
      what = g_strdup_printf (_ ("the line ends in %1$s; %2$s instead"), ohm, right_ohm);
      break;
    }
  if (w->cause->n_faults > 1)
    return g_strdup_printf (
        _ ("Every level is %1$s times what it should be (%2$s\u00a0dB): %3$s cures "
           "that."),
        ratio, db, what);
  g_autofree char *here = main_here (w);
  g_autofree char *right = main_right (w);
  return g_strdup_printf (
      _ ("Every level is %1$s times what it should be (%2$s\u00a0dB): %3$s brings %4$s from "
         "%5$s to %6$s."),
      ratio, db, what, main_name (w), here, right);
}

static char *
says_levels (const Words *w)
{
  const BwLevelFormFacts *facts = bw_level_form_facts (w->fault->which);
  g_autofree char *white = volts (facts->white_v, w->mark);
  g_autofree char *sync = volts (facts->sync_v, w->mark);
  g_autofree char *right_white = volts (w->c->form.white_v, w->mark);
  g_autofree char *right_sync = volts (w->c->form.sync_v, w->mark);
  return g_strdup_printf (
      _ ("The levels are those of another standard (%1$s): white %2$s and sync %3$s, "
         "not %4$s and %5$s."),
      bw_kind_label (&bw_level_forms, w->fault->which), white, sync, right_white, right_sync);
}

static char *
says_setup (const Words *w)
{
  gboolean added = w->fault->kind == BW_FAULT_SETUP_ADDED;
  double ire = added ? 7.5 : w->c->form.setup_ire;
  g_autofree char *setup = bw_quantity_format (ire, BW_DIMENSION_IRE, DIGITS, w->mark);
  g_autofree char *level = volts (w->c->form.white_v * ire / 100, w->mark);
  return g_strdup_printf (added
                              ? _ ("There is setup that should not be there: black stands %1$s "
                                   "(%2$s) above blanking.")
                              : _ (
                                  "The setup of %1$s (%2$s) is missing: black stands at blanking."),
                          setup, level);
}

static char *
says_drive (const Words *w)
{
  const char *drive = bw_kind_label (&bw_sync_drives, w->fault->which);
  g_autofree char *here = volts (w->cause->predicted[BW_SCOPE_SYNC].high, w->mark);
  g_autofree char *right = volts (w->right->at[BW_SCOPE_SYNC].high, w->mark);
  return g_strdup_printf (_ ("The sync is driven otherwise (%1$s): %2$s here, not %3$s."), drive,
                          here, right);
}

static char *
says_bars (const Words *w)
{
  g_autofree char *here = volts (w->cause->predicted[BW_SCOPE_WHITE].high, w->mark);
  g_autofree char *right = volts (w->right->at[BW_SCOPE_WHITE].high, w->mark);
  return g_strdup_printf (_ ("The picture is at 75 %%, as bars of 75 %% are: white %1$s, where a "
                             "full picture gives %2$s."),
                          here, right);
}

static char *
says_wire (const Words *w)
{
  const char *here = bw_kind_label (&bw_conductors, w->c->conductor);

  if (w->fault->kind == BW_FAULT_OTHER_CONDUCTOR)
    return g_strdup_printf (_ ("The wire of %1$s carries %2$s: the conductors are exchanged."),
                            here, bw_kind_label (&bw_conductors, w->fault->which));
  if (bw_conductor_carries_sync (w->c->conductor, w->c->form.signal, w->fault->which))
    return g_strdup_printf (
        _ ("%1$s carries sync that should not be there: the source gives %2$s."), here,
        bw_kind_label (&bw_sync_kinds, w->fault->which));
  return g_strdup_printf (_ ("%s carries no sync: the source gives it on conductors of its own."),
                          here);
}

static char *
says_inverted (const Words *w)
{
  if (!bw_conductor_is_sync_alone (w->c->conductor))
    return g_strdup (_ ("The signal is upside down: it passes an inverting stage that does not belong there."));
  return w->c->inverted
             ? g_strdup (_ ("The sync is upside down, as the source gives it: the inverter that this input "
                            "needs is missing, or is not switched in."))
             : g_strdup (_ ("The sync is upside down: the source is set to the other polarity, or there is an "
                            "inverter in the lead that does not belong there."));
}

static char *
says_attenuator (const Words *w)
{
  gboolean missing = w->fault->kind == BW_FAULT_ATTENUATOR_MISSING;
  double loss_db = missing ? -20 * log10 (w->c->pad_ratio) : (double) w->fault->which;
  g_autofree char *size = w->fault->ohm > 0 ? ohms (w->fault->ohm, w->mark)
                                            : decibels (loss_db, w->mark);
  g_autofree char *ratio = number ("%.3g", w->fault->ratio, w->mark);
  g_autofree char *
      what = g_strdup_printf (missing
                                  ? _ ("The attenuator of %1$s in the lead is missing, which makes "
                                       "the level %2$s times what it should be.")
                              : w->c->pad_ratio < 1
                                  ? _ ("There is a second attenuator, such as %1$s, in the lead, which "
                                       "makes the level %2$s times what it should be.")
                                  : _ ("There is an attenuator, such as %1$s, in the lead, which "
                                       "makes the level %2$s times what it should be."),
                              size, ratio);
  if (w->cause->n_faults > 1)
    return g_steal_pointer (&what);
  g_autofree char *here = main_here (w);
  g_autofree char *right = main_right (w);
  return g_strdup_printf (_ ("%1$s It stands at %2$s instead of %3$s."), what, here, right);
}

/* What a capacitor does to the picture, where it is known. */
static char *
tilt_words (const Words *w)
{
  if (!(w->fault->farad > 0) || !(w->cause->predicts & BW_BIT (BW_SCOPE_FIELD_TILT)))
    return g_strdup ("");
  g_autofree char *farad = farads (w->fault->farad, w->mark);
  g_autofree char *line = share (w->cause->predicted[BW_SCOPE_LINE_TILT].high, w->mark);
  g_autofree char *field = share (w->cause->predicted[BW_SCOPE_FIELD_TILT].high, w->mark);
  return g_strdup_printf (
      _ ("A capacitor of %1$s tilts a white picture by %2$s over a line and %3$s "
         "over a field."),
      farad, line, field);
}

/* Both sentences, where there is a second one. */
static char *
with_tilt (char *sentence, const char *tilt)
{
  if (*tilt == '\0')
    return sentence;
  char *both = g_strdup_printf ("%s %s", sentence, tilt);
  g_free (sentence);
  return both;
}

static char *
says_coupling (const Words *w)
{
  g_autofree char *tilt = tilt_words (w);

  if (w->fault->kind == BW_FAULT_OTHER_CAPACITOR)
    {
      g_autofree char *right = farads (w->c->capacitor_f, w->mark);
      return with_tilt (g_strdup_printf (_ ("The coupling capacitor is no longer %s."), right),
                        tilt);
    }
  g_autofree char *low = volts (w->cause->predicted[BW_SCOPE_DC].low, w->mark);
  g_autofree char *high = volts (w->cause->predicted[BW_SCOPE_DC].high, w->mark);
  return with_tilt (g_strdup_printf (_ ("The line is a.c. coupled and not clamped: blanking moves "
                                        "with the picture, from %1$s to %2$s."),
                                     low, high),
                    tilt);
}

static char *
says_dc (const Words *w)
{
  double dc_v = w->readings->at[BW_SCOPE_DC];
  double ohm = bw_conductor_is_sync_alone (w->c->conductor) ? w->c->sync_ohm : w->c->source_ohm;
  g_autofree char *here = volts (dc_v, w->mark);
  g_autofree char *open = volts (dc_v * (w->c->load_ohm + ohm) / w->c->load_ohm, w->mark);
  return g_strdup_printf (_ ("Blanking stands at %1$s: there is d.c. of %2$s behind the source's "
                             "resistance that nothing holds back."),
                          here, open);
}

static char *
says_other_load (const Words *w)
{
  g_autofree char *here = main_here (w);
  g_autofree char *right = main_right (w);
  g_autofree char *ohm = ohms (w->fault->ohm, w->mark);
  g_autofree char *right_ohm = ohms (w->c->load_ohm, w->mark);
  return g_strdup_printf (_ ("The line ends in %1$s, by the level: %2$s is %3$s, and %4$s at %5$s. "
                             "See to its termination."),
                          ohm, main_name (w), here, right, right_ohm);
}

static char *
says_other_driver (const Words *w)
{
  g_autofree char *here = volts (w->cause->predicted[BW_SCOPE_SYNC].high, w->mark);
  g_autofree char *right = volts (w->right->at[BW_SCOPE_SYNC].high, w->mark);
  g_autofree char *driver = ohms (w->fault->ohm, w->mark);
  return g_strdup_printf (_ ("Logic goes straight into one load of 75 Ω, without the resistor that "
                             "belongs there: %1$s instead of %2$s, if the driver has %3$s. Fit the "
                             "resistor that Hook-up names, or take the 75 Ω away."),
                          here, right, driver);
}

static char *
says_gain (const Words *w)
{
  g_autofree char *ratio = number ("%.2f", w->fault->ratio, w->mark);
  g_autofree char *db = number ("%+.1f", 20 * log10 (w->fault->ratio), w->mark);
  gboolean low = w->fault->ratio < 1;

  switch (w->fault->kind)
    {
    case BW_FAULT_PICTURE_GAIN:
      return g_strdup_printf (_ ("The picture alone is %1$s times what it should be (%2$s\u00a0dB), sync "
                                 "is right: look at the source's video gain, or at whether it "
                                 "shows a full white at all."),
                              ratio, db);
    case BW_FAULT_SYNC_GAIN:
      return g_strdup_printf (low ? _ ("Sync alone is %1$s times what it should be (%2$s\u00a0dB), the "
                                       "picture is right: sync is compressed or clipped on the "
                                       "way, as by an overdriven amplifier or a wrong clamp.")
                                  : _ ("Sync alone is %1$s times what it should be (%2$s\u00a0dB), the "
                                       "picture is right: it is raised where it is inserted."),
                              ratio, db);
    case BW_FAULT_BURST_GAIN:
      return g_strdup_printf (low ? _ ("The burst alone is %1$s times what it should be (%2$s\u00a0dB): "
                                       "high frequencies are lost on the way, as in a long lead, a "
                                       "poor joint or a trap; colour fades before white does.")
                                  : _ ("The burst alone is %1$s times what it should be (%2$s\u00a0dB): "
                                       "high frequencies are raised, as by an equaliser for a "
                                       "longer lead."),
                              ratio, db);
    default:
      return g_strdup_printf (_ ("Everything is %1$s times what it should be (%2$s\u00a0dB), which no "
                                 "termination gives: set the gain of the source, or of what "
                                 "distributes it."),
                              ratio, db);
    }
}

/**
 * bw_fault_says:
 *
 * Returns: (transfer full): a sentence or two on one fault of a cause
 */
char *
bw_fault_says (const BwCauseWords *w)
{
  switch (w->fault->kind)
    {
    case BW_FAULT_UNTERMINATED:
    case BW_FAULT_TERMINATED:
    case BW_FAULT_TWO_LOADS:
    case BW_FAULT_THREE_LOADS:
    case BW_FAULT_50_OHM:
      return says_load (w);
    case BW_FAULT_NO_SIGNAL:
      return g_strdup (_ ("Nothing arrives: the conductor is open, or shorted to its return."));
    case BW_FAULT_OTHER_LEVELS:
      return says_levels (w);
    case BW_FAULT_SETUP_ADDED:
    case BW_FAULT_SETUP_MISSING:
      return says_setup (w);
    case BW_FAULT_OTHER_DRIVE:
      return says_drive (w);
    case BW_FAULT_BARS_75:
      return says_bars (w);
    case BW_FAULT_INVERTED:
      return says_inverted (w);
    case BW_FAULT_OTHER_CONDUCTOR:
    case BW_FAULT_OTHER_SYNC:
      return says_wire (w);
    case BW_FAULT_ATTENUATOR_MISSING:
    case BW_FAULT_ATTENUATOR_ADDED:
      return says_attenuator (w);
    case BW_FAULT_AC_COUPLED:
    case BW_FAULT_OTHER_CAPACITOR:
      return says_coupling (w);
    case BW_FAULT_DC_OFFSET:
      return says_dc (w);
    case BW_FAULT_OTHER_LOAD:
      return says_other_load (w);
    case BW_FAULT_OTHER_DRIVER:
      return says_other_driver (w);
    case BW_FAULT_GAIN:
    case BW_FAULT_PICTURE_GAIN:
    case BW_FAULT_SYNC_GAIN:
    case BW_FAULT_BURST_GAIN:
      return says_gain (w);
    case BW_FAULT_NONE:
    case BW_N_FAULTS:
    default:
      return g_strdup ("");
    }
}
