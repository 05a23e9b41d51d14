"""Compares many pairs of people and patterns without holding up the window, and keeps what no edit has touched."""

from __future__ import annotations

import time
from collections import OrderedDict
from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, QTimer, Signal

from sizekeeper import assets
from sizekeeper.core.household import Envelope, Standing, standing
from sizekeeper.core.person import Person

if TYPE_CHECKING:
    from collections.abc import Sequence

Key = tuple[str, str, str]
"""The ids of a person and a pattern, and the view."""

AT_ONCE = 4
"""So many comparisons are made before the page is painted again; more are made little by little (coined)."""
_SLICE_S = 0.012
"""How long one turn may take: a keystroke that falls into it is still answered within two pictures (coined)."""
_KEPT = 1500
"""How many comparisons are kept; each holds some thousands of figures (coined)."""


@dataclass(frozen=True, slots=True)
class Pair:
    """A person and a pattern to compare."""

    person: Person
    envelope: Envelope

    @property
    def key(self) -> Key:
        """What the pair is called."""
        return self.person.id, self.envelope.pattern.id, self.envelope.view

    def same(self, other: Pair) -> bool:
        """Whether nothing was edited: the very same values, so that nothing has to be looked through.

        Only the pieces of a view are picked out anew each time; they are still the very same pieces.
        """
        one, two = self.envelope, other.envelope
        return (
            self.person is other.person
            and one.pattern is two.pattern
            and one.body is two.body
            and one.finished is two.finished
            and one.pieces == two.pieces
        )


class Standings(QObject):
    """The comparisons asked for: those that are there at once, the others as they come.

    Signals:
        came(object): the keys of comparisons that are there now.
        finished(): all that were asked for are there.
    """

    came = Signal(object)
    finished = Signal()

    def __init__(self, parent: QObject | None = None) -> None:
        """Nothing is asked for."""
        super().__init__(parent)
        self._known: OrderedDict[Key, tuple[Pair, Standing]] = OrderedDict()
        self._waiting: list[Pair] = []
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self.work_on)

    @property
    def waiting(self) -> int:
        """How many comparisons are still to be made."""
        return len(self._waiting)

    def ask(self, pairs: Sequence[Pair]) -> None:
        """Ask for these comparisons and no others; a few that are missing are made at once."""
        missing = [pair for pair in pairs if not self._is_fresh(pair)]
        if len(missing) <= AT_ONCE:
            for pair in missing:
                self._make(pair)
            missing = []
        self._waiting = missing[::-1]
        if missing:
            self._timer.start()
        else:
            self._timer.stop()

    def get(self, key: Key) -> Standing | None:
        """A comparison, as last made; None while it never was."""
        if key not in self._known:
            return None
        self._known.move_to_end(key)
        return self._known[key][1]

    def rest(self) -> None:
        """Leave off until the next asking."""
        self._waiting = []
        self._timer.stop()

    def work_on(self) -> None:
        """Make as many comparisons as there is time for."""
        made: list[Key] = []
        until = time.perf_counter() + _SLICE_S
        while self._waiting and (not made or time.perf_counter() < until):
            pair = self._waiting.pop()
            self._make(pair)
            made.append(pair.key)
        if not self._waiting:
            self._timer.stop()
        self.came.emit(made)
        if not self._waiting:
            self.finished.emit()

    def _is_fresh(self, pair: Pair) -> bool:
        known = self._known.get(pair.key)
        return known is not None and known[0].same(pair)

    def _make(self, pair: Pair) -> None:
        made = standing(pair.person, pair.envelope, measures=assets.measures(), defaults=assets.ease_defaults())
        self._known[pair.key] = (pair, made)
        self._known.move_to_end(pair.key)
        while len(self._known) > _KEPT:
            self._known.popitem(last=False)
