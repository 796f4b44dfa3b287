"""Draws time and memory of the panel solver against its triangles.

    cargo bench -p coaming-benches --bench panel -- sizes > sizes.csv
    python benches/python/sizes.py sizes.csv sizes.svg

Two panels on logarithmic scales, each with the slope of a straight line through its points: 1 is time or memory in proportion to the mesh.
One solution on one mesh and a refined one, which holds every coarser mesh before it, are two series. Needs matplotlib.
"""

import csv
import sys

import matplotlib

matplotlib.use('Agg')
import matplotlib.pyplot as plt
import numpy as np


def read(path):
    """Series of triangles, seconds and mebibytes: of one mesh, and of all meshes up to one."""
    one, refined = [], []
    with open(path) as file:
        for row in csv.DictReader(line for line in file if ',' in line):
            meshing = float(row['seconds_mesh'] or 0)
            values = [float(row['triangles']), meshing + float(row['seconds_solution']), float(row['peak_mebibytes'])]
            (one if row['seconds_mesh'] else refined).append(values)
    return {'one mesh': np.array(one), 'all meshes up to it': np.array(refined)}


def slope(x, y):
    return np.polyfit(np.log(x), np.log(y), 1)[0]


def main():
    series = read(sys.argv[1])
    figure, sides = plt.subplots(1, 2, figsize=(9, 4), layout='constrained')
    for axes, column, name in zip(sides, (1, 2), ('time in seconds', 'largest memory so far in MiB')):
        for (words, values), marker in zip(series.items(), 'os'):
            if len(values) > 1:
                fit = slope(values[:, 0], values[:, column])
                axes.loglog(values[:, 0], values[:, column], marker + '-', label=f'{words}: slope {fit:.2f}')
                print(f'{name}, {words}: slope {fit:.2f}')
        axes.set_xlabel('triangles')
        axes.set_title(name)
        axes.grid(True, which='both', linewidth=0.3)
        axes.legend()
    figure.savefig(sys.argv[2])


if __name__ == '__main__':
    main()
