/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "interchange-private.h"

#include <glib/gi18n-lib.h>

/* The input that a written block describes. */

#define LOGIC_SYNC_V 3.5 /* from a computer, without load; common practice, no source */

static gboolean
takes (const BwInput *input, BwSyncShape shape)
{
  return (input->signals & BW_BIT (BW_SIGNAL_RGB)) && (input->shapes & BW_BIT (shape));
}

/**
 * bw_edid_choose_input:
 *
 * Takes the first input for RGB with bi-level sync, which is all that an EDID describes.
 *
 * Returns: %FALSE with @error if there is none
 */
gboolean
bw_edid_choose_input (BwEdidWriter *writer, GError **error)
{
  const BwMonitor *monitor = writer->monitor;
  guint n_bilevel = 0;
  guint n_trilevel = 0;

  for (guint i = monitor->inputs->len; i > 0; i--)
    {
      const BwInput *input = bw_monitor_input (monitor, i - 1);
      n_trilevel += takes (input, BW_SHAPE_TRILEVEL) ? 1 : 0;
      if (!takes (input, BW_SHAPE_BILEVEL))
        continue;
      n_bilevel++;
      writer->input = input;
    }
  if (n_bilevel > 1)
    bw_edid_note (writer, _ ("The block describes input “%s”; other inputs take RGB too."),
                  writer->input->name);
  if (n_bilevel > 0)
    return TRUE;
  return bw_interchange_fault (
      error, BW_INTERCHANGE_ERROR_MONITOR,
      n_trilevel > 0 ? _ ("“%s” takes RGB with tri-level sync only, which an EDID cannot say.")
                     : _ ("“%s” has no input for RGB, and an EDID describes no other."),
      monitor->name);
}

static gboolean
within (const BwBands *bands, double value)
{
  for (guint i = 0; i < bands->n; i++)
    if (value >= bands->at[i].low - 1e-9 && value <= bands->at[i].high + 1e-9)
      return TRUE;
  return bands->n == 0;
}

/* The first of @codes whose white, and sync where it is on video, the input takes. */
static gboolean
find_level (BwEdidWriter *writer, const guint *codes, gboolean on_video)
{
  for (gsize i = 0; i < 3; i++)
    {
      const BwEdidLevel *level = &bw_edid_levels[codes[i]];
      if (within (&writer->input->video_v, level->white_v)
          && (!on_video || within (&writer->input->sync_v, level->sync_v)))
        {
          writer->level = codes[i];
          return TRUE;
        }
    }
  return FALSE;
}

/**
 * bw_edid_choose_level:
 *
 * Chooses the level code, and the syncs that can be stated with it: sync on green only where the
 * input takes its level.
 *
 * Returns: %FALSE with @error if no code or no sync is left
 */
gboolean
bw_edid_choose_level (BwEdidWriter *writer, GError **error)
{
  static const guint with_sync[] = { 0, 1, 2 };
  static const guint without_sync[] = { 3, 1, 2 };
  guint green = BW_BIT (BW_SYNC_ON_GREEN);

  writer->syncs = bw_edid_input_syncs (writer->input);
  if ((writer->syncs & green) && find_level (writer, with_sync, TRUE))
    return TRUE;
  if (writer->syncs & green)
    bw_edid_note (writer,
                  _ ("Sync on green is left out: none of the sync levels that an EDID can state "
                     "is one that input “%s” takes."),
                  writer->input->name);
  writer->syncs &= ~green;
  if (writer->syncs == 0)
    return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                                 _ ("Input “%s” takes no sync that an EDID can state: separate, "
                                    "composite, or on green at 0.3 V, 0.286 V or 0.4 V."),
                                 writer->input->name);
  if (find_level (writer, without_sync, FALSE))
    return TRUE;
  return bw_interchange_fault (error, BW_INTERCHANGE_ERROR_MONITOR,
                               _ ("Input “%s” takes none of the white levels that an EDID can "
                                  "state: 0.7 V, 0.714 V or 1 V."),
                               writer->input->name);
}

/**
 * bw_edid_put_input:
 *
 * Writes byte 20: levels, setup, syncs, serration.
 */
void
bw_edid_put_input (BwEdidWriter *writer)
{
  guint syncs = writer->syncs;
  guint on_one = BW_BIT (BW_SYNC_COMPOSITE) | BW_BIT (BW_SYNC_ON_GREEN);
  guint own = BW_BIT (BW_SYNC_SEPARATE) | BW_BIT (BW_SYNC_COMPOSITE);
  const BwBands *setup = &writer->input->setup_ire;
  gboolean pedestal = within (setup, 7.5) && !within (setup, 0);

  writer->block[20] = (guint8) (writer->level << 5 | (pedestal ? 0x10 : 0)
                                | (syncs & BW_BIT (BW_SYNC_SEPARATE) ? 0x08 : 0)
                                | (syncs & BW_BIT (BW_SYNC_COMPOSITE) ? 0x04 : 0)
                                | (syncs & BW_BIT (BW_SYNC_ON_GREEN) ? 0x02 : 0)
                                | (syncs & on_one ? 0x01 : 0));
  if ((syncs & BW_BIT (BW_SYNC_COMPOSITE)) && !(writer->input->syncs & BW_BIT (BW_SYNC_COMPOSITE)))
    bw_edid_note (writer,
                  _ ("Input “%s” takes its sync from the composite video conductor; the block "
                     "calls that composite sync."),
                  writer->input->name);
  if ((syncs & own) && !within (&writer->input->sync_v, LOGIC_SYNC_V))
    bw_edid_note (writer,
                  _ ("A computer gives sync on its own conductor at logic level, and input “%s” "
                     "does not take that: bring it down to what the sheet says."),
                  writer->input->name);
}
