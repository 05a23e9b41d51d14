from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.found import Found, find
from sizekeeper.core.notation import CENTIMETRES
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.wording import Wording
from sizekeeper.ui.fit_source import Missing
from sizekeeper.ui.overview_cell import LEGEND, MARKS, OverviewCell, cell_of
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.person import Person

WORDS = Wording(CENTIMETRES, assets.measures().name)
TOP = Pattern("top", "Top", garment="top")


def found(body: Chart | None, finished: Chart | None, who: Person, what: Pattern = TOP) -> Found:
    return find(who, what, body, finished, measures=assets.measures(), defaults=assets.ease_defaults())


def cell(finished: Chart | None, body: Chart | None = None, **figures: str) -> OverviewCell:
    return cell_of(found(body, finished, person("cm", **figures)))


ROW = chart("finished", "38 40 42", bust="93, 97, 101")


def test_a_straight_size_stands_alone() -> None:
    plain = cell(chart("finished", "S M L", bust="93, 105, 117"), bust="99.9")
    assert (plain.text, plain.position) == ("M", 1.0)


def test_a_size_within_the_error_of_the_tape_is_marked_as_tied() -> None:
    # 5.1 cm are asked: 90 lies a hair from the middle of 93 and 97, and helped reading may be off by 1 cm.
    tied = cell(ROW, bust="90")
    assert "±" in tied.marks


def test_a_figure_past_the_chart_that_does_not_go_round_has_both_marks() -> None:
    # Tight is the band next to the close one that is asked for, so a single size still counts as fitting.
    large = cell(ROW, bust="120")
    assert (large.size, large.marks) == ("42", "×!")


def test_a_size_by_the_body_chart_alone_says_that_the_ease_is_unknown() -> None:
    assert cell(None, chart("body", "38 40 42", bust="88, 92, 96"), bust="92").text == "40 ?"


def test_a_blend_gives_its_sizes_from_the_top_down() -> None:
    her = person("in", bust="36", waist="31", hip="43")
    body = dataclasses.replace(FINISHED, rows=FINISHED.rows[:2])
    blended = cell_of(found(BODY_CHART, body, her, Pattern("dress", "Dress")))
    assert blended.size == "38/42"


def test_without_a_figure_in_common_the_cell_says_why() -> None:
    nothing = cell(ROW, hip="98")
    assert (nothing.text, nothing.position) == ("–", None)
    assert nothing.said(WORDS) == found(None, ROW, person("cm", hip="98")).problem


def test_what_is_missing_first_is_said() -> None:
    assert cell_of(Missing("Heading", "Type the charts.")).said(WORDS) == "Type the charts."


def test_the_words_hold_the_verdict_and_everything_that_speaks_against_it() -> None:
    said = cell(ROW, bust="120").said(WORDS)
    assert said.startswith("No size goes round the body; 42 comes closest.")
    assert "past the chart’s 42: make a toile first" in said.replace("Past", "past")


def test_every_mark_is_in_the_legend() -> None:
    assert set(MARKS.values()) == set(LEGEND)


@pytest.mark.parametrize(("graver", "than"), [("×", "!"), ("!", "≠"), ("≠", "±"), ("±", "?"), ("?", "")])
def test_marks_have_an_order_of_gravity(graver: str, than: str) -> None:
    assert OverviewCell("40", graver, "", 1.0).gravity > OverviewCell("40", than, "", 1.0).gravity


def test_no_size_at_all_is_the_gravest() -> None:
    assert OverviewCell("–", "", "", None).gravity > OverviewCell("40", "×", "", 1.0).gravity
