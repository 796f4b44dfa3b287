"""An L-shaped plate solved with scikit-fem's Argyris element (quintic, C1): references for the panel solver's tests.

Independent of the solver: another element, another mesh, another assembly. Prints w D / (q a^4) at (0.25, 0.25), (0.3, 0.25) and
(0.5, 0.25) of the unit square less its upper right quarter, for meshes graded to the re-entrant corner.
"""
import numpy as np
import skfem
from skfem import *
from skfem.helpers import dd, ddot, trace, eye
from skfem.models.poisson import unit_load

def bending(nu):
    @BilinearForm
    def form(u, v, _):
        def c(k):
            return (1 - nu) * k + nu * eye(trace(k), 2)
        return ddot(c(dd(u)), dd(v))
    return form

def l_shape(base, levels):
    # Arms 0.5 wide; the re-entrant corner at the origin, where small elements keep their digits.
    m = MeshTri(np.array([[0, .5, 1, 0, .5, 1, 0, .5], [0, 0, 0, .5, .5, .5, 1, 1]], float) - .5,
                np.array([[0,1,4],[0,4,3],[1,2,5],[1,5,4],[3,4,7],[3,7,6]]).T)
    m = m.refined(base)
    for _ in range(levels):
        # Grade toward the re-entrant corner.
        c = m.p[:, m.t].mean(axis=1)
        r = np.hypot(c[0], c[1])
        side, other = m.p[:, m.t[1]] - m.p[:, m.t[0]], m.p[:, m.t[2]] - m.p[:, m.t[0]]
        h = np.sqrt(0.5 * np.abs(side[0] * other[1] - side[1] * other[0]))
        m = m.refined(np.nonzero(h > 0.35 * r)[0])
    return m

def solve(m, kind, nu=0.3):
    e = ElementTriArgyris()
    b = Basis(m, e, intorder=8)
    A = bending(nu).assemble(b)
    f = unit_load.assemble(b)
    bnd = m.boundary_facets()
    dofs = b.get_dofs(bnd)
    if kind == 'clamped':
        # Along a clamped edge w and both slopes vanish, and with them the second derivatives along it.
        D = list(np.concatenate([dofs.nodal[k] for k in ('u', 'u_x', 'u_y')] + [dofs.facet['u_n']]))
    else:
        D = list(dofs.nodal['u'])
        for axis, name, second in ((0,'u_y','u_yy'),(1,'u_x','u_xx')):
            on = [i for i in bnd if np.ptp(m.p[axis, m.facets[:, i]]) < 1e-12]
            d = b.get_dofs(np.array(on))
            D += list(d.nodal[name]) + list(d.nodal[second])
    if kind == 'clamped':
        for axis, names in ((0,('u_yy','u_xy')),(1,('u_xx','u_xy'))):
            on = [i for i in bnd if np.ptp(m.p[axis, m.facets[:, i]]) < 1e-12]
            d = b.get_dofs(np.array(on))
            for n in names: D += list(d.nodal[n])
    D = np.unique(D)
    return b, skfem.solve(*condense(A, f, D=D))

if __name__ == '__main__':
    for kind in ('clamped','supported'):
        for base, levels in ((3, 5), (3, 6), (3, 7), (3, 8), (3, 9)):
            m = l_shape(base, levels)
            b, x = solve(m, kind)
            places = np.array([[.25, .3, .5], [.25, .25, .25]]) - .5
            print(kind, base, levels, m.t.shape[1], x.size, b.probes(places) @ x, flush=True)
