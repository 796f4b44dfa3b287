"""Reviews a cover, changes it, and reviews it again without solving anew what the change does not touch.

Run it with `python examples/python/reviewer.py`.
"""

from pathlib import Path

from coaming.cover import Reviewer

REVISED = Path(__file__).parent.parent / "covers" / "revised.toml"


def headings(document: str, old: str, new: str) -> tuple[str, str]:
    """The first lines of the reviews before and after `old` is replaced by `new`."""
    reviewer = Reviewer()
    before = reviewer.review(document)
    after = reviewer.review(document.replace(old, new, 1))
    return heading(before), heading(after)


def heading(review: str) -> str:
    """The title, and how many checks have which verdict."""
    return "\n".join(review.splitlines()[:2])


def main() -> None:
    """Prints what longer screws do to the revised cover."""
    document = REVISED.read_text(encoding="utf-8")
    for found in headings(document, 'length = "16 mm"', 'length = "20 mm"'):
        print(found)


if __name__ == "__main__":
    main()
