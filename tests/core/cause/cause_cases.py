#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Makes tests/reference/cause-cases.tsv: what a scope reads in circuits with a known fault.

The circuits are solved here by their nodes with numpy (Kirchhoff's current law), apart from the C
code. Levels: SMPTE 170M-2004 table 1 (714.3, 285.7 mV, 7.5 IRE), ITU-R BT.1700 (700, 300 mV); 5 V
logic behind 50 ohm, bars of 75 %, 1.4 V closed-circuit levels and scopes of 3 % are common
practice, no source. Each reading is off by up to 3 %, evenly, from one seed.

cause_cases.py > FILE writes the table; cause_cases.py --check FILE says whether it is still that.
"""
import random
import sys

import numpy as np

ACCURACY = 0.03
SEED = 525625
OPEN_OHM = 10e3


def node_voltages(n, resistors, sources):
    """Voltages of nodes 1 to n; resistors (a, b, ohm) with 0 the return; sources (node, volt, ohm)."""
    g = np.zeros((n, n))
    i = np.zeros(n)
    for a, b, ohm in resistors:
        for k in (a, b):
            if k:
                g[k - 1, k - 1] += 1 / ohm
        if a and b:
            g[a - 1, b - 1] -= 1 / ohm
            g[b - 1, a - 1] -= 1 / ohm
    for node, volt, ohm in sources:
        g[node - 1, node - 1] += 1 / ohm
        i[node - 1] += volt / ohm
    return np.linalg.solve(g, i)


def at_loads(emf, source_ohm, loads):
    return node_voltages(1, [(1, 0, r) for r in loads], [(1, emf, source_ohm)])[0]


def behind_pad(emf, db):
    """A T pad of 75 ohm between a 75 ohm source and a 75 ohm load."""
    k = 10 ** (db / 20)
    arm, leg = 75 * (k - 1) / (k + 1), 75 * 2 * k / (k * k - 1)
    return node_voltages(3, [(1, 2, arm), (2, 0, leg), (2, 3, arm), (3, 0, 75)], [(1, emf, 75)])[2]


NTSC = dict(white=100 / 140, black=7.5 / 140, sync=40 / 140, burst=40 / 140)
PAL = dict(white=0.7, black=0.0, sync=0.3, burst=0.3)
PLACES = {
    'pal': ('pal-b', 'composite', 'in-video', 'video', PAL),
    'ntsc': ('ntsc-m', 'composite', 'in-video', 'video', NTSC),
    'mono': ('none', 'luminance', 'in-video', 'video', dict(white=0.7, black=0.0, sync=0.3)),
    'green': ('none', 'rgb', 'on-green', 'g', dict(white=0.7, black=0.0, sync=0.3)),
    'red': ('none', 'rgb', 'composite-sync', 'r', dict(white=0.7, black=0.0)),
    'y': ('none', 'component', 'on-y', 'y', dict(white=0.7, black=0.0, sync=0.3)),
    'pb': ('none', 'component', 'on-y', 'pb', dict(white=0.35)),
    'yc-y': ('pal-b', 'yc', 'in-video', 'y', dict(white=0.7, black=0.0, sync=0.3)),
    'yc-c': ('pal-b', 'yc', 'in-video', 'c', dict(burst=0.3)),
    'csync': ('none', 'rgb', 'composite-sync', 'sync', dict(sync=0.3)),
    'logic': ('none', 'rgb', 'separate', 'h', dict(sync=5.0)),
    'logic-1k1': ('none', 'rgb', 'composite-sync', 'sync', dict(sync=5.0)),
}
COLUMNS = ('sync', 'polarity', 'white', 'black', 'burst', 'dc', 'tilt')
rows = []


def case(place, accept, what, **readings):
    rows.append((f'{place}/{what}', place, accept, readings))


def scaled(place, accept, what, ratio, **changed):
    """All levels of a place times one ratio."""
    levels = {k: v * ratio for k, v in PLACES[place][4].items()}
    case(place, accept, what, **{**levels, **changed})


def ratio_of(loads):
    return at_loads(2.0, 75, loads)


VIDEO = ('pal', 'ntsc', 'mono', 'green', 'red', 'y', 'pb', 'yc-y', 'yc-c', 'csync')
FULL = ('pal', 'ntsc', 'mono', 'green', 'y', 'yc-y')

for p in VIDEO:
    scaled(p, 'unterminated', 'open', ratio_of([OPEN_OHM]))
    scaled(p, 'two-loads', 'two', ratio_of([75, 75]))
for p in ('pal', 'ntsc', 'mono', 'y'):
    scaled(p, 'three-loads|attenuator-added', 'three', ratio_of([75, 75, 75]))
    scaled(p, 'three-loads|attenuator-added', 'pad-6', behind_pad(2.0, 6))
for p in ('pal', 'ntsc', 'mono', 'green', 'csync', 'y', 'yc-y'):
    scaled(p, '50-ohm', '50-ohm', ratio_of([50]))
for p in ('pal', 'ntsc', 'mono', 'green', 'y'):
    scaled(p, 'other-load', '1-kilohm', ratio_of([1000]))
for p in ('pal', 'ntsc', 'green', 'yc-y'):
    scaled(p, 'attenuator-added', 'pad-3', behind_pad(2.0, 3))
    scaled(p, 'attenuator-added', 'pad-10', behind_pad(2.0, 10))
for p, db in zip(('pal', 'ntsc', 'mono', 'green', 'y', 'yc-y', 'pal', 'ntsc'),
                 (1, 1, 1, 1, 1, 1.5, 2, 1.5)):
    scaled(p, 'gain', f'gain-{db}', 10 ** (db / 20))
for p, db in zip(FULL + ('pal',), (-2, -2, -2, -2, -4, -4, 2)):
    white = PLACES[p][4]['white'] * 10 ** (db / 20)
    scaled(p, 'picture-gain', f'white{db}', 1, white=white)
for p, share in zip(FULL + ('pal',), (0.7, 0.6, 0.75, 0.7, 0.5, 0.8, 1.3)):
    scaled(p, 'sync-gain', f'sync-{share}', 1, sync=PLACES[p][4]['sync'] * share)
for p, share in zip(('pal', 'ntsc', 'pal', 'ntsc'), (0.6, 0.6, 0.4, 0.75)):
    scaled(p, 'burst-gain', f'burst-{share}', 1, burst=PLACES[p][4]['burst'] * share)
for p in ('mono', 'pal', 'yc-y'):
    levels = dict(white=1.0, black=0.0, sync=0.4)
    if p == 'pal':
        levels['burst'] = 0.4
    case(p, 'other-levels', '1.4-v', **levels)
for p in ('ntsc', 'ntsc'):
    scaled(p, 'setup-missing', 'no-setup', 1, black=0.0)
for p in ('pal', 'y'):
    scaled(p, 'setup-added', 'setup', 1, black=0.0525)
for p in ('pal', 'ntsc', 'green', 'y', 'red'):
    levels = PLACES[p][4]
    scaled(p, 'bars-75', 'bars', 1, white=levels['black'] + 0.75 * (levels['white'] - levels['black']))
for p in ('mono', 'green', 'pal'):
    levels = PLACES[p][4]
    scaled(p, 'inverted', 'inverted', 1, white=-levels['white'], polarity=1)
case('csync', 'inverted', 'inverted', sync=0.3, polarity=1)

# Logic: an open driver of 5 V behind 50 or 100 ohm, into one 75 ohm or two, and behind 1.1 kohm.
for k in range(2):
    case('logic', 'terminated|no-resistor', 'one-load', sync=at_loads(5.0, 50, [75]))
    case('logic', 'no-resistor', 'one-load-100', sync=at_loads(5.0, 100, [75]))
    case('logic-1k1', 'attenuator-missing|no-resistor', 'no-resistor', sync=at_loads(5.0, 50, [75]))
    case('logic-1k1', 'unterminated', 'open', sync=at_loads(5.0, 1150, [OPEN_OHM]))
    case('logic-1k1', 'none', 'right', sync=at_loads(5.0, 1150, [75]))
    case('logic', 'none', 'right', sync=at_loads(5.0, 50, [OPEN_OHM]))

# Two at once; d.c.; a capacitor; nothing at all; and all as it should be.
for p in ('pal', 'green', 'y'):
    r = ratio_of([OPEN_OHM])
    scaled(p, 'unterminated+bars-75', 'open-bars', r, white=0.75 * PLACES[p][4]['white'] * r)
for p in ('pal', 'yc-y'):
    r = ratio_of([75, 75])
    scaled(p, 'two-loads+setup-added', 'two-setup', r, black=0.0525 * r)
for p in ('pal', 'green', 'mono'):
    scaled(p, 'dc-offset', 'dc', 1, dc=1.2)
scaled('pal', 'ac-coupled', 'tilt', 1, tilt=0.1)
for p in ('pal', 'csync'):
    case(p, 'no-signal', 'nothing', **{k: 0.0 for k in PLACES[p][4]})
for p in ('pal', 'ntsc', 'mono', 'green', 'y', 'yc-y', 'csync'):
    scaled(p, 'none', 'right', 1)


def table():
    rand = random.Random(SEED)
    yield '# Made by tests/core/cause/cause_cases.py, which names its sources. Volts; "-": not read.\n'
    yield '\t'.join(('name', 'system', 'kind', 'sync_kind', 'conductor', 'place', 'accept')
                    + COLUMNS) + '\n'
    for name, place, accept, readings in rows:
        system, kind, sync, conductor, _ = PLACES[place]
        cells = []
        for column in COLUMNS:
            if column not in readings:
                cells.append('-')
                continue
            value = readings[column]
            if column != 'polarity':
                value *= 1 + ACCURACY * rand.uniform(-1, 1)
            cells.append(f'{value:.4g}')
        yield '\t'.join((name, system, kind, sync, conductor, place, accept, *cells)) + '\n'


if len(sys.argv) == 3 and sys.argv[1] == '--check':
    with open(sys.argv[2], encoding='utf-8') as file:
        sys.exit(0 if file.read() == ''.join(table()) else f'{sys.argv[2]} is not what this makes')
sys.stdout.writelines(table())
