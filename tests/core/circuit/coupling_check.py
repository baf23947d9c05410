# SPDX-License-Identifier: GPL-3.0-or-later
"""A coupling capacitor simulated over whole frames with numpy, for test_coupling.c.

Each line of standard input is one case, in SI: the loop's resistance and the capacitor; the line
period; the starts of picture and sync in the line (from the leading edge of sync: the picture starts
here, ends there) and the width of line sync; lines of a frame, half lines of a field that are picture,
front porch, field sync and back porch for each of two fields; the gap in field sync; the levels of
white, black and sync; the share of the picture's lines that is white.

The signal is written out sample by sample over a frame of two fields, every half line in its place,
and run through the difference equation of R C dv/dt = signal - v until the frame repeats. That start
is found by superposition: one frame from zero gives what is added, exp (-T/(R C)) what remains.
Each line of standard output is the tilt of the field (first white line to last, measured in the middle
of the picture), and that of the line (left to right in the middle white line), both of field 1 as a
share of white.
"""

import sys

import numpy

SAMPLES = 500  # of half a line


def frame_of(case):
    """The levels over a frame, and where the picture lines of field 1 lie, as sample numbers."""
    half_s = case['line_s'] / 2
    t = (numpy.arange(SAMPLES) + 0.5) / SAMPLES * half_s
    blank = numpy.zeros(SAMPLES)
    sync_start = numpy.where(t < case['sync_s'], case['sync_v'], 0)
    broad = numpy.where(t < half_s - case['gap_s'], case['sync_v'], 0)
    halves, starts = [], []
    for number, field in enumerate(case['fields']):
        active, front, sync, back = field
        white = int(round(active * case['white_share']))
        parts = ['front'] * front + ['sync'] * sync + ['back'] * back
        parts += ['white'] * white + ['black'] * (active - white)
        for part in parts:
            index = len(halves)
            first = index % 2 == case['phase']  # the half line that begins with line sync
            samples = broad.copy() if part == 'sync' else (sync_start if first else blank).copy()
            if part in ('white', 'black'):
                level = case['white_v'] if part == 'white' else case['black_v']
                when = t if first else t + half_s
                samples[(when >= case['left_s']) & (when < case['right_s'])] = level
                if number == 0 and part == 'white' and first:
                    starts.append(index * SAMPLES)
            halves.append(samples)
    return numpy.concatenate(halves), starts


def answer(case):
    signal, starts = frame_of(case)
    step_s = case['line_s'] / 2 / SAMPLES
    decay = numpy.exp(-step_s / case['constant_s'])
    # v[n] = decay v[n-1] + (1 - decay) signal[n], first from zero; summed up half line by half line
    powers = decay ** numpy.arange(1, SAMPLES + 1)
    v = numpy.empty(len(signal))
    last = 0.0
    for n in range(0, len(signal), SAMPLES):
        added = numpy.cumsum((1 - decay) * signal[n:n + SAMPLES] / powers)
        v[n:n + SAMPLES] = powers * (last + added)
        last = v[n + SAMPLES - 1]
    begin = v[-1] / (1 - numpy.exp(-len(signal) * step_s / case['constant_s']))
    v += begin * decay ** numpy.arange(1, len(signal) + 1)

    def at(start, when_s):
        return v[start + int(round(when_s / step_s)) - 1]

    left_s, right_s = case['left_s'], case['right_s']
    middle = starts[len(starts) // 2]
    field = at(starts[-1], left_s) - at(starts[0], left_s)
    line = at(middle, right_s) - at(middle, left_s)
    return f"{field / case['white_v']:.12g} {line / case['white_v']:.12g}"


def case_of(text):
    words = [float(word) for word in text.split()]
    ohm, farad, line_s, left_s, right_s, sync_s, phase = words[:7]
    fields = [[int(n) for n in words[7:11]], [int(n) for n in words[11:15]]]
    gap_s, white_v, black_v, sync_v, white_share = words[15:]
    return {
        'constant_s': ohm * farad, 'line_s': line_s, 'left_s': left_s, 'right_s': right_s,
        'sync_s': sync_s, 'phase': int(phase), 'fields': fields, 'gap_s': gap_s,
        'white_v': white_v, 'black_v': black_v, 'sync_v': sync_v, 'white_share': white_share,
    }


for one_line in sys.stdin:
    print(answer(case_of(one_line)))
