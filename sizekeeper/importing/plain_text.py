"""Text whose every line is one cell, as pasted from a PDF: split into a label and figures that keep their place."""

from __future__ import annotations

import itertools
import re
from typing import TYPE_CHECKING

from sizekeeper.importing.grid import GridCell, Sheet, sheet_of
from sizekeeper.importing.labels import label_of
from sizekeeper.importing.measure_names import names_of
from sizekeeper.importing.sizes import likeness
from sizekeeper.importing.text_lines import listed_by_size, unbroken
from sizekeeper.importing.vocabulary import SIZE

if TYPE_CHECKING:
    from collections.abc import Sequence

_NUMBER = r"(?:\d+(?:[ \u00a0-]\d/\d{1,2}|\d*[½¼¾⅛⅜⅝⅞⅓⅔]|[ \u00a0][½¼¾⅛⅜⅝⅞⅓⅔]|[.,]\d+)?|\d/\d{1,2}|[½¼¾⅛⅜⅝⅞])"
_UNIT = r"(?:[ \u00a0]?(?:cm|mm|in(?:ches|ch|s)?\b\.?|[″”\"′']))"
_ONE = rf"{_NUMBER}{_UNIT}?"
_FEET = rf"\d[′']\s?{_NUMBER}?[″\"”]?"
_VALUE = re.compile(
    rf"(?<!\S)(?:{_FEET}|{_ONE}(?:\s?(?:[-–—]|to|bis|"
    rf"tot)\s?{_ONE})?(?:\s?[/(]\s?{_ONE}(?:\s?[-–—]\s?{_ONE})?\)?)?[*†‡¹²³]?"
    r"|[-–—]+|n/a)(?!\S)",
)
_SINGLE = re.compile(rf"(?<!\S)(?:{_ONE}|[-–—]+|n/a)(?!\S)")
_SIZE = re.compile(r"(?<!\S)\S+(?:\s?[(\[][^)\]]{1,12}[)\]])?(?!\S)")
_LEAST_LINES, _LEAST_FIGURES = 2, 2
_PART = r"(?:\d+(?:[ -]\d/\d{1,2}|\.\d+|,\d(?!\d)|[½¼¾⅛⅜⅝⅞])?|(?:\d?X{1,4}|\d)?[SL]|M)"
_JOINT = r"(?:\s*\)?\s*[,;|(:]\s*\(?\s*|\s+[-–/]\s+)"
_LIST = re.compile(rf"(?<![\w.,]){_PART}(?:{_JOINT}{_PART}){{2,}}\)?(?![\w,])")
_BETWEEN = re.compile(r"\s*[,;|()\[\]:]\s*|\s+[-–/]\s+")
_TAIL_UNIT = re.compile(r"\s*(cm|mm|in(?:ch(?:es)?)?|[\"″”])(?!\w)")
_LONGEST_HEAD = 200
_WORDS_IN_NAME, _MOST_WAYS = 6, 50
_LEADERS = re.compile(r"\s*(?:\.\s?){3,}$|\s*_{3,}$|\s*…+\s*$")
"""Dots or a line that lead from a label to its figures."""
_WIDE = re.compile(r"\s{2,}|\t")


def split_lines(sheet: Sheet) -> Sheet:
    """The sheet with its lines split into cells, where it is one column of lines; else the sheet itself."""
    cells = _only_column(sheet)
    if cells is None:
        return sheet
    listed = listed_by_size(cells)
    if listed is not None:
        return Sheet(sheet.name, sheet_of(sheet.name, listed).rows, single_column=True)
    cells = unbroken([_unlisted(cell) for cell in cells], _lead)
    values = [_values(cell.text) for cell in cells]
    if sum(len(v) >= _LEAST_FIGURES for v in values) < _LEAST_LINES:
        upright = _reflowed(cells)
        return Sheet(sheet.name, upright.rows, single_column=True) if upright else sheet
    rows = _split_all(cells, values)
    made = sheet_of(sheet.name, rows)
    return Sheet(made.name, made.rows, single_column=True)


def _unlisted(cell: GridCell) -> GridCell:
    """A line whose figures are listed, `Bust: 82 (86, 90) cm` or `82 - 86 - 90`, with spaces between them."""
    match = _LIST.search(cell.text)
    if match is None:
        return cell
    unit = _TAIL_UNIT.match(cell.text, match.end())
    parts = [part for part in _BETWEEN.split(match[0]) if part]
    text = " ".join(part + (f" {unit[1]}" if unit else "") for part in parts)
    lead = cell.text[: match.start()].rstrip(": ")
    return GridCell(cell.at, f"{lead} {text} {cell.text[unit.end() if unit else match.end() :]}".strip())


def _only_column(sheet: Sheet) -> list[GridCell] | None:
    """The cells of the one filled column, None where a row has more."""
    found = []
    for row in sheet.rows:
        filled = [cell for cell in row if cell is not None]
        if len({cell.at for cell in filled}) > 1:
            return None
        found += filled[:1]
    return found or None


def _values(line: str) -> list[re.Match[str]]:
    """The figures at the end of a line."""
    found = list(_VALUE.finditer(line))
    kept: list[re.Match[str]] = []
    end = len(line.rstrip())
    for match in reversed(found):
        if line[match.end() : end].strip():
            break
        kept.append(match)
        end = match.start()
    return kept[::-1]


def _lead(line: str) -> str | None:
    """The words in front of a line's figures, None for a line without figures."""
    found = _values(line)
    return line[: found[0].start()].strip() if len(found) >= _LEAST_FIGURES else None


def _split_all(cells: Sequence[GridCell], values: Sequence[list[re.Match[str]]]) -> list[list[GridCell | None]]:
    """Every line as a row. The most usual number of figures tells a label's own numbers from the figures."""
    counts = [len(v) for v in values if len(v) >= _LEAST_FIGURES]
    usual = max(set(counts), key=lambda n: (counts.count(n), -n))
    labelled = [bool(v and cell.text[: v[0].start()].strip()) for cell, v in zip(cells, values, strict=True) if v]
    down = sum(labelled) * 2 < len(labelled)
    rows: list[list[GridCell | None]] = []
    for cell, found in zip(cells, values, strict=True):
        if found:
            figures = found if len(found) == usual else _apart(cell.text, usual) or found
            rows.append(_row(cell, figures[-usual:], down=down))
        else:
            rows.append(_words(cell, usual))
    return rows


def _apart(line: str, usual: int) -> list[re.Match[str]]:
    """A line's figures and dashes one by one, where that gives the usual number: a dash between two stands for none."""
    found = list(_SINGLE.finditer(line))
    return found if len(found) == usual and not line[found[-1].end() :].strip() else []


def _row(cell: GridCell, found: Sequence[re.Match[str]], *, down: bool) -> list[GridCell | None]:
    """A line's label and figures; `down` tells that the first figure is the size, as the lines have no labels."""
    text = _LEADERS.sub("", cell.text[: found[0].start()]).strip()
    first: GridCell | None = GridCell(f"{cell.at}#0", text) if text else None
    if first is None and down and len(found) > 1 and likeness(found[0][0]) > 0:
        return [GridCell(f"{cell.at}#{i}", match[0]) for i, match in enumerate(found, 1)]
    return [first, *(GridCell(f"{cell.at}#{i}", match[0]) for i, match in enumerate(found, 1))]


def _words(cell: GridCell, usual: int) -> list[GridCell | None]:
    """A line without figures at its end: a row of size labels, of measures' names, or a text."""
    whole = label_of(cell.text)
    tokens = [match[0] for match in _SIZE.finditer(cell.text)]
    lead = tokens[0] if tokens and SIZE.fullmatch(tokens[0].strip(":")) else ""
    rest = tokens[1:] if lead else tokens
    if len(rest) == usual and sum(likeness(token) >= 0.6 for token in rest) * 2 > len(rest) and not whole.is_measure:  # noqa: PLR2004
        return [
            GridCell(f"{cell.at}#0", lead) if lead else None,
            *(GridCell(f"{cell.at}#{i}", token) for i, token in enumerate(rest, 1)),
        ]
    measures = _measures(cell.text[len(lead) :].strip() if lead else cell.text, usual)
    if len(measures) > 1 and len(measures) >= usual - 1:
        head = [GridCell(f"{cell.at}#1", lead)] if lead else []
        return [*head, *(GridCell(f"{cell.at}#{i}", text) for i, text in enumerate(measures, len(head) + 1))]
    return [cell]


def _measures(text: str, usual: int) -> list[str]:
    """A line of names of measures, cut where each begins; none where it holds other words."""
    parts = [part for part in _WIDE.split(text) if part.strip()]
    if len(parts) > 1:
        return parts
    ways = _ways(text.split()) if len(text) <= _LONGEST_HEAD else []
    return min(ways, key=lambda way: (abs(len(way) - usual), len(way)), default=[])


def _ways(words: Sequence[str]) -> list[list[str]]:
    """Every way to cut words into names of measures."""
    if not words:
        return [[]]
    found: list[list[str]] = []
    for end in range(min(len(words), _WORDS_IN_NAME), 0, -1):
        name = " ".join(words[:end])
        if len(found) < _MOST_WAYS and names_of(name).sure >= 0.95:  # noqa: PLR2004 - exact but for filling words
            found += [[name, *rest] for rest in _ways(words[end:])]
    return found[:_MOST_WAYS]


def _reflowed(cells: Sequence[GridCell]) -> Sheet | None:
    """Cells pasted one a line: a label, then as many figures as there are sizes, again and again."""
    starts = [i for i, c in enumerate(cells) if label_of(c.text).is_measure and not likeness(c.text) >= 0.9]  # noqa: PLR2004
    if len(starts) < _LEAST_LINES:
        return None
    steps = {b - a for a, b in itertools.pairwise(starts)} | {len(cells) - starts[-1]}
    step = min(steps)
    if step < _LEAST_LINES or starts[0] < step or any(s % step for s in steps - {max(steps)}):
        return None
    head = starts[0] - step
    rows: list[list[GridCell | None]] = [[cell] for cell in cells[:head]]
    rows += [list(cells[i : i + step]) for i in range(head, len(cells), step)]
    return sheet_of("", rows)
