"""Panels that cannot be: each is refused by the error that Rust gives, in its words."""

from __future__ import annotations

import json
import os
import tomllib
from pathlib import Path
from typing import Any

import pytest

from coaming import CoamingError, panel
from coaming.panel import Panel


def refusals() -> list[dict[str, str]]:
    """What Rust gave, laid beside the table of cases."""
    laid_down = Path(os.environ["COAMING_SAME_BITS"]).parent / "refusals.json"
    found: list[dict[str, str]] = json.loads(laid_down.read_text(encoding="utf-8"))
    return found


@pytest.mark.parametrize("due", refusals(), ids=lambda due: due["what"])
def test_a_panel_that_cannot_be_is_refused_as_in_rust(due: dict[str, str]) -> None:
    for call in (panel.solve, panel.text):
        with pytest.raises(CoamingError) as caught:
            call(due["document"])
        error = caught.value
        assert (error.name, error.field, str(error)) == (due["name"], due["field"], due["message"])


@pytest.mark.parametrize("due", refusals(), ids=lambda due: due["what"])
def test_the_same_as_a_dict_is_refused(due: dict[str, str]) -> None:
    with pytest.raises(CoamingError) as caught:
        panel.solve(tomllib.loads(due["document"]))
    if caught.value.field == "document":  # not a number, or without end: JSON has no word for it
        assert caught.value.name == "wrong_type" and ("nan" in due["document"] or "inf" in due["document"])
    else:
        assert (caught.value.name, caught.value.field) == (due["name"], due["field"]), caught.value


def warm() -> dict[str, Any]:
    """A pane that nothing lets grow, 20 K warmer."""
    return {
        "version": 1,
        "title": "pane",
        "outline": {"rectangle": {"width": "300 mm", "height": "200 mm"}},
        "layers": [
            {
                "name": "pane",
                "thickness": "3 mm",
                "expansion": "65e-6 1/K",
                "material": {"isotropic": {"youngs_modulus": "2.3 GPa", "poissons_ratio": 0.37}},
            }
        ],
        "line_supports": [{"line": {"edge": {}}, "deflection": "fixed", "slope": "free", "held_in_plane": True}],
        "load_cases": [{"name": "sun", "temperatures": [{"layer": "pane", "rise": "20 K"}]}],
    }


@pytest.mark.parametrize(
    ("count", "name"),
    [
        (0, "impossible"),
        (-1, "impossible"),
        (21, "impossible"),
        (10**400, "impossible"),
        (1.0, "wrong_type"),
        (float("nan"), "wrong_type"),
        (True, "wrong_type"),
        ("1", "wrong_type"),
        (None, "wrong_type"),
    ],
)
def test_a_count_of_ways_to_buckle_that_cannot_be_is_refused(count: Any, name: str) -> None:
    pane = Panel(warm())
    with pytest.raises(CoamingError) as caught:
        pane.buckling(count)
    assert caught.value.name == name
    assert len(pane.buckling(1).modes) == 1


@pytest.mark.parametrize(
    ("load", "name", "field"),
    [
        ({"critical_rise": True}, "missing", "load.temperatures"),
        ({"critical_rise": "yes"}, "wrong_type", "critical_rise"),
        ({"large_deflection": 1}, "wrong_type", "large_deflection"),
        ({"large_deflexion": True}, "unknown_key", "large_deflexion"),
        ({"buckling": 0}, "impossible", "buckling"),
        ({"buckling": float("inf")}, "wrong_type", "load"),
        ({"growths": [{"layer": "pane", "strain": float("nan")}]}, "wrong_type", "load"),
        ({"growths": [{"layer": "pane", "strain": 0.3}]}, "impossible", "growths[0].strain"),
        ({"growths": [{"layer": "pain", "strain": 0.1}]}, "not_an_option", "load.growths[0].layer"),
        (
            {"edge_forces": [{"edge": {}, "layer": "pane", "outward": 1.0}]},
            "not_a_quantity",
            "edge_forces[0].outward",
        ),
        ({"support_movements": [{"support": 1, "along_x": "1 mm"}]}, "inconsistent", "load.support_movements[0]"),
    ],
)
def test_a_load_that_cannot_be_leaves_the_panel_as_it_was(load: dict[str, Any], name: str, field: str) -> None:
    pane = Panel(warm())
    with pytest.raises(CoamingError) as caught:
        pane.solve({"name": "a"} | load)
    assert (caught.value.name, caught.value.field) == (name, field), caught.value
    # Boley and Weiner, ch. 13, from memory: pi^2 t^2 (1/a^2 + 1/b^2) / (12 (1 + nu) alpha), 3.0017 K.
    assert pane.critical_rise().temperatures[0].si.rise == pytest.approx(3.0017, rel=0.005)
