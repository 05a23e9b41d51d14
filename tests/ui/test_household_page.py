from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QModelIndex, QPoint, QRect, Qt
from PySide6.QtGui import QGuiApplication
from PySide6.QtTest import QTest

from sizekeeper.core.household import standing
from sizekeeper.core.pattern import Pattern
from sizekeeper.ui import household_work, theme
from sizekeeper.ui.fit_page import FitPage
from sizekeeper.ui.household_model import KEY
from sizekeeper.ui.household_page import HouseholdPage
from sizekeeper.ui.pages import PageKind
from sizekeeper.ui.selection import Place
from sizekeeper.ui.window import MainWindow
from tests.build import chart
from tests.households import TOP, called
from tests.ui.conftest import PlainPage

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from sizekeeper.core.person import Person
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.household_cells import HouseCell
    from sizekeeper.ui.household_columns import HouseHeading
    from sizekeeper.ui.household_table import HouseTable
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

ADA = replace(called("Ada", bust="95"), groups=("Home",))
BEA = called("Bea", bust="99")
CLEO = called("Cleo", bust="105")
DRESS, SKIRT = Pattern("pattern", "Wrap dress", publisher="Quill"), Pattern("skirt", "Long skirt", garment="skirt")
HIPS = replace(chart("finished", "S M", hip="104, 112"), id="hips", pattern="skirt")


@pytest.fixture
def fill(session: Session, selection: Selection) -> Callable[..., None]:
    def fill(*values: Value) -> None:
        session.apply_all("Set up", [(None, value) for value in values])
        session.undo_stack.clear()
        selection.choose_person("ada")
        selection.choose_pattern("pattern")

    return fill


@pytest.fixture
def page(session: Session, selection: Selection, settings: Settings, qtbot: QtBot) -> HouseholdPage:
    """The page in centimetres, as large as it is in a window of 1280 by 800; to be shown."""
    settings.choose(unit="cm")
    page = HouseholdPage(session, selection, settings)
    qtbot.addWidget(page)
    page.resize(1120, 740)
    return page


@pytest.fixture
def shown(page: HouseholdPage, fill: Callable[..., None], qtbot: QtBot) -> HouseholdPage:
    """Three people against a dress, in front."""
    fill(ADA, BEA, CLEO, DRESS, TOP)
    with qtbot.waitActive(page):
        page.show()
    return page


def texts(table: HouseTable, column: int) -> dict[str, str]:
    """The texts of a column by row."""
    rows = range(table.filter.rowCount())
    return {str(table.filter.index(row, 0).data(KEY)): str(table.filter.index(row, column).data()) for row in rows}


def keys(table: HouseTable) -> list[str]:
    return [str(table.filter.index(row, 0).data(KEY)) for row in range(table.filter.rowCount())]


def cell(table: HouseTable, key: str, column: int) -> HouseCell:
    return table.filter.cell(table.filter.row_of(key), column)


def index(table: HouseTable, key: str, column: int) -> QModelIndex:
    return table.filter.index(table.filter.row_of(key), column)


def tick(table: HouseTable, key: str) -> None:
    """The keys of somebody who takes a tick away or puts it back."""
    table.words.setCurrentIndex(index(table, key, 0))
    QTest.keyClick(table.words, Qt.Key.Key_Space)


def test_everybody_has_her_best_size(shown: HouseholdPage) -> None:
    assert texts(shown.people.table, 1) == {"ada": "38", "bea": "40", "cleo": "42"}


def test_what_is_advised_is_set_strong(shown: HouseholdPage) -> None:
    assert cell(shown.people.table, "ada", 1).strong
    assert not cell(shown.people.table, "ada", 2).strong


def test_the_sizes_show_the_ease_in_bands_and_mark_what_is_to_be_cut(shown: HouseholdPage) -> None:
    cells = [cell(shown.people.table, "ada", column) for column in (8, 9, 10)]
    assert [(c.text, c.note, c.mark) for c in cells] == [("5", "close", "cut"), ("9", "easy", ""), ("13", "loose", "")]


def test_a_region_can_be_chosen_for_the_bands(shown: HouseholdPage, session: Session) -> None:
    session.apply(
        "Add waist", TOP, replace(TOP, rows=(*TOP.rows, *chart("finished", "38 40 42", waist="80, 84, 88").rows))
    )
    session.apply("Add waist", ADA, replace(called("Ada", bust="95", waist="77"), groups=("Home",)))
    box = shown.people.region
    box.setCurrentIndex(box.findData("waist"))
    box.activated.emit(box.currentIndex())
    assert [cell(shown.people.table, "ada", column).text for column in (8, 9, 10)] == ["3", "7", "11"]
    assert cell(shown.people.table, "bea", 8).text == "–"


def test_cells_say_in_words_what_they_show(shown: HouseholdPage) -> None:
    said = index(shown.people.table, "ada", 8).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "Ada, bust in 38: 5 centimetres of ease, close, to be cut"
    assert index(shown.people.table, "ada", 1).data(Qt.ItemDataRole.AccessibleTextRole) == (
        "Ada, best straight size: 38, off by 0.2 cm, advised"
    )


def test_a_heading_sorts_and_another_click_turns_the_order_round(shown: HouseholdPage) -> None:
    table = shown.people.table
    table.words.heading.sectionClicked.emit(1)
    assert keys(table) == ["ada", "bea", "cleo"]
    table.words.heading.sectionClicked.emit(1)
    assert keys(table) == ["cleo", "bea", "ada"]


@pytest.mark.parametrize("column", [4, 9])
def test_the_heading_that_sorts_has_a_sign(shown: HouseholdPage, column: int) -> None:
    table = shown.people.table
    half = table.sizes if column > 7 else table.words
    assert not signed(half.heading, column)
    table.sort_by(column, rising=True)
    assert signed(half.heading, column)


def signed(heading: HouseHeading, column: int) -> bool:
    """Whether a heading has anything of the accent's colour on it."""
    left, width = heading.sectionViewportPosition(column), heading.sectionSize(column)
    image = heading.viewport().grab(QRect(left, 0, width, heading.height())).toImage()
    accent = theme.accent(heading.palette()).rgb()
    return any(image.pixel(x, y) == accent for x in range(image.width()) for y in range(image.height()))


SIX = replace(chart("finished", "38 40 42 44 46 48", bust="100, 104, 108, 112, 116, 120"), id="six")


@pytest.mark.parametrize(("width", "bars"), [(991, (False, True)), (1600, (False, False)), (400, (True, True))])
def test_only_what_has_no_room_scrolls_sideways_and_rows_stay_level(
    page: HouseholdPage, fill: Callable[..., None], qtbot: QtBot, width: int, bars: tuple[bool, bool]
) -> None:
    far = called("Dora of the Upper Mill", bust="131.3", waist="101.3", hip="141.3", upper_arm="41.3", across_back="47")
    more = chart("finished", "38 40 42 44 46 48", waist="80, 84, 88, 92, 96, 100", hip="106, 110, 114, 118, 122, 126",
                 upper_arm="33, 34, 35, 36, 37, 38", across_back="36, 37, 38, 39, 40, 41")  # fmt: skip
    eva = called("Eva", bust="95", waist="79", hip="105", upper_arm="29", across_back="36")
    fill(far, eva, DRESS, replace(SIX, rows=(*SIX.rows, *more.rows)))
    page.resize(width, 740)
    with qtbot.waitExposed(page):
        page.show()
    table = page.people.table
    qtbot.waitUntil(lambda: not page.standings.waiting and not table.sizes.verticalScrollBar().isVisible())
    halves = table.words, table.sizes
    assert tuple(half.horizontalScrollBar().isVisible() for half in halves) == bars
    qtbot.waitUntil(lambda: len({half.viewport().height() for half in halves}) == 1)
    assert not any(half.verticalScrollBar().isVisible() for half in halves)
    columns = range(table.filter.columnCount())
    last = max(c for c in columns if not table.words.isColumnHidden(c))
    right = table.words.columnViewportPosition(last) + table.words.columnWidth(last)
    qtbot.waitUntil(lambda: bars[0] or right <= table.words.viewport().width())


def test_control_and_an_arrow_sort_by_the_column_of_the_cursor(shown: HouseholdPage) -> None:
    table = shown.people.table
    table.words.setCurrentIndex(index(table, "ada", 0))
    QTest.keyClick(table.words, Qt.Key.Key_Down, Qt.KeyboardModifier.ControlModifier)
    assert keys(table) == ["cleo", "bea", "ada"]


def test_who_cannot_be_compared_comes_last_either_way(shown: HouseholdPage, session: Session) -> None:
    session.apply("Add", None, called("Zoe"))
    table = shown.people.table
    for rising, first in ((True, "ada"), (False, "cleo")):
        table.sort_by(1, rising)
        assert (keys(table)[0], keys(table)[-1]) == (first, "zoe")
    assert cell(table, "zoe", 7).text == "Not measured yet"


def test_a_group_shows_only_its_people(shown: HouseholdPage) -> None:
    box = shown.people.group
    box.setCurrentIndex(box.findData("Home"))
    box.activated.emit(box.currentIndex())
    assert keys(shown.people.table) == ["ada"]


def test_without_groups_there_is_none_to_choose(page: HouseholdPage, fill: Callable[..., None]) -> None:
    fill(BEA, DRESS, TOP)
    page.show()
    assert page.people.group.isHidden()


def test_who_is_left_out_shares_nothing_and_stays_left_out(
    shown: HouseholdPage, session: Session, selection: Selection, settings: Settings, qtbot: QtBot
) -> None:
    tick(shown.people.table, "bea")
    assert [line.texts[0] for line in shown.people.sharing.own.lines.lines] == ["38", "42"]
    assert cell(shown.people.table, "bea", 1).text == ""
    again = HouseholdPage(session, selection, settings)
    qtbot.addWidget(again)
    again.show()
    assert texts(again.people.table, 1) == {"ada": "38", "bea": "", "cleo": "42"}
    tick(again.people.table, "bea")
    assert texts(again.people.table, 1)["bea"] == "40"


def test_the_sizes_to_trace_name_who_shares_them(shown: HouseholdPage, session: Session) -> None:
    session.apply("Add", None, called("Dora", bust="95.2"))
    assert [line.texts for line in shown.people.sharing.own.lines.lines] == [
        ("38", "Ada, Dora"), ("40", "Bea"), ("42", "Cleo"),
    ]  # fmt: skip


def test_a_way_to_share_says_what_each_must_alter(shown: HouseholdPage) -> None:
    tick(shown.people.table, "cleo")
    ways = shown.people.sharing.ways
    assert ways.lines.lines[0].texts == ("One line", "38–40 ¾ way", "2.6 cm")
    assert [line.texts for line in shown.people.sharing.alter.lines.lines] == [
        ("38–40 ¾ way", "", "", ""),
        ("Ada", "bust", "take in 2.9 cm", "2.9 cm"),
        ("Bea", "bust", "let out 11 mm", "2.2 cm"),
    ]
    ways.setCurrentIndex(ways.lines.index(1, 0))
    assert [line.texts[:2] for line in shown.people.sharing.alter.lines.lines] == [
        ("38", ""), ("Ada", "nothing to alter"), ("40", ""), ("Bea", "nothing to alter"),
    ]  # fmt: skip


def test_the_line_that_is_shared_stands_over_all_columns_of_what_to_alter(shown: HouseholdPage) -> None:
    tick(shown.people.table, "cleo")
    alter = shown.people.sharing.alter
    assert [alter.columnSpan(row, 0) for row in range(3)] == [4, 1, 1]


def test_lines_between_can_be_kept_out_of_sharing(shown: HouseholdPage) -> None:
    tick(shown.people.table, "cleo")
    shown.people.sharing.between.setChecked(False)
    assert shown.people.sharing.ways.lines.lines[0].texts[1] == "40"


def test_a_draft_is_compared_at_once_and_nobody_else_again(
    shown: HouseholdPage, session: Session, monkeypatch: pytest.MonkeyPatch
) -> None:
    asked: list[str] = []

    def count(person: Person, *args: object, **kept: object) -> object:
        asked.append(person.name)
        return standing(person, *args, **kept)  # type: ignore[arg-type]

    monkeypatch.setattr(household_work, "standing", count)
    session.draft(replace(called("Ada", bust="99"), groups=("Home",)))
    assert (asked, texts(shown.people.table, 1)["ada"]) == (["Ada"], "40")
    session.drop_draft("ada")
    assert (asked, texts(shown.people.table, 1)["ada"]) == (["Ada", "Ada"], "38")


def test_many_are_compared_little_by_little(page: HouseholdPage, fill: Callable[..., None], qtbot: QtBot) -> None:
    fill(*(called(f"P{i}", bust=str(90 + i)) for i in range(12)), DRESS, TOP)
    page.show()
    assert page.standings.waiting == 12
    assert set(texts(page.people.table, 1).values()) == {"…"}
    assert page.people.progress.text() == "Comparing: 12 to go"
    with qtbot.waitSignal(page.standings.finished):
        pass
    assert set(texts(page.people.table, 1).values()) == {"38", "40", "42"}
    qtbot.waitUntil(lambda: not page.people.resting.isActive())
    assert page.people.sharing.own.lines.rowCount() > 0


def test_a_page_that_is_left_compares_nothing_more(
    page: HouseholdPage, fill: Callable[..., None], qtbot: QtBot
) -> None:
    fill(*(called(f"P{i}", bust=str(90 + i)) for i in range(12)), DRESS, TOP)
    page.show()
    page.hide()
    assert page.standings.waiting == 0
    page.show()
    with qtbot.waitSignal(page.standings.finished):
        pass
    assert "…" not in texts(page.people.table, 1).values()
    qtbot.waitUntil(lambda: not page.people.resting.isActive())


def test_enter_goes_to_the_fit_page_for_that_person(shown: HouseholdPage, selection: Selection) -> None:
    wanted: list[Place] = []
    selection.page_wanted.connect(wanted.append)
    shown.people.table.words.setCurrentIndex(index(shown.people.table, "bea", 3))
    QTest.keyClick(shown.people.table.words, Qt.Key.Key_Return)
    assert (selection.person, wanted) == ("bea", [Place("fit", "bea", "pattern/view:")])


def test_a_click_on_a_name_goes_there_and_one_on_its_box_does_not(shown: HouseholdPage, selection: Selection) -> None:
    wanted: list[Place] = []
    selection.page_wanted.connect(wanted.append)
    words = shown.people.table.words
    box = words.visualRect(index(shown.people.table, "bea", 0))
    QTest.mouseClick(words.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(box.left() + 8, box.center().y()))
    assert wanted == []
    QTest.mouseClick(words.viewport(), Qt.MouseButton.LeftButton, pos=QPoint(box.right() - 4, box.center().y()))
    assert [place.entry for place in wanted] == ["bea"]


def test_the_keys_reach_the_sizes_in_the_row_of_the_cursor(shown: HouseholdPage) -> None:
    table = shown.people.table
    table.words.setFocus()
    table.words.setCurrentIndex(index(table, "bea", 0))
    table.sizes.setFocus()
    assert (table.key, table.sizes.currentIndex().column()) == ("bea", 8)


def test_one_person_has_a_size_in_every_pattern(shown: HouseholdPage, session: Session, settings: Settings) -> None:
    session.apply_all("Add", [(None, SKIRT), (None, HIPS)])
    shown.heading.buttons["patterns"].click()
    assert texts(shown.patterns.table, 2) == {"skirt/": "–", "pattern/": "38"}
    assert texts(shown.patterns.table, 4)["pattern/"] == "Own ease"
    assert shown.heading.what.text() == "Ada"
    assert settings.stored.value("household/way") == "patterns"


def test_each_view_has_a_row_of_its_own(shown: HouseholdPage, session: Session) -> None:
    views = replace(DRESS, views=("A", "B"))
    wide = replace(chart("finished", "38 40 42", bust="96, 100, 104"), id="b", view="B")
    session.apply_all("Add", [(DRESS, views), (None, wide)])
    shown.turn("patterns")
    assert texts(shown.patterns.table, 0) == {"pattern/": "Wrap dress, view A", "pattern/B": "Wrap dress, view B"}
    assert texts(shown.patterns.table, 2) == {"pattern/": "38", "pattern/B": "40"}


def test_the_view_chosen_is_the_one_compared(shown: HouseholdPage, session: Session) -> None:
    wide = replace(chart("finished", "38 40 42", bust="96, 100, 104"), id="b", view="B")
    session.apply_all("Add", [(DRESS, replace(DRESS, views=("A", "B"))), (None, wide)])
    shown.heading.view.setCurrentIndex(1)
    shown.heading.view.activated.emit(1)
    assert texts(shown.people.table, 1) == {"ada": "40", "bea": "42", "cleo": "42"}


def test_the_search_leaves_the_rows_in_which_every_word_stands(shown: HouseholdPage, session: Session) -> None:
    session.apply_all("Add", [(None, SKIRT), (None, HIPS)])
    shown.turn("patterns")
    shown.patterns.search.setText("quill DRESS")
    assert keys(shown.patterns.table) == ["pattern/"]
    assert shown.patterns.progress.text() == "1 of 2"
    shown.patterns.search.setText("nothing like it")
    assert keys(shown.patterns.table) == []


def test_enter_on_a_pattern_goes_to_the_fit_page_with_its_view(shown: HouseholdPage, selection: Selection) -> None:
    wanted: list[Place] = []
    selection.page_wanted.connect(wanted.append)
    shown.turn("patterns")
    table = shown.patterns.table
    table.words.setCurrentIndex(index(table, "pattern/", 1))
    QTest.keyClick(table.words, Qt.Key.Key_Return)
    assert wanted == [Place("fit", "ada", "pattern/view:")]


def test_another_person_is_marked_or_compared(shown: HouseholdPage, selection: Selection) -> None:
    selection.choose_person("cleo")
    assert shown.people.table.key == "cleo"
    shown.turn("patterns")
    assert texts(shown.patterns.table, 2) == {"pattern/": "42"}


def test_an_empty_library_says_what_to_do_first(page: HouseholdPage, session: Session) -> None:
    page.show()
    assert page.first.heading.text() == "Who is sewn for?"
    session.apply("Add", None, ADA)
    assert page.first.heading.text() == "Which patterns are there?"


def test_a_pattern_without_figures_leads_to_its_charts(page: HouseholdPage, fill: Callable[..., None]) -> None:
    fill(ADA, DRESS)
    page.show()
    assert page.first.heading.text() == "What does the envelope say?"


def test_the_comparison_is_copied_as_it_is_sorted(shown: HouseholdPage) -> None:
    shown.people.table.sort_by(0, rising=False)
    shown.copy_table()
    lines = QGuiApplication.clipboard().text().splitlines()
    assert [line.split("\t")[0] for line in lines[3:]] == ["Cleo", "Bea", "Ada"]
    shown.turn("patterns")
    shown.copy_table()
    assert "<td>Wrap dress</td>" in QGuiApplication.clipboard().mimeData().html()


def test_undo_can_come_back_to_a_person(shown: HouseholdPage) -> None:
    shown.turn("patterns")
    shown.reveal(Place("household", "bea"))
    assert (shown.way, shown.people.table.key) == ("people", "bea")


@pytest.mark.parametrize("way", ["people", "patterns"])
def test_the_page_is_painted_in_the_dark_too(shown: HouseholdPage, way: str, dark: object) -> None:
    shown.turn(way)
    assert dark
    table = shown.people.table if way == "people" else shown.patterns.table
    assert not table.grab().isNull()
    assert table.words.heading.height() < shown.height() / 4


def test_of_many_sizes_those_to_be_cut_are_in_view(page: HouseholdPage, fill: Callable[..., None]) -> None:
    sizes = " ".join(str(size) for size in range(30))
    fill(ADA, DRESS, replace(chart("finished", sizes, bust=", ".join(str(42 + 3 * i) for i in range(30))), id="many"))
    page.show()
    table = page.people.table
    cut = next(column for column in range(8, 38) if cell(table, "ada", column).mark)
    assert table.sizes.viewport().rect().contains(table.sizes.visualRect(index(table, "ada", cut)))


def test_the_fit_page_shows_the_view_that_was_compared(
    session: Session, selection: Selection, settings: Settings, fill: Callable[..., None], qtbot: QtBot
) -> None:
    wide = replace(chart("finished", "38 40 42", bust="96, 100, 104"), id="b", view="B")
    fill(ADA, replace(DRESS, views=("A", "B")), TOP, wide)
    fit = FitPage(session, selection, settings)
    qtbot.addWidget(fit)
    fit.show()
    fit.reveal(Place("fit", "ada", "pattern/view:B"))
    assert fit.found is not None
    assert fit.found.view == "B"


def test_the_menu_copies_the_comparison_of_the_page_in_front(
    session: Session, settings: Settings, fill: Callable[..., None], qtbot: QtBot
) -> None:
    fill(ADA, DRESS, TOP)
    kinds = (PageKind("fit", "Fit", PlainPage), PageKind("household", "Household", PlainPage))
    window = MainWindow(session, settings, kinds)
    qtbot.addWidget(window)
    window.turn_to("household")
    assert window.menus.copy_table.text() == "&Copy the comparison"
    window.menus.copy_table.trigger()
    copied = window.pages.page("household")
    assert isinstance(copied, PlainPage)
    assert copied.copied == 1
    window.turn_to("fit")
    assert window.menus.copy_table.text() == "&Copy the ease table"


def test_somebody_picked_at_the_left_stays_on_the_household_page(
    session: Session, settings: Settings, fill: Callable[..., None], qtbot: QtBot
) -> None:
    fill(ADA, DRESS, TOP)
    kinds = (PageKind("person", "Person", PlainPage), PageKind("household", "Household", PlainPage))
    window = MainWindow(session, settings, kinds)
    qtbot.addWidget(window)
    window.turn_to("household")
    window.sidebar.chosen.emit("ada")
    assert window.pages.front == "household"
