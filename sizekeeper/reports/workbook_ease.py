"""The first page of a workbook: the ease table with live formulas, so that she can change a measurement there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.utils import get_column_letter  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.reports import workbook_places as places
from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_conditions import lay_conditions, only_numbers
from sizekeeper.reports.workbook_heading import frozen_heading
from sizekeeper.reports.workbook_places import FIRST_SIZE, TOP, Places

if TYPE_CHECKING:
    from openpyxl.styles import Font
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.notation import Notation
    from sizekeeper.reports.sheet import Sheet, SheetRow

_LIVE = (
    "Tinted cells may be changed: the rest follows. “Best” is the best by ease alone of the sizes and lines shown "
    "here, each region counting as it does below; sizes graded from level to level are not worked out here."
)
_UNITS = {"cm": "centimetres", "in": "inches"}
_NAME_LETTERS, _ROLE_LETTERS = 20, 17
"""How many letters fit into a line of the first and the fourth column."""


class EasePage:
    """Writes the page of one sheet, block by block."""

    def __init__(self, page: Worksheet, sheet: Sheet) -> None:
        """Take the empty page."""
        self._page, self._sheet, self._table = page, sheet, sheet.table
        self._notation: Notation = sheet.notation
        self._places: Places = places.places_of(sheet.table, sheet.notation)
        self._length = style.length_format(sheet.notation)
        self._signed = style.length_format(sheet.notation, sign=True)

    def write(self) -> None:
        """Write everything."""
        asked = self._in("Asked") if self._places.mode == "my" else ""
        frozen_heading(self._page, self._sheet, before=("Region", self._in("Body"), asked, "Counts as"))
        self._subheading(TOP - 1, "", ("difference", "") if self._places.mode == "body" else ("ease", "band"))
        for index, row in enumerate(self._table.rows):
            self._region(index, row)
        self._answers()
        self._notes()
        if self._places.printed:
            self._finished()
        if self._places.chart:
            self._chart()
        self._edges()
        self._working()
        lay_conditions(self._page, self._places, self._notation)
        only_numbers(self._page, self._places, self._notation)

    def _in(self, word: str) -> str:
        return f"{word}, {self._notation.unit}"

    def _text(self, row: int, column: int, text: str, font: Font | None = None) -> None:
        style.put_text(style.at(self._page, row, column), text, font)

    def _name(self, row: int, name: str, font: Font | None = None) -> None:
        """The name of a region; the row gets as high as it needs."""
        self._text(row, 1, name, font=font)
        style.set_height(self._page, row, style.lines_of(name, _NAME_LETTERS))

    def _formula(self, row: int, column: int, formula: str, number_format: str = "General") -> None:
        cell = style.at(self._page, row, column)
        cell.value = formula
        cell.font = style.PLAIN
        cell.number_format = number_format
        cell.alignment = style.CENTRE

    def _number(self, row: int, column: int, cm: float | None, *, typed: bool = True) -> None:
        """A length that may be changed; nothing where it is not known."""
        cell = style.at(self._page, row, column)
        cell.number_format = self._length
        cell.font = style.PLAIN
        cell.alignment = style.CENTRE
        if cm is not None:
            cell.value = style.in_unit(cm, self._notation)
        if typed:
            cell.fill, cell.border = style.TYPED, style.FRAMED

    def _title(self, row: int, title: str, words: tuple[str, str]) -> None:
        self._text(row - 1, 1, title, font=style.PART)
        self._page.row_dimensions[row - 1].height = 30
        self._subheading(row - 1, title, words)

    def _subheading(self, row: int, title: str, words: tuple[str, str]) -> None:
        if title:
            self._page.merge_cells(start_row=row, end_row=row, start_column=1, end_column=FIRST_SIZE - 1)
        for size in range(self._places.sizes):
            for half, word in enumerate(words):
                style.put_text(
                    style.at(self._page, row, self._places.column(size, half)), word, style.SMALL, style.CENTRE
                )  # fmt: skip

    def _region(self, index: int, row: SheetRow) -> None:
        p, at = self._places, TOP + index
        self._name(at, row.name, style.BOLD)
        self._number(at, 2, row.body_cm)
        self._asked(at, row)
        style.put_text(style.at(self._page, at, 4), row.role, style.SMALL, style.CENTRE)
        style.set_height(self._page, at, style.lines_of(row.role, _ROLE_LETTERS))
        for size, cell in enumerate(row.cells):
            if p.mode == "body":
                self._formula(at, p.column(size, 0), places.difference(p, size, index), self._signed)
            else:
                self._formula(at, p.column(size, 0), places.ease(p, size, index), self._length)
                self._formula(at, p.column(size, 1), places.band(p, size, index))
            if cell.chosen:
                for half in (0, 1):
                    style.at(self._page, at, p.column(size, half)).border = style.chosen_border(
                        first=half == 0, last=half == 1
                    )

    def _asked(self, at: int, row: SheetRow) -> None:
        """The ease asked for; where it goes with the body, a formula."""
        if row.asked_cm is None or row.body_cm is None or not row.asked_share:
            self._number(at, 3, row.asked_cm, typed=self._places.mode == "my")
            return
        fixed = style.in_unit(row.asked_cm - row.asked_share * row.body_cm, self._notation)
        share = f"{places.number(row.asked_share)}*$B{at}"
        self._formula(at, 3, f"={places.number(fixed)}+{share}" if fixed else f"={share}", self._length)

    def _answers(self) -> None:
        """Below the table: how far each size is off, which is best, and where one will not close."""
        p = self._places
        listed = [size for size, column in enumerate(self._table.columns) if not column.between]
        between = [size for size in range(p.sizes) if size not in listed]
        must = [index for index, row in enumerate(self._table.rows) if row.weight and not row.adjustable]
        self._text(p.off, 1, self._in("Off by"), font=style.BOLD)
        self._text(p.closes, 1, "Will not close at" if p.printed else "", font=style.SMALL)
        for size in range(p.sizes):
            self._formula(p.off, p.column(size, 0), places.misfit(p, size), self._length)
            self._formula(p.off, p.column(size, 1), places.mark(p, size, listed or between, between if listed else []))
            style.at(self._page, p.off, p.column(size, 1)).font = style.BOLD
            if p.printed:
                self._page.merge_cells(p.at(size, 0, p.closes) + ":" + p.at(size, 1, p.closes))
                self._formula(p.closes, p.column(size, 0), places.closes(p, size, must))
                style.at(self._page, p.closes, p.column(size, 0)).font = style.SMALL
        short = (", ".join(row.name for row in self._table.rows if row.cells[size].short) for size in range(p.sizes))
        style.set_height(
            self._page, p.closes, max((style.lines_of(names, _ROLE_LETTERS) for names in short), default=1)
        )

    def _notes(self) -> None:
        p, unit = self._places, self._notation.unit
        said = [_LIVE]
        if self._sheet.envelope.unit != unit:
            other = self._sheet.envelope.unit
            said.append(f"The pattern prints {other}; here its figures stand in {unit}.")
        if any(cell.interpolated for row in self._table.rows for cell in row.cells):
            said.append("Slanting figures were filled in between two printed ones.")
        if self._table.left_out:
            count = self._table.left_out
            said.append(f"{count} more {'size is' if count == 1 else 'sizes are'} not shown.")
        for row, text in ((p.notes, self._what()), (p.notes + 1, " ".join(said))):
            style.put_wide(self._page, row, text, self._wide(), font=style.SMALL, letters=48 + 9 * (self._wide() - 4))

    def _what(self) -> str:
        """What the figures above are, in the unit of the page."""
        what = "Body chart minus body" if self._places.mode == "body" else "Ease: finished minus body"
        more = "; what the plan adds at the bust comes on top" if self._table.bust_on_top else ""
        return f"{what}, in {_UNITS[self._notation.unit]}{more}."

    def _wide(self) -> int:
        """How many columns a long text lies over."""
        return min(self._places.last_column, FIRST_SIZE + 9)

    def _finished(self) -> None:
        p = self._places
        self._title(p.printed, self._in("Finished measurements"), ("finished", "off"))
        for index, row in enumerate(self._table.rows):
            self._name(p.printed + index, row.name)
            for size, cell in enumerate(row.cells):
                self._number(p.printed + index, p.column(size, 0), cell.printed_cm)
                if cell.interpolated:
                    style.at(self._page, p.printed + index, p.column(size, 0)).font = style.SLANTING
                self._formula(p.printed + index, p.column(size, 1), places.difference(p, size, index), self._signed)

    def _chart(self) -> None:
        """The body chart's figures, from and to; a single figure is both."""
        p = self._places
        self._title(p.chart, self._in("Body chart"), ("from", "to"))
        for index, row in enumerate(self._table.rows):
            at = p.chart + index
            self._name(at, row.name)
            for size, cell in enumerate(row.cells):
                span = cell.chart_cm
                self._number(at, p.column(size, 0), span[0] if span else None)
                self._number(at, p.column(size, 1), span[1] if span else None)
                if span is None or span[0] == span[1]:
                    low = p.at(size, 0, at)
                    self._formula(at, p.column(size, 1), f'=IF(ISNUMBER({low}),{low},"")', self._length)

    def _edges(self) -> None:
        """Where the bands begin, how much each region counts, and whether too much does no harm there."""
        p = self._places
        titles = ("Where the bands begin", "close from", "easy from", "loose from", "counts", "gathers, 1: yes")
        for column, text in enumerate(titles, start=1):
            first = column == 1
            style.put_text(
                style.at(self._page, p.edges - 1, column),
                text if first or column > FIRST_SIZE - 1 or p.printed else "",
                style.PART if first else style.SMALL,
                style.LEFT if first else style.CENTRE,
            )
        self._page.row_dimensions[p.edges - 1].height = 32
        for index, row in enumerate(self._table.rows):
            at = p.edges + index
            self._name(at, row.name)
            for column, edge in enumerate(row.edges_cm if p.printed else (), start=2):
                self._number(at, column, edge)
            for column, share in enumerate(row.edges_share or () if p.printed else (), start=2):
                self._formula(at, column, f"={places.number(share)}*$B{TOP + index}", self._length)
            for column, count in ((FIRST_SIZE, row.weight), (FIRST_SIZE + 1, int(row.adjustable))):
                self._number(at, column, None)
                style.at(self._page, at, column).value = count
                style.at(self._page, at, column).number_format = "0"

    def _working(self) -> None:
        """What each region adds to the misfit, and how the sizes stand to each other."""
        p = self._places
        listed = [size for size, column in enumerate(self._table.columns) if not column.between]
        lead = [index for index, row in enumerate(self._table.rows) if row.weight > 1]
        counted = [index for index, row in enumerate(self._table.rows) if row.weight and not row.adjustable]
        self._title(p.working, "Working: what each region adds", ("adds", "counts"))
        for index, row in enumerate(self._table.rows):
            self._name(p.working + index, row.name, style.SMALL)
            for size in range(p.sizes):
                self._formula(p.working + index, p.column(size, 0), places.loss(p, size, index), "0.00")
                self._formula(p.working + index, p.column(size, 1), places.weighed(p, size, index), "0")
        self._text(p.standing, 1, "How they stand", font=style.SMALL)
        for size in range(p.sizes):
            kind = [other for other in range(p.sizes) if (other in listed) == (size in listed)]
            self._formula(p.standing, p.column(size, 0), places.standing(p, size, lead or counted), "0.00")
            self._formula(p.standing, p.column(size, 1), places.place_if_best(p, size, kind), "0")
        for at in range(p.working - 1, p.standing + 1):
            self._page.row_dimensions[at].outlineLevel = 1


def set_widths(page: Worksheet, sizes: int) -> None:
    """The widths of the columns: names wide, two narrow columns a size."""
    for column, width in ((1, 23.0), (2, 9.5), (3, 9.5), (4, 16.0)):
        page.column_dimensions[get_column_letter(column)].width = width
    for column in range(FIRST_SIZE, FIRST_SIZE + 2 * sizes):
        page.column_dimensions[get_column_letter(column)].width = 9.0
