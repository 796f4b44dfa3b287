"""From what a caller gives to what the native module takes."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from coaming import _native, _pint
from coaming._arrays import floats, found, is_array, is_many, item, to_si
from coaming._kinds import Kind, ListKind, NumberKind, OneOfKind, QuantityKind, RecordKind

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt

_DEEPEST = 64
"""Records nested deeper than this are refused; the native module has the same limit."""

_FRACTION = re.compile(r"\s*\d+\s*/\s*\d")


class Reading:
    """One reading of an input: its arrays, and the registry of the first quantity met."""

    def __init__(self) -> None:
        self.arrays: dict[str, npt.NDArray[np.float64]] = {}
        self.registry: Any = None

    def record(self, record: Any, path: str = "", depth: int = 0) -> dict[str, object]:
        """The fields of a record by their keys. On the top level arrays are put aside."""
        if depth > _DEEPEST:
            _native.refuse_type(path, "deeper nesting", f"at most {_DEEPEST} levels")
        values: dict[str, object] = {}
        for name, kind in record._kinds.items():
            value = getattr(record, name)
            if isinstance(value, GivenAs):
                name, value = value.name, value.value
            here = f"{path}.{name}" if path else name
            read = self._value(kind, value, here, depth)
            if not is_array(read):
                values[name] = read
            elif depth == 0:
                self.arrays[name] = read
            else:
                _native.refuse_type(here, "an array", "one value (lists and records take no arrays)")
        return values

    def _value(self, kind: Kind, value: Any, path: str, depth: int) -> Any:
        if value is None:
            return None
        match kind:
            case QuantityKind(dimension):
                return self._quantity(dimension, value, path)
            case NumberKind():
                return self._number(value, path)
            case ListKind(inner):
                return self._list(inner, value, path, depth)
            case RecordKind(of):
                if not isinstance(value, of):
                    _native.refuse_type(path, found(value), f"a `{of.__name__}`")
                return self.record(value, path, depth + 1)
            case OneOfKind(classes):
                for key, of in classes.items():
                    if type(value) is of:
                        return {key: self.record(value, f"{path}.{key}", depth + 1)}
                names = ", ".join(of.__name__ for of in classes.values())
                return _native.refuse_type(path, found(value), f"one of {names}")
            case _:
                return item(value)

    def _quantity(self, dimension: str, value: Any, path: str) -> Any:
        if isinstance(value, str):
            return value
        if _pint.is_quantity(value):
            return self._of_pint(value, dimension, path)
        if isinstance(value, tuple) and len(value) == 2 and isinstance(value[1], str):
            number, unit = value
            if is_many(number):
                return to_si(floats(number, path), unit, dimension, path)
            if unit[:1] in "0123456789 " and _FRACTION.match(unit):
                _native.refuse_quantity(path, f"{number} {unit}"[:60], dimension, "a fraction is no unit")
            return _text(number, unit, dimension, path)
        if is_many(value):
            _native.refuse_quantity(path, found(value), dimension, 'it needs a unit, as in (values, "mm")')
        return item(value)

    def _of_pint(self, quantity: Any, dimension: str, path: str) -> Any:
        if self.registry is None:
            self.registry = _pint.registry_of(quantity)
        unit = _pint.our_unit(quantity, dimension)
        if unit is None:
            magnitude = _pint.by_pint(quantity, dimension, path)
            if is_many(magnitude):
                return floats(magnitude, path)
            return _native.Si(float(magnitude))
        magnitude = quantity.magnitude
        if is_many(magnitude):
            return to_si(floats(magnitude, path), unit, dimension, path)
        return _text(magnitude, unit, dimension, path)

    def _number(self, value: Any, path: str) -> Any:
        if _pint.is_quantity(value):
            if self.registry is None:
                self.registry = _pint.registry_of(value)
            value = _pint.number_of(value, path)
        return floats(value, path) if is_many(value) else item(value)

    def _list(self, inner: Kind, value: Any, path: str, depth: int) -> Any:
        if isinstance(inner, QuantityKind | NumberKind) and not _is_plain_list(value):
            # An array with one unit for all entries, or plain numbers.
            read = self._value(inner, value, path, depth)
            if not is_array(read):
                return read
            entries = read.tolist()
            if read.ndim != 1:
                _native.refuse_type(path, f"an array of shape {read.shape}", "a list")
            return [_native.Si(entry) for entry in entries] if isinstance(inner, QuantityKind) else entries
        if not isinstance(value, list | tuple):
            _native.refuse_type(path, found(value), "a list")
        if depth >= _DEEPEST:
            _native.refuse_type(path, "deeper nesting", f"at most {_DEEPEST} levels")
        entries = []
        for place, entry in enumerate(value):
            here = f"{path}[{place}]"
            read = self._value(inner, entry, here, depth + 1)
            if is_array(read):
                _native.refuse_type(here, "an array", "one value")
            entries.append(read)
        return entries


class GivenAs:
    """A value in a field's second convention, such as the included angle in place of the bend angle."""

    __slots__ = ("name", "value")

    def __init__(self, name: str, value: object) -> None:
        self.name = name
        self.value = value

    def __repr__(self) -> str:
        return f"GivenAs({self.name!r}, {self.value!r})"

    def __eq__(self, other: object) -> bool:
        return isinstance(other, GivenAs) and self.name == other.name and bool(self.value == other.value)

    def __hash__(self) -> int:
        return hash((self.name, self.value))


def given_as(name: str, value: object) -> Any:
    """For the constructors of second conventions: it takes the place of the field's own value."""
    return GivenAs(name, value)


def _is_plain_list(value: Any) -> bool:
    """True for a list of entries, each with its own unit; not for (values, unit) or an array."""
    if not isinstance(value, list | tuple):
        return False
    if isinstance(value, tuple) and len(value) == 2 and isinstance(value[1], str):
        numbers = value[0]
        return isinstance(numbers, str | tuple) or _pint.is_quantity(numbers)
    return True


def _text(number: Any, unit: str, dimension: str, path: str) -> str:
    """Number and unit as text, so that the number is taken as the decimal that it shows."""
    number = item(number)
    is_number = isinstance(number, str | int | float) or hasattr(number, "as_integer_ratio")
    if isinstance(number, bool) or not is_number:
        reason = f"a number is due before the unit `{unit:.40}`"
        _native.refuse_quantity(path, found(number), dimension, reason)
    if isinstance(number, int) and number.bit_length() > 1100:
        _native.refuse_quantity(path, "a whole number", dimension, "larger than any number that can be held")
    return f"{number!r} {unit}" if isinstance(number, float) else f"{number} {unit}"
