/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "manual.h"

#include <string.h>

#include <gio/gio.h>
#include <glib/gi18n-lib.h>

#include "core/base/caution.h"

#define MANUAL_RESOURCE "/org/breezeway/Breezeway/manual.xml"

static void
block_free (gpointer data)
{
  BwBlock *block = data;
  g_free (block->text);
  g_free (block->section);
  g_free (block->view);
  g_free (block);
}

static void
page_free (gpointer data)
{
  BwManualPage *page = data;
  g_free (page->id);
  g_ptr_array_unref (page->blocks);
  g_free (page);
}

/* Reading */

typedef struct
{
  GPtrArray *pages;
  GString *text;      /* nullable: of the block that is being read */
  BwBlockKind kind;   /* of that block */
  gboolean in_steps;  /* an item is a step */
  gboolean in_term;   /* an item says what a term means */
  guint n_steps;      /* so far, in the list that is being read */
  const char *within; /* nullable: interned element of the block that is being read */
  char *section;      /* nullable, owned: of the section whose title comes next; likewise @view */
  char *view;
} Reader;

static BwManualPage *
page_of (const Reader *reader)
{
  return reader->pages->pdata[reader->pages->len - 1];
}

/* Takes over @text. */
static void
add_block (Reader *reader, char *text)
{
  BwBlock *block = g_new0 (BwBlock, 1);
  block->kind = reader->kind;
  block->text = text;
  if (block->kind == BW_BLOCK_STEP)
    block->number = ++reader->n_steps;
  if (block->kind == BW_BLOCK_HEADING)
    {
      block->section = g_steal_pointer (&reader->section);
      block->view = g_steal_pointer (&reader->view);
    }
  g_ptr_array_add (page_of (reader)->blocks, block);
}

static const char *
value_of (const char *name, const char **names, const char **values)
{
  for (; *names != NULL; names++, values++)
    if (strcmp (*names, name) == 0)
      return *values;
  return NULL;
}

static const char *
caution_of (const char *id)
{
  if (g_strcmp0 (id, "hook_up") == 0)
    return bw_caution_hook_up ();
  return g_strcmp0 (id, "scope") == 0 ? bw_caution_scope () : bw_caution ();
}

/* What block an element makes. */
static gboolean
kind_of (const Reader *reader, const char *element, BwBlockKind *kind)
{
  gboolean opens_page = page_of (reader)->blocks->len == 0;
  if (strcmp (element, "title") == 0)
    *kind = opens_page ? BW_BLOCK_TITLE : BW_BLOCK_HEADING;
  else if (strcmp (element, "p") == 0)
    *kind = BW_BLOCK_TEXT;
  else if (strcmp (element, "code") == 0)
    *kind = BW_BLOCK_CODE;
  else if (strcmp (element, "name") == 0)
    *kind = BW_BLOCK_TERM;
  else if (strcmp (element, "item") == 0)
    *kind = reader->in_term ? BW_BLOCK_MEANING
                            : (reader->in_steps ? BW_BLOCK_STEP : BW_BLOCK_ITEM);
  else
    return FALSE;
  return TRUE;
}

/* What is no block holds blocks. */
static void
start_holder (Reader *reader, const char *element, const char **names, const char **values)
{
  if (strcmp (element, "section") == 0)
    {
      g_free (reader->section);
      g_free (reader->view);
      reader->section = g_strdup (value_of ("id", names, values));
      reader->view = g_strdup (value_of ("view", names, values));
    }
  else if (strcmp (element, "steps") == 0 || strcmp (element, "list") == 0)
    {
      reader->in_steps = *element == 's';
      reader->n_steps = 0;
    }
  else if (strcmp (element, "term") == 0)
    reader->in_term = TRUE;
  else if (strcmp (element, "caution") == 0)
    {
      reader->kind = BW_BLOCK_CAUTION;
      add_block (reader, g_strdup (caution_of (value_of ("of", names, values))));
    }
}

/* A tag as it stands in the file, which is what translators get. */
static void
keep_tag (GString *text, const char *element, const char **names, const char **values)
{
  g_string_append_printf (text, "<%s", element);
  for (; *names != NULL; names++, values++)
    g_string_append_printf (text, " %s=\"%s\"", *names, *values);
  g_string_append_c (text, '>');
}

static void
on_start (GMarkupParseContext *context, const char *element, const char **names,
          const char **values, gpointer data, GError **error)
{
  Reader *reader = data;
  if (reader->text != NULL) /* running text keeps its tags */
    keep_tag (reader->text, element, names, values);
  else if (strcmp (element, "page") == 0)
    {
      BwManualPage *page = g_new0 (BwManualPage, 1);
      page->id = g_strdup (value_of ("id", names, values));
      page->blocks = g_ptr_array_new_with_free_func (block_free);
      g_ptr_array_add (reader->pages, page);
    }
  else if (reader->pages->len > 0 && kind_of (reader, element, &reader->kind))
    {
      reader->text = g_string_new (NULL);
      reader->within = g_intern_string (element);
    }
  else if (reader->pages->len > 0)
    start_holder (reader, element, names, values);
}

/* As the tools for translators have it: white space is one space, and none at the ends. */
static char *
one_line (const char *text)
{
  g_auto (GStrv) words = g_strsplit_set (text, " \n\t", -1);
  g_autoptr (GString) line = g_string_new (NULL);
  for (char **word = words; *word != NULL; word++)
    if (**word != '\0')
      g_string_append_printf (line, "%s%s", line->len > 0 ? " " : "", *word);
  return g_string_free (g_steal_pointer (&line), FALSE);
}

static void
end_block (Reader *reader)
{
  g_autofree char *raw = g_string_free (g_steal_pointer (&reader->text), FALSE);
  g_autofree char *line = one_line (raw);
  add_block (reader, reader->kind == BW_BLOCK_CODE ? g_steal_pointer (&raw) : g_strdup (_ (line)));
}

static void
on_end (GMarkupParseContext *context, const char *element, gpointer data, GError **error)
{
  Reader *reader = data;
  if (reader->text != NULL && strcmp (element, reader->within) == 0)
    end_block (reader);
  else if (reader->text != NULL)
    g_string_append_printf (reader->text, "</%s>", element);
  else if (strcmp (element, "term") == 0)
    reader->in_term = FALSE;
}

static void
on_text (GMarkupParseContext *context, const char *text, gsize length, gpointer data,
         GError **error)
{
  Reader *reader = data;
  if (reader->text != NULL)
    g_string_append_len (reader->text, text, (gssize) length);
}

/**
 * bw_manual_load:
 *
 * Reads the manual that is part of the program, in the language of the locale.
 *
 * Returns: (transfer full) (element-type BwManualPage): its pages, or %NULL with @error where the
 *   program was built with a manual that is not well-formed
 */
GPtrArray *
bw_manual_load (GError **error)
{
  static const GMarkupParser parser = { on_start, on_end, on_text };
  g_autoptr (GPtrArray) pages = g_ptr_array_new_with_free_func (page_free);
  Reader reader = { .pages = pages };
  g_autoptr (GBytes) bytes = g_resources_lookup_data (MANUAL_RESOURCE, G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                      error);
  if (bytes == NULL)
    return NULL;
  gsize length;
  const char *text = g_bytes_get_data (bytes, &length);
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (
      &parser, G_MARKUP_DEFAULT_FLAGS, &reader, NULL);
  gboolean read = g_markup_parse_context_parse (context, text, (gssize) length, error)
                  && g_markup_parse_context_end_parse (context, error);

  if (reader.text != NULL)
    g_string_free (reader.text, TRUE);
  g_free (reader.section);
  g_free (reader.view);
  return read ? g_steal_pointer (&pages) : NULL;
}

/* Running text */

typedef struct
{
  BwTextRunFunc visit;
  gpointer data;
} Visitor;

static void
on_run (GMarkupParseContext *context, const char *text, gsize length, gpointer data,
        GError **error)
{
  const Visitor *visitor = data;
  const char *tag = g_markup_parse_context_get_element (context);
  g_autofree char *run = g_strndup (text, length);
  visitor->visit (run, strcmp (tag, "text") != 0 ? tag : NULL, visitor->data);
}

/**
 * bw_manual_each_run:
 * @text: of a block
 * @visit: called with each piece of it and the element that it stands in, %NULL for none
 *
 * Elements do not stand in each other. A text whose tags do not match, as a translation may have it
 * by mistake, is one piece.
 */
void
bw_manual_each_run (const char *text, BwTextRunFunc visit, gpointer data)
{
  static const GMarkupParser check = { NULL };
  static const GMarkupParser parser = { .text = on_run };
  g_return_if_fail (text != NULL && visit != NULL);
  Visitor visitor = { visit, data };
  g_autofree char *whole = g_strconcat ("<text>", text, "</text>", NULL);
  g_autoptr (GMarkupParseContext) checked = g_markup_parse_context_new (
      &check, G_MARKUP_DEFAULT_FLAGS, NULL, NULL);
  g_autoptr (GMarkupParseContext) context = g_markup_parse_context_new (
      &parser, G_MARKUP_DEFAULT_FLAGS, &visitor, NULL);

  if (!g_markup_parse_context_parse (checked, whole, -1, NULL)
      || !g_markup_parse_context_end_parse (checked, NULL))
    visit (text, NULL, data);
  else
    g_markup_parse_context_parse (context, whole, -1, NULL);
}
