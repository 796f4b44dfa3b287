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


def schema() -> str:
    """The JSON Schema (2020-12) of a cover's document: every key with its meaning, unit and range, for editors."""
    return _native.schema("cover")
