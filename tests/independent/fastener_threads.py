"""Independent figures for thread limits and stripping.

ISO 965-1 tolerances from its formulas (the tables round them to a preferred series, here undone by a tolerance in the case);
strip areas from a numerical cut of the thread profile at the mating diameter, turned into a cylinder.
"""
from math import pi, sqrt, tan, radians

COARSE = {"M1.6": (1.6, 0.35), "M2": (2, 0.4), "M2.5": (2.5, 0.45), "M3": (3, 0.5), "M3.5": (3.5, 0.6), "M4": (4, 0.7),
          "M5": (5, 0.8), "M6": (6, 1), "M8": (8, 1.25), "M10": (10, 1.5), "M12": (12, 1.75), "M14": (14, 2),
          "M16": (16, 2), "M18": (18, 2.5), "M20": (20, 2.5), "M22": (22, 2.5), "M24": (24, 3)}
FINE = {"M8x1": (8, 1), "M10x1.25": (10, 1.25), "M12x1.5": (12, 1.5), "M16x1.5": (16, 1.5), "M20x1.5": (20, 1.5), "M24x2": (24, 2)}
RANGES = (0.99, 1.4, 2.8, 5.6, 11.2, 22.4, 45)


def iso_limits(d, p):
    """6g and 6H limits in mm, from the formulas of ISO 965-1."""
    low, high = next((a, b) for a, b in zip(RANGES, RANGES[1:]) if a < d <= b)
    mean = sqrt(low * high)
    es = 15 + 11 * p
    td2 = 90 * p**0.4 * mean**0.1
    td = 180 * p ** (2 / 3) - 3.15 / sqrt(p)
    td1 = 230 * p**0.7 if p >= 1 else 433 * p - 190 * p**1.22
    h = p * sqrt(3) / 2
    d2, d1 = d - 0.75 * h, d - 1.25 * h
    um = 1e-3
    return {"external_major_smallest": d - (es + td) * um, "external_major_largest": d - es * um,
            "external_pitch_smallest": d2 - (es + td2) * um, "external_pitch_largest": d2 - es * um,
            "internal_pitch_largest": d2 + 1.32 * td2 * um, "internal_minor_largest": d1 + td1 * um}


def strip_area(diameter, pitch_diameter, p, length, external):
    """Cylinder at a diameter: the part of each pitch that is material of the thread, measured on a sampled profile."""
    n = 200_001
    inside = 0
    for i in range(n):
        z = (i + 0.5) / n * p - p / 2
        # Flanks cross the pitch diameter at +-p/4; slope 30 deg to the radius.
        radius = pitch_diameter / 2 + (p / 4 - abs(z)) / tan(radians(30)) * (1 if external else -1)
        material = radius > diameter / 2 if external else radius < diameter / 2
        inside += material
    return pi * diameter * length * inside / n


if __name__ == "__main__":
    for name, (d, p) in {**COARSE, **FINE}.items():
        print(name, {k: round(v, 4) for k, v in iso_limits(d, p).items()})
    # M4 x 0.7 limits of ISO 965-2: d min 3.838, d2 min 3.433, D2 max 3.663, D1 max 3.422.
    print("M4, 6 mm:", strip_area(3.422, 3.433, 0.7, 6.0, True), strip_area(3.838, 3.663, 0.7, 6.0, False))
    # 1/4-20: d min 0.2408, d2 min 0.2127, D2 max 0.2224, D1 max 0.2074.
    print("1/4-20, 0.25 in:", strip_area(0.2074, 0.2127, 0.05, 0.25, True), strip_area(0.2408, 0.2224, 0.05, 0.25, False))
    ae, ai = strip_area(3.422, 3.433, 0.7, 6.0, True), strip_area(3.838, 3.663, 0.7, 6.0, False)
    rs = 120 * ai / (480 * ae)
    print("M4, 480/120 MPa, nut 6 mm: Rs", rs, "C1", -(1.5**2) + 3.8 * 1.5 - 2.61, "C3", 0.728 + 1.769 * rs - 2.896 * rs**2 + 1.296 * rs**3)
    rs = 400 * ai / (480 * ae)
    print("M4, 480/400 MPa, nut 7 mm: Rs", rs, "C1", -(1.75**2) + 3.8 * 1.75 - 2.61,
          "C2", 5.594 - 13.682 * rs + 14.107 * rs**2 - 6.057 * rs**3 + 0.9353 * rs**4)
