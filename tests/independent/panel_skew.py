"""Skew plates with sides of length one: as a supported plate under pressure, and a clamped one's natural frequencies.

    python tests/independent/panel_skew.py > crates/coaming-panel/tests/reference/skew.csv

Supported, convex and with straight edges, a thin plate is two membranes one after the other: lap M = -q and D lap w = -M, both zero at the
edge (M the sum of the moments over 1 + nu, Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, art. 24). Each is solved by
quartic Lagrange triangles of scikit-fem, graded to the obtuse corners: w D / (q a^4) at the middle, which needs no Poisson's ratio.
Clamped: omega a^2 sqrt(rho h / D) by Argyris's triangle, graded likewise. Three meshes each.
"""

import numpy as np
from scipy.sparse import coo_matrix
from skfem import Basis, ElementTriP4, MeshTri, condense, solve
from skfem.models.poisson import laplace, mass, unit_load

import argyris


def rhombus(degrees, divisions):
    """Triangles of a rhombus whose acute corner is at the origin; the obtuse ones are its second and fourth."""
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    square = MeshTri.init_tensor(np.linspace(0, 1, divisions + 1), np.linspace(0, 1, divisions + 1))
    x, y = square.p
    return MeshTri(np.array([x + c * y, s * y]), square.t), [(1.0, 0.0), (c, s)]


def supported(degrees, divisions, levels):
    """w D / (q a^4) at the middle of the supported plate."""
    mesh, obtuse = rhombus(degrees, divisions)
    mesh = argyris.graded(mesh, obtuse, levels, 0.4)
    basis = Basis(mesh, ElementTriP4())
    stiffness, edge = laplace.assemble(basis), basis.get_dofs()
    moment = solve(*condense(stiffness, unit_load.assemble(basis), D=edge))
    w = solve(*condense(stiffness, mass.assemble(basis) @ moment, D=edge))
    middle = 0.5 * np.array(obtuse).sum(axis=0)
    return (basis.probes(middle[:, None]) @ w)[0]


def clamped(degrees, divisions, levels, modes):
    """Frequency parameters of the clamped plate."""
    mesh, obtuse = rhombus(degrees, divisions)
    model = argyris.Plate(argyris.graded(mesh, obtuse, levels, 0.5), 12 * (1 - 0.3**2), 0.3, 1.0, 1.0)
    mesh, basis = model.mesh, model.basis
    c, s = np.cos(np.radians(degrees)), np.sin(np.radians(degrees))
    # Along an edge the deflection, both slopes and the second derivatives along it and across it in turn vanish.
    left = {k: None for k in range(mesh.p.shape[1])}
    for vertex, (x, y) in enumerate(mesh.p.T):
        laws = []
        for on, (tx, ty) in ((min(abs(y), abs(y - s)) < 1e-9, (1.0, 0.0)),
                             (min(abs(s * x - c * y), abs(s * x - c * y - s)) < 1e-9, (c, s))):
            if on:
                laws += [[tx * tx, 2 * tx * ty, ty * ty], [-tx * ty, tx * tx - ty * ty, tx * ty]]
        if laws:
            _, sizes, ways = np.linalg.svd(np.array(laws))
            left[vertex] = ways[(sizes > 1e-9).sum():]
    rows, columns, values, count = [], [], [], 0
    for vertex, ways in left.items():
        freedoms = basis.nodal_dofs[:6, vertex]
        pairs = [np.eye(6)[k] for k in range(6)] if ways is None else [np.concatenate([np.zeros(3), way]) for way in ways]
        for pair in pairs:
            rows += list(freedoms)
            columns += [count] * 6
            values += list(pair)
            count += 1
    inner = np.setdiff1d(basis.facet_dofs[0], basis.facet_dofs[0, mesh.boundary_facets()])
    rows, columns, values = rows + list(inner), columns + list(count + np.arange(len(inner))), values + [1.0] * len(inner)
    keep = coo_matrix((values, (rows, columns)), (len(model.pressure), count + len(inner))).tocsc()
    return 2 * np.pi * model.solve(keep, 0.0, modes)[1]


def main():
    print('plate,quantity,coarse,middle,fine')
    for degrees in (75, 60, 45, 30):
        values = [supported(degrees, *mesh) for mesh in ((4, 4), (8, 8), (12, 12))]
        print(f'supported {degrees},middle,' + ','.join(f'{value:.7e}' for value in values), flush=True)
    for mode, values in enumerate(np.transpose([clamped(45, *mesh, 6) for mesh in ((8, 2), (16, 3), (24, 4))]), 1):
        print(f'clamped 45,mode {mode},' + ','.join(f'{value:.7e}' for value in values), flush=True)


if __name__ == '__main__':
    main()
