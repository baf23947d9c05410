/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* The manual as data: pages of blocks. Its text is data/manual/manual.xml, which says what stands
 * in it. */

typedef enum
{
  BW_BLOCK_TITLE,   /* of the page */
  BW_BLOCK_HEADING, /* of a section */
  BW_BLOCK_TEXT,
  BW_BLOCK_STEP,
  BW_BLOCK_ITEM,
  BW_BLOCK_TERM,
  BW_BLOCK_MEANING, /* of the term before it */
  BW_BLOCK_CODE,
  BW_BLOCK_CAUTION
} BwBlockKind;

/**
 * BwBlock:
 * @text: translated; with the elements of running text as tags, but for code and cautions, which
 *   have none
 * @number: of a step, from 1
 * @section: (nullable): of a heading: the id of its section
 * @view: (nullable): of a heading: the view that its section is about
 */
typedef struct
{
  BwBlockKind kind;
  char *text;
  guint number;
  char *section;
  char *view;
} BwBlock;

/**
 * BwManualPage:
 * @id: that of the page of the window that it is about, or another
 * @blocks: (element-type BwBlock): the first is the title
 */
typedef struct
{
  char *id;
  GPtrArray *blocks;
} BwManualPage;

GPtrArray *bw_manual_load (GError **error);

/* Called with each piece of running text; @tag is the element that it stands in, or NULL. */
typedef void (*BwTextRunFunc) (const char *run, const char *tag, gpointer data);
void bw_manual_each_run (const char *text, BwTextRunFunc visit, gpointer data);

/**
 * bw_manual_page:
 *
 * Returns: (transfer none): page @i of @manual
 */
static inline const BwManualPage *
bw_manual_page (const GPtrArray *manual, guint i)
{
  return (const BwManualPage *) g_ptr_array_index (manual, i);
}

/**
 * bw_manual_block:
 *
 * Returns: (transfer none): block @i of @page
 */
static inline const BwBlock *
bw_manual_block (const BwManualPage *page, guint i)
{
  return (const BwBlock *) g_ptr_array_index (page->blocks, i);
}

G_END_DECLS
