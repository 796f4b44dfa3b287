"""The supported rectangle of `benches/panel.rs` by two general-purpose ways, mesh included, in one process and on one thread.

Arguments: the largest error accepted, as a share, which should be what the panel solver was measured at. For each rival the coarsest mesh of
a sweep that errs no more is timed: scikit-fem's Argyris element, and a discrete-Kirchhoff triangle written for whole arrays in numpy.
Needs numpy, scipy and scikit-fem (12.0 was used): OMP_NUM_THREADS=1 python benches/python/panel.py 0.002
"""

import sys
import time

import numpy as np
from scipy.sparse import coo_matrix
from scipy.sparse.linalg import spsolve
from skfem import Basis, BilinearForm, ElementTriArgyris, LinearForm, MeshTri, condense, solve
from skfem.helpers import dd, ddot, eye, trace

A, B, T, E, NU, Q = 0.6, 0.4, 0.004, 2.4e9, 0.37, 1000.0
D = E * T**3 / (12 * (1 - NU**2))


def navier():
    """Deflection of the middle by the Navier series."""
    m = np.arange(1, 400, 2.0)
    sign = np.where(np.add.outer(m, m) / 2 % 2 == 1, 1.0, -1.0)
    form = np.add.outer((m / A) ** 2, (m / B) ** 2) ** 2 * np.multiply.outer(m, m)
    return 16 * Q / (np.pi**6 * D) * (sign / form).sum()


def argyris(n):
    """Largest deflection by scikit-fem's Argyris element on n by n rectangles, each of two triangles."""
    mesh = MeshTri.init_tensor(np.linspace(0, A, n + 1), np.linspace(0, B, n + 1))
    basis = Basis(mesh, ElementTriArgyris())

    @BilinearForm
    def bending(u, v, _):
        def moment(k):
            return D * ((1 - NU) * k + NU * eye(trace(k), 2))

        return ddot(moment(dd(u)), dd(v))

    @LinearForm
    def pressure(v, _):
        return Q * v

    left, low = basis.get_dofs(lambda x: np.isclose(x[0] % A, 0)), basis.get_dofs(lambda x: np.isclose(x[1] % B, 0))
    held = np.unique(np.concatenate([left.all(['u', 'u_y', 'u_yy']), low.all(['u', 'u_x', 'u_xx'])]))
    u = solve(*condense(bending.assemble(basis), pressure.assemble(basis), D=held))
    return (basis.probes(np.array([[A / 2], [B / 2]])) @ u)[0]


def kirchhoff(n):
    """The same by a discrete-Kirchhoff triangle (Batoz, Bathe and Ho 1980) for whole arrays."""
    nx, ny = 2 * round(0.75 * n), n
    x, y = np.meshgrid(np.linspace(0, A, nx + 1), np.linspace(0, B, ny + 1))
    x, y = x.ravel(), y.ravel()
    corner = (np.arange(ny)[:, None] * (nx + 1) + np.arange(nx)).ravel()
    a, b, c, d = corner, corner + 1, corner + nx + 2, corner + nx + 1
    triangles = np.concatenate([np.stack([a, b, c], 1), np.stack([a, c, d], 1)])
    px, py = x[triangles], y[triangles]
    side = lambda p: np.roll(p, -1, 1) - p
    sx, sy = side(px), side(py)
    area = 0.5 * (sx[:, 0] * -sy[:, 2] - sy[:, 0] * -sx[:, 2])
    length = np.hypot(sx, sy)
    tx, ty = sx / length, sy / length
    count = len(triangles)
    slopes = np.zeros((count, 12, 9))
    for i in range(3):
        j = (i + 1) % 3
        slopes[:, 2 * i, 3 * i + 1] = slopes[:, 2 * i + 1, 3 * i + 2] = 1
        for k, (along, across) in enumerate([(tx, -ty), (ty, tx)]):
            row = slopes[:, 6 + 2 * i + k]
            row[:, 3 * i], row[:, 3 * j] = -1.5 / length[:, i] * along[:, i], 1.5 / length[:, i] * along[:, i]
            for m in (i, j):
                row[:, 3 * m + 1] = -0.25 * tx[:, i] * along[:, i] - 0.5 * ty[:, i] * across[:, i]
                row[:, 3 * m + 2] = -0.25 * ty[:, i] * along[:, i] + 0.5 * tx[:, i] * across[:, i]
    gx, gy = -np.roll(sy, -1, 1) / (2 * area[:, None]), np.roll(sx, -1, 1) / (2 * area[:, None])
    law = D * np.array([[1, NU, 0], [NU, 1, 0], [0, 0, (1 - NU) / 2]])
    stiffness = np.zeros((count, 9, 9))
    for l in np.array([[0.5, 0.5, 0], [0, 0.5, 0.5], [0.5, 0, 0.5]]):
        strain = np.zeros((count, 3, 12))
        for node in range(6):
            i, j = node % 3, (node + 1) % 3
            if node < 3:
                fx, fy = (4 * l[i] - 1) * gx[:, i], (4 * l[i] - 1) * gy[:, i]
            else:
                fx = 4 * (l[i] * gx[:, j] + l[j] * gx[:, i])
                fy = 4 * (l[i] * gy[:, j] + l[j] * gy[:, i])
            strain[:, 0, 2 * node], strain[:, 1, 2 * node + 1] = fx, fy
            strain[:, 2, 2 * node], strain[:, 2, 2 * node + 1] = fy, fx
        bend = strain @ slopes
        stiffness += (area / 3)[:, None, None] * (bend.transpose(0, 2, 1) @ law @ bend)
    freedoms = (3 * triangles[:, :, None] + np.arange(3)).reshape(count, 9)
    rows, columns = np.repeat(freedoms, 9, 1).ravel(), np.tile(freedoms, 9).ravel()
    size = 3 * len(x)
    matrix = coo_matrix((stiffness.ravel(), (rows, columns)), (size, size)).tocsc()
    force = np.zeros(size)
    np.add.at(force, 3 * triangles.ravel(), np.repeat(Q * area / 3, 3))
    upright, flat = (x % A < 1e-9) | (x > A - 1e-9), (y % B < 1e-9) | (y > B - 1e-9)
    held = np.zeros(size, bool)
    held[0::3] = upright | flat
    held[1::3], held[2::3] = flat, upright
    free = np.flatnonzero(~held)
    w = np.zeros(size)
    w[free] = spsolve(matrix[free][:, free], force[free])
    return np.abs(w[0::3]).max()


def main():
    accepted, exact = float(sys.argv[1]), navier()
    for name, rival in [('scikit-fem, Argyris', argyris), ('numpy, discrete Kirchhoff', kirchhoff)]:
        n = next(n for n in range(2, 80, 2) if abs(rival(n) / exact - 1) <= accepted)
        seconds = []
        for _ in range(16):
            start = time.perf_counter()
            off = rival(n) / exact - 1
            seconds.append(time.perf_counter() - start)
        seconds = sorted(seconds[1:])
        print(f'{name}: n = {n}, off by {100 * off:.3f} %, {1e3 * seconds[7]:.2f} ms ({1e3 * seconds[0]:.2f} to {1e3 * seconds[-1]:.2f})')


if __name__ == '__main__':
    main()
