"""Laminates without the formulas of lamination theory: each ply is a three-dimensional orthotropic solid whose compliance
tensor is turned as a tensor of fourth order, brought to plane stress, and integrated through the thickness by Gauss's
rule: prints what tests/cases/plate.toml quotes. Needs numpy.
"""

import sys

import numpy as np

PAIRS = [(0, 0), (1, 1), (0, 1)]


def plane_stiffness(e1, e2, g12, nu12, degrees):
    """3 x 3 stiffness (x, y, engineering shear) of a ply by turning its full compliance tensor."""
    s = np.zeros((3, 3, 3, 3))
    s[0, 0, 0, 0], s[1, 1, 1, 1] = 1 / e1, 1 / e2
    s[0, 0, 1, 1] = s[1, 1, 0, 0] = -nu12 / e1
    for i, j in ((0, 1), (1, 0)):
        for k, l in ((0, 1), (1, 0)):
            s[i, j, k, l] = 1 / (4 * g12)
    t = np.radians(degrees)
    r = np.array([[np.cos(t), -np.sin(t), 0], [np.sin(t), np.cos(t), 0], [0, 0, 1]])
    s = np.einsum("ai,bj,ck,dl,ijkl->abcd", r, r, r, r, s)
    c = np.zeros((3, 3))
    for m, (i, j) in enumerate(PAIRS):
        for n, (k, l) in enumerate(PAIRS):
            c[m, n] = s[i, j, k, l] * (2 if m == 2 else 1) * (2 if n == 2 else 1)
    return np.linalg.inv(c), r


def laminate(name, plies, load=(0,) * 6, rise=0.0):
    """plies: (e1, e2, g12, nu12, degrees, t, alpha1, alpha2, swell1, swell2), from the inner face."""
    h = sum(p[5] for p in plies)
    x, w = np.polynomial.legendre.leggauss(4)
    abd, held, each = np.zeros((6, 6)), np.zeros(6), np.zeros(6)
    z = -h / 2
    parts = []
    for e1, e2, g12, nu12, degrees, t, a1, a2, m1, m2 in plies:
        q, r = plane_stiffness(e1, e2, g12, nu12, degrees)

        def tensor(d1, d2, r=r):
            e = r @ np.diag([d1, d2, 0.0]) @ r.T
            return np.array([e[0, 0], e[1, 1], 2 * e[0, 1]])

        free, alpha = tensor(a1 * rise + m1, a2 * rise + m2), tensor(a1, a2)
        for xi, wi in zip(x, w):
            zi = z + t * (1 + xi) / 2
            b = np.hstack([np.eye(3), zi * np.eye(3)])
            abd += wi * t / 2 * b.T @ q @ b
            held += wi * t / 2 * b.T @ q @ free
            each += wi * t / 2 * b.T @ q @ alpha
        parts.append((q, r, free, z, z + t))
        z += t
    inverse = np.linalg.inv(abd)
    e = inverse @ (np.array(load) + held)
    up = lambda m: [m[0, 0], m[0, 1], m[1, 1], m[0, 2], m[1, 2], m[2, 2]]
    show = lambda v: " ".join(f"{float(i):.10g}" for i in v)
    print(f"{name}: h {h:.6g}\n  A {show(up(abd[:3, :3]))}\n  B {show(up(abd[:3, 3:]))}\n  D {show(up(abd[3:, 3:]))}")
    print(f"  Ex Ey Gxy {show([1 / (h * inverse[i, i]) for i in range(3)])} nu {-inverse[0, 1] / inverse[0, 0]:.10g}"
          f" bending {show([12 / (h**3 * inverse[i, i]) for i in (3, 4)])}")
    print(f"  expansions {show((inverse @ each)[:3])}\n  strains {show(e)}")
    for q, r, free, low, high in parts:
        row = []
        for zi in (low, high):
            s = q @ (e[:3] + zi * e[3:] - free)
            full = np.array([[s[0], s[2], 0], [s[2], s[1], 0], [0, 0, 0]])
            own = r.T @ full @ r
            row += [own[0, 0], own[1, 1], own[0, 1]]
        print(f"  ply {show(row)}")


def mixed():
    carbon = (135e9, 9e9, 5e9, 0.30)
    glass = (40e9, 10e9, 4e9, 0.26)
    plies = [
        (*carbon, 30.0, 0.3e-3, -0.5e-6, 28e-6, 0.0, 0.003),
        (*glass, -45.0, 0.2e-3, 7e-6, 25e-6, 0.0001, 0.002),
        (*carbon, 90.0, 0.5e-3, -0.5e-6, 28e-6, 0.0, 0.003),
        (70e9, 70e9, 70e9 / 2.66, 0.33, 0.0, 1.0e-3, 23e-6, 23e-6, 0.0, 0.0),
    ]
    laminate("mixed", plies, (20e3, -5e3, 3e3, 12.0, -7.0, 4.0), -60.0)


def isotropic():
    aluminium = (70e9, 70e9, 70e9 / 2.66, 0.33, 17.0, 1.0e-3, 23e-6, 23e-6, 0.0, 0.0)
    laminate("aluminium", [aluminium, aluminium], (0, 0, 0, 50.0, 0, 0))


PARTS = {"mixed": mixed, "isotropic": isotropic}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
