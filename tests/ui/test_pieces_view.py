from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu, QWidget

from sizekeeper.assets import starter_pieces
from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Pieces
from sizekeeper.ui.entry_actions import EntryActions
from sizekeeper.ui.pieces_switch import CHARTS, PIECES
from sizekeeper.ui.selection import Selection
from tests.ui.naming import nameless
from tests.ui.piecework import BACK, DRESS, FRONT, SLEEVE, in_front, long, pieces_of, saved, settle, type_into, wide
from tests.ui.walking import tab_from

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.pieces_view import PiecesView
    from sizekeeper.ui.selection import Place
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

OTHER = Pattern("q", "Plain skirt", garment="skirt")
TWO_VIEWS = replace(DRESS, views=("A", "B"))
ENTER, ESC, TAB = Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_Tab


@pytest.fixture
def page(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    return in_front(qtbot, session, selection, settings)


@pytest.fixture
def view(page: PatternPage) -> PiecesView:
    return page.pieces


def names(session: Session) -> list[str]:
    return [one.name for one in saved(session).pieces]


def figure(view: PiecesView, level: str) -> QWidget:
    return view.form.sheet.row(level, along=False).figure


def chosen(view: PiecesView) -> Piece:
    piece = view.desk.piece
    assert piece is not None
    return piece


def test_an_empty_list_offers_the_usual_pieces_of_the_garment(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS)
    assert view.contents.start.text() == "&Usual pieces of a dress"
    assert not view.form.isVisible()
    view.contents.start.click()
    assert names(session) == [one.name for one in starter_pieces("dress")]
    assert session.undo_stack.undoText() == "Add the usual pieces of a dress"
    session.undo_stack.undo()
    assert view.contents.start.isVisible()


def test_names_are_typed_one_after_the_other(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS)
    type_into(view.contents.add, "Front yoke")
    type_into(view.contents.add, "Cuff")
    assert [(one.name, one.role) for one in saved(session).pieces] == [("Front yoke", "yoke"), ("Cuff", "cuff")]
    assert (view.contents.add.text(), view.contents.add.hasFocus()) == ("", True)
    assert session.undo_stack.undoText() == "Add Cuff"


def test_a_width_is_a_draft_while_typed_and_an_edit_when_left(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    row = view.form.sheet.row("bust", along=False)
    row.figure.setFocus()
    QTest.keyClicks(row.figure, "26")
    assert (session.undo_stack.count(), row.net.text()) == (0, "23 cm")
    assert view.drawing.piece == replace(BACK, across=(wide("bust", "26", 2),))
    QTest.keyClick(row.figure, ENTER)
    assert chosen(view).across == (wide("bust", "26", 2),)
    assert session.undo_stack.undoText() == "Change bust width of Back"


def test_tab_goes_from_a_width_to_what_it_includes(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT))
    row = view.form.sheet.row("waist", along=False)
    type_into(row.figure, "24", TAB)
    QTest.keyClick(row.allowances, TAB)
    assert QApplication.focusWidget() is row.lengths["darts"]
    type_into(row.lengths["darts"], "2.5")
    assert row.net.text() == "20 cm"  # 24 less one allowance of 1.5 and the dart of 2.5
    assert session.undo_stack.count() == 2


def test_escape_restores_a_width(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, across=(wide("bust", "25"),))))
    field = view.form.sheet.row("bust", along=False).figure
    type_into(field, "99", ESC)
    assert (field.text(), session.undo_stack.count()) == ("25", 0)
    assert session.value("pp") == session.committed("pp")


def test_an_emptied_width_is_taken_out(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, across=(wide("bust", "25"),))))
    type_into(figure(view, "bust"), "", Qt.Key.Key_Delete, ENTER)
    assert chosen(view).across == ()


def test_a_text_that_is_no_length_stays_and_is_explained(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK, FRONT))
    sheet = view.form.sheet
    type_into(figure(view, "bust"), "broad")
    assert sheet.across.problem.text() == "Bust width: “broad” is not a length."
    assert (sheet.row("bust", along=False).figure.text(), chosen(view)) == ("broad", BACK)
    view.desk.choose("f")
    assert (sheet.row("bust", along=False).figure.text(), sheet.across.problem.isVisible()) == ("", False)
    view.desk.choose("b")
    assert (sheet.row("bust", along=False).figure.text(), sheet.across.problem.isVisible()) == ("broad", True)
    QTest.keyClick(figure(view, "bust"), ESC)
    assert (sheet.row("bust", along=False).figure.text(), sheet.across.problem.isVisible()) == ("", False)


def test_a_length_is_net_of_allowances_and_hem(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    row = view.form.sheet.row("back_waist", along=True)
    type_into(row.figure, "44")
    type_into(row.lengths["hem"], "2")
    assert row.net.text() == "39 cm"  # 44 less two allowances of 1.5 and the hem of 2
    assert session.undo_stack.undoText() == "Change neck to waist length of Back"


def test_only_a_printed_length_is_scaled(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, along=(long("back_waist", "40"),))))
    type_into(view.square.measured, "9.9")
    row = next(row for row in view.form.sheet.along.rows if row.chain == "back_waist")
    assert row.net.text() == "40 cm"
    row.source.setCurrentIndex(1)
    row.source.activated.emit(1)
    assert row.net.text() == "39.6 cm"


def test_allowances_that_are_not_known_are_asked_for(view: PiecesView, session: Session, selection: Selection) -> None:
    bare = replace(DRESS, seam_allowance=None)
    settle(session, selection, bare, pieces_of(replace(BACK, across=(wide("bust", "25", 2),))))
    assert "does not say how wide they are" in view.form.sheet.across.problem.text()
    assert view.allowance.isVisible()
    type_into(view.form.allowance, "1")
    assert view.form.sheet.row("bust", along=False).net.text() == "23 cm"


def test_the_link_to_the_unknown_allowance_goes_to_its_field(
    page: PatternPage, session: Session, selection: Selection
) -> None:
    settle(session, selection, replace(DRESS, seam_allowance=None), pieces_of(BACK))
    page.pieces.allowance.click()
    assert page.form.lengths["seam_allowance"].hasFocus()
    assert page.switch.currentIndex() == CHARTS


def test_a_ticked_level_gets_a_row_for_its_width(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    assert not figure(view, "hip").isVisible()
    view.form.levels["hip"].click()
    assert figure(view, "hip").isVisible()
    assert chosen(view).levels == ("neck", "bust", "waist", "hip")
    assert session.undo_stack.undoText() == "Back crosses the hip"


@pytest.mark.parametrize(
    ("act", "changed", "name"),
    [
        (lambda form: form.fold.click(), {"on_fold": True}, "Lay Back on the fold"),
        (lambda form: form.line.click(), {"line": True}, "Mark the line of Back"),
        (lambda form: form.cut.setValue(4), {"cut": 4}, "Change how many of Back to cut"),
        (lambda form: form.layer.activated.emit(1), {"layer": "lining"}, "Change layer of Back"),
        (lambda form: form.role.activated.emit(3), {"role": "yoke"}, "Change what Back is"),
        (lambda form: form.around.activated.emit(2), {"around": 2}, "Change how often Back goes round"),
        (lambda form: type_into(form.name, "Back piece"), {"name": "Back piece"}, "Rename Back"),
        (lambda form: type_into(form.note, "slip"), {"note": "slip"}, "Change note on Back"),
        (
            lambda form: type_into(form.allowance, "1"),
            {"seam_allowance": parse_length("1", "cm")},
            "Change seam allowance of Back",
        ),
    ],
)
def test_each_field_is_one_edit_that_can_be_undone(
    view: PiecesView, session: Session, selection: Selection, act: object, changed: dict[str, object], name: str
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    act(view.form)  # type: ignore[operator]
    assert chosen(view) == replace(BACK, **changed)  # type: ignore[arg-type]
    assert (session.undo_stack.count(), session.undo_stack.undoText()) == (1, name)
    session.undo_stack.undo()
    assert chosen(view) == BACK


def test_pieces_are_moved_doubled_and_removed_from_the_keyboard(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK, SLEEVE))
    pieces = view.contents.list
    pieces.setFocus()
    QTest.keyClick(pieces, Qt.Key.Key_Down, Qt.KeyboardModifier.AltModifier)
    assert names(session) == ["Back", "Front", "Sleeve"]
    QTest.keyClick(pieces, Qt.Key.Key_D, Qt.KeyboardModifier.ControlModifier)
    assert names(session) == ["Back", "Front", "Front (copy)", "Sleeve"]
    QTest.keyClick(pieces, Qt.Key.Key_Delete)
    assert (names(session), chosen(view).name) == (["Back", "Front", "Sleeve"], "Sleeve")
    QTest.keyClick(pieces, Qt.Key.Key_Up)
    assert chosen(view).name == "Front"
    QTest.keyClick(pieces, Qt.Key.Key_F2)
    assert view.form.name.hasFocus()


def test_pieces_of_another_pattern_are_copied_with_ids_of_their_own(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK), OTHER)
    selection.choose_pattern("q")
    view.contents.fill_menu()
    _, copies = view.contents.more.menu().findChildren(QMenu)
    (entry,) = copies.actions()
    assert entry.text() == "Yoke dress"
    entry.trigger()
    copied = next(v for v in session.values() if isinstance(v, Pieces) and v.pattern == "q")
    assert [one.name for one in copied.pieces] == ["Front", "Back"]
    assert not {one.id for one in copied.pieces} & {"f", "b"}
    assert session.undo_stack.undoText() == "Copy the pieces of Yoke dress"


def test_nothing_to_copy_is_not_offered(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT), OTHER)
    view.contents.fill_menu()
    assert [action.text() for action in view.contents.more.menu().actions()] == ["Add the usual pieces of"]


def test_undo_goes_back_to_the_piece_and_the_field(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK))
    revisited: list[Place] = []
    session.revisited.connect(lambda place, _text: revisited.append(place))
    page.pieces.desk.choose("b")
    type_into(figure(page.pieces, "waist"), "20")
    page.pieces.desk.choose("f")
    page.switch.setCurrentIndex(CHARTS)
    session.undo_stack.undo()
    page.reveal(revisited[0])
    assert page.switch.currentIndex() == PIECES
    assert chosen(page.pieces).id == "b"
    assert figure(page.pieces, "waist").hasFocus()


def test_what_is_being_typed_is_kept_when_another_pattern_is_chosen(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK), OTHER)
    figure(view, "bust").setFocus()
    QTest.keyClicks(figure(view, "bust"), "26")
    selection.choose_pattern("q")
    assert saved(session).pieces[0].across == (wide("bust", "26", 2),)


def test_a_library_that_is_only_looked_at_offers_no_edits(
    view: PiecesView, session: Session, selection: Selection, monkeypatch: pytest.MonkeyPatch
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    monkeypatch.setattr(type(session), "read_only", property(lambda _: True))
    view.refresh()
    assert not view.contents.add.isEnabled()
    assert not view.contents.remove.isVisible()
    assert view.form.name.isReadOnly()
    assert not view.form.levels["bust"].isEnabled()
    assert not view.openings.add.isVisible()
    assert view.fabric.model.rowCount() == 0


def test_the_switch_counts_the_pieces(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK))
    assert page.switch.tabText(PIECES) == "Pieces (2)"


def test_the_drawing_finds_its_place_at_every_width(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT))
    view.window().resize(1300, 800)
    assert view.form.isAncestorOf(view.drawing)
    view.window().resize(820, 700)
    assert not view.form.isAncestorOf(view.drawing)


def test_everything_that_takes_the_focus_has_a_name(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK))
    view.openings.add.menu().actions()[0].trigger()
    assert nameless(view) == []


def test_a_piece_is_read_out_in_words(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, across=(wide("bust", "25.5"),))))
    said = QAccessible.queryAccessibleInterface(view.contents.list).child(0).text(QAccessible.Text.Name)
    assert said == "Back, cut 2; crosses neck, bust, waist; bust 25.5 centimetres wide"


def test_enter_goes_down_the_widths_and_from_the_name_to_the_first_empty_figure(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, along=(long("back_waist", "42"),))))
    type_into(view.form.name, "")
    assert QApplication.focusWidget() is figure(view, "neck")
    type_into(figure(view, "bust"), "26")
    assert QApplication.focusWidget() is figure(view, "waist")
    QTest.keyClick(figure(view, "waist"), Qt.Key.Key_Up)
    assert QApplication.focusWidget() is figure(view, "bust")
    darts = view.form.sheet.row("bust", along=False).lengths["darts"]
    type_into(darts, "1")
    assert QApplication.focusWidget() is figure(view, "waist")


def test_tab_follows_the_page_from_the_name_to_the_note(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    form = view.form
    wanted = [form.role, form.cut, form.fold, form.layer, *form.levels.values()]
    wanted += [form.sheet.row("back_waist", along=True).figure, figure(view, "neck"), figure(view, "bust")]
    wanted += [figure(view, "waist"), form.line, form.around, form.allowance, form.note]
    form.name.setFocus()
    for widget in wanted:
        at = QApplication.focusWidget()
        assert at is not None
        QTest.keyClick(at, TAB)
        assert QApplication.focusWidget() is widget, widget.accessibleName()


def test_a_duplicated_pattern_has_the_pieces_too(session: Session, settings: Settings, qtbot: QtBot) -> None:
    selection, window = Selection(), QWidget()
    qtbot.addWidget(window)
    settle(session, selection, DRESS, pieces_of(FRONT, BACK))
    EntryActions(session, selection, settings, window).copy_pattern.trigger()
    kept = [value for value in session.values() if isinstance(value, Pieces)]
    assert [value.pieces for value in kept] == [(FRONT, BACK), (FRONT, BACK)]
    assert len({value.pattern for value in kept}) == len({value.id for value in kept}) == 2


def test_tab_goes_from_the_list_through_its_links_from_left_to_right(
    session: Session, selection: Selection, view: PiecesView
) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK, SLEEVE))
    view.desk.choose(BACK.id)
    contents = view.contents
    links = [contents.up, contents.down, contents.double, contents.remove, contents.more]
    assert tab_from(contents.list, 6) == [contents.add, *links]


def test_when_the_last_piece_is_removed_the_next_can_be_typed(
    session: Session, selection: Selection, view: PiecesView
) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT))
    view.contents.list.setFocus()
    QTest.keyClick(view.contents.list, Qt.Key.Key_Delete)
    assert view.contents.add.hasFocus()


def test_in_a_small_window_choosing_a_piece_brings_list_and_drawing_into_view(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    many = tuple(replace(FRONT, id=f"f{number}", name=f"Front {number}") for number in range(12))
    settle(session, selection, DRESS, pieces_of(*many))
    view.window().resize(820, 640)
    view.contents.list.setFocus()
    QTest.keyClick(view.contents.list, Qt.Key.Key_Down)
    shown = view.area.viewport().rect()
    for part in (view.contents.list, view.drawing):
        at = part.mapTo(view.area.viewport(), part.rect().topLeft())
        assert shown.contains(part.rect().translated(at))


def test_the_links_below_the_list_are_not_cut_off_in_a_small_window(
    view: PiecesView, session: Session, selection: Selection, qtbot: QtBot
) -> None:
    settle(session, selection, DRESS, pieces_of(FRONT, BACK, SLEEVE))
    view.window().resize(820, 700)
    contents = view.contents
    links = (contents.up, contents.down, contents.double, contents.remove, contents.more)
    qtbot.waitUntil(lambda: all(link.width() >= link.sizeHint().width() for link in links))
    assert max(link.geometry().right() for link in links) <= contents.width()


def test_where_the_pattern_has_views_a_piece_can_be_cut_for_one(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, TWO_VIEWS, pieces_of(BACK))
    box = view.form.view
    assert [box.itemText(at) for at in range(box.count())] == ["All views", "A", "B"]
    box.setCurrentIndex(2)
    box.activated.emit(2)
    assert (chosen(view), session.undo_stack.undoText()) == (replace(BACK, view="B"), "Change the view of Back")
    assert view.contents.list.pieces.index(0).data(Qt.ItemDataRole.UserRole) == "view B · cut 2"
    session.undo_stack.undo()
    assert (chosen(view).view, box.currentText()) == ("", "All views")


def test_undo_goes_back_to_the_view_of_a_piece(page: PatternPage, session: Session, selection: Selection) -> None:
    settle(session, selection, TWO_VIEWS, pieces_of(BACK, FRONT))
    revisited: list[Place] = []
    session.revisited.connect(lambda place, _text: revisited.append(place))
    page.pieces.form.view.setCurrentIndex(1)
    page.pieces.form.view.activated.emit(1)
    page.switch.setCurrentIndex(CHARTS)
    session.undo_stack.undo()
    page.reveal(revisited[0])
    assert page.pieces.form.view.hasFocus()


def test_without_views_nothing_is_asked_about_them(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, DRESS, pieces_of(BACK))
    assert not view.form.view.isVisible()
    assert not view.form.view.label.isVisible()


def test_a_view_that_the_pattern_has_no_more_can_still_be_seen_and_taken_off(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, DRESS, pieces_of(replace(BACK, view="Long")))
    box = view.form.view
    assert (box.isVisible(), box.currentText()) == (True, "Long")
    box.setCurrentIndex(0)
    box.activated.emit(0)
    assert chosen(view).view == ""
    assert not box.isVisible()


def test_a_copied_piece_keeps_a_view_that_its_new_pattern_has(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    other = replace(OTHER, views=("B",))
    settle(session, selection, TWO_VIEWS, pieces_of(replace(FRONT, view="A"), replace(BACK, view="B")), other)
    selection.choose_pattern("q")
    view.contents.fill_menu()
    _, copies = view.contents.more.menu().findChildren(QMenu)
    copies.actions()[0].trigger()
    copied = next(v for v in session.values() if isinstance(v, Pieces) and v.pattern == "q")
    assert [(one.name, one.view) for one in copied.pieces] == [("Front", ""), ("Back", "B")]


def test_tab_goes_from_the_seam_allowance_to_the_view_and_on_to_the_note(
    view: PiecesView, session: Session, selection: Selection
) -> None:
    settle(session, selection, TWO_VIEWS, pieces_of(BACK))
    assert tab_from(view.form.allowance, 2) == [view.form.view, view.form.note]


def test_a_long_title_makes_the_page_no_wider(view: PiecesView, session: Session, selection: Selection) -> None:
    settle(session, selection, replace(DRESS, title="A very long title with many words " * 6), pieces_of(FRONT))
    assert view.title.width() <= view.width()
    assert view.title.height() > view.title.fontMetrics().height() * 1.5
