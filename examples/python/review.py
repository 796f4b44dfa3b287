"""Reviews the covers of the demonstration: which rows fail, and the whole review of one of them."""

import json
from pathlib import Path

from coaming import cover

COVERS = Path(__file__).parent.parent / "covers"


def failing(name: str) -> list[str]:
    """The keys of the rows that fail."""
    review = json.loads(cover.review((COVERS / f"{name}.toml").read_text(encoding="utf-8"), output="json"))
    return [check["key"] for check in review["checks"] if check["verdict"] == "fail"]


def main() -> None:
    """Prints what fails in each cover, then the revised one's review."""
    for name in ("first-guess", "first-guess-flanged", "half-fix", "revised"):
        print(f"{name}: {len(failing(name))} fail")
    print(cover.review((COVERS / "revised.toml").read_text(encoding="utf-8")))


if __name__ == "__main__":
    main()
