"""Every decision sheet of the demo household, in every format that is no PDF."""

from __future__ import annotations

import csv
import datetime as dt
import io
import itertools
from typing import TYPE_CHECKING

import html5lib
import openpyxl
import pytest

from sizekeeper import assets, demo
from sizekeeper.core.chart import Chart
from sizekeeper.core.household import Envelope, standing
from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Pieces
from sizekeeper.core.planned import plan_ahead
from sizekeeper.reports.sheet_making import decision_sheet
from sizekeeper.reports.table_text import table_text
from sizekeeper.reports.webpage import webpage
from sizekeeper.reports.workbook import workbook

if TYPE_CHECKING:
    from sizekeeper.reports.sheet import Sheet


def sheets(*, private: bool) -> list[Sheet]:
    """The sheets of everybody for the first chart of each kind of every pattern."""
    numbers = itertools.count()
    values = demo.demo_values(lambda: str(next(numbers)))
    found = []
    for person in (value for value in values if isinstance(value, Person)):
        for pattern in (value for value in values if isinstance(value, Pattern)):
            charts = [v for v in values if isinstance(v, Chart) and v.pattern == pattern.id]
            body, finished = (next((c for c in charts if c.kind == kind), None) for kind in ("body", "finished"))
            pieces = next((v for v in values if isinstance(v, Pieces) and v.pattern == pattern.id), None)
            envelope = Envelope(pattern, body, finished, pieces)
            one = standing(person, envelope, measures=assets.measures(), defaults=assets.ease_defaults()).found
            planned = plan_ahead(one, Make("", person.id, pattern.id, "", pattern.title))
            today, names = dt.date(2026, 11, 25), assets.measures().name
            found.append(decision_sheet(one, planned, today=today, names=names, private=private))
    return found


@pytest.mark.parametrize("private", [False, True], ids=["whole", "private"])
def test_every_sheet_of_the_demo_household_is_written_in_every_format(private: bool) -> None:
    made = sheets(private=private)
    assert len(made) == len(demo.PEOPLE) * len(demo.PATTERNS)
    for sheet in made:
        html5lib.HTMLParser(strict=True).parse(webpage(sheet))
        page = openpyxl.load_workbook(io.BytesIO(workbook(sheet))).worksheets[0]
        lines = list(csv.reader(io.StringIO(table_text(sheet), newline="")))
        for index, row in enumerate(sheet.table.rows):
            assert page.cell(7 + index, 1).value == row.name
            assert any(line[:1] == [row.name] for line in lines)
