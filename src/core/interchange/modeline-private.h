/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "interchange-private.h"

G_BEGIN_DECLS

/* Shared by the files that read mode lines. */

#define BW_MODELINE_N_NUMBERS 8
#define BW_MODELINE_NUMBER_MAX 65535

typedef struct
{
  char *text;      /* owned */
  gboolean quoted; /* stood between quotation marks */
} BwModelineWord;

/* A mode line as far as it is understood. */
typedef struct
{
  GArray *words; /* BwModelineWord */
  guint first;   /* the name's place among the words */
  BwRatio clock_hz;
  int at[BW_MODELINE_N_NUMBERS];
  int polarity[2]; /* BwPolarity of H and V; -1: not stated */
  gboolean interlaced;
  gboolean doubled;
  guint seen; /* set of flags that have stood */
  GString *note;
} BwModeline;

const BwModelineWord *bw_modeline_word (const BwModeline *line, guint i);
gboolean bw_modeline_fault (const BwModeline *line, guint i, BwInterchangeError code,
                            const char *says, GError **error);
gboolean bw_modeline_number (const BwModelineWord *word, int *value);
void bw_modeline_note (BwModeline *line, const char *says);
gboolean bw_modeline_read_flags (BwModeline *line, GError **error);

G_END_DECLS
