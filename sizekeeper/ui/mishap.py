"""When the program itself is at fault: a line in the log, a calm sentence, and the work saved."""

from __future__ import annotations

import logging
import logging.handlers
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


def start_log(path: Path) -> logging.Handler | None:
    """Begin to write the log; None when its place cannot be written, which is no reason not to work."""
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        handler = logging.handlers.RotatingFileHandler(path, maxBytes=_LOG_BYTES, backupCount=1, encoding="utf-8")
    except OSError:
        return None
    handler.setFormatter(logging.Formatter("%(asctime)s %(levelname)s %(name)s: %(message)s"))
    _log.addHandler(handler)
    return handler


def stop_log(handler: logging.Handler | None) -> None:
    """Close the log."""
    if handler is not None:
        _log.removeHandler(handler)
        handler.close()


class Mishap(QObject):
    """Takes every exception that nobody caught, from any thread, and goes on.

    Signals:
        happened(): an exception was written to the log.
    """

    happened = Signal()

    def __init__(self, log: Path, save: Callable[[], object], parent: QObject | None = None) -> None:
        """`save` is called at once, so that what was typed is in the file whatever comes next."""
        super().__init__(parent)
        self._where = log
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
        self.box.setInformativeText(f"{work} You can go on. What happened is written down in {self._where}.")
        self.box.open()
