"""The sizes of everybody in every pattern, each in the view that fits best.

They are worked out a few at a time so that the window never waits.
"""

from __future__ import annotations

import time
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from sizekeeper.ui.fit_source import look_up, pieces_of, view_choices
from sizekeeper.ui.overview_cell import OverviewCell, best_view, cell_of

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.ui.session import Session

Pair = tuple[str, str]
"""The ids of a person and a pattern."""
_Rests = tuple[object, ...]
"""The values a cell was made from: while none of them is replaced by another, the cell stays true."""

_SLICE_S = 0.012
"""How long the window may be kept waiting at a time: shorter than one picture of the screen; coined."""
_BREATH_MS = 1


class OverviewSizes(QObject):
    """Keeps the cells that are still true, and works out the others bit by bit, those in view first.

    Signals:
        found(object): the set of `Pair`s that have a cell now and had none.
        finished(): every cell is there.
    """

    found = Signal(object)
    finished = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._cells: dict[Pair, tuple[_Rests, OverviewCell]] = {}
        self._open: dict[Pair, _Rests] = {}
        self._views: dict[str, dict[str, str]] = {}
        self._asked = 0
        self._in_view: Callable[[], Iterable[Pair]] = tuple
        self._timer = QTimer(self)
        self._timer.setInterval(_BREATH_MS)
        self._timer.timeout.connect(self.work)

    @property
    def progress(self) -> tuple[int, int]:
        """How many cells are there, and how many are asked for."""
        return self._asked - len(self._open), self._asked

    @property
    def has_views(self) -> bool:
        """Whether any pattern asked for has several views to choose between."""
        return any(len(names) > 1 for names in self._views.values())

    def cell(self, person: str, pattern: str) -> OverviewCell | None:
        """A cell; None while it is not worked out, or not true any more."""
        pair = (person, pattern)
        return None if pair in self._open or pair not in self._cells else self._cells[pair][1]

    def look_first(self, in_view: Callable[[], Iterable[Pair]]) -> None:
        """Name what tells which cells are in view: they are worked out before all others."""
        self._in_view = in_view

    def ask(self, people: Sequence[Person], patterns: Sequence[Pattern]) -> None:
        """Ask for the cells of these people in these patterns; only those not true any more are made anew."""
        self._views = {pattern.id: view_choices(self._session, pattern) for pattern in patterns}
        rests = {pattern.id: self._rests(pattern) for pattern in patterns}
        wanted = {(who.id, what.id): (who, *rests[what.id]) for who in people for what in patterns}
        self._open = {pair: rest for pair, rest in wanted.items() if not self._is_true(pair, rest)}
        self._asked = len(wanted)
        if self._open:
            self._timer.start()
        else:
            self.stop()
            self.finished.emit()

    def stop(self) -> None:
        """Work no further; what was found is kept."""
        self._timer.stop()

    def _rests(self, pattern: Pattern) -> _Rests:
        return (pattern, pieces_of(self._session, pattern.id), *self._session.charts(pattern.id))

    def _is_true(self, pair: Pair, rests: _Rests) -> bool:
        kept = self._cells.get(pair)
        if kept is None or len(kept[0]) != len(rests):
            return False
        return all(old is new for old, new in zip(kept[0], rests, strict=True))

    def work(self) -> None:
        """Work out cells for a moment."""
        until = time.perf_counter() + _SLICE_S
        done: set[Pair] = set()
        first = [pair for pair in self._in_view() if pair in self._open]
        while self._open:
            pair = first.pop(0) if first else next(iter(self._open))
            self._make(pair)
            done.add(pair)
            if time.perf_counter() >= until:
                break
        self.found.emit(done)
        if not self._open:
            self.stop()
            self.finished.emit()

    def _make(self, pair: Pair) -> None:
        names = self._views[pair[1]]
        cells = {view: cell_of(look_up(self._session, *pair, view=view)) for view in names or {"": ""}}
        self._cells[pair] = (self._open.pop(pair), best_view(cells, names))
