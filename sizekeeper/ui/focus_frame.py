"""The frame of a field that has the focus: on a dark ground it is as easy to see as on a light one.

The style draws the frame in a shade of the ground of chosen text. On a dark page a dark plum would vanish, so fields
and buttons have a light one there, with dark letters on it. Lists keep the ground that the whole program has.
"""

from __future__ import annotations

from PySide6.QtCore import QEvent
from PySide6.QtGui import QColor, QPalette
from PySide6.QtWidgets import QApplication, QWidget

from sizekeeper.ui import theme

_FRAMED = ("QLineEdit", "QAbstractSpinBox", "QComboBox", "QPlainTextEdit", "QTextEdit", "QAbstractButton")
_HIGHLIGHT, _ON_IT = QPalette.ColorRole.Highlight, QPalette.ColorRole.HighlightedText


class FocusFrames(QWidget):
    """Keeps the frames in keeping with light and dark.

    Qt tells of these to windows only, so this is one, never shown.
    """

    def __init__(self) -> None:
        super().__init__()
        self._settling = False
        self.settle()

    def settle(self) -> None:
        """Give fields and buttons their colours; that they have them is news to every window, this one too."""
        own = QPalette(QApplication.palette())
        if theme.is_dark(own):
            for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
                own.setColor(group, _HIGHLIGHT, theme.PLUM_ON_DARK)
                own.setColor(group, _ON_IT, QColor("black"))
        self._settling = True
        for kind in _FRAMED:
            # Qt takes a str here, though its types ask for bytes.
            if QApplication.palette(kind) != own:  # type: ignore[call-overload]
                QApplication.setPalette(own, kind)  # type: ignore[arg-type]
        self._settling = False

    # Qt's own names from here on.

    def event(self, event: QEvent) -> bool:
        """Follow the system between light and dark."""
        if event.type() == QEvent.Type.ApplicationPaletteChange and not self._settling:
            self.settle()
        return super().event(event)


def keep_frames() -> FocusFrames:
    """The one that keeps the frames; it lives as long as the application."""
    app = QApplication.instance()
    known = getattr(app, "_focus_frames", None)
    if not isinstance(known, FocusFrames):
        known = FocusFrames()
        app._focus_frames = known  # type: ignore[union-attr]  # noqa: SLF001 - it lives as long as the application
    return known
