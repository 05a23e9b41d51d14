"""When the program itself is at fault: a line in the log, a calm sentence, and the work saved."""

from __future__ import annotations

import logging
import sys
import threading
from pathlib import Path
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtWidgets import QApplication, QMessageBox

if TYPE_CHECKING:
    from collections.abc import Callable
    from types import TracebackType

_log = logging.getLogger("sizekeeper")
_LOG_BYTES = 500_000


def log_file() -> Path:
    """Where the program writes down what went wrong inside it."""
    import platformdirs  # noqa: PLC0415 - only when it is asked for

    return Path(platformdirs.user_log_dir("sizekeeper", appauthor=False)) / "sizekeeper.log"


class Log:
    """The file in which is written down what went wrong; begun after the start, or when there is something to write."""

    def __init__(self, path: Path | None = None) -> None:
        """A log in a file of its own; None for the platform's own place, which is not asked for before it is needed."""
        self._path = path
        self._handler: logging.Handler | None = None

    @property
    def path(self) -> Path:
        """The file."""
        if self._path is None:
            self._path = log_file()
        return self._path

    def start(self) -> None:
        """Begin to write; a place that cannot be written is no reason not to work."""
        from logging.handlers import RotatingFileHandler  # noqa: PLC0415 - after the start, which it would slow down

        if self._handler is not None:
            return
        try:
            self.path.parent.mkdir(parents=True, exist_ok=True)
            handler = RotatingFileHandler(self.path, maxBytes=_LOG_BYTES, backupCount=1, encoding="utf-8", delay=True)
        except OSError:
            return
        handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
        _log.addHandler(handler)
        self._handler = handler

    def stop(self) -> None:
        """Close the file."""
        if self._handler is not None:
            _log.removeHandler(self._handler)
            self._handler.close()
            self._handler = None


class Mishap(QObject):
    """Takes every exception that nobody caught, from any thread, and goes on.

    Signals:
        happened(): an exception was written to the log.
    """

    happened = Signal()

    def __init__(self, log: Log, save: Callable[[], object], parent: QObject | None = None) -> None:
        """`save` is called at once, so that what was typed is in the file whatever comes next."""
        super().__init__(parent)
        self._log = log
        self._save = save
        self.box: QMessageBox | None = None
        self.happened.connect(self._speak, Qt.ConnectionType.QueuedConnection)

    def install(self) -> None:
        """Take the exceptions from now on."""
        sys.excepthook = self.take
        threading.excepthook = self._take_from_thread

    @staticmethod
    def uninstall() -> None:
        """Leave exceptions to Python again."""
        sys.excepthook = sys.__excepthook__
        threading.excepthook = threading.__excepthook__

    def take(self, kind: type[BaseException], error: BaseException, trace: TracebackType | None) -> None:
        """Write an exception down, save the work and say so once."""
        if issubclass(kind, KeyboardInterrupt):
            QApplication.quit()
            return
        self._log.start()
        _log.critical("nobody caught this", exc_info=(kind, error, trace))
        self.happened.emit()

    def _take_from_thread(self, args: threading.ExceptHookArgs) -> None:
        if args.exc_value is not None:
            self.take(args.exc_type, args.exc_value, args.exc_traceback)

    def _speak(self) -> None:
        if self.box is not None and self.box.isVisible():
            return
        saved = self._save()
        work = "Your work is saved." if saved else "Your last edits could not be saved yet: save a copy now."
        self.box = QMessageBox(QApplication.activeWindow())
        self.box.setIcon(QMessageBox.Icon.Information)
        self.box.setWindowTitle("Sizekeeper")
        self.box.setText("Something went wrong inside the program.")
        self.box.setInformativeText(f"{work} You can go on. What happened is written down in {self._log.path}.")
        self.box.open()
