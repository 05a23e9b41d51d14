"""What people typed, made fit for a file: nothing that a format cannot hold, nothing a spreadsheet would work out."""

from __future__ import annotations

import re

_STARTS_A_FORMULA = ("=", "+", "-", "@", "＝", "＋", "－", "＠")
"""What a spreadsheet takes for the start of a formula in a file of plain text, wide forms included."""
_LIKE_A_DATE = re.compile(r"\d{1,4}([-/])\d{1,4}(?:\1\d{1,4})?|\d{1,2}\.\d{1,2}\.\d{2,4}")
_ENDS_OF_PLANES = "".join(chr(plane * 0x10000 + end) for plane in range(1, 17) for end in (0xFFFE, 0xFFFF))
_TAKEN_OUT = re.compile(
    rf"[^\t\n\x20-\x7e\xa0-\ud7ff\ue000-\ufdcf\ufdf0-\ufffd\U00010000-\U0010ffff]|[{_ENDS_OF_PLANES}]"
)
"""All that is neither a tab, nor a line end, nor a character that HTML and XML may hold."""


def clean(text: str) -> str:
    """A text without characters that no file holds: control characters, lone surrogates, what is no character."""
    return _TAKEN_OUT.sub("", text.replace("\r\n", "\n").replace("\r", "\n"))


def one_line(text: str) -> str:
    """A text in one line, spaces instead of tabs and line ends."""
    return " ".join(clean(text).split())


def plain_field(text: str) -> str:
    """A text as a field of a file that spreadsheets open: in one line, an apostrophe before what they would change.

    They take a text that begins with an equals sign, plus, minus or at-sign for a formula, and `10-12` or `7/8` for a
    date, even in quotation marks. A dash alone, which stands for a missing figure, is left as it is.
    """
    line = one_line(text)
    if line == "-":
        return line
    if line.startswith(_STARTS_A_FORMULA) or _LIKE_A_DATE.fullmatch(line):
        return f"'{line}"
    return line
