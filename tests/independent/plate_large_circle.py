"""Large deflection of a circular plate under uniform pressure, by shooting through von Karman's equations from the centre
(scipy.integrate.solve_ivp, DOP853): prints what tests/cases/plate.toml quotes.

Lengths by the radius a, deflection by the thickness t, Q = q a^4/(D t); stresses over E t^2/a^2. Unknowns over x = r/a:
slope f = dW/dx, h = f' + f/x, hoop strain e = u/x (over t^2/a^2), radial force N (over D/a^2), deflection W.
"""

import sys

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import root

START = 1e-3


def shoot(h0, n0, Q, nu):
    def rhs(x, y):
        f, h, e, n, _ = y
        return [h - f / x, n * f + Q * x / 2, (n / 12 - f * f / 2 - (1 + nu) * e) / x,
                (12 * (1 - nu**2) * e - (1 - nu) * n) / x, f]

    x = START
    c3 = (n0 * h0 / 2 + Q / 2) / 8
    e0 = n0 / (12 * (1 + nu))
    # 2 e2 = n2/12 - (1 + nu) e2 - h0^2/8 and (3 - nu) n2 = 12 (1 - nu^2) e2
    e2 = -(h0**2 / 8) / (3 + nu - (1 - nu**2) / (3 - nu))
    n2 = 12 * (1 - nu**2) * e2 / (3 - nu)
    f = h0 / 2 * x + c3 * x**3
    start = [f, h0 + 4 * c3 * x**2, e0 + e2 * x**2, n0 + n2 * x**2, h0 / 4 * x**2 + c3 / 4 * x**4]
    return solve_ivp(rhs, (x, 1), start, method="DOP853", rtol=1e-12, atol=1e-14).y[:, -1]


def plate(p, clamped, held, nu=0.3):
    """p = q a^4/(E t^4)."""
    guess, before = None, None
    for part in np.geomspace(min(1.0, p), p, 1 + int(24 * np.log10(max(p, 1)))):
        Q = 12 * (1 - nu**2) * part

        def ends(z):
            f, h, e, n, _ = shoot(z[0], z[1], Q, nu)
            return [f if clamped else h - f + nu * f, e if held else n]

        if guess is None:
            guess = [-Q / 8 * (1 if clamped else (3 + nu) / (1 + nu)) * 0.9, 1.0]
        # the loads rise by equal ratios: the next values follow from the last two
        first = guess if before is None else np.array(guess) ** 2 / np.array(before)
        found = root(ends, first, tol=1e-12)
        before = None if guess is None or before is None and part == min(1.0, p) else guess
        guess = found.x
    assert max(abs(v) for v in ends(guess)) < 1e-7, found
    h0, n0 = guess
    f, h, e, n, w = shoot(h0, n0, Q, nu)
    k = 1 / (1 - nu**2)
    print(f"p {p} {'clamped' if clamped else 'supported'} {'held' if held else 'free'} nu {nu}: w/t {w:.9f} (0 at the centre)"
          f" centre membrane {k * n0 / 12:.8f} bending {-0.25 * k * (1 + nu) * h0:.8f}"
          f" edge membrane {k * n / 12:.8f} bending {-0.5 * k * (h - f + nu * f):.8f}"
          f" along it {e + nu * k * n / 12:.8f} bending {-0.5 * k * (f + nu * (h - f)):.8f}")


def loads():
    for p in (1.0, 10.0, 100.0, 400.0):
        for clamped in (True, False):
            for held in (True, False):
                plate(p, clamped, held)
    plate(50.0, True, True, 0.45)
    plate(50.0, False, False, 0.0)


PARTS = {"circle": loads}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
