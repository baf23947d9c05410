/* SPDX-License-Identifier: GPL-3.0-or-later */
#include <math.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#ifdef BW_LIBXCVT_VERSION
#include <libxcvt/libxcvt.h>
#endif

#include "core/raster/standards.h"
#include "support.h"

/* CVT and GTF over many requests against two programs of other hands: edid-decode, run here, and
 * libxcvt. Where one of them differs, a rule says how and why, and gives what the tool then has
 * to say, exactly. The rules stand, with how many requests each one changes, in
 * tests/reference/edid-decode-cvt-differences.tsv and, for each version of libxcvt, in
 * libxcvt-VERSION-differences.tsv. */

static const int sizes[][2] = {
  { 320, 240 },   { 400, 300 },   { 512, 384 },   { 640, 350 },   { 640, 400 },   { 640, 480 },
  { 720, 400 },   { 720, 480 },   { 720, 576 },   { 768, 576 },   { 800, 600 },   { 832, 624 },
  { 848, 480 },   { 854, 480 },   { 1024, 600 },  { 1024, 768 },  { 1152, 864 },  { 1152, 900 },
  { 1280, 720 },  { 1280, 768 },  { 1280, 800 },  { 1280, 960 },  { 1280, 1024 }, { 1360, 768 },
  { 1366, 768 },  { 1400, 1050 }, { 1440, 900 },  { 1600, 900 },  { 1600, 1200 }, { 1680, 1050 },
  { 1920, 1080 }, { 1920, 1200 }, { 1920, 1440 }, { 2048, 1152 }, { 2048, 1536 }, { 2560, 1600 },
};
static const int rates[] = { 50, 60, 72, 75, 85, 100 };

typedef struct
{
  int width;
  int height;
  int rate_hz; /* fields a second */
  gboolean reduced;
  gboolean interlaced;
  gboolean margins;
} Request;

/* What a raster comes down to. Vertical figures are lines of field 1; total is of the frame. */
enum
{
  CLOCK_HZ,
  H_ACTIVE,
  H_BORDER,
  H_FRONT,
  H_SYNC,
  H_BACK,
  V_ACTIVE,
  V_BORDER,
  V_FRONT,
  V_SYNC,
  V_BACK,
  V_TOTAL,
  H_POSITIVE,
  V_POSITIVE,
  FIELD_RATE_UHZ, /* millionths of a hertz; zero: not compared */
  N_FIGURES
};
static const char *const figure_names[N_FIGURES] = {
  "clock_hz", "h_active", "h_border",   "h_front",    "h_sync",
  "h_back",   "v_active", "v_border",   "v_front",    "v_sync",
  "v_back",   "v_total",  "h_positive", "v_positive", "field_rate_uhz",
};

typedef struct
{
  gint64 at[N_FIGURES];
} Figures;

static GArray *
requests_new (gboolean reduced_too, gboolean margins_too)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (Request));
  for (gsize s = 0; s < G_N_ELEMENTS (sizes); s++)
    for (gsize r = 0; r < G_N_ELEMENTS (rates); r++)
      for (int kind = 0; kind < 8; kind++)
        {
          Request q = { sizes[s][0], sizes[s][1], rates[r], kind & 1, kind & 2, kind & 4 };
          if ((!q.reduced || reduced_too) && (!q.margins || margins_too))
            g_array_append_val (all, q);
        }
  return all;
}

static char *
request_text (const Request *q)
{
  return g_strdup_printf ("%dx%d@%d%s%s%s", q->width, q->height, q->rate_hz,
                          q->reduced ? ",reduced" : "", q->interlaced ? ",interlaced" : "",
                          q->margins ? ",margins" : "");
}

/* Ours */

static Figures
figures_of (const BwRaster *raster)
{
  const BwFieldTiming *field = &raster->field[0];
  BwRasterFigures f;
  bw_raster_figures (raster, &f);
  return (Figures){ {
      [CLOCK_HZ] = llround (f.pixel_clock_hz),
      [H_ACTIVE] = raster->h_active,
      [H_BORDER] = raster->h_border,
      [H_FRONT] = raster->h_front_porch,
      [H_SYNC] = raster->h_sync,
      [H_BACK] = raster->h_back_porch,
      [V_ACTIVE] = llround (f.active_lines_frame),
      [V_BORDER] = raster->v_border,
      [V_FRONT] = field->front_porch / 2,
      [V_SYNC] = field->sync / 2,
      [V_BACK] = field->back_porch / 2,
      [V_TOTAL] = f.lines_per_frame,
      [H_POSITIVE] = raster->h_polarity == BW_POLARITY_POSITIVE,
      [V_POSITIVE] = raster->v_polarity == BW_POLARITY_POSITIVE,
  } };
}

static BwRaster *
compute (const Request *q, gboolean gtf, GError **error)
{
  BwFormulaRequest request = {
    .width = q->width,
    .height = q->height,
    .field_rate_hz = { q->rate_hz, 1 },
    .interlaced = q->interlaced,
    .reduced = q->reduced,
    .margins = q->margins,
  };
  return gtf ? bw_standards_gtf (&request, error) : bw_standards_cvt (&request, error);
}

/* edid-decode */

static char *
run_edid_decode (GPtrArray *arguments)
{
  g_autoptr (GError) error = NULL;
  char *output = NULL;
  int status = 0;

  g_ptr_array_add (arguments, NULL);
  if (!g_spawn_sync (NULL, (char **) arguments->pdata, NULL,
                     G_SPAWN_SEARCH_PATH | G_SPAWN_STDERR_TO_DEV_NULL, NULL, NULL, &output, NULL,
                     &status, &error)
      || !g_spawn_check_wait_status (status, &error))
    g_error ("edid-decode is needed for this test: %s", error->message);
  return output;
}

static void
add_arguments (GPtrArray *arguments, const Request *q, gboolean gtf)
{
  g_ptr_array_add (arguments, g_strdup (gtf ? "--gtf" : "--cvt"));
  g_ptr_array_add (arguments,
                   g_strdup_printf ("w=%d,h=%d,fps=%d%s%s%s", q->width, q->height, q->rate_hz,
                                    q->reduced ? ",rb=1" : "", q->interlaced ? ",interlaced" : "",
                                    q->margins ? ",overscan" : ""));
}

static GPtrArray *
arguments_new (void)
{
  GPtrArray *arguments = g_ptr_array_new_with_free_func (g_free);
  g_ptr_array_add (arguments, g_strdup ("edid-decode"));
  return arguments;
}

/* The number that follows @word in @text; zero where a border is not named. */
static double
after (const char *text, const char *word)
{
  const char *at = strstr (text, word);
  return at != NULL ? g_ascii_strtod (at + strlen (word), NULL) : 0;
}

/* "CVT:   640x480    59.375000 Hz   4:3     29.688 kHz     23.750000 MHz" and the lines below,
 * up to the next entry; of an interlaced raster the vertical line comes twice, once a field. */
static Figures
parse_printed (const char *record)
{
  int width = 0, height = 0, taken = 0;

  g_assert_cmpint (sscanf (record, "%*[CVTGF]: %dx%d%n", &width, &height, &taken), ==, 2);
  double rate_hz = g_ascii_strtod (record + taken + (record[taken] == 'i'), NULL);
  return (Figures){ {
      [CLOCK_HZ] = llround (after (record, "kHz") * 1e6),
      [H_ACTIVE] = width,
      [H_BORDER] = (gint64) after (record, "Hborder"),
      [H_FRONT] = (gint64) after (record, "Hfront"),
      [H_SYNC] = (gint64) after (record, "Hsync"),
      [H_BACK] = (gint64) after (record, "Hback"),
      [V_ACTIVE] = height,
      [V_BORDER] = (gint64) after (record, "Vborder"),
      [V_FRONT] = (gint64) after (record, "Vfront"),
      [V_SYNC] = (gint64) after (record, "Vsync"),
      [V_BACK] = (gint64) after (record, "Vback"),
      [H_POSITIVE] = strstr (record, "Hpol P") != NULL,
      [V_POSITIVE] = strstr (record, "Vpol P") != NULL,
      [FIELD_RATE_UHZ] = llround (rate_hz * 1e6),
  } };
}

/* The lines of a frame follow from those of field 1 and the half line of each field. */
static void
add_printed_total (Figures *f, const Request *q)
{
  gint64 field = f->at[V_ACTIVE] / (q->interlaced ? 2 : 1) + 2 * f->at[V_BORDER] + f->at[V_FRONT]
                 + f->at[V_SYNC] + f->at[V_BACK];
  f->at[V_TOTAL] = q->interlaced ? 2 * field + 1 : field;
}

/* What the tools do otherwise. @f holds what the program gives and is changed into what the tool
 * gives. All in whole numbers: rates in hertz, times in microseconds. */

#define STANDARD_US 550 /* VESA CVT: field sync and back porch last at least this */
#define REDUCED_US 460  /* VESA CVT reduced blanking: field blanking lasts at least this */
#define FRONT_LINES 3
#define STEP_HZ 250000

static gint64
h_total (const Figures *f)
{
  return f->at[H_ACTIVE] + 2 * f->at[H_BORDER] + f->at[H_FRONT] + f->at[H_SYNC] + f->at[H_BACK];
}

/* @lines: of a field, with its half line. */
static void
set_field_rate (Figures *f, double lines)
{
  f->at[FIELD_RATE_UHZ] = llround (1e6 * (double) f->at[CLOCK_HZ] / (double) h_total (f) / lines);
}

static double
lines_of_total (const Request *q, const Figures *f)
{
  return (double) f->at[V_TOTAL] / (q->interlaced ? 2 : 1);
}

static gint64
field_lines (const Request *q, const Figures *f)
{
  return q->height / (q->interlaced ? 2 : 1) + 2 * f->at[V_BORDER];
}

/* Field blanking once more, with another length of sync or another least back porch. */
static void
set_blanking (const Request *q, Figures *f, gint64 sync, gint64 least_back)
{
  gint64 half = q->interlaced ? 1 : 0;
  gint64 lines = field_lines (q, f);
  gint64 rest_us = 1000000 - (q->reduced ? REDUCED_US : STANDARD_US) * (gint64) q->rate_hz;
  gint64 blanking;

  if (q->reduced)
    blanking = REDUCED_US * q->rate_hz * lines / rest_us + 1;
  else
    blanking = FRONT_LINES + 1
               + STANDARD_US * q->rate_hz * (2 * (lines + FRONT_LINES) + half) / (2 * rest_us);
  blanking = MAX (blanking, FRONT_LINES + sync + least_back);

  gint64 double_total = 2 * (lines + blanking) + half;
  f->at[V_SYNC] = sync;
  f->at[V_BACK] = blanking - FRONT_LINES - sync;
  f->at[V_TOTAL] = q->interlaced ? double_total : double_total / 2;
  if (q->reduced)
    f->at[CLOCK_HZ] = q->rate_hz * double_total * h_total (f) / (2 * STEP_HZ) * STEP_HZ;
}

static gint64
sync_for_aspect (const Request *q, const int (*aspects)[4], gsize n)
{
  for (gsize i = 0; i < n; i++)
    {
      const int *aspect = aspects[i]; /* width, height, lines of sync, what the height divides by */
      if (q->height % aspect[3] == 0 && q->height * aspect[0] == q->width * aspect[1])
        return aspect[2];
    }
  return 10;
}

static void
edid_aspect (const Request *q, Figures *f)
{
  static const int aspects[][4] = {
    { 4, 3, 4, 1 }, { 16, 9, 5, 1 }, { 16, 10, 6, 1 }, { 5, 4, 7, 1 }, { 15, 9, 7, 1 },
  };
  gint64 sync = sync_for_aspect (q, aspects, G_N_ELEMENTS (aspects));
  if (sync != f->at[V_SYNC])
    set_blanking (q, f, sync, 7);
  set_field_rate (f, lines_of_total (q, f));
}

static void
edid_width (const Request *q, Figures *f)
{
  f->at[H_ACTIVE] = q->width;
  set_field_rate (f, lines_of_total (q, f));
}

static void
edid_rate (const Request *q, Figures *f)
{
  if (q->interlaced && q->margins)
    set_field_rate (f, lines_of_total (q, f) - 2 * (double) f->at[V_BORDER]);
}

static void
xcvt_aspect (const Request *q, Figures *f)
{
  static const int aspects[][4] = {
    { 4, 3, 4, 3 }, { 16, 9, 5, 9 }, { 16, 10, 6, 10 }, { 5, 4, 7, 4 }, { 15, 9, 7, 9 },
  };
  gint64 sync = sync_for_aspect (q, aspects, G_N_ELEMENTS (aspects));
  if (sync != f->at[V_SYNC])
    set_blanking (q, f, sync, 7);
}

static void
xcvt_back_porch_6_or_3 (const Request *q, Figures *f)
{
  set_blanking (q, f, f->at[V_SYNC], q->reduced ? 6 : 3);
}

static void
xcvt_back_porch_6 (const Request *q, Figures *f)
{
  set_blanking (q, f, f->at[V_SYNC], 6);
}

static void
xcvt_even_total (const Request *q, Figures *f)
{
  f->at[V_TOTAL] -= q->interlaced ? 1 : 0;
}

static void
xcvt_short_sync (const Request *q, Figures *f)
{
  if (q->reduced || h_total (f) * 8 / 100 % 8 != 0)
    return;
  f->at[H_FRONT] += 8;
  f->at[H_SYNC] -= 8;
}

static void
xcvt_period_clock (const Request *q, Figures *f)
{
  if (q->reduced)
    f->at[CLOCK_HZ] = 4 * h_total (f) * field_lines (q, f) * q->rate_hz
                      / (1000000 - REDUCED_US * q->rate_hz) * STEP_HZ;
}

static void
xcvt_one_step_low (const Request *q, Figures *f)
{
  f->at[CLOCK_HZ] -= STEP_HZ;
}

static void
xcvt_1366 (const Request *q, Figures *f)
{
  if (q->height != 768 || (q->width != 1360 && q->width != 1366))
    return;
  f->at[H_ACTIVE] += 6;
  f->at[H_FRONT] -= 7;
  f->at[H_BACK] += 1;
}

typedef struct
{
  const char *name;
  void (*change) (const Request *q, Figures *f);
  guint listed; /* requests, as the file says */
  guint seen;
  char *only; /* one request; NULL: wherever it applies */
} Rule;

static Rule edid_rules[] = {
  { "aspect-exact", edid_aspect, 0, 0, NULL },
  { "width-as-asked", edid_width, 0, 0, NULL },
  { "rate-without-borders", edid_rate, 0, 0, NULL },
  { NULL, NULL, 0, 0, NULL },
};

static Rule xcvt_0_1_2_rules[] = {
  { "aspect-divisible", xcvt_aspect, 0, 0, NULL },
  { "back-porch-6-or-3", xcvt_back_porch_6_or_3, 0, 0, NULL },
  { "even-total", xcvt_even_total, 0, 0, NULL },
  { "sync-a-cell-short", xcvt_short_sync, 0, 0, NULL },
  { "clock-from-period", xcvt_period_clock, 0, 0, NULL },
  { "clock-on-the-step", xcvt_one_step_low, 0, 0, NULL },
  { "1360-is-1366", xcvt_1366, 0, 0, NULL },
  { NULL, NULL, 0, 0, NULL },
};

static Rule xcvt_0_1_3_rules[] = {
  { "aspect-divisible", xcvt_aspect, 0, 0, NULL },
  { "back-porch-6", xcvt_back_porch_6, 0, 0, NULL },
  { "even-total", xcvt_even_total, 0, 0, NULL },
  { "clock-from-period", xcvt_period_clock, 0, 0, NULL },
  { "clock-on-the-step", xcvt_one_step_low, 0, 0, NULL },
  { "1360-is-1366", xcvt_1366, 0, 0, NULL },
  { NULL, NULL, 0, 0, NULL },
};

/* @most: see check_rules(). */
typedef struct
{
  const char *version;
  const char *file;
  Rule *rules;
  guint most;
} XcvtList;

static const XcvtList xcvt_lists[] = {
  { "0.1.2", "libxcvt-0.1.2-differences.tsv", xcvt_0_1_2_rules, 1230 },
  { "0.1.3", "libxcvt-0.1.3-differences.tsv", xcvt_0_1_3_rules, 1119 },
};

/* Reads the file's rows into the rules. They must be the same ones. */
static void
load_rules (Rule *rules, const char *file)
{
  g_autoptr (BwTable) table = bw_test_table_new (file);
  guint n = 0;
  for (Rule *rule = rules; rule->name != NULL; rule++, n++)
    for (guint i = 0; i < table->rows->len; i++)
      if (strcmp (bw_test_cell (table, i, "rule"), rule->name) == 0)
        {
          const char *only = bw_test_cell (table, i, "only");
          rule->listed = (guint) bw_test_number (table, i, "requests");
          rule->only = *only != '\0' ? g_strdup (only) : NULL;
          g_assert_cmpstr (bw_test_cell (table, i, "cause"), !=, "");
        }
  g_assert_cmpuint (n, ==, table->rows->len);
}

static void
unload_rules (Rule *rules)
{
  for (; rules->name != NULL; rules++)
    g_clear_pointer (&rules->only, g_free);
}

/* Changes @f as the rules say. */
static void
apply_rules (Rule *rules, const Request *q, Figures *f)
{
  g_autofree char *text = request_text (q);
  for (; rules->name != NULL; rules++)
    {
      Figures before = *f;
      if (rules->only != NULL && strcmp (rules->only, text) != 0)
        continue;
      rules->change (q, f);
      rules->seen += memcmp (&before, f, sizeof before) != 0;
    }
}

/* A list may only shrink. Where a rule changes fewer requests than listed, the tool or the program
 * has moved and the file has to say so; @most was the sum when the file was made. */
static void
check_rules (const Rule *rules, guint most)
{
  guint sum = 0;
  for (; rules->name != NULL; rules++)
    {
      g_test_message ("%s: %u requests", rules->name, rules->seen);
      g_assert_cmpuint (rules->seen, ==, rules->listed);
      g_assert_cmpuint (rules->listed, >, 0);
      sum += rules->listed;
    }
  g_assert_cmpuint (sum, <=, most);
}

static void
assert_same (const char *tool, const Request *q, const Figures *expected, const Figures *said,
             gint64 clock_tolerance_hz)
{
  g_autofree char *text = request_text (q);
  for (guint i = 0; i < N_FIGURES; i++)
    {
      gint64 difference = expected->at[i] - said->at[i];
      if (ABS (difference) <= (i == CLOCK_HZ ? clock_tolerance_hz : i == FIELD_RATE_UHZ ? 1 : 0))
        continue;
      g_test_message ("%s, %s, %s: it says %" G_GINT64_FORMAT ", expected %" G_GINT64_FORMAT, tool,
                      text, figure_names[i], said->at[i], expected->at[i]);
      g_test_fail ();
    }
}

/* The tests */

static void
compare_edid_cvt (const Request *q, const char *record)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = compute (q, FALSE, &error);
  Figures said = parse_printed (record);
  BwRasterFigures f;

  g_assert_no_error (error);
  if (raster == NULL)
    return;
  Figures expected = figures_of (raster);
  bw_raster_figures (raster, &f);
  expected.at[FIELD_RATE_UHZ] = llround (f.field_rate_hz * 1e6);
  apply_rules (edid_rules, q, &expected);
  add_printed_total (&said, q);
  assert_same ("edid-decode", q, &expected, &said, 0);
}

static void
test_edid_cvt (void)
{
  g_autoptr (GArray) requests = requests_new (TRUE, TRUE);
  g_autoptr (GPtrArray) arguments = arguments_new ();
  load_rules (edid_rules, "edid-decode-cvt-differences.tsv");

  for (guint i = 0; i < requests->len; i++)
    add_arguments (arguments, &g_array_index (requests, Request, i), FALSE);
  g_autofree char *output = run_edid_decode (arguments);
  g_auto (GStrv) records = g_strsplit (output, "CVT:", -1);
  g_assert_cmpuint (requests->len, >=, 600);
  g_assert_cmpuint (g_strv_length (records), ==, requests->len + 1);
  if (g_strv_length (records) != requests->len + 1)
    return;
  for (guint i = 0; i < requests->len; i++)
    {
      g_autofree char *record = g_strconcat ("CVT:", records[i + 1], NULL);
      compare_edid_cvt (&g_array_index (requests, Request, i), record);
    }
  check_rules (edid_rules, 720);
  unload_rules (edid_rules);
}

/* The formula's clock is not rounded; edid-decode prints kilohertz. What it prints with a negative
 * porch is what must be refused, and nothing else. */
static guint
compare_edid_gtf (const Request *q)
{
  g_autoptr (GPtrArray) arguments = arguments_new ();
  g_autoptr (GError) error = NULL;
  g_autoptr (BwRaster) raster = compute (q, TRUE, &error);

  add_arguments (arguments, q, TRUE);
  g_autofree char *output = run_edid_decode (arguments);
  Figures said = parse_printed (output);
  add_printed_total (&said, q);
  said.at[FIELD_RATE_UHZ] = 0; /* follows from the clock in whole kilohertz */
  if (said.at[H_FRONT] < 0 || said.at[H_BACK] < 0 || said.at[V_BACK] < 0)
    {
      g_assert_null (raster);
      g_assert_error (error, BW_STANDARDS_ERROR, BW_STANDARDS_ERROR_NOT_REALISABLE);
      return 1;
    }
  g_assert_no_error (error);
  if (raster != NULL)
    {
      Figures ours = figures_of (raster);
      assert_same ("edid-decode", q, &ours, &said, 500);
    }
  return 0;
}

static void
test_edid_gtf (void)
{
  g_autoptr (GArray) requests = requests_new (FALSE, TRUE);
  guint refused = 0;
  for (guint i = 0; i < requests->len; i++)
    {
      const Request *q = &g_array_index (requests, Request, i);
      /* each is a run of its own: edid-decode takes one --gtf at a time */
      if ((q->margins && q->rate_hz != 60) || q->rate_hz == 72 || q->rate_hz == 100)
        continue;
      refused += compare_edid_gtf (q);
    }
  g_test_message ("%u requests are not realisable", refused);
  g_assert_cmpuint (refused, >, 0);
}

#ifdef BW_LIBXCVT_VERSION

/* libxcvt counts frames a second, doubles the whole field for the total, and leaves front porch
 * and sync as of one field. */
static Figures
ask_xcvt (const Request *q)
{
  struct libxcvt_mode_info *m = libxcvt_gen_mode_info (q->width, q->height,
                                                       (float) q->rate_hz / (q->interlaced ? 2 : 1),
                                                       q->reduced, q->interlaced);
  int fields = q->interlaced ? 2 : 1;
  Figures said = { {
      [CLOCK_HZ] = (gint64) m->dot_clock * 1000,
      [H_ACTIVE] = m->hdisplay,
      [H_FRONT] = m->hsync_start - (int) m->hdisplay,
      [H_SYNC] = m->hsync_end - m->hsync_start,
      [H_BACK] = m->htotal - m->hsync_end,
      [V_ACTIVE] = m->vdisplay,
      [V_FRONT] = m->vsync_start - (int) m->vdisplay,
      [V_SYNC] = m->vsync_end - m->vsync_start,
      [V_TOTAL] = m->vtotal,
      [H_POSITIVE] = (m->mode_flags & LIBXCVT_MODE_FLAG_HSYNC_POSITIVE) != 0,
      [V_POSITIVE] = (m->mode_flags & LIBXCVT_MODE_FLAG_VSYNC_POSITIVE) != 0,
  } };
  said.at[V_BACK] = m->vtotal / fields - q->height / fields - said.at[V_FRONT] - said.at[V_SYNC];
  free (m);
  return said;
}

/* A version that nobody has reviewed has no list, and fails. */
static const XcvtList *
xcvt_list (const char *version)
{
  for (gsize i = 0; i < G_N_ELEMENTS (xcvt_lists); i++)
    if (strcmp (xcvt_lists[i].version, version) == 0)
      return &xcvt_lists[i];
  g_error ("libxcvt %s has no list of its differences in tests/reference; review them", version);
}

static void
test_xcvt (void)
{
  g_autoptr (GArray) requests = requests_new (TRUE, FALSE);
  const XcvtList *list = xcvt_list (BW_LIBXCVT_VERSION);

  load_rules (list->rules, list->file);
  g_assert_cmpuint (requests->len, >=, 600);
  for (guint i = 0; i < requests->len; i++)
    {
      const Request *q = &g_array_index (requests, Request, i);
      g_autoptr (BwRaster) raster = compute (q, FALSE, NULL);
      g_assert_nonnull (raster);
      Figures expected = figures_of (raster);
      Figures said = ask_xcvt (q);
      apply_rules (list->rules, q, &expected);
      assert_same ("libxcvt", q, &expected, &said, 0);
    }
  check_rules (list->rules, list->most);
  unload_rules (list->rules);
}

#else

static void
test_xcvt (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (xcvt_lists); i++)
    {
      load_rules (xcvt_lists[i].rules, xcvt_lists[i].file);
      unload_rules (xcvt_lists[i].rules);
    }
  g_test_message ("libxcvt was not there when this was built; install it and build again");
  g_test_fail ();
}

#endif

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  g_test_add_func ("/standards-sweep/edid-decode/cvt", test_edid_cvt);
  g_test_add_func ("/standards-sweep/edid-decode/gtf", test_edid_gtf);
  g_test_add_func ("/standards-sweep/libxcvt", test_xcvt);
  return g_test_run ();
}
