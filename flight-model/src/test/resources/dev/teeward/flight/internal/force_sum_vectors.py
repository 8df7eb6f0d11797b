# Python 3, mpmath 1.3.0: writes force_sum_vectors.csv from the written formulas, 40 digits inside, 17 outside.
"""Frame x to the target, y up, z right. u = velocity - wind, V = |u|, S = r omega / V, Re = rho V D / mu, A = pi r^2.

acceleration = -g y_hat + (rho A V^2 / 2 m) (-Cd u/V + Cl w_hat x u/V)      (the cross product is not renormalised)
d omega/dt   = -(rho A D r Cm'/ 2 I) V omega                                 I = f m r^2, Cm' the slope of the moment

Each number is read as the double nearest to its decimals, as a Java program reads it.
"""
import os
from mpmath import mp, mpf, sqrt, sin, pi

mp.dps = 40
G = mpf("9.80665")
SLOPE = {"SmitsSmith1994": mpf(0.010), "Constant": mpf(0.010), "TypicalAerodynamics": mpf(0.010)}


def smits_smith(re, s):   # Smits and Smith 1994, from memory
    return (mpf(0.24) + mpf(0.18) * s + mpf(0.06) * sin(pi * (re - 90000) / 200000), mpf(0.54) * s ** mpf(0.4))


def typical(re, s):
    q, z, t = (re / 61000) ** 2, (re / 150000) ** 2, mpf(0.2) / (s + mpf(0.2))
    return (mpf(0.209) + mpf(0.274) * (1 - 1 / (1 + s)) + mpf(0.368) / (1 + q * q),
            (mpf(0.23) + mpf(0.168) / (1 + z * z)) * (1 - t * t))


SEA, HOT, HIGH, COLD = (1.19931, 1.8134e-5), (1.1455, 1.86e-5), (0.958, 1.79e-5), (1.29, 1.73e-5)
RULES, SMALL, LIGHT = (0.04593, 0.04267, 0.4), (0.0459, 0.04115, 0.4), (0.0390, 0.0432, 0.38)
CASES = [  # model, air, ball, velocity, wind, spin rate [rad/s], axis before it is made a unit vector, Cd, Cl
    ("SmitsSmith1994", SEA, RULES, (68.0, 14.0, 0.0), (0.0, 0.0, 0.0), 280.0, (0.0, 0.0, 1.0)),
    ("SmitsSmith1994", SEA, RULES, (68.0, 14.0, 0.0), (-4.5, 0.0, 0.0), 280.0, (0.0, 0.0, 1.0)),
    ("SmitsSmith1994", SEA, RULES, (68.0, 14.0, 0.0), (5.0, 0.0, 0.0), 280.0, (0.0, 0.0, 1.0)),
    ("SmitsSmith1994", SEA, RULES, (60.0, 18.0, 3.0), (0.0, 0.0, -6.0), 310.0, (0.02, 0.15, 0.98)),
    ("SmitsSmith1994", HOT, RULES, (45.0, -2.0, -1.5), (3.0, 0.0, 2.0), 300.0, (0.05, -0.2, 0.97)),
    ("SmitsSmith1994", HIGH, RULES, (72.0, 13.0, -4.0), (0.0, 0.0, 0.0), 265.0, (-0.03, 0.1, 0.99)),
    ("SmitsSmith1994", COLD, RULES, (30.0, -20.0, 2.0), (-8.0, 0.0, 4.0), 500.0, (0.1, 0.1, 0.9)),
    ("SmitsSmith1994", SEA, SMALL, (66.0, 10.0, 1.0), (2.0, 0.0, 1.0), 250.0, (0.0, 0.3, 0.95)),
    ("SmitsSmith1994", SEA, LIGHT, (55.0, 15.0, 0.5), (-2.0, 0.0, -3.0), 420.0, (0.3, 0.2, 0.8)),
    ("SmitsSmith1994", SEA, RULES, (40.0, 25.0, -6.0), (0.0, 0.0, 0.0), 0.0, (0.0, 0.0, 1.0)),
    ("Constant", SEA, RULES, (40.0, 0.0, 0.0), (0.0, 0.0, 0.0), 300.0, (0.0, 0.0, 1.0), 0.25, 0.15),
    ("Constant", SEA, RULES, (40.0, 0.0, 0.0), (0.0, 0.0, 0.0), 300.0, (0.0, 1.0, 0.0), 0.25, 0.15),
    ("Constant", SEA, RULES, (40.0, 0.0, 0.0), (0.0, 0.0, 0.0), 300.0, (1.0, 0.0, 0.0), 0.25, 0.15),
    ("Constant", SEA, RULES, (0.0, -30.0, 0.0), (0.0, 0.0, 7.0), 300.0, (0.0, 0.0, 1.0), 0.5, 0.2),
    ("Constant", HIGH, SMALL, (50.0, 20.0, -10.0), (4.0, 0.0, -4.0), 600.0, (0.4, -0.5, 0.7), 0.3, 0.0),
    ("Constant", COLD, LIGHT, (25.0, 12.0, 6.0), (10.0, 0.0, 2.0), 900.0, (-0.2, 0.9, 0.5), 0.0, 0.25),
    ("TypicalAerodynamics", SEA, RULES, (68.0, 14.0, 0.0), (0.0, 0.0, 0.0), 280.0, (0.0, 0.0, 1.0)),
    ("TypicalAerodynamics", HIGH, RULES, (48.0, 16.0, -2.0), (-3.0, 0.0, 3.5), 690.0, (0.05, -0.12, 0.98)),
    ("TypicalAerodynamics", SEA, RULES, (14.0, -19.0, 1.0), (5.0, 0.0, -2.0), 800.0, (0.2, 0.15, 0.9)),
    ("TypicalAerodynamics", HOT, LIGHT, (75.0, 9.0, 5.0), (-9.0, 0.0, 0.0), 330.0, (-0.05, -0.3, 0.94)),
]
HEADER = ("case,model,drag_coefficient,lift_coefficient,density_kg_per_m3,viscosity_pa_s,mass_kg,diameter_m,inertia_factor,"
          "velocity_x_mps,velocity_y_mps,velocity_z_mps,wind_x_mps,wind_y_mps,wind_z_mps,spin_rate_rad_per_s,"
          "axis_x,axis_y,axis_z,acceleration_x_mps2,acceleration_y_mps2,acceleration_z_mps2,spin_rate_change_rad_per_s2")


def main():
    path = os.path.join(os.path.dirname(os.path.abspath(__file__)), "force_sum_vectors.csv")
    with open(path, "w", encoding="utf-8", newline="\n") as out:
        out.write("# force_sum_vectors.py, Python 3, mpmath: the force sum in 40 digits, rounded to 17; inputs are exact doubles.\n")
        out.write("# velocity is relative to the ground; gravity 9.80665 m/s2 included; moment slope 0.010; lift not renormalised.\n")
        out.write("# drag_coefficient and lift_coefficient are inputs of the model Constant; for the others they are results.\n")
        out.write(HEADER + "\n")
        for number, (model, air, ball, vel, wind, spin, axis, *constant) in enumerate(CASES, 1):
            rho, mu = map(mpf, air)
            m, d, f = map(mpf, ball)
            size = sqrt(sum(mpf(c) ** 2 for c in axis))
            axis = [float(mpf(c) / size) for c in axis]   # the doubles that the file holds
            w = [mpf(c) for c in axis]
            u = [mpf(a) - mpf(b) for a, b in zip(vel, wind)]
            speed = sqrt(sum(c * c for c in u))
            r = d / 2
            area = pi * r * r
            re, s = rho * speed * d / mu, r * mpf(spin) / speed
            cd, cl = map(mpf, constant) if constant else smits_smith(re, s) if model[0] == "S" else typical(re, s)
            cross = [w[1] * u[2] - w[2] * u[1], w[2] * u[0] - w[0] * u[2], w[0] * u[1] - w[1] * u[0]]
            k = rho * area * speed / (2 * m)
            acc = [k * (-cd * u[i] + cl * cross[i]) for i in range(3)]
            acc[1] -= G
            decay = -(rho * area * d * r * SLOPE[model]) / (2 * f * m * r * r) * speed * mpf(spin)
            inputs = [*air, *ball, *vel, *wind, spin, *axis]
            results = [mp.nstr(v, 17, strip_zeros=False) if v else "0" for v in (cd, cl)]
            if constant:
                results = [repr(c) for c in constant]
            out.write(",".join([str(number), model, *results, *map(repr, inputs),
                                *(mp.nstr(v, 17, strip_zeros=False) if v else "0" for v in (*acc, decay))]) + "\n")


main()
