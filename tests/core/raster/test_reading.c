/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "core/raster/reading.h"

#include <math.h>
#include <string.h>

#include "support.h"

/* Readings against tolerance: the shipped limits against the standards, and the judgement. */

/* What the standards lay down, typed again from them and from nothing in the program. Times in
 * microseconds, levels in volts. The lower and upper end stand as the standard prints them or, where
 * it prints a tolerance, as nominal and tolerance give them; a nominal value that the table does
 * not have is one of SMPTE 170M or, in system N, the middle of the range. */
typedef struct
{
  const char *standard;
  BwReadingKind kind;
  double nominal;
  double low;
  double high;
} Laid;

#define R(name) BW_READING_##name
#define IRE (1.0 / 140)        /* SMPTE 170M-2004 15.4: 140 IRE are 1 V */
#define CYCLE_525 (88.0 / 315) /* SMPTE 170M-2004 11.2: subcarrier 5 MHz × 63/88 = 315/88 MHz */

/* A line period of @us with a tolerance of the line frequency, as a share. */
#define PERIOD(us, share) (us), (us) / (1 + (share)), (us) / (1 - (share))
#define AROUND(value, tolerance) (value), (value) - (tolerance), (value) + (tolerance)

static const Laid laid_down[] = {
  /* SMPTE 170M-2004 tables 1, 2 and 3; the tolerance of the line frequency is that of ITU-R
   * BT.470-6 table 1, ±0.0003 % */
  { "smpte-170m", R (LINE_PERIOD), PERIOD (572.0 / 9, 3e-6) },
  { "smpte-170m", R (LINE_BLANKING), 10.7, 10.7 - 0.2, 10.7 + 0.3 }, /* table 2: 1.5 ± 0.1 + 9.2 */
  { "smpte-170m", R (FRONT_PORCH), AROUND (1.5, 0.1) },              /* table 2 */
  { "smpte-170m", R (LINE_SYNC), AROUND (4.7, 0.1) },                /* table 2 */
  { "smpte-170m", R (SYNC_TO_PICTURE), 9.2, 9.1, 9.4 },              /* table 2: +0.2 −0.1 */
  { "smpte-170m", R (BURST_LENGTH), 9 * CYCLE_525, 8 * CYCLE_525, 10 * CYCLE_525 }, /* table 2 */
  { "smpte-170m", R (EQUALISING_WIDTH), AROUND (2.3, 0.1) },                        /* table 3 */
  { "smpte-170m", R (SERRATION_WIDTH), AROUND (4.7, 0.1) },                         /* table 3 */
  { "smpte-170m", R (SYNC_RISE), AROUND (0.140, 0.020) },                           /* table 2 */
  { "smpte-170m", R (BURST_RISE), 0.300, 0.200, 0.500 },       /* table 2: +200 −100 ns */
  { "smpte-170m", R (FIELD_BLANKING), AROUND (1272.61, 0.1) }, /* table 3: 20 lines + 1.5 us */
  { "smpte-170m", R (WHITE_LEVEL), 100 * IRE, 99 * IRE, 101 * IRE },  /* table 1 */
  { "smpte-170m", R (SETUP_LEVEL), 7.5 * IRE, 6.5 * IRE, 8.5 * IRE }, /* table 1 */
  { "smpte-170m", R (SYNC_LEVEL), 40 * IRE, 39 * IRE, 41 * IRE },     /* table 1 */
  { "smpte-170m", R (BURST_LEVEL), 40 * IRE, 39 * IRE, 41 * IRE },    /* table 1, peak to peak */

  /* ITU-R BT.470-6 tables 1-1 and 1-2, values for M/NTSC */
  { "bt470-m-ntsc", R (LINE_BLANKING), AROUND (10.9, 0.2) },       /* a */
  { "bt470-m-ntsc", R (FRONT_PORCH), 1.5, 1.27, 2.22 },            /* c */
  { "bt470-m-ntsc", R (LINE_SYNC), AROUND (4.7, 0.1) },            /* d */
  { "bt470-m-ntsc", R (SYNC_TO_PICTURE), 9.2, 9.2, 10.3 },         /* b */
  { "bt470-m-ntsc", R (BURST_START), 5.3, 4.71, 5.71 },            /* g */
  { "bt470-m-ntsc", R (BURST_LENGTH), 9 * CYCLE_525, 2.23, 3.11 }, /* h */
  { "bt470-m-ntsc", R (EQUALISING_WIDTH), AROUND (2.3, 0.1) },     /* p */
  { "bt470-m-ntsc", R (SERRATION_WIDTH), AROUND (4.7, 0.1) },      /* r */
  { "bt470-m-ntsc", R (SYNC_RISE), 0.140, 0, 0.25 },               /* f: at most 0.25 us */

  /* ITU-R BT.470-6 table 1-1, values for M in general. The table gives 15 750 Hz without a
   * tolerance that was seen, so that no range of the line period stands here. */
  { "bt470-m-mono", R (LINE_BLANKING), 10.9, 10.2, 11.4 }, /* a */
  { "bt470-m-mono", R (FRONT_PORCH), 1.5, 1.27, 2.54 },    /* c */
  { "bt470-m-mono", R (LINE_SYNC), 4.7, 4.19, 5.71 },      /* d */
  { "bt470-m-mono", R (SYNC_TO_PICTURE), 9.2, 8.9, 10.3 }, /* b */

  /* ITU-R BT.1700 part B, 625-line PAL; the front porch is that of ITU-R BT.470-6 */
  { "bt1700-pal", R (LINE_PERIOD), PERIOD (64, 2e-7) },       /* ±0.00002 % */
  { "bt1700-pal", R (LINE_BLANKING), 12, 11.7, 12 },          /* a: +0 −0.3 */
  { "bt1700-pal", R (FRONT_PORCH), 1.5, 1.5, 1.8 },           /* c: +0.3 −0 */
  { "bt1700-pal", R (LINE_SYNC), AROUND (4.7, 0.2) },         /* d */
  { "bt1700-pal", R (BURST_START), AROUND (5.6, 0.1) },       /* g */
  { "bt1700-pal", R (BURST_LENGTH), AROUND (2.25, 0.23) },    /* h */
  { "bt1700-pal", R (EQUALISING_WIDTH), AROUND (2.35, 0.1) }, /* p */
  { "bt1700-pal", R (BROAD_WIDTH), AROUND (27.3, 0.1) },      /* q */
  { "bt1700-pal", R (SERRATION_WIDTH), AROUND (4.7, 0.1) },   /* r */
  { "bt1700-pal", R (SYNC_RISE), AROUND (0.2, 0.1) },         /* f */
  { "bt1700-pal", R (BURST_LEVEL), AROUND (0.300, 0.030) },   /* table 2 */

  /* ITU-R BT.470-6 tables 1, 1-1 and 1-2, systems B, D, G, H and K */
  { "bt470-bg-pal", R (LINE_PERIOD), PERIOD (64, 1e-6) },       /* ±0.0001 %, colour */
  { "bt470-bg-pal", R (LINE_BLANKING), 12, 11.7, 12 },          /* a */
  { "bt470-bg-pal", R (FRONT_PORCH), 1.5, 1.5, 1.8 },           /* c */
  { "bt470-bg-pal", R (LINE_SYNC), AROUND (4.7, 0.2) },         /* d */
  { "bt470-bg-pal", R (BURST_START), AROUND (5.6, 0.1) },       /* g */
  { "bt470-bg-pal", R (BURST_LENGTH), AROUND (2.25, 0.23) },    /* h */
  { "bt470-bg-pal", R (EQUALISING_WIDTH), AROUND (2.35, 0.1) }, /* p */
  { "bt470-bg-pal", R (SERRATION_WIDTH), AROUND (4.7, 0.2) },   /* r */
  { "bt470-bg-pal", R (SYNC_RISE), AROUND (0.2, 0.1) },         /* f */

  /* CCIR Report 624-4 with notes 5 and 6, system I */
  { "report624-i-pal", R (LINE_PERIOD), PERIOD (64, 2e-7) },       /* ±0.00002 % */
  { "report624-i-pal", R (FRONT_PORCH), AROUND (1.65, 0.1) },      /* c, note 6 */
  { "report624-i-pal", R (LINE_SYNC), AROUND (4.7, 0.2) },         /* d */
  { "report624-i-pal", R (BURST_START), AROUND (5.6, 0.1) },       /* g */
  { "report624-i-pal", R (BURST_LENGTH), AROUND (2.25, 0.23) },    /* h */
  { "report624-i-pal", R (EQUALISING_WIDTH), AROUND (2.35, 0.1) }, /* p */
  { "report624-i-pal", R (BROAD_WIDTH), AROUND (27.3, 0.1) },      /* q */
  { "report624-i-pal", R (SERRATION_WIDTH), AROUND (4.7, 0.1) },   /* r */
  { "report624-i-pal", R (SYNC_RISE), AROUND (0.25, 0.05) },       /* f */

  /* ITU-R BT.1700 part B, 525-line PAL */
  { "bt1700-pal-m", R (LINE_PERIOD), PERIOD (572.0 / 9, 3e-6) }, /* ±0.0003 % */
  { "bt1700-pal-m", R (FRONT_PORCH), AROUND (1.5, 0.1) },        /* c */
  { "bt1700-pal-m", R (LINE_SYNC), AROUND (4.7, 0.1) },          /* d */
  { "bt1700-pal-m", R (SYNC_TO_PICTURE), 9.2, 9.1, 9.4 },        /* b */
  { "bt1700-pal-m", R (BURST_LENGTH), AROUND (2.52, 0.28) },     /* h */
  { "bt1700-pal-m", R (EQUALISING_WIDTH), AROUND (2.3, 0.1) },   /* p */
  { "bt1700-pal-m", R (SERRATION_WIDTH), AROUND (4.7, 0.1) },    /* r */
  { "bt1700-pal-m", R (SYNC_RISE), AROUND (0.140, 0.020) },      /* f */

  /* ITU-R BT.470-6 tables 1-1 and 1-2, values for N in general: ranges alone */
  { "bt470-n", R (LINE_BLANKING), 10.88, 10.24, 11.52 }, /* a */
  { "bt470-n", R (FRONT_PORCH), 1.92, 1.28, 2.56 },      /* c */
  { "bt470-n", R (LINE_SYNC), 4.99, 4.22, 5.76 },        /* d */
  { "bt470-n", R (SYNC_TO_PICTURE), 9.6, 8.96, 10.24 },  /* b */
  { "bt470-n", R (EQUALISING_WIDTH), 2.43, 2.30, 2.56 }, /* p */
  { "bt470-n", R (BROAD_WIDTH), 27.34, 26.52, 28.16 },   /* q */
  { "bt470-n", R (SERRATION_WIDTH), 4.735, 3.84, 5.63 }, /* r */
};

static double
scale_of (BwReadingKind kind)
{
  return bw_reading_dimension (kind) == BW_DIMENSION_TIME ? 1e-6 : 1;
}

/* What the file rounds away: times to a nanosecond at the most, levels to a tenth of a microvolt. */
static gboolean
is_close (BwReadingKind kind, double a, double b)
{
  gboolean time = bw_reading_dimension (kind) == BW_DIMENSION_TIME;
  return fabs (a - b) <= (time ? 0.51e-9 : 0.051e-6);
}

static void
test_laid_down (gconstpointer data)
{
  const Laid *laid = data;
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  const BwStandardLimits *limits = bw_limits_find (shipped, laid->standard);
  double scale = scale_of (laid->kind);
  gboolean period = laid->kind == R (LINE_PERIOD);

  g_assert_nonnull (limits);
  if (limits == NULL)
    return;
  const BwBands *bands = &limits->at[laid->kind];
  const double have[] = { bands->at[0].low, bands->at[1].low, bands->at[1].high };
  const double published[] = { laid->nominal, laid->low, laid->high };
  g_assert_cmpuint (bands->n, ==, 2);
  for (int i = 0; i < 3; i++)
    {
      double want = published[i] * scale;
      double slack = period ? 0.51e-12 : 0; /* of a period the last digit printed counts */
      if (period ? fabs (have[i] - want) <= slack : is_close (laid->kind, have[i], want))
        continue;
      g_test_message ("%.10g is published, the file has %.10g", published[i], have[i] / scale);
      g_test_fail ();
    }
}

/* Each limit of the file must be one that stands above, from a source. */
static void
test_nothing_else (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  guint n = 0;
  for (guint i = 0; i < shipped->len; i++)
    {
      const BwStandardLimits *limits = shipped->pdata[i];
      for (guint kind = 0; kind < BW_N_READINGS; kind++)
        {
          gboolean found = limits->at[kind].n == 0;
          n += limits->at[kind].n > 0;
          for (gsize j = 0; j < G_N_ELEMENTS (laid_down) && !found; j++)
            found = laid_down[j].kind == kind && strcmp (laid_down[j].standard, limits->id) == 0;
          if (found)
            continue;
          g_test_message ("[%s] %s: no source is known to this test", limits->id,
                          bw_kind_id (&bw_readings, kind));
          g_test_fail ();
        }
    }
  g_assert_cmpuint (shipped->len, ==, 8);
  g_assert_cmpuint (n, >=, G_N_ELEMENTS (laid_down));
}

static void
test_shipped_whole (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  for (guint i = 0; i < shipped->len; i++)
    {
      const BwStandardLimits *limits = shipped->pdata[i];
      g_assert_nonnull (bw_catalogue_raster (bw_test_catalogue (), limits->raster));
      g_assert_cmpstr (limits->name, !=, "");
      g_assert_cmpstr (limits->source, !=, "");
      g_assert_true (bw_limits_find (shipped, limits->id) == limits);
    }
  g_assert_null (bw_limits_find (shipped, "no-such-standard"));
}

/* Against tests/reference/broadcast.tsv, row by row of the same standard. */

static const struct
{
  const char *standard;
  const char *raster;
  const char *source; /* the row's source starts with it */
} in_table[] = {
  { "smpte-170m", "525-59.94-interlaced", "SMPTE 170M-2004" },
  { "bt470-m-ntsc", "525-59.94-interlaced", "ITU-R BT.470-6" },
  { "bt470-m-mono", "525-60-interlaced", "ITU-R BT.470-6" },
  { "bt1700-pal", "625-50-interlaced", "ITU-R BT.1700" },
  { "bt470-bg-pal", "625-50-interlaced", "ITU-R BT.470-6" },
};

static const struct
{
  const char *quantity;
  BwReadingKind kind;
} quantities[] = {
  { "line_period", R (LINE_PERIOD) },         { "h_blanking", R (LINE_BLANKING) },
  { "h_front_porch", R (FRONT_PORCH) },       { "h_sync", R (LINE_SYNC) },
  { "datum_to_active", R (SYNC_TO_PICTURE) }, { "datum_to_burst", R (BURST_START) },
  { "burst_length", R (BURST_LENGTH) },       { "equalising_width", R (EQUALISING_WIDTH) },
  { "broad_pulse_width", R (BROAD_WIDTH) },   { "serration_width", R (SERRATION_WIDTH) },
  { "sync_rise_time", R (SYNC_RISE) },        { "v_blanking", R (FIELD_BLANKING) },
};

static gboolean
assert_end (const BwTable *table, guint row, double have, double want)
{
  if (is_close (R (LINE_SYNC), have, want * 1e-6))
    return TRUE;
  g_test_message ("%s, %s: the table has %.10g, the file %.10g",
                  bw_test_cell (table, row, "source"), bw_test_cell (table, row, "quantity"), want,
                  have * 1e6);
  g_test_fail ();
  return FALSE;
}

/* Compares one row with what the file allows; returns whether the row says anything about it. */
static gboolean
compare_row (const BwTable *table, guint row, const BwBands *bands, const char *suffix)
{
  double value = bw_test_number (table, row, "value");
  gboolean tolerance = *bw_test_cell (table, row, "plus") != '\0';

  if (bands->n == 0)
    return FALSE;
  if (strcmp (suffix, "_min") == 0)
    return assert_end (table, row, bands->at[1].low, value);
  if (strcmp (suffix, "_max") == 0)
    return assert_end (table, row, bands->at[1].high, value);
  if (*suffix != '\0')
    return FALSE;
  if (tolerance)
    {
      assert_end (table, row, bands->at[1].low, value - bw_test_number (table, row, "minus"));
      assert_end (table, row, bands->at[1].high, value + bw_test_number (table, row, "plus"));
    }
  return assert_end (table, row, bands->at[0].low, value);
}

static void
test_broadcast (void)
{
  g_autoptr (BwTable) table = bw_test_table_new ("broadcast.tsv");
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  guint compared = 0;

  for (guint row = 0; row < table->rows->len; row++)
    for (gsize s = 0; s < G_N_ELEMENTS (in_table); s++)
      for (gsize q = 0; q < G_N_ELEMENTS (quantities); q++)
        {
          const char *quantity = bw_test_cell (table, row, "quantity");
          const BwStandardLimits *limits = bw_limits_find (shipped, in_table[s].standard);
          if (limits == NULL || !g_str_has_prefix (quantity, quantities[q].quantity)
              || strcmp (bw_test_cell (table, row, "catalogue_id"), in_table[s].raster) != 0
              || !g_str_has_prefix (bw_test_cell (table, row, "source"), in_table[s].source))
            continue;
          compared += compare_row (table, row, &limits->at[quantities[q].kind],
                                   quantity + strlen (quantities[q].quantity));
        }
  g_test_message ("%u rows compared", compared);
  g_assert_cmpuint (compared, >=, 45);
}

/* The judgement */

/* An edge as it is typed is the edge in the file: on it is within, beside it is not. */
static void
judge_edges (const BwStandardLimits *limits, BwReadingKind kind)
{
  const BwBands *bands = &limits->at[kind];
  const BwRange allowed = bands->at[1];
  double step = 1e-6 * allowed.high;
  BwJudgement j;

  bw_reading_judge (limits, kind, bands->at[0].low, 0, &j);
  g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_WITHIN);
  g_assert_cmpfloat (j.deviation, ==, 0);
  bw_reading_judge (limits, kind, allowed.low, 0, &j);
  g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_WITHIN);
  g_assert_cmpfloat (j.to_limit, ==, 0);
  g_assert_cmpfloat (j.deviation, <=, 0);
  bw_reading_judge (limits, kind, allowed.high, 0, &j);
  g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_WITHIN);
  g_assert_cmpfloat (j.to_limit, ==, 0);
  g_assert_cmpfloat (j.deviation, >=, 0);
  bw_reading_judge (limits, kind, allowed.low - step, 0, &j);
  g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_TOO_LOW);
  g_assert_cmpfloat_with_epsilon (j.to_limit, -step, 1e-6 * step);
  g_assert_cmpfloat (j.deviation, <, 0);
  bw_reading_judge (limits, kind, allowed.high + step, 0, &j);
  g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_TOO_HIGH);
  g_assert_cmpfloat_with_epsilon (j.to_limit, -step, 1e-6 * step);
  g_assert_cmpfloat (j.deviation, >, 0);
}

static void
test_edges (void)
{
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  for (guint i = 0; i < shipped->len; i++)
    for (guint kind = 0; kind < BW_N_READINGS; kind++)
      {
        const BwStandardLimits *limits = shipped->pdata[i];
        BwJudgement j = { BW_OUTCOME_WITHIN, 1, { 1, 1 }, 1, 1 };
        if (limits->at[kind].n > 0)
          {
            judge_edges (limits, kind);
            continue;
          }
        bw_reading_judge (limits, kind, 4.7e-6, 0, &j);
        g_assert_cmpuint (j.outcome, ==, BW_OUTCOME_NOT_LAID_DOWN);
        g_assert_true (fabs (j.nominal) + fabs (j.allowed.low) + fabs (j.allowed.high)
                           + fabs (j.deviation) + fabs (j.to_limit)
                       <= 0);
      }
}

typedef struct
{
  const char *name;
  const char *standard;
  BwReadingKind kind;
  const char *text; /* as it is typed */
  BwOutcome outcome;
  double deviation_us;
  double to_limit_us;
} Judged;

/* Worked by hand from the tables above. */
static const Judged judged[] = {
  { "on-the-edge", "smpte-170m", R (LINE_SYNC), "4.8 us", BW_OUTCOME_WITHIN, 0.1, 0 },
  { "above", "smpte-170m", R (LINE_SYNC), "4.81 us", BW_OUTCOME_TOO_HIGH, 0.11, -0.01 },
  { "below", "smpte-170m", R (LINE_SYNC), "4590 ns", BW_OUTCOME_TOO_LOW, -0.11, -0.01 },
  { "inside", "smpte-170m", R (LINE_SYNC), "4.65 us", BW_OUTCOME_WITHIN, -0.05, 0.05 },
  /* 625 lines: blanking of 12 us may be shorter by 0.3, and not longer at all */
  { "one-sided-high", "bt1700-pal", R (LINE_BLANKING), "12.05 us", BW_OUTCOME_TOO_HIGH, 0.05,
    -0.05 },
  { "one-sided-low", "bt1700-pal", R (LINE_BLANKING), "11.7 us", BW_OUTCOME_WITHIN, -0.3, 0 },
  /* a porch of 1.4 us is right for 525 lines and too short for 625 */
  { "porch-525", "smpte-170m", R (FRONT_PORCH), "1.4 us", BW_OUTCOME_WITHIN, -0.1, 0 },
  { "porch-625", "bt1700-pal", R (FRONT_PORCH), "1.4 us", BW_OUTCOME_TOO_LOW, -0.1, -0.1 },
  /* SMPTE 170M nominal is the very edge of BT.470-6 for M/NTSC */
  { "blanking-of-two-standards", "bt470-m-ntsc", R (LINE_BLANKING), "10.7 us", BW_OUTCOME_WITHIN,
    -0.2, 0 },
  { "field-blanking", "smpte-170m", R (FIELD_BLANKING), "1.2728 ms", BW_OUTCOME_TOO_HIGH, 0.19,
    -0.09 },
};

static void
test_judged (gconstpointer data)
{
  const Judged *c = data;
  g_autoptr (GPtrArray) shipped = bw_limits_shipped ();
  const BwStandardLimits *limits = bw_limits_find (shipped, c->standard);
  BwJudgement j;
  double value;

  g_assert_true (bw_quantity_parse (c->text, BW_DIMENSION_TIME, BW_FILE_MARK, &value, NULL));
  bw_reading_judge (limits, c->kind, value, 0, &j);
  g_assert_cmpuint (j.outcome, ==, c->outcome);
  g_assert_cmpfloat_with_epsilon (j.deviation * 1e6, c->deviation_us, 1e-8);
  g_assert_cmpfloat_with_epsilon (j.to_limit * 1e6, c->to_limit_us, 1e-8);
}

/* Bad files: each fault names file, group and key, and the sound entries are there. */

#define HEAD "[good]\nname=N\nsource=S\nraster=R\nline_sync=4.7 us; 4.6 us .. 4.8 us\n\n"
#define BAD "[bad]\nname=N\nsource=S\nraster=R\n"

typedef struct
{
  const char *name;
  const char *text;
  const char *key; /* what the sentence must name, beside file and group */
} BadFile;

static const BadFile bad_files[] = {
  { "no-range", HEAD BAD "line_sync=4.7 us\n", "line_sync" },
  { "only-a-range", HEAD BAD "line_sync=4.6 us .. 4.8 us\n", "line_sync" },
  { "nominal-outside", HEAD BAD "front_porch=1.4 us; 1.5 us .. 1.8 us\n", "front_porch" },
  { "three-bands", HEAD BAD "burst_start=5.6 us; 5.5 us .. 5.7 us; 6 us .. 7 us\n", "burst_start" },
  { "reversed", HEAD BAD "line_sync=4.7 us; 4.8 us .. 4.6 us\n", "line_sync" },
  { "wrong-unit", HEAD BAD "white_level=700 us; 600 us .. 800 us\n", "white_level" },
  { "no-unit", HEAD BAD "line_period=64; 63 .. 65\n", "line_period" },
  { "negative", HEAD BAD "sync_rise=140 ns; -10 ns .. 250 ns\n", "sync_rise" },
  { "above-10-v", HEAD BAD "white_level=700 mV; 600 mV .. 10.01 V\n", "white_level" },
  { "above-1-s", HEAD BAD "field_blanking=1 ms; 0.9 ms .. 1.001 s\n", "field_blanking" },
  { "not-a-number", HEAD BAD "line_sync=short; 4.6 us .. 4.8 us\n", "line_sync" },
  { "decimal-comma", HEAD BAD "line_sync=4,7 us; 4,6 us .. 4,8 us\n", "line_sync" },
  { "no-name", HEAD "[bad]\nsource=S\nraster=R\nline_sync=4.7 us; 4.6 us .. 4.8 us\n", "name" },
  { "no-raster", HEAD "[bad]\nname=N\nsource=S\nline_sync=4.7 us; 4.6 us .. 4.8 us\n", "raster" },
};

static void
test_bad_file (gconstpointer data)
{
  const BadFile *c = data;
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GPtrArray) limits = bw_limits_load (c->text, strlen (c->text), "own.ini", faults);

  g_assert_cmpuint (limits->len, ==, 1);
  g_assert_nonnull (bw_limits_find (limits, "good"));
  g_assert_cmpuint (faults->len, ==, 1);
  for (guint i = 0; i < faults->len; i++)
    bw_test_assert_words (((GError *) faults->pdata[i])->message, WORDS ("own.ini", "bad", c->key));
}

/* From nothing to a second and to 10 V, which is our own choice; the bad files have what is beyond. */
static void
test_ends (void)
{
  static const char text[] = "[own]\nname=N\nsource=S\nraster=R\nline_sync=4.7 us; 0 s .. 1 s\n"
                             "white_level=700 mV; 0 V .. 10 V\n";
  g_autoptr (GPtrArray) faults = bw_test_faults_new ();
  g_autoptr (GPtrArray) limits = bw_limits_load (text, strlen (text), "own.ini", faults);

  g_assert_cmpuint (faults->len, ==, 0);
  g_assert_nonnull (bw_limits_find (limits, "own"));
}

/* Texts that are no files at all. */
static void
test_broken_text (void)
{
  static const struct
  {
    const char *text;
    gsize length;
  } broken[] = {
    { "name=N\n", 7 },      { "[bad\nname=N\n", 12 }, { "[a]\nname\n", 9 },
    { "\xff\xfe[a]\n", 6 }, { "[a]\n\0[b]\n", 9 },
  };
  for (gsize i = 0; i < G_N_ELEMENTS (broken); i++)
    {
      g_autoptr (GPtrArray) faults = bw_test_faults_new ();
      g_autoptr (GPtrArray) limits = bw_limits_load (broken[i].text, broken[i].length, "own.ini",
                                                     faults);
      g_assert_cmpuint (limits->len, ==, 0);
      g_assert_cmpuint (faults->len, >, 0);
      for (guint j = 0; j < faults->len; j++)
        bw_test_assert_words (((GError *) faults->pdata[j])->message, WORDS ("own.ini"));
    }
}

static void
add_cases (void)
{
  for (gsize i = 0; i < G_N_ELEMENTS (laid_down); i++)
    {
      g_autofree char *path = g_strdup_printf ("/reading/laid-down/%s/%s", laid_down[i].standard,
                                               bw_kind_id (&bw_readings, laid_down[i].kind));
      g_test_add_data_func (path, &laid_down[i], test_laid_down);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (judged); i++)
    {
      g_autofree char *path = g_strconcat ("/reading/judged/", judged[i].name, NULL);
      g_test_add_data_func (path, &judged[i], test_judged);
    }
  for (gsize i = 0; i < G_N_ELEMENTS (bad_files); i++)
    {
      g_autofree char *path = g_strconcat ("/reading/bad-file/", bad_files[i].name, NULL);
      g_test_add_data_func (path, &bad_files[i], test_bad_file);
    }
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  add_cases ();
  g_test_add_func ("/reading/laid-down/nothing-else", test_nothing_else);
  g_test_add_func ("/reading/laid-down/broadcast-table", test_broadcast);
  g_test_add_func ("/reading/shipped-whole", test_shipped_whole);
  g_test_add_func ("/reading/edges", test_edges);
  g_test_add_func ("/reading/broken-text", test_broken_text);
  g_test_add_func ("/reading/ends-of-limits", test_ends);
  return g_test_run ();
}
