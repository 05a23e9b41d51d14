"""The decision sheet of a person and a pattern, as a value."""

from __future__ import annotations

import datetime as dt
import re
from dataclasses import asdict, replace
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

import pytest

from sizekeeper import assets
from sizekeeper.core.make import Decision, LengthChoice, Make, Pinned, Place, ToileRound, WidthChoice
from sizekeeper.core.notation import CENTIMETRES, Notation
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.planned import plan_ahead
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.errors import ReportError
from sizekeeper.reports.sheet_making import decision_sheet
from tests.build import chart, length, person
from tests.core.paper import along, piece
from tests.reports.making import ADA, BODICE, LONG, TODAY, found_for, sheet_for

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.reports.sheet import Sheet, SheetRow

ON = dt.date(2026, 11, 24)


def row(sheet: Sheet, measure: str) -> SheetRow:
    """The row of a region."""
    return next(row for row in sheet.table.rows if row.measure == measure)


def chosen(sheet: Sheet) -> dict[str, str]:
    """The column that is framed in each row."""
    columns = [column.words for column in sheet.table.columns]
    return {r.measure: columns[[cell.chosen for cell in r.cells].index(True)] for r in sheet.table.rows}


def said(sheet: Sheet) -> list[str]:
    """Every text on a sheet."""
    return list(_texts(asdict(sheet)))


def _texts(value: object) -> Iterator[str]:
    if isinstance(value, str):
        yield value
    elif isinstance(value, dict):
        for part in value.values():
            yield from _texts(part)
    elif isinstance(value, list | tuple):
        for part in value:
            yield from _texts(part)


def decided(size: str, part: Fraction = Fraction(0), **more: object) -> Decision:
    """A decision for a place of her own."""
    return Decision("own", Place(size, part), on=ON, **more)  # type: ignore[arg-type]  # as given


def test_the_sheet_says_whose_it_is_for_what_and_when() -> None:
    sheet = sheet_for(found_for())
    assert (sheet.person, sheet.pattern, sheet.publisher, sheet.on) == ("Ilse", "Wrap dress", "Quill & Thimble", TODAY)


def test_a_view_is_named() -> None:
    assert sheet_for(found_for(view="B"), view="B").view == "View B"


def test_figures_that_several_views_share_are_named_after_all_of_them() -> None:
    names = assets.measures().name
    sheet = decision_sheet(found_for(), None, today=TODAY, names=names, view_words="View A and C")
    assert sheet.view == "View A and C"


def test_a_change_of_length_is_work_although_no_piece_is_listed() -> None:
    plan = sheet_for(found_for(pieces=()), lengths=(LengthChoice("back_waist", amount=length("2 cm")),)).plan
    assert plan is not None
    assert [line for line in plan.lines if line.startswith("Work")] == [
        "Work: list the pieces to see which of them this changes."
    ]


def test_a_private_sheet_counts_no_sizes_that_are_not_for_it() -> None:
    assert sheet_for(found_for(), private=True).table.left_out == 0


def test_ease_stands_beside_the_printed_figure() -> None:
    cells = dict(zip([c.words for c in sheet_for(found_for()).table.columns], row(sheet_for(found_for()), "bust").cells,
                     strict=True))  # fmt: skip
    assert (cells["40"].amount, cells["40"].printed, cells["40"].band) == ("2 1/8", "40 1/8", "close")


def test_her_figures_are_in_her_unit_and_the_printed_ones_in_the_envelopes() -> None:
    her = person("cm", bust="96.5", waist="71", hip="109")
    bust = row(sheet_for(found_for(her)), "bust")
    cell = next(cell for cell in bust.cells if cell.printed == "40 1/8")
    assert (bust.body, cell.amount) == ("96.5", "5.4")


def test_the_notation_can_be_chosen() -> None:
    found = found_for(person("in", bust="38 1/16", waist="28", hip="43"))
    fine = decision_sheet(
        found, None, today=TODAY, names=assets.measures().name, notation=Notation("in", Fraction(1, 16))
    )
    assert row(fine, "bust").body == "38 1/16"


def test_thirty_sizes_come_down_to_the_nine_columns_around_what_is_cut() -> None:
    table = sheet_for(found_for(person("cm", bust="120"), LONG, None, pieces=())).table
    assert [c.words for c in table.columns if not c.between] == ["26", "28", "30", "32", "34", "36", "38"]
    assert [c.words for c in table.columns if c.chosen] == ["32"]
    assert (len(table.columns), table.left_out) == (9, 23)


def test_what_is_cut_is_framed_as_it_was_decided() -> None:
    sheet = sheet_for(found_for(), decision=decided("42"))
    assert set(chosen(sheet).values()) == {"42"}
    assert sheet.verdict == "Cut 42 straight."


def test_a_place_of_her_own_gets_a_column() -> None:
    sheet = sheet_for(found_for(), decision=decided("38", Fraction(1, 3)))
    assert set(chosen(sheet).values()) == {"between 38 and 40, 33 % of the way"}


def test_grading_between_sizes_frames_each_region_where_it_is_cut() -> None:
    levels = {"bust": Place("38"), "waist": Place("42")}
    sheet = sheet_for(found_for(), decision=replace(decided("38"), levels=levels))
    assert chosen(sheet) == {"bust": "38", "waist": "42", "hip": "42"}
    assert {p.name: p.size for p in sheet.trace} == {"Front": "38 to 42", "Back": "38 to 42", "Facing": "38 to 42"}


def test_a_decision_keeps_its_reason_and_what_was_advised() -> None:
    plan = sheet_for(found_for(), decision=decided("42", reason="A thick coat under it", advised="Cut 40")).plan
    assert plan is not None
    assert (plan.decided, plan.reason, plan.advised, plan.on) == (True, "A thick coat under it", "Cut 40", ON)


def test_a_size_that_is_no_longer_listed_is_said_first() -> None:
    assert "no longer listed" in sheet_for(found_for(), decision=decided("50")).doubts[0]


def test_a_plan_that_is_not_what_ease_alone_says_stands_beside_that() -> None:
    assert "By ease alone: Cut 40 straight." in sheet_for(found_for(), decision=decided("42")).doubts


def test_sizes_within_the_error_of_the_tape_are_doubts_and_to_be_measured_again() -> None:
    near = chart("finished", "38 40", bust="99, 101")
    sheet = sheet_for(found_for(person("cm", bust="95"), near, None, pieces=()))
    assert sheet.doubts[0] == "38 instead if the bust is really 0.4 cm less."
    assert sheet.measure_again[0].startswith("Measure again before cutting: the bust")


def test_old_measurements_are_to_be_taken_again() -> None:
    sheet = sheet_for(found_for(), dt.date(2027, 11, 20))
    assert "the bust, the waist and the hip (12 months ago)" in sheet.measure_again[-1]


def test_a_text_that_is_no_length_is_said() -> None:
    her = replace(ADA, readings=(*ADA.readings, replace(ADA.readings[0], measure="upper_arm", text="?", length=None)))
    both = chart("finished", "38 40 42", "in", bust="38 1/2, 40 1/8, 41 3/4", upper_arm="14, 15, 16")
    assert "Upper arm: “?” is not a length." in sheet_for(found_for(her, both)).measure_again


def test_childrens_wear_has_its_caution() -> None:
    assert "EN 14682" in sheet_for(found_for(pattern=Pattern("pattern", "Pinafore", child=True))).cautions[0]


def test_the_work_list_has_each_step_of_each_piece_in_order_with_its_tick() -> None:
    longer = LengthChoice("back_waist", amount=length("1 in"))
    open_sheet = sheet_for(found_for(), lengths=(longer,))
    key = open_sheet.work[0].steps[0].key
    sheet = sheet_for(found_for(), lengths=(longer,), ticks=(key,))
    assert [part.title for part in sheet.work] == ["Length", "Matching pieces"]
    assert [(s.piece, s.words, s.done) for part in sheet.work for s in part.steps] == [
        ("Back", "Cut across between bust and waist and spread by 1 in.", True),
        ("Front", "Cut across between bust and waist and spread by 1 in.", False),
        ("Facing", "Cut across between bust and waist and spread by 1 in.", False),
    ]


def test_pieces_are_listed_with_their_cut_and_whether_they_are_altered() -> None:
    longer = LengthChoice("back_waist", amount=length("1 in"))
    pocket = piece("Pocket", "", "pocket", cut=4)
    sheet = sheet_for(found_for(pieces=(*BODICE, pocket)), lengths=(longer,))
    assert [(p.name, p.cut, p.changed) for p in sheet.trace] == [
        ("Front", "cut 1 on the fold", True),
        ("Back", "cut 2", True),
        ("Facing", "cut 2", True),
        ("Pocket", "cut 4", False),
    ]


def test_a_toile_has_a_place_for_each_region_and_each_length() -> None:
    assert sheet_for(found_for()).toile == ("Bust", "Waist", "Hip", "Back neck to waist, length")


def test_what_a_toile_showed_is_part_of_the_plan() -> None:
    tried = ToileRound(ON, (Pinned("waist", taken=length("1 in")),))
    plan = sheet_for(found_for(), decision=decided("40"), rounds=(tried,)).plan
    assert plan is not None
    assert "On the toile: Waist: make it 1 in narrower." in plan.lines


def test_the_figures_name_day_and_hand_and_every_size_of_the_chart() -> None:
    sheet = sheet_for(found_for(person("cm", bust="120"), LONG, None, pieces=()))
    body, finished = sheet.figures
    assert body.rows == (("Bust", ("120", "20 November 2026", "with help", "1 cm")),)
    assert (len(finished.across), finished.rows[0][1][-1]) == (30, "167")


def test_chart_figures_are_given_as_they_are_printed() -> None:
    finished = sheet_for(found_for()).figures[1]
    assert finished.title == "Finished measurements, in inches"
    assert finished.rows[0] == ("Bust", ("38 1/2", "40 1/8", "41 3/4"))


def test_what_cannot_be_compared_makes_no_sheet() -> None:
    found = found_for(person("cm", head="56"))
    with pytest.raises(ReportError, match="nothing to put on a sheet yet"):
        decision_sheet(found, None, today=TODAY, names=str)


def test_what_people_typed_stands_as_it_was_typed() -> None:
    text = "=1+1 #panic() <b> $x$"
    sheet = sheet_for(found_for(replace(ADA, name=text), pattern=Pattern("pattern", text, text)))
    assert (sheet.person, sheet.pattern, sheet.publisher) == (text, text, text)


# A private sheet.

ODD = {"bust": "91.37", "waist": "71.93", "hip": "98.61", "back_waist_length": "41.83", "high_bust": "87.19"}
"""Figures that no sum or difference of round ones gives by chance."""
CHARTS = {
    "body": chart("body", "38 40 42", bust="88, 92, 96", waist="68, 72, 76", hip="94, 98, 102", high_bust="85, 88, 91",
                  back_waist_length="41, 41.5, 42"),
    "finished": chart("finished", "38 40 42", bust="93, 97, 101", waist="71, 75, 79", hip="98, 102, 106"),
}  # fmt: skip


def private_sheet(mode: Literal["my", "designer", "body"], stretch: float, *, private: bool) -> Sheet:
    """The sheet of the odd figures, with alterations, a toile, a reason and a small garment."""
    ease = EasePreference("dress", stretch > 0, regions={"waist": RegionPreference(own=length("2 cm"))}, mode=mode)
    her = replace(person("cm", **ODD), preferences=(ease,))
    pattern = Pattern("pattern", "Wrap dress", stretch=stretch)
    found = found_for(her, CHARTS["finished"], CHARTS["body"], pattern)
    return sheet_for(
        found,
        private=private,
        decision=decided("38", reason="Her waist is 71.93", advised="Cut 40, for a bust of 91.37"),
        widths=(WidthChoice("waist", length("1 cm"), ("Front", "Back")),),
        rounds=(ToileRound(ON, (Pinned("bust", taken=length("0.5 cm"), found=length("3.1 cm")),)),),
    )


def numbers(sheet: Sheet) -> set[float]:
    """Every number on a sheet in cm, those in its texts and those behind them."""
    texts = {float(n) for text in said(sheet) for n in re.findall(r"\d+(?:\.\d+)?", text) if len(n) < 8}
    behind = {n for r in sheet.table.rows for n in (r.body_cm, r.asked_cm, *r.edges_cm, *(r.edges_share or ()))}
    behind |= {n for r in sheet.table.rows for c in r.cells for n in (c.amount_cm, c.printed_cm, *(c.chart_cm or ()))}
    return texts | {n / 10 for n in texts} | {n for n in behind if n is not None}


def can_be_worked_out(sheet: Sheet) -> set[str]:
    """The odd figures that stand on a sheet, or are a sum, a difference or a stretched sum of two numbers on it."""
    on_it = numbers(sheet)
    stretch = 1 + sheet.table.stretch
    reached = on_it | {a + s * b for a in on_it for b in on_it for s in (1, -1)} | {a * stretch for a in on_it}
    return {m for m, figure in ODD.items() if any(abs(n - float(figure)) < 0.02 for n in reached)}


@pytest.mark.parametrize("mode", ["my", "designer", "body"])
@pytest.mark.parametrize("stretch", [0.0, 0.25])
def test_from_a_private_sheet_no_measurement_can_be_worked_out(
    mode: Literal["my", "designer", "body"], stretch: float
) -> None:
    assert can_be_worked_out(private_sheet(mode, stretch, private=True)) == set()


@pytest.mark.parametrize("stretch", [0.0, 0.25])
def test_from_an_open_sheet_they_can(stretch: float) -> None:
    assert can_be_worked_out(private_sheet("my", stretch, private=False)) >= {"bust", "waist", "hip"}


def test_a_private_sheet_has_what_one_cuts_and_sews_by() -> None:
    sheet = private_sheet("my", 0.0, private=True)
    assert [c.words for c in sheet.table.columns] == ["38"]
    assert [(r.cells[0].printed, r.cells[0].amount) for r in sheet.table.rows] == [("93", ""), ("71", ""), ("98", "")]
    assert sheet.plan is not None
    assert (sheet.plan.title, bool(sheet.work), bool(sheet.trace)) == ("Cut 38 straight", True, True)


def test_a_private_sheet_shows_of_each_size_only_the_regions_that_are_cut_in_it() -> None:
    levels = {"bust": Place("38"), "waist": Place("42")}
    sheet = sheet_for(found_for(), private=True, decision=replace(decided("38"), levels=levels))
    assert {r.measure: [c.printed for c in r.cells] for r in sheet.table.rows} == {
        "bust": ["38 1/2", "–"],
        "waist": ["–", "31 3/8"],
        "hip": ["–", "71"],
    }


def test_on_a_private_sheet_the_print_is_silent_where_a_change_follows_the_body() -> None:
    legs = (
        piece("Front leg", "waist hip thigh knee hem", "leg_front", cut=2),
        piece("Back leg", "waist hip thigh knee hem", "leg_back", cut=2, along=along("rise", "28 cm")),
    )
    her = person("cm", hip="100", thigh="62.4", crotch_length="70")
    finished = chart("finished", "40 42", hip="106, 110", thigh="60, 62", crotch_length="71, 72")
    found = found_for(her, finished, None, Pattern("pattern", "Trousers", garment="trousers"), legs)
    sheet = sheet_for(found, private=True)
    assert any("thigh" in step.words for part in sheet.work for step in part.steps)
    assert {r.measure: r.cells[0].printed for r in sheet.table.rows} == {"hip": "106", "thigh": "–"}


def test_a_private_sheet_keeps_the_notation_it_was_asked_for() -> None:
    assert private_sheet("my", 0.0, private=True).notation == CENTIMETRES


def test_a_note_after_an_earlier_make_stands_last_in_the_plan_but_on_no_private_sheet() -> None:
    found = found_for()
    note = "Longer <b>straps</b>."
    planned = plan_ahead(found, Make("make", found.person.id, found.pattern.id))
    for private in (False, True):
        sheet = decision_sheet(found, planned, today=TODAY, names=str, private=private, next_time=note)
        assert sheet.plan is not None
        assert (sheet.plan.lines[-1] == "Noted after the last make: Longer <b>straps</b>.") is not private
        assert any("straps" in line for line in sheet.plan.lines) is not private
