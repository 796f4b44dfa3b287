"""Every example runs, and one number of it is checked."""

from __future__ import annotations

import importlib.util
from pathlib import Path
from types import ModuleType

import pytest

FOLDER = Path(__file__).parent.parent.parent / "examples" / "python"


def loaded(name: str) -> ModuleType:
    """An example as a module, without running it."""
    specification = importlib.util.spec_from_file_location(f"example_{name}", FOLDER / f"{name}.py")
    assert specification is not None and specification.loader is not None
    module = importlib.util.module_from_spec(specification)
    specification.loader.exec_module(module)
    return module


@pytest.mark.parametrize("name", sorted(file.stem for file in FOLDER.glob("*.py")))
def test_an_example_runs(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    loaded(name).main()
    assert capsys.readouterr().out


def test_the_bend_allowance_is_that_of_the_handbook() -> None:
    example = loaded("bend_allowance")
    # FAA-H-8083-31A, ch. 4, U-channel layout: setback 0.2 in (step 2), allowance 0.279 in (step 4).
    outcome = example.channel_bend()
    assert outcome.bend_allowance.to("inch").magnitude == pytest.approx(0.279, abs=0.0005)
    assert outcome.setback.to("inch").magnitude == pytest.approx(0.2, abs=0.0005)
    # (pi/2) (r + 0.4467 * 1.016 mm) at r = 1 mm and 5 mm, by hand: 2.284 and 8.567 mm.
    many = example.over_radii().bend_allowance.to("mm").magnitude
    assert many[[0, -1]].tolist() == pytest.approx([2.284, 8.567], abs=0.001)


def test_the_heated_pane_buckles_where_the_closed_form_says() -> None:
    example = loaded("heated_pane")
    panel = example.pane()
    # By hand: -E t strain / (1 - nu).
    assert example.pressed_by_damp(panel) == pytest.approx(2.190, rel=0.005)
    # Boley and Weiner, ch. 13, from memory: pi^2 t^2 (1/a^2 + 1/b^2) / (12 (1 + nu) alpha).
    assert example.critical_rise(panel) == pytest.approx(3.0017, rel=0.005)


def test_the_reviewer_sees_what_a_change_does() -> None:
    example = loaded("reviewer")
    document = example.REVISED.read_text(encoding="utf-8")
    before, after = example.headings(document, 'length = "16 mm"', 'length = "20 mm"')
    # 8.5 mm in a hole of 9.5 mm, and 4 mm more: one check fails that did not.
    failing = [int(heading.split(" checks: ")[1].split(" fail")[0]) for heading in (before, after)]
    assert failing[1] == failing[0] + 1


def test_the_first_guess_fails_where_the_scenario_says() -> None:
    keys = loaded("review").failing("first-guess")
    # By hand: an M4 countersink is 2.45 mm deep, the sheet 1.6 mm thick.
    assert "countersink_depth(pane_screws, lid)" in keys
