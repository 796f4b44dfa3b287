"""Independent derivations for tests/cases/latch.toml. Needs numpy, scipy and mpmath; run it to print the numbers."""

from fractions import Fraction as F

import numpy as np
from scipy import integrate


def show(name, **values):
    print(name + ":", ", ".join(f"{key} = {float(value):.9g}" for key, value in values.items()))


# --- latch force: whole balance of forces solved as a linear system -----------------------------------------------
def force(q, length, n, pressure, area, ratio, efficiency, at_once):
    """Each latch an unknown; vertical balance and equal shares."""
    rows = np.zeros((n, n))
    rows[0, :] = 1.0
    for i in range(1, n):
        rows[i, 0], rows[i, i] = 1.0, -1.0
    total = q * length - pressure * area
    shares = np.linalg.solve(rows, np.r_[total, np.zeros(n - 1)])
    closing = np.linalg.solve(rows, np.r_[q * length, np.zeros(n - 1)])
    # work of the hand x efficiency = work of the hook
    hook = 1e-3
    hand = at_once * closing[0] * hook / efficiency / (ratio * hook)
    return dict(closing=closing[0], each=shares[0], hand=hand)


show("six latches, wind 1 kPa outward", **force(370.0, 1.811, 6, -1000.0, 0.214, 5.8, 0.9, 1))
show("four latches, two at once, pressure inward", **force(1440.0, 1.811, 4, 500.0, 0.214, 5.8, 0.9, 2))

# --- latch travel: exact fractions -----------------------------------------------------------------------------------
compressed, stand_off, bow, tolerance, clearance = F(4), F(2), F(6, 10), F(14, 10), F(1)
needed = compressed + stand_off + bow + tolerance + clearance
rebound = (1 - F(55, 100)) * compressed + bow
show("first guess, mm", needed=needed, left=F(6) - needed, rebound=rebound, release=rebound + clearance, release_left=F(6) - rebound - clearance)


# --- latch hold: let a lid on stiff stops, then on soft sponge, be thrown outward; the bounds enclose both ---------------------
def contact(mass, acceleration, n, force, latch_stiffness, seat_stiffness):
    """Seat force and latch force after the throw, both springs linear while in contact."""
    load = mass * acceleration
    lift = load / (n * latch_stiffness + seat_stiffness)
    return n * force - seat_stiffness * lift, force + latch_stiffness * lift


for seat in (1e12, 1e6, 1e-3):
    seat_force, latch = contact(3.25, 3 * 9.80665, 6, 115.0, 5e5, seat)
    show(f"seat stiffness {seat:g}", seat=seat_force, latch=latch)


# --- one latch missing: a stiff lid by a linear system, a soft lid as a chain of simple spans ------------------------------------
n, F0 = 6, 115.0
show("one of six missing", even=n * F0 / (n - 1), soft=F0 + F0 / 2)


# --- tether: the fall integrated in time -------------------------------------------------------------------------------------
def fall(mass, height, stiffness, g=9.80665):
    f = lambda t, y: [y[1], g - stiffness / mass * max(y[0], 0.0)]
    stop = lambda t, y: y[1]
    stop.terminal, stop.direction = True, -1
    start = [-height, 1e-12]
    run = integrate.solve_ivp(f, (0, 10), start, events=stop, rtol=1e-12, atol=1e-14, max_step=1e-3)
    return run.y[0, -1]


for height in (0.0, 0.3):
    x = fall(3.25, height, 5e3)
    show(f"fall of {height} m", stretch=x, force=5e3 * x, energy=0.5 * 5e3 * x**2)
