"""Independent derivations for tests/cases/gasket.toml. Needs numpy, scipy and mpmath; run it to print the numbers."""

import itertools

import numpy as np
from mpmath import mp
from scipy import integrate, interpolate, optimize


def show(name, **values):
    print(name + ":", ", ".join(f"{key} = {value:.9g}" for key, value in values.items()))


PSI = 4.4482216152605 / 0.0254**2


# --- sponge by its grade: press air in closed cells at constant temperature, scale through 25 % ----------------------
def gas(compression, atmosphere=101325.0):
    """Pressure rise of a gas whose volume shrinks with the free height alone (Boyle)."""
    return atmosphere / (1.0 - compression) - atmosphere


def grade(low, high, compression, width, height):
    shape = gas(compression) / gas(0.25)
    h = 1e-6
    slope = (gas(compression + h) - gas(compression - h)) / (2 * h) / gas(0.25)
    rows = {}
    for name, p25 in (("min", low), ("mid", 0.5 * (low + high)), ("max", high)):
        rows[f"p_{name}"] = p25 * shape
        rows[f"q_{name}"] = p25 * shape * width
        rows[f"k_{name}"] = p25 * slope * width / height
    return {"shape": shape} | rows


show("grade 1, kPa, 30 %, 12 x 10", **grade(15e3, 35e3, 0.30, 0.012, 0.010))
show("grade 2, psi, 40 %, 15 x 10", **grade(5 * PSI, 9 * PSI, 0.40, 0.015, 0.010))
show("class D grade 3, psi, 25 %", **grade(9 * PSI, 15 * PSI, 0.25, 0.010, 0.010))
show("measured 24 kPa, 30 %, 12 x 10", **grade(24e3, 24e3, 0.30, 0.012, 0.010))

# --- sponge by measured points: scipy's PchipInterpolator, its derivative and its antiderivative -------------------
for name, c, p, at in (
    ("four points", [0, 0.10, 0.25, 0.50], [0, 8e3, 24e3, 80e3], (0.05, 0.10, 0.30, 0.50)),
    ("plateau", [0, 0.05, 0.20, 0.30, 0.45, 0.60], [0, 12e3, 20e3, 20e3, 26e3, 70e3], (0.01, 0.25, 0.40, 0.60)),
    ("end slope turned to zero", [0, 0.30, 0.40], [0, 1e3, 40e3], (0.05, 0.35)),
    ("two points", [0, 0.4], [0, 40e3], (0.1,)),
):
    curve = interpolate.PchipInterpolator(c, p)
    for x in at:
        energy = integrate.quad(curve, 0, x, epsabs=1e-9, points=[v for v in c if 0 < v < x] or None, limit=200)[0]
        show(
            f"{name} at {x}",
            p=float(curve(x)),
            slope=float(curve.derivative()(x)),
            q=float(curve(x)) * 0.012,
            k=float(curve.derivative()(x)) * 0.012 / 0.010,
            U=energy * 0.012 * 0.010,
        )


# --- gap: all corners of the tolerance box, and the gradient by differences ---------------------------------------------
def gap(height, tolerance, closed, bands, factor):
    def state(v):
        h = closed + sum(v[1:])
        free = height + v[0]
        return free - h, 1 - h / free

    bands = [tolerance, *bands]
    corners = [state(np.array(s) * bands) for s in itertools.product((-1, 1), repeat=len(bands))]
    lengths, ratios = zip(*corners)
    step = 1e-7
    gradient = []
    for i in range(len(bands)):
        v = np.zeros(len(bands))
        v[i] = step
        up, down = state(v), state(-v)
        gradient.append([(up[k] - down[k]) / (2 * step) for k in (0, 1)])
    likely = factor * np.sqrt(np.sum((np.array(gradient) * np.array(bands)[:, None]) ** 2, axis=0))
    middle = state(np.zeros(len(bands)))
    return dict(
        length=middle[0], ratio=middle[1],
        worst_length_min=min(lengths), worst_length_max=max(lengths), worst_ratio_min=min(ratios), worst_ratio_max=max(ratios),
        rss_length_min=middle[0] - likely[0], rss_length_max=middle[0] + likely[0],
        rss_ratio_min=middle[1] - likely[1], rss_ratio_max=middle[1] + likely[1],
    )


show("stops 7.0, settlement 0.1, coating 0.08", **gap(10e-3, 0.5e-3, 6.98e-3, [0.5e-3, 0.2e-3, 0.02e-3, 0.3e-3], 1.3))
show("latch travel, open gap", **gap(10e-3, 1.0e-3, 9.0e-3, [1.0e-3, 1.5e-3], 1.0))


# --- solid rubber under bonded faces: pressure of an incompressible layer squeezed between plates, by quadrature ----------------------
def strip_modulus(E, w, t):
    """Plane strain. Squeezing by c draws the rubber out with a parabolic profile over the thickness; the pressure gradient that
    drives it is p' = -12 G c x / t²; p = 0 at the free edges. Added to it the even part 4 G c."""
    G = E / 3
    gradient = lambda x: -12 * G * x / t**2
    pressure = lambda x: -integrate.quad(gradient, x, w / 2)[0]
    mean = integrate.quad(pressure, -w / 2, w / 2)[0] / w
    return mean + 4 * G


def square_modulus(E, a, t):
    """Square block, side a: laplace p = -12 G c / t², p = 0 at the edges (double sine series), plus the even part E c."""
    G = E / 3
    total = 0.0
    for m in range(1, 400, 2):
        for n in range(1, 400, 2):
            total += 1 / (m**2 * n**2 * (m**2 + n**2))
    mean = 12 * G / t**2 * 64 * a**2 / np.pi**6 * total
    return mean + E


show("bonded strip 12 x 3, E = 3 (MPa)", Ea=strip_modulus(3.0, 12.0, 3.0))
show("bonded strip 15 x 5, E = 2.2 (MPa)", Ea=strip_modulus(2.2, 15.0, 5.0), q=0.08 * 15 * strip_modulus(2.2, 15.0, 5.0))
show("bonded square block 50 x 50 x 10, E = 2 (MPa); Gent and Lindley's 1 + 2 S² is a fit to it", Ea=square_modulus(2.0, 50.0, 10.0))


# --- cord in a groove: corners of the tolerances; volume of a stretched cord kept -------------------------------------
def cord(d, td, s, g, tg, b, tb, gap):
    rows = []
    for x, y, z in itertools.product((-1, 0, 1), repeat=3):
        D, G, B = d + x * td, g + y * tg + gap, b + z * tb
        thin = optimize.brentq(lambda v: v**2 * (1 + s) - D**2, 0.1 * D, 2 * D, xtol=1e-14)
        rows.append((1 - G / thin, np.pi * thin**2 / 4 / (G * B), (x, y, z)))
    middle = [r for r in rows if r[2] == (0, 0, 0)][0]
    return dict(squeeze=middle[0], least=min(r[0] for r in rows), greatest=max(r[0] for r in rows), fill=middle[1], fill_max=max(r[1] for r in rows))


show("cord 5.33, 3 % stretched", **cord(5.33, 0.13, 0.03, 4.2, 0.05, 6.4, 0.1, 0.1))


# --- spacing: superposition of single loads on an infinite beam, F beta / (2 k) exp(-z)(cos z + sin z), mpmath -----------
def row(lam, terms=400):
    lam = mp.mpf(lam)
    line = lambda z: mp.exp(-z) * (mp.cos(z) + mp.sin(z))
    latch = line(0) + 2 * mp.nsum(lambda n: line(n * lam), [1, terms], method="direct")
    between = 2 * mp.nsum(lambda n: line((n - mp.mpf(1) / 2) * lam), [1, terms], method="direct")
    return between / latch, latch * lam / 2  # ratio, compression at latch over the mean F/(k s)


for lam in (0.5, 1, 2, 3, 4, 5):
    r, top = row(lam)
    show(f"spacing at lambda {lam}", ratio=float(r), at_latch=float(top))
show("lift-off at", lam=float(optimize.brentq(lambda x: float(row(x)[0]), 4.5, 5.0, xtol=1e-12)))
show("ratio 0.9 at", lam=optimize.brentq(lambda x: float(row(x)[0]) - 0.9, 1.0, 3.0, xtol=1e-12))
EI, k, s = 70e9 * 900e-12, 0.15e6, 0.35
beta = (k / 4 / EI) ** 0.25
r, top = row(beta * s)
lam = optimize.brentq(lambda x: float(row(x)[0]) - 0.95, 0.5, 3.0, xtol=1e-12)
show("edge 900 mm4 aluminium, 0.15 N/mm2, 350 mm", beta=beta, lam=beta * s, ratio=float(r), at_latch=3e-3 * float(top), between=3e-3 * float(top * r),
     pitch=lam / beta, I=k * s**4 / (4 * lam**4) / 70e9 * 1e12, k=4 * EI * (lam / s) ** 4)

# --- strip: length of the path walked in small steps ----------------------------------------------------------------------
def walked(a, b, r, n=200_000):
    """Centre line of a rounded rectangle as the offset of the inner rectangle, walked as a polygon."""
    t = np.linspace(0, 2 * np.pi, n + 1)
    c = np.array([a / 2 - r, b / 2 - r])[:, None]
    direction = np.array([np.cos(t), np.sin(t)])
    points = c * np.sign(np.round(direction, 12)) + r * direction
    steps = np.diff(points, axis=1)
    return float(np.sum(np.hypot(*steps)))


show("path 540 x 400, radius 40 (mm)", L=walked(540.0, 400.0, 40.0))

# --- compressible foam: the energy itself, the side stretch found by its minimum, pressure by differentiation (mpmath) ----------------------
def foam(terms, nu, compression, strip):
    mp.dps = 40
    nu = mp.mpf(nu)
    beta = nu / (1 - 2 * nu)

    def energy(l1, l2):
        l3 = 1 if strip else l2
        J = l1 * l2 * l3
        total = mp.mpf(0)
        for mu, a in terms:
            volume = -a * mp.log(J) if beta == 0 else (J ** (-a * beta) - 1) / beta
            total += 2 * mp.mpf(mu) / mp.mpf(a) ** 2 * (l1**a + l2**a + l3**a - 3 + volume)
        return total

    def side(l1):
        return mp.findroot(lambda l2: mp.diff(lambda x: energy(l1, x), l2), l1 ** (-nu / 2) if nu else mp.mpf(1))

    def pressure(c):
        return -mp.diff(lambda x: energy(x, side(x)), 1 - c)

    return float(pressure(mp.mpf(compression))), float(mp.diff(pressure, mp.mpf(compression), h=mp.mpf("1e-8"))), float(side(1 - mp.mpf(compression)))


for name, args in (
    ("one term, nu 0.1, strip 30 %", ([(18e3, 6.0)], 0.1, "0.3", True)),
    ("one term, nu 0.1, free 30 %", ([(18e3, 6.0)], 0.1, "0.3", False)),
    ("two terms, nu 0.25, strip 45 %", ([(12e3, 8.0), (5e3, -2.0)], 0.25, "0.45", True)),
):
    p, slope, l2 = foam(*args)
    show(name, p=p, slope=slope, q=p * 0.012, k=slope * 0.012 / 0.010, side=l2)

# --- hollow section: scipy's interpolator again ------------------------------------------------------------------------------
curve = interpolate.PchipInterpolator([0, 1e-3, 3e-3, 5e-3, 6e-3], [0, 300, 450, 520, 1200])
for x in (2e-3, 5.5e-3):
    show(f"hollow section at {x}", q=float(curve(x)), k=float(curve.derivative()(x)), U=float(curve.antiderivative()(x)))
