"""How the cells of a workbook look, and how a text is put into one so that it stays a text."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, cast

from openpyxl.formatting.rule import Rule  # noqa: TID253 - loaded when a workbook is written
from openpyxl.styles import Alignment, Border, Font, PatternFill, Side  # noqa: TID253 - the same
from openpyxl.styles.differential import DifferentialStyle  # noqa: TID253 - the same
from openpyxl.styles.numbers import NumberFormat  # noqa: TID253 - the same

from sizekeeper.core.band_colours import look
from sizekeeper.core.length import CM_PER
from sizekeeper.reports.typed_text import clean

if TYPE_CHECKING:
    from collections.abc import Iterator

    from openpyxl.cell import Cell
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.notation import Notation
    from sizekeeper.core.preference import Band

ACCENT = "6D2B5E"
QUIET = "655C61"
RULE = "C9BEC3"
_FACE = "Calibri"
TITLE = Font(_FACE, 18)
PART = Font(_FACE, 12, bold=True, color=ACCENT)
PLAIN = Font(_FACE, 11)
BOLD = Font(_FACE, 11, bold=True)
SLANTING = Font(_FACE, 11, italic=True)
SMALL = Font(_FACE, 9, color=QUIET)
BOX = Font(_FACE, 14)
ON_ACCENT = Font(_FACE, 11, bold=True, color="FFFFFF")
FILLED = PatternFill("solid", fgColor=ACCENT)
TYPED = PatternFill("solid", fgColor="F6EFF4")
"""The ground of cells that are meant to be changed."""
BEST = PatternFill("solid", bgColor=ACCENT)
"""The ground of the best size, as a condition lays it."""
CENTRE = Alignment(horizontal="center", vertical="center", wrap_text=True)
LEFT = Alignment(horizontal="left", vertical="center", wrap_text=True)
TOP = Alignment(horizontal="left", vertical="top", wrap_text=True)
_FINE, _STRONG = Side("thin", color=RULE), Side("medium", color=ACCENT)
FRAMED = Border(left=_FINE, right=_FINE, top=_FINE, bottom=_FINE)
UNDER = Border(bottom=_FINE)
_Fill = Literal["lightTrellis", "lightUp", "lightHorizontal", "gray0625"]
_FILLS: dict[Band, _Fill] = {
    "tight": "lightTrellis",
    "close": "lightUp",
    "easy": "lightHorizontal",
    "loose": "gray0625",
}
"""The spreadsheet's own fills that come nearest to ours: lattice, twill, running stitch, dots."""
_LINE_POINTS = 15.0
_EXACT = "0.000001"
"""What is nearer than this to the middle of two steps lies there; far below what can be measured."""
_OWN_FORMATS = 200
"""Numbers from here on are free for formats of our own (the file format keeps those below 164)."""


def band_fill(band: Band) -> PatternFill:
    """The fill of a band: its ground with its thread drawn on it."""
    shown = look(band, dark=False)
    return PatternFill(_FILLS[band], fgColor=_argb(shown.thread), bgColor=_argb(shown.ground))


def band_font(band: Band) -> Font:
    """The text on a band."""
    return Font(_FACE, 11, color=_argb(look(band, dark=False).text))


def condition(
    formula: str, font: Font | None = None, fill: PatternFill | None = None, shown: NumberFormat | None = None
) -> Rule:
    """A rule that lays a font, a fill and a number format over cells where a formula is true."""
    return Rule(type="expression", dxf=DifferentialStyle(font=font, fill=fill, numFmt=shown), formula=[formula])


def lay(page: Worksheet, span: str, test: str, look: tuple[Font, PatternFill], notation: Notation | None) -> None:
    """Lay a look over cells where a test is true; with a notation they are lengths, fractions cancelled down.

    Both are one rule, because not every spreadsheet lays one rule over another.
    """
    for also, shown in fractions(span.partition(":")[0], notation) if notation is not None else ():
        page.conditional_formatting.add(span, condition(f"AND({test},{also})", *look, shown))
    page.conditional_formatting.add(span, condition(test, *look))


def cancel(page: Worksheet, span: str, notation: Notation, *, sign: bool = False) -> None:
    """Cancel down the fractions in a range of lengths."""
    for test, shown in fractions(span.partition(":")[0], notation, sign=sign):
        page.conditional_formatting.add(span, condition(test, shown=shown))


def _argb(colour: str) -> str:
    return "FF" + colour.removeprefix("#").upper()


def chosen_border(*, first: bool, last: bool) -> Border:
    """The frame round a pair of cells that is to be cut: its left and its right half."""
    return Border(
        left=_STRONG if first else None, right=_STRONG if last else None, top=_STRONG, bottom=_STRONG
    )  # fmt: skip


def length_format(notation: Notation, *, sign: bool = False) -> str:
    """The number format of a notation: fractions of its step for inches, one decimal for centimetres."""
    return _format(f"/{notation.step.denominator}" if notation.unit == "in" else ".0", sign=sign)


def _format(part: str, *, sign: bool) -> str:
    whole = f"0{part}" if part == ".0" or not part else f"# {'?' * (len(part) - 1)}{part}"
    return f"+{whole};-{whole};0" if sign else whole


def fractions(first: str, notation: Notation, *, sign: bool = False) -> Iterator[tuple[str, NumberFormat]]:
    """What one number format cannot show: a test, and the format where it is true.

    4/8 is shown as 1/2 and 2 0/8 as 2. What lies in the middle of two steps is shown by half a step, because
    spreadsheets do not agree on which way it goes. What comes to nothing has no sign.

    Args:
        first: the first cell of the range that they are for.
        notation: how lengths are shown; only inches are shown as fractions.
        sign: whether a positive amount gets a plus sign.
    """
    if notation.unit == "in":
        steps = whole = notation.step.denominator
        middle = f"ABS(ABS({first})*{whole}-INT(ABS({first})*{whole})-0.5)<{_EXACT}"
        yield f"AND(ISNUMBER({first}),{middle})", _numbers(4 * whole + sign, _format(f"/{2 * whole}", sign=sign))
        yield f"AND(ISNUMBER({first}),ROUND(ABS({first})*{whole},0)=0)", _numbers(0, "0;0;0")
    else:
        steps = whole = 1
        yield f"AND(ISNUMBER({first}),ROUND(ABS({first}),1)=0)", _numbers(0, "0.0;0.0;0.0")
    while steps > 1:
        part = f"/{whole // steps}" if whole > steps else ""
        test = f"AND(ISNUMBER({first}),MOD(ROUND(ABS({first})*{whole},0),{steps})=0)"
        yield test, _numbers(2 * steps + sign, _format(part, sign=sign))
        steps //= 2


def _numbers(number: int, code: str) -> NumberFormat:
    return NumberFormat(numFmtId=_OWN_FORMATS + number, formatCode=code)


def in_unit(cm: float, notation: Notation) -> float:
    """A length in the notation's unit, without the noise of binary fractions."""
    return round(cm / float(CM_PER[notation.unit]), 10)


def at(page: Worksheet, row: int, column: int) -> Cell:
    """The cell in a row and a column, both counted from 1; never one that a merged one lies over."""
    return cast("Cell", page.cell(row, column))


def put_text(cell: Cell, text: str, font: Font | None = None, alignment: Alignment = LEFT) -> None:
    """Put a text into a cell, as a text whatever it begins with; a spreadsheet never works it out."""
    cell.value = clean(text)
    cell.data_type = "s"
    cell.font = font or PLAIN
    cell.alignment = alignment
    cell.quotePrefix = True


def put_wide(page: Worksheet, row: int, text: str, columns: int, *, font: Font | None = None, letters: int) -> None:
    """Put a text over the first columns of a row, which gets as high as the text needs.

    Args:
        page: the sheet.
        row: the row.
        text: the text.
        columns: how many columns it lies over.
        font: how it is written.
        letters: how many letters fit into a line there.
    """
    page.merge_cells(start_row=row, end_row=row, start_column=1, end_column=columns)
    put_text(at(page, row, 1), text, font, TOP)
    set_height(page, row, lines_of(text, letters), font)


def lines_of(text: str, letters: int) -> int:
    """How many lines a text takes where so many letters fit into one."""
    return sum(max(1, -(-len(line) // max(1, letters))) for line in (text.splitlines() or [""]))


def set_height(page: Worksheet, row: int, lines: int, font: Font | None = None) -> None:
    """Make a row as high as so many lines need, never lower than it is."""
    size = float(font.sz) if font is not None and font.sz else 11.0
    wanted = lines * _LINE_POINTS * max(1.0, size / 11.0) + 3
    page.row_dimensions[row].height = max(wanted, page.row_dimensions[row].height or 0)
