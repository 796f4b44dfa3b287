"""The documents' JSON Schema, as a general-purpose validator reads it."""

from __future__ import annotations

import copy
import json
import os
import tomllib
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from jsonschema import Draft202012Validator

from coaming import cover, panel

ROOT = Path(__file__).parent.parent.parent
COVERS = ROOT / "examples" / "covers"
NAMES = ["first-guess", "first-guess-flanged", "half-fix", "revised"]
PANELS = sorted((ROOT / "examples" / "panels").glob("*.toml"))

COVER_SCHEMA = Draft202012Validator(json.loads(cover.schema()))
PANEL_SCHEMA = Draft202012Validator(json.loads(panel.schema()))


def read(file: Path) -> dict[str, Any]:
    return tomllib.loads(file.read_text(encoding="utf-8"))


def faults(validator: Draft202012Validator, document: object) -> list[str]:
    """Where a document is at fault."""
    return [error.json_path for error in validator.iter_errors(document)]


def test_the_schemas_are_sound_and_the_same_as_in_rust() -> None:
    for name, text in (("cover", cover.schema()), ("panel", panel.schema())):
        Draft202012Validator.check_schema(json.loads(text))
        laid_down = Path(os.environ["COAMING_SAME_BITS"]).parent / f"{name}.schema.json"
        assert laid_down.read_text(encoding="utf-8") == text


@pytest.mark.parametrize("name", NAMES)
def test_the_covers_of_the_demonstration_hold(name: str) -> None:
    assert faults(COVER_SCHEMA, read(COVERS / f"{name}.toml")) == []


def test_the_panels_of_the_demonstration_hold() -> None:
    assert PANELS
    for file in PANELS:
        assert faults(PANEL_SCHEMA, read(file)) == [], file.name


def _without_outline(document: dict[str, Any]) -> None:
    del document["layers"][0]["outline"]


def _two_outlines(document: dict[str, Any]) -> None:
    document["opening"]["outline"]["circle"] = {"diameter": "100 mm"}


def _both_angles(document: dict[str, Any]) -> None:
    document["layers"][0]["bends"][0]["included_angle"] = "90 deg"


def _set(*path: str | int, value: object) -> Callable[[dict[str, Any]], None]:
    def change(document: Any) -> None:
        *outer, last = path
        for step in outer:
            document = document[step]
        document[last] = value

    return change


@pytest.mark.parametrize(
    ("change", "place"),
    [
        (_set("lid", value={}), "$"),
        (_set("layers", 0, "thicknes", value="1.6 mm"), "$.layers[0]"),
        (_without_outline, "$.layers[0]"),
        (_two_outlines, "$.opening.outline"),
        (_both_angles, "$.layers[0].bends[0]"),
        (_set("good_face", value="outside"), "$.good_face"),
        (_set("layers", 0, "role", value="lid"), "$.layers[0].role"),
        (_set("layers", 0, "thickness", value=2.5), "$.layers[0].thickness"),
        (_set("layers", 0, "thickness", value="2.5"), "$.layers[0].thickness"),
        (_set("layers", 0, "thickness", value="thick"), "$.layers[0].thickness"),
        (_set("layers", 0, "solar_absorptance", value=1.5), "$.layers[0].solar_absorptance"),
        (_set("layers", 0, "solar_absorptance", value="5 mm"), "$.layers[0].solar_absorptance"),
        (_set("latches", "count", value=0), "$.latches.count"),
        (_set("latches", "count", value=4.5), "$.latches.count"),
        (_set("layers", 0, "cut_outs", value="none"), "$.layers[0].cut_outs"),
        (_set("version", value=2), "$.version"),
        (_set("service", "one_handed", value="yes"), "$.service.one_handed"),
    ],
)
def test_a_broken_cover_is_refused_at_its_place(change: Callable[[dict[str, Any]], None], place: str) -> None:
    document = copy.deepcopy(read(COVERS / "revised.toml"))
    change(document)
    assert faults(COVER_SCHEMA, document) == [place]
    # The library's own reader refuses it too.
    with pytest.raises(Exception, match="."):
        cover.review(json.dumps(document))


@pytest.mark.parametrize(
    "written",
    ["3 mm", "1/8 in", "1 1/8 in", "-2 mm", "+.5 in", "3 thou", "16 ga steel", "0.0016 m", "1e-3 m", "3\u2033", "2.5mm"],
)
def test_lengths_that_the_reader_takes_hold(written: str) -> None:
    document = read(COVERS / "revised.toml")
    document["latches"]["positions"][0]["x"] = written
    assert faults(COVER_SCHEMA, document) == []
    cover.review(json.dumps(document))


@pytest.mark.parametrize("written", [0.4, "0.4", "40 %", "2/5", " 0.4 "])
def test_ratios_that_the_reader_takes_hold(written: float | str) -> None:
    document = read(COVERS / "revised.toml")
    document["seal"]["set_of_deflection"] = written
    assert faults(COVER_SCHEMA, document) == []
    cover.review(json.dumps(document))
