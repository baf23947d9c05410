/* SPDX-License-Identifier: GPL-3.0-or-later */
#include "connector-private.h"

#include <glib/gi18n-lib.h>

#include "core/circuit/drive.h"

/* The pins of each connector, as on a set. */

#define R BW_BIT (BW_CONDUCTOR_R)
#define G BW_BIT (BW_CONDUCTOR_G)
#define B BW_BIT (BW_CONDUCTOR_B)
#define Y BW_BIT (BW_CONDUCTOR_Y)
#define PB BW_BIT (BW_CONDUCTOR_PB)
#define PR BW_BIT (BW_CONDUCTOR_PR)
#define C BW_BIT (BW_CONDUCTOR_C)
#define VIDEO BW_BIT (BW_CONDUCTOR_VIDEO)
#define SYNC BW_BIT (BW_CONDUCTOR_SYNC)
#define H BW_BIT (BW_CONDUCTOR_H)
#define V BW_BIT (BW_CONDUCTOR_V)
#define Z BW_VIDEO_OHM /* what every conductor of video ends in */

/* The last arguments are the level, lowest and highest. */
#define SIGNAL(n, g, t, ground, ohm, says, ...)                                                    \
  {                                                                                                \
    n, BW_PIN_VIDEO, g, t, ground, { __VA_ARGS__ }, ohm, says, 0                                   \
  }
#define SWITCH(n, role, ground, high, ohm, says)                                                   \
  {                                                                                                \
    n, role, 0, 0, ground, { 0, high }, ohm, says, 0                                               \
  }
#define OTHER(n, role, ground, says)                                                               \
  {                                                                                                \
    n, role, 0, 0, ground, { 0, 0 }, 0, says, 0                                                    \
  }
#define GROUND(n, says) OTHER (n, BW_PIN_GROUND, 0, says)
#define AUDIO(n, ground, says) OTHER (n, BW_PIN_AUDIO, ground, says)

/* Levels of EN 50049-1 / IEC 60933-1 as data sheets that cite them give them: RGB 0.7 V and video
 * 1 V, both ±3 dB; sync alone 0.3 V −3/+10 dB. */
#define RGB_LEVEL 0.4956, 0.9888
#define VIDEO_LEVEL 0.7079, 1.4125

#define PERITELEVISION(g14, g17, g18, of_video_out, of_video_in, of_blanking)                      \
  {                                                                                                \
    AUDIO (1, 4, N_ ("sound out, right")), AUDIO (2, 4, N_ ("sound in, right")),                   \
        AUDIO (3, 4, N_ ("sound out, left")), GROUND (4, N_ ("ground of sound")),                  \
        GROUND (5, N_ ("ground of blue")), AUDIO (6, 4, N_ ("sound in, left")),                    \
        SIGNAL (7, B, B, 5, Z, N_ ("blue"), RGB_LEVEL),                                            \
        SWITCH (8, BW_PIN_SWITCH_SLOW, 21, 12, 10e3, N_ ("function switching")),                   \
        GROUND (9, N_ ("ground of green")), OTHER (10, BW_PIN_DATA, 14, N_ ("control, data")),     \
        SIGNAL (11, G, G, 9, Z, N_ ("green"), RGB_LEVEL),                                          \
        OTHER (12, BW_PIN_DATA, 14, N_ ("reserved, once data")),                                   \
        GROUND (13, N_ ("ground of red")), GROUND (14, g14),                                       \
        SIGNAL (15, R | C, R | C, 13, Z, N_ ("red, or chroma of Y/C"), RGB_LEVEL),                 \
        SWITCH (16, BW_PIN_SWITCH_FAST, of_blanking, 3, Z, N_ ("RGB switching")),                  \
        GROUND (17, g17), GROUND (18, g18),                                                        \
        SIGNAL (19, VIDEO | Y | SYNC, 0, of_video_out, Z, N_ ("video, luma or sync out"),          \
                VIDEO_LEVEL),                                                                      \
        SIGNAL (20, 0, VIDEO | Y | SYNC, of_video_in, Z, N_ ("video, luma or sync in"),            \
                VIDEO_LEVEL),                                                                      \
        GROUND (21, N_ ("shell, common ground")),                                                  \
  }

/* The later editions moved the three grounds; a lead that joins all grounds is right either way. */
static const BwPin peritelevision[BW_N_EDITIONS][21] = {
  [BW_EDITION_CURRENT] = PERITELEVISION (N_ ("ground of RGB switching"), N_ ("ground of video out"),
                                         N_ ("ground of video in"), 17, 18, 14),
  [BW_EDITION_1983] = PERITELEVISION (N_ ("ground of data"), N_ ("ground of video"),
                                      N_ ("ground of RGB switching"), 17, 17, 18),
};

static const BwPin japanese_21[] = {
  AUDIO (1, 3, N_ ("sound in, left")),
  AUDIO (2, 4, N_ ("sound out, left")),
  GROUND (3, N_ ("ground of sound in")),
  GROUND (4, N_ ("ground of sound out")),
  AUDIO (5, 3, N_ ("sound in, right")),
  AUDIO (6, 4, N_ ("sound out, right")),
  GROUND (7, N_ ("ground of video in")),
  GROUND (8, N_ ("ground of video out")),
  SIGNAL (9, 0, VIDEO | SYNC, 7, Z, N_ ("video or sync in"), 1, 1),
  SIGNAL (10, VIDEO | SYNC, 0, 8, Z, N_ ("video or sync out"), 1, 1),
  SWITCH (11, BW_PIN_SWITCH_SLOW, 14, 5, 22e3, N_ ("AV control")),
  SWITCH (12, BW_PIN_SWITCH_FAST, 14, 3, Z, N_ ("half tone")),
  GROUND (13, N_ ("ground of red")),
  GROUND (14, N_ ("ground of RGB switching")),
  SIGNAL (15, R, R, 13, Z, N_ ("red"), 0.7, 0.7),
  SWITCH (16, BW_PIN_SWITCH_FAST, 14, 3, Z, N_ ("RGB switching")),
  GROUND (17, N_ ("ground of green")),
  GROUND (18, N_ ("ground of blue")),
  SIGNAL (19, G, G, 17, Z, N_ ("green"), 0.7, 0.7),
  SIGNAL (20, B, B, 18, Z, N_ ("blue"), 0.7, 0.7),
  GROUND (21, N_ ("shell, common ground")),
};

/* Component on 1, 2 and 3, and sync on 2, are common practice beside the RGB of the standard. */
static const BwPin de_15[] = {
  { 1, BW_PIN_VIDEO, R | PR, R | PR, 6, { 0.7, 0.7 }, Z, N_ ("red (Pr, common practice)"), PR },
  { 2, BW_PIN_VIDEO, G | Y, G | Y, 7, { 0.7, 0.7 }, Z, N_ ("green (Y, common practice)"), Y },
  { 3, BW_PIN_VIDEO, B | PB, B | PB, 8, { 0.7, 0.7 }, Z, N_ ("blue (Pb, common practice)"), PB },
  OTHER (4, BW_PIN_DATA, 10, N_ ("identity 2, reserved")),
  GROUND (5, N_ ("ground")),
  GROUND (6, N_ ("ground of red")),
  GROUND (7, N_ ("ground of green")),
  GROUND (8, N_ ("ground of blue")),
  { 9, BW_PIN_SUPPLY, 0, 0, 10, { 5, 5 }, 0, N_ ("+5 V, or no pin"), 0 },
  GROUND (10, N_ ("ground of sync")),
  OTHER (11, BW_PIN_DATA, 10, N_ ("identity 0")),
  OTHER (12, BW_PIN_DATA, 10, N_ ("identity 1, data")),
  SIGNAL (13, H | SYNC, H | SYNC, 10, 0, N_ ("H or composite sync, logic level"), 2.4, 5),
  SIGNAL (14, V, V, 10, 0, N_ ("V sync, logic level"), 2.4, 5),
  OTHER (15, BW_PIN_DATA, 10, N_ ("identity 3, clock")),
};

static const BwPin mini_din_4[] = {
  GROUND (1, N_ ("ground of Y")),
  GROUND (2, N_ ("ground of C")),
  SIGNAL (3, Y, Y, 1, Z, N_ ("Y"), 1, 1),
  SIGNAL (4, C, C, 2, Z, N_ ("C"), 0.286, 0.3),
};

/* For composite video alone; other uses of the six pins are not laid down. The supply on pin 5 is
 * from memory: a lead leaves it open. */
static const BwPin din_6[] = {
  SWITCH (1, BW_PIN_SWITCH_SLOW, 3, 12, 0, N_ ("switching voltage")),
  SIGNAL (2, VIDEO, VIDEO, 3, Z, N_ ("composite video"), 1, 1),
  GROUND (3, N_ ("ground")),
  AUDIO (4, 3, N_ ("sound, left")),
  { 5, BW_PIN_SUPPLY, 0, 0, 3, { 12, 12 }, 0, N_ ("not connected, or +12 V"), 0 },
  AUDIO (6, 3, N_ ("sound, right")),
};

#define SINGLE(says)                                                                               \
  {                                                                                                \
    NULL, 0, 0, FALSE, TRUE, says                                                                  \
  }
#define PINS(pins, says)                                                                           \
  {                                                                                                \
    pins, G_N_ELEMENTS (pins), G_N_ELEMENTS (pins), FALSE, FALSE, says                             \
  }

static const BwConnectorFacts facts[BW_N_CONNECTORS] = {
  [BW_CONNECTOR_BNC] = SINGLE (N_ ("75 Ω type that mates with IEC 60169-8 (SMPTE 170M, 15.3)")),
  [BW_CONNECTOR_PHONO] = SINGLE (N_ ("common practice, no source")),
  [BW_CONNECTOR_MINI_DIN_4] = PINS (mini_din_4, N_ ("common practice, secondary sources")),
  [BW_CONNECTOR_DE_15] = PINS (de_15, N_ ("VESA DDC, from secondary sources")),
  [BW_CONNECTOR_PERITELEVISION] = PINS (peritelevision[BW_EDITION_CURRENT],
                                        N_ ("EN 50049-1, IEC 60933-1, secondary sources")),
  [BW_CONNECTOR_JAPANESE_21] = PINS (japanese_21, N_ ("EIAJ CPR-1201, one secondary source")),
  [BW_CONNECTOR_DIN_6] = { din_6, G_N_ELEMENTS (din_6), 6, TRUE, FALSE,
                           N_ ("DIN 45322 for composite video; else not laid down") },
  [BW_CONNECTOR_DE_9] = { NULL, 0, 9, TRUE, FALSE,
                          N_ ("not laid down: see the papers of the set") },
};

/**
 * bw_connector_facts:
 *
 * Returns: (transfer none): what is laid down for @connector
 */
const BwConnectorFacts *
bw_connector_facts (BwConnector connector)
{
  g_return_val_if_fail (connector < BW_N_CONNECTORS, &facts[BW_CONNECTOR_DE_9]);
  return &facts[connector];
}

/**
 * bw_peritelevision_pins:
 *
 * Returns: (transfer none): the 21 pins as @edition has them
 */
const BwPin *
bw_peritelevision_pins (BwEdition edition)
{
  g_return_val_if_fail (edition < BW_N_EDITIONS, peritelevision[BW_EDITION_CURRENT]);
  return peritelevision[edition];
}
