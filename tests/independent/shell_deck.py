"""Decks of a flat panel in eight-node shells (S8R) for CalculiX (Debian: calculix-ccx; 2.20 was used), and what it gives for them.

The mesh is a grid of blocks, refined to every line of the grid as a power. A block can be left out (a cut-out), or be a square with a round
washer in its middle, which is meshed as a ring about the washer and clamped there.

`slimmer` takes a panel so many times thinner with a modulus and a density that keep its stiffness and its mass: the limit of thin plates.
These shells shear and follow a free edge's twist through the thickness, which a thin plate does not; that is a difference between two
theories and goes with the thickness, so that a slimmer panel of the same stiffness shows what is left of it.
"""

import os
import shutil
import subprocess
import tempfile
import time

import numpy as np

CCX = os.environ.get('CCX', 'ccx')


def is_installed():
    return shutil.which(CCX) is not None


def through(points):
    """x of a line of the grid that runs through points of rising y, straight on past its ends."""
    points = np.array(points, float)

    def place(y):
        i = min(max(np.searchsorted(points[:, 1], y) - 1, 0), len(points) - 2)
        (x0, y0), (x1, y1) = points[i], points[i + 1]
        return x0 + (x1 - x0) * (y - y0) / (y1 - y0)

    return place


def upright(x):
    return lambda y: x


def spread(count, power):
    """count + 1 places from 0 to 1, closer to both ends as a power."""
    t = np.linspace(-1.0, 1.0, count + 1)
    return 0.5 * (1 + np.sign(t) * (1 - (1 - np.abs(t)) ** power))


class Grid:
    """Nodes and elements. `columns` are lines x(y), `rows` heights; `across` and `up` the elements in each block."""

    def __init__(self, columns, rows, across, up, power, left_out=(), washers=(), radius=0.0):
        self.places, self.elements, self.clamped, self._known = [], [], [], {}
        self.columns = columns
        self.u = np.concatenate([k + spread(n, power)[:-1] for k, n in enumerate(across)] + [[len(across)]])
        self.v = np.concatenate([rows[k] + (rows[k + 1] - rows[k]) * spread(n, power)[:-1] for k, n in enumerate(up)] + [[rows[-1]]])
        starts, heights = np.concatenate([[0], np.cumsum(across)]), np.concatenate([[0], np.cumsum(up)])
        for k in range(len(across)):
            for m in range(len(up)):
                if (k, m) in left_out:
                    continue
                box = (starts[k], starts[k + 1], heights[m], heights[m + 1])
                if (k, m) in washers:
                    self._ring(box, radius, power)
                else:
                    for i in range(box[0], box[1]):
                        for j in range(box[2], box[3]):
                            self._element(lambda p, q: self._node(2 * i + p, 2 * j + q))
        self.places = np.array(self.places)

    def _element(self, at):
        self.elements.append([at(p, q) for p, q in ((0, 0), (2, 0), (2, 2), (0, 2), (1, 0), (2, 1), (1, 2), (0, 1))])

    def _add(self, key, place):
        if key not in self._known:
            self._known[key] = len(self._known) + 1
            self.places.append(place)
        return self._known[key]

    def _corner(self, i, j):
        y, block = self.v[j], min(int(self.u[i]), len(self.columns) - 2)
        share = self.u[i] - block
        return np.array([self.columns[block](y) * (1 - share) + self.columns[block + 1](y) * share, y])

    def _node(self, i, j):
        """Half-element indices along and up."""
        if (i, j) in self._known:
            return self._known[i, j]
        ends = [(i // 2, j // 2), ((i + 1) // 2, (j + 1) // 2)]
        return self._add((i, j), 0.5 * (self._corner(*ends[0]) + self._corner(*ends[1])))

    def _ring(self, box, radius, power):
        i0, i1, j0, j1 = 2 * box[0], 2 * box[1], 2 * box[2], 2 * box[3]
        rim = [(i, j0) for i in range(i0, i1)] + [(i1, j) for j in range(j0, j1)]
        rim += [(i, j1) for i in range(i1, i0, -1)] + [(i0, j) for j in range(j1, j0, -1)]
        centre = 0.5 * (self._corner(box[0], box[2]) + self._corner(box[1], box[3]))
        layers = box[1] - box[0]
        # Closer to the washer only.
        share = spread(2 * layers, power)[layers:] * 2 - 1

        def node(s, r):
            s %= len(rim)
            if r == 0:
                return self._node(*rim[s])
            outer = self.places[self._node(*rim[s]) - 1]
            way = (outer - centre) / np.hypot(*(outer - centre))
            f = 0.5 * (share[r // 2] + share[(r + 1) // 2])
            found = self._add((box, s, r), outer + f * (centre + radius * way - outer))
            if r == 2 * layers:
                self.clamped.append(found)
            return found

        for s in range(0, len(rim), 2):
            for r in range(0, 2 * layers, 2):
                self._element(lambda p, q: node(s + p, r + q))

    def at(self, x, y):
        """The node at a place."""
        off = np.hypot(self.places[:, 0] - x, self.places[:, 1] - y)
        assert off.min() < 1e-9, f'no node at {x}, {y}'
        return int(off.argmin()) + 1


def deck(grid, young, poisson, density, thickness, pressure, held, marks, modes=0, slimmer=1):
    """The deck's text: points of `held` at their height, washers clamped, a pressure; deflections of `marks`; natural frequencies."""
    lines = ['*NODE, NSET=ALL'] + [f'{n}, {x:.12g}, {y:.12g}, 0.' for n, (x, y) in enumerate(grid.places, 1)]
    lines.append('*ELEMENT, TYPE=S8R, ELSET=SHEET')
    lines += [f'{n}, ' + ', '.join(map(str, element)) for n, element in enumerate(grid.elements, 1)]
    lines += ['*MATERIAL, NAME=SHEET', '*ELASTIC', f'{young * slimmer**3:.12g}, {poisson}']
    lines += ['*DENSITY', f'{density * slimmer:.12g}', '*SHELL SECTION, ELSET=SHEET, MATERIAL=SHEET', f'{thickness / slimmer:.12g}']
    lines += ['*BOUNDARY'] + [f'{grid.at(x, y)}, 3, 3' for x, y in held]
    lines += [f'{n}, 3, 5' for n in sorted(set(grid.clamped))]
    # Against sliding in the plane, with no force: the two ends of the lowest row.
    low = np.flatnonzero(grid.places[:, 1] == grid.places[:, 1].min())
    first, last = low[grid.places[low, 0].argmin()] + 1, low[grid.places[low, 0].argmax()] + 1
    lines += [f'{first}, 1, 2', f'{last}, 2, 2']
    lines += ['*NSET, NSET=OUT'] + [f'{grid.at(x, y)},' for x, y in marks]
    lines += ['*STEP', '*STATIC', '*DLOAD', f'SHEET, P, {pressure:.12g}', '*NODE PRINT, NSET=OUT', 'U', '*END STEP']
    if modes:
        lines += ['*STEP', '*FREQUENCY', str(modes), '*END STEP']
    return '\n'.join(lines) + '\n', [grid.at(x, y) for x, y in marks]


def run(text, marks, modes=0):
    """Deflections of the marks, frequencies in Hz and the seconds that ccx took on one thread."""
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, 'panel.inp'), 'w') as file:
            file.write(text)
        start = time.perf_counter()
        done = subprocess.run([CCX, 'panel'], cwd=folder, capture_output=True, text=True, env=dict(os.environ, OMP_NUM_THREADS='1'))
        seconds = time.perf_counter() - start
        with open(os.path.join(folder, 'panel.dat')) as file:
            rows = [line.split() for line in file]
    found = {}
    for row in rows:
        # The static step comes first; a step of frequencies prints its shapes too.
        if len(row) == 4 and row[0].isdigit():
            found.setdefault(int(row[0]), float(row[3]))
    hertz = [float(row[3]) for row in rows if len(row) == 5 and row[0].isdigit()][:modes]
    if len(hertz) < modes or not all(mark in found for mark in marks):
        raise RuntimeError(done.stdout[-2000:])
    return [found[mark] for mark in marks], np.array(hertz), seconds
