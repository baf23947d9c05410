/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include "kinds.h"
#include "pinout.h"
#include "quantity.h"

G_BEGIN_DECLS

/* Monitors, inputs, sources and rasters are plain structs. A table of BwField describes each
 * member once: its key in files, its words on screen, its unit and what is allowed. Loading,
 * saving, copying, checking and the editor's form all follow from the table.
 *
 * A figure (%BW_FIELD_FIGURE) of what is on the bench may be unknown, whatever its type, and keeps
 * where it comes from. The member itself says that it is unknown: zero where zero is out of range,
 * else NaN; no ratio, no band, no pin, no kind in a set, an empty text; for a choice the number of its
 * kinds, for a switch %BW_SWITCH_UNKNOWN. bw_field_is_set() tells, bw_field_forget() makes it so,
 * and nothing else needs to know. */

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
  BW_FIELD_BANDS,      /* BwBands */
  BW_FIELD_PINS        /* BwPinout, written "1 r; 2 g; 5 ground" */
} BwFieldType;

typedef enum
{
  BW_FIELD_REQUIRED = 1 << 0, /* must be written, else the struct's preset stands; a figure of this
                               * kind has no preset and is unknown then */
  BW_FIELD_UNKNOWN = 1 << 1,  /* zero stands for "not known" and is not written */
  BW_FIELD_ONE_BAND = 1 << 2, /* bands: at most one */
  BW_FIELD_RASTER = 1 << 3,   /* text: the id of a raster */
  BW_FIELD_LINES = 1 << 4,    /* text: may have several lines */
  BW_FIELD_FIGURE = 1 << 5,   /* may be unknown, and keeps its origin */
  BW_FIELD_OPTIONAL = 1 << 6, /* figure: left empty it says that there is none */
} BwFieldFlags;

/* A switch (gboolean) of which nobody knows how it stands. */
#define BW_SWITCH_UNKNOWN 2

/* Where a figure comes from. */
typedef enum
{
  BW_ORIGIN_NOT_SAID,
  BW_ORIGIN_PLATE,    /* read from the rating plate, or what is marked on the set */
  BW_ORIGIN_PAPERS,   /* brochure, manual, service sheet */
  BW_ORIGIN_MEASURED, /* on the bench */
  BW_ORIGIN_CLASS,    /* from a class of the catalogue: what such a set commonly has */
  BW_N_ORIGINS
} BwOrigin;

/* The most members that a table with origins may have. */
#define BW_ORIGINS_MAX 40

extern const BwKindTable bw_origins;

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

/**
 * BwFieldTable:
 * @origins: offset of the struct's guint8[BW_ORIGINS_MAX], which holds the BwOrigin of each member
 *   in the order of the table; zero: it has none
 */
typedef struct
{
  guint n;
  const BwField *at;
  gsize origins;
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

const BwField *bw_field_at (const BwFieldTable *table, gsize offset);

gboolean bw_field_is_set (const BwField *field, gconstpointer object);
gboolean bw_field_is_needed (const BwField *field);
void bw_field_forget (const BwField *field, gpointer object);
BwOrigin bw_field_origin (const BwFieldTable *table, const BwField *field, gconstpointer object);
void bw_field_set_origin (const BwFieldTable *table, const BwField *field, gpointer object,
                          BwOrigin origin);
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
void bw_fields_forget (const BwFieldTable *table, gpointer object);
void bw_fields_set_origins (const BwFieldTable *table, gpointer object, BwOrigin origin);
gboolean bw_fields_need_second_form (const BwFieldTable *table, gconstpointer object);
gboolean bw_fields_equal (const BwFieldTable *table, gconstpointer a, gconstpointer b);

G_END_DECLS
