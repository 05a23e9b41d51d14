"""The ease of everybody in every size, region by region, with live formulas: a body figure can be changed there."""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.utils import get_column_letter  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.core.ease import SAME
from sizekeeper.core.household_words import name_of
from sizekeeper.core.length import CM_PER
from sizekeeper.core.preference import BANDS
from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_places import number

if TYPE_CHECKING:
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.household import Household, Standing
    from sizekeeper.core.regions import Region
    from sizekeeper.core.result import RegionAt
    from sizekeeper.core.wording import Wording

_FIRST_SIZE = 6
"""The column of the first size; before it stand the person, her body, and where close, easy and loose begin."""
_WHAT = (
    "Ease: finished minus body. Tinted cells may be changed: ease and band follow. Framed is what is to be cut. Where "
    "the body chart alone decides, the figure is body chart minus body, and stays."
)


class EaseBlocks:
    """Writes the page: a block a region, in it a row a person."""

    def __init__(self, page: Worksheet, household: Household, words: Wording) -> None:
        """Take the empty page."""
        self._page, self._household, self._words = page, household, words
        self._length = style.length_format(words.notation)
        self._near = number(SAME / float(CM_PER[words.notation.unit]))

    def write(self) -> None:
        """Write everything."""
        columns = _FIRST_SIZE + 2 * len(self._household.labels) - 1
        style.put_wide(self._page, 1, _WHAT, min(columns, 14), font=style.SMALL, letters=90)
        row = 3
        for measure in self._household.measures:
            row = self._block(row, measure) + 1
        self._page.column_dimensions["A"].width = 26
        for column in range(2, columns + 1):
            self._page.column_dimensions[get_column_letter(column)].width = 10.0 if column < _FIRST_SIZE else 9.0
        self._page.freeze_panes = "B3"

    def _block(self, row: int, measure: str) -> int:
        """One region; gives the row after it."""
        unit = self._words.notation.unit
        style.put_text(style.at(self._page, row, 1), self._words.name(measure), style.PART)
        self._page.row_dimensions[row].height = 24
        heading = (f"Body, {unit}", "close from", "easy from", "loose from")
        for column, text in enumerate(heading, start=2):
            style.put_text(style.at(self._page, row, column), text, style.SMALL, style.CENTRE)
        for size, label in enumerate(self._household.labels):
            first = _FIRST_SIZE + 2 * size
            self._page.merge_cells(start_row=row, end_row=row, start_column=first, end_column=first + 1)
            style.put_text(style.at(self._page, row, first), label, style.BOLD, style.CENTRE)
        self._finished(row + 1, measure)
        people = [s for s in self._household.standings if self._region(s, measure) is not None]
        for index, standing in enumerate(people):
            self._person(row + 2 + index, row + 1, standing, measure)
        end = row + 2 + len(people)
        self._conditions(row + 2, end - 1)
        return end

    @staticmethod
    def _region(standing: Standing, measure: str) -> Region | None:
        comparison = standing.found.comparison
        regions = comparison.regions.found if comparison is not None else ()
        return next((region for region in regions if region.measure == measure), None)

    def _finished(self, row: int, measure: str) -> None:
        """The finished figures of the pattern: the same for everybody."""
        style.put_text(style.at(self._page, row, 1), f"Finished, {self._words.notation.unit}", style.SMALL)
        for size, label in enumerate(self._household.labels):
            figures = (standing.at(label, measure) for standing in self._household.standings)
            given = [at.finished_cm for at in figures if at is not None and at.finished_cm is not None]
            if given:
                self._number(row, _FIRST_SIZE + 2 * size, given[0], typed=True)

    def _number(self, row: int, column: int, cm: float, *, typed: bool) -> None:
        cell = style.at(self._page, row, column)
        cell.value = style.in_unit(cm, self._words.notation)
        cell.number_format, cell.font, cell.alignment = self._length, style.PLAIN, style.CENTRE
        if typed:
            cell.fill, cell.border = style.TYPED, style.FRAMED

    def _formula(self, row: int, column: int, formula: str) -> None:
        cell = style.at(self._page, row, column)
        cell.value = formula
        cell.number_format, cell.font, cell.alignment = self._length, style.PLAIN, style.CENTRE

    def _person(self, row: int, finished: int, standing: Standing, measure: str) -> None:
        region = self._region(standing, measure)
        if region is None:
            return
        style.put_text(style.at(self._page, row, 1), name_of(standing))
        style.set_height(self._page, row, style.lines_of(name_of(standing), 23))
        self._number(row, 2, region.body.cm, typed=True)
        if standing.fit is not None and standing.fit.mode != "body":
            self._edges(row, region)
        cut = self._cut_label(standing, measure)
        for size, label in enumerate(self._household.labels):
            at = standing.at(label, measure)
            if at is not None:
                self._cell(row, finished, _FIRST_SIZE + 2 * size, at, chosen=label == cut)

    def _edges(self, row: int, region: Region) -> None:
        for column, (edge, share) in enumerate(
            zip(region.rule.edges, region.rule.edge_shares, strict=True), start=3
        ):  # fmt: skip
            if share:
                fixed = number(style.in_unit(edge, self._words.notation))
                self._formula(row, column, f"={fixed}+{number(share)}*$B{row}")
            else:
                self._number(row, column, edge, typed=True)

    @staticmethod
    def _cut_label(standing: Standing, measure: str) -> str:
        """The listed size that is to be cut at a region, "" where it is a line between two."""
        cut = standing.at_cut().get(measure)
        if cut is None or standing.fit is None or not float(cut[0]).is_integer():
            return ""
        return standing.fit.labels[int(cut[0])] if 0 <= cut[0] < len(standing.fit.labels) else ""

    def _cell(self, row: int, finished: int, column: int, at: RegionAt, *, chosen: bool) -> None:
        here, printed = f"{get_column_letter(column)}{row}", f"{get_column_letter(column)}${finished}"
        if at.finished_cm is not None:
            self._formula(row, column, f'=IF(AND(ISNUMBER({printed}),ISNUMBER($B{row})),{printed}-$B{row},"")')
            a, b, c = (f"{here}<${letter}{row}-{self._near}" for letter in "CDE")
            word = f'=IF(ISNUMBER({here}),IF({a},"tight",IF({b},"close",IF({c},"easy","loose"))),"")'
            self._formula(row, column + 1, word)
        elif at.diff_cm is not None:
            self._number(row, column, at.diff_cm, typed=False)
        for half in (0, 1) if chosen else ():
            style.at(self._page, row, column + half).border = style.chosen_border(first=half == 0, last=half == 1)

    def _conditions(self, first: int, last: int) -> None:
        """The fills of the bands, and fractions cancelled down."""
        if last < first:
            return
        for size in range(len(self._household.labels)):
            pair = [get_column_letter(_FIRST_SIZE + 2 * size + half) for half in (0, 1)]
            spans = [f"{letter}{first}:{letter}{last}" for letter in pair]
            for band in BANDS:
                test = f'${pair[1]}{first}="{band}"'
                look = (style.band_font(band), style.band_fill(band))
                style.lay(self._page, spans[0], test, look, self._words.notation)
                style.lay(self._page, spans[1], test, look, None)
            style.cancel(self._page, f"{pair[0]}{first - 1}:{pair[0]}{last}", self._words.notation)
        style.cancel(self._page, f"B{first}:E{last}", self._words.notation)
