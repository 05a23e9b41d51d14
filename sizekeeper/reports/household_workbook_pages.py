"""Two pages of a household's workbook: who cuts what, and the sizes to trace for all of them."""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.utils import get_column_letter  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.core.days import day_words
from sizekeeper.core.household_words import (
    alterations_words,
    blend_short,
    line_words,
    margin_words,
    name_of,
    size_short,
    troubles_words,
    verdict_short,
    wearers_words,
)
from sizekeeper.core.places import join
from sizekeeper.reports import workbook_style as style

if TYPE_CHECKING:
    import datetime as dt

    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.household import Household, Standing
    from sizekeeper.core.sharing import Choice, Sharing
    from sizekeeper.core.wording import Wording

_WIDTHS = (24.0, 26.0, 11.0, 14.0, 11.0, 18.0, 11.0, 32.0, 11.0, 28.0, 56.0)
_LINE_WIDTHS = (26.0, 26.0, 12.0, 18.0, 60.0)
_LETTERS = 110
_LETTERS_A_UNIT = 0.95
"""How many letters of our text fit into a unit of a column's width, which is a figure wide."""


def people_page(page: Worksheet, household: Household, words: Wording, on: dt.date, view_words: str = "") -> None:
    """A row a person: what she cuts and by how much it is off, straight, between and blended."""
    pattern = household.envelope.pattern
    view = household.envelope.view
    said = (pattern.publisher, view_words or (f"View {view}" if view else ""), day_words(on))
    style.put_wide(page, 1, pattern.title, len(_WIDTHS), font=style.TITLE, letters=_LETTERS)
    style.put_wide(page, 2, " · ".join(part for part in said if part), len(_WIDTHS), font=style.SMALL, letters=_LETTERS)
    off = f"Off by, {words.notation.unit}"
    heading = ("Person", "To cut", off, "Straight", off, "Between", off, "Blended", off, "Safe unless", "In the way")
    _heading(page, 3, heading, _WIDTHS)
    for row, standing in enumerate(household.standings, start=4):
        _person(page, row, standing, words)
    page.freeze_panes = "B4"
    page.print_title_rows = "3:3"


def _heading(page: Worksheet, row: int, heading: tuple[str, ...], widths: tuple[float, ...]) -> None:
    for column, (text, width) in enumerate(zip(heading, widths, strict=True), start=1):
        style.put_text(style.at(page, row, column), text, style.BOLD)
        style.at(page, row, column).border = style.UNDER
        style.set_height(page, row, style.lines_of(text, int(width * _LETTERS_A_UNIT)))
        page.column_dimensions[get_column_letter(column)].width = width


def _person(page: Worksheet, row: int, standing: Standing, words: Wording) -> None:
    straight, between, blend = standing.straight, standing.between, standing.blend
    sizes = (
        (verdict_short(standing, words), standing.misfit_cm),
        (size_short(straight, standing), straight.misfit_cm if straight is not None else None),
        (size_short(between, standing), between.misfit_cm if between is not None else None),
        (blend_short(standing, words), blend.misfit_cm if blend is not None else None),
    )
    _text(page, row, 1, name_of(standing), _WIDTHS, bold=True)
    for index, (text, misfit_cm) in enumerate(sizes):
        _text(page, row, 2 + 2 * index, text, _WIDTHS, bold=index == 0)
        _length(page, row, 3 + 2 * index, misfit_cm, words)
    _text(page, row, 10, margin_words(standing, words), _WIDTHS)
    _text(page, row, 11, "; ".join(troubles_words(standing, words)), _WIDTHS)


def _text(page: Worksheet, row: int, column: int, text: str, widths: tuple[float, ...], *, bold: bool = False) -> None:
    style.put_text(style.at(page, row, column), text, style.BOLD if bold else None)
    style.set_height(page, row, style.lines_of(text, int(widths[column - 1] * _LETTERS_A_UNIT)))


def _length(page: Worksheet, row: int, column: int, cm: float | None, words: Wording) -> None:
    cell = style.at(page, row, column)
    cell.alignment, cell.font = style.CENTRE, style.PLAIN
    if cm is None:
        return
    cell.value = style.in_unit(cm, words.notation)
    cell.number_format = style.length_format(words.notation)
    style.cancel(page, cell.coordinate, words.notation)


def lines_page(page: Worksheet, sharing: Sharing, words: Wording) -> None:
    """The lines when each takes the best, fewer lines for all, and who can share one."""
    style.put_text(style.at(page, 1, 1), "Sizes to trace", style.TITLE, style.TOP)
    style.set_height(page, 1, 1, style.TITLE)
    off = f"Off by, {words.notation.unit}"
    _heading(page, 2, ("Line", "For", off, "Own best, off by", "To alter"), _LINE_WIDTHS)
    row = _title(page, 3, "A line for each")
    for line in sharing.own:
        _text(page, row, 1, line_words(line), _LINE_WIDTHS, bold=True)
        _text(page, row, 2, join(wearers_words(line, words)), _LINE_WIDTHS)
        row += 1
    for choice in sharing.choices:
        row = _choice(page, row, _lines(choice.count, "for all"), choice, words)
    for group in sharing.groups:
        people = sum(len(line.people) for line in group.lines)
        row = _choice(page, row, f"{people} who can share one line best", group, words)
    if sharing.left_out:
        row = _title(page, row, "Without a line")
        style.put_text(style.at(page, row, 1), join([name_of(standing) for standing in sharing.left_out]))
    page.freeze_panes = "A3"
    page.print_title_rows = "2:2"


def _lines(count: int, last: str) -> str:
    return f"{count} {'line' if count == 1 else 'lines'} {last}"


def _title(page: Worksheet, row: int, text: str) -> int:
    """A heading; gives the row after it."""
    page.merge_cells(start_row=row, end_row=row, start_column=1, end_column=2)
    style.put_text(style.at(page, row, 1), text, style.PART)
    page.row_dimensions[row].height = 26
    return row + 1


def _choice(page: Worksheet, row: int, title: str, choice: Choice, words: Wording) -> int:
    """The lines of a choice with a row a person; gives the row after them."""
    row = _title(page, row, title)
    _length(page, row - 1, 3, choice.misfit_cm, words)
    for shared in choice.lines:
        for index, person in enumerate(shared.people):
            _text(page, row, 1, line_words(shared.line) if index == 0 else "", _LINE_WIDTHS, bold=True)
            _text(page, row, 2, name_of(person.standing), _LINE_WIDTHS)
            _length(page, row, 3, person.misfit_cm, words)
            _length(page, row, 4, person.own_cm, words)
            _text(page, row, 5, alterations_words(person, words), _LINE_WIDTHS)
            row += 1
    return row
