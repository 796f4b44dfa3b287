"""Panels of a cover solved with scikit-fem's Argyris element (quintic, C1): references for the panel solver's tests.

Independent of the solver: another element, another mesh, another assembly, and no symmetry used. Writes the reference file

    python tests/independent/panel_cover.py > crates/coaming-panel/tests/reference/cover.csv

with every value on three meshes, so that the file shows its own convergence. Needs numpy, scipy and scikit-fem (12.0.2 when the
reference was made).
"""
import sys

import numpy as np
import scipy.sparse as sparse
import scipy.sparse.linalg as linalg
from skfem import Basis, ElementTriArgyris, LinearForm, MeshTri

import argyris

WIDTH, HEIGHT = 0.58, 0.44
LATCHES = np.array([[0.29, 0.57, 0.29, 0.01], [0.01, 0.22, 0.43, 0.22]])


def lines(points, size):
    """Grid lines through every point, none farther apart than the size."""
    points = sorted(points)
    parts = [np.linspace(a, b, max(1, int(np.ceil((b - a) / size - 1e-9))) + 1)[:-1] for a, b in zip(points, points[1:])]
    return np.concatenate(parts + [[points[-1]]])


def grid(xs, ys, size, hole=None):
    """A rectangle of triangles with grid lines at xs and ys, less the triangles in a hole (x0, x1, y0, y1), twice as fine at its corners."""
    mesh = MeshTri.init_tensor(lines(xs, size), lines(ys, size))
    if hole is None:
        return mesh
    x, y = mesh.p[:, mesh.t].mean(axis=1)
    inside = (x > hole[0]) & (x < hole[1]) & (y > hole[2]) & (y < hole[3])
    mesh = mesh.remove_elements(np.nonzero(inside)[0])
    corners = np.array([[a, b] for a in hole[:2] for b in hole[2:]])
    # One grade: on smaller triangles far from the origin this element loses its digits, which the balance below would show.
    x, y = mesh.p[:, mesh.t].mean(axis=1)
    far = np.min([np.hypot(x - a, y - b) for a, b in corners], axis=0)
    a, b = mesh.p[:, mesh.t[1]] - mesh.p[:, mesh.t[0]], mesh.p[:, mesh.t[2]] - mesh.p[:, mesh.t[0]]
    side = np.sqrt(0.5 * np.abs(a[0] * b[1] - a[1] * b[0]))
    mesh = mesh.refined(np.nonzero(side > 0.6 * far)[0])
    return mesh


class Plate(argyris.Plate):
    """The plate in scikit-fem's own element, which is accurate enough on triangles of this size."""

    def __init__(self, mesh, young, poisson, thickness, density):
        super().__init__(mesh, young, poisson, thickness, density, element=ElementTriArgyris)

    def at(self, points):
        """Rows that give the deflection at points."""
        return self.basis.probes(points).tocsr()

    def supported(self):
        """Freedoms that vanish on a simply supported rectangle: w, and the slope and curvature along each edge."""
        names = {name: i for i, name in enumerate(self.basis.elem.dofnames[:6])}
        held = []
        for axis, along, second in ((0, 'u_y', 'u_yy'), (1, 'u_x', 'u_xx')):
            for value in (self.mesh.p[axis].min(), self.mesh.p[axis].max()):
                on = np.abs(self.mesh.p[axis] - value) < 1e-9
                held += [self.basis.nodal_dofs[names[n], on] for n in ('u', along, second)]
        return np.unique(np.concatenate(held))


def solve(matrix, force, held):
    free = np.setdiff1d(np.arange(matrix.shape[0]), held)
    found = np.zeros(matrix.shape[0])
    found[free] = linalg.spsolve(matrix[free][:, free].tocsc(), force[free])
    return found


def gasket_path(count):
    """Midpoints and lengths of pieces of the rounded rectangle 540 by 400 mm, corners of 40 mm, 20 mm inside the lid."""
    x0, y0, w, h, r = 0.02, 0.02, 0.54, 0.40, 0.04
    turn = 0.5 * np.pi * r
    spots, lengths = [], []
    pieces = [((x0 + r, y0), (1, 0), w - 2 * r, (x0 + w - r, y0 + r), -0.5 * np.pi),
              ((x0 + w, y0 + r), (0, 1), h - 2 * r, (x0 + w - r, y0 + h - r), 0.0),
              ((x0 + w - r, y0 + h), (-1, 0), w - 2 * r, (x0 + r, y0 + h - r), 0.5 * np.pi),
              ((x0, y0 + h - r), (0, -1), h - 2 * r, (x0 + r, y0 + r), np.pi)]
    for start, way, length, centre, angle in pieces:
        n = max(1, round(count * length))
        s = (np.arange(n) + 0.5) / n * length
        spots += [(start[0] + way[0] * a, start[1] + way[1] * a) for a in s]
        lengths += [length / n] * n
        n = max(1, round(count * turn))
        t = angle + (np.arange(n) + 0.5) / n * 0.5 * np.pi
        spots += [(centre[0] + r * np.cos(a), centre[1] + r * np.sin(a)) for a in t]
        lengths += [turn / n] * n
    return np.array(spots).T, np.array(lengths)


def lid(size):
    """Flat lid of 1.6 mm aluminium on a gasket between four latches that hold it at height 0; Newton's method on a gasket that
    pushes 288 kN/m2 times its compression, 4 mm where the lid has not deflected, and not at all where it is open."""
    mesh = grid([0, 0.01, 0.29, 0.57, WIDTH], [0, 0.01, 0.22, 0.43, HEIGHT], size)
    plate = Plate(mesh, 70e9, 0.33, 0.0016, 2680.0)
    spots, lengths = gasket_path(4000)
    rows = plate.at(spots)
    held = np.array([plate.vertex(x, y) for x, y in LATCHES.T])
    w = np.zeros(plate.stiffness.shape[0])
    for step in range(60):
        squeeze = 0.004 - rows @ w
        push, slope = 288e3 * np.maximum(squeeze, 0.0), np.where(squeeze > 0.0, 288e3, 0.0)
        residual = rows.T @ (push * lengths) - plate.stiffness @ w
        tangent = plate.stiffness + rows.T @ sparse.diags(slope * lengths) @ rows
        change = solve(tangent.tocsr(), residual, held)
        w = w + change
        if np.abs(rows @ change).max() < 1e-11:
            break
    else:
        raise RuntimeError('the gasket did not settle')
    squeeze = 0.004 - rows @ w
    push = 288e3 * np.maximum(squeeze, 0.0)
    pull = (rows.T @ (push * lengths) - plate.stiffness @ w)[held]
    corner = w[plate.vertex(0, 0)]
    middle = w[plate.vertex(0.29, 0.22)]
    free = np.setdiff1d(np.arange(len(w)), held)
    squares = linalg.eigsh(tangent.tocsc()[free][:, free], 3, plate.mass[free][:, free], sigma=0.0, return_eigenvectors=False)
    out = {'corner': corner, 'middle': middle, 'smallest compression': squeeze.min(), 'largest compression': squeeze.max(),
           'gasket force': (push * lengths).sum(), 'pull front': pull[0], 'pull side': pull[1],
           'open length': lengths[squeeze < 0].sum()}
    for i, square in enumerate(sorted(squares)):
        out[f'mode {i + 1}'] = np.sqrt(square) / (2 * np.pi)
    return out


def cut_out(size):
    """Sheet of 2.5 mm with a cut-out of 244 by 164 mm at its middle, held at four points where its latches are, under 1 kPa inward."""
    hole = (0.168, 0.412, 0.138, 0.302)
    mesh = grid([0, 0.01, 0.168, 0.29, 0.412, 0.57, WIDTH], [0, 0.01, 0.138, 0.22, 0.302, 0.43, HEIGHT], size, hole)
    plate = Plate(mesh, 70e9, 0.33, 0.0025, 2680.0)
    held = np.array([plate.vertex(x, y) for x, y in LATCHES.T])
    w = solve(plate.stiffness, -1000.0 * plate.pressure, held)
    pull = (plate.stiffness @ w + 1000.0 * plate.pressure)[held]
    load = 1000.0 * (WIDTH * HEIGHT - 0.244 * 0.164)
    assert abs(pull.sum() / load - 1) < 1e-5, 'the reactions do not balance the load'
    return {'corner': w[plate.vertex(0, 0)], 'hole corner': w[plate.vertex(0.168, 0.138)],
            'hole long edge': w[plate.vertex(0.29, 0.138)], 'hole short edge': w[plate.vertex(0.168, 0.22)],
            'reaction front': pull[0], 'reaction side': pull[1]}


def pane(size):
    """Pane of 5 mm polycarbonate, 272 by 192 mm, supported all round, under 250 N on 80 by 80 mm set off its middle."""
    mesh = grid([0, 0.06, 0.14, 0.272], [0, 0.05, 0.13, 0.192], size)
    plate = Plate(mesh, 2.4e9, 0.37, 0.005, 1200.0)
    x, y = mesh.p[:, mesh.t].mean(axis=1)
    under = np.nonzero((x > 0.06) & (x < 0.14) & (y > 0.05) & (y < 0.13))[0]

    @LinearForm
    def hand(v, _):
        return -250.0 / 0.0064 * v

    w = solve(plate.stiffness, hand.assemble(Basis(mesh, ElementTriArgyris(), intorder=8, elements=under)), plate.supported())
    values = plate.at(np.array([[0.1, 0.136], [0.09, 0.096]])) @ w
    return {'under the hand': values[0], 'middle': values[1]}


if __name__ == '__main__':
    print('panel,quantity,coarse,middle,fine')
    for name, panel, sizes in (('lid', lid, (0.06, 0.03, 0.015)), ('cut-out', cut_out, (0.06, 0.03, 0.015)),
                               ('pane', pane, (0.04, 0.02, 0.01))):
        runs = [panel(size) for size in sizes]
        for quantity in runs[0]:
            print(f'{name},{quantity},' + ','.join(f'{run[quantity]:.8e}' for run in runs))
        sys.stdout.flush()
