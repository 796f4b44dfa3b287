"""The bend allowance of one bend, and of the same bend over a range of radii.

Run it with `python examples/python/bend_allowance.py`.
"""

import numpy as np

from coaming.sheet import BendAllowance, BendAllowanceOutcome


def channel_bend() -> BendAllowanceOutcome:
    """The first bend of the U-channel in FAA-H-8083-31A, ch. 4: its step 4 gives an allowance of 0.279 in."""
    bend = BendAllowance(
        bend_angle="90 deg",
        inside_radius="0.16 in",
        thickness="0.04 in",
        k_factor=0.4467,
        leg_reference="to_virtual_sharp",
    )
    return bend.calculate()


def over_radii() -> BendAllowanceOutcome:
    """The same bend over a range of inside radii, in one call."""
    bend = BendAllowance(
        bend_angle="90 deg",
        inside_radius=(np.linspace(1.0, 5.0, 9), "mm"),
        thickness="0.04 in",
        k_factor=0.4467,
        leg_reference="to_virtual_sharp",
    )
    return bend.calculate()


def main() -> None:
    """Prints both."""
    outcome = channel_bend()
    print(outcome)
    print(f"allowance {outcome.bend_allowance.to('inch'):.4f~P}, caveats: {len(outcome.caveats)}")
    for caveat in outcome.caveats:
        print(f"{caveat.text} {caveat.cure}")
    many = over_radii()
    print("allowances", many.bend_allowance.round(2))


if __name__ == "__main__":
    main()
