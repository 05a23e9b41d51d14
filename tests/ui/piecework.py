"""A pattern with pieces for tests of the window, put into a session in one line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtTest import QTest
from PySide6.QtWidgets import QApplication

from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Across, Along, Piece, Pieces
from sizekeeper.ui.pattern_page import PatternPage
from sizekeeper.ui.pieces_switch import PIECES

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget
    from pytestqt.qtbot import QtBot

    from sizekeeper.core.piece import Chain, Level
    from sizekeeper.store.codec import Value
    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

DRESS = Pattern("p", "Yoke dress", seam_allowance=parse_length("1.5", "cm"))
FRONT = Piece("f", "Front", 1, on_fold=True, role="front", levels=("neck", "bust", "waist"), line=True, dart=True)
BACK = Piece("b", "Back", 2, role="back", levels=("neck", "bust", "waist"))
SLEEVE = Piece("s", "Sleeve", 2, role="sleeve", levels=("sleeve", "wrist"))


def wide(level: Level, text: str, allowances: int = 0) -> Across:
    """A width at a level, in cm."""
    return Across(level, parse_length(text, "cm"), allowances)


def long(chain: Chain, text: str, allowances: int = 0) -> Along:
    """A length in a chain, in cm."""
    return Along(chain, parse_length(text, "cm"), allowances)


def pieces_of(*pieces: Piece) -> Pieces:
    """The pieces of the dress."""
    return Pieces("pp", "p", pieces)


def settle(session: Session, selection: Selection, *values: Value) -> None:
    """Put a pattern, its pieces and charts into the library, and select it."""
    session.apply_all("Set up", [(None, value) for value in values])
    session.undo_stack.clear()
    selection.choose_pattern(next(value.id for value in values if isinstance(value, Pattern)))


def in_front(qtbot: QtBot, session: Session, selection: Selection, settings: Settings) -> PatternPage:
    """The Pattern page in front, with its pieces shown, in centimetres."""
    settings.choose(unit="cm")
    page = PatternPage(session, selection, settings)
    qtbot.addWidget(page)
    page.resize(1100, 740)
    with qtbot.waitActive(page):
        page.show()
    page.switch.setCurrentIndex(PIECES)
    return page


def saved(session: Session) -> Pieces:
    """The pieces as they stand."""
    (found,) = [value for value in session.values() if isinstance(value, Pieces)]
    return found


def type_into(widget: QWidget, text: str, *keys: Qt.Key) -> None:
    """Put the cursor into a field, type over what is there, then press keys: Enter where none are given."""
    widget.setFocus(Qt.FocusReason.TabFocusReason)
    QTest.keyClicks(widget, text)
    for key in keys or (Qt.Key.Key_Return,):
        at = QApplication.focusWidget()
        assert at is not None
        QTest.keyClick(at, key)
