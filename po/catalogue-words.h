/* SPDX-License-Identifier: GPL-3.0-or-later */
/* The texts of data/catalogue for translators, written by po/catalogue-words.py. No part of the program
 * includes this file. Standards keep the names that they have in English. */

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "lead with the same connectors at both ends")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "common practice, no source")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "75 Ω lead, phono to BNC")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "Y/C lead, 4-pin mini-DIN to two BNC or phono")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "lead, DE-15 to BNC")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "lead, 21-pin peritelevision to BNC or phono")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "pins as in EN 50049-1; otherwise common practice, no source")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "lead made to the wiring list")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "Solder it pin by pin as the list says.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "75 Ω terminator")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "series resistor in the sync conductor")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "It gives no match to the cable; keep the lead short and put the resistor at the source's end.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "matched 75 Ω attenuator")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "coupling capacitor in the video conductor")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "The input must clamp black.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync combiner, composite sync from H and V")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "A gate makes no equalising pulses; in an interlaced raster the top of the picture may bend.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync separator, composite sync from video")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync separator, H and V from composite sync or video")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync adder, onto green")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync adder, onto Y")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync inverter, to negative")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync inverter, to positive")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync amplifier, to logic level")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync converter, tri-level to bi-level")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "sync converter, bi-level to tri-level")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "video amplifier")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "clamp (d.c. restorer)")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "encoder, RGB or component to composite")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "levels of the colour system; otherwise common practice, no source")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "encoder, RGB or component to Y/C")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "colour decoder, composite or Y/C to RGB or component")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "transcoder, RGB to component")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "transcoder, component to RGB")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "mixer of Y and C into composite")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "Colour edges show fine dots, as composite does.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "separator of composite into Y and C")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "matrix of R, G and B into luminance")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "The picture is in monochrome.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "distribution amplifier, luminance to R, G and B")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "colour system transcoder")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "It keeps the raster: lines and fields stay as they are.")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "scan converter, to 525 or 625 lines composite")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "scan converter, to 525 or 625 lines Y/C")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "scan converter, to 525 or 625 lines RGB or component")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "scan converter, to 640x480 or 800x600 RGB")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "rasters VESA DMT; otherwise common practice, no source")

/* Translators: of a lead, a part or an adaptor. */
NC_ ("catalogue", "scan converter, to 525 lines progressive component")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "6 mm coaxial, solid polyethylene, plated-steel centre")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "Common practice, no source")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "Below 5 MHz part of the current flows in the steel and the loss is higher than the law says.")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "6 mm coaxial, foamed polyethylene, plated-steel centre")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "6 mm coaxial, solid polyethylene, copper centre")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "Computed from conductors of 0.584 and 3.71 mm, copper, by the skin effect alone: the least that it can lose")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "7 mm coaxial, foamed polyethylene, copper centre")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "Computed from conductors of 1.02 and 4.6 mm, copper, by the skin effect alone: the least that it can lose")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "2.5 mm coaxial, PTFE, plated-steel centre")

/* Translators: of a kind of coaxial lead. */
NC_ ("catalogue", "Thin coaxial lines of a moulded video lead")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "525 lines, 59.94 Hz, studio (SMPTE 170M)")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "SMPTE 170M-2004, tables 1 to 3; tolerance of the line period: BT.470-6")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "525 lines, 59.94 Hz, transmitted (system M, NTSC)")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.470-6 tables 1-1 and 1-2, values for M/NTSC")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "525 lines, 60 Hz, monochrome (system M)")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.470-6 tables 1, 1-1 and 1-2, values for M in general")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "625 lines, 50 Hz, studio (PAL)")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.1700 Part B tables 2 and 3; BT.470-6 for the front porch")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "625 lines, 50 Hz, transmitted (systems B, G, H, D, K)")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.470-6 tables 1, 1-1 and 1-2")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "625 lines, 50 Hz, system I")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "CCIR Report 624-4 tables with notes 5 and 6; broad and serration widths of system I")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "525 lines, 59.94 Hz, PAL M")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.1700 Part B tables for 525-line PAL; the start of the burst is left out, since the texts disagree on it")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "625 lines, 50 Hz, system N")

/* Translators: of a standard whose limits a reading is held against. */
NC_ ("catalogue", "ITU-R BT.470-6 tables 1-1 and 1-2, values for N in general; where no nominal is given, the middle of the range")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 14 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Common practice, no source: a class of sets, not a product")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Composite")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 20 in, 15 kHz to 45 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 14 in, 31 kHz fixed")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Video in")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 17 in, 30 kHz to 70 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Video in, 15-pin")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Video in, BNC")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Open-frame game monitor, 19 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Often has no mains isolation of its own: it needs an isolating transformer")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Domestic set, 21 in, with 21-pin socket")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Many have a chassis at mains potential")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "21-pin socket")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Monochrome monitor, 9 in, for cameras")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 20 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 25 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 27 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 29 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 32 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 14 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 20 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 25 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 27 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 29 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Studio monitor, 32 in, 15 kHz and 31 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 14 in, 15 kHz to 38 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 20 in, 15 kHz to 64 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 27 in, 15 kHz to 38 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Computer monitor, 29 in, 15 kHz to 50 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 14 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 20 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 25 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 27 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 29 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Receiver, 32 in, 15 kHz, with 21-pin input")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Monochrome monitor, 14 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Monochrome monitor, 20 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Monochrome monitor, 25 in, 15 kHz")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Uncommon at this size")

/* Translators: of a class of monitors, and its inputs. */
NC_ ("catalogue", "Monochrome monitor, 29 in, 15 kHz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "525-line interlaced, 59.94 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 170M-2004, tables 2 and 3; ITU-R BT.1700 part A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Field blanking of 20 lines; SMPTE 170M-2004 also allows 19.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "625-line interlaced, 50 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "ITU-R BT.470-6, tables 1-1 and 1-2; ITU-R BT.1700")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "525-line interlaced, 60 Hz, monochrome")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "ITU-R BT.470-6, tables 1-1 and 1-2, system M")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The system gives ranges; the line intervals here are those of the colour system, which lie inside them.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "262-line progressive, 60.05 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Line: SMPTE 170M-2004, table 2. Field: CTA-861-H, VIC 8")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Equalising and serration differ between sources of this raster and are left out.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "263-line progressive, 59.83 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "312-line progressive, 50.08 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Line: ITU-R BT.470-6, table 1-1. Field: CTA-861-H, VIC 23")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "313-line progressive, 49.92 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "314-line progressive, 49.76 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "525-line progressive, 59.94 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 293M; counts from CTA-861-H, VIC 2")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The text of SMPTE 293M was not read; analogue practice widens sync to 63 clocks and shows 483 lines (from memory). Field sync as six broad pulses a line long, with serrations of 63 clocks, is from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "625-line progressive, 50 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "ITU-R BT.1358; counts from CTA-861-H, VIC 17")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The text of ITU-R BT.1358 was not read. Field sync as five broad pulses a line long, with serrations of 64 clocks, is from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "750-line progressive, 50 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 296M; counts from CTA-861-H, VIC 19")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The sync half of 40 clocks is from secondary sources, the text of SMPTE 296M was not read; one broad pulse a line, where the picture would be, is from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "750-line progressive, 59.94 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 296M; counts from CTA-861-H, VIC 4")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "750-line progressive, 60 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line interlaced, 50 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 274M; counts from CTA-861-H, VIC 20")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The sync half of 44 clocks is from secondary sources, the text of SMPTE 274M was not read; two broad pulses a line, of 880 clocks from 132 after each half line, are from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line interlaced, 59.94 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 274M; counts from CTA-861-H, VIC 5")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line interlaced, 60 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line progressive, 50 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 274M; counts from CTA-861-H, VIC 31")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The sync half of 44 clocks is from secondary sources, the text of SMPTE 274M was not read; one broad pulse a line, where the picture would be, is from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line progressive, 59.94 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "SMPTE 274M; counts from CTA-861-H, VIC 16")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The sync half of 44 clocks is from secondary sources, the text of SMPTE 274M was not read; one broad pulse a line, of 1980 clocks from 132 after the datum, is from memory.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1125-line progressive, 60 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "675-line interlaced, 60 Hz, closed circuit")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "EIA RS-343-A line count; intervals from memory")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Only the line rate is certain: intervals are from memory (line blanking 7 us, sync 2.75 us, front porch 0.75 us, field blanking near 1250 us, field sync near 125 us), the vertical front porch is assumed, equalising and serration are not known.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "729-line interlaced, 60 Hz, closed circuit")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "875-line interlaced, 60 Hz, closed circuit")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "945-line interlaced, 60 Hz, closed circuit")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1023-line interlaced, 60 Hz, closed circuit")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "640x480 progressive, 59.94 Hz, 4:3, clock as printed")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "CTA-861-H, tables 1 and 2")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The table rounds the clock, so the field rate is 59.940476 Hz; the exact partner of 60 Hz is cta-861-vic-1-59.94.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "640x480 progressive, 59.94 Hz, 4:3, exact clock")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "CTA-861-H, tables 1 and 2; clock of the 1000/1001 partner")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "640x480 progressive, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 59.94 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 59.94 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 60.05 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Shortest of the two line totals, 262 and 263.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 60.11 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 59.83 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Longer of the two line totals, 262 and 263.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 59.89 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 60.05 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 60.11 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 59.83 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x240 progressive, 59.89 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 interlaced, 59.94 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 interlaced, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 interlaced, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 interlaced, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 60.05 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Shortest of the two line totals, 262 and 263. The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 60.11 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 59.83 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Longer of the two line totals, 262 and 263. The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 59.89 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 60.05 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 60.11 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 59.83 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x240 progressive, 59.89 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x480 progressive, 59.94 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x480 progressive, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x480 progressive, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x480 progressive, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 50 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 50 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 50.08 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Shortest of the three line totals, 312, 313 and 314.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 49.92 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Middle of the three line totals, 312, 313 and 314.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 49.76 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Longest of the three line totals, 312, 313 and 314.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 50.08 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 49.92 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x288 progressive, 49.76 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x576 interlaced, 50 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x576 interlaced, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 50.08 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Shortest of the three line totals, 312, 313 and 314. The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 49.92 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Middle of the three line totals, 312, 313 and 314. The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 49.76 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Longest of the three line totals, 312, 313 and 314. The repeat is that of a 720-pixel picture; the format may be sent with others (from memory).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 50.08 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 49.92 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x288 progressive, 49.76 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x576 progressive, 50 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x576 progressive, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 24 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 23.98 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 25 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 30 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 29.97 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 progressive, 59.94 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 progressive, 60 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 progressive, 59.94 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x480 progressive, 60 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x576 progressive, 50 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2880x576 progressive, 50 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 50 Hz, 16:9, 1250 lines")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The total is even: both fields have 625 lines and there is no half line.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 100 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 100 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 100 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 100 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 100 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 100 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 120 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 interlaced, 119.88 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 120 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 119.88 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 119.88 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 120 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 119.88 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 120 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 119.88 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 120 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 119.88 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 120 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 200 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x576 progressive, 200 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 200 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x576 interlaced, 200 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 239.76 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 240 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 239.76 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x480 progressive, 240 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 239.76 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 240 Hz, 4:3")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 239.76 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720(1440)x480 interlaced, 240 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 24 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 23.98 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 25 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 30 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 29.97 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 120 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 119.88 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 100 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 24 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 23.98 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 25 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 30 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 29.97 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 50 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 60 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 59.94 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 100 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 120 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 119.88 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 24 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 23.98 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 25 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 30 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 29.97 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 50 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 60 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 59.94 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 100 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 120 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 119.88 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 24 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 23.98 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 25 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 30 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 29.97 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 50 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 60 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 59.94 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 100 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 120 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 119.88 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 48 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 47.95 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 48 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x720 progressive, 47.95 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 48 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x720 progressive, 47.95 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 48 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 47.95 Hz, 16:9")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 48 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1080 progressive, 47.95 Hz, 64:27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x01")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x02")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x03")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x04")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The border is blank picture; tables that fold it into the porches print 16/96/48 and 10/2/33.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x05")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The border is blank picture; tables that fold it into the porches print 24/40/128 and 9/3/28.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x06")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x07")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x08")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x09")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0B")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0C")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "800x600, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0D")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0E")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1024x768 interlaced, 87 Hz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x0F")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "The vertical front porch of field 1 is zero.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x10")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x11")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x12")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x13")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1024x768, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x14")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x15")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x768, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x16")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x17")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x18")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x19")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x768, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x800, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1B")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1C")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1D")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1E")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x800, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x1F")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x20")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x21")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x960, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x22")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x23")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x24")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x25")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1280x1024, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x26")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x27")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1360x768, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x28")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Vertical sync is 5 lines as published, although 1360x768 is not exactly 16:9.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1400x1050, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x29")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2B")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2C")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1400x1050, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2D")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x900, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2E")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x2F")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x30")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x31")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1440x900, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x32")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x33")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x34")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x35")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x36")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x37")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1600x1200, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x38")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x1050, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x39")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3B")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3C")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1680x1050, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3D")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3E")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x3F")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1792x1344, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x40")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x41")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x42")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1856x1392, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x43")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "One public table prints a vertical back porch of 74 lines; the others and the reduced-blanking formula give 75.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1200, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x44")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x45")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x46")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x47")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1200, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x48")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x49")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4A")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1920x1440, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4B")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "One public table prints 2 and 3 lines for vertical front porch and sync; the others give 3 and 4.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2560x1600, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4C")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4D")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4E")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x4F")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2560x1600, 120 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x50")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x51")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x52")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "One public table prints both polarities negative; the same raster is positive as CTA-861 VIC 16.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1600x900, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x53")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Marked reduced blanking, but not computed by the CVT formula.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "2048x1152, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x54")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x55")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "1366x768, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x56")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "4096x2160, 60 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x57")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "CVT reduced blanking, version 2.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "4096x2160, 59.94 Hz, reduced blanking")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "VESA DMT v1.0 rev. 13, ID 0x58")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x400 text, 70 Hz, 31.5 kHz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Only the rates and the count of lines are common knowledge of the trade; where the picture lies between the syncs is from memory and differs between sets.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "720x350 text, 50 Hz, 18.4 kHz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "640x400 monochrome, 71 Hz, 35.7 kHz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "262-line progressive, 60.10 Hz, 15.746 kHz")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "A raster of home consoles. Only the rates and the count of lines are common knowledge of the trade; where the picture lies between the syncs is from memory and differs between sets.")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "405-line interlaced, 50 Hz, monochrome")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Only line count and rates are certain: intervals are from memory (line blanking 18 us, sync 9 us, front porch 1.75 us, field blanking 14 lines, field sync 4 lines).")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "819-line interlaced, 50 Hz, monochrome")

/* Translators: of a raster: the timing of a picture. */
NC_ ("catalogue", "Only line count and rates are certain: intervals are from memory (line blanking 9.5 us, sync 2.5 us, front porch 1 us, field blanking 41 lines, field sync one short pulse).")

/* Translators: of a class of sources. */
NC_ ("catalogue", "NTSC player, composite")

/* Translators: of a class of sources. */
NC_ ("catalogue", "SMPTE 170M-2004 levels; connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "NTSC player, composite, Japan")

/* Translators: of a class of sources. */
NC_ ("catalogue", "ITU-R BT.1700 Part A note 1 (no setup); connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "PAL player, composite")

/* Translators: of a class of sources. */
NC_ ("catalogue", "ITU-R BT.1700 Part B levels; connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "SECAM player, composite")

/* Translators: of a class of sources. */
NC_ ("catalogue", "ITU-R BT.1700 Part C levels; connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "NTSC camcorder, Y/C")

/* Translators: of a class of sources. */
NC_ ("catalogue", "PAL camcorder, Y/C")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Disc player, component, 525 interlaced")

/* Translators: of a class of sources. */
NC_ ("catalogue", "700 mV and 300 mV component levels; connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Disc player, component, 525 progressive")

/* Translators: of a class of sources. */
NC_ ("catalogue", "High-definition player, component, 1125 interlaced")

/* Translators: of a class of sources. */
NC_ ("catalogue", "700 mV with tri-level sync of 300 mV each way; connector common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "High-definition player, component, 750 progressive")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Game console, 240 lines, RGB")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Home computer, 262 lines, RGB with logic sync")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Home computer, 312 lines, RGB by 21-pin")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Computer, 640x480 at 60 Hz")

/* Translators: of a class of sources. */
NC_ ("catalogue", "VESA DMT; video 0.7 V; logic sync common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Computer, 1024x768 at 60 Hz")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Workstation, 1280x1024 at 85 Hz, sync on green")

/* Translators: of a class of sources. */
NC_ ("catalogue", "VESA DMT; 0.714 V and 0.286 V common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Monochrome camera, 525 lines at 60 Hz")

/* Translators: of a class of sources. */
NC_ ("catalogue", "ITU-R BT.470-6 system M; levels common practice, no source")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Test generator, 525 lines, composite")

/* Translators: of a class of sources. */
NC_ ("catalogue", "Test generator, 625 lines, composite")

/* Translators: of a class of sources. */
NC_ ("catalogue", "ITU-R BT.1700 Part B")
