"""Plates on two opposite supported edges under a linearly varying pressure: Levy's series in hyperbolic functions and 60
digits, its sums taken to the limit by mpmath's extrapolation: prints what tests/cases/plate.toml quotes. Lengths by the
length a (between the supported edges), D = 1; b is the width. Needs mpmath.
"""

import sys

import mpmath as mp

mp.mp.dps = 60


def plate(b, ends, q, nu="0.3"):
    """ends: S, C or F at y = 0 and y = b; q: pressures at the corners (0, 0), (0, b), (1, 0), (1, b), of which two by two are equal."""
    b, nu = mp.mpf(b), mp.mpf(nu)
    q00, q0b, q10, q1b = (mp.mpf(v) for v in q)
    store = {}

    def term(m):
        """derivatives 0 to 3 by y of Y_m at any y"""
        if m in store:
            return store[m]
        # the hyperbolic functions of one end cancel at the other: as many digits more
        digits = 60 + int(3 * m * mp.pi * b)
        with mp.workdps(digits):
            found = solved(m)

        def at(y):
            with mp.workdps(digits):
                return found(y)

        store[m] = at
        return at

    def solved(m):
        k = m * mp.pi
        # 2 int_0^1 (q0 + (q1 - q0) x) sin k x dx
        def load(q0, q1):
            return 2 * (q0 - q1 * mp.cos(k)) / k

        p0, pb = load(q00, q10), load(q0b, q1b)
        # functions scaled to the size of 1 at both ends, so that rows are of one size
        c = mp.cosh(k * b)

        def row(y):
            ch, sh = mp.cosh(k * y) / c, mp.sinh(k * y) / c
            f0 = [ch, sh, y * ch, y * sh]
            f1 = [k * sh, k * ch, ch + k * y * sh, sh + k * y * ch]
            f2 = [k**2 * ch, k**2 * sh, 2 * k * sh + k**2 * y * ch, 2 * k * ch + k**2 * y * sh]
            f3 = [k**3 * sh, k**3 * ch, 3 * k**2 * ch + k**3 * y * sh, 3 * k**2 * sh + k**3 * y * ch]
            g = [(p0 + (pb - p0) * y / b) / k**4, (pb - p0) / b / k**4, mp.mpf(0), mp.mpf(0)]
            return [f0, f1, f2, f3], g

        rows, rhs = [], []
        for y, end in ((mp.mpf(0), ends[0]), (b, ends[1])):
            f, g = row(y)
            comb = {
                "S": [[1, 0, 0, 0], [0, 0, 1, 0]],
                "C": [[1, 0, 0, 0], [0, 1, 0, 0]],
                "F": [[-nu * k**2, 0, 1, 0], [0, -(2 - nu) * k**2, 0, 1]],
            }[end]
            for cs in comb:
                rows.append([sum(cs[i] * f[i][j] for i in range(4)) for j in range(4)])
                rhs.append(-sum(cs[i] * g[i] for i in range(4)))
        x = mp.lu_solve(mp.matrix(rows), mp.matrix(rhs))

        def at(y):
            f, g = row(mp.mpf(y))
            return [sum(x[j] * f[i][j] for j in range(4)) + g[i] for i in range(4)]

        return at

    def middle(f):
        return mp.nsum(lambda i: (-1) ** int(i) * f(2 * int(i) + 1), [0, mp.inf], method="alternating")

    def start(f):
        even = q00 != q10
        odd = mp.nsum(lambda i: f(2 * int(i) + 1), [0, mp.inf], method="richardson")
        rest = mp.nsum(lambda i: f(2 * int(i)), [1, mp.inf], method="richardson") if even else mp.mpf(0)
        return odd + rest, odd - rest

    K = lambda m: m * mp.pi
    show = lambda v: mp.nstr(v, 13)
    with mp.workdps(40):
        W = lambda y: middle(lambda m: term(m)(y)[0])
        Mx = lambda y: middle(lambda m: K(m) ** 2 * term(m)(y)[0] - nu * term(m)(y)[2])
        My = lambda y: middle(lambda m: nu * K(m) ** 2 * term(m)(y)[0] - term(m)(y)[2])
        Vy = lambda y: middle(lambda m: -term(m)(y)[3] + (2 - nu) * K(m) ** 2 * term(m)(y)[1])
        Vx = start(lambda m: K(m) ** 3 * term(m)(b / 2)[0] - (2 - nu) * K(m) * term(m)(b / 2)[2])
        R0 = start(lambda m: -2 * (1 - nu) * K(m) * term(m)(0)[1])
        Rb = start(lambda m: 2 * (1 - nu) * K(m) * term(m)(b)[1])
        print(f"{ends} b {mp.nstr(b, 4)} q {q}: centre w {show(W(b / 2))} Mx {show(Mx(b / 2))} My {show(My(b / 2))}")
        for name, y, s in (("first", mp.mpf(0), 1), ("second", b, -1)):
            print(f"  {name} edge: w {show(W(y))} along {show(Mx(y))} across {show(My(y))} reaction {show(s * Vy(y))}")
        print(f"  width edges {show(Vx[0])} {show(Vx[1])} corners {show(R0[0])} {show(Rb[0])} {show(R0[1])} {show(Rb[1])}")


def even():
    for ends in ("SS", "CC", "FF", "SC", "SF", "CF"):
        plate("1", ends, (1, 1, 1, 1))


def water():
    for b, ends in (("1", "SS"), ("1.5", "CF"), ("0.5", "FF"), ("2", "SC"), ("0.6", "FC")):
        plate(b, ends, (1, 0, 1, 0))
    for b, ends in (("1", "SS"), ("0.7", "SF")):
        plate(b, ends, (1, 1, 0, 0))


PARTS = {"even": even, "water": water}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
