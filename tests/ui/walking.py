"""Going through the window with Tab."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication, QWidget


def tab_from(start: QWidget, times: int) -> list[QWidget | None]:
    """The widgets that have the focus one after the other as Tab is pressed so many times."""
    start.setFocus(Qt.FocusReason.TabFocusReason)
    seen: list[QWidget | None] = []
    for _ in range(times):
        here = QApplication.focusWidget()
        assert here is not None
        QTest.keyClick(here, Qt.Key.Key_Tab)
        seen.append(QApplication.focusWidget())
    return seen
