"""What people typed, made fit for a file: nothing that a format cannot hold, nothing a spreadsheet would work out."""

from __future__ import annotations

import re

_STARTS_A_FORMULA = ("=", "+", "-", "@", "＝", "＋", "－", "＠")
"""What a spreadsheet takes for the start of a formula in a file of plain text, wide forms included."""
_LIKE_A_DATE = re.compile(r"\d{1,4}([-/])\d{1,4}(?:\1\d{1,4})?|\d{1,2}\.\d{1,2}\.\d{2,4}")
_ENDS_OF_PLANES = "".join(chr(plane * 0x10000 + end) for plane in range(17) for end in (0xFFFE, 0xFFFF))
_TAKEN_OUT = rf"[\x00-\x08\x0b-\x1f\x7f-\x9f\ud800-\udfff\ufdd0-\ufdef{_ENDS_OF_PLANES}]"
"""Control characters but tab and line end, lone surrogates, and what is no character: HTML and XML may not hold it."""
_NO_BREAK = str.maketrans("\N{NO-BREAK SPACE}\N{ZERO WIDTH SPACE}", "  ")
"""Characters that are fine, though they do not count as printable."""


def clean(text: str) -> str:
    """A text without characters that no file holds: control characters, lone surrogates, what is no character."""
    if text.isprintable() or text.translate(_NO_BREAK).isprintable():
        return text  # nearly every text, and the pattern is slow to make
    return re.sub(_TAKEN_OUT, "", text.replace("\r\n", "\n").replace("\r", "\n"))


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
