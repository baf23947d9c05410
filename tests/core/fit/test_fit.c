/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/fit/fit-private.h"
#include "core/fit/results.h"

#include <float.h>
#include <math.h>
#include <string.h>

#include "properties.h"
#include "support.h"

/* One source at one input at which every rule holds with room to spare, and changes to it. */

static const char base_monitor[] =
    "name=Set | diagonal=14 in | aspect=4:3 | line_rates=15 kHz .. 16.5 kHz"
    " | field_rates=45 Hz .. 65 Hz | line_retrace=8 us | field_retrace=800 us | bandwidth=10 MHz"
    " | mains_voltage=100 V .. 120 V | mains_frequency=50 Hz .. 60 Hz";
static const char base_input
    [] = "name=In | connectors=bnc | signals=rgb | syncs=composite-sync | shapes=bi-level"
         " | polarities=negative | scans=progressive; interlaced | video_level=0.5 V .. 1 V"
         " | sync_level=0.2 V .. 0.6 V | termination=fixed | sync_termination=fixed"
         " | input_resistance=10 kohm | clamp=back-porch";
static const char base_source
    [] = "name=Source | raster=525-59.94-interlaced | signal=rgb | syncs=composite-sync"
         " | connector=bnc | video_level=700 mV | sync_level=300 mV | coupling=dc | aspect=4:3"
         " | detail=5 MHz";

typedef struct
{
  BwMonitor *monitor;
  BwInput *input;
  BwSource *source;
  BwLimits limits;
  BwRasterFigures figures;
  BwCase c;
} Bench;

static void
set_one (const BwFieldTable *table, gpointer object, const char *assignment)
{
  g_auto (GStrv) parts = g_strsplit (assignment, "=", 2);
  g_autoptr (GError) error = NULL;
  const BwField *field = bw_field_find (table, g_strstrip (parts[0]));

  if (field == NULL || parts[1] == NULL)
    g_error ("the test sets an unknown field: %s", assignment);
  if (!bw_field_parse (field, object, parts[1], '.', &error))
    g_error ("%s: %s", assignment, error->message);
}

static void
set_all (const BwFieldTable *table, gpointer object, const char *assignments)
{
  g_auto (GStrv) parts = g_strsplit (assignments, "|", -1);
  for (char **part = parts; *part != NULL; part++)
    if (*g_strstrip (*part) != '\0')
      set_one (table, object, *part);
}

/* The raster, and what follows from it, are looked up after all changes. */
static void
bench_finish (Bench *b)
{
  b->c.raster = bw_catalogue_raster (bw_test_catalogue (), b->source->raster);
  if (b->c.raster == NULL && *b->source->raster != '\0')
    g_error ("the test names an unknown raster: %s", b->source->raster);
  if (b->c.raster != NULL)
    bw_raster_figures (b->c.raster, &b->figures);
  else
    b->c.figures = NULL;
}

static void
bench_init (Bench *b, const char *monitor, const char *input, const char *source)
{
  g_autoptr (BwSheet) sheet = bw_sheet_new ();

  b->monitor = bw_monitor_new ();
  b->input = bw_input_new ();
  b->source = bw_source_new ();
  b->limits = sheet->limits; /* the presets */
  set_all (&bw_monitor_fields, b->monitor, base_monitor);
  set_all (&bw_input_fields, b->input, base_input);
  set_all (&bw_source_fields, b->source, base_source);
  set_all (&bw_monitor_fields, b->monitor, monitor);
  set_all (&bw_input_fields, b->input, input);
  set_all (&bw_source_fields, b->source, source);
  b->c = (BwCase){ .monitor = b->monitor,
                   .input = b->input,
                   .source = b->source,
                   .figures = &b->figures,
                   .limits = &b->limits,
                   .supply_hz = 60,
                   .supply_v = 120 };
  bench_finish (b);
}

static void
bench_clear (Bench *b)
{
  bw_monitor_free (b->monitor);
  bw_input_free (b->input);
  bw_source_free (b->source);
}

static void
test_base_is_direct (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "");
  bw_fit_judge (&b.c, &fit);
  for (guint i = 0; i < BW_N_RULES; i++)
    g_assert_cmpstr (bw_kind_id (&bw_severities, fit.at[i].severity), ==, "ok");
  g_assert_cmpuint (fit.verdict, ==, BW_VERDICT_DIRECT);
  g_assert_cmpuint (fit.limiting, ==, 0);
  bench_clear (&b);
}

/* Each rule by itself. Beside a row stands why; what the set takes is invented. Rates and intervals
 * of 525 lines: SMPTE 170M-2004 tables 2 and 3, 11.2 and 11.3. */

typedef struct
{
  const char *name;
  BwRule rule;
  const char *monitor;
  const char *input;
  const char *source;
  BwSeverity severity;
  BwReason reason;
  BwRemedyKind remedy;
  double value; /* NAN: not compared */
  double tolerance;
} RuleCase;

#define OK BW_SEVERITY_OK
#define UNJUDGED BW_SEVERITY_UNJUDGED
#define TIGHT BW_SEVERITY_TIGHT
#define CURABLE BW_SEVERITY_CURABLE
#define FATAL BW_SEVERITY_FATAL

static const RuleCase rule_cases[] = {
  /* the bench has 120 V and 60 Hz; a plate that is not known is not judged; 120 V are 4.3 % above 115 V,
   * which is within 6 % (common practice, no source) */
  { "mains-unknown", BW_RULE_MAINS, "mains_voltage= | mains_frequency=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "mains-voltage-not-known", BW_RULE_MAINS, "mains_voltage=", "", "", UNJUDGED,
    BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "mains-frequency-not-known", BW_RULE_MAINS, "mains_frequency=", "", "", UNJUDGED,
    BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "mains-too-low-of-unknown-frequency", BW_RULE_MAINS, "mains_voltage=220 V .. 240 V | mains_frequency=", "", "",
    CURABLE, BW_REASON_BELOW, BW_REMEDY_MAINS_TRANSFORMER, 120, 0 },
  { "mains-suits", BW_RULE_MAINS, "mains_voltage=100 V .. 120 V | mains_frequency=50 Hz .. 60 Hz", "",
    "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 120, 0 },
  { "mains-a-little-high", BW_RULE_MAINS,
    "mains_voltage=100 V .. 115 V | mains_frequency=50 Hz .. 60 Hz", "", "", TIGHT, BW_REASON_ABOVE,
    BW_REMEDY_NONE, 120, 0 },
  { "mains-too-high", BW_RULE_MAINS, "mains_voltage=100 V | mains_frequency=50 Hz .. 60 Hz", "", "",
    CURABLE, BW_REASON_ABOVE, BW_REMEDY_MAINS_TRANSFORMER, 120, 0 },
  { "mains-too-low", BW_RULE_MAINS, "mains_voltage=220 V .. 240 V", "", "", CURABLE, BW_REASON_BELOW,
    BW_REMEDY_MAINS_TRANSFORMER, 120, 0 },
  { "mains-of-another-frequency", BW_RULE_MAINS,
    "mains_voltage=100 V .. 120 V | mains_frequency=50 Hz", "", "", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_MAINS_CONVERTER, 60, 0 },
  { "mains-frequency-alone", BW_RULE_MAINS, "mains_frequency=50 Hz", "", "", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_MAINS_CONVERTER, 60, 0 },
  /* 5 V behind 50 Ω into 75 Ω: 5 / 125 = 40 mA, into 10 kΩ 0.5 mA; behind 200 Ω 5 / 275 = 18.2 mA; 16 and 24 mA
   * are common practice, no source */
  { "drive-not-logic", BW_RULE_SYNC_DRIVE, "", "", "", OK, BW_REASON_NOT_NEEDED, BW_REMEDY_NONE, NAN,
    0 },
  { "drive-of-unknown-kind", BW_RULE_SYNC_DRIVE, "", "", "sync_stated=", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "drive-of-unknown-level", BW_RULE_SYNC_DRIVE, "", "", "sync_level= | sync_stated=open", UNJUDGED,
    BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "drive-of-unknown-resistance", BW_RULE_SYNC_DRIVE, "", "",
    "sync_level=5 V | sync_stated=open | sync_resistance=", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "drive-into-unknown-load", BW_RULE_SYNC_DRIVE, "", "sync_termination=",
    "sync_level=5 V | sync_stated=open | sync_resistance=50 ohm", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "drive-without-a-part", BW_RULE_SYNC_DRIVE, "", "",
    "sync_level=5 V | sync_stated=open | sync_resistance=50 ohm", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_SERIES_RESISTOR, 0.04, 1e-12 },
  { "drive-of-a-level-that-is-taken", BW_RULE_SYNC_DRIVE, "", "own_sync_level=2 V .. 5 V",
    "sync_level=5 V | sync_stated=open | sync_resistance=50 ohm", TIGHT, BW_REASON_ABOVE,
    BW_REMEDY_NONE, 0.04, 1e-12 },
  { "drive-of-strong-logic", BW_RULE_SYNC_DRIVE, "", "own_sync_level=0.5 V .. 2 V",
    "sync_level=5 V | sync_stated=open | sync_resistance=200 ohm", TIGHT, BW_REASON_NEAR_EDGE,
    BW_REMEDY_NONE, 0.0181818, 1e-7 },
  { "drive-into-high-impedance", BW_RULE_SYNC_DRIVE, "",
    "own_sync_level=2 V .. 5.5 V | sync_termination=none",
    "sync_level=5 V | sync_stated=open | sync_resistance=50 ohm", OK, BW_REASON_HOLDS,
    BW_REMEDY_NONE, 4.97512e-4, 1e-9 },
  { "signal-taken", BW_RULE_SIGNAL_KIND, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, NAN, 0 },
  { "signal-component-for-rgb", BW_RULE_SIGNAL_KIND, "", "", "signal=component | syncs=on-y",
    CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_TRANSCODER, NAN, 0 },
  { "signal-yc-for-composite", BW_RULE_SIGNAL_KIND, "", "signals=composite | systems=ntsc-m",
    "signal=yc | syncs=in-video | system=ntsc-m", CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_YC_MIXER,
    NAN, 0 },
  { "signal-composite-for-yc", BW_RULE_SIGNAL_KIND, "", "signals=yc | systems=ntsc-m",
    "signal=composite | syncs=in-video | system=ntsc-m", CURABLE, BW_REASON_NOT_TAKEN,
    BW_REMEDY_YC_SEPARATOR, NAN, 0 },
  { "signal-composite-for-rgb", BW_RULE_SIGNAL_KIND, "", "",
    "signal=composite | syncs=in-video | system=ntsc-m", CURABLE, BW_REASON_NOT_TAKEN,
    BW_REMEDY_DECODER, NAN, 0 },
  { "signal-rgb-for-composite", BW_RULE_SIGNAL_KIND, "", "signals=composite | systems=ntsc-m", "",
    CURABLE, BW_REASON_NOT_TAKEN, BW_REMEDY_ENCODER, NAN, 0 },
  /* 203 kHz is beyond any encoder or converter (DMT 0x50) */
  { "signal-of-no-reach", BW_RULE_SIGNAL_KIND, "", "signals=composite | systems=ntsc-m",
    "raster=vesa-dmt-50", FATAL, BW_REASON_OUT_OF_REACH, BW_REMEDY_NONE, NAN, 0 },
  { "system-not-needed", BW_RULE_COLOUR_SYSTEM, "", "", "", OK, BW_REASON_NOT_NEEDED,
    BW_REMEDY_NONE, NAN, 0 },
  /* BT.1700: 4 433 618.75 Hz */
  { "system-pal-into-ntsc", BW_RULE_COLOUR_SYSTEM, "", "signals=composite | systems=ntsc-m",
    "signal=composite | syncs=in-video | system=pal-b", TIGHT, BW_REASON_COLOUR_LOST,
    BW_REMEDY_COLOUR_TRANSCODER, 4433618.75, 0 },
  { "system-taken", BW_RULE_COLOUR_SYSTEM, "", "signals=composite | systems=ntsc-m; pal-b",
    "signal=composite | syncs=in-video | system=pal-b", OK, BW_REASON_HOLDS, BW_REMEDY_NONE,
    4433618.75, 0 },
  { "line-rate-inside", BW_RULE_LINE_RATE, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE,
    15734.265734265734, 1e-9 },
  /* 15 734.27 Hz is 0.22 % above 15.7 kHz, inside the preset 0.5 % */
  { "line-rate-near-edge", BW_RULE_LINE_RATE, "line_rates=15.7 kHz .. 16 kHz", "", "", TIGHT,
    BW_REASON_NEAR_EDGE, BW_REMEDY_NONE, 15734.265734265734, 1e-9 },
  /* a plate of 15.6 to 15.8 kHz holds both rates of broadcasting, 15.625 and 15.734 kHz (BT.1700), which lie
   * 0.16 and 0.42 % inside it: neither is near an edge; 15.75 kHz is none of them */
  { "line-rate-of-a-narrow-plate-525", BW_RULE_LINE_RATE, "line_rates=15.6 kHz .. 15.8 kHz", "", "", OK,
    BW_REASON_HOLDS, BW_REMEDY_NONE, 15734.265734265734, 1e-9 },
  { "line-rate-of-a-narrow-plate-625", BW_RULE_LINE_RATE, "line_rates=15.6 kHz .. 15.8 kHz", "",
    "raster=625-50-interlaced", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 15625, 1e-9 },
  { "line-rate-of-a-plate-for-one", BW_RULE_LINE_RATE, "line_rates=15.6 kHz .. 15.7 kHz", "",
    "raster=625-50-interlaced", TIGHT, BW_REASON_NEAR_EDGE, BW_REMEDY_NONE, 15625, 1e-9 },
  /* a rate with bands on both sides of it is neither below nor above what the set takes */
  { "line-rate-between", BW_RULE_LINE_RATE, "line_rates=15 kHz .. 15.5 kHz; 31 kHz .. 32 kHz", "",
    "", CURABLE, BW_REASON_BETWEEN, BW_REMEDY_SCAN_CONVERTER, 15734.265734265734, 1e-9 },
  { "line-rate-below", BW_RULE_LINE_RATE, "line_rates=31 kHz .. 32 kHz", "", "", CURABLE,
    BW_REASON_BELOW, BW_REMEDY_SCAN_CONVERTER, NAN, 0 },
  { "line-rate-above", BW_RULE_LINE_RATE, "line_rates=9 kHz .. 12 kHz", "", "", CURABLE,
    BW_REASON_ABOVE, BW_REMEDY_SCAN_CONVERTER, NAN, 0 },
  { "line-rate-second-band", BW_RULE_LINE_RATE, "line_rates=31 kHz .. 32 kHz; 15 kHz .. 16 kHz", "",
    "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, NAN, 0 },
  { "line-rate-of-no-reach", BW_RULE_LINE_RATE, "", "", "raster=vesa-dmt-50", FATAL,
    BW_REASON_OUT_OF_REACH, BW_REMEDY_NONE, 203216.911765, 1e-6 },
  /* 60/1.001 Hz, and not the 29.97 Hz of the frame */
  { "field-rate-inside", BW_RULE_FIELD_RATE, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE,
    59.94005994005994, 1e-9 },
  { "field-rate-above", BW_RULE_FIELD_RATE, "field_rates=48 Hz .. 52 Hz", "", "", CURABLE,
    BW_REASON_ABOVE, BW_REMEDY_SCAN_CONVERTER, NAN, 0 },
  { "count-any", BW_RULE_LINE_COUNT, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 525, 0 },
  { "count-taken", BW_RULE_LINE_COUNT, "", "line_counts=525 lines; 625 lines", "", OK,
    BW_REASON_HOLDS, BW_REMEDY_NONE, 525, 0 },
  { "count-wrong", BW_RULE_LINE_COUNT, "", "line_counts=625 lines", "", CURABLE,
    BW_REASON_WRONG_COUNT, BW_REMEDY_SCAN_CONVERTER, 525, 0 },
  /* CTA-861-H VIC 8: 262 lines are half of 525 */
  /* 262 lines are listed, and not taken for half of the 525 that are listed before them */
  { "count-listed-beside-its-whole", BW_RULE_LINE_COUNT, "", "line_counts=525 lines; 262 lines",
    "raster=262-60.05-progressive", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 262, 0 },
  { "count-half", BW_RULE_LINE_COUNT, "", "line_counts=525 lines", "raster=262-60.05-progressive",
    TIGHT, BW_REASON_OTHER_COUNT, BW_REMEDY_NONE, 262, 0 },
  { "scan-not-taken", BW_RULE_LINE_COUNT, "", "scans=progressive", "", CURABLE,
    BW_REASON_WRONG_SCAN, BW_REMEDY_SCAN_CONVERTER, 525, 0 },
  { "sync-separate-for-composite", BW_RULE_SYNC_KIND, "", "", "syncs=separate", CURABLE,
    BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_COMBINER, NAN, 0 },
  { "sync-composite-for-green", BW_RULE_SYNC_KIND, "", "syncs=on-green", "", CURABLE,
    BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_ADDER, NAN, 0 },
  { "sync-green-for-composite", BW_RULE_SYNC_KIND, "", "", "syncs=on-green", CURABLE,
    BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_SEPARATOR, NAN, 0 },
  { "polarity-positive", BW_RULE_SYNC_POLARITY, "", "", "sync_polarity=positive", CURABLE,
    BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_INVERTER, NAN, 0 },
  { "polarity-in-video", BW_RULE_SYNC_POLARITY, "", "", "syncs=on-green | sync_polarity=positive",
    OK, BW_REASON_NOT_NEEDED, BW_REMEDY_NONE, NAN, 0 },
  /* divider: 5 V × 75/(75 + 100) */
  { "sync-level-logic", BW_RULE_SYNC_LEVEL, "", "",
    "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_SERIES_RESISTOR, 2.142857142857143, 1e-12 },
  { "sync-level-low", BW_RULE_SYNC_LEVEL, "", "", "sync_level=100 mV", CURABLE, BW_REASON_BELOW,
    BW_REMEDY_SYNC_AMPLIFIER, 0.1, 1e-15 },
  /* 0.205 V is 2.5 % above 0.2 V, inside the preset 5 % */
  { "sync-level-near-edge", BW_RULE_SYNC_LEVEL, "", "", "sync_level=205 mV", TIGHT,
    BW_REASON_NEAR_EDGE, BW_REMEDY_NONE, 0.205, 1e-15 },
  { "shape-tri-level", BW_RULE_SYNC_SHAPE, "line_rates=15 kHz .. 40 kHz",
    "line_rates=33 kHz .. 34 kHz | line_counts=1125 lines", "raster=1125-60-interlaced", CURABLE,
    BW_REASON_NOT_TAKEN, BW_REMEDY_SYNC_RESHAPER, NAN, 0 },
  { "shape-separate-is-bi-level", BW_RULE_SYNC_SHAPE, "line_rates=15 kHz .. 40 kHz",
    "syncs=separate | polarities=positive | line_rates=33 kHz .. 34 kHz | line_counts=1125 lines",
    "raster=1125-60-interlaced | syncs=separate", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, NAN, 0 },
  /* 1.5 + 9.2 = 10.7 µs */
  { "line-blanking-short", BW_RULE_LINE_BLANKING, "line_retrace=11 us", "", "", CURABLE,
    BW_REASON_BELOW, BW_REMEDY_SCAN_CONVERTER, 10.7e-6, 1e-15 },
  { "line-blanking-near-edge", BW_RULE_LINE_BLANKING, "line_retrace=10.5 us", "", "", TIGHT,
    BW_REASON_NEAR_EDGE, BW_REMEDY_NONE, 10.7e-6, 1e-15 },
  /* 20 lines of 63.5556 µs */
  { "field-blanking-short", BW_RULE_FIELD_BLANKING, "field_retrace=1.3 ms", "", "", CURABLE,
    BW_REASON_BELOW, BW_REMEDY_SCAN_CONVERTER, 1.2711111e-3, 0.5e-9 },
  { "black-border", BW_RULE_BLACK, "", "", "blanking=border", TIGHT, BW_REASON_NOT_TAKEN, BW_REMEDY_NONE, NAN, 0 },
  { "black-picture-unclamped", BW_RULE_BLACK, "", "clamp=none-dc", "blanking=picture", TIGHT,
    BW_REASON_OTHER_COUNT, BW_REMEDY_NONE, NAN, 0 },
  { "black-black", BW_RULE_BLACK, "", "", "blanking=black", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, NAN, 0 },
  { "black-not-said", BW_RULE_BLACK, "", "", "", OK, BW_REASON_NOT_NEEDED, BW_REMEDY_NONE, NAN, 0 },
  { "black-clamp-not-known", BW_RULE_BLACK, "", "clamp=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  /* 4.5 µs (SMPTE 170M table 2) */
  { "back-porch-of-525", BW_RULE_BACK_PORCH, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 4.5e-6, 1e-15 },
  /* 18 of 16.257 MHz; a clamp needs 1.5 and 2.5 of 64 µs of a line (common practice, no source) */
  { "back-porch-short", BW_RULE_BACK_PORCH, "line_rates=15 kHz .. 20 kHz", "line_rates=15 kHz .. 20 kHz",
    "raster=computer-720x350-50", TIGHT, BW_REASON_BELOW, BW_REMEDY_NONE, 18 / 16.257e6, 1e-9 },
  /* 80 of 154 MHz (VESA DMT 0x44), of a line of 13.5 µs */
  { "back-porch-near-edge", BW_RULE_BACK_PORCH, "line_rates=15 kHz .. 80 kHz | field_rates=45 Hz .. 90 Hz | line_retrace=0.5 us | field_retrace=100 us", "line_rates=15 kHz .. 80 kHz",
    "raster=vesa-dmt-44", TIGHT, BW_REASON_NEAR_EDGE,
    BW_REMEDY_NONE, 80 / 154e6, 1e-9 },
  { "back-porch-unclamped", BW_RULE_BACK_PORCH, "", "clamp=none-dc", "", OK, BW_REASON_NOT_NEEDED,
    BW_REMEDY_NONE, 4.5e-6, 1e-15 },
  { "back-porch-clamp-not-known", BW_RULE_BACK_PORCH, "", "clamp=", "", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "back-porch-raster-not-known", BW_RULE_BACK_PORCH, "", "", "raster=", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  /* 135 of 16.257 MHz, where 1.5 × 4.7 of 64 are 5.97 µs (common practice, no source) */
  { "sync-width-long", BW_RULE_SYNC_WIDTH, "line_rates=15 kHz .. 80 kHz | field_rates=45 Hz .. 90 Hz | line_retrace=0.5 us | field_retrace=100 us", "line_rates=15 kHz .. 80 kHz",
    "raster=computer-720x350-50", TIGHT, BW_REASON_ABOVE,
    BW_REMEDY_NONE, 135 / 16.257e6, 1e-9 },
  { "sync-width-of-computers", BW_RULE_SYNC_WIDTH, "line_rates=15 kHz .. 80 kHz | field_rates=45 Hz .. 90 Hz | line_retrace=0.5 us | field_retrace=100 us", "line_rates=15 kHz .. 80 kHz",
    "raster=vesa-dmt-04", OK, BW_REASON_NOT_NEEDED,
    BW_REMEDY_NONE, 96 / 25.175e6, 1e-12 },
  { "sync-width-raster-not-known", BW_RULE_SYNC_WIDTH, "", "", "raster=", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  /* 4.7 + 4.5 µs, and 3 % of 63.56 µs in reach of the phase control (common practice, no source) */
  { "picture-start-early", BW_RULE_PICTURE_START, "line_retrace=11.2 us", "", "", TIGHT, BW_REASON_BELOW,
    BW_REMEDY_NONE, 9.2e-6, 1e-15 },
  { "picture-start-in-reach", BW_RULE_PICTURE_START, "line_retrace=11 us", "", "", OK, BW_REASON_HOLDS,
    BW_REMEDY_NONE, 9.2e-6, 1e-15 },
  /* 80 of 74.25 MHz and 220 (CTA-861-H VIC 19 with its tri-level sync) */
  { "picture-start-tri-level", BW_RULE_PICTURE_START, "line_rates=15 kHz .. 80 kHz | line_retrace=5 us",
    "line_rates=15 kHz .. 80 kHz | shapes=tri-level; bi-level", "raster=750-50-progressive", OK,
    BW_REASON_NOT_NEEDED, BW_REMEDY_NONE, 300 / 74.25e6, 1e-9 },
  { "picture-start-not-known", BW_RULE_PICTURE_START, "line_retrace=", "", "", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "picture-start-raster-not-known", BW_RULE_PICTURE_START, "", "", "raster=", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  { "video-high", BW_RULE_VIDEO_LEVEL, "", "", "video_level=2 V", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_VIDEO_PAD, 2, 1e-15 },
  /* a source of 50 Ω: the pad that matches it lowers 1.4 V to 0.74 V */
  { "video-high-from-50-ohm", BW_RULE_VIDEO_LEVEL, "", "", "video_level=1.4 V | source_resistance=50 ohm",
    CURABLE, BW_REASON_ABOVE, BW_REMEDY_MINIMUM_LOSS_PAD, 1.4, 1e-12 },
  { "video-low", BW_RULE_VIDEO_LEVEL, "", "", "video_level=200 mV", CURABLE, BW_REASON_BELOW,
    BW_REMEDY_VIDEO_AMPLIFIER, 0.2, 1e-15 },
  /* divider: 1.4 V × 10 000/10 075 */
  { "video-unterminated", BW_RULE_VIDEO_LEVEL, "", "termination=none", "", CURABLE,
    BW_REASON_CURED_BY_TERMINATION, BW_REMEDY_TERMINATOR, 1.38958, 0.5e-5 },
  /* 0.35 V across 75 Ω is 0.695 V where the line ends in nothing: taken until it ends as it must */
  { "video-low-when-terminated", BW_RULE_VIDEO_LEVEL, "",
    "termination=none | video_level=0.5 V .. 1 V", "video_level=350 mV", CURABLE, BW_REASON_OUTSIDE_TERMINATED, BW_REMEDY_VIDEO_AMPLIFIER, 0.69479,
    0.5e-5 },
  /* 4.55 V across 10 kΩ is too much for 1 to 2 V, 0.35 V across 75 Ω too little, and √2 V by a
   * resistor of 24 kΩ would leave the lead at 7 kΩ */
  { "sync-level-high-impedance", BW_RULE_SYNC_LEVEL, "",
    "sync_termination=none | own_sync_level=1 V .. 2 V",
    "sync_level=5 V | sync_stated=open | sync_resistance=1 kohm", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_SYNC_AMPLIFIER, 4.545454545454545, 1e-12 },
  { "setup-taken", BW_RULE_SETUP, "", "setup=0 IRE; 7.5 IRE", "setup=7.5 IRE", OK, BW_REASON_HOLDS,
    BW_REMEDY_NONE, 7.5, 0 },
  { "setup-lifted", BW_RULE_SETUP, "", "setup=0 IRE", "setup=7.5 IRE", CURABLE, BW_REASON_ABOVE,
    BW_REMEDY_BLACK_LEVEL, 7.5, 0 },
  { "setup-crushed", BW_RULE_SETUP, "", "setup=7.5 IRE", "", CURABLE, BW_REASON_BELOW,
    BW_REMEDY_BLACK_LEVEL, 0, 0 },
  { "setup-a-little-off", BW_RULE_SETUP, "", "setup=0 IRE", "setup=1.5 IRE", TIGHT, BW_REASON_ABOVE,
    BW_REMEDY_NONE, 1.5, 0 },
  { "termination-one", BW_RULE_TERMINATION, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 75,
    0 },
  { "termination-none", BW_RULE_TERMINATION, "", "termination=none", "", CURABLE,
    BW_REASON_UNTERMINATED, BW_REMEDY_TERMINATOR, 10e3, 0 },
  { "termination-50-ohm", BW_RULE_TERMINATION, "",
    "termination=none | input_resistance=50 ohm | video_level=0.3 V .. 1 V", "", CURABLE,
    BW_REASON_OTHER_RESISTANCE, BW_REMEDY_MATCHING_RESISTOR, 50, 0 },
  { "termination-50-ohm-too-much", BW_RULE_TERMINATION, "",
    "termination=none | input_resistance=50 ohm | video_level=0.2 V .. 0.4 V", "", CURABLE,
    BW_REASON_OTHER_RESISTANCE, BW_REMEDY_MINIMUM_LOSS_PAD, 50, 0 },
  /* 3.97 V at 10 kΩ is what an input for 2 to 6 V is made for; 2 V across 75 Ω would be none too much */
  { "termination-of-volts", BW_RULE_TERMINATION, "", "termination=none | video_level=2.5 V .. 6 V",
    "video_level=2 V", TIGHT, BW_REASON_MADE_OPEN, BW_REMEDY_NONE, 10e3, 0 },
  { "level-of-volts", BW_RULE_VIDEO_LEVEL, "", "termination=none | video_level=2.5 V .. 6 V",
    "video_level=2 V", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 3.970223, 1e-6 },
  { "termination-300-ohm", BW_RULE_TERMINATION, "", "termination=none | input_resistance=300 ohm",
    "", CURABLE, BW_REASON_OTHER_RESISTANCE, BW_REMEDY_SHUNT_RESISTOR, 300, 0 },
  { "termination-switch-off", BW_RULE_TERMINATION, "", "termination=switched | terminated=no", "",
    CURABLE, BW_REASON_UNTERMINATED, BW_REMEDY_SWITCH_ON, 10e3, 0 },
  /* 75 Ω twice is 37.5 Ω */
  { "termination-twice", BW_RULE_TERMINATION, "", "loop_through=yes | loop_ended=yes", "", CURABLE,
    BW_REASON_DOUBLE_TERMINATED, BW_REMEDY_UNLOAD_LOOP, 37.5, 0 },
  { "termination-twice-switched", BW_RULE_TERMINATION, "",
    "termination=switched | terminated=yes | loop_through=yes | loop_ended=yes", "", CURABLE,
    BW_REASON_DOUBLE_TERMINATED, BW_REMEDY_SWITCH_OFF, 37.5, 0 },
  { "termination-voltage-driven", BW_RULE_TERMINATION, "", "termination=none",
    "source_resistance=0 ohm", TIGHT, BW_REASON_VOLTAGE_DRIVEN, BW_REMEDY_NONE, 10e3, 0 },
  /* A capacitor without a clamp behind it does the same at either end: 0.7 V × 52.8556/63.5556 × 485/525 */
  { "coupling-no-clamp", BW_RULE_COUPLING, "", "clamp=none-dc", "coupling=ac", TIGHT,
    BW_REASON_BLACK_WANDERS, BW_REMEDY_NONE, 0.5378, 0.5e-4 },
  /* 0.7 V × 52.8556/63.5556 × 485/525 */
  { "coupling-black-wanders", BW_RULE_COUPLING, "", "clamp=none-ac", "", TIGHT,
    BW_REASON_BLACK_WANDERS, BW_REMEDY_NONE, 0.5378, 0.5e-4 },
  { "coupling-offset", BW_RULE_COUPLING, "", "dc_offset=-1 V .. 1 V", "dc_offset=5 V", CURABLE,
    BW_REASON_DC_OFFSET, BW_REMEDY_COUPLING_CAPACITOR, 5, 0 },
  { "bandwidth-enough", BW_RULE_BANDWIDTH, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, 10e6,
    0 },
  { "bandwidth-short", BW_RULE_BANDWIDTH, "bandwidth=4 MHz", "", "", TIGHT, BW_REASON_BELOW,
    BW_REMEDY_NONE, 4e6, 0 },
  { "bandwidth-of-the-input", BW_RULE_BANDWIDTH, "", "bandwidth=3 MHz", "", TIGHT, BW_REASON_BELOW,
    BW_REMEDY_NONE, 3e6, 0 },
  { "bandwidth-not-known", BW_RULE_BANDWIDTH, "bandwidth=", "", "", UNJUDGED, BW_REASON_UNKNOWN,
    BW_REMEDY_NONE, NAN, 0 },
  /* 60 − 60/1.001 = 0.05994 Hz */
  { "mains-slow-beat", BW_RULE_MAINS_BEAT, "", "", "", OK, BW_REASON_SLOW_BEAT, BW_REMEDY_NONE,
    0.05994, 0.5e-6 },
  { "mains-flicker", BW_RULE_MAINS_BEAT, "", "", "raster=625-50-interlaced", OK,
    BW_REASON_FLICKER, BW_REMEDY_NONE, 10, 1e-12 },
  { "mains-no-beat", BW_RULE_MAINS_BEAT, "", "", "raster=525-60-interlaced", OK, BW_REASON_NO_BEAT,
    BW_REMEDY_NONE, 0, 1e-12 },
  { "aspect-same", BW_RULE_ASPECT, "", "", "", OK, BW_REASON_HOLDS, BW_REMEDY_NONE, NAN, 0 },
  /* Another aspect ratio does not hide that lines are lost: 1 − 0.95² of the area all the same */
  { "area-overscanned-wide", BW_RULE_VISIBLE_AREA, "overscan_h=5 % | overscan_v=5 %", "",
    "whole_picture=yes | aspect=16:9", CURABLE, BW_REASON_OVERSCANNED, BW_REMEDY_SIZE, 0.0975, 1e-12 },
  { "area-whole", BW_RULE_VISIBLE_AREA, "", "", "whole_picture=yes", OK, BW_REASON_HOLDS,
    BW_REMEDY_NONE, 0, 0 },
  /* 1 − 0.95² of the area; the size controls bring it in */
  { "area-overscanned", BW_RULE_VISIBLE_AREA, "overscan_h=5 % | overscan_v=5 %", "",
    "whole_picture=yes", CURABLE, BW_REASON_OVERSCANNED, BW_REMEDY_SIZE, 0.0975, 1e-12 },
  { "area-overscanned-picture", BW_RULE_VISIBLE_AREA, "overscan_h=5 % | overscan_v=5 %", "", "", OK,
    BW_REASON_HOLDS, BW_REMEDY_NONE, 0.0975, 1e-12 },
  { "aspect-wide", BW_RULE_ASPECT, "", "", "aspect=16:9", CURABLE, BW_REASON_OTHER_ASPECT,
    BW_REMEDY_SIZE, NAN, 0 },
  { "aspect-wide-switch", BW_RULE_ASPECT, "wide_switch=yes", "", "aspect=16:9", CURABLE,
    BW_REASON_WIDE_SWITCH, BW_REMEDY_ASPECT_SWITCH, NAN, 0 },
  { "lead-same", BW_RULE_LEAD, "", "", "", OK, BW_REASON_SAME_CONNECTOR, BW_REMEDY_NONE, NAN, 0 },
  { "lead-adapting", BW_RULE_LEAD, "", "", "connector=phono", OK, BW_REASON_ADAPTING_LEAD,
    BW_REMEDY_NONE, NAN, 0 },
  { "lead-crossed", BW_RULE_LEAD, "", "connectors=japanese-21", "connector=peritelevision", CURABLE,
    BW_REASON_CROSSED, BW_REMEDY_CROSSED_LEAD, NAN, 0 },
  /* Without the figure that would decide, nothing is judged. */
  { "signal-kind-not-given", BW_RULE_SIGNAL_KIND, "", "", "signal=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "signal-kind-not-known", BW_RULE_SIGNAL_KIND, "", "signals=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "colour-system-not-known", BW_RULE_COLOUR_SYSTEM, "", "signals=composite | syncs=in-video | systems=", "signal=composite | syncs=in-video | system=pal-b", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "colour-system-not-given", BW_RULE_COLOUR_SYSTEM, "", "signals=composite | syncs=in-video | systems=pal-b", "signal=composite | syncs=in-video | system=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "line-rate-not-known", BW_RULE_LINE_RATE, "line_rates=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "line-rate-not-given", BW_RULE_LINE_RATE, "", "", "raster=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "field-rate-not-known", BW_RULE_FIELD_RATE, "field_rates=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "scan-not-known", BW_RULE_LINE_COUNT, "", "scans=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-kind-not-known", BW_RULE_SYNC_KIND, "", "syncs=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-kind-not-given", BW_RULE_SYNC_KIND, "", "", "syncs=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-polarity-not-known", BW_RULE_SYNC_POLARITY, "", "syncs=separate | polarities=", "syncs=separate", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-polarity-not-given", BW_RULE_SYNC_POLARITY, "", "syncs=separate", "syncs=separate | sync_polarity=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-level-not-known", BW_RULE_SYNC_LEVEL, "", "sync_level=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-level-not-given", BW_RULE_SYNC_LEVEL, "", "", "sync_level=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-level-load-not-known", BW_RULE_SYNC_LEVEL, "", "sync_termination=", "syncs=composite-sync", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "sync-shape-not-known", BW_RULE_SYNC_SHAPE, "", "shapes=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "line-retrace-not-known", BW_RULE_LINE_BLANKING, "line_retrace=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "field-retrace-not-known", BW_RULE_FIELD_BLANKING, "field_retrace=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "video-level-not-known", BW_RULE_VIDEO_LEVEL, "", "video_level=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "video-level-not-given", BW_RULE_VIDEO_LEVEL, "", "", "video_level=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "setup-not-given", BW_RULE_SETUP, "", "", "setup=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "termination-not-known", BW_RULE_TERMINATION, "", "termination=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "termination-switch-not-known", BW_RULE_TERMINATION, "", "termination=switched | terminated=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "loop-through-not-known", BW_RULE_TERMINATION, "", "loop_through=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "loop-end-not-known", BW_RULE_TERMINATION, "", "loop_through=yes | loop_ended=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "source-resistance-not-given", BW_RULE_TERMINATION, "", "", "source_resistance=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "clamp-not-known", BW_RULE_COUPLING, "", "clamp=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "coupling-not-given", BW_RULE_COUPLING, "", "", "coupling=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "offset-not-given", BW_RULE_COUPLING, "", "", "dc_offset=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "bandwidth-aspect-not-given", BW_RULE_BANDWIDTH, "", "", "aspect=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "beat-not-known", BW_RULE_MAINS_BEAT, "", "", "raster=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "overscan-not-known", BW_RULE_VISIBLE_AREA, "overscan_h=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "tube-aspect-not-known", BW_RULE_ASPECT, "aspect=", "", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "connector-not-given", BW_RULE_LEAD, "", "", "connector=", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
  { "connector-not-known", BW_RULE_LEAD, "", "connectors=", "", UNJUDGED, BW_REASON_UNKNOWN, BW_REMEDY_NONE, NAN, 0 },
};

/* The rule is asked alone, on a case that is judged as a whole besides: it finds the same. */
static void
test_rule (gconstpointer data)
{
  const RuleCase *row = data;
  BwFinding f;
  Bench b;
  BwFit fit;

  bench_init (&b, row->monitor, row->input, row->source);
  bw_fit_judge (&b.c, &fit);
  bw_rule_judge (row->rule, &b.c, fit.sync, &f);
  g_assert_cmpstr (bw_kind_id (&bw_severities, f.severity), ==,
                   bw_kind_id (&bw_severities, row->severity));
  g_assert_cmpuint (f.reason, ==, row->reason);
  g_assert_cmpstr (bw_kind_id (&bw_remedies, f.remedy.kind), ==,
                   bw_kind_id (&bw_remedies, row->remedy));
  if (!isnan (row->value))
    g_assert_cmpfloat_with_epsilon (f.value, row->value, row->tolerance + DBL_MIN);
  g_assert_cmpuint (fit.at[row->rule].severity, ==, f.severity);
  g_assert_cmpuint (fit.at[row->rule].reason, ==, f.reason);
  g_assert_cmpfloat (fit.at[row->rule].value, ==, f.value);
  g_autofree char *fault = bw_property_fit (&b.c, &fit);
  g_assert_cmpstr (fault, ==, NULL);
  bench_clear (&b);
}

/* Every rule has at least one row in which it does not hold. */
static void
test_every_rule_fails_once (void)
{
  gboolean fails[BW_N_RULES] = { FALSE };
  for (gsize i = 0; i < G_N_ELEMENTS (rule_cases); i++)
    fails[rule_cases[i].rule] |= rule_cases[i].severity != OK;
  for (guint rule = 0; rule < BW_N_RULES; rule++)
    if (!fails[rule])
      {
        g_test_message ("no row in which %s fails", bw_kind_id (&bw_rules, rule));
        g_test_fail ();
      }
}

/* What can hurt someone stands first and is told from what merely fails: mains far outside the plate, and
 * logic into 75 Ω. */
static void
test_danger (void)
{
  static const struct
  {
    const char *monitor;
    const char *source;
    BwRule rule;
    gboolean danger;
  } cases[] = {
    { "mains_voltage=100 V .. 115 V", "", BW_RULE_MAINS, FALSE },
    { "mains_voltage=100 V", "", BW_RULE_MAINS, TRUE },
    { "mains_frequency=50 Hz", "", BW_RULE_MAINS, TRUE },
    { "", "sync_level=5 V | sync_stated=open | sync_resistance=300 ohm", BW_RULE_SYNC_DRIVE, FALSE },
    { "", "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm", BW_RULE_SYNC_DRIVE, TRUE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench b;
      BwFit fit;
      bench_init (&b, cases[i].monitor, "", cases[i].source);
      bw_fit_judge (&b.c, &fit);
      for (guint rule = 0; rule < BW_N_RULES; rule++)
        g_assert_cmpint (fit.at[rule].danger, ==, rule == cases[i].rule && cases[i].danger);
      bench_clear (&b);
    }
}

/* What a remedy makes anew is not judged: behind a scan converter the set sees another raster, and
 * behind a sync separator another sync. */

typedef struct
{
  const char *name;
  const char *monitor;
  const char *source;
  BwRule rule; /* which fails, and sets aside what follows */
  BwReason reason;
  BwRule aside[4];
} AsideCase;

static const AsideCase aside_cases[] = {
  { "scan-converter",
    "line_rates=31 kHz .. 32 kHz | line_retrace=20 us",
    "video_level=2 V | sync_level=2 V",
    BW_RULE_LINE_RATE,
    BW_REASON_OTHER_RASTER,
    { BW_RULE_SYNC_LEVEL, BW_RULE_VIDEO_LEVEL, BW_RULE_LINE_BLANKING, BW_RULE_MAINS_BEAT } },
  { "sync-separator",
    "",
    "syncs=on-green | sync_level=2 V | sync_polarity=positive",
    BW_RULE_SYNC_KIND,
    BW_REASON_NOT_NEEDED,
    { BW_RULE_SYNC_POLARITY, BW_RULE_SYNC_LEVEL, BW_RULE_SYNC_SHAPE, BW_RULE_SYNC_SHAPE } },
};

static void
test_aside (gconstpointer data)
{
  const AsideCase *row = data;
  Bench b;
  BwFit fit;

  bench_init (&b, row->monitor, "", row->source);
  bw_fit_judge (&b.c, &fit);
  g_assert_cmpuint (fit.at[row->rule].severity, ==, CURABLE);
  g_assert_cmpuint (fit.limiting, ==, row->rule);
  for (gsize i = 0; i < G_N_ELEMENTS (row->aside); i++)
    {
      const BwFinding *f = &fit.at[row->aside[i]];
      g_assert_cmpuint (f->severity, ==, OK);
      g_assert_cmpuint (f->reason, ==, row->reason);
      g_assert_cmpuint (f->remedy.kind, ==, BW_REMEDY_NONE);
    }
  g_autofree char *fault = bw_property_fit (&b.c, &fit);
  g_assert_cmpstr (fault, ==, NULL);
  bench_clear (&b);
}

/* Figures that go with findings, worked by hand */

/* 75 Ω × (5 V / 0.3 V − 1) less the driver's own 100 Ω (voltage divider). */
static void
test_series_resistor_value (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm");
  bw_fit_judge (&b.c, &fit);
  const BwFinding *f = &fit.at[BW_RULE_SYNC_LEVEL];
  g_autofree char *remedy = bw_finding_remedy (f, &fit, &b.c, '.');
  g_assert_true (bw_near (f->remedy.value, 1075, 1e-3));
  g_assert_true (bw_near (f->as.sync_level.wanted_v, 0.3, 1e-12));
  /* the nearest of E24 (IEC 60063) by ratio is 1.1 kΩ */
  bw_test_assert_words (remedy, WORDS ("1.1\u00a0k\u03a9", "1.075\u00a0k\u03a9", "300\u00a0mV"));
  bench_clear (&b);
}

/* 0.7 V from 2 V: 20 log10 (0.35) = −9.1 dB. */
static void
test_pad_value (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "video_level=2 V");
  bw_fit_judge (&b.c, &fit);
  g_autofree char *remedy = bw_finding_remedy (&fit.at[BW_RULE_VIDEO_LEVEL], &fit, &b.c, ',');
  bw_test_assert_words (remedy, WORDS ("-9,1 dB"));
  bench_clear (&b);
}

/* A bar crosses the height in 1 / (0.05994 Hz × 59.94/60) = 16.7 s, up as the mains is faster. */
static void
test_hum_bar_time (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "");
  bw_fit_judge (&b.c, &fit);
  const BwFinding *f = &fit.at[BW_RULE_MAINS_BEAT];
  g_assert_cmpuint (f->as.mains_beat.bars, ==, 1);
  g_assert_true (bw_near (f->as.mains_beat.crossing_s, 16.7, 0.05));
  g_assert_cmpint (f->as.mains_beat.direction, ==, 1);
  b.c.supply_hz = 59.9;
  bw_fit_judge (&b.c, &fit);
  g_assert_cmpint (f->as.mains_beat.direction, ==, -1);
  bench_clear (&b);
}

/* 485 picture lines and 52.8556 µs, 5 % of each; 16:9 on 4:3 takes three quarters of the height. */
static void
test_hidden_area (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "overscan_h=5 % | overscan_v=5 %", "", "");
  bw_fit_judge (&b.c, &fit);
  g_assert_true (bw_near (fit.at[BW_RULE_VISIBLE_AREA].as.visible_area.hidden_lines, 24.25, 1e-9));
  g_assert_true (
      bw_near (fit.at[BW_RULE_VISIBLE_AREA].as.visible_area.hidden_s, 2.64278e-6, 0.5e-11));
  set_all (&bw_source_fields, b.source, "aspect=16:9");
  bw_fit_judge (&b.c, &fit);
  g_assert_true (bw_near (fit.at[BW_RULE_ASPECT].remedy.value, 0.75, 1e-12));
  g_assert_true (fit.at[BW_RULE_ASPECT].as.aspect.sets_height);
  bench_clear (&b);
}

/* A picture of 8:5 on a tube of 4:3 has (4/3) / (8/5) = 0.8333 of the height. */
static void
test_size_in_words (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "aspect=8:5");
  bw_fit_judge (&b.c, &fit);
  g_autofree char *remedy = bw_finding_remedy (&fit.at[BW_RULE_ASPECT], &fit, &b.c, '.');
  g_assert_cmpstr (remedy, ==, "height control: set the height to 83.3\u00a0%");
  bench_clear (&b);
}

/* TV lines: 2 × 5 MHz × 52.8556 µs / (4/3) = 396. */
static void
test_tv_lines (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "", "");
  bw_fit_judge (&b.c, &fit);
  g_assert_true (bw_near (fit.at[BW_RULE_BANDWIDTH].as.bandwidth.source_tvl, 396.4, 0.05));
  g_assert_true (bw_near (fit.at[BW_RULE_BANDWIDTH].as.bandwidth.passed_tvl, 792.8, 0.05));
  bench_clear (&b);
}

/* The sentence on the bandwidth names the first limit of all: height 304.8 mm by a pitch of 2 mm
 * are 152 lines; without a pitch it is what the bench's 10 MHz or its source pass. */
static void
test_first_limit (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "diagonal=20 in | aspect=4:3 | mask=grille | pitch=2 mm", "", "");
  bw_fit_judge (&b.c, &fit);
  g_autofree char *mask = bw_finding_says (&fit.at[BW_RULE_BANDWIDTH], &fit, &b.c, '.');
  bw_test_assert_words (mask, WORDS ("most is lost there in the mask", "793", "396", "at −3 dB",
                                     "3 % of the contrast"));
  set_all (&bw_monitor_fields, b.monitor, "pitch=");
  bw_fit_judge (&b.c, &fit);
  g_autofree char *other = bw_finding_says (&fit.at[BW_RULE_BANDWIDTH], &fit, &b.c, '.');
  bw_test_assert_words (other, WORDS ("most is lost there"));
  g_assert_null (strstr (other, "mask"));
  bench_clear (&b);
}

/* Sync that is over the limit by next to nothing still gets a resistor that exists. */
static void
test_series_resistor_of_almost_nothing (void)
{
  Bench b;
  BwFit fit;

  bench_init (&b, "", "sync_level=0.3 V .. 0.3 V | sync_termination=none",
              "sync_level=0.5000001 V | sync_stated=open | sync_resistance=6666.6666666667 ohm");
  bw_fit_judge (&b.c, &fit);
  g_autofree char *fault = bw_property_fit (&b.c, &fit);
  g_assert_cmpstr (fault, ==, NULL);
  bench_clear (&b);
}

/* Sentences of which a part depends on more than the reason */

typedef struct
{
  const char *name;
  BwRule rule;
  const char *monitor;
  const char *input;
  const char *source;
  const char *says; /* no-break spaces as plain ones */
} SaysCase;

static const SaysCase says_cases[] = {
  { "between-bands", BW_RULE_LINE_RATE, "line_rates=15 kHz .. 15.5 kHz; 31 kHz .. 32 kHz", "", "",
    "Line rate 15.734 kHz is outside this input's 15\u201315.5 kHz and 31\u201332 kHz; a scan "
    "converter is needed. Do not connect it as it is: the wrong line rate can damage a set." },
  { "field-rate", BW_RULE_FIELD_RATE, "field_rates=70 Hz .. 75 Hz", "", "",
    "Field rate 59.94 Hz is below this input's 70\u201375 Hz; a scan converter is needed." },
  { "line-counts", BW_RULE_LINE_COUNT, "", "line_counts=405 lines; 600 lines .. 625 lines", "",
    "525 lines, interlaced: this input counts 405 lines and 600\u2013625 lines." },
  /* monochrome is no system that a decoder decodes */
  { "systems-that-are-decoded", BW_RULE_COLOUR_SYSTEM, "",
    "signals=composite | systems=none; pal-m", "signal=composite | syncs=in-video | system=ntsc-m",
    "The source is NTSC M (subcarrier 3.5795 MHz); this input decodes PAL M: a lead alone gives a "
    "picture in monochrome. Colour takes a transcoder." },
  { "green-alone", BW_RULE_SIGNAL_KIND, "", "signals=luminance | systems=none | syncs=in-video",
    "syncs=on-green",
    "A monochrome input: green alone, through a lead, gives a picture in which red and blue are black. A "
    "matrix of R, G and B gives each its right grey." },
  { "capacitor-of-the-source", BW_RULE_COUPLING, "", "clamp=none-dc", "coupling=ac",
    "The source is a.c. coupled and this input does not clamp: black moves by up to 538 mV as the picture "
    "changes." },
  { "two-polarities", BW_RULE_SYNC_POLARITY,
    "line_rates=15 kHz .. 80 kHz | field_rates=45 Hz .. 90 Hz",
    "syncs=separate | polarities=negative; positive", "syncs=separate | raster=vesa-dmt-02",
    "The sync is H negative and V positive, which this input takes." },
  { "one-column", BW_RULE_VISIBLE_AREA, "line_rates=15 kHz .. 80 kHz | overscan_h=0.15625 %", "",
    "raster=vesa-dmt-04", "0 lines and 1 column of the picture fall outside the glass." },
  { "hidden-time", BW_RULE_VISIBLE_AREA, "overscan_h=5 % | overscan_v=5 %", "", "whole_picture=yes",
    "24 lines and 2.64 \u00b5s of each line of the picture fall outside the glass, on a source of "
    "which the whole picture matters." },
  { "aspect-height", BW_RULE_ASPECT, "", "", "aspect=16:9",
    "The picture is meant for another aspect ratio than the tube's: circles come out as ovals until "
    "the height is set to 75 %." },
  { "aspect-of-three-digits", BW_RULE_ASPECT, "", "", "aspect=8:5", /* (4/3) / (8/5) = 0.8333 */
    "The picture is meant for another aspect ratio than the tube's: circles come out as ovals until "
    "the height is set to 83.3 %." },
  { "aspect-width", BW_RULE_ASPECT, "aspect=16:9", "", "",
    "The picture is meant for another aspect ratio than the tube's: circles come out as ovals until "
    "the width is set to 75 %." },
  { "dc", BW_RULE_COUPLING, "", "clamp=none-dc | dc_offset=-0.1 V .. 0.1 V", "dc_offset=5 V",
    "Blanking stands at 5 V; this input takes -100 to 100 mV." },
};

static void
test_says (gconstpointer data)
{
  const SaysCase *row = data;
  Bench b;
  BwFit fit;

  bench_init (&b, row->monitor, row->input, row->source);
  bw_fit_judge (&b.c, &fit);
  g_autofree char *says = bw_finding_says (&fit.at[row->rule], &fit, &b.c, '.');
  g_autoptr (GString) plain = g_string_new (says);
  g_string_replace (plain, "\u00a0", " ", 0);
  g_assert_cmpstr (plain->str, ==, row->says);
  bench_clear (&b);
}

/* All that is told of a finding, with figures that are not round: the sentence, the value, what is allowed, the
 * margin and the remedy. Beside each stands the working; line and field of 525 lines are those of SMPTE 170M. */

typedef struct
{
  const char *name;
  BwRule rule;
  const char *monitor;
  const char *input;
  const char *source;
  const char *told[5]; /* no-break spaces as plain ones */
} ToldCase;

static const ToldCase told_cases[] = {
  /* 7.5 / 140 V = 53.57 mV */
  { "setup-low", BW_RULE_SETUP, "", "signals=composite | systems=ntsc-m | syncs=in-video | setup=7.5 IRE", "signal=composite | syncs=in-video | system=ntsc-m",
    { "Setup is 0 IRE where this input expects 7.5 IRE: shadows are crushed by 7.5 IRE "
    "(53.6 mV).",
    "0 IRE", "7.5 IRE", "", "set the black level (setup switch or brightness)" } },
  { "setup-high", BW_RULE_SETUP, "", "signals=composite | systems=ntsc-m | syncs=in-video | setup=0 IRE", "signal=composite | syncs=in-video | system=ntsc-m | setup=7.5 IRE",
    { "Setup is 7.5 IRE where this input expects 0 IRE: black comes out lifted by 7.5 "
    "IRE (53.6 mV).",
    "7.5 IRE", "0 IRE", "", "set the black level (setup switch or brightness)" } },
  /* 60 − 50 = 10 Hz */
  { "flicker", BW_RULE_MAINS_BEAT, "", "", "raster=625-50-interlaced",
    { "Field rate and mains beat at 10 Hz: the picture locks; ripple or a stray mains field, where a "
    "set has any, shows as flicker or wobble at that rate, not as a slow bar.",
    "10 Hz", "", "", "" } },
  /* 60 − 59.94006 = 0.0599 Hz, times 59.94 / 60: 1 / 0.05988 = 16.7 s */
  { "slow-beat", BW_RULE_MAINS_BEAT, "", "", "",
    { "Field rate and mains beat at 0.0599 Hz: a hum bar drifts up, across the height "
    "in 16.7 s.",
    "0.0599 Hz", "at most 1 Hz", "94 %", "" } },
  /* (51.23 − 200) / 200 = −74.4 % */
  { "sync-low", BW_RULE_SYNC_LEVEL, "", "", "sync_level=51.23 mV",
    { "Sync arrives at 51.2 mV across 75 Ω, below this input's 200–600 mV.",
    "51.2 mV", "200–600 mV", "−74 %", "sync amplifier" } },
  /* 5 × 75 / 175 = 2.143 V, 3.57 × 0.6; 75 (5 / 0.3 − 1) − 100 = 1075; 5 × 75 / 1275 = 0.294 */
  { "logic", BW_RULE_SYNC_LEVEL, "", "", "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm",
    { "Sync arrives at 2.14 V across 75 Ω, above this input's 200–600 mV.",
    "2.14 V", "200–600 mV", "3.6 × the limit", "series resistor of 1.1 kΩ at the source's end of the sync lead: 294 mV (exactly 1.075 kΩ for 300 mV)" } },
  /* 20 log (0.7 / 1.2345) = −4.93 dB */
  { "video-high", BW_RULE_VIDEO_LEVEL, "", "", "video_level=1.2345 V",
    { "Video arrives at 1.23 V across 75 Ω, above this input's 0.5–1 V.",
    "1.23 V", "0.5–1 V", "−23 %", "matched 75 Ω attenuator: -4.9 dB" } },
  /* RGB of 4 V into high impedance, 8 × 10000 / 10075 = 7.94 V there, of 0.8 to 1.1 V: behind the load of 75 Ω that
   * is due, 4 V to the middle √(0.8 · 1.1) = 0.938 V, 20 log (0.938 / 4) = −12.6 dB; without the load −18.6 */
  { "pad-and-terminator", BW_RULE_VIDEO_LEVEL, "",
    "termination=none | input_resistance=10 kohm | video_level=0.8 V .. 1.1 V", "video_level=4 V",
    { "Video arrives at 7.94 V across 10 kΩ, above this input's 0.8–1.1 V.", "7.94 V", "0.8–1.1 V",
    "7.2 × the limit", "matched 75 Ω attenuator: -12.6 dB" } },
  { "terminator-and-pad", BW_RULE_TERMINATION, "",
    "termination=none | input_resistance=10 kohm | video_level=0.8 V .. 1.1 V", "video_level=4 V",
    { "The line ends in 10 kΩ: not terminated. Levels stand at 199 % of what they should be, and edges echo.",
    "10 kΩ", "67.5–82.5 Ω", "121 × the limit", "75 Ω terminator at the input" } },
  /* 20 log (0.7 / 0.31234) = 7.01 dB; (312.34 − 500) / 500 = −37.5 % */
  { "video-low", BW_RULE_VIDEO_LEVEL, "", "", "video_level=312.34 mV",
    { "Video arrives at 312 mV across 75 Ω, below this input's 0.5–1 V.",
    "312 mV", "0.5–1 V", "−38 %", "video amplifier: +7.0 dB" } },
  /* (10.7 − 12.345) / 12.345 = −13.3 % */
  { "line-short", BW_RULE_LINE_BLANKING, "line_retrace=12.345 us", "", "",
    { "Line blanking lasts 10.7 µs; retrace needs 12.35 µs: the picture folds over at "
    "the left or right edge.",
    "10.7 µs", "at least 12.3 µs", "−13 %", "scan converter" } },
  /* (10.7 − 8) / 8 = 33.75 % */
  { "line-long", BW_RULE_LINE_BLANKING, "", "", "",
    { "Line blanking lasts 10.7 µs; retrace needs 8 µs.",
    "10.7 µs", "at least 8 µs", "34 %", "" } },
  /* 20 lines of 63.5556 µs are 1.2711 ms; −12.7 % */
  { "field-short", BW_RULE_FIELD_BLANKING, "field_retrace=1.4567 ms", "", "",
    { "Field blanking lasts 1.27 ms; retrace needs 1.457 ms: the picture folds over at "
    "the top.",
    "1.27 ms", "at least 1.46 ms", "−13 %", "scan converter" } },
  /* (1.2711 − 0.8) / 0.8 = 58.9 % */
  { "field-long", BW_RULE_FIELD_BLANKING, "", "", "",
    { "Field blanking lasts 1.27 ms; retrace needs 800 µs.",
    "1.27 ms", "at least 800 µs", "59 %", "" } },
  /* 2 × 10000 / 10075 = 198.5 %; (10000 − 82.5) / 82.5 */
  { "made-open", BW_RULE_TERMINATION, "", "termination=none | video_level=2.5 V .. 6 V",
    "video_level=2 V",
    { "The line ends in 10 kΩ, and this input is made for the level that stands there: 199 % of that "
    "across 75 Ω. Keep the lead short; a long one echoes.",
    "10 kΩ", "67.5–82.5 Ω", "121 × the limit", "" } },
  /* a terminator hangs on the loop-through, where there is one */
  { "open-with-loop", BW_RULE_TERMINATION, "",
    "termination=none | loop_through=yes | input_resistance=12.3 kohm", "",
    { "The line ends in 12.3 kΩ: not terminated. Levels stand at 199 % of what they "
    "should be, and edges echo.",
    "12.3 kΩ", "67.5–82.5 Ω", "149 × the limit", "75 Ω terminator at the loop-through" } },
  /* 2 × 12300 / 12375 = 198.8 %; 12300 / 82.5 = 149 */
  { "open", BW_RULE_TERMINATION, "", "termination=none | input_resistance=12.3 kohm", "",
    { "The line ends in 12.3 kΩ: not terminated. Levels stand at 199 % of what they "
    "should be, and edges echo.",
    "12.3 kΩ", "67.5–82.5 Ω", "149 × the limit", "75 Ω terminator at the input" } },
  /* 2 × 37.5 / 112.5 = 66.7 %; (37.5 − 67.5) / 67.5 = −44.4 % */
  { "two-loads", BW_RULE_TERMINATION, "", "loop_through=yes | loop_ended=yes", "",
    { "The line ends in 37.5 Ω: terminated more than once. Levels fall to 66.7 % of "
    "what they should be.",
    "37.5 Ω", "67.5–82.5 Ω", "−44 %", "take the 75 Ω load off the loop-through" } },
  /* 20 lg (125/25) = 14.0 dB; 2 × 50/125 = 80 %; (50 − 67.5)/67.5 = −25.9 %; 75 − 50 = 25 Ω, 24 Ω in
   * E24; the pad 5.7 dB (common practice, no source) */
  { "fifty-ohm", BW_RULE_TERMINATION, "",
    "termination=none | input_resistance=50 ohm | video_level=0.3 V .. 1 V", "",
    { "The line ends in 50 Ω, not 75 Ω: a return loss of 14.0 dB, so that edges echo, and levels at "
    "80 % of what they should be. One resistor mends that; a minimum-loss pad would match the input "
    "as well, and lose 5.7 dB of power.",
    "50 Ω", "67.5–82.5 Ω", "−26 %", "matching resistor of 24 Ω in series at the input's end of the lead "
    "(exactly 25 Ω): the lead then ends in 75 Ω" } },
  /* 2 × 5 MHz × 52.8556 µs × 3/4 = 396.4, of 3.3456 MHz 265.2; −33.1 %. A path of 3.35 MHz still passes more than
   * half at 5 MHz; a source is taken to fall from 0.9 to 1.1 of it, and 3 % are left at 432 lines. */
  { "soft", BW_RULE_BANDWIDTH, "bandwidth=3.3456 MHz", "", "",
    { "The source carries detail up to 5 MHz (396 lines per picture height); the "
    "bandwidth of 3.35 MHz passes 265 lines at −3 dB: the picture is softer than the source. "
    "All links together leave 432 lines, as read off a wedge at 3 % of the contrast; most is lost "
    "there in the source.",
    "3.35 MHz", "at least 5 MHz", "−33 %", "" } },
  /* (55.67 − 59.94) / 55.67 = −7.67 % */
  { "field-rate", BW_RULE_FIELD_RATE, "field_rates=40 Hz .. 55.67 Hz", "", "",
    { "Field rate 59.94 Hz is above this input's 40–55.67 Hz; a scan converter is "
    "needed.",
    "59.94 Hz", "40–55.67 Hz", "−7.7 %", "scan converter" } },
  /* (15.75 − 15.734266) / 15.75 = 0.0999 % */
  { "line-rate", BW_RULE_LINE_RATE, "line_rates=15.67 kHz .. 15.75 kHz", "", "",
    { "Line rate 15.734 kHz locks, but lies near the edge of 15.67–15.75 kHz; check the "
    "hold control warm and cold.",
    "15.734 kHz", "15.67–15.75 kHz", "0.1 %", "" } },
  /* 0.7 V × 52.8556 / 63.5556 × 485 / 525 = 537.8 mV */
  { "no-clamp", BW_RULE_COUPLING, "", "clamp=none-ac", "dc_offset=1.2345 V",
    { "This input is a.c. coupled without a clamp: black moves by up to 538 mV as the "
    "picture changes.",
    "538 mV", "", "", "" } },
  /* 6.54 % of 485 lines are 31.7, 4.32 % of 52.8556 µs 2.283; 1 − 0.9568 × 0.9346 = 10.58 % */
  { "overscan", BW_RULE_VISIBLE_AREA, "overscan_h=4.32 % | overscan_v=6.54 %", "", "",
    { "32 lines and 2.28 µs of each line of the picture fall outside the glass.",
    "10.6 %", "", "", "" } },
  /* 0.7 × 10000 / 10075 = 694.8 mV; (600 − 694.8) / 600 = −15.8 % */
  { "sync-open", BW_RULE_SYNC_LEVEL, "", "sync_termination=none", "sync_level=0.35 V",
    { "Sync arrives at 695 mV across 10 kΩ, outside this input's 200–600 mV; with the "
    "right termination it is inside.",
    "695 mV", "200–600 mV", "−16 %", "75 Ω terminator at the sync input" } },
};

static void
test_told (gconstpointer data)
{
  const ToldCase *row = data;
  Bench b;
  BwFit fit;

  bench_init (&b, row->monitor, row->input, row->source);
  bw_fit_judge (&b.c, &fit);
  const BwFinding *finding = &fit.at[row->rule];
  char *told[] = { bw_finding_says (finding, &fit, &b.c, '.'), bw_finding_value (finding, '.'),
                   bw_finding_allowed (finding, '.'), bw_finding_margin (finding, '.'),
                   bw_finding_remedy (finding, &fit, &b.c, '.') };
  for (gsize i = 0; i < G_N_ELEMENTS (told); i++)
    {
      g_autoptr (GString) plain = g_string_new (told[i] != NULL ? told[i] : "");
      g_string_replace (plain, "\u00a0", " ", 0);
      g_assert_cmpstr (plain->str, ==, row->told[i]);
      g_free (told[i]);
    }
  bench_clear (&b);
}

/* What stands in the column of margins: per cent of the nearer limit. */
static void
test_margin_words (void)
{
  static const struct
  {
    const char *input;
    const char *source;
    const char *margin;
  } rows[] = {
    { "", "", "30\u00a0%" }, /* (1 - 0.7) / 1, which is less than (0.7 - 0.5) / 0.5 */
    { "", "video_level=0.4 V", "\u221220\u00a0%" }, /* (0.4 - 0.5) / 0.5 */
    { "", "video_level=3.6 V", "3.6 \u00d7 the limit" },
    { "video_level=0.7 V", "", "" }, /* one single value: no room to measure */
  };
  for (gsize i = 0; i < G_N_ELEMENTS (rows); i++)
    {
      Bench b;
      BwFit fit;
      bench_init (&b, "", rows[i].input, rows[i].source);
      bw_fit_judge (&b.c, &fit);
      g_autofree char *margin = bw_finding_margin (&fit.at[BW_RULE_VIDEO_LEVEL], '.');
      g_assert_cmpstr (margin, ==, rows[i].margin);
      bench_clear (&b);
    }
}

/* Settings cost nothing, parts are bought: which is which. */
static void
test_parts_and_settings (void)
{
  static const BwRemedyKind settings[] = { BW_REMEDY_SWITCH_ON,     BW_REMEDY_SWITCH_OFF,
                                           BW_REMEDY_UNLOAD_LOOP,   BW_REMEDY_BLACK_LEVEL,
                                           BW_REMEDY_ASPECT_SWITCH, BW_REMEDY_SIZE };
  guint n = 0;
  for (BwRemedyKind kind = 0; kind < BW_N_REMEDIES; kind++)
    n += bw_remedy_is_setting (kind);
  g_assert_cmpuint (n, ==, G_N_ELEMENTS (settings));
  for (gsize i = 0; i < G_N_ELEMENTS (settings); i++)
    g_assert_true (bw_remedy_is_setting (settings[i]));
}

/* The verdict and the limiting rule follow from the findings, and from nothing else in them. */

typedef struct
{
  const char *name;
  BwSeverity severities[4];
  BwVerdict verdict;
} VerdictCase;

static const VerdictCase verdict_cases[] = {
  { "all-hold", { OK, OK, OK, OK }, BW_VERDICT_DIRECT },
  { "one-tight", { OK, TIGHT, OK, OK }, BW_VERDICT_TIGHT },
  { "all-tight", { TIGHT, TIGHT, TIGHT, TIGHT }, BW_VERDICT_TIGHT },
  { "one-curable", { OK, OK, OK, CURABLE }, BW_VERDICT_WITH_PARTS },
  { "tight-and-curable", { TIGHT, CURABLE, OK, TIGHT }, BW_VERDICT_WITH_PARTS },
  { "one-fatal", { FATAL, OK, OK, OK }, BW_VERDICT_NO },
  { "fatal-last", { TIGHT, CURABLE, CURABLE, FATAL }, BW_VERDICT_NO },
};

static void
test_verdict (gconstpointer data)
{
  const VerdictCase *c = data;
  BwFinding findings[4] = { { 0 } };

  for (guint order = 0; order < 4; order++)
    {
      for (guint i = 0; i < 4; i++)
        {
          findings[i].severity = c->severities[(i + order) % 4];
          findings[i].value = i * 1e6;
          findings[i].remedy.kind = i;
          findings[i].reason = i + order;
        }
      g_assert_cmpuint (bw_verdict_from_findings (findings, 4), ==, c->verdict);
    }
  g_assert_cmpuint (bw_verdict_from_findings (findings, 0), ==, BW_VERDICT_DIRECT);
}

typedef struct
{
  const char *name;
  const char *monitor;
  const char *input;
  const char *source;
  BwVerdict verdict;
  BwRule limiting;
} LimitingCase;

static const LimitingCase limiting_cases[] = {
  { "none", "", "", "", BW_VERDICT_DIRECT, 0 },
  { "the-only-one", "", "", "video_level=2 V", BW_VERDICT_WITH_PARTS, BW_RULE_VIDEO_LEVEL },
  /* two as bad: the first in the rules' order */
  { "first-of-two", "", "", "video_level=2 V | sync_level=2 V", BW_VERDICT_WITH_PARTS,
    BW_RULE_SYNC_LEVEL },
  /* a worse one later in the order wins over a tight one before it */
  { "worse-later", "line_rates=15.7 kHz .. 16 kHz", "", "video_level=2 V", BW_VERDICT_WITH_PARTS,
    BW_RULE_VIDEO_LEVEL },
  { "tight-only", "line_rates=15.7 kHz .. 16 kHz", "", "", BW_VERDICT_TIGHT, BW_RULE_LINE_RATE },
  { "fatal-over-curable", "", "", "raster=vesa-dmt-50 | video_level=2 V", BW_VERDICT_NO,
    BW_RULE_LINE_RATE },
};

static void
test_limiting (gconstpointer data)
{
  const LimitingCase *row = data;
  Bench b;
  BwFit fit;

  bench_init (&b, row->monitor, row->input, row->source);
  bw_fit_judge (&b.c, &fit);
  g_assert_cmpstr (bw_kind_id (&bw_verdicts, fit.verdict), ==,
                   bw_kind_id (&bw_verdicts, row->verdict));
  g_assert_cmpstr (bw_kind_id (&bw_rules, fit.limiting), ==, bw_kind_id (&bw_rules, row->limiting));
  g_assert_cmpuint (fit.verdict, ==, bw_verdict_from_findings (fit.at, BW_N_RULES));
  bench_clear (&b);
}

/* Each verdict is that of one severity, and the words of the two belong together. */
static void
test_verdict_of_each_severity (void)
{
  static const char *const words[BW_N_SEVERITIES] = { "direct", "open", "tight", "with-parts",
                                                     "no" };
  for (BwSeverity severity = 0; severity < BW_N_SEVERITIES; severity++)
    {
      BwVerdict verdict = bw_verdict_of (severity);
      g_assert_cmpstr (bw_kind_id (&bw_verdicts, verdict), ==, words[severity]);
      g_assert_cmpuint (bw_verdict_severity (verdict), ==, severity);
      g_assert_cmpstr (bw_verdict_meaning (verdict), !=, "");
    }
}

/* Which of its syncs a source is used with */

typedef struct
{
  const char *name;
  const char *input;
  const char *source;
  BwSyncKind sync;
} SyncCase;

static const SyncCase sync_cases[] = {
  { "the-only-one", "", "syncs=on-green", BW_SYNC_ON_GREEN },
  { "the-one-that-is-taken", "syncs=on-green", "syncs=separate; composite-sync; on-green",
    BW_SYNC_ON_GREEN },
  { "both-taken-first-in-order", "syncs=separate; composite-sync; on-green",
    "syncs=on-green; composite-sync", BW_SYNC_COMPOSITE },
  { "none-taken-first-in-order", "syncs=on-y", "syncs=separate; composite-sync", BW_SYNC_SEPARATE },
  /* composite sync is taken but far too high; sync on green is right as it is */
  { "the-one-with-the-right-level", "syncs=composite-sync; on-green | polarities=positive",
    "syncs=composite-sync; on-green", BW_SYNC_ON_GREEN },
};

static void
test_sync (gconstpointer data)
{
  const SyncCase *row = data;
  Bench b;
  BwFit fit;

  bench_init (&b, "", row->input, row->source);
  bw_fit_judge (&b.c, &fit);
  g_assert_cmpstr (bw_kind_id (&bw_sync_kinds, fit.sync), ==,
                   bw_kind_id (&bw_sync_kinds, row->sync));
  bench_clear (&b);
}

/* Nothing of what the caller's struct held before gets into the result. */
static void
test_judging_is_repeatable (void)
{
  Bench b;
  BwFit zeros, ones;

  bench_init (&b, "", "", "syncs=separate; composite-sync; on-green | video_level=2 V");
  memset (&zeros, 0, sizeof zeros);
  memset (&ones, 0xff, sizeof ones);
  bw_fit_judge (&b.c, &zeros);
  bw_fit_judge (&b.c, &ones);
  g_assert_cmpuint (zeros.verdict, ==, ones.verdict);
  g_assert_cmpuint (zeros.limiting, ==, ones.limiting);
  g_assert_cmpuint (zeros.sync, ==, ones.sync);
  for (guint i = 0; i < BW_N_RULES; i++)
    {
      const BwFinding *x = &zeros.at[i], *y = &ones.at[i];
      g_assert_cmpuint (x->severity, ==, y->severity);
      g_assert_cmpfloat (x->value, ==, y->value);
      g_assert_cmpfloat (x->margin, ==, y->margin);
      g_assert_cmpmem (&x->as, sizeof x->as, &y->as, sizeof y->as);
    }
  bench_clear (&b);
}

/* Made-up sources at made-up inputs: whatever fields allow is judged with finite figures and plain
 * words. */

static void
set_random (GRand *rand, const BwField *field, gpointer object)
{
  g_autofree char *text = NULL;
  double a = g_rand_double_range (rand, field->low, field->high + DBL_MIN);
  double b = g_rand_double_range (rand, field->low, field->high + DBL_MIN);
  BwBands bands = { g_rand_int (rand) % 2, { { MIN (a, b), MAX (a, b) } } };

  switch (field->type)
    {
    case BW_FIELD_QUANTITY:
      text = bw_quantity_to_file (g_rand_boolean (rand) ? a : field->low, field->dimension, NULL);
      break;
    case BW_FIELD_BANDS:
      text = bw_quantity_bands_to_file (&bands, field->dimension, NULL);
      break;
    case BW_FIELD_CHOICE:
      text = g_strdup (field->kinds->at[g_rand_int (rand) % field->kinds->n].id);
      break;
    case BW_FIELD_SET:
      bw_field_set_uint (field, object, g_rand_int (rand) & (BW_BIT (field->kinds->n) - 1));
      break;
    case BW_FIELD_SWITCH:
      bw_field_set_uint (field, object, g_rand_boolean (rand));
      break;
    default:
      break;
    }
  if (text != NULL)
    bw_field_parse (field, object, text, '.', NULL);
}

static void
set_some (GRand *rand, const BwFieldTable *table, gpointer object)
{
  for (guint i = 0; i < table->n; i++)
    if (g_rand_int (rand) % 3 == 0)
      set_random (rand, &table->at[i], object);
}

static void
test_random (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  GPtrArray *rasters = bw_catalogue_rasters (bw_test_catalogue ());
  guint verdicts[BW_N_VERDICTS] = { 0 }, judged = 0;

  for (guint i = 0; i < 6000 && !g_test_failed (); i++)
    {
      Bench b;
      BwFit fit;
      bench_init (&b, "", "", "");
      set_some (rand, &bw_monitor_fields, b.monitor);
      set_some (rand, &bw_input_fields, b.input);
      set_some (rand, &bw_source_fields, b.source);
      b.c.raster = rasters->pdata[g_rand_int (rand) % rasters->len];
      bw_raster_figures (b.c.raster, &b.figures);
      if (bw_input_check (b.input, NULL) && bw_source_check (b.source, NULL))
        {
          bw_fit_judge (&b.c, &fit);
          g_autofree char *fault = bw_property_fit (&b.c, &fit);
          g_assert_cmpstr (fault, ==, NULL);
          verdicts[fit.verdict]++;
          judged++;
        }
      bench_clear (&b);
    }
  g_assert_cmpuint (judged, >, 300);
  g_assert_cmpuint (verdicts[BW_VERDICT_WITH_PARTS], >, 0);
  g_assert_cmpuint (verdicts[BW_VERDICT_NO], >, 0);
}

static void
add (const char *group, const char *name, gconstpointer data, GTestDataFunc func)
{
  g_autofree char *path = g_strdup_printf ("/fit/%s/%s", group, name);
  g_test_add_data_func (path, data, func);
}

/* A cell of a table tells the resistor by its value, 1.1 kΩ nearest to 75 (5 / 0.3 − 1) − 100 = 1075 Ω, and every other
 * remedy by its name alone; none where nothing is needed. */
static void
test_remedy_short (void)
{
  static const struct
  {
    BwRule rule;
    const char *input, *source, *brief;
  } cases[] = {
    { BW_RULE_SYNC_LEVEL, "", "", NULL },
    { BW_RULE_SYNC_LEVEL, "", "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm",
      "1.1\u00a0kΩ in sync" },
    { BW_RULE_SYNC_POLARITY, "polarities=positive", "", "sync inverter" },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench b;
      BwFit fit;
      bench_init (&b, "", cases[i].input, cases[i].source);
      bw_fit_judge (&b.c, &fit);
      g_autofree char *brief = bw_finding_remedy_short (&fit.at[cases[i].rule], '.');
      g_assert_cmpstr (brief, ==, cases[i].brief);
      bench_clear (&b);
    }
}

/* Where no beat at all is called a slow bar, each one is flicker. */
static void
test_no_beat_allowed (void)
{
  Bench b;
  BwFit fit;
  bench_init (&b, "", "", "");
  b.limits.mains_beat_hz = 0;
  bw_fit_judge (&b.c, &fit);
  g_assert_cmpint (fit.at[BW_RULE_MAINS_BEAT].reason, ==, BW_REASON_FLICKER);
  g_assert_cmpint (fit.at[BW_RULE_MAINS_BEAT].severity, ==, BW_SEVERITY_OK);
  g_assert_false (fit.at[BW_RULE_MAINS_BEAT].has_high);
  bench_clear (&b);
}

/* How far a value is from a limit, as a share of the limit's size: inside above zero, outside below, wherever the limit
 * lies. Of a limit of zero it is all or nothing. What only rounding pushes over a limit is on it. */
static void
test_margin (void)
{
  static const double cases[][3] = {
    { 1, 4, 0.25 },  { -1, 4, -0.25 }, { 1, -4, 0.25 },      { -1, -4, -0.25 }, { 1, 0, 1 },
    { 0, 0, 1 },     { -1, 0, -1 },    { -1e-10 * 4, 4, 0 }, { 0, 4, 0 },       { -4e-8, 4, -1e-8 },
    { -4e-8, -4, -1e-8 }, { 0.1, 0.5, 0.2 }, { -0.1, 0.5, -0.2 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (bw_margin (cases[i][0], cases[i][1]), cases[i][2], 1e-12);
}

/* What is said of one source at one input as a whole: the verdict; what it hangs on, each thing once, or what the plan
 * needs; and where the limits come from. */
static void
test_said_whole (void)
{
  static const char *const needs[] = { "one thing", "another", NULL };
  static const struct
  {
    const char *monitor, *input, *source;
    gboolean planned;
    const char *says;
  } cases[] = {
    { "", "", "", FALSE, "Source on In: direct: every rule holds" },
    { "line_rates=30 kHz .. 40 kHz", "", "", FALSE, "Source on In: with parts: scan converter\n" },
    { "line_rates=30 kHz .. 40 kHz | field_rates=70 Hz .. 80 Hz", "", "", FALSE,
      "Source on In: with parts: scan converter\n" }, /* one cures both */
    { "bandwidth=2 MHz", "", "", FALSE, "Source on In: tight: Bandwidth\n" },
    { "", "polarities=positive", "", FALSE, "Source on In: with parts: " },
    { "", "polarities=positive", "", TRUE, "Source on In: with parts: one thing; another\n" },
    { "", "", "", TRUE, "Source on In: direct: every rule holds" },
    { "source=its manual", "", "origin=a scope", FALSE, "Limits: its manual. Source: a scope. Raster: SMPTE 170M" },
    { "", "", "", FALSE, "Limits: not stated. Source: not stated. Raster: SMPTE 170M" },
    { "", "", "raster=", FALSE, "Raster: not stated." },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      Bench b;
      BwFit fit;
      bench_init (&b, cases[i].monitor, cases[i].input, cases[i].source);
      bw_fit_judge (&b.c, &fit);
      g_autoptr (BwResult) result = bw_result_new ('.');
      bw_case_say (bw_result_root (result), &fit, &b.c, cases[i].planned ? (char *const *) needs : NULL);
      g_autofree char *text = bw_node_to_text (bw_result_root (result), 500, TRUE);
      if (strstr (text, cases[i].says) == NULL)
        g_error ("“%s” is not in:\n%s", cases[i].says, text);
      bench_clear (&b);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/fit/base-is-direct", test_base_is_direct);
  for (gsize i = 0; i < G_N_ELEMENTS (rule_cases); i++)
    add ("rule", rule_cases[i].name, &rule_cases[i], test_rule);
  for (gsize i = 0; i < G_N_ELEMENTS (aside_cases); i++)
    add ("set-aside", aside_cases[i].name, &aside_cases[i], test_aside);
  for (gsize i = 0; i < G_N_ELEMENTS (verdict_cases); i++)
    add ("verdict", verdict_cases[i].name, &verdict_cases[i], test_verdict);
  for (gsize i = 0; i < G_N_ELEMENTS (limiting_cases); i++)
    add ("limiting", limiting_cases[i].name, &limiting_cases[i], test_limiting);
  for (gsize i = 0; i < G_N_ELEMENTS (sync_cases); i++)
    add ("sync", sync_cases[i].name, &sync_cases[i], test_sync);
  g_test_add_func ("/fit/said-whole", test_said_whole);
  g_test_add_func ("/fit/size-in-words", test_size_in_words);
  g_test_add_func ("/fit/danger", test_danger);
  g_test_add_func ("/fit/every-rule-fails-once", test_every_rule_fails_once);
  g_test_add_func ("/fit/figure/series-resistor", test_series_resistor_value);
  g_test_add_func ("/fit/figure/pad", test_pad_value);
  g_test_add_func ("/fit/figure/hum-bar-time", test_hum_bar_time);
  g_test_add_func ("/fit/figure/hidden-area", test_hidden_area);
  g_test_add_func ("/fit/figure/tv-lines", test_tv_lines);
  g_test_add_func ("/fit/figure/first-limit", test_first_limit);
  g_test_add_func ("/fit/figure/resistor-of-almost-nothing",
                   test_series_resistor_of_almost_nothing);
  for (gsize i = 0; i < G_N_ELEMENTS (says_cases); i++)
    add ("says", says_cases[i].name, &says_cases[i], test_says);
  for (gsize i = 0; i < G_N_ELEMENTS (told_cases); i++)
    add ("told", told_cases[i].name, &told_cases[i], test_told);
  g_test_add_func ("/fit/margin-words", test_margin_words);
  g_test_add_func ("/fit/parts-and-settings", test_parts_and_settings);
  g_test_add_func ("/fit/verdict-of-each-severity", test_verdict_of_each_severity);
  g_test_add_func ("/fit/judging-is-repeatable", test_judging_is_repeatable);
  g_test_add_func ("/fit/random", test_random);
  g_test_add_func ("/fit/remedy-short", test_remedy_short);
  g_test_add_func ("/fit/no-beat-allowed", test_no_beat_allowed);
  g_test_add_func ("/fit/margin", test_margin);
  return g_test_run ();
}
