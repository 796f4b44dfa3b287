"""What a field holds: the generated classes carry one of these for each field."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class QuantityKind:
    """A quantity with a dimension, and the unit that it is shown in."""

    dimension: str
    unit: str


@dataclass(frozen=True, slots=True)
class NumberKind:
    """A plain number."""


@dataclass(frozen=True, slots=True)
class PlainKind:
    """A count, a flag, words or a choice: one value, taken as it is."""


@dataclass(frozen=True, slots=True)
class RecordKind:
    """A record of named fields."""

    of: type


@dataclass(frozen=True, slots=True)
class OneOfKind:
    """One of several records; in documents each stands behind its key."""

    classes: Mapping[str, type]


@dataclass(frozen=True, slots=True)
class ListKind:
    """A list of values of one kind."""

    of: Kind


@dataclass(frozen=True, slots=True)
class ArrayKind:
    """Numbers over a mesh or along a line, as an array of numpy that cannot be written to."""


Kind = QuantityKind | NumberKind | PlainKind | RecordKind | OneOfKind | ListKind | ArrayKind

ARRAY = ArrayKind()
NUMBER = NumberKind()
PLAIN = PlainKind()
