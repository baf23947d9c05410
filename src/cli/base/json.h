/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * BwJson:
 *
 * Writes JSON text. Numbers have a decimal point whatever the locale, and the fewest digits that
 * give the same double again. What is not known is null.
 */
typedef struct _BwJson BwJson;

BwJson *bw_json_new (void);
void bw_json_free (BwJson *json);
const char *bw_json_text (const BwJson *json);

void bw_json_begin_object (BwJson *json, const char *key);
void bw_json_end_object (BwJson *json);
void bw_json_begin_array (BwJson *json, const char *key);
void bw_json_end_array (BwJson *json);

void bw_json_null (BwJson *json, const char *key);
void bw_json_string (BwJson *json, const char *key, const char *value);
void bw_json_number (BwJson *json, const char *key, double value);
void bw_json_number_if (BwJson *json, const char *key, gboolean known, double value);
void bw_json_boolean (BwJson *json, const char *key, gboolean value);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (BwJson, bw_json_free)

G_END_DECLS
