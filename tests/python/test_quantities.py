"""Quantities in and out: text, pint, numbers with a unit; against exact fractions."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import mpmath  # type: ignore[import-untyped]
import numpy as np
import pint
import pytest
from cases import all_cases, bend, calculations, class_of, outcome_of
from hypothesis import given
from hypothesis import strategies as st

import coaming
from coaming import _native, _pint
from coaming._inputs import Reading
from coaming._kinds import QuantityKind
from coaming.sheet import BendAllowance

mpmath.mp.dps = 60
PI = Fraction(int(mpmath.floor(mpmath.pi * 10**50)), 10**50)
"""Pi cut at 50 digits: a relative 1e-50, far below what any rounding here can feel."""

# (unit, dimension, offset, factor), by their definitions: NIST SP 811, appendix B.
UNITS: list[tuple[str, str, Fraction, Fraction]] = [
    ("mm", "length", Fraction(0), Fraction(1, 1000)),
    ("in", "length", Fraction(0), Fraction(254, 10000)),
    ("degF", "temperature", Fraction("459.67"), Fraction(5, 9)),
    ("degC", "temperature", Fraction("273.15"), Fraction(1)),
    ("deg", "angle", Fraction(0), PI / 180),
    ("lbf", "force", Fraction(0), Fraction("4.4482216152605")),
    ("psi", "pressure", Fraction(0), Fraction("4.4482216152605") / Fraction("0.0254") ** 2),
]

LARGE = st.decimals(min_value=-(10**9), max_value=10**9, allow_nan=False, places=6)
DECIMALS = LARGE | st.decimals(min_value=-2000, max_value=2000, allow_nan=False, places=2)

Unit = tuple[str, str, Fraction, Fraction]


@given(decimal=DECIMALS, unit=st.sampled_from(UNITS))
def test_text_is_read_exactly_and_rounded_once(decimal: Any, unit: Unit) -> None:
    symbol, dimension, offset, factor = unit
    # A quotient of integers in Python is correctly rounded.
    expected = float((Fraction(decimal) + offset) * factor)
    assert _native.read(f"{decimal:f} {symbol}", dimension, "") == expected


@given(above=st.integers(-10000, 10000), below=st.integers(1, 128), unit=st.sampled_from(["mm", "in"]))
def test_fractions_are_read_exactly(above: int, below: int, unit: str) -> None:
    factor = {"mm": Fraction(1, 1000), "in": Fraction(254, 10000)}[unit]
    assert _native.read(f"{above}/{below} {unit}", "length", "") == float(Fraction(above, below) * factor)


FLOATS = st.floats(-1e12, 1e12).filter(lambda x: x == 0 or abs(x) > 1e-100)


@given(numbers=st.lists(FLOATS, min_size=1, max_size=20), unit=st.sampled_from(UNITS))
def test_arrays_are_converted_exactly_and_rounded_once(numbers: list[float], unit: Unit) -> None:
    symbol, dimension, offset, factor = unit
    # `Fraction` of a float is the binary value itself.
    expected = [float((Fraction(number) + offset) * factor) for number in numbers]
    found = coaming.to_si(numbers, symbol, dimension)
    assert found.tolist() == expected
    back = _native.from_si_array(found, symbol, dimension)
    assert back.tolist() == [float(Fraction(si) / factor - offset) for si in found.tolist()]


def si_of(dimension: str, value: Any) -> float:
    """The SI value that an input reaches the library with."""
    reading = Reading()
    read = reading._quantity(dimension, value, "field")
    return _native.read(read, dimension, "field") if isinstance(read, str) else read_si(read)


def read_si(read: Any) -> float:
    return float(repr(read).removeprefix("Si(").removesuffix(")"))


def test_the_forms_of_one_length_have_the_same_bits() -> None:
    unit: Any = pint.UnitRegistry()
    expected = float(Fraction(16, 10000))
    for value in [
        "1.6 mm",
        "0.16 cm",
        "0.0016 m",
        unit.Quantity(1.6, "mm"),
        unit.Quantity(0.16, "cm"),
        unit.Quantity(1600, "um"),
        (1.6, "mm"),
        (np.float64(1.6), "mm"),
        (Fraction(8, 5), "mm"),
    ]:
        assert si_of("length", value) == expected, value
        assert bend(thickness=value).si.bend_allowance == bend().si.bend_allowance, value


def test_temperatures_and_differences_are_two_things() -> None:
    unit: Any = pint.UnitRegistry()
    assert si_of("temperature", unit.Quantity(60, "degC")) == 333.15
    assert si_of("temperature", unit.Quantity(140, "degF")) == 333.15
    assert si_of("temperature", unit.Quantity(333.15, "K")) == 333.15
    assert si_of("temperature", unit.Quantity(599.67, "degR")) == pytest.approx(333.15, rel=1e-15)
    assert si_of("temperature difference", unit.Quantity(30, "delta_degC")) == 30.0
    assert si_of("temperature difference", unit.Quantity(54, "delta_degF")) == 30.0
    assert si_of("temperature difference", unit.Quantity(30, "K")) == 30.0
    assert si_of("expansion", unit.Quantity(23.6e-6, "1/delta_degC")) == 23.6e-6
    assert si_of("expansion", unit.Quantity(23.6, "um/(m*K)")) == 23.6e-6
    for dimension, value in [
        ("temperature difference", unit.Quantity(30, "degC")),
        ("temperature difference", unit.Quantity(30, "degRe")),
        ("temperature", unit.Quantity(30, "delta_degC")),
        ("temperature", unit.Quantity(30, "delta_degRe")),
        ("temperature", unit.Quantity(30, "mm")),
    ]:
        with pytest.raises(coaming.CoamingError) as raised:
            si_of(dimension, value)
        assert raised.value.name == "not_a_quantity", value


def test_units_that_the_reader_does_not_know_go_by_pint() -> None:
    unit: Any = pint.UnitRegistry()
    # Definitions: NIST SP 811, appendix B (furlong by the US survey foot is pint's own).
    assert si_of("length", unit.Quantity(1, "nautical_mile")) == 1852.0
    assert si_of("pressure", unit.Quantity(1, "atm")) == pytest.approx(101325.0, rel=1e-15)
    assert si_of("frequency", unit.Quantity(1, "MHz")) == pytest.approx(1e6, rel=1e-15)
    values = unit.Quantity(np.array([1.0, 2.0]), "nautical_mile")
    assert bend(inside_radius=values).si.neutral_radius.tolist() == pytest.approx([1852.00064, 3704.00064])


def test_words_that_mean_two_things_are_not_confused() -> None:
    unit: Any = pint.UnitRegistry()
    # 1500 rpm is 25 turns a second, whatever a registry makes of a turn.
    assert si_of("frequency", unit.Quantity(1500, "rpm")) == 25.0
    assert si_of("acceleration", unit.Quantity(3, "g_0")) == 3 * 9.80665
    assert si_of("angle", unit.Quantity(1, "turn")) == pytest.approx(2 * float(PI), rel=1e-15)
    assert si_of("length", "1 mil") == si_of("length", unit.Quantity(1, "thou")) == 2.54e-5
    refused: list[tuple[str, Any]] = [
        ("acceleration", unit.Quantity(3, "g")),
        ("frequency", unit.Quantity(3, "rad/s")),
        ("angle", unit.Quantity(1.5, "")),
        # pint's mil is an angle; ours, in text, is a thou.
        ("length", unit.Quantity(1, "mil")),
        ("length", unit.Quantity(1.5, "")),
        ("length", unit.Quantity(1.5, "kg")),
        ("length", unit.Quantity(float("nan"), "mm")),
        ("length", unit.Quantity(float("inf"), "mm")),
        ("length", unit.Quantity(1.5, "A*m/A*bit")),
        ("pressure", unit.Quantity(1.5, "dBm")),
    ]
    for dimension, value in refused:
        with pytest.raises(coaming.CoamingError) as raised:
            si_of(dimension, value)
        assert (raised.value.name, raised.value.field) == ("not_a_quantity", "field"), value


def test_turns_a_minute_come_out_in_hertz() -> None:
    # To pint a turn is 2 pi: 1500 rpm as its own unit would be 157 Hz and not 25.
    made = _pint.made(25.0, "rpm", "frequency", None)
    assert made.to("Hz").magnitude == 25.0


def test_plain_numbers_may_be_percentages() -> None:
    unit: Any = pint.UnitRegistry()
    expected = bend(k_factor=0.4).si.bend_allowance
    of_pint = [unit.Quantity(40.0, "percent"), unit.Quantity(0.4, "")]
    for value in ["40 %", "0.4", "2/5", np.float64(0.4), *of_pint]:
        assert bend(k_factor=value).si.bend_allowance == expected, value
    assert bend(k_factor=unit.Quantity(400.0, "mm/m")).si.bend_allowance == pytest.approx(expected)
    with pytest.raises(coaming.CoamingError) as raised:
        bend(k_factor=unit.Quantity(0.4, "mm"))
    assert (raised.value.name, raised.value.field) == ("wrong_type", "k_factor")


def test_quantities_come_out_in_the_registry_of_the_inputs() -> None:
    unit: Any = pint.UnitRegistry()
    outcome = bend(thickness=unit.Quantity(1.6, "mm"))
    assert outcome.bend_allowance + unit.Quantity(0, "mm") == outcome.bend_allowance
    application: Any = pint.get_application_registry
    assert isinstance(bend().bend_allowance, application().Quantity)
    # (pi/2) (2 + 0.4 * 1.6) mm, by hand.
    assert outcome.bend_allowance.units == unit.Unit("mm")
    assert outcome.bend_allowance.magnitude == pytest.approx(float(PI / 2 * Fraction("2.64")), rel=1e-15)


def kinds_of_outcomes() -> list[QuantityKind]:
    found = {kind for of in calculations() for kind in of._kinds.values() if isinstance(kind, QuantityKind)}
    for case in all_cases():
        if "error" not in case.case:
            found |= {kind for kind in outcome_of(case)._kinds.values() if isinstance(kind, QuantityKind)}
    return sorted(found, key=lambda kind: (kind.dimension, kind.unit))


@pytest.mark.parametrize("kind", kinds_of_outcomes(), ids=lambda kind: f"{kind.dimension} in {kind.unit}")
def test_every_unit_of_an_outcome_is_known_to_pint(kind: QuantityKind) -> None:
    for si in [293.15, 0.1 + 0.2]:
        made = _pint.made(si, kind.unit, kind.dimension, None)
        assert si_of(kind.dimension, made) == pytest.approx(si, rel=4e-16, abs=1e-13)
        # Through pint's own factors too, which are rounded more often.
        assert _pint.by_pint(made, kind.dimension, "") == pytest.approx(si, rel=1e-13, abs=1e-12)


def test_an_outcome_shows_its_quantities() -> None:
    outcome = bend(k_factor=0.6)
    words = repr(outcome)
    # (pi/2) (2 + 0.6 * 1.6) mm = 4.6496 mm; setback 3.6 mm; deduction 2.5504 mm, by hand.
    assert words == (
        "BendAllowanceOutcome(bend_allowance=4.65 mm, setback=3.6 mm, bend_deduction=2.55 mm, "
        "neutral_radius=2.96 mm, caveats=(outside_tested))"
    )
    assert outcome.caveats == (coaming.Caveat.OUTSIDE_TESTED,)
    assert "outside_tested" in outcome.caveats
    assert outcome.caveats[0].text and outcome.caveats[0].cure


def test_the_second_convention_is_the_supplement() -> None:
    others: dict[str, Any] = {
        "inside_radius": "2 mm", "thickness": "1.6 mm", "k_factor": 0.4, "leg_reference": "to_virtual_sharp",
    }
    acute = BendAllowance.with_included_angle(included_angle="60 deg", **others).calculate()
    assert acute.si.bend_allowance == pytest.approx(bend(bend_angle="120 deg").si.bend_allowance, rel=1e-15)
    many = BendAllowance.with_included_angle(included_angle=([60.0, 90.0], "deg"), **others).calculate()
    assert many.si.bend_allowance[0] == acute.si.bend_allowance
    with pytest.raises(coaming.CoamingError) as raised:
        BendAllowance.with_included_angle(included_angle="-10 deg", **others).calculate()
    assert (raised.value.name, raised.value.field) == ("impossible", "included_angle")
    assert class_of("sheet", "bend_allowance") is BendAllowance
