"""The exception that every refusal is raised as."""

from __future__ import annotations


class CoamingError(Exception):
    """No number can be given: the message says which field is at fault, its value and what is due."""

    code: int
    """The permanent code, one of `ErrorCode`; 0 for a defect of the library itself."""
    name: str
    """The code's name in snake case: `impossible`, `not_a_quantity`."""
    field: str
    """Path of the field at fault, such as `legs[0].length`; several with commas; empty for none."""
    value: float | None
    """The value at fault in SI units, where it is one number."""
    row: int | None
    """The lowest failing row of a batch, from 0, counted through the broadcast arrays in C order."""
    line: int | None
    """The line of a document, from 1."""
    column: int | None
    """The column of a document, from 1."""
    cure: str
    """What would cure it, in one sentence."""

    def __init__(
        self,
        message: str,
        *,
        code: int = 0,
        name: str = "",
        field: str = "",
        value: float | None = None,
        row: int | None = None,
        line: int | None = None,
        column: int | None = None,
        cure: str = "",
    ) -> None:
        super().__init__(message)
        self.code = code
        self.name = name
        self.field = field
        self.value = value
        self.row = row
        self.line = line
        self.column = column
        self.cure = cure

    def __reduce__(self) -> tuple[object, ...]:
        return (_restored, (str(self), dict(self.__dict__)))


def _restored(message: str, details: dict[str, object]) -> CoamingError:
    error = CoamingError(message)
    error.__dict__.update(details)
    return error
