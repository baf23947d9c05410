/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "kinds.h"

G_BEGIN_DECLS

/* Which pin of a connector carries what, as a person read it in the papers of a set or measured it:
 * for the connectors of which no standard says it. */

#define BW_PINOUT_MAX 25 /* the highest number of a pin */

/**
 * BwPinout:
 * @use: of the pin whose number is one more than the index: a BwPinUse and one; zero: not known
 */
typedef struct
{
  guint8 use[BW_PINOUT_MAX];
} BwPinout;

#define BW_PINOUT_ERROR (bw_pinout_error_quark ())

typedef enum
{
  BW_PINOUT_ERROR_VALUE
} BwPinoutError;

GQuark bw_pinout_error_quark (void);

guint bw_pinout_use (const BwPinout *pinout, guint number);
void bw_pinout_set (BwPinout *pinout, guint number, guint use);
gboolean bw_pinout_is_given (const BwPinout *pinout);
guint bw_pinout_find (const BwPinout *pinout, guint use);
guint bw_pinout_highest (const BwPinout *pinout);
gboolean bw_pinout_parse (const char *text, BwPinout *pinout, GError **error);
char *bw_pinout_to_text (const BwPinout *pinout);
char *bw_pinout_words (const BwPinout *pinout);

G_END_DECLS
