"""A tapered panel with a cut-out on ten points: largest deflection under 1 kPa and six natural frequencies, as a thin plate.

    python tests/independent/panel_tapered.py > crates/coaming-panel/tests/reference/tapered.csv

Polycarbonate (E = 2.4 GPa, nu = 0.37, 1200 kg/m3), 4 mm. Two independent ways: Argyris's triangle, graded to the corners of the cut-out and
to the points (coarse, middle, fine); and shells of eight nodes by CalculiX, a twentieth as thick at the same stiffness and mass (`shells`).
The largest deflection is at the middle of the cut-out's longer lower edge.
"""

import numpy as np

import argyris
import shell_deck

YOUNG, POISSON, THICKNESS, DENSITY, PRESSURE = 2.4e9, 0.37, 0.004, 1200.0, 1000.0
OUTLINE = [(0, 0), (0.6, 0), (0.5, 0.4), (0.1, 0.4)]
HOLE = [(0.22, 0.14), (0.38, 0.14), (0.38, 0.26), (0.22, 0.26)]
HELD = [(0.02, 0.02), (0.2, 0.02), (0.4, 0.02), (0.58, 0.02), (0.525, 0.2), (0.48, 0.38), (0.36, 0.38), (0.24, 0.38), (0.12, 0.38),
        (0.075, 0.2)]
LARGEST = (0.3, 0.14)
MODES = 6


def first_mesh():
    """Some fifty triangles with a vertex at every corner and every point."""
    points = argyris.ring(OUTLINE, (4, 3, 3, 3)) + argyris.ring(HOLE, (2, 2, 2, 2)) + HELD
    points += [(0.14, 0.12), (0.46, 0.12), (0.3, 0.08), (0.3, 0.32), (0.17, 0.27), (0.43, 0.27)]

    def is_outside(corners):
        x, y = corners.mean(axis=1).T
        return (x > 0.22) & (x < 0.38) & (y > 0.14) & (y < 0.26)

    return argyris.mesh_of(points, is_outside, 0.2 - 0.16 * 0.12)


def plate(levels, ratio=0.5, also_points=True, element=argyris.Centred, order=8, base=0):
    """The largest deflection and the frequencies on a mesh graded so often."""
    mesh = first_mesh().refined(base) if base else first_mesh()
    mesh = argyris.graded(mesh, HOLE + HELD if also_points else HOLE, levels, ratio)
    model = argyris.Plate(mesh, YOUNG, POISSON, THICKNESS, DENSITY, element, order)
    w, hertz = model.solve(model.points(HELD), PRESSURE, MODES)
    return w[model.vertex(*LARGEST)], hertz, mesh.t.shape[1]


def shells(size, power, slimmer):
    """The deck of a grid of elements of about this size, and its mark."""
    line = shell_deck.through
    columns = [line([(0, 0), (0.1, 0.4)]), line([(0.02, 0.02), (0.075, 0.2), (0.12, 0.38)]),
               line([(0.2, 0.02), (0.22, 0.14), (0.22, 0.26), (0.24, 0.38)]),
               line([(0.4, 0.02), (0.38, 0.14), (0.38, 0.26), (0.36, 0.38)]),
               line([(0.58, 0.02), (0.525, 0.2), (0.48, 0.38)]), line([(0.6, 0), (0.5, 0.4)])]
    rows = [0, 0.02, 0.14, 0.2, 0.26, 0.38, 0.4]
    across = [max(2, round(width / size)) for width in (0.02, 0.13, 0.16, 0.13, 0.02)]
    up = [max(2, round((b - a) / size)) for a, b in zip(rows, rows[1:])]
    grid = shell_deck.Grid(columns, rows, across, up, power, left_out=[(2, 2), (2, 3)])
    return shell_deck.deck(grid, YOUNG, POISSON, DENSITY, THICKNESS, PRESSURE, HELD, [LARGEST], MODES, slimmer)


def main():
    runs = []
    for levels, base in ((2, 0), (6, 1), (10, 1)):
        w, hertz, _ = plate(levels, base=base)
        runs.append([abs(w), *hertz])
    text, marks = shells(0.007, 2.0, 20)
    found, hertz, _ = shell_deck.run(text, marks, MODES)
    runs.append([abs(found[0]), *hertz])
    print('quantity,coarse,middle,fine,shells')
    for name, row in zip(['largest deflection'] + [f'mode {i + 1}' for i in range(MODES)], np.transpose(runs)):
        print(f'{name},' + ','.join(f'{value:.7e}' for value in row))


if __name__ == '__main__':
    main()
