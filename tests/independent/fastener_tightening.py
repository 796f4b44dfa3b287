"""Independent figures for tightening: the thread as a wedge in equilibrium, friction integrated over the seat.

The library takes the closed form tan(phi + rho) and the mean diameter of the seat. Here the torque in the thread comes
from solving the balance of normal force and friction on the flank, and the torque under the head from quadrature of
friction over a cone whose pressure makes the ring force constant along the radius (which is the mean-diameter rule).
The preload for a torque, or for a stress, is found by root finding.
"""
from math import pi, sqrt, cos, tan, radians

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq


def metric(d, p):
    h = p * cos(radians(30))
    d2, d3 = d - 2 * (3 / 8) * h, d - 2 * (17 / 24) * h
    d0 = (d2 + d3) / 2
    return d2, d0


def unified(d, p):
    h = p * cos(radians(30))
    return d - 2 * (3 / 8) * h, d - 2 * (9 / 16) * h


def thread_torque(force, d2, p, mu):
    """Flank normal N and tangent force H on the lead wedge: vertical and horizontal balance, solved as a linear system."""
    lead = np.arctan(p / (pi * d2))
    flank = cos(radians(30))
    # Unknown: effective normal force R of the wedge (the flank raises friction by 1/cos 30), driving force H.
    # R cos(lead) - mu/flank R sin(lead) = F ; H = R sin(lead) + mu/flank R cos(lead)
    m = mu / flank
    a = np.array([[np.cos(lead) - m * np.sin(lead), 0.0], [np.sin(lead) + m * np.cos(lead), -1.0]])
    _, h = np.linalg.solve(a, np.array([force, 0.0]))
    return h * d2 / 2


def head_torque(force, outer, inner, half_angle, mu):
    """Friction times radius over the cone; axial force per radius is constant, normal force is larger by 1/sin."""
    per_radius = force / ((outer - inner) / 2)
    return quad(lambda r: mu * per_radius / np.sin(half_angle) * r, inner / 2, outer / 2)[0]


def torque(force, d2, p, mt, mh, outer, inner, half, prevailing):
    return thread_torque(force, d2, p, mt) + head_torque(force, outer, inner, half, mh) + prevailing


def equivalent(force, d2, d0, p, mt, prevailing):
    sigma = force / (pi / 4 * d0**2)
    # Fully plastic torsion of a round bar by quadrature: T = tau * integral of r dA.
    section = quad(lambda r: r * 2 * pi * r, 0, d0 / 2)[0]
    tau = (thread_torque(force, d2, p, mt) + prevailing) / section
    return sigma, tau, sqrt(sigma**2 + 3 * tau**2)


if __name__ == "__main__":
    d2, d0 = metric(4.0, 0.7)
    args = (d2, 0.7, 0.14, 0.18, 8.96, 4.5, radians(45), 120.0)  # N mm
    t = torque(1500.0, *args)
    print("M4, 90 deg countersunk, 1.5 kN, mu 0.14/0.18, prevailing 0.12 N m")
    print("  torque N m", t / 1e3, "thread", thread_torque(1500, d2, 0.7, 0.14) / 1e3,
          "head", head_torque(1500, 8.96, 4.5, radians(45), 0.18) / 1e3)
    print("  nut factor", (t - 120) / 1500 / 4, "stress", equivalent(1500, d2, d0, 0.7, 0.14, 120.0))
    print("  preload for 2.0 N m", brentq(lambda f: torque(f, *args) - 2000, 1, 1e5))
    d2, d0 = unified(25.4 * 0.19, 25.4 / 32)
    a = (d2, 25.4 / 32, 0.15, 0.15, 25.4 * 0.411, 25.4 * 0.221, radians(41), 0.0)
    t = torque(2000.0, *a)
    print("#10-32 UNF, 82 deg countersunk, 2 kN, mu 0.15")
    print("  torque N m", t / 1e3, "stress", equivalent(2000, d2, d0, 25.4 / 32, 0.15, 0.0))
    d2, d0 = metric(5.0, 0.8)
    f = brentq(lambda f: equivalent(f, d2, d0, 0.8, 0.12, 600.0)[2] - 0.7 * 450, 1, 1e5)
    print("M5 A2-70, 70 % of 450 MPa, mu 0.12, prevailing 0.6 N m: preload", f,
          "torque", torque(f, d2, 0.8, 0.12, 0.12, 6.88, 5.5, pi / 2, 600.0) / 1e3)
    d2, d0 = metric(8.0, 1.25)
    b = (11.63, 9.0, pi / 2)
    lo = brentq(lambda f: torque(f, d2, 1.25, 0.14, 0.14, *b, 0.0) - 24600 * 0.95, 1, 1e6)
    no = brentq(lambda f: torque(f, d2, 1.25, 0.12, 0.12, *b, 0.0) - 24600, 1, 1e6)
    hi = brentq(lambda f: torque(f, d2, 1.25, 0.10, 0.10, *b, 0.0) - 24600 * 1.05, 1, 1e6)
    print("M8, 24.6 N m +-5 %, mu 0.10..0.14:", lo, no, hi, hi / lo, equivalent(hi, d2, d0, 1.25, 0.10, 0.0))
