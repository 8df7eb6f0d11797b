"""Writes bag_reference.csv: intervals and probabilities of a small invented bag, by SciPy alone.

Three clubs, carries in metres, all invented. In "rounds" the clubs were hit in turn (paired t); in "blocks" each in one go
(Welch). Posterior of a mean: t with n - 1 df about the sample mean, scale s/sqrt(n). A shot to come: scale s sqrt(1 + 1/n).
A difference of two independent t is integrated by scipy.integrate.quad. Run: python3 bag_reference.py > bag_reference.csv
"""
import numpy as np
import scipy
from scipy import integrate, optimize, stats

CARRIES = {
    "six": [152.1, 149.8, 155.0, 147.9, 151.2, 153.6, 150.4, 148.8],
    "seven": [141.0, 138.2, 143.9, 136.1, 139.5, 142.2, 140.8, 135.9],
    "nine": [118.3, 121.1, 116.2, 119.9, 117.5, 122.4, 118.8, 120.3],
}
LEVEL, WANTED, WITHIN, TOLERANCE, SHARE, NEXT = 0.95, 12.0, 3.0, 7.0, 0.5, 0.8


def t_of(values, predictive):
    n = len(values)
    s = np.std(values, ddof=1)
    return stats.t(n - 1, np.mean(values), s * np.sqrt(1 + 1 / n) if predictive else s / np.sqrt(n))


def difference_above(d, a, b):
    """P(A - B > d)."""
    f = lambda v: b.pdf(v) * a.sf(v + d)
    m, w = b.mean(), b.std() * 40
    points = [m - w / 10, m, m + w / 10]
    inner = integrate.quad(f, m - w, m + w, points=points, limit=500, epsabs=1e-13)[0]
    return inner + integrate.quad(f, -np.inf, m - w)[0] + integrate.quad(f, m + w, np.inf)[0]


def row(name, value):
    print(f"{name},{value:.10f}")


print(f"# SciPy {scipy.__version__}, NumPy {np.__version__}; made by bag_reference.py")
print("key,value")
for club, values in CARRIES.items():
    x = np.array(values)
    n = len(x)
    half = stats.t.ppf((1 + LEVEL) / 2, n - 1) * x.std(ddof=1) / np.sqrt(n)
    row(f"{club}/mean", x.mean())
    row(f"{club}/lower", x.mean() - half)
    row(f"{club}/upper", x.mean() + half)
    row(f"{club}/sd", x.std(ddof=1))
    p = t_of(x, True)
    row(f"{club}/next_lower", p.ppf((1 - NEXT) / 2))
    row(f"{club}/next_upper", p.ppf((1 + NEXT) / 2))
    inside = lambda y: p.cdf(y + TOLERANCE) - p.cdf(y - TOLERANCE) - SHARE
    row(f"{club}/covers_to", optimize.brentq(inside, x.mean(), x.mean() + 60, xtol=1e-12))
for first, second in (("six", "seven"), ("seven", "nine")):
    x, y = np.array(CARRIES[first]), np.array(CARRIES[second])
    gap = f"{first}-{second}"
    row(f"{gap}/overlap", difference_above(0.0, t_of(y, True), t_of(x, True)))
    d = x - y
    n = len(d)
    for name, level in (("", LEVEL), ("together_", 1 - (1 - LEVEL) / 2)):
        paired = stats.ttest_rel(x, y).confidence_interval(level)
        welch = stats.ttest_ind(x, y, equal_var=False).confidence_interval(level)
        row(f"{gap}/rounds_{name}lower", paired.low)
        row(f"{gap}/rounds_{name}upper", paired.high)
        row(f"{gap}/blocks_{name}lower", welch.low)
        row(f"{gap}/blocks_{name}upper", welch.high)
    mean = stats.t(n - 1, d.mean(), d.std(ddof=1) / np.sqrt(n))
    row(f"{gap}/rounds_smaller", mean.cdf(WANTED - WITHIN))
    row(f"{gap}/rounds_larger", mean.sf(WANTED + WITHIN))
    row(f"{gap}/rounds_ordered", mean.sf(0.0))
    a, b = t_of(x, False), t_of(y, False)
    row(f"{gap}/blocks_smaller", 1 - difference_above(WANTED - WITHIN, a, b))
    row(f"{gap}/blocks_larger", difference_above(WANTED + WITHIN, a, b))
