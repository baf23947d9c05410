/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "words.h"

#include <math.h>

#include <glib/gi18n-lib.h>

#include "core/base/quantity.h"

#define DIGITS 3

typedef struct
{
  const BwSyncMix *mix;
  const BwSyncAfc *afc;
  const BwSyncRun *run;
  char mark;
  GPtrArray *says;
} Writer;

static void
say (Writer *writer, char *sentence)
{
  g_ptr_array_add (writer->says, sentence);
}

static char *
time_text (double time_s, char mark)
{
  return bw_quantity_format (time_s, BW_DIMENSION_TIME, DIGITS, mark);
}

static char *
share_text (double share, char mark)
{
  return bw_quantity_format (share, BW_DIMENSION_FRACTION, DIGITS, mark);
}

static gboolean
is_standard (const BwSyncMix *mix)
{
  return mix->what.gate == BW_SYNC_GATE_STANDARD;
}

static const char *
polarity_label (guint polarity)
{
  return bw_kind_label (&bw_polarities, polarity);
}

/**
 * bw_sync_mix_name:
 *
 * Returns: (transfer full): what the result is, such as "H AND V"
 */
char *
bw_sync_mix_name (const BwSyncMixCase *what)
{
  g_return_val_if_fail (what != NULL, NULL);
  if (what->gate == BW_SYNC_GATE_STANDARD)
    return g_strdup (_ ("composite sync"));
  return g_strdup_printf ("H %s V", bw_kind_label (&bw_sync_gates, what->gate));
}

/* Both signals must be there */

static char *
inverters_text (const BwSyncMixCase *what)
{
  gboolean h, v;
  bw_sync_gate_wants (what->gate, what->h_polarity, what->v_polarity, &h, &v);
  if (h && v)
    return g_strdup (_ ("put an inverter into H and one into V, or take the other of AND and OR"));
  return g_strdup_printf (_ ("put an inverter into %s, or use XOR or XNOR"), h ? "H" : "V");
}

static const char *
form_text (BwSyncForm form)
{
  switch (form)
    {
    case BW_SYNC_FORM_LINE_ONLY:
      return _ ("V makes no sync tip, so field sync is lost");
    case BW_SYNC_FORM_FIELD_ONLY:
      return _ ("H makes no sync tip outside field sync, so line sync is lost there");
    default:
      return _ ("there is a tip only where H and V fall together");
    }
}

static void
say_form (Writer *writer)
{
  const BwSyncMixCase *what = &writer->mix->what;
  if (writer->mix->form == BW_SYNC_FORM_COMPOSITE)
    return;
  g_autofree char *remedy = inverters_text (what);
  say (writer,
       g_strdup_printf (_ ("%1$s of %2$s H and %3$s V is no composite sync: %4$s; %5$s."),
                        bw_kind_label (&bw_sync_gates, what->gate),
                        polarity_label (what->h_polarity), polarity_label (what->v_polarity),
                        form_text (writer->mix->form), remedy));
}

/* Edges */

static const BwSyncLine *
line_at (const BwSyncRun *run, guint i)
{
  return &g_array_index (run->lines, BwSyncLine, i);
}

/**
 * bw_sync_run_span_text:
 * @span: of bw_sync_run_spans()
 *
 * Returns: (transfer full): such as "late by 4.7 µs" or "missing"
 */
char *
bw_sync_run_span_text (const BwSyncRun *run, const BwSyncSpan *span, char mark)
{
  g_return_val_if_fail (run != NULL && span != NULL, NULL);
  g_autofree char *off = time_text (fabs (span->late_s), mark);
  if (span->edge == BW_AFC_EDGE_MISSING)
    return g_strdup (bw_kind_label (&bw_afc_edges, span->edge));
  return g_strdup_printf (span->edge == BW_AFC_EDGE_LATE ? _ ("late by %s") : _ ("early by %s"),
                          off);
}

static void
append_span (GString *text, const BwSyncRun *run, const BwSyncSpan *span, char mark)
{
  g_autofree char *how = bw_sync_run_span_text (run, span, mark);
  int first = line_at (run, span->first)->line;
  int last = line_at (run, span->first + span->n - 1)->line;

  if (span->n == 1)
    /* Translators: number of a line, and by how much it is early or late. */
    g_string_append_printf (text, _ ("line %1$d, %2$s"), first, how);
  else
    g_string_append_printf (text, _ ("lines %1$d to %2$d, %3$s"), first, last, how);
}

static void
say_edges (Writer *writer)
{
  const BwSyncRun *run = writer->run;
  g_autoptr (GArray) spans = bw_sync_run_spans (run);
  g_autoptr (GString) text = g_string_new (NULL);

  if (spans->len == 0)
    {
      say (writer,
           g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "The %u line shown has its edge at its place.",
                                         "Each of the %u lines shown has its edge at its place.",
                                         run->lines->len),
                            run->lines->len));
      return;
    }
  for (guint i = 0; i < spans->len; i++)
    {
      g_string_append (text, i > 0 ? "; " : "");
      append_span (text, run, &g_array_index (spans, BwSyncSpan, i), writer->mark);
    }
  say (
      writer,
      g_strdup_printf (
          /* Translators: the third is a list such as “line 4, 2 µs late; lines 6 to 9, missing”. */
          g_dngettext (GETTEXT_PACKAGE,
                       "Of the %1$u line shown %2$u have their edge at its place; not %3$s.",
                       "Of the %1$u lines shown %2$u have their edge at its place; not %3$s.",
                       run->lines->len),
          run->lines->len, run->n[BW_AFC_EDGE_RIGHT], text->str));
}

/* Structure */

static char *
standard_text (const BwSyncStructure *structure)
{
  if (structure->n_serrations == 0 && structure->n_equalising[0] + structure->n_equalising[1] == 0)
    return NULL;
  return g_strdup_printf (
      g_dngettext (GETTEXT_PACKAGE,
                   "%1$u serration in field sync and %2$u + %3$u equalising pulses",
                   "%1$u serrations in field sync and %2$u + %3$u equalising pulses",
                   structure->n_serrations),
      structure->n_serrations, structure->n_equalising[0], structure->n_equalising[1]);
}

static void
say_standard (Writer *writer, const char *has)
{
  if (has != NULL)
    say (writer, g_strdup_printf (_ ("Composite sync as the raster has it: %s."), has));
  else
    say (writer, g_strdup (_ ("The raster has no serration and no equalising pulses: field sync is "
                              "one tip, in which no line has its edge.")));
}

static void
say_field_sync (Writer *writer, const BwSyncStructure *structure)
{
  if (structure->n_inverted > 0)
    say (writer,
         g_strdup (_ ("In field sync the pulses of H stand upside down, so that the edge of "
                      "a line comes at the end of its pulse.")));
  else
    say (writer, g_strdup (_ ("Field sync is one tip, in which no line has its edge.")));
}

static void
say_structure (Writer *writer)
{
  BwSyncStructure own, result;
  bw_sync_mix_structure (writer->mix, &writer->mix->standard, &own);
  bw_sync_mix_structure (writer->mix, &writer->mix->result, &result);
  g_autofree char *has = standard_text (&own);

  if (is_standard (writer->mix))
    {
      say_standard (writer, has);
      return;
    }
  if (writer->mix->form != BW_SYNC_FORM_COMPOSITE)
    return; /* only composite sync has equalising pulses and serration */
  say_field_sync (writer, &result);
  g_autofree char *made = standard_text (&result);
  if (made != NULL)
    say (writer, g_strdup_printf (_ ("The result has %s."), made));
  else if (has != NULL)
    say (writer,
         g_strdup_printf (_ ("There are no equalising pulses and no serrations; no gate can "
                             "make them. Composite sync of the raster has %s."),
                          has));
  else
    say (writer, g_strdup (_ ("There are no equalising pulses and no serrations; the raster has "
                              "none either.")));
}

/* What the AFC sees */

/* A departure of the phase as it is seen on the picture. */
static char *
place_text (const Writer *writer, double phase_s)
{
  double width_m = writer->afc->picture_width_m;
  BwRasterFigures figures;
  bw_raster_figures (writer->mix->what.raster, &figures);
  double share = fabs (phase_s) / figures.h_active_s;
  g_autofree char *part = share_text (share, writer->mark);
  const char *to = phase_s > 0 ? _ ("to the left") : _ ("to the right");

  if (width_m <= 0)
    return g_strdup_printf (_ ("%1$s of its width %2$s"), part, to);
  g_autofree char *length = bw_quantity_format (share * width_m, BW_DIMENSION_LENGTH, DIGITS,
                                                writer->mark);
  return g_strdup_printf (_ ("%1$s of its width (%2$s) %3$s"), part, length, to);
}

/* TRUE if the error still grows after the first picture line. */
static gboolean
grows (const BwSyncRun *run)
{
  return fabs (run->bend_s) > fabs (run->picture_s);
}

static char *
bend_text (const Writer *writer)
{
  const BwSyncRun *run = writer->run;
  g_autofree char *first = place_text (writer, run->picture_s);
  if (!grows (run))
    return g_steal_pointer (&first);
  g_autofree char *most = place_text (writer, run->bend_s);
  return g_strdup_printf (_ ("%1$s, further down up to %2$s"), first, most);
}

static void
say_bend (Writer *writer)
{
  const BwSyncRun *run = writer->run;
  g_autofree char *bend = bend_text (writer);
  g_autofree char *off = time_text (fabs (run->picture_s), writer->mark);
  const char *how = run->picture_s > 0 ? _ ("late") : _ ("early");
  int active = writer->mix->what.raster->field[writer->mix->what.field].active / 2;

  if (run->settle_lines == 0)
    say (writer,
         g_strdup_printf (_ ("The picture starts straight, at line %d."), run->picture_line));
  else if (run->settle_lines >= active)
    say (writer,
         g_strdup_printf (_ ("At the first line of picture, %1$d, it is %2$s %3$s: the top bends "
                             "by %4$s, and does not stand straight within the field."),
                          run->picture_line, off, how, bend));
  else
    say (writer,
         g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "At the first line of picture, %1$d, it is %2$s %3$s: the "
                                       "top bends by %4$s, and is straight after %5$d line.",
                                       "At the first line of picture, %1$d, it is %2$s %3$s: the "
                                       "top bends by %4$s, and is straight after %5$d lines.",
                                       (gulong) run->settle_lines),
                          run->picture_line, off, how, bend, run->settle_lines));
}

static void
say_loop (Writer *writer)
{
  const BwSyncAfc *afc = writer->afc;
  const BwSyncRun *run = writer->run;
  const char *loop = bw_kind_label (&bw_afc_loops, afc->loop);
  g_autofree char *rate = share_text (afc->rate_error, writer->mark);
  g_autofree char *peak = run->locks ? time_text (fabs (run->peak_s), writer->mark) : NULL;
  g_autofree char *lines = bw_quantity_format (afc->time_constant_lines, BW_DIMENSION_LINES, DIGITS,
                                               writer->mark);

  if (!run->locks)
    {
      say (writer,
           g_strdup_printf (_ ("An AFC of %1$s, time constant %2$s, rate error %3$s, does not lock "
                               "to this."),
                            loop, lines, rate));
      return;
    }
  if (run->settle_s > fabs (run->peak_s))
    say (writer,
         g_strdup_printf (_ ("An AFC of %1$s, time constant %2$s, rate error %3$s, is not pulled "
                             "away."),
                          loop, lines, rate));
  else
    say (writer,
         g_strdup_printf (_ ("An AFC of %1$s, time constant %2$s, rate error %3$s, is pulled away "
                             "by up to %4$s, at line %5$d."),
                          loop, lines, rate, peak, run->peak_line));
  say_bend (writer);
}

static void
say_other_edges (Writer *writer)
{
  const BwSyncRun *run = writer->run;
  g_autofree char *glitch = time_text (writer->afc->glitch_s, writer->mark);

  if (run->n_half > 0)
    say (writer, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                               "%u edge at a half line does no harm to an AFC that "
                                               "is gated at line rate.",
                                               "%u edges at half lines do no harm to an AFC that "
                                               "is gated at line rate.",
                                               run->n_half),
                                  run->n_half));
  if (run->n_extra > 0)
    say (writer, g_strdup_printf (_ ("Edges in the AFC's gate beside those that it takes: %u."),
                                  run->n_extra));
  if (run->n_glitches > 0)
    say (writer,
         g_strdup_printf (_ ("Pulses and gaps narrower than %1$s, which the AFC is taken not "
                             "to see: %2$u."),
                          glitch, run->n_glitches));
}

static void
say_delay (Writer *writer)
{
  const BwSyncMix *mix = writer->mix;
  BwRasterFigures figures;
  if (!(mix->what.delay_s > 0))
    return;
  bw_raster_figures (mix->what.raster, &figures);
  g_autofree char *delay = time_text (mix->what.delay_s, writer->mark);
  g_autofree char *share = share_text (mix->what.delay_s / figures.h_active_s, writer->mark);
  say (writer,
       g_strdup_printf (_ ("All edges are later by the delay of %1$s: the whole picture moves "
                           "to the left by %2$s of its width and does not bend."),
                        delay, share));
}

static void
say_polarity (Writer *writer)
{
  const BwSyncMix *mix = writer->mix;
  gboolean exclusive = mix->what.gate == BW_SYNC_GATE_XOR || mix->what.gate == BW_SYNC_GATE_XNOR;

  if (mix->form != BW_SYNC_FORM_COMPOSITE)
    return;
  if (mix->polarity == BW_POLARITY_NEGATIVE)
    say (writer, g_strdup (_ ("The result is negative, its tips low: an input that wants negative "
                              "sync needs no inverter.")));
  else if (exclusive)
    say (writer,
         g_strdup_printf (_ ("The result is positive, its tips high: for an input that wants "
                             "negative sync take %s instead, or an inverter after the gate."),
                          mix->what.gate == BW_SYNC_GATE_XOR ? "XNOR" : "XOR"));
  else
    say (writer, g_strdup (_ ("The result is positive, its tips high: an input that wants negative "
                              "sync needs an inverter after the gate.")));
}

/**
 * bw_sync_mix_say:
 * @run: of @mix and @afc
 * @topic: what to speak of
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (nullable): sentences, or %NULL if there is nothing to say
 */
char *
bw_sync_mix_say (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run,
                 BwSyncTopic topic, char mark)
{
  static void (*const topics[BW_N_SYNC_TOPICS]) (Writer *) = {
    [BW_SYNC_TOPIC_FORM] = say_form,           [BW_SYNC_TOPIC_EDGES] = say_edges,
    [BW_SYNC_TOPIC_STRUCTURE] = say_structure, [BW_SYNC_TOPIC_LOOP] = say_loop,
    [BW_SYNC_TOPIC_OTHERS] = say_other_edges,  [BW_SYNC_TOPIC_DELAY] = say_delay,
    [BW_SYNC_TOPIC_POLARITY] = say_polarity,
  };
  g_return_val_if_fail (topic < BW_N_SYNC_TOPICS, NULL);
  g_autoptr (GPtrArray) says = g_ptr_array_new_with_free_func (g_free);
  Writer writer = { mix, afc, run, mark, says };

  topics[topic](&writer);
  if (says->len == 0)
    return NULL;
  g_ptr_array_add (says, NULL);
  return g_strjoinv (" ", (char **) says->pdata);
}

/**
 * bw_sync_mix_says:
 * @run: of @mix and @afc
 * @mark: the decimal mark
 *
 * Returns: (transfer full) (element-type utf8): which edges survive, whether equalising and
 * serration are there, what the AFC makes of it, the polarity and the inverters that are needed;
 * some sentences for each topic that there is something to say of
 */
GPtrArray *
bw_sync_mix_says (const BwSyncMix *mix, const BwSyncAfc *afc, const BwSyncRun *run, char mark)
{
  g_return_val_if_fail (mix != NULL && afc != NULL && run != NULL, NULL);
  GPtrArray *says = g_ptr_array_new_with_free_func (g_free);
  for (guint topic = 0; topic < BW_N_SYNC_TOPICS; topic++)
    {
      char *text = bw_sync_mix_say (mix, afc, run, topic, mark);
      if (text != NULL)
        g_ptr_array_add (says, text);
    }
  return says;
}
