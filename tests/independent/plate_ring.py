"""Frequencies of rings by the roots of Bessel functions, and the clamped ellipse as a polynomial that is checked against the
plate's equation by differentiation: prints what tests/cases/plate.toml quotes. Needs mpmath.
"""

import sys

import mpmath as mp

mp.mp.dps = 30


def rows(n, lam, r, end, nu):
    """The two conditions on J, Y, I, K at r; k = lam."""
    out = []
    # f' = (p f_(n-1) + q f_(n+1))/2
    for f, sign, p, q in ((mp.besselj, -1, 1, -1), (mp.bessely, -1, 1, -1), (mp.besseli, 1, 1, 1), (mp.besselk, 1, -1, -1)):
        w = f(n, lam * r)
        d1 = lam * (p * f(n - 1, lam * r) + q * f(n + 1, lam * r)) / 2
        lap = sign * lam**2 * w
        dlap = sign * lam**2 * d1
        d2 = lap - d1 / r + n**2 * w / r**2
        moment = d2 + nu * (d1 / r - n**2 * w / r**2)
        shear = dlap - (1 - nu) * n**2 / r * (d1 / r - w / r**2)
        out.append({"C": (w, d1), "S": (w, moment), "F": (moment, shear)}[end])
    return [[o[i] for o in out] for i in (0, 1)]


def roots(b, inner, outer, n, nu, top):
    def det(lam):
        m = mp.matrix(rows(n, lam, b, inner, nu) + rows(n, lam, mp.mpf(1), outer, nu))
        # columns of one size
        for j in range(4):
            size = max(abs(m[i, j]) for i in range(4))
            for i in range(4):
                m[i, j] /= size
        return mp.det(m)

    found, step, lam = [], mp.mpf("0.25"), mp.mpf("0.9")
    before = det(lam)
    while lam < top:
        after = det(lam + step)
        if before * after < 0:
            found.append(mp.findroot(det, (lam, lam + step), solver="anderson", tol=1e-40) ** 2)
        lam, before = lam + step, after
    return found


def ring(b, inner, outer, nu="0.3", top=14, most=8):
    b, nu = mp.mpf(b), mp.mpf(nu)
    modes = sorted((lam, n) for n in range(most) for lam in roots(b, inner, outer, n, nu, top))[:6]
    print(f"b/a {mp.nstr(b, 3)} inner {inner} outer {outer} nu {mp.nstr(nu, 3)}: "
          + "  ".join(f"{mp.nstr(lam, 11)} ({n})" for lam, n in modes))


def rings():
    ring("0.5", "C", "C")
    ring("0.5", "F", "C")
    ring("0.5", "F", "S")
    ring("0.3", "F", "F", "0.33", 9)
    ring("0.1", "C", "F", top=9)
    ring("0.1", "S", "S", top=11)


def ellipse(a, b, nu="0.3"):
    a, b, nu = mp.mpf(a), mp.mpf(b), mp.mpf(nu)
    shape = lambda x, y: (1 - x**2 / a**2 - y**2 / b**2) ** 2
    d = lambda i, j, x, y: mp.diff(shape, (x, y), (i, j))
    for x, y in ((a / 5, b / 3), (-a / 7, b / 2)):
        # the load that the shape needs is the same everywhere, and shape and slope are zero on the edge
        q = d(4, 0, x, y) + 2 * d(2, 2, x, y) + d(0, 4, x, y)
        edge = (a * mp.cos(x), b * mp.sin(x))
        assert abs(shape(*edge)) < 1e-25 and abs(d(1, 0, *edge)) < 1e-12 and abs(d(0, 1, *edge)) < 1e-12
        print(f"ellipse {mp.nstr(a, 4)} {mp.nstr(b, 4)}: w0 {mp.nstr(1 / q, 13)}", end=" ")
    m = lambda x, y: (-(d(2, 0, x, y) + nu * d(0, 2, x, y)) / q, -(d(0, 2, x, y) + nu * d(2, 0, x, y)) / q)
    print("centre", [mp.nstr(v, 12) for v in m(0, 0)], "end of a", mp.nstr(m(a, 0)[0], 12), "end of b", mp.nstr(m(0, b)[1], 12),
          "reactions", mp.nstr((d(3, 0, a, 0) + d(1, 2, a, 0)) / q, 12), mp.nstr((d(0, 3, 0, b) + d(2, 1, 0, b)) / q, 12))


PARTS = {"rings": rings, "ellipse": lambda: [ellipse("0.75", "0.5"), ellipse("0.4", "1.2", "0.33")]}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
