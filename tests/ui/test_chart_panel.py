from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtGui import QContextMenuEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QMenu

from sizekeeper import assets
from sizekeeper.core.chart import Chart
from sizekeeper.ui.chart_fill_dialog import FillDialog
from sizekeeper.ui.chart_measure_field import MeasureField
from sizekeeper.ui.chart_panel import ChartPanel
from sizekeeper.ui.chart_paste_question import PasteQuestion
from sizekeeper.ui.chart_unit_question import UnitQuestion
from tests.core.written import chart, sizes, texts

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.chart_actions import ChartActions
    from sizekeeper.ui.session import Session

THREE = chart("38, 40, 42", bust="88, 92, 96", waist="70, 74, 78")


class Desk:
    """A panel with a chart that is in the library, and the hands of someone who types."""

    def __init__(self, session: Session, start: Chart, qtbot: QtBot) -> None:
        self.session, self.qtbot, self.start = session, qtbot, start
        self.panel = ChartPanel(session, start, assets.measures())
        qtbot.addWidget(self.panel)
        session.changed.connect(self.follow)
        self.panel.show_chart(start)
        self.panel.resize(900, 500)
        with qtbot.waitActive(self.panel):
            self.panel.show()
        self.grid.setFocus()

    @property
    def grid(self):  # type: ignore[no-untyped-def]  # noqa: ANN201
        return self.panel.grid

    @property
    def actions(self) -> ChartActions:
        return self.panel.actions_

    @property
    def chart(self) -> Chart:
        value = self.session.committed(self.start.id)
        return value if isinstance(value, Chart) else self.start

    def follow(self, _change: object) -> None:
        self.panel.show_chart(self.chart)

    def go(self, row: int, column: int) -> None:
        self.grid.go_to(self.panel.model.index(row, column))

    def type(self, *keys: str | Qt.Key) -> None:
        for key in [one for part in keys for one in (part if isinstance(part, str) else [part])]:
            widget = QApplication.focusWidget()
            assert widget is not None
            if isinstance(key, str):
                QTest.keyClicks(widget, key)
            else:
                QTest.keyClick(widget, key)

    def at(self) -> tuple[int, int]:
        return self.grid.current().row(), self.grid.current().column()

    def undo_texts(self) -> list[str]:
        stack = self.session.undo_stack
        return [stack.text(i) for i in range(stack.count())]


@pytest.fixture
def desk(session: Session, qtbot: QtBot) -> Callable[[Chart], Desk]:
    def opened(start: Chart) -> Desk:
        session.apply("Start", None, start)
        session.undo_stack.clear()
        return Desk(session, start, qtbot)

    return opened


TAB, ENTER, ESC, F2 = Qt.Key.Key_Tab, Qt.Key.Key_Return, Qt.Key.Key_Escape, Qt.Key.Key_F2


def test_a_chart_is_typed_from_nothing_with_tab_and_enter(session: Session, qtbot: QtBot) -> None:
    desk = Desk(session, chart("", bust="", waist=""), qtbot)
    desk.type("38", TAB, "40", TAB, "42", TAB, TAB)
    assert (sizes(desk.chart), desk.at()) == ("38, 40, 42", (1, 0))
    desk.type("88", TAB, "92", TAB, "96", TAB, "70", TAB, "74", ENTER)
    assert texts(desk.chart) == {"bust": "88, 92, 96", "waist": "70, 74, "}
    assert desk.undo_texts()[:4] == ["Add size 38", "Add size 40", "Add size 42", "Change bust 38"]


def test_a_size_typed_further_out_stands_behind_the_last(session: Session, qtbot: QtBot) -> None:
    desk = Desk(session, chart("", bust=""), qtbot)
    desk.go(0, 2)
    desk.type("38", TAB, "40", ENTER)
    assert (sizes(desk.chart), desk.at()) == ("38, 40", (1, 0))


def test_enter_goes_down_to_where_the_row_was_begun(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 1)
    middle = at.grid.visualRect(at.grid.current()).center()
    QTest.mouseClick(at.grid.viewport(), Qt.MouseButton.LeftButton, pos=middle)
    at.type("93", TAB, "97", ENTER)
    assert at.at() == (2, 1)


def test_tab_goes_over_the_end_of_a_row_and_leaves_behind_the_last_cell(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 2)
    at.type(TAB)
    assert at.at() == (2, 0)
    at.go(2, 2)
    at.type(TAB)
    assert QApplication.focusWidget() is not at.grid
    at.type(Qt.Key.Key_Backtab)
    assert QApplication.focusWidget() is at.grid
    at.go(0, 0)
    at.type(Qt.Key.Key_Backtab)
    assert QApplication.focusWidget() is not at.grid


@pytest.mark.parametrize(
    ("key", "cell"),
    [(Qt.Key.Key_Up, (0, 1)), (Qt.Key.Key_Down, (2, 1)), (Qt.Key.Key_Left, (1, 0)), (Qt.Key.Key_Right, (1, 2))],
)
def test_arrows_take_what_was_typed_over_and_go_on(
    desk: Callable[[Chart], Desk], key: Qt.Key, cell: tuple[int, int]
) -> None:
    at = desk(THREE)
    at.go(1, 1)
    at.type("93", key)
    assert (texts(at.chart)["bust"], at.at()) == ("88, 93, 96", cell)


def test_in_an_opened_cell_the_arrows_move_in_the_text(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 1)
    at.type(F2, Qt.Key.Key_End, Qt.Key.Key_Left, ".", ENTER)
    assert texts(at.chart)["bust"] == "88, 9.2, 96"


def test_escape_restores_the_figure(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 1)
    at.type("99")
    assert at.session.value(THREE.id) != THREE
    at.type(ESC)
    assert (at.session.value(THREE.id), at.undo_texts()) == (THREE, [])
    assert at.grid.current().data() == "92"


def test_a_keystroke_is_a_draft_and_no_edit(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 0)
    at.type("89")
    drafted = at.session.value(THREE.id)
    assert isinstance(drafted, Chart)
    assert (texts(drafted)["bust"], at.undo_texts()) == ("89, 92, 96", [])


def test_delete_clears_the_chosen_figures_as_one_edit(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.grid.selectAll()
    at.type(Qt.Key.Key_Delete)
    assert (texts(at.chart), sizes(at.chart)) == ({"bust": ", , ", "waist": ", , "}, "38, 40, 42")
    assert at.undo_texts() == ["Clear 6 figures"]
    at.session.undo_stack.undo()
    assert at.chart == THREE


def test_a_size_that_exists_stays_open_and_says_why(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(0, 1)
    at.type(ENTER, "38", ENTER)
    assert at.panel.line.text() == "The chart has a size 38 already."
    at.type(ESC)
    assert at.chart == THREE


def test_a_bad_figure_is_kept_and_explained_below_the_grid(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 1)
    at.type("9O", Qt.Key.Key_Up, Qt.Key.Key_Down)
    assert texts(at.chart)["bust"] == "88, 9O, 96"
    assert at.panel.line.text().startswith("“O” is not a unit of length.") or "9O" in at.panel.line.text()
    assert at.panel.line.text().endswith("The text is kept; the figure counts as missing.")
    assert at.panel.doubts.sentences() == ["Bust 40: no figure, counts as missing."]


def test_a_measure_is_added_by_typing_its_name_below_the_last(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(3, 0)
    at.type("Hip", ENTER)
    assert (list(texts(at.chart)), at.undo_texts(), at.at()) == (["bust", "waist", "hip"], ["Add hip"], (3, 0))


def test_a_measure_of_her_own_keeps_its_name(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.actions.add_measure.trigger()
    at.type("Cuff, buttoned", TAB)
    assert (at.chart.rows[2].measure, at.chart.rows[2].label) == ("cuff_buttoned", "Cuff, buttoned")
    assert at.panel.model.headerData(3, Qt.Orientation.Vertical) == "Cuff, buttoned"


def test_a_second_row_for_a_measure_is_refused_in_words(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.actions.add_measure.trigger()
    at.type("Waist", ENTER)
    assert at.panel.line.text() == "The chart has a row for waist already."
    at.type(ESC)
    assert (at.chart, QApplication.focusWidget()) == (THREE, at.grid)


def test_a_measure_is_renamed_in_place_and_keeps_its_figures(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 0)
    at.actions.rename_measure.trigger()
    at.type("High bust", ENTER)
    assert texts(at.chart)["high_bust"] == "88, 92, 96"


def test_a_block_copied_is_text_for_a_spreadsheet_and_pastes_as_one_edit(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.grid.selectAll()
    at.grid.copy()
    assert QApplication.clipboard().text() == "38\t40\t42\t\n88\t92\t96\t\n70\t74\t78\t\n\t\t\t"
    QApplication.clipboard().setText("90\t94\n72\t76\n")
    at.go(1, 1)
    at.actions.paste.trigger()
    assert (texts(at.chart), at.undo_texts()) == (
        {"bust": "88, 90, 94", "waist": "70, 72, 76"}, ["Paste 4 figures"]
    )  # fmt: skip


class Asked:
    """Stands in for a question: keeps what was asked, and lets the test answer."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch, kind: type) -> None:
        self.questions: list[QWidget] = []
        ask = kind.ask  # type: ignore[attr-defined]

        def kept(*args: object, **named: object) -> QWidget:
            question: QWidget = ask(*args, **named)
            self.questions.append(question)
            return question

        monkeypatch.setattr(kind, "ask", kept)

    @property
    def last(self):  # type: ignore[no-untyped-def]  # noqa: ANN201
        return self.questions[-1]


def test_a_paste_beyond_the_edge_says_what_it_adds_before_it_does(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, PasteQuestion)
    at = desk(THREE)
    QApplication.clipboard().setText("97\t101\n79\t83\n95\t99")
    at.go(1, 2)
    at.actions.paste.trigger()
    assert at.chart == THREE
    assert asked.last.informativeText() == "It would add the size 44, and the measure Measure 3."
    asked.last.add.click()
    assert (sizes(at.chart), texts(at.chart)["measure_3"]) == ("38, 40, 42, 44", ", , 95, 99")
    assert at.undo_texts() == ["Paste 6 figures"]


def test_a_paste_beyond_the_edge_can_be_cut_to_what_fits(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, PasteQuestion)
    at = desk(THREE)
    QApplication.clipboard().setText("97\t101")
    at.go(1, 2)
    at.actions.paste.trigger()
    asked.last.fit.click()
    assert (sizes(at.chart), texts(at.chart)["bust"]) == ("38, 40, 42", "88, 92, 97")


def test_a_whole_table_pastes_into_an_empty_chart_without_a_question(session: Session, qtbot: QtBot) -> None:
    desk = Desk(session, chart("", bust="", waist=""), qtbot)
    QApplication.clipboard().setText("\t38\t40\nWaist\t70\t74\nBust\t88\t92\nHip\t94\t98")
    desk.actions.paste.trigger()
    assert (sizes(desk.chart), texts(desk.chart)) == ("38, 40", {"bust": "88, 92", "waist": "70, 74", "hip": "94, 98"})


def test_an_empty_clipboard_is_said_in_words(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    QApplication.clipboard().setText("")
    at.actions.paste.trigger()
    assert at.panel.line.text() == "There is nothing to paste: the clipboard holds no text."


def test_a_row_is_filled_by_the_step_of_two_figures(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, FillDialog)
    at = desk(chart("1, 2, 3, 4", bust="80, 84, ,"))
    at.go(1, 1)
    at.actions.fill.trigger()
    assert asked.last.field.text() == "4"
    QTest.keyClick(asked.last.field, ENTER)
    assert (texts(at.chart), at.undo_texts()) == ({"bust": "80, 84, 88, 92"}, ["Fill bust"])


def test_a_row_is_filled_by_a_typed_step_and_a_bad_one_is_explained(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, FillDialog)
    at = desk(chart("1, 2, 3", unit="in", bust="34 1/2, ,"))
    at.go(1, 0)
    at.actions.fill.trigger()
    asked.last.field.setText("wide")
    asked.last.accept()
    assert asked.last.problem.text() == "“wide” is not a length."
    asked.last.field.setText("1 1/2")
    asked.last.accept()
    assert texts(at.chart) == {"bust": "34 1/2, 36, 37 1/2"}


def test_several_rows_are_filled_each_by_its_own_step(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, FillDialog)
    at = desk(chart("1, 2, 3", bust="80, 84,", waist="60, 65,"))
    at.grid.selectAll()
    at.actions.fill.trigger()
    asked.last.accept()
    assert (texts(at.chart), at.undo_texts()) == ({"bust": "80, 84, 88", "waist": "60, 65, 70"}, ["Fill 2 measures"])


def test_filling_a_row_without_a_figure_says_what_to_do(desk: Callable[[Chart], Desk]) -> None:
    at = desk(chart("1, 2", bust=","))
    at.go(1, 0)
    at.actions.fill.trigger()
    assert at.panel.line.text().startswith("Type the first figure")


@pytest.mark.parametrize(
    ("action", "cell", "listed", "name"),
    [
        ("size_right", (1, 0), "40, 38, 42", "Move size 38"),
        ("size_left", (0, 2), "38, 42, 40", "Move size 42"),
        ("remove_sizes", (1, 1), "38, 42", "Remove size 40"),
        ("turn", (1, 1), "42, 40, 38", "Turn the sizes round"),
        ("insert_size", (1, 1), "38, 39, 40, 42", "Insert size 39"),
    ],
)
def test_sizes_are_moved_removed_and_inserted_as_one_edit(
    desk: Callable[[Chart], Desk], action: str, cell: tuple[int, int], listed: str, name: str
) -> None:
    at = desk(THREE)
    at.go(*cell)
    getattr(at.actions, action).trigger()
    assert (sizes(at.chart), at.undo_texts()) == (listed, [name])


@pytest.mark.parametrize(
    ("action", "row", "measures", "name"),
    [
        ("measure_down", 1, ["waist", "bust"], "Move bust"),
        ("measure_up", 2, ["waist", "bust"], "Move waist"),
        ("remove_measures", 2, ["bust"], "Remove waist"),
    ],
)
def test_measures_are_moved_and_removed_as_one_edit(
    desk: Callable[[Chart], Desk], action: str, row: int, measures: list[str], name: str
) -> None:
    at = desk(THREE)
    at.go(row, 0)
    getattr(at.actions, action).trigger()
    assert (list(texts(at.chart)), at.undo_texts()) == (measures, [name])


def test_a_row_is_said_to_be_half_the_girth(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 0)
    at.actions.written["half"].trigger()
    assert (at.chart.rows[0].lows(), at.undo_texts()) == ([176, 184, 192], ["Read bust as half the girth"])


def test_a_length_is_never_offered_to_be_half(desk: Callable[[Chart], Desk]) -> None:
    at = desk(chart("38", inseam="78"))
    at.go(1, 0)
    assert [action.isEnabled() for action in at.actions.written.values()] == [False, False, False]


def test_the_menu_shows_only_what_works_at_the_cell(desk: Callable[[Chart], Desk], qtbot: QtBot) -> None:
    at = desk(chart("38", bust="88"))
    at.go(1, 0)
    at.panel.more.menu().aboutToShow.emit()
    shown = {action.text() for action in at.panel.more.menu().actions() if not action.isSeparator()}
    assert {"Paste", "Remove size", "Rename measure…"} <= shown
    assert not {"Move size left", "Turn the sizes round", "Fill right…", "Move measure up"} & shown


def test_another_unit_is_asked_about_in_words_and_leaves_the_texts(
    desk: Callable[[Chart], Desk], monkeypatch: pytest.MonkeyPatch
) -> None:
    asked = Asked(monkeypatch, UnitQuestion)
    at = desk(THREE)
    at.panel.unit.activated.emit(at.panel.unit.findData("in"))
    assert asked.last.informativeText() == ("Every figure stays as typed. “88” is then read as inches: 223.5 cm.")
    assert at.chart.unit == "cm"
    asked.last.yes.click()
    assert (at.chart.unit, texts(at.chart), at.undo_texts()) == ("in", texts(THREE), ["Read the figures as inches"])
    assert at.panel.line.text() == "The figures are now read as inches."


def test_an_empty_chart_changes_its_unit_without_a_question(session: Session, qtbot: QtBot) -> None:
    desk = Desk(session, chart("", bust=""), qtbot)
    desk.panel.unit.activated.emit(desk.panel.unit.findData("mm"))
    assert desk.chart.unit == "mm"


def test_a_slip_is_put_right_by_one_click(desk: Callable[[Chart], Desk]) -> None:
    at = desk(chart("1, 2, 3, 4, 5", bust="75, 79, 38, 87, 91"))
    (line,) = at.panel.doubts.lines()
    line.buttons[1].click()
    assert (texts(at.chart), at.undo_texts()) == ({"bust": "75, 79, 83, 87, 91"}, ["Change bust 3"])
    assert at.panel.doubts.isHidden()


def test_a_doubt_leads_to_its_cell(desk: Callable[[Chart], Desk]) -> None:
    at = desk(chart("1, 2, 3", bust="80, 84, 88", waist="60, ?, 70"))
    at.panel.doubts.lines()[0].buttons[0].click()
    assert at.at() == (2, 1)


def test_a_doubtful_row_is_settled_by_one_click(desk: Callable[[Chart], Desk]) -> None:
    marked = replace(THREE, rows=tuple(replace(row, doubt="half_width_suspected") for row in THREE.rows))
    at = desk(marked)
    at.panel.doubts.lines()[0].buttons[2].click()
    assert (at.chart.rows[0].doubt, at.chart.rows[0].written_as) == ("", "full")


def test_many_doubts_are_folded_until_asked_for(desk: Callable[[Chart], Desk]) -> None:
    rows = {f"m{i}": "2, 1" for i in range(4)} | {f"n{i}": "x, 1" for i in range(4)}
    at = desk(chart("1, 2", "body", **rows))  # type: ignore[arg-type]
    assert len(at.panel.doubts.lines()) == 5
    at.panel.doubts._more.click()
    assert len(at.panel.doubts.lines()) == len(at.panel.doubts.sentences()) == 8


def test_the_menu_of_a_cell_opens_by_key(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(1, 1)
    QApplication.sendEvent(
        at.grid.viewport(), QContextMenuEvent(QContextMenuEvent.Reason.Keyboard, QPoint(0, 0), QPoint(0, 0))
    )
    menu = QApplication.activePopupWidget()
    assert isinstance(menu, QMenu)
    assert "Move size left" in {action.text() for action in menu.actions()}
    menu.close()


def test_rows_grow_with_the_text_size(desk: Callable[[Chart], Desk], qapp: QApplication) -> None:
    at = desk(THREE)
    before = at.grid.rowHeight(1), at.grid.sizeHint().height()
    font = qapp.font()
    font.setPointSizeF(font.pointSizeF() * 2)
    qapp.setFont(font)
    qapp.processEvents()
    assert at.grid.rowHeight(1) > before[0] * 1.5
    assert at.grid.sizeHint().height() > before[1] * 1.5


def test_a_measure_is_picked_from_those_offered(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(3, 0)
    at.type("seat")
    (field,) = at.grid.findChildren(MeasureField)
    offered = field.completer().model()
    assert offered.index(0, 0).data() == "Hip (seat)"
    field.completer().activated.emit("Hip (seat)")
    assert list(texts(at.chart)) == ["bust", "waist", "hip"]


def test_one_changed_figure_leaves_the_cursor_where_it_is(desk: Callable[[Chart], Desk]) -> None:
    at = desk(THREE)
    at.go(2, 2)
    at.session.apply("Other", THREE, replace(THREE, rows=THREE.rows[::-1]))
    assert at.at() == (2, 2)
