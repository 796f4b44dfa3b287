"""The document calls: the same text as Rust gives, and typed errors."""

from __future__ import annotations

import json
import os
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest

from coaming import CoamingError, cover
from coaming.cover import Reviewer

COVERS = Path(__file__).parent.parent.parent / "examples" / "covers"
NAMES = ["first-guess", "first-guess-flanged", "half-fix", "revised"]


def document(name: str) -> str:
    return (COVERS / f"{name}.toml").read_text(encoding="utf-8")


def expected(name: str) -> str:
    """What Rust gave, laid beside the table of cases."""
    return (Path(os.environ["COAMING_SAME_BITS"]).parent / name).read_text(encoding="utf-8")


@pytest.mark.parametrize("name", NAMES)
def test_python_gives_the_text_that_rust_gives(name: str) -> None:
    calls = {"review": cover.review, "order_sheet": cover.order_sheet}
    # Data begins anew; the other forms go by a reviewer, which solves the cover once for all of them.
    reviewer = cover.Reviewer()
    kept = {"review": reviewer.review, "order_sheet": reviewer.order_sheet}
    outputs = json.loads(expected("outputs.json"))
    forms = {(call, form) for call, form, _, _ in outputs}
    assert forms >= {(call, form) for call in calls for form in ("text", "markdown", "json")}
    for call, form, units, ending in outputs:
        give = calls[call] if form == "json" else kept[call]
        assert give(document(name), form, units) == expected(f"{name}.{ending}"), ending


def test_json_holds_every_row_and_the_cautions() -> None:
    review = json.loads(cover.review(document("revised"), output="json"))
    assert sum(review["counts"].values()) == len(review["checks"])
    assert any("not a certificate" in caution for caution in review["cautions"])
    sheet = json.loads(cover.order_sheet(document("revised"), output="json"))
    assert sheet["warnings"] and any("deburr" in caution for caution in sheet["cautions"])


def test_inch_output_converts() -> None:
    assert "24.433 in" in cover.order_sheet(document("revised"), units="inch")  # 620.6 mm


def test_bad_documents_are_refused_with_their_place() -> None:
    wrong = document("revised").replace('thickness = "2.5 mm"', "thickness = 2.5")
    with pytest.raises(CoamingError) as caught:
        cover.review(wrong)
    line = wrong[: wrong.index("thickness = 2.5")].count("\n") + 1
    assert (caught.value.name, caught.value.field) == ("not_a_quantity", "layers[0].thickness")
    assert caught.value.line == line
    with pytest.raises(CoamingError) as caught:
        cover.review(document("revised"), output="pdf")  # type: ignore[arg-type]
    assert (caught.value.name, caught.value.field) == ("not_an_option", "output")


def test_a_reviewer_gives_what_a_fresh_review_gives() -> None:
    reviewer = Reviewer()
    text = document("revised")
    fresh = cover.review(text, "json")
    assert reviewer.review(text, "json") == fresh
    wrongs = [
        "",
        "{",
        text.replace('thickness = "2.5 mm"', "thickness = 2.5"),
        text.replace('thickness = "2.5 mm"', 'thickness = "0 mm"'),
        text.replace("title =", "titel ="),
        # Seen only when the checks are known.
        text.replace('check = "dew"', 'check = "dwe"'),
    ]
    for wrong in wrongs:
        with pytest.raises(CoamingError) as caught:
            reviewer.review(wrong, "json")
        with pytest.raises(CoamingError) as due:
            cover.review(wrong, "json")
        assert str(caught.value) == str(due.value)
        assert repr(vars(caught.value)) == repr(vars(due.value))
    with pytest.raises(CoamingError) as caught:
        reviewer.review(text, "pdf")  # type: ignore[arg-type]
    assert (caught.value.name, caught.value.field) == ("not_an_option", "output")
    assert reviewer.review(text, "json") == fresh
    assert reviewer.order_sheet(text, "json") == cover.order_sheet(text, "json")


def test_a_reviewer_is_used_on_one_thread_at_a_time() -> None:
    """Of reviews that begin together on one reviewer, each is done or refused; on reviewers of their own, all are done."""
    text = document("first-guess")
    shared = Reviewer()
    fresh = shared.review(text)

    def outcome(reviewer: Reviewer) -> str:
        try:
            return reviewer.review(text)
        except CoamingError as error:
            return f"{error.name}: {error.field}"

    with ThreadPoolExecutor(4) as threads:
        found = list(threads.map(outcome, [shared] * 4))
        assert set(found) <= {fresh, "inconsistent: reviewer"} and fresh in found
        assert set(threads.map(outcome, [Reviewer(), Reviewer()])) == {fresh}
