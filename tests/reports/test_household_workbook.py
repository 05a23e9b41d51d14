"""The household as a workbook, read back by openpyxl."""

from __future__ import annotations

import datetime as dt
import io
from dataclasses import replace
from typing import TYPE_CHECKING

import openpyxl
import pytest

from sizekeeper.core.notation import Notation
from sizekeeper.core.sharing import share
from sizekeeper.reports.household_workbook import household_workbook
from tests.build import chart
from tests.fits import CM, IN
from tests.households import DRESS, called, envelope, household
from tests.reports.sheets import HOSTILE

if TYPE_CHECKING:
    from openpyxl import Workbook
    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.household import Household
    from sizekeeper.core.wording import Wording

ADA, BEA = called("Ada", bust="95", waist="77"), called("Bea", bust="99", waist="82")
TWO = envelope(chart("finished", "38 40 42", bust="100, 104, 108", waist="80, 84, 88"))
DAY = dt.date(2026, 11, 25)


def data(found: Household, words: Wording = CM) -> bytes:
    return household_workbook(found, share(found.standings, found.labels), words, on=DAY)


def book(found: Household, words: Wording = CM) -> Workbook:
    return openpyxl.load_workbook(io.BytesIO(data(found, words)))


def row_of(page: Worksheet, name: str) -> list[object]:
    """The first row that begins with a name."""
    return next([c.value for c in row] for row in page.iter_rows() if row[0].value == name)


def test_there_is_a_page_for_people_one_for_the_ease_and_one_for_the_lines() -> None:
    assert book(household(ADA, BEA, against=TWO)).sheetnames == ["People", "Ease", "Lines"]


def test_a_person_has_what_she_cuts_and_how_far_it_is_off_as_a_number() -> None:
    found = household(ADA, against=TWO)
    row = row_of(book(found)["People"], "Ada")
    assert row[1] == "38"
    assert row[2] == pytest.approx(found.standings[0].misfit_cm)


def test_inches_are_inches_all_through() -> None:
    found = household(ADA, against=TWO)
    pages = book(found, IN)
    assert row_of(pages["Ease"], "Ada")[1] == pytest.approx(95 / 2.54)
    assert row_of(pages["Ease"], "Finished, in")[5] == pytest.approx(100 / 2.54)


def test_ease_and_band_are_formulas_of_the_body_and_the_finished_figure() -> None:
    page = book(household(ADA, BEA, against=TWO))["Ease"]
    row = next(c.row for c in page["A"] if c.value == "Bea")
    assert str(page.cell(row, 6).value) == f'=IF(AND(ISNUMBER(F${row - 2}),ISNUMBER($B{row})),F${row - 2}-$B{row},"")'
    assert page.cell(row, 7).data_type == "f"


def test_every_region_has_a_block_with_everybody_who_is_judged_there() -> None:
    cleo = called("Cleo", bust="96")
    names = [c.value for c in book(household(ADA, cleo, against=TWO))["Ease"]["A"] if c.value]
    assert names[1:] == ["Bust", "Finished, cm", "Ada", "Cleo", "Waist", "Finished, cm", "Ada"]


def test_the_lines_say_who_takes_which() -> None:
    page = book(household(ADA, BEA, against=TWO))["Lines"]
    names = [(row[0].value or "", row[1].value or "") for row in page.iter_rows(min_row=3, max_col=2)]
    assert names[0] == ("A line for each", "")
    assert {who for _, who in names} >= {"Ada", "Bea"}


def test_somebody_who_cannot_be_compared_stands_there_with_the_reason() -> None:
    page = book(household(ADA, called("Nobody"), against=TWO))
    assert row_of(page["People"], "Nobody")[10] == "not measured yet"
    assert "Nobody" in [c.value for c in page["Lines"]["A"]]


def test_a_household_of_nobody_is_still_a_workbook() -> None:
    assert book(household(against=TWO)).sheetnames == ["People", "Ease", "Lines"]


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_that_people_type_becomes_a_formula(text: str) -> None:
    def formulas(name: str) -> list[object]:
        against = replace(TWO, pattern=replace(DRESS, title=name, publisher=name), view=name)
        found = household(replace(ADA, name=name), replace(BEA, name=name), against=against)
        return [c.value for p in book(found).worksheets for row in p.iter_rows() for c in row if c.data_type == "f"]

    assert formulas(text) == formulas("plain")


def test_the_step_of_the_notation_is_that_of_the_cells() -> None:
    words = replace(IN, notation=Notation("in", IN.notation.step / 2))
    page = book(household(ADA, against=TWO), words)["Ease"]
    row = next(c.row for c in page["A"] if c.value == "Ada")
    assert page.cell(row, 2).number_format == "# ??/16"
