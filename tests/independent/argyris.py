"""Thin plates by Argyris's triangle on graded meshes, for the references that scripts beside this one write.

scikit-fem (12.0.2 was used) writes this element in powers of x and y from the origin and so loses its digits on small triangles; here the
powers are taken from the triangle's own middle.
"""

import itertools

import numpy as np
from scipy.sparse import coo_matrix, diags, linalg
from skfem import Basis, BilinearForm, ElementTriArgyris, LinearForm, MeshTri
from skfem.element.discrete_field import DiscreteField
from skfem.helpers import dd, ddot, eye, trace


class Centred(ElementTriArgyris):
    """Argyris's element in powers from the middle of each triangle."""

    def gdof(self, F, w, i):
        middle = w['v'].mean(axis=0)
        return super().gdof(F, {'v': w['v'] - middle, 'e': w['e'] - middle, 'n': w['n']}, i)

    def gbasis(self, mapping, X, i, tind=None):
        mesh = mapping.mesh
        tind = np.arange(mesh.t.shape[1]) if tind is None else tind
        if self.V is None:
            self._pbasis_init(self.maxdeg, self.dim, self.derivatives, self.tensorial_basis)
            self.V = np.linalg.inv(self._eval_dofs(mesh))
        factors = self.V[tind, :, i]
        x = mapping.F(X, tind=tind) - mesh.p[:, mesh.t[:, tind]].mean(axis=1)[:, :, None]
        parts = [np.zeros((2,) * k + x[0].shape) for k in range(3)]
        for k in range(3):
            for way in itertools.product((0, 1), repeat=k):
                for power in range(21):
                    parts[k][way] += factors[:, power][:, None] * self._pbasis[way][power](*x)
        return (DiscreteField(value=parts[0], grad=parts[1], hess=parts[2]),)


def graded(mesh, points, levels, ratio=0.5):
    """Divides `levels` times the triangles whose side is more than `ratio` of the way to the nearest of the points."""
    for _ in range(levels):
        x, y = mesh.p[:, mesh.t].mean(axis=1)
        far = np.min([np.hypot(x - a, y - b) for a, b in points], axis=0)
        a, b = mesh.p[:, mesh.t[1]] - mesh.p[:, mesh.t[0]], mesh.p[:, mesh.t[2]] - mesh.p[:, mesh.t[0]]
        mesh = mesh.refined(np.nonzero(np.sqrt(0.5 * np.abs(a[0] * b[1] - a[1] * b[0])) > ratio * far)[0])
    return mesh


class Plate:
    """Stiffness, mass and unit pressure of a thin isotropic plate."""

    def __init__(self, mesh, young, poisson, thickness, density, element=Centred, order=8):
        rigidity = young * thickness**3 / (12 * (1 - poisson**2))

        @BilinearForm
        def bending(u, v, _):
            k = dd(u)
            return rigidity * ddot((1 - poisson) * k + poisson * eye(trace(k), 2), dd(v))

        @BilinearForm
        def inertia(u, v, _):
            return density * thickness * u * v

        @LinearForm
        def pressure(v, _):
            return 1.0 * v

        self.mesh, self.basis = mesh, Basis(mesh, element(), intorder=order)
        self.stiffness = bending.assemble(self.basis).tocsc()
        self.mass = inertia.assemble(self.basis).tocsc()
        self.pressure = pressure.assemble(self.basis)

    def vertex(self, x, y):
        """The freedom of the deflection at a vertex of the mesh."""
        off = np.hypot(self.mesh.p[0] - x, self.mesh.p[1] - y)
        assert off.min() < 1e-9, f'no vertex at {x}, {y}'
        return self.basis.nodal_dofs[0, off.argmin()]

    def points(self, held):
        """Freedoms that are left where points are held at their height, as the columns of a matrix."""
        free = np.setdiff1d(np.arange(len(self.pressure)), [self.vertex(x, y) for x, y in held])
        return coo_matrix((np.ones(len(free)), (free, np.arange(len(free)))), (len(self.pressure), len(free))).tocsc()

    def solve(self, keep, pressure, modes=0):
        """Deflections and natural frequencies; one factorisation, the freedoms scaled to a unit diagonal."""
        stiffness = keep.T @ self.stiffness @ keep
        scale = diags(1 / np.sqrt(stiffness.diagonal()))
        stiffness = (scale @ stiffness @ scale).tocsc()
        factor = linalg.splu(stiffness)
        w = keep @ (scale @ factor.solve(scale @ (keep.T @ (pressure * self.pressure))))
        if not modes:
            return w, np.array([])
        mass = (scale @ keep.T @ self.mass @ keep @ scale).tocsc()
        inverse = linalg.LinearOperator(stiffness.shape, factor.solve, dtype=float)
        squares = linalg.eigsh(stiffness, modes, mass, sigma=0.0, OPinv=inverse, return_eigenvectors=False)
        return w, np.sqrt(np.sort(squares)) / (2 * np.pi)


def mesh_of(points, is_outside, area):
    """Delaunay's triangles of points less those that are outside; they have to fill the area."""
    from scipy.spatial import Delaunay

    points = np.array(points)
    triangles = Delaunay(points).simplices
    a, b = points[triangles[:, 1]] - points[triangles[:, 0]], points[triangles[:, 2]] - points[triangles[:, 0]]
    areas = 0.5 * np.abs(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0])
    triangles = triangles[(areas > 1e-6 * areas.max()) & ~is_outside(points[triangles])]
    a, b = points[triangles[:, 1]] - points[triangles[:, 0]], points[triangles[:, 2]] - points[triangles[:, 0]]
    found = 0.5 * np.abs(a[:, 0] * b[:, 1] - a[:, 1] * b[:, 0]).sum()
    assert abs(found / area - 1) < 1e-9, f'the triangles cover {found}, not {area}'
    return MeshTri(points.T.copy(), triangles.T.copy())


def ring(corners, counts):
    """Points along a closed polygon, so many on each side."""
    found = []
    for i, count in enumerate(counts):
        a, b = np.array(corners[i], float), np.array(corners[(i + 1) % len(corners)], float)
        found += [tuple(a + (b - a) * k / count) for k in range(count)]
    return found
