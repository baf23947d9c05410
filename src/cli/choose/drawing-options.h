/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "cli/base/streams.h"
#include "draw/base/ink.h"

G_BEGIN_DECLS

/* What every command that draws takes. */

/**
 * BwDrawingOptions:
 * @target: (nullable): -o, as it came; likewise --theme and --size
 *
 * What the options of a drawing say; owned.
 */
typedef struct
{
  char *target;
  char *theme;
  char *size;
} BwDrawingOptions;

/* The entries of --theme and --size, for BwDrawingOptions @own. */
#define BW_DRAWING_LOOK_ENTRIES(own)                                                               \
  { "theme",                                                                                       \
    0,                                                                                             \
    0,                                                                                             \
    G_OPTION_ARG_FILENAME,                                                                         \
    &(own).theme,                                                                                  \
    N_ ("Colours of the drawing: print, light or dark; without it print"),                         \
    N_ ("print|light|dark") },                                                                     \
  {                                                                                                \
    "size", 0, 0, G_OPTION_ARG_FILENAME, &(own).size,                                              \
        N_ ("Size of the drawing in pixels of 1/96 inch"), N_ ("WxH")                              \
  }

/**
 * BwDrawingPage:
 * @theme: a BwTheme
 * @width: in pixels of 1/96 inch; likewise @height; zero for what suits the drawing
 */
typedef struct
{
  guint theme;
  int width;
  int height;
} BwDrawingPage;

void bw_drawing_options_clear (BwDrawingOptions *own);
char *bw_drawing_options_fault (const BwDrawingOptions *own, const char *const *kinds,
                                const BwCliOptions *options, guint *theme);
gboolean bw_drawing_options_page (const BwDrawingOptions *own, BwDrawingPage *page);

G_END_DECLS
