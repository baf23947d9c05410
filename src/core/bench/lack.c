/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "lack.h"

#include <glib/gi18n-lib.h>

/**
 * bw_lack_name:
 *
 * Returns: (transfer full): the figure that is lacking and whose it is, translated: "“Video level”
 *   of the input"
 */
char *
bw_lack_name (const BwLack *lack)
{
  g_return_val_if_fail (lack != NULL && lack->field != NULL, NULL);
  const char *label = bw_field_label (lack->field);

  switch (lack->owner)
    {
    case BW_OWNER_MONITOR:
      return g_strdup_printf (_ ("“%s” of the monitor"), label);
    case BW_OWNER_INPUT:
      return g_strdup_printf (_ ("“%s” of the input"), label);
    case BW_OWNER_SOURCE:
      return g_strdup_printf (_ ("“%s” of the source"), label);
    case BW_OWNER_SHEET:
    default:
      return g_strdup_printf (_ ("“%s” of the sheet"), label);
    }
}

/**
 * bw_lack_key:
 *
 * Returns: (transfer full) (nullable): the same for scripts, as the sheet's file names it:
 *   "input.video_level"; %NULL if nothing is lacking
 */
char *
bw_lack_key (const BwLack *lack)
{
  static const char *const owners[] = {
    [BW_OWNER_MONITOR] = "monitor",
    [BW_OWNER_INPUT] = "input",
    [BW_OWNER_SOURCE] = "source",
    [BW_OWNER_SHEET] = "bench-sheet",
  };

  g_return_val_if_fail (lack != NULL, NULL);
  return lack->field != NULL ? g_strconcat (owners[lack->owner], ".", lack->field->key, NULL)
                             : NULL;
}

/**
 * bw_lack_says:
 *
 * Returns: (transfer full): a sentence for a place where the answer would stand, translated
 */
char *
bw_lack_says (const BwLack *lack)
{
  g_autofree char *name = bw_lack_name (lack);
  /* Translators: the figure that is lacking, such as: “Video level” of the input */
  return g_strdup_printf (_ ("%s is not known: enter it to have an answer here."), name);
}

static gboolean
lacks (const BwFieldTable *table, BwFigureOwner owner, gconstpointer object, gsize offset,
       BwLack *lack)
{
  const BwField *field = bw_field_at (table, offset);
  if (bw_field_is_set (field, object))
    return FALSE;
  *lack = (BwLack){ field, owner };
  return TRUE;
}

/**
 * bw_lacks_monitor:
 * @offset: of a member of @monitor
 * @lack: (out caller-allocates): the figure, if it is lacking
 *
 * Returns: whether it is not known
 */
gboolean
bw_lacks_monitor (const BwMonitor *monitor, gsize offset, BwLack *lack)
{
  g_return_val_if_fail (monitor != NULL && lack != NULL, TRUE);
  return lacks (&bw_monitor_fields, BW_OWNER_MONITOR, monitor, offset, lack);
}

/**
 * bw_lacks_input:
 * @offset: of a member of @input
 * @lack: (out caller-allocates): the figure, if it is lacking
 *
 * Returns: whether it is not known
 */
gboolean
bw_lacks_input (const BwInput *input, gsize offset, BwLack *lack)
{
  g_return_val_if_fail (input != NULL && lack != NULL, TRUE);
  return lacks (&bw_input_fields, BW_OWNER_INPUT, input, offset, lack);
}

/**
 * bw_lacks_source:
 * @offset: of a member of @source
 * @lack: (out caller-allocates): the figure, if it is lacking
 *
 * Returns: whether it is not known
 */
gboolean
bw_lacks_source (const BwSource *source, gsize offset, BwLack *lack)
{
  g_return_val_if_fail (source != NULL && lack != NULL, TRUE);
  return lacks (&bw_source_fields, BW_OWNER_SOURCE, source, offset, lack);
}

/**
 * bw_lacks_load:
 * @own_sync: whether the conductor carries sync alone
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether it is not known what the conductor ends in, in each position of a switch:
 *   bw_input_load_ohm() cannot be told
 */
gboolean
bw_lacks_load (const BwInput *input, gboolean own_sync, BwLack *lack)
{
  g_return_val_if_fail (input != NULL && lack != NULL, TRUE);
  guint termination = own_sync ? input->sync_termination : input->termination;
  gboolean switched = termination == BW_TERMINATION_SWITCHED;
#define LACKS(member) bw_lacks_input (input, G_STRUCT_OFFSET (BwInput, member), lack)

  if (own_sync ? LACKS (sync_termination) : LACKS (termination))
    return TRUE;
  if (switched && (own_sync ? LACKS (sync_terminated) : LACKS (terminated)))
    return TRUE;
  if (termination != BW_TERMINATION_FIXED && LACKS (input_ohm))
    return TRUE;
  return !own_sync && (LACKS (loop_through) || (input->loop_through && LACKS (loop_ended)));
#undef LACKS
}

static gboolean
has_own_sync (const BwSource *source)
{
  return (source->syncs & (BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE))) != 0;
}

#define LACKS(member) bw_lacks_source (source, G_STRUCT_OFFSET (BwSource, member), lack)

/**
 * bw_lacks_wire:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known that bw_wire_form_of_source() needs
 */
gboolean
bw_lacks_wire (const BwSource *source, BwLack *lack)
{
  g_return_val_if_fail (source != NULL && lack != NULL, TRUE);
  return LACKS (raster) || LACKS (signal) || LACKS (syncs)
         || (bw_signal_is_coded (source->signal) && LACKS (system)) || LACKS (video_v)
         || LACKS (sync_v) || LACKS (setup_ire)
         || (has_own_sync (source) && (LACKS (sync_load) || LACKS (sync_polarity)));
}

/**
 * bw_lacks_drive:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known of what drives the conductors of @source: resistance,
 * coupling and d.c.
 */
gboolean
bw_lacks_drive (const BwSource *source, BwLack *lack)
{
  g_return_val_if_fail (source != NULL && lack != NULL, TRUE);
  return LACKS (source_ohm) || (has_own_sync (source) && LACKS (sync_ohm)) || LACKS (coupling)
         || (source->coupling == BW_COUPLING_DC && LACKS (dc_v));
}

/**
 * bw_lacks_plan:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known without which no way from @source to @input can be
 * searched: what the one gives and the other takes, and on which connectors
 */
gboolean
bw_lacks_plan (const BwSource *source, const BwInput *input, BwLack *lack)
{
  g_return_val_if_fail (source != NULL && input != NULL && lack != NULL, TRUE);
  return LACKS (raster) || LACKS (signal) || LACKS (syncs)
         || (bw_signal_is_coded (source->signal) && LACKS (system)) || LACKS (connector)
         || bw_lacks_input (input, G_STRUCT_OFFSET (BwInput, signals), lack)
         || bw_lacks_input (input, G_STRUCT_OFFSET (BwInput, syncs), lack)
         || bw_lacks_input (input, G_STRUCT_OFFSET (BwInput, connectors), lack);
}

/**
 * bw_lacks_way:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known for want of which a way from @source to @input may not be
 * found: what bw_lacks_plan() asks for, levels, what drives the conductors and what they end in. Only
 * where it is all known does "no plan" say that nothing leads there
 */
gboolean
bw_lacks_way (const BwSource *source, const BwInput *input, BwLack *lack)
{
  return bw_lacks_plan (source, input, lack) || bw_lacks_signal (source, input, lack);
}

/**
 * bw_lacks_signal:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known of what stands on the wires at @input: what the source
 * puts on them, what drives them and what they end in
 */
gboolean
bw_lacks_signal (const BwSource *source, const BwInput *input, BwLack *lack)
{
  g_return_val_if_fail (source != NULL && input != NULL && lack != NULL, TRUE);
  return bw_lacks_wire (source, lack) || bw_lacks_drive (source, lack)
         || bw_lacks_load (input, FALSE, lack)
         || (has_own_sync (source) && bw_lacks_load (input, TRUE, lack));
}

#undef LACKS
#define LACKS(member) bw_lacks_monitor (monitor, G_STRUCT_OFFSET (BwMonitor, member), lack)

/**
 * bw_lacks_deflection:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether something is not known of how the set scans: rates, retrace, overscan
 */
gboolean
bw_lacks_deflection (const BwMonitor *monitor, BwLack *lack)
{
  g_return_val_if_fail (monitor != NULL && lack != NULL, TRUE);
  return LACKS (line_rates_hz) || LACKS (field_rates_hz) || LACKS (line_retrace_s)
         || LACKS (field_retrace_s) || LACKS (overscan_h) || LACKS (overscan_v);
}

/**
 * bw_lacks_tube:
 * @lack: (out caller-allocates): what is lacking
 *
 * Returns: whether the size or the shape of the glass is not known
 */
gboolean
bw_lacks_tube (const BwMonitor *monitor, BwLack *lack)
{
  g_return_val_if_fail (monitor != NULL && lack != NULL, TRUE);
  return LACKS (diagonal_m) || LACKS (aspect);
}

#undef LACKS
