"""Reads something for the main window in the background: its progress can be watched and stopped."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QProgressDialog, QWidget
from shiboken6 import isValid

from sizekeeper.ui.import_reading import Reading

if TYPE_CHECKING:
    from collections.abc import Callable

_PATIENCE_MS = 500


class Waiting(QObject):
    """One reading at a time, and the windows of what was read. A kind of thing says what follows in `show_read`.

    Signals:
        told(str): something was saved or written; the sentence says what.
        trouble(str): a source cannot be read; the sentence says why.
        opened(object): the window of what was read.
    """

    told = Signal(str)
    trouble = Signal(str)
    opened = Signal(object)
    title = "Import"
    """What stands above the progress."""

    def __init__(self, window: QWidget) -> None:
        super().__init__(window)
        self._window = window
        self._progress: QProgressDialog | None = None
        self._shown: list[QWidget] = []
        self.reading: Reading | None = None

    def show_read(self, found: object) -> None:
        """Show what was read."""
        raise NotImplementedError

    def _read(self, words: str, work: Callable[[Reading], object]) -> None:
        """Read one source; after half a second its progress can be watched, and stopped."""
        self.stop()
        self.reading = Reading(work)
        self._progress = QProgressDialog(words, "Stop", 0, 0, self._window)
        self._progress.setWindowTitle(self.title)
        self._progress.setMinimumDuration(_PATIENCE_MS)
        self._progress.setAutoReset(False)
        self._progress.setValue(0)
        self._progress.canceled.connect(self.stop)
        self.reading.progressed.connect(self._on_progress)
        self.reading.done.connect(self._on_done)
        self.reading.failed.connect(self._on_failed)
        self.reading.start()

    def stop(self) -> None:
        """Stop what is being read; nothing of it is kept."""
        if self.reading is not None:
            self.reading.cancel()
        self._put_away()

    def leave(self) -> bool:
        """Close the windows; False when one stays because of what was set there."""
        return all(window.close() for window in self._shown if isValid(window) and window.isVisible())

    def finish(self) -> None:
        """The main window closes: stop every reading and wait for the threads."""
        self.stop()
        Reading.finish_all()

    def _show(self, window: QWidget) -> None:
        self._shown = [*(shown for shown in self._shown if isValid(shown)), window]
        window.show()
        self.opened.emit(window)

    def _on_progress(self, done: int, total: int) -> None:
        if self._progress is not None and total:
            self._progress.setMaximum(total)
            self._progress.setValue(min(done, total - 1))

    def _on_done(self, found: object) -> None:
        self._put_away()
        self.show_read(found)

    def _on_failed(self, sentence: str) -> None:
        self._put_away()
        self.trouble.emit(sentence)

    def _put_away(self) -> None:
        self.reading = None
        if self._progress is not None:
            self._progress.canceled.disconnect(self.stop)
            self._progress.close()
            self._progress.deleteLater()
            self._progress = None
