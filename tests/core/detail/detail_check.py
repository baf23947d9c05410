# SPDX-License-Identifier: GPL-3.0-or-later
"""What can be resolved, by another hand: from the profiles and impulses themselves where the
program has closed formulas. Called by test_detail-check.c with a file of cases, one a line:
KEY=VALUE parted by spaces. Says which figures differ, and fails if any does."""

import math
import sys

import numpy as np

# ITU-R BT.470-6 table 1-2: nominal video bandwidths; SMPTE 170M and ITU-R BT.1700: subcarriers.
SYSTEMS = {
    'none': (0, 0),
    'ntsc-m': (4.2e6, 315e6 / 88),
    'ntsc-j': (4.2e6, 315e6 / 88),
    'ntsc-4.43': (4.2e6, 4433618.75),
    'pal-b': (5e6, 4433618.75),
    'pal-m': (4.2e6, 909 / 4 * 4.5e6 / 286),
    'pal-n': (4.2e6, 3582056.25),
    'pal-60': (5e6, 4433618.75),
    'secam-l': (6e6, 4406250.0),
}
LINKS = ('source', 'signal', 'lead', 'bandwidth', 'spot', 'mask')


class Case:
    def __init__(self, text):
        self.result = {}
        for part in text.split():
            key, value = part.split('=')
            if key in ('mask', 'signal', 'system', 'filter'):
                setattr(self, key, value)
            elif ':' in key or key in ('combined_tvl', 'line_modulation'):
                self.result[key] = float(value)
            else:
                setattr(self, key, float(value))
        self.height_m = self.diagonal_m / math.hypot(self.aspect, 1)
        self.width_m = self.height_m * self.aspect
        self.column_m = 0 if self.mask == 'mono' else self.pitch_m
        if self.mask == 'dot':
            self.column_m *= math.sqrt(3) / 2
        self.system_hz, self.trapped_hz = SYSTEMS[self.system]
        if self.signal not in ('composite', 'yc'):
            self.system_hz = 0
        if self.signal != 'composite' or self.filter != 'trap':
            self.trapped_hz = 0

    def hertz(self, tvl):
        """The cycles of half as many as the lines of one height lie on the seen part of a line."""
        cycles_per_m = np.asarray(tvl) / 2 / self.height_m
        scanned_m = self.width_m / (1 - self.overscan_h)
        return cycles_per_m * scanned_m / self.active_s

    def lines(self, hertz):
        return hertz / self.hertz(1.0)

    def edge_hz(self):
        low, high = 3.1e6 / (315e6 / 88), 3.65e6 / 4433618.75
        return self.trapped_hz * (low if self.trapped_hz < 4e6 else high)

    def limit(self, link):
        if link == 'source':
            return self.lines(self.detail_hz or self.samples / (2 * self.active_s))
        if link == 'signal':
            edges = [hz for hz in (self.system_hz, self.edge_hz()) if hz > 0]
            return self.lines(min(edges)) if self.system_hz > 0 else 0
        if link == 'lead':
            return self.lines(self.lead_hz)
        if link == 'bandwidth':
            return self.lines(self.bandwidth_hz)
        if link == 'spot':
            sigma_m = self.spot_m / math.sqrt(8 * math.log(2))
            if sigma_m == 0:
                return 0
            cycles_per_m = math.sqrt(-math.log(0.03) / 2) / (math.pi * sigma_m)
            return 2 * cycles_per_m * self.height_m
        return self.height_m / self.column_m if self.column_m > 0 else 0


def low_pass(share):
    """A quarter of a cosine from 0.9 to 1.1."""
    angle = np.clip((np.asarray(share) - 0.9) / 0.2, 0, 1) * math.pi / 2
    return np.cos(angle)


def trap(hertz, resonance_hz, edge_hz):
    """A series resonant circuit across a resistive path, of such a Q as gives -3 dB at the edge."""
    edge = edge_hz / resonance_hz
    q = edge / (1 - edge ** 2)
    u = np.asarray(hertz) / resonance_hz
    return np.abs((1 - u ** 2) / (1 - u ** 2 + 1j * u / q))


def cell_response(cycles_per_cell):
    """A cosine averaged over the cell beside its peak, which falls between two cells."""
    x = (np.arange(4000) + 0.5) / 4000
    mean = np.mean(np.cos(2 * math.pi * np.multiply.outer(cycles_per_cell, x)), axis=-1)
    return np.where(np.asarray(cycles_per_cell) < 0.5, mean, 0)


def gaussian_response(frequency, sigma):
    """The spectrum of the profile itself, by summing it."""
    x = np.linspace(-9, 9, 4001)
    profile = np.exp(-x ** 2 / 2)
    waves = np.cos(2 * math.pi * sigma * np.multiply.outer(frequency, x))
    return np.sum(profile * waves, axis=-1) / np.sum(profile)


def modulation(case, link, tvl):
    """What is left at the places tvl, an array."""
    limit = case.limit(link)
    if not limit > 0:
        return np.ones_like(tvl)
    hertz = case.hertz(tvl) if case.active_s > 0 else None
    if link == 'source':
        return low_pass(hertz / case.detail_hz) if case.detail_hz > 0 else \
            cell_response(hertz * case.active_s / case.samples)
    if link == 'signal':
        passed = low_pass(hertz / case.system_hz)
        return passed * trap(hertz, case.trapped_hz, case.edge_hz()) if case.trapped_hz else passed
    if link == 'lead':
        loss_db = 20 * math.log10(math.sqrt(2)) * np.sqrt(hertz / case.lead_hz)
        return 10 ** (-loss_db / 20)
    if link == 'bandwidth':
        sigma_s = math.sqrt(math.log(2)) / (2 * math.pi * case.bandwidth_hz)
        return gaussian_response(hertz, sigma_s)
    if link == 'spot':
        return gaussian_response(tvl / 2 / case.height_m,
                                 case.spot_m / math.sqrt(8 * math.log(2)))
    return cell_response(tvl / 2 / case.height_m * case.column_m)


def closed(case, tvl):
    """All links, by formulas, for a long row of places."""
    product = np.ones_like(tvl)
    for link in LINKS:
        limit = case.limit(link)
        if not limit > 0:
            continue
        share = tvl / limit
        if link in ('signal', 'lead') or (link == 'source' and case.detail_hz > 0):
            product *= modulation(case, link, tvl)
        elif link == 'bandwidth':
            product *= np.exp(-math.log(2) / 2 * share ** 2)
        elif link == 'spot':
            sigma_m = case.spot_m / 2.3548200450309493
            product *= np.exp(-2 * (math.pi * sigma_m * tvl / 2 / case.height_m) ** 2)
        else:
            product *= np.where(share < 1, np.sinc(share), 0)
    return product


def falls_to(tvl, left, level):
    """The first place where no more than level is left; zero if that is nowhere."""
    if not left.min() <= level:
        return 0
    at = int(np.argmax(left <= level))
    share = (left[at - 1] - level) / (left[at - 1] - left[at])
    return tvl[at - 1] + share * (tvl[at] - tvl[at - 1])


def line_modulation(case):
    """The sum of many lines, and its extremes where they are found. Without a spot a typical one: 0.63 mm goes with
    a pitch of 0.31 mm, and 0.8 mm with a tube of 355 mm."""
    pitched = case.mask != 'mono' and case.pitch_m > 0
    typical_m = case.pitch_m * 0.63 / 0.31 if pitched else case.diagonal_m * 0.8 / 355
    spot_m = case.spot_m if case.spot_m > 0 else typical_m
    pitch_m = case.height_m / (case.active_lines * (1 - case.overscan_v))
    sigma = spot_m / pitch_m / math.sqrt(8 * math.log(2))
    place = np.linspace(0, 1, 2001)
    lines = np.arange(-60, 62)
    field = np.sum(np.exp(-((place[:, None] - lines) / sigma) ** 2 / 2), axis=1)
    return (field.max() - field.min()) / (field.max() + field.min())


def expected(case):
    limits = np.array([case.limit(link) for link in LINKS])
    known = limits[limits > 0]
    yield 'combined_tvl', np.sum(known ** -2.0) ** -0.5 if known.size else 0, 1e-9
    row = np.geomspace(1, 1e6, 80001)
    left = closed(case, row)
    for level in ('0.03', '0.1', '0.5'):
        yield 'level_tvl:' + level, falls_to(row, left, float(level)), 1e-5
    yield 'line_modulation', line_modulation(case), 1e-6
    keys = [key.split(':') for key in case.result if key.startswith('mtf:')]
    places = np.array(sorted({float(tvl) for _, _, tvl in keys}))
    product = np.ones_like(places)
    for link in LINKS:
        left = modulation(case, link, places)
        product *= left
        for tvl, value in zip(places, left):
            yield 'mtf:%s:%g' % (link, tvl), value, 1e-5
    for tvl, value in zip(places, product):
        yield 'mtf:all:%g' % tvl, value, 1e-5


def differences(number, text):
    case = Case(text)
    checked = set()
    for key, value, tolerance in expected(case):
        checked.add(key)
        given = case.result[key]
        if not abs(given - value) <= tolerance * max(abs(value), 1e-2):
            yield 'case %d: %s is %.10g, not %.10g\n  %s' % (number, key, given, value, text)
    for key in set(case.result) - checked:
        yield 'case %d: %s was not checked' % (number, key)


def main():
    with open(sys.argv[1], encoding='ascii') as cases:
        texts = cases.read().splitlines()
    faults = [fault for number, text in enumerate(texts, 1) for fault in differences(number, text)]
    for fault in faults[:10]:
        print(fault)
    print('%d cases agree' % len(texts) if not faults else '%d figures differ' % len(faults))
    return 1 if faults or not texts else 0


if __name__ == '__main__':
    sys.exit(main())
