"""A tick box beside a name of any length."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.ui.name_box import NameBox

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot

LONG = "Bodice front, upper side panel, left, with the welt pocket, view B"


@pytest.fixture
def box(qtbot: QtBot) -> NameBox:
    box = NameBox(LONG)
    qtbot.addWidget(box)
    box.setFixedWidth(200)
    box.show()
    return box


def test_of_a_name_longer_than_its_room_the_middle_is_left_out_and_the_tool_tip_tells_it(box: NameBox) -> None:
    assert box.text().startswith("Bodice")
    assert box.text().endswith("B")
    assert len(box.text()) < len(LONG)
    assert (box.toolTip(), box.accessibleName(), box.name) == (LONG, LONG, LONG)
    assert box.fontMetrics().horizontalAdvance(box.text()) < 200


def test_where_there_is_room_the_whole_name_is_shown(box: NameBox) -> None:
    box.setFixedWidth(2000)
    assert (box.text(), box.toolTip()) == (LONG, "")


def test_a_mark_in_a_name_stays_as_it_was_typed(box: NameBox) -> None:
    box.show_name("Cuff & tab")
    assert (box.text(), box.toolTip()) == ("Cuff && tab", "")
