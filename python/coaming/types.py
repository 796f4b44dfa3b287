"""The types of inputs and outcomes, for annotations. Importing this module imports pint and numpy."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, TypeAlias

import numpy as np
import numpy.typing as npt
import pint

Quantity: TypeAlias = "pint.Quantity[Any]"
"""A quantity of pint, of a number or of an array."""

QuantityInput: TypeAlias = "str | Quantity | tuple[npt.ArrayLike, str]"
"""A quantity: text such as `"1/8 in"`, a quantity of pint, or numbers and their unit; no bare number."""

NumberInput: TypeAlias = "npt.ArrayLike"
"""A plain number or an array of them; text such as `"40 %"` too."""

QuantityEntry: TypeAlias = "str | Quantity | tuple[float, str]"
"""A quantity within a record or list, where no arrays are taken."""

NumberEntry: TypeAlias = "float | str"
"""A plain number within a record or list."""

QuantityList: TypeAlias = "Sequence[QuantityEntry] | Quantity | tuple[npt.ArrayLike, str]"
"""A list of quantities, or an array of them with one unit."""

NumberList: TypeAlias = "Sequence[NumberEntry] | npt.ArrayLike"
"""A list of plain numbers."""

Values: TypeAlias = Any
"""A float; in the outcome of a batch an array, with NaN where an optional outcome is absent."""

Floats: TypeAlias = "npt.NDArray[np.float64]"
"""Numbers over a mesh or along a line; the array cannot be written to."""

Indices: TypeAlias = "npt.NDArray[np.uint32]"
"""Indices of a mesh, from 0; the array cannot be written to."""
