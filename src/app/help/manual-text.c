/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "manual-text.h"

#include <string.h>

#include <glib/gi18n-lib.h>

/* A page of the manual as text with tags. There are no colours, so that it is as light or dark as
 * the window, and sizes follow the font. */

/* How an element of running text looks. */
static const struct
{
  const char *element;
  const char *tag;
} looks[] = {
  { "key", "mono" },     { "program", "mono" }, { "command", "mono" }, { "option", "mono" },
  { "file", "mono" },    { "word", "italic" },  { "menu", "bold" },    { "button", "bold" },
  { "view", "bold" },    { "field", "bold" },
};

static const char *
look_of (const char *element)
{
  for (gsize i = 0; element != NULL && i < G_N_ELEMENTS (looks); i++)
    if (strcmp (looks[i].element, element) == 0)
      return looks[i].tag;
  return NULL;
}

/* What a kind of block looks like as a whole. */
static const char *const blocks[] = {
  [BW_BLOCK_TITLE] = "title",     [BW_BLOCK_HEADING] = "heading", [BW_BLOCK_TEXT] = "text",
  [BW_BLOCK_STEP] = "item",       [BW_BLOCK_ITEM] = "item",       [BW_BLOCK_TERM] = "term",
  [BW_BLOCK_MEANING] = "meaning", [BW_BLOCK_CODE] = "code",       [BW_BLOCK_CAUTION] = "text",
};

static void
add_tags (GtkTextBuffer *buffer)
{
  gtk_text_buffer_create_tag (buffer, "mono", "family", "monospace", NULL);
  gtk_text_buffer_create_tag (buffer, "bold", "weight", PANGO_WEIGHT_BOLD, NULL);
  gtk_text_buffer_create_tag (buffer, "italic", "style", PANGO_STYLE_ITALIC, NULL);
  gtk_text_buffer_create_tag (buffer, "title", "weight", PANGO_WEIGHT_BOLD, "scale", 1.6,
                              "pixels-below-lines", 4, NULL);
  gtk_text_buffer_create_tag (buffer, "heading", "weight", PANGO_WEIGHT_BOLD, "scale", 1.2,
                              "pixels-above-lines", 16, NULL);
  gtk_text_buffer_create_tag (buffer, "text", "pixels-above-lines", 8, NULL);
  gtk_text_buffer_create_tag (buffer, "item", "left-margin", 30, "indent", -22,
                              "pixels-above-lines", 6, NULL);
  gtk_text_buffer_create_tag (buffer, "term", "weight", PANGO_WEIGHT_BOLD, "pixels-above-lines", 8,
                              NULL);
  gtk_text_buffer_create_tag (buffer, "meaning", "left-margin", 30, NULL);
  gtk_text_buffer_create_tag (buffer, "code", "family", "monospace", "left-margin", 30,
                              "pixels-above-lines", 6, NULL);
}

typedef struct
{
  GtkTextBuffer *buffer;
  const char *block;
} Writer;

static void
write_run (const char *run, const char *element, gpointer data)
{
  const Writer *writer = data;
  const char *look = look_of (element);
  g_autofree char *words = g_strcmp0 (element, "command") == 0
                               ? g_strconcat ("breezeway-cli ", run, NULL)
                               : g_strdup (run);
  GtkTextIter end;

  gtk_text_buffer_get_end_iter (writer->buffer, &end);
  /* The tags of the block and of the run; a NULL ends them. */
  gtk_text_buffer_insert_with_tags_by_name (writer->buffer, &end, words, -1, writer->block, look,
                                            NULL);
}

static void
write_head (const Writer *writer, const BwBlock *block)
{
  if (block->kind == BW_BLOCK_STEP)
    {
      g_autofree char *number = g_strdup_printf ("%u.  ", block->number);
      write_run (number, NULL, (gpointer) writer);
    }
  else if (block->kind == BW_BLOCK_ITEM)
    write_run ("•  ", NULL, (gpointer) writer);
  else if (block->kind == BW_BLOCK_CAUTION)
    {
      write_run (_ ("Caution."), "view", (gpointer) writer);
      write_run (" ", NULL, (gpointer) writer);
    }
}

static void
write_block (GtkTextBuffer *buffer, const BwBlock *block)
{
  Writer writer = { buffer, blocks[block->kind] };
  GtkTextIter end;

  gtk_text_buffer_get_end_iter (buffer, &end);
  if (!gtk_text_iter_is_start (&end))
    gtk_text_buffer_insert (buffer, &end, "\n", -1);
  if (block->section != NULL)
    gtk_text_buffer_create_mark (buffer, block->section, &end, TRUE);
  write_head (&writer, block);
  if (block->kind == BW_BLOCK_CODE || block->kind == BW_BLOCK_CAUTION)
    write_run (block->text, NULL, &writer);
  else
    bw_manual_each_run (block->text, write_run, &writer);
}

/**
 * bw_manual_buffer_new:
 *
 * Returns: (transfer full): the text of @page, with a mark at each heading that has the id of its
 *   section as name
 */
GtkTextBuffer *
bw_manual_buffer_new (const BwManualPage *page)
{
  g_return_val_if_fail (page != NULL, NULL);
  GtkTextBuffer *buffer = gtk_text_buffer_new (NULL);
  GtkTextIter start;

  add_tags (buffer);
  for (guint i = 0; i < page->blocks->len; i++)
    write_block (buffer, bw_manual_block (page, i));
  gtk_text_buffer_get_start_iter (buffer, &start);
  gtk_text_buffer_place_cursor (buffer, &start);
  return buffer;
}
