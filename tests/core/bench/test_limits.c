/* SPDX-License-Identifier: GPL-3.0-or-later */
/* What each number of a sheet or a catalogue may be, and what stands where nothing is written. Both
 * are our own choice and a promise of the file format: a sheet that was read yesterday is read
 * tomorrow. So they are written down here once more, by hand. */
#include "core/bench/sheet.h"
#include "core/circuit/lead.h"

#include "support.h"

/* A value below what is allowed, the least, the greatest, and one above. */
typedef struct
{
  const BwFieldTable *table;
  const char *key;
  const char *texts[4];
} Limit;

static const Limit limits[] = {
  { &bw_monitor_fields, "mains_voltage", { "9.9 V", "10 V", "500 V", "505 V" } },
  { &bw_monitor_fields, "mains_frequency", { "9.9 Hz", "10 Hz", "500 Hz", "505 Hz" } },
  { &bw_monitor_fields, "mains_current", { "-500 mA", "0 A", "50 A", "50.5 A" } },
  { &bw_monitor_fields, "diagonal", { "19.8 mm", "20 mm", "1.5 m", "1.515 m" } },
  { &bw_monitor_fields, "pitch", { "0.0495 mm", "0.05 mm", "5 mm", "5.05 mm" } },
  { &bw_monitor_fields, "spot", { "0.0099 mm", "0.01 mm", "10 mm", "10.1 mm" } },
  { &bw_monitor_fields, "claimed_lines", { "9.9 lines", "10 lines", "5000 lines", "5050 lines" } },
  { &bw_monitor_fields, "overscan_h", { "-0.3 %", "0 %", "30 %", "30.3 %" } },
  { &bw_monitor_fields, "overscan_v", { "-0.3 %", "0 %", "30 %", "30.3 %" } },
  { &bw_monitor_fields, "line_rates", { "990 Hz", "1 kHz", "1 MHz", "1.01 MHz" } },
  { &bw_monitor_fields, "field_rates", { "0.99 Hz", "1 Hz", "1 kHz", "1.01 kHz" } },
  { &bw_monitor_fields, "line_retrace", { "99 ns", "100 ns", "100 us", "101 us" } },
  { &bw_monitor_fields, "field_retrace", { "990 ns", "1 us", "20 ms", "20.2 ms" } },
  { &bw_monitor_fields, "bandwidth", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_input_fields, "line_rates", { "990 Hz", "1 kHz", "1 MHz", "1.01 MHz" } },
  { &bw_input_fields, "line_counts", { "49.5 lines", "50 lines", "10000 lines", "10100 lines" } },
  { &bw_input_fields, "video_level", { "9.9 mV", "10 mV", "10 V", "10.1 V" } },
  { &bw_input_fields, "sync_level", { "9.9 mV", "10 mV", "15 V", "15.15 V" } },
  { &bw_input_fields, "own_sync_level", { "9.9 mV", "10 mV", "15 V", "15.15 V" } },
  { &bw_input_fields, "setup", { "-5.05 IRE", "-5 IRE", "20 IRE", "20.2 IRE" } },
  { &bw_input_fields, "input_resistance", { "9.9 ohm", "10 ohm", "10 Mohm", "10.1 Mohm" } },
  { &bw_input_fields, "dc_offset", { "-50.5 V", "-50 V", "50 V", "50.5 V" } },
  { &bw_input_fields, "bandwidth", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_source_fields, "video_level", { "9.9 mV", "10 mV", "10 V", "10.1 V" } },
  { &bw_source_fields, "sync_level", { "9.9 mV", "10 mV", "15 V", "15.15 V" } },
  { &bw_source_fields, "setup", { "-5.05 IRE", "-5 IRE", "20 IRE", "20.2 IRE" } },
  { &bw_source_fields, "source_resistance", { "-100 ohm", "0 ohm", "10 kohm", "10.1 kohm" } },
  { &bw_source_fields, "sync_resistance", { "-100 ohm", "0 ohm", "10 kohm", "10.1 kohm" } },
  { &bw_source_fields, "dc_offset", { "-20.2 V", "-20 V", "20 V", "20.2 V" } },
  { &bw_source_fields, "detail", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_source_fields, "lowest_clock", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_source_fields, "highest_clock", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_source_fields, "clock_step", { "0.99 Hz", "1 Hz", "1 GHz", "1.01 GHz" } },
  { &bw_source_fields, "pixel_multiple", { "0", "1", "64", "65" } },
  { &bw_sheet_fields, "supply_voltage", { "9.9 V", "10 V", "500 V", "505 V" } },
  { &bw_sheet_fields, "supply_frequency", { "9.9 Hz", "10 Hz", "500 Hz", "505 Hz" } },
  { &bw_sheet_fields, "voltage_accuracy", { "0.000000099 %", "0.0000001 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "frequency_accuracy", { "0.000000099 %", "0.0000001 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "time_accuracy", { "0.000000099 %", "0.0000001 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "line_rate_margin", { "-0.5 %", "0 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "field_rate_margin", { "-0.5 %", "0 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "level_margin", { "-0.5 %", "0 %", "50 %", "50.5 %" } },
  { &bw_sheet_fields, "blanking_margin", { "-1 %", "0 %", "100 %", "101 %" } },
  { &bw_sheet_fields, "mains_beat_limit", { "-1 Hz", "0 Hz", "100 Hz", "101 Hz" } },
  { &bw_sheet_fields, "setup_limit", { "-0.2 IRE", "0 IRE", "20 IRE", "20.2 IRE" } },
  { &bw_adaptor_fields, "takes_line_rates", { "990 Hz", "1 kHz", "1 MHz", "1.01 MHz" } },
  { &bw_adaptor_fields, "takes_field_rates", { "0.99 Hz", "1 Hz", "1 kHz", "1.01 kHz" } },
  { &bw_adaptor_fields, "takes_video", { "9.9 mV", "10 mV", "10 V", "10.1 V" } },
  { &bw_adaptor_fields, "takes_sync", { "9.9 mV", "10 mV", "15 V", "15.15 V" } },
  { &bw_adaptor_fields, "takes_sync_resistance", { "9.9 ohm", "10 ohm", "10 Mohm", "10.1 Mohm" } },
  { &bw_adaptor_fields, "gives_video", { "9.9 mV", "10 mV", "10 V", "10.1 V" } },
  { &bw_adaptor_fields, "gives_sync", { "9.9 mV", "10 mV", "15 V", "15.15 V" } },
  { &bw_adaptor_fields, "gives_sync_resistance", { "-100 ohm", "0 ohm", "10 kohm", "10.1 kohm" } },
  { &bw_adaptor_fields, "gives_setup", { "-5.05 IRE", "-5 IRE", "20 IRE", "20.2 IRE" } },
  { &bw_adaptor_fields, "detail", { "99 kHz", "100 kHz", "1 GHz", "1.01 GHz" } },
  { &bw_adaptor_fields, "rank", { "0", "1", "1000", "1001" } },
  { &bw_lead_fields, "impedance", { "9.9 ohm", "10 ohm", "1 kohm", "1.01 kohm" } },
  { &bw_lead_fields, "velocity", { "29.7 %", "30 %", "100 %", "101 %" } },
  { &bw_lead_fields, "loss_frequency", { "990 Hz", "1 kHz", "10 GHz", "10.1 GHz" } },
  { &bw_lead_fields, "law_from", { "990 Hz", "1 kHz", "10 GHz", "10.1 GHz" } },
  { &bw_lead_fields, "law_to", { "990 Hz", "1 kHz", "10 GHz", "10.1 GHz" } },
};

/* Numbers own nothing, so that a block of zeros does for an object. */
typedef union
{
  BwMonitor monitor;
  BwInput input;
  BwSource source;
  BwSheet sheet;
  BwAdaptor adaptor;
  BwLeadType lead;
} Any;

/* @text, its number @times as large. */
static char *
times (const char *text, double times)
{
  char *unit;
  double number = g_ascii_strtod (text, &unit);
  char digits[G_ASCII_DTOSTR_BUF_SIZE];
  return g_strconcat (g_ascii_formatd (digits, sizeof digits, "%.9g", number * times), unit, NULL);
}

static gboolean
is_taken (const BwField *field, const char *text)
{
  Any object = { 0 };
  return bw_field_parse (field, &object, text, BW_FILE_MARK, NULL);
}

static void
test_limit (gconstpointer data)
{
  const Limit *limit = data;
  const BwField *field = bw_field_find (limit->table, limit->key);
  Any object = { 0 };

  g_assert_nonnull (field);
  for (int i = 0; i < 4; i++)
    {
      g_autoptr (GError) error = NULL;
      gboolean taken = bw_field_parse (field, &object, limit->texts[i], BW_FILE_MARK, &error);
      if (i == 1 || i == 2)
        g_assert_no_error (error);
      else
        g_assert_error (error, BW_FIELD_ERROR, BW_FIELD_ERROR_RANGE);
      g_assert_cmpint (taken, ==, i == 1 || i == 2);
    }
  if (field->type == BW_FIELD_COUNT)
    return;
  /* not only what is 1 % beyond */
  gboolean negative = *limit->texts[1] == '-';
  g_autofree char *below = times (limit->texts[1], negative ? 1.0001 : 0.9999);
  g_autofree char *above = times (limit->texts[2], 1.0001);
  g_assert_cmpint (is_taken (field, below), ==, g_ascii_strtod (below, NULL) == 0);
  g_assert_false (is_taken (field, above));
}

/* No number of these tables is left out above. */
static void
test_all_are_here (void)
{
  const BwFieldTable *const tables[] = { &bw_monitor_fields, &bw_input_fields,   &bw_source_fields,
                                         &bw_sheet_fields,   &bw_adaptor_fields, &bw_lead_fields };
  guint numbers = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (tables); i++)
    for (guint j = 0; j < tables[i]->n; j++)
      {
        BwFieldType type = tables[i]->at[j].type;
        numbers += type == BW_FIELD_QUANTITY || type == BW_FIELD_COUNT || type == BW_FIELD_RATE
                   || type == BW_FIELD_HALF_LINES || type == BW_FIELD_BANDS;
      }
  g_assert_cmpuint (numbers, ==, G_N_ELEMENTS (limits));
}

/* The presets of a new sheet and of what stands on it. A resistance of 75 ohm is that of the trade
 * (SMPTE 170M 15.2), 10 kohm that of a set without termination (common practice, no source); where
 * something becomes tight is common practice as well. */
static const struct
{
  const BwFieldTable *table;
  const char *key;
  const char *text;
} presets[] = {
  { &bw_monitor_fields, "aspect", "4:3" },
  { &bw_input_fields, "input_resistance", "10 kohm" },
  { &bw_source_fields, "source_resistance", "75 ohm" },
  { &bw_source_fields, "sync_resistance", "75 ohm" },
  { &bw_source_fields, "aspect", "4:3" },
  { &bw_adaptor_fields, "takes_sync_resistance", "75 ohm" },
  { &bw_adaptor_fields, "gives_sync_resistance", "75 ohm" },
  { &bw_sheet_fields, "line_rate_margin", "0.5 %" },
  { &bw_sheet_fields, "field_rate_margin", "2 %" },
  { &bw_sheet_fields, "level_margin", "5 %" },
  { &bw_sheet_fields, "blanking_margin", "5 %" },
  { &bw_sheet_fields, "mains_beat_limit", "1 Hz" },
  { &bw_sheet_fields, "setup_limit", "2 IRE" },
};

static void
test_presets (void)
{
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  g_autoptr (BwInput) input = bw_input_new ();
  g_autoptr (BwSource) source = bw_source_new ();
  g_autoptr (BwAdaptor) adaptor = bw_adaptor_new ();
  g_autoptr (BwSheet) sheet = bw_sheet_new ();

  for (gsize i = 0; i < G_N_ELEMENTS (presets); i++)
    {
      const BwFieldTable *table = presets[i].table;
      gconstpointer object = table == &bw_monitor_fields   ? (gconstpointer) monitor
                             : table == &bw_input_fields   ? (gconstpointer) input
                             : table == &bw_source_fields  ? (gconstpointer) source
                             : table == &bw_adaptor_fields ? (gconstpointer) adaptor
                                                           : (gconstpointer) sheet;
      g_autofree char *text = bw_field_to_file (bw_field_find (table, presets[i].key), object);
      g_assert_cmpstr (text, ==, presets[i].text);
    }
}

/* Nothing is an object that can be let go. */
static void
test_free_nothing (void)
{
  bw_monitor_free (NULL);
  bw_input_free (NULL);
  bw_source_free (NULL);
  bw_adaptor_free (NULL);
  bw_sheet_free (NULL);
  bw_raster_free (NULL);
  bw_lead_type_free (NULL);
}

/* No text of what has just been made is NULL: whoever shows it need not ask. */
static void
test_texts (void)
{
  g_autoptr (BwAdaptor) adaptor = bw_adaptor_new ();
  g_autoptr (BwMonitor) monitor = bw_monitor_new ();
  g_autoptr (BwInput) input = bw_input_new ();
  g_autoptr (BwSource) source = bw_source_new ();
  const struct
  {
    const BwFieldTable *table;
    gconstpointer object;
  } made[] = { { &bw_adaptor_fields, adaptor }, { &bw_monitor_fields, monitor },
               { &bw_input_fields, input },     { &bw_source_fields, source } };
  guint n = 0;
  for (gsize i = 0; i < G_N_ELEMENTS (made); i++)
    for (guint j = 0; j < made[i].table->n; j++)
      if (made[i].table->at[j].type == BW_FIELD_TEXT)
        {
          g_assert_nonnull (G_STRUCT_MEMBER (char *, made[i].object, made[i].table->at[j].offset));
          n++;
        }
  g_assert_cmpuint (n, >, 8);
}

int
main (int argc, char **argv)
{
  bw_test_init (&argc, &argv);
  for (gsize i = 0; i < G_N_ELEMENTS (limits); i++)
    {
      const char *of = limits[i].table == &bw_monitor_fields   ? "monitor"
                       : limits[i].table == &bw_input_fields   ? "input"
                       : limits[i].table == &bw_source_fields  ? "source"
                       : limits[i].table == &bw_sheet_fields   ? "sheet"
                       : limits[i].table == &bw_adaptor_fields ? "adaptor"
                                                               : "lead";
      g_autofree char *path = g_strdup_printf ("/limits/%s/%s", of, limits[i].key);
      g_test_add_data_func (path, &limits[i], test_limit);
    }
  g_test_add_func ("/limits/all-are-here", test_all_are_here);
  g_test_add_func ("/limits/presets", test_presets);
  g_test_add_func ("/limits/free-nothing", test_free_nothing);
  g_test_add_func ("/limits/texts", test_texts);
  return g_test_run ();
}
