"""The published and derived cases, and how a case becomes an object of the typed classes."""

from __future__ import annotations

import importlib
import tomllib
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from coaming._boundary import Calculation, Outcome, Record
from coaming._kinds import Kind, ListKind, OneOfKind, RecordKind
from coaming.sheet import BendAllowance

FOLDER = Path(__file__).parent.parent / "cases"


@dataclass(frozen=True)
class Case:
    """One case with its place in its file."""

    module: str
    place: int
    case: dict[str, Any]

    @property
    def calculation(self) -> str:
        name: str = self.case["calculation"]
        return name

    @property
    def input(self) -> dict[str, Any]:
        fields: dict[str, Any] = self.case["input"]
        return fields

    def __str__(self) -> str:
        return f"{self.module}-{self.place}-{self.calculation}"


def all_cases() -> list[Case]:
    """Every case, in the order of the files and of the cases in them."""
    found = []
    for file in sorted(FOLDER.glob("*.toml")):
        cases = tomllib.loads(file.read_text(encoding="utf-8"))["case"]
        found += [Case(file.stem, place, case) for place, case in enumerate(cases)]
    return found


def class_of(module: str, calculation: str) -> type[Calculation]:
    """The typed class of a calculation."""
    classes = vars(importlib.import_module(f"coaming.{module}")).values()
    found: type[Calculation]
    (found,) = [one for one in classes if isinstance(one, type) and vars(one).get("_name") == calculation]
    return found


def calculations() -> list[type[Calculation]]:
    """The typed class of every calculation that has a case."""
    return list(dict.fromkeys(class_of(case.module, case.calculation) for case in all_cases()))


def built(of: type[Record], fields: dict[str, Any]) -> Any:
    """An object of a class from the fields of a document; a second convention by its own constructor."""
    values = {name: value_of(of._kinds[name], value) for name, value in fields.items() if name in of._kinds}
    others = {name: value for name, value in fields.items() if name not in of._kinds}
    for name in others:
        constructor = getattr(of, f"with_{name}", None)
        if constructor is not None and len(others) == 1:
            return constructor(**{name: others[name]}, **values)
    return of(**values, **others)


def value_of(kind: Kind, value: Any) -> Any:
    """A value of a document as the typed classes take it."""
    match kind:
        case RecordKind(of):
            return built(of, value) if isinstance(value, dict) else value
        case ListKind(inner):
            return [value_of(inner, entry) for entry in value] if isinstance(value, list) else value
        case OneOfKind(classes) if isinstance(value, dict):
            ((key, fields),) = value.items()
            return built(classes[key], fields)
        case _:
            return value


def outcome_of(case: Case) -> Outcome:
    """The outcome of a case through the typed classes."""
    situation = built(class_of(case.module, case.calculation), case.input)
    outcome: Outcome = situation.calculate()
    return outcome


def bend(**given: Any) -> Any:
    """The outcome of a plain bend, with some fields given otherwise."""
    fields: dict[str, Any] = {
        "bend_angle": "90 deg",
        "inside_radius": "2 mm",
        "thickness": "1.6 mm",
        "k_factor": 0.4,
        "leg_reference": "to_virtual_sharp",
    }
    return BendAllowance(**(fields | given)).calculate()
