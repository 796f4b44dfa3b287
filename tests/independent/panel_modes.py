"""Natural frequencies of square plates by a Ritz series, apart from the library.

The energy is Kirchhoff's, with Poisson's ratio 0.3; the trial functions are products
of Legendre polynomials, times (1 + x)^2 where the edge x = -1 is clamped. Each value
is an upper bound that falls as terms are added, so two orders are compared.
Printed: omega a^2 sqrt(rho h / D), a being the side.
"""

import numpy as np
from numpy.polynomial import legendre, polynomial

NU = 0.3


def functions(count, clamp):
    """Values and first two derivatives of one direction's functions at Gauss points."""
    points, weights = legendre.leggauss(count + 6)
    table = []
    for i in range(count):
        series = legendre.leg2poly([0.0] * i + [1.0])
        series = polynomial.polymul(series, clamp)
        table.append([polynomial.polyval(points, polynomial.polyder(series, k)) for k in range(3)])
    return np.array(table), weights


def frequencies(count, clamped, wanted):
    tx, weights = functions(count, [1.0, 2.0, 1.0] if clamped else [1.0])
    ty, _ = functions(count, [1.0])

    def inner(table, k, l):
        return (table[:, k] * weights) @ table[:, l].T

    def term(a, b, c, d):
        return np.kron(inner(tx, a, b), inner(ty, c, d))

    cross = term(2, 0, 0, 2)
    stiffness = term(2, 2, 0, 0) + term(0, 0, 2, 2) + NU * (cross + cross.T) + 2 * (1 - NU) * term(1, 1, 1, 1)
    factor = np.linalg.inv(np.linalg.cholesky(term(0, 0, 0, 0)))
    values = np.linalg.eigvalsh(factor @ stiffness @ factor.T)
    return 4.0 * np.sqrt(np.maximum(values, 0.0))[:wanted]


for name, clamped, skip in (("cantilever", True, 0), ("free", False, 3)):
    coarse = frequencies(10, clamped, 6 + skip)[skip:]
    fine = frequencies(13, clamped, 6 + skip)[skip:]
    change = np.max(np.abs(coarse / fine - 1.0))
    assert change < 5e-4, (name, change)
    print(name, np.round(fine, 4), f"largest change between orders {change:.1e}")
