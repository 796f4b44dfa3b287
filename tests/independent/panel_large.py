"""Large deflections of plates by methods that share nothing with the panel solver.

Rectangles a by b (sides 1 in x and y after scaling): the Ritz method on von Karman's energy in u, v and w together, Legendre
polynomials, integrated exactly by Gauss's rule, Newton's method with load steps. The edges in the plane:
  held      u = v = 0 on all edges
  straight  the normal displacement is one number along each edge, the tangential one free, no mean force
  free      no force on the edges
Clamped circle: the two equations for deflection and radial displacement as a boundary value problem (scipy's solve_bvp).

Prints, for E = h = a = 1, the deflection of the middle over the thickness and the membrane force there over E h^3 / a^2,
for two sizes of the series. The temperature is given as a multiple of the critical one of the supported plate.
Run with numpy and scipy.
"""

import numpy as np
from numpy.polynomial import legendre
from scipy.integrate import solve_bvp


def family(n, parity, factor):
    """Values, first and second derivatives on 0..1 of factor(s) P_m(s), s = 2 x - 1, of one parity, n functions."""
    s, w = legendre.leggauss(6 * n + 8)
    base = legendre.Legendre(factor)
    out = []
    for k in range(n):
        f = base * legendre.Legendre.basis(2 * k + parity)
        f = f / max(1e-300, np.max(np.abs(f(s))))
        out.append([f(s), 2 * f.deriv()(s), 4 * f.deriv(2)(s)])
    at = np.array(out)
    mid = []
    for k in range(n):
        f = base * legendre.Legendre.basis(2 * k + parity)
        f = f / max(1e-300, np.max(np.abs(f(s))))
        mid.append([f(0.0), 2 * f.deriv()(0.0)])
    return 0.5 * w, at, np.array(mid)


ONE = [1.0]
BUBBLE = legendre.poly2leg([1.0, 0.0, -1.0])
CLAMP = legendre.poly2leg([1.0, 0.0, -2.0, 0.0, 1.0])


class Plate:
    def __init__(self, n, edge, plane, ratio=1.0, nu=0.3):
        """Sides 1 and `ratio`; E = h = 1."""
        self.nu, self.ratio = nu, ratio
        w, we, wm = family(n, 0, BUBBLE if edge == "supported" else CLAMP)
        weights = np.outer(w, w).ravel() * ratio
        tensor = lambda p, q: np.einsum("mi,nj->mnij", p, q).reshape(p.shape[0] * q.shape[0], -1)
        r = ratio
        d = {}
        d["x"], d["y"] = tensor(we[:, 1], we[:, 0]), tensor(we[:, 0], we[:, 1]) / r
        d["xx"], d["yy"] = tensor(we[:, 2], we[:, 0]), tensor(we[:, 0], we[:, 2]) / r**2
        d["xy"] = tensor(we[:, 1], we[:, 1]) / r
        w0 = tensor(we[:, 0], we[:, 0])
        _, odd_b, odd_b_m = family(n, 1, BUBBLE)
        _, even_b, even_b_m = family(n, 0, BUBBLE)
        _, odd, odd_m = family(n, 1, ONE)
        _, even, even_m = family(n, 0, ONE)
        one = even[:1]
        line = odd[:1]
        if plane == "held":
            uf, ug = odd_b, even_b
            pairs = [(uf, ug)]
        elif plane == "straight":
            pairs = [(odd_b, even), (line, one)]
        else:
            pairs = [(odd, even)]
        stack = lambda f: np.concatenate([f(p, q) for p, q in pairs])
        ux = stack(lambda p, q: tensor(p[:, 1], q[:, 0]))
        uy = stack(lambda p, q: tensor(p[:, 0], q[:, 1]) / r)
        vy = stack(lambda p, q: tensor(q[:, 0], p[:, 1]) / r)
        vx = stack(lambda p, q: tensor(q[:, 1], p[:, 0]))
        nw, nu_ = d["x"].shape[0], ux.shape[0]
        zero_w = np.zeros((nw, weights.size))
        zero_u = np.zeros_like(ux)
        self.nw = nw
        # Linear rows of the three membrane strains over (w, u, v), and of slopes and curvatures over w.
        self.rows = np.array([
            np.vstack([zero_w, ux, zero_u]), np.vstack([zero_w, zero_u, vy]), np.vstack([zero_w, uy, vx]),
        ])
        self.sx, self.sy = d["x"], d["y"]
        self.bend = np.array([-d["xx"], -d["yy"], -2 * d["xy"]])
        self.weights = weights
        c = 1 / (1 - nu**2)
        self.a = c * np.array([[1, nu, 0], [nu, 1, 0], [0, 0, (1 - nu) / 2]])
        self.load = w0 @ weights
        self.kb = np.einsum("imq,ij,jnq,q->mn", self.bend, self.a / 12, self.bend, weights)
        self.middle = (wm[:, None, 0] * wm[None, :, 0]).ravel()
        self.ux_m, self.vy_m = stack_middle(plane, odd_b_m, even_b_m, odd_m, even_m)

    def solve(self, p, thermal=0.0, start=None):
        """Pressure p (over E h^4 / a^4), thermal force in both directions; returns (w0, N at the middle)."""
        n = self.rows.shape[1]
        q = np.zeros(n) if start is None else start.copy()
        warm = thermal * np.array([1.0, 1.0, 0.0])
        for _ in range(200):
            w = q[: self.nw]
            wx, wy = w @ self.sx, w @ self.sy
            strain = np.einsum("imq,m->iq", self.rows, q)
            strain += np.array([0.5 * wx * wx, 0.5 * wy * wy, wx * wy])
            force = self.a @ strain - warm[:, None]
            change = self.rows.copy()
            change[0, : self.nw] += wx * self.sx
            change[1, : self.nw] += wy * self.sy
            change[2, : self.nw] += wx * self.sy + wy * self.sx
            g = np.einsum("imq,iq,q->m", change, force, self.weights)
            g[: self.nw] += self.kb @ w - p * self.load
            k = np.einsum("imq,ij,jnq,q->mn", change, self.a, change, self.weights, optimize=True)
            k[: self.nw, : self.nw] += self.kb
            f = force * self.weights
            k[: self.nw, : self.nw] += (
                (self.sx * f[0]) @ self.sx.T + (self.sy * f[1]) @ self.sy.T
                + (self.sx * f[2]) @ self.sy.T + (self.sy * f[2]) @ self.sx.T
            )
            step = np.linalg.lstsq(k, -g, rcond=1e-13)[0]
            size = np.max(np.abs(step[: self.nw]))
            q = q + step * min(1.0, 0.7 / size if size > 0 else 1.0)
            if size < 1e-11:
                break
        else:
            raise RuntimeError("not converged")
        self.q = q
        w = q[: self.nw]
        du = q[self.nw :]
        half = du.size // 2
        ex, ey = self.ux_m @ du[:half], (self.vy_m @ du[half:]) / self.ratio
        n_x = (ex + self.nu * ey) / (1 - self.nu**2) - thermal
        return self.middle @ w, n_x


def stack_middle(plane, odd_b, even_b, odd, even):
    """Stretches u,x and v,y at the middle, where the slopes vanish by symmetry."""
    if plane == "held":
        pairs = [(odd_b, even_b)]
    elif plane == "straight":
        pairs = [(odd_b, even), (odd[:1], even[:1])]
    else:
        pairs = [(odd, even)]
    u = [np.outer(p[:, 1], q[:, 0]).ravel() for p, q in pairs]
    v = [np.outer(q[:, 0], p[:, 1]).ravel() for p, q in pairs]
    return np.concatenate(u), np.concatenate(v)


def steps(plate, loads, thermal=0.0, seed=0.0):
    q, out = None, []
    p0 = 0.0
    if thermal:
        q = np.zeros(plate.rows.shape[1])
        q[0] = seed
    for p in loads:
        for x in np.linspace(p0, p, 1 + max(1, int((p - p0) / 30)))[1:] if p else [0.0]:
            result = plate.solve(x, thermal, q)
            q = plate.q
        p0 = p
        out.append(result)
    return out


def circle(p, nu, held):
    """Clamped circle of radius 1, E = h = 1: w(0), N(0). Unknowns w, w', w'', w''', u, u' as a first-order system."""
    d = 1 / (12 * (1 - nu**2))
    c = 1 / (1 - nu**2)

    def rates(r, y):
        s, k, q, u, e, w = y  # slope, its derivative, N_r (unused), u, u', w
        n_r = c * (e + 0.5 * s * s + nu * u / r)
        # D (s'' + s'/r - s/r^2) = N_r s + p r / 2  with s = w', load p downward in +w: -p r / 2.
        ks = (n_r * s - p * r / 2) / d - k / r + s / r**2
        n_t = c * (u / r + nu * (e + 0.5 * s * s))
        # d(r N_r)/dr = N_t
        nr_prime = (n_t - n_r) / r
        ep = nr_prime / c - s * k - nu * (e / r - u / r**2)
        return np.vstack([k, ks, 0 * q, e, ep, s])

    def ends(a, b):
        s, k, q, u, e, w = b
        edge = u if held else c * (e + 0.5 * s * s + nu * u)
        eps = 1e-4
        return np.array([a[0] - eps * a[1], a[3] - eps * a[4], b[0], edge, b[5], a[2]])

    r = np.linspace(1e-4, 1, 400)
    y = np.zeros((6, r.size))
    for step in np.linspace(0, 1, 1 + max(1, int(p / 4)))[1:]:
        load, p_full = p * step, p
        p = load
        found = solve_bvp(rates, ends, r, y, tol=1e-8, max_nodes=200000)
        p = p_full
        if not found.success:
            raise RuntimeError(found.message)
        r, y = found.x, found.y
    s, k, q, u, e, w = found.sol(1e-4)
    return w, c * (1 + nu) * e


def main():
    for name, edge, plane, ratio, nu, loads in [
        ("supported, held", "supported", "held", 1.0, 0.3, [10, 50, 200]),
        ("supported, straight", "supported", "straight", 1.0, 0.3, [10, 50, 200]),
        ("supported, free", "supported", "free", 1.0, 0.3, [10, 50, 200]),
        ("supported, straight, nu = 0.316", "supported", "straight", 1.0, 0.316, [12.1, 29.4, 56.9, 99.4]),
        ("clamped, held", "clamped", "held", 1.0, 0.3, [20, 100, 400]),
        ("clamped, held, nu = 0.316", "clamped", "held", 1.0, 0.316, [17.79, 38.3, 63.4, 95.0, 134.9]),
        ("clamped, free", "clamped", "free", 1.0, 0.3, [100, 400]),
        ("supported 1 by 1.5, held", "supported", "held", 1.5, 0.3, [10, 50]),
    ]:
        for n in (5, 7):
            found = steps(Plate(n, edge, plane, ratio, nu), loads)
            print(f"{name}, {n}: " + ", ".join(f"w {w:.5f} N {f:.4f}" for w, f in found))
    nu = 0.3
    critical = 2 * np.pi**2 / (12 * (1 - nu**2))
    for times in (1.5, 3.0, 8.0):
        for n in (5, 7):
            found = steps(Plate(n, "supported", "held", 1.0, nu), [0.0], times * critical, 0.85 * np.sqrt(times - 1))
            print(f"supported, held, heated {times} times, {n}: w {abs(found[0][0]):.5f} N {found[0][1]:.4f}")
    for p, held in [(1.0, True), (6.0, True), (15.0, True), (6.0, False), (15.0, False)]:
        w, f = circle(p, 0.3, held)
        print(f"clamped circle, {'held' if held else 'free'}, p {p}: w {w:.5f} N {f:.4f}")


if __name__ == "__main__":
    main()
