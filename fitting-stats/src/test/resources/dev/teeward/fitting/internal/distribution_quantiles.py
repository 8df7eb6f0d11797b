"""Writes distribution_quantiles.csv: quantiles of t, chi-square and F by mpmath, 40 digits, by bisection of the tails."""
import mpmath as mp

mp.mp.dps = 40
P = [1e-10, 0.001, 0.025, 0.3, 0.4999, 0.5001, 0.8, 0.975, 0.9995, 1 - 1e-8]


def bisect(f):
    lo, hi = mp.mpf(0), mp.mpf(1)
    while f(hi) < 0:
        hi *= 2
    for _ in range(140):
        mid = (lo + hi) / 2
        lo, hi = (mid, hi) if f(mid) < 0 else (lo, mid)
    return (lo + hi) / 2


def t(p, df):
    p, df = mp.mpf(p), mp.mpf(df)
    tail = min(p, 1 - p)
    q = bisect(lambda x: tail - mp.betainc(df / 2, mp.mpf(1) / 2, 0, df / (df + x * x), regularized=True) / 2)
    return q if p > 0.5 else -q


def chi2(p, df):
    p, df = mp.mpf(p), mp.mpf(df)
    return bisect(lambda x: mp.gammainc(df / 2, 0, x / 2, regularized=True) - p)


def f(p, a, b):
    p, a, b = mp.mpf(p), mp.mpf(a), mp.mpf(b)
    return bisect(lambda x: mp.betainc(a / 2, b / 2, 0, a * x / (a * x + b), regularized=True) - p)


rows = [("t", p, df, 0.0, t(p, df)) for df in [1.0, 1.5, 2.0, 2.2, 3.0, 4.5, 9.0, 37.3, 200.0] for p in P]
rows += [("chi2", p, df, 0.0, chi2(p, df)) for df in [1.0, 2.0, 4.5, 9.0, 37.3, 200.0] for p in P]
rows += [("F", p, a, b, f(p, a, b)) for a, b in [(1.0, 9.0), (2.0, 3.0), (4.5, 9.0), (9.0, 50.0)] for p in P]
rows += [("nct0", p, 100.0, 0.0, t(p, 100.0)) for p in [1 - 1e-6, 0.5001, 0.9, 0.999, 1 - 1e-10]]
print(
    "# distribution,p,df1,df2,quantile: mpmath %s, 40 digits, by distribution_quantiles.py beside;"
    " nct0 is the t with noncentrality 0" % mp.__version__
)
for kind, p, a, b, q in rows:
    print("%s,%r,%r,%r,%s" % (kind, p, a, b, mp.nstr(q, 20)))
