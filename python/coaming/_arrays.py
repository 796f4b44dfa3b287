"""Arrays among the inputs. numpy is imported when the first of them has to be made."""

from __future__ import annotations

import sys
from collections.abc import Mapping, Sequence
from typing import TYPE_CHECKING, Any

from coaming import _native

if TYPE_CHECKING:
    import numpy as np
    import numpy.typing as npt


def is_array(value: object) -> bool:
    """True for an array of numpy."""
    numpy = sys.modules.get("numpy")
    return numpy is not None and isinstance(value, numpy.ndarray)


def is_many(value: Any) -> bool:
    """True for a list or for an array that has at least one dimension."""
    if isinstance(value, list | tuple):
        return True
    return hasattr(value, "__array__") and getattr(value, "ndim", 1) > 0


def item(value: Any) -> Any:
    """A number of numpy as Python's own; anything else as it is."""
    return value.item() if hasattr(value, "__array__") and getattr(value, "ndim", 1) == 0 else value


def floats(values: Any, path: str) -> npt.NDArray[np.float64]:
    """An array of numbers; texts, flags, complex numbers and what is ragged or masked are refused."""
    import numpy as np

    try:
        array = np.asarray(values)
    except (ValueError, TypeError, OverflowError) as error:
        _native.refuse_type(path, f"what is no array ({error})"[:120], "an array of numbers")
    if array.dtype.kind not in "iuf" and array.size > 0:
        _native.refuse_type(path, f"an array of `{array.dtype}`", "an array of numbers")
    if np.ma.is_masked(values):
        _native.refuse_type(path, "an array with masked entries", "an array of numbers")
    return np.asarray(array, dtype=np.float64)


def to_si(
    numbers: npt.NDArray[np.float64], unit: str, dimension: str, path: str
) -> npt.NDArray[np.float64]:
    """The SI values of an array's numbers, in its shape."""
    import numpy as np

    flat = np.ascontiguousarray(numbers).ravel()
    return _native.to_si_array(flat, unit, dimension, path).reshape(numbers.shape)


def broadcast(
    arrays: Mapping[str, npt.NDArray[np.float64]],
) -> tuple[dict[str, npt.NDArray[np.float64]], tuple[int, ...]]:
    """The arrays as columns of one length, and the shape that they have together."""
    import numpy as np

    try:
        together = np.broadcast_arrays(*arrays.values())
    except ValueError:
        shapes = ", ".join(f"{name} {array.shape}" for name, array in arrays.items())
        _native.refuse_inconsistent(", ".join(arrays), f"arrays must broadcast to one shape; found {shapes}")
    columns = {
        name: np.ascontiguousarray(array, dtype=np.float64).ravel()
        for name, array in zip(arrays, together, strict=True)
    }
    return columns, together[0].shape


def found(value: Any) -> str:
    """What was found, in a few words."""
    name = type(value).__name__
    if isinstance(value, Sequence) and not isinstance(value, str):
        return f"a {name} of {len(value)}"
    if hasattr(value, "__array__"):
        return f"an array of shape {getattr(value, 'shape', '?')}"
    return f"`{value!r:.60}`" if isinstance(value, str | int | float | bool) else f"a value of type `{name}`"
