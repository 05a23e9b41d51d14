"""Tables of a web page or of the clipboard's HTML, stacked on one sheet with the headings that stand above them."""

from __future__ import annotations

import re
from html.parser import HTMLParser

from sizekeeper.importing.delimited import SHEET
from sizekeeper.importing.grid import GridCell, Sheet, address, sheet_of
from sizekeeper.importing.limits import CELLS, COLUMNS, ROWS, check_size

_HEADINGS = frozenset(
    {"h1", "h2", "h3", "h4", "h5", "h6", "caption", "p", "figcaption", "legend", "summary", "li", "div"}
)
_SKIPPED = frozenset(
    {"script", "style", "noscript", "template", "svg", "select", "button", "nav", "head", "title", "o:p"}
)
_SPAN = 200
_FRACTION = re.compile("\x01(\\d{1,2})\x02\\s*[/⁄]\\s*[\x01\x03]?(\\d{1,2})[\x02\x04]?")
_RAISED = re.compile("\x01([^\x02]*)\x02")
_SUPERSCRIPT = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
_LONGEST_HEADING = 120


class _Tables(HTMLParser):
    """Collects rows of (text, across, down) and, between tables, the lines of text in front of them."""

    def __init__(self, name: str) -> None:
        super().__init__(convert_charrefs=True)
        self.name = name
        self.blocks: list[list[list[tuple[str, int, int]]]] = []
        self.lines: list[str] = []
        self.depth = self.skipped = self.cells = self.rows = 0
        self.cell: list[str] | None = None
        self.span = (1, 1)
        self.line: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in _SKIPPED:
            self.skipped += 1
        elif tag == "table":
            self._start_table()
        elif tag == "tr" and self.depth:
            self._end_cell()
            self.rows += 1
            self.blocks[-1].append([])
        elif tag in ("td", "th") and self.depth:
            self._start_cell(dict(attrs))
        elif tag == "br":
            self._add("\n")
        elif tag in ("sup", "sub"):
            self._add("\x01" if tag == "sup" else "\x03")
        elif tag in _HEADINGS and not self.depth:
            self._end_line()

    def handle_endtag(self, tag: str) -> None:
        if tag in _SKIPPED:
            self.skipped = max(0, self.skipped - 1)
        elif tag in ("td", "th", "tr"):
            self._end_cell()
        elif tag == "table" and self.depth:
            self._end_cell()
            self.depth -= 1
        elif tag in ("sup", "sub"):
            self._add("\x02" if tag == "sup" else "\x04")
        elif tag in _HEADINGS and (not self.depth or tag == "caption"):
            self._end_line()

    def handle_data(self, data: str) -> None:
        if not self.skipped:
            self._add(data)

    def _add(self, text: str) -> None:
        (self.cell if self.cell is not None else self.line).append(text)

    def _start_table(self) -> None:
        self._end_cell()
        self._end_line()
        self.depth += 1
        self.rows = 0
        self.blocks.append([[(line, 1, 1)] for line in self.lines[-3:]])
        self.lines = []

    def _start_cell(self, attrs: dict[str, str | None]) -> None:
        self._end_cell()
        if not self.blocks[-1]:
            self.blocks[-1].append([])
        self.cell = []
        self.span = (_count(attrs.get("colspan")), _count(attrs.get("rowspan")))
        self.cells += self.span[0] * self.span[1]
        check_size(self.name, cells=self.cells)

    def _end_cell(self) -> None:
        if self.cell is not None:
            self.blocks[-1][-1].append((_text("".join(self.cell)), *self.span))
            self.cell = None

    def _end_line(self) -> None:
        text = _text("".join(self.line))
        self.line = []
        if text and len(text) <= _LONGEST_HEADING:
            self.lines.append(text)
            if self.depth and not self.rows:
                self.blocks[-1].append([(self.lines.pop(), 1, 1)])

    def finish(self) -> None:
        """Close what the page left open; the lines behind the last table are notes."""
        self.close()
        self._end_cell()
        self._end_line()
        if self.lines and self.blocks:
            self.blocks.append([[(line, 1, 1)] for line in self.lines[:5]])


def _count(text: str | None) -> int:
    digits = (text or "").strip()
    return max(1, min(int(digits), _SPAN)) if digits.isascii() and digits.isdigit() and len(digits) < 6 else 1  # noqa: PLR2004


def _text(text: str) -> str:
    """A cell's text with raised figures as marks, and fractions made of raised and lowered figures put together."""
    text = _FRACTION.sub(lambda m: f" {m[1]}/{m[2]}", text)
    text = _RAISED.sub(lambda m: m[1].translate(_SUPERSCRIPT), text)
    text = re.sub("[\x00-\x08\x0e-\x1f]", "", text)
    return " ".join(text.split())


def sheets_of_page(text: str, name: str) -> list[Sheet]:
    """One sheet with the tables of a page below each other; none where the page has no table.

    Raises:
        ReadError: the tables are larger than any chart.
    """
    page = _Tables(name)
    page.feed(text)
    page.finish()
    grid: dict[tuple[int, int], GridCell] = {}
    top = 0
    for block in page.blocks:
        if any(any(text for text, _, _ in row) for row in block):
            top = _placed(block, top, grid) + 1
    if not grid:
        return []
    height, width = max(r for r, _ in grid) + 1, max(c for _, c in grid) + 1
    check_size(name, rows=height if height > ROWS else 0, columns=width if width > COLUMNS else 0)
    check_size(name, cells=height * width if height * width > CELLS * 4 else 0)
    return [sheet_of(SHEET, [[grid.get((r, c)) for c in range(width)] for r in range(height)])]


def _placed(block: list[list[tuple[str, int, int]]], top: int, grid: dict[tuple[int, int], GridCell]) -> int:
    """Put a table's cells in their places from row `top` on; returns the row below it."""
    taken: set[tuple[int, int]] = set()
    for r, row in enumerate(block, top):
        c = 0
        for text, across, down in row:
            while (r, c) in taken:
                c += 1
            cell = GridCell(address(r, c), text) if text else None
            for place in ((r + i, c + j) for i in range(min(down, len(block) + top - r)) for j in range(across)):
                taken.add(place)
                if cell is not None:
                    grid[place] = cell
            c += across
    return top + len(block)
