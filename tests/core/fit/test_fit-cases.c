/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Sources at inputs, worked by hand: what the verdict must be, which rule must say so, and the
 * numbers behind it.
 *
 * A row names a base monitor, a base input and a base source (below), and what is changed on them.
 * The comment above it is the working. Every row is a test of its own:
 *   test-core-fit-cases -p /fit-cases/sync-level/ttl-into-75-ohm
 *
 * The limiting rule is the rule with the worst finding, the first one in the order of BwRule where
 * several are as bad. A direct fit has nothing worse than "ok", so its limiting rule is the first
 * of all, the signal kind.
 *
 * Sources of the facts, as the comments name them:
 *   170M    SMPTE 170M-2004: 525/59.94. 11.2 line rate, table 1 levels, tables 2 and 3 blanking,
 *           15.2 source and load 75 ohm, 15.4 140 IRE = 1 V
 *   BT.470  ITU-R BT.470-6, tables 1-1, 1-2 and 2: 625/50, system M, subcarriers, bandwidths
 *   BT.1700 ITU-R BT.1700: studio PAL and SECAM; part A note 1: Japan has no setup
 *   CTA     CTA-861-H, tables 1 and 2, by VIC (edid-decode --vic prints the same)
 *   DMT     VESA DMT v1.0 rev. 13, by ID (edid-decode --dmt prints the same)
 *   divider Ohm's law: e.m.f. behind a resistance, across a load
 *   practice: common practice, no source
 * What a monitor takes is a property of the set on the bench and is invented in each row. */
#include <math.h>
#include <string.h>

#include "core/fit/fit.h"
#include "properties.h"

/* --- Base objects, written as "key=value | key=value" with the keys of the sheet. --- */

/* Made for every supply of these tests: invented. */
#define PLATE " | mains_voltage=100 V .. 140 V | mains_frequency=45 Hz .. 100 Hz"

/* A studio set for 15 kHz. Nothing about it is close to a limit for 525 or 625 lines. */
static const char
    studio[] = "name=Studio | diagonal=13 in | aspect=4:3 | line_rates=15.4 kHz .. 16 kHz"
               " | field_rates=47 Hz .. 63 Hz | line_retrace=9 us | field_retrace=800 us"
               " | bandwidth=20 MHz" PLATE;

/* A set that scans almost anything. Changes narrow it down. */
static const char
    multi[] = "name=Multi | diagonal=20 in | aspect=4:3 | line_rates=15 kHz .. 100 kHz"
              " | field_rates=45 Hz .. 110 Hz | line_retrace=2 us | field_retrace=300 us"
              " | bandwidth=150 MHz" PLATE;

/* What all inputs have in common: BNC, 75 ohm, clamped, 0.5 to 1 V picture, 0.15 to 0.6 V sync. */
#define INPUT                                                                                      \
  "connectors=bnc | shapes=bi-level; tri-level | polarities=negative; positive"                    \
  " | scans=progressive; interlaced | video_level=0.5 V .. 1 V | sync_level=0.15 V .. 0.6 V"       \
  " | termination=fixed | sync_termination=fixed | input_resistance=10 kohm | clamp=back-porch"

static const char in_rgb[] = INPUT
    " | name=RGB | signals=rgb | syncs=separate; composite-sync; on-green";
static const char in_component[] = INPUT " | name=YPbPr | signals=component | syncs=on-y";
static const char in_yc[] = INPUT " | name=Y/C | signals=yc | syncs=in-video | systems=ntsc-m";
static const char in_composite[] = INPUT
    " | name=Line | signals=composite | syncs=in-video | systems=ntsc-m";
static const char in_luma[] = INPUT
    " | name=Mono | signals=luminance | syncs=in-video | systems=none";

/* What all sources have in common: 525/59.94 (170M), 0.7 V and 0.3 V across 75 ohm, matched. */
#define SOURCE                                                                                     \
  "raster=525-59.94-interlaced | connector=bnc | video_level=700 mV | sync_level=300 mV"           \
  " | sync_stated=75-ohm | source_resistance=75 ohm | sync_resistance=75 ohm | aspect=4:3"

/* RGB and luminance of a broadcast raster have no samples: how fine their detail is must be said. */
#define DETAIL " | detail=4 MHz"

static const char rgb[] = SOURCE DETAIL " | name=RGB | signal=rgb | syncs=composite-sync";
static const char component[] = SOURCE " | name=YPbPr | signal=component | syncs=on-y";
static const char yc[] = SOURCE " | name=Y/C | signal=yc | syncs=in-video | system=ntsc-m";
static const char composite[] = SOURCE
    " | name=CVBS | signal=composite | syncs=in-video | system=ntsc-m";
static const char luma[] = SOURCE DETAIL " | name=Mono | signal=luminance | syncs=in-video";

/* 625/50 (BT.470) as changes to a base source. Its mains is 50 Hz in all rows that use it. */
#define PAL_RASTER "raster=625-50-interlaced"
#define PAL PAL_RASTER " | system=pal-b"

/* A computer's RGB: separate sync of its raster's polarity. */
#define PC(id) "syncs=separate | raster=" id

/* TTL sync: 5 V without load behind 100 ohm (practice: a gate with a small resistor). */
#define TTL "sync_level=5 V | sync_stated=open | sync_resistance=100 ohm"

/* Where a value that holds becomes tight (practice): 0.5 % of a line rate, 2 % of a field rate,
 * 5 % of a level or a blanking time, a beat of 1 Hz, a black level off by 2 IRE. */
static const BwLimits limits = { 0.005, 0.02, 0.05, 0.05, 1, 2 };

/* Rasters that no standard has, invented: name, line rate, active lines, front porch, sync and back
 * porch in lines. */
#define OWN_RASTER(id, rate, active, front, sync, back)                                            \
  "[own-" id "]\n"                                                                                 \
  "name=" id ", invented\nsource=Invented for this test\nscan=progressive\n"                       \
  "line_rate=" rate " Hz\nh_front_porch=1.5 us\nh_sync=4.7 us\nh_back_porch=4.5 us\n"              \
  "v_active=" active "\nv_front_porch=" front "\nv_sync=" sync "\nv_back_porch=" back "\n"         \
  "h_polarity=negative\nv_polarity=negative\n"

#define OWN_LINE(id, front, sync, back)                                                            \
  "[own-" id "]\n"                                                                                 \
  "name=" id ", invented\nsource=Invented for this test\nscan=progressive\n"                       \
  "line_rate=15734 Hz\nh_front_porch=" front "\nh_sync=" sync "\nh_back_porch=" back "\n"          \
  "v_active=240\nv_front_porch=4\nv_sync=3\nv_back_porch=15\n"                                     \
  "h_polarity=negative\nv_polarity=negative\n"

static const char own_rasters[] =
    /* A home computer's, to have a field rate above that of the mains: 262 * 60.0988 Hz. */
    OWN_RASTER ("262-60.0988", "15745.8856", "240", "4", "3", "15")
    /* One line less and more than what still counts as half of 525 and of 625 lines. */
    OWN_RASTER ("261", "15734", "240", "3", "3", "15")
        OWN_RASTER ("311", "15625", "288", "3", "3", "17")
            OWN_RASTER ("314", "15625", "288", "4", "3", "19")
                OWN_RASTER ("315", "15625", "288", "5", "3", "19")
    /* A little less and more than 1 % from 15625 and 15734.27 Hz. */
    OWN_RASTER ("15460", "15460", "240", "4", "3", "15")
        OWN_RASTER ("15475", "15475", "240", "4", "3", "15")
            OWN_RASTER ("15885", "15885", "240", "4", "3", "15")
                OWN_RASTER ("15900", "15900", "240", "4", "3", "15")
    /* Line sync of 7.5 µs, and a picture that begins 3.82 µs after the edge of sync. */
    OWN_LINE ("wide-sync", "0.5 us", "7.5 us", "4 us") OWN_LINE ("early", "6.2 us", "3.7 us", "0.12 us");

/* --- Rows --- */

typedef enum
{
  NO_NUMBER,
  VALUE,
  LOW,
  HIGH,
  MARGIN,
  PART,     /* value of the remedy: ohms, voltage ratio, share */
  WANTED_V, /* and all that follow: the figures of that name that the rule finds besides */
  OFF_IRE,
  SOURCE_OHM,
  LEVEL_RATIO,
  SOURCE_TVL,
  PASSED_TVL,
  BARS,
  CROSSING_S,
  DIRECTION,
  HIDDEN_LINES,
  HIDDEN_COLUMNS,
  HIDDEN_S,
  SETS_HEIGHT,
  SEVERITY,
  CURE /* kind of the remedy */
} What;

typedef struct
{
  BwRule rule;
  What what;
  double expected;
  gboolean relative;
  double tolerance;
} Number;

typedef struct
{
  const char *name;
  const char *monitor;
  const char *input;
  const char *source;
  const char *m; /* changes to the monitor, the input and the source */
  const char *i;
  const char *s;
  double mains_hz; /* zero: 60 */
  BwVerdict verdict;
  BwRule rule;
  BwRemedyKind remedy; /* of the limiting rule; BW_REMEDY_NONE: not looked at */
  guint sync_bit;      /* zero: not looked at */
  Number numbers[4];
} Row;

#define ABS_TOL(t) FALSE, (t)
#define REL_TOL(t) TRUE, (t)
#define NUM(r, w, x, t)                                                                            \
  {                                                                                                \
    BW_RULE_##r, w, (x), t                                                                         \
  }
#define FOUND(r, severity)                                                                         \
  {                                                                                                \
    BW_RULE_##r, SEVERITY, BW_SEVERITY_##severity, ABS_TOL (0)                                     \
  }
#define CURED_BY(r, kind)                                                                          \
  {                                                                                                \
    BW_RULE_##r, CURE, BW_REMEDY_##kind, ABS_TOL (0)                                               \
  }
#define DIRECT .verdict = BW_VERDICT_DIRECT, .rule = 0 /* the first one of all that hold */
#define TIGHT(r) .verdict = BW_VERDICT_TIGHT, .rule = BW_RULE_##r
#define PARTS(r, cure)                                                                             \
  .verdict = BW_VERDICT_WITH_PARTS, .rule = BW_RULE_##r, .remedy = BW_REMEDY_##cure
#define NO(r) .verdict = BW_VERDICT_NO, .rule = BW_RULE_##r
#define USES(kind) .sync_bit = BW_BIT (BW_SYNC_##kind)

static const Row rows[] = {

  /* ---- Signal kind (all 25 combinations are in kind_cells, below) ---- */

  /* An encoder makes 525 or 625 lines and nothing else; 640x480 runs at 31.469 kHz (DMT 04), so
   * the way to a composite input is a scan converter, which gives composite itself (practice). */
  { "signal-kind/vga-into-composite", multi, in_composite, rgb, .s = PC ("vesa-dmt-04"),
    PARTS (SIGNAL_KIND, SCAN_CONVERTER) },
  /* 1280x1024 at 85 Hz (DMT 25): 157.5 MHz / 1728 = 91.146 kHz. No encoder, and beyond the 82 kHz
   * of scan converters (practice). */
  { "signal-kind/91-khz-into-composite", multi, in_composite, rgb, .s = PC ("vesa-dmt-25"),
    NO (SIGNAL_KIND) },
  /* 1080 lines at 56.25 kHz and 100 fields (CTA VIC 40): no encoder takes the line rate, no scan
   * converter the field rate (86 Hz, practice). */
  { "signal-kind/100-hz-component-into-yc", multi, in_yc, component,
    .s = "raster=cta-861-vic-40 | aspect=16:9", NO (SIGNAL_KIND) },

  /* An encoder takes a broadcast line rate within 1 % (practice). 15475 / 15625 = 0.9904 and 15885 /
   * 15734.27 = 1.0096 are inside; 15460 / 15625 = 0.9894 and 15900 / 15734.27 = 1.0105 are not. */
  { "signal-kind/15475-hz-into-composite", multi, in_composite, rgb, .s = "raster=own-15475",
    PARTS (SIGNAL_KIND, ENCODER) },
  { "signal-kind/15885-hz-into-composite", multi, in_composite, rgb, .s = "raster=own-15885",
    PARTS (SIGNAL_KIND, ENCODER) },
  { "signal-kind/15460-hz-into-composite", multi, in_composite, rgb, .s = "raster=own-15460",
    PARTS (SIGNAL_KIND, SCAN_CONVERTER) },
  { "signal-kind/15900-hz-into-composite", multi, in_composite, rgb, .s = "raster=own-15900",
    PARTS (SIGNAL_KIND, SCAN_CONVERTER) },

  /* Green alone carries no sync where that has a conductor of its own: into an input that takes sync in the
   * video alone it has to be added to green, and into one with a conductor for it goes beside it. */
  { "signal-kind/green-without-sync", studio, in_luma, rgb, PARTS (SYNC_KIND, SYNC_ADDER),
    .numbers = { FOUND (SIGNAL_KIND, TIGHT), CURED_BY (SIGNAL_KIND, LUMA_MATRIX) } },
  { "signal-kind/green-beside-its-sync", studio, in_luma, rgb, .i = "syncs=in-video; composite-sync",
    TIGHT (SIGNAL_KIND), USES (COMPOSITE) },

  /* Composite video without a subcarrier is the same waveform as luminance with its sync: the Y
   * conductor of a Y/C input takes it without any separator. */
  { "signal-kind/monochrome-composite-into-yc", studio, in_yc, composite, .s = "system=none" DETAIL,
    DIRECT },

  /* ---- Colour system ---- */

  /* PAL into an NTSC decoder that scans 625 lines: the subcarrier is (1135/4 + 1/625) * 15625 =
   * 4433618.75 Hz (BT.470 table 2), the decoder wants 3.58 MHz: grey until transcoded. */
  { "colour/pal-into-ntsc-decoder", studio, in_composite, composite, .s = PAL, .mains_hz = 50,
    TIGHT (COLOUR_SYSTEM), .remedy = BW_REMEDY_COLOUR_TRANSCODER,
    .numbers = { NUM (COLOUR_SYSTEM, VALUE, 4433618.75, ABS_TOL (1e-3)) } },
  /* The same on Y/C, where the subcarrier is on C. */
  { "colour/pal-yc-into-ntsc-decoder", studio, in_yc, yc, .s = PAL, .mains_hz = 50,
    TIGHT (COLOUR_SYSTEM), .remedy = BW_REMEDY_COLOUR_TRANSCODER },
  /* PAL into a PAL decoder. */
  { "colour/pal-into-pal-decoder", studio, in_composite, composite, .i = "systems=ntsc-m; pal-b",
    .s = PAL, .mains_hz = 50, DIRECT,
    .numbers = { NUM (COLOUR_SYSTEM, VALUE, 4433618.75, ABS_TOL (1e-3)) } },
  /* SECAM is frequency modulated; a PAL decoder shows it grey (BT.1700 part C: D'R rests at
   * 282 * 15625 = 4406250 Hz). */
  { "colour/secam-into-pal-decoder", studio, in_composite, composite, .i = "systems=pal-b",
    .s = PAL_RASTER " | system=secam-l", .mains_hz = 50, TIGHT (COLOUR_SYSTEM), .remedy = BW_REMEDY_COLOUR_TRANSCODER,
    .numbers = { NUM (COLOUR_SYSTEM, VALUE, 4406250, ABS_TOL (1e-3)) } },
  /* PAL M has 525 lines and nearly NTSC's subcarrier, 909/4 * 4.5 MHz / 286 = 3575611.888 Hz
   * (BT.1700; BT.470 prints 3579611.49, a misprint), but it is PAL. */
  { "colour/pal-m-into-ntsc-decoder", studio, in_composite, composite, .s = "system=pal-m",
    TIGHT (COLOUR_SYSTEM), .remedy = BW_REMEDY_COLOUR_TRANSCODER,
    .numbers = { NUM (COLOUR_SYSTEM, VALUE, 3575611.888, ABS_TOL (1e-3)) } },
  /* Japan differs from NTSC M in black level alone (BT.1700 part A note 1): same subcarrier,
   * 455/2 * 4.5 MHz / 286 = 3579545.4545 Hz (170M 11.2), same decoder. */
  { "colour/japan-into-ntsc-m-decoder", studio, in_composite, composite, .s = "system=ntsc-j",
    DIRECT, .numbers = { NUM (COLOUR_SYSTEM, VALUE, 3579545.4545, ABS_TOL (1e-3)) } },
  /* NTSC with a 4.43 MHz subcarrier, as some players give from NTSC tapes (practice), is outside
   * a plain NTSC decoder. */
  { "colour/ntsc-443-into-ntsc-m-decoder", studio, in_composite, composite, .s = "system=ntsc-4.43",
    TIGHT (COLOUR_SYSTEM), .remedy = BW_REMEDY_COLOUR_TRANSCODER },
  /* A monochrome set has no trap for the subcarrier: it shows, with dots. Nothing is missing that
   * the set could show, and no transcoder could add colour, so this is tight and no failure. */
  { "colour/composite-into-monochrome-set", studio, in_composite, composite, .i = "systems=none",
    TIGHT (COLOUR_SYSTEM) },
  /* Composite video without a burst: the colour killer leaves it grey, as it is meant. */
  { "colour/monochrome-into-decoder", studio, in_composite, composite,
    .s = "system=none" DETAIL, DIRECT },

  /* ---- Line rate ---- */

  /* 4.5 MHz / 286 = 15734.2657 Hz (170M 11.2) in 15.4 to 16 kHz. Nearer edge: (16000 - 15734.27)
   * / 16000 = 0.016608, more than 0.005. */
  { "line-rate/525", studio, in_rgb, rgb, DIRECT,
    .numbers = { NUM (LINE_RATE, VALUE, 15734.265734, REL_TOL (1e-9)),
                 NUM (LINE_RATE, MARGIN, 0.016608392, ABS_TOL (1e-8)),
                 NUM (LINE_RATE, LOW, 15400, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, HIGH, 16000, ABS_TOL (1e-6)) } },
  /* 15625 Hz (BT.470): (15625 - 15400) / 15400 = 0.014610. */
  { "line-rate/625", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 50, DIRECT,
    .numbers = { NUM (LINE_RATE, VALUE, 15625, ABS_TOL (1e-9)),
                 NUM (LINE_RATE, MARGIN, 0.014610390, ABS_TOL (1e-8)) } },
  /* Exactly on the low edge it still holds, with no margin at all. */
  { "line-rate/625-on-low-edge", studio, in_rgb, rgb, .m = "line_rates=15.625 kHz .. 16 kHz",
    .s = PAL_RASTER, .mains_hz = 50, TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, MARGIN, 0, ABS_TOL (1e-12)) } },
  { "line-rate/625-on-high-edge", studio, in_rgb, rgb, .m = "line_rates=15 kHz .. 15.625 kHz",
    .s = PAL_RASTER, .mains_hz = 50, TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, MARGIN, 0, ABS_TOL (1e-12)) } },
  /* 75 / 15550 = 0.004823, just under 0.005. */
  { "line-rate/625-inside-threshold", studio, in_rgb, rgb, .m = "line_rates=15.55 kHz .. 16 kHz",
    .s = PAL_RASTER, .mains_hz = 50, TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, MARGIN, 0.004823151, ABS_TOL (1e-8)) } },
  /* 85 / 15540 = 0.005470, just over it. */
  { "line-rate/625-outside-threshold", studio, in_rgb, rgb, .m = "line_rates=15.54 kHz .. 16 kHz",
    .s = PAL_RASTER, .mains_hz = 50, DIRECT,
    .numbers = { NUM (LINE_RATE, MARGIN, 0.005469755, ABS_TOL (1e-8)) } },
  /* 1 Hz short of the band: (15625 - 15626) / 15626 = -6.3996e-5. */
  { "line-rate/625-just-below", studio, in_rgb, rgb, .m = "line_rates=15.626 kHz .. 16 kHz",
    .s = PAL_RASTER, .mains_hz = 50, PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, MARGIN, -6.39959e-5, ABS_TOL (1e-9)) } },
  /* A set trimmed for colour up to 15.74 kHz: (15740 - 15734.27) / 15740 = 0.000364 for colour;
   * monochrome at 15750 Hz (BT.470 table 1-1, system M) is already above. */
  { "line-rate/colour-525-under-15.74", studio, in_rgb, rgb,
    .m = "line_rates=15.4 kHz .. 15.74 kHz", TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, MARGIN, 0.000364312, ABS_TOL (1e-8)) } },
  { "line-rate/mono-525-above-15.74", studio, in_luma, luma,
    .m = "line_rates=15.4 kHz .. 15.74 kHz", .s = "raster=525-60-interlaced",
    PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, VALUE, 15750, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, MARGIN, -0.000635324, ABS_TOL (1e-8)) } },
  /* 525 progressive: 27 MHz / 858 = 31468.531 Hz (CTA VIC 2), about twice what a 15 kHz set
   * scans: (16000 - 31468.531) / 16000 = -0.966783. */
  { "line-rate/525p-on-15-khz", studio, in_component, component,
    .s = "raster=525-59.94-progressive", PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, VALUE, 31468.531469, REL_TOL (1e-9)),
                 NUM (LINE_RATE, MARGIN, -0.966783217, ABS_TOL (1e-8)) } },
  /* Two bands: 468.53 / 31000 = 0.015114 to the near edge of the second. */
  { "line-rate/525p-in-second-band", multi, in_component, component,
    .m = "line_rates=15.5 kHz .. 16 kHz; 31 kHz .. 32 kHz", .s = "raster=525-59.94-progressive",
    DIRECT, .numbers = { NUM (LINE_RATE, MARGIN, 0.015113918, ABS_TOL (1e-8)) } },
  /* 625 progressive: 27 MHz / 864 = 31250 Hz (CTA VIC 17): 250 / 31000 = 0.008065. */
  { "line-rate/625p-in-second-band", multi, in_component, component,
    .m = "line_rates=15.5 kHz .. 16 kHz; 31 kHz .. 32 kHz", .s = "raster=625-50-progressive",
    .mains_hz = 50, DIRECT, .numbers = { NUM (LINE_RATE, MARGIN, 0.008064516, ABS_TOL (1e-8)) } },
  /* 1080i at 60: 74.25 MHz / 2200 = 33750 Hz (CTA VIC 5). The nearest band is the second:
   * (32000 - 33750) / 32000 = -0.0546875. */
  { "line-rate/1080i-above-second-band", multi, in_component, component,
    .m = "aspect=16:9 | line_rates=15.5 kHz .. 16 kHz; 31 kHz .. 32 kHz",
    .s = "raster=1125-60-interlaced | aspect=16:9", PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, VALUE, 33750, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, LOW, 31000, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, HIGH, 32000, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, MARGIN, -0.0546875, ABS_TOL (1e-9)) } },
  /* In the gap between two bands and nearer to the lower: 1024x768 at 60 Hz is 65 MHz / 1344 =
   * 48363.095 Hz (DMT 10), 363.095 above 48 kHz: (48000 - 48363.095) / 48000 = -0.00756448. */
  { "line-rate/1024x768-between-bands", multi, in_rgb, rgb,
    .m = "line_rates=30 kHz .. 48 kHz; 56 kHz .. 65 kHz", .s = PC ("vesa-dmt-10"),
    PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, HIGH, 48000, ABS_TOL (1e-6)),
                 NUM (LINE_RATE, MARGIN, -0.00756448, ABS_TOL (1e-7)) } },
  /* 1280x1024 at 60 Hz: 108 MHz / 1688 = 63981.04 Hz (DMT 23) on a 64 kHz set:
   * 18.96 / 64000 = 0.000296. */
  { "line-rate/1280x1024-on-64-khz", multi, in_rgb, rgb, .m = "line_rates=30 kHz .. 64 kHz",
    .s = PC ("vesa-dmt-23"), TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, VALUE, 63981.042654, REL_TOL (1e-9)),
                 NUM (LINE_RATE, MARGIN, 0.000296209, ABS_TOL (1e-8)) } },
  /* 800x600 at 60 Hz: 40 MHz / 1056 = 37878.79 Hz (DMT 09) under 38 kHz:
   * 121.21 / 38000 = 0.003190. */
  { "line-rate/800x600-on-38-khz", multi, in_rgb, rgb, .m = "line_rates=30 kHz .. 38 kHz",
    .s = PC ("vesa-dmt-09"), TIGHT (LINE_RATE),
    .numbers = { NUM (LINE_RATE, MARGIN, 0.003189793, ABS_TOL (1e-8)) } },
  /* 91.146 kHz (DMT 25) on a 70 kHz set, and beyond scan converters (82 kHz, practice). */
  { "line-rate/1280x1024-85-on-70-khz", multi, in_rgb, rgb, .m = "line_rates=30 kHz .. 70 kHz",
    .s = PC ("vesa-dmt-25"), NO (LINE_RATE),
    .numbers = { NUM (LINE_RATE, VALUE, 91145.833333, REL_TOL (1e-9)) } },

  /* ---- Field rate ---- */

  /* 50 in 47 to 63 Hz: (50 - 47) / 47 = 0.063830. */
  { "field-rate/625", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 50, DIRECT,
    .numbers = { NUM (FIELD_RATE, VALUE, 50, ABS_TOL (1e-9)),
                 NUM (FIELD_RATE, MARGIN, 0.063829787, ABS_TOL (1e-8)) } },
  /* Monochrome 525 lines: 15750 * 2 / 525 = 60 Hz exactly, on the edge. */
  { "field-rate/mono-60-on-edge", studio, in_luma, luma, .m = "field_rates=48 Hz .. 60 Hz",
    .s = "raster=525-60-interlaced", TIGHT (FIELD_RATE),
    .numbers = { NUM (FIELD_RATE, VALUE, 60, ABS_TOL (1e-9)),
                 NUM (FIELD_RATE, MARGIN, 0, ABS_TOL (1e-12)) } },
  /* 60 / 1.001 = 59.94006 (170M 11.3): (61 - 59.94006) / 61 = 0.017376, under 0.02. */
  { "field-rate/59.94-inside-threshold", studio, in_rgb, rgb, .m = "field_rates=48 Hz .. 61 Hz",
    TIGHT (FIELD_RATE), .numbers = { NUM (FIELD_RATE, MARGIN, 0.017376067, ABS_TOL (1e-8)) } },
  /* (61.2 - 59.94006) / 61.2 = 0.020587, over it. */
  { "field-rate/59.94-outside-threshold", studio, in_rgb, rgb, .m = "field_rates=48 Hz .. 61.2 Hz",
    DIRECT, .numbers = { NUM (FIELD_RATE, MARGIN, 0.020587256, ABS_TOL (1e-8)) } },
  /* 262 lines are not half of 525: 15734.2657 / 262 = 60.054449 Hz, just past 60.05. */
  { "field-rate/262-just-above", studio, in_rgb, rgb, .m = "field_rates=58 Hz .. 60.05 Hz",
    .s = "raster=262-60.05-progressive", PARTS (FIELD_RATE, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_RATE, VALUE, 60.054449367, REL_TOL (1e-9)) } },
  /* 15625 / 313 = 49.920128 Hz, just short of 49.95: -0.029872 / 49.95 = -0.000598. */
  { "field-rate/313-just-below", studio, in_rgb, rgb, .m = "field_rates=49.95 Hz .. 52 Hz",
    .s = "raster=313-49.92-progressive", .mains_hz = 50, PARTS (FIELD_RATE, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_RATE, VALUE, 49.920127796, REL_TOL (1e-9)),
                 NUM (FIELD_RATE, MARGIN, -0.000598034, ABS_TOL (1e-8)) } },
  /* A set for 60 Hz only: (50 - 59.5) / 59.5 = -0.159664. */
  { "field-rate/625-on-60-hz-set", studio, in_rgb, rgb, .m = "field_rates=59.5 Hz .. 62 Hz",
    .s = PAL_RASTER, .mains_hz = 50, PARTS (FIELD_RATE, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_RATE, MARGIN, -0.159663866, ABS_TOL (1e-8)) } },
  /* 800x600 at 75 Hz: 49.5 MHz / (1056 * 625) = 75 Hz (DMT 0B) on a 70 Hz set: -5 / 70. */
  { "field-rate/75-on-70-hz-set", multi, in_rgb, rgb, .m = "field_rates=45 Hz .. 70 Hz",
    .s = PC ("vesa-dmt-0b"), PARTS (FIELD_RATE, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_RATE, VALUE, 75, ABS_TOL (1e-9)),
                 NUM (FIELD_RATE, MARGIN, -0.071428571, ABS_TOL (1e-8)) } },
  /* It is the field rate that counts: 1080i has 30 frames but 60 fields (CTA VIC 5), inside 55 to
   * 65 Hz: 5 / 65 = 0.076923. */
  { "field-rate/1080i-counts-fields", multi, in_component, component,
    .m = "aspect=16:9 | field_rates=55 Hz .. 65 Hz", .s = "raster=1125-60-interlaced | aspect=16:9",
    DIRECT,
    .numbers = { NUM (FIELD_RATE, VALUE, 60, ABS_TOL (1e-9)),
                 NUM (FIELD_RATE, MARGIN, 0.076923077, ABS_TOL (1e-8)) } },
  /* 1080i at 100 fields: 148.5 MHz / 2640 * 2 / 1125 = 100 Hz (CTA VIC 40) on a 70 Hz set, and
   * beyond scan converters (86 Hz, practice). Its line rate, 56.25 kHz, is in the band. */
  { "field-rate/100-on-70-hz-set", multi, in_component, component,
    .m = "aspect=16:9 | field_rates=45 Hz .. 70 Hz", .s = "raster=cta-861-vic-40 | aspect=16:9",
    .mains_hz = 50, NO (FIELD_RATE),
    .numbers = { NUM (FIELD_RATE, VALUE, 100, ABS_TOL (1e-9)),
                 NUM (LINE_RATE, VALUE, 56250, ABS_TOL (1e-6)) } },

  /* ---- Line count and scan ---- */

  /* A set that counts lines takes 262 or 263 as half of 525 and 312 or 313 as half of 625, if its
   * counter is tolerant (practice): tight, against the count that it is half of. */
  { "line-count/262-of-525", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=262-60.05-progressive", TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 525, ABS_TOL (1e-9)) } },
  { "line-count/263-of-525", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=263-59.83-progressive", TIGHT (LINE_COUNT) },
  { "line-count/312-of-625", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=312-50.08-progressive", .mains_hz = 50, TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 625, ABS_TOL (1e-9)) } },
  { "line-count/313-of-625", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=313-49.92-progressive", .mains_hz = 50, TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 625, ABS_TOL (1e-9)) } },
  /* CTA-861 VIC 23 has 312, 313 or 314 lines, VIC 8 has 262 or 263; 311 and 315, and 261, are no
   * broadcast field. */
  { "line-count/314-of-625", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=own-314", .mains_hz = 50, TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 625, ABS_TOL (1e-9)) } },
  { "line-count/315-of-625", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=own-315", .mains_hz = 50, PARTS (LINE_COUNT, SCAN_CONVERTER) },
  { "line-count/311-of-625", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=own-311", .mains_hz = 50, PARTS (LINE_COUNT, SCAN_CONVERTER) },
  { "line-count/261-of-525", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines",
    .s = "raster=own-261", PARTS (LINE_COUNT, SCAN_CONVERTER) },
  /* 312 is no half of 525 (262.5). */
  { "line-count/312-on-525-set", studio, in_rgb, rgb, .i = "line_counts=525 lines",
    .s = "raster=312-50.08-progressive", .mains_hz = 50, PARTS (LINE_COUNT, SCAN_CONVERTER) },
  /* A set that does not count lines shows 262 without question. */
  /* A count that is listed is taken as it is, and not for half of another: no margin is asked of it. */
  { "line-count/262-listed", studio, in_rgb, rgb, .i = "line_counts=262 lines; 525 lines",
    .s = "raster=262-60.05-progressive", DIRECT,
    .numbers = { NUM (LINE_COUNT, LOW, 262, ABS_TOL (0)), NUM (LINE_COUNT, HIGH, 262, ABS_TOL (0)) } },
  { "line-count/263-not-listed", studio, in_rgb, rgb, .i = "line_counts=262 lines; 525 lines",
    .s = "raster=263-59.83-progressive", TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 525, ABS_TOL (0)) } },
  /* 525 alone listed, and 262 lines: the set counts, and may not lock. */
  { "line-count/262-of-525-alone", studio, in_rgb, rgb, .i = "line_counts=525 lines",
    .s = "raster=262-60.05-progressive", TIGHT (LINE_COUNT),
    .numbers = { NUM (LINE_COUNT, LOW, 525, ABS_TOL (0)) } },
  { "line-count/262-on-any", studio, in_rgb, rgb, .s = "raster=262-60.05-progressive", DIRECT },
  { "line-count/525-of-525", studio, in_rgb, rgb, .i = "line_counts=525 lines; 625 lines", DIRECT },
  /* 525 progressive has 525 lines too. */
  { "line-count/525p-of-525", multi, in_component, component,
    .i = "line_counts=525 lines; 625 lines", .s = "raster=525-59.94-progressive", DIRECT },
  /* 720p has 750 lines in all (CTA VIC 4), 1080i has 1125 (CTA VIC 5). */
  { "line-count/720p-of-525", multi, in_component, component, .m = "aspect=16:9",
    .i = "line_counts=525 lines; 625 lines", .s = "raster=750-60-progressive | aspect=16:9",
    PARTS (LINE_COUNT, SCAN_CONVERTER),
    .numbers = { NUM (LINE_COUNT, VALUE, 750, ABS_TOL (1e-9)) } },
  { "line-count/1080i-of-525", multi, in_component, component, .m = "aspect=16:9",
    .i = "line_counts=525 lines; 625 lines", .s = "raster=1125-60-interlaced | aspect=16:9",
    PARTS (LINE_COUNT, SCAN_CONVERTER),
    .numbers = { NUM (LINE_COUNT, VALUE, 1125, ABS_TOL (1e-9)) } },
  /* A progressive source at an input that takes interlace alone, and the reverse. */
  { "line-count/progressive-into-interlaced", studio, in_rgb, rgb, .i = "scans=interlaced",
    .s = "raster=262-60.05-progressive", PARTS (LINE_COUNT, SCAN_CONVERTER) },
  { "line-count/interlaced-into-progressive", studio, in_rgb, rgb, .i = "scans=progressive",
    PARTS (LINE_COUNT, SCAN_CONVERTER) },
  /* 100 fields interlaced into a progressive input: wrong scan, and no converter (CTA VIC 40). */
  { "line-count/100-hz-interlaced-into-progressive", multi, in_component, component,
    .m = "aspect=16:9", .i = "scans=progressive", .s = "raster=cta-861-vic-40 | aspect=16:9",
    .mains_hz = 50, NO (LINE_COUNT) },

  /* ---- Sync kind (all pairs are in sync_cells, below) ---- */

  /* A source that gives several syncs is used with the one that serves: the input takes only one
   * of them ... */
  { "sync-kind/several-one-is-taken", studio, in_rgb, rgb, .i = "syncs=composite-sync",
    .s = "syncs=separate; composite-sync; on-green", DIRECT, USES (COMPOSITE) },
  /* ... or takes two, of which one fails: 800x600 has positive separate sync (DMT 09) at an input
   * for negative sync, but sync on green has no polarity to be wrong. */
  { "sync-kind/several-one-is-wrong-way-round", multi, in_rgb, rgb,
    .i = "syncs=separate; on-green | polarities=negative",
    .s = "raster=vesa-dmt-09 | syncs=separate; on-green", DIRECT, USES (ON_GREEN) },
  /* ... or none does it directly: 2.14 V of TTL (see sync-level below) needs a resistor on the
   * composite sync that the input takes, the separate ones would need a combiner as well. */
  { "sync-kind/several-none-is-perfect", studio, in_rgb, rgb, .i = "syncs=composite-sync",
    .s = "syncs=separate; composite-sync | " TTL, PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    USES (COMPOSITE) },
  /* Several serve equally: the first kind is used. */
  { "sync-kind/several-all-are-taken", studio, in_rgb, rgb,
    .s = "syncs=separate; composite-sync; on-green", DIRECT, USES (SEPARATE) },
  /* Component from a source with its sync on wires of its own, and the reverse. */
  { "sync-kind/component-separate-into-on-y", studio, in_component, component,
    .s = "syncs=separate", PARTS (SYNC_KIND, SYNC_ADDER) },
  { "sync-kind/on-y-into-component-composite-sync", studio, in_component, component,
    .i = "syncs=composite-sync", PARTS (SYNC_KIND, SYNC_SEPARATOR) },

  /* ---- Mains: 120 V and 60 Hz at the bench ---- */

  /* A set for 220 to 240 V: (120 - 220) / 220 = -0.454545; a transformer to 220 V. */
  { "mains/too-low", studio, in_rgb, rgb, .m = "mains_voltage=220 V .. 240 V",
    PARTS (MAINS, MAINS_TRANSFORMER),
    .numbers = { NUM (MAINS, VALUE, 120, ABS_TOL (0)),
                 NUM (MAINS, MARGIN, -0.454545, ABS_TOL (1e-6)),
                 NUM (MAINS, PART, 220, ABS_TOL (1e-9)) } },
  /* 120 V on a plate of 100 to 117 V: 2.6 % above, within 6 % (practice). */
  { "mains/a-little-high", studio, in_rgb, rgb, .m = "mains_voltage=100 V .. 117 V", TIGHT (MAINS) },
  { "mains/suits", studio, in_rgb, rgb,
    .m = "mains_voltage=100 V .. 120 V | mains_frequency=50 Hz .. 60 Hz", DIRECT },
  /* No transformer changes 60 Hz into 50 Hz. */
  { "mains/other-frequency", studio, in_rgb, rgb,
    .m = "mains_voltage=100 V .. 120 V | mains_frequency=50 Hz", PARTS (MAINS, MAINS_CONVERTER) },

  /* ---- Sync drive ---- */

  /* An input that takes logic across 75 ohm: 5 V * 75 / 175 = 2.142857 V is in 2 to 5 V, and 5 V / 175
   * ohm = 28.5714 mA is more than logic gives without harm (24 mA, practice). */
  { "sync-drive/logic-into-75-ohm", studio, in_rgb, rgb, .i = "own_sync_level=2 V .. 5 V", .s = TTL,
    TIGHT (SYNC_DRIVE), .numbers = { NUM (SYNC_DRIVE, VALUE, 0.0285714, ABS_TOL (1e-7)) } },
  { "sync-drive/logic-into-10-kilohm", studio, in_rgb, rgb,
    .i = "own_sync_level=2 V .. 5.5 V | sync_termination=none", .s = TTL, DIRECT,
    .numbers = { NUM (SYNC_DRIVE, VALUE, 4.950495e-4, ABS_TOL (1e-9)) } },

  /* ---- Sync polarity ---- */

  /* 640x480 is -/- (DMT 04), 800x600 at 60 is +/+ (DMT 09), 720x400 at 85 is -/+ (DMT 03). */
  { "sync-polarity/vga-into-negative", multi, in_rgb, rgb, .i = "polarities=negative",
    .s = PC ("vesa-dmt-04"), DIRECT },
  { "sync-polarity/svga-into-negative", multi, in_rgb, rgb, .i = "polarities=negative",
    .s = PC ("vesa-dmt-09"), PARTS (SYNC_POLARITY, SYNC_INVERTER) },
  { "sync-polarity/mixed-into-negative", multi, in_rgb, rgb, .i = "polarities=negative",
    .s = PC ("vesa-dmt-03"), PARTS (SYNC_POLARITY, SYNC_INVERTER) },
  { "sync-polarity/mixed-into-positive", multi, in_rgb, rgb, .i = "polarities=positive",
    .s = PC ("vesa-dmt-03"), PARTS (SYNC_POLARITY, SYNC_INVERTER) },
  { "sync-polarity/mixed-into-both", multi, in_rgb, rgb, .s = PC ("vesa-dmt-03"), .mains_hz = 85,
    DIRECT },
  /* Composite sync is negative by standard (170M, BT.470: sync below blanking), whatever the
   * raster's separate pulses are ... */
  { "sync-polarity/standard-composite-sync", multi, in_rgb, rgb, .i = "polarities=negative",
    .s = "raster=vesa-dmt-09", DIRECT },
  /* ... unless this source is known to give it the other way round. */
  { "sync-polarity/positive-composite-sync", studio, in_rgb, rgb, .i = "polarities=negative",
    .s = "sync_polarity=positive", PARTS (SYNC_POLARITY, SYNC_INVERTER) },
  /* The user's word beats the raster's. */
  { "sync-polarity/stated-negative", multi, in_rgb, rgb, .i = "polarities=negative",
    .s = PC ("vesa-dmt-09") " | sync_polarity=negative", DIRECT },
  /* Sync inside video has no polarity of its own to choose. */
  { "sync-polarity/in-video-does-not-matter", studio, in_composite, composite,
    .i = "polarities=positive", DIRECT },

  /* ---- Sync level ---- */

  /* 5 V behind 100 ohm into 75 ohm: 5 * 75 / 175 = 2.142857 V, above 0.6 V (margin (0.6 - 2.142857)
   * / 0.6 = -2.571429). For 0.3 V: R = 75 * (5 / 0.3 - 1) - 100 = 1075 ohm. (divider) */
  { "sync-level/ttl-into-75-ohm", studio, in_rgb, rgb, .s = TTL,
    PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 2.142857, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, MARGIN, -2.571429, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, WANTED_V, 0.3, ABS_TOL (1e-9)),
                 NUM (SYNC_LEVEL, PART, 1075, ABS_TOL (1e-6)) } },
  /* Half a volt to one volt does not hold 0.3 V, so aim at the geometric middle, sqrt (0.5) =
   * 0.707107 V: R = 75 * (5 / 0.707107 - 1) - 100 = 355.330 ohm. */
  { "sync-level/ttl-into-half-a-volt", studio, in_rgb, rgb, .i = "sync_level=0.5 V .. 1 V",
    .s = TTL, PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, WANTED_V, 0.707107, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, PART, 355.330, ABS_TOL (1e-3)) } },
  /* The resistor may be built in: 1075 + 100 = 1175 ohm, 5 * 75 / 1250 = 0.3 V. */
  { "sync-level/ttl-with-resistor-built-in", studio, in_rgb, rgb,
    .s = "sync_level=5 V | sync_stated=open | sync_resistance=1175 ohm", DIRECT,
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.3, ABS_TOL (1e-9)) } },
  /* Behind a terminator where the input is of more than 1 kohm (practice), else into the input as it
   * is: 75 beside 1100 ohm are 70.2128 ohm, 70.2128 * (5 / 0.3 - 1) - 100 = 1000 ohm;
   * 900 * (5 / 0.3 - 1) - 100 = 14000 ohm. */
  { "sync-level/ttl-into-1100-ohm", studio, in_rgb, rgb,
    .i = "sync_termination=none | input_resistance=1100 ohm", .s = TTL,
    PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 4.583333, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, PART, 1000, ABS_TOL (1e-6)) } },
  { "sync-level/ttl-into-900-ohm", studio, in_rgb, rgb,
    .i = "sync_termination=none | input_resistance=900 ohm", .s = TTL,
    PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 4.5, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, PART, 14000, ABS_TOL (1e-6)) } },
  /* A TTL input, 10 kohm: 5 * 10000 / 10100 = 4.950495 V; (5.5 - 4.950495) / 5.5 = 0.099910. */
  { "sync-level/ttl-into-high-impedance", studio, in_rgb, rgb,
    .i = "sync_level=2 V .. 5.5 V | sync_termination=none", .s = TTL, DIRECT,
    .numbers = { NUM (SYNC_LEVEL, VALUE, 4.950495, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, MARGIN, 0.099910, ABS_TOL (1e-6)) } },
  /* The same with 5 V as the most: (5 - 4.950495) / 5 = 0.009901, under 0.05. */
  { "sync-level/ttl-close-to-5-v", studio, in_rgb, rgb,
    .i = "sync_level=2 V .. 5 V | sync_termination=none", .s = TTL, TIGHT (SYNC_LEVEL),
    .numbers = { NUM (SYNC_LEVEL, MARGIN, 0.009901, ABS_TOL (1e-6)) } },
  /* A TTL input that is terminated all the same: 5 * 75 / 255 = 1.470588 V from 180 ohm, under the
   * 2 V of a TTL high. With fixed 75 ohm it takes an amplifier; if the 75 ohm can be switched off,
   * 5 * 10000 / 10180 = 4.911591 V is there without any part. */
  { "sync-level/weak-ttl-into-fixed-75-ohm", studio, in_rgb, rgb, .i = "sync_level=2 V .. 5.5 V",
    .s = "sync_level=5 V | sync_stated=open | sync_resistance=180 ohm",
    PARTS (SYNC_LEVEL, SYNC_AMPLIFIER),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 1.470588, ABS_TOL (1e-6)) } },
  { "sync-level/weak-ttl-into-switched-75-ohm", studio, in_rgb, rgb,
    .i = "sync_level=2 V .. 5.5 V | sync_termination=switched | sync_terminated=yes",
    .s = "sync_level=5 V | sync_stated=open | sync_resistance=180 ohm",
    PARTS (SYNC_LEVEL, SWITCH_OFF),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 1.470588, ABS_TOL (1e-6)) } },
  /* 0.3 V sync at a sync input whose 75 ohm is off: 0.6 * 10000 / 10075 = 0.595533 V, above
   * 0.45 V; switched on it is 0.3 V. */
  { "sync-level/own-conductor-not-terminated", studio, in_rgb, rgb,
    .i = "sync_level=0.2 V .. 0.45 V | sync_termination=switched", PARTS (SYNC_LEVEL, SWITCH_ON),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.595533, ABS_TOL (1e-6)) } },
  /* Exactly 0.6 V and 0.15 V are on the edges and hold. */
  { "sync-level/on-high-edge", studio, in_rgb, rgb, .s = "sync_level=0.6 V", TIGHT (SYNC_LEVEL),
    .numbers = { NUM (SYNC_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  { "sync-level/on-low-edge", studio, in_rgb, rgb, .s = "sync_level=0.15 V", TIGHT (SYNC_LEVEL),
    .numbers = { NUM (SYNC_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 0.222 V on an edge of 0.222 V, where binary arithmetic comes out a hair below. */
  { "sync-level/on-low-edge-in-binary", studio, in_rgb, rgb, .i = "sync_level=0.222 V .. 0.6 V",
    .s = "sync_level=0.222 V", TIGHT (SYNC_LEVEL),
    .numbers = { NUM (SYNC_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 0.02 / 0.6 = 0.0333, under 0.05; 0.04 / 0.6 = 0.0667, over it. */
  { "sync-level/inside-threshold", studio, in_rgb, rgb, .s = "sync_level=0.58 V",
    TIGHT (SYNC_LEVEL), .numbers = { NUM (SYNC_LEVEL, MARGIN, 0.033333, ABS_TOL (1e-6)) } },
  { "sync-level/outside-threshold", studio, in_rgb, rgb, .s = "sync_level=0.56 V", DIRECT,
    .numbers = { NUM (SYNC_LEVEL, MARGIN, 0.066667, ABS_TOL (1e-6)) } },
  /* 0.61 V across 75 ohm from 75 ohm is 1.22 V open: R = 75 * (1.22 / 0.3 - 1) - 75 = 155 ohm. */
  { "sync-level/just-above", studio, in_rgb, rgb, .s = "sync_level=0.61 V",
    PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, PART, 155, ABS_TOL (1e-6)) } },
  { "sync-level/just-below", studio, in_rgb, rgb, .s = "sync_level=0.14 V",
    PARTS (SYNC_LEVEL, SYNC_AMPLIFIER),
    .numbers = { NUM (SYNC_LEVEL, MARGIN, -0.066667, ABS_TOL (1e-6)) } },
  /* Studio sync of 4 V across 75 ohm (practice) at an input for 1 to 4 V and one for 0.3 to 8 V. */
  { "sync-level/4-v-on-edge", studio, in_rgb, rgb, .i = "sync_level=1 V .. 4 V",
    .s = "sync_level=4 V", TIGHT (SYNC_LEVEL) },
  { "sync-level/4-v-in-wide-range", studio, in_rgb, rgb, .i = "sync_level=0.3 V .. 8 V",
    .s = "sync_level=4 V", DIRECT },
  /* 0.3 V -3/+10 dB is 0.212 to 0.949 V (practice). 5 V through 330 ohm in all: 5 * 75 / 405 =
   * 0.925926 V, (0.949 - 0.925926) / 0.949 = 0.024314; through 390 ohm 5 * 75 / 465 = 0.806452
   * V. */
  { "sync-level/330-ohm-at-21-pin", studio, in_rgb, rgb, .i = "sync_level=0.212 V .. 0.949 V",
    .s = "sync_level=5 V | sync_stated=open | sync_resistance=330 ohm", TIGHT (SYNC_LEVEL),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.925926, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, MARGIN, 0.024314, ABS_TOL (1e-6)) } },
  { "sync-level/390-ohm-at-21-pin", studio, in_rgb, rgb, .i = "sync_level=0.212 V .. 0.949 V",
    .s = "sync_level=5 V | sync_stated=open | sync_resistance=390 ohm", DIRECT,
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.806452, ABS_TOL (1e-6)) } },
  /* Sync in video goes with the video's termination. Two loads: 37.5 ohm, 2/3 of 285.714 mV (170M
   * table 1) = 190.476 mV, under 0.2 V; taking the second load off cures it. The picture, 2/3 of
   * 714.286 = 476.190 mV, is too low as well, but sync comes first. */
  { "sync-level/double-terminated-composite", studio, in_composite, composite,
    .i = "sync_level=0.2 V .. 0.6 V | loop_through=yes | loop_ended=yes",
    .s = "video_level=714.2857 mV | sync_level=285.7143 mV", PARTS (SYNC_LEVEL, UNLOAD_LOOP),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.190476, ABS_TOL (1e-6)),
                 NUM (VIDEO_LEVEL, VALUE, 0.476190, ABS_TOL (1e-6)), FOUND (VIDEO_LEVEL, CURABLE),
                 FOUND (TERMINATION, CURABLE) } },
  /* No load: 571.429 mV * 10000 / 10075 = 567.175 mV, above 0.45 V; the switch cures it. */
  { "sync-level/unterminated-composite", studio, in_composite, composite,
    .i = "sync_level=0.2 V .. 0.45 V | termination=switched | terminated=no",
    .s = "video_level=714.2857 mV | sync_level=285.7143 mV", PARTS (SYNC_LEVEL, SWITCH_ON),
    .numbers = { NUM (SYNC_LEVEL, VALUE, 0.567175, ABS_TOL (1e-6)) } },

  /* ---- Sync shape ---- */

  /* 720p and 1080i have tri-level sync on Y (practice: SMPTE 296M and 274M by secondary sources);
   * 525p is bi-level. */
  { "sync-shape/1080i-into-bi-level", multi, in_component, component, .m = "aspect=16:9",
    .i = "shapes=bi-level", .s = "raster=1125-60-interlaced | aspect=16:9",
    PARTS (SYNC_SHAPE, SYNC_RESHAPER) },
  { "sync-shape/720p-into-bi-level", multi, in_component, component, .m = "aspect=16:9",
    .i = "shapes=bi-level", .s = "raster=750-50-progressive | aspect=16:9", .mains_hz = 50,
    PARTS (SYNC_SHAPE, SYNC_RESHAPER) },
  { "sync-shape/525p-into-tri-level", multi, in_component, component, .i = "shapes=tri-level",
    .s = "raster=525-59.94-progressive", PARTS (SYNC_SHAPE, SYNC_RESHAPER) },
  { "sync-shape/720p-into-both", multi, in_component, component, .m = "aspect=16:9",
    .s = "raster=750-60-progressive | aspect=16:9", DIRECT },
  /* Separate H and V are plain pulses in every raster. */
  { "sync-shape/720p-separate-into-bi-level", multi, in_rgb, rgb, .m = "aspect=16:9",
    .i = "shapes=bi-level", .s = PC ("750-60-progressive") " | aspect=16:9", DIRECT },

  /* ---- Around sync: what a clamp, a separator and the flyback need is common practice, no source ---- */

  { "black/border", studio, in_rgb, rgb, .s = "blanking=border", TIGHT (BLACK) },
  /* 80 of 154 MHz is 0.519 us of a line of 13.5 us (VESA DMT 0x44), where 2.5 of 64 us are 0.528. */
  { "back-porch/reduced-blanking", multi, in_rgb, rgb,
    .m = "line_rates=15 kHz .. 80 kHz | line_retrace=0.9 us | field_retrace=300 us",
    .s = PC ("vesa-dmt-44"), TIGHT (BACK_PORCH) },
  /* 7.5 us, where 1.5 times 4.7 of 64 us are 7.0; the raster has no clamp to serve. */
  { "sync-width/wide", studio, in_rgb, rgb, .i = "clamp=none-dc", .s = "raster=own-wide-sync",
    TIGHT (SYNC_WIDTH), .numbers = { NUM (SYNC_WIDTH, VALUE, 7.5e-6, REL_TOL (1e-9)) } },
  /* 3.7 + 0.12 = 3.82 us, where retrace takes 9 us and the phase control 3 % of 63.56 us of it. */
  { "picture-start/early", studio, in_rgb, rgb, .i = "clamp=none-dc", .s = "raster=own-early",
    TIGHT (PICTURE_START), .numbers = { NUM (PICTURE_START, VALUE, 3.82e-6, REL_TOL (1e-9)),
                                        NUM (PICTURE_START, LOW, 7.0932e-6, REL_TOL (1e-4)) } },

  /* ---- Line blanking ---- */

  /* 525: 1.5 + 4.7 + 4.5 = 10.7 us (170M table 2) over 9 us: 1.7 / 9 = 0.188889. */
  { "line-blanking/525", studio, in_rgb, rgb, DIRECT,
    .numbers = { NUM (LINE_BLANKING, VALUE, 10.7e-6, REL_TOL (1e-9)),
                 NUM (LINE_BLANKING, MARGIN, 0.188889, ABS_TOL (1e-6)) } },
  /* 625: 12 us (BT.470 a). Retrace of 12 us: on the edge; 11.5: 0.5 / 11.5 = 0.043478, under
   * 0.05; 11.4: 0.6 / 11.4 = 0.052632, over; 12.1: -0.1 / 12.1 = -0.008264, fails. */
  { "line-blanking/625-on-edge", studio, in_rgb, rgb, .m = "line_retrace=12 us", .s = PAL_RASTER,
    .mains_hz = 50, TIGHT (LINE_BLANKING),
    .numbers = { NUM (LINE_BLANKING, VALUE, 12e-6, REL_TOL (1e-9)),
                 NUM (LINE_BLANKING, MARGIN, 0, ABS_TOL (1e-9)) } },
  { "line-blanking/625-inside-threshold", studio, in_rgb, rgb, .m = "line_retrace=11.5 us",
    .s = PAL_RASTER, .mains_hz = 50, TIGHT (LINE_BLANKING),
    .numbers = { NUM (LINE_BLANKING, MARGIN, 0.043478, ABS_TOL (1e-6)) } },
  { "line-blanking/625-outside-threshold", studio, in_rgb, rgb, .m = "line_retrace=11.4 us",
    .s = PAL_RASTER, .mains_hz = 50, DIRECT,
    .numbers = { NUM (LINE_BLANKING, MARGIN, 0.052632, ABS_TOL (1e-6)) } },
  { "line-blanking/625-just-below", studio, in_rgb, rgb, .m = "line_retrace=12.1 us",
    .s = PAL_RASTER, .mains_hz = 50, PARTS (LINE_BLANKING, SCAN_CONVERTER),
    .numbers = { NUM (LINE_BLANKING, MARGIN, -0.008264, ABS_TOL (1e-6)) } },
  /* 800x600: 256 px / 40 MHz = 6.4 us (DMT 09), on the edge of a 6.4 us retrace. */
  { "line-blanking/800x600-on-edge", multi, in_rgb, rgb, .m = "line_retrace=6.4 us",
    .s = PC ("vesa-dmt-09"), TIGHT (LINE_BLANKING),
    .numbers = { NUM (LINE_BLANKING, VALUE, 6.4e-6, REL_TOL (1e-9)),
                 NUM (LINE_BLANKING, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 720p at 60: 370 clocks / 74.25 MHz = 4.983165 us (CTA VIC 4) under 5.5: -0.093970; at 50 it
   * is 700 / 74.25 = 9.427609 us (CTA VIC 19). */
  { "line-blanking/720p60-short", multi, in_component, component,
    .m = "aspect=16:9 | line_retrace=5.5 us", .s = "raster=750-60-progressive | aspect=16:9",
    PARTS (LINE_BLANKING, SCAN_CONVERTER),
    .numbers = { NUM (LINE_BLANKING, VALUE, 4.983165e-6, REL_TOL (1e-6)),
                 NUM (LINE_BLANKING, MARGIN, -0.093970, ABS_TOL (1e-6)) } },
  { "line-blanking/720p50-long", multi, in_component, component,
    .m = "aspect=16:9 | line_retrace=5.5 us", .s = "raster=750-50-progressive | aspect=16:9",
    .mains_hz = 50, DIRECT,
    .numbers = { NUM (LINE_BLANKING, VALUE, 9.427609e-6, REL_TOL (1e-6)) } },
  /* 1080i at 60: 280 / 74.25 = 3.771044 us (CTA VIC 5) over 3.7: 0.019201. */
  { "line-blanking/1080i-tight", multi, in_component, component,
    .m = "aspect=16:9 | line_retrace=3.7 us", .s = "raster=1125-60-interlaced | aspect=16:9",
    TIGHT (LINE_BLANKING),
    .numbers = { NUM (LINE_BLANKING, VALUE, 3.771044e-6, REL_TOL (1e-6)),
                 NUM (LINE_BLANKING, MARGIN, 0.019201, ABS_TOL (1e-6)) } },
  /* 640x480: VIC 1 blanks 160 of 800 clocks, 160 / 25.175 = 6.355511 us (CTA). DMT 04 counts 8
   * clocks of border on each side apart: 144 / 25.175 = 5.719960 us and 2 * 8 / 25.175 of border,
   * which is black as the porches are. One waveform under two names: 0.155547 over 5.5 us. */
  { "line-blanking/640x480-without-border", multi, in_rgb, rgb, .m = "line_retrace=5.5 us",
    .s = PC ("cta-861-vic-1"), DIRECT,
    .numbers = { NUM (LINE_BLANKING, VALUE, 6.355511e-6, REL_TOL (1e-6)),
                 NUM (LINE_BLANKING, MARGIN, 0.155547, ABS_TOL (1e-6)) } },
  { "line-blanking/640x480-with-border", multi, in_rgb, rgb, .m = "line_retrace=5.5 us",
    .s = PC ("vesa-dmt-04"), DIRECT,
    .numbers = { NUM (LINE_BLANKING, VALUE, 6.355511e-6, REL_TOL (1e-6)),
                 NUM (LINE_BLANKING, MARGIN, 0.155547, ABS_TOL (1e-6)) } },
  /* 1280x1024 at 60: 408 / 108 MHz = 3.777778 us (DMT 23). */
  { "line-blanking/1280x1024", multi, in_rgb, rgb, .m = "line_retrace=4 us",
    .s = PC ("vesa-dmt-23"), PARTS (LINE_BLANKING, SCAN_CONVERTER),
    .numbers = { NUM (LINE_BLANKING, VALUE, 3.777778e-6, REL_TOL (1e-6)) } },
  /* 1280x1024 at 85: 448 / 157.5 MHz = 2.844444 us (DMT 25) under 3 us, and no converter takes
   * 91 kHz. */
  { "line-blanking/1280x1024-85", multi, in_rgb, rgb, .m = "line_retrace=3 us",
    .s = PC ("vesa-dmt-25"), NO (LINE_BLANKING),
    .numbers = { NUM (LINE_BLANKING, VALUE, 2.844444e-6, REL_TOL (1e-6)) } },

  /* ---- Field blanking ---- */

  /* 525: 20 lines of 63.5556 us (170M table 3) = 1271.111 us. Over 1250: 0.016889; over 1200:
   * 0.059259; under 1300: -0.022222. */
  { "field-blanking/525-inside-threshold", studio, in_rgb, rgb, .m = "field_retrace=1250 us",
    TIGHT (FIELD_BLANKING),
    .numbers = { NUM (FIELD_BLANKING, VALUE, 1271.1111e-6, REL_TOL (1e-6)),
                 NUM (FIELD_BLANKING, MARGIN, 0.016889, ABS_TOL (1e-6)) } },
  { "field-blanking/525-outside-threshold", studio, in_rgb, rgb, .m = "field_retrace=1200 us",
    DIRECT, .numbers = { NUM (FIELD_BLANKING, MARGIN, 0.059259, ABS_TOL (1e-6)) } },
  { "field-blanking/525-just-below", studio, in_rgb, rgb, .m = "field_retrace=1300 us",
    PARTS (FIELD_BLANKING, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_BLANKING, MARGIN, -0.022222, ABS_TOL (1e-6)) } },
  /* 625: 25 lines of 64 us (BT.470 j) = 1600 us exactly. */
  { "field-blanking/625-on-edge", studio, in_rgb, rgb, .m = "field_retrace=1600 us",
    .s = PAL_RASTER, .mains_hz = 50, TIGHT (FIELD_BLANKING),
    .numbers = { NUM (FIELD_BLANKING, VALUE, 1600e-6, REL_TOL (1e-9)),
                 NUM (FIELD_BLANKING, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 1080i: the shorter of the two fields' blanking is 2 + 5 + 15 = 22 lines of 29.62963 us =
   * 651.852 us (CTA VIC 5), under 700: -0.068783. */
  { "field-blanking/1080i-short", multi, in_component, component,
    .m = "aspect=16:9 | field_retrace=700 us", .s = "raster=1125-60-interlaced | aspect=16:9",
    PARTS (FIELD_BLANKING, SCAN_CONVERTER),
    .numbers = { NUM (FIELD_BLANKING, VALUE, 651.8519e-6, REL_TOL (1e-6)),
                 NUM (FIELD_BLANKING, MARGIN, -0.068783, ABS_TOL (1e-6)) } },
  /* 1024x768 interlaced has no front porch at all in one field: 0 + 4 + 20 = 24 lines at
   * 35522.152 Hz (DMT 0F) = 675.635 us. 87 Hz against 87 Hz mains, to leave the beat out. */
  { "field-blanking/no-front-porch", multi, in_rgb, rgb, .s = PC ("vesa-dmt-0f"), .mains_hz = 87,
    DIRECT, .numbers = { NUM (FIELD_BLANKING, VALUE, 675.6347e-6, REL_TOL (1e-5)) } },
  /* 640x480 again: VIC 1 blanks 45 of 525 lines, 45 * 800 / 25.175 = 1429.990 us (CTA). DMT 04 counts
   * 8 lines of border at the top and at the bottom apart: 29 lines, and 2 * 8 that are as black. */
  { "field-blanking/640x480-without-border", multi, in_rgb, rgb, .m = "field_retrace=1300 us",
    .s = PC ("cta-861-vic-1"), DIRECT,
    .numbers = { NUM (FIELD_BLANKING, VALUE, 1429.990e-6, REL_TOL (1e-6)),
                 NUM (FIELD_BLANKING, MARGIN, 0.0999926, ABS_TOL (1e-6)) } },
  { "field-blanking/640x480-with-border", multi, in_rgb, rgb, .m = "field_retrace=1300 us",
    .s = PC ("vesa-dmt-04"), DIRECT,
    .numbers = { NUM (FIELD_BLANKING, VALUE, 1429.990e-6, REL_TOL (1e-6)),
                 NUM (FIELD_BLANKING, MARGIN, 0.0999926, ABS_TOL (1e-6)) } },
  /* 1280x1024 at 85: 48 lines / 91.1458 kHz = 526.629 us (DMT 25) under 600 us; no converter. */
  { "field-blanking/1280x1024-85", multi, in_rgb, rgb, .m = "field_retrace=600 us",
    .s = PC ("vesa-dmt-25"), NO (FIELD_BLANKING),
    .numbers = { NUM (FIELD_BLANKING, VALUE, 526.6286e-6, REL_TOL (1e-5)) } },

  /* ---- Video level ---- */

  /* 0.7 V in 0.5 to 1 V: (1 - 0.7) / 1 = 0.3. */
  { "video-level/nominal", studio, in_rgb, rgb, DIRECT,
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 0.7, ABS_TOL (1e-9)),
                 NUM (VIDEO_LEVEL, MARGIN, 0.3, ABS_TOL (1e-9)) } },
  { "video-level/on-high-edge", studio, in_rgb, rgb, .s = "video_level=1 V", TIGHT (VIDEO_LEVEL),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  { "video-level/on-low-edge", studio, in_rgb, rgb, .s = "video_level=0.5 V", TIGHT (VIDEO_LEVEL),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 0.898 V is on an edge of 0.898 V too, although 0.898 * 150 / 75 * 75 / 150 in binary is not. */
  { "video-level/on-high-edge-in-binary", studio, in_rgb, rgb, .i = "video_level=0.5 V .. 0.898 V",
    .s = "video_level=0.898 V", TIGHT (VIDEO_LEVEL),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, 0, ABS_TOL (1e-9)) } },
  /* 0.04 under 0.05, 0.06 over it. */
  { "video-level/inside-threshold", studio, in_rgb, rgb, .s = "video_level=0.96 V",
    TIGHT (VIDEO_LEVEL), .numbers = { NUM (VIDEO_LEVEL, MARGIN, 0.04, ABS_TOL (1e-9)) } },
  { "video-level/outside-threshold", studio, in_rgb, rgb, .s = "video_level=0.94 V", DIRECT,
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, 0.06, ABS_TOL (1e-9)) } },
  /* Aim at 0.7 V: a pad of 0.7 / 1.01 = 0.693069, a gain of 0.7 / 0.49 = 1.428571. */
  { "video-level/just-above", studio, in_rgb, rgb, .s = "video_level=1.01 V",
    PARTS (VIDEO_LEVEL, VIDEO_PAD),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, -0.01, ABS_TOL (1e-9)),
                 NUM (VIDEO_LEVEL, WANTED_V, 0.7, ABS_TOL (1e-9)),
                 NUM (VIDEO_LEVEL, PART, 0.693069, ABS_TOL (1e-6)) } },
  { "video-level/just-below", studio, in_rgb, rgb, .s = "video_level=0.49 V",
    PARTS (VIDEO_LEVEL, VIDEO_AMPLIFIER),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, -0.02, ABS_TOL (1e-9)),
                 NUM (VIDEO_LEVEL, PART, 1.428571, ABS_TOL (1e-6)) } },
  /* No load on R, G, B: 1.4 * 10000 / 10075 = 1.389578 V (170M 15.2, divider). The switch or a
   * terminator brings it back. Sync has its own conductor and its own 75 ohm. */
  { "video-level/unterminated-switch", studio, in_rgb, rgb,
    .i = "termination=switched | terminated=no", PARTS (VIDEO_LEVEL, SWITCH_ON),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 1.389578, ABS_TOL (1e-6)),
                 NUM (SYNC_LEVEL, VALUE, 0.3, ABS_TOL (1e-9)), FOUND (TERMINATION, CURABLE) } },
  { "video-level/unterminated-no-switch", studio, in_rgb, rgb, .i = "termination=none",
    PARTS (VIDEO_LEVEL, TERMINATOR),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 1.389578, ABS_TOL (1e-6)) } },
  /* Two loads: 1.4 * 37.5 / 112.5 = 0.466667 V. */
  { "video-level/double-terminated-fixed", studio, in_rgb, rgb,
    .i = "loop_through=yes | loop_ended=yes", PARTS (VIDEO_LEVEL, UNLOAD_LOOP),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 0.466667, ABS_TOL (1e-6)) } },
  { "video-level/double-terminated-switched", studio, in_rgb, rgb,
    .i = "termination=switched | terminated=yes | loop_through=yes | loop_ended=yes",
    PARTS (VIDEO_LEVEL, SWITCH_OFF),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 0.466667, ABS_TOL (1e-6)) } },
  /* A voltage output does not change with the load: 0.7 V into 37.5 ohm as into 75. What remains
   * is a line that is not matched: it holds, with a caution. */
  { "video-level/voltage-output-double-terminated", studio, in_rgb, rgb,
    .i = "loop_through=yes | loop_ended=yes", .s = "source_resistance=0 ohm", TIGHT (TERMINATION),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 0.7, ABS_TOL (1e-9)), FOUND (VIDEO_LEVEL, OK) } },
  /* 0.7 V +-3 dB is 0.496 to 0.989 V (practice). Double terminated 0.466667 V is outside even
   * that; 1 V from a computer with a hot output is, too: (0.989 - 1) / 0.989 = -0.011122. */
  { "video-level/1-v-at-21-pin", studio, in_rgb, rgb, .i = "video_level=0.496 V .. 0.989 V",
    .s = "video_level=1 V", PARTS (VIDEO_LEVEL, VIDEO_PAD),
    .numbers = { NUM (VIDEO_LEVEL, MARGIN, -0.011122, ABS_TOL (1e-6)) } },

  /* ---- Setup ---- */

  /* 7.5 IRE (170M table 1) at a set for 0: black comes out 7.5 IRE up. More than 2 IRE off is
   * wrong; the black level control cures it. */
  { "setup/ntsc-m-into-zero", studio, in_composite, composite, .i = "setup=0 IRE",
    .s = "setup=7.5 IRE", PARTS (SETUP, BLACK_LEVEL),
    .numbers = { NUM (SETUP, VALUE, 7.5, ABS_TOL (1e-9)),
                 NUM (SETUP, OFF_IRE, 7.5, ABS_TOL (1e-9)) } },
  /* Japan, 0 IRE (BT.1700 part A note 1), at a set for 7.5: 7.5 IRE too deep. */
  { "setup/japan-into-ntsc-m", studio, in_composite, composite,
    .i = "setup=7.5 IRE | systems=ntsc-m; ntsc-j", .s = "system=ntsc-j | setup=0 IRE",
    PARTS (SETUP, BLACK_LEVEL), .numbers = { NUM (SETUP, OFF_IRE, -7.5, ABS_TOL (1e-9)) } },
  { "setup/ntsc-m-into-switch", studio, in_composite, composite, .i = "setup=0 IRE; 7.5 IRE",
    .s = "setup=7.5 IRE", DIRECT },
  { "setup/ntsc-m-into-any", studio, in_composite, composite, .s = "setup=7.5 IRE", DIRECT },
  /* Off by 1.5, by exactly 2, by 2.1 IRE. Two positions: the nearer one counts. */
  { "setup/off-by-1.5", studio, in_composite, composite, .i = "setup=0 IRE; 7.5 IRE",
    .s = "setup=6 IRE", TIGHT (SETUP), .numbers = { NUM (SETUP, OFF_IRE, -1.5, ABS_TOL (1e-9)) } },
  { "setup/nearer-to-the-second", studio, in_composite, composite, .i = "setup=7.5 IRE; 0 IRE",
    .s = "setup=1.5 IRE", TIGHT (SETUP), .numbers = { NUM (SETUP, OFF_IRE, 1.5, ABS_TOL (1e-9)) } },
  { "setup/off-by-2", studio, in_composite, composite, .i = "setup=7.5 IRE", .s = "setup=5.5 IRE",
    TIGHT (SETUP) },
  { "setup/off-by-2.1", studio, in_composite, composite, .i = "setup=7.5 IRE", .s = "setup=5.4 IRE",
    PARTS (SETUP, BLACK_LEVEL) },

/* ---- Termination: with ranges so wide that no level fails first ---- */

#define WIDE "video_level=0.3 V .. 2 V | sync_level=0.1 V .. 1 V"
  /* No load: twice the level but for the 10 kohm, 2 * 10000 / 10075 = 1.985112. */
  { "termination/none-on-loop", studio, in_composite, composite,
    .i = WIDE " | termination=none | loop_through=yes", PARTS (TERMINATION, TERMINATOR),
    .numbers = { NUM (TERMINATION, SOURCE_OHM, 75, ABS_TOL (1e-9)),
                 NUM (TERMINATION, LEVEL_RATIO, 1.985112, ABS_TOL (1e-6)) } },
  { "termination/switched-off", studio, in_composite, composite,
    .i = WIDE " | termination=switched | terminated=no", PARTS (TERMINATION, SWITCH_ON) },
  /* Two loads: 2 * 37.5 / 112.5 = 2/3. */
  { "termination/fixed-and-loop", studio, in_composite, composite,
    .i = WIDE " | loop_through=yes | loop_ended=yes", PARTS (TERMINATION, UNLOAD_LOOP),
    .numbers = { NUM (TERMINATION, LEVEL_RATIO, 0.666667, ABS_TOL (1e-6)) } },
  { "termination/switched-on-and-loop", studio, in_composite, composite,
    .i = WIDE " | termination=switched | terminated=yes | loop_through=yes | loop_ended=yes",
    PARTS (TERMINATION, SWITCH_OFF) },
  /* Off here, ended at the far end of the loop: 75 || 10000 = 74.4417 ohm, 2 * 74.4417 / 149.4417
   * = 0.996264: as it should be. */
  { "termination/high-impedance-and-loop", studio, in_composite, composite,
    .i = "termination=switched | terminated=no | loop_through=yes | loop_ended=yes", DIRECT,
    .numbers = { NUM (TERMINATION, LEVEL_RATIO, 0.996264, ABS_TOL (1e-6)),
                 NUM (VIDEO_LEVEL, VALUE, 0.697385, ABS_TOL (1e-6)) } },
  /* A mark on the loop counts only where there is a loop. */
  { "termination/no-loop-to-load", studio, in_composite, composite, .i = "loop_ended=yes", DIRECT },
  /* An output without its 75 ohm leaves the cable unmatched at its own end only: it works. */
  { "termination/voltage-output", studio, in_rgb, rgb, .s = "source_resistance=0 ohm", DIRECT,
    .numbers = { NUM (TERMINATION, SOURCE_OHM, 0, ABS_TOL (0)),
                 NUM (TERMINATION, LEVEL_RATIO, 1, ABS_TOL (1e-9)) } },
  /* Without a load at the far end the level stays as well, but the cable is open at both ends. */
  { "termination/voltage-output-unterminated", studio, in_rgb, rgb, .i = "termination=none",
    .s = "source_resistance=0 ohm", TIGHT (TERMINATION),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 0.7, ABS_TOL (1e-9)) } },
  /* 60 ohm counts as matched (practice). Without load: 0.7 * 135 / 75 = 1.26 V open, * 10000 /
   * 10060 = 1.252485 V. */
  { "termination/60-ohm-unterminated", studio, in_rgb, rgb, .i = WIDE " | termination=none",
    .s = "source_resistance=60 ohm", PARTS (TERMINATION, TERMINATOR),
    .numbers = { NUM (VIDEO_LEVEL, VALUE, 1.252485, ABS_TOL (1e-6)) } },
  /* 50 ohm is no voltage output either: (50 + 75) / 75 * 10000 / 10050 = 1.658375 times the level,
   * which one load puts right (divider). */
  { "termination/50-ohm-unterminated", studio, in_rgb, rgb, .i = WIDE " | termination=none",
    .s = "source_resistance=50 ohm", PARTS (TERMINATION, TERMINATOR),
    .numbers = { NUM (TERMINATION, LEVEL_RATIO, 1.658375, ABS_TOL (1e-6)) } },

  /* ---- Coupling ---- */

  /* A clamp finds black behind any coupling. */
  { "coupling/ac-into-clamp", studio, in_rgb, rgb, .s = "coupling=ac", DIRECT },
  /* Without a clamp behind a capacitor black moves with the picture: the share of time that is
   * picture is 52.8556 / 63.5556 * 242.5 / 262.5 = 0.768280 (170M), times 0.7 V = 0.537796 V
   * between all black and all white. No part before the capacitor helps, and the picture shows:
   * tight. */
  { "coupling/dc-into-capacitor", studio, in_rgb, rgb, .i = "clamp=none-ac", TIGHT (COUPLING),
    .numbers = { NUM (COUPLING, VALUE, 0.537796, ABS_TOL (1e-5)) } },
  { "coupling/ac-into-capacitor", studio, in_rgb, rgb, .i = "clamp=none-ac", .s = "coupling=ac",
    TIGHT (COUPLING) },
  /* A capacitor in the source and d.c. coupling in the set: the same circuit, seen from the other side. */
  { "coupling/ac-into-dc", studio, in_rgb, rgb, .i = "clamp=none-dc", .s = "coupling=ac",
    TIGHT (COUPLING), .numbers = { NUM (COUPLING, VALUE, 0.537796, ABS_TOL (1e-5)) } },
  { "coupling/dc-into-dc", studio, in_rgb, rgb, .i = "clamp=none-dc | dc_offset=-0.1 V .. 0.1 V",
    DIRECT },
  /* A limit of zero has no share that a margin could be of: what holds stands clear by a whole, what
   * does not by a whole on the other side. 1 V in 0 to 2 V is (2 - 1) / 2 from the other limit. */
  { "coupling/dc-from-zero", studio, in_rgb, rgb, .i = "clamp=none-dc | dc_offset=0 V .. 2 V",
    .s = "dc_offset=1 V", DIRECT, .numbers = { NUM (COUPLING, MARGIN, 0.5, ABS_TOL (1e-9)) } },
  { "coupling/dc-below-zero", studio, in_rgb, rgb, .i = "clamp=none-dc | dc_offset=0 V .. 2 V",
    .s = "dc_offset=-0.1 V", PARTS (COUPLING, CLAMP),
    .numbers = { NUM (COUPLING, MARGIN, -1, ABS_TOL (1e-9)) } },
  { "coupling/none-where-none-is-stood", studio, in_rgb, rgb, .i = "clamp=none-dc | dc_offset=0 V",
    DIRECT, .numbers = { NUM (COUPLING, MARGIN, 1, ABS_TOL (1e-9)) } },
  /* Half a volt where 0.1 V is stood: a capacitor takes the offset and the black with it, so again
   * a clamp. */
  { "coupling/offset-into-dc", studio, in_rgb, rgb,
    .i = "clamp=none-dc | dc_offset=-0.1 V .. 0.1 V", .s = "dc_offset=0.5 V",
    PARTS (COUPLING, CLAMP), .numbers = { NUM (COUPLING, VALUE, 0.5, ABS_TOL (1e-9)) } },
  /* More d.c. than a clamped input's capacitor and its parts stand: a capacitor ahead of it is
   * enough, the clamp finds black again. */
  { "coupling/offset-into-clamp", studio, in_rgb, rgb, .i = "dc_offset=-2 V .. 2 V",
    .s = "dc_offset=3 V", PARTS (COUPLING, COUPLING_CAPACITOR) },
  /* On the edge; 0.05 / 2 = 0.025 under 0.05; 0.2 / 2 = 0.1 over it. */
  { "coupling/offset-on-edge", studio, in_rgb, rgb, .i = "dc_offset=-2 V .. 2 V",
    .s = "dc_offset=2 V", TIGHT (COUPLING) },
  { "coupling/offset-inside-threshold", studio, in_rgb, rgb, .i = "dc_offset=-2 V .. 2 V",
    .s = "dc_offset=1.95 V", TIGHT (COUPLING) },
  { "coupling/offset-outside-threshold", studio, in_rgb, rgb, .i = "dc_offset=-2 V .. 2 V",
    .s = "dc_offset=1.8 V", DIRECT },

  /* ---- Bandwidth ---- */

  /* System M carries 4.2 MHz (BT.470 table 1-1). 2 * 4.2 MHz * 52.8556 us / (4/3) = 332.990 lines;
   * a 4 MHz path passes 317.133. Soft, but it shows: tight. */
  { "bandwidth/ntsc-into-4-mhz", studio, in_composite, composite, .i = "bandwidth=4 MHz",
    TIGHT (BANDWIDTH),
    .numbers = { NUM (BANDWIDTH, VALUE, 4e6, ABS_TOL (1e-3)),
                 NUM (BANDWIDTH, LOW, 4.2e6, ABS_TOL (1e-3)),
                 NUM (BANDWIDTH, SOURCE_TVL, 332.990, ABS_TOL (1e-2)),
                 NUM (BANDWIDTH, PASSED_TVL, 317.133, ABS_TOL (1e-2)) } },
  { "bandwidth/ntsc-into-4.3-mhz", studio, in_composite, composite, .i = "bandwidth=4.3 MHz",
    DIRECT },
  /* The input's path cannot pass more than the monitor's amplifiers. */
  { "bandwidth/monitor-is-less-than-input", studio, in_composite, composite, .m = "bandwidth=4 MHz",
    .i = "bandwidth=8 MHz", TIGHT (BANDWIDTH),
    .numbers = { NUM (BANDWIDTH, VALUE, 4e6, ABS_TOL (1e-3)) } },
  /* 640x480: half of 25.175 MHz (DMT 04) = 12.5875 MHz, and 640 * 3/4 = 480 lines; 10 MHz passes
   * 2 * 10 MHz * 640 / 25.175 MHz * 3/4 = 381.331. */
  { "bandwidth/640x480-into-10-mhz", multi, in_rgb, rgb, .m = "bandwidth=10 MHz",
    .s = PC ("vesa-dmt-04") " | detail=", TIGHT (BANDWIDTH),
    .numbers = { NUM (BANDWIDTH, LOW, 12.5875e6, ABS_TOL (1e-3)),
                 NUM (BANDWIDTH, SOURCE_TVL, 480, ABS_TOL (1e-6)),
                 NUM (BANDWIDTH, PASSED_TVL, 381.331, ABS_TOL (1e-2)) } },
  /* 720p: 37.125 MHz, 1280 * 9/16 = 720 lines; 30 MHz passes 2 * 30 * 1280 / 74.25 * 9/16 =
   * 581.818. */
  { "bandwidth/720p-into-30-mhz", multi, in_component, component,
    .m = "aspect=16:9 | bandwidth=30 MHz", .s = "raster=750-60-progressive | aspect=16:9",
    TIGHT (BANDWIDTH),
    .numbers = { NUM (BANDWIDTH, LOW, 37.125e6, ABS_TOL (1e-3)),
                 NUM (BANDWIDTH, SOURCE_TVL, 720, ABS_TOL (1e-6)),
                 NUM (BANDWIDTH, PASSED_TVL, 581.818, ABS_TOL (1e-2)) } },
  /* VIC 6 sends each of 720 samples twice at 27 MHz (CTA): 13.5 MHz of distinct samples, 6.75 MHz,
   * 720 * 3/4 = 540 lines. */
  { "bandwidth/repeated-pixels", studio, in_rgb, rgb, .m = "bandwidth=6 MHz",
    .s = "raster=cta-861-vic-6 | detail=", TIGHT (BANDWIDTH),
    .numbers = { NUM (BANDWIDTH, LOW, 6.75e6, ABS_TOL (1e-3)),
                 NUM (BANDWIDTH, SOURCE_TVL, 540, ABS_TOL (1e-6)) } },
  /* What is entered for the source beats what is computed. */
  { "bandwidth/entered-detail", studio, in_composite, composite, .i = "bandwidth=4 MHz",
    .s = "detail=3 MHz", DIRECT, .numbers = { NUM (BANDWIDTH, LOW, 3e6, ABS_TOL (1e-3)) } },
  /* Component of 525 lines: BT.601 samples luma at 13.5 MHz, half of it is 6.75 MHz. */
  { "bandwidth/component-without-detail", multi, in_component, component, .m = "bandwidth=5 MHz",
    TIGHT (BANDWIDTH), .numbers = { NUM (BANDWIDTH, LOW, 6.75e6, ABS_TOL (1e-3)) } },
  /* Monochrome RGB timing without a pixel clock: the source's detail is not known, so there is
   * nothing to say against it. */
  { "bandwidth/unknown-detail", studio, in_rgb, rgb, .m = "bandwidth=5 MHz", DIRECT },

  /* ---- Mains beat (arithmetic on the two rates) ---- */

  /* 60 - 59.94006 = 0.05994 Hz; a bar crosses the height in 60 / (0.05994006 * 59.94006) =
   * 16.700 s, upwards since the mains is faster. */
  { "mains/59.94-at-60", studio, in_rgb, rgb, .mains_hz = 60, DIRECT,
    .numbers = { NUM (MAINS_BEAT, VALUE, 0.05994006, ABS_TOL (1e-7)),
                 NUM (MAINS_BEAT, BARS, 1, ABS_TOL (0)),
                 NUM (MAINS_BEAT, CROSSING_S, 16.700, ABS_TOL (1e-3)),
                 NUM (MAINS_BEAT, DIRECTION, 1, ABS_TOL (0)) } },
  /* 60.0988 Hz: 0.0988 Hz, 60 / (0.0988 * 60.0988) = 10.105 s, downwards. */
  { "mains/60.0988-at-60", studio, in_rgb, rgb, .s = "raster=own-262-60.0988", .mains_hz = 60,
    DIRECT,
    .numbers = { NUM (MAINS_BEAT, VALUE, 0.0988, ABS_TOL (1e-7)),
                 NUM (MAINS_BEAT, CROSSING_S, 10.105, ABS_TOL (1e-3)),
                 NUM (MAINS_BEAT, DIRECTION, -1, ABS_TOL (0)) } },
  /* 262 lines: 60.054449 Hz, 0.054449 Hz, 18.349 s, downwards. */
  { "mains/262-at-60", studio, in_rgb, rgb, .s = "raster=262-60.05-progressive", .mains_hz = 60,
    DIRECT,
    .numbers = { NUM (MAINS_BEAT, CROSSING_S, 18.349, ABS_TOL (1e-3)),
                 NUM (MAINS_BEAT, DIRECTION, -1, ABS_TOL (0)) } },
  /* Locked: it stands still. */
  { "mains/50-at-50", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 50, DIRECT,
    .numbers = { NUM (MAINS_BEAT, VALUE, 0, ABS_TOL (1e-9)),
                 NUM (MAINS_BEAT, DIRECTION, 0, ABS_TOL (0)) } },
  /* Mains that has drifted to 50.05 Hz: 0.05 Hz, 50.05 / (0.05 * 50) = 20.02 s, up; to 49.95 Hz:
   * 19.98 s, down. */
  { "mains/50-at-50.05", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 50.05, DIRECT,
    .numbers = { NUM (MAINS_BEAT, CROSSING_S, 20.02, ABS_TOL (1e-3)),
                 NUM (MAINS_BEAT, DIRECTION, 1, ABS_TOL (0)) } },
  { "mains/50-at-49.95", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 49.95, DIRECT,
    .numbers = { NUM (MAINS_BEAT, CROSSING_S, 19.98, ABS_TOL (1e-3)),
                 NUM (MAINS_BEAT, DIRECTION, -1, ABS_TOL (0)) } },
  /* Beats of 10 Hz are seen as flicker, not as a bar: 59.94 - 50 = 9.94006 Hz. Sets for both rates show
   * pictures of either on either mains (practice), so that nothing fails by it. */
  { "mains/59.94-at-50", studio, in_rgb, rgb, .mains_hz = 50, DIRECT,
    .numbers = { NUM (MAINS_BEAT, VALUE, 9.94005994, ABS_TOL (1e-7)) } },
  { "mains/50-at-60", studio, in_rgb, rgb, .s = PAL_RASTER, .mains_hz = 60, DIRECT,
    .numbers = { NUM (MAINS_BEAT, VALUE, 10, ABS_TOL (1e-9)) } },
  /* Exactly 1 Hz is not faster than the limit, 1.1 Hz is. */
  { "mains/60-at-59", studio, in_luma, luma, .s = "raster=525-60-interlaced", .mains_hz = 59,
    DIRECT, .numbers = { NUM (MAINS_BEAT, VALUE, 1, ABS_TOL (1e-9)) } },
  { "mains/60-at-58.9", studio, in_luma, luma, .s = "raster=525-60-interlaced", .mains_hz = 58.9,
    DIRECT, .numbers = { NUM (MAINS_BEAT, VALUE, 1.1, ABS_TOL (1e-9)) } },

  /* ---- Visible area ---- */

  /* 5 % each way: 1 - 0.95 * 0.95 = 0.0975 of the area, 0.05 * 485 = 24.25 lines of the frame and
   * 0.05 * 52.8556 = 2.64278 us of the line. Broadcast pictures are made for it. */
  { "visible/broadcast-overscan", studio, in_rgb, rgb, .m = "overscan_h=5 % | overscan_v=5 %",
    DIRECT,
    .numbers = { NUM (VISIBLE_AREA, VALUE, 0.0975, ABS_TOL (1e-9)),
                 NUM (VISIBLE_AREA, HIDDEN_LINES, 24.25, ABS_TOL (1e-6)),
                 NUM (VISIBLE_AREA, HIDDEN_S, 2.64278e-6, REL_TOL (1e-5)) } },
  /* A computer's text is not: the size controls cure it. 800 * 0.05 = 40 px, 600 * 0.05 = 30
   * lines (DMT 09). */
  { "visible/computer-overscan", multi, in_rgb, rgb, .m = "overscan_h=5 % | overscan_v=5 %",
    .s = PC ("vesa-dmt-09") " | whole_picture=yes", PARTS (VISIBLE_AREA, SIZE),
    .numbers = { NUM (VISIBLE_AREA, VALUE, 0.0975, ABS_TOL (1e-9)),
                 NUM (VISIBLE_AREA, HIDDEN_LINES, 30, ABS_TOL (1e-6)),
                 NUM (VISIBLE_AREA, HIDDEN_COLUMNS, 40, ABS_TOL (1e-6)) } },
  { "visible/computer-no-overscan", multi, in_rgb, rgb,
    .s = PC ("vesa-dmt-09") " | whole_picture=yes", DIRECT,
    .numbers = { NUM (VISIBLE_AREA, VALUE, 0, ABS_TOL (1e-9)) } },
  /* Overscan in height alone: 0.08 * 480 = 38.4 lines (CTA VIC 1), no columns. */
  { "visible/overscan-in-height", multi, in_rgb, rgb, .m = "overscan_v=8 %",
    .s = PC ("cta-861-vic-1") " | whole_picture=yes", PARTS (VISIBLE_AREA, SIZE),
    .numbers = { NUM (VISIBLE_AREA, VALUE, 0.08, ABS_TOL (1e-9)),
                 NUM (VISIBLE_AREA, HIDDEN_LINES, 38.4, ABS_TOL (1e-6)),
                 NUM (VISIBLE_AREA, HIDDEN_COLUMNS, 0, ABS_TOL (1e-9)) } },
  /* ---- Aspect ratio ---- */

  /* 16:9 fills a 4:3 tube only stretched in height: height to (4/3) / (16/9) = 0.75. A switch for
   * it is a setting, and so a remedy, as a termination switch is. */
  { "aspect/wide-on-4-3", multi, in_component, component,
    .s = "raster=750-60-progressive | aspect=16:9", PARTS (ASPECT, SIZE),
    .numbers = { NUM (ASPECT, PART, 0.75, ABS_TOL (1e-9)),
                 NUM (ASPECT, SETS_HEIGHT, 1, ABS_TOL (0)) } },
  { "aspect/wide-on-4-3-with-switch", multi, in_component, component, .m = "wide_switch=yes",
    .s = "raster=1125-60-interlaced | aspect=16:9", PARTS (ASPECT, ASPECT_SWITCH) },
  /* 4:3 on a 16:9 tube: width to 0.75. */
  { "aspect/4-3-on-wide", studio, in_rgb, rgb, .m = "aspect=16:9", PARTS (ASPECT, SIZE),
    .numbers = { NUM (ASPECT, PART, 0.75, ABS_TOL (1e-9)),
                 NUM (ASPECT, SETS_HEIGHT, 0, ABS_TOL (0)) } },
  { "aspect/4-3-on-wide-with-switch", studio, in_rgb, rgb, .m = "aspect=16:9 | wide_switch=yes",
    PARTS (ASPECT, ASPECT_SWITCH) },
  /* 1280x1024 is 5:4 (DMT 23): width to (5/4) / (4/3) = 0.9375. The switch is for 16:9 and does
   * not make 5:4. */
  { "aspect/5-4-on-4-3", multi, in_rgb, rgb, .m = "wide_switch=yes",
    .s = PC ("vesa-dmt-23") " | aspect=5:4", PARTS (ASPECT, SIZE),
    .numbers = { NUM (ASPECT, PART, 0.9375, ABS_TOL (1e-9)),
                 NUM (ASPECT, SETS_HEIGHT, 0, ABS_TOL (0)) } },
  /* What the glass hides is found besides, whatever the proportions, and is no matter of them: 0.08 * 485
   * = 38.8 lines and 0.05 * 52.8556 = 2.64278 us (170M) of a picture of 16:9 on 4:3. */
  { "aspect/wide-and-overscanned", studio, in_rgb, rgb, .m = "overscan_h=5 % | overscan_v=8 %",
    .s = "aspect=16:9 | whole_picture=yes", PARTS (ASPECT, SIZE),
    .numbers = { CURED_BY (VISIBLE_AREA, SIZE),
                 NUM (VISIBLE_AREA, HIDDEN_LINES, 38.8, ABS_TOL (1e-6)),
                 NUM (VISIBLE_AREA, HIDDEN_S, 2.64278e-6, REL_TOL (1e-5)),
                 NUM (ASPECT, PART, 0.75, ABS_TOL (1e-9)) } },
  { "aspect/wide-and-overscanned-broadcast", studio, in_rgb, rgb,
    .m = "overscan_h=5 % | overscan_v=8 %", .s = "aspect=16:9", PARTS (ASPECT, SIZE),
    .numbers = { FOUND (VISIBLE_AREA, OK),
                 NUM (VISIBLE_AREA, HIDDEN_LINES, 38.8, ABS_TOL (1e-6)) } },

  /* ---- Lead ---- */

  /* The European and the Japanese 21-pin connector share a shell and nothing else (practice). */
  { "lead/european-into-japanese", studio, in_rgb, rgb, .i = "connectors=japanese-21",
    .s = "connector=peritelevision", PARTS (LEAD, CROSSED_LEAD) },
  { "lead/japanese-into-european", studio, in_rgb, rgb, .i = "connectors=peritelevision",
    .s = "connector=japanese-21", PARTS (LEAD, CROSSED_LEAD) },
  { "lead/european-into-european", studio, in_rgb, rgb, .i = "connectors=peritelevision",
    .s = "connector=peritelevision", DIRECT },
  { "lead/phono-into-bnc", studio, in_composite, composite, .s = "connector=phono", DIRECT },
  { "lead/de-15-into-bnc", multi, in_rgb, rgb, .s = PC ("vesa-dmt-10") " | connector=de-15",
    DIRECT },
  /* An input with both forms takes the one that fits. */
  { "lead/japanese-into-either", studio, in_rgb, rgb, .i = "connectors=peritelevision; japanese-21",
    .s = "connector=japanese-21", DIRECT },

  /* ---- Whole stories, with several findings ---- */

  /* A home computer of 262 lines with TTL composite sync at a studio RGB input on 60 Hz mains: the
   * resistor is all it needs. */
  { "story/home-computer", studio, in_rgb, rgb, .s = "raster=262-60.05-progressive | " TTL,
    PARTS (SYNC_LEVEL, SERIES_RESISTOR),
    .numbers = { NUM (SYNC_LEVEL, PART, 1075, ABS_TOL (1e-6)), FOUND (LINE_COUNT, OK),
                 FOUND (FIELD_RATE, OK), FOUND (MAINS_BEAT, OK) } },
  /* A 21-pin source whose sync is its composite video, at the 21-pin input of the same form. */
  { "story/21-pin-rgb", studio, in_rgb, rgb, .i = "connectors=peritelevision | syncs=in-video",
    .s = PAL_RASTER " | syncs=in-video | connector=peritelevision", .mains_hz = 50, DIRECT,
    USES (IN_VIDEO) },
  /* 720p on a 15 kHz set: line rate 45 against 16 kHz. Behind the scan converter that this needs, the
   * set sees neither the source's blanking nor its sync: they are not judged. */
  { "story/720p-on-15-khz", studio, in_component, component, .i = "shapes=bi-level",
    .s = "raster=750-60-progressive | aspect=16:9", PARTS (LINE_RATE, SCAN_CONVERTER),
    .numbers = { NUM (LINE_RATE, VALUE, 45000, ABS_TOL (1e-6)), FOUND (LINE_BLANKING, OK),
                 FOUND (FIELD_BLANKING, OK), FOUND (SYNC_SHAPE, OK) } },
  /* One fatal finding outweighs curable ones that come before it: 1280x1024 at 85 (DMT 25, +/+)
   * with a 3 us retrace at an input for negative sync. */
  { "story/fatal-after-curable", multi, in_rgb, rgb, .m = "line_retrace=3 us",
    .i = "polarities=negative", .s = PC ("vesa-dmt-25"), NO (LINE_BLANKING),
    .numbers = { FOUND (SYNC_POLARITY, CURABLE) } },
  /* A camera's luminance on R, G and B alike: green then carries the sync that it came with, which
   * this input takes. Nothing but the distributor is needed. */
  { "story/luminance-through-distributor", studio, in_rgb, luma, .s = "raster=525-60-interlaced",
    PARTS (SIGNAL_KIND, DISTRIBUTOR), .numbers = { FOUND (SYNC_KIND, OK) } },
  /* Composite video through a decoder into RGB: setup, level and sync are then the decoder's. */
  { "story/ntsc-through-decoder", studio, in_rgb, composite,
    .i = "setup=0 IRE | syncs=composite-sync | video_level=0.65 V .. 0.75 V",
    .s = "setup=7.5 IRE | video_level=1 V", PARTS (SIGNAL_KIND, DECODER),
    .numbers = { FOUND (SETUP, OK), FOUND (VIDEO_LEVEL, OK), FOUND (SYNC_KIND, OK) } },
};

/* --- All signal kinds into all signal kinds --- */

static const char *const kind_inputs[] = { in_rgb, in_component, in_yc, in_composite, in_luma };
static const char *const kind_sources[] = { rgb, component, yc, composite, luma };

/* What it takes from the row's source to the column's input, in the order of BwSignal; all 525
 * lines, each with its usual sync. BW_REMEDY_NONE is no part at all. (Practice.)
 *
 * Luminance into component, Y/C or composite is the Y conductor alone, with its sync: a grey
 * picture, as meant. Component or Y/C into luminance is the Y conductor of the source, which has
 * the sync; composite into luminance is the whole signal, with the dots of its subcarrier. RGB with sync on
 * green into luminance is the G conductor alone; a matrix is for those who want red and blue at their right
 * greys. In these four the picture has lost its colour, so they are tight and not direct. */
#define TO(kind) BW_REMEDY_##kind
/* clang-format off */
static const BwRemedyKind kind_cells[BW_N_SIGNALS][BW_N_SIGNALS] = {
  /* into: RGB        component        Y/C                composite      luminance */
  /* RGB */
  { TO (NONE),        TO (TRANSCODER), TO (ENCODER),      TO (ENCODER),  TO (LUMA_MATRIX) },
  /* component */
  { TO (TRANSCODER),  TO (NONE),       TO (ENCODER),      TO (ENCODER),  TO (NONE) },
  /* Y/C */
  { TO (DECODER),     TO (DECODER),    TO (NONE),         TO (YC_MIXER), TO (NONE) },
  /* composite */
  { TO (DECODER),     TO (DECODER),    TO (YC_SEPARATOR), TO (NONE),     TO (NONE) },
  /* luminance */
  { TO (DISTRIBUTOR), TO (NONE),       TO (NONE),         TO (NONE),     TO (NONE) },
};
/* clang-format on */

static Row
kind_row (guint from, guint to)
{
  Row row = { .monitor = studio,
              .input = kind_inputs[to],
              .source = kind_sources[from],
              .verdict = BW_VERDICT_WITH_PARTS,
              .rule = BW_RULE_SIGNAL_KIND,
              .remedy = kind_cells[from][to] };

  if (from == BW_SIGNAL_RGB)
    row.s = "syncs=on-green";
  if (to == BW_SIGNAL_LUMA && from == BW_SIGNAL_RGB)
    row.verdict = BW_VERDICT_TIGHT;
  if (kind_cells[from][to] != BW_REMEDY_NONE)
    return row;
  if (to != BW_SIGNAL_LUMA || from == BW_SIGNAL_LUMA)
    row.rule = 0; /* the first one of all that hold */
  row.verdict = to == BW_SIGNAL_LUMA && from != BW_SIGNAL_LUMA ? BW_VERDICT_TIGHT
                                                               : BW_VERDICT_DIRECT;
  return row;
}

/* --- All syncs of RGB into all syncs of RGB --- */

/* What it takes from the row's sync to an input that takes the column's alone; on the 21-pin
 * connectors composite video can be the sync of RGB ("in video"). An input that strips sync from
 * video strips it from composite sync as well, so composite sync needs nothing there, and separate
 * sync a combiner. ANY: parts are needed, there is more than one good way. (Practice.) */
static const BwSyncKind sync_kinds[] = { BW_SYNC_SEPARATE, BW_SYNC_COMPOSITE, BW_SYNC_ON_GREEN,
                                         BW_SYNC_IN_VIDEO };
static const char *const only_sync[] = { "syncs=separate", "syncs=composite-sync", "syncs=on-green",
                                         "syncs=in-video" };
#define ANY BW_N_REMEDIES
/* clang-format off */
static const BwRemedyKind sync_cells[4][4] = {
  /* into          separate             composite            on green         in video */
  /* separate  */ { TO (NONE),           TO (SYNC_COMBINER),  TO (SYNC_ADDER), TO (SYNC_COMBINER) },
  /* composite */ { TO (SYNC_SEPARATOR), TO (NONE),           TO (SYNC_ADDER), TO (NONE) },
  /* on green  */ { TO (SYNC_SEPARATOR), TO (SYNC_SEPARATOR), TO (NONE),       ANY },
  /* in video  */ { TO (SYNC_SEPARATOR), TO (SYNC_SEPARATOR), ANY,             TO (NONE) },
};
/* clang-format on */

static Row
sync_row (guint from, guint to)
{
  BwRemedyKind cure = sync_cells[from][to];
  gboolean direct = cure == BW_REMEDY_NONE;
  Row row = { .monitor = studio,
              .input = in_rgb,
              .source = rgb,
              .i = only_sync[to],
              .s = only_sync[from],
              .verdict = direct ? BW_VERDICT_DIRECT : BW_VERDICT_WITH_PARTS,
              .rule = direct ? 0 : BW_RULE_SYNC_KIND,
              .remedy = cure == ANY ? BW_REMEDY_NONE : cure,
              .sync_bit = BW_BIT (sync_kinds[from]) };
  return row;
}

/* --- Judging one row --- */

static BwCatalogue *catalogue;

/* Applies "key=value | key=value" to @object. */
static void
apply (const BwFieldTable *table, gpointer object, const char *changes)
{
  g_auto (GStrv) parts = g_strsplit (changes != NULL ? changes : "", "|", -1);

  for (guint i = 0; parts[i] != NULL; i++)
    {
      g_auto (GStrv) sides = g_strsplit (parts[i], "=", 2);
      g_autoptr (GError) error = NULL;
      if (g_strv_length (sides) < 2)
        continue;
      const BwField *field = bw_field_find (table, g_strstrip (sides[0]));
      if (field == NULL)
        g_error ("no field %s", sides[0]);
      bw_field_parse (field, object, g_strstrip (sides[1]), BW_FILE_MARK, &error);
      g_assert_no_error (error);
    }
}

/* What a row is made of, alive while it is judged. */
typedef struct
{
  BwMonitor *monitor;
  BwSource *source;
  BwRasterFigures figures;
  BwCase c;
  BwFit fit;
} Judged;

static void
judge (Judged *judged, const Row *row)
{
  g_autoptr (GError) error = NULL;
  BwInput *input = bw_input_new ();

  judged->monitor = bw_monitor_new ();
  judged->source = bw_source_new ();
  g_ptr_array_add (judged->monitor->inputs, input);
  apply (&bw_monitor_fields, judged->monitor, row->monitor);
  apply (&bw_monitor_fields, judged->monitor, row->m);
  apply (&bw_input_fields, input, row->input);
  apply (&bw_input_fields, input, row->i);
  apply (&bw_source_fields, judged->source, row->source);
  apply (&bw_source_fields, judged->source, row->s);
  bw_input_check (input, &error);
  g_assert_no_error (error);
  bw_source_check (judged->source, &error);
  g_assert_no_error (error);

  const BwRaster *raster = bw_catalogue_raster (catalogue, judged->source->raster);
  g_assert_nonnull (raster);
  bw_raster_figures (raster, &judged->figures);
  judged->c = (BwCase){ judged->monitor,
                        input,
                        judged->source,
                        raster,
                        &judged->figures,
                        &limits,
                        row->mains_hz > 0 ? row->mains_hz : 60,
                        120 };
  bw_fit_judge (&judged->c, &judged->fit);
}

static void
judged_clear (Judged *judged)
{
  bw_monitor_free (judged->monitor);
  bw_source_free (judged->source);
}
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Judged, judged_clear)

/* --- Comparing --- */

static double
measured (const BwFinding *f, What what)
{
  switch (what)
    {
    case VALUE:
      g_assert_true (f->has_value);
      return f->value;
    case LOW:
      g_assert_true (f->has_low);
      return f->low;
    case HIGH:
      g_assert_true (f->has_high);
      return f->high;
    case MARGIN:
      return f->margin;
    case PART:
      return f->remedy.value;
    case WANTED_V:
      return f->rule == BW_RULE_SYNC_LEVEL ? f->as.sync_level.wanted_v : f->as.video_level.wanted_v;
    case OFF_IRE:
      return f->as.setup.off_ire;
    case SOURCE_OHM:
      return f->as.termination.source_ohm;
    case LEVEL_RATIO:
      return f->as.termination.level_ratio;
    case SOURCE_TVL:
      return f->as.bandwidth.source_tvl;
    case PASSED_TVL:
      return f->as.bandwidth.passed_tvl;
    case BARS:
      return f->as.mains_beat.bars;
    case CROSSING_S:
      return f->as.mains_beat.crossing_s;
    case DIRECTION:
      return f->as.mains_beat.direction;
    case HIDDEN_LINES:
      return f->as.visible_area.hidden_lines;
    case HIDDEN_COLUMNS:
      return f->as.visible_area.hidden_columns;
    case HIDDEN_S:
      return f->as.visible_area.hidden_s;
    case SETS_HEIGHT:
      return f->as.aspect.sets_height;
    case SEVERITY:
      return f->severity;
    case CURE:
      return f->remedy.kind;
    case NO_NUMBER:
    default:
      g_assert_not_reached ();
    }
}

static void
check_number (const Number *number, const BwFit *fit)
{
  static const char *const whats[] = {
    [NO_NUMBER] = "nothing",
    [VALUE] = "value",
    [LOW] = "low",
    [HIGH] = "high",
    [MARGIN] = "margin",
    [PART] = "part",
    [WANTED_V] = "wanted level",
    [OFF_IRE] = "distance from the expected setup",
    [SOURCE_OHM] = "resistance of the source",
    [LEVEL_RATIO] = "ratio of the level",
    [SOURCE_TVL] = "TV lines of the source",
    [PASSED_TVL] = "TV lines that are passed",
    [BARS] = "hum bars",
    [CROSSING_S] = "time to cross the height",
    [DIRECTION] = "direction of the bars",
    [HIDDEN_LINES] = "hidden lines",
    [HIDDEN_COLUMNS] = "hidden columns",
    [HIDDEN_S] = "hidden time of a line",
    [SETS_HEIGHT] = "whether the height is set",
    [SEVERITY] = "severity",
    [CURE] = "kind of remedy",
  };
  double got = measured (&fit->at[number->rule], number->what);
  double allowed = number->tolerance * (number->relative ? fabs (number->expected) : 1);

  if (!(fabs (got - number->expected) <= allowed))
    {
      g_test_message ("%s of rule %s: %.12g, by hand %.12g +- %g", whats[number->what],
                      bw_kind_id (&bw_rules, number->rule), got, number->expected, allowed);
      g_test_fail ();
    }
}

/* One finding may not read as a broken number, and must say what cures it where something does. */
static void
check_words (const BwFinding *f, const BwFit *fit, const BwCase *c)
{
  g_autofree char *says = bw_finding_says (f, fit, c, BW_FILE_MARK);
  g_autofree char *remedy = bw_finding_remedy (f, fit, c, BW_FILE_MARK);
  g_autofree char *value = bw_finding_value (f, BW_FILE_MARK);
  g_autofree char *allowed = bw_finding_allowed (f, BW_FILE_MARK);
  const char *texts[] = { says, remedy != NULL ? remedy : "", value, allowed };

  g_assert_cmpstr (says, !=, "");
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++)
    if (g_regex_match_simple ("\\b(nan|inf|infinity|null)\\b|\\(null\\)", texts[i],
                              G_REGEX_CASELESS, 0))
      g_error ("rule %s says \"%s\"", bw_kind_id (&bw_rules, f->rule), texts[i]);
  g_assert_cmpint (f->has_value, ==, *value != '\0');
  g_assert_cmpint (f->has_low || f->has_high, ==, *allowed != '\0');
  if (f->severity == BW_SEVERITY_CURABLE)
    g_assert_cmpint (f->remedy.kind, !=, BW_REMEDY_NONE);
  if (f->severity == BW_SEVERITY_FATAL)
    g_assert_cmpint (f->remedy.kind, ==, BW_REMEDY_NONE);
  g_assert_cmpint (f->remedy.kind != BW_REMEDY_NONE, ==, remedy != NULL && *remedy != '\0');
}

/* What holds for every fit: finite numbers, words, and a verdict that follows from the findings. */
static void
check_fit (const BwFit *fit, const BwCase *c)
{
  static const BwVerdict of_severity[BW_N_SEVERITIES] = { BW_VERDICT_DIRECT, BW_VERDICT_OPEN,
                                                          BW_VERDICT_TIGHT, BW_VERDICT_WITH_PARTS,
                                                          BW_VERDICT_NO };
  guint worst = 0;

  for (guint r = 0; r < BW_N_RULES; r++)
    {
      const BwFinding *f = &fit->at[r];
      g_assert_cmpuint (f->rule, ==, r);
      g_assert_true (isfinite (f->value) && isfinite (f->low) && isfinite (f->high));
      g_assert_true (isfinite (f->margin) && isfinite (f->remedy.value));
      g_assert_null (bw_property_figures (f));
      check_words (f, fit, c);
      if (f->severity > fit->at[worst].severity)
        worst = r;
    }
  g_assert_cmpuint (fit->limiting, ==, worst);
  g_assert_cmpuint (fit->verdict, ==, of_severity[fit->at[worst].severity]);
  g_assert_cmpuint (bw_verdict_from_findings (fit->at, BW_N_RULES), ==, fit->verdict);
}

/* The first line of a failure: both outcomes in words. */
static void
check_outcome (const Row *row, const BwFit *fit, const BwCase *c)
{
  g_autofree char *says = bw_finding_says (&fit->at[fit->limiting], fit, c, BW_FILE_MARK);

  if (fit->verdict != row->verdict || fit->limiting != row->rule)
    {
      g_test_message ("%s by %s (\"%s\"), by hand %s by %s",
                      bw_kind_id (&bw_verdicts, fit->verdict),
                      bw_kind_id (&bw_rules, fit->limiting), says,
                      bw_kind_id (&bw_verdicts, row->verdict), bw_kind_id (&bw_rules, row->rule));
      g_test_fail ();
    }
  if (row->remedy != BW_REMEDY_NONE && fit->at[row->rule].remedy.kind != row->remedy)
    {
      g_test_message ("remedy of %s: %s, by hand %s", bw_kind_id (&bw_rules, row->rule),
                      bw_kind_id (&bw_remedies, fit->at[row->rule].remedy.kind),
                      bw_kind_id (&bw_remedies, row->remedy));
      g_test_fail ();
    }
  if (row->sync_bit != 0 && row->sync_bit != BW_BIT (fit->sync))
    {
      g_test_message ("judged with %s", bw_kind_id (&bw_sync_kinds, fit->sync));
      g_test_fail ();
    }
}

static void
test_row (gconstpointer data)
{
  const Row *row = data;
  g_auto (Judged) judged = { NULL };

  judge (&judged, row);
  check_outcome (row, &judged.fit, &judged.c);
  for (guint i = 0; i < G_N_ELEMENTS (row->numbers); i++)
    if (row->numbers[i].what != NO_NUMBER)
      check_number (&row->numbers[i], &judged.fit);
  check_fit (&judged.fit, &judged.c);
}

/* --- The table as a whole --- */

/* What each rule can come to when it is the limiting one; the rest is out of its reach: no set of
 * rows could show it. */
#define T BW_BIT (BW_VERDICT_TIGHT)
#define P BW_BIT (BW_VERDICT_WITH_PARTS)
#define N BW_BIT (BW_VERDICT_NO)
static const guint reach[BW_N_RULES] = {
  [BW_RULE_MAINS] = T | P,
  [BW_RULE_SIGNAL_KIND] = T | P | N,
  [BW_RULE_COLOUR_SYSTEM] = T, /* without its colour the picture shows */
  [BW_RULE_LINE_RATE] = T | P | N,
  [BW_RULE_FIELD_RATE] = T | P | N,
  [BW_RULE_LINE_COUNT] = T | P | N,
  [BW_RULE_SYNC_KIND] = P,
  [BW_RULE_SYNC_POLARITY] = P,
  [BW_RULE_SYNC_LEVEL] = T | P,
  [BW_RULE_SYNC_DRIVE] = T, /* what a resistor cures is named by the level */
  [BW_RULE_SYNC_SHAPE] = P,
  [BW_RULE_LINE_BLANKING] = T | P | N,
  [BW_RULE_FIELD_BLANKING] = T | P | N,
  [BW_RULE_BLACK] = T,
  [BW_RULE_BACK_PORCH] = T,
  [BW_RULE_SYNC_WIDTH] = T,
  [BW_RULE_PICTURE_START] = T,
  [BW_RULE_VIDEO_LEVEL] = T | P,
  [BW_RULE_SETUP] = T | P,
  [BW_RULE_TERMINATION] = T | P,
  [BW_RULE_COUPLING] = T | P,
  [BW_RULE_BANDWIDTH] = T,
  [BW_RULE_MAINS_BEAT] = 0, /* the picture locks whatever the beat */
  [BW_RULE_ASPECT] = P,
  [BW_RULE_VISIBLE_AREA] = P,
  [BW_RULE_LEAD] = P,
};

/* The rows show every outcome that a rule can have, and no two have one name. */
static void
test_coverage (gconstpointer data)
{
  const GArray *all = data;
  guint shown[BW_N_RULES] = { 0 };
  g_autoptr (GHashTable) names = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < all->len; i++)
    {
      const Row *row = &g_array_index (all, Row, i);
      shown[row->rule] |= BW_BIT (row->verdict);
      g_assert_true (g_hash_table_add (names, (gpointer) row->name));
    }
  for (guint r = 0; r < BW_N_RULES; r++)
    g_assert_cmpuint (shown[r] & ~BW_BIT (BW_VERDICT_DIRECT), ==, reach[r]);
  g_assert_cmpuint (all->len, >=, 70);
}

static void
add_row (GArray *all, Row row, const char *name)
{
  g_autofree char *path = g_strconcat ("/fit-cases/", name, NULL);

  row.name = g_intern_string (path);
  g_array_append_val (all, row);
}

/* All rows, those of the two square tables too. */
static GArray *
collect_rows (void)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Row));

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    add_row (all, rows[i], rows[i].name);
  for (guint from = 0; from < BW_N_SIGNALS; from++)
    for (guint to = 0; to < BW_N_SIGNALS; to++)
      {
        g_autofree char *name = g_strdup_printf ("signal-kind/%s-into-%s",
                                                 bw_kind_id (&bw_signals, from),
                                                 bw_kind_id (&bw_signals, to));
        add_row (all, kind_row (from, to), name);
      }
  for (guint from = 0; from < 4; from++)
    for (guint to = 0; to < 4; to++)
      {
        g_autofree char *name = g_strdup_printf ("sync-kind/%s-into-%s",
                                                 bw_kind_id (&bw_sync_kinds, sync_kinds[from]),
                                                 bw_kind_id (&bw_sync_kinds, sync_kinds[to]));
        add_row (all, sync_row (from, to), name);
      }
  return all;
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);

  g_autoptr (GPtrArray) faults = g_ptr_array_new_with_free_func ((GDestroyNotify) g_error_free);
  catalogue = bw_catalogue_new (NULL, faults);
  bw_catalogue_add_text (catalogue, BW_CATALOGUE_RASTERS, own_rasters, strlen (own_rasters),
                         "own rasters of this test", faults);
  g_assert_cmpuint (faults->len, ==, 0);

  GArray *all = collect_rows ();
  for (guint i = 0; i < all->len; i++)
    g_test_add_data_func (g_array_index (all, Row, i).name, &g_array_index (all, Row, i), test_row);
  g_test_add_data_func ("/fit-cases/coverage", all, test_coverage);
  int result = g_test_run ();
  g_array_unref (all);
  bw_catalogue_free (catalogue);
  return result;
}
