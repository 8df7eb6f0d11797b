# How often the best tests decide at twelve pairs, in per cent: three-way verdicts by z with known variances and by t, of the
# golfers of SimulatedGolfer. Written from the formulas, with NumPy and SciPy, 1,000,000 sessions a number.
# How often the three-way verdict by t on the whole difference is wrong is integrated, without simulation: over the standard error that
# is found, which is independent of the mean.
#   python3 truth-table.py > truth-table.csv
import numpy as np
from scipy.integrate import quad
from scipy.stats import chi2, norm, t

N, PAIRS = 1_000_000, 12
YARD, MPH, DEG = 0.9144, 0.44704, np.pi / 180.0
rng = np.random.default_rng(20261124)


def three_way(x, errors, margin, alpha, tail):
    """Different, or practically the same."""
    return 100.0 * np.mean((2.0 * tail(np.abs(x) / errors) <= alpha) | (tail((margin - np.abs(x)) / errors) < alpha))


def estimated(error, df):
    return error * np.sqrt(rng.chisquare(df, N) / df)


def total(truth, spread):
    error = np.sqrt(9.0 * (1.0 + spread**2) + 2.0 * (1.8**2 + 0.48**2)) / np.sqrt(PAIRS)
    x = truth + error * rng.standard_normal(N)
    return (
        three_way(x, error, 5.0 * YARD, 0.05, norm.sf),
        three_way(x, estimated(error, 11), 5.0 * YARD, 0.05, lambda q: t.sf(q, 11)),
    )


def wrong(truth, spread):
    df, margin = PAIRS - 1, 5.0 * YARD
    error = np.sqrt(9.0 * (1.0 + spread**2) + 2.0 * (1.8**2 + 0.48**2)) / np.sqrt(PAIRS)

    def between(low, high):
        return max(0.0, norm.cdf((high - truth) / error) - norm.cdf((low - truth) / error))

    def given(q):
        s = error * np.sqrt(q / df)
        out, within = t.ppf(0.975, df) * s, margin - t.ppf(0.95, df) * s
        same = between(-within, within)
        if abs(truth) >= margin:
            bad = same
        else:
            bad = 0.0
        far = max(out, within)
        if truth <= 0.0:
            bad += between(far, np.inf)
        if truth >= 0.0:
            bad += between(-np.inf, -far)
        return bad * chi2.pdf(q, df)

    return 100.0 * quad(given, 0.0, 100.0, limit=1000, points=np.arange(1.0, 60.0))[0]


def swing(truth):
    found = []
    errors = [0.4 * np.sqrt(2.0 / PAIRS), 0.6 * DEG * np.sqrt(2.0 / PAIRS)]
    x = [truth + errors[0] * rng.standard_normal(N), errors[1] * rng.standard_normal(N)]
    for tail, known in ((norm.sf, True), (lambda q: t.sf(q, 11), False)):
        s = [e if known else estimated(e, 11) for e in errors]
        different = 2.0 * np.minimum(*[2.0 * tail(np.abs(a) / e) for a, e in zip(x, s)]) <= 0.025
        same = np.maximum(*[tail((m - np.abs(a)) / e) for a, e, m in zip(x, s, (MPH, DEG))]) < 0.025
        found.append(100.0 * np.mean(different | same))
    return found


def club(truth, faster, spread):
    decided = np.zeros(2)
    for _ in range(10):
        n = N // 10
        d = np.stack(
            [
                np.ones((n, PAIRS)),
                faster + 0.4 * np.sqrt(2.0) * rng.standard_normal((n, PAIRS)),
                0.6 * np.sqrt(2.0) * rng.standard_normal((n, PAIRS)),
            ],
            2,
        )
        sd = 3.0 * np.sqrt(1.0 + spread**2)
        y = truth + 4.5 * d[:, :, 1] + 0.8 * d[:, :, 2] + sd * rng.standard_normal((n, PAIRS))
        inverse = np.linalg.inv(np.einsum("mni,mnj->mij", d, d))
        beta = np.einsum("mij,mnj,mn->mi", inverse, d, y, optimize=True)
        rest = y - np.einsum("mni,mi->mn", d, beta)
        root = np.sqrt(inverse[:, 0, 0])
        s = np.sqrt((rest**2).sum(1) / (PAIRS - 3))
        decided[0] += three_way(beta[:, 0], sd * root, 5.0 * YARD, 0.025, norm.sf)
        decided[1] += three_way(beta[:, 0], s * root, 5.0 * YARD, 0.025, lambda q: t.sf(q, PAIRS - 3))
    return decided / 10.0


print("cell,total z,total t,swing z,swing t,club z,club t,total wrong")
for name, c, v, spread in (
    ("no effect", 0.0, 0.0, 1.0),
    ("club only", 6.0 * YARD, 0.0, 1.0),
    ("swing only", 0.0, 2.0 * MPH, 1.0),
    ("both", 6.0 * YARD, 2.0 * MPH, 1.0),
    ("both, against each other", -6.0 * YARD, 2.0 * MPH, 1.0),
    ("unequal spread", 0.0, 0.0, 2.0),
    ("unequal spread, club only", 6.0 * YARD, 0.0, 2.0),
):
    row = [*total(c + 4.5 * v, spread), *swing(v), *club(c, v, spread), wrong(c + 4.5 * v, spread)]
    print(name.replace(",", ";") + "," + ",".join(f"{x:.1f}" for x in row[:-1]) + f",{row[-1]:.2f}")
