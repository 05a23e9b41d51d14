from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.importing.asking import asks, remarks
from tests.importing.charts import (
    BODY,
    FLAT,
    MISPRINT,
    MISSPELT,
    NO_KIND,
    NO_UNIT,
    ROW_IN_INCHES,
    TWICE_HEADED,
    TWICE_NAMED,
    TWO_UNITS,
    WRONG_UNIT,
    after,
    opened,
)

if TYPE_CHECKING:
    from sizekeeper.importing.opened import Opened

CLASH = "Body (cm)|S|M / Bust|82|88 /  / Body (cm)|S|M / Bust|84|90"
DATES = "Body measurements (cm)|6|2026-10-08|12 / Bust|82|88|94 / Waist|64|70|76"


def answered(chart: str, text: str) -> Opened:
    """The reading once the first question has the answer of this text."""
    reading = opened(chart)
    answer = next(a for ask in asks(reading) for a in ask.answers if a.text == text)
    return after(reading, answer.change)


def test_a_chart_that_says_everything_asks_nothing() -> None:
    assert asks(opened(BODY)) == []


@pytest.mark.parametrize(
    ("chart", "code", "at"),
    [
        (NO_UNIT, "unit_inferred", "B2"),
        (NO_KIND, "kind_inferred", "B2"),
        (FLAT, "half_width_suspected", "A6"),
        (MISSPELT, "measure_inferred", "A2"),
        (MISPRINT, "non_monotonic", "D3"),
        (TWO_UNITS, "dual_unit_disagrees", "C3"),
        (WRONG_UNIT, "unit_doubtful", "B2"),
        (ROW_IN_INCHES, "unit_doubtful", "A3"),
        (TWICE_HEADED, "size_repeated", "D2"),
        (TWICE_NAMED, "row_repeated", "A3"),
        (CLASH, "tables_clash", "B2"),
        (DATES, "label_looks_like_date", "C1"),
    ],
)
def test_each_doubt_is_a_question_at_its_cell(chart: str, code: str, at: str) -> None:
    assert (code, at) in [(ask.code, ask.at) for ask in asks(opened(chart))]


@pytest.mark.parametrize(
    "chart",
    [
        *(NO_UNIT, NO_KIND, FLAT, MISSPELT, MISPRINT, TWO_UNITS, CLASH),
        *(WRONG_UNIT, ROW_IN_INCHES, TWICE_HEADED, TWICE_NAMED),
    ],
)
def test_every_question_goes_away_with_any_of_its_answers(chart: str) -> None:
    reading = opened(chart)
    for ask in asks(reading):
        for answer in ask.answers:
            left = {(other.code, other.at) for other in asks(after(reading, answer.change))}
            assert (ask.code, ask.at) not in left, answer.text


def test_the_unit_that_is_answered_is_the_table_s() -> None:
    assert answered(NO_UNIT, "in").tables[0].unit == "in"


def test_the_kind_that_is_answered_is_the_table_s() -> None:
    assert answered(NO_KIND, "Finished measurements").tables[0].kind == "finished"


def test_a_chart_under_the_wrong_unit_is_counted_in_the_one_that_is_answered() -> None:
    assert [row.cm[0] for row in answered(WRONG_UNIT, "They are centimetres").tables[0].rows] == [84, 68, 92]


def test_a_row_in_another_unit_than_its_chart_is_counted_in_the_one_that_is_answered() -> None:
    assert answered(ROW_IN_INCHES, "They are inches").tables[0].rows[1].cm[1] == pytest.approx(26.5 * 2.54)


def test_flat_rows_can_all_be_answered_at_once() -> None:
    assert [row.written_as for row in answered(FLAT, "Both are flat").tables[1].rows] == ["half", "half"]


def test_of_two_units_that_disagree_the_chosen_one_is_read() -> None:
    assert answered(TWO_UNITS, "30.375 in is right").tables[0].rows[1].cm[1] == pytest.approx(30.375 * 2.54)


def test_a_figure_out_of_step_stays_as_printed_when_that_is_said() -> None:
    assert answered(MISPRINT, "Yes, as printed").tables[0].rows[1].cells[2].text == "27"


def test_tables_that_clash_can_be_narrowed_to_one() -> None:
    chosen = asks(opened(CLASH))[0].answers[0]
    assert [t.rows[0].cm for t in after(opened(CLASH), chosen.change).tables] == [(82.0, 88.0)]


def test_tables_that_clash_can_all_be_kept() -> None:
    assert len(answered(CLASH, "All, in rows of their own").tables) == 2


def test_tables_that_agree_where_they_meet_do_not_clash() -> None:
    same = "Body (cm)|S|M / Bust|82|88 /  / Body (cm)|M|L / Bust|88|94"
    assert "tables_clash" not in [ask.code for ask in asks(opened(same))]


def test_a_table_that_is_left_out_asks_nothing() -> None:
    chosen = asks(opened(CLASH))[0].answers[0]
    assert asks(after(opened(CLASH), chosen.change)) == []


def test_what_asks_nothing_is_told_as_a_whole_sentence_with_its_cell() -> None:
    gap = "Body (cm)|S|M|L / Bust|82|–|94 / Waist|64|70|76"
    assert [(r.says, r.at) for r in remarks(opened(gap))] == [("Bust: a dash.", "C2")]


def test_a_doubt_that_is_asked_about_is_not_told_again() -> None:
    assert "D3" not in [remark.at for remark in remarks(opened(MISPRINT))]


def test_tables_without_a_unit_can_all_be_answered_at_once() -> None:
    two = "Body measurements|S|M / Bust|82|88 /  / Finished measurements|S|M / Bust|90|96"
    assert asks(after(opened(two), asks(opened(two))[0].answers[-1].change)) == []
