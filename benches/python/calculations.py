"""One calculation from Python, called once and a million times, beside straightforward numpy in the same run."""

import statistics
import time
from collections.abc import Callable

import numpy as np

from coaming.sheet import BendAllowance

RUNS = 15
ROWS = 1_000_000
CALLS = 2_000


def measure(work: Callable[[], object]) -> tuple[float, float, float]:
    """Median, fastest and slowest of the runs, in seconds, after one that is not counted."""
    work()
    seconds = []
    for _ in range(RUNS):
        start = time.perf_counter()
        work()
        seconds.append(time.perf_counter() - start)
    return statistics.median(seconds), min(seconds), max(seconds)


def report(what: str, times: tuple[float, float, float], items: int, unit: str) -> None:
    """Prints one line."""
    scale = {"ns": 1e9, "us": 1e6, "ms": 1e3}[unit] / items
    median, fastest, slowest = (seconds * scale for seconds in times)
    print(f"{what:<58} {median:9.2f} {unit}  ({fastest:.2f} to {slowest:.2f})")


def main() -> None:
    """Measures and prints."""

    def text() -> None:
        for _ in range(CALLS):
            BendAllowance(
                bend_angle="90 deg",
                inside_radius="1.6 mm",
                thickness="1.6 mm",
                k_factor=0.43,
                leg_reference="to_virtual_sharp",
            ).calculate()

    report("bend_allowance, one call from Python, quantities as text", measure(text), CALLS, "us")

    bend = BendAllowance(
        bend_angle="90 deg",
        inside_radius="1.6 mm",
        thickness="1.6 mm",
        k_factor=0.43,
        leg_reference="to_virtual_sharp",
    )

    def again() -> None:
        for _ in range(CALLS):
            bend.calculate()

    report("bend_allowance, calculate() alone from Python", measure(again), CALLS, "us")

    radii = np.linspace(1e-3, 5e-3, ROWS)
    many = BendAllowance(
        bend_angle="90 deg",
        inside_radius=(radii, "m"),
        thickness="1.6 mm",
        k_factor=0.43,
        leg_reference="to_virtual_sharp",
    )
    batch = measure(lambda: many.calculate())
    report("bend_allowance, 10^6 rows, batch from Python, all outcomes", batch, 1, "ms")

    alpha, t, k = np.pi / 2, 1.6e-3, 0.43

    def plain() -> tuple[object, ...]:
        neutral = radii + k * t
        allowance = alpha * neutral
        setback = np.tan(alpha / 2) * (radii + t)
        deduction = 2 * setback - allowance
        return allowance, setback, deduction, neutral

    numpy = measure(plain)
    report("bend_allowance, 10^6 rows, numpy, the same four outcomes", numpy, 1, "ms")
    print(f"batch from Python over numpy: {batch[0] / numpy[0]:.2f}")


if __name__ == "__main__":
    main()
