# SPDX-License-Identifier: GPL-3.0-or-later
"""Nodal analysis of resistor networks with numpy, for tests/core/test_pads.c.

Each line of standard input is one network: the e.m.f. in volts, its tolerance, the node of the
load, the number of branches, and for each branch its two nodes, its ohms and its tolerance. Node 0
is ground and node 1 is held at the e.m.f. Each line of standard output is the answer: the voltage
at the load, the lowest and the highest of it over all corners of the tolerances, and the power in
each branch.
"""

import itertools
import sys

import numpy


def voltages(open_v, branches):
    """The voltage of every node, from the conductance matrix."""
    n = 1 + max(max(a, b) for a, b, *_ in branches) if branches else 2
    n = max(n, 2)
    matrix = numpy.zeros((n, n))
    for a, b, ohm, _ in branches:
        matrix[a, a] += 1 / ohm
        matrix[b, b] += 1 / ohm
        matrix[a, b] -= 1 / ohm
        matrix[b, a] -= 1 / ohm
    known = numpy.zeros(n)
    known[1] = open_v
    matrix[0] = numpy.eye(n)[0]
    matrix[1] = numpy.eye(n)[1]
    return numpy.linalg.solve(matrix, known)


def corners(open_v, tolerance, load_node, branches):
    """The voltage at the load in every corner of the tolerances."""
    loose = [i for i, branch in enumerate(branches) if branch[3] > 0]
    for signs in itertools.product((-1, 1), repeat=len(loose)):
        moved = list(branches)
        for sign, i in zip(signs, loose):
            a, b, ohm, share = branches[i]
            moved[i] = (a, b, ohm * (1 + sign * share), share)
        for sign in (-1, 1):
            yield voltages(open_v * (1 + sign * tolerance), moved)[load_node]


def answer(line):
    words = line.split()
    open_v, tolerance = float(words[0]), float(words[1])
    load_node, n = int(words[2]), int(words[3])
    fields = words[4:]
    if len(fields) != 4 * n:
        raise ValueError(f'{n} branches expected: {line!r}')
    branches = [
        (int(fields[i]), int(fields[i + 1]), float(fields[i + 2]), float(fields[i + 3]))
        for i in range(0, 4 * n, 4)
    ]
    node_v = voltages(open_v, branches)
    all_corners = list(corners(open_v, tolerance, load_node, branches))
    numbers = [node_v[load_node], min(all_corners), max(all_corners)]
    numbers += [(node_v[a] - node_v[b]) ** 2 / ohm for a, b, ohm, _ in branches]
    return ' '.join(f'{number:.17g}' for number in numbers)


for one_line in sys.stdin:
    print(answer(one_line))
