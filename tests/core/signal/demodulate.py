#!/usr/bin/env python3
# SPDX-License-Identifier: GPL-3.0-or-later
"""Takes a composite test signal apart and holds it against the equations of the standards.

  demodulate.py SYSTEM RATE BARS FILE

FILE holds raw 32-bit floats in volts: whole frames of colour bars, the first sample at 0H of line 1
of the first frame of the colour sequence. RATE is a whole number or NUM/DEN in hertz, BARS 75 or
100. Written apart from the program: it shares no constant with it.

Sources: SMPTE 170M-2004 tables 1 to 3, clauses 6, 10 and 11 (NTSC; bars of annex A); ITU-R BT.1700
Part B and BT.470-6 (PAL: 0.493, 0.877, burst at +135 and -135 degrees, 300 mV); BT.1700 Part C
(SECAM). PAL M here with a burst of 40 IRE and setup of 7.5 IRE (common practice, no source).
"""
import sys
from fractions import Fraction

import numpy as np

FH_525 = Fraction(4500000, 286)
FH_625 = Fraction(15625)

# line rate, subcarrier, white V, setup, factors on B-Y and R-Y, burst p-p V, 0H to picture and
# front porch in us, lines of a frame
SYSTEMS = {
    "ntsc-m": (FH_525, FH_525 * 455 / 2, 100 / 140, 0.075, 0.492111, 0.877283, 40 / 140,
               9.2, 1.5, 525),
    "ntsc-j": (FH_525, FH_525 * 455 / 2, 100 / 140, 0.0, 0.492111, 0.877283, 40 / 140,
               9.2, 1.5, 525),
    "ntsc-4.43": (FH_525, Fraction(443361875, 100), 100 / 140, 0.0, 0.492111, 0.877283, 40 / 140,
                  9.2, 1.5, 525),
    "pal-b": (FH_625, FH_625 * (Fraction(1135, 4) + Fraction(1, 625)), 0.7, 0.0, 0.493, 0.877, 0.3,
              10.5, 1.5, 625),
    "pal-n": (FH_625, FH_625 * (Fraction(917, 4) + Fraction(1, 625)), 0.7, 0.0, 0.493, 0.877, 0.3,
              10.5, 1.5, 625),
    "pal-m": (FH_525, FH_525 * 909 / 4, 100 / 140, 0.075, 0.493, 0.877, 40 / 140, 9.2, 1.5, 525),
    "pal-60": (FH_525, Fraction(443361875, 100), 0.7, 0.0, 0.493, 0.877, 0.3, 9.2, 1.5, 525),
    "secam-l": (FH_625, Fraction(4406250), 0.7, 0.0, 0, 0, 0, 10.5, 1.5, 625),
}

BARS = [(1, 1, 1), (1, 1, 0), (0, 1, 1), (0, 1, 0), (1, 0, 1), (1, 0, 0), (0, 0, 1), (0, 0, 0)]

faults = []


def check(says, got, wanted, tolerance):
    if not abs(got - wanted) <= tolerance:
        faults.append(f"{says}: {got:.6g}, not {wanted:.6g} +- {tolerance:.2g}")


class Signal:
    def __init__(self, system, rate, path):
        (self.fh, self.fsc, self.white, self.setup, self.ku, self.kv, self.burst_pp, self.left,
         self.porch, self.lines) = SYSTEMS[system]
        self.rate = rate
        self.volts = np.fromfile(path, dtype="<f4").astype(np.float64)
        if not np.all(np.isfinite(self.volts)):
            faults.append("not all samples are finite")
        self.frames = round(len(self.volts) * self.fh / self.rate / self.lines)

    def span(self, line, from_us, to_us):
        """Numbers of the samples between two instants after 0H of a line counted from 0."""
        datum = self.rate * line / self.fh
        first = -((-datum - self.rate * Fraction(from_us) / 10**6) // 1)
        last = (datum + self.rate * Fraction(to_us) / 10**6) // 1
        return np.arange(int(first), int(last))

    def phasor(self, k):
        """sin and cos of the subcarrier at each sample, from whole numbers."""
        ratio = self.fsc / self.rate
        assert ratio.denominator < 2**31  # so that no product overflows
        turns = (k % ratio.denominator * ratio.numerator) % ratio.denominator / ratio.denominator
        angle = 2 * np.pi * turns
        return np.sin(angle), np.cos(angle)

    def fit(self, line, from_us, to_us):
        """Mean level and the amplitudes of sin and cos by least squares."""
        k = self.span(line, from_us, to_us)
        s, c = self.phasor(k)
        matrix = np.stack([np.ones(len(k)), s, c], axis=1)
        return np.linalg.lstsq(matrix, self.volts[k], rcond=None)[0]

    def burst(self, line):
        start = 5.6 if self.fh == FH_625 else 5.3
        _, s, c = self.fit(line, start + 0.45, start + 1.75)
        return s + 1j * c  # a phasor whose real part is along +(B-Y) of the time origin

    def picture_us(self):
        return self.left, float(10**6 / self.fh) - self.porch


def check_burst_place(x):
    """Where the burst is at half its amplitude, on one line: 19 and 28 cycles after 0H (SMPTE 170M table
    2); 10 cycles from 5.6 us on, 525 lines of PAL 9 from 5.3 us on (ITU-R BT.1700 Part B tables 2, 3)."""
    n = 60 if x.lines == 625 else 50
    k = x.span(n - 1, 0, 9)
    t = np.asarray(k, dtype=np.float64) / float(x.rate) - (n - 1) / float(x.fh)
    s, c = x.phasor(k)
    shifted = x.volts[k] * (s + 1j * c)
    fine = np.arange(4.6e-6, 8.9e-6, 2e-9)
    width = 1 / float(x.fsc)
    weights = 0.5 + 0.5 * np.cos(np.pi * np.clip((fine[:, None] - t[None, :]) / (2 * width), -1, 1))
    envelope = np.abs(weights @ shifted) / weights.sum(axis=1)
    above = fine[envelope > envelope.max() / 2]
    cycles = 10 if x.fsc > 4e6 else 9
    start = 5.6e-6 if x.fh == FH_625 else 19 * width if x.ku == 0.492111 and x.fsc < 4e6 else 5.3e-6
    check(f"line {n}, burst begins, us", 1e6 * above[0], 1e6 * start, 0.04)
    check(f"line {n}, burst ends, us", 1e6 * above[-1], 1e6 * start + 1e6 * cycles * width, 0.04)


def check_carrier(x):
    """The strongest line near the subcarrier is at its very frequency. A power of two is quick; if
    the subcarrier does not fit into it, whole frames are taken."""
    n = 2 ** (len(x.volts).bit_length() - 1)
    if n * x.fsc / x.rate % 1:
        n = len(x.volts)
    if n * x.fsc / x.rate % 1:
        return  # it falls between two lines of the spectrum
    spectrum = np.abs(np.fft.rfft(x.volts[:n]))
    step = float(x.rate) / n
    around = int(float(x.fh) / 8 / step)
    low = int(round(float(x.fsc) / step)) - around
    peak = low + int(np.argmax(spectrum[low:low + 2 * around]))
    check("subcarrier, Hz", peak * step, float(x.fsc), 1e-6 * float(x.fsc))


def expected_bar(bar, amount):
    return tuple(amount * c for c in BARS[bar])


def check_bars(x, line, axis, v_sign, amount):
    left, right = x.picture_us()
    width = (right - left) / 8
    for bar in range(8):
        luma, s, c = x.fit(line, left + (bar + 0.3) * width, left + (bar + 0.7) * width)
        chroma = (s + 1j * c) / axis
        scale = x.white * (1 - x.setup)
        y = (luma / x.white - x.setup) / (1 - x.setup)
        b_y = chroma.real / scale / x.ku
        r_y = v_sign * chroma.imag / scale / x.kv
        r, b = r_y + y, b_y + y
        g = (y - 0.299 * r - 0.114 * b) / 0.587
        for name, got, wanted in zip("RGB", (r, g, b), expected_bar(bar, amount)):
            check(f"line {line}, bar {bar}, {name}", got, wanted, 0.005)


def check_ntsc(x, amount):
    for frame in range(x.frames):
        for n in (30, 31, 150, 262, 300, 401, 524):
            line = frame * x.lines + n - 1
            burst = x.burst(line)
            check(f"line {line}, burst, V p-p", 2 * abs(burst), x.burst_pp, 0.002 * x.burst_pp)
            check_bars(x, line, -burst / abs(burst), 1, amount)


def check_zero_phase(x):
    """SC/H of zero on even lines of the first field: the burst, thought to go on, crosses zero
    upwards at 0H (SMPTE 170M figure 6 has zero phase; the sense is from memory)."""
    for n in (10, 11, 100, 262):
        burst = x.burst(n - 1)
        at_0h = 2 * np.pi * float(x.fsc * (n - 1) / x.fh % 1)
        value = (burst * np.exp(1j * at_0h)) / abs(burst)
        check(f"line {n}, SC/H phase", value.imag, 0, 1e-3)
        check(f"line {n}, slope", value.real, 1 if n % 2 == 0 else -1, 1e-3)


def check_pal(x, amount):
    for frame in range(x.frames):
        for n in (40, 101, 200, 303 if x.lines == 625 else 250, 350, 501, x.lines - 5):
            line = frame * x.lines + n - 1
            # the burst swings 45 degrees to either side of -(B-Y), so two together lie on it
            this, other = x.burst(line), x.burst(line + 1)
            check(f"line {line}, burst, V p-p", 2 * abs(this), x.burst_pp, 0.002 * x.burst_pp)
            axis = -(this + other)
            axis /= abs(axis)
            swing = this / axis / abs(this)
            check(f"line {line}, swing of the burst", abs(np.angle(swing, deg=True)), 135, 0.3)
            check_bars(x, line, axis, 1 if swing.imag > 0 else -1, amount)


def check_pal_switch(x):
    """ITU-R BT.470-6 item 2.15: +135 degrees on odd lines of the first and second field and on even
    lines of the third and fourth; the lines of PAL M are counted from field sync."""
    shift = 3 if x.lines == 525 else 0
    for frame in range(min(x.frames, 2)):
        for n in (40, 41, 350, 351):
            line = frame * x.lines + n - 1 + shift
            origin = np.exp(-2j * np.pi * float(x.fsc * shift / x.fh % 1))
            positive = (n % 2 == 1) == (frame == 0)
            swing = x.burst(line) / abs(x.burst(line)) / origin
            check(f"frame {frame}, line {n}, sine of the burst", swing.imag,
                  (1 if positive else -1) * np.sqrt(0.5), 1e-3)
            check(f"frame {frame}, line {n}, cosine", swing.real, -np.sqrt(0.5), 1e-3)


def secam_peak(hz):
    """Peak of the subcarrier as a share of white: 23 % from peak to peak at 4.286 MHz, times
    |1 + j16F| / |1 + j1.26F|, F = f/f0 - f0/f (ITU-R BT.1700 Part C; BT.470-6 items 2.16, 2.17)."""
    f = hz / 4286e3 - 4286e3 / hz
    return 0.23 / 2 * abs(1 + 16j * f) / abs(1 + 1.26j * f)


def peak_share(x, k, hz):
    """Peak of the subcarrier in the samples k over what it should be at its frequency there, which is
    near hz and is found by least squares: a sine of a slightly other frequency is one that grows."""
    t = (k - np.mean(k)) / float(x.rate)
    for _ in range(4):
        s, c = np.sin(2 * np.pi * hz * t), np.cos(2 * np.pi * hz * t)
        matrix = np.stack([np.ones(len(t)), s, c, t * s, t * c], axis=1)
        _, a, b, at, bt = np.linalg.lstsq(matrix, x.volts[k], rcond=None)[0]
        hz += (a * bt - b * at) / (a * a + b * b) / 2 / np.pi
    return np.hypot(a, b) / x.white / secam_peak(hz)


def check_secam_phase(x):
    """The subcarrier begins each line at 0 or 180 degrees of its own rest frequency: at 180 on one line
    in three of one field, and on the other two in three of the next (ITU-R BT.1700 Part C: one line in
    three, and every other field)."""
    inverted = []
    for n in list(range(101, 113)) + list(range(401, 413)):
        k = x.span(n - 1, 7.4, 9.2)
        t = np.asarray(k, dtype=np.float64) / float(x.rate) - (n - 1) / float(x.fh)
        fits = []
        for hz in (4406250, 4250000):
            matrix = np.stack([np.ones(len(t)), np.sin(2 * np.pi * hz * t), np.cos(2 * np.pi * hz * t)],
                              axis=1)
            fits.append(np.linalg.lstsq(matrix, x.volts[k], rcond=None)[0][1:])
        s, c = max(fits, key=lambda fit: np.hypot(*fit))
        check(f"line {n}, cosine of the subcarrier", c / np.hypot(s, c), 0, 0.02)
        inverted.append(s < 0)
    for first, wanted in ((0, 4), (12, 8)):
        check(f"inverted of twelve lines from {first}", sum(inverted[first:first + 12]), wanted, 0)
        if any(inverted[i] != inverted[i + 3] for i in range(first, first + 9)):
            faults.append("the inverted lines do not repeat with three")


def check_secam(x, amount):
    """Frequencies and amplitudes at the end of each bar, where the low-frequency correction has died
    away. Between 16 and 17 in the correction lie 4 % at the ends, between 1.26 and 1.36 0.2 %."""
    spectrum = np.fft.fft(x.volts)
    hz = np.fft.fftfreq(len(x.volts), 1 / float(x.rate))
    spectrum[(hz < 3.0e6) | (hz > 6.0e6)] = 0
    turns = np.unwrap(np.angle(np.fft.ifft(2 * spectrum))) / 2 / np.pi
    left, right = x.picture_us()
    width = (right - left) / 8
    for n in (40, 41, 200, 201, 400, 401):
        line = n - 1
        k = x.span(line, 7.4, 9.4)
        rest = np.polyfit(k, turns[k], 1)[0] * float(x.rate)
        red = abs(rest - 4406250) < abs(rest - 4250000)
        check(f"line {n}, rest, Hz", rest, 4406250 if red else 4250000, 2000)
        for bar in range(8):
            r, g, b = expected_bar(bar, amount)
            y = 0.299 * r + 0.587 * g + 0.114 * b
            wanted = 4406250 - 280e3 * 1.902 * (r - y) if red else 4250000 + 230e3 * 1.505 * (b - y)
            k = x.span(line, left + (bar + 0.72) * width, left + (bar + 0.9) * width)
            hz = np.polyfit(k, turns[k], 1)[0] * float(x.rate)
            check(f"line {n}, bar {bar}, Hz", hz, wanted, 9000)
            check(f"line {n}, bar {bar}, peak", peak_share(x, k, wanted), 1, 0.001)
            luma = np.mean(x.volts[k]) / x.white
            check(f"line {n}, bar {bar}, luma", luma, y, 0.02)
    check_secam_phase(x)
    pairs = [abs(np.polyfit(x.span(n, 7.4, 9.4), turns[x.span(n, 7.4, 9.4)], 1)[0] * float(x.rate)
                 - 4406250) < 5e4 for n in range(99, 110)]
    if any(a == b for a, b in zip(pairs, pairs[1:])):
        faults.append("D'R and D'B do not alternate")


def main():
    system, rate, bars, path = sys.argv[1:5]
    x = Signal(system, Fraction(rate), path)
    amount = int(bars) / 100
    if x.frames < 1:
        faults.append("not one whole frame")
    elif system == "secam-l":
        check_secam(x, amount)
    else:
        check_carrier(x)
        check_burst_place(x)
        if system.startswith("ntsc"):
            check_ntsc(x, amount)
            if system != "ntsc-4.43":
                check_zero_phase(x)
        else:
            check_pal(x, amount)
            if system != "pal-60":
                check_pal_switch(x)
    for fault in faults[:20]:
        print(fault)
    print(f"{system}, {x.frames} frames: {len(faults)} faults")
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
