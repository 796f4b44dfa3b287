"""A sheet of a lid with a cut-out for a window, clamped under the washers of six latches, under 1 kPa: deflections at four places.

    python tests/independent/panel_washers.py > crates/coaming-panel/tests/reference/washers.csv

Aluminium (E = 70.3 GPa, nu = 0.33), 580 by 440 by 2.5 mm, cut-out 244 by 164 mm, washers of 16 mm. As a thin plate by Argyris's triangle,
graded to the cut-out's corners, the washers' rims as polygons of 16, 32, 64 sides (`plate`); and by CalculiX's shells of eight nodes, each
mesh twice as fine as the one before: as thick as it is (`shells 1`), and a quarter as thick at the same stiffness (`shells 4`). Shells
shear and twist at free edges as a thin plate does not; on a coarse mesh they are too stiff, the more the slimmer they are.
"""

import sys

import numpy as np
from scipy.sparse import coo_matrix

import argyris
import shell_deck

YOUNG, POISSON, THICKNESS, DENSITY, PRESSURE = 70.3e9, 0.33, 0.0025, 2680.0, 1000.0
WIDTH, HEIGHT, RADIUS = 0.58, 0.44, 0.008
HOLE = [(0.168, 0.138), (0.412, 0.138), (0.412, 0.302), (0.168, 0.302)]
WASHERS = [(0.02, 0.22), (0.56, 0.22), (0.11, 0.02), (0.47, 0.02), (0.11, 0.42), (0.47, 0.42)]
MARKS = {'hole corner': (0.168, 0.138), 'hole long edge': (0.29, 0.138), 'hole short edge': (0.168, 0.22), 'edge': (0.29, 0.0)}


def plate(refined, levels):
    """The thin plate; every triangle divided so often, and those at the cut-out's corners `levels` times more."""
    sides = 16
    angles = 2 * np.pi * np.arange(sides) / sides
    rims = [(x + r * np.cos(a), y + r * np.sin(a)) for x, y in WASHERS for r, s in ((RADIUS, 1), (0.016, 2)) for a in angles[::s]]
    grid = [(x, y) for x in np.arange(0.05, 0.55, 0.06) for y in np.arange(0.05, 0.42, 0.06)
            if not (0.155 < x < 0.425 and 0.125 < y < 0.315) and min(np.hypot(x - a, y - b) for a, b in WASHERS) > 0.03]
    points = argyris.ring([(0, 0), (WIDTH, 0), (WIDTH, HEIGHT), (0, HEIGHT)], (12, 8, 12, 8)) + argyris.ring(HOLE, (4, 4, 4, 4))

    def is_outside(corners):
        x, y = corners.mean(axis=1).T
        outside = (x > 0.168) & (x < 0.412) & (y > 0.138) & (y < 0.302)
        for washer in WASHERS:
            outside |= np.hypot(*(corners - washer).transpose(2, 0, 1)).max(axis=1) < 1.001 * RADIUS
        return outside

    polygon = 0.5 * sides * RADIUS**2 * np.sin(2 * np.pi / sides)
    mesh = argyris.mesh_of(points + grid + rims, is_outside, WIDTH * HEIGHT - 0.244 * 0.164 - 6 * polygon)
    for _ in range(refined):
        mesh = onto_rims(mesh.refined(1))
    mesh = argyris.graded(mesh, HOLE, levels)
    model = argyris.Plate(mesh, YOUNG, POISSON, THICKNESS, DENSITY, order=6)
    w, _ = model.solve(clamped(model), PRESSURE)
    return [w[model.vertex(*at)] for at in MARKS.values()]


def onto_rims(mesh):
    """Vertices on a chord of a washer's rim are moved out to the rim."""
    places = mesh.p.copy()
    for washer in WASHERS:
        arm = places - np.array(washer)[:, None]
        far = np.hypot(*arm)
        on = far < 1.0001 * RADIUS
        places[:, on] = np.array(washer)[:, None] + arm[:, on] * RADIUS / far[on]
    return type(mesh)(places, mesh.t)


def clamped(model):
    """What is left free: on the rims only the curvature across them."""
    nodal, mesh = model.basis.nodal_dofs, model.mesh
    free = np.ones(len(model.pressure), bool)
    boundary = mesh.boundary_facets()
    middles = mesh.p[:, mesh.facets[:, boundary]].mean(axis=1)
    rows, columns, values = [], [], []
    count = 0
    for x, y in WASHERS:
        on = np.flatnonzero(np.hypot(mesh.p[0] - x, mesh.p[1] - y) < 1.0001 * RADIUS)
        free[nodal[:6, on].ravel()] = False
        free[model.basis.facet_dofs[0, boundary[np.hypot(middles[0] - x, middles[1] - y) < 1.0001 * RADIUS]]] = False
        c, s = (mesh.p[0, on] - x) / RADIUS, (mesh.p[1, on] - y) / RADIUS
        for second, share in ((3, c * c), (4, c * s), (5, s * s)):
            rows.append(nodal[second, on])
            columns.append(count + np.arange(len(on)))
            values.append(share)
        count += len(on)
    rest = np.flatnonzero(free)
    rows, columns, values = rows + [rest], columns + [count + np.arange(len(rest))], values + [np.ones(len(rest))]
    size = (len(model.pressure), count + len(rest))
    return coo_matrix((np.concatenate(values), (np.concatenate(rows), np.concatenate(columns))), size).tocsc()


def shells(count, slimmer):
    """The same by shells, `count` elements along each side of the square about a washer and as long elsewhere."""
    half = 0.014
    columns = [0, 0.02 - half, 0.02 + half, 0.11 - half, 0.11 + half, 0.168, 0.29, 0.412, 0.47 - half, 0.47 + half, 0.56 - half,
               0.56 + half, WIDTH]
    rows = [0, 0.02 - half, 0.02 + half, 0.138, 0.22 - half, 0.22 + half, 0.302, 0.42 - half, 0.42 + half, HEIGHT]
    across, up = [[max(1, round((b - a) / (2 * half) * count)) for a, b in zip(lines, lines[1:])] for lines in (columns, rows)]
    # The middle of the cut-out's short edge needs a node.
    up[4] += up[4] % 2
    across[1], across[10] = up[4], up[4]
    grid = shell_deck.Grid([shell_deck.upright(x) for x in columns], rows, across, up, 1.0,
                           [(k, m) for k in (5, 6) for m in (3, 4, 5)], [(1, 4), (10, 4), (3, 1), (8, 1), (3, 7), (8, 7)], RADIUS)
    text, marks = shell_deck.deck(grid, YOUNG, POISSON, DENSITY, THICKNESS, PRESSURE, [], MARKS.values(), 0, slimmer)
    return shell_deck.run(text, marks)[0]


def main():
    print('by,quantity,coarse,middle,fine')
    for by, runs in (('plate', [lambda k=k: plate(k, 7) for k in (0, 1, 2)]),
                     ('shells 1', [lambda n=n: shells(n, 1) for n in (2, 4, 8)]),
                     ('shells 4', [lambda n=n: shells(n, 4) for n in (2, 4, 8)])):
        for name, row in zip(MARKS, np.transpose([run() for run in runs])):
            print(f'{by},{name},' + ','.join(f'{value:.6e}' for value in row))
        sys.stdout.flush()


if __name__ == '__main__':
    main()
