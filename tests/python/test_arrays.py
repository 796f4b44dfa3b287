"""Arrays: broadcasting, rows in errors, what is refused."""

from __future__ import annotations

import pickle
from typing import Any

import numpy as np
import pint
import pytest
from cases import bend

import coaming
from coaming.sheet import BendAllowance, BendAllowanceOutcome


def test_inputs_broadcast_to_one_shape() -> None:
    thickness = np.array([[1.0], [1.5], [2.0]])
    angle = np.array([30.0, 60.0])
    outcome = bend(thickness=(thickness, "mm"), bend_angle=(angle, "deg"), k_factor=[0.3, 0.4])
    # (angle in radians) (r + K t), in numpy.
    expected = np.deg2rad(angle) * (0.002 + np.array([0.3, 0.4]) * thickness * 1e-3)
    assert outcome.si.bend_allowance.shape == (3, 2)
    np.testing.assert_allclose(outcome.si.bend_allowance, expected, rtol=1e-14)
    np.testing.assert_allclose(outcome.bend_allowance.to("mm").magnitude, expected * 1e3, rtol=1e-14)
    assert "<6 values, " in repr(outcome)


@pytest.mark.parametrize(
    "values",
    [
        [1.0, 1.5, 2.0],
        np.array([1.0, 1.5, 2.0]),
        np.array([1.0, 1.5, 2.0], dtype=np.float32),
        np.array([2.0, 9.0, 1.5, 9.0, 1.0])[::-2],
        np.ma.masked_array([1.0, 1.5, 2.0]),
    ],
)
def test_arrays_of_every_layout_give_the_same(values: Any) -> None:
    expected = [bend(thickness=(value, "m")).si.bend_allowance for value in (1.0, 1.5, 2.0)]
    assert bend(thickness=(values, "m")).si.bend_allowance.tolist() == expected
    unit: Any = pint.UnitRegistry()
    assert bend(thickness=unit.Quantity(np.asarray(values), "m")).si.bend_allowance.tolist() == expected


def test_whole_numbers_and_single_entries() -> None:
    assert bend(thickness=(np.array([1, 2]), "mm")).si.bend_allowance.shape == (2,)
    assert bend(thickness=(np.array(1.6), "mm")).si.bend_allowance == bend().si.bend_allowance
    one = bend(thickness="1.6 m").si.bend_allowance
    assert bend(thickness=([1.6], "m")).si.bend_allowance.tolist() == [one]


def test_a_batch_without_rows_has_no_values() -> None:
    outcome = bend(thickness=(np.empty(0), "mm"))
    assert outcome.si.bend_allowance.shape == (0,)
    assert outcome.caveats == ()
    assert "<0 values>" in repr(outcome)
    assert bend(thickness=([], "mm"), k_factor=np.empty((4, 0))).si.bend_allowance.shape == (4, 0)


def test_many_rows_over_blocks_and_threads_are_each_their_own() -> None:
    thickness = np.linspace(1e-3, 2e-3, 40_001)
    found = bend(thickness=(thickness, "m")).si.bend_allowance
    for row in (0, 8191, 8192, 20_000, 40_000):
        assert found[row] == bend(thickness=(float(thickness[row]), "m")).si.bend_allowance


def test_absent_outcomes_are_nan_in_a_batch_alone() -> None:
    # DIN 6935 makes no correction above an opening angle of 165 degrees: no setback.
    given: dict[str, Any] = {"leg_reference": "din_6935"}
    assert bend(bend_angle="10 deg", **given).setback is None
    many = bend(bend_angle=([10.0, 90.0], "deg"), **given)
    assert np.isnan(many.si.setback).tolist() == [True, False]


def test_the_lowest_failing_row_is_named() -> None:
    thickness = np.full(30_000, 1.6)
    thickness[[20_001, 29_999]] = [-1.0, np.nan]
    with pytest.raises(coaming.CoamingError) as raised:
        bend(thickness=(thickness, "mm"))
    error = raised.value
    assert (error.name, error.field, error.row, error.value) == ("impossible", "thickness", 20_001, -0.001)
    for wrong in (np.nan, np.inf, -np.inf, 0.0):
        with pytest.raises(coaming.CoamingError) as raised:
            bend(thickness=([1.6, wrong], "mm"))
        assert (raised.value.name, raised.value.row) == ("impossible", 1)


def test_the_first_row_may_be_the_failing_one() -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        bend(thickness=([-1.0, 1.6], "mm"))
    assert (raised.value.name, raised.value.field, raised.value.row) == ("impossible", "thickness", 0)


def test_shapes_that_do_not_go_together_are_refused() -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        bend(thickness=(np.ones(3), "mm"), k_factor=np.full(2, 0.4))
    assert (raised.value.name, raised.value.field) == ("inconsistent", "thickness, k_factor")


@pytest.mark.parametrize(
    ("field", "value", "name"),
    [
        ("thickness", np.ones(3), "not_a_quantity"),
        ("thickness", [1.0, 2.0], "not_a_quantity"),
        ("thickness", (np.ones(3), "kg"), "not_a_quantity"),
        ("thickness", (np.ones(3), ""), "not_a_quantity"),
        ("thickness", (np.ones(3), "furlong"), "not_a_quantity"),
        ("thickness", (np.ones(3, dtype=bool), "mm"), "wrong_type"),
        ("thickness", (np.ones(3, dtype=complex), "mm"), "wrong_type"),
        ("thickness", (np.array(["1", "2"]), "mm"), "wrong_type"),
        ("thickness", ([1.0, None], "mm"), "wrong_type"),
        ("thickness", ([[1.0], [1.0, 2.0]], "mm"), "wrong_type"),
        ("thickness", ([10**400], "mm"), "wrong_type"),
        ("thickness", (np.ma.masked_array([1.0, 2.0], [False, True]), "mm"), "wrong_type"),
        ("k_factor", np.array(["a"]), "wrong_type"),
        ("k_factor", [0.4, "x"], "wrong_type"),
        ("leg_reference", ["to_tangent", "to_tangent"], "wrong_type"),
        ("leg_reference", np.ones(2), "wrong_type"),
    ],
)
def test_arrays_of_wrong_things_are_refused(field: str, value: Any, name: str) -> None:
    with pytest.raises(coaming.CoamingError) as raised:
        bend(**{field: value})
    assert (raised.value.name, raised.value.field) == (name, field)


def test_the_arrays_given_are_left_alone() -> None:
    thickness = np.linspace(1.0, 2.0, 5)
    before = thickness.copy()
    thickness.setflags(write=False)
    bend(thickness=(thickness, "m"))
    assert (thickness == before).all()


def test_what_is_not_a_number_is_not_in_a_batch() -> None:
    from coaming.sheet import BrakeFitOutcome

    with pytest.raises(AttributeError, match="a batch gives quantities and plain numbers only"):
        BrakeFitOutcome({})._get("bends")


def test_outcomes_do_not_change_and_can_be_pickled() -> None:
    outcome = bend(k_factor=0.6)
    with pytest.raises(AttributeError):
        outcome.si = None
    again = pickle.loads(pickle.dumps(outcome))
    assert isinstance(again, BendAllowanceOutcome)
    assert (again.si, again.caveats) == (outcome.si, outcome.caveats)
    situation = BendAllowance(
        bend_angle="90 deg",
        inside_radius="2 mm",
        thickness="1.6 mm",
        k_factor=0.6,
        leg_reference="to_tangent",
    )
    assert pickle.loads(pickle.dumps(situation)).thickness == "1.6 mm"
