"""What the generated classes are built on: inputs that calculate, outcomes that show their quantities."""

from __future__ import annotations

from collections.abc import Mapping
from types import SimpleNamespace
from typing import TYPE_CHECKING, Any, ClassVar, NoReturn, TypeVar

from coaming import _arrays, _native, _pint
from coaming._arrays import broadcast
from coaming._inputs import Reading
from coaming._kinds import ArrayKind, Kind, ListKind, NumberKind, OneOfKind, QuantityKind, RecordKind
from coaming.caveat import Caveat

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt


class Record:
    """A record of input fields."""

    _kinds: ClassVar[Mapping[str, Kind]] = {}


class Calculation(Record):
    """The input of a calculation."""

    _name: ClassVar[str] = ""


class SiValues(SimpleNamespace):
    """The values of an outcome in SI units, as plain floats or arrays."""


class OutcomeRecord:
    """A record of outcome fields: quantities of pint, made when read; `si` has the plain numbers."""

    _kinds: ClassVar[Mapping[str, Kind]] = {}
    __slots__ = ("_data", "_registry", "_values", "si")

    si: SiValues
    _data: dict[str, Any]
    _registry: Any
    _values: dict[str, Any]

    def __init__(self, data: dict[str, Any], registry: Any = None) -> None:
        values = {name: _held(self._kinds[name], value, registry) for name, value in data.items()}
        self._set("_data", data)
        self._set("_registry", registry)
        self._set("_values", values)
        self._set("si", SiValues(**{name: _in_si(value) for name, value in values.items()}))

    def _set(self, name: str, value: object) -> None:
        object.__setattr__(self, name, value)

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"an outcome does not change: {name}")

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"an outcome does not change: {name}")

    def __reduce__(self) -> tuple[object, ...]:
        # Without the registry: one of pint's cannot be pickled; the application's takes its place.
        return (type(self), (self._data,))

    def _get(self, name: str) -> Any:
        try:
            value = self._values[name]
        except KeyError:
            raise AttributeError(f"{name}: a batch gives quantities and plain numbers only") from None
        return _as_quantity(self._kinds[name], value, self._registry)

    def _words(self) -> list[str]:
        return [f"{name}={_in_words(self._kinds[name], value)}" for name, value in self._values.items()]

    def __repr__(self) -> str:
        return f"{type(self).__name__}({', '.join(self._words())})"


class Outcome(OutcomeRecord):
    """The outcome of a calculation, with the caveats that strain it; for a batch, those of any row."""

    __slots__ = ("caveats",)

    caveats: tuple[Caveat, ...]

    def __init__(self, data: dict[str, Any], registry: Any = None, bits: int = 0) -> None:
        super().__init__(data, registry)
        self._set("caveats", tuple(caveat for caveat in Caveat if bits >> caveat.bit & 1))

    def __reduce__(self) -> tuple[object, ...]:
        return (type(self), (self._data, None, sum(1 << caveat.bit for caveat in self.caveats)))

    def _words(self) -> list[str]:
        caveats = ", ".join(self.caveats)
        return [*super()._words(), f"caveats=({caveats})"]


O = TypeVar("O", bound=Outcome)


def calculate(situation: Calculation, outcome: type[O]) -> O:
    """The outcome of one situation, or of many where an input is an array."""
    reading = Reading()
    values = reading.record(situation)
    if not reading.arrays:
        data, bits = _native.calculate(situation._name, values)
        return outcome(data, reading.registry, bits)
    columns, shape = broadcast(reading.arrays)
    kinds = outcome._kinds.items()
    wanted = [name for name, kind in kinds if isinstance(kind, QuantityKind | NumberKind)]
    found, bits = _native.batch(situation._name, values, columns, wanted)
    return outcome({name: found[name].reshape(shape) for name in wanted}, reading.registry, bits)


def to_si(values: npt.ArrayLike, unit: str, dimension: str) -> npt.NDArray[np.float64]:
    """The SI values of numbers of a unit, such as `to_si([1.2, 1.6], "mm", "length")`.

    Each number is taken as the binary value that it is, converted exactly and rounded once. Text is taken as
    the decimal that it shows, so that `"0.07 mm"` and an entry 0.07 may differ in their last bit.
    """
    return _arrays.to_si(_arrays.floats(values, "values"), unit, dimension, "values")


def _held(kind: Kind, value: Any, registry: Any) -> Any:
    """A value of the native module as the outcome holds it: records as objects, lists as tuples."""
    if value is None:
        return None
    match kind:
        case RecordKind(of):
            return of(value, registry)
        case OneOfKind(classes):
            return next(classes[key](held, registry) for key, held in value.items())
        case ListKind(inner):
            return tuple(_held(inner, entry, registry) for entry in value)
        case _:
            return value


def _in_si(value: Any) -> Any:
    if isinstance(value, OutcomeRecord):
        return value.si
    return tuple(_in_si(entry) for entry in value) if isinstance(value, tuple) else value


def _as_quantity(kind: Kind, value: Any, registry: Any) -> Any:
    match kind:
        case _ if value is None:
            return None
        case QuantityKind(dimension, unit):
            return _pint.made(value, unit, dimension, registry)
        case ListKind(inner):
            return tuple(_as_quantity(inner, entry, registry) for entry in value)
        case _:
            return value


def _in_words(kind: Kind, value: Any) -> str:
    match kind:
        case ListKind(inner) if value is not None:
            return f"({', '.join(_in_words(inner, entry) for entry in value)})"
        case ArrayKind():
            return f"<{value.size} values>"
        case QuantityKind() | NumberKind() if value is not None and not isinstance(value, float):
            return _array_in_words(kind, value)
        case QuantityKind(dimension, unit) if value is not None:
            return _native.shown(value, unit, dimension)
        case NumberKind() if value is not None:
            return f"{value:.4g}"
        case _:
            return repr(value)


def _array_in_words(kind: Kind, array: Any) -> str:
    known = array[array == array]
    if known.size == 0:
        return f"<{array.size} values>"
    low, high = (_in_words(kind, float(end)) for end in (known.min(), known.max()))
    return f"<{array.size} values, {low} to {high}>"
