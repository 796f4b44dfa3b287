"""Independent derivations for tests/cases/thermal.toml. Needs numpy, scipy and mpmath; run it to print the numbers."""


import numpy as np


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
