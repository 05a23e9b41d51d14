"""The pages of a workbook for the work: what to check, the plan, the pieces, the work list with cells to tick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.styles import Font  # noqa: TID253 - loaded when a workbook is written
from openpyxl.utils import get_column_letter  # noqa: TID253 - the same
from openpyxl.worksheet.datavalidation import DataValidation  # noqa: TID253 - the same

from sizekeeper.core.days import day_words
from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_heading import whose

if TYPE_CHECKING:
    from collections.abc import Iterator

    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.reports.sheet import Sheet, SheetFigures, SheetPlan

TICKED, OPEN = "☑", "☐"
_LETTERS, _PIECE_LETTERS = 96, 26
_NAME_WIDTH, _FIGURE_WIDTH = 26, 16
"""The widths of the columns of figures, in figures."""


class WorkPage:
    """Writes the work list, row by row from the top down."""

    def __init__(self, page: Worksheet) -> None:
        """Take the empty page."""
        self._page = page
        self._row = 0
        self._ticks: list[str] = []

    def write(self, sheet: Sheet) -> None:
        """Write everything."""
        self._say(sheet.pattern, style.TITLE)
        self._say(whose(sheet), style.SMALL)
        self._say(sheet.verdict, style.BOLD)
        self._row += 1
        counted = self._row
        self._lists(sheet)
        for place in self._under("What the toile shows", sheet.toile):
            self._room(place)
        self._count(counted)
        self._tick_cells()
        for column, width in ((1, 6.0), (2, 28.0), (3, 70.0)):
            self._page.column_dimensions[get_column_letter(column)].width = width
        self._page.freeze_panes = style.at(self._page, counted + 1, 1).coordinate

    def _lists(self, sheet: Sheet) -> None:
        for said in self._under("Take care", sheet.cautions):
            self._say(said)
        for said in self._under("Measure again", sheet.measure_again):
            self._tick("", said)
        if sheet.plan is not None:
            heading = "The plan" if sheet.plan.decided else "The plan advised"
            for said in self._under(heading, _plan(sheet.plan, sheet.verdict)):
                self._say(said)
        if sheet.trace:
            self._heading("Pieces to trace")
        for piece in sheet.trace:
            changes = "has changes below" if piece.changed else ""
            self._tick(piece.name, ", ".join(part for part in (piece.size, piece.cut, changes) if part))
        for part in sheet.work:
            self._heading(part.title)
            for step in part.steps:
                self._tick(step.piece, step.words, done=step.done)

    def _under(self, title: str, said: tuple[str, ...]) -> Iterator[str]:
        """The texts, below a heading if there are any."""
        if said:
            self._heading(title)
        yield from said

    def _heading(self, title: str) -> None:
        self._row += 1
        self._say(title, style.PART)

    def _say(self, text: str, font: Font | None = None) -> None:
        self._row += 1
        style.put_wide(self._page, self._row, text, 3, font=font, letters=_LETTERS)

    def _tick(self, piece: str, words: str, *, done: bool = False) -> None:
        self._row += 1
        box, name, what = (style.at(self._page, self._row, column) for column in (1, 2, 3))
        style.put_text(box, TICKED if done else OPEN, style.BOX, style.CENTRE)
        style.put_text(name, piece, style.BOLD)
        style.put_text(what, words)
        for cell in (box, name, what):
            cell.border = style.UNDER
        lines = max(style.lines_of(piece, _PIECE_LETTERS), style.lines_of(words, _LETTERS - 30))
        style.set_height(self._page, self._row, lines)
        self._page.row_dimensions[self._row].height = max(24.0, self._page.row_dimensions[self._row].height or 0)
        self._ticks.append(f"A{self._row}")

    def _room(self, place: str) -> None:
        """A place of the toile, with room to write."""
        self._row += 1
        style.put_text(style.at(self._page, self._row, 2), place, None, style.TOP)
        style.at(self._page, self._row, 3).border = style.FRAMED
        style.at(self._page, self._row, 3).alignment = style.TOP
        self._page.row_dimensions[self._row].height = 48

    def _count(self, row: int) -> None:
        """How many are ticked, as a formula."""
        self._page.merge_cells(start_row=row, end_row=row, start_column=1, end_column=3)
        cell = style.at(self._page, row, 1)
        if self._ticks:
            done = f'COUNTIF(A{row + 1}:A{self._row},"{TICKED}")'
            cell.value = f'={done}&" of {len(self._ticks)} done"'
        cell.font, cell.alignment = style.SMALL, style.LEFT

    def _tick_cells(self) -> None:
        """A list to tick from, and what is done steps back."""
        if not self._ticks:
            return
        choice = DataValidation(type="list", formula1=f'"{OPEN},{TICKED}"', allow_blank=True)
        for cell in self._ticks:
            choice.add(cell)
        self._page.add_data_validation(choice)
        first = self._ticks[0][1:]
        done = style.condition(f'$A{first}="{TICKED}"', Font(strike=True, color=style.QUIET))
        self._page.conditional_formatting.add(f"B{first}:C{self._row}", done)


def _plan(plan: SheetPlan, verdict: str) -> tuple[str, ...]:
    """What the plan says; its title only where the verdict has not said it already."""
    said = [*([plan.title] if plan.title.strip(" .") != verdict.strip(" .") else []), *plan.lines]
    if plan.advised:
        said.append(f"Chosen against the advice: {plan.advised}")
    if plan.reason:
        said.append(f"Why: {plan.reason}")
    if plan.decided and plan.on is not None:
        said.append(f"Decided on {day_words(plan.on)}")
    return tuple(said)


def figures_page(page: Worksheet, figures: tuple[SheetFigures, ...]) -> None:
    """Write the figures that the sheet rests on, block below block, as they are written on her sheet."""
    row, widest = 1, 0
    for part in figures:
        across = max(2, len(part.across) + 1)
        page.merge_cells(start_row=row, end_row=row, start_column=1, end_column=across)
        style.put_text(style.at(page, row, 1), part.title, style.PART)
        for column, words in enumerate(part.across, start=2):
            style.put_text(style.at(page, row + 1, column), words, style.BOLD, style.CENTRE)
        row += 2
        for name, texts in part.rows:
            style.put_text(style.at(page, row, 1), name)
            for column, text in enumerate(texts, start=2):
                style.put_text(style.at(page, row, column), text, None, style.CENTRE)
            lines = [style.lines_of(name, _NAME_WIDTH), *(style.lines_of(text, _FIGURE_WIDTH) for text in texts)]
            style.set_height(page, row, max(lines))
            widest = max(widest, len(texts))
            row += 1
        row += 1
    page.column_dimensions["A"].width = _NAME_WIDTH
    for column in range(2, widest + 2):
        page.column_dimensions[get_column_letter(column)].width = _FIGURE_WIDTH
    page.freeze_panes = style.at(page, 1, 2).coordinate
