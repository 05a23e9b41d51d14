from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtGui import QFont, QPalette

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from PySide6.QtWidgets import QApplication
    from pytestqt.qtbot import QtBot


def shown(label: Lettering, qtbot: QtBot) -> Lettering:
    qtbot.addWidget(label)
    label.show()
    return label


def test_marks_in_a_name_stay_as_typed(qtbot: QtBot) -> None:
    label = shown(Lettering("<b>Ilse</b> & Co"), qtbot)
    assert "<b>" in label.text()
    assert label.minimumSizeHint().width() > shown(Lettering("Ilse & Co"), qtbot).minimumSizeHint().width() / 2


def test_a_heading_follows_the_text_size(qtbot: QtBot, qapp: QApplication) -> None:
    label = shown(Lettering("Fit", "title"), qtbot)
    font = QFont(qapp.font())
    font.setPointSizeF(font.pointSizeF() * 2)
    qapp.setFont(font)
    qapp.processEvents()
    assert label.font().pointSizeF() == theme.heading_font(1).pointSizeF()


def test_muted_text_follows_into_the_dark(qtbot: QtBot, qapp: QApplication, dark_palette: QPalette) -> None:
    label = shown(Lettering("helped", "muted"), qtbot)
    before = label.palette().windowText().color()
    qapp.setPalette(dark_palette)
    qapp.processEvents()
    after = label.palette().windowText().color()
    assert theme.luminance(before) < theme.luminance(after)
    assert theme.contrast(after, dark_palette.window().color()) >= 4.5


def test_plain_text_follows_into_the_dark(qtbot: QtBot, qapp: QApplication, dark_palette: QPalette) -> None:
    label = shown(Lettering("Ilse", "plain"), qtbot)
    qapp.setPalette(dark_palette)
    qapp.processEvents()
    assert label.palette().windowText().color() == dark_palette.windowText().color()


def test_a_label_can_change_its_voice(qtbot: QtBot) -> None:
    label = shown(Lettering("Saved", "note"), qtbot)
    label.speak("Not saved", "warning")
    assert (label.text(), label.voice) == ("Not saved", "warning")
    assert label.palette().windowText().color() == theme.warning_text(label.palette())


def test_a_rule_is_as_thin_as_can_be(qtbot: QtBot) -> None:
    rule = Rule()
    qtbot.addWidget(rule)
    rule.resize(50, 1)
    assert rule.sizeHint().height() == 1
    assert rule.grab().toImage().pixelColor(25, 0).name() == theme.rule_colour(rule.palette()).name()
