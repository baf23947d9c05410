/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "caution.h"

#include <glib/gi18n-lib.h>

/**
 * bw_caution:
 *
 * Returns: (transfer none): what every page and sheet that touches work on an open set says,
 * translated
 */
const char *
bw_caution (void)
{
  return _ ("A picture tube holds a lethal charge after the plug is pulled. The primary side of the "
            "supply, and in many sets the whole chassis, is at mains potential. A tube can implode. "
            "Anode voltage above its rating makes X-rays. Breezeway gives no procedure for work "
            "inside a set: follow local codes, and leave such work to licensed practice where they "
            "ask for it.");
}

/**
 * bw_caution_hook_up:
 *
 * Returns: (transfer none): what the hook-up says before a lead is joined to a set, translated
 */
const char *
bw_caution_hook_up (void)
{
  return _ ("In some sets the chassis, and with it the ground of every input, is live at mains "
            "potential: join nothing to such a set unless its input is isolated by its maker. Work on "
            "an open set asks for isolation from the mains, and the tube keeps its charge. Breezeway "
            "gives no procedure for that: follow local codes, and leave such work to licensed "
            "practice where they ask for it.");
}

/**
 * bw_caution_scope:
 *
 * Returns: (transfer none): what is said where scope readings are asked for, translated
 */
const char *
bw_caution_scope (void)
{
  return _ ("In some sets the chassis is live at mains potential: the ground clip of a scope joined to "
            "it is a short circuit, and what it joins may become live. Readings are meant at the "
            "input, with the set connected, d.c. coupled, the probe's ratio counted in. Breezeway "
            "gives no procedure for work inside a set: follow local codes and licensed practice.");
}
