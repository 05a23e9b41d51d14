"""The columns of a table of people, as it is written and read again: what is told of a person besides her figures."""

from __future__ import annotations

import re

HEADINGS: dict[str, str] = {
    "name": "Name",
    "given": "First name",
    "family": "Family name",
    "groups": "Groups",
    "born": "Born",
    "child": "Child",
    "unit": "Unit",
    "on": "Measured on",
    "by": "Measured by",
    "over": "Measured over",
    "notes": "Notes",
}
"""What each column is called, by what stands in it."""

OF_READING: dict[str, str] = {"on": "measured on", "by": "measured by", "over": "measured over", "note": "note"}
"""What a column says of one measure's figures, behind its name and a colon: `Bust: measured on`."""

_FORMULA = re.compile(r"'*[=+\-@\t\r]")
_CONTROL = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f\ud800-\udfff\ufffe\uffff]")


def cleaned(text: str) -> str:
    """A text without the control marks that no table file can hold."""
    return _CONTROL.sub("", text.replace("\r\n", "\n").replace("\r", "\n"))


def guarded(text: str) -> str:
    """A text for a cell of a CSV file that no spreadsheet takes for a formula: an apostrophe goes before it."""
    return f"'{text}" if _FORMULA.match(text) else text


def unguarded(text: str) -> str:
    """The text that was guarded; any other stays as it is."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text[1:]) else text
