"""The ease table's item model."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import Qt

from sizekeeper import assets
from sizekeeper.core.fit import fit
from sizekeeper.core.question import Question
from sizekeeper.reports.ease_table import ease_table
from sizekeeper.ui.ease_model import CELL, CHOSEN, EaseModel
from tests.build import body, chart
from tests.fits import BODY_CHART, CM, FINISHED, IN, dress

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.result import Fit
    from sizekeeper.core.wording import Wording

ROWS = ("bust", "waist", "hip")


def with_waist(inches: float) -> Fit:
    return fit(body("in", bust=38, waist=inches, hip=43), BODY_CHART, FINISHED, Question(), assets.ease_defaults())


def model_of(found: Fit, words: Wording = IN, measures: tuple[str, ...] = ROWS) -> EaseModel:
    model = EaseModel()
    model.set_table(ease_table(found), measures, words)
    return model


def column(model: EaseModel, label: str) -> int:
    return next(i for i, c in enumerate(model.table.columns) if c.label == label)


def test_it_is_a_sound_model_and_stays_one_while_it_changes(qtmodeltester: ModelTester) -> None:
    model = model_of(dress())
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]
    model.set_table(ease_table(with_waist(28.25)), ROWS, IN)
    model.set_table(ease_table(dress(mode="body")), ROWS, CM)
    model.set_table(ease_table(with_waist(31)), ("bust", "waist"), IN)
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]


def test_a_cell_holds_the_ease_the_printed_figure_and_the_word_of_its_band() -> None:
    model = model_of(dress())
    text = model.index(1, column(model, "40")).data(CELL)
    assert (text.amount, text.printed, text.word, text.chosen) == ("1 7/8", "29 7/8", "easy", True)


def test_the_printed_figure_is_shown_as_the_envelope_has_it() -> None:
    model = model_of(dress(), replace(CM, printed=IN.notation))
    text = model.index(1, column(model, "40")).data(CELL)
    assert (text.amount, text.printed) == ("4.8", "29 7/8")


def test_a_cell_is_spoken_in_words() -> None:
    model = model_of(dress())
    said = model.index(0, column(model, "40")).data(Qt.ItemDataRole.AccessibleTextRole)
    assert said == "Bust in 40: 2 and one eighth inches of ease, close, finished 40 and one eighth inches, chosen"


def test_a_size_that_is_too_small_says_so_instead_of_its_band() -> None:
    found = fit(body(bust=96), None, chart("finished", "38", bust="95.2"), Question(), assets.ease_defaults())
    model = model_of(found, CM, ("bust",))
    assert model.index(0, 0).data(CELL).word == "too small"
    assert "will not close, short by 8 mm" in model.said(0, 0)


def test_by_the_body_chart_a_cell_says_whether_the_chart_is_smaller_or_larger() -> None:
    model = model_of(dress(mode="body"))
    words = [model.index(0, column(model, label)).data(CELL).word for label in ("38", "40", "42")]
    assert words == ["smaller", "same", "larger"]


def test_a_column_between_sizes_is_headed_and_spoken_without_a_number_for_its_place() -> None:
    model = model_of(dress())
    heading = [model.headerData(i, Qt.Orientation.Horizontal) for i in range(model.columnCount())]
    assert "38–40 halfway" in heading
    spoken = model.headerData(1, Qt.Orientation.Horizontal, Qt.ItemDataRole.AccessibleTextRole)
    assert spoken == "between 38 and 40, halfway"


def test_the_chosen_column_is_known_in_heading_and_words() -> None:
    model = model_of(dress())
    at = column(model, "40")
    assert model.headerData(at, Qt.Orientation.Horizontal, CHOSEN) is True
    assert model.headerData(at, Qt.Orientation.Horizontal, Qt.ItemDataRole.AccessibleTextRole) == "40, chosen"


def test_rows_are_headed_by_their_region() -> None:
    assert model_of(dress()).headerData(2, Qt.Orientation.Vertical) == "Hip"


def test_one_changed_figure_touches_only_its_row(qtbot: QtBot) -> None:
    model = model_of(dress())
    with qtbot.waitSignal(model.dataChanged) as told, qtbot.assertNotEmitted(model.modelReset):
        model.set_table(ease_table(with_waist(28.25)), ROWS, IN)
    top, bottom = told.args[0], told.args[1]
    assert (top.row(), bottom.row()) == (1, 1)


def test_the_same_table_again_touches_nothing(qtbot: QtBot) -> None:
    model = model_of(dress())
    with qtbot.assertNotEmitted(model.dataChanged), qtbot.assertNotEmitted(model.modelReset):
        model.set_table(ease_table(dress()), ROWS, IN)


def test_another_unit_changes_every_text() -> None:
    model = model_of(dress())
    model.set_table(ease_table(dress()), ROWS, CM)
    assert model.index(0, column(model, "40")).data(CELL).amount == "5.4"


def test_a_row_without_a_region_is_blank() -> None:
    model = model_of(dress(), IN, (*ROWS, "thigh"))
    assert model.index(3, 0).data(CELL).amount == ""
    assert model.said(3, 0) == "Thigh in 38: no figure on the pattern"


@pytest.mark.parametrize("role", [Qt.ItemDataRole.DecorationRole, Qt.ItemDataRole.EditRole])
def test_nothing_is_made_up_for_other_roles(role: Qt.ItemDataRole) -> None:
    assert model_of(dress()).index(0, 0).data(role) is None


def test_a_filled_in_figure_is_marked() -> None:
    gaps = chart("finished", "38 40 42", bust="92, -, 100")
    found = fit(body(bust=91), None, gaps, Question(), assets.ease_defaults())
    model = model_of(found, CM, ("bust",))
    at = column(model, "40")
    assert model.index(0, at).data(CELL).printed == "~96"
    assert "filled in between its neighbours" in model.said(0, at)


def test_a_missing_figure_is_a_dash() -> None:
    found = dress(
        replace(FINISHED, rows=(*FINISHED.rows[:1], chart("finished", "38 40 42", "in", waist="-, 29, 30").rows[0]))
    )
    model = model_of(found, IN, ("bust", "waist"))
    assert model.index(1, 0).data(CELL).amount == "–"
