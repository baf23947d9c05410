/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Questions that people ask who connect and service picture-tube sets, put in general words: a command line each,
 * and what its JSON must hold. Right answers are worked from Ohm's law and the raster's own arithmetic, beside
 * each case, unless they are marked common practice. */
#include <math.h>
#include <stdlib.h>
#include <string.h>

#include "run.h"

/* Sets of 15 kHz whose inputs clamp on the back porch, and one that decodes NTSC alone; invented, after the
 * generic classes of the catalogue. */
#define INPUT(name, signals, systems, syncs)                                                       \
  "\nname=" name "\nconnectors=bnc\nsignals=" signals "\nsystems=" systems "\nsyncs=" syncs        \
  "\nshapes=bi-level\npolarities=negative\nscans=progressive; interlaced\n"                        \
  "video_level=0.5 V .. 1 V\nsync_level=0.2 V .. 0.6 V\ntermination=fixed\n"                       \
  "sync_termination=fixed\nclamp=back-porch\n"
#define SET(rates, fields)                                                                         \
  "[bench-sheet]\nformat=1\ntitle=Invented\n\n[monitor]\nname=Invented set\ndiagonal=20 in\n"      \
  "aspect=4:3\nmask=slot\npitch=0.8 mm\noverscan_h=8 %\noverscan_v=8 %\nline_rates=" rates         \
  "\nfield_rates=" fields "\nline_retrace=10 us\nfield_retrace=900 us\nbandwidth=6 MHz\n"
#define SOURCE(raster, signal, syncs, system)                                                      \
  "\n[source 1]\nname=Source\nraster=" raster "\nsignal=" signal "\nsyncs=" syncs "\nsystem=" system \
  "\nconnector=bnc\nvideo_level=700 mV\nsync_level=300 mV\naspect=4:3\n"

#define OWN_LINE(id, front, sync, back)                                                            \
  "\n[raster " id "]\nname=Invented\nsource=Invented\nscan=progressive\nline_rate=15.734 kHz\n"     \
  "h_front_porch=" front "\nh_sync=" sync "\nh_back_porch=" back "\nv_active=240\n"               \
  "v_front_porch=4\nv_sync=3\nv_back_porch=15\nh_polarity=negative\nv_polarity=negative\n"

#define DOMESTIC SET ("15.5 kHz .. 15.85 kHz", "48 Hz .. 61 Hz")
static const struct
{
  const char *name;
  const char *text;
} sheets[] = {
  { "domestic.bench", DOMESTIC "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync") },
  { "studio.bench",
    SET ("15.4 kHz .. 16 kHz", "48 Hz .. 62 Hz") "\n[input 1]" INPUT ("RGB", "rgb", "none",
                                                                       "composite-sync") },
  { "fixed.bench",
    "[bench-sheet]\nformat=1\ntitle=Invented\n\n[monitor]\nname=Invented set\ndiagonal=20 in\naspect=5:4\n"
    "mask=grille\npitch=0.3 mm\noverscan_h=0 %\noverscan_v=0 %\nline_rates=78.125 kHz\n"
    "field_rates=71 Hz .. 73 Hz\nline_retrace=2.6 us\nfield_retrace=400 us\nbandwidth=120 MHz\n"
    "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync") },
  { "text-card.bench",
    DOMESTIC "\n[input 1]" INPUT ("Video", "luminance", "none", "in-video")
        SOURCE ("computer-720x350-50", "luminance", "in-video", "none") },
  { "p576.bench",
    DOMESTIC "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync")
        SOURCE ("625-50-progressive", "rgb", "composite-sync", "none") },
  { "pal-on-ntsc.bench",
    SET ("15.6 kHz .. 15.9 kHz", "58 Hz .. 62 Hz") "\n[input 1]" INPUT ("Video", "composite", "ntsc-m",
                                                                         "in-video")
        SOURCE ("625-50-interlaced", "composite", "in-video", "pal-b") },
  { "border.bench",
    DOMESTIC "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync")
        SOURCE ("262-60.05-progressive", "rgb", "composite-sync", "none") "blanking=border\n" },
  { "wide.bench",
    DOMESTIC "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync")
        SOURCE ("wide", "rgb", "composite-sync", "none") OWN_LINE ("wide", "0.5 us", "9.4 us", "1.4 us") },
  { "early.bench",
    DOMESTIC "\n[input 1]" INPUT ("RGB", "rgb", "none", "composite-sync")
        SOURCE ("early", "rgb", "composite-sync", "none") OWN_LINE ("early", "6.2 us", "3.7 us", "0.12 us") },
};

#define MOST_FIGURES 6

/* Members are named with a slash between: "at_loads/0/level_v". */
typedef struct
{
  const char *path;
  double value;
  double tolerance;
} Figure;

typedef struct
{
  const char *name;
  const char *line;  /* of the command, without --json; the sheets' names are made paths */
  Figure figures[MOST_FIGURES];
  const char *words[3]; /* that its JSON must hold */
} Question;

static const Question questions[] = {
  /* 1. Sync reads 2.45 V open and 380 mV with 75 Ω on it: 75 × (2.45 / 0.38 − 1) = 408.6 Ω; across 10 kΩ
   * 2.35 V, which is far above an input for 200 to 600 mV. */
  { "01-console-sync", "work-back --open=2.45V --loaded=380mV",
    { { "source_ohm", 408.55, 0.1 }, { "at_loads/0/level_v", 0.38, 1e-6 }, { "at_loads/2/level_v", 2.354, 1e-3 } } },
  /* 2. 3.0 V at the computer; 2.5 V behind 100 Ω, 1.5 V behind 330 Ω, 1.0 V behind 470 Ω: loads of 500, 330 and
   * 235 Ω, which are not one. For 0.7 V across 75 Ω the whole resistance is 75 × (3 / 0.7 − 1) = 246.4 Ω. */
  { "02-readings-disagree",
    "work-back --drop=3V,2.5V,100ohm --drop=3V,1.5V,330ohm --drop=3V,1V,470ohm",
    { { "drops/0/load_ohm", 500, 1e-6 }, { "drops/1/load_ohm", 330, 1e-6 }, { "drops/2/load_ohm", 235, 1e-6 } },
    { "\"agree\": false" } },
  { "02-which-resistor", "pad --from=3V --to=0.7V", { { "ideal_ohm", 246.43, 0.01 }, { "value_ohm", 240, 1e-9 } } },
  /* 3. 5 V behind 100 Ω into 75 Ω: 75 × (5 / 0.3 − 1) − 100 = 1075 Ω: 1.1 kΩ. */
  { "03-gate-and-resistor", "pad --from=5V --to=300mV --driver=100ohm",
    { { "ideal_ohm", 1075, 0.1 }, { "value_ohm", 1100, 1e-9 }, { "level_v", 5.0 * 75 / 1275, 1e-6 } } },
  /* 5. 1.0 V into 78 Ω behind 282 Ω: a driver of 4.6 V; for 0.7 V the ladder must come to 436 Ω, or an attenuator
   * of 3.1 dB. */
  { "05-resistor-ladder", "work-back --level=1V --behind=282ohm --load=78ohm --wanted=0.7V",
    { { "open_v", 4.615, 1e-3 }, { "wanted_series_ohm", 436.3, 0.1 } } },
  /* 6. 470 Ω and 1 kΩ from 5 V: 0.95 V into 75 Ω and 0.52 V into 37.5 Ω, as the source is 320 Ω. */
  { "06-two-resistors", "work-back --driver=5V,470ohm --driver=5V,1kohm",
    { { "level_v", 0.95, 1e-3 }, { "second_load_v", 0.525, 1e-3 }, { "source_ohm", 319.7, 0.1 } } },
  /* 7. 4.9 V on pin 8 is 16:9 (EN 50049-1: 4.5 to 7 V); 5 V straight on pin 16 drives 67 mA into 75 Ω; a d.c. meter
   * says nothing of sync. */
  { "07-pin-8", "work-back --pin=8 --reading=4.9V", { { "level_v", 4.9, 1e-9 } }, { "\"wide\"", "d.c. meter" } },
  { "07-pin-16", "work-back --pin=16 --reading=5V", { { "current_a", 0.0667, 1e-4 } }, { "too-high" } },
  /* 9. Right on one monitor, dark on the next: the source sends its border during blanking, and a clamp on the back
   * porch takes that for black. Cure: black in both blankings (common practice). */
  { "09-not-black", "fit border.bench --findings", { { NULL } },
    { "takes for black what stands there", "Set the border to black" } },
  /* 10. A back porch of 1.4 µs is too short to clamp on, and line sync of 9.4 µs is twice the usual 4.7 µs (common
   * practice for the limits; SMPTE 170M for the widths). */
  { "10-short-porch", "fit wide.bench --findings", { { NULL } }, { "too short for a clamp", "much more than the usual" } },
  /* 11. 3.7 + 0.12 = 3.82 µs from the edge of sync to the picture, where retrace takes 10 µs: the left edge is lost. */
  { "11-first-pixels", "fit early.bench --findings", { { NULL } },
    { "The picture begins", "at the left edge", "Delay the picture" } },
  /* 12. 240 lines at 60 Hz on a 15 kHz set: 15.6 to 15.75 kHz, 261 to 263 lines; interlaced 525 lines at 15.734 kHz;
   * 288 lines at 50 Hz: 15.625 kHz, 312 lines. The back porch holds the clamp. */
  { "12-domestic-240", "timing --for-monitor=domestic.bench --active=320x240 --field-rate=60Hz",
    { { "line_rate_hz", 4.5e6 / 286, 0.5 }, { "lines_per_frame", 262, 0 }, { "h_back_porch_s", 5.9e-6, 1.7e-6 },
      { "h_sync_s", 4.7e-6, 0.2e-6 } },
    { "\"alternatives\"", "Modeline" } },
  { "12-studio-240", "timing --for-monitor=studio.bench --active=320x240 --field-rate=60Hz",
    { { "line_rate_hz", 4.5e6 / 286, 0.5 }, { "lines_per_frame", 262, 0 }, { "h_back_porch_s", 5.9e-6, 1.7e-6 } } },
  { "12-interlaced", "timing --for-monitor=domestic.bench --active=640x480 --field-rate=60Hz --interlaced",
    { { "line_rate_hz", 4.5e6 / 286, 0.5 }, { "lines_per_frame", 525, 0 } } },
  { "12-288", "timing --for-monitor=domestic.bench --active=384x288 --field-rate=50Hz",
    { { "line_rate_hz", 15625, 0.5 }, { "lines_per_frame", 312, 0 } } },
  /* 13. A card that gives no clock under 25 MHz: all figures across so many times over, and the line rate stays. */
  { "13-lowest-clock",
    "timing --for-monitor=studio.bench --active=640x240 --field-rate=60Hz --lowest-clock=25MHz",
    { { "line_rate_hz", 4.5e6 / 286, 0.5 }, { "h_active", 640 * 2, 0 }, { "lines_per_frame", 262, 0 } },
    { "multiplied" } },
  /* 14. 78.125 kHz / 72 Hz = 1085 lines, on a set with that one rate. */
  { "14-fixed-frequency", "timing --for-monitor=fixed.bench --active=1280x1024 --field-rate=72Hz",
    { { "line_rate_hz", 78125, 1e-3 }, { "lines_per_frame", 1085, 0 } } },
  /* 15. 18.43 kHz on a set for 15.5 to 15.85 kHz: it cannot lock; a converter, and it must not be connected. */
  { "15-text-card", "fit text-card.bench --findings", { { NULL } }, { "18.4", "Do not connect" } },
  /* 16. 31.25 kHz in a socket for 15 kHz. */
  { "16-576-lines", "fit p576.bench --findings", { { NULL } }, { "31.25", "Do not connect" } },
  /* 17. PAL at 50 Hz on an NTSC set for 60 Hz: two troubles, the field rate and the colour system. */
  { "17-pal-on-ntsc", "fit pal-on-ntsc.bench --findings", { { NULL } }, { "field-rate", "colour-system", "PAL" } },
  /* 19. A 120 V, 60 Hz set of 1 A at 230 V, 50 Hz: flux +20 %; 120 VA and half as much again in reserve (common
   * practice). */
  { "19-step-down", "supply --mains=230V,50Hz --plate=110-120V,60Hz,1A",
    { { "apparent_power_va", 120, 1e-6 } }, { "\"inside\": false" } },
  /* 20. One bar is the mains frequency, two are a full-wave rectifier; 60 − 59.94 Hz: 16.7 s a pass. */
  { "20-dark-bar", "supply --mains=120V,60Hz --plate=110-120V,60Hz,1A --field-rate=59.94Hz",
    { { "hum_bars", 1, 0 }, { "ripple_bars", 2, 0 }, { "hum_seconds_per_height", 16.7, 0.1 } } },
  /* 24. 10 µF, 25 V at 120 Hz: tan δ 0.14 (common practice of the makers): 0.14 / (2π × 120 × 10 µF) = 18.6 Ω, so
   * that 5 Ω are good. */
  { "24-esr", "capacitor --value=10uF --voltage=25V --esr=5ohm --at=120Hz",
    { { "esr_limit_ohm", 18.57, 0.01 }, { "esr_limit_hz", 120, 0 } } },
};

static double
number_at (JsonObject *root, const char *path)
{
  g_auto (GStrv) names = g_strsplit (path, "/", -1);
  JsonObject *at = root;
  guint last = g_strv_length (names) - 1;
  for (guint i = 0; i + 1 <= last; i += 2)
    {
      JsonArray *rows = json_object_get_array_member (at, names[i]);
      guint row = (guint) atoi (names[i + 1]);
      g_assert_nonnull (rows);
      g_assert_cmpuint (row, <, json_array_get_length (rows));
      at = json_array_get_object_element (rows, row);
    }
  return figure_of (at, names[last]);
}

/* The command with the paths of its sheets. */
static Run *
ask (const char *line, const char *folder)
{
  g_auto (GStrv) words = g_strsplit (line, " ", -1);
  g_autoptr (GPtrArray) all = g_ptr_array_new_with_free_func (g_free);
  for (guint i = 0; words[i] != NULL; i++)
    {
      GString *word = g_string_new (words[i]);
      for (gsize j = 0; j < G_N_ELEMENTS (sheets); j++)
        {
          g_autofree char *path = g_build_filename (folder, sheets[j].name, NULL);
          if (g_str_has_suffix (word->str, sheets[j].name))
            {
              g_string_truncate (word, word->len - strlen (sheets[j].name));
              g_string_append (word, path);
              break;
            }
        }
      g_ptr_array_add (all, g_string_free (word, FALSE));
    }
  g_ptr_array_add (all, g_strdup ("--json"));
  g_ptr_array_add (all, NULL);
  return run_args ((const char *const *) all->pdata);
}

static void
test_question (gconstpointer data)
{
  const Question *q = data;
  g_autofree char *folder = scratch_folder ();
  for (gsize i = 0; i < G_N_ELEMENTS (sheets); i++)
    g_free (write_scratch (folder, sheets[i].name, sheets[i].text));

  g_autoptr (Run) run = ask (q->line, folder);
  if (run->status != 0)
    g_error ("%s: %s", q->line, run->err);
  g_autoptr (JsonObject) root = run_json (run);
  for (guint i = 0; i < MOST_FIGURES && q->figures[i].path != NULL; i++)
    {
      double got = number_at (root, q->figures[i].path);
      if (!is_near (got, q->figures[i].value, q->figures[i].tolerance))
        g_error ("%s: %s is %g, not %g", q->line, q->figures[i].path, got, q->figures[i].value);
    }
  for (guint i = 0; i < G_N_ELEMENTS (q->words) && q->words[i] != NULL; i++)
    if (strstr (run->out, q->words[i]) == NULL)
      g_error ("%s: “%s” is not said in %s", q->line, q->words[i], run->out);
  remove_scratch (folder);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (gsize i = 0; i < G_N_ELEMENTS (questions); i++)
    {
      g_autofree char *path = g_strconcat ("/questions/", questions[i].name, NULL);
      g_test_add_data_func (path, &questions[i], test_question);
    }
  return g_test_run ();
}
