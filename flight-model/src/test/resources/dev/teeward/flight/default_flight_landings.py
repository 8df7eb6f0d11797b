# Python 3, numpy 2.4, scipy 1.17: writes default_flight_landings.csv. Flights of the typical ball from the written
# formulas, DOP853 at tolerances 1e-11, landing and apex by its event search. Frame x to the target, y up, z right.
import csv, os
import numpy as np
from scipy.integrate import solve_ivp

M, D = 0.04593, 0.04267
R, A = D / 2, np.pi * D * D / 4
T = 288.15
STANDARD = dict(speed=70.0, up=12.0, right=0.0, rpm=2700.0, tilt=0.0, wind=0.0, wind_from=0.0, density=1.225,
                viscosity=1.458e-6 * T**1.5 / (T + 110.4), gravity=9.80665, inertia=0.4 * M * R * R, elevation=0.0)
ROWS = [
    dict(),                                                      # standard air of ISO 2533, calm, level
    dict(speed=55.0, up=16.0, rpm=6300.0),
    dict(speed=42.0, up=27.0, rpm=9000.0, right=-3.0, tilt=8.0),
    dict(speed=74.0, up=11.0, rpm=2600.0, right=4.0, tilt=-15.0),
    dict(speed=60.0, up=20.0, rpm=5000.0, right=-6.0, tilt=40.0),  # a tilt and height that show an axis not of length 1
    dict(speed=52.0, up=18.0, rpm=6500.0, wind=8.0, wind_from=30.0, tilt=4.0),
    dict(speed=65.0, up=13.0, rpm=3500.0, wind=6.0, wind_from=-110.0, right=2.0, elevation=-12.0),
    dict(speed=50.0, up=20.0, rpm=7000.0, gravity=9.7803, elevation=8.0, tilt=-6.0),
    dict(speed=48.0, up=21.0, rpm=7500.0, gravity=3.71, tilt=5.0),
    dict(speed=58.0, up=15.0, rpm=5500.0, inertia=1.2e-5, right=1.0),
    dict(speed=40.0, up=28.0, rpm=8500.0, viscosity=2.4e-5, tilt=3.0),
    dict(speed=66.0, up=14.0, rpm=4200.0, density=1.0, viscosity=1.85e-5, wind=5.0, wind_from=150.0, tilt=10.0),
]


def cross(a, b):
    return np.array([a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]])


def fly(q):
    up, right, tilt, frm = (np.radians(q[k]) for k in ("up", "right", "tilt", "wind_from"))
    d = np.array([np.cos(up) * np.cos(right), np.sin(up), np.cos(up) * np.sin(right)])
    h = np.array([-np.sin(right), 0.0, np.cos(right)])
    axis = np.cos(tilt) * h - np.sin(tilt) * cross(h, d)
    wind = -q["wind"] * np.array([np.cos(frm), 0.0, np.sin(frm)])
    rho, mu = q["density"], q["viscosity"]

    def rates(t, y):
        u = y[3:6] - wind
        v = np.sqrt(u @ u)
        re, s = rho * v * D / mu, R * y[6] / v
        w = s / (s + 0.200)
        cd = 0.209 + 0.274 * s / (1 + s) + 0.368 / (1 + (re / 0.61e5) ** 4)
        cl = (0.230 + 0.168 / (1 + (re / 1.5e5) ** 4)) * w * (2 - w)
        f = 0.5 * rho * A * v * v / M
        acc = f * (-cd * u / v + cl * cross(axis, u) / v) - np.array([0.0, q["gravity"], 0.0])
        return np.concatenate([y[3:6], acc, [-0.5 * rho * A * D * 0.010 * R / q["inertia"] * v * y[6]]])

    top = lambda t, y: y[4]
    down = lambda t, y: y[1] - q["elevation"]
    top.direction = down.direction = -1
    down.terminal = True
    y0 = np.concatenate([[0.0, 0.0, 0.0], q["speed"] * d, [q["rpm"] * np.pi / 30]])
    # 60 s at most; an event search that starts on the ground must not see the start as a landing: direction -1
    r = solve_ivp(rates, (0, 60), y0, "DOP853", rtol=1e-11, atol=1e-11, max_step=0.1, events=(top, down))
    end = r.y_events[1][-1]
    return [end[0], end[2], r.y_events[0][0][1], r.t_events[1][-1], end[6] * 30 / np.pi]


if __name__ == "__main__":
    here = os.path.dirname(os.path.abspath(__file__))
    with open(os.path.join(here, "default_flight_landings.csv"), "w", encoding="utf-8", newline="\n") as out:
        names = list(STANDARD)
        write = csv.writer(out, lineterminator="\n")
        out.write("# default_flight_landings.py; m, s, deg, rpm, kg/m3, Pa s, m/s2, kg m2\n")
        write.writerow(names + ["carry_x", "side_z", "apex", "time", "landing_rpm"])
        for row in ROWS:
            q = {**STANDARD, **row}
            write.writerow([repr(float(q[n])) for n in names] + ["%.8f" % v for v in fly(q)])
