"""The window that imports people, used by mouse and keyboard."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtTest import QAbstractItemModelTester, QTest
from PySide6.QtWidgets import QApplication

from sizekeeper import assets
from sizekeeper.core.found_words import HANDS
from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_reading import Reading as Work
from sizekeeper.ui.people_model import PeopleModel
from sizekeeper.ui.people_window import PeopleWindow
from tests.importing.people import TODAY, pasted
from tests.ui.naming import nameless

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from PySide6.QtGui import QPalette
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session

ADA = Person("a", "Ada", readings=(Reading("bust", "92", parse_length("92", "cm"), dt.date(2026, 5, 1)),))
OPEN = "Name,Bust,Waist,Lucky\nAda,92,74,7\nBo,about 100,80,9\n"
CLEAR = "Name,Bust (cm),Waist (cm)\nMia,92,74\nJo,100,80\n"


class Desk:
    """The window and the hands of someone who uses it; every act waits until it was read."""

    def __init__(self, text: str, session: Session, selection: Selection, qtbot: QtBot, *known: Person) -> None:
        if known:
            session.apply_all("Set up", [(None, person) for person in known])
            session.undo_stack.clear()
        self.session, self.qtbot = session, qtbot
        self.window = PeopleWindow(pasted(text, known=known), session, selection, today=TODAY)
        self.window.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose, False)
        self.saved: list[str] = []
        self.window.saved.connect(self.saved.append)
        qtbot.addWidget(self.window)
        with qtbot.waitActive(self.window):
            self.window.show()

    def settle(self) -> None:
        self.qtbot.waitUntil(lambda: not self.window.correcting.busy)

    def press(self, text: str) -> None:
        """Press the first answer of this text."""
        lines = self.window.side.questions.asked()
        next(b for line in lines for b in line.buttons if b.text() == text).click()
        self.settle()

    def asked(self) -> list[str]:
        return [line.ask.code for line in self.window.side.questions.asked()]

    def table(self) -> list[list[str]]:
        """The people as they will be, as texts."""
        model = self.window.side.model
        return [
            [str(model.index(row, column).data()) for column in range(model.columnCount())]
            for row in range(model.rowCount())
        ]

    def people(self) -> list[str]:
        return [person.name for person in self.session.people()]


@pytest.fixture
def desk(
    session: Session, selection: Selection, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> Iterator[Callable[..., Desk]]:
    monkeypatch.setattr(LeaveQuestion, "ask", lambda *_: True)
    yield lambda text, *known: Desk(text, session, selection, qtbot, *known)
    Work.finish_all()


def test_a_clear_table_is_saved_as_one_step(desk: Callable[..., Desk], selection: Selection) -> None:
    at = desk(CLEAR)
    at.window.bar.save.click()
    assert (at.people(), at.saved) == (["Jo", "Mia"], ["Saved: 2 people are added."])
    mia = at.session.person(selection.person)
    assert mia is not None
    assert mia.name == "Mia"
    at.session.undo_stack.undo()
    assert at.people() == []


def test_nothing_is_saved_before_every_question_that_must_be_is_answered(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    assert not at.window.bar.save.isEnabled()
    assert at.window.bar.says.text() == "One question has to be answered before these people can be saved."
    at.press("Centimetres")
    at.window.bar.save.click()
    assert at.people() == ["Ada", "Bo"]
    bo = next(person for person in at.session.people() if person.name == "Bo")
    assert [(r.measure, r.text, r.length) for r in bo.readings if r.length is None] == [("bust", "about 100", None)]


def test_what_is_asked_stands_in_the_table_with_a_mark(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    assert at.table()[0] == ["Ada", "new", "92 ?", "74 ?"]
    at.press("Centimetres")
    assert at.table() == [["Ada", "new", "92", "74"], ["Bo", "new", "about 100 ?", "80"]]


def test_the_focus_begins_on_the_first_answer_and_enter_gives_it(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    button = QApplication.focusWidget()
    assert button is at.window.side.questions.asked()[0].buttons[0]
    QTest.keyClick(button, Qt.Key.Key_Space)
    at.settle()
    assert "unit" not in at.asked()


def test_the_answer_with_the_focus_is_in_view_after_each_answer(desk: Callable[..., Desk]) -> None:
    rows = "".join(f"P{i},{90 + i},{70 + i},about {100 + i}\n" for i in range(12))
    window = desk(f"Name,Bust,Waist,Hip\n{rows}")
    for _ in range(3):
        window.qtbot.waitUntil(focus_in_view)
        focus = QApplication.focusWidget()
        assert focus is not None
        QTest.keyClick(focus, Qt.Key.Key_Space)
        window.settle()


def focus_in_view() -> bool:
    """Whether the whole height of what has the focus can be seen."""
    focus = QApplication.focusWidget()
    return focus is not None and focus.visibleRegion().boundingRect().height() == focus.height()


def test_an_answer_can_be_undone_with_the_keys(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    at.press("Centimetres")
    at.window.undo.trigger()
    at.settle()
    assert "unit" in at.asked()


def test_the_cell_of_a_question_is_shown_in_the_grid(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    line = next(line for line in at.window.side.questions.asked() if line.ask.code == "text")
    line.place.click()
    index = at.window.sheet.grid.currentIndex()
    assert at.window.sheet.model.at(index.row(), index.column()) == "B3"


def test_a_cell_is_typed_over_in_the_grid(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN)
    at.window.sheet.model.setData(at.window.sheet.model.index(2, 1), "100")
    at.settle()
    assert "text" not in at.asked()


def test_a_figure_is_typed_over_where_it_will_be(desk: Callable[..., Desk]) -> None:
    at = desk(CLEAR)
    model = at.window.side.model
    assert model.setData(model.index(0, 2), "93,5")
    at.settle()
    assert at.table()[0] == ["Mia", "new", "93,5", "74"]


def test_a_column_is_given_another_role_with_the_keyboard(desk: Callable[..., Desk]) -> None:
    at = desk("Name,Bust (cm),Lucky\nAda,92,100\n")
    at.window.sheet.go_to("C2")
    role = at.window.sheet.role
    assert role.currentData() == ""
    role.setFocus()
    QTest.keyClicks(role, "Hip")
    role.activated.emit(role.currentIndex())
    at.settle()
    unit = at.window.sheet.unit
    unit.setCurrentIndex(unit.findData("cm"))
    unit.activated.emit(unit.currentIndex())
    at.settle()
    assert (at.table(), at.asked()) == ([["Ada", "new", "92", "100"]], [])


def test_a_table_lying_the_other_way_is_turned(desk: Callable[..., Desk]) -> None:
    at = desk("Name,Ada,Bo\nBust (cm),92,100\nHip (cm),100,110\n")
    assert at.window.sheet.way.currentData() is True
    assert at.table() == [["Ada", "new", "92", "100"], ["Bo", "new", "100", "110"]]


def test_headings_are_set_where_none_were_found(desk: Callable[..., Desk]) -> None:
    at = desk("x,y\nThem,Size of it\nAda,92\n")
    assert at.window.trouble.isVisible()
    at.window.sheet.go_to("A2")
    at.window.sheet.heads.click()
    at.settle()
    assert at.window.draft.table is not None
    assert not at.window.trouble.isVisible()


def test_somebody_is_left_out_with_the_space_bar(desk: Callable[..., Desk]) -> None:
    at = desk(CLEAR)
    view = at.window.side.view
    view.setFocus()
    view.setCurrentIndex(view.model().index(1, 0))
    QTest.keyClick(view, Qt.Key.Key_Space)
    at.settle()
    assert at.table()[1][1] == "left out"
    at.window.bar.save.click()
    assert at.people() == ["Mia"]


def test_somebody_known_is_added_to(desk: Callable[..., Desk]) -> None:
    at = desk("Name,Waist (cm)\nAda,74\n", ADA)
    assert at.asked() == ["known"]
    at.press("The same person")
    assert at.table() == [["Ada", "added to Ada", "74"]]
    at.window.bar.save.click()
    after = at.session.person("a")
    assert after is not None
    assert [r.measure for r in after.readings] == ["bust", "waist"]


def test_who_somebody_is_can_be_asked_again(desk: Callable[..., Desk]) -> None:
    at = desk("Name,Waist (cm)\nAda,74\n", ADA)
    at.press("Another person")
    view = at.window.side.view
    view.setCurrentIndex(view.model().index(0, 0))
    at.window.side.again.click()
    at.settle()
    assert at.asked() == ["known"]


def test_an_edit_in_the_library_meanwhile_is_noticed(desk: Callable[..., Desk]) -> None:
    at = desk(CLEAR)
    at.session.apply("Add person", None, Person("m", "Mia"))
    at.settle()
    assert at.asked() == ["known"]


def test_the_day_the_hand_and_the_groups_are_filled_in_below(desk: Callable[..., Desk]) -> None:
    at = desk(CLEAR)
    bar = at.window.bar
    bar.on.setDate(dt.date(2026, 11, 2))  # type: ignore[arg-type]  # PySide takes a date
    at.settle()
    bar.by.setCurrentIndex(2)
    bar.by.activated.emit(2)
    at.settle()
    bar.groups.setFocus()
    QTest.keyClicks(bar.groups, "Course")
    QTest.keyClick(bar.groups, Qt.Key.Key_Return)
    at.settle()
    bar.save.click()
    mia = next(person for person in at.session.people() if person.name == "Mia")
    assert (mia.groups, mia.readings[0].on) == (("Course",), dt.date(2026, 11, 2))
    assert mia.readings[0].by == list(HANDS)[2]


def test_closing_asks_before_answers_are_lost(desk: Callable[..., Desk], monkeypatch: pytest.MonkeyPatch) -> None:
    at = desk(OPEN)
    at.press("Centimetres")
    monkeypatch.setattr(LeaveQuestion, "ask", lambda *_: False)
    assert not at.window.close()
    monkeypatch.setattr(LeaveQuestion, "ask", lambda *_: True)
    assert at.window.close()
    assert at.people() == []


def test_every_widget_has_a_name(desk: Callable[..., Desk]) -> None:
    at = desk(OPEN, replace(ADA, name="Bo"))
    assert not nameless(at.window)


def test_the_window_can_be_read_in_the_dark(desk: Callable[..., Desk], dark: QPalette) -> None:
    at = desk(OPEN)
    image = at.window.grab().toImage()
    assert image.pixelColor(5, 5).lightness() < 90


def test_the_people_model_keeps_the_rules_of_a_model_while_it_changes(qtbot: QtBot) -> None:
    model = PeopleModel(assets.measures())
    QAbstractItemModelTester(model, QAbstractItemModelTester.FailureReportingMode.Fatal)
    for text in (OPEN, CLEAR, "Name,Hip (cm)\nAda,100\n", OPEN):
        model.show(pasted(text))
    assert (model.rowCount(), model.columnCount()) == (2, 4)
    model.deleteLater()


def test_a_field_is_told_in_words(qtbot: QtBot) -> None:
    model = PeopleModel(assets.measures())
    model.show(pasted(OPEN))
    told = model.index(1, 2).data(Qt.ItemDataRole.AccessibleTextRole)
    assert told == "Bo, Bust: about 100; not a length, counts as not measured; a question is open."
    model.deleteLater()
