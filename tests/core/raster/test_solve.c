/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "test_solve.h"

/* The solver: what follows, what is one too many, what cannot be. Whole rasters are in
 * test_solve-rasters.c. */

#define ENTRIES_MAX 12

/* Worked examples */

typedef struct
{
  BwFigure figure;
  double value;
  double tolerance;
} Follows;

typedef struct
{
  const char *name;
  gboolean interlaced;
  Entry entries[ENTRIES_MAX];
  Follows follows[ENTRIES_MAX]; /* ends where the tolerance is zero and the value too */
} Worked;

static const Worked worked[] = {
  /* SMPTE 170M-2004 11.2, 11.3 and ITU-R BT.601-5: 13.5 MHz, 858 samples a line, 525 lines:
   * 15 734.265 734 Hz, 59.940 059 94 Hz, 63.555 556 us; 720 samples are 53.333 us, from the end of
   * the active line to 0H are 16, from 0H to its start 122 */
  { "601-525",
    TRUE,
    { { F (PIXEL_CLOCK), "13.5 MHz" },
      { F (H_TOTAL), "858 px" },
      { F (LINES_PER_FRAME), "525 lines" },
      { F (H_ACTIVE), "720 px" },
      { F (H_FRONT_PORCH), "16 px" } },
    { { F (LINE_RATE), 15734.265734, 1e-6 },
      { F (LINE_PERIOD), 63.555556e-6, 0.5e-12 },
      { F (FIELD_RATE), 59.94005994, 0.5e-8 },
      { F (FRAME_RATE), 29.97002997, 0.5e-8 },
      { F (LINES_PER_FIELD), 262.5, 1e-9 },
      { F (H_ACTIVE_TIME), 53.333e-6, 0.5e-9 },
      { F (H_FRONT_PORCH_TIME), 1.185e-6, 0.5e-9 },
      { F (H_BLANKING), 138, 1e-9 } } },
  /* the same at 864 samples and 625 lines: 64 us, 50 Hz, 12 and 132 samples */
  { "601-625",
    TRUE,
    { { F (H_ACTIVE), "720 px" },
      { F (H_BLANKING), "144 px" },
      { F (LINE_PERIOD), "64 us" },
      { F (FIELD_RATE), "50 Hz" },
      { F (H_FRONT_PORCH_TIME), "0.889 us" } },
    { { F (PIXEL_CLOCK), 13.5e6, 110e3 },
      { F (H_TOTAL), 864, 1e-9 },
      { F (LINES_PER_FRAME), 625, 1e-9 },
      { F (H_BLANKING_TIME), 10.667e-6, 90e-9 },
      { F (H_FRONT_PORCH), 12, 1e-9 } } },
  /* SMPTE 170M-2004 tables 2 and 3: 1.5 + 4.7 + 4.5 us of 63.555 556 us are 10.7 us, leaving
   * 52.856 us; field blanking of 20 lines leaves 242.5 of 262.5 */
  { "170M-in-time",
    TRUE,
    { { F (LINE_RATE), "15.734265734 kHz" },
      { F (H_FRONT_PORCH_TIME), "1.5 us" },
      { F (H_SYNC_TIME), "4.7 us" },
      { F (H_BACK_PORCH_TIME), "4.5 us" },
      { F (LINES_PER_FRAME), "525 lines" },
      { F (V_BLANKING), "20 lines" },
      { F (V_FRONT_PORCH), "3 lines" },
      { F (V_SYNC), "3 lines" } },
    { { F (H_BLANKING_TIME), 10.7e-6, 1e-15 },
      { F (H_ACTIVE_TIME), 52.856e-6, 0.5e-9 },
      { F (H_SYNC_SHARE), 0.073951, 1e-6 },
      { F (H_ACTIVE_SHARE), 0.831643, 1e-6 },
      { F (V_ACTIVE), 242.5, 1e-9 },
      { F (V_BACK_PORCH), 14, 1e-9 },
      { F (FIELD_RATE), 59.94005994, 1e-8 } } },
  /* CTA-861-H format 1 */
  { "cta-1",
    FALSE,
    { { F (PIXEL_CLOCK), "25.175 MHz" },
      { F (H_ACTIVE), "640 px" },
      { F (H_FRONT_PORCH), "16 px" },
      { F (H_SYNC), "96 px" },
      { F (H_BACK_PORCH), "48 px" },
      { F (V_ACTIVE), "480 lines" },
      { F (V_BLANKING), "45 lines" } },
    { { F (H_TOTAL), 800, 1e-9 },
      { F (LINE_RATE), 31468.75, 1e-6 },
      { F (FIELD_RATE), 59.940476, 1e-6 },
      { F (LINES_PER_FRAME), 525, 1e-9 },
      { F (H_BLANKING_SHARE), 0.2, 1e-12 } } },
  /* Total lines follow from the two rates, read as a counter shows them: SMPTE 170M-2004 11.3 has
   * 262.5 lines to a field. */
  { "lines-interlaced",
    TRUE,
    { { F (LINE_RATE), "15.734 kHz" }, { F (FIELD_RATE), "59.94 Hz" } },
    { { F (LINES_PER_FRAME), 525, 1e-9 }, { F (LINES_PER_FIELD), 262.5, 1e-9 } } },
  { "lines-progressive",
    FALSE,
    { { F (LINE_RATE), "15.734 kHz" }, { F (FIELD_RATE), "59.94 Hz" } },
    { { F (LINES_PER_FRAME), 262.5, 1e-9 }, { F (LINES_PER_FIELD), 262.5, 1e-9 } } },
  /* ITU-R BT.470-6: 15 625 Hz and 50 Hz */
  { "lines-625",
    TRUE,
    { { F (LINE_RATE), "15625 Hz" }, { F (FRAME_RATE), "25 Hz" } },
    { { F (LINES_PER_FRAME), 625, 1e-9 }, { F (FIELD_RATE), 50, 0.01 } } },
  /* arithmetic: an interval in pixels and in time gives the clock, 62 px / 2.2963 us = 27 MHz */
  { "clock-from-an-interval",
    FALSE,
    { { F (H_SYNC), "62 px" },
      { F (H_SYNC_TIME), "2.296296 us" },
      { F (LINE_RATE), "31468.53 Hz" } },
    { { F (PIXEL_CLOCK), 27e6, 10 }, { F (H_TOTAL), 858, 1e-9 } } },
  /* arithmetic: 720 px are five sixths of 864, without any rate */
  { "total-from-a-share",
    FALSE,
    { { F (H_ACTIVE), "720 px" }, { F (H_ACTIVE_SHARE), "83.3333333 %" } },
    { { F (H_TOTAL), 864, 1e-9 }, { F (H_BLANKING), 144, 1e-9 } } },
};

static void
test_worked (gconstpointer data)
{
  const Worked *w = data;
  BwSolver solver = { .interlaced = w->interlaced };
  g_autoptr (GError) error = NULL;
  guint32 redundant = 0;

  enter_all (&solver, w->entries);
  bw_solver_run (&solver, &redundant, &error);
  g_assert_no_error (error);
  g_assert_cmphex (redundant, ==, 0);
  assert_finite (&solver);
  for (const Follows *f = w->follows; f->tolerance > 0; f++)
    assert_figure (&solver, f->figure, f->value, f->tolerance);
}

/* What comes out near no whole number stays a fraction: 10 MHz × 64.06 and 64.04 µs are 640.6 and 640.4
 * pixels, give or take 0.05 for the last digit that was written. */
static void
test_fraction (void)
{
  static const struct
  {
    const char *period;
    double pixels;
  } cases[] = { { "64.06 us", 640.6 }, { "64.04 us", 640.4 }, { "64.00 us", 640 } };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwSolver solver = { 0 };
      guint32 redundant;
      enter_all (&solver, (const Entry[]){ { F (PIXEL_CLOCK), "10 MHz" },
                                           { F (LINE_PERIOD), cases[i].period },
                                           { 0, NULL } });
      g_assert_true (bw_solver_run (&solver, &redundant, NULL));
      assert_figure (&solver, F (H_TOTAL), cases[i].pixels, 1e-6);
    }
}

/* What moves when one value is typed: forgetting it takes away what followed from it. */
static void
test_forget (void)
{
  BwSolver solver = { .interlaced = TRUE };
  guint32 redundant;

  enter_all (&solver, worked[0].entries);
  g_assert_true (bw_solver_run (&solver, &redundant, NULL));
  bw_solver_forget (&solver, F (LINES_PER_FRAME));
  g_assert_true (bw_solver_run (&solver, &redundant, NULL));
  g_assert_false (solver.at[F (FIELD_RATE)].known);
  assert_figure (&solver, F (LINE_RATE), 15734.265734, 1e-6);
  enter_all (&solver, (const Entry[]){ { F (LINES_PER_FRAME), "263 lines" }, { 0, NULL } });
  g_assert_true (bw_solver_run (&solver, &redundant, NULL));
  assert_figure (&solver, F (FRAME_RATE), 13.5e6 / 858 / 263, 1e-9);
}

/* Too much */

#define BIT(name) (1u << BW_FIGURE_##name)

typedef struct
{
  const char *name;
  gboolean interlaced;
  Entry entries[ENTRIES_MAX];
  guint32 redundant;
} Redundant;

/* Each named figure follows from the others that were entered, and agrees (arithmetic). */
static const Redundant redundant_cases[] = {
  { "two-rates-and-lines",
    TRUE,
    { { F (LINE_RATE), "15.625 kHz" },
      { F (FIELD_RATE), "50 Hz" },
      { F (LINES_PER_FRAME), "625 lines" } },
    BIT (LINE_RATE) | BIT (FIELD_RATE) | BIT (LINES_PER_FRAME) },
  { "rate-and-period",
    FALSE,
    { { F (LINE_RATE), "15.625 kHz" }, { F (LINE_PERIOD), "64 us" }, { F (FIELD_RATE), "50 Hz" } },
    BIT (LINE_RATE) | BIT (LINE_PERIOD) },
  { "frame-and-field-rate",
    TRUE,
    { { F (FRAME_RATE), "25 Hz" }, { F (FIELD_RATE), "50 Hz" }, { F (H_TOTAL), "864 px" } },
    BIT (FRAME_RATE) | BIT (FIELD_RATE) },
  { "blanking-and-its-parts",
    FALSE,
    { { F (H_BLANKING), "160 px" },
      { F (H_FRONT_PORCH), "16 px" },
      { F (H_SYNC), "96 px" },
      { F (H_BACK_PORCH), "48 px" },
      { F (V_SYNC), "2 lines" } },
    BIT (H_BLANKING) | BIT (H_FRONT_PORCH) | BIT (H_SYNC) | BIT (H_BACK_PORCH) },
  /* clock, total and period: the period is reached through a line rate that nobody entered */
  { "through-a-figure-not-entered",
    FALSE,
    { { F (PIXEL_CLOCK), "13.5 MHz" }, { F (H_TOTAL), "864 px" }, { F (LINE_PERIOD), "64 us" } },
    BIT (PIXEL_CLOCK) | BIT (H_TOTAL) | BIT (LINE_PERIOD) },
  { "pixels-and-time",
    FALSE,
    { { F (PIXEL_CLOCK), "27 MHz" },
      { F (H_SYNC), "62 px" },
      { F (H_SYNC_TIME), "2.2963 us" },
      { F (V_ACTIVE), "480 lines" } },
    BIT (PIXEL_CLOCK) | BIT (H_SYNC) | BIT (H_SYNC_TIME) },
};

static void
test_redundant (gconstpointer data)
{
  const Redundant *c = data;
  BwSolver solver = { .interlaced = c->interlaced };
  g_autoptr (GError) error = NULL;
  guint32 redundant = 0;

  enter_all (&solver, c->entries);
  bw_solver_run (&solver, &redundant, &error);
  g_assert_no_error (error);
  g_assert_cmphex (redundant, ==, c->redundant);
}

/* Contradictions */

typedef struct
{
  const char *name;
  gboolean interlaced;
  Entry entries[ENTRIES_MAX];
  BwSolveError code;
  const char *words[ENTRIES_MAX]; /* what the sentence must name */
} Refused;

static const Refused refused_cases[] = {
  { "lines-against-rates",
    TRUE,
    { { F (LINE_RATE), "15.625 kHz" },
      { F (FIELD_RATE), "50 Hz" },
      { F (LINES_PER_FRAME), "525 lines" },
      { F (H_ACTIVE), "720 px" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "line rate", "15.625 kHz", "field rate", "50 Hz", "lines of a frame", "525 lines" } },
  { "period-against-rate",
    FALSE,
    { { F (LINE_RATE), "15.734 kHz" }, { F (LINE_PERIOD), "64.00 us" }, { F (V_SYNC), "3 lines" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "line rate", "15.734 kHz", "line period", "64 µs" } },
  { "parts-against-blanking",
    FALSE,
    { { F (H_BLANKING), "160 px" },
      { F (H_FRONT_PORCH), "16 px" },
      { F (H_SYNC), "96 px" },
      { F (H_BACK_PORCH), "49 px" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "160 px", "16 px", "96 px", "49 px" } },
  { "frames-against-fields",
    TRUE,
    { { F (FRAME_RATE), "50 Hz" }, { F (FIELD_RATE), "50 Hz" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "frame rate", "field rate", "50 Hz" } },
  { "time-against-pixels",
    FALSE,
    { { F (PIXEL_CLOCK), "27.000 MHz" }, { F (H_SYNC), "62 px" }, { F (H_SYNC_TIME), "2.35 us" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "27 MHz", "62 px", "2.35 µs" } },
  /* 59.94 Hz is not 60 Hz: 1000 parts in a million apart, more than either is uncertain */
  { "59.94-is-not-60",
    FALSE,
    { { F (LINE_RATE), "31.5 kHz" },
      { F (LINES_PER_FIELD), "525 lines" },
      { F (FIELD_RATE), "59.94 Hz" } },
    BW_SOLVE_ERROR_CONTRADICTION,
    { "31.5 kHz", "525 lines", "59.94 Hz" } },
  { "active-above-total",
    FALSE,
    { { F (H_ACTIVE), "720 px" }, { F (H_TOTAL), "700 px" } },
    BW_SOLVE_ERROR_NEGATIVE,
    { "line blanking", "720 px", "700 px" } },
  { "shares-above-one",
    FALSE,
    { { F (H_SYNC_SHARE), "60 %" },
      { F (H_FRONT_PORCH_SHARE), "30 %" },
      { F (H_BACK_PORCH_SHARE), "20 %" } },
    BW_SOLVE_ERROR_NEGATIVE,
    { "60 %", "30 %", "20 %" } },
  { "lines-below-zero",
    FALSE,
    { { F (LINES_PER_FIELD), "525 lines" },
      { F (V_ACTIVE), "480 lines" },
      { F (V_FRONT_PORCH), "40 lines" },
      { F (V_SYNC), "6 lines" } },
    BW_SOLVE_ERROR_NEGATIVE,
    { "525 lines", "480 lines", "40 lines", "6 lines" } },
  { "no-line-rate",
    FALSE,
    { { F (LINE_RATE), "0 Hz" }, { F (H_SYNC_TIME), "2 us" } },
    BW_SOLVE_ERROR_NEGATIVE,
    { "line rate", "0 Hz" } },
};

/* Numbers are kept together with their units by spaces of another kind. */
static char *
plain_spaces (const char *text)
{
  GString *plain = g_string_new (NULL);
  for (; *text != '\0'; text = g_utf8_next_char (text))
    {
      gunichar c = g_utf8_get_char (text);
      g_string_append_unichar (plain, g_unichar_isspace (c) ? ' ' : c);
    }
  return g_string_free (plain, FALSE);
}

static void
test_refused (gconstpointer data)
{
  const Refused *c = data;
  BwSolver solver = { .interlaced = c->interlaced };
  g_autoptr (GError) error = NULL;
  guint32 redundant = 0;

  enter_all (&solver, c->entries);
  g_assert_false (bw_solver_run (&solver, &redundant, &error));
  g_assert_error (error, BW_SOLVE_ERROR, (int) c->code);
  if (error != NULL)
    {
      g_autofree char *message = plain_spaces (error->message);
      bw_test_assert_words (message, c->words);
    }
  assert_finite (&solver);
  g_clear_error (&error);
  g_assert_null (bw_solver_raster (&solver, &error));
  g_assert_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_INCOMPLETE);
}

/* Figures that agree to what is written do not contradict: 15.7 kHz and 60 Hz are right for 262. */
static void
test_written_places (void)
{
  BwSolver solver = { 0 };
  g_autoptr (GError) error = NULL;
  guint32 redundant;

  enter_all (&solver, (const Entry[]){ { F (LINE_PERIOD), "63.6 us" },
                                       { F (H_SYNC_TIME), "4.7 us" },
                                       { F (H_SYNC_SHARE), "7.4 %" },
                                       { 0, NULL } });
  bw_solver_run (&solver, &redundant, &error);
  g_assert_no_error (error);
  g_assert_cmphex (redundant, ==, BIT (LINE_PERIOD) | BIT (H_SYNC_TIME) | BIT (H_SYNC_SHARE));
}

/* What is written is right to half of its last place, whatever the digit: 64.0 µs is 15613 to 15637
 * Hz, 63.9 µs is 15637 to 15662 Hz. A rate is right to 100 ppm at most (our own rule). */
static void
test_last_digit (void)
{
  static const struct
  {
    const char *period;
    const char *rate;
    gboolean agree;
  } cases[] = {
    { "64.0 us", "15.6140 kHz", TRUE },   { "64.0 us", "15.6360 kHz", TRUE },
    { "64.0 us", "15.6000 kHz", FALSE },  { "64.0 us", "15.6500 kHz", FALSE },
    { "63.9 us", "15.6385 kHz", TRUE },   { "63.9 us", "15.6600 kHz", TRUE },
    { "63.9 us", "15.6250 kHz", FALSE },  { "64 us", "15.7400 kHz", TRUE },
    { "64.000 us", "15.6251 kHz", TRUE }, { "64.0000 us", "16 kHz", FALSE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwSolver solver = { 0 };
      g_autoptr (GError) error = NULL;
      guint32 redundant;
      enter_all (&solver, (const Entry[]){ { F (LINE_PERIOD), cases[i].period },
                                           { F (LINE_RATE), cases[i].rate },
                                           { 0, NULL } });
      gboolean agree = bw_solver_run (&solver, &redundant, &error);
      if (agree != cases[i].agree)
        g_test_message ("%s and %s", cases[i].period, cases[i].rate);
      g_assert_cmpint (agree, ==, cases[i].agree);
      if (!agree)
        g_assert_error (error, BW_SOLVE_ERROR, BW_SOLVE_ERROR_CONTRADICTION);
    }
}

/* 15700 Hz / 60 Hz = 261.667 lines are no whole number: nothing makes 261 or 262 of them. */
static void
test_no_whole_lines (void)
{
  static const char *const rates[] = { "15700.00 Hz", "15730.00 Hz" };
  static const double lines[] = { 261.6666667, 262.1666667 };
  for (int i = 0; i < 2; i++)
    {
      BwSolver solver = { 0 };
      g_autoptr (GError) error = NULL;
      guint32 redundant;
      enter_all (&solver, (const Entry[]){ { F (LINE_RATE), rates[i] },
                                           { F (FIELD_RATE), "60.00000 Hz" },
                                           { 0, NULL } });
      g_assert_true (bw_solver_run (&solver, &redundant, &error));
      assert_figure (&solver, F (LINES_PER_FIELD), lines[i], 1e-6);
    }
}

static void
test_bad_entry (void)
{
  const struct
  {
    BwFigure figure;
    const char *text;
    GQuark domain;
    int code;
  } bad[] = {
    { F (H_SYNC), "-1 px", BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE },
    { F (LINE_RATE), "-15.625 kHz", BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE },
    { F (V_SYNC),
      "\xe2\x88\x92"
      "3 lines",
      BW_SOLVE_ERROR, BW_SOLVE_ERROR_NEGATIVE }, /* a minus sign, U+2212 */
    { F (LINE_RATE), "64 us", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_UNIT },
    { F (LINE_RATE), "15625", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NO_UNIT },
    { F (H_SYNC_SHARE), "7,345 %", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_DECIMAL_MARK },
    { F (PIXEL_CLOCK), "1e400 Hz", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_RANGE },
    { F (PIXEL_CLOCK), "nan MHz", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_NUMBER },
    { F (PIXEL_CLOCK), "", BW_QUANTITY_ERROR, BW_QUANTITY_ERROR_EMPTY },
  };
  BwSolver solver = { 0 };
  enter_all (&solver, (const Entry[]){ { F (H_SYNC), "96 px" }, { 0, NULL } });
  BwSolver before = solver;
  for (gsize i = 0; i < G_N_ELEMENTS (bad); i++)
    {
      g_autoptr (GError) error = NULL;
      g_assert_false (bw_solver_enter (&solver, bad[i].figure, bad[i].text, BW_FILE_MARK, &error));
      g_assert_error (error, bad[i].domain, bad[i].code);
      g_assert_cmpmem (&solver, sizeof solver, &before, sizeof before);
    }
}

/* A raster is refused with a reason where it is not whole, not complete or not possible. */
static void
test_raster_refused (void)
{
  static const Entry not_whole[] = {
    { F (PIXEL_CLOCK), "27 MHz" },  { F (H_ACTIVE), "720 px" },
    { F (H_SYNC), "62.5 px" },      { F (H_FRONT_PORCH), "16 px" },
    { F (H_BACK_PORCH), "60 px" },  { F (V_ACTIVE), "480 lines" },
    { F (V_BLANKING), "45 lines" }, { F (V_FRONT_PORCH), "9 lines" },
    { F (V_SYNC), "6 lines" },      { 0, NULL },
  };
  static const Entry nothing[] = { { 0, NULL } };
  static const Entry beyond[] = {
    { F (PIXEL_CLOCK), "1e30 Hz" }, { F (H_ACTIVE), "720 px" },
    { F (H_SYNC), "62 px" },        { F (H_FRONT_PORCH), "16 px" },
    { F (H_BACK_PORCH), "60 px" },  { F (V_ACTIVE), "480 lines" },
    { F (V_BLANKING), "45 lines" }, { F (V_FRONT_PORCH), "9 lines" },
    { F (V_SYNC), "6 lines" },      { 0, NULL },
  };
  static const Entry zeros[] = {
    { F (PIXEL_CLOCK), "27 MHz" },   { F (H_ACTIVE), "0 px" },
    { F (H_SYNC), "0 px" },          { F (H_FRONT_PORCH), "0 px" },
    { F (H_BACK_PORCH), "0 px" },    { F (V_ACTIVE), "0 lines" },
    { F (V_BACK_PORCH), "0 lines" }, { F (V_FRONT_PORCH), "0 lines" },
    { F (V_SYNC), "0 lines" },       { 0, NULL },
  };
  const struct
  {
    const Entry *entries;
    BwSolveError code;
  } cases[] = {
    { not_whole, BW_SOLVE_ERROR_NOT_WHOLE },
    { nothing, BW_SOLVE_ERROR_INCOMPLETE },
    { beyond, BW_SOLVE_ERROR_INCOMPLETE },
    { zeros, BW_SOLVE_ERROR_INCOMPLETE },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (cases); i++)
    {
      BwSolver solver = { 0 };
      g_autoptr (GError) error = NULL;
      guint32 redundant;
      enter_all (&solver, cases[i].entries);
      bw_solver_run (&solver, &redundant, NULL);
      g_assert_null (bw_solver_raster (&solver, &error));
      g_assert_error (error, BW_SOLVE_ERROR, (int) cases[i].code);
    }
}

static void
add_cases (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (worked); i++)
    {
      g_autofree char *path = g_strconcat ("/solve/worked/", worked[i].name, NULL);
      g_test_add_data_func (path, &worked[i], test_worked);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (redundant_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/solve/redundant/", redundant_cases[i].name, NULL);
      g_test_add_data_func (path, &redundant_cases[i], test_redundant);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (refused_cases); i++)
    {
      g_autofree char *path = g_strconcat ("/solve/refused/", refused_cases[i].name, NULL);
      g_test_add_data_func (path, &refused_cases[i], test_refused);
    }
}

/* 63.6 − 52.9 − 4.7 − 6.05 µs are −50 ns, and half of the last place of each 50 + 50 + 50 + 5 = 155 ns: a porch that is
 * below zero by less than it is uncertain may be there. Of a line of 63.6 ± 0.05 µs it is
 * −0.0786 %, ± 155/63600 and 50 × 50/63600² of it. */
static void
test_below_zero_within_its_uncertainty (void)
{
  static const Entry entries[] = { { F (LINE_PERIOD), "63.6 us" },
                                   { F (H_ACTIVE_TIME), "52.9 us" },
                                   { F (H_SYNC_TIME), "4.7 us" },
                                   { F (H_BACK_PORCH_TIME), "6.05 us" },
                                   { 0, NULL } };
  g_autoptr (GError) error = NULL;
  guint32 redundant;
  BwSolver solver = { 0 };
  enter_all (&solver, entries);
  g_assert_true (bw_solver_run (&solver, &redundant, &error));
  g_assert_no_error (error);
  const BwSolved *porch = &solver.at[F (H_FRONT_PORCH_TIME)];
  const BwSolved *share = &solver.at[F (H_FRONT_PORCH_SHARE)];
  g_assert_cmpfloat_with_epsilon (porch->value, -50e-9, 1e-13);
  g_assert_cmpfloat_with_epsilon (porch->uncertainty, 155e-9, 1e-13);
  g_assert_cmpfloat_with_epsilon (share->value, -50.0 / 63600, 1e-9);
  g_assert_cmpfloat_with_epsilon (share->uncertainty, 155.0 / 63600 + 50.0 * 50 / 63600 / 63600, 1e-9);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_cases ();
  g_test_add_func ("/solve/forget", test_forget);
  g_test_add_func ("/solve/written-places", test_written_places);
  g_test_add_func ("/solve/last-digit", test_last_digit);
  g_test_add_func ("/solve/no-whole-lines", test_no_whole_lines);
  g_test_add_func ("/solve/bad-entry", test_bad_entry);
  g_test_add_func ("/solve/raster-refused", test_raster_refused);
  g_test_add_func ("/solve/fraction", test_fraction);
  g_test_add_func ("/solve/below-zero-within-its-uncertainty", test_below_zero_within_its_uncertainty);
  return g_test_run ();
}
