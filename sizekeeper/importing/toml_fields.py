"""A TOML file written by hand, field by field: every misunderstanding is one sentence that names file and field."""

from __future__ import annotations

import datetime as dt
import tomllib
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any, Literal

from sizekeeper.core.notation import parse_length
from sizekeeper.errors import LengthError, ReadError

if TYPE_CHECKING:
    from collections.abc import Iterable
    from pathlib import Path

    from sizekeeper.core.length import Length

_LARGEST_BYTES = 1_000_000
_NEAR = 70
"""How alike two names must be, of 100, for one to be suggested for the other (coined)."""


def read_toml(path: Path) -> dict[str, Any]:
    """The fields of a TOML file. Numbers with a decimal point stay text, as they were written.

    Raises:
        ReadError: there is no such file, or it is not TOML.
    """
    try:
        raw = path.read_bytes()
    except OSError as error:
        raise ReadError(f"{path.name} cannot be read: {(error.strerror or 'unknown trouble').lower()}.") from error
    if len(raw) > _LARGEST_BYTES:
        raise ReadError(f"{path.name} is too large to be a file written by hand.")
    try:
        return tomllib.loads(raw.decode("utf-8-sig"), parse_float=str)
    except UnicodeDecodeError as error:
        raise ReadError(f"{path.name} is not a TOML file: it is not text in UTF-8.") from error
    except (ValueError, RecursionError) as error:
        why = str(error).splitlines()[0] if isinstance(error, ValueError) else "it is nested too deeply"
        raise ReadError(f"{path.name} is not a TOML file: {why[:1].lower()}{why[1:]}.") from error


@dataclass(frozen=True)
class TomlFields:
    """The fields of one TOML file, each asked for by name and kind; `file` is the name that errors give."""

    file: str
    table: Mapping[str, Any]

    def fail(self, sentence: str) -> ReadError:
        """An error whose sentence names the file."""
        return ReadError(f"{self.file}: {sentence}")

    def known(self, names: Iterable[str], allowed: Iterable[str], where: str) -> None:
        """Refuse names that are not allowed, with the nearest that is."""
        allowed = list(allowed)
        for name in names:
            if name not in allowed:
                raise self.fail(f"“{name}” is not known {where}{nearest(name, {a: a for a in allowed})}")

    def text(self, field: str) -> str:
        """A text, empty where it is missing."""
        value = self.table.get(field, "")
        if not isinstance(value, str):
            raise self.fail(f"“{field}” must be a text in quotation marks.")
        return value.strip()

    def flag(self, field: str) -> bool:
        """A yes or no, no where it is missing."""
        value = self.table.get(field, False)
        if not isinstance(value, bool):
            raise self.fail(f"“{field}” must be true or false.")
        return value

    def texts(self, field: str) -> tuple[str, ...]:
        """A list of texts, empty where it is missing."""
        value = self.table.get(field, [])
        if not isinstance(value, list) or not all(isinstance(item, str) for item in value):
            raise self.fail(f"“{field}” must be a list of texts in quotation marks.")
        return tuple(value)

    def section(self, field: str) -> Mapping[str, Any]:
        """A table of its own, empty where it is missing."""
        value = self.table.get(field, {})
        if not isinstance(value, dict):
            raise self.fail(f"“{field}” must be a section: write [{field}] on a line of its own.")
        return value

    def day(self, value: object, field: str) -> dt.date:
        """A day, written as a date or as text."""
        if isinstance(value, dt.datetime):
            return value.date()
        if isinstance(value, dt.date):
            return value
        try:
            return dt.date.fromisoformat(str(value))
        except ValueError as error:
            raise self.fail(f"“{field}” must be a day such as 2026-10-11.") from error

    def length(self, value: object, unit: Literal["cm", "in"] | None, field: str) -> Length:
        """A length, kept as written; a bare number is in `unit`."""
        if isinstance(value, bool) or not isinstance(value, str | int):
            raise self.fail(f"“{field}” must be a length such as “96 cm” or “37 3/4 in”.")
        try:
            return parse_length(str(value), unit)
        except LengthError as error:
            raise self.fail(f"in “{field}”, {error}.") from error


def _plain(name: str) -> str:
    return " ".join(name.casefold().replace("_", " ").replace("-", " ").split())


def nearest(word: str, names: Mapping[str, str]) -> str:
    """The end of a sentence: `; did you mean “bust”?` for the nearest of some names, a full stop where none is near."""
    from rapidfuzz import fuzz, process

    found = process.extractOne(word, list(names), scorer=fuzz.ratio, processor=_plain, score_cutoff=_NEAR)
    return f"; did you mean “{names[found[0]]}”?" if found else "."
