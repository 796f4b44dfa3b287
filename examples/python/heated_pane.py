"""A pane that nothing lets grow: what damp presses it with, when it buckles, how far it bows past that or under a hand.

Run it with `python examples/python/heated_pane.py`.
"""

from pathlib import Path

from coaming.panel import Panel

HEATED_PANE = Path(__file__).parent.parent / "panels" / "heated-pane.toml"


def pane() -> Panel:
    """A polycarbonate pane screwed all round, meshed."""
    return Panel(HEATED_PANE.read_text(encoding="utf-8"))


def pressed_by_damp(panel: Panel) -> float:
    """Force in the plane per length, N/mm: growth is a load in the plane, and the frame presses back."""
    return -panel.solve("damp").largest_membrane_force.value.to("N/mm").magnitude


def critical_rise(panel: Panel) -> float:
    """The rise of temperature that makes it buckle, K. Keep well below it: a real pane bows from the start."""
    return panel.critical_rise("sun").temperatures[0].rise.to("K").magnitude


def main() -> None:
    """Prints all of it, then the cautions."""
    panel = pane()
    print(f"damp presses with {pressed_by_damp(panel):.3f} N/mm")
    for way in panel.buckling(2, "damp").modes:
        print(f"damp times {way.factor:.3f} makes it buckle")
    print(f"a rise of {critical_rise(panel):.3f} K makes it buckle")
    # Linear theory knows no bow past that; the load cases ask for the stretching that it brings.
    for name in ("sun", "hand"):
        moved = panel.solve(name).largest_deflection.value.to("mm").magnitude
        print(f"{name} moves it by {abs(moved):.3f} mm")
    for caution in panel.cautions:
        print(f"- {caution}")


if __name__ == "__main__":
    main()
