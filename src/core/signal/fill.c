/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "synthesis-private.h"

#include <string.h>

/* From programs to samples. */

static guint
signature_of (const BwSynthesis *s, gint64 line)
{
  return s->signatures[(line + s->lines) % s->lines];
}

/* Whether the edges of a picture may reach beyond its own line. */
static gboolean
reaches_over (const BwSynthesis *s)
{
  double widest_s = MAX (MAX (s->shapes.chroma_s, s->shapes.difference_s), s->shapes.blanking_s);
  return s->active_from_s < widest_s || s->line_s - s->active_to_s < widest_s;
}

static BwProgram *
program_new (const BwSynthesis *s, BwConductor conductor, const guint signatures[3], guint colour)
{
  BwProgram *program = g_new0 (BwProgram, 1);
  gboolean secam = bw_system_facts (s->form.system)->chroma == BW_CHROMA_SEQUENTIAL
                   && ((s->form.signal == BW_SIGNAL_COMPOSITE && conductor == BW_CONDUCTOR_VIDEO)
                       || (s->form.signal == BW_SIGNAL_YC && conductor == BW_CONDUCTOR_C));

  for (int i = 0; i < BW_N_LAYERS; i++)
    program->layers[i] = g_array_new (FALSE, FALSE, sizeof (BwFeature));
  program->has_chroma = bw_synthesis_is_coded (s, conductor);
  bw_add_sync (s, conductor, signatures, program->layers[BW_LAYER_BASE]);
  bw_add_content (s, conductor, signatures[1], 0, program->layers);
  if (reaches_over (s))
    {
      bw_add_content (s, conductor, signatures[0], -s->line_s, program->layers);
      bw_add_content (s, conductor, signatures[2], s->line_s, program->layers);
    }
  if (program->has_chroma && (colour & BW_LINE_BURST))
    bw_add_burst (s, program->layers);
  if (secam)
    program->secam = bw_secam_line_new (s, signatures[1], colour);
  for (int i = 0; i < BW_N_LAYERS; i++)
    bw_sort_features (program->layers[i]);
  return program;
}

static const BwProgram *
program_of (BwSynthesis *s, BwConductor conductor, gint64 line)
{
  const guint signatures[3]
      = { signature_of (s, line - 1), signature_of (s, line), signature_of (s, line + 1) };
  guint colour = bw_line_colour (s, line);
  guint64 key = (guint64) conductor << 3 | colour;
  for (int i = 0; i < 3; i++)
    key = key << BW_SIGNATURE_BITS | signatures[i];

  BwProgram *program = g_hash_table_lookup (s->programs, &key);
  if (program == NULL)
    {
      program = program_new (s, conductor, signatures, colour);
      program->key = key;
      program->number = g_hash_table_size (s->programs);
      g_hash_table_insert (s->programs, &program->key, program);
    }
  return program;
}

/* The first sample at or after 0H of @line, counted from the first line of all. */
static gint64
start_of (const BwSynthesis *s, gint64 line)
{
  BwWide product = (BwWide) line * s->per_line.num;
  return (gint64) ((product + s->per_line.den - 1) / s->per_line.den);
}

static void
sample_line (const BwSynthesis *s, BwSampledLine *at)
{
  const BwProgram *program = at->program;
  double first_s = (double) at->offset / (double) s->per_line.den * s->sample_s;

  if (at->layers[0] == NULL)
    {
      at->layers[0] = g_new (float, (gsize) BW_N_LAYERS * s->n_most);
      at->layers[BW_LAYER_U] = at->layers[0] + s->n_most;
      at->layers[BW_LAYER_V] = at->layers[BW_LAYER_U] + s->n_most;
    }
  for (int i = 0; i < (program->has_chroma ? BW_N_LAYERS : 1); i++)
    bw_sample_features (s, program->layers[i], first_s, at->n, at->layers[i]);
  if (program->secam != NULL)
    bw_add_secam (s, program->secam, first_s, at->n, at->layers[BW_LAYER_BASE]);
}

/* @line, which has @n samples, from those that are kept, or sampled anew. */
static const BwSampledLine *
sampled_line (BwSynthesis *s, BwConductor conductor, gint64 line, gint64 start, guint n)
{
  const BwProgram *program = program_of (s, conductor, line);
  gint64 offset = (gint64) ((BwWide) start * s->per_line.den - (BwWide) line * s->per_line.num);
  guint place = (guint) ((guint64) (offset + 31 * (gint64) program->number) % s->n_sampled);
  BwSampledLine *at = &s->sampled[place];

  if (at->program != program || at->offset != offset || at->n != n)
    {
      at->program = program;
      at->offset = offset;
      at->n = n;
      sample_line (s, at);
    }
  return at;
}

/**
 * bw_synthesis_line_start:
 * @frame: from 0
 * @line: as the raster numbers it, from 1
 *
 * Returns: the number of the first sample at or after 0H of the line
 */
gint64
bw_synthesis_line_start (const BwSynthesis *synthesis, gint64 frame, int line)
{
  g_return_val_if_fail (frame >= 0 && line >= 1, 0);
  return start_of (synthesis, frame * synthesis->lines + line - 1);
}

/**
 * bw_synthesis_line_start_s:
 * @frame: from 0
 * @line: as the raster numbers it, from 1
 *
 * Returns: 0H of the line, in seconds after that of line 1 of frame 0
 */
double
bw_synthesis_line_start_s (const BwSynthesis *synthesis, gint64 frame, int line)
{
  BwRatio rate = synthesis->raster->line_rate_hz;
  gint64 lines = frame * synthesis->lines + line - 1;
  g_return_val_if_fail (frame >= 0 && line >= 1, 0);
  return (double) ((long double) lines * rate.den / rate.num);
}

/**
 * bw_synthesis_fill:
 * @conductor: one of those of bw_synthesis_conductors()
 * @first: number of the first sample, zero or more
 * @n: how many
 * @volts: (out): as across 75 Ω, with blanking at zero
 *
 * The same samples result however a signal is divided among calls.
 */
void
bw_synthesis_fill (BwSynthesis *synthesis, BwConductor conductor, gint64 first, gsize n,
                   float *volts)
{
  BwSynthesis *s = synthesis;
  g_return_if_fail (first >= 0 && bw_synthesis_conductors (s) & BW_BIT (conductor));
  gint64 line = (gint64) ((BwWide) first * s->per_line.den / s->per_line.num);
  gint64 start = start_of (s, line);

  while (n > 0)
    {
      gint64 next = start_of (s, line + 1);
      guint from = (guint) (first - start);
      guint now = (guint) MIN (n, (gsize) (next - first));
      const BwSampledLine *at = sampled_line (s, conductor, line, start, (guint) (next - start));
      if (at->program->has_chroma)
        bw_put_on_subcarrier (s, at, from, first, now, line, volts);
      else
        memcpy (volts, at->layers[BW_LAYER_BASE] + from, now * sizeof (float));
      volts += now;
      n -= now;
      first += now;
      start = next;
      line++;
    }
}
