"""Independent derivations for the sheet-bending cases. Imports nothing of this project."""

import numpy as np
from scipy.optimize import brentq


def air_bend():
    """Sharp die shoulders: where the outer face of a bend of angle a meets the shoulder, from the outer virtual sharp."""
    print("flange over a sharp-shouldered die, share of V, found by walking along the face until it meets the shoulder")
    for degrees in (30.0, 60.0, 90.0, 120.0):
        half = np.radians(degrees) / 2
        meet = brentq(lambda s: s * np.cos(half) - 0.5, 0.0, 10.0)
        at_ninety = brentq(lambda s: s * np.cos(np.pi / 4) - 0.5, 0.0, 10.0)
        print(f"   {degrees:5.1f} deg: {meet:.6f}; relative to 90 deg times 0.70: {0.70 * meet / at_ninety:.6f}")


def main():
    air_bend()


if __name__ == "__main__":
    main()
