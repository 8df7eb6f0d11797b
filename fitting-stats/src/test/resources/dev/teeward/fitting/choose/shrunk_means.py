"""Posterior means and 95 % limits of the random-effects model of ShrunkMeans, by mpmath from the model itself (over tau^2, not
over the variable of the code); prints shrunk_means.csv: case, club, mean, variance, shrunk, lower, upper."""
from mpmath import mp, mpf, quad, sqrt, exp, ncdf, findroot, inf

mp.dps = 20
CASES = {
    "unequal": ([151, 148, 155, 150], [4, 9, 2.5, 6]),
    "two": ([10, 13], [1, 2]),
    "near": ([0.1, -0.2, 0.05, 0.3, -0.1], [1, 0.5, 0.8, 1.2, 2]),
}


def given(t2, y, v):
    p = [1 / (x + t2) for x in v]
    s = sum(p)
    m = sum(a * b for a, b in zip(p, y)) / s
    like = s ** mpf(-0.5) * exp(-sum(a * (b - m) ** 2 for a, b in zip(p, y)) / 2)
    for a in p:
        like *= sqrt(a)
    centre = [m + t2 * a * (b - m) for a, b in zip(p, y)]
    spread = [sqrt(w * t2 * a + (w * a) ** 2 / s) for a, w in zip(p, v)]
    return like, centre, spread


print("case,club,mean,variance,shrunk,lower,upper")
for name, (y, v) in CASES.items():
    y, v = [mpf(x) for x in y], [mpf(x) for x in v]
    h = len(v) / sum(1 / x for x in v)
    ends = [0, 0.1, 1, 5, 20, 100, 1000, inf]
    integral = lambda f: quad(lambda t: (lambda g: f(g) * g[0] / (h + t))(given(t, y, v)), ends)
    total = integral(lambda g: 1)
    for k in range(len(y)):
        mean = integral(lambda g: g[1][k]) / total
        below = lambda x: integral(lambda g: ncdf((x - g[1][k]) / g[2][k])) / total
        limits = [
            findroot(lambda x: below(x) - q, (mean + z * sqrt(v[k]), mean + 0.8 * z * sqrt(v[k])), tol=1e-12)
            for q, z in ((mpf("0.025"), -2), (mpf("0.975"), 2))
        ]
        print(name, k, float(y[k]), float(v[k]), *(mp.nstr(x, 10) for x in [mean] + limits), sep=",")
