# Python 3.11, SciPy 1.17: scipy.interpolate.PchipInterpolator on three lines of data; prints monotone_cubic.csv.
import sys, numpy, scipy
from scipy.interpolate import PchipInterpolator
LINES = {
    "uneven": ([0.0, 1.0, 1.5, 4.0, 4.25, 7.0], [0.0, 0.2, 0.9, 1.1, 1.15, 1.2]),
    "peak": ([0.05, 0.1, 0.2, 0.4, 0.6], [0.1, 0.2, 0.3, 0.28, 0.2]),
    "plateau": ([8e4, 1e5, 1.2e5, 1.6e5, 2.4e5], [0.3, 0.26, 0.24, 0.24, 0.235]),
}
print("# scipy.interpolate.PchipInterpolator, SciPy", scipy.__version__, "by monotone_cubic.py")
print("line,x,value")
for name, (x, y) in LINES.items():
    p = PchipInterpolator(numpy.array(x), numpy.array(y))
    for at in numpy.linspace(x[0], x[-1], 23):
        print(f"{name},{at:.17g},{float(p(at)):.17g}")
