"""The package as it is installed: what it imports, what it exports, its docstrings."""

from __future__ import annotations

import doctest
import importlib
import inspect
import subprocess
import sys

import pytest
from cases import calculations

import coaming
from coaming import _native


def test_pint_and_numpy_are_imported_at_first_need() -> None:
    program = """
import sys
import coaming
from coaming.sheet import BendAllowance
bend = BendAllowance(
    bend_angle="90 deg", inside_radius="2 mm", thickness="1.6 mm", k_factor=0.4, leg_reference="to_tangent"
)
outcome = bend.calculate()
outcome.si.bend_allowance, repr(outcome)
assert not {"numpy", "pint"} & set(sys.modules), "too early"
outcome.bend_allowance
assert "pint" in sys.modules
"""
    subprocess.run([sys.executable, "-c", program], check=True)


def test_what_is_exported_is_there() -> None:
    for name in coaming.__all__:
        assert getattr(coaming, name) is not None
    assert coaming.__version__ == _native.__version__


def test_the_docstring_of_the_package_runs() -> None:
    failed, attempted = doctest.testmod(coaming)
    assert failed == 0 and attempted > 0


def test_codes_and_bits_are_permanent_numbers() -> None:
    # As the declarations in Rust number them: the first of each group, and the errors that callers test for.
    assert (coaming.ErrorCode.IMPOSSIBLE, coaming.ErrorCode.NOT_A_QUANTITY) == (1, 6)
    assert (coaming.Caveat.OUTSIDE_TESTED.bit, coaming.Caveat.NOT_STEEL.bit) == (0, 8)
    assert len({caveat.bit for caveat in coaming.Caveat}) == len(coaming.Caveat)


@pytest.mark.parametrize("of", calculations(), ids=lambda of: of._name)
def test_every_calculation_tells_what_it_needs(of: type) -> None:
    module = importlib.import_module(of.__module__)
    assert of.__name__ in module.__all__
    doc = inspect.getdoc(of) or ""
    for heading in ("Formula", "Validity", "Source", "Fields"):
        assert f"\n{heading}\n{'-' * len(heading)}\n" in doc, heading
    assert "```" not in doc and "[`" not in doc
    for name in of._kinds:  # type: ignore[attr-defined]
        assert f"- `{name}`" in doc
    outcome = getattr(module, inspect.signature(of.calculate).return_annotation)  # type: ignore[attr-defined]
    for name in outcome._kinds:
        assert inspect.getdoc(getattr(outcome, name))
