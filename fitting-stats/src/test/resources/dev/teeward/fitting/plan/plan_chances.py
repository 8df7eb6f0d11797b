"""Chances of a plan: power of the paired t test, of two one-sided t tests, their means over a spread known from a pilot, and
sessions looked at after every pair. Written from the textbook formulas, with SciPy and NumPy; prints plan_chances.csv.

kind: t, tost   exact, scipy.integrate over the sample spread (Owen's integral)
      t-pilot, tost-pilot   the same, mean over sd = s / sqrt(chi2(m - 1) / (m - 1)), scipy.integrate.quad
      seq-different, seq-same   share of 200,000 simulated sessions that stopped rightly by then; se is its standard error
columns: kind, pairs, margin, sd, pilot pairs (0 if sd is known), chance, se
"""
import numpy as np
from scipy import integrate, optimize, stats


def t_power(n, d, sd, alpha=0.05):
    # Not by stats.nct, which is not a number at large noncentrality (SciPy 1.17.1).
    df = n - 1
    c = stats.t.ppf(1 - alpha / 2, df)
    ncp = np.sqrt(n) * d / sd
    chi = stats.chi(df)
    f = lambda s: (stats.norm.sf(c * s - ncp) + stats.norm.cdf(-c * s - ncp)) * chi.pdf(s * np.sqrt(df)) * np.sqrt(df)
    top = 1 + 9.5 / np.sqrt(df)
    return integrate.quad(f, 0, top, points=[min(top, ncp / c)], epsabs=1e-10, limit=300)[0]


def tost_power(n, margin, sd, alpha=0.05):
    df, se = n - 1, sd / np.sqrt(n)
    c = stats.t.ppf(1 - alpha, df)
    chi = stats.chi(df)
    f = lambda s: (2 * stats.norm.cdf(margin / se - c * s) - 1) * chi.pdf(s * np.sqrt(df)) * np.sqrt(df)
    return integrate.quad(f, 0, margin / (c * se), epsabs=1e-11, limit=300)[0]


def over_pilot(power, n, margin, s, m):
    df = m - 1
    chi = stats.chi2(df)
    f = lambda q: power(n, margin, s / np.sqrt(q / df)) * chi.pdf(q)
    return integrate.quad(f, chi.ppf(1e-10), chi.isf(1e-10), epsabs=1e-7, limit=400)[0]


def log_e(t, n, g=1.0):
    nu = n - 1
    return -0.5 * np.log1p(n * g) - 0.5 * n * (np.log1p(t * t / ((1 + n * g) * nu)) - np.log1p(t * t / nu))


def critical(n, level=0.95):
    want = -np.log(1 - level)
    if log_e(1e8, n) <= want:
        return np.inf
    return optimize.brentq(lambda t: log_e(t, n) - want, 0, 1e8)


def sequential(rng, true, margin, sds, most):
    x = true + sds[:, None] * rng.standard_normal((len(sds), most))
    n = np.arange(1, most + 1)
    mean = np.cumsum(x, 1) / n
    var = (np.cumsum(x * x, 1) - n * mean**2) / np.maximum(n - 1, 1)
    half = np.array([np.inf if k < 2 else critical(k) for k in n]) * np.sqrt(np.where(n > 1, var, 1.0) / n)
    low = np.maximum.accumulate(mean - half, 1)
    high = np.minimum.accumulate(mean + half, 1)
    same = (low > -margin) & (high < margin)
    diff = ~same & ((low > 0) | (high < 0))
    stop = np.argmax(same | diff, 1)
    rows = np.arange(len(sds))
    any_stop = (same | diff).any(1)
    right = same[rows, stop] if true == 0 else diff[rows, stop] & (low[rows, stop] > 0)
    return any_stop & right, stop + 1


def main():
    print("kind,pairs,margin,sd,pilot,chance,se")
    for n, m, sd in [(5, 5, 3), (10, 5, 6), (14, 5, 6), (24, 5, 9), (24, 1, 1), (40, 0.5, 1)]:
        print(f"t,{n},{m},{sd},0,{t_power(n, m, sd):.8f},0")
        print(f"tost,{n},{m},{sd},0,{tost_power(n, m, sd):.8f},0")
        for pilot in (6, 12):
            print(f"t-pilot,{n},{m},{sd},{pilot},{over_pilot(t_power, n, m, sd, pilot):.6f},0")
            print(f"tost-pilot,{n},{m},{sd},{pilot},{over_pilot(tost_power, n, m, sd, pilot):.6f},0")
    rng = np.random.default_rng(7)
    runs = 200_000
    for m, sd, pilot in [(5, 6, 0), (5, 4, 0), (1, 1, 0), (5, 6, 10)]:
        for true, kind in ((m, "seq-different"), (0, "seq-same")):
            sds = np.full(runs, float(sd))
            if pilot:
                sds = sd / np.sqrt(rng.chisquare(pilot - 1, runs) / (pilot - 1))
            right, at = sequential(rng, true, m, sds, 24)
            for n in (12, 24):
                p = np.mean(right & (at <= n))
                print(f"{kind},{n},{m},{sd},{pilot},{p:.5f},{np.sqrt(p * (1 - p) / runs):.5f}")


main()
