"""The whole cover: a document in, its review or its order sheet out.

    >>> import coaming.cover
    >>> text = coaming.cover.review(open("cover.toml").read())  # doctest: +SKIP

The results are screenings with the inputs given, not a certificate: where failure could injure, local law
and codes hold, and a competent engineer decides.
"""

from __future__ import annotations

from typing import Literal

from coaming import _native

Output = Literal["text", "full_text", "markdown", "full_markdown", "json"]
"""Text of 80 columns or Markdown, each also with formula, inputs and sources of each row; or JSON."""

Units = Literal["shop", "inch"]
"""The units of a text: mm, N, kPa, degC, or in, lbf, psi, degF."""


def review(document: str, output: Output = "text", units: Units = "shop") -> str:
    """Every check of a cover, with demand, limit, margin, verdict, source, caveats and cure.

    `document` is TOML or JSON. CoamingError names the field, the line and the column of what is wrong in it.
    """
    return _native.review(document, output, units)


def order_sheet(document: str, output: Output = "text", units: Units = "shop") -> str:
    """All that is needed to order a cover and to work from; headed by what stands against ordering."""
    return _native.order_sheet(document, output, units)


class Reviewer:
    """Reviews a cover after each change, and solves anew only what the change touches.

    What the panel solver found is kept from one review to the next: a lid that did not change is not solved again, and its
    rows are the same to the bit; a lid of the same shape with other numbers, such as another thickness, gasket or mass, is
    solved on the meshes that there are. Such meshes were refined for the numbers before, so that its rows may differ from
    those of `review` within the errors that they print. What the latest document does not use is let go.

    The interpreter is free while it works; one thread at a time may use a reviewer, a second one is refused.
    """

    __slots__ = ("_reviewer",)

    def __init__(self) -> None:
        """Nothing reviewed yet."""
        self._reviewer = _native.Reviewer()

    def review(self, document: str, output: Output = "text", units: Units = "shop") -> str:
        """As the function `review`: a document that is refused raises the same, and it can be used on."""
        return self._reviewer.review(document, output, units)

    def order_sheet(self, document: str, output: Output = "text", units: Units = "shop") -> str:
        """As the function `order_sheet`."""
        return self._reviewer.order_sheet(document, output, units)


def schema() -> str:
    """The JSON Schema (2020-12) of a cover's document: every key with its meaning, unit and range, for editors."""
    return _native.schema("cover")
