"""What is done in the background once the window is on the screen: look the file over, load what comes next."""

from __future__ import annotations

import importlib
import threading
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

if TYPE_CHECKING:
    from sizekeeper.store.library import Library

_NEXT = ("numpy", "sizekeeper.core.fit")


class WarmUp(QObject):
    """One thread that ends by itself; `finish` waits for it.

    Signals:
        damaged(str): the file is damaged; the sentence says what to do.
    """

    damaged = Signal(str)

    def __init__(self, library: Library, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._library = library
        self._given_up = threading.Event()
        self._thread = threading.Thread(target=self._run, name="warm-up", daemon=True)

    def start(self) -> None:
        """Begin; to be called once the first picture is on the screen."""
        self._thread.start()

    def finish(self) -> None:
        """Leave out what was not begun, and wait for the rest."""
        self._given_up.set()
        if self._thread.is_alive():
            self._thread.join()

    def _run(self) -> None:
        sentence = self._library.quick_check()
        if sentence is not None:
            self.damaged.emit(sentence)
        for module in _NEXT:
            if not self._given_up.is_set():
                importlib.import_module(module)
        if not self._given_up.is_set():
            from sizekeeper.core.notation import unit_registry  # noqa: PLC0415 - heavy, and only now wanted

            unit_registry()
