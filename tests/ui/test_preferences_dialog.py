from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.notation import Notation
from sizekeeper.ui import theme
from sizekeeper.ui.preferences_dialog import PreferencesDialog

if TYPE_CHECKING:
    from PySide6.QtWidgets import QButtonGroup
    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.settings import Settings


@pytest.fixture
def dialog(settings: Settings, qtbot: QtBot) -> PreferencesDialog:
    dialog = PreferencesDialog(settings)
    qtbot.addWidget(dialog)
    dialog.open()
    return dialog


def pick(group: QButtonGroup, choice: str) -> None:
    next(button for button in group.buttons() if button.property("choice") == choice).click()


def test_choosing_inches_acts_at_once(dialog: PreferencesDialog, settings: Settings, qtbot: QtBot) -> None:
    with qtbot.waitSignal(settings.changed):
        pick(dialog.unit, "in")
    assert settings.notation_for("cm") == Notation("in", Fraction(1, 8))


def test_steps_are_chosen_for_each_unit(dialog: PreferencesDialog, settings: Settings) -> None:
    pick(dialog.inch_step, "1/16")
    pick(dialog.cm_step, "1/2")
    assert settings.notation_in("in").step == Fraction(1, 16)
    assert settings.notation_in("cm").step == Fraction(1, 2)


def test_the_sample_shows_what_a_choice_does(dialog: PreferencesDialog) -> None:
    assert "shown as 37 3/4 in" in dialog.sample.text()
    pick(dialog.unit, "cm")
    assert "shown as 95.9 cm" in dialog.sample.text()
    pick(dialog.cm_step, "1/2")
    assert "shown as 96 cm" in dialog.sample.text()


def test_the_dialog_opens_on_what_was_chosen(settings: Settings, qtbot: QtBot) -> None:
    settings.choose(unit="in", inch_step=Fraction(1, 16))
    dialog = PreferencesDialog(settings)
    qtbot.addWidget(dialog)
    groups = (dialog.unit, dialog.inch_step, dialog.cm_step)
    chosen = [button.property("choice") for group in groups if (button := group.checkedButton()) is not None]
    assert chosen == ["in", "1/16", "1/10"]


@pytest.mark.usefixtures("dark")
def test_in_the_dark_it_lies_on_paper_on_which_empty_boxes_stand_out(dialog: PreferencesDialog) -> None:
    ground = dialog.grab().toImage().pixelColor(3, 3)
    assert ground == theme.paper(dialog.palette())
    assert ground != dialog.palette().window().color()
