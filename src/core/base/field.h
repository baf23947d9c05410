/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "kinds.h"
#include "quantity.h"

G_BEGIN_DECLS

/* Monitors, inputs, sources and rasters are plain structs. A table of BwField describes each
 * member once: its key in files, its words on screen, its unit and what is allowed. Loading,
 * saving, copying, checking and the editor's form all follow from the table. */

typedef enum
{
  BW_FIELD_TEXT,       /* char *, owned; never NULL in a checked object */
  BW_FIELD_QUANTITY,   /* double, base unit */
  BW_FIELD_COUNT,      /* int */
  BW_FIELD_HALF_LINES, /* int, half lines; written as lines: "242.5" */
  BW_FIELD_RATE,       /* BwRatio, hertz */
  BW_FIELD_ASPECT,     /* BwRatio, written "4:3" */
  BW_FIELD_CHOICE,     /* guint, one kind of @kinds */
  BW_FIELD_SET,        /* guint, a set of kinds of @kinds */
  BW_FIELD_SWITCH,     /* gboolean, "yes" or "no" */
  BW_FIELD_BANDS       /* BwBands */
} BwFieldType;

typedef enum
{
  BW_FIELD_REQUIRED = 1 << 0, /* must be written; else zero (or the struct's preset) stands */
  BW_FIELD_UNKNOWN = 1 << 1,  /* zero stands for "not known" and is not written */
  BW_FIELD_ONE_BAND = 1 << 2, /* bands: at most one */
  BW_FIELD_RASTER = 1 << 3,   /* text: the id of a raster */
  BW_FIELD_LINES = 1 << 4,    /* text: may have several lines */
} BwFieldFlags;

/**
 * BwField:
 * @key: the key in files
 * @label: the words on screen, to be translated with bw_field_label()
 * @help: one sentence on what it is and how it is counted, to be translated
 * @low: the least value allowed, in the base unit (quantities, bands and counts)
 * @high: the greatest value allowed
 * @unit: (nullable): the unit that people use for it
 * @half_digit_offset: quantities: of the double that receives what the last digit leaves open;
 *   zero: nothing does
 */
typedef struct
{
  const char *key;
  const char *label;
  const char *help;
  BwFieldType type;
  guint flags;
  gsize offset;
  BwDimension dimension;
  double low;
  double high;
  const char *unit;
  const BwKindTable *kinds;
  gsize half_digit_offset;
} BwField;

typedef struct
{
  guint n;
  const BwField *at;
} BwFieldTable;

#define BW_FIELD_ERROR (bw_field_error_quark ())

typedef enum
{
  BW_FIELD_ERROR_MISSING,
  BW_FIELD_ERROR_VALUE,
  BW_FIELD_ERROR_RANGE,
  BW_FIELD_ERROR_KIND
} BwFieldError;

GQuark bw_field_error_quark (void);

const char *bw_field_label (const BwField *field);
const char *bw_field_help (const BwField *field);
char *bw_field_allowed (const BwField *field, char mark);
const BwField *bw_field_find (const BwFieldTable *table, const char *key);

gboolean bw_field_is_set (const BwField *field, gconstpointer object);
gboolean bw_field_parse (const BwField *field, gpointer object, const char *text, char mark,
                         GError **error);
char *bw_field_to_entry (const BwField *field, gconstpointer object, char mark);
char *bw_field_to_file (const BwField *field, gconstpointer object);
gboolean bw_field_equal (const BwField *field, gconstpointer a, gconstpointer b);

guint bw_field_get_uint (const BwField *field, gconstpointer object);
void bw_field_set_uint (const BwField *field, gpointer object, guint value);
const char *bw_field_get_string (const BwField *field, gconstpointer object);

gboolean bw_fields_load (const BwFieldTable *table, gpointer object, GKeyFile *keys,
                         const char *group, const char *file, GError **error);
void bw_fields_save (const BwFieldTable *table, gconstpointer object, GKeyFile *keys,
                     const char *group);
void bw_fields_copy (const BwFieldTable *table, gpointer to, gconstpointer from);
void bw_fields_clear (const BwFieldTable *table, gpointer object);
gboolean bw_fields_equal (const BwFieldTable *table, gconstpointer a, gconstpointer b);

G_END_DECLS
