/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What is said of a mixture of sync and of an AFC behind it. 525 lines: 63.5556 µs a line, of which 52.8556 µs are
 * picture; V on lines 4 to 6, picture from line 21 (SMPTE 170M-2004 table 2 and figure 7). */
#include "core/sync/words.h"

#include <string.h>

#include "support.h"

#define RASTER "525-59.94-interlaced"

/* How a case differs from H and V as the raster has them into an AFC as it usually is. */
typedef struct
{
  const char *raster;
  gboolean no_equalising; /* of that raster: its equalising pulses are taken out */
  guint gate;
  int field;
  gboolean turn_h; /* the other polarity than negative */
  gboolean turn_v;
  double v_offset_s;
  double delay_s;
  gboolean first_order;
  double time_constant_lines; /* zero: the usual one */
  double rate_error;          /* likewise */
  double glitch_s;            /* likewise */
  double picture_width_m;
  BwSyncTopic topic;
  const char *says[4];     /* what must be said */
  const char *says_not[3]; /* and what not */
} Case;

static char *
said (const Case *of)
{
  BwSyncMixCase what;
  BwSyncAfc afc;
  g_autoptr (BwRaster) raster
      = bw_raster_copy (bw_test_raster (of->raster != NULL ? of->raster : RASTER));

  if (of->no_equalising)
    {
      raster->equalising_before = raster->equalising_after = 0;
      raster->equalising_width_s = 0;
    }
  g_assert_true (bw_raster_check (raster, NULL));
  bw_sync_mix_case_init (&what, raster, of->gate);
  what.field = of->field;
  what.v_offset_s = of->v_offset_s;
  what.delay_s = of->delay_s;
  what.h_polarity = of->turn_h ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
  what.v_polarity = of->turn_v ? BW_POLARITY_POSITIVE : BW_POLARITY_NEGATIVE;
  bw_sync_afc_init (&afc, raster);
  afc.loop = of->first_order ? BW_AFC_LOOP_FIRST : BW_AFC_LOOP_SECOND;
  afc.time_constant_lines = of->time_constant_lines > 0 ? of->time_constant_lines : 10;
  afc.rate_error = of->rate_error < 0 || of->rate_error > 0 ? of->rate_error : 0.01;
  afc.glitch_s = of->glitch_s > 0 ? of->glitch_s : afc.glitch_s;
  afc.picture_width_m = of->picture_width_m;
  g_autoptr (BwSyncMix) mix = bw_sync_mix_new (&what);
  g_autoptr (BwSyncRun) run = bw_sync_run_new (mix, &afc);
  g_autofree char *text = bw_sync_mix_say (mix, &afc, run, of->topic, '.');
  g_auto (GStrv) words = g_strsplit (text != NULL ? text : "", "\u00a0", -1);
  return g_strjoinv (" ", words);
}

/* First order of 4 lines, without edges on lines 5 to 7, at a rate 2 % low: away by 3 × 2 % of a line, 3.8133 µs, at
 * line 8; at line 21 exp (−13/4) of it, 147.9 ns, which is 0.2797 % of the picture, of 400 mm 1.119 mm; less than a
 * thousandth after 4 ln 2.797 = 4.1 lines. At a rate that is high everything goes the other way. */
#define AWAY .gate = BW_SYNC_GATE_AND, .first_order = TRUE, .time_constant_lines = 4
/* Of 200 lines at 0.1 % a line 0.3380 % are left at line 21, and a thousandth after 200 ln 3.380 = 243.6 lines, of the
 * 242 of a field; at 0.0985 % after 240.6. */
#define SLOW .gate = BW_SYNC_GATE_AND, .first_order = TRUE, .time_constant_lines = 200

static const Case loops[] = {
  { AWAY, .rate_error = 0.02, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "An AFC of first order, time constant 4 lines, rate error 2 %, is pulled away by up to "
              "3.81 µs, at line 8.",
              "At the first line of picture, 21, it is 148 ns late: the top bends by 0.28 % of its "
              "width to the left, and is straight after 5 lines." },
    .says_not = { "further down", "mm" } },
  { AWAY, .rate_error = -0.02, .picture_width_m = 0.4, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "rate error -2 %", "up to 3.81 µs", "148 ns early",
              "0.28 % of its width (1.12 mm) to the right, and is straight after 5 lines" } },
  { SLOW, .rate_error = 0.001, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "does not stand straight within the field" }, .says_not = { "straight after" } },
  { SLOW, .rate_error = 0.000985, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "is straight after 241 lines" }, .says_not = { "does not stand" } },
  /* Edges that are 4.7 µs late on lines 267 to 269 into a second-order loop of 8 lines: by (a + b m) z^m, as
   * tests/core/sync/test_sync-afc.c has it, 42.5 ns late at line 283, then up to 98.8 ns early, 0.187 % of the
   * picture, and over a thousandth for 22 lines */
  { .gate = BW_SYNC_GATE_XNOR, .field = 1, .time_constant_lines = 8, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "second order, time constant 8 lines, rate error 1 %, is pulled away by up to 2.76 µs, at "
              "line 270.",
              "283, it is 42.5 ns late: the top bends by 0.0805 % of its width to the left, further "
              "down up to 0.187 % of its width to the right, and is straight after 22 lines" } },
  { .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_LOOP,
    .says = { "is not pulled away.", "The picture starts straight, at line 21." },
    .says_not = { "up to", "bends" } },
  { .gate = BW_SYNC_GATE_OR, .topic = BW_SYNC_TOPIC_LOOP, .says = { "does not lock to this." },
    .says_not = { "pulled", "straight" } },
};

/* What stands at the start of the lines, and what else there is. SMPTE 170M-2004 figure 7 and the truth tables, as
 * tests/core/sync/test_sync-afc.c has them; 26 lines are shown. 0.4 µs are 0.757 % of 52.8556 µs. */
static const Case edges[] = {
  { .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_EDGES,
    .says = { "Each of the ", " lines shown has its edge at its place." } },
  { .gate = BW_SYNC_GATE_AND, .v_offset_s = -1e-6, .topic = BW_SYNC_TOPIC_EDGES,
    .says = { "not line 4, early by 1 µs; lines 5 to 6, missing." } },
  { .gate = BW_SYNC_GATE_AND, .v_offset_s = 1e-6, .topic = BW_SYNC_TOPIC_EDGES,
    .says = { "not lines 5 to 7, missing." } },
  { .gate = BW_SYNC_GATE_XNOR, .topic = BW_SYNC_TOPIC_EDGES,
    .says = { "not lines 4 to 6, late by 4.7 µs; line 7, missing." } },
  { .gate = BW_SYNC_GATE_AND, .field = 1, .topic = BW_SYNC_TOPIC_OTHERS,
    .says = { "1 edge at a half line does no harm" }, .says_not = { "edges", "narrower", "beside" } },
  { .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_OTHERS,
    .says = { "9 edges at half lines do no harm" } },
  { .gate = BW_SYNC_GATE_XOR, .v_offset_s = 0.2e-6, .glitch_s = 0.1e-6, .topic = BW_SYNC_TOPIC_OTHERS,
    .says = { "Edges in the AFC's gate beside those that it takes: 1." }, .says_not = { "narrower" } },
  { .gate = BW_SYNC_GATE_XOR, .v_offset_s = 0.2e-6, .glitch_s = 0.3e-6, .topic = BW_SYNC_TOPIC_OTHERS,
    .says = { "Pulses and gaps narrower than 300 ns, which the AFC is taken not to see: 2." },
    .says_not = { "beside" } },
  { .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_OTHERS, .says_not = { "." } },
  { .gate = BW_SYNC_GATE_AND, .delay_s = 0.4e-6, .topic = BW_SYNC_TOPIC_DELAY,
    .says = { "the delay of 400 ns", "to the left by 0.757 % of its width" } },
  { .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_DELAY, .says_not = { "." } },
};

/* By the truth tables, as tests/core/sync/test_sync-mix.c has them. */
static const Case forms[] = {
  { .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_FORM, .says_not = { "." } },
  { .gate = BW_SYNC_GATE_AND, .turn_h = TRUE, .topic = BW_SYNC_TOPIC_FORM,
    .says = { "AND of positive H and negative V is no composite sync",
              "V makes no sync tip, so field sync is lost", "put an inverter into H, or use XOR" } },
  { .gate = BW_SYNC_GATE_AND, .turn_v = TRUE, .topic = BW_SYNC_TOPIC_FORM,
    .says = { "AND of negative H and positive V is no composite sync", "line sync is lost there",
              "put an inverter into V, or use XOR" } },
  { .gate = BW_SYNC_GATE_AND, .turn_h = TRUE, .turn_v = TRUE, .topic = BW_SYNC_TOPIC_FORM,
    .says = { "there is a tip only where H and V fall together",
              "put an inverter into H and one into V, or take the other of AND and OR" } },
  { .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_POLARITY,
    .says = { "negative, its tips low", "needs no inverter" }, .says_not = { "positive" } },
  { .gate = BW_SYNC_GATE_OR, .turn_h = TRUE, .turn_v = TRUE, .topic = BW_SYNC_TOPIC_POLARITY,
    .says = { "positive, its tips high", "needs an inverter after the gate" }, .says_not = { "XOR" } },
  { .gate = BW_SYNC_GATE_XOR, .topic = BW_SYNC_TOPIC_POLARITY,
    .says = { "positive, its tips high", "take XNOR instead" } },
  { .gate = BW_SYNC_GATE_XNOR, .turn_v = TRUE, .topic = BW_SYNC_TOPIC_POLARITY,
    .says = { "positive, its tips high", "take XOR instead" } },
  { .gate = BW_SYNC_GATE_XNOR, .topic = BW_SYNC_TOPIC_POLARITY, .says = { "negative" },
    .says_not = { "instead" } },
  { .gate = BW_SYNC_GATE_OR, .topic = BW_SYNC_TOPIC_POLARITY, .says_not = { "." } },
};

/* SMPTE 170M-2004 table 3: six serrations and twice six equalising pulses. VESA DMT has neither. */
static const Case structures[] = {
  { .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "Composite sync as the raster has it: 6 serrations in field sync and 6 + 6 equalising "
              "pulses." } },
  { .no_equalising = TRUE, .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "Composite sync as the raster has it: 6 serrations in field sync and 0 + 0 equalising" } },
  { .raster = "vesa-dmt-04", .gate = BW_SYNC_GATE_STANDARD, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "The raster has no serration and no equalising pulses" } },
  { .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "Field sync is one tip, in which no line has its edge.",
              "no gate can make them. Composite sync of the raster has 6 serrations" },
    .says_not = { "upside down", "The result has" } },
  { .gate = BW_SYNC_GATE_XOR, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "the pulses of H stand upside down" }, .says_not = { "one tip" } },
  /* field sync of two lines, at the first of which V and H begin together: one pulse of H inside V */
  { .raster = "vesa-dmt-04", .gate = BW_SYNC_GATE_XOR, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "the pulses of H stand upside down" }, .says_not = { "one tip" } },
  { .raster = "vesa-dmt-04", .gate = BW_SYNC_GATE_AND, .topic = BW_SYNC_TOPIC_STRUCTURE,
    .says = { "the raster has none either" }, .says_not = { "no gate can" } },
  { .gate = BW_SYNC_GATE_OR, .topic = BW_SYNC_TOPIC_STRUCTURE, .says_not = { "." } },
};

static void
try_all (const Case *cases, gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      g_autofree char *text = said (&cases[i]);
      for (gsize k = 0; k < G_N_ELEMENTS (cases[i].says) && cases[i].says[k] != NULL; k++)
        if (strstr (text, cases[i].says[k]) == NULL)
          g_test_fail_printf ("case %" G_GSIZE_FORMAT ": no \"%s\" in \"%s\"", i, cases[i].says[k], text);
      for (gsize k = 0; k < G_N_ELEMENTS (cases[i].says_not) && cases[i].says_not[k] != NULL; k++)
        if (strstr (text, cases[i].says_not[k]) != NULL)
          g_test_fail_printf ("case %" G_GSIZE_FORMAT ": \"%s\" in \"%s\"", i, cases[i].says_not[k], text);
    }
}

static void
test_loops (void)
{
  try_all (loops, G_N_ELEMENTS (loops));
}

static void
test_edges (void)
{
  try_all (edges, G_N_ELEMENTS (edges));
}

static void
test_forms (void)
{
  try_all (forms, G_N_ELEMENTS (forms));
}

static void
test_structures (void)
{
  try_all (structures, G_N_ELEMENTS (structures));
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/sync-words/loops", test_loops);
  g_test_add_func ("/sync-words/edges", test_edges);
  g_test_add_func ("/sync-words/forms", test_forms);
  g_test_add_func ("/sync-words/structures", test_structures);
  return g_test_run ();
}
