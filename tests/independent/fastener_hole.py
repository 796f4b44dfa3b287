"""Independent figures for the stress at a hole.

membrane: fundamental solutions fitted to the edges of a strip with a hole by least squares (Howland's problem).
bending: shear-deformable plate theory (Reissner's hole), a 3 x 3 system for the cos 2 theta part.
pin, ring: Fourier series of the pressure on the hole of an infinite plate, summed numerically (Michell).
"""
import numpy as np
from scipy.integrate import quad
from scipy.special import kn, kvp


def strip_concentration(x):
    """Gross concentration for a hole of radius 1 in a strip of width 2/x, by fundamental solutions (plane stress).

    Kelvin's point forces stand outside the strip and inside the hole; least squares fits the tractions of all edges.
    """
    nu, half = 0.3, 1.0 / x
    length = 3.0 * half + 3.0

    def kelvin(px, py, sx, sy):
        """Stress (xx, yy, xy) at p for unit forces at s along x and along y, plane stress."""
        dx, dy = px[:, None] - sx[None, :], py[:, None] - sy[None, :]
        r2 = dx**2 + dy**2
        a, b = (1 - nu) / (4 * np.pi), (1 + nu) / (2 * np.pi)
        fx = (-dx / r2 * (a + b * dx * dx / r2), dx / r2 * (a - b * dy * dy / r2), -dy / r2 * (a + b * dx * dx / r2))
        fy = (dy / r2 * (a - b * dx * dx / r2), -dy / r2 * (a + b * dy * dy / r2), -dx / r2 * (a + b * dy * dy / r2))
        return fx, fy

    def edge(n, x0, y0, x1, y1, out):
        s = (np.arange(n) + 0.5) / n
        px, py = x0 + (x1 - x0) * s, y0 + (y1 - y0) * s
        return px, py, np.full(n, out[0]), np.full(n, out[1])

    n = 400
    th = (np.arange(n) + 0.5) * 2 * np.pi / n
    hole = (np.cos(th), np.sin(th), -np.cos(th), -np.sin(th))
    ne, nl = 160, 360
    parts = [hole, edge(nl, -length, half, length, half, (0, 1)), edge(nl, -length, -half, length, -half, (0, -1)),
             edge(ne, length, -half, length, half, (1, 0)), edge(ne, -length, -half, -length, half, (-1, 0))]
    px, py, nx, ny = (np.concatenate(p) for p in zip(*parts))
    tx = np.where(np.abs(nx) == 1.0, nx, 0.0)
    tx[:n] = 0.0
    ms = 90
    ths = (np.arange(ms) + 0.5) * 2 * np.pi / ms
    gap = 0.35 * (half - 1.0) + 0.15
    sx, sy = [0.75 * np.cos(ths)], [0.75 * np.sin(ths)]
    w, l = half + gap, length + gap
    for k, (a, b) in enumerate([((-l, w), (l, w)), ((-l, -w), (l, -w)), ((l, -w), (l, w)), ((-l, -w), (-l, w))]):
        m = 120 if k < 2 else 50
        s = (np.arange(m) + 0.5) / m
        sx.append(a[0] + (b[0] - a[0]) * s)
        sy.append(a[1] + (b[1] - a[1]) * s)
    sx, sy = np.concatenate(sx), np.concatenate(sy)
    fx, fy = kelvin(px, py, sx, sy)
    rows = []
    for f in (fx, fy):
        rows.append(np.vstack([f[0] * nx[:, None] + f[2] * ny[:, None], f[2] * nx[:, None] + f[1] * ny[:, None]]))
    a = np.hstack(rows)
    q, *_ = np.linalg.lstsq(a, np.concatenate([tx, np.zeros_like(tx)]), rcond=1e-13)
    resid = np.abs(a @ q - np.concatenate([tx, np.zeros_like(tx)])).max()
    fx, fy = kelvin(np.array([0.0]), np.array([1.0]), sx, sy)
    return (fx[0] @ q[: len(sx)] + fy[0] @ q[len(sx):]).item(), resid


def bending(d_over_t, nu):
    """Hoop moment at the hole, 90 deg from the bending, for unit bending moment Mx far away."""
    a, h = 1.0, 2.0 / d_over_t
    D, kgh = 1.0, None
    c = h * h / (5 * (1 - nu))  # D / (kappa G h)
    kgh = D / c
    mu = np.sqrt(10.0) / h
    # cos 2 theta part: w = A r^-2 + B, H = C K2(mu r) sin 2 theta; far field w = w2 r^2.
    # far field Mx = 1: w0 = -(x^2 - nu y^2)/(2 D (1 - nu^2)) = r^2 [-(1-nu)/4 - (1+nu)/4 cos 2t]/(D (1-nu^2))
    w2 = -(1 + nu) / (4 * D * (1 - nu**2))

    def parts(f, df, d2f, g, dg, d2g, q):
        """Moments of Phi = f cos 2t (phi = -grad Phi) and curl of H = g sin 2t; q = Qr amplitude of cos 2t."""
        r = a
        # phi_r = -f' cos + (1/r) 2 g cos ; phi_t = (2/r) f sin - g' sin
        pr, dpr = -df + 2 * g / r, -d2f + 2 * dg / r - 2 * g / r**2
        pt, dpt = 2 * f / r - dg, 2 * df / r - 2 * f / r**2 - d2g
        mrr = D * (dpr + nu * (pr + 2 * pt) / r)
        mtt = D * ((pr + 2 * pt) / r + nu * dpr)
        mrt = D * (1 - nu) / 2 * (dpt - 2 * pr / r - pt / r)
        return mrr, mtt, mrt, q

    r = a
    # A: w = r^-2, lap = 0 -> Phi = r^-2
    A = parts(r**-2, -2 * r**-3, 6 * r**-4, 0, 0, 0, 0.0)
    # B: w = 1, lap(cos 2t) = -4/r^2 -> Phi = 1 - 4 c / r^2 ; Q = -D grad lap = -D (8/r^3)
    B = parts(1 - 4 * c / r**2, 8 * c / r**3, -24 * c / r**4, 0, 0, 0, -D * 8 / r**3)
    # C: H = K2(mu r); Q_r = kgh (1/r) dH/dt = kgh 2 K2/r
    C = parts(0, 0, 0, kn(2, mu * r), mu * kvp(2, mu * r, 1), mu**2 * kvp(2, mu * r, 2), kgh * 2 * kn(2, mu * r) / r)
    F = parts(w2 * r**2, 2 * w2 * r, 2 * w2, 0, 0, 0, 0.0)
    m = np.array([[A[i], B[i], C[i]] for i in (0, 2, 3)])
    s = np.linalg.solve(m, -np.array([F[i] for i in (0, 2, 3)]))
    m2 = A[1] * s[0] + B[1] * s[1] + C[1] * s[2] + F[1]
    # axisymmetric part of Mx = 1: equal biaxial 1/2, doubled at the hole
    return 1.0 - m2  # cos 2t = -1 at 90 deg


def pin(pressure, nu, degrees):
    """Hoop stress at an angle on the hole, per unit p0, for a pressure even in theta: Michell's terms summed."""
    a0 = quad(pressure, 0, np.pi, limit=400)[0] / np.pi
    th = np.radians(degrees)
    a1 = 2 / np.pi * quad(lambda t: pressure(t) * np.cos(t), 0, np.pi, limit=400)[0]
    s = a0 + a1 * (1 - nu) / 2 * np.cos(th)
    for n in range(2, 400):
        an = 2 / np.pi * quad(lambda t: pressure(t) * np.cos(n * t), 0, np.pi / 2, limit=400)[0]
        s -= an * np.cos(n * th)
    return s


if __name__ == "__main__":
    for x in (0.1, 0.2, 0.3, 0.4, 0.5):
        k, resid = strip_concentration(x)
        net = 3 - 3.13 * x + 3.66 * x**2 - 1.53 * x**3
        print(f"strip d/W {x}: gross {k:.4f} (residual {resid:.1e}), polynomial {net / (1 - x):.4f}")
    for s in (0.1, 0.5, 1.0, 2.0, 3.0, 5.0, 10.0, 100.0):
        roark = 1.79 + 0.25 / (0.39 + s) + 0.81 / (1 + s**2) - 0.26 / (1 + s**3)
        print(f"bending d/t {s}: Reissner {bending(s, 0.3):.4f}, closed form {roark:.4f}")
    print("thin limit (5+3nu)/(3+nu)", (5 + 0.9) / 3.3)
    cosine = lambda t: np.cos(t) if t < np.pi / 2 else 0.0
    print("cosine pin, peak per F/(d t):", pin(cosine, 0.37, 90.0) * 4 / np.pi, 8 / np.pi**2)
    width = 0.02  # a narrow contact stands for a line
    line = lambda t: 1.0 if t < width else 0.0
    total = 2 * np.sin(width) / 2  # F = p0 t r * 2 sin(width), d = 2 r
    a0 = width / np.pi
    print("line pin, peak per F/(d t):", (2 * a0 + 2 / np.pi * np.sin(width) * (1.5 - 0.37 / 2) * np.cos(2 * width)) / total,
          (5 - 0.37) / np.pi)
