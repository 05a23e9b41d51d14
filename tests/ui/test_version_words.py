from __future__ import annotations

import datetime as dt
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.days import day_words
from sizekeeper.core.make import Decision, Make, Pinned, Place, ToileRound, WidthChoice
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import FabricLine, Opening, Pieces, PrintedSquare
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.ui.version_words import lines_of, moment_words
from tests.build import chart, length, person
from tests.core.paper import across, along, piece

if TYPE_CHECKING:
    from sizekeeper.store.codec import Value


def lines(value: Value | None) -> dict[str, str]:
    return lines_of(value, assets.measures())


def test_a_day_is_written_out() -> None:
    assert day_words(dt.date(2026, 3, 5)) == "5 March 2026"


def test_a_moment_is_told_in_the_time_of_this_place() -> None:
    moment = dt.datetime(2026, 3, 5, 14, 7).astimezone()
    assert moment_words(moment.astimezone(dt.UTC)) == "5 March 2026, 14:07"


def test_a_persons_figures_stand_as_typed_with_their_day() -> None:
    assert lines(person("in", bust="37 3/4"))["Bust, 20 November 2026"] == "37 3/4 (with help)"


def test_what_is_empty_is_left_out() -> None:
    assert lines(Person("a", "Ada")) == {"Name": "Ada", "Unit": "cm"}
    assert lines(None) == {}


def test_ease_preferences_are_told_in_words() -> None:
    region = RegionPreference(band="easy", own=length("5 cm"), role="free")
    preference = EasePreference("dress", lead="bust", regions={"hip": region})
    said = lines(Person("a", "Ada", preferences=(preference,)))["Ease, dress"]
    assert said == "size chosen by bust; Hip: easy, own ease 5 cm, free"


def test_a_pattern_says_its_stretch_in_per_cent() -> None:
    assert lines(Pattern("p", "Top", fabric="knit", stretch=0.25))["Stretch"] == "25%"


def test_a_chart_says_its_rows_as_typed_and_where_figures_are_missing() -> None:
    assert lines(chart("body", "38 40", bust="88, "))["Bust"] == "88   –"


def test_a_piece_says_what_is_cut_and_what_was_measured_on_it() -> None:
    front = piece("Front", "bust waist", "front", on_fold=True, along=along("back_waist", "14 in", 2), dart=True,
                  across=across("waist", "8 in", gathered=True))  # fmt: skip
    said = lines(Pieces("x", "p", (front,)))["Piece: Front"]
    assert said == (
        "bodice front, cut 1 on the fold; crosses bust, waist; "
        "back neck to waist 14 in long, with 2 seam allowances; waist 8 in wide, gathered; bust dart"
    )


def test_two_pieces_of_one_name_are_both_told() -> None:
    two = (piece("Front", role="front"), piece("Front", role="front", cut=2))
    assert lines(Pieces("x", "p", two))["Piece: Front"] == "bodice front, cut 1 | bodice front, cut 2"


def test_square_fabric_and_openings_are_told() -> None:
    found = lines(
        Pieces(
            "x",
            "p",
            square=PrintedSquare(length("4.9 cm"), length("5 cm")),
            fabric=(FabricLine(length("45 in"), length("3 yd"), "8", "A"), FabricLine(length("45 in"), length("4 yd"))),
            openings=(Opening("Neck", ("head",), around=length("20 in"), fastening=length("7 in")),),
        )
    )
    assert found == {
        "Test square": "4.9 cm, should be 5 cm",
        "Fabric, 45 in wide": "8, view A: 3 yd; all sizes: 4 yd",
        "Opening: Neck": "must pass head; around 20 in; fastening 7 in",
    }


def test_a_make_says_what_was_decided_changed_and_tried_on() -> None:
    make = Make(
        "m",
        "p",
        "d",
        name="Sundays",
        decision=Decision("between", Place("38", Fraction(1, 2)), reason="she likes it loose"),
        widths=(WidthChoice("waist", length("2 cm"), ("a", "b")),),
        rounds=(
            ToileRound(
                None,
                (Pinned("bust", taken=length("1 cm"), felt="loose"),),
                "second try",
                {"waist": length("2 cm")},
            ),
        ),
        armhole=length("44 cm"),
    )
    assert lines(make) == {
        "Name": "Sundays",
        "Decision": "halfway from 38 to the next size",
        "Reason": "she likes it loose",
        "Width, waist": "2 cm; on 2 pieces",
        "Toile 1": "sewn with changes: waist 2 cm; bust: 1 cm taken in, felt loose; second try",
        "Armhole": "44 cm",
        "Lengths laid end to end": "2",
    }


def test_a_graded_make_says_the_size_of_each_level() -> None:
    levels = {"bust": Place("38"), "hip": Place("42")}
    decision = Decision("blended", Place("38"), levels, add=length("3 cm"))
    assert lines(Make("m", "p", "d", decision=decision))["Decision"] == (
        "bust 38, hip 42, graded between sizes, 3 cm added at the bust"
    )


def test_a_piece_says_its_view_and_the_list_the_size_it_was_measured_in() -> None:
    found = lines(Pieces("x", "p", (piece("Skirt", role="skirt_front", view="B"),), measured_in="40"))
    assert found == {"Piece: Skirt": "skirt front, cut 1; view B", "Pieces measured in size": "40"}
