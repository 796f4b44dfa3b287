"""Independent derivations for tests/cases/thermal.toml. Needs numpy, scipy and mpmath; run it to print the numbers."""


import itertools

import numpy as np
from scipy import integrate, linalg, optimize


def show(name, **values):
    print(name + ":", ", ".join(f"{key} = {value:.9g}" for key, value in values.items()))


# --- layer growth: step the temperature in small pieces and add up the lengths --------------------------------
def grown(length, alpha, start, end, moisture):
    steps = np.linspace(start, end, 2001)
    total = length
    for low, high in zip(steps, steps[1:]):
        total += length * alpha * (high - low)
    return total + length * moisture


length = grown(0.320, 80e-6, 20.0, 55.0, 0.0175)
show("printed nylon frame, 20 to 55 C, dry to 1.75 % moisture strain", change=length - 0.320)

# --- moisture strain: numpy's own interpolation ------------------------------------------------------------------
show("moisture strain at 90 %", strain=float(np.interp(0.90, [0.0, 0.50, 0.60, 0.95], [0.0, 0.0069, 0.00875, 0.02075])))


# --- hole movement: complex plane, brute force over the tolerance discs -----------------------------------------------
def furthest(x, y, e1, e2, t1, t2, direction=None):
    """Largest offset between hole and fastener over all errors of both; along a direction if one is given."""
    place = complex(x, y)
    offset = place * (1 + e1) - place * (1 + e2)
    turns = np.exp(1j * np.linspace(0, 2 * np.pi, 3601))
    worst = 0.0
    for a in turns[::10]:
        ends = offset + t1 * a + t2 * turns
        if direction is not None:
            ends = (ends * np.exp(-1j * direction)).real
        worst = max(worst, float(np.max(np.abs(ends))))
    return offset, worst


e1, e2 = 65e-6 * 35 + 0.0002, 23.6e-6 * 20
offset, worst = furthest(0.138, 0.098, e1, e2, 0.15e-3, 0.1e-3)
show("oversize hole, worst case", u=offset.real, v=offset.imag, s=abs(offset), smallest=6e-3 + 2 * worst, left=1e-3 - worst)
direction = np.radians(30.0)
offset, worst = furthest(0.138, 0.098, e1, e2, 0.15e-3, 0.1e-3, direction)
turned = offset * np.exp(-1j * direction)
show("slot at 30 deg, worst case", along=turned.real, across=turned.imag, length=6e-3 + 2 * worst, width=6e-3 + 2 * abs(turned.imag))
# root-sum-square: standard deviation of a sum of two independent errors with half bands as one deviation each
rng = np.random.default_rng(1)
spread = np.std(rng.normal(0, 0.15, 4_000_000) + rng.normal(0, 0.10, 4_000_000))
show("root-sum-square of 0.15 and 0.10, by sampling (mm)", t=spread)

# --- does it float --------------------------------------------------------------------------------------------------
# restrained growth: a bar and a square plate as linear springs, plane stress by inverting Hooke's law
E, nu, eps = 2400.0, 0.37, 65e-6 * 30
hooke = np.array([[1, -nu], [-nu, 1]]) / E  # strain from stress
both = np.linalg.solve(hooke, [-eps, -eps])
show("plate held both ways (MPa)", x=both[0], y=both[1])
held = eps - 0.1 / 276.0
both = np.linalg.solve(hooke, [-held, -held])
show("the same after 0.1 mm of clearance over 276 mm", stress=both[0], force_N=-both[0] * 196 * 3, bearing=-both[0] * 196 / 4 / 4)
show("bar of 69.6 GPa, 23.6e-6, 50 K (MPa)", stress=-69.6e3 * 23.6e-6 * 50)


def rise(alpha, other, length, clearance, strain):
    """Warm both in small steps until the gap is shut and the pressed strain reaches the critical one."""
    contact = None
    step = 1e-3
    for i in range(1, 400_000):
        dT = i * step
        overlap = abs(alpha - other) * dT - clearance / length
        if contact is None and overlap >= 0:
            contact = dT
        if overlap >= strain:
            return contact, dT


show("critical rise, to 1 mK", **dict(zip(("contact", "critical"), rise(65e-6, 23.6e-6, 0.276, 0.5e-3, 2e-4))))

# shoulder bush: all corners
bush = [
    (5.2 + a * 0.05) * (1 + eb) - (5.0 + b * 0.1) * (1 + el)
    for a, b in itertools.product((-1, 1), repeat=2)
    for eb, el in ((12e-6 * 35, 70e-6 * 35 + 0.0005), (-12e-6 * 35, -70e-6 * 35))
]
show("shoulder bush, steel in plastic, -15 to 55 C (mm)", least=min(bush), greatest=max(bush))


# --- bonded layers that bow: least energy over (strain, curvature), integrated by quadrature -------------------------------
def bow(layers):
    """layers: (thickness, modulus, growth) from the inner face; returns curvature and stresses at both faces of each."""
    edges = np.concatenate([[0], np.cumsum([t for t, _, _ in layers])])

    def energy(q):
        total = 0.0
        for (t, E, g), low in zip(layers, edges):
            z, w = np.polynomial.legendre.leggauss(4)
            z = low + 0.5 * t * (z + 1)
            total += 0.25 * t * E * np.sum(w * (q[0] + q[1] * z - g) ** 2)
        return total

    # the energy is quadratic: its Hessian and gradient by exact differences
    e0 = energy([0, 0])
    ex, ek = energy([1, 0]), energy([0, 1])
    mx, mk = energy([-1, 0]), energy([0, -1])
    H = np.array([[ex + mx - 2 * e0, 0], [0, ek + mk - 2 * e0]])
    H[0, 1] = H[1, 0] = energy([1, 1]) - ex - ek + e0
    b = np.array([(ex - mx) / 2, (ek - mk) / 2])
    strain, curvature = np.linalg.solve(H, -b)
    stresses = [
        (E * (strain + curvature * low - g), E * (strain + curvature * (low + t) - g))
        for (t, E, g), low in zip(layers, edges)
    ]
    return curvature, strain, stresses


k, _, s = bow([(1.0, 137e3, 2e-3), (1.0, 130e3, 1.2e-4)])
show("copper inside, invar outside, 100 K (1/mm, MPa)", curvature=k, i0=s[0][0], i1=s[0][1], o0=s[1][0], o1=s[1][1])
k, _, s = bow([(3.0, 2400 / (1 - 0.37), 65e-6 * 10), (1.6, 70e3 / (1 - 0.33), 23e-6 * 30)])
show("pane and sheet as a plate", curvature=k, middle=k * 500**2 / 8, i0=s[0][0], i1=s[0][1], o0=s[1][0], o1=s[1][1])
k, e, s = bow([(0.8, 70e3, 4e-4), (2.0, 1200.0, 2e-3), (0.2, 200e3, 0.0), (1.0, 3e3, 3e-3)])
show("four layers", curvature=k, face=e, **{f"s{i}{j}": s[i][j] for i in range(4) for j in (0, 1)})


# --- bonds: two bars joined by a layer of shear springs, by finite differences with Richardson extrapolation ------------
def extrapolated(f, n):
    """f(n) has an error of order 1/n²."""
    return (4 * f(2 * n) - f(n)) / 3


def joint(E1, t1, g1, E2, t2, g2, G, eta, length, load, n):
    """End shear stresses (left, right) and the force in bar 1 at mid-length, for each width. The load pulls bar 1 at the left and bar 2
    at the right. Unknown: force N1 in bar 1; N1'' = beta² N1 - (G/eta)(load/(E2 t2) + g2 - g1), tau = N1'."""
    h = length / n
    beta2 = G / eta * (1 / (E1 * t1) + 1 / (E2 * t2))
    right = -G / eta * (load / (E2 * t2) + g2 - g1)
    # N1(0) = load, N1(L) = 0
    ab = np.zeros((3, n - 1))
    ab[0, 1:] = ab[2, :-1] = 1 / h**2
    ab[1] = -2 / h**2 - beta2
    rhs = np.full(n - 1, right)
    rhs[0] -= load / h**2
    N1 = np.concatenate([[load], linalg.solve_banded((1, 1), ab, rhs), [0.0]])
    slope = lambda a, b, c: (-3 * a + 4 * b - c) / (2 * h)
    return np.array([slope(*N1[:3]), -slope(*N1[-1:-4:-1]), N1[n // 2]])


r = extrapolated(lambda n: joint(3200, 3, 70e-6 * 40, 69e3, 2, 23e-6 * 40, 1.0, 2.0, 100, 0, n), 4000)
show("sealant joint of T011 (MPa)", tau=abs(r[0]), gamma=abs(r[0]) / 1.0, N=abs(r[2]))
r = extrapolated(lambda n: joint(60e3, 1.0, 2e-6 * 55, 70e3, 2.5, 23.6e-6 * 55, 1000, 0.15, 480, 0, n), 40000)
show("rigid epoxy on a stiffening strip (MPa)", tau=abs(r[0]), gamma=abs(r[0]) / 1000, N=abs(r[2]))
r = extrapolated(lambda n: joint(70e3, 2, 0, 70e3, 2, 0, 700, 0.25, 25, 200, n), 8000)
show("lap A001 (MPa)", left=abs(r[0]), right=abs(r[1]), ratio=abs(r[0]) / (200 / 25))
r = extrapolated(lambda n: joint(70e3, 1.0, 0, 10e3, 3.0, 0, 1000, 0.2, 12.5, 400, n), 8000)
show("unlike lap (MPa)", left=abs(r[0]), right=abs(r[1]), mean=400 / 12.5)


def needed(E1, t1, E2, t2, G, length, difference, allowed):
    strain = lambda eta: abs(extrapolated(lambda n: joint(E1, t1, difference, E2, t2, 0, G, eta, length, 0, n)[0], 4000)) / G
    return optimize.brentq(lambda eta: strain(eta) - allowed, 0.05, 5.0, xtol=1e-10)


show("flexible bond line (mm)", soft=needed(60e3, 1.0, 70e3, 2.5, 0.5, 240, 21.6e-6 * 55, 0.14256),
     firm=needed(3200, 3.0, 69e3, 2.0, 5.0, 300, 47e-6 * 40, 0.2))


def peel(E1, t1, E2, t2, Ep, G, eta, length, difference):
    """Deflections of both layers as free beams, coupled by peel springs and loaded by the shear on their joint faces."""
    half = length / 2
    beta = np.sqrt(G / eta * (1 / (E1 * t1) + 1 / (E2 * t2)))
    D1, D2 = E1 * t1**3 / 12, E2 * t2**3 / 12
    # difference = growth of 2 less growth of 1. If it is positive, layer 1 (above) wants to be the shorter one and the bond pulls
    # its lower face outward: traction +tau at the right end.
    tau = lambda x: difference * G / (beta * eta) * np.sinh(beta * x) / np.cosh(beta * half)
    # Equilibrium of stresses, sigma,x + tau,z = 0 times z, over the thickness, with M = D w'' (w up): M' = Q - tau t/2 in
    # both layers (traction +tau below layer 1, -tau above layer 2), Q1' = -p, Q2' = +p with p the tension in the bond.
    # y = w1, w1', M1, Q1, w2, w2', M2, Q2
    def f(x, y):
        w1, s1, M1, Q1, w2, s2, M2, Q2 = y
        p = Ep / eta * (w1 - w2)  # tension in the bond pulls layer 1 down, layer 2 up
        return np.vstack([s1, M1 / D1, Q1 - 0.5 * t1 * tau(x), -p, s2, M2 / D2, Q2 - 0.5 * t2 * tau(x), p])

    def ends(a, b):  # middle: symmetric, layer 2 pinned; end: free
        return np.array([a[1], a[3], a[5], a[4], b[2], b[3], b[6], b[7]])

    x = half - half * np.geomspace(1, 1e-4, 800)
    x = np.concatenate([x, [half]])
    solution = integrate.solve_bvp(f, ends, x, np.zeros((8, x.size)), tol=1e-9, max_nodes=400_000)
    assert solution.success, solution.message
    return Ep / eta * (solution.y[0, -1] - solution.y[4, -1])


show("peel, thin strip on thick plate, strip shrinks (MPa)", end=peel(60e3, 1.0, 70e3, 2.5, 2500, 1000, 0.15, 60, 21.6e-6 * 55))
show("peel, the same while it grows", end=peel(60e3, 1.0, 70e3, 2.5, 2500, 1000, 0.15, 60, -21.6e-6 * 55))
show("peel of two like layers", end=peel(70e3, 2.0, 70e3, 2.0, 2500, 1000, 0.15, 60, 1e-3))


# --- temperatures: nodal network solved as a linear system -------------------------------------------------------------
def network(tin, tout, hi, ho, sun, radiant, layers):
    n = len(layers) + 1
    K, q = np.zeros((n, n)), np.zeros(n)
    for i, (t, k) in enumerate(layers):
        K[i : i + 2, i : i + 2] += k / t * np.array([[1, -1], [-1, 1]])
    K[0, 0] += hi
    q[0] += hi * tin + radiant
    K[-1, -1] += ho
    q[-1] += ho * tout + sun
    return np.linalg.solve(K, q)


show("dark sheet in the sun", **{f"T{i}": v for i, v in enumerate(network(55, 40, 6, 15, 810, 0, [(1.6e-3, 138)]))})
stack = [(6e-3, 0.036), (5e-3, 0.20), (2.5e-3, 138)]
T = network(40, 5, 6, 15, 0, 0, stack)
show("liner, pane, sheet; cold night", **{f"T{i}": v for i, v in enumerate(T)}, flux=6 * (40 - T[0]))
T = network(55, 30, 6, 15, 300, 120, stack)
show("liner, pane, sheet; sun and radiant source", **{f"T{i}": v for i, v in enumerate(T)}, flux=6 * (55 - T[0]) + 120)


# --- strip pressed on its bond line: energies on Hermite beam elements, eigenvalues ------------------------------------
def strip_buckles(length, youngs, thickness, stiffness, free, elements=400):
    """Smallest end force for each width; ends hinged, or free with the force staying along the strip's first line."""
    h, d = length / elements, youngs * thickness**3 / 12
    bend = d / h**3 * np.array([[12, 6 * h, -12, 6 * h], [6 * h, 4 * h**2, -6 * h, 2 * h**2], [-12, -6 * h, 12, -6 * h], [6 * h, 2 * h**2, -6 * h, 4 * h**2]])
    bed = stiffness * h / 420 * np.array([[156, 22 * h, 54, -13 * h], [22 * h, 4 * h**2, 13 * h, -3 * h**2], [54, 13 * h, 156, -22 * h], [-13 * h, -3 * h**2, -22 * h, 4 * h**2]])
    press = 1 / (30 * h) * np.array([[36, 3 * h, -36, 3 * h], [3 * h, 4 * h**2, -3 * h, -(h**2)], [-36, -3 * h, 36, -3 * h], [3 * h, -(h**2), -3 * h, 4 * h**2]])
    size = 2 * elements + 2
    stiff, relief = np.zeros((size, size)), np.zeros((size, size))
    for e in range(elements):
        part = slice(2 * e, 2 * e + 4)
        stiff[part, part] += bend + bed
        relief[part, part] += press
    kept = [i for i in range(size) if free or i not in (0, size - 2)]
    pairs = linalg.eigh(relief[np.ix_(kept, kept)], stiff[np.ix_(kept, kept)], eigvals_only=True)
    return 1 / pairs[-1]


for name, length, youngs, thickness, stiffness in (
    ("1 mm of laminate on 1 mm of flexible adhesive", 0.240, 60e9, 1e-3, 3e6 / 1e-3),
    ("the same, 45 mm long", 0.045, 60e9, 1e-3, 3e6 / 1e-3),
    ("0.5 mm of steel on 2 mm of foam tape", 0.100, 210e9, 0.5e-3, 0.9e6 / 2e-3),
):
    hinged = strip_buckles(length, youngs, thickness, stiffness, False)
    ends = strip_buckles(length, youngs, thickness, stiffness, True)
    show(f"strip on its bond line, {name} (N/m)", hinged=hinged, free=ends, formula=np.sqrt(stiffness * youngs * thickness**3 / 12))

# --- water vapour: W. Wagner and A. Pruss, J. Phys. Chem. Ref. Data 22 (1993) 783-787, saturation pressure of water ----
def wagner_pruss(celsius):
    T = celsius + 273.15
    v = 1 - T / 647.096
    a = (-7.85951783, 1.84408259, -11.7866497, 22.6807411, -15.9618719, 1.80122502)
    e = (1, 1.5, 3, 3.5, 4, 7.5)
    return 22.064e6 * np.exp(647.096 / T * sum(c * v**p for c, p in zip(a, e)))


for t in (5.0, 20.0, 40.0, 55.0, 80.0):
    show(f"saturation pressure at {t} C (Pa)", e=wagner_pruss(t))
for t, rh in ((40.0, 0.90), (20.0, 0.50), (55.0, 0.90)):
    target = rh * wagner_pruss(t)
    show(f"dew point of {t} C at {rh}", e=target, td=optimize.brentq(lambda x: wagner_pruss(x) - target, -20 if rh < 0.3 else 0.1, 60))


def bay(t1, rh1, t2, rh2, p0=101325.0):
    """Moles of dry gas kept, vapour as given."""
    volume, R = 0.1, 8.314462618
    moles = (p0 - rh1 * wagner_pruss(t1)) * volume / (R * (t1 + 273.15))
    dry = moles * R * (t2 + 273.15) / volume - (p0 - rh1 * wagner_pruss(t1))
    vapour = rh2 * wagner_pruss(t2) - rh1 * wagner_pruss(t1)
    return dict(dry=dry, vapour=vapour, rise=dry + vapour)


show("closed bay, 25 C dry to 55 C dry", **bay(25, 0, 55, 0))
show("closed bay, 25 C 50 % to 55 C saturated", **bay(25, 0.5, 55, 1.0))
show("closed bay, 40 C 80 % to 5 C saturated", **bay(40, 0.8, 5, 1.0))


# --- lapped pane: arc of a parabola by quadrature; its length is the flat pane's ----------------------------------------
def drawn_in(span_flat, bow):
    """The pane's points keep their distance along the arc: find the chord whose arc is as long as the flat span."""
    arc = lambda chord: 2 * integrate.quad(lambda x: np.sqrt(1 + (8 * bow * x / chord**2) ** 2), 0, chord / 2, epsabs=1e-13)[0]
    return (span_flat - optimize.brentq(lambda chord: arc(chord) - span_flat, 0.8 * span_flat, span_flat)) / 2


for bow in (4.0, 10.4):
    show(f"edge drawn in by a bow of {bow} on 260 (mm)", s=drawn_in(260.0, bow))
