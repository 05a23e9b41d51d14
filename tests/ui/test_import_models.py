from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.importing.asking import asks
from sizekeeper.importing.setting import with_cell, with_cells_left_out
from sizekeeper.ui.import_grid_model import GridModel
from sizekeeper.ui.import_roles import LEGEND, at_words
from sizekeeper.ui.import_table_model import TableModel
from tests.importing.charts import BODY, after, opened

if TYPE_CHECKING:
    from pytestqt.modeltest import ModelTester

LINES = "Body measurements cm / Size S M L / Bust 82 88 94 / Waist 64 70 76"


def grid(text: str) -> GridModel:
    model = GridModel()
    reading = opened(text)
    model.show(reading, reading.sheets[0], asks(reading))
    return model


def test_the_grid_is_a_sound_model_and_stays_one(qtmodeltester: ModelTester) -> None:
    model = grid(BODY)
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]  # the plugin's own function
    other = opened(LINES)
    model.show(other, other.sheets[0], [])
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]  # the plugin's own function


def test_the_chart_is_a_sound_model_and_stays_one(qtmodeltester: ModelTester) -> None:
    model = TableModel(opened(BODY).tables[0], assets.measures())
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]  # the plugin's own function
    model.show(opened("Body (cm)|S|M / Bust|82|88 / Hip|90|96 / Waist|64|70").tables[0])
    qtmodeltester.check(model)  # type: ignore[no-untyped-call]  # the plugin's own function


def test_a_corrected_cell_says_what_was_printed() -> None:
    model, reading = grid(BODY), opened(BODY)
    model.show(after(reading, partial(with_cell, cell=("Sheet1", "B2"), text="83")), reading.sheets[0], [])
    assert model.says(1, 1) == "B2: “83”; figure; printed as “82”."


def test_a_cell_that_was_left_out_says_so() -> None:
    model, reading = grid(BODY), opened(BODY)
    model.show(after(reading, partial(with_cells_left_out, cells=[("Sheet1", "B2")])), reading.sheets[0], [])
    assert model.says(1, 1) == "B2: “82”; left out by you."


@pytest.mark.parametrize(("at", "words"), [("B3", "B3"), ("A3#1", "line 3, part 2")])
def test_cells_are_named_as_people_see_them(at: str, words: str) -> None:
    assert at_words(at) == words


def test_every_role_of_the_legend_has_a_letter_or_an_outline_of_its_own() -> None:
    looks = [(look.letter, look.style, look.width) for look in LEGEND]
    assert len(set(looks)) == len(LEGEND)


def test_typing_what_stands_there_is_no_correction() -> None:
    model, typed = grid(BODY), list[str]()
    model.typed.connect(lambda _at, text: typed.append(text))
    assert (model.setData(model.index(1, 1), "82"), typed) == (False, [])


def test_the_sheet_shown_again_keeps_its_place() -> None:
    model, reading, resets = grid(BODY), opened(BODY), list[int]()
    model.show(reading, reading.sheets[0], [])
    model.modelReset.connect(lambda: resets.append(1))
    model.show(after(reading, partial(with_cell, cell=("Sheet1", "B2"), text="83")), reading.sheets[0], [])
    assert resets == []
