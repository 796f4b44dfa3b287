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


# --- hinges: a lid as turned points, found by searching and integrating --------------------------------------------------
def turned(point, angle):
    """A point of the closed lid after opening: x away from the axis, z outward."""
    x, z = point
    return x * np.cos(angle) - z * np.sin(angle), x * np.sin(angle) + z * np.cos(angle)


def hinge_closing(x1, x2, latch, height, width, c1, c2, q1, q2):
    from scipy.optimize import brentq

    out = {}
    for name, x, c in (("first", x1, c1), ("second", x2, c2)):
        rise = lambda t: turned((x, -height), t)[1] + height - c
        angle = brentq(rise, 0, 1.0, xtol=1e-15)
        out[name + "_angle_deg"] = np.degrees(angle)
        out[name + "_slide"] = abs(turned((x, -height), angle)[0] - x)
    line = lambda x: q1 + (q2 - q1) * (x - x1) / (x2 - x1)
    total = width * (q1 + q2) + 2 * integrate.quad(line, x1, x2)[0]
    moment = width * (q1 * x1 + q2 * x2) + 2 * integrate.quad(lambda x: line(x) * x, x1, x2)[0]
    return dict(out, latches=moment / latch, hinges=total - moment / latch)


def swing(w, depth, back, back_depth, frame):
    from scipy.optimize import brentq, minimize_scalar

    far = minimize_scalar(lambda t: -turned((w, -depth), t)[0], bounds=(0, 1.5), method="bounded", options={"xatol": 1e-13})
    meets = brentq(lambda t: turned((-back, -back_depth), t)[1] + frame, 0, np.arctan2(back, back_depth), xtol=1e-15)
    return dict(needed=-far.fun - w, at_deg=np.degrees(far.x), opening_deg=np.degrees(meets))


def slam(m, r, w, k, theta, rise, held, stop, g=9.80665):
    """Equation of motion of the falling lid, then of the edge on a spring that stops it in the given way."""
    fall = lambda t, y: [y[1], (-m * g * r * np.cos(rise + y[0]) + held) / (m * k * k)]
    shut = lambda t, y: y[0]
    shut.terminal, shut.direction = True, -1
    start = min(theta, np.pi / 2 - rise)
    found = integrate.solve_ivp(fall, (0, 20), [start - 1e-9, 0.0], events=shut, rtol=1e-12, atol=1e-14)
    speed = found.y_events[0][0][1]
    energy = 0.5 * m * (k * speed) ** 2
    # a spring at the edge that takes up the energy over the way: the force grows evenly with the way
    spring = energy / integrate.quad(lambda s: s, 0, stop)[0]
    return dict(energy=energy, edge_speed=-speed * w, force=spring * stop)


def hold_open(m, r, area, c, theta, rise, v, rho, coefficient, frame, lid, g=9.80665):
    """Stay as a vector between two points; its force by the moment of that vector about the axis."""
    p = 0.5 * rho * v**2 * coefficient
    a, b = np.array([frame, 0.0]), np.array([lid * np.cos(theta), lid * np.sin(theta)])
    line = b - a
    arm = abs(a[0] * line[1] - a[1] * line[0]) / np.linalg.norm(line)
    height = lambda t: r * np.sin(rise + t)
    weight = m * g * (height(theta + 1e-5) - height(theta - 1e-5)) / 2e-5
    wind = p * area * c
    closing = np.sqrt(-weight / (0.5 * rho * coefficient * area * c)) if weight < 0 else float("nan")
    return dict(p=p, wind=wind, weight=weight, length=np.linalg.norm(line), arm=arm, push=(wind + weight) / arm,
                pull=(wind - weight) / arm, closing=closing)


show("hinge closing, axis 12 mm above the face", **hinge_closing(40, 440, 460, 12, 500, 4.5, 4, 0.5, 0.4))
show("hinge closing, axis 6 mm below the face", **hinge_closing(25, 300, 330, -6, 420, 3, 3.5, 0.3, 0.45))
show("swing, mm", **swing(460, 30, 20, 2, 14))
d = np.radians
show("slam from 60 deg", **slam(3.25, 0.23, 0.46, 0.46 / np.sqrt(3), d(60), 0.0, 0.0, 0.005))
show("slam on a slope with a damper", **slam(5.0, 0.3, 0.55, 0.35, d(75), d(-20), 4.0, 0.012))
show("slam from past the top", **slam(3.25, 0.23, 0.46, 0.46 / np.sqrt(3), d(110), 0.0, 0.0, 0.005))
show("hold open at 80 deg", **hold_open(3.25, 0.23, 0.26, 0.23, d(80), 0.0, 20.0, 1.25, 1.2, 0.2, 0.2))
show("hold open past the top on a slope", **hold_open(5.0, 0.3, 0.3, 0.28, d(105), d(10), 15.0, 1.25, 1.5, 0.15, 0.22))
