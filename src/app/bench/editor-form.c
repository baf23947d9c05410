/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "editor-form.h"

#include <string.h>

#include <glib/gi18n-lib.h>

#include "app/widgets/form.h"
#include "pick-lists.h"

/* The rows of a form, made from the table of fields. */

/* Headings of the form: each stands before the field of this key. */
static const struct
{
  BwPart part;
  const char *key;
  const char *heading;
} headings[] = {
  { BW_PART_SHEET, "supply_voltage", N_ ("Mains") },
  { BW_PART_SHEET, "voltage_accuracy", N_ ("Instruments") },
  { BW_PART_SHEET, "line_rate_margin", N_ ("Margins: when a fit is called tight") },
  { BW_PART_MONITOR, "mains_voltage", N_ ("Mains rating") },
  { BW_PART_MONITOR, "diagonal", N_ ("Tube") },
  { BW_PART_MONITOR, "line_rates", N_ ("Scan and video") },
  { BW_PART_INPUT, "connectors", N_ ("What it takes") },
  { BW_PART_INPUT, "video_level", N_ ("Levels") },
  { BW_PART_INPUT, "termination", N_ ("Termination") },
  { BW_PART_INPUT, "clamp", N_ ("Black level and bandwidth") },
  { BW_PART_SOURCE, "raster", N_ ("Signal") },
  { BW_PART_SOURCE, "video_level", N_ ("Levels") },
  { BW_PART_SOURCE, "source_resistance", N_ ("Output") },
  { BW_PART_SOURCE, "aspect", N_ ("Picture") },
};

static BwEditorRow *
row_new (BwDocument *document, const BwField *field)
{
  if (field->flags & BW_FIELD_RASTER)
    {
      g_autoptr (GListModel) rasters = bw_pick_list_rasters (document);
      return bw_raster_row_new (field, rasters);
    }
  return bw_form_row_new (field);
}

static void
append_heading (GtkBox *form, BwPart part, const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (headings); i++)
    if (headings[i].part == part && strcmp (headings[i].key, key) == 0)
      {
        GtkWidget *heading = gtk_label_new (_ (headings[i].heading));
        gtk_label_set_xalign (GTK_LABEL (heading), 0);
        gtk_label_set_wrap (GTK_LABEL (heading), TRUE);
        gtk_widget_add_css_class (heading, "bw-heading");
        gtk_widget_add_css_class (heading, "bw-form-heading");
        gtk_box_append (form, heading);
      }
}

/**
 * bw_editor_form_build:
 * @form: an empty box
 * @rows: (element-type BwEditorRow): receives the rows, borrowed, in the table's order
 *
 * Fills @form with a row for each field of @part, under headings.
 */
void
bw_editor_form_build (GtkBox *form, BwDocument *document, BwPart part, GPtrArray *rows)
{
  const BwFieldTable *table = bw_part_fields (part);

  for (guint i = 0; i < table->n; i++)
    {
      BwEditorRow *row = row_new (document, &table->at[i]);
      append_heading (form, part, table->at[i].key);
      gtk_box_append (form, GTK_WIDGET (row));
      g_ptr_array_add (rows, row);
    }
}
