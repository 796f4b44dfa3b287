"""One panel by itself: a document in, deflections, latch forces and gasket compression of its load cases out.

    >>> from coaming.panel import Panel
    >>> panel = Panel(open("panel.toml").read())  # doctest: +SKIP
    >>> case = panel.solve("closed")  # doctest: +SKIP
    >>> case.gaskets[0].smallest.value, case.field.deflection_m.min()  # doctest: +SKIP

z and deflections are positive outward, pressures where they push the panel onto its seal, compression closing, stress
in tension. Single numbers are quantities of pint, and plain SI floats under `.si`; values over the mesh and along
gaskets are read-only arrays in SI units, with the unit in the name. Linear theory of thin plates for small deflections, unless a load case
says `large_deflection = true`. A buckling factor is that of a perfectly flat panel: keep well below it.

The results are screenings with the inputs given, not a certificate: where failure could injure, local law
and codes hold, and a competent engineer decides.
"""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping
from typing import Any, Literal, NamedTuple, TypeAlias, cast

from coaming import _native
from coaming._solution.held import GasketState, LatchState, OpeningTravel, SupportReaction
from coaming._solution.mesh import BalanceLeft, LayerStresses, MeshError, MeshField
from coaming._solution.modes import (
    Buckling,
    BucklingMode,
    CriticalRise,
    CriticalTemperature,
    NaturalMode,
    NaturalModes,
)
from coaming._solution.place import LengthAt, MembraneForceAt, MomentAt, Point, StressAt
from coaming._solution.whole import CaseSolution, PanelSolution
from coaming.cover import Output, Units

__all__ = [
    "BalanceLeft",
    "Buckling",
    "BucklingMode",
    "CaseSolution",
    "CriticalRise",
    "CriticalTemperature",
    "GasketState",
    "LatchState",
    "LayerStresses",
    "LengthAt",
    "Load",
    "MembraneForceAt",
    "MeshError",
    "MeshField",
    "MomentAt",
    "NaturalMode",
    "NaturalModes",
    "OpeningTravel",
    "Panel",
    "PanelSolution",
    "Point",
    "Progress",
    "StressAt",
    "SupportReaction",
    "Tell",
    "Work",
    "solve",
    "text",
]

Work: TypeAlias = Literal["equilibrium", "modes", "large_deflection", "buckling"]
"""What is being looked for: the equilibrium under a load, natural modes about it, the equilibrium with the stretching that the
deflection brings, or factors at which the panel buckles."""


class Progress(NamedTuple):
    """How far a solve has come. How many meshes and steps there will be is not known beforehand."""

    work: Work
    """What is being looked for."""
    mesh: int
    """Which mesh, from 0, the coarsest."""
    triangles: int
    """Its triangles."""
    step: int
    """Steps begun on this mesh; 0 where the mesh is begun."""


Tell: TypeAlias = Callable[[Progress], object]
"""Called when a mesh is begun and before every step on it. Anything true that it gives back stops the work with
`CoamingError`, name `cancelled`; an exception that it raises comes through."""

Load: TypeAlias = "int | str | Mapping[str, Any]"
"""A load: index or name of a load case of the panel's document, or the fields of another load case. A force at a point of
another need not fall on a corner of the mesh: the moment under it is blurred a little more."""


class Panel:
    """One panel, checked and meshed, to be solved for one load after another.

    Solutions do not depend on what was solved before. The interpreter is free while it works, and Ctrl-C stops it; one
    thread at a time may solve a panel, a second one is refused.
    """

    __slots__ = ("_load_cases", "_panel", "_title")

    def __init__(self, document: str | Mapping[str, Any]) -> None:
        """`document` is TOML or JSON text, or the same as a dict, quantities as text with units.

        CoamingError names the field, or the place of a shape that cannot be.
        """
        self._panel = _native.Panel(_written(document, "document"))
        title, load_cases = self._panel.names()
        self._title, self._load_cases = title, tuple(load_cases)

    @property
    def title(self) -> str:
        """What the panel is called."""
        return self._title

    @property
    def load_cases(self) -> tuple[str, ...]:
        """The names of the document's load cases, in order."""
        return self._load_cases

    @property
    def cautions(self) -> tuple[str, ...]:
        """What the numbers are not for."""
        return tuple(_native.cautions())

    def solve(self, load: Load = 0, *, progress: Tell | None = None) -> CaseSolution:
        """The equilibrium under a load, with the modes, the opening, the ways to buckle and the critical rise that its load
        case asks for.

        CoamingError names the path in the load case, or the motion that nothing resists.
        """
        return CaseSolution(self._panel.solve(*_load(load), _told(progress)))

    def modes(self, count: int, load: Load = 0, *, progress: Tell | None = None) -> NaturalModes:
        """The lowest natural modes about the equilibrium under a load, 1 to 100 of them."""
        return NaturalModes(self._panel.modes(count, *_load(load), _told(progress)))

    def buckling(self, count: int, load: Load = 0, *, progress: Tell | None = None) -> Buckling:
        """The lowest factors by which what acts in the plane makes the panel buckle, 1 to 20 of them.

        Linear theory of a perfectly flat panel; a real one bows from the start: keep well below the lowest.
        """
        return Buckling(self._panel.buckling(count, *_load(load), _told(progress)))

    def critical_rise(self, load: Load = 0, *, progress: Tell | None = None) -> CriticalRise:
        """The temperatures, in proportion to those of a load, at which the panel buckles; as `buckling` otherwise.

        They count from where the supports begin to hold in the plane: a hole with clearance first uses that up.
        """
        return CriticalRise(self._panel.critical_rise(*_load(load), _told(progress)))

    def opening(self, load: Load = 0, *, progress: Tell | None = None) -> OpeningTravel:
        """The travel at which every latch is free while the gasket still pushes."""
        return OpeningTravel(self._panel.opening(*_load(load), _told(progress)))

    def __repr__(self) -> str:
        return f"Panel({self._title!r}, load_cases={self._load_cases!r})"


def text(document: str, output: Output = "text", units: Units = "shop") -> str:
    """The solution of every load case as text or JSON. `document` is TOML or JSON; the interpreter is free meanwhile."""
    return _native.panel(document, output, units)


def schema() -> str:
    """The JSON Schema (2020-12) of a panel's document: every key with its meaning, unit and range, for editors."""
    return _native.schema("panel")


def solve(document: str | Mapping[str, Any], *, progress: Tell | None = None) -> PanelSolution:
    """Solves every load case of a document."""
    panel = Panel(document)
    cases = [panel._panel.solve(nth, None, _told(progress)) for nth in range(len(panel.load_cases))]
    if not cases:
        # In the words of every language.
        text(_written(document, "document"))
    return PanelSolution(
        {"title": panel.title, "version": _native.__version__, "cases": cases, "cautions": list(panel.cautions)}
    )


def _load(load: Load) -> tuple[object, str | None]:
    """What the native module takes: an index or a name, or the text of a load case."""
    return (None, _written(load, "load")) if isinstance(load, Mapping) else (load, None)


def _written(document: object, name: str) -> str:
    if isinstance(document, str):
        return document
    try:
        return json.dumps(document, allow_nan=False)
    except (TypeError, ValueError, RecursionError) as error:
        _native.refuse_type(name, f"what is no document ({error})"[:120], "text, or a dict of texts and numbers")


def _told(progress: Tell | None) -> Callable[[str, int, int, int], object] | None:
    if progress is None:
        return None
    tell = progress

    def told(work: str, mesh: int, triangles: int, step: int) -> object:
        return tell(Progress(cast(Work, work), mesh, triangles, step))

    return told
