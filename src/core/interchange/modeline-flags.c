/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "modeline-private.h"

#include <glib/gi18n-lib.h>

/* The flags at the end of a mode line. */

typedef enum
{
  FLAG_H_POSITIVE,
  FLAG_H_NEGATIVE,
  FLAG_V_POSITIVE,
  FLAG_V_NEGATIVE,
  FLAG_INTERLACE,
  FLAG_DOUBLE_SCAN,
  FLAG_COMPOSITE,
  FLAG_C_POSITIVE,
  FLAG_C_NEGATIVE,
  FLAG_H_SKEW,
  FLAG_V_SCAN,
  N_FLAGS
} Flag;

static const struct
{
  const char *word;
  guint against; /* set of flags that it cannot stand with */
} flags[N_FLAGS] = {
  [FLAG_H_POSITIVE] = { "+hsync", BW_BIT (FLAG_H_NEGATIVE) },
  [FLAG_H_NEGATIVE] = { "-hsync", BW_BIT (FLAG_H_POSITIVE) },
  [FLAG_V_POSITIVE] = { "+vsync", BW_BIT (FLAG_V_NEGATIVE) },
  [FLAG_V_NEGATIVE] = { "-vsync", BW_BIT (FLAG_V_POSITIVE) },
  [FLAG_INTERLACE] = { "interlace", BW_BIT (FLAG_DOUBLE_SCAN) },
  [FLAG_DOUBLE_SCAN] = { "doublescan", BW_BIT (FLAG_INTERLACE) },
  [FLAG_COMPOSITE] = { "composite", 0 },
  [FLAG_C_POSITIVE] = { "+csync", BW_BIT (FLAG_C_NEGATIVE) },
  [FLAG_C_NEGATIVE] = { "-csync", BW_BIT (FLAG_C_POSITIVE) },
  [FLAG_H_SKEW] = { "hskew", 0 },
  [FLAG_V_SCAN] = { "vscan", 0 },
};

/**
 * bw_modeline_note:
 * @says: a sentence, translated, for the note of the raster
 */
void
bw_modeline_note (BwModeline *line, const char *says)
{
  if (line->note->len > 0)
    g_string_append_c (line->note, ' ');
  g_string_append (line->note, says);
}

static gboolean
find_flag (const BwModelineWord *word, Flag *flag)
{
  for (*flag = 0; *flag < N_FLAGS; (*flag)++)
    if (!word->quoted && g_ascii_strcasecmp (word->text, flags[*flag].word) == 0)
      return TRUE;
  return FALSE;
}

/* hskew and vscan are followed by a number. A skew of the enable signal of a flat panel does not
 * alter the raster; a scan that repeats lines does, and only as doublescan is it understood. */
static gboolean
read_flag_number (BwModeline *line, Flag flag, guint i, GError **error)
{
  int value = 0;
  if (i >= line->words->len || !bw_modeline_number (bw_modeline_word (line, i), &value))
    return bw_modeline_fault (line, i, BW_INTERCHANGE_ERROR_NUMBER,
                              flag == FLAG_H_SKEW ? _ ("a whole number of pixels must follow hskew")
                                                  : _ ("a whole number must follow vscan"),
                              error);
  if (flag == FLAG_V_SCAN && value > 1)
    return bw_modeline_fault (
        line, i, BW_INTERCHANGE_ERROR_FLAG,
        _ ("vscan can only be 0 or 1 here; for lines that are painted twice write "
           "doublescan"),
        error);
  if (flag == FLAG_H_SKEW)
    {
      g_autofree char *says = g_strdup_printf (_ ("The mode line says hskew %d."), value);
      bw_modeline_note (line, says);
    }
  return TRUE;
}

static void
apply_flag (BwModeline *line, Flag flag)
{
  if (flag == FLAG_H_POSITIVE || flag == FLAG_H_NEGATIVE)
    line->polarity[0] = flag == FLAG_H_POSITIVE ? (int) BW_POLARITY_POSITIVE
                                                : (int) BW_POLARITY_NEGATIVE;
  else if (flag == FLAG_V_POSITIVE || flag == FLAG_V_NEGATIVE)
    line->polarity[1] = flag == FLAG_V_POSITIVE ? (int) BW_POLARITY_POSITIVE
                                                : (int) BW_POLARITY_NEGATIVE;
  else if (flag == FLAG_INTERLACE)
    line->interlaced = TRUE;
  else if (flag == FLAG_DOUBLE_SCAN)
    {
      line->doubled = TRUE;
      bw_modeline_note (line,
                        _ ("The mode line says doublescan: each line is scanned twice, and the "
                           "lines here are those that are scanned."));
    }
  else if (flag == FLAG_COMPOSITE)
    bw_modeline_note (line, _ ("The mode line asks for composite sync."));
  else if (flag == FLAG_C_POSITIVE)
    bw_modeline_note (line, _ ("The mode line asks for positive composite sync."));
  else if (flag == FLAG_C_NEGATIVE)
    bw_modeline_note (line, _ ("The mode line asks for negative composite sync."));
}

/**
 * bw_modeline_read_flags:
 *
 * Reads all words after the numbers.
 *
 * Returns: %FALSE with @error at the first that is unknown, stands twice or contradicts another
 */
gboolean
bw_modeline_read_flags (BwModeline *line, GError **error)
{
  for (guint i = line->first + 2 + BW_MODELINE_N_NUMBERS; i < line->words->len; i++)
    {
      Flag flag;
      if (!find_flag (bw_modeline_word (line, i), &flag))
        return bw_modeline_fault (
            line, i, BW_INTERCHANGE_ERROR_FLAG,
            _ ("not a flag; allowed are +hsync, -hsync, +vsync, -vsync, interlace, "
               "doublescan, composite, +csync, -csync, hskew and vscan"),
            error);
      if (line->seen & BW_BIT (flag))
        return bw_modeline_fault (line, i, BW_INTERCHANGE_ERROR_FLAG, _ ("it stands twice"), error);
      if (line->seen & flags[flag].against)
        return bw_modeline_fault (line, i, BW_INTERCHANGE_ERROR_FLAG,
                                  _ ("it contradicts an earlier flag"), error);
      line->seen |= BW_BIT (flag);
      apply_flag (line, flag);
      if (flag == FLAG_H_SKEW || flag == FLAG_V_SCAN)
        {
          i++;
          if (!read_flag_number (line, flag, i, error))
            return FALSE;
        }
    }
  return TRUE;
}
