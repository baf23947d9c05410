/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The rules of the fit, one line each: this is their only list. From it come the constants
 * BW_RULE_…, the declarations of the functions bw_rule_…_judge() and bw_rule_…_says(), and the
 * table of descriptors (rules.c). A line that lacks a member does not compile, and one whose
 * functions nobody wrote does not link.
 *
 * The members of a line:
 *   the constant, as in BW_RULE_LINE_RATE;
 *   the name in its two functions, as in bw_rule_line_rate_judge();
 *   the id in files and JSON;
 *   the title on screen;
 *   how many significant digits tell its values apart: 5 tell 15.734 kHz from 15.75 kHz;
 *   the group: what makes anew what the rule looks at, and whether it depends on the sync that is
 *   used (BwRuleGroup).
 *
 * Findings stand in this order in every table. Among findings that are equally bad the first one
 * names the limiting rule. */

/* clang-format off */
#define BW_RULE_LIST(X)                                                                            \
  X (MAINS,          mains,          "mains",          N_ ("Mains"),               4, ALWAYS)      \
  X (SIGNAL_KIND,    signal_kind,    "signal-kind",    N_ ("Signal kind"),         3, ALWAYS)      \
  X (COLOUR_SYSTEM,  colour_system,  "colour-system",  N_ ("Colour system"),       5, ALWAYS)      \
  X (LINE_RATE,      line_rate,      "line-rate",      N_ ("Line rate"),           5, ALWAYS)      \
  X (FIELD_RATE,     field_rate,     "field-rate",     N_ ("Field rate"),          5, ALWAYS)      \
  X (LINE_COUNT,     line_count,     "line-count",     N_ ("Line count and scan"), 4, ALWAYS)      \
  X (SYNC_KIND,      sync_kind,      "sync-kind",      N_ ("Sync kind"),           3, SYNC_KIND)   \
  X (SYNC_POLARITY,  sync_polarity,  "sync-polarity",  N_ ("Sync polarity"),       3, SYNC)        \
  X (SYNC_LEVEL,     sync_level,     "sync-level",     N_ ("Sync level"),          3, SYNC)        \
  X (SYNC_DRIVE,     sync_drive,     "sync-drive",     N_ ("Sync drive"),          3, SYNC)        \
  X (SYNC_SHAPE,     sync_shape,     "sync-shape",     N_ ("Sync shape"),          3, SYNC)        \
  X (LINE_BLANKING,  line_blanking,  "line-blanking",  N_ ("Line blanking"),       3, PICTURE)     \
  X (FIELD_BLANKING, field_blanking, "field-blanking", N_ ("Field blanking"),      3, PICTURE)     \
  X (BLACK,          black,          "black",          N_ ("Black in blanking"),   3, PICTURE)     \
  X (BACK_PORCH,     back_porch,     "back-porch",     N_ ("Back porch"),          3, PICTURE)     \
  X (SYNC_WIDTH,     sync_width,     "sync-width",     N_ ("Width of line sync"),  3, PICTURE)     \
  X (PICTURE_START,  picture_start,  "picture-start",  N_ ("Start of the picture"), 3, PICTURE)    \
  X (VIDEO_LEVEL,    video_level,    "video-level",    N_ ("Video level"),         3, LEVELS)      \
  X (SETUP,          setup,          "setup",          N_ ("Setup"),               3, LEVELS)      \
  X (TERMINATION,    termination,    "termination",    N_ ("Termination"),         3, ALWAYS)      \
  X (COUPLING,       coupling,       "coupling",       N_ ("Coupling"),            3, LEVELS)      \
  X (BANDWIDTH,      bandwidth,      "bandwidth",      N_ ("Bandwidth"),           3, PICTURE)     \
  X (MAINS_BEAT,     mains_beat,     "mains-beat",     N_ ("Mains beat"),          3, PICTURE)     \
  X (ASPECT,         aspect,         "aspect",         N_ ("Aspect ratio"),        3, PICTURE)     \
  X (VISIBLE_AREA,   visible_area,   "visible-area",   N_ ("Visible area"),        3, PICTURE)     \
  X (LEAD,           lead,           "lead",           N_ ("Lead"),                3, ALWAYS)
/* clang-format on */
