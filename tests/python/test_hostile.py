"""Hostile inputs: each is refused by a typed error that names its field; none ends the interpreter."""

from __future__ import annotations

import pickle
import re
from decimal import Decimal
from typing import Any

import pytest
from cases import all_cases, bend, built, calculations, class_of

import coaming
from coaming import _native
from coaming._inputs import Reading
from coaming._kinds import NUMBER, ListKind, OneOfKind, QuantityKind, RecordKind
from coaming.sheet import BendAllowance


@pytest.mark.parametrize(
    ("field", "value", "name"),
    [
        ("thickness", 1.6, "not_a_quantity"),
        ("thickness", 2, "not_a_quantity"),
        ("thickness", float("nan"), "not_a_quantity"),
        ("thickness", float("inf"), "not_a_quantity"),
        ("thickness", 10**30, "not_a_quantity"),
        ("thickness", 10**400, "wrong_type"),
        ("thickness", -(10**400), "wrong_type"),
        ("thickness", 10**6000, "wrong_type"),
        ("thickness", True, "wrong_type"),
        ("thickness", None, "wrong_type"),
        ("thickness", b"1.6 mm", "wrong_type"),
        ("thickness", object(), "wrong_type"),
        ("thickness", 1.6j, "wrong_type"),
        ("thickness", {"value": 1.6}, "wrong_type"),
        ("thickness", {1: 2}, "wrong_type"),
        ("thickness", {"1.6 mm"}, "wrong_type"),
        ("thickness", "1.6", "not_a_quantity"),
        ("thickness", "1.6 kg", "not_a_quantity"),
        ("thickness", "1,6 mm", "not_a_quantity"),
        ("thickness", "nan mm", "not_a_quantity"),
        ("thickness", "inf mm", "not_a_quantity"),
        ("thickness", "1e400 mm", "not_a_quantity"),
        ("thickness", "", "not_a_quantity"),
        ("thickness", "\x00", "not_a_quantity"),
        ("thickness", "\ud800", "wrong_type"),
        ("thickness", "1" * 100_000, "not_a_quantity"),
        ("thickness", "0 mm", "impossible"),
        ("thickness", "-1 mm", "impossible"),
        ("thickness", (1.6, "kg"), "not_a_quantity"),
        ("thickness", (1.6, ""), "not_a_quantity"),
        ("thickness", (1, "1/8 in"), "not_a_quantity"),
        ("thickness", (float("nan"), "mm"), "not_a_quantity"),
        ("thickness", (True, "mm"), "not_a_quantity"),
        ("thickness", (None, "mm"), "not_a_quantity"),
        ("thickness", (1.6j, "mm"), "not_a_quantity"),
        ("thickness", (10**6000, "mm"), "not_a_quantity"),
        ("thickness", (1.6, None), "not_a_quantity"),
        ("thickness", (1.6,), "not_a_quantity"),
        ("thickness", (), "not_a_quantity"),
        ("k_factor", float("nan"), "impossible"),
        ("k_factor", float("inf"), "impossible"),
        ("k_factor", 10**30, "impossible"),
        ("k_factor", 10**400, "wrong_type"),
        ("k_factor", None, "wrong_type"),
        ("k_factor", True, "wrong_type"),
        ("k_factor", "0.4 mm", "not_a_quantity"),
        ("k_factor", Decimal("0.4"), "wrong_type"),
        ("leg_reference", "to_tangnet", "not_an_option"),
        ("leg_reference", None, "wrong_type"),
        ("leg_reference", 1, "wrong_type"),
    ],
    ids=lambda value: value if isinstance(value, str) and len(value) < 20 else type(value).__name__,
)
def test_a_wrong_value_is_refused(field: str, value: Any, name: str) -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        bend(**{field: value})
    error = raised.value
    assert (error.name, error.field) == (name, field), error
    assert error.code == coaming.ErrorCode[name.upper()]
    assert error.cure and str(error) and error.row is None
    again = pickle.loads(pickle.dumps(error))
    assert repr(vars(again)) == repr(vars(error)) and str(again) == str(error)


def test_an_impossible_value_is_told_in_si_and_shown_in_shop_units() -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        bend(thickness="-1 mm")
    assert raised.value.value == -0.001
    assert str(raised.value) == "thickness: -1 mm is not possible; accepted: greater than 0 mm"


WRONG: list[Any] = [None, True, 1.5, -1, float("nan"), 10**400, "", "x", "1 parsec", b"", object()]
WRONG += [[], [1], {}, (), {"a": {}}]


@pytest.mark.parametrize("of", calculations(), ids=lambda of: of._name)
def test_every_field_of_every_calculation_stands_wrong_values(of: Any) -> None:
    cases = [case for case in all_cases() if "error" not in case.case and case.calculation == of._name]
    fields = cases[0].input
    for name in of._kinds:
        for wrong in WRONG:
            changed = {key: value for key, value in fields.items() if key in of._kinds} | {name: wrong}
            try:
                outcome = built(of, changed).calculate()
            except coaming.CoamingError:
                continue
            except TypeError as error:
                # Python itself refuses a record without its fields, or an absent second convention.
                assert "__init__() " in str(error), error
                continue
            # In the array of a batch, and only there, a NaN stands for an absent outcome.
            assert not re.search(r"(: |\()nan", repr(vars(outcome.si))), (name, wrong)


def deep_list() -> Any:
    inner: list[Any] = []
    for _ in range(100_000):
        inner = [inner]
    return inner


def endless_list() -> Any:
    endless: list[Any] = []
    endless.append(endless)
    return endless


@pytest.mark.parametrize("make", [deep_list, endless_list], ids=["deep", "endless"])
def test_deep_nesting_is_refused(make: Any) -> None:
    for call in (
        lambda: bend(leg_reference=make()),
        lambda: bend(leg_reference={"a": make()}),
        lambda: _native.calculate("bend_allowance", {"thickness": make()}),
    ):
        with pytest.raises(coaming.CoamingError) as raised:
            call()
        assert raised.value.name == "too_large"


def test_long_lists_are_refused_at_once() -> None:
    profile = class_of("sheet", "profile")
    case = next(case for case in all_cases() if case.calculation == "profile" and "error" not in case.case)
    wrongs: list[Any] = [["x"] * 10_001, "abc", 3, None, [None], [[]], [profile]]
    for wrong in wrongs:
        with pytest.raises(coaming.CoamingError) as raised:
            built(profile, case.input | {"legs": wrong}).calculate()
        assert raised.value.name in ("too_large", "wrong_type"), raised.value
        assert raised.value.field.startswith("legs")


@pytest.mark.parametrize("wrong", ["10 mm", 10.0, ["1 mm", 3.0], ["1 mm", None], ([1.0, -1.0], "mm"), [[]]])
def test_lists_of_quantities_take_quantities(wrong: Any) -> None:
    case = next(case for case in all_cases() if case.calculation == "brake_fit" and "error" not in case.case)
    given = case.input | {"brake": case.input["brake"] | {"die_openings": wrong}}
    with pytest.raises(coaming.CoamingError) as raised:
        built(class_of("sheet", "brake_fit"), given).calculate()
    assert raised.value.field.startswith("brake.die_openings"), raised.value


def test_unknown_names_are_refused() -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        _native.calculate("bend_alowance", {})
    assert raised.value.name == "unknown_calculation"
    assert "did you mean `bend_allowance`" in str(raised.value)
    with pytest.raises(coaming.CoamingError) as raised:
        _native.calculate("bend_allowance", {"thicknes": "1 mm"})
    assert (raised.value.name, raised.value.field) == ("unknown_key", "thicknes")
    with pytest.raises(coaming.CoamingError) as raised:
        _native.batch("bend_allowance", {}, {}, ["bend_alowance"])
    assert (raised.value.name, raised.value.field) == ("unknown_key", "bend_alowance")
    with pytest.raises(TypeError, match="thicknes"):
        BendAllowance(thicknes="1 mm")  # type: ignore[call-arg]


class Here:
    """A record as the generated ones are."""

    _kinds = {"length": QuantityKind("length", "mm"), "factors": ListKind(NUMBER)}

    def __init__(self, length: Any, factors: Any) -> None:
        self.length = length
        self.factors = factors


class There(Here):
    """Another of the same fields."""


class Whole:
    """A record of records, lists and alternatives."""

    _kinds = {
        "one": RecordKind(Here),
        "many": ListKind(RecordKind(Here)),
        "either": OneOfKind({"here": Here, "there": There}),
        "lengths": ListKind(QuantityKind("length", "mm")),
    }

    def __init__(self, **given: Any) -> None:
        here = Here("1 mm", [1])
        self.__dict__ |= {"one": here, "many": [here], "either": There("2 mm", (2.5,)), "lengths": ["1 mm"]}
        self.__dict__ |= given


def test_records_lists_and_alternatives_become_a_document() -> None:
    import numpy as np
    import pint

    assert Reading().record(Whole()) == {
        "one": {"length": "1 mm", "factors": [1]},
        "many": [{"length": "1 mm", "factors": [1]}],
        "either": {"there": {"length": "2 mm", "factors": [2.5]}},
        "lengths": ["1 mm"],
    }
    read = Reading().record(Whole(lengths=([1.0, 2.0], "m"), one=Here((3, "mm"), np.array([0.5, 1.5]))))
    assert repr(read["lengths"]) == "[Si(1e0), Si(2e0)]"
    assert read["one"] == {"length": "3 mm", "factors": [0.5, 1.5]}
    read = Reading().record(Whole(lengths=pint.Quantity([1.0, 2.0], "m")))
    assert repr(read["lengths"]) == "[Si(1e0), Si(2e0)]"


@pytest.mark.parametrize(
    ("given", "field"),
    [
        ({"one": 3}, "one"),
        ({"one": Here([1.0], [])}, "one.length"),
        ({"one": Here(([1.0], "m"), [])}, "one.length"),
        ({"one": Here("1 mm", [[1.0], [2.0, 3.0]])}, "one.factors[0]"),
        ({"many": Here("1 mm", [])}, "many"),
        ({"many": [Here("1 mm", []), "x"]}, "many[1]"),
        ({"many": "x"}, "many"),
        ({"either": object()}, "either"),
        ({"either": {"here": {}}}, "either"),
        ({"lengths": ([[1.0], [2.0]], "m")}, "lengths"),
        ({"lengths": [([1.0], "m")]}, "lengths[0]"),
    ],
)
def test_wrong_records_name_their_place(given: dict[str, Any], field: str) -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        Reading().record(Whole(**given))
    assert raised.value.field == field
    assert raised.value.name in ("wrong_type", "not_a_quantity")
