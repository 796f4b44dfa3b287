"""Buckling factors of plates by methods that share nothing with the panel solver.

Rectangles: the Ritz method. Supported edges: double sine series. Clamped edges: x^2 (1 - x)^2 times Legendre polynomials,
integrated exactly by Gauss's rule. Circles: roots of Bessel functions (Timoshenko and Gere, Theory of Elastic Stability,
art. 9.13: clamped J1(x) = 0; supported x J0(x) = (1 - nu) J1(x)).

k = N b^2 / (pi^2 D) for rectangles a by b under the force N per length; N a^2 / D for circles of radius a.
Run with numpy and scipy; prints each value for two sizes of the series.
"""

import numpy as np
from numpy.polynomial import legendre
from scipy.linalg import eigh
from scipy.optimize import brentq
from scipy.special import j0, j1, jn_zeros


def sine_basis(n):
    """Values, first and second derivatives of sin(m pi x) at Gauss points of 0..1."""
    x, w = legendre.leggauss(4 * n + 20)
    x, w = 0.5 * (x + 1), 0.5 * w
    m = np.pi * np.arange(1, n + 1)[:, None]
    return w, np.sin(m * x), m * np.cos(m * x), -m * m * np.sin(m * x)


def clamped_basis(n):
    """The same of x^2 (1 - x)^2 P_m(2 x - 1)."""
    x, w = legendre.leggauss(2 * n + 20)
    bubble = legendre.Legendre.fromroots([-1, -1, 1, 1])
    x01, w01 = 0.5 * (x + 1), 0.5 * w
    values = []
    for m in range(n):
        f = bubble * legendre.Legendre.basis(m)
        scale = 1 / np.sqrt(np.sum(w01 * (f.deriv(2)(x) * 4) ** 2))
        values.append([scale * f(x), scale * f.deriv()(x) * 2, scale * f.deriv(2)(x) * 4])
    v = np.array(values)
    return w01, v[:, 0], v[:, 1], v[:, 2]


def factor(basis, n, a, b, nx, ny, nxy):
    """Lowest positive factor on N for D = 1: nx, ny are compressions."""
    w, f0, f1, f2 = basis(n)
    g = lambda p, q: np.einsum("q,mq,nq->mn", w, p, q)
    aa, dd, cc, ad, ab = g(f0, f0), g(f1, f1), g(f2, f2), g(f2, f0), g(f1, f0)
    kron = lambda p, q: np.kron(p, q)
    # Bending energy of w,xx^2 + w,yy^2 + 2 w,xx w,yy (the rest is a null form where w vanishes on all edges).
    k = kron(cc, aa) * b / a**3 + kron(aa, cc) * a / b**3
    k += (kron(ad, ad.T) + kron(ad.T, ad)) / (a * b)
    s = nx * kron(dd, aa) * b / a + ny * kron(aa, dd) * a / b
    s += nxy * (kron(ab, ab.T) + kron(ab.T, ab))
    values = eigh(s, k, eigvals_only=True)
    return 1 / values[-1]


def main():
    cases = [
        ("supported square, one way", sine_basis, 1, 1, 1, 0, 0),
        ("supported 2 by 1, shear", sine_basis, 2, 1, 0, 0, 1),
        ("supported square, shear", sine_basis, 1, 1, 0, 0, 1),
        ("clamped square, one way", clamped_basis, 1, 1, 1, 0, 0),
        ("clamped square, both ways", clamped_basis, 1, 1, 1, 1, 0),
        ("clamped 1.5 by 1, both ways", clamped_basis, 1.5, 1, 1, 1, 0),
        ("clamped square, shear", clamped_basis, 1, 1, 0, 0, 1),
    ]
    for name, basis, a, b, nx, ny, nxy in cases:
        sizes = (20, 28) if basis is sine_basis else (12, 18)
        values = [factor(basis, n, a, b, nx, ny, nxy) * b * b / np.pi**2 for n in sizes]
        print(f"{name}: " + ", ".join(f"{v:.6f}" for v in values))
    print(f"clamped circle: {jn_zeros(1, 1)[0] ** 2:.6f}")
    x = brentq(lambda x: x * j0(x) - 0.7 * j1(x), 1, 2.4)
    print(f"supported circle, nu = 0.3: {x * x:.6f}")


if __name__ == "__main__":
    main()
