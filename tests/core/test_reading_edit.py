from __future__ import annotations

import datetime as dt
from dataclasses import replace
from fractions import Fraction
from typing import Literal

from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.person import Person, Reading
from sizekeeper.core.reading_edit import (
    Taking,
    figure_of,
    median_cm,
    place_of,
    read_text,
    shown_text,
    what_typing_does,
    with_figure,
    with_further,
    with_reading,
    without,
)

MARCH, TODAY = dt.date(2026, 3, 3), dt.date(2026, 11, 25)
NOW = Taking(TODAY)


def reading(text: str, on: dt.date = TODAY, measure: str = "waist", unit: Literal["cm", "in"] = "cm") -> Reading:
    return Reading(measure, text, read_text(text, unit)[0], on)


def person(*readings: Reading, unit: Literal["cm", "in"] = "cm") -> Person:
    return Person("p", "Ada", unit, readings)


def texts(of: Person) -> list[tuple[str, dt.date]]:
    return [(r.text, r.on) for r in of.of("waist")]


def test_the_first_figure_becomes_a_reading_of_the_day() -> None:
    after = with_figure(person(), "waist", " 37 3/4 in ", Taking(TODAY, "alone", "underwear"))
    [made] = after.readings
    assert (made.text, made.on, made.by, made.over) == ("37 3/4 in", TODAY, "alone", "underwear")
    assert made.length is not None
    assert made.length.exact_cm == Fraction(151, 4) * Fraction(254, 100)


def test_a_figure_of_another_day_is_a_new_reading() -> None:
    assert texts(with_figure(person(reading("70", MARCH)), "waist", "72", NOW)) == [("70", MARCH), ("72", TODAY)]


def test_a_figure_of_the_same_day_corrects_it_and_keeps_how_it_was_taken() -> None:
    before = replace(reading("70"), by="trained", note="standing")
    [after] = with_figure(person(before), "waist", "72", NOW).readings
    assert (after.text, after.by, after.note) == ("72", "trained", "standing")
    assert after.length is not None
    assert after.length.cm == 72


def test_of_two_readings_of_a_day_the_one_typed_last_is_corrected() -> None:
    after = with_figure(person(reading("70"), reading("71")), "waist", "72", NOW)
    assert [r.text for r in after.readings] == ["70", "72"]


def test_emptying_the_field_takes_the_figure_in_it_away_and_leaves_the_others() -> None:
    assert texts(with_figure(person(reading("70", MARCH), reading("72")), "waist", " ", NOW)) == [("70", MARCH)]


def test_emptying_an_empty_field_changes_nothing() -> None:
    assert with_figure(person(), "waist", "", NOW) == person()


def test_a_text_that_is_not_a_length_is_kept_and_counts_as_missing() -> None:
    after = with_figure(person(), "waist", "abot 70", NOW)
    figure = figure_of(after, "waist")
    assert figure is not None
    assert (figure.last.text, figure.exact_cm, figure.count) == ("abot 70", None, 0)


def test_a_bare_number_is_read_in_the_persons_unit() -> None:
    [made] = with_figure(person(unit="in"), "waist", "28", NOW).readings
    assert made.length is not None
    assert made.length.exact_cm == 28 * Fraction(254, 100)


def test_nothing_and_less_are_not_body_measurements() -> None:
    assert [read_text(text, "cm")[0] for text in ("0", "-3")] == [None, None]
    assert read_text("-3", "cm")[1] == "“-3” is not more than nothing: a body measurement is above 0"


def test_a_further_reading_leaves_the_first_of_the_day_alone() -> None:
    after = with_further(person(reading("70")), "waist", "71", NOW)
    assert [r.text for r in after.readings] == ["70", "71"]


def test_an_empty_text_adds_no_further_reading() -> None:
    assert with_further(person(), "waist", "  ", NOW) == person()


def test_the_median_of_two_is_their_middle_and_of_three_the_middle_one() -> None:
    two = (reading("70"), reading("71"))
    assert median_cm(two) == Fraction(141, 2)
    assert median_cm((*two, reading("80"))) == 71


def test_only_the_latest_day_counts_and_only_its_lengths() -> None:
    figure = figure_of(person(reading("60", MARCH), reading("70"), reading("??"), reading("72")), "waist")
    assert figure is not None
    assert (figure.exact_cm, figure.count, figure.last.text) == (Fraction(71), 2, "72")


def test_a_measure_without_readings_has_no_figure() -> None:
    assert figure_of(person(reading("70")), "hip") is None


def test_a_bare_number_keeps_its_unit_when_the_persons_unit_changes() -> None:
    assert [shown_text(reading("70"), unit) for unit in ("cm", "in")] == ["70", "70 cm"]


def test_a_text_with_its_unit_is_shown_as_typed_in_either_unit() -> None:
    assert [shown_text(reading("28 in"), unit) for unit in ("cm", "in")] == ["28 in", "28 in"]


def test_a_text_that_is_not_a_length_is_shown_as_typed() -> None:
    assert shown_text(reading("abc"), "in") == "abc"


@given(st.sampled_from(["28", "28 1/2", "28½", "70,5 cm", "5'6", "1 yd 4 in", "abc", "0"]))
def test_typing_what_is_shown_again_means_the_same_length(text: str) -> None:
    old = reading(text, unit="in")
    again, _ = read_text(shown_text(old, "cm"), "cm")
    assert (again.exact_cm if again else None) == (old.length.exact_cm if old.length else None)


def test_what_typing_does_depends_on_the_day() -> None:
    had = person(reading("70", MARCH), reading("71", dt.date(2026, 9, 1)))
    days = (TODAY, MARCH, dt.date(2026, 5, 1))
    assert [what_typing_does(had, "waist", day) for day in days] == ["adds", "corrects", "older"]
    assert what_typing_does(had, "hip", TODAY) == "first"


def test_a_corrected_text_is_read_again_and_a_new_note_leaves_the_length_alone() -> None:
    had = person(reading("28", unit="in"))
    noted = with_reading(had, 0, replace(had.readings[0], note="after lunch"))
    mended = with_reading(had, 0, replace(had.readings[0], text="71"))
    assert noted.readings[0].length == had.readings[0].length
    assert mended.readings[0].length is not None
    assert mended.readings[0].length.cm == 71


def test_one_of_two_equal_readings_can_be_taken_away() -> None:
    had = person(reading("70"), reading("70"))
    assert place_of(had, had.readings[0]) == 1
    assert len(without(had, 1).readings) == 1
