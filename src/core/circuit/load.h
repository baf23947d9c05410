/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* What comes back from the end of a line. */

/**
 * BwLine:
 * @source_ohm: that the load looks back into; zero: a voltage output
 * @load_ohm: that the lead ends in; INFINITY: nothing
 * @lead_ohm: characteristic resistance of the lead
 * @delay_s: of the lead, one way; zero: not known
 */
typedef struct
{
  double source_ohm;
  double load_ohm;
  double lead_ohm;
  double delay_s;
} BwLine;

/**
 * BwLineEnd:
 * @return_loss_db: of the load on the lead; INFINITY for a perfect match
 * @echo_ratio: size of the first echo at the load, signed, of the picture there: what comes back from
 *   the load and turns round again at the source. Without the loss of the lead, which makes it smaller
 * @echo_s: by which it follows the picture: there and back; zero: not known
 */
typedef struct
{
  double return_loss_db;
  double echo_ratio;
  double echo_s;
} BwLineEnd;

double bw_return_loss_db (double end_ohm, double lead_ohm);
void bw_line_end (const BwLine *line, BwLineEnd *end);

G_END_DECLS
