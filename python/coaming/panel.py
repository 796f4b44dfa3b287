"""One panel by itself: a document in, deflections, latch forces and gasket compression of every load case out.

    >>> import coaming.panel
    >>> solution = coaming.panel.solve(open("panel.toml").read())  # doctest: +SKIP
    >>> solution.cases[0].deflection.min()  # doctest: +SKIP

z and deflections are positive outward, pressures where they push the panel onto its seal, compression closing, stress
in tension. Arrays are in SI units. Linear theory of thin plates for small deflections.

The results are screenings with the inputs given, not a certificate: where failure could injure, local law
and codes hold, and a competent engineer decides.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from coaming import _native
from coaming.cover import Output, Units

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt


def _floats(values: list[float]) -> npt.NDArray[np.float64]:
    import numpy as np

    array = np.array(values, dtype=np.float64)
    array.setflags(write=False)
    return array


@dataclass(frozen=True, eq=False)
class Gasket:
    """One gasket, sampled in order along its line."""

    along: npt.NDArray[np.float64]
    """Distance along the gasket, m."""
    x: npt.NDArray[np.float64]
    """Where, m."""
    y: npt.NDArray[np.float64]
    """Where, m."""
    compression: npt.NDArray[np.float64]
    """Compression, m; negative is an open gap."""
    force: npt.NDArray[np.float64]
    """Force per length, N/m."""
    data: Mapping[str, Any]
    """All of it as in the JSON output: extremes, total force, open length."""


@dataclass(frozen=True, eq=False)
class Case:
    """One load case. Its arrays are read-only."""

    name: str
    """Its name."""
    x: npt.NDArray[np.float64]
    """The mesh's vertices, m."""
    y: npt.NDArray[np.float64]
    """The mesh's vertices, m."""
    triangles: npt.NDArray[np.int64]
    """The mesh's triangles: three indices of vertices in each row."""
    deflection: npt.NDArray[np.float64]
    """Deflection at the vertices, m."""
    slope: npt.NDArray[np.float64]
    """Slopes at the vertices along x and y, a row each."""
    moment: npt.NDArray[np.float64]
    """Moment per length at the middle of the triangles, N: a row each of xx, yy, xy; positive stretches the outer face."""
    gaskets: tuple[Gasket, ...]
    """The gaskets."""
    data: Mapping[str, Any]
    """All of it as in the JSON output, quantities as text: latches, reactions, stresses, modes, opening, errors."""


@dataclass(frozen=True, eq=False)
class Solution:
    """The solution of a panel."""

    title: str
    """What the panel is called."""
    cases: tuple[Case, ...]
    """The load cases, in order."""
    cautions: tuple[str, ...]
    """What the numbers are not for."""


def text(document: str, output: Output = "text", units: Units = "shop") -> str:
    """The solution as text or JSON. `document` is TOML or JSON; the interpreter is free meanwhile."""
    return _native.panel(document, output, units)


def schema() -> str:
    """The JSON Schema (2020-12) of a panel's document: every key with its meaning, unit and range, for editors."""
    return _native.schema("panel")


def solve(document: str | Mapping[str, Any]) -> Solution:
    """Solves every load case. `document` is TOML or JSON text, or the same as a dict, quantities as text with units.

    CoamingError names the field or the place of what is wrong, or the motion that nothing resists.
    """
    written = document if isinstance(document, str) else json.dumps(document)
    data = json.loads(_native.panel(written, "json", "shop"))
    return Solution(data["title"], tuple(_case(case) for case in data["cases"]), tuple(data["cautions"]))


def _case(data: dict[str, Any]) -> Case:
    import numpy as np

    field = data["field"]
    triangles = np.array(field["triangles"], dtype=np.int64).reshape(-1, 3)
    slope = np.array([field["slope_x"], field["slope_y"]], dtype=np.float64)
    moment = np.array([field[f"moment_{part}_n"] for part in ("xx", "yy", "xy")], dtype=np.float64)
    for array in (triangles, slope, moment):
        array.setflags(write=False)
    return Case(
        name=data["name"],
        x=_floats(field["x_m"]),
        y=_floats(field["y_m"]),
        triangles=triangles,
        deflection=_floats(field["deflection_m"]),
        slope=slope,
        moment=moment,
        gaskets=tuple(_gasket(gasket) for gasket in data["gaskets"]),
        data=data,
    )


def _gasket(data: dict[str, Any]) -> Gasket:
    return Gasket(
        along=_floats(data["along_m"]),
        x=_floats(data["x_m"]),
        y=_floats(data["y_m"]),
        compression=_floats(data["compression_m"]),
        force=_floats(data["force_n_per_m"]),
        data=data,
    )
