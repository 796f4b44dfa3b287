"""Large deflections of plates all over, by the Ritz solutions of panel_large.py: reference/large.csv of the panel solver's tests.

Each row: case, ratio of the sides, pressure over E h^4 / a^4 (or multiple of the critical temperature where heated), quantity,
value with the smaller and with the larger series. Quantities, for E = h = a = 1, on a plate -1/2..1/2 by -ratio/2..ratio/2:
  w X Y    deflection at the fractions X, Y of half the sides from the middle
  moment   the largest principal moment in size, over a grid that is dense at the edges
  force    the largest principal membrane force in size, over the same grid
  m X Y, f X Y   the same at some places where they are above 0.93 of the largest
Run with numpy and scipy.
"""

import numpy as np
from numpy.polynomial import legendre
from panel_large import BUBBLE, CLAMP, ONE, Plate, steps

POINTS = [(0.0, 0.0), (0.25, 0.0), (0.0, 0.25), (0.5, 0.0), (0.0, 0.5), (0.5, 0.5), (0.75, 0.0), (0.0, 0.75),
          (0.75, 0.75), (0.9, 0.0), (0.9, 0.9)]


def values(n, parity, factor, s):
    """Values, first and second derivatives along 0..1 of the family of panel_large at places -1..1."""
    nodes, _ = legendre.leggauss(6 * n + 8)
    out = []
    for k in range(n):
        f = legendre.Legendre(factor) * legendre.Legendre.basis(2 * k + parity)
        f = f / max(1e-300, np.max(np.abs(f(nodes))))
        out.append([f(s), 2 * f.deriv()(s), 4 * f.deriv(2)(s)])
    return np.array(out)


class At:
    """The fields of a solved plate on a grid of places."""

    def __init__(self, plate, n, edge, plane, thermal, x, y):
        q, r, nu = plate.q, plate.ratio, plate.nu
        side = lambda p, s: values(n, *p, s)
        w = q[: plate.nw].reshape(n, n)
        shape = (0, BUBBLE if edge == "supported" else CLAMP)
        wx, wy = side(shape, x), side(shape, y)
        of = lambda i, j: np.einsum("mn,mx,ny->xy", w, wx[:, i], wy[:, j]) / r**j
        self.w = of(0, 0)
        pairs = {
            "held": [((1, BUBBLE), (0, BUBBLE), n, n)],
            "straight": [((1, BUBBLE), (0, ONE), n, n), ((1, ONE), (0, ONE), 1, 1)],
            "free": [((1, ONE), (0, ONE), n, n)],
        }[plane]
        du = q[plate.nw :]
        cu, cv = du[: du.size // 2], du[du.size // 2 :]
        shape = (x.size, y.size)
        ux, uy, vx, vy = (np.zeros(shape) for _ in range(4))
        at = 0
        for p, g, m, k in pairs:
            # Of v the function along x comes first, as in panel_large.
            a, b = cu[at : at + m * k].reshape(m, k), cv[at : at + m * k].reshape(k, m)
            at += m * k
            px, gx, py, gy = (side(f, s)[:c] for f, s, c in [(p, x, m), (g, x, k), (p, y, m), (g, y, k)])
            term = lambda c, f, h: np.einsum("mk,mx,ky->xy", c, f, h)
            ux += term(a, px[:, 1], gy[:, 0])
            uy += term(a, px[:, 0], gy[:, 1]) / r
            vy += np.einsum("km,kx,my->xy", b, gx[:, 0], py[:, 1]) / r
            vx += np.einsum("km,kx,my->xy", b, gx[:, 1], py[:, 0])
        sx, sy = of(1, 0), of(0, 1)
        strain = [ux + 0.5 * sx * sx, vy + 0.5 * sy * sy, uy + vx + sx * sy]
        stiff = lambda e: [(e[0] + nu * e[1]) / (1 - nu**2), (e[1] + nu * e[0]) / (1 - nu**2), e[2] / (2 * (1 + nu))]
        force = stiff(strain)
        self.force = self.larger([force[0] - thermal, force[1] - thermal, force[2]])
        self.moment = self.larger([m / 12 for m in stiff([-of(2, 0), -of(0, 2), -2 * of(1, 1)])])

    @staticmethod
    def larger(t):
        mean, half = 0.5 * (t[0] + t[1]), 0.5 * (t[0] - t[1])
        return np.abs(mean) + np.sqrt(half * half + t[2] * t[2])


def solved(case, edge, plane, ratio, load, n):
    plate, thermal = Plate(n, edge, plane, ratio, 0.3), 0.0
    if case == "heated":
        thermal = load * 2 * np.pi**2 / (12 * (1 - 0.3**2))
        steps(plate, [0.0], thermal, 0.85 * np.sqrt(load - 1))
        # The displacements in the plane are even in the deflection: turned to the outer side, it is solved again.
        plate.q[: plate.nw] *= np.sign(plate.middle @ plate.q[: plate.nw])
        plate.solve(0.0, thermal, plate.q)
    else:
        steps(plate, [load])
    return lambda x, y: At(plate, n, edge, plane, thermal, np.atleast_1d(x), np.atleast_1d(y))


def rows(case, edge, plane, ratio, load):
    fields = [solved(case, edge, plane, ratio, load, n) for n in (6, 8)]
    # One quarter, dense at the edges.
    near = np.sin(np.linspace(0, 0.5 * np.pi, 31))
    whole = [of(near, near) for of in fields]
    found = [(f"w {x} {y}", [of(x, y).w[0, 0] for of in fields]) for x, y in POINTS]
    for name, letter in [("moment", "m"), ("force", "f")]:
        values = [getattr(field, name) for field in whole]
        found.append((name, [np.max(v) for v in values]))
        high = np.argwhere(values[1] > 0.93 * np.max(values[1]))
        for i, j in high[:: max(1, len(high) // 10)]:
            found.append((f"{letter} {near[i]:.17g} {near[j]:.17g}", [v[i, j] for v in values]))
    for name, (coarse, fine) in found:
        print(f"{case},{edge},{plane},{ratio},{load},{name},{coarse:.6g},{fine:.6g}", flush=True)


def main():
    print("case,edge,plane,ratio,load,quantity,smaller series,larger series")
    for edge, plane, ratio, load in [
        ("supported", "held", 1.0, 10.0),
        ("supported", "held", 1.0, 200.0),
        ("supported", "straight", 1.0, 10.0),
        ("supported", "straight", 1.0, 50.0),
        ("supported", "free", 1.0, 50.0),
        ("clamped", "held", 1.0, 20.0),
        ("clamped", "held", 1.0, 100.0),
        ("clamped", "free", 1.0, 100.0),
        ("supported", "held", 1.5, 50.0),
    ]:
        rows("pressed", edge, plane, ratio, load)
    rows("heated", "supported", "held", 1.0, 3.0)


if __name__ == "__main__":
    main()
