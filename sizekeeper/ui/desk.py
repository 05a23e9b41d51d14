"""Opens libraries: one at a time, each in a window of its own that takes the place of the one before."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Qt, QTimer, Signal

from sizekeeper.errors import SizekeeperError
from sizekeeper.store.library import Library
from sizekeeper.store.place import default_path
from sizekeeper.store.writer import Writer
from sizekeeper.ui.own_library import keep_own, own_path
from sizekeeper.ui.pages import PAGES, PageKind
from sizekeeper.ui.session import Session
from sizekeeper.ui.warm_up import WarmUp
from sizekeeper.ui.window import MainWindow

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from sizekeeper.store.codec import Value
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.trouble_dialog import TroubleDialog

DEMO_WORDS = "This is the demo household, in a file of its own: try anything. Your own library is not touched."

_FIRST = ("person", "pattern")
"""The kinds of entries that the first picture shows; charts, pieces and makes are read right after it."""

_SOON_MS = 250
"""How long after the first picture the other pages are made; coined."""


def demo_path() -> Path:
    """The demo household's own library, beside the default one."""
    return default_path().with_name("Demo household.sizekeeper")


def _now() -> dt.datetime:
    return dt.datetime.now().astimezone()


def _demo_values() -> Sequence[Value]:
    from sizekeeper.demo import demo_values  # noqa: PLC0415 - reads files, and only the first time
    from sizekeeper.store.codec import new_id  # noqa: PLC0415 - as above

    return demo_values(new_id)


class Desk(QObject):
    """The library in front, with its writer, its window and what runs in the background for it.

    Signals:
        settled(): the first picture of a window is on the screen; what only slows the start can be done now.
    """

    settled = Signal()

    def __init__(
        self,
        settings: Settings,
        *,
        kinds: Sequence[PageKind] = PAGES,
        now: Callable[[], dt.datetime] = _now,
        demo: Callable[[], Sequence[Value]] = _demo_values,
        parent: QObject | None = None,
    ) -> None:
        super().__init__(parent)
        self._settings = settings
        self._kinds = kinds
        self._now = now
        self._demo = demo
        self._warm_up: WarmUp | None = None
        self._soon = QTimer(self)
        self._soon.setInterval(_SOON_MS)
        self._soon.timeout.connect(self._prepare_pages)
        self.opened_once = False
        self.window: MainWindow | None = None
        self.trouble: TroubleDialog | None = None

    def own_path(self) -> Path:
        """The user's own library: the one opened or made last by choice, else the one in the default place."""
        return own_path(self._settings.stored)

    def open_own(self) -> bool:
        """Open the user's own library; the first time it is made."""
        return self.open(self.own_path())

    def open_chosen(self, path: Path) -> bool:
        """Open a library that the user picked, and take it for her own from now on; the demo never becomes that."""
        opened = self.open(path)
        if opened and path.resolve() != demo_path().resolve():
            keep_own(self._settings.stored, path)
        return opened

    def open_demo(self) -> bool:
        """Open the demo household, put in place the first time; what was changed in it stays from then on."""
        path = demo_path()
        try:
            with Library.open(path, now=self._now) as library:
                if not library.read_only and library.generation == 0:
                    library.save("Set up the demo household", [(None, value) for value in self._demo()])
        except SizekeeperError as error:
            self._say(str(error), path)
            return False
        return self.open(path)

    def open(self, path: Path) -> bool:
        """Open a library in place of the one that is open; False, with the reason said, when it cannot be opened."""
        old = self.window
        if old is not None and old.session.writer.library.path == path.expanduser().resolve():
            return True
        try:
            library = Library.open(path, now=self._now)
        except SizekeeperError as error:
            self._say(str(error), path)
            return False
        writer = Writer(library)
        try:
            session = Session(writer, first=_FIRST)
        except SizekeeperError as error:
            writer.close()
            library.close()
            self._say(str(error), path)
            return False
        if old is not None and not old.close():
            writer.close()
            library.close()
            return False
        self._show(session)
        return True

    def _show(self, session: Session) -> None:
        window = MainWindow(session, self._settings, self._kinds)
        session.setParent(window)
        window.library.own.setEnabled(session.writer.library.path != self.own_path().resolve())
        window.library.library_wanted.connect(self.open_chosen)
        window.library.demo_wanted.connect(self.open_demo)
        window.library.own_wanted.connect(self.open_own)
        window.closed.connect(self._put_away)
        window.unreadable.connect(self._give_back)
        window.painted.connect(self._settle_in, Qt.ConnectionType.QueuedConnection)
        self.window = window
        self.opened_once = True
        self._warm_up = WarmUp(session.writer.library, self)
        self._warm_up.damaged.connect(window.notice.say)
        if session.writer.library.path == demo_path().resolve() and not session.read_only:
            window.notice.say(DEMO_WORDS, window.library.own, closable=True)
        window.show()
        if self.trouble is not None:
            self.trouble.close()

    def _settle_in(self) -> None:
        """After the first picture: look the file over in the background, and make the pages not shown yet."""
        if self._warm_up is not None:
            self._warm_up.start()
        self._soon.start()
        self.settled.emit()

    def _prepare_pages(self) -> None:
        """Make one more page, unless somebody is typing just now."""
        if self.window is not None and self.window.session.drafting:
            return
        if self.window is None or not self.window.pages_in_front or not self.window.pages.prepare_one():
            self._soon.stop()

    def _give_back(self, sentence: str) -> None:
        """A library was shown that cannot be read as a whole: close it as it was found, and say why."""
        if self.window is None:
            return
        self._explain(sentence, self.window.session.writer.library.path)  # first: the last window ends the program
        self.window.close()

    def _put_away(self) -> None:
        """The window was closed: end what belongs to it."""
        self._soon.stop()
        window, self.window = self.window, None
        if self._warm_up is not None:
            self._warm_up.finish()
            self._warm_up.deleteLater()
            self._warm_up = None
        if window is not None:
            window.session.writer.close()
            window.session.writer.library.close()
            window.deleteLater()

    def close(self) -> None:
        """End everything, whatever is still open."""
        self._put_away()
        if self.trouble is not None:
            self.trouble.deleteLater()
            self.trouble = None

    def flush(self) -> bool:
        """Save all that was edited; whether everything is in the file."""
        return self.window is None or self.window.session.writer.flush(_PATIENCE_S)

    def _say(self, sentence: str, path: Path) -> None:
        """Say why a library could not be opened: in the window, or, when there is none, in a dialog of its own."""
        if self.window is not None:
            self.window.notice.say(sentence, closable=True)
        else:
            self._explain(sentence, path)

    def _explain(self, sentence: str, path: Path) -> None:
        if self.trouble is None:
            from sizekeeper.ui.trouble_dialog import TroubleDialog  # noqa: PLC0415 - seldom wanted

            self.trouble = TroubleDialog()
            self.trouble.library_wanted.connect(self.open_chosen)
            self.trouble.demo_wanted.connect(self.open_demo)
        self.trouble.explain(sentence, path)
        self.trouble.open()


_PATIENCE_S = 5.0
"""How long the program waits for the disk before it says that something is not saved; coined."""
