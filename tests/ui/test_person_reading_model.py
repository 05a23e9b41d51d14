from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING, Any

import pytest
from PySide6.QtCore import Qt

from sizekeeper.core.person import Person, Reading
from sizekeeper.core.reading_edit import read_text
from sizekeeper.ui.person_desk import PersonDesk
from sizekeeper.ui.reading_model import DAY, FIGURE, HAND, OTHER, ReadingModel

if TYPE_CHECKING:
    from collections.abc import Callable

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

MARCH, MAY, TODAY = dt.date(2026, 3, 3), dt.date(2026, 5, 1), dt.date(2026, 11, 25)


def reading(text: str, on: dt.date, measure: str = "bust") -> Reading:
    return Reading(measure, text, read_text(text, "cm")[0], on)


THREE = (reading("90", MARCH), reading("70", TODAY, "waist"), reading("37 3/4 in", TODAY), reading("91", MAY))


@pytest.fixture
def desk(session: Session, selection: Selection, settings: Settings, today: Callable[[], dt.date]) -> PersonDesk:
    session.apply("Add a person", None, Person("ada", "Ada", readings=THREE))
    selection.choose_person("ada")
    return PersonDesk(session, selection, settings, today)


@pytest.fixture
def model(desk: PersonDesk) -> ReadingModel:
    model = ReadingModel(desk)
    model.show_measure("bust")
    return model


def cells(model: ReadingModel, column: int, role: int = Qt.ItemDataRole.DisplayRole) -> list[Any]:
    return [model.index(row, column).data(role) for row in range(model.rowCount())]


def become(desk: PersonDesk, model: ReadingModel, *readings: Reading) -> None:
    person = desk.person
    assert person is not None
    desk.edit("Change bust", replace(person, readings=readings), "bust")
    model.show_measure("bust")


def test_the_readings_of_one_measure_stand_newest_first(model: ReadingModel) -> None:
    assert cells(model, FIGURE) == ["37 3/4 in", "91", "90"]


def test_a_reading_is_shown_in_the_other_unit_and_spoken_in_words(model: ReadingModel) -> None:
    assert cells(model, OTHER)[0] == "95.9 cm"  # 37.75 times 2.54 is 95.885
    assert cells(model, FIGURE, Qt.ItemDataRole.AccessibleTextRole)[0] == "37 and three quarters inches"
    assert cells(model, HAND)[0] == "with help"


def test_the_model_is_sound_while_readings_come_go_and_change(
    desk: PersonDesk,
    model: ReadingModel,
    qtmodeltester: Any,  # noqa: ANN401 - its own class is untyped
) -> None:
    qtmodeltester.check(model)
    for readings in ((), THREE, THREE[:1], (*THREE, reading("93", TODAY)), (reading("1", MARCH), *THREE)):
        become(desk, model, *readings)
        qtmodeltester.check(model)
    assert cells(model, FIGURE) == ["37 3/4 in", "91", "90", "1"]


def test_a_changed_reading_is_announced_without_a_reset(desk: PersonDesk, model: ReadingModel, qtbot: QtBot) -> None:
    with qtbot.assertNotEmitted(model.modelReset), qtbot.waitSignal(model.dataChanged):
        become(desk, model, reading("89", MARCH), *THREE[1:])
    assert cells(model, FIGURE) == ["37 3/4 in", "91", "89"]


def test_an_earlier_figure_is_corrected_in_its_cell(desk: PersonDesk, model: ReadingModel) -> None:
    assert model.setData(model.index(2, FIGURE), "88,5")
    person = desk.person
    assert person is not None
    assert person.readings == (reading("88,5", MARCH), *THREE[1:])


def test_an_empty_text_and_other_columns_do_not_correct(model: ReadingModel) -> None:
    assert not model.setData(model.index(2, FIGURE), " ")
    assert not model.setData(model.index(2, DAY), "today")
    assert not model.flags(model.index(2, DAY)) & Qt.ItemFlag.ItemIsEditable


def test_a_reading_that_is_no_length_says_so(desk: PersonDesk, model: ReadingModel) -> None:
    become(desk, model, reading("abc", TODAY))
    assert (cells(model, FIGURE), cells(model, OTHER)) == (["abc"], ["not a length"])


def test_over_what_and_the_note_stand_in_the_tip(desk: PersonDesk, model: ReadingModel) -> None:
    become(desk, model, replace(reading("90", TODAY), over="a shirt", note="in a hurry"))
    assert cells(model, DAY, Qt.ItemDataRole.ToolTipRole) == ["over a shirt, in a hurry"]
