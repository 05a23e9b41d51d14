"""Text files and pasted text: the encoding, the delimiter, and the grid they make."""

from __future__ import annotations

import codecs
import csv
import io
import re
from collections import Counter

from sizekeeper.errors import ReadError
from sizekeeper.importing.grid import Sheet, sheet_of_texts
from sizekeeper.importing.limits import check_size

DELIMITERS = "\t;|,:^~"
SHEET = "Sheet1"

_BOMS = (
    (codecs.BOM_UTF8, "utf-8-sig"),
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_TWO_NUMBERS = re.compile(r"\d\s+\d+$")
_LEAST_SHARE = 0.5
_CONTROL = re.compile(r"[\x00-\x08\x0e-\x1f]")
_LISTING = re.compile(
    r"[^,\d]*[^\d,]\d[^,]*?\(\s*\d|[^,:]{2,40}:\s*\d|[^,:]{1,20}:\s*[^\W\d][^,\d]*\d[^,]*,\s*[^\W\d]|"
    r"[^,]*\b[XSML\d]+\s*\([XSML\d]+,"
)
_FEW = 0.3
_LEAST_FIELDS = 3


def decoded(data: bytes, name: str) -> str:
    """The text of a file's bytes: by its mark, else UTF-8, else UTF-16, else Windows Western.

    Raises:
        ReadError: the bytes are no text.
    """
    text = _decoded(data)
    if text is None or _CONTROL.search(text):
        raise ReadError(f"“{name}” is not a text file, and none of the kinds of table that can be read.")
    return text.replace("\r\n", "\n").replace("\r", "\n")


def _decoded(data: bytes) -> str | None:
    for mark, encoding in _BOMS:
        if data.startswith(mark):
            return _try(data, encoding)
    if b"\x00" in data[:4000]:
        even, odd = data[:4000:2].count(0), data[1:4000:2].count(0)
        if max(even, odd) * 4 < len(data[:4000]):
            return None
        return _try(data, "utf-16-be" if even > odd else "utf-16-le")
    text = _try(data, "utf-8")
    return text if text is not None else _try(data, "cp1252")


def _try(data: bytes, encoding: str) -> str | None:
    try:
        return data.decode(encoding)
    except UnicodeDecodeError:
        return None


def sheet_from_text(text: str, name: str, sheet: str = SHEET) -> Sheet:
    """The grid that a delimited or plain text makes.

    Raises:
        ReadError: the text is longer than any chart.
    """
    check_size(name, rows=text.count("\n") - 1)
    told = re.match(r"sep=(.)\n", text, re.IGNORECASE)
    if told:
        return sheet_of_texts(sheet, _rows(text[told.end() :], told[1], name))
    delimiter = delimiter_of(text)
    if delimiter is None:
        return sheet_of_texts(sheet, [[line] for line in text.split("\n")])
    return sheet_of_texts(sheet, _rows(text, delimiter, name))


def _rows(text: str, delimiter: str, name: str) -> list[list[str]]:
    try:
        rows = list(csv.reader(io.StringIO(text), delimiter=delimiter))
    except csv.Error as error:
        raise ReadError(f"“{name}” cannot be read as a table: {error}.") from error
    check_size(name, rows=len(rows), columns=max(map(len, rows), default=0), cells=sum(map(len, rows)))
    return rows


def delimiter_of(text: str) -> str | None:
    """The delimiter of a text, None where each line is one cell."""
    lines = [line for line in text.split("\n")[:400] if line.strip()]
    best, most = None, 0.0
    for delimiter in DELIMITERS:
        score = _consistency(lines, delimiter)
        if score > most + 1e-9:
            best, most = delimiter, score
    return best


def _consistency(lines: list[str], delimiter: str) -> float:
    """The share of lines that a delimiter cuts into the usual number of fields; 0 where it cuts figures apart."""
    if not any(delimiter in line for line in lines):
        return 0.0
    try:
        rows = list(csv.reader(io.StringIO("\n".join(lines)), delimiter=delimiter))
    except csv.Error:
        return 0.0
    counts = Counter(len(row) for row in rows if row)
    cut = [n for n in counts if n > 1]
    if not cut:
        return 0.0
    fields = [field for row in rows if len(row) > 1 for field in row]
    if delimiter == "," and (_cuts_decimals(lines, fields) or _is_listing(lines)):
        return 0.0
    if delimiter in ":^~" and max(cut) < _LEAST_FIELDS:
        return 0.0
    usual = max(cut, key=lambda n: counts[n] * n)
    share = sum(counts[n] for n in cut) / len(rows)
    steady = counts[usual] / sum(counts[n] for n in cut)
    weight = {"\t": 1.5, ";": 1.3, "|": 1.2, ",": 1.0}.get(delimiter, 0.4)
    return weight * share * (0.5 + steady / 2) if share >= _LEAST_SHARE or len(cut) == 1 or usual > 2 else 0.1 * share  # noqa: PLR2004


def _is_listing(lines: list[str]) -> bool:
    """Whether lines are lists in running text: `Bust: 82, 86, 90` or `Bust 82 (86, 90) cm`."""
    told = [line for line in lines if "," in line]
    return sum(bool(_LISTING.match(line)) for line in told) >= _LEAST_SHARE * len(told)


def _cuts_decimals(lines: list[str], fields: list[str]) -> bool:
    """Whether commas stand inside figures: `Bust 82,5 86,5` cut at them leaves `5 86`."""
    split = sum(bool(_TWO_NUMBERS.match(field.strip())) for field in fields)
    inside = sum(len(re.findall(r"\d,\d", line)) for line in lines)
    every = sum(line.count(",") for line in lines)
    return split > _FEW * len(fields) and inside >= _LEAST_SHARE * every
