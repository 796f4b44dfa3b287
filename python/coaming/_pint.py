"""Quantities of pint: in through our own reader where it knows the unit, out in the unit of the field.

pint is imported when the first of its quantities has to be made; one that comes in has imported it already.
"""

from __future__ import annotations

import re
import sys
from typing import Any, NoReturn

from coaming import _native

_OURS = {
    "meter": "m",
    "millimeter": "mm",
    "centimeter": "cm",
    "decimeter": "dm",
    "kilometer": "km",
    "micrometer": "um",
    "nanometer": "nm",
    "inch": "in",
    "foot": "ft",
    "yard": "yd",
    "thou": "thou",
    "microinch": "uin",
    "kilogram": "kg",
    "gram": "g",
    "milligram": "mg",
    "metric_ton": "t",
    "pound": "lb",
    "ounce": "oz",
    "second": "s",
    "millisecond": "ms",
    "minute": "min",
    "hour": "h",
    "day": "d",
    "hertz": "Hz",
    "kilohertz": "kHz",
    "revolutions_per_minute": "rpm",
    "kelvin": "K",
    "degree_Celsius": "degC",
    "degree_Fahrenheit": "degF",
    "delta_degree_Celsius": "delta_degC",
    "delta_degree_Fahrenheit": "delta_degF",
    "radian": "rad",
    "milliradian": "mrad",
    "degree": "deg",
    "arcminute": "arcmin",
    "arcsecond": "arcsec",
    "newton": "N",
    "millinewton": "mN",
    "decanewton": "daN",
    "kilonewton": "kN",
    "meganewton": "MN",
    "force_pound": "lbf",
    "force_ounce": "ozf",
    "kip": "kip",
    "force_kilogram": "kgf",
    "pascal": "Pa",
    "hectopascal": "hPa",
    "millibar": "mbar",
    "kilopascal": "kPa",
    "megapascal": "MPa",
    "gigapascal": "GPa",
    "bar": "bar",
    "pound_force_per_square_inch": "psi",
    "kip_per_square_inch": "ksi",
    "liter": "L",
    "milliliter": "mL",
    "cubic_centimeter": "cc",
    "fluid_ounce": "floz",
    "joule": "J",
    "kilojoule": "kJ",
    "watt": "W",
    "kilowatt": "kW",
    "standard_gravity": "gn",
}
"""pint's names of the units that our reader knows with the same meaning. Left out on purpose: pint's `mil` is
an angle, and its thermal unit is another than ours."""

_ROOTS = ("meter", "kilogram", "second", "kelvin", "radian")


def is_quantity(value: object) -> bool:
    """True for a quantity of any of pint's registries."""
    pint = sys.modules.get("pint")
    return pint is not None and isinstance(value, pint.Quantity)


def registry_of(quantity: Any) -> Any:
    """The registry that a quantity belongs to."""
    return quantity._REGISTRY


def our_unit(quantity: Any, dimension: str) -> str | None:
    """The quantity's unit as our reader spells it; None where it does not know it."""
    items = list(quantity.unit_items())
    factors = []
    for name, power in items:
        symbol = _OURS.get(name)
        if symbol is None or power != int(power):
            return None
        # A lone `g` for an acceleration would be read as standard gravity; here it is a gram.
        is_plain = power == 1 and not (symbol == "g" and dimension == "acceleration")
        factors.append(symbol if is_plain else f"{symbol}^{int(power)}")
    return "*".join(factors) or None


def by_pint(quantity: Any, dimension: str, field: str) -> Any:
    """The magnitude in SI units, by pint's own conversion, for a unit that our reader does not know."""
    exponents = _native.exponents(dimension)
    try:
        found = dict(quantity.to_root_units().unit_items())
        found["kilogram"] = found.pop("gram", 0)
        due = zip(_ROOTS, exponents, strict=True)
        if any(found.pop(root, 0) != power for root, power in due) or found:
            _refuse(quantity, dimension, field, f"its unit does not measure {dimension}")
        if _is_of_the_other_temperature(quantity, dimension):
            _refuse(quantity, dimension, field, "a temperature and a temperature difference are two things")
        powers = zip(_ROOTS, exponents, strict=True)
        unit = " * ".join(f"{root} ** {power}" for root, power in powers if power)
        return quantity.to(unit).magnitude
    except (ArithmeticError, AttributeError, TypeError, ValueError) as error:
        _refuse(quantity, dimension, field, str(error))


def number_of(quantity: Any, field: str) -> Any:
    """The magnitude of a quantity without a dimension, percentages included."""
    units = dict(quantity.unit_items())
    if not units:
        return quantity.magnitude
    if units == {"percent": 1} and not hasattr(quantity.magnitude, "__array__"):
        return f"{quantity.magnitude!r} %"
    try:
        if quantity.to_root_units().unitless:
            return quantity.to("dimensionless").magnitude
    except (ArithmeticError, AttributeError, TypeError, ValueError):
        pass
    return _native.refuse_type(field, f"`{_words(quantity)}`", "a plain number")


def made(si: Any, unit: str, dimension: str, registry: Any) -> Any:
    """A quantity in the unit, from a number or an array in SI units."""
    import pint

    if unit == "rpm":
        # A turn is 2 pi to pint, so that its rpm would become another number of hertz than ours.
        unit = "Hz"
    if registry is None:
        application: Any = pint.get_application_registry
        registry = application()
    if isinstance(si, float):
        magnitude: Any = _native.from_si(si, unit, dimension)
    else:
        magnitude = _native.from_si_array(si.ravel(), unit, dimension).reshape(si.shape)
    return registry.Quantity(magnitude, _theirs(unit, dimension))


def _theirs(unit: str, dimension: str) -> str:
    """Our unit as pint spells it."""
    if unit == "K" and dimension == "temperature difference":
        return "delta_degC"
    return re.sub(r"\bgn\b", "standard_gravity", unit.replace("·", "*"))


def _is_of_the_other_temperature(quantity: Any, dimension: str) -> bool:
    """True for a difference where a temperature is due, or a scale with an offset for a difference."""
    if dimension == "temperature":
        return any(name.startswith("delta_") for name, _ in quantity.unit_items())
    if dimension == "temperature difference":
        zero = registry_of(quantity).Quantity(0.0, quantity.units)
        return bool(zero.to_root_units().magnitude != 0.0)
    return False


def _words(quantity: Any) -> str:
    return f"{quantity.magnitude!s:.40} {quantity.units!s:.60}"


def _refuse(quantity: Any, dimension: str, field: str, reason: str) -> NoReturn:
    _native.refuse_quantity(field, _words(quantity), dimension, reason)
