from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.ui.household_cells import Heading, HouseCell, HouseRow, by_number, by_words
from sizekeeper.ui.household_model import KEY, HouseFilter, HouseModel

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester

HEADINGS = [Heading("Name"), Heading("Figure")]


def row(name: str, figure: float | None = None, *, ticked: bool | None = None) -> HouseRow:
    shown = HouseCell("–" if figure is None else f"{figure:g}", order=by_number(figure))
    return HouseRow(name.lower(), (HouseCell(name, order=by_words(name)), shown), ticked)


@pytest.fixture
def model(qtmodeltester: ModelTester) -> HouseModel:
    model = HouseModel()
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]
    return model


def keys(filtered: HouseFilter) -> list[str]:
    return [str(filtered.index(i, 0).data(KEY)) for i in range(filtered.rowCount())]


def test_rows_come_and_go_without_a_reset(model: HouseModel) -> None:
    model.show(HEADINGS, [row("Ada"), row("Bea")])
    resets: list[bool] = []
    model.modelReset.connect(lambda: resets.append(True))
    model.show(HEADINGS, [row("Aa"), row("Bea", 2), row("Cleo")])
    assert [one.key for one in model.rows] == ["aa", "bea", "cleo"]
    assert (model.index(1, 1).data(), resets) == ("2", [])


def test_rows_in_another_order_are_shown_in_it(model: HouseModel) -> None:
    model.show(HEADINGS, [row("Ada"), row("Bea")])
    model.show(HEADINGS, [row("Bea"), row("Ada")])
    assert [one.key for one in model.rows] == ["bea", "ada"]


def test_a_single_row_can_be_changed(model: HouseModel) -> None:
    model.show(HEADINGS, [row("Ada"), row("Bea")])
    model.change(row("Bea", 7))
    model.change(row("Nobody", 7))
    assert [model.index(i, 1).data() for i in range(2)] == ["–", "7"]


def test_what_has_no_value_comes_last_either_way(model: HouseModel) -> None:
    filtered = HouseFilter(model)
    model.show(HEADINGS, [row("None"), row("Two", 2), row("One", 1)])
    filtered.sort(1, Qt.SortOrder.AscendingOrder)
    assert keys(filtered) == ["one", "two", "none"]
    filtered.sort(1, Qt.SortOrder.DescendingOrder)
    assert keys(filtered) == ["two", "one", "none"]


def test_names_are_sorted_without_regard_to_capitals(model: HouseModel) -> None:
    filtered = HouseFilter(model)
    model.show(HEADINGS, [row("bea"), row("Ada"), row("Cleo")])
    filtered.sort(0)
    assert keys(filtered) == ["ada", "bea", "cleo"]


def test_a_tick_is_told_and_changes_nothing_by_itself(model: HouseModel) -> None:
    told: list[tuple[str, bool]] = []
    model.ticked.connect(lambda key, on: told.append((key, on)))
    model.show(HEADINGS, [row("Ada", ticked=True), row("Bea")])
    first = model.index(0, 0)
    assert model.setData(first, Qt.CheckState.Unchecked.value, Qt.ItemDataRole.CheckStateRole)
    assert (told, first.data(Qt.ItemDataRole.CheckStateRole)) == ([("ada", False)], Qt.CheckState.Checked)
    assert model.index(1, 0).data(Qt.ItemDataRole.CheckStateRole) is None
