"""Plates by other means than the library's: prints the numbers that tests/cases/plate.toml quotes.

Needs numpy, scipy and mpmath. Run it with the name of a part (for instance `python plate.py supported`) or without,
for all parts. Unit flexural rigidity and unit pressure, nu = 0.3, unless a line says otherwise.
"""

import sys

import mpmath as mp
import numpy as np

NU = 0.3


def supported(b, digits=25):
    """Supported a x b (a = 1): Timoshenko's hyperbolic Levy series, summed in many digits."""
    mp.mp.dps = digits
    a, b, nu = mp.mpf(1), mp.mpf(b), mp.mpf(3) / 10

    def parts(m):
        al = m * mp.pi * b / (2 * a)
        return al, mp.cosh(al), mp.tanh(al)

    def w(m):
        al, ch, th = parts(m)
        return 4 * a**4 / (mp.pi * m) ** 5 * (1 - (al * th + 2) / (2 * ch)) * mp.sin(m * mp.pi / 2)

    def wyy(m):
        # d2/dy2 at y = 0 of -(al th + 2)/(2 ch) cosh(ky) + (ky) sinh(ky)/(2 ch)
        al, ch, th = parts(m)
        k = m * mp.pi / a
        return 4 * a**4 / (mp.pi * m) ** 5 * k**2 * (-(al * th + 2) / (2 * ch) + 1 / ch) * mp.sin(m * mp.pi / 2)

    def twist(m):
        al, ch, th = parts(m)
        return 2 * a**2 / (mp.pi * m) ** 3 * (th - al / ch**2)

    W = mp.fsum(w(m) for m in range(1, 200, 2))
    # The strip part of the curvature sums to -a^2/8; what is left falls exponentially.
    X = -(a**2) / 8 + mp.fsum(
        4 * a**2 / (mp.pi * m) ** 3 * (parts(m)[0] * parts(m)[2] + 2) / (2 * parts(m)[1]) * mp.sin(m * mp.pi / 2)
        for m in range(1, 200, 2)
    )
    Y = mp.fsum(wyy(m) for m in range(1, 200, 2))
    T = mp.nsum(lambda i: twist(2 * i + 1), [0, mp.inf])
    print(f"supported 1 x {b}: w {mp.nstr(W, 12)}  Mx {mp.nstr(-(X + nu * Y), 11)}  My {mp.nstr(-(Y + nu * X), 11)}"
          f"  R {mp.nstr(2 * (1 - nu) * T, 11)}")


def navier_reactions(b, N=4001):
    """Reactions of the supported plate at mid-edges, by Navier's double sum with the inner sum in closed form."""
    # V_x(0, b/2) = sum over n of the Levy solution along y; here by brute force: total of dM/dx from the double sum,
    # averaged over the last terms (the sum alternates).
    m = np.arange(1, N, 2)[:, None] * np.pi
    n = np.arange(1, N, 2)[None, :] * np.pi / b
    c = 16 / (m * n * b) / (m**2 + n**2) ** 2
    v = c * (m**3 + (2 - NU) * m * n**2) * np.sin(n * b / 2)
    inner = v.sum(axis=0)
    # tail in m: c m^3 -> 16/(n b)/m^2
    tail = 16 / (n[0] * b) * np.sin(n[0] * b / 2) * (1 / (2 * np.pi * m[-1, 0]))
    partial = np.cumsum(inner + tail)
    for _ in range(12):
        partial = 0.5 * (partial[1:] + partial[:-1])
    print(f"supported 1 x {b}: reaction at the middle of the edge of length {b}: {partial[-1]:.7f}")


class Superposition:
    """Clamped a x b under a patch x1..x2, y1..y2: Navier coefficients plus unknown edge curvatures in sine series.

    W_mn (m'^2 + n'^2)^2 = p_mn - (2/a) m' (E0_n - (-1)^m Ea_n) - (2/b) n' (F0_m - (-1)^n Fb_m); the slopes vanish.
    """

    def __init__(self, a, b, x1, x2, y1, y2, N):
        self.a, self.b, self.N = a, b, N
        self.patch = (x1, x2, y1, y2)
        n = np.arange(1, N + 1)
        self.k, self.l = n * np.pi / a, n * np.pi / b
        sign = (-1.0) ** n
        # E rows: slope at x = 0 and x = a for each n.
        def same(side, wave):
            # sum over m of (2/side) m'^2/(m'^2 + c^2)^2 and with (-1)^m
            c = wave * side / np.pi
            with np.errstate(over="ignore", invalid="ignore"):
                s = np.pi / (4 * c) / np.tanh(np.pi * c) - np.pi**2 / 4 / np.sinh(np.pi * c) ** 2
                t = np.pi / (4 * c) / np.sinh(np.pi * c) - np.pi**2 / 4 * np.cosh(np.pi * c) / np.sinh(np.pi * c) ** 2
            # sum m^2/(m^2+c^2)^2 = pi/(4c) coth(pi c) - pi^2/4 csch^2(pi c); alternating likewise
            t = np.where(np.isfinite(t), t, 0.0)
            return 2 / side * (side / np.pi) ** 2 * s, 2 / side * (side / np.pi) ** 2 * t

        sa, ta = same(a, self.l)
        sb, tb = same(b, self.k)
        D = np.diag
        cross = self.k[:, None] * self.l[None, :] / (self.k[:, None] ** 2 + self.l[None, :] ** 2) ** 2  # m, n
        Sm, Sn = sign[:, None], sign[None, :]
        Z = np.block([
            # slope x=0, for n:      E0        Ea          F0 (by m)                     Fb
            [D(sa), -D(ta), 2 / b * cross.T, -2 / b * (Sn * cross).T],
            # slope x=a (times (-1)^m)
            [D(ta), -D(sa), 2 / b * (Sm * cross).T, -2 / b * (Sm * Sn * cross).T],
            # slope y=0, for m
            [2 / a * cross, -2 / a * (Sm * cross), D(sb), -D(tb)],
            [2 / a * (Sn * cross), -2 / a * (Sm * Sn * cross), D(tb), -D(sb)],
        ])
        M = np.arange(1, 20001)
        K, L = M * np.pi / a, M * np.pi / b
        px = 2 / a * (np.cos(K * x1) - np.cos(K * x2)) / K
        py = 2 / b * (np.cos(L * y1) - np.cos(L * y2)) / L
        alt = (-1.0) ** M
        right = np.concatenate([
            [py[i] * (px * K / (K**2 + self.l[i] ** 2) ** 2).sum() for i in range(N)],
            [py[i] * (alt * px * K / (K**2 + self.l[i] ** 2) ** 2).sum() for i in range(N)],
            [px[i] * (py * L / (L**2 + self.k[i] ** 2) ** 2).sum() for i in range(N)],
            [px[i] * (alt * py * L / (L**2 + self.k[i] ** 2) ** 2).sum() for i in range(N)],
        ])
        u = np.linalg.solve(Z, right)
        self.E0, self.Ea, self.F0, self.Fb = np.split(u, 4)

    def edge(self, x, y):
        """Curvature across the edges at the feet of (x, y): x = 0, x = a, y = 0, y = b."""
        sy, sx = np.sin(self.l * y), np.sin(self.k * x)
        return self.E0 @ sy, self.Ea @ sy, self.F0 @ sx, self.Fb @ sx

    def inside(self, x, y):
        """w, wxx, wyy, wxy: Navier for the load, hyperbolic functions for the edges."""
        x1, x2, y1, y2 = self.patch
        M = np.arange(1, 6001)
        K, L = M * np.pi / self.a, M * np.pi / self.b
        px = 2 / self.a * (np.cos(K * x1) - np.cos(K * x2)) / K
        py = 2 / self.b * (np.cos(L * y1) - np.cos(L * y2)) / L
        out = np.zeros(4)
        sy, cy = np.sin(L * y), np.cos(L * y)
        for K0, p0 in zip(K, px):
            c = p0 * py / (K0**2 + L**2) ** 2
            s, co = np.sin(K0 * x), np.cos(K0 * x)
            out += [s * (c * sy).sum(), -K0**2 * s * (c * sy).sum(), -s * (c * L**2 * sy).sum(), K0 * co * (c * L * cy).sum()]
        def mode(lam, side, z):
            # X(0) = X(side) = 0, X''(0) = 1, X''(side) = 0 for X'''' - 2 lam^2 X'' + lam^4 X = 0: value, 1st, 2nd
            e = np.exp(-lam * side)
            r = lam * side
            # X = (A + B s) e^-s + (C + E t) e^-t, s = lam z, t = lam (side - z); X'' - lam^2 X = -2 lam^2 (B e^-s + E e^-t)
            B = -1 / (2 * lam**2) / (1 - e**2)
            E = -B * e
            p, q = -E * r * e, -B * r * e
            A = (p - e * q) / (1 - e**2)
            C = (q - e * p) / (1 - e**2)
            s, t = lam * z, lam * (side - z)
            es, et = np.exp(-s), np.exp(-t)
            return ((A + B * s) * es + (C + E * t) * et,
                    lam * ((B - A - B * s) * es - (E - C - E * t) * et),
                    lam**2 * ((A - 2 * B + B * s) * es + (C - 2 * E + E * t) * et))
        for amp, z, turn in ((self.E0, x, 1), (self.Ea, self.a - x, -1)):
            v, d, c = mode(self.l, self.a, z)
            s, co = np.sin(self.l * y), np.cos(self.l * y)
            out += [(amp * v * s).sum(), (amp * c * s).sum(), -(amp * self.l**2 * v * s).sum(),
                    turn * (amp * d * self.l * co).sum()]
        for amp, z, turn in ((self.F0, y, 1), (self.Fb, self.b - y, -1)):
            v, d, c = mode(self.k, self.b, z)
            s, co = np.sin(self.k * x), np.cos(self.k * x)
            out += [(amp * v * s).sum(), -(amp * self.k**2 * v * s).sum(), (amp * c * s).sum(),
                    turn * (amp * d * self.k * co).sum()]
        return out


def clamped_uniform():
    for b in (1.0, 1.5, 2.0, 4.0):
        for N in (100, 200, 400):
            s = Superposition(1.0, b, 0, 1, 0, b, N)
            w, wxx, wyy, _ = s.inside(0.5, b / 2)
            e = s.edge(0.5, b / 2)
            print(f"clamped 1 x {b} N={N}: w {w:.11f} Mx {-(wxx + NU * wyy):.9f} My {-(wyy + NU * wxx):.9f}"
                  f" edges {-e[0]:.8f} {-e[2]:.8f}")


PATCHES = [
    ("central 0.2 x 0.2 on 1 x 1.3", 1.0, 1.3, 0.4, 0.6, 0.55, 0.75),
    ("off centre 0.3 x 0.3 on 1 x 1.3", 1.0, 1.3, 0.2, 0.5, 0.3, 0.6),
    ("by the edge 0.25 x 0.3 on 1 x 1.3", 1.0, 1.3, 0.05, 0.3, 0.3, 0.6),
]


def patches():
    for name, a, b, x1, x2, y1, y2 in PATCHES:
        x, y = (x1 + x2) / 2, (y1 + y2) / 2
        M = np.arange(1, 8001)
        K, L = M * np.pi / a, M * np.pi / b
        px = 2 / a * (np.cos(K * x1) - np.cos(K * x2)) / K
        py = 2 / b * (np.cos(L * y1) - np.cos(L * y2)) / L
        w = wxx = wyy = 0.0
        sy = np.sin(L * y)
        for K0, p0 in zip(K, px):
            c = p0 * py / (K0**2 + L**2) ** 2 * np.sin(K0 * x)
            w += (c * sy).sum()
            wxx -= K0**2 * (c * sy).sum()
            wyy -= (c * L**2 * sy).sum()
        print(f"supported, {name}: w {w:.12e} Mx {-(wxx + NU * wyy):.9e} My {-(wyy + NU * wxx):.9e}")
        for N in (120, 240):
            s = Superposition(a, b, x1, x2, y1, y2, N)
            w, wxx, wyy, wxy = s.inside(x, y)
            e = s.edge(x, y)
            print(f"clamped,   {name} N={N}: w {w:.12e} Mx {-(wxx + NU * wyy):.9e} My {-(wyy + NU * wxx):.9e}"
                  f" edges {[f'{-v:.8e}' for v in e]}")


def clamped_frequency():
    """Ritz with another basis: f_m = cos((m - 1) pi x) - cos((m + 1) pi x), m = 1, 3, ..., which is clamped at 0 and 1."""
    from scipy.linalg import eigh

    for b in (1.0, 1.5, 2.0, 5.0):
        values = []
        for N in (20, 40):
            m = 2 * np.arange(N) + 1

            def side(power):
                # integral of the derivative of that order squared: frequencies (m - 1) pi and (m + 1) pi
                low, high = ((m - 1) * np.pi) ** power, ((m + 1) * np.pi) ** power
                if power == 0:
                    low = np.where(m == 1, 2.0, 1.0)
                same = 0.5 * (low + high)
                return np.diag(same) - 0.5 * (np.diag(high[:-1], 1) + np.diag(high[:-1], -1))

            A, B, M = side(4), side(2), side(0)
            K = np.kron(A, M) + 2 * np.kron(B, B) / b**2 + np.kron(M, A) / b**4
            lam, vec = eigh(K, np.kron(M, M), subset_by_index=[0, 0])
            v = vec[:, 0].reshape(N, N)
            integral = v[0, 0] * 1.0  # only f_1 has an integral over 0..1, of 1
            values.append(np.sqrt(lam[0]))
        # The basis converges as N^-3.
        print(f"clamped 1 x {b}: lambda {values[0]:.7f} {values[1]:.7f} extrapolated {(8 * values[1] - values[0]) / 7:.6f}"
              f"  effective share {integral**2:.6f}")


def clamped_buckling():
    """Ritz in the same cosines: clamped rectangle, equal compression both ways, N s^2/(pi^2 D), even and odd along b."""
    from scipy.linalg import eigh

    def side(power, N, odd):
        m = 2 * np.arange(N) + 1 + odd
        low, high = ((m - 1) * np.pi) ** power, ((m + 1) * np.pi) ** power
        if power == 0:
            low = np.where(m == 1, 2.0, 1.0)
        return np.diag(0.5 * (low + high)) - 0.5 * (np.diag(high[:-1], 1) + np.diag(high[:-1], -1))

    for b in (1.0, 1.5, 3.0, 10.0):
        values = []
        for N in (20, 40):
            A, B, M = (side(p, N, 0) for p in (4, 2, 0))
            lowest = []
            for odd in (0, 1):
                A2, B2, M2 = (side(p, N, odd) for p in (4, 2, 0))
                K = np.kron(A, M2) + 2 * np.kron(B, B2) / b**2 + np.kron(M, A2) / b**4
                G = np.kron(B, M2) + np.kron(M, B2) / b**2
                lowest.append(eigh(K, G, subset_by_index=[0, 0])[0][0] / np.pi**2)
            values.append(min(lowest))
        print(f"clamped 1 x {b}: k {values[0]:.7f} {values[1]:.7f} extrapolated {(8 * values[1] - values[0]) / 7:.6f}")


def gradient():
    """Membrane under unit load on 1 x b, centre, by the double sine series."""
    for b in (1.0, 1.5):
        m = np.arange(1, 4002, 2)[:, None] * np.pi
        n = np.arange(1, 4002, 2)[None, :] * np.pi / b
        s = 16 / (m * n * b) / (m**2 + n**2) * np.sin(m / 2) * np.sin(n * b / 2)
        print(f"membrane 1 x {b}: centre {(4 / 4 * s).sum() / 1:.9f}")


def circles():
    """Circular plates: frequency parameters by Bessel functions and brentq."""
    from scipy.optimize import brentq
    from scipy.special import iv, ivp, jv, jvp

    def values(edge, nu):
        found = []
        for n in range(0, 7):
            def both(x):
                out = []
                for f, fp, s in ((jv, jvp, -1), (iv, ivp, 1)):
                    w, w1, w2 = f(n, x), x * fp(n, x, 1), x**2 * fp(n, x, 2)
                    w3 = x**3 * fp(n, x, 3)
                    moment = w2 + nu * (w1 - n * n * w)
                    # V = (lap w)' + (1 - nu) d/dtheta-part
                    lap1 = w3 + w2 - w1 - n * n * (w1 - 2 * w)
                    shear = lap1 - (1 - nu) * n * n * (w1 - w)
                    out.append({"clamped": (w, w1), "supported": (w, moment), "free": (moment, shear)}[edge])
                (a, b), (c, d) = out
                return a * d - b * c
            grid = np.arange(0.5, 9, 0.02)
            y = [both(x) for x in grid]
            for x0, x1, y0, y1 in zip(grid, grid[1:], y, y[1:]):
                if y0 * y1 < 0:
                    found.append((brentq(both, x0, x1, xtol=1e-13) ** 2, n))
        return sorted(found)[:6]

    for edge, nu in (("clamped", 0.3), ("supported", 0.3), ("free", 0.33)):
        print(edge, nu, [(round(v, 8), n) for v, n in values(edge, nu)])


def rings():
    """Annular plate by a boundary value problem: q = 1, a = 1, nu = 0.3, D = 1."""
    from scipy.integrate import solve_bvp

    def solve(b, outer, inner, q, line):
        def rhs(r, y):
            w, p, m, v = y  # w, w', M_r = -(w'' + nu w'/r), V = -(lap w)'
            w2 = -m - NU * p / r
            m_t = -(p / r + NU * w2)
            return np.array([p, w2, v - (m - m_t) / r, -v / r - q])

        def conditions(at_inner, at_outer):
            out = []
            for y, how, given in ((at_inner, inner, -line / (2 * np.pi * b)), (at_outer, outer, 0.0)):
                w, p, m, v = y
                out += {"free": [m, v - given], "supported": [w, m], "clamped": [w, p]}[how]
            return np.array(out)

        r = np.linspace(b, 1, 60)
        s = solve_bvp(rhs, conditions, r, np.zeros((4, r.size)), tol=1e-11, max_nodes=200000)
        rr = np.linspace(b, 1, 20001)
        y = s.sol(rr)
        i = np.argmax(abs(y[0]))
        w2 = -y[2] - NU * y[1] / rr
        mt = -(y[1] / rr + NU * w2)
        print(f"ring {b} outer {outer} inner {inner} q {q} force {line}: w_in {y[0, 0]:.9f} w_out {y[0, -1]:.9f} largest {y[0, i]:.9f}"
              f" M_in {y[2, 0]:.9f} Mt_in {mt[0]:.9f} M_out {y[2, -1]:.9f} V_in {y[3, 0]:.9f} V_out {y[3, -1]:.9f}"
              f" largest M {max(abs(y[2]).max(), abs(mt).max()):.9f}")

    solve(0.5, "supported", "free", 1.0, 0.0)
    solve(0.3, "clamped", "free", 0.0, 1.0)
    solve(0.4, "clamped", "supported", 1.0, 0.0)


def large_deflection():
    """Large deflection by Fourier series for u, v, w (supported, edges held straight, sheet free to slide along them)."""
    def run(b, p, nu, N=5):
        # lengths by a = 1, w by t, Q = q a^4/(D t)
        Q = 12 * (1 - nu**2) * p
        g, wt = np.polynomial.legendre.leggauss(40)
        x = 0.5 + 0.5 * g
        X, Y = np.meshgrid(x, x * b, indexing="ij")
        W = np.outer(wt, wt) * 0.25 * b
        m = 2 * np.arange(N) + 1
        e = 2 * np.arange(N + 1)
        rows = []  # each: w, wx, wy, lap, ux, uy, vx, vy
        Z = np.zeros_like(X)
        for i in m:
            for j in m:
                k, l = i * np.pi, j * np.pi / b
                s, t = np.sin(k * X), np.sin(l * Y)
                rows.append([s * t, k * np.cos(k * X) * t, l * s * np.cos(l * Y), -(k * k + l * l) * s * t, Z, Z, Z, Z])
        nw = len(rows)
        for i in e[1:]:
            for j in e:
                k, l = i * np.pi, j * np.pi / b
                rows.append([Z, Z, Z, Z, k * np.cos(k * X) * np.cos(l * Y), -l * np.sin(k * X) * np.sin(l * Y), Z, Z])
        for i in e:
            for j in e[1:]:
                k, l = i * np.pi, j * np.pi / b
                rows.append([Z, Z, Z, Z, Z, Z, -k * np.sin(k * X) * np.sin(l * Y), l * np.cos(k * X) * np.cos(l * Y)])
        R = np.array([[c.ravel() for c in r] for r in rows])
        w = W.ravel()
        c = np.zeros(len(rows))
        c[0] = 0.5
        for _ in range(60):
            f = np.einsum("i,ijk->jk", c, R)
            ex, ey, ga = f[4] + f[1] ** 2 / 2, f[7] + f[2] ** 2 / 2, f[5] + f[6] + f[1] * f[2]
            nx, ny, nxy = 12 * (ex + nu * ey), 12 * (ey + nu * ex), 6 * (1 - nu) * ga
            dx = R[:, 4] + f[1] * R[:, 1]
            dy = R[:, 7] + f[2] * R[:, 2]
            dg = R[:, 5] + R[:, 6] + f[1] * R[:, 2] + f[2] * R[:, 1]
            res = (R[:, 3] * f[3] + nx * dx + ny * dy + nxy * dg - Q * R[:, 0]) @ w
            K = (R[:, 3] * w) @ R[:, 3].T + 12 * ((dx + nu * dy) * w) @ dx.T + 12 * ((dy + nu * dx) * w) @ dy.T
            K += 6 * (1 - nu) * (dg * w) @ dg.T
            K += (R[:, 1] * (nx * w)) @ R[:, 1].T + (R[:, 2] * (ny * w)) @ R[:, 2].T
            cross = (R[:, 1] * (nxy * w)) @ R[:, 2].T
            K += cross + cross.T
            step = np.linalg.solve(K, res)
            c -= step
            if abs(step).max() < 1e-12:
                break
        # centre
        s = np.array([np.sin(i * np.pi / 2) for i in m])
        S = np.outer(s, s).ravel()
        k2 = np.array([(i * np.pi) ** 2 for i in m])
        w0 = c[:nw] @ S
        wxx = c[:nw] @ (np.outer(k2 * s, s).ravel())
        wyy = c[:nw] @ (np.outer(s, k2 * s).ravel()) / b**2
        u = c[nw:nw + N * (N + 1)].reshape(N, N + 1)
        v = c[nw + N * (N + 1):].reshape(N + 1, N)
        ce = np.cos(e * np.pi / 2)
        ux = (e[1:] * np.pi * ce[1:]) @ u @ ce
        vy = ce @ v @ (e[1:] * np.pi / b * ce[1:])
        # stresses over E t^2/a^2
        f = 1 / (1 - nu**2)
        print(f"held 1 x {b} p {p} N {N}: w/t {w0:.6f} membrane {f * (ux + nu * vy):.5f} {f * (vy + nu * ux):.5f}"
              f" bending {0.5 * f * (wxx + nu * wyy):.5f} {0.5 * f * (wyy + nu * wxx):.5f}")

    for N in (4, 6):
        run(1.0, 50.0, 0.3, N)
        run(2.0, 50.0, 0.3, N)


PARTS = {
    "supported": lambda: [supported(b) for b in ("1", "1.5", "2", "5")],
    "reactions": lambda: [navier_reactions(b) for b in (1.0, 2.0, 0.5)],
    "clamped": clamped_uniform,
    "patches": patches,
    "frequency": clamped_frequency,
    "buckling": clamped_buckling,
    "gradient": gradient,
    "circles": circles,
    "rings": rings,
    "large": large_deflection,
}

if __name__ == "__main__":
    for part in sys.argv[1:] or PARTS:
        print(f"# {part}")
        PARTS[part]()
