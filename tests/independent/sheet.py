"""Independent derivations for the sheet-bending cases. Imports nothing of this project.

Profiles are built in the plane, measured with lines and arcs as a person with a caliper would, solved for the flats that give the
wanted lengths, and the neutral line is then measured by quadrature. Nothing here uses a setback or deduction formula.
"""

import numpy as np
from scipy.integrate import quad
from scipy.optimize import brentq, fsolve, minimize_scalar

UP, DOWN = 1.0, -1.0


def heading(angle):
    return np.array([np.cos(angle), np.sin(angle)])


def left(angle):
    return np.array([-np.sin(angle), np.cos(angle)])


class Folded:
    """A folded profile: the middle plane is marched along, first leg on the x axis, good face up (on the left)."""

    def __init__(self, thickness, flats, bends):
        self.t, self.flats, self.bends = thickness, flats, bends
        self.start, self.end, self.angle, self.centre = [], [], [], []
        point, angle = np.zeros(2), 0.0
        for place, flat in enumerate(flats):
            self.start.append(point)
            self.angle.append(angle)
            point = point + flat * heading(angle)
            self.end.append(point)
            if place < len(bends):
                turn, radius, _, side = bends[place]
                centre = point + side * (radius + thickness / 2) * left(angle)
                self.centre.append(centre)
                angle += side * turn
                point = centre - side * (radius + thickness / 2) * left(angle)

    def face_line(self, leg, bend, depth):
        """Point and direction of the line at `depth` from the inner face of `bend` along `leg`."""
        side = self.bends[bend][3]
        offset = side * (self.t / 2 - depth)  # from the middle plane towards the inner face
        return self.start[leg] + offset * left(self.angle[leg]), heading(self.angle[leg])

    def sharp(self, bend, depth):
        (p, d), (q, e) = self.face_line(bend, bend, depth), self.face_line(bend + 1, bend, depth)
        along = np.linalg.solve(np.column_stack([d, -e]), q - p)
        return p + along[0] * d

    def farthest(self, bend, depth, direction):
        """Largest reach along `direction` of the arc at `depth` from the inner face."""
        turn, radius, _, side = self.bends[bend]
        centre, first = self.centre[bend], self.angle[bend]

        def reach(share):
            angle = first + side * share * turn
            return (centre - side * (radius + depth) * left(angle)) @ direction

        best = minimize_scalar(lambda share: -reach(share), bounds=(0, 1), method="bounded", options={"xatol": 1e-12})
        return max(-best.fun, reach(0.0), reach(1.0))

    def end_of_leg(self, leg, bend, reference, plane_past_ninety, direction):
        """Coordinate along `direction` of the place that the length of a leg goes to at a bend."""
        depth = {"outside": self.t, "inside": 0.0, "mid": self.t / 2, "to_virtual_sharp": self.t}.get(reference)
        if reference == "flat":
            point = self.end[leg] if bend == leg else self.start[leg]
            return point @ direction
        if reference == "to_tangent":
            return self.farthest(bend, self.t, direction)
        if plane_past_ninety and reference != "to_virtual_sharp" and self.bends[bend][0] > np.pi / 2:
            return self.farthest(bend, depth, direction)
        return self.sharp(bend, depth) @ direction

    def length_of_leg(self, leg, reference, plane_past_ninety):
        d = heading(self.angle[leg])
        last = (self.end_of_leg(leg, leg, reference, plane_past_ninety, d)
                if leg < len(self.bends) else self.end[leg] @ d)
        first = (-self.end_of_leg(leg, leg - 1, reference, plane_past_ninety, -d)
                 if leg > 0 else self.start[leg] @ d)
        return last - first

    def neutral_length(self):
        """Length of the neutral line by quadrature of the speed along it."""
        total = sum(np.linalg.norm(e - s) for s, e in zip(self.start, self.end))
        for bend, (turn, radius, k, side) in enumerate(self.bends):
            def place(share):
                angle = self.angle[bend] + side * share * turn
                return self.centre[bend] - side * (radius + k * self.t) * left(angle)

            def chord(share, h):
                return np.linalg.norm(place(share + h) - place(share - h)) / (2 * h)

            def speed(share, h=1e-3):
                return (4 * chord(share, h) - chord(share, 2 * h)) / 3

            total += quad(speed, 0.0, 1.0)[0]
        return total


def profile(name, thickness, legs, bends, plane_past_ninety=True):
    """legs: (length, reference); bends: (degrees, radius, k, side). Prints flats, flat length, bend lines."""
    bends = [(np.radians(a), r, k, s) for a, r, k, s in bends]

    def misfit(flats):
        folded = Folded(thickness, flats, bends)
        return [folded.length_of_leg(i, ref, plane_past_ninety) - wanted for i, (wanted, ref) in enumerate(legs)]

    flats = fsolve(misfit, [wanted for wanted, _ in legs], xtol=1e-14)
    folded = Folded(thickness, flats, bends)
    assert max(abs(m) for m in misfit(flats)) < 1e-9
    print(f"profile {name}: flat length {folded.neutral_length():.6f}, flats", " ".join(f"{f:.6f}" for f in flats))
    at = 0.0
    for flat, bend in zip(flats, bends):
        part = Folded(thickness, [0.0, 0.0], [bend])
        allowance = part.neutral_length()
        print(f"   bend: allowance {allowance:.6f}, line at {at + flat + allowance / 2:.6f}")
        at += flat + allowance
    return folded


def air_bend():
    """Sharp die shoulders: where the outer face of a bend of angle a meets the shoulder, from the outer virtual sharp."""
    print("flange over a sharp-shouldered die, share of V, found by walking along the face until it meets the shoulder")
    for degrees in (30.0, 60.0, 90.0, 120.0):
        half = np.radians(degrees) / 2
        meet = brentq(lambda s: s * np.cos(half) - 0.5, 0.0, 10.0)
        at_ninety = brentq(lambda s: s * np.cos(np.pi / 4) - 0.5, 0.0, 10.0)
        print(f"   {degrees:5.1f} deg: {meet:.6f}; relative to 90 deg times 0.70: {0.70 * meet / at_ninety:.6f}")


def measured_k(label, flat, first, second, reference, degrees, radius, thickness, plane_past_ninety, spread):
    """The K for which a strip of that flat length folds into legs of those lengths; uncertainty by solving again."""

    def k_of(flat, first, second, angle, radius, thickness):
        def misfit(flats):
            folded = Folded(thickness, flats, [(angle, radius, 0.4, UP)])
            return [folded.length_of_leg(0, reference, plane_past_ninety) - first,
                    folded.length_of_leg(1, reference, plane_past_ninety) - second]

        flats = fsolve(misfit, [first, second], xtol=1e-10)
        return brentq(lambda k: Folded(thickness, flats, [(angle, radius, k, UP)]).neutral_length() - flat,
                      -0.99 * radius / thickness, 5.0, xtol=1e-14)

    values = [flat, first, second, np.radians(degrees), radius, thickness]
    u_flat, u_leg, u_degrees, u_radius, u_thickness = spread
    uncertainties = [u_flat, u_leg, u_leg, np.radians(u_degrees), u_radius, u_thickness]
    parts = []
    for place, u in enumerate(uncertainties):
        h = 1e-4 * values[place]
        up, down = list(values), list(values)
        up[place] += h
        down[place] -= h
        parts.append(abs(k_of(*up) - k_of(*down)) / (2 * h) * u)
    print(f"measured K {label}: {k_of(*values):.8f}, root sum square {np.sqrt(np.sum(np.square(parts))):.8f},"
          f" worst {np.sum(parts):.8f}; parts flat, leg, leg, angle, radius, thickness",
          " ".join(f"{part:.8f}" for part in parts))


def spring(radius, thickness, strength, modulus):
    """Radius after unloading an elastic, ideally plastic strip: its moment by quadrature over the thickness."""
    core = strength / modulus * radius

    def stress(y):
        return np.clip(modulus * y / radius, -strength, strength)

    half = thickness / 2
    moment = 2 * quad(lambda y: stress(y) * y, 0.0, half, points=[min(core, half)], epsabs=0, epsrel=1e-12)[0]
    return 1 / (1 / radius - moment / (modulus * thickness**3 / 12))


def springback(label, radius, thickness, strength, modulus, degrees):
    final = spring(radius, thickness, strength, modulus)
    arc = np.radians(degrees) * (radius + thickness / 2)
    angle = np.degrees(arc / (final + thickness / 2))
    print(f"springback {label}: ratio {radius / final:.8f}, radius {final:.8f}, angle {angle:.8f} deg")


def over_bend(label, wanted, thickness, strength, modulus, degrees):
    largest = 0.5 * modulus * thickness / strength * (1 - 1e-9)
    tool = brentq(lambda radius: 1 / spring(radius, thickness, strength, modulus) - 1 / wanted,
                  1e-6 * thickness, min(largest, wanted), xtol=1e-14, rtol=1e-13)
    angle = np.degrees(np.radians(degrees) * (wanted + thickness / 2) / (tool + thickness / 2))
    print(f"over-bend {label}: tool radius {tool:.8f}, angle under the tool {angle:.8f} deg, ratio {tool / wanted:.8f}")


def smallest_radius():
    print("R/t where the true strain of the outer fibre equals the true strain at fracture")
    for reduction in (0.10, 0.20, 0.35, 0.49):
        ratio = brentq(lambda r: np.log((r + 1) / (r + 0.5)) - np.log(1 / (1 - reduction)), 0.0, 1e3, xtol=1e-14)
        print(f"   reduction {reduction:.2f}: {ratio:.8f}")
    print("strain of the outer fibre, arcs of half a turn measured as polygons of a million sides")
    for ratio in (0.0, 1.0, 2.0, 5.5):
        steps = np.linspace(0.0, np.pi, 1_000_001)
        outer, middle = (np.sum(np.hypot(np.diff(r * np.cos(steps)), np.diff(r * np.sin(steps))))
                         for r in (ratio + 1, ratio + 0.5))
        print(f"   R/t {ratio}: {outer / middle - 1:.9f}")


def spread():
    """Folds a strip with its bend lines held where they are, and moves one thing at a time."""
    thickness = 1.5
    flats = [30.0, 40.0, 25.0]
    nominal = [(np.radians(90), 2.0, 0.42, UP), (np.radians(60), 3.0, 0.45, DOWN)]
    allowance = [turn * (radius + k * thickness) for turn, radius, k, _ in nominal]
    lines = [flats[0] + allowance[0] / 2, flats[0] + allowance[0] + flats[1] + allowance[1] / 2]
    strip = sum(flats) + sum(allowance)

    def place(hole, bends, lines):
        ba = [Folded(thickness, [0.0, 0.0], [bend]).neutral_length() for bend in bends]
        edges = [0.0] + [x for line, a in zip(lines, ba) for x in (line - a / 2, line + a / 2)] + [strip]
        lengths = [edges[2 * i + 1] - edges[2 * i] for i in range(3)]
        folded = Folded(thickness, lengths, bends)
        leg = next(i for i in range(3) if edges[2 * i] <= hole <= edges[2 * i + 1])
        return leg, folded.start[leg] + (hole - edges[2 * leg]) * heading(folded.angle[leg])

    u_k, u_radius, u_angle, u_line, u_cut = 0.03, 0.2, np.radians(0.5), 0.15, 0.1
    for hole in (10.0, 55.0, 95.0):
        leg, at = place(hole, nominal, lines)
        print(f"spread, hole at {hole}: leg {leg}, at {at[0]:.8f} {at[1]:.8f}")
        effects = {"k_factor": [], "inside_radius": [], "bend_angle": [], "bend_line": [], "cutting": []}
        h = 1e-4
        for bend in range(leg):
            for name, column, u in (("k_factor", 2, u_k), ("inside_radius", 1, u_radius), ("bend_angle", 0, u_angle)):
                up, down = [list(b) for b in nominal], [list(b) for b in nominal]
                up[bend][column] += h
                down[bend][column] -= h
                moved = (place(hole, up, lines)[1] - place(hole, down, lines)[1]) / (2 * h) * u
                effects[name].append(moved)
            up, down = list(lines), list(lines)
            up[bend] += h
            down[bend] -= h
            effects["bend_line"].append((place(hole, nominal, up)[1] - place(hole, nominal, down)[1]) / (2 * h) * u_line)
        effects["cutting"].append((place(hole + h, nominal, lines)[1] - place(hole - h, nominal, lines)[1]) / (2 * h) * u_cut)
        for name, moved in effects.items():
            print(f"   {name}:", "; ".join(f"{m[0]:.7f} {m[1]:.7f}" for m in moved))
        independent = [m for moved in effects.values() for m in moved]
        common = ([m for name in ("bend_angle", "bend_line", "cutting") for m in effects[name]]
                  + [np.sum(effects[name], axis=0) for name in ("k_factor", "inside_radius") if effects[name]])
        for label, group in (("independent", independent), ("common", common)):
            worst, rss = np.sum(np.abs(group), axis=0), np.sqrt(np.sum(np.square(group), axis=0))
            print(f"   {label}: worst {worst[0]:.7f} {worst[1]:.7f}, root sum square {rss[0]:.7f} {rss[1]:.7f}")


def main():
    out, ins = "outside", "inside"
    profile("u channel of the handbook, inches", 0.04, [(1.0, out), (2.0, out), (1.0, out)], [(90, 0.16, 0.4467, UP)] * 2)
    profile("z, mm", 2.0, [(30, out), (50, out), (40, out)], [(90, 2.0, 0.42, UP), (90, 2.0, 0.42, DOWN)])
    profile("all references, mm", 1.5,
            [(40, out), (60, ins), (50, "mid"), (45, "to_virtual_sharp"), (35, "to_tangent"), (20, "flat")],
            [(30, 2.0, 0.40, UP), (60, 3.0, 0.42, DOWN), (120, 1.5, 0.44, UP), (100, 2.5, 0.41, UP), (90, 2.0, 0.43, DOWN)])
    profile("135 deg to planes, mm", 2.0, [(40, out), (60, out)], [(135, 3.0, 0.45, UP)])
    profile("135 deg to sharps, mm", 2.0, [(40, out), (60, out)], [(135, 3.0, 0.45, UP)], plane_past_ninety=False)
    profile("hem, mm", 1.0, [(12, out), (80, out)], [(180, 0.5, 0.35, UP)])
    air_bend()
    measured_k("outside, mm", 97.6, 40.2, 60.9, out, 90.0, 2.1, 1.95, False, (0.05, 0.05, 0.25, 0.1, 0.01))
    measured_k("inside 60 deg, mm", 99.65, 41.0, 58.1, ins, 60.0, 3.0, 2.0, True, (0.05, 0.04, 0.3, 0.1, 0.02))
    measured_k("mid 120 deg to planes, mm", 102.4, 46.2, 56.2, "mid", 120.0, 3.0, 2.0, True, (0.05, 0.04, 0.3, 0.1, 0.02))
    springback("of the textbook, inches", 0.5, 0.0359, 40e3, 29e6, 90.0)
    springback("10 mm", 10.0, 1.6, 195.0, 69600.0, 90.0)
    springback("large radius, mm", 100.0, 1.0, 250.0, 70000.0, 60.0)
    over_bend("12 mm", 12.0, 1.6, 195.0, 69600.0, 90.0)
    over_bend("drum of 400 mm", 400.0, 1.0, 250.0, 70000.0, 30.0)
    over_bend("tight, mm", 1.6, 1.6, 195.0, 69600.0, 90.0)
    smallest_radius()
    spread()


if __name__ == "__main__":
    main()
