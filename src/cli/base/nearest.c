/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "nearest.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* Longer names are compared by their beginning only. */
#define NAME_MAX_BYTES 64

typedef struct
{
  const char *name;
  guint distance;
} Candidate;

/* Returns: how many single bytes must be put in, taken out or changed to make @b from @a; only the
 * first 64 bytes of each count */
static guint
edit_distance (const char *a, const char *b)
{
  guint row[NAME_MAX_BYTES + 1];
  gsize length_a = MIN (strlen (a), NAME_MAX_BYTES);
  gsize length_b = MIN (strlen (b), NAME_MAX_BYTES);

  for (guint j = 0; j <= length_b; j++)
    row[j] = j;
  for (guint i = 1; i <= length_a; i++)
    {
      guint diagonal = row[0];
      row[0] = i;
      for (guint j = 1; j <= length_b; j++)
        {
          guint changed = diagonal + (a[i - 1] != b[j - 1]);
          diagonal = row[j];
          row[j] = MIN (changed, MIN (row[j], row[j - 1]) + 1);
        }
    }
  return row[length_b];
}

/* A name that begins with what was written is nearer than any that does not. */
static Candidate
compare (const char *name, const char *folded)
{
  g_autofree char *folded_name = g_utf8_casefold (name, -1);
  Candidate candidate = { name, edit_distance (folded, folded_name) };
  if (*folded == '\0' || !g_str_has_prefix (folded_name, folded))
    candidate.distance += NAME_MAX_BYTES;
  return candidate;
}

static int
by_distance (gconstpointer a, gconstpointer b)
{
  const Candidate *left = a;
  const Candidate *right = b;
  int order = (left->distance > right->distance) - (left->distance < right->distance);
  return order != 0 ? order : strcmp (left->name, right->name);
}

/**
 * bw_nearest_names:
 * @names: (element-type utf8): what there is
 * @wanted: what was asked for and is not among them
 * @n: how many to name at most
 *
 * Returns: (transfer full): those of @names most like @wanted, quoted, set apart by commas
 */
char *
bw_nearest_names (GPtrArray *names, const char *wanted, guint n)
{
  g_autoptr (GArray) candidates = g_array_new (FALSE, FALSE, sizeof (Candidate));
  g_autofree char *folded = g_utf8_casefold (wanted, -1);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < names->len; i++)
    {
      Candidate candidate = compare (names->pdata[i], folded);
      g_array_append_val (candidates, candidate);
    }
  g_array_sort (candidates, by_distance);
  for (guint i = 0; i < MIN (n, candidates->len); i++)
    /* Translators: what stands before the suggestion, and the suggestion. */
    g_string_append_printf (text, _ ("%1$s“%2$s”"), i > 0 ? ", " : "",
                            g_array_index (candidates, Candidate, i).name);
  return g_string_free (text, FALSE);
}
