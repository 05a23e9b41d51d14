from __future__ import annotations

import dataclasses
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QPoint, Qt
from PySide6.QtTest import QTest

from sizekeeper.core.pattern import Pattern
from sizekeeper.ui.drafting_window import DraftingWindow
from tests.build import chart
from tests.ui.comparing import BODY, FINISHED, LOOSE, SHIRT, TOP, charts, put, put_household
from tests.ui.naming import nameless

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings


def opened(session: Session, settings: Settings, qtbot: QtBot, pattern: str = "top") -> DraftingWindow:
    window = DraftingWindow(session, settings, pattern)
    qtbot.addWidget(window)
    return window


@pytest.fixture
def window(session: Session, settings: Settings, qtbot: QtBot) -> DraftingWindow:
    """The top against the shirt."""
    put_household(session)
    return opened(session, settings, qtbot)


def houses() -> list[Value]:
    """Two publishers: Moorhen with two tops, a knit top and a skirt, Tarn with one top."""
    other = Pattern("other", "Other top", "Moorhen", garment="top")
    knit = Pattern("knit", "Knit top", "Moorhen", garment="top", fabric="knit", stretch=0.3)
    skirt = Pattern("skirt", "Skirt", "Moorhen", garment="skirt")
    own = (charts(TOP, BODY, FINISHED), charts(other, BODY, LOOSE), charts(knit, BODY), charts(skirt, BODY))
    return [*(value for values in own for value in values), *charts(SHIRT, BODY, LOOSE)]


def by_publisher(window: DraftingWindow, kind: str) -> None:
    window.what.choose(("publishers", ""))
    window.kind.setCurrentIndex(window.kind.findText(kind))


def test_the_main_difference_is_said_first(window: DraftingWindow) -> None:
    assert window.sentence.text() == "Aster top allows 2 cm less ease at the bust than Bryony shirt, in every size."


def test_there_is_a_plot_for_each_region(window: DraftingWindow) -> None:
    window.topics.setCurrentIndex(1)
    assert [plot.panel.subject for plot in window.board.plots] == ["bust", "waist", "hip"]


def test_swapping_turns_the_sentence_round(window: DraftingWindow) -> None:
    window.swap.click()
    assert window.sentence.text().startswith("Bryony shirt allows 2 cm more ease")


def test_the_keys_read_a_plot_from_size_to_size(window: DraftingWindow) -> None:
    plot = window.board.plots[0]
    plot.read(0)
    QTest.keyClick(plot, Qt.Key.Key_Right)
    assert plot.said == "Bust at 40 (bust 92 cm): Aster top 5 cm, Bryony shirt 7 cm"
    QTest.keyClick(plot, Qt.Key.Key_End)
    assert plot.accessibleDescription().startswith("Bust at 42")
    QTest.keyClick(plot, Qt.Key.Key_Right)
    assert plot.said.startswith("Bust at 42")
    QTest.keyClick(plot, Qt.Key.Key_Home)
    assert plot.said.startswith("Bust at 38")


def test_the_mouse_reads_the_size_that_lies_nearest(window: DraftingWindow) -> None:
    window.show()
    plot = window.board.plots[0]
    scale, _ = plot._scale()
    QTest.mouseMove(plot, QPoint(round(scale.x(92.4)), 50))
    assert plot.said.startswith("Bust at 40")


def test_a_plot_is_summed_up_in_its_name(window: DraftingWindow) -> None:
    name = window.board.plots[0].accessibleName()
    assert name == "Bust. Aster top: 5 cm from 38 to 42. Bryony shirt: 7 cm from 38 to 42."


def test_both_lines_are_drawn_in_their_colours(window: DraftingWindow) -> None:
    window.show()
    image = window.board.plots[0].grab().toImage()
    seen = {image.pixelColor(x, y).name() for x in range(image.width()) for y in range(image.height())}
    assert {"#5f2352", "#a9770f"} <= seen


def test_the_table_has_the_same_figures(window: DraftingWindow) -> None:
    model = window.table.figures
    rows = [[model.index(r, c).data() for c in range(model.columnCount())] for r in range(model.rowCount())]
    assert rows == [
        ["38 (bust 88 cm)", "5", "7"],
        ["40 (bust 92 cm)", "5", "7"],
        ["42 (bust 96 cm)", "5", "7"],
    ]


def test_the_tables_columns_are_told_apart_by_sign_and_by_name(window: DraftingWindow) -> None:
    model, across = window.table.figures, Qt.Orientation.Horizontal
    assert [model.headerData(i, across) for i in (1, 2)] == ["Bust ●", "Bust ◇"]
    spoken = [model.headerData(i, across, Qt.ItemDataRole.AccessibleTextRole) for i in (1, 2)]
    assert spoken == ["Bust, Aster top", "Bust, Bryony shirt"]


def test_a_cell_of_the_table_is_spoken_in_words(window: DraftingWindow) -> None:
    said = window.table.figures.index(0, 2).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "Bust, Bryony shirt, 38 (bust 88 cm): 7 centimetres"


def test_the_table_takes_the_place_of_the_plots(window: DraftingWindow) -> None:
    window.as_table.setChecked(True)
    assert (window.table.isVisibleTo(window), window.board.isVisibleTo(window)) == (True, False)


def test_sizes_can_be_lined_up_by_name(window: DraftingWindow) -> None:
    window.along.setCurrentIndex(window.along.findText("Size label"))
    assert window.table.figures.index(0, 0).data() == "38"
    window.right.setCurrentIndex(0)
    window.right.setCurrentIndex(1)
    assert window.along.currentText() == "Size label"


def test_all_patterns_of_a_publisher_and_a_kind_are_one_side(
    session: Session, settings: Settings, qtbot: QtBot
) -> None:
    put(session, *houses())
    window = opened(session, settings, qtbot)
    by_publisher(window, "Top")
    # Moorhen allows 5 and 7, so 6; Tarn 7.
    assert window.sentence.text() == "Moorhen allows 1 cm less ease at the bust than Tarn, in every size."
    assert "Moorhen (2 patterns)" in window.legend.accessibleName()


def test_knits_are_a_kind_of_their_own(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, *houses())
    window = opened(session, settings, qtbot)
    assert [window.kind.itemText(i) for i in range(window.kind.count())] == ["Top", "Skirt", "Knit top"]


def test_a_kind_that_only_one_publisher_has_says_what_is_needed(
    session: Session, settings: Settings, qtbot: QtBot
) -> None:
    put(session, *houses())
    window = opened(session, settings, qtbot)
    by_publisher(window, "Skirt")
    assert window.sentence.text().startswith("Two publishers with charted patterns of this kind are needed.")
    assert window.board.plots == []


def test_publishers_begin_with_a_kind_that_two_of_them_have(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, *houses())
    window = opened(session, settings, qtbot, pattern="skirt")
    window.what.choose(("publishers", ""))
    assert (window.kind.currentText(), window.compared is not None) == ("Top", True)


def test_a_publisher_can_be_compared_by_the_kind_of_the_chosen_pattern(
    session: Session, settings: Settings, qtbot: QtBot
) -> None:
    put(session, *houses())
    window = opened(session, settings, qtbot, "skirt")
    assert window.kind.currentText() == "Skirt"


def test_a_pattern_without_figures_is_not_offered(session: Session, settings: Settings, qtbot: QtBot) -> None:
    put(session, TOP, *charts(SHIRT, BODY, chart("finished", "38 40", bust="-, -")))
    window = opened(session, settings, qtbot)
    assert [window.left.itemText(i) for i in range(window.left.count())] == ["Bryony shirt"]
    assert window.sentence.text().startswith("Two patterns with figures in their charts are needed.")


def test_the_same_pattern_twice_asks_for_another(window: DraftingWindow) -> None:
    window.right.choose(window.left.chosen)
    assert window.sentence.text() == "Choose two different patterns."


def test_an_edited_chart_is_followed(window: DraftingWindow, session: Session, qtbot: QtBot) -> None:
    before = charts(TOP, FINISHED)[1]
    after = dataclasses.replace(LOOSE, id=before.id, pattern="top")
    session.apply("Change chart", before, after)
    qtbot.waitUntil(lambda: window.sentence.text() == "Much the same at the bust.")


def test_a_plot_that_is_read_stays_when_figures_change(window: DraftingWindow, session: Session, qtbot: QtBot) -> None:
    plot = window.board.plots[0]
    plot.read(1)
    before = charts(TOP, FINISHED)[1]
    session.apply("Change chart", before, dataclasses.replace(LOOSE, id=before.id, pattern="top"))
    qtbot.waitUntil(lambda: plot.said == "Bust at 40 (bust 92 cm): Aster top 7 cm, Bryony shirt 7 cm")
    assert window.board.plots[0] is plot


def test_inches_are_shown_when_they_are_preferred(window: DraftingWindow, settings: Settings, qtbot: QtBot) -> None:
    settings.choose(unit="in")
    qtbot.waitUntil(lambda: "3/4 in less ease" in window.sentence.text())


def test_everything_has_a_name(window: DraftingWindow) -> None:
    assert nameless(window) == []


def test_the_tables_model_is_sound_before_and_after_it_changes(
    window: DraftingWindow, qtmodeltester: ModelTester
) -> None:
    qtmodeltester.check(window.table.figures)  # type: ignore[no-untyped-call]
    window.topics.setCurrentIndex(3)
    qtmodeltester.check(window.table.figures)  # type: ignore[no-untyped-call]
