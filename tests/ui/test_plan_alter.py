"""The alterations of a plan: each typed figure, and what it comes to."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, QPointF, Qt
from PySide6.QtGui import QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from sizekeeper.core.length import Length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import FabricLine, Opening, Pieces
from tests.build import chart, length, person
from tests.core.paper import along, piece
from tests.ui.household import DRESS
from tests.ui.planning import BODICE, WAISTBAND, make_in, open_desk, saved_make, steps, type_in

if TYPE_CHECKING:
    from sizekeeper.ui.fit_page import FitPage
    from sizekeeper.ui.plan_alter import AlterPart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

SEWN = replace(DRESS, seam_allowance=length("5/8 in"))
TALL = person("in", bust="38", waist="28", hip="43", back_waist_length="17")


@pytest.fixture
def alter(page: FitPage, session: Session, selection: Selection) -> AlterPart:
    """The alterations of the dress: back piece 13 1/8 and band 1 3/4 net, the back is 17."""
    return open_desk(page, session, selection, pieces=BODICE, who=TALL, what=SEWN, part="alter").alter


def shown(alter: AlterPart) -> list[str]:
    """The names of the parts that are shown."""
    return [fold.title for fold in alter.folds if not fold.isHidden()]


# Lengths.


def test_pieces_net_of_allowances_and_the_back_say_how_much_to_lengthen(alter: AlterPart) -> None:
    # Common practice, no source: 13 1/8 and 1 3/4 make 14 7/8, the back is 17: 2 1/8.
    row = alter.lengths.rows["back_waist"]
    assert row.comes_to.text() == "Back neck to waist 2 1/8 in longer. 17 in is needed, the pieces give 14 7/8 in."


def test_every_piece_that_must_get_the_same_is_listed(alter: AlterPart) -> None:
    row = alter.lengths.rows["back_waist"]
    assert row.how.text() == "Cut and spread by 2 1/8 in between bust and waist. The same on Front and Facing."


def test_where_the_length_goes_in_is_her_choice(alter: AlterPart, session: Session) -> None:
    row = alter.lengths.rows["back_waist"]
    row.place.setCurrentText("Back between neck and bust")
    row.place.activated.emit(row.place.currentIndex())
    assert row.how.text().startswith("Cut and spread by 2 1/8 in between neck and bust.")
    assert steps(session) == ["Change where the back neck to waist is changed"]


def test_to_shorten_a_pleat_of_half_the_amount_is_folded(alter: AlterPart, session: Session) -> None:
    row = alter.lengths.rows["back_waist"]
    type_in(row.fields["amount"], "-3/4")
    assert row.how.text().startswith("Fold away 3/4 in between bust and waist: a pleat 3/8 in deep.")
    assert steps(session) == ["Change back neck to waist: change of length"]


def test_typing_shows_what_it_would_do_and_makes_no_step(alter: AlterPart, session: Session) -> None:
    field = alter.lengths.rows["back_waist"].fields["amount"]
    field.setFocus()
    QTest.keyClicks(field, "1")
    assert alter.lengths.rows["back_waist"].comes_to.text() == "Back neck to waist 1 in longer."
    assert make_in(session) is None
    QTest.keyClick(field, Qt.Key.Key_Escape)
    assert "2 1/8 in longer" in alter.lengths.rows["back_waist"].comes_to.text()
    assert field.text() == ""


def test_what_is_no_length_is_said_beneath_and_stays_to_be_mended(alter: AlterPart, session: Session) -> None:
    row = alter.lengths.rows["back_waist"]
    type_in(row.fields["ease"], "abc")
    assert row.problem.text() == "Back neck to waist: length ease: “abc” is not a length"
    assert (row.fields["ease"].text(), make_in(session)) == ("abc", None)


def test_an_empty_field_takes_the_choice_away(alter: AlterPart, session: Session) -> None:
    field = alter.lengths.rows["back_waist"].fields["ease"]
    type_in(field, "1/2")
    assert saved_make(session).lengths[0].ease == Length(Fraction(1, 2), "in", "1/2")
    type_in(field, "")
    assert saved_make(session).lengths == ()


# Widths.


def test_two_inches_off_a_waistband_are_half_an_inch_off_each_half_piece(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # Common practice, no source: front cut twice, back once on the fold: 1/2 off each half-piece.
    alter = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter
    alter.widths.by.setText("-2")
    alter.widths.add.click()
    assert [tick.share.text() for tick in alter.widths.rows[0]._ticks] == ["1/2 in narrower", "1/2 in narrower"]
    assert steps(session) == ["Change the width at the waist"]


def test_what_is_ticked_off_leaves_its_share_to_the_others(
    page: FitPage, session: Session, selection: Selection
) -> None:
    alter = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter
    alter.widths.by.setText("-2")
    alter.widths.add.click()
    front, back = alter.widths.rows[0]._ticks
    front.tick.click()
    assert (front.share.text(), back.share.text()) == ("", "1 in narrower")
    back.edges.setValue(2)
    assert back.share.text() == "1/2 in narrower each"


def test_shares_that_no_step_of_the_ruler_gives_say_what_they_make_as_drawn(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # 1 1/8 over two edges that count four times each: 2 1/4 sixteenths at an edge. 2 in front leave 2 1/2 behind, drawn
    # as 3: four times 1/8 and four times 3/16 make 1 1/4.
    alter = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter
    alter.widths.where.setCurrentText("Waist")
    alter.widths.by.setText("1 1/8")
    alter.widths.add.click()
    (row,) = alter.widths.rows
    assert row.drawn.text() == ""
    for tick in row._ticks:
        tick.edges.setValue(2)
    assert row.drawn.text().startswith("Drawn like that it makes 1 1/4 in all round")


def test_the_last_piece_cannot_be_ticked_off(page: FitPage, session: Session, selection: Selection) -> None:
    alter = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter
    alter.widths.by.setText("-2")
    alter.widths.add.click()
    for tick in alter.widths.rows[0]._ticks:
        tick.tick.click()
    assert alter.widths.rows[0].problem.text() == "Tick at least one piece for the change to go into."
    assert len(saved_make(session).widths[0].pieces) == 1


def test_a_change_of_width_can_be_taken_away(page: FitPage, session: Session, selection: Selection) -> None:
    alter = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter
    alter.widths.by.setText("-2")
    alter.widths.add.click()
    alter.widths.rows[0].away.click()
    assert (saved_make(session).widths, alter.widths.rows) == ((), [])


def test_an_amount_that_is_no_length_is_said_and_not_added(alter: AlterPart, session: Session) -> None:
    alter.widths.by.setText("some")
    alter.widths.add.click()
    assert alter.widths.problem.text() == "Amount: “some” is not a length."
    assert make_in(session) is None


# The other parts.


def test_only_the_parts_that_apply_are_shown(alter: AlterPart) -> None:
    assert shown(alter) == ["Lengths", "Widths", "Seam allowance", "Fabric"]


def test_a_part_that_is_opened_at_the_bottom_comes_into_view(alter: AlterPart) -> None:
    alter.window().resize(1040, 440)
    alter.verticalScrollBar().setValue(0)
    fold = alter.fabric
    fold.button.click()
    QApplication.processEvents()
    assert fold.taking.paste.visibleRegion().boundingRect() == fold.taking.paste.rect()
    assert fold.button.visibleRegion().boundingRect() == fold.button.rect()


def test_a_part_folds_away_and_keeps_saying_what_it_comes_to(alter: AlterPart) -> None:
    alter.lengths.button.click()
    assert not alter.lengths.body.isVisible()
    assert alter.lengths.button.accessibleName() == "Lengths: back neck to waist 2 1/8 in longer"


def test_a_childs_pattern_tells_both_sizes_and_what_to_grow_into(
    page: FitPage, session: Session, selection: Selection
) -> None:
    child = replace(person("cm", bust="58", height="125"), child=True)
    body = chart("body", "104 116 128", bust="54, 58, 62", height="104, 116, 128")
    alter = open_desk(page, session, selection, body, who=child, part="alter").alter
    fold = alter.child
    assert fold.button.summary == "by the bust the size is 116, by the height 128"


CHILD = replace(person("cm", bust="58", height="125"), child=True)
NO_LENGTHS = "The charts give no lengths to compare for back neck to waist, sleeve and skirt"


def lengths_of(alter: AlterPart, size: str) -> list[str]:
    """What is said to grow into once the lengths of a size are asked for."""
    alter.child.whose.setCurrentText(size)
    alter.child.whose.activated.emit(alter.child.whose.currentIndex())
    return alter.child.said.text().splitlines()


def test_charts_without_lengths_say_that_the_size_of_the_lengths_changes_nothing(
    page: FitPage, session: Session, selection: Selection
) -> None:
    body = chart("body", "104 116 128", bust="54, 58, 62", height="104, 116, 128")
    alter = open_desk(page, session, selection, body, who=CHILD, part="alter").alter
    assert NO_LENGTHS in alter.child.said.text()
    assert any(line.startswith(NO_LENGTHS) for line in lengths_of(alter, "128"))


def test_a_length_that_the_charts_do_not_give_is_named_when_a_size_is_asked_for(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # The back grows from 26 in 116 to 28 in 128; neither sleeve nor skirt is in the charts.
    body = chart("body", "104 116 128", bust="54, 58, 62", back_waist_length="24, 26, 28")
    alter = open_desk(page, session, selection, body, who=CHILD, part="alter").alter
    assert "no length" not in alter.child.said.text()
    said = lengths_of(alter, "128")
    assert any(line.startswith("The charts give no length to compare for sleeve and skirt") for line in said)
    # 2 cm are 12.6 sixteenths of an inch.
    comes_to = alter.lengths.rows["back_waist"].comes_to.text()
    assert comes_to.startswith("Back neck to waist 13/16 in longer. By the size for the lengths 11 in is needed")


def test_charts_with_every_length_of_the_garment_say_nothing_of_lengths_that_lack(
    page: FitPage, session: Session, selection: Selection
) -> None:
    made = chart(
        "finished", "116 128", bust="64, 68", back_waist_length="24, 26", sleeve_length="36, 39", skirt_length="40, 44"
    )
    alter = open_desk(page, session, selection, made, who=CHILD, part="alter").alter
    assert "to compare" not in "".join(lengths_of(alter, "128"))


def test_a_stretch_test_of_ten_to_fourteen_is_forty_percent(
    page: FitPage, session: Session, selection: Selection
) -> None:
    knit = Pattern("pattern", "Tee", garment="top", fabric="knit", stretch=0.5)
    alter = open_desk(page, session, selection, what=knit, part="alter").alter
    fold = alter.knit
    type_in(fold.fields["rest"], "10 cm")
    type_in(fold.fields["stretched"], "14 cm")
    assert fold.button.summary == "40%, your fabric"
    assert "the pattern asks for 50%" in fold.warning.text()


def test_a_stretch_test_half_typed_does_not_count_as_the_fabrics(
    page: FitPage, session: Session, selection: Selection
) -> None:
    knit = Pattern("pattern", "Tee", garment="top", fabric="knit", stretch=0.5)
    fold = open_desk(page, session, selection, what=knit, part="alter").alter.knit
    type_in(fold.fields["rest"], "10 cm")
    assert fold.button.summary == "50%, as the pattern says"


def test_a_change_that_no_listed_piece_can_take_asks_for_the_pieces(
    page: FitPage, session: Session, selection: Selection
) -> None:
    alter = open_desk(page, session, selection, part="alter").alter
    alter.widths.by.setText("1")
    alter.widths.add.click()
    (row,) = alter.widths.rows
    assert row.problem.text().startswith("List the pieces that cross this level")


def test_the_usual_ease_of_the_rise_is_said_in_the_unit_shown(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # 1/2 in is 1.27 cm.
    page._settings.choose(unit="cm")
    trousers = Pattern("pattern", "Slacks", garment="trousers")
    who = person("cm", waist="72", hip="98", crotch_depth="27")
    made = chart("finished", "1", waist="73", hip="102", crotch_depth="26")
    alter = open_desk(page, session, selection, made, who=who, what=trousers, part="alter").alter
    assert alter.lengths.rows["rise"].fields["ease"].placeholderText() == "1.3 cm"


def test_her_seam_allowance_says_where_to_cut_and_what_can_be_let_out(alter: AlterPart, session: Session) -> None:
    fold = alter.allowance
    type_in(fold.field, "1")
    # 1 less the pattern's 5/8 is 3/8; 1/4 in is kept, so 3/4 in at each edge.
    said = fold.said.text()
    assert "Cut 3/8 in outside the printed cutting line" in said
    assert "3/4 in can be let out of each edge, 1 1/2 in of each seam" in said
    assert saved_make(session).seam_allowance == Length(Fraction(1), "in", "1")


@pytest.mark.parametrize(
    ("typed", "said", "summary"),
    [  # 1/4 in, 6.35 mm, is kept: 3.65 mm are left of 10 mm, 7.3 mm of both edges, and a sixteenth of 5/16 in.
        ("10 mm", "1/8 in can be let out of each edge, 1/4 in of each seam", "1/4 in can be let out of each seam"),
        ("5/16", "1/16 in can be let out of each edge, 1/8 in of each seam", "1/8 in can be let out of each seam"),
        ("1/4", "Nothing can be let out: 1/4 in at each edge must stay to hold the seam.", "nothing can be let out"),
    ],
)
def test_no_more_is_said_to_be_in_a_seam_than_there_is(alter: AlterPart, typed: str, said: str, summary: str) -> None:
    type_in(alter.allowance.field, typed)
    assert said in alter.allowance.said.text()
    assert alter.allowance.button.summary == summary


def test_fabric_is_the_envelopes_and_what_is_lengthened_against_what_she_has(
    page: FitPage, session: Session, selection: Selection
) -> None:
    listed = Pieces("pieces", "pattern", BODICE, fabric=(FabricLine(length("45 in"), length("3 yd")),))
    alter = open_desk(page, session, selection, pieces=listed, who=TALL, what=SEWN, part="alter").alter
    fold = alter.fabric
    type_in(fold.wide, "45")
    type_in(fold.long, "115")
    # 108 in and twice 2 1/8: 112 1/4; of 115 in 2 3/4 are left.
    assert fold.button.summary == "2 3/4 in left over"


def test_the_lengths_laid_end_to_end_are_kept_with_the_make(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # 108 in and three times 2 1/8: 114 3/8; of 115 in 5/8 is left.
    listed = Pieces("pieces", "pattern", BODICE, fabric=(FabricLine(length("45 in"), length("3 yd")),))
    alter = open_desk(page, session, selection, pieces=listed, who=TALL, what=SEWN, part="alter").alter
    type_in(alter.fabric.wide, "45")
    type_in(alter.fabric.long, "115")
    alter.fabric.lays.setValue(3)
    assert (alter.fabric.button.summary, saved_make(session).laid) == ("5/8 in left over", 3)
    session.undo_stack.undo()
    assert (alter.fabric.lays.value(), saved_make(session).laid) == (2, 2)


SLEEVE = piece("Sleeve", "sleeve wrist", "sleeve", cut=2, line=True)


@pytest.fixture
def sleeved(page: FitPage, session: Session, selection: Selection) -> AlterPart:
    """The alterations of a dress with a sleeve, for an arm of 20 in."""
    who = person("in", bust="38", waist="28", hip="43", sleeve_length="20")
    return open_desk(page, session, selection, pieces=(*BODICE, SLEEVE), who=who, part="alter").alter


def test_a_cap_longer_than_the_armhole_is_eased_in(sleeved: AlterPart, session: Session) -> None:
    fold = sleeved.sleeve
    type_in(fold.fields["sleeve_cap"], "18 1/2")
    assert fold.meets.text().startswith("Measure the other")
    type_in(fold.fields["armhole"], "17")
    assert fold.meets.text() == "The cap is 1 1/2 in longer than the armhole: that much is eased in."
    made = saved_make(session)
    assert (made.sleeve_cap, made.armhole) == (
        Length(Fraction(37, 2), "in", "18 1/2"),
        Length(Fraction(17), "in", "17"),
    )


def test_a_cap_that_does_not_reach_round_the_armhole_is_warned_of(sleeved: AlterPart) -> None:
    type_in(sleeved.sleeve.fields["sleeve_cap"], "16 1/2")
    type_in(sleeved.sleeve.fields["armhole"], "17")
    assert sleeved.sleeve.short.text().startswith("The cap is 1/2 in shorter than the armhole")
    assert sleeved.sleeve.button.summary == "the cap is too short"


def test_a_cap_of_less_than_nothing_is_refused(sleeved: AlterPart, session: Session) -> None:
    type_in(sleeved.sleeve.fields["sleeve_cap"], "-3")
    assert sleeved.sleeve.problem.text() == "Seam of the sleeve cap: it must be more than nothing"
    assert make_in(session) is None


def test_the_way_to_the_waist_is_kept_and_a_sleeve_can_be_made_level_with_it(
    sleeved: AlterPart, session: Session
) -> None:
    fold = sleeved.sleeve
    assert not fold.level.isEnabled()
    type_in(fold.fields["shoulder_to_waist"], "16")
    fold.level.click()
    made = saved_make(session)
    assert made.shoulder_to_waist == made.lengths[0].wanted == Length(Fraction(16), "in", "16")
    assert steps(session)[-1] == "End the sleeve level with the waist"


def test_a_neck_too_narrow_for_the_head_is_warned_of(page: FitPage, session: Session, selection: Selection) -> None:
    opening = Opening("Neck", ("head",), around=length("20 in"))
    listed = Pieces("pieces", "pattern", BODICE, openings=(opening,))
    who = person("in", bust="38", waist="28", hip="43", head="22")
    alter = open_desk(page, session, selection, pieces=listed, who=who, part="alter").alter
    fold = alter.opening
    assert fold.warning.text() == "Neck: the head needs 22 in and it opens to 20 in: 2 in too little."


def test_trousers_are_changed_in_the_order_depth_length_thigh(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # Depth 27 + 1.27 against 26: 2.27 deeper. Length 70 + 2.54 against 66: 6.54, less twice 2.27 leaves 2, half each.
    # Thigh 58 + 2 (the pattern's own middle of close is 2.75) against 62: wide enough.
    trousers = Pattern("pattern", "Slacks", garment="trousers")
    who = person("cm", waist="72", hip="98", thigh="58", crotch_depth="27", crotch_length="70")
    made = chart(
        "finished", "1 2", waist="73, 77", hip="102, 106", thigh="62, 64", crotch_depth="26, 26", crotch_length="66, 66"
    )
    legs = (
        piece("Leg front", "waist hip thigh knee hem", "leg_front", cut=2),
        piece("Leg back", "waist hip thigh knee hem", "leg_back", cut=2, line=True),
    )
    page._settings.choose(unit="cm")
    alter = open_desk(page, session, selection, made, pieces=legs, who=who, what=trousers, part="alter").alter
    fold = alter.seat
    assert fold.said.text().splitlines()[:2] == [
        "1. Crotch depth: 2.3 cm deeper.",
        "2. Crotch length, at the inseam points: front 10 mm longer. Back 10 mm longer.",
    ]


def test_what_was_refused_for_one_person_does_not_stand_for_another(
    alter: AlterPart, session: Session, selection: Selection
) -> None:
    row = alter.lengths.rows["back_waist"]
    type_in(row.fields["ease"], "abc")
    session.apply("Add", None, replace(TALL, id="other", name="Edda"))
    selection.choose_person("other")
    assert (row.fields["ease"].text(), row.problem.text()) == ("", "")


def test_scrolling_over_a_choice_does_not_change_it(alter: AlterPart, session: Session) -> None:
    place = alter.lengths.rows["back_waist"].place
    middle = QPointF(place.rect().center())
    down, none = QPoint(0, -120), Qt.MouseButton.NoButton
    turn = QWheelEvent(
        middle, middle, QPoint(), down, none, Qt.KeyboardModifier.NoModifier, Qt.ScrollPhase.NoScrollPhase, False
    )  # fmt: skip
    QApplication.sendEvent(place, turn)
    assert make_in(session) is None


def test_a_high_bust_far_past_the_chart_is_said_in_place_of_an_adjustment(
    page: FitPage, session: Session, selection: Selection
) -> None:
    who = person("in", high_bust="44", bust="48", waist="38")
    body = chart("body", "38 40", "in", high_bust="34, 36", bust="36, 38", waist="28, 30")
    made = chart("finished", "38 40", "in", bust="38, 40", waist="30, 32")
    desk = open_desk(page, session, selection, made, body, who=who, part="alter")
    assert desk.alter.bust.said.text().startswith("By the high bust the size lies more than half a size past 40")
    assert desk.alter.bust.button.summary == "not in this plan"


def test_a_seat_of_which_a_step_is_not_known_is_not_said_to_be_as_it_is(
    page: FitPage, session: Session, selection: Selection
) -> None:
    who = person("cm", waist="72", hip="98", thigh="55")
    made = chart("finished", "1", waist="73", hip="102", thigh="62")
    slacks = Pattern("pattern", "Slacks", garment="trousers")
    alter = open_desk(page, session, selection, made, who=who, what=slacks, part="alter").alter
    assert "3. Thigh, after what the inseam points gave: wide enough." in alter.seat.said.text()
    assert alter.seat.button.summary == "not all known"


def test_the_thigh_of_a_seat_is_spread_over_the_legs_and_stands_on_the_worksheet(
    page: FitPage, session: Session, selection: Selection
) -> None:
    # Thigh 62 and 2.75 (the middle of close, 1.5 to 4) against 60: 4.75, in whole millimetres 24 and the rest.
    trousers = Pattern("pattern", "Slacks", garment="trousers")
    who = person("cm", waist="72", hip="98", thigh="62")
    made = chart("finished", "1", waist="73", hip="102", thigh="60")
    legs = tuple(
        piece(name, "waist hip thigh hem", role, cut=2)  # type: ignore[arg-type]  # roles
        for name, role in (("Leg front", "leg_front"), ("Leg back", "leg_back"))
    )
    page._settings.choose(unit="cm")
    desk = open_desk(page, session, selection, made, pieces=legs, who=who, what=trousers, part="alter")
    (row,) = desk.alter.widths.rows
    assert (row.key, row.field.isReadOnly(), row.away.isHidden()) == (("thigh", "seat"), True, True)
    assert row.field.text() == "4.8 cm"  # to the millimetre, as the fold says it above
    assert desk.alter.widths.button.summary == "thigh 4.8 cm wider"
    desk.turn_to("worksheet")
    wider = [row.step for row in desk.worksheet.rows if row.step is not None and row.step.kind == "width"]
    assert [(step.piece, step.cause) for step in wider] == [("Leg front", "seat"), ("Leg back", "seat")]
    assert sum(step.amount for step in wider) == Fraction(475, 100)
    desk.turn_to("alter")
    desk.alter.widths.where.setCurrentText("Thigh")
    desk.alter.widths.by.setText("3")
    desk.alter.widths.add.click()
    assert [row.key for row in desk.alter.widths.rows] == [("thigh", "")]


def test_a_skirt_asks_how_long_it_is_to_be(page: FitPage, session: Session, selection: Selection) -> None:
    skirt = piece("Skirt", "waist hip hem", "skirt_back", cut=2, along=along("skirt", "25 in"))
    alter = open_desk(page, session, selection, pieces=(skirt,), part="alter").alter
    assert alter.lengths.rows["skirt"].comes_to.text().startswith("Type how long it is to be")


def test_when_a_change_of_width_is_taken_away_the_focus_stays_among_the_widths(
    page: FitPage, session: Session, selection: Selection
) -> None:
    widths = open_desk(page, session, selection, pieces=WAISTBAND, part="alter").alter.widths
    type_in(widths.by, "-2")
    widths.rows[0].away.setFocus()
    widths.rows[0].away.click()
    assert widths.where.hasFocus()


def test_a_childs_growth_lengthens_even_what_nobody_measured(
    page: FitPage, session: Session, selection: Selection
) -> None:
    child = replace(person("in", bust="23"), child=True)
    made = chart("finished", "6", "in", bust="26")
    alter = open_desk(page, session, selection, made, who=child, part="alter").alter
    type_in(alter.child.growth, "2")
    assert "skirt 2 in longer" in alter.lengths.button.summary


def test_the_pieces_are_asked_for_once_not_for_every_length(
    page: FitPage, session: Session, selection: Selection
) -> None:
    lengths = open_desk(page, session, selection, part="alter").alter.lengths
    assert "List the pieces" in lengths.order.text()
    assert [row.how.text() for row in lengths.rows.values() if "List" in row.how.text()] == []
