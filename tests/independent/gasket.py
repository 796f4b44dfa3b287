"""Independent derivations for tests/cases/gasket.toml. Needs numpy, scipy and mpmath; run it to print the numbers."""

import itertools

import numpy as np
from scipy import integrate, interpolate


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
