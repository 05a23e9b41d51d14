from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QSettings

from sizekeeper.core.notation import Notation
from sizekeeper.ui.settings import Settings

if TYPE_CHECKING:
    from pathlib import Path

    from pytestqt.qtbot import QtBot


def test_centimetres_to_a_millimetre_are_shown_unless_chosen_otherwise(settings: Settings) -> None:
    assert settings.notation == Notation("cm", Fraction(1, 10))


def test_a_choice_is_there_the_next_time(settings: Settings, tmp_path: Path) -> None:
    settings.choose(unit="in", inch_step=Fraction(1, 16))
    settings.stored.sync()
    again = Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))
    assert again.notation == Notation("in", Fraction(1, 16))


def test_a_choice_tells_the_views(settings: Settings, qtbot: QtBot) -> None:
    with qtbot.waitSignal(settings.changed):
        settings.choose(cm_step=Fraction(1, 2))
    assert settings.notation == Notation("cm", Fraction(1, 2))


@pytest.mark.parametrize(("key", "value"), [("unit", "furlong"), ("inch_step", "1/7"), ("cm_step", "")])
def test_a_stored_value_that_makes_no_sense_is_passed_over(settings: Settings, key: str, value: str) -> None:
    settings.stored.setValue(key, value)
    assert settings.notation == Notation("cm", Fraction(1, 10))
    assert settings.notation_in("in") == Notation("in", Fraction(1, 8))
