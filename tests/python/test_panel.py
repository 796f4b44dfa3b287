"""One panel by itself: arrays, signs, progress and stopping, typed errors."""

from __future__ import annotations

import json
import os
import pickle
import signal
import threading
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from coaming import CoamingError, _native, panel
from coaming._boundary import OutcomeRecord
from coaming._kinds import ArrayKind, ListKind, NumberKind, QuantityKind, RecordKind
from coaming.panel import CaseSolution, Panel, Progress

PANELS = Path(__file__).parent.parent.parent / "examples" / "panels"


def plate() -> dict[str, Any]:
    """A square of 1 m on a knife edge all round, under 100 Pa."""
    return {
        "version": 1,
        "title": "plate",
        "outline": {"rectangle": {"width": "1 m", "height": "1 m"}},
        "layers": [
            {
                "name": "sheet",
                "thickness": "5 mm",
                "density": "2700 kg/m^3",
                "material": {"isotropic": {"youngs_modulus": "70 GPa", "poissons_ratio": 0.3}},
            }
        ],
        "line_supports": [{"line": {"edge": {}}, "deflection": "fixed", "slope": "free"}],
        "load_cases": [{"name": "wind", "pressures": [{"pressure": "100 Pa"}]}],
    }


def lid() -> dict[str, Any]:
    """A square lid that a latch at each corner draws onto a gasket."""
    document = plate()
    del document["line_supports"]
    corners = [("a", -0.45, -0.45), ("b", 0.45, -0.45), ("c", 0.45, 0.45), ("d", -0.45, 0.45)]
    return document | {
        "gaskets": [
            {
                "line": {"rectangle": {"width": "0.9 m", "height": "0.9 m"}},
                "law": {"linear": {"stiffness": "0.02 MPa"}},
                "free_height": "10 mm",
                "closed_gap": "7 mm",
            }
        ],
        "latches": [
            {"name": name, "at": {"x": f"{x} m", "y": f"{y} m"}, "action": {"height": {"deflection": "0 mm"}}}
            for name, x, y in corners
        ],
        "load_cases": [{"name": "closed", "modes": 2, "opening": True}],
    }


def test_a_plate_under_pressure() -> None:
    """Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8: 0.00406 q a^4 / D."""
    solution = panel.solve(plate())
    case = solution.cases[0]
    printed = -0.00406 * 100.0 * 12 * (1 - 0.3**2) / (70e9 * 0.005**3)
    assert case.field.deflection_m.min() == pytest.approx(printed, rel=0.005)
    assert case.largest_deflection.si.value == case.field.deflection_m.min()
    assert case.largest_deflection.value.to("mm").magnitude == pytest.approx(printed * 1e3, rel=0.005)
    assert case.field.triangles.max() == len(case.field.x_m) - 1
    # The same table: 0.0479 q a^2 in the middle; the inner face is stretched, so the moment is negative.
    assert case.field.moment_xx_n.min() == pytest.approx(-4.79, rel=0.02)
    assert case.line_reactions[0].si.force == pytest.approx(100.0, abs=1e-6)
    assert case.largest_moment.si.value == pytest.approx(-4.79, rel=0.02)
    assert case.error.met and case.balance.force < 1e-8
    assert any("not a certificate" in caution for caution in solution.cautions)


def test_arrays_cannot_be_written_to() -> None:
    case = Panel(lid()).solve()
    arrays = list(every_array(case))
    assert len(arrays) > 20
    for array in arrays:
        assert not array.flags.writeable
        with pytest.raises(ValueError, match="read-only"):
            array[...] = 0


def every_array(record: OutcomeRecord) -> Any:
    """Each array of a solution; every field of its class is there, and no other."""
    assert set(record._data) == set(record._kinds)
    for name, kind in record._kinds.items():
        found = getattr(record, name)
        if isinstance(kind, ArrayKind):
            yield found
        elif isinstance(kind, RecordKind) and found is not None:
            yield from every_array(found)
        elif isinstance(kind, ListKind) and isinstance(kind.of, RecordKind):
            for entry in found:
                yield from every_array(entry)


def test_one_load_after_another() -> None:
    plain = Panel(plate())
    assert (plain.title, plain.load_cases) == ("plate", ("wind",))
    inward = plain.solve("wind")
    outward = plain.solve({"name": "out", "pressures": [{"pressure": "-100 Pa"}]})
    assert outward.name == "out"
    # A linear panel: the load turned round turns the deflection round, to the bit.
    assert np.array_equal(inward.field.deflection_m, -outward.field.deflection_m)
    again = plain.solve(0)
    assert np.array_equal(inward.field.deflection_m, again.field.deflection_m)


def test_a_lid_with_modes_opening_and_a_missing_latch() -> None:
    closed = Panel(lid())
    case = closed.solve()
    pulls = [latch.si.pull for latch in case.latches]
    # By symmetry the latches share what the gasket pushes.
    assert pulls == pytest.approx([case.gaskets[0].si.force / 4] * 4, rel=0.01)
    assert case.modes is not None and case.opening is not None
    assert closed.modes(2).modes[1].si.frequency == case.modes.modes[1].si.frequency
    assert closed.opening().si.travels == case.opening.si.travels
    assert len(case.modes.modes[0].shape_m) == len(case.modes.x_m)
    missing = closed.solve({"name": "one missing", "missing_latches": ["a"]})
    assert missing.latches[0].si.pull == 0.0 and missing.latches[0].si.deflection > 0.0
    assert missing.modes is None and missing.opening is None
    assert pickle.loads(pickle.dumps(case)).latches[0].pull == case.latches[0].pull
    assert "LatchState(name='a'" in repr(case)


def test_modes_are_those_of_the_closed_form() -> None:
    """Simply supported plate, f = pi/2 (i^2 + j^2)/a^2 sqrt(D / (rho h)): the exact solution for thin plates."""
    unit = np.pi / 2 * np.sqrt(70e9 * 0.005**3 / (12 * (1 - 0.3**2)) / (2700 * 0.005))
    found = [mode.si.frequency for mode in Panel(plate()).modes(3).modes]
    assert found == pytest.approx([2 * unit, 5 * unit, 5 * unit], rel=0.005)


def test_text_and_arrays_are_of_one_solution() -> None:
    document = json.dumps(plate())
    data = json.loads(panel.text(document, output="json"))
    case = panel.solve(document).cases[0]
    assert np.array_equal(data["cases"][0]["field"]["deflection_m"], case.field.deflection_m)
    assert "not a certificate" in " ".join(panel.text(document).split()).lower()


@pytest.mark.parametrize("name", sorted(file.stem for file in PANELS.glob("*.toml")))
def test_the_same_bits_as_in_rust(name: str) -> None:
    laid_down = Path(os.environ["COAMING_SAME_BITS"]).parent / f"{name}.panel.json"
    expected = json.loads(laid_down.read_text(encoding="utf-8"))
    solved = Panel((PANELS / f"{name}.toml").read_text(encoding="utf-8"))
    assert len(expected["cases"]) == len(solved.load_cases)
    for nth, data in enumerate(expected["cases"]):
        same(solved.solve(nth), data)


def same(found: OutcomeRecord, expected: dict[str, Any]) -> None:
    """Every number has the bits that the JSON text has, which reads back to the same."""
    for name, kind in found._kinds.items():
        value = getattr(found, name)
        if value is None:
            assert expected.get(name) is None, name
        elif isinstance(kind, ArrayKind):
            assert np.array_equal(value.ravel(), np.array(expected[name], dtype=value.dtype)), name
        elif isinstance(kind, QuantityKind):
            assert getattr(found.si, name) == _native.read(expected[name], kind.dimension, name), name
        elif isinstance(kind, NumberKind):
            assert value == expected[name], name
        elif isinstance(kind, RecordKind):
            same(value, expected[name])
        elif isinstance(kind, ListKind) and isinstance(kind.of, RecordKind):
            assert len(value) == len(expected[name])
            for entry, data in zip(value, expected[name], strict=True):
                same(entry, data)


def test_progress_is_told_in_order() -> None:
    told: list[Progress] = []
    case = Panel(plate()).solve(progress=told.append)
    assert told[0] == ("equilibrium", 0, told[0].triangles, 0)
    for before, after in zip(told, told[1:], strict=False):
        assert (after.mesh, after.step) in ((before.mesh, before.step + 1), (before.mesh + 1, 0))
    assert told[-1].triangles == case.error.triangles


def test_a_solve_is_stopped_by_what_progress_gives_back() -> None:
    plain = Panel(plate())
    for call in (plain.solve, plain.opening, lambda **given: plain.modes(1, **given)):
        with pytest.raises(CoamingError) as caught:
            call(progress=lambda now: now.step == 1)
        assert caught.value.name == "cancelled"
    assert plain.solve().error.met


def test_an_exception_of_progress_comes_through() -> None:
    plain = Panel(plate())

    def fail(now: Progress) -> None:
        raise KeyError(now.work)

    with pytest.raises(KeyError, match="equilibrium"):
        plain.solve(progress=fail)
    with pytest.raises(TypeError):
        plain.solve(progress=3)  # type: ignore[arg-type]
    assert plain.solve().error.met


def test_ctrl_c_stops_a_solve() -> None:
    plain = Panel(plate())

    def interrupt(now: Progress) -> None:
        if now.mesh == 0 and now.step == 1:
            os.kill(os.getpid(), signal.SIGINT)

    with pytest.raises(KeyboardInterrupt):
        plain.solve(progress=interrupt)
    assert plain.solve().error.met


def test_a_second_solve_at_the_same_time_is_refused() -> None:
    plain = Panel(plate())
    caught: list[str] = []

    def again(now: Progress) -> None:
        try:
            plain.solve()
        except CoamingError as error:
            caught.append(error.name)

    plain.solve(progress=again)
    assert set(caught) == {"inconsistent"}
    assert plain.solve().error.met


def test_panels_are_solved_on_many_threads_at_once() -> None:
    alone = Panel(plate()).solve().field.deflection_m
    found: list[CaseSolution] = []
    threads = [threading.Thread(target=lambda: found.append(Panel(plate()).solve())) for _ in range(4)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert len(found) == 4
    assert all(np.array_equal(case.field.deflection_m, alone) for case in found)


@pytest.mark.parametrize(
    ("load", "name", "field"),
    [
        (1, "impossible", "load_case"),
        (-1, "impossible", "load"),
        (10**30, "impossible", "load"),
        (10**400, "impossible", "load"),
        (True, "wrong_type", "load"),
        (None, "wrong_type", "load"),
        (0.0, "wrong_type", "load"),
        ("wimd", "not_an_option", "load_case"),
        ({}, "missing", "name"),
        ({"name": "a", "presures": []}, "unknown_key", "presures"),
        ({"name": "a", "modes": 0}, "impossible", "modes"),
        ({"name": "a", "modes": float("nan")}, "wrong_type", "load"),
        ({"name": object()}, "wrong_type", "load"),
        ({"name": "a", "missing_latches": ["x"]}, "not_an_option", "load.missing_latches[0]"),
        ({"name": "a", "temperatures": [{"layer": "sheet", "rise": "1 K"}]}, "missing", "layers[0].expansion"),
    ],
)
def test_a_load_that_cannot_be_is_refused(load: Any, name: str, field: str) -> None:
    with pytest.raises(CoamingError) as caught:
        Panel(plate()).solve(load)
    assert (caught.value.name, caught.value.field) == (name, field), caught.value


@pytest.mark.parametrize(
    ("count", "name"),
    [(0, "impossible"), (-1, "impossible"), (101, "impossible"), (10**30, "impossible"), (1.0, "wrong_type")],
)
def test_a_count_of_modes_that_cannot_be_is_refused(count: Any, name: str) -> None:
    with pytest.raises(CoamingError) as caught:
        Panel(plate()).modes(count)
    assert caught.value.name == name


@pytest.mark.parametrize("document", [None, 3, object(), ["a"], float("nan")])
def test_what_is_no_document_is_refused(document: Any) -> None:
    with pytest.raises(CoamingError):
        Panel(document)


def at(x: float, y: float) -> dict[str, str]:
    """A point in millimetres."""
    return {"x": f"{x} mm", "y": f"{y} mm"}


def round_hole(x: float, y: float, diameter: float) -> list[dict[str, Any]]:
    """A hole in millimetres."""
    return [{"circle": {"diameter": f"{diameter} mm", "centre": at(x, y)}}]


HOSTILE: list[tuple[dict[str, Any], str, str]] = [
    ({"outline": {"polygon": {"points": [at(0, 0), at(9, 9), at(9, 0), at(0, 9)]}}}, "geometry", r"\(4.5 mm, 4.5 mm\)"),
    ({"outline": {"polygon": {"points": [at(0, 0), at(0, 0), at(9, 0), at(0, 9)]}}}, "geometry", "coincide"),
    ({"outline": {"polygon": {"points": [at(0, 0), at(1000, 0), at(500, 1)]}}}, "geometry", "3 degrees"),
    ({"outline": {"polygon": {"points": [at(0, 0), at(9, 0)]}}}, "inconsistent", "outline"),
    ({"outline": {"polygon": {"points": []}}}, "inconsistent", "outline"),
    ({"holes": round_hole(2000, 0, 100)}, "geometry", r"holes\[0\] at .*mm.*outside outline"),
    ({"holes": round_hole(450, 0, 100)}, "geometry", r"holes\[0\]|outline"),
    ({"holes": round_hole(0, 0, 100) + round_hole(90, 0, 100)}, "geometry", r"holes\[[01]\]"),
    ({"line_supports": []}, "singular", "freely"),
    ({"latches": [{"name": "a", "at": at(900, 0), "action": {"force": {"pull": "1 N"}}}]}, "geometry", r"latches\[0\]"),
    ({"settings": {"most_triangles": 10}}, "impossible", "most_triangles"),
    ({"settings": {"first_triangles": 4_000_000_000}}, "impossible", "first_triangles"),
    ({"layers": []}, "inconsistent", "layer"),
    ({"holes": round_hole(0, 0, 1) * 10_001}, "too_large", "holes"),
    ({"holes": [{"circle": {"diameter": "nan mm"}}]}, "not_a_quantity", "holes"),
    ({"holes": [{"circle": {"diameter": "inf mm"}}]}, "not_a_quantity", "holes"),
]


@pytest.mark.parametrize(("change", "name", "words"), HOSTILE)
def test_a_panel_that_cannot_be_is_refused(change: dict[str, Any], name: str, words: str) -> None:
    with pytest.raises(CoamingError, match=words) as caught:
        panel.solve(plate() | change)
    assert caught.value.name == name, caught.value


def test_what_cannot_be_is_refused() -> None:
    with pytest.raises(CoamingError) as caught:
        panel.solve({**plate(), "colour": "red"})
    assert (caught.value.name, caught.value.field) == ("unknown_key", "colour")
    with pytest.raises(CoamingError) as caught:
        panel.solve(plate() | {"load_cases": []})
    assert (caught.value.name, caught.value.field) == ("missing", "load_cases")
