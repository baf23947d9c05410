/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "pinout.h"

#include <string.h>

#include <glib/gi18n-lib.h>

G_DEFINE_QUARK (bw-pinout-error-quark, bw_pinout_error)

/**
 * bw_pinout_use:
 * @number: of a pin, from 1 to %BW_PINOUT_MAX
 *
 * Returns: what it carries, a BwPinUse; %BW_N_PIN_USES: not known
 */
guint
bw_pinout_use (const BwPinout *pinout, guint number)
{
  g_return_val_if_fail (pinout != NULL && number >= 1 && number <= BW_PINOUT_MAX, BW_N_PIN_USES);
  guint use = pinout->use[number - 1];
  return use > 0 ? use - 1 : BW_N_PIN_USES;
}

/**
 * bw_pinout_set:
 * @number: likewise
 * @use: BwPinUse; %BW_N_PIN_USES: not known
 */
void
bw_pinout_set (BwPinout *pinout, guint number, guint use)
{
  g_return_if_fail (pinout != NULL && number >= 1 && number <= BW_PINOUT_MAX);
  g_return_if_fail (use <= BW_N_PIN_USES);
  pinout->use[number - 1] = (guint8) (use < BW_N_PIN_USES ? use + 1 : 0);
}

/**
 * bw_pinout_is_given:
 *
 * Returns: whether it says anything of any pin
 */
gboolean
bw_pinout_is_given (const BwPinout *pinout)
{
  return bw_pinout_highest (pinout) > 0;
}

/**
 * bw_pinout_find:
 * @use: BwPinUse
 *
 * Returns: the number of the first pin that carries it; zero: none
 */
guint
bw_pinout_find (const BwPinout *pinout, guint use)
{
  g_return_val_if_fail (pinout != NULL, 0);
  for (guint number = 1; number <= BW_PINOUT_MAX; number++)
    if (bw_pinout_use (pinout, number) == use)
      return number;
  return 0;
}

/**
 * bw_pinout_highest:
 *
 * Returns: the highest number of a pin of which something is said; zero: of none
 */
guint
bw_pinout_highest (const BwPinout *pinout)
{
  g_return_val_if_fail (pinout != NULL, 0);
  for (guint number = BW_PINOUT_MAX; number > 0; number--)
    if (pinout->use[number - 1] > 0)
      return number;
  return 0;
}

/* Finds a use by its id or by the word on screen, in capitals or not. */
static gboolean
find_use (const char *word, guint *use)
{
  g_autofree char *folded = g_utf8_casefold (word, -1);
  for (guint i = 0; i < bw_pin_uses.n; i++)
    {
      g_autofree char *id = g_utf8_casefold (bw_kind_id (&bw_pin_uses, i), -1);
      g_autofree char *label = g_utf8_casefold (bw_kind_label (&bw_pin_uses, i), -1);
      *use = i;
      if (g_str_equal (folded, id) || g_str_equal (folded, label))
        return TRUE;
    }
  return FALSE;
}

static gboolean
fail_pin (const char *part, GError **error)
{
  g_set_error (error, BW_PINOUT_ERROR, BW_PINOUT_ERROR_VALUE,
               _ ("“%1$s” is no pin and what it carries; write a number from 1 to %2$d and a word, "
                  "such as “1 r; 5 ground”"),
               part, BW_PINOUT_MAX);
  return FALSE;
}

/* Takes "5 ground" or "5=ground". */
static gboolean
parse_pin (const char *part, BwPinout *pinout, GError **error)
{
  gsize digits = 0;
  guint64 number;
  guint use;

  while (g_ascii_isdigit (part[digits]))
    digits++;
  g_autofree char *first = g_strndup (part, digits);
  g_autofree char *word = g_strdup (part + digits);
  g_strstrip (word);
  if (*word == '=')
    g_strchug (memmove (word, word + 1, strlen (word)));
  if (!g_ascii_string_to_unsigned (first, 10, 1, BW_PINOUT_MAX, &number, NULL) || *word == '\0')
    return fail_pin (part, error);
  if (!find_use (word, &use))
    {
      g_autofree char *ids = bw_kind_ids (&bw_pin_uses, ", ");
      g_set_error (error, BW_PINOUT_ERROR, BW_PINOUT_ERROR_VALUE,
                   _ ("“%1$s” is nothing that a pin carries; allowed: %2$s"), word, ids);
      return FALSE;
    }
  guint taken = use < BW_N_CONDUCTORS ? bw_pinout_find (pinout, use) : 0;
  if (bw_pinout_use (pinout, (guint) number) == BW_N_PIN_USES && taken == 0)
    {
      bw_pinout_set (pinout, (guint) number, use);
      return TRUE;
    }
  if (taken != 0)
    g_set_error (error, BW_PINOUT_ERROR, BW_PINOUT_ERROR_VALUE,
                 _ ("%1$s stands on pin %2$u and on pin %3$u; one conductor has one pin"),
                 bw_kind_label (&bw_pin_uses, use), taken, (guint) number);
  else
    g_set_error (error, BW_PINOUT_ERROR, BW_PINOUT_ERROR_VALUE,
                 _ ("pin %u is given twice; one pin carries one thing"), (guint) number);
  return FALSE;
}

/**
 * bw_pinout_parse:
 * @text: pins with what each carries, between semicolons: "1 r; 2 g; 5 ground"
 * @pinout: (out caller-allocates): not touched where @text is wrong
 *
 * Returns: %FALSE with @error in %BW_PINOUT_ERROR
 */
gboolean
bw_pinout_parse (const char *text, BwPinout *pinout, GError **error)
{
  g_return_val_if_fail (text != NULL && pinout != NULL, FALSE);
  g_auto (GStrv) parts = g_strsplit_set (text, ";,", -1);
  BwPinout read = { { 0 } };

  for (char **part = parts; *part != NULL; part++)
    if (*g_strstrip (*part) != '\0' && !parse_pin (*part, &read, error))
      return FALSE;
  *pinout = read;
  return TRUE;
}

static char *
write_pins (const BwPinout *pinout, gboolean labels)
{
  GString *text = g_string_new (NULL);
  for (guint number = 1; number <= BW_PINOUT_MAX; number++)
    {
      guint use = bw_pinout_use (pinout, number);
      if (use == BW_N_PIN_USES)
        continue;
      g_string_append (text, text->len > 0 ? "; " : "");
      g_string_append_printf (text, "%u %s", number,
                              labels ? bw_kind_label (&bw_pin_uses, use)
                                     : bw_kind_id (&bw_pin_uses, use));
    }
  return g_string_free (text, FALSE);
}

/**
 * bw_pinout_to_text:
 *
 * Returns: (transfer full): @pinout as bw_pinout_parse() reads it; empty if it says nothing
 */
char *
bw_pinout_to_text (const BwPinout *pinout)
{
  g_return_val_if_fail (pinout != NULL, NULL);
  return write_pins (pinout, FALSE);
}

/**
 * bw_pinout_words:
 *
 * Returns: (transfer full): the same in words, translated: "1 R; 2 G; 5 ground"
 */
char *
bw_pinout_words (const BwPinout *pinout)
{
  g_return_val_if_fail (pinout != NULL, NULL);
  return write_pins (pinout, TRUE);
}
