"""Solves one panel, a lid on its seal: where the seal is compressed least, what each latch pulls, where the lid rings first.

Run it with `python examples/python/panel.py`.
"""

import sys
from pathlib import Path

from coaming.panel import CaseSolution, Panel, Progress

REVISED_LID = Path(__file__).parent.parent / "panels" / "revised-lid.toml"


def hear(now: Progress) -> None:
    """Told when a mesh is begun and before every step on it; a true return value would stop the work."""
    if now.step == 0:
        print(f"{now.work}: mesh {now.mesh} of {now.triangles} triangles", file=sys.stderr)


def lid() -> Panel:
    """The lid of the demonstration's revised cover, meshed."""
    return Panel(REVISED_LID.read_text(encoding="utf-8"))


def closed(panel: Panel) -> CaseSolution:
    """The lid drawn down by its latches."""
    return panel.solve("closed", progress=hear)


def main() -> None:
    """Prints what a shop asks of a lid, then the cautions."""
    panel = lid()
    case = closed(panel)
    for seal in case.gaskets:
        x, y = (place.to("mm").magnitude for place in (seal.smallest.at.x, seal.smallest.at.y))
        least, most = (found.value.to("mm").magnitude for found in (seal.smallest, seal.largest))
        print(f"seal compressed least: {least:.3f} mm at ({x:.0f} mm, {y:.0f} mm), most: {most:.3f} mm")
        # The same from the arrays along the seal: SI numbers, with the unit in the name.
        print(f"mean along the seal: {seal.compression_m.mean() * 1e3:.3f} mm")
    for latch in case.latches:
        print(f"latch {latch.name} pulls {latch.pull.to('N').magnitude:.1f} N")
    if case.modes is not None:
        print(f"first mode: {case.modes.modes[0].frequency.to('Hz').magnitude:.1f} Hz")
    print("the mesh meets the tolerance" if case.error.met else "THE MESH DOES NOT MEET THE TOLERANCE")
    for caution in panel.cautions:
        print(f"- {caution}")


if __name__ == "__main__":
    main()
