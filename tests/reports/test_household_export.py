"""A household sheet as a file: who is on it, and what is said where nobody can be."""

from __future__ import annotations

import datetime as dt
import io
from dataclasses import replace
from typing import Literal

import openpyxl
import pytest
from pypdf import PdfReader

from sizekeeper.core.notation import CENTIMETRES, INCHES, Notation
from sizekeeper.core.pattern import Pattern
from sizekeeper.errors import ReportError
from sizekeeper.reports.household_export import Gathering, gatherings, household_written
from sizekeeper.reports.snapshot import Snapshot
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

DAY = dt.date(2026, 11, 25)
ILSE = replace(person("in", bust="38", waist="28", hip="43"), id="ilse")
BO = replace(person(bust="92", waist="74"), id="bo", name="Bo")
DRESS, BLANK = Pattern("dress", "Wrap dress"), Pattern("blank", "Blank")
LIBRARY = Snapshot([ILSE, BO, DRESS, BLANK, *(replace(c, pattern="dress") for c in (BODY_CHART, FINISHED))])


def made(*people: object, pattern: Pattern = DRESS, form: str = "xlsx") -> bytes:
    who = Gathering(people, pattern)  # type: ignore[arg-type]  # people all
    return household_written(LIBRARY, who, form, notations={"cm": CENTIMETRES, "in": INCHES}, today=DAY)  # type: ignore[arg-type]  # one that is none too


def test_everybody_asked_for_is_on_the_sheet() -> None:
    page = openpyxl.load_workbook(io.BytesIO(made(ILSE, BO))).worksheets[0]
    texts = {str(cell.value) for row in page.iter_rows() for cell in row}
    assert {"Ilse", "Bo"} <= texts


def test_a_pdf_names_everybody_and_the_pattern() -> None:
    text = " ".join(page.extract_text() for page in PdfReader(io.BytesIO(made(ILSE, BO, form="pdf"))).pages)
    assert all(name in text for name in ("Ilse", "Bo", "Wrap dress"))


def test_a_pattern_without_figures_and_people_without_measurements_are_said() -> None:
    with pytest.raises(ReportError, match="Blank: the pattern has no figures yet"):
        made(ILSE, pattern=BLANK)
    with pytest.raises(ReportError, match="Wrap dress: nobody can be compared"):
        made(replace(ILSE, readings=()))


def test_a_format_that_it_has_not_is_refused() -> None:
    with pytest.raises(ReportError, match="cannot be written as html"):
        made(ILSE, form="html")


def test_each_view_with_figures_of_its_own_gets_a_sheet() -> None:
    viewed = replace(DRESS, views=("A", "B"))
    own = [replace(chart("finished", "38 40", bust="98, 102"), id=v, pattern="dress", view=v) for v in ("A", "B")]
    found = gatherings(Snapshot([viewed, *own]), (ILSE,), [viewed])
    names = ["Wrap dress - View A - household.xlsx", "Wrap dress - View B - household.xlsx"]
    assert [gathering.file_name(".xlsx") for gathering in found] == names


@pytest.mark.parametrize("form", ["xlsx", "pdf"])
def test_the_view_is_named_on_the_sheet(form: str) -> None:
    who = Gathering((ILSE, BO), DRESS, "", "View A and C")
    notations: dict[Literal["cm", "in"], Notation] = {"cm": CENTIMETRES, "in": INCHES}
    file = io.BytesIO(household_written(LIBRARY, who, form, notations=notations, today=DAY))  # type: ignore[arg-type]  # one of the formats
    if form == "pdf":
        assert "View A and C" in PdfReader(file).pages[0].extract_text()
    else:
        assert openpyxl.load_workbook(file).worksheets[0]["A2"].value == "View A and C · 25 November 2026"
