/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "document-private.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* Rasters that the sheet itself holds: worked out, read from a mode line, made for its monitor. */

/* Everything that a file holds of @raster but its id. */
static char *
raster_text (const BwRaster *raster)
{
  g_autoptr (GKeyFile) keys = g_key_file_new ();
  bw_raster_save (raster, keys, "raster");
  return g_key_file_to_data (keys, NULL, NULL);
}

static gboolean
is_same (const BwRaster *a, const BwRaster *b)
{
  g_autofree char *text_a = raster_text (a);
  g_autofree char *text_b = raster_text (b);
  return strcmp (text_a, text_b) == 0;
}

/* The raster of the sheet or the catalogue that is @raster under any id; NULL if there is none. */
static const BwRaster *
find_same (BwDocument *self, const BwRaster *raster)
{
  const BwSheet *sheet = self->now.sheet;
  const BwRaster *known = bw_catalogue_raster (self->catalogue, raster->id);

  for (guint i = 0; i < sheet->rasters->len; i++)
    if (is_same (sheet->rasters->pdata[i], raster))
      return sheet->rasters->pdata[i];
  return known != NULL && is_same (known, raster) ? known : NULL;
}

static gboolean
is_taken (BwDocument *self, const char *id)
{
  BwSource probe = { .raster = (char *) id };
  return bw_sheet_raster (self->now.sheet, self->catalogue, &probe) != NULL;
}

/* Letters, digits, points and dashes alone, so that it can name a group of the file. */
static char *
plain_id (const char *wanted)
{
  char *id = g_ascii_strdown (wanted, -1);
  for (char *p = id; *p != '\0'; p++)
    if (!g_ascii_isalnum (*p) && *p != '.')
      *p = '-';
  if (*id == '\0')
    {
      g_free (id);
      return g_strdup ("own");
    }
  return id;
}

static char *
free_id (BwDocument *self, const char *wanted)
{
  g_autofree char *stem = plain_id (wanted);
  char *id = g_strdup (stem);
  for (guint i = 2; is_taken (self, id); i++)
    {
      g_free (id);
      id = g_strdup_printf ("%s-%u", stem, i);
    }
  return id;
}

/* Gives @next a copy of @raster, and returns the id that it has there. */
static const char *
add_raster (BwDocument *self, BwSheet *next, const BwRaster *raster)
{
  BwRaster *copy = bw_raster_copy (raster);
  g_free (copy->id);
  copy->id = free_id (self, raster->id);
  g_ptr_array_add (next->rasters, copy);
  return copy->id;
}

/**
 * bw_document_use_raster:
 * @source: a source of the sheet
 * @raster: copied, unless it is already in the sheet or the catalogue
 *
 * Gives a source another raster, in one step that can be undone. A raster that is new to the sheet
 * travels with it, under an id of its own.
 *
 * Returns: %FALSE with @error if the raster or the source with it is unsound; the sheet is then as
 * it was
 */
gboolean
bw_document_use_raster (BwDocument *self, guint source, const BwRaster *raster, GError **error)
{
  g_return_val_if_fail (source < self->now.sheet->sources->len, FALSE);
  if (!bw_document_take_or_fail (self, error) || !bw_raster_check (raster, error))
    return FALSE;
  g_autoptr (BwSheet) next = bw_sheet_copy (self->now.sheet);
  BwSource *changed = bw_sheet_source (next, source);
  const BwRaster *same = find_same (self, raster);
  const char *id = same != NULL ? same->id : add_raster (self, next, raster);

  if (strcmp (changed->raster, id) == 0)
    return TRUE;
  g_free (changed->raster);
  changed->raster = g_strdup (id);
  if (!bw_source_check (changed, error))
    return FALSE;
  char *words = g_strdup_printf (_ ("change of the raster of %s"), changed->name);
  bw_document_commit (self, g_steal_pointer (&next), self->now.source, self->now.input, words);
  return TRUE;
}
