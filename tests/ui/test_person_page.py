from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible, QColor, QPalette
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QWidget

from sizekeeper.core.person import Person, Reading
from sizekeeper.core.reading_edit import read_text
from sizekeeper.ui.person_header import CHILD_CAUTION
from sizekeeper.ui.person_page import PersonPage
from sizekeeper.ui.reading_words import PRIMARY
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.reading_row import MeasureRow
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

MARCH, TODAY = dt.date(2026, 3, 3), dt.date(2026, 11, 25)
ADA = Person("ada", "Ada")


def reading(measure: str, text: str, on: dt.date = TODAY) -> Reading:
    return Reading(measure, text, read_text(text, "cm")[0], on)


class Desk:
    """A page on the screen, and short ways to look at it and to type."""

    def __init__(self, page: PersonPage, session: Session) -> None:
        self.page, self.session = page, session

    def row(self, measure: str) -> MeasureRow:
        return self.page.list.rows[measure]

    def person(self) -> Person:
        person = self.session.committed(ADA.id)
        assert isinstance(person, Person)
        return person

    def texts(self, measure: str) -> list[str]:
        return [r.text for r in self.person().of(measure)]

    def type_in(self, widget: QWidget, text: str) -> None:
        widget.setFocus(Qt.FocusReason.TabFocusReason)
        QTest.keyClicks(widget, text)

    def press(self, key: Qt.Key) -> None:
        QTest.keyClick(self.page.window().focusWidget(), key)

    def enter(self, measure: str, text: str) -> None:
        self.type_in(self.row(measure).field, text)
        self.press(Qt.Key.Key_Return)


@pytest.fixture
def open_desk(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]
) -> Callable[[Person], Desk]:
    def opened(person: Person) -> Desk:
        session.apply("Add a person", None, person)
        selection.choose_person(person.id)
        page = PersonPage(session, selection, settings, today=today)
        qtbot.addWidget(page)
        page.resize(1040, 740)
        with qtbot.waitActive(page):
            page.show()
        return Desk(page, session)

    return opened


def focused(desk: Desk) -> str:
    """The accessible name of the field with the cursor."""
    return desk.page.window().focusWidget().accessibleName()


def test_eight_numbers_with_enter_between_are_eight_measurements(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.page.start()
    for number in ("168", "36", "88", "94", "30", "41", "76", "101"):
        desk.type_in(desk.page.window().focusWidget(), number)
        desk.press(Qt.Key.Key_Return)
    assert [desk.texts(m) for m in PRIMARY] == [["168"], ["36"], ["88"], ["94"], ["30"], ["41"], ["76"], ["101"]]


def test_tab_goes_from_one_figure_to_the_next_and_makes_the_edit(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.row("bust").field, "94")
    desk.press(Qt.Key.Key_Tab)
    assert (desk.texts("bust"), focused(desk)) == (["94"], "Upper arm")


def test_a_keystroke_is_a_draft_and_enter_makes_the_edit(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.row("bust").field, "94")
    drafted = desk.session.person(ADA.id)
    assert drafted is not None
    assert [r.text for r in drafted.of("bust")] == ["94"]
    assert desk.texts("bust") == []
    desk.press(Qt.Key.Key_Return)
    assert desk.texts("bust") == ["94"]
    assert not desk.session.drafting


def test_esc_puts_the_figure_back_and_takes_the_draft_off(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.type_in(desk.row("bust").field, "99")
    desk.press(Qt.Key.Key_Escape)
    assert desk.row("bust").field.text() == "92"
    assert not desk.session.drafting


def test_delete_and_enter_take_a_figure_away_and_undo_brings_it_back(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    desk.press(Qt.Key.Key_Delete)
    desk.press(Qt.Key.Key_Return)
    assert desk.texts("bust") == []
    assert desk.session.undo_stack.undoText() == "Remove bust"
    desk.session.undo_stack.undo()
    assert desk.row("bust").field.text() == "92"


def test_a_figure_is_kept_as_typed_and_shown_in_the_other_unit(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.enter("bust", "37¾ in")
    assert desk.row("bust").field.text() == "37¾ in"
    assert desk.row("bust").other.text() == "95.9 cm"  # 37.75 times 2.54 is 95.885


def test_the_other_unit_follows_every_keystroke(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.row("bust").field, "127")
    assert desk.row("bust").other.text() == "50 in"


def test_a_figure_of_a_new_day_is_added_and_the_row_says_so_while_one_types(
    open_desk: Callable[[Person], Desk],
) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92", MARCH),)))
    desk.type_in(desk.row("bust").field, "94")
    assert desk.row("bust").state.text() == "new figure, today"
    assert desk.page.panel.typing.text().startswith(
        "Typing a figure makes a new measurement, of today; 92 cm of 3 Mar 2026 stays in the history."
    )
    desk.press(Qt.Key.Key_Return)
    assert desk.texts("bust") == ["92", "94"]


def test_a_figure_of_the_same_day_corrects_and_the_row_says_so_while_one_types(
    open_desk: Callable[[Person], Desk],
) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.type_in(desk.row("bust").field, "94")
    assert desk.row("bust").state.text() == "corrects today’s"
    desk.press(Qt.Key.Key_Return)
    assert desk.texts("bust") == ["94"]


def test_the_day_hand_and_clothes_above_the_list_go_along_with_a_new_figure(
    open_desk: Callable[[Person], Desk],
) -> None:
    desk = open_desk(ADA)
    desk.page.desk.take(on=MARCH, by="alone", over="underwear")
    desk.enter("bust", "94")
    [made] = desk.person().readings
    assert (made.on, made.by, made.over) == (MARCH, "alone", "underwear")


def test_a_bad_text_is_explained_below_its_row_and_kept(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.enter("bust", "ninety")
    row = desk.row("bust")
    assert row.message.sentence.text().startswith("“ninety” is not a length.")
    assert (row.field.text(), row.message.isVisible(), row.mark.sign) == ("ninety", True, "unreadable")


def test_an_inch_figure_in_a_cm_field_is_questioned_and_answered_with_one_click(
    open_desk: Callable[[Person], Desk],
) -> None:
    desk = open_desk(ADA)
    desk.enter("bust", "37")
    row = desk.row("bust")
    assert (row.message.sentence.text(), row.message.answer.text(), row.mark.sign) == (
        "37 cm? That looks like a figure in inches.",
        "Read it as 37 in",
        "question",
    )
    QTest.mouseClick(row.message.answer, Qt.MouseButton.LeftButton)
    assert desk.texts("bust") == ["37 in"]
    assert not row.message.isVisible()


def test_a_questioned_figure_can_be_kept(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.enter("bust", "37")
    QTest.mouseClick(desk.row("bust").message.keep, Qt.MouseButton.LeftButton)
    assert (desk.texts("bust"), desk.row("bust").message.isVisible(), desk.row("bust").mark.sign) == (["37"], False, "")


def test_an_old_figure_is_marked_in_words_and_with_a_sign(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92", MARCH), reading("waist", "76"))))
    assert (desk.row("bust").state.text(), desk.row("bust").mark.sign) == ("8 months ago: measure again", "stale")
    assert (desk.row("waist").state.text(), desk.row("waist").mark.sign) == ("today", "")


def test_a_childs_figure_is_old_sooner_and_the_caution_is_shown(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("waist", "55", dt.date(2026, 7, 1)),)))
    assert desk.row("waist").mark.sign == ""
    desk.page.header.child.click()
    assert (desk.row("waist").mark.sign, desk.page.header.caution.text()) == ("stale", CHILD_CAUTION)
    assert desk.page.header.caution.isVisible()


def test_two_readings_of_a_day_count_with_their_median_and_it_is_shown(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    desk.type_in(desk.page.panel.further, "94")
    desk.press(Qt.Key.Key_Return)
    assert desk.texts("bust") == ["92", "94"]
    assert desk.row("bust").state.text() == "today, median of 2"
    assert desk.page.panel.median.text() == "Counts as 93 cm, the median of 2; they are 2 cm apart."


def test_one_reading_is_removed_from_the_history_and_undo_brings_it_back(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "90", MARCH), reading("bust", "92"))))
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    desk.page.panel.table.choose_row(1)
    QTest.keyClick(desk.page.panel.table, Qt.Key.Key_Delete)
    assert desk.texts("bust") == ["92"]
    desk.session.undo_stack.undo()
    assert desk.texts("bust") == ["90", "92"]


def test_who_measured_over_what_and_a_note_are_kept_per_reading(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "90", MARCH), reading("bust", "92"))))
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    form = desk.page.panel.form
    desk.page.panel.table.choose_row(1)
    form.by.setCurrentIndex(1)
    form.by.activated.emit(1)
    desk.type_in(form.over, "jeans")
    desk.press(Qt.Key.Key_Tab)
    desk.type_in(form.note, "in a hurry")
    desk.press(Qt.Key.Key_Return)
    first, second = desk.person().of("bust")
    assert (first.by, first.over, first.note) == ("alone", "jeans", "in a hurry")
    assert (second.by, second.over, second.note) == ("helped", "", "")


def test_a_reading_whose_day_is_corrected_stays_the_chosen_one(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "90", MARCH), reading("bust", "92"))))
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    desk.page.panel.form.on.day_entered.emit(dt.date(2026, 1, 5))
    assert [(r.text, r.on) for r in desk.person().of("bust")] == [("92", dt.date(2026, 1, 5)), ("90", MARCH)]
    assert desk.page.panel.table.currentIndex().row() == 1


def test_another_unit_leaves_every_length_as_it_was(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.page.header.inch.click()
    assert desk.person().unit == "in"
    assert desk.person().readings == (reading("bust", "92"),)
    assert desk.row("bust").field.text() == "92 cm"


def test_the_eight_and_the_filled_ones_are_listed_and_the_others_a_click_away(
    open_desk: Callable[[Person], Desk],
) -> None:
    desk = open_desk(replace(ADA, readings=(reading("ankle", "24"),)))

    def listed() -> set[str]:
        return {m for m, row in desk.page.list.rows.items() if row.field.isVisible()}

    assert listed() == {*PRIMARY, "ankle"}
    desk.page.list.more.click()
    assert listed() == set(desk.page.list.rows)
    desk.page.list.more.click()
    assert listed() == {*PRIMARY, "ankle"}


def test_the_help_and_the_drawing_follow_the_field(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.row("hip").field.setFocus(Qt.FocusReason.TabFocusReason)
    assert desk.page.panel.title.text() == "Hip"
    assert desk.page.panel.figure.measure == "hip"
    assert desk.page.panel.iso.text() == "ISO 8559-1 5.3.13: hip girth"


def test_arrows_and_shift_enter_go_up_and_down_the_list(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.row("bust").field.setFocus(Qt.FocusReason.TabFocusReason)
    desk.press(Qt.Key.Key_Down)
    assert focused(desk) == "Upper arm"
    desk.press(Qt.Key.Key_Up)
    QTest.keyClick(desk.row("bust").field, Qt.Key.Key_Return, Qt.KeyboardModifier.ShiftModifier)
    assert focused(desk) == "High bust"


def test_choosing_another_person_first_makes_the_edit_of_what_was_typed(
    open_desk: Callable[[Person], Desk], selection: Selection
) -> None:
    desk = open_desk(ADA)
    desk.session.apply("Add a person", None, Person("bea", "Bea"))
    desk.type_in(desk.row("bust").field, "94")
    selection.choose_person("bea")
    assert desk.texts("bust") == ["94"]
    assert desk.row("bust").field.text() == ""
    assert desk.page.header.name.text() == "Bea"


def test_undo_while_another_figure_is_typed_keeps_what_is_typed(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.enter("high_bust", "88")
    desk.type_in(desk.row("waist").field, "76")
    desk.session.undo_stack.undo()
    assert desk.row("high_bust").field.text() == ""
    assert desk.row("waist").field.text() == "76"
    drafted = desk.session.person(ADA.id)
    assert drafted is not None
    assert [r.text for r in drafted.readings] == ["76"]


def test_an_edit_elsewhere_is_shown_when_the_page_comes_back(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.page.hide()
    desk.session.apply("Change bust", ADA, replace(ADA, readings=(reading("bust", "92"),)))
    desk.page.show()
    assert desk.row("bust").field.text() == "92"


def test_a_place_is_revealed_also_in_a_row_that_was_not_listed(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.page.reveal(Place("person", ADA.id, "ankle"))
    assert focused(desk) == "Ankle"
    desk.page.reveal(Place("person", ADA.id, "notes"))
    assert focused(desk) == "Notes"


def test_a_person_without_a_name_keeps_the_old_one_and_is_told_why(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.page.header.name.selectAll()
    desk.page.header.name.setFocus(Qt.FocusReason.TabFocusReason)
    desk.press(Qt.Key.Key_Delete)
    desk.press(Qt.Key.Key_Return)
    assert (desk.person().name, desk.page.header.name.text()) == ("Ada", "Ada")
    assert desk.page.header.says.text() == "A person needs a name: the old one stays."


def test_enter_in_the_name_goes_on_to_the_first_missing_figure(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("height", "168"),)))
    desk.page.name_person()
    QTest.keyClicks(desk.page.header.name, "Adele")
    desk.press(Qt.Key.Key_Return)
    assert (desk.person().name, focused(desk)) == ("Adele", "Across back")


def test_a_birth_date_tells_the_age_and_marks_a_child(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.page.header.born, "2020-03-01")
    desk.press(Qt.Key.Key_Return)
    header = desk.page.header
    assert desk.person().born == dt.date(2020, 3, 1)
    assert (header.age.text(), header.child.isChecked(), header.child.isEnabled()) == ("6 years old", True, False)


def test_a_birth_date_that_is_none_is_explained_and_stays_in_the_field(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.page.header.born, "spring")
    desk.press(Qt.Key.Key_Return)
    assert desk.person().born is None
    assert desk.page.header.born.text() == "spring"
    assert desk.page.header.says.text() == "“spring” is not a day: write it as 2014-05-17 or 17 May 2014."


def test_groups_are_kept_once_each(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.type_in(desk.page.header.groups, "home, choir ,home,")
    desk.press(Qt.Key.Key_Return)
    assert desk.person().groups == ("home", "choir")


def test_notes_are_kept_on_leaving_as_one_step_and_esc_restores_them(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, notes="old"))
    notes = desk.page.header.notes
    desk.type_in(notes, "new ")
    desk.press(Qt.Key.Key_Escape)
    assert notes.toPlainText() == "old"
    desk.type_in(notes, "new ")
    desk.press(Qt.Key.Key_Tab)
    assert (desk.person().notes, desk.session.undo_stack.undoText()) == ("new old", "Change notes")


def test_nobody_chosen_says_what_to_do_and_adds_a_person(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings
) -> None:
    page = PersonPage(session, selection, settings)
    qtbot.addWidget(page)
    with qtbot.waitActive(page):
        page.show()
    assert page.add.isVisible()
    page.add.click()
    assert [p.id for p in session.people()] == [selection.person]
    assert page.header.name.selectedText() == "New person"


def test_a_person_taken_away_by_undo_leaves_the_empty_page(
    qtbot: QtBot, session: Session, selection: Selection, settings: Settings
) -> None:
    page = PersonPage(session, selection, settings)
    qtbot.addWidget(page)
    page.show()
    page.add.click()
    session.undo_stack.undo()
    assert page.add.isVisible()


def test_enter_after_the_last_figure_leads_to_the_others(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(ADA)
    desk.enter("hip", "101")
    desk.press(Qt.Key.Key_Return)
    desk.press(Qt.Key.Key_Return)
    assert focused(desk) == "Crotch depth"


def test_a_library_held_by_another_window_can_be_looked_at_but_not_edited(
    open_desk: Callable[[Person], Desk], monkeypatch: pytest.MonkeyPatch, session: Session
) -> None:
    monkeypatch.setattr(type(session), "read_only", property(lambda _session: False))
    desk = open_desk(replace(ADA, readings=(reading("bust", "37"),)))
    monkeypatch.setattr(type(session), "read_only", property(lambda _session: True))
    desk.page.desk.refreshed.emit()
    desk.page.list.switched()
    row = desk.row("waist")
    desk.enter("waist", "76")
    assert (row.field.text(), desk.texts("waist")) == ("", [])
    assert not desk.page.taking.isEnabled()
    assert not desk.page.header.cm.isEnabled()


def test_text_size_and_dark_are_followed_live(
    open_desk: Callable[[Person], Desk], qapp: QApplication, dark_palette: QPalette
) -> None:
    desk = open_desk(ADA)
    row, title = desk.row("bust"), desk.page.header.name
    before = (row.field.minimumWidth(), row.name.minimumHeight(), title.fontInfo().pointSizeF())
    font = qapp.font()
    font.setPointSizeF(font.pointSizeF() * 1.5)
    qapp.setFont(font)
    qapp.setPalette(dark_palette)
    qapp.processEvents()
    after = (row.field.minimumWidth(), row.name.minimumHeight(), title.fontInfo().pointSizeF())
    assert all(new > old * 1.3 for old, new in zip(before, after, strict=True))
    assert title.palette().color(QPalette.ColorRole.Text) == QColor("white")


def test_a_doubt_is_told_to_a_screen_reader_with_the_field(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "37"),)))
    assert desk.row("bust").field.accessibleDescription() == (
        "37 centimetres, today, 37 cm? That looks like a figure in inches."
    )


def test_an_older_day_puts_a_figure_into_the_history_and_says_so(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92"),)))
    desk.page.desk.take(on=MARCH)
    desk.type_in(desk.row("bust").field, "90")
    assert desk.row("bust").state.text() == "into the history, 3 Mar 2026"
    desk.press(Qt.Key.Key_Return)
    assert (desk.texts("bust"), desk.row("bust").field.text()) == (["90", "92"], "92")


def test_every_field_has_a_name_and_a_figure_is_described_in_words(open_desk: Callable[[Person], Desk]) -> None:
    desk = open_desk(replace(ADA, readings=(reading("bust", "92.5"),)))
    desk.page.list.more.click()
    for widget in desk.page.findChildren(QWidget):
        if widget.isVisible() and widget.focusPolicy() & Qt.FocusPolicy.TabFocus:
            face = QAccessible.queryAccessibleInterface(widget)
            assert face is not None
            assert face.text(QAccessible.Text.Name), widget
    assert desk.row("bust").field.accessibleDescription() == "92.5 centimetres, today"
