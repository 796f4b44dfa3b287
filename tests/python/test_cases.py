"""Every case of tests/cases through the typed classes: what is expected, and the bits that Rust gives."""

from __future__ import annotations

import json
import os
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import numpy as np
import pytest
from cases import Case, all_cases, built, class_of, outcome_of

import coaming
from coaming import _native
from coaming._kinds import Kind, ListKind, NumberKind, QuantityKind, RecordKind

CASES = all_cases()


@pytest.mark.parametrize("case", CASES, ids=str)
def test_a_case_holds(case: Case) -> None:
    if "error" in case.case:
        expected = case.case["error"]
        of = class_of(case.module, case.calculation)
        if expected["code"] in ("missing", "unknown_key"):
            # Python's own call refuses a keyword that is absent or not known.
            with pytest.raises(TypeError, match=expected["field"].rpartition(".")[2]):
                built(of, case.input)
            return
        with pytest.raises(coaming.CoamingError) as raised:
            outcome_of(case)
        assert (raised.value.name, raised.value.field) == (expected["code"], expected["field"])
        assert raised.value.code == coaming.ErrorCode[expected["code"].upper()]
        assert raised.value.cure
        return
    outcome = outcome_of(case)
    assert sorted(outcome.caveats) == sorted(case.case.get("caveats", []))
    for name, expected in case.case.get("expect", {}).items():
        found = getattr(outcome.si, name)
        compare(outcome._kinds[name], found, expected["value"], expected.get("within"), name)


def compare(kind: Kind, found: Any, expected: Any, within: Any, name: str) -> None:
    """Compares a value with what a case says; numbers within its tolerance."""
    if expected == "absent":
        assert found is None, name
        return
    match kind:
        case QuantityKind(dimension):
            near(found, _native.read(expected, dimension, name), within, dimension, name)
        case NumberKind():
            near(found, number(expected), within, "", name)
        case ListKind(inner):
            assert len(found) == len(expected), name
            for place, (one, other) in enumerate(zip(found, expected, strict=True)):
                compare(inner, one, other, within, f"{name}[{place}]")
        case RecordKind(of):
            for key, value in expected.items():
                kinds: dict[str, Kind] = vars(of)["_kinds"]
                compare(kinds[key], getattr(found, key), value, within, f"{name}.{key}")
        case _:
            assert found == expected, name


def near(found: float, expected: float, within: Any, dimension: str, name: str) -> None:
    """Asserts that a number is within `"0.1 %"`, or within a tolerance of its dimension."""
    if within is None:
        room = 0.0
    elif isinstance(within, str) and within.rstrip().endswith("%"):
        room = number(within) * abs(expected)
    elif dimension:
        of = "temperature difference" if dimension == "temperature" else dimension
        room = _native.read(within, of, name)
    else:
        room = number(within)
    assert abs(found - expected) <= room, f"{name}: found {found}, expected {expected} within {room}"


def number(value: Any) -> float:
    """A plain number of a case: `0.3`, `"40 %"`, `"3/8"`."""
    if not isinstance(value, str):
        return float(value)
    text = value.strip()
    percent = text.endswith("%")
    above, _, below = text.rstrip("% ").partition("/")
    quotient = float(above) / float(below or 1)
    return quotient / 100 if percent else quotient


def table() -> list[dict[str, Any]]:
    """What Rust made of each case, in the same order."""
    path = os.environ.get("COAMING_SAME_BITS")
    if path is None or not Path(path).is_file():
        if os.environ.get("COAMING_ALLOW_MISSING") == "1":
            pytest.skip("COAMING_SAME_BITS names no table")
        pytest.fail("COAMING_SAME_BITS must name the table that `cargo xtask test` lays down")
    rows: list[dict[str, Any]] = json.loads(Path(path).read_text(encoding="utf-8"))
    return rows


def test_every_case_has_the_bits_of_rust() -> None:
    rows = table()
    assert [row["calculation"] for row in rows] == [case.calculation for case in CASES]
    pairs = zip(CASES, rows, strict=True)
    faults = [f"{case}: {fault}" for case, row in pairs if (fault := differs(case, row))]
    assert not faults, "\n".join(faults)


def differs(case: Case, row: dict[str, Any]) -> str:
    """How Python's result differs from Rust's; empty where it does not."""
    try:
        outcome = outcome_of(case)
    except coaming.CoamingError as error:
        found = {"code": error.code, "name": error.name, "field": error.field}
        return "" if found == row.get("error") else f"{found} against {row.get('error')}"
    except TypeError as error:
        name = row.get("error", {}).get("name")
        return "" if name in ("missing", "unknown_key") else str(error)
    if "error" in row:
        return f"no error; Rust has {row['error']}"
    if list(outcome.caveats) != row["caveats"]:
        return f"{outcome.caveats} against {row['caveats']}"
    found = {name: hexed(value) for name, value in vars(outcome.si).items()}
    expected = {name: same(value) for name, value in row["outcome"].items()}
    return "" if found == expected else f"{found} against {expected}"


def hexed(value: Any) -> Any:
    """A value with its floats to the bit."""
    match value:
        case float():
            return value.hex()
        case tuple():
            return [hexed(entry) for entry in value]
        case SimpleNamespace():
            return {name: hexed(entry) for name, entry in vars(value).items()}
        case _:
            return value


def same(value: Any) -> Any:
    """The same of a value of the table, whose floats are hexadecimal."""
    match value:
        case str() if value.lstrip("-").startswith("0x"):
            return float.fromhex(value).hex()
        case list():
            return [same(entry) for entry in value]
        case dict():
            return {name: same(entry) for name, entry in value.items()}
        case _:
            return value


def rows_of(case: Case) -> dict[str, Any]:
    """Each number of the case as an array of three equal rows in SI units."""
    kinds = class_of(case.module, case.calculation)._kinds
    arrays: dict[str, Any] = {}
    for name, value in case.input.items():
        match kinds.get(name):
            case QuantityKind(dimension):
                si = np.full(3, _native.read(value, dimension, name))
                arrays[name] = (si, _native.si_unit(dimension))
            case NumberKind():
                arrays[name] = np.full(3, number(value))
    return arrays


@pytest.mark.parametrize(
    "case", [case for case in CASES if "error" not in case.case and rows_of(case)], ids=str
)
def test_a_batch_has_the_bits_of_one_row(case: Case) -> None:
    one = outcome_of(case)
    many = built(class_of(case.module, case.calculation), case.input | rows_of(case)).calculate()
    assert many.caveats == one.caveats
    numbers = [name for name, kind in one._kinds.items() if isinstance(kind, QuantityKind | NumberKind)]
    assert list(vars(many.si)) == numbers
    for name in numbers:
        value = getattr(one.si, name)
        found = getattr(many.si, name)
        if value is None:
            assert np.isnan(found).all(), name
        else:
            assert found.tobytes() == np.full(3, value).tobytes(), name
