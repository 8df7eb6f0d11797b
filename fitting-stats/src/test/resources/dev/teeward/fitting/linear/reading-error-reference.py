# Reference values of ReadingErrorCorrectionTest: the method of moments with known error variances, written out with NumPy from
# Fuller (1987), section 2.2, from memory: all shots in one design with exact columns beside those read with error, whose
# moment matrix is corrected as a whole, and not partialled out as the library does. Errors by Fuller's formula, or by the sandwich of the
# estimating equations sum(w v) + f S b = 0, residuals over 1 less the leverage of the readings (HC3).  python3 reading-error-reference.py
import numpy as np

speed1 = np.array([86.1, 85.4, 86.9, 87.2, 85.9, 86.3, 85.1, 86.8, 86.0, 85.7, 86.6, 86.2])
speed2 = np.array([85.6, 85.9, 86.0, 86.5, 86.4, 85.8, 85.3, 86.1, 86.3, 85.0, 86.9, 85.5])
attack1 = np.array([-3.1, -4.0, -2.8, -3.5, -4.4, -3.0, -3.7, -2.9, -4.1, -3.3, -3.6, -2.6])
attack2 = np.array([-3.6, -3.2, -3.3, -4.1, -3.9, -3.4, -2.7, -3.8, -3.5, -4.2, -3.0, -3.9])
carry1 = np.array([150.2, 147.9, 153.6, 152.8, 148.1, 151.7, 147.3, 152.9, 148.8, 149.0, 151.0, 152.2])
carry2 = np.array([146.8, 148.5, 148.2, 148.0, 148.9, 147.6, 148.1, 147.7, 149.2, 143.9, 152.0, 145.1])
errors = np.array([0.1, 0.08])


def corrected(exact, read, variances, y):
    """The last exact column's coefficient, its error and degrees of freedom."""
    n, q, k = len(y), exact.shape[1], read.shape[1]
    f = n - q
    w = np.hstack([exact, read])
    s = np.zeros((q + k, q + k))
    s[q:, q:] = np.diag(variances)
    assert np.linalg.eigvalsh(w.T @ w - f * s).min() > 0.0
    a = np.linalg.inv(w.T @ w - f * s)
    beta = a @ (w.T @ y)
    v = y - w @ beta
    svv = v @ v / (f - k)
    b = beta.copy()
    b[:q] = 0.0
    cov = a * svv + f * a @ (s * svv + s @ np.outer(b, b) @ s) @ a
    hat = np.sum(w * np.linalg.solve(w.T @ w, w.T).T, 1)
    psi = w * (v / (1.0 - hat))[:, None] + f * (s @ b) / n
    hc3 = a @ (psi.T @ psi) @ a
    return beta[q - 1], np.sqrt(cov[q - 1, q - 1]), np.sqrt(hc3[q - 1, q - 1]), f - k


def reliability(exact, read, variances):
    """The least share of the variance of a combination of the readings, beside the exact columns, that is not error."""
    rest = read - exact @ np.linalg.lstsq(exact, read, rcond=None)[0]
    m = rest.T @ rest / (len(read) - exact.shape[1])
    return min(np.linalg.eigvals(np.linalg.solve(m, m - np.diag(variances))).real)


n = len(carry1)
one = np.ones((n, 1))
d = np.stack([speed1 - speed2, attack1 - attack2], 1)
print("pairs", *map(float, corrected(one, d, 2.0 * errors**2, carry1 - carry2)))
x = np.stack([np.r_[speed1, speed2], np.r_[attack1, attack2]], 1)
club = np.stack([np.ones(2 * n), np.r_[np.ones(n), np.zeros(n)]], 1)
print("shots", *map(float, corrected(club, x, errors**2, np.r_[carry1, carry2])))
print("one covariate", *map(float, corrected(one, d[:, :1], 2.0 * errors[:1] ** 2, carry1 - carry2)))
print("reliability", float(reliability(one, d, 2.0 * errors**2)), float(reliability(club, x, errors**2)))
print("shots, one covariate", *map(float, corrected(club, x[:, :1], errors[:1] ** 2, np.r_[carry1, carry2])))
