/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "listing.h"

#include <string.h>

#include "core/base/harmless.h"

/* Text */

static int
char_width (gunichar c)
{
  if (g_unichar_iszerowidth (c))
    return 0;
  return g_unichar_iswide (c) ? 2 : 1;
}

/**
 * bw_text_width:
 *
 * Returns: the columns that @text takes in a terminal
 */
int
bw_text_width (const char *text)
{
  g_return_val_if_fail (text != NULL, 0);
  int columns = 0;
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    columns += char_width (g_utf8_get_char (p));
  return columns;
}

/* Where a line that starts at @start must end: after its last whole word that fits, or inside the
 * first word if that does not fit. */
static const char *
line_end (const char *start, int columns)
{
  const char *space = NULL;
  const char *p = start;
  int used = 0;

  for (; *p != '\0'; p = g_utf8_next_char (p))
    {
      used += char_width (g_utf8_get_char (p));
      if (*p == ' ' && p > start)
        space = p;
      if (used > columns)
        break;
    }
  if (*p == '\0')
    return p;
  if (space != NULL)
    return space;
  return p > start ? p : g_utf8_next_char (p);
}

/* The lines of text that is harmless. */
static GPtrArray *
wrap (const char *text, int columns)
{
  GPtrArray *lines = g_ptr_array_new_with_free_func (g_free);
  const char *p = text + strspn (text, " ");

  do
    {
      const char *end = columns > 0 ? line_end (p, MAX (2, columns)) : p + strlen (p);
      g_autoptr (GString) line = g_string_new_len (p, end - p);
      g_string_replace (line, "\u00a0", " ", 0);
      g_ptr_array_add (lines, g_strdup (g_strchomp (line->str)));
      p = end + strspn (end, " ");
    }
  while (*p != '\0');
  return lines;
}

/* @text: is made harmless
 * @columns: the longest line; zero for any length
 *
 * Breaks @text at spaces, and words that are too long where the line ends. No-break spaces hold;
 * in the lines they are plain ones, so that they can be searched for.
 *
 * Returns: (transfer full) (element-type utf8): the lines, at least one */
static GPtrArray *
wrap_harmless (const char *text, int columns)
{
  g_return_val_if_fail (text != NULL, NULL);
  g_autofree char *plain = bw_text_harmless (text);
  return wrap (plain, columns);
}

/**
 * bw_text_append_wrapped:
 * @first: what stands before the first line
 * @indent: how far the other lines are set in
 * @columns: where lines end; zero for nowhere
 *
 * Appends @text in lines.
 */
void
bw_text_append_wrapped (GString *to, const char *first, int indent, int columns, const char *text)
{
  g_return_if_fail (to != NULL && first != NULL && text != NULL);
  int before = MAX (indent, bw_text_width (first));
  g_autoptr (GPtrArray) lines = wrap_harmless (text, columns > 0 ? MAX (20, columns - before) : 0);

  for (guint i = 0; i < lines->len; i++)
    if (i == 0)
      g_string_append_printf (to, "%s%s\n", first, (const char *) lines->pdata[i]);
    else
      g_string_append_printf (to, "%*s%s\n", indent, "", (const char *) lines->pdata[i]);
}

/* Columns */

#define GAP 2
#define LEAST_WRAPPED 16

typedef struct
{
  gboolean right;
  gboolean wraps;
  int gap; /* before the column */
  int width;
} Column;

struct _BwListing
{
  guint n_columns;
  Column *columns;
  GPtrArray *rows; /* owned arrays of n_columns owned strings, or of one that is a line */
};

/**
 * bw_listing_new:
 *
 * Returns: (transfer full): a listing without rows, whose columns are as wide as their cells
 */
BwListing *
bw_listing_new (guint columns)
{
  BwListing *listing = g_new0 (BwListing, 1);
  listing->n_columns = columns;
  listing->columns = g_new0 (Column, columns);
  for (guint i = 1; i < columns; i++)
    listing->columns[i].gap = GAP;
  listing->rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_strfreev);
  return listing;
}

/**
 * bw_listing_free:
 * @listing: (nullable) (transfer full): freed with all its cells
 */
void
bw_listing_free (BwListing *listing)
{
  if (listing == NULL)
    return;
  g_ptr_array_unref (listing->rows);
  g_free (listing->columns);
  g_free (listing);
}

/**
 * bw_listing_set_right:
 *
 * Sets the cells of @column to its right edge, as numbers want.
 */
void
bw_listing_set_right (BwListing *listing, guint column)
{
  g_return_if_fail (listing != NULL && column < listing->n_columns);
  listing->columns[column].right = TRUE;
}

/**
 * bw_listing_set_wraps:
 *
 * Lets the cells of @column wrap where the listing would be too wide.
 */
void
bw_listing_set_wraps (BwListing *listing, guint column)
{
  g_return_if_fail (listing != NULL && column < listing->n_columns);
  listing->columns[column].wraps = TRUE;
}

/* Whether @text has a letter that is read from right to left. */
static gboolean
has_right_to_left (const char *text)
{
  for (const char *p = text; *p != '\0'; p = g_utf8_next_char (p))
    {
      GUnicodeScript script = g_unichar_get_script (g_utf8_get_char (p));
      if (script == G_UNICODE_SCRIPT_HEBREW || script == G_UNICODE_SCRIPT_ARABIC
          || script == G_UNICODE_SCRIPT_SYRIAC || script == G_UNICODE_SCRIPT_THAANA
          || script == G_UNICODE_SCRIPT_NKO)
        return TRUE;
    }
  return FALSE;
}

/* A mark (U+200E) after what is read from right to left keeps the numbers of the next column from
 * being shown before it. */
static char *
cell_text (const char *text)
{
  g_autofree char *harmless = bw_text_harmless (text);
  return has_right_to_left (harmless) ? g_strconcat (harmless, "\u200e", NULL)
                                      : g_steal_pointer (&harmless);
}

/**
 * bw_listing_add_row:
 * @cells: %NULL-terminated; cells that are missing at the end are empty
 */
void
bw_listing_add_row (BwListing *listing, const char *const *cells)
{
  g_return_if_fail (listing != NULL && cells != NULL);
  char **row = g_new0 (char *, listing->n_columns + 1);
  for (guint i = 0; i < listing->n_columns; i++)
    {
      row[i] = cell_text (*cells != NULL ? *cells++ : "");
      listing->columns[i].width = MAX (listing->columns[i].width, bw_text_width (row[i]));
    }
  g_ptr_array_add (listing->rows, row);
}

/**
 * bw_listing_add_line:
 *
 * Adds a line of words that goes across all columns, below which the rows that follow are set in.
 */
void
bw_listing_add_line (BwListing *listing, const char *text)
{
  g_return_if_fail (listing != NULL && text != NULL);
  char **row = g_new0 (char *, 2);
  row[0] = cell_text (text);
  g_ptr_array_add (listing->rows, row);
}

static gboolean
is_line (const BwListing *listing, char **row)
{
  return listing->n_columns > 1 && row[1] == NULL;
}

static gboolean
has_lines (const BwListing *listing)
{
  for (guint i = 0; i < listing->rows->len; i++)
    if (is_line (listing, listing->rows->pdata[i]))
      return TRUE;
  return FALSE;
}

/* The widest of the columns that wrap gives way until all is as narrow as it should be. */
static void
narrow (BwListing *listing, int columns)
{
  int excess = -columns;
  for (guint i = 0; i < listing->n_columns; i++)
    excess += listing->columns[i].gap + listing->columns[i].width;
  while (excess > 0)
    {
      Column *widest = NULL;
      for (guint i = 0; i < listing->n_columns; i++)
        if (listing->columns[i].wraps && listing->columns[i].width > LEAST_WRAPPED
            && (widest == NULL || listing->columns[i].width > widest->width))
          widest = &listing->columns[i];
      if (widest == NULL)
        return;
      widest->width--;
      excess--;
    }
}

static void
append_padded (GString *to, const char *text, const Column *column)
{
  int spaces = MAX (0, column->width - bw_text_width (text));
  g_string_append_printf (to, "%*s%*s%s%*s", column->gap, "", column->right ? spaces : 0, "", text,
                          column->right ? 0 : spaces, "");
}

static void
trim_line (GString *line)
{
  while (line->len > 0 && line->str[line->len - 1] == ' ')
    g_string_truncate (line, line->len - 1);
}

/* Line @index of the row's wrapped cells. Returns FALSE, adding nothing, if no cell has one. */
static gboolean
append_line (const BwListing *listing, GPtrArray *cells, guint index, GString *to, int indent)
{
  g_autoptr (GString) line = g_string_new (NULL);
  gboolean any = FALSE;

  g_string_append_printf (line, "%*s", indent, "");
  for (guint i = 0; i < listing->n_columns; i++)
    {
      GPtrArray *lines = cells->pdata[i];
      any = any || index < lines->len;
      append_padded (line, index < lines->len ? lines->pdata[index] : "", &listing->columns[i]);
    }
  if (!any)
    return FALSE;
  trim_line (line);
  g_string_append_printf (to, "%s\n", line->str);
  return TRUE;
}

/**
 * bw_listing_append_to:
 * @indent: columns to the left of the listing
 * @columns: where lines end; zero for nowhere
 *
 * Appends all rows.
 */
void
bw_listing_append_to (BwListing *listing, GString *to, int indent, int columns)
{
  g_return_if_fail (listing != NULL && to != NULL);
  int set_in = indent + (has_lines (listing) ? GAP : 0);
  if (columns > 0)
    narrow (listing, columns - set_in);
  for (guint row = 0; row < listing->rows->len; row++)
    {
      char **texts = listing->rows->pdata[row];
      if (is_line (listing, texts))
        {
          g_string_append_printf (to, "%*s%s\n", indent, "", texts[0]);
          continue;
        }
      g_autoptr (GPtrArray) cells = g_ptr_array_new_with_free_func (
          (GDestroyNotify) g_ptr_array_unref);
      for (guint i = 0; i < listing->n_columns; i++)
        g_ptr_array_add (cells, wrap (texts[i], listing->columns[i].width));
      for (guint index = 0; append_line (listing, cells, index, to, set_in); index++)
        ;
    }
}
