/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "detail-private.h"

#include <math.h>

#include "core/raster/colour-system.h"

/* Between frequencies on a line and lines on the glass: what each link passes, in hertz. */

/* The lower −3 dB edge of a subcarrier trap: the middle of 3.0 to 3.2 MHz at 3.58 MHz and of 3.5 to
 * 3.8 MHz at 4.43 MHz (common practice, no source). */
#define TRAP_EDGE_358_HZ 3.1e6
#define TRAP_EDGE_443_HZ 3.65e6
#define BETWEEN_SUBCARRIERS_HZ 4e6

/**
 * bw_tvl_from_hz:
 * @active_s: active line time; the part of it that lies across the width
 * @aspect: width to height
 *
 * Returns: TV lines per height that @frequency_hz draws: 2·f·T/aspect; zero if one is not known
 * (zero)
 */
double
bw_tvl_from_hz (double frequency_hz, double active_s, double aspect)
{
  return frequency_hz > 0 && active_s > 0 && aspect > 0 ? 2 * frequency_hz * active_s / aspect : 0;
}

/**
 * bw_hz_from_tvl:
 *
 * Returns: the frequency that draws @tvl lines per height, as bw_tvl_from_hz(); zero if one is not
 * known (zero)
 */
double
bw_hz_from_tvl (double tvl, double active_s, double aspect)
{
  return tvl > 0 && active_s > 0 && aspect > 0 ? tvl * aspect / (2 * active_s) : 0;
}

/**
 * bw_trap_edge_hz:
 *
 * Returns: where a trap for @subcarrier_hz begins to take luma: its lower −3 dB edge, by common
 * practice 3.1 MHz at 3.58 MHz and 3.65 MHz at 4.43 MHz, and in proportion near them
 */
double
bw_trap_edge_hz (double subcarrier_hz)
{
  gboolean lower = subcarrier_hz < BETWEEN_SUBCARRIERS_HZ;
  BwColourSystem system = lower ? BW_SYSTEM_NTSC_M : BW_SYSTEM_PAL_B;
  double own_hz = bw_ratio_to_double (bw_system_facts (system)->subcarrier_hz);
  return subcarrier_hz * ((lower ? TRAP_EDGE_358_HZ : TRAP_EDGE_443_HZ) / own_hz);
}

/* What a trap takes out; zero: no trap. */
double
bw_detail_trapped_hz (const BwDetailCase *what)
{
  gboolean trap = what->signal == BW_SIGNAL_COMPOSITE && what->filter == BW_LUMA_TRAP;
  return trap ? bw_ratio_to_double (bw_system_facts (what->system)->subcarrier_hz) : 0;
}

/* Bandwidth of the colour system, of composite and Y/C alone; zero: no limit. */
double
bw_detail_system_hz (const BwDetailCase *what)
{
  return bw_signal_is_coded (what->signal) ? bw_system_facts (what->system)->luma_bandwidth_hz : 0;
}

/* The nominal limit of the signal kind. */
double
bw_detail_signal_hz (const BwDetailCase *what)
{
  double trapped_hz = bw_detail_trapped_hz (what);
  double whole_hz = bw_detail_system_hz (what);
  return trapped_hz > 0 ? MIN (bw_trap_edge_hz (trapped_hz), whole_hz) : whole_hz;
}

/* The highest frequency of the source: half of its samples. */
double
bw_detail_source_hz (const BwDetailCase *what)
{
  if (what->detail_hz > 0)
    return what->detail_hz;
  return what->active_s > 0 && what->samples > 0 ? what->samples / (2 * what->active_s) : 0;
}

/* TV lines per viewable height, of what lies across the viewable width. */
double
bw_detail_seen_tvl (const BwDetailCase *what, double frequency_hz)
{
  return bw_tvl_from_hz (frequency_hz, bw_detail_seen_s (what), bw_ratio_to_double (what->aspect));
}
