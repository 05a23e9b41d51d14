from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.chart_doubts import Remedy, doubts, pair_doubts
from tests.core.written import MEASURES, chart

SIX = "36, 38, 40, 42, 44, 46"


def said(sizes: str, kind: str = "body", **rows: str) -> list[str]:
    return [doubt.says for doubt in doubts(chart(sizes, kind, **rows), MEASURES)]  # type: ignore[arg-type]


@pytest.mark.parametrize(
    "row",
    ["80, 84, 88, 92, 97, 102", "80, 84, , 92, 97, 102", "98, 98, 98, 98, 98, 98", ", , , , ,", "80, , , , , 100",
     "76-80, 80-84, 84-88, 88-92, 92-96, 96-100"],
)  # fmt: skip
def test_a_row_that_rises_evenly_is_not_doubted(row: str) -> None:
    assert said(SIX, bust=row, waist=row) == []


def test_a_row_that_falls_says_where() -> None:
    assert said("36, 38", bust="88, 86") == ["Bust falls from 36 to 38."]


def test_a_row_that_falls_several_times_says_so_once() -> None:
    assert said("1, 2, 3, 4, 5", bust="80, 78, 85, 82, 90", waist="60, 62, 64, 66, 68") == [
        "Bust falls from 1 to 2 and from 3 to 4."
    ]


def test_a_step_more_than_half_off_the_usual_one_is_uneven() -> None:
    assert said("1, 2, 3, 4, 5", bust="80, 84, 88, 94.5, 98.5") == ["Bust: the step is uneven from 3 to 4."]
    assert said("1, 2, 3, 4, 5", bust="80, 84, 88, 94, 98") == []


def test_several_uneven_steps_are_one_sentence() -> None:
    assert said("1, 2, 3, 4, 5, 6", bust="80, 84, 91, 95, 102, 106") == [
        "Bust: the step is uneven from 2 to 3 and from 4 to 5."
    ]


def test_a_step_over_a_missing_figure_counts_for_each_size() -> None:
    assert said("1, 2, 3, 4, 5", bust="80, 84, , 92, 96") == []


@pytest.mark.parametrize(
    ("row", "label", "typed", "meant"),
    [
        ("75, 79, 38, 87, 91, 95", "40", "38", "83"),
        ("57, 79, 83, 87, 91, 95", "36", "57", "75"),
        ("75, 79, 83, 87, 91, 59", "46", "59", "95"),
        ("86-90, 90-94, 94-98, 89-102, 102-106, 106-110", "42", "89-102", "98-102"),
    ],
)
def test_changed_over_digits_are_taken_for_a_slip_that_can_be_put_right(
    row: str, label: str, typed: str, meant: str
) -> None:
    (doubt,) = doubts(chart(SIX, bust=row), MEASURES)
    assert doubt.says == f"Bust {label}: {typed} is out of step with its neighbours. Was {meant} meant?"
    assert doubt.remedies == (Remedy(f"Put {meant}", "cell", meant),)


def test_a_slip_without_a_likely_reading_is_only_pointed_at() -> None:
    (doubt,) = doubts(chart("1, 2, 3, 4", bust="80, 84, 11, 92"), MEASURES)
    assert (doubt.row, doubt.column, doubt.remedies) == (0, 2, ())


def test_unreadable_cells_are_named_and_count_as_missing() -> None:
    assert said("36, 38, 40", bust="80, oops, 88") == ["Bust 38: no figure, counts as missing."]
    assert said("36, 38, 40", bust="?, oops, 88") == ["Bust 36 and 38: no figure, count as missing."]


def test_a_table_from_large_to_small_is_one_doubt_that_can_be_turned() -> None:
    (doubt,) = doubts(chart("40, 38, 36", bust="88, 84, 80", waist="70, 66, 62"), MEASURES)
    assert (doubt.code, doubt.remedies) == ("turned", (Remedy("Turn the sizes round", "turn"),))


def test_a_finished_girth_of_half_the_body_is_probably_flat() -> None:
    body, finished = chart("36, 38", bust="80, 84"), chart("36, 38", "finished", bust="43, 45")
    (doubt,) = doubts(finished, MEASURES, body)
    assert doubt.says == "Bust: these look like widths measured flat, half of the girth."
    assert doubt.remedies == (Remedy("It is half the girth", "half"),)


def test_a_row_marked_doubtful_when_read_asks_for_an_answer() -> None:
    plain = chart("36, 38", "finished", bust="43, 45")
    marked = replace(plain, rows=(replace(plain.rows[0], doubt="half_width_suspected"),))
    (doubt,) = doubts(marked, MEASURES)
    assert [remedy.kind for remedy in doubt.remedies] == ["half", "full"]


def test_a_length_is_never_taken_for_half() -> None:
    body, finished = chart("36", across_back="36"), chart("36", "finished", across_back="18")
    assert doubts(finished, MEASURES, body) == []


def test_a_range_is_no_finished_figure() -> None:
    assert said("36", "finished", bust="90-92") == ["Bust 36: a finished garment has one figure, not a range."]


def test_a_woven_smaller_than_the_body_is_named_and_a_knit_is_not() -> None:
    body = chart("36, 38 / M", bust="80, 84", waist="60, 64")
    finished = chart("36, M", "finished", bust="90, 83", waist="59, 63")
    assert pair_doubts(body, finished, MEASURES, knit=False) == [
        "Finished bust is smaller than the body in M; a woven would not close.",
        "Finished waist is smaller than the body in every size; a woven would not close.",
    ]
    assert pair_doubts(body, finished, MEASURES, knit=True) == []


def test_half_widths_are_doubled_before_they_are_compared() -> None:
    half = chart("36", "finished", bust="45")
    finished = replace(half, rows=(replace(half.rows[0], written_as="half"),))
    assert pair_doubts(chart("36", bust="80"), finished, MEASURES, knit=False) == []


def test_a_size_that_one_chart_lacks_is_named() -> None:
    body, finished = chart("36, 38, 40", bust=", ,"), chart("38, 40, 42", "finished", bust=", ,")
    assert pair_doubts(body, finished, MEASURES, knit=False) == [
        "Size 36 is not in the finished measurements.",
        "Size 42 is not in the body chart.",
    ]


def test_many_missing_sizes_are_cut_short() -> None:
    body, finished = chart("1, 2, 3, 4, 5, 6, 7"), chart("7", "finished")
    assert pair_doubts(body, finished, MEASURES, knit=True) == [
        "Sizes 1, 2, 3, 4 and 2 more are not in the finished measurements.",
    ]


def test_an_empty_chart_lacks_nothing() -> None:
    assert pair_doubts(chart("36"), chart("", "finished"), MEASURES, knit=False) == []
