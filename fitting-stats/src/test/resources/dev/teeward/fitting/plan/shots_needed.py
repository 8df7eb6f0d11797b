"""Values for PairsNeeded, WelchShotsNeeded and EquivalenceShotsNeeded. SciPy 1.17.1; run here: python3 shots_needed.py.

Welch power: both sample variances are integrated over (two-dimensional Gauss-Legendre in their chi-square quantiles' square
roots), the numerator is normal; no noncentral t is used. Assurance: chi-square of the sample variance. Half-width plans: the
smallest whole number by trying. Equivalence: chi-square integral of a normal probability.
"""
import numpy as np
from scipy import stats, integrate

rows = ["what,arguments,value"]


def put(what, arguments, value):
    rows.append("%s,%s,%.13g" % (what, arguments, value))


def chi_nodes(df, m=400):
    x, w = np.polynomial.legendre.leggauss(m)
    low, high = max(0.0, np.sqrt(df) - 9.0), np.sqrt(df) + 9.0
    r = 0.5 * (high - low) * x + 0.5 * (high + low)
    return r * r / df, 0.5 * (high - low) * w * stats.chi.pdf(r, df)


def welch(n, d, sd1, sd2, alpha=0.05, one_sided=False):
    v, w = chi_nodes(n - 1)
    a, b = np.meshgrid(sd1**2 * v / n, sd2**2 * v / n)
    weight = np.outer(w, w)
    df = (a + b) ** 2 / (a**2 / (n - 1) + b**2 / (n - 1))
    t = stats.t.isf(alpha if one_sided else alpha / 2, df)
    error = np.sqrt((sd1**2 + sd2**2) / n)
    reach = t * np.sqrt(a + b)
    p = stats.norm.sf((reach - d) / error)
    if not one_sided:
        p = p + stats.norm.cdf((-reach - d) / error)
    return float((weight * p).sum())


for n, d, s1, s2 in [(8, 3.2, 3, 1), (8, 0, 3, 1), (10, 1, 1, 1), (5, 2, 1, 2), (20, 1, 0.5, 2), (3, 4, 1, 3)]:
    put("welch", "%d;%g;%g;%g" % (n, d, s1, s2), welch(n, d, s1, s2))
put("welch one-sided", "8;3.2;3;1", welch(8, 3.2, 3, 1, one_sided=True))
n = 2
while welch(n, 3.2, 3, 1) < 0.8:
    n += 1
put("welch shots", "3.2;3;1", n)


def assurance(n, w, sd, paired):
    df = n - 1 if paired else 2 * (n - 1)
    se = stats.t.isf(0.025, df) * sd * np.sqrt((1 if paired else 2) / n)
    return stats.chi2.cdf(df * (w / se) ** 2, df)


for n, w, sd, paired in [(12, 4, 6, 1), (15, 4, 6, 1), (19, 4, 6, 0), (5, 1, 1, 1)]:
    put("assurance", "%d;%g;%g;%d" % (n, w, sd, paired), assurance(n, w, sd, paired))
for w, sd, wanted, paired in [(4, 6, 0.8, 1), (4, 6, 0.95, 1), (4, 6, 0.8, 0), (2, 6, 0.9, 1)]:
    n = 2
    while assurance(n, w, sd, paired) < wanted:
        n += 1
    put("assured shots", "%g;%g;%g;%d" % (w, sd, wanted, paired), n)


def tost(n, d, margin, sd, paired, alpha=0.05):
    df = n - 1 if paired else 2 * (n - 1)
    se = sd * np.sqrt((1 if paired else 2) / n)
    t = stats.t.isf(alpha, df)
    top = (margin / (t * se)) * np.sqrt(df)

    def f(r):
        s = r / np.sqrt(df)
        return stats.chi.pdf(r, df) * (
            stats.norm.cdf((margin - d) / se - t * s) - stats.norm.cdf((-margin - d) / se + t * s))

    return integrate.quad(f, 0, min(top, np.sqrt(df) + 12), epsabs=1e-13, epsrel=1e-12, limit=500)[0]


put("tost", "5;0;0.3;1;1", tost(5, 0, 0.3, 1, 1))
for d, margin, sd, paired in [(0, 1, 1, 1), (0.3, 1, 1, 1), (-0.3, 1, 1, 1), (0.5, 1, 1, 0)]:
    n = 2
    while tost(n, d, margin, sd, paired) < 0.8:
        n += 1
    put("tost shots", "%g;%g;%g;%d" % (d, margin, sd, paired), n)


def spread_power(n, ratio, alpha):
    f = stats.f(n - 1, n - 1)
    return f.sf(f.isf(alpha / 2) / ratio**2) + f.cdf(f.ppf(alpha / 2) / ratio**2)


put("spread", "20;2;0.01", spread_power(20, 2, 0.01))
n = 2
while spread_power(n, 1.5, 0.1) < 0.8:
    n += 1
put("spread shots", "1.5;0.1", n)
open("shots_needed.csv", "w").write("\n".join(rows) + "\n")
