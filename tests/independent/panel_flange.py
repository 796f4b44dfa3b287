"""Flanged panels by CalculiX (Debian: calculix-ccx), general-purpose shells of eight nodes (S8R).

A sheet a by b by t, aluminium (E = 70 GPa, nu = 0.3), with flanges of height h folded down at right angles along its two long sides (length
a), middle surfaces meeting at the fold. A uniform pressure acts on the sheet. Two ways of support:
  ends     the sheet's short edges are held at their height
  corners  the sheet's four corners are held at their height
Prints the deflection of the middle of the sheet and of the middle of the fold over the pressure, for two meshes; the finer is the
reference in crates/coaming-panel/tests/reference/flange.csv.
"""

import os
import subprocess
import sys
import tempfile


def solve(a, b, t, h, support, nx, ny, nz, ccx="ccx"):
    """Deflections (middle of the sheet, middle of the fold) in mm for 1e-3 MPa."""
    nodes, table = {}, []

    def node(i, j, k):
        """Half-element indices along a, across b, down the flange."""
        key = (i, j, k)
        if key not in nodes:
            nodes[key] = len(nodes) + 1
            table.append((a * i / (2 * nx), b * j / (2 * ny), -h * k / (2 * nz) if nz else 0.0))
        return nodes[key]

    sheet, flanges = [], []

    def quad(at):
        return [at(0, 0), at(2, 0), at(2, 2), at(0, 2), at(1, 0), at(2, 1), at(1, 2), at(0, 1)]

    for i in range(0, 2 * nx, 2):
        for j in range(0, 2 * ny, 2):
            sheet.append(quad(lambda p, q: node(i + p, j + q, 0)))
        for k in range(0, 2 * nz, 2):
            for side in (0, 2 * ny):
                flanges.append(quad(lambda p, q: node(i + p, side, k + q)))
    lines = ["*NODE, NSET=ALL"]
    lines += [f"{n}, {x:.9g}, {y:.9g}, {z:.9g}" for n, (x, y, z) in enumerate(table, 1)]
    count = 0
    for name, elements in (("SHEET", sheet), ("FLANGE", flanges)):
        if not elements:
            continue
        lines.append(f"*ELEMENT, TYPE=S8R, ELSET={name}")
        for e in elements:
            count += 1
            lines.append(", ".join(map(str, [count] + e)))
    lines += ["*MATERIAL, NAME=AL", "*ELASTIC", "70000., 0.3"]
    for name, elements in (("SHEET", sheet), ("FLANGE", flanges)):
        if elements:
            lines += [f"*SHELL SECTION, ELSET={name}, MATERIAL=AL", f"{t}"]
    if support == "ends":
        held = [node(i, j, 0) for i in (0, 2 * nx) for j in range(2 * ny + 1) if (i, j, 0) in nodes]
    else:
        held = [node(i, j, 0) for i in (0, 2 * nx) for j in (0, 2 * ny)]
    lines.append("*BOUNDARY")
    lines += [f"{n}, 3, 3" for n in held]
    # Against sliding in the plane, with no force.
    lines += [f"{node(nx if nx % 2 == 0 else nx - 1, 0, 0)}, 1, 1", f"{node(0, 0, 0)}, 2, 2", f"{node(2 * nx, 0, 0)}, 2, 2"]
    lines += ["*STEP", "*STATIC", "*DLOAD", "SHEET, P, 1.e-3"]
    middle, fold = node(nx, ny, 0), node(nx, 0, 0)
    lines += ["*NSET, NSET=OUT", f"{middle}, {fold}", "*NODE PRINT, NSET=OUT", "U", "*END STEP"]
    with tempfile.TemporaryDirectory() as folder:
        with open(os.path.join(folder, "p.inp"), "w") as file:
            file.write("\n".join(lines) + "\n")
        run = subprocess.run([ccx, "p"], cwd=folder, capture_output=True, text=True)
        found = {}
        with open(os.path.join(folder, "p.dat")) as file:
            for line in file:
                parts = line.split()
                if len(parts) == 4 and parts[0].isdigit():
                    found[int(parts[0])] = float(parts[3])
        if not found:
            raise RuntimeError(run.stdout[-2000:])
    return found[middle], found[fold]


def main():
    print("# CalculiX 2.20, written by tests/independent/panel_flange.py")
    print("# a mm, b mm, t mm, h mm, support, middle of sheet m/Pa, middle of fold m/Pa")
    for a, b, t, support in [(600, 200, 1.5, "ends"), (600, 400, 1.5, "corners"), (600, 400, 1.5, "ends")]:
        for h in (6, 12, 25, 50):
            for fine in (False, True):
                nx, ny = (48, 24) if fine else (24, 12)
                nz = max(2, round(h / (600 / nx))) * (2 if fine else 1)
                middle, fold = solve(a, b, t, h, support, nx, ny, nz)
                # mm per 1e-3 MPa to m per Pa.
                line = f"{a},{b},{t},{h},{support},{abs(middle) * 1e-6:.6e},{abs(fold) * 1e-6:.6e}"
                print(line if fine else "# coarse: " + line)
                sys.stdout.flush()


if __name__ == "__main__":
    main()
