from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QComboBox, QLineEdit, QWidget

from sizekeeper.core.learned import LEARNED, Learned
from sizekeeper.core.pattern import Pattern
from sizekeeper.ui.chart_measure_field import MeasureField
from sizekeeper.ui.import_leave_question import LeaveQuestion
from sizekeeper.ui.import_window import ImportWindow
from tests.core.written import chart, texts
from tests.importing.charts import BODY, FLAT, MISPRINT, MISSPELT, NO_KIND, NO_TABLE, NO_UNIT
from tests.ui.imports import Desk, finish

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

    from PySide6.QtGui import QPalette
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Place, Selection
    from sizekeeper.ui.session import Session

    Open = Callable[..., Desk]

TWO = "Body (cm)|S|M / Bust|82|88 /  / Finished (cm)|S|M / Bust|90|96"
DRESS = Pattern("dress", "Wrap dress")


@pytest.fixture
def desk(session: Session, selection: Selection, qtbot: QtBot) -> Iterator[Open]:
    kept: list[Desk] = []

    def open_(text: str, learned: Learned | None = None) -> Desk:
        kept.append(Desk(text, session, selection, qtbot, learned))
        return kept[-1]

    yield open_
    finish()


def patterns(session: Session) -> list[str]:
    return [pattern.title for pattern in session.patterns()]


def test_a_chart_without_questions_says_so(desk: Open) -> None:
    assert desk(BODY).window.summary.text() == "One table, no questions. Nothing is saved before you choose Save."


def test_every_cell_shows_what_it_was_taken_for(desk: Open) -> None:
    model = desk(BODY).window.sheet.model
    letters = [[model.view(r, c).look.letter for c in range(2)] for r in range(2)]
    assert letters == [["H", "S"], ["M", "F"]]


def test_figures_of_several_tables_are_told_apart_by_number(desk: Open) -> None:
    model = desk(TWO).window.sheet.model
    assert [model.view(r, 1).table for r in (1, 4)] == [1, 2]


def test_the_unit_that_is_answered_is_read_at_once(desk: Open) -> None:
    window = desk(NO_UNIT)
    window.press("in")
    assert (window.tables[0].unit, window.asked()) == ("in", [])


def test_the_kind_that_is_answered_is_read_at_once(desk: Open) -> None:
    window = desk(NO_KIND)
    window.press("Finished measurements")
    assert (window.tables[0].kind, window.asked()) == ("finished", [])


def test_flat_widths_that_are_answered_count_twice(desk: Open) -> None:
    window = desk(FLAT)
    window.press("Both are flat")
    assert window.tables[1].rows[0].cm == (96, 102, 108)


def test_a_question_leads_to_its_cell(desk: Open) -> None:
    window = desk(MISPRINT)
    window.asked()[0].place.click()
    index = window.window.sheet.grid.currentIndex()
    assert window.window.sheet.model.at(index.row(), index.column()) == "D3"


def test_a_misprint_is_corrected_where_it_stands(desk: Open) -> None:
    window = desk(MISPRINT)
    window.asked()[0].buttons[1].click()
    window.type("72")
    assert (window.figures(1), window.asked()) == (["64", "68", "72", "76", "80"], [])


def test_a_cell_is_typed_over_in_the_grid(desk: Open) -> None:
    window = desk(BODY)
    window.window.sheet.edit("Sheet1", "C2")
    window.type("89")
    assert window.figures() == ["82", "89", "94"]


def test_escape_in_a_cell_changes_nothing_and_keeps_the_window(desk: Open) -> None:
    window = desk(BODY)
    window.window.sheet.edit("Sheet1", "C2")
    window.type("89", end=False)
    focus = QApplication.focusWidget()
    assert isinstance(focus, QLineEdit)
    QTest.keyClick(focus, Qt.Key.Key_Escape)
    assert (window.figures(), window.window.isVisible()) == (["82", "88", "94"], True)


def test_delete_leaves_a_cell_out_and_delete_again_takes_it_back(desk: Open) -> None:
    window = desk(BODY)
    window.window.sheet.grid.go_to("C2")
    QTest.keyClick(window.window.sheet.grid, Qt.Key.Key_Delete)
    window.settle()
    left = window.figures()
    QTest.keyClick(window.window.sheet.grid, Qt.Key.Key_Delete)
    window.settle()
    assert (left, window.figures()) == (["82", "", "94"], ["82", "88", "94"])


def test_marked_cells_become_the_table(desk: Open) -> None:
    window = desk(TWO)
    window.window.sheet.grid.mark((3, 0, 4, 2))
    window.window.sheet.one.click()
    window.settle()
    assert [table.kind for table in window.tables] == ["finished"]


def test_looking_everywhere_again_finds_the_other_table_too(desk: Open) -> None:
    window = desk(TWO)
    window.window.sheet.grid.mark((3, 0, 4, 2))
    window.window.sheet.one.click()
    window.settle()
    window.window.sheet.everywhere.click()
    window.settle()
    assert len(window.tables) == 2


def test_a_file_without_a_table_says_how_to_show_where_it_is(desk: Open) -> None:
    window = desk(NO_TABLE).window
    assert (window.trouble.isVisible(), window.bar.save.isEnabled()) == (True, False)


def test_a_measure_is_picked_by_typing(desk: Open) -> None:
    window = desk(MISSPELT)
    window.chart_cell(1, 0)
    window.window.side.cards[0].view.edit(window.window.side.cards[0].view.currentIndex())
    assert isinstance(QApplication.focusWidget(), MeasureField)
    window.type("Hip")
    assert window.tables[0].rows[0].measure == "hip"


def test_a_size_is_typed_over_in_the_chart(desk: Open) -> None:
    window = desk(BODY)
    window.chart_cell(0, 3)
    window.type("Medium")
    assert window.tables[0].labels == ("S", "Medium", "L")


def test_a_figure_is_typed_over_in_the_chart(desk: Open) -> None:
    window = desk(BODY)
    window.chart_cell(2, 2)
    window.type("65")
    assert window.figures(1) == ["65", "70", "76"]


def test_how_a_measure_was_written_is_chosen_in_the_chart(desk: Open) -> None:
    window = desk(TWO)
    window.chart_cell(1, 1, table=1)
    card = window.window.side.cards[1]
    card.view.edit(card.view.currentIndex())
    choice = QApplication.focusWidget()
    assert isinstance(choice, QComboBox)
    choice.setCurrentIndex(choice.findData("half"))
    choice.activated.emit(choice.currentIndex())
    window.settle()
    assert window.tables[1].rows[0].cm == (180, 192)


def test_delete_on_a_measure_leaves_its_row_out(desk: Open) -> None:
    window = desk(BODY)
    window.chart_cell(1, 0)
    QTest.keyClick(window.window.side.cards[0].view, Qt.Key.Key_Delete)
    window.settle()
    assert [row.measure for row in window.tables[0].rows] == ["waist"]


def test_delete_on_a_size_leaves_its_column_out(desk: Open) -> None:
    window = desk(BODY)
    window.chart_cell(0, 4)
    QTest.keyClick(window.window.side.cards[0].view, Qt.Key.Key_Delete)
    window.settle()
    assert window.tables[0].labels == ("S", "M")


def test_a_place_in_the_chart_shows_its_cell_in_the_file(desk: Open) -> None:
    window = desk(BODY)
    window.chart_cell(2, 4)
    index = window.window.sheet.grid.currentIndex()
    assert window.window.sheet.model.at(index.row(), index.column()) == "D3"


@pytest.mark.parametrize(("which", "value"), [("kind", "finished"), ("unit", "in"), ("way", "sizes_in_rows")])
def test_kind_unit_and_direction_are_chosen_above_the_chart(desk: Open, which: str, value: str) -> None:
    window = desk(BODY)
    choice = getattr(window.window.side.cards[0], which)
    choice.setCurrentIndex(choice.findData(value))
    choice.activated.emit(choice.currentIndex())
    window.settle()
    table = window.tables[0]
    assert {"kind": table.kind, "unit": table.unit, "way": table.orientation}[which] == value


def test_a_table_that_is_not_ticked_is_not_saved(desk: Open, session: Session) -> None:
    window = desk(TWO)
    window.window.side.cards[0].taken.click()
    window.settle()
    window.save()
    assert [c.kind for c in session.charts(session.patterns()[0].id)] == ["finished"]


def test_every_correction_can_be_undone_and_redone(desk: Open) -> None:
    window = desk(NO_UNIT)
    window.press("in")
    window.window.undo.trigger()
    window.settle()
    undone = (window.tables[0].unit, len(window.asked()))
    window.window.redo.trigger()
    window.settle()
    assert (undone, window.tables[0].unit) == (("cm", 1), "in")


def test_undo_says_what_it_would_take_back(desk: Open) -> None:
    window = desk(NO_UNIT)
    window.press("in")
    assert window.window.back.accessibleName() == "Undo: “in”"


def test_nothing_is_in_the_library_before_save(desk: Open, session: Session) -> None:
    window = desk(NO_UNIT)
    window.press("cm")
    assert (session.values(), session.undo_stack.count()) == ([], 0)


def test_saving_makes_a_pattern_with_its_charts_as_one_step(desk: Open, session: Session) -> None:
    window = desk(BODY)
    window.window.bar.title.setText("Wrap skirt")
    window.window.bar.garment.setCurrentIndex(window.window.bar.garment.findData("skirt"))
    window.save()
    made = session.patterns()[0]
    assert (made.title, made.garment, [texts(c) for c in session.charts(made.id)], session.undo_stack.count()) == (
        "Wrap skirt",
        "skirt",
        [{"bust": "82, 88, 94", "waist": "64, 70, 76"}],
        1,
    )


def test_undoing_the_import_takes_all_of_it_out_again(desk: Open, session: Session) -> None:
    desk(BODY).save()
    session.undo_stack.undo()
    assert session.values() == []


def test_after_saving_the_pattern_is_shown(desk: Open, session: Session, selection: Selection) -> None:
    went: list[Place] = []
    selection.page_wanted.connect(went.append)
    desk(BODY).save()
    made = session.patterns()[0].id
    assert (selection.pattern, went[0].page, went[0].entry) == (made, "pattern", made)


def test_saving_says_where_the_charts_are(desk: Open) -> None:
    window = desk(BODY)
    window.window.bar.title.setText("Wrap skirt")
    window.save()
    assert window.saved == ["The charts of a pasted chart are in “Wrap skirt”."]


def test_a_pattern_without_a_title_cannot_be_saved(desk: Open) -> None:
    bar = desk(BODY).window.bar
    bar.title.setText("  ")
    assert (bar.save.isEnabled(), bar.hint.text()) == (False, "Give the new pattern a title.")


def test_a_title_that_is_taken_is_said_before_saving(desk: Open, session: Session) -> None:
    session.apply("Add", None, DRESS)
    bar = desk(BODY).window.bar
    bar.title.setText("wrap dress")
    assert bar.hint.text() == "There is a pattern with this title already; this makes a second one."


def fill(desk: Open, session: Session) -> Desk:
    """A window that is about to fill in the dress, whose body chart has another waist."""
    body = replace(chart("S, M, L", bust="82, 88, 94", waist="64, 71, 76"), pattern="dress")
    session.apply_all("Add", [(None, DRESS), (None, body)])
    window = desk(BODY)
    window.window.bar.into.click()
    return window


def test_filling_in_a_pattern_shows_what_changes_before_it_is_saved(desk: Open, session: Session) -> None:
    changes = fill(desk, session).window.bar.changes
    assert [changes.item(i).text() for i in range(changes.count())] == ["Body chart: Waist, size M: 71 becomes 70."]


def test_filling_in_a_pattern_changes_its_chart_and_makes_none(desk: Open, session: Session) -> None:
    fill(desk, session).save()
    assert ([texts(c)["waist"] for c in session.charts("dress")], patterns(session)) == (["64, 70, 76"], ["Wrap dress"])


def test_what_changes_is_said_anew_when_the_pattern_is_edited_meanwhile(desk: Open, session: Session) -> None:
    window = fill(desk, session)
    session.undo_stack.undo()
    assert (window.window.bar.new.isChecked(), window.window.bar.into.isEnabled()) == (True, False)


def test_a_corrected_measure_is_remembered_when_it_is_saved(desk: Open, session: Session) -> None:
    window = desk(MISSPELT)
    window.press("Yes, bust")
    said = window.window.side.memory.sentences()
    window.save()
    assert (said, session.committed(LEARNED)) == (
        ["“Busst” is read as bust. Saving remembers it for the next chart."],
        Learned(names={"busst": "bust"}),
    )


def test_a_corrected_measure_is_not_remembered_when_that_is_said(desk: Open, session: Session) -> None:
    window = desk(MISSPELT)
    window.press("Yes, bust")
    window.window.side.memory.links()[0].click()
    window.settle()
    window.save()
    assert session.committed(LEARNED) is None


def test_a_remembered_measure_can_be_forgotten_and_that_undone(desk: Open, session: Session) -> None:
    known = Learned(names={"busst": "hip"})
    session.apply("Learn", None, known)
    window = desk(MISSPELT, known)
    before = window.tables[0].rows[0].measure
    window.window.side.memory.links()[0].click()
    window.settle()
    forgotten = window.tables[0].rows[0].measure
    session.undo_stack.undo()
    window.settle()
    assert (before, forgotten, window.tables[0].rows[0].measure) == ("hip", "bust", "hip")


def test_closing_after_corrections_asks_first(desk: Open, monkeypatch: pytest.MonkeyPatch) -> None:
    window = desk(NO_UNIT)
    window.window.keeps_answers = False
    window.press("in")
    monkeypatch.setattr(LeaveQuestion, "ask", lambda _parent: False)
    window.window.bar.cancel.click()
    assert window.window.isVisible()
    window.window.keeps_answers = True


def test_closing_without_corrections_does_not_ask(desk: Open, monkeypatch: pytest.MonkeyPatch) -> None:
    asked: list[QWidget] = []
    window = desk(BODY).window
    window.keeps_answers = False
    monkeypatch.setattr(LeaveQuestion, "ask", asked.append)
    window.close()
    assert asked == []


def test_a_library_that_can_only_be_looked_at_is_said_and_nothing_saved(
    desk: Open, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(type(session), "read_only", property(lambda _self: True))
    bar = desk(BODY).window.bar
    assert (bar.save.isEnabled(), "only be looked at" in bar.hint.text()) == (False, True)


def test_many_tables_are_shown_sheet_by_sheet(session: Session, selection: Selection, qtbot: QtBot) -> None:
    from sizekeeper.importing.grid import sheet_of_texts  # noqa: PLC0415 - used here alone
    from sizekeeper.importing.opened import NOTHING_SAID, read  # noqa: PLC0415 - as above

    rows = [line.split("|") for line in BODY.split(" / ")]
    sheets = tuple(sheet_of_texts(f"Style {n}", rows) for n in range(8))
    window = ImportWindow(read("styles.xlsx", sheets, NOTHING_SAID, Learned()), session, selection)
    qtbot.addWidget(window)
    assert ([card.model.table.sheet for card in window.side.cards], window.side.more.text()) == (
        ["Style 0"],
        "7 more tables are on other sheets.",
    )
    window.sheet.go_to("Style 5", "B2")
    assert [card.model.table.sheet for card in window.side.cards] == ["Style 5"]
    finish()


def _focusable(top: QWidget) -> list[QWidget]:
    inside = [w for w in top.findChildren(QWidget) if w.focusPolicy() & Qt.FocusPolicy.TabFocus and w.isVisibleTo(top)]
    return [w for w in inside if not isinstance(w.parent(), QComboBox)]


def test_everything_that_takes_the_focus_has_a_name(desk: Open) -> None:
    window = desk(FLAT).window
    named = {w: QAccessible.queryAccessibleInterface(w).text(QAccessible.Text.Name) for w in _focusable(window)}
    assert [w for w, name in named.items() if not name] == []


def test_cells_are_spoken_in_words(desk: Open) -> None:
    window = desk(FLAT).window
    grid, table = window.sheet.model, window.side.cards[1].model
    spoken = Qt.ItemDataRole.AccessibleTextRole
    assert (grid.index(5, 0).data(spoken), table.index(1, 2).data(spoken)) == (
        "A6: “Bust”; measure; a question is open.",
        "Bust, size S: 48 cm, B6 in the file",
    )


def test_the_window_follows_the_dark_while_it_is_open(desk: Open, qapp: QApplication, dark_palette: QPalette) -> None:
    window = desk(BODY).window
    light = window.grab().toImage().pixelColor(2, 2).lightnessF()
    qapp.setPalette(dark_palette)
    qapp.processEvents()
    assert (light > 0.8, window.grab().toImage().pixelColor(2, 2).lightnessF() < 0.3) == (True, True)
