from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core import chart_edit as edit
from sizekeeper.ui.chart_model import ChartModel
from tests.core.written import MEASURES, chart

if TYPE_CHECKING:
    from PySide6.QtCore import QModelIndex
    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.chart import Chart

TWO = chart("38 / M, 40", bust="88, 37 3/4 in", waist="70-74, oops")


class Edits:
    """Every edit that a model asked for, each shown at once."""

    def __init__(self, model: ChartModel) -> None:
        self.model = model
        self.names: list[str] = []
        model.edited.connect(self.take)

    def take(self, name: str, after: Chart, _field: str) -> None:
        self.names.append(name)
        self.model.show(after)


@pytest.fixture
def model(qapp: object) -> ChartModel:
    return ChartModel(TWO, MEASURES)


def shown(model: ChartModel) -> list[list[str]]:
    rows, columns = range(model.rowCount()), range(model.columnCount())
    return [[str(model.index(r, c).data() or "") for c in columns] for r in rows]


def words(index: QModelIndex) -> str:
    return str(index.data(Qt.ItemDataRole.AccessibleTextRole))


def header(model: ChartModel, section: int, role: Qt.ItemDataRole = Qt.ItemDataRole.DisplayRole) -> str:
    return str(model.headerData(section, Qt.Orientation.Vertical, int(role)))


def test_the_first_row_holds_the_sizes_and_there_is_room_for_more(model: ChartModel) -> None:
    assert shown(model) == [
        ["38 / M", "40", ""],
        ["88", "37 3/4 in", ""],
        ["70-74", "oops", ""],
        ["", "", ""],
    ]
    assert [header(model, i) for i in range(4)] == ["Size", "Bust", "Waist", "Add a measure"]


def test_an_empty_chart_has_room_for_three_sizes(qapp: object) -> None:
    assert ChartModel(chart("", bust=""), MEASURES).columnCount() == 3


def test_the_model_keeps_the_rules_of_models_while_its_chart_changes(
    model: ChartModel, qtmodeltester: ModelTester
) -> None:
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]
    now = TWO
    for after in (
        edit.with_size_added(now, "42"),
        edit.with_size_added(now, "39", 1),
        edit.with_row_added(now, "hip", "", 0),
        edit.without_rows(edit.without_sizes(now, {0, 1}), {0, 1}),
        chart("1, 2, 3, 4, 5", bust="1, 2, 3, 4, 5", waist="1, 2, 3, 4, 5", hip="1, 2, 3, 4, 5"),
        chart("9", cuff="1"),
        now,
    ):
        model.show(after)
        rows = [", ".join(line[: len(after.sizes)]) for line in shown(model)[1:-1]]
        assert rows == [", ".join(cell.text for cell in row.cells) for row in after.rows]
    model.set_editable(False)
    assert (model.rowCount(), model.columnCount()) == (3, 2)


def test_one_changed_figure_is_announced_alone(model: ChartModel, qtbot: QtBot) -> None:
    with qtbot.waitSignal(model.dataChanged) as announced, qtbot.assertNotEmitted(model.modelReset):
        model.show(edit.with_cell(TWO, 1, 0, "72"))
    first, last = announced.args[0], announced.args[1]
    assert (first.row(), first.column(), last.row(), last.column()) == (2, 0, 2, 0)


@pytest.mark.parametrize(
    ("row", "column", "text", "name"),
    [
        (1, 0, "89", "Change bust 38"),
        (0, 1, "40 / L", "Rename size 40"),
        (0, 2, "42", "Add size 42"),
        (2, 2, "78", "Change waist 42"),
    ],
)
def test_what_is_typed_is_one_edit_with_a_name(model: ChartModel, row: int, column: int, text: str, name: str) -> None:
    edits = Edits(model)
    assert model.setData(model.index(row, column), text)
    assert (edits.names, model.index(row, column).data()) == ([name], text)


def test_typing_the_same_again_is_no_edit(model: ChartModel) -> None:
    edits = Edits(model)
    assert model.setData(model.index(1, 0), "88")
    assert model.setData(model.index(0, 2), " ")
    assert model.setData(model.index(1, 2), "")
    assert edits.names == []


@pytest.mark.parametrize(("column", "text"), [(1, "m"), (0, " "), (2, "38")])
def test_a_size_that_cannot_be_named_so_is_refused_in_words(
    model: ChartModel, qtbot: QtBot, column: int, text: str
) -> None:
    with qtbot.waitSignal(model.refused) as refused, qtbot.assertNotEmitted(model.edited):
        assert not model.setData(model.index(0, column), text)
    assert refused.args == [model.refusal(model.index(0, column), text)]


def test_a_text_being_typed_is_shown_and_taken_back(model: ChartModel, qtbot: QtBot) -> None:
    cell = model.index(1, 0)
    with qtbot.waitSignal(model.typed):
        model.draft(cell, "89")
    assert (cell.data(), model.chart) == ("89", TWO)
    with qtbot.waitSignal(model.typed) as typed:
        model.restore()
    assert (cell.data(), typed.args) == ("88", [None])


def test_a_bad_figure_says_why_in_its_tip(model: ChartModel) -> None:
    bad = model.index(2, 1)
    assert bad.data(Qt.ItemDataRole.ToolTipRole) == "“oops” is not a figure like 96, 37 3/4 or 86-90."


@pytest.mark.parametrize(
    ("row", "column", "spoken"),
    [
        (0, 0, "size 38 / M"),
        (0, 2, "room for another size"),
        (1, 0, "88 centimetres"),
        (1, 1, "37 and three quarters inches"),
        (2, 0, "70 centimetres to 74 centimetres"),
        (2, 1, "no figure: oops"),
        (1, 2, "empty"),
        (3, 0, "add a measure"),
    ],
)
def test_every_cell_is_spoken_in_words(model: ChartModel, row: int, column: int, spoken: str) -> None:
    assert words(model.index(row, column)) == spoken


def test_a_cell_says_which_measure_and_size_it_is_about(model: ChartModel) -> None:
    about = model.index(1, 1).data(Qt.ItemDataRole.AccessibleDescriptionRole)
    assert about == "Bust, size 40"
    assert model.headerData(0, Qt.Orientation.Horizontal) == "size 38"


def test_a_row_of_half_girths_says_so_and_shows_the_girth(model: ChartModel) -> None:
    model.show(edit.with_written_as(TWO, 0, "half"))
    assert header(model, 1) == "Bust, half"
    assert model.says(model.index(1, 0)) == "Bust 38: 2 times 88 is 176 cm around, 69 5/16 in"
    assert "count 2 times" in header(model, 1, Qt.ItemDataRole.ToolTipRole)


def test_a_figure_is_shown_in_the_other_unit_too(model: ChartModel) -> None:
    assert model.says(model.index(1, 1)) == "Bust 40: 37 3/4 in is 37 3/4 in, 95.9 cm"


def test_a_chart_to_look_at_cannot_be_typed_into(model: ChartModel) -> None:
    model.set_editable(False)
    assert not model.flags(model.index(1, 0)) & Qt.ItemFlag.ItemIsEditable
    assert not model.setData(model.index(1, 0), "90")


def test_a_cell_is_found_again_by_its_names(model: ChartModel) -> None:
    found = model.index_of("waist", "40")
    assert (found.row(), found.column()) == (2, 1)
    assert model.field(found) == "body||waist|40"
    gone = model.index_of("hip", "99")
    assert (gone.row(), gone.column()) == (0, 0)


def test_a_large_chart_shows_a_change_by_announcing_one_cell(qapp: object, qtbot: QtBot) -> None:
    labels = ", ".join(str(n) for n in range(30))
    rows = {f"m{i}": labels for i in range(15)}
    large = chart(labels, "body", **rows)  # type: ignore[arg-type]
    model = ChartModel(large, MEASURES)
    with qtbot.waitSignal(model.dataChanged) as announced:
        model.show(edit.with_cell(large, 14, 29, "77"))
    assert announced.args[0] == announced.args[1] == model.index(15, 29)
