"""One panel by itself: arrays, signs and typed errors."""

from __future__ import annotations

import json
from typing import Any

import numpy as np
import pytest

from coaming import CoamingError, panel


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
                "material": {"isotropic": {"youngs_modulus": "70 GPa", "poissons_ratio": 0.3}},
            }
        ],
        "line_supports": [{"line": {"edge": {}}, "deflection": "fixed", "slope": "free"}],
        "load_cases": [{"name": "wind", "pressures": [{"pressure": "100 Pa"}]}],
    }


def test_a_plate_under_pressure() -> None:
    """Timoshenko and Woinowsky-Krieger, Theory of Plates and Shells, table 8: 0.00406 q a^4 / D."""
    solution = panel.solve(plate())
    case = solution.cases[0]
    printed = -0.00406 * 100.0 * 12 * (1 - 0.3**2) / (70e9 * 0.005**3)
    assert case.deflection.min() == pytest.approx(printed, rel=0.005)
    assert case.triangles.max() == len(case.x) - 1 and not case.deflection.flags.writeable
    # The same table: 0.0479 q a^2 in the middle; the inner face is stretched, so the moment is negative.
    assert case.moment[0].min() == pytest.approx(-4.79, rel=0.02)
    assert any("not a certificate" in caution for caution in solution.cautions)


def test_text_and_arrays_are_of_one_solution() -> None:
    document = json.dumps(plate())
    data = json.loads(panel.text(document, output="json"))
    assert np.array_equal(data["cases"][0]["field"]["deflection_m"], panel.solve(document).cases[0].deflection)
    assert "not a certificate" in " ".join(panel.text(document).split()).lower()


def test_what_cannot_be_is_refused() -> None:
    free = plate()
    del free["line_supports"]
    with pytest.raises(CoamingError) as caught:
        panel.solve(free)
    assert caught.value.name == "singular"
    holed = plate()
    holed["holes"] = [{"circle": {"diameter": "100 mm", "centre": {"x": "2 m", "y": "0 mm"}}}]
    with pytest.raises(CoamingError, match=r"holes\[0\] at .*mm") as caught:
        panel.solve(holed)
    assert caught.value.name == "geometry"
    with pytest.raises(CoamingError) as caught:
        panel.solve({**plate(), "colour": "red"})
    assert (caught.value.name, caught.value.field) == ("unknown_key", "colour")
