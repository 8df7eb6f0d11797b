# How often the club is named that does nothing, where the club speed is read with a stated error: the golfer of SimulatedGolfer, written
# anew with NumPy and SciPy, and the rule of ClubOrSwing at 2.5 %, with and without a least reliability. Prints in per cent of 10,000
# sessions: named, corrected difference there, there with a 95 % interval that misses.  python3 reading-error-size.py
import numpy as np
from scipy.stats import t as student

MPH = 0.44704
random = np.random.default_rng(1)


def cell(pairs, error, swing, limits, sessions=10_000):
    shape, root = (sessions, pairs), np.sqrt(2.0)
    noise = np.array([2.0 * error**2, 0.0])
    speed = swing + root * 0.4 * random.standard_normal(shape)
    attack = root * 0.6 * random.standard_normal(shape)
    carry = 4.5 * speed + 0.8 * attack + root * 3.0 * random.standard_normal(shape)
    x = np.stack([speed + np.sqrt(noise[0]) * random.standard_normal(shape), attack], -1)
    d, f = x.mean(1), pairs - 1
    xc, yc = x - d[:, None], carry - carry.mean(1, keepdims=True)
    m = np.einsum("spi,spj->sij", xc, xc) / f
    reliability = 1.0 - np.linalg.inv(m)[:, 0, 0] * noise[0]

    def direct(s):
        a = np.linalg.inv(m - s)
        b = np.einsum("sij,spj,sp->si", a, xc, yc, optimize=True) / f
        v = yc - np.einsum("spi,si->sp", xc, b)
        var = (v**2).sum(1) / (f - 2)
        sb = b @ s
        cov = a * var[:, None, None] + a @ (s * var[:, None, None] + sb[:, :, None] * sb[:, None, :]) @ a
        return carry.mean(1) - (b * d).sum(1), np.sqrt(var / pairs + np.einsum("si,sij,sj->s", d, cov, d) / f)

    (plain, e), (corrected, ec) = direct(np.zeros((2, 2))), direct(np.diag(noise))
    t = student.ppf(1.0 - 0.0125, f - 2)
    said = (abs(plain / e) >= t) & (abs(corrected / ec) >= t) & (plain * corrected > 0.0)
    missed = abs(corrected / ec) > student.ppf(0.975, f - 2)
    for limit in limits:
        there = reliability > max(limit, 1e-9)
        print(pairs, "pairs, error", error, "m/s, swing", swing, "m/s, from", limit, "on:", *(round(100.0 * float(w.mean()), 1) for w in (there & said, there, there & missed)))


for mph in (0.5, 1.0, 1.3, 1.8):
    for pairs in (12, 20, 30, 60):
        cell(pairs, round(mph * MPH, 3), 2.0 * MPH, (0.0, 0.4, 0.5))
for error, swing in ((0.4, 1.8), (0.5, 3.0), (0.6, 3.0), (0.8, 1.8), (0.9, 3.0), (1.2, 3.0), (1.2, 5.0)):
    for pairs in (12, 20, 30, 60, 120):
        cell(pairs, error, swing, (0.0, 0.4, 0.5))
