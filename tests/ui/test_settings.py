from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from PySide6.QtCore import QLocale, QSettings

from sizekeeper.core.notation import Notation
from sizekeeper.ui.settings import Settings

if TYPE_CHECKING:
    from pathlib import Path

    from pytestqt.qtbot import QtBot


def test_lengths_are_shown_as_each_person_is_measured_unless_chosen_otherwise(settings: Settings) -> None:
    assert settings.shown_unit == "own"
    assert settings.notation_for("cm") == Notation("cm", Fraction(1, 10))
    assert settings.notation_for("in") == Notation("in", Fraction(1, 8))


def test_one_unit_can_be_shown_for_everybody(settings: Settings) -> None:
    settings.choose(unit="in")
    assert settings.notation_for("cm") == Notation("in", Fraction(1, 8))
    assert settings.unit == "in"


@pytest.mark.parametrize(("country", "unit"), [("de_DE", "cm"), ("en_US", "in")])
def test_somebody_new_is_measured_as_is_usual_in_the_country(
    settings: Settings, country: str, unit: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    system = QLocale(country).measurementSystem()
    monkeypatch.setattr(QLocale, "measurementSystem", lambda _self: system)
    assert settings.unit == unit


def test_a_choice_is_there_the_next_time(settings: Settings, tmp_path: Path) -> None:
    settings.choose(unit="in", inch_step=Fraction(1, 16))
    settings.stored.sync()
    again = Settings(QSettings(str(tmp_path / "settings.ini"), QSettings.Format.IniFormat))
    assert again.notation_for("cm") == Notation("in", Fraction(1, 16))


def test_a_choice_tells_the_views(settings: Settings, qtbot: QtBot) -> None:
    with qtbot.waitSignal(settings.changed):
        settings.choose(cm_step=Fraction(1, 2))
    assert settings.notation_in("cm") == Notation("cm", Fraction(1, 2))


@pytest.mark.parametrize(("key", "value"), [("unit", "furlong"), ("inch_step", "1/7"), ("cm_step", "")])
def test_a_stored_value_that_makes_no_sense_is_passed_over(settings: Settings, key: str, value: str) -> None:
    settings.stored.setValue(key, value)
    assert settings.shown_unit == "own"
    assert settings.notation_in("cm") == Notation("cm", Fraction(1, 10))
    assert settings.notation_in("in") == Notation("in", Fraction(1, 8))
