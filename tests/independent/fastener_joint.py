"""Independent figures for joints: cones by quadrature, preload by minimising strain energy with a prescribed misfit."""
from math import log, pi, sqrt

import numpy as np
from scipy.integrate import quad
from scipy.optimize import minimize_scalar


def slope(grip, dw, da, through):
    if through:
        return 0.362 + 0.032 * log(grip / dw / 2) + 0.153 * log(da / dw)
    return 0.348 + 0.013 * log(grip / dw) + 0.193 * log(da / dw)


def members(layers, dw, dh, da, through, creep=False):
    """layers: (thickness, modulus N/mm2, creep factor, bush (outer, inner, modulus) or None), stiffness in N/mm."""
    grip = sum(layer[0] for layer in layers)
    t = slope(grip, dw, da, through)

    def area(z):
        depth = min(z, grip - z) if through else z
        return pi / 4 * (min(dw + 2 * t * depth, da) ** 2 - dh**2)

    total, start = 0.0, 0.0
    for thickness, modulus, factor, bush in layers:
        if bush:
            total += thickness / (bush[2] * pi / 4 * (bush[0] ** 2 - bush[1] ** 2))
        else:
            kink = (da - dw) / 2 / t
            points = [p for p in (grip / 2, kink, grip - kink) if start < p < start + thickness]
            total += quad(lambda z: 1 / area(z), start, start + thickness, points=points or None, epsabs=1e-14, epsrel=1e-12)[0] / modulus * (factor if creep else 1)
        start += thickness
    return 1 / total, t


def bolt(d, p, shank, free, head, nut, e, em):
    d3 = d - 17 / 12 * p * sqrt(3) / 2
    pieces = [(head * d, d, e), (free, d3, e), (0.5 * d, d3, e), (nut * d, d, em)] + [(l, w, e) for l, w in shank]
    return 1 / sum(l / (m * pi / 4 * w**2) for l, w, m in pieces)


def settled(f0, ks, kp, kp2, fz, growth):
    """Force that makes the strain energy of both springs smallest for the misfit that tightening set and service changed."""
    misfit = f0 / ks + f0 / kp - fz + growth
    scale = misfit or 1.0
    # x: stretch of the screw; misfit - x: squeeze of the layers.
    best = minimize_scalar(lambda x: 0.5 * ks * x**2 + 0.5 * kp2 * (misfit - x) ** 2, bracket=(0, scale), tol=1e-14)
    return ks * best.x


if __name__ == "__main__":
    one = [(30.0, 205e3, 1.0, None)]
    print("steel block, through:", members(one, 11.63, 9.0, 17.445, True))
    print("steel block, tapped, wide:", members(one, 11.63, 9.0, 60.0, False))
    mixed = [(2.0, 70e3, 1.0, None), (5.0, 2.35e3, 2.5, None), (3.0, 70e3, 1.0, None)]
    print("aluminium, polycarbonate, aluminium:", members(mixed, 7.6, 4.5, 20.0, True), members(mixed, 7.6, 4.5, 20.0, True, True)[0])
    bushed = [(2.0, 70e3, 1.0, None), (5.0, 2.35e3, 2.5, (6.0, 4.3, 193e3)), (3.0, 70e3, 1.0, None)]
    print("the same with a bush:", members(bushed, 7.6, 4.5, 20.0, True)[0], members(bushed, 7.6, 4.5, 20.0, True, True)[0])
    print("M8 bolt:", bolt(8, 1.25, [(20, 8)], 10, 0.5, 0.4, 205e3, 205e3))
    print("M4 screw, tapped, socket:", bolt(4, 0.7, [], 7, 0.4, 0.33, 193e3, 100e3))
    print("residual, creep and all:", settled(1500.0, 60e3, 45e3, 22e3, 0.004, 0.003))
    # Bring a joint into service: two springs with a unilateral gap, solved by bisection on the opening.
    ks, kp, fv, fa = 60e3, 240e3, 4000.0, 3000.0
    squeeze0, stretch0 = fv / kp, fv / ks
    lo, hi = 0.0, 1.0
    for _ in range(200):
        mid = (lo + hi) / 2
        resultant = ks * (stretch0 + mid) - kp * max(squeeze0 - mid, 0.0)
        lo, hi = (mid, hi) if resultant < fa else (lo, mid)
    print("service:", ks * (stretch0 + lo), kp * max(squeeze0 - lo, 0.0))
    fa = 6000.0
    lo, hi = 0.0, 1.0
    for _ in range(200):
        mid = (lo + hi) / 2
        resultant = ks * (stretch0 + mid) - kp * max(squeeze0 - mid, 0.0)
        lo, hi = (mid, hi) if resultant < fa else (lo, mid)
    print("opened:", ks * (stretch0 + lo), kp * max(squeeze0 - lo, 0.0))
