from __future__ import annotations

import csv
import datetime as dt
import io
import itertools
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

import openpyxl
import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from sizekeeper import assets
from sizekeeper.core.groups import tidy
from sizekeeper.core.notation import Notation, parse_length
from sizekeeper.core.people_headings import cleaned, guarded, unguarded
from sizekeeper.core.person import Person, Reading
from sizekeeper.reports.people_table import people_csv, people_table, people_workbook
from tests.importing.people import of_file

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.length import Unit
    from sizekeeper.core.measure import MeasuredBy
    from sizekeeper.reports.people_table import PeopleTable

DAY = dt.date(2026, 5, 1)
WRITERS: dict[str, Callable[[PeopleTable], bytes]] = {"people.csv": people_csv, "people.xlsx": people_workbook}
HOSTILE = [
    "=1+1",
    "+1",
    "-1",
    "@SUM(A1)",
    "=cmd|' /C calc'!A0",
    '=HYPERLINK("x")',
    "'=1",
    "''=1",
    "\t=1",
    "a\n=1",
    "<b>&",
]


def reading(measure: str, text: str, unit: Unit = "cm", on: dt.date = DAY, by: MeasuredBy = "helped") -> Reading:
    return Reading(measure, text, parse_length(text, unit), on, by)


def table(*people: Person, notation: Notation | None = None) -> PeopleTable:
    return people_table(people, assets.measures(), notation)


def column(made: PeopleTable, heading: str) -> list[object]:
    return [row[made.headings.index(heading)] for row in made.rows]


def test_a_row_tells_of_a_person_and_a_column_of_a_measure_from_the_top_down() -> None:
    made = table(Person("a", "Ada", readings=(reading("hip", "100"), reading("bust", "92"))))
    assert made.headings == ("Name", "Unit", "Measured on", "Measured by", "Bust", "Hip")
    assert made.rows == (("Ada", "cm", DAY, "helped", "92", "100"),)


def test_only_the_newest_figure_is_written() -> None:
    old = reading("bust", "90", on=dt.date(2025, 1, 1))
    assert column(table(Person("a", "Ada", readings=(reading("bust", "92"), old))), "Bust") == ["92"]


def test_of_two_figures_of_a_day_the_middle_is_written_exact() -> None:
    inches = Person("a", "Ada", "in", readings=(reading("bust", "37 3/4", "in"), reading("bust", "38", "in")))
    assert column(table(inches), "Bust") == ["37 7/8"]


def test_a_figure_in_her_other_unit_is_written_with_its_unit() -> None:
    assert column(table(Person("a", "Ada", "in", readings=(reading("bust", "96,5"),))), "Bust") == ["96,5 cm"]


def test_in_one_unit_figures_are_numbers_rounded_to_the_usual_step() -> None:
    ada = Person("a", "Ada", "in", readings=(reading("bust", "37 3/4", "in"),))
    assert column(table(ada, notation=Notation("cm", Fraction(1, 10))), "Bust (cm)") == [Fraction(959, 10)]
    bo = Person("b", "Bo", readings=(reading("bust", "104.5"),))
    assert column(table(bo, notation=Notation("in", Fraction(1, 8))), "Bust (in)") == [Fraction(329, 8)]


def test_figures_of_one_unit_are_numbers_in_the_workbook_and_shown_as_fractions() -> None:
    ada = Person("a", "Ada", "in", readings=(reading("bust", "37 3/4", "in"),))
    data = people_workbook(table(ada, notation=Notation("in", Fraction(1, 8))))
    cell = openpyxl.load_workbook(io.BytesIO(data))["People"]["E2"]
    assert (cell.value, cell.number_format) == (37.75, "# ??/8")


@pytest.mark.parametrize("text", HOSTILE)
def test_no_text_becomes_a_formula_in_the_workbook(text: str) -> None:
    made = table(Person("a", text, groups=(text,), notes=text, readings=(Reading("bust", text, None, DAY, over=text),)))
    sheet = openpyxl.load_workbook(io.BytesIO(people_workbook(made)))["People"]
    assert not [cell.coordinate for row in sheet.iter_rows() for cell in row if cell.data_type == "f"]


@pytest.mark.parametrize("text", HOSTILE)
def test_no_cell_of_the_csv_begins_like_a_formula(text: str) -> None:
    made = table(Person("a", text, groups=(text,), notes=text, readings=(Reading("bust", text, None, DAY, over=text),)))
    cells = [cell for row in csv.reader(io.StringIO(people_csv(made).decode("utf-8-sig"), newline="")) for cell in row]
    assert not [cell for cell in cells if cell.startswith(("=", "+", "-", "@", "\t", "\r"))]


@given(st.text(max_size=8))
def test_a_guarded_text_is_told_apart_from_every_other(text: str) -> None:
    assert unguarded(guarded(text)) == text


SPACED = st.text(st.characters(exclude_categories=["Cs", "Cc", "Cn", "Zs", "Zl", "Zp"]), min_size=1, max_size=9)
NAMES = st.lists(SPACED, min_size=1, max_size=3).map(" ".join).filter(lambda text: bool(cleaned(text).strip()))
FIGURES = st.one_of(
    st.integers(16, 80).map(str),
    st.tuples(st.integers(16, 80), st.sampled_from(["1/2", "3/4", "5/8"])).map(lambda t: f"{t[0]} {t[1]}"),
    st.tuples(st.integers(40, 200), st.integers(1, 9)).map(lambda t: f"{t[0]},{t[1]}"),
    st.integers(40, 200).map(lambda n: f"{n} cm"),
    st.integers(16, 80).map(lambda n: f"{n}¾ in"),
)
DAYS = st.dates(dt.date(2020, 1, 1), dt.date(2026, 11, 25))


@st.composite
def people(draw: st.DrawFn) -> list[Person]:
    """People with one figure of a measure each, as they can be in a library."""
    names = draw(st.lists(NAMES, min_size=1, max_size=4, unique_by=lambda name: name.casefold()))
    return [_person(draw, str(number), name) for number, name in enumerate(names)]


def _person(draw: st.DrawFn, entry: str, name: str) -> Person:
    unit: Literal["cm", "in"] = draw(st.sampled_from(("cm", "in")))
    measures = draw(st.sets(st.sampled_from(["height", "bust", "waist", "upper_arm", "inseam"])))
    readings = tuple(
        replace(
            reading(m.id, draw(FIGURES), unit, draw(DAYS)), by=draw(st.sampled_from(("trained", "helped", "alone")))
        )
        for m in assets.measures()
        if m.id in measures
    )
    groups = tidy(draw(st.lists(NAMES, max_size=3)))
    born = draw(st.none() | DAYS)
    notes = draw(st.just("") | NAMES)
    return Person(entry, name, unit, readings, born=born, child=draw(st.booleans()), groups=groups, notes=notes)


@pytest.mark.parametrize("name", WRITERS)
@settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow])
@given(some=people())
def test_people_that_were_exported_are_imported_as_the_same_people(name: str, some: list[Person]) -> None:
    draft = of_file(WRITERS[name](table(*some)), name)
    assert [one.person for one in draft.people] == [replace(person, id="") for person in some]
    assert not [ask for ask in draft.asks if ask.must]


@pytest.mark.parametrize("name", WRITERS)
@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_texts_come_back_as_they_were_typed(name: str, text: str) -> None:
    ada = Person("a", text.strip().replace("\n", " "), groups=(text.strip().replace("\n", " "),), notes=text.strip())
    draft = of_file(WRITERS[name](table(ada)), name)
    assert [one.person for one in draft.people] == [replace(ada, id="")]


@pytest.mark.parametrize("name", WRITERS)
def test_what_is_told_of_single_figures_comes_back(name: str) -> None:
    bust = replace(reading("bust", "37 3/4", "in"), over="vest", note="=note")
    waist = replace(reading("waist", "28¾", "in", dt.date(2026, 5, 3), "alone"), over="skin")
    about = Reading("hip", "about 40", None, DAY, over="vest")
    ada = Person("a", "Ada", "in", readings=(bust, waist, about))
    assert [one.person for one in of_file(WRITERS[name](table(ada)), name).people] == [replace(ada, id="")]


def test_every_body_measure_is_known_again_by_its_heading() -> None:
    body = [m.id for m in assets.measures() if m.use != "finished"]
    numbers = itertools.count(1)
    ada = Person("a", "Ada", readings=tuple(Reading(m, f"x{next(numbers)}", None, DAY, note="n") for m in body))
    draft = of_file(people_csv(table(ada)))
    assert [r.measure for r in draft.people[0].person.readings] == body


def test_control_marks_that_no_file_can_hold_are_left_out() -> None:
    ada = Person("a", "A\x00d\x1ba\ud800", readings=(reading("bust", "92"),))
    assert [one.person.name for write, data in WRITERS.items() for one in of_file(data(table(ada)), write).people] == [
        "Ada"
    ] * 2
