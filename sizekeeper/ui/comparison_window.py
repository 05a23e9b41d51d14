"""What the windows of the Compare menu have in common: their place, their paper, and how they follow edits."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QByteArray, QSize, Qt, QTimer
from PySide6.QtGui import QGuiApplication

from sizekeeper.ui import theme
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.window_place import bring_back

if TYPE_CHECKING:
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

_PAUSE_MS = 120
"""How long a window waits for the next keystroke before it compares again; coined."""
_SHARE = 0.94
"""How much of a small screen a window takes the first time; coined."""


class ComparisonWindow(PaperDialog):
    """A window of its own beside the main one. It stands where it was last, and follows what is edited.

    A subclass fills itself in `follow`. Nothing is kept of it when it is closed but its place.
    """

    def __init__(self, name: str, title: str, session: Session, settings: Settings, steps: tuple[int, int]) -> None:
        """A window that remembers its place under a name; `steps` is its first size in units of `theme.spacing`."""
        super().__init__(None, Qt.WindowType.Window)
        self._session, self._settings = session, settings
        self._place_key = f"{name}/geometry"
        self._first_size = QSize(theme.spacing(steps[0]), theme.spacing(steps[1]))
        self._pause = QTimer(self)
        self._pause.setSingleShot(True)
        self._pause.setInterval(_PAUSE_MS)
        self._pause.timeout.connect(self.follow)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle(f"{title} – Sizekeeper")
        self._restore_place()
        session.changed.connect(self._on_change)
        session.drafted.connect(self._on_change)
        settings.changed.connect(self._pause.start)

    def follow(self) -> None:
        """Compare again, as people, patterns and charts are now."""

    def _on_change(self, change: Change) -> None:
        if change.kinds & {"person", "pattern", "chart", "pieces"}:
            self._pause.start()

    def _restore_place(self) -> None:
        stored = self._settings.stored.value(self._place_key)
        if not (isinstance(stored, QByteArray) and self.restoreGeometry(stored)):
            screen = QGuiApplication.primaryScreen().availableGeometry()
            self.resize(self._first_size.boundedTo(screen.size() * _SHARE))
        bring_back(self)

    def stop(self) -> None:
        """End what is still being worked out."""
        self._pause.stop()

    # Qt's own names from here on.

    def done(self, result: int) -> None:
        """Keep the place; nothing goes on after closing."""
        self._settings.stored.setValue(self._place_key, self.saveGeometry())
        self.stop()
        super().done(result)
