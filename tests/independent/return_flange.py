"""A flange with a return as a chain of outside lines that is turned and offset inward, and searched: prints what
tests/cases/sheet.toml quotes, in mm. Needs numpy and scipy.
"""

import sys

import numpy as np
from scipy.optimize import brentq


def inside_tip(w, h, t, made, drawn, gamma):
    """The inside line of flange and return: outside lines moved in by t and cut with each other, then raised by half of the
    bend that is made. The flange's inside length is that of the drawn bend."""
    def meet(p, d, q, e):
        s = np.linalg.solve(np.array([d, -e]).T, q - p)
        return p + s[0] * d

    # flange along x from its virtual sharp, the base turned down from it by the drawn bend, the return turned up by gamma
    base = np.array([-np.cos(drawn), np.sin(drawn)])
    back = np.array([np.cos(gamma), np.sin(gamma)])
    up = np.array([0.0, t])
    inner_base = t * np.array([np.sin(drawn), np.cos(drawn)])
    inner_back = np.array([w, 0.0]) + t * np.array([-np.sin(gamma), np.cos(gamma)])
    start = meet(up, np.array([1.0, 0.0]), inner_base, base)
    corner = meet(up, np.array([1.0, 0.0]), inner_back, back)
    tip = np.array([w, 0.0]) + h * back + t * np.array([-np.sin(gamma), np.cos(gamma)])
    c, s = np.cos(made / 2), np.sin(made / 2)
    turn = np.array([[c, -s], [s, c]])
    return (turn @ (tip - start))[0], corner


def run(name, w, h, t, alpha, gamma, over, b, c):
    a, g, o = np.radians(alpha), np.radians(gamma), np.radians(over)
    tip = inside_tip(w, h, t, a + o, a, g)[0]
    largest = brentq(lambda x: inside_tip(w, x, t, a + o, a, g)[0] - b / 2 - c, 1e-6, 10 * w, xtol=1e-13)
    print(f"{name}: tip {tip:.9f} clearance {tip - b / 2:.9f} largest return {largest:.9f}")


PARTS = {
    "square": lambda: run("square", 40, 15, 1, 90, 90, 0, 20, 1),
    "oblique": lambda: run("oblique", 55, 18, 1.5, 88, 110, 2.5, 14, 0.5),
}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        PARTS[part]()
