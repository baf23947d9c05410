/* SPDX-License-Identifier: GPL-3.0-or-later */
/* Reads the printout of edid-decode (Debian package edid-decode; looked through with
 * 0.1~git20220315.cb74358c2896-1). */
#include "printed.h"

#include <string.h>

static double
group (GMatchInfo *match, const char *name)
{
  g_autofree char *text = g_match_info_fetch_named (match, name);
  return text != NULL && *text != '\0' ? g_ascii_strtod (text, NULL) : 0;
}

static gboolean
has_group (GMatchInfo *match, const char *name, const char *value)
{
  g_autofree char *text = g_match_info_fetch_named (match, name);
  return g_strcmp0 (text, value) == 0;
}

static GMatchInfo *
match_in (const char *text, const char *pattern)
{
  GMatchInfo *match = NULL;
  g_autoptr (GRegex) regex = g_regex_new (pattern, G_REGEX_DEFAULT, G_REGEX_MATCH_DEFAULT, NULL);
  g_assert_nonnull (regex);
  if (!g_regex_match (regex, text, 0, &match))
    g_error ("edid-decode printed what this test cannot read: %s", text);
  return match;
}

static void
read_rates (const char *text, Printed *printed)
{
  g_autoptr (GMatchInfo)
      match = match_in (text, ":\\s+(?<w>\\d+)x(?<h>\\d+)(?<i>i?)\\s+(?<hz>[\\d.]+) Hz\\s+\\S+\\s+"
                              "(?<khz>[\\d.]+) kHz\\s+(?<mhz>[\\d.]+) MHz");
  printed->interlaced = has_group (match, "i", "i");
  printed->h_active = group (match, "w");
  printed->v_active = group (match, "h");
  printed->field_rate_hz = group (match, "hz");
  printed->line_rate_hz = group (match, "khz") * 1e3;
  printed->pixel_clock_hz = group (match, "mhz") * 1e6;
}

static void
read_intervals (const char *text, Printed *printed)
{
  g_autoptr (GMatchInfo)
      line = match_in (text, "Hfront\\s+(?<f>-?\\d+) Hsync\\s+(?<s>\\d+) Hback\\s+(?<b>\\d+) "
                             "Hpol (?<p>[PN])(?: Hborder (?<o>\\d+))?");
  printed->h_front_porch = group (line, "f");
  printed->h_sync = group (line, "s");
  printed->h_back_porch = group (line, "b");
  printed->h_border = group (line, "o");
  printed->h_positive = has_group (line, "p", "P");

  g_autoptr (GMatchInfo)
      field = match_in (text, "Vfront\\s+(?<f>\\d+) Vsync\\s+(?<s>\\d+) Vback\\s+(?<b>\\d+) "
                              "Vpol (?<p>[PN])(?: Vborder (?<o>\\d+))?");
  printed->v_front_porch = group (field, "f");
  printed->v_sync = group (field, "s");
  printed->v_back_porch = group (field, "b");
  printed->v_border = group (field, "o");
  printed->v_positive = has_group (field, "p", "P");
}

/* An interlaced format has half a line more in front of one field and behind the other, unless
 * both fields are said to be alike. */
static double
printed_total (const char *text, const Printed *printed)
{
  double rest = printed->v_front_porch + printed->v_sync + printed->v_back_porch
                + 2 * printed->v_border;
  if (!printed->interlaced)
    return printed->v_active + rest;
  gboolean half_lines = strstr (text, "Both Fields") == NULL;
  if (half_lines)
    {
      g_assert_nonnull (strstr (text, "Vfront +0.5 Odd Field"));
      g_assert_nonnull (strstr (text, "Vback  +0.5 Even Field"));
    }
  return printed->v_active + 2 * rest + (half_lines ? 1 : 0);
}

/* Runs edid-decode with @option, which tells it to print one format, and @value. */
Printed
ask_edid_decode (const char *option, const char *value)
{
  const char *const argv[] = { "edid-decode", option, value, NULL };
  g_autoptr (Run) run = run_argv (argv, NULL); /* fails if there is no such program */
  Printed printed = { 0 };

  g_assert_cmpint (run->status, ==, 0);
  read_rates (run->out, &printed);
  read_intervals (run->out, &printed);
  printed.v_total = printed_total (run->out, &printed);
  return printed;
}
