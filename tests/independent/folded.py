"""Folded panels by bending a fine mesh: the neutral line of the flat is walked in small steps, each turned by its share of the
bend, so that no closed form of the motion is used; several bends are walked one behind the other. Prints what
tests/cases/sheet.toml quotes, in mm. Needs numpy.
"""

import sys

import numpy as np

T, K = 1.5, 0.42


def allowance(angle, r):
    return np.radians(angle) * (r + K * T)


def turn(axis, angle):
    """Rotation by Rodrigues' formula."""
    a = np.array(axis, float) / np.linalg.norm(axis)
    m = np.array([[0, -a[2], a[1]], [a[2], 0, -a[0]], [-a[1], a[0], 0]])
    return np.eye(3) + np.sin(angle) * m + (1 - np.cos(angle)) * m @ m


def walk(start, legs):
    """From a point on the good face of the base: each leg is a direction on the flat, a length and, behind it, a bend crossed
    square (angle, inside radius, up?) or none. The frame turns about the bend line, midway through each small step, at the
    neutral line; the good face is found from there."""
    frame, place = np.eye(3), np.array([start[0], start[1], 0.0])
    for direction, length, bend in legs:
        place = place + frame @ (np.array([*direction, 0.0]) * length)
        if bend is None:
            continue
        angle, r, up = bend
        total = np.radians(angle)
        axis = np.array([direction[1], -direction[0], 0.0]) * (1 if up else -1)
        # the neutral line lies K t from the inside face: that much (up) or t - K t (down) below the good face
        depth = K * T if up else T - K * T
        point = place - frame @ np.array([0, 0, depth])
        n = 200000
        step = allowance(angle, r) / n
        half = turn(axis, total / n / 2)
        whole = turn(axis, total / n)
        # the chord of an arc is shorter than the arc
        chord = step * np.sin(total / n / 2) / (total / n / 2)
        local = np.eye(3)
        travel = np.zeros(3)
        d = np.array([*direction, 0.0])
        for _ in range(n):
            travel = travel + local @ half @ d * chord
            local = local @ whole
        point = point + frame @ travel
        frame = frame @ local
        place = point + frame @ np.array([0, 0, depth])
    return place, frame @ np.array([0, 0, 1.0])


def show(name, found):
    place, normal = found
    print(f"{name}: place {np.array2string(place, precision=9, floatmode='fixed')} normal {np.array2string(normal, precision=9, floatmode='fixed')}")


def tray():
    """Base 100 x 60 from the origin, flanges up of 20 at x = 100 (90 deg, r 2) with a return flange down of 12 (60 deg, r 1.5)."""
    b1, b2 = allowance(90, 2), allowance(60, 1.5)
    print(f"allowances {b1:.12f} {b2:.12f}; bend lines at x {100 + b1 / 2:.12f} and {100 + b1 + 20 + b2 / 2:.12f}; right edge {100 + b1 + 20 + b2 + 12:.12f}")
    show("end of the return at y 30", walk((50, 30), [((1, 0), 50, (90, 2, True)), ((1, 0), 20, (60, 1.5, False)), ((1, 0), 12, None)]))
    show("hole on the return, 6 from its start, y 30", walk((50, 30), [((1, 0), 50, (90, 2, True)), ((1, 0), 20, (60, 1.5, False)), ((1, 0), 6, None)]))
    show("hole on the flange, 8 from its start, y 15", walk((50, 15), [((1, 0), 50, (90, 2, True)), ((1, 0), 8, None)]))


def slanted():
    """A bend of 35 deg down, r 3, about a line at 30 deg to x."""
    c, s = np.cos(np.radians(30)), np.sin(np.radians(30))
    n = (-s, c)
    print(f"half allowance {allowance(35, 3) / 2:.12f} across {n[0]:.12f} {n[1]:.12f}")
    show("10 past the bend, 5 along", walk((40 + 5 * c, 30 + 5 * s), [(n, 7.0, (35, 3, False)), (n, 10.0, None)]))


PARTS = {"tray": tray, "slanted": slanted}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
