/* SPDX-License-Identifier: GPL-3.0-or-later */
#pragma once

/* The remedies, one entry each: this is their only list. From it come the constants BW_REMEDY_… and
 * the table of descriptors (remedies.c). An entry that lacks a member does not compile.
 *
 * The members of an entry:
 *   the constant, as in BW_REMEDY_TERMINATOR;
 *   the id in files and JSON;
 *   whether it is a part that is added or a setting (REMEDY_… in remedies.c);
 *   how its value is written (VALUE_… in remedies.c);
 *   the function that says it whole, with its value (says_…() in remedies.c);
 *   its words on screen;
 *   the same in a word or two, for a cell of a table. */

/* clang-format off */
#define BW_REMEDY_LIST(X)                                                                          \
  X (NONE, "none", NOTHING, NONE, plain,                                                           \
     N_ ("none"), N_ ("none"))                                                                     \
  X (MAINS_TRANSFORMER, "mains-transformer", PART, NONE, transformer,                              \
     N_ ("mains transformer"), N_ ("mains transformer"))                                           \
  X (MAINS_CONVERTER, "mains-converter", PART, NONE, plain,                                        \
     N_ ("supply of the voltage and frequency on the rating plate"), N_ ("another supply"))        \
  X (TERMINATOR, "terminator", PART, NONE, terminator,                                             \
     N_ ("75 Ω terminator"), N_ ("75 Ω terminator"))                                               \
  X (SWITCH_ON, "termination-on", SETTING, NONE, plain,                                            \
     N_ ("termination switch to 75 Ω"), N_ ("termination on"))                                     \
  X (SWITCH_OFF, "termination-off", SETTING, NONE, plain,                                          \
     N_ ("termination switch to high impedance"), N_ ("termination off"))                          \
  X (UNLOAD_LOOP, "unload-loop", SETTING, NONE, plain,                                             \
     N_ ("take the 75 Ω load off the loop-through"), N_ ("unload loop-through"))                   \
  X (SERIES_RESISTOR, "series-resistor", PART, OHM, series_resistor,                               \
     N_ ("series resistor in the sync conductor"), N_ ("in sync"))                                 \
  X (VIDEO_PAD, "video-pad", PART, DECIBEL, gain,                                                  \
     N_ ("matched 75 Ω attenuator"), N_ ("attenuator"))                                            \
  X (MINIMUM_LOSS_PAD, "minimum-loss-pad", PART, DECIBEL, minimum_loss,                            \
     N_ ("minimum-loss pad"), N_ ("minimum-loss pad"))                                             \
  X (MATCHING_RESISTOR, "matching-resistor", PART, OHM, matching,                                  \
     N_ ("resistor in series at the input"), N_ ("in series at the input"))                        \
  X (SHUNT_RESISTOR, "shunt-resistor", PART, OHM, matching,                                        \
     N_ ("resistor across the input"), N_ ("across the input"))                                    \
  X (VIDEO_AMPLIFIER, "video-amplifier", PART, DECIBEL, gain,                                      \
     N_ ("video amplifier"), N_ ("video amplifier"))                                               \
  X (SYNC_AMPLIFIER, "sync-amplifier", PART, NONE, plain,                                          \
     N_ ("sync amplifier"), N_ ("sync amplifier"))                                                 \
  X (SYNC_COMBINER, "sync-combiner", PART, NONE, plain,                                            \
     N_ ("sync combiner, composite sync from H and V"), N_ ("sync combiner"))                      \
  X (SYNC_ADDER, "sync-adder", PART, NONE, plain,                                                  \
     N_ ("sync adder, onto green or Y"), N_ ("sync adder"))                                        \
  X (SYNC_MOVER, "sync-mover", PART, NONE, plain,                                                  \
     N_ ("sync separator and adder, onto green or Y"), N_ ("sync separator, adder"))               \
  X (SYNC_SEPARATOR, "sync-separator", PART, NONE, plain,                                          \
     N_ ("sync separator"), N_ ("sync separator"))                                                 \
  X (SYNC_INVERTER, "sync-inverter", PART, NONE, plain,                                            \
     N_ ("sync inverter"), N_ ("sync inverter"))                                                   \
  X (SYNC_RESHAPER, "sync-reshaper", PART, NONE, plain,                                            \
     N_ ("converter of tri-level and bi-level sync"), N_ ("sync converter"))                       \
  X (ENCODER, "encoder", PART, NONE, converter,                                                    \
     N_ ("encoder"), N_ ("encoder"))                                                               \
  X (DECODER, "decoder", PART, NONE, converter,                                                    \
     N_ ("colour decoder"), N_ ("colour decoder"))                                                 \
  X (TRANSCODER, "transcoder", PART, NONE, converter,                                              \
     N_ ("transcoder"), N_ ("transcoder"))                                                         \
  X (YC_MIXER, "yc-mixer", PART, NONE, plain,                                                      \
     N_ ("mixer of Y and C into composite"), N_ ("Y/C mixer"))                                     \
  X (YC_SEPARATOR, "yc-separator", PART, NONE, plain,                                              \
     N_ ("separator of composite into Y and C"), N_ ("Y/C separator"))                             \
  X (LUMA_MATRIX, "luma-matrix", PART, NONE, plain,                                                \
     N_ ("matrix of R, G and B into luminance"), N_ ("luminance matrix"))                          \
  X (DISTRIBUTOR, "distributor", PART, NONE, plain,                                                \
     N_ ("distribution amplifier, luminance to R, G and B"), N_ ("distributor"))                   \
  X (COLOUR_TRANSCODER, "colour-transcoder", PART, NONE, plain,                                    \
     N_ ("colour system transcoder"), N_ ("colour transcoder"))                                    \
  X (SCAN_CONVERTER, "scan-converter", PART, NONE, plain,                                          \
     N_ ("scan converter"), N_ ("scan converter"))                                                 \
  X (COUPLING_CAPACITOR, "coupling-capacitor", PART, NONE, plain,                                  \
     N_ ("coupling capacitor in the lead"), N_ ("capacitor"))                                      \
  X (CLAMP, "clamp", PART, NONE, plain,                                                            \
     N_ ("clamp (d.c. restorer)"), N_ ("clamp"))                                                   \
  X (BLACK_LEVEL, "black-level", SETTING, NONE, plain,                                             \
     N_ ("set the black level (setup switch or brightness)"), N_ ("black level"))                  \
  X (ASPECT_SWITCH, "aspect-switch", SETTING, NONE, plain,                                         \
     N_ ("aspect switch of the set"), N_ ("aspect switch"))                                        \
  X (SIZE, "size", SETTING, SHARE, size,                                                           \
     N_ ("size control of the set"), N_ ("size controls"))                                         \
  X (CROSSED_LEAD, "crossed-lead", PART, NONE, plain,                                              \
     N_ ("lead wired from one 21-pin form to the other"), N_ ("crossed lead"))
/* clang-format on */
