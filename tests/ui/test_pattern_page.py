from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QFileDialog, QMenu, QWidget

from sizekeeper import assets
from sizekeeper.core.make import Make
from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Piece, Pieces
from sizekeeper.ui.pattern_page import PatternPage
from sizekeeper.ui.pattern_templates import SaveTemplate, Template, templates, with_template
from sizekeeper.ui.pattern_views import ViewDialog
from sizekeeper.ui.selection import Place
from tests.core.written import chart, sizes, texts
from tests.ui.walking import tab_from

if TYPE_CHECKING:
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

BLANK = Pattern("p", "Yoke dress")
BODY = replace(chart("38, 40", bust="88, 92", waist="70, 74"), id="b", pattern="p")
FINISHED = replace(chart("38, 40", "finished", bust="96, 100", waist="72, 73"), id="f", pattern="p")


@pytest.fixture
def page(session: Session, selection: Selection, settings: Settings, qtbot: QtBot) -> PatternPage:
    page = PatternPage(session, selection, settings)
    qtbot.addWidget(page)
    page.resize(1000, 800)
    with qtbot.waitActive(page):
        page.show()
    return page


def put(page: PatternPage, *values: Pattern | Chart) -> None:
    page._session.apply_all("Start", [(None, value) for value in values])
    page._session.undo_stack.clear()
    page._selection.choose_pattern(next(v.id for v in values if isinstance(v, Pattern)))


def type_in(qtbot: QtBot, *keys: str | Qt.Key) -> None:
    for key in [one for part in keys for one in (part if isinstance(part, str) else [part])]:
        widget = QApplication.focusWidget()
        assert widget is not None
        if isinstance(key, str):
            QTest.keyClicks(widget, key)
        else:
            QTest.keyClick(widget, key)


def saved(page: PatternPage, kind: str, view: str = "") -> Chart:
    found = [c for c in page._session.charts("p") if c.kind == kind and c.view == view]
    return found[0]


def undo_text(page: PatternPage) -> str:
    return page._session.undo_stack.undoText()


TAB, ENTER = Qt.Key.Key_Tab, Qt.Key.Key_Return


def test_without_a_pattern_the_page_says_what_to_do_first(page: PatternPage) -> None:
    assert page.add.isVisible()
    assert not page.area.isVisible()


def test_a_new_pattern_is_named_and_its_first_sizes_are_typed_without_the_mouse(
    page: PatternPage, qtbot: QtBot
) -> None:
    page.add.click()
    type_in(qtbot, "Yoke dress", ENTER, "38", TAB, "40", TAB, TAB, "88", TAB, "92", ENTER)
    pattern = page.pattern
    assert pattern is not None
    (body,) = page._session.charts(pattern.id)
    assert (pattern.title, sizes(body), texts(body)["bust"]) == ("Yoke dress", "38, 40", "88, 92")


def test_a_chart_starts_with_the_measures_of_its_garment(page: PatternPage) -> None:
    put(page, replace(BLANK, garment="skirt", child=True))
    assert [row.measure for row in page.body.chart.rows] == ["height", "waist", "hip"]
    assert [row.measure for row in page.finished.chart.rows] == ["waist", "hip", "hem", "skirt_length"]


def test_the_measures_follow_the_garment_until_a_figure_is_typed(page: PatternPage) -> None:
    put(page, BLANK)
    page.form.garment.setCurrentIndex(page.form.garment.findData("trousers"))
    page.form.garment.activated.emit(page.form.garment.currentIndex())
    assert [row.measure for row in page.body.chart.rows] == ["waist", "hip", "inseam"]
    assert page._session.charts("p") == []


def test_the_finished_chart_takes_over_the_sizes_of_the_body_chart(page: PatternPage) -> None:
    put(page, BLANK, BODY)
    assert page.finished.same_sizes.isVisible()
    page.finished.same_sizes.click()
    assert sizes(saved(page, "finished")) == "38, 40"
    assert not page.finished.same_sizes.isVisible()
    assert undo_text(page) == "Take over the body chart’s sizes"


def test_undo_takes_the_first_figure_back_and_the_chart_with_it(page: PatternPage) -> None:
    put(page, BLANK)
    page.body.model.setData(page.body.model.index(0, 0), "38")
    page._session.undo_stack.undo()
    assert page._session.charts("p") == []
    assert page.body.chart.sizes == ()


@pytest.mark.parametrize(
    ("field", "text", "changed", "name"),
    [
        ("title", "Wrap dress", {"title": "Wrap dress"}, "Change title"),
        ("publisher", " Haus  Faden ", {"publisher": "Haus Faden"}, "Change publisher"),
        ("seam_allowance", "5/8 in", {"seam_allowance": parse_length("5/8 in")}, "Change seam allowance"),
        ("drafted_height", "168", {"drafted_height": parse_length("168", "cm")}, "Change height drafted for"),
        ("drafted_difference", "5", {"drafted_difference": parse_length("5", "cm")}, "Change bust less high bust"),
        ("notes", "Needs lining", {"notes": "Needs lining"}, "Change notes"),
    ],
)
def test_a_field_is_a_draft_while_typing_and_an_edit_when_left(
    page: PatternPage, qtbot: QtBot, field: str, text: str, changed: dict[str, object], name: str
) -> None:
    put(page, BLANK)
    widget = page.form.field(field)
    assert widget is not None
    widget.setFocus()
    if field == "title":
        page.form.title.selectAll()
    type_in(qtbot, text)
    assert page._session.undo_stack.count() == 0
    page.body.grid.setFocus()
    assert page.pattern == replace(BLANK, **changed)  # type: ignore[arg-type]
    assert undo_text(page) == name


def test_spaces_typed_around_a_title_are_no_edit(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK)
    page.form.title.setFocus()
    type_in(qtbot, Qt.Key.Key_End, "  ", ENTER)
    assert (page.form.title.text(), page._session.undo_stack.count()) == ("Yoke dress", 0)
    assert page._session.value("p") == BLANK


def test_escape_restores_a_field(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK)
    page.form.title.setFocus()
    type_in(qtbot, "X", Qt.Key.Key_Escape)
    assert (page.form.title.text(), page._session.value("p")) == ("Yoke dress", BLANK)


def test_a_length_that_is_none_stays_in_its_field_and_is_explained(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK)
    page.form.lengths["seam_allowance"].setFocus()
    type_in(qtbot, "wide", ENTER)
    assert page.form.says.text() == "Seam allowance: “wide” is not a length."
    assert (page.form.lengths["seam_allowance"].text(), page.pattern) == ("wide", BLANK)
    page.form.lengths["seam_allowance"].setText("1.5")
    page.form.lengths["seam_allowance"].finish()
    assert not page.form.says.isVisible()


def test_a_knit_asks_for_its_stretch_and_tells_how_to_find_it(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK)
    assert not page.form.stretch.isVisible()
    page.form.knit.click()
    assert page.form.hint.text().endswith("Below 15 % a knit is fitted like a woven.")
    type_in(qtbot, "10 to 14", ENTER)
    assert page.pattern == replace(BLANK, fabric="knit", stretch=0.4)
    assert page.form.stretch.text() == "40"
    page.form.woven.click()
    assert page.pattern == BLANK


def test_childrens_wear_shows_its_cautions(page: PatternPage) -> None:
    put(page, BLANK)
    assert not page.form.caution.isVisible()
    page.form.child.click()
    assert "EN 14682" in page.form.caution.text()
    assert page.form.caution.isVisible()


def test_another_unit_reads_the_bare_lengths_anew_and_keeps_their_texts(page: PatternPage) -> None:
    put(page, replace(BLANK, seam_allowance=parse_length("1", "cm"), drafted_height=parse_length("168 cm")))
    page.form.inch.click()
    pattern = page.pattern
    assert pattern is not None
    assert pattern.seam_allowance == parse_length("1", "in")
    assert pattern.drafted_height == parse_length("168 cm")


def test_a_woven_smaller_than_the_body_is_said_beside_the_finished_chart(page: PatternPage) -> None:
    put(page, BLANK, BODY, FINISHED)
    assert page.finished.doubts.sentences() == [
        "Finished waist is smaller than the body in 40; a woven would not close."
    ]
    page.form.knit.click()
    page.form.stretch.setText("30")
    page.form.stretch.finish()
    assert page.finished.doubts.sentences() == []


def test_a_view_starts_as_a_copy_or_empty_and_has_its_own_figures(
    page: PatternPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(page, BLANK, BODY, FINISHED)
    dialogs = keep_dialogs(monkeypatch)
    page.views.add.click()
    dialogs[-1].field.setText("B")
    dialogs[-1].accept()
    assert texts(saved(page, "finished", "B")) == texts(FINISHED)
    assert (page.pattern, undo_text(page)) == (replace(BLANK, views=("B",)), "Add view B")
    page.finished.model.setData(page.finished.model.index(1, 0), "120")
    assert texts(saved(page, "finished", "B"))["bust"] == "120, 100"
    assert texts(saved(page, "finished"))["bust"] == "96, 100"
    page.views.add.click()
    dialogs[-1].field.setText("C")
    dialogs[-1].empty.setChecked(True)
    dialogs[-1].accept()
    assert texts(saved(page, "finished", "C")) == {"bust": ", ", "waist": ", "}


def keep_dialogs(monkeypatch: pytest.MonkeyPatch) -> list[ViewDialog]:
    kept: list[ViewDialog] = []
    ask = ViewDialog.ask

    def keep(*args: object, **named: object) -> ViewDialog:
        kept.append(ask(*args, **named))  # type: ignore[arg-type]
        return kept[-1]

    monkeypatch.setattr(ViewDialog, "ask", keep)
    return kept


def test_a_view_is_renamed_with_its_figures_and_removed_with_them(
    page: PatternPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(page, replace(BLANK, views=("B",)), BODY, FINISHED, replace(FINISHED, id="g", view="B"))
    dialogs = keep_dialogs(monkeypatch)
    page.show_view("B")
    page.views.rename.trigger()
    dialogs[-1].field.setText("Long")
    dialogs[-1].accept()
    assert (saved(page, "finished", "Long").id, undo_text(page)) == ("g", "Rename view B")
    page.views.remove.trigger()
    assert page.pattern == BLANK
    assert [c.id for c in page._session.charts("p")] == ["b", "f"]
    page._session.undo_stack.undo()
    assert saved(page, "finished", "Long").id == "g"


@pytest.mark.parametrize(
    ("name", "says"), [("", "A view needs a name."), ("b", "There is a view b already."), ("all views", "There is a")]
)
def test_a_view_needs_a_name_of_its_own(qtbot: QtBot, name: str, says: str) -> None:
    dialog = ViewDialog(["B"])
    qtbot.addWidget(dialog)
    dialog.field.setText(name)
    with qtbot.assertNotEmitted(dialog.named):
        dialog.accept()
    assert dialog.problem.text().startswith(says)


def test_undoing_a_new_view_shows_the_figures_of_all_views_again(
    page: PatternPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(page, BLANK, BODY, FINISHED)
    dialogs = keep_dialogs(monkeypatch)
    page.views.add.click()
    dialogs[-1].field.setText("B")
    dialogs[-1].accept()
    page._session.undo_stack.undo()
    assert page.finished.chart == FINISHED


def test_a_template_gives_both_charts_its_measures_as_one_step(page: PatternPage) -> None:
    put(page, BLANK, BODY)
    skirt = next(t for t in templates() if t.stem == "skirt")
    page.use_template(skirt)
    assert [row.measure for row in saved(page, "finished").rows][:3] == ["waist", "high_hip", "hip"]
    assert texts(saved(page, "body"))["bust"] == "88, 92"
    page._session.undo_stack.undo()
    assert page._session.charts("p") == [BODY]


@pytest.mark.parametrize("template", templates(), ids=lambda template: template.stem)
def test_every_template_has_measures_that_the_program_knows(template: Template) -> None:
    measures = assets.measures()
    for start in (chart("38", "body"), chart("38", "finished")):
        filled = with_template(start, template, measures)
        assert filled.rows
        assert all(row.measure in measures for row in filled.rows)


def test_a_template_keeps_figures_and_drops_empty_rows_of_others() -> None:
    skirt = next(t for t in templates() if t.stem == "skirt")
    after = with_template(chart("38", hip="94", bust="88", neck=""), skirt, assets.measures())
    assert [row.measure for row in after.rows][-1] == "bust"
    assert texts(after)["hip"] == "94"
    assert "neck" not in texts(after)


def test_a_blank_template_is_saved_where_she_wants_it(
    page: PatternPage, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(page, BLANK)
    dialogs: list[QFileDialog] = []
    ask = SaveTemplate.ask

    def keep(template: Template, kind: str, *, parent: QWidget) -> QFileDialog:
        dialogs.append(ask(template, kind, parent=parent))
        return dialogs[-1]

    monkeypatch.setattr(SaveTemplate, "ask", keep)
    page.templates.menu().aboutToShow.emit()
    saving = page.templates.menu().actions()[-1].menu()
    assert isinstance(saving, QMenu)
    action = next(a for a in saving.actions() if a.data()[0].stem == "skirt" and a.data()[1] == "csv")
    action.trigger()
    dialogs[0].fileSelected.emit(str(tmp_path / "mine.csv"))
    assert (tmp_path / "mine.csv").read_bytes() == action.data()[0].path("csv").read_bytes()
    dialogs[0].fileSelected.emit(str(tmp_path / "nowhere" / "mine.csv"))
    assert "could not be written" in page.body.line.text()
    dialogs[0].close()


def test_undo_puts_the_cursor_where_the_edit_was(page: PatternPage) -> None:
    put(page, BLANK, BODY, FINISHED)
    page.finished.model.setData(page.finished.model.index(2, 1), "80")
    page.form.title.setFocus()
    page._session.revisited.connect(lambda place, _text: page._selection.go(place))
    page._session.undo_stack.undo()
    now = page.finished.grid.current()
    assert QApplication.focusWidget() is page.finished.grid
    assert (now.row(), now.column(), now.data()) == (2, 1, "73")


def test_a_field_is_revealed_by_its_name(page: PatternPage) -> None:
    put(page, BLANK)
    page.reveal(Place("pattern", "p", "publisher"))
    assert QApplication.focusWidget() is page.form.publisher


def test_what_is_typed_in_a_cell_is_kept_when_another_pattern_is_chosen(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK, BODY)
    page._session.apply("Other", None, Pattern("q", "Other"))
    page.body.grid.setFocus()
    page.body.grid.go_to(page.body.model.index(1, 0))
    type_in(qtbot, "89")
    page._selection.choose_pattern("q")
    assert texts(saved(page, "body"))["bust"] == "89, 92"
    assert page.body.chart.sizes == ()


def test_a_page_behind_catches_up_when_it_comes_to_the_front(page: PatternPage) -> None:
    put(page, BLANK, BODY)
    page.hide()
    page._session.apply("Change", BODY, replace(BODY, rows=BODY.rows[:1]))
    page.show()
    assert list(texts(page.body.chart)) == ["bust"]


def test_every_field_and_grid_of_the_page_has_an_accessible_name(page: PatternPage) -> None:
    put(page, replace(BLANK, fabric="knit", views=("B",)), BODY, FINISHED)
    focusable = [
        w
        for w in page.findChildren(QWidget)
        if w.isVisible() and w.focusPolicy() != Qt.FocusPolicy.NoFocus and w.focusProxy() is None
    ]
    nameless = [w for w in focusable if not QAccessible.queryAccessibleInterface(w).text(QAccessible.Text.Name)]
    assert [type(w).__name__ for w in nameless] == []
    assert len(focusable) > 20


@pytest.mark.usefixtures("dark")
def test_the_page_is_drawn_in_the_dark(page: PatternPage) -> None:
    put(page, BLANK, BODY, FINISHED)
    image = page.body.grid.grab().toImage()
    assert image.pixelColor(image.width() // 2, image.height() // 4).lightness() < 128


def test_a_library_held_by_another_window_is_only_looked_at(page: PatternPage, monkeypatch: pytest.MonkeyPatch) -> None:
    put(page, BLANK, BODY)
    monkeypatch.setattr(type(page._session), "read_only", True)
    page.show_view("")
    assert page.form.title.isReadOnly()
    assert not page.body.add_size.isEnabled()
    assert (page.body.model.rowCount(), page.body.model.columnCount()) == (3, 2)
    page.templates.menu().aboutToShow.emit()
    assert [action.text() for action in page.templates.menu().actions()] == ["Save a blank template"]


def test_tab_comes_to_the_switch_before_the_charts_and_to_the_notes_behind_them(page: PatternPage) -> None:
    put(page, replace(BLANK, views=("A", "B")))
    assert tab_from(page.switch, 1) == [page.form.title]
    assert tab_from(page.body.more, 2) == [page.templates, page.body.grid]
    assert tab_from(page.finished.more, 3) == [page.views._buttons[0], page.views.add, page.finished.grid]


def test_a_view_is_renamed_and_removed_with_its_pieces_and_what_was_made_of_it_keeps_its_name(
    page: PatternPage, monkeypatch: pytest.MonkeyPatch
) -> None:
    put(page, replace(BLANK, views=("B",)), BODY, FINISHED)
    pieces = Pieces("pp", "p", (Piece("f", "Front"), Piece("k", "Skirt", view="B")))
    for value in (pieces, Make("m", "ada", "p", "B")):
        page._session.apply("Set up", None, value)
    dialogs = keep_dialogs(monkeypatch)
    page.show_view("B")
    page.views.rename.trigger()
    dialogs[-1].field.setText("Long")
    dialogs[-1].accept()
    renamed, make = page._session.committed("pp"), page._session.committed("m")
    assert isinstance(renamed, Pieces)
    assert isinstance(make, Make)
    assert ([one.view for one in renamed.pieces], make.view) == (["", "Long"], "Long")
    page.views.remove.trigger()
    removed = page._session.committed("pp")
    assert isinstance(removed, Pieces)
    assert [one.name for one in removed.pieces] == ["Front"]
    page._session.undo_stack.undo()
    assert page._session.committed("pp") == renamed
    page._session.undo_stack.undo()
    assert (page._session.committed("pp"), page._session.committed("m")) == (pieces, Make("m", "ada", "p", "B"))


def test_the_field_and_the_row_of_a_new_measure_come_into_view(page: PatternPage, qtbot: QtBot) -> None:
    put(page, BLANK, BODY, FINISHED)
    page.resize(1000, 420)
    page.area.verticalScrollBar().setValue(0)
    page.finished.actions_.add_measure.trigger()
    field = QApplication.focusWidget()
    assert field is not None
    assert field.visibleRegion().boundingRect() == field.rect()
    page.area.verticalScrollBar().setValue(0)
    type_in(qtbot, "hip", Qt.Key.Key_Return)
    grid = page.finished.grid
    assert grid.current().row() == len(page.finished.chart.rows)
    assert grid.viewport().visibleRegion().contains(grid.visualRect(grid.current()).center())
