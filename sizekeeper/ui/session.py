"""The open library as the window sees it: values, drafts, and edits that can be undone.

Every edit is "replace this entry by that one". `apply` pushes one undo command, hands the pair to the writer, and
announces what kind of thing changed; each view refreshes only if it cares.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QCoreApplication, QEvent, QObject, Qt, Signal
from PySide6.QtGui import QUndoCommand, QUndoStack

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.store.codec import kind_of

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Sequence

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.store.codec import Value
    from sizekeeper.store.versions import Pair
    from sizekeeper.store.writer import Writer
    from sizekeeper.ui.selection import Place


@dataclass(frozen=True, slots=True)
class Change:
    """What an edit touched: kinds of entries ("person", "pattern", "chart"), their ids, and the edit's name."""

    kinds: frozenset[str]
    ids: frozenset[str]
    text: str = ""


def _pattern_of(value: Value) -> str:
    """The id of the pattern that an entry belongs to; empty for people, patterns and what belongs to nobody."""
    return str(getattr(value, "pattern", ""))


class _Replace(QUndoCommand):
    """One edit on the undo stack: entries before and after."""

    def __init__(self, session: Session, text: str, pairs: Sequence[Pair], place: Place | None) -> None:
        super().__init__(text)
        self._session = session
        self._pairs = list(pairs)
        self._place = place
        self._done_once = False

    def redo(self) -> None:
        self._session._put(self.text(), self._pairs)  # noqa: SLF001 - the command is the session's own hand
        if self._done_once:
            self._session.revisited.emit(self._place, f"Redone: {self.text()}")
        self._done_once = True

    def undo(self) -> None:
        self._session._put(self.text(), [(after, before) for before, after in self._pairs])  # noqa: SLF001 - as above
        self._session.revisited.emit(self._place, f"Undone: {self.text()}")


class Session(QObject):
    """The values of one library, with drafts laid over them.

    Signals:
        changed(object): a `Change`, after an edit, an undo or a redo.
        drafted(object): a `Change`, when a draft was laid over an entry or taken off: not saved, only shown.
        saved_changed(bool): whether everything is committed to the library file.
        failed(str): an edit could not be committed; the sentence says why.
        declined(str): an edit was not made because the library is read-only; the sentence says so.
        revisited(object, str): undo or redo happened at a `Place` (or None), and what it did in words.
    """

    changed = Signal(object)
    drafted = Signal(object)
    saved_changed = Signal(bool)
    failed = Signal(str)
    declined = Signal(str)
    revisited = Signal(object, str)
    _committed = Signal(int)
    _refused = Signal(str)

    def __init__(self, writer: Writer, parent: QObject | None = None, *, first: Collection[str] = ()) -> None:
        """Load the entries of the writer's library.

        Args:
            writer: saves the edits.
            parent: the owner.
            first: kinds to begin with, so that a window can be shown; the others follow with `complete`. None: all.

        Raises:
            StoreError: the file cannot be read.
        """
        super().__init__(parent)
        self.writer = writer
        self.undo_stack = QUndoStack(self)
        self._values: dict[str, Value] = {}
        self._of_pattern: dict[str, dict[str, None]] = {}
        self._read_so_far = frozenset(first)
        self._take(writer.library.values(self._read_so_far))
        self._drafts: dict[str, Value] = {}
        self._sent = 0
        self._done = 0
        self._committed.connect(self._on_committed, Qt.ConnectionType.QueuedConnection)
        self._refused.connect(self.failed, Qt.ConnectionType.QueuedConnection)

    @property
    def read_only(self) -> bool:
        """Whether another window holds the library."""
        return self.writer.library.read_only

    @property
    def saved(self) -> bool:
        """Whether everything is committed to the library file."""
        return self._sent == self._done

    @property
    def drafting(self) -> bool:
        """Whether somebody is in the middle of typing: some entry has an unsaved value laid over it."""
        return bool(self._drafts)

    @property
    def empty(self) -> bool:
        """Whether the library holds nothing yet, hidden entries counted too."""
        return not any(isinstance(value, Person | Pattern) for value in self._values.values())

    def complete(self) -> None:
        """Load the kinds of entries that were left for later, if any were.

        Raises:
            StoreError: the file cannot be read.
        """
        if self._read_so_far:
            for value in self.writer.library.rest(self._read_so_far):
                self._keep(value)
            self._read_so_far = frozenset()

    def values(self) -> list[Value]:
        """Every entry as last edited, without drafts."""
        self.complete()
        return list(self._values.values())

    def belonging(self, pattern: str) -> list[Value]:
        """The charts, pieces and makes of a pattern as last edited: a keystroke asks, so nothing is searched for."""
        self.complete()
        return [self._values[entry] for entry in self._of_pattern.get(pattern, ())]

    def value(self, entry: str) -> Value | None:
        """An entry by id, with its draft if there is one."""
        return self._drafts.get(entry) or self._values.get(entry)

    def committed(self, entry: str) -> Value | None:
        """An entry by id as last edited, without a draft."""
        return self._values.get(entry)

    def person(self, entry: str) -> Person | None:
        """A person by id, with her draft if there is one."""
        value = self.value(entry)
        return value if isinstance(value, Person) else None

    def pattern(self, entry: str) -> Pattern | None:
        """A pattern by id, with its draft if there is one."""
        value = self.value(entry)
        return value if isinstance(value, Pattern) else None

    def people(self, *, hidden: bool = False) -> list[Person]:
        """The people by name; hidden ones only when asked for."""
        found = [v for v in self._current() if isinstance(v, Person) and (hidden or not v.hidden)]
        return sorted(found, key=lambda p: (p.name.casefold(), p.id))

    def patterns(self, *, hidden: bool = False) -> list[Pattern]:
        """The patterns by title; hidden ones only when asked for."""
        found = [v for v in self._current() if isinstance(v, Pattern) and (hidden or not v.hidden)]
        return sorted(found, key=lambda p: (p.title.casefold(), p.id))

    def charts(self, pattern: str) -> list[Chart]:
        """The charts of a pattern, drafts laid over."""
        from sizekeeper.core.chart import Chart  # noqa: PLC0415 - the window's first picture shows none

        shown = (self._drafts.get(value.id, value) for value in self.belonging(pattern))
        return [value for value in shown if isinstance(value, Chart)]

    def chart(self, pattern: str, kind: ChartKind, view: str = "") -> Chart | None:
        """One chart of a pattern; for a view without figures of its own the chart that serves all views."""
        found = {c.view: c for c in self.charts(pattern) if c.kind == kind}
        return found.get(view) or found.get("")

    def _current(self) -> list[Value]:
        return [self._drafts.get(entry, value) for entry, value in self._values.items()]

    def apply(self, text: str, before: Value | None, after: Value | None, *, place: Place | None = None) -> None:
        """Replace one entry, as one undo step. Nothing happens when nothing is different."""
        self.apply_all(text, [(before, after)], place=place)

    def apply_all(self, text: str, pairs: Sequence[Pair], *, place: Place | None = None) -> None:
        """Replace several entries as one undo step and one transaction."""
        real = [(before, after) for before, after in pairs if before != after]
        if real and self.read_only:
            self._decline(real)
        elif real:
            self.undo_stack.push(_Replace(self, text, real, place))
        for before, after in pairs:
            if (value := before or after) is not None:
                self.drop_draft(value.id)

    def _decline(self, pairs: Sequence[Pair]) -> None:
        """Leave a read-only library as it is; the views are told to show again what stands."""
        touched = [value for pair in pairs for value in pair if value is not None]
        self.drafted.emit(Change(frozenset(kind_of(v) for v in touched), frozenset(v.id for v in touched)))
        self.declined.emit("Nothing was changed: the library can only be looked at in this window.")

    def draft(self, value: Value) -> None:
        """Lay an unsaved value over its entry while the user types; nothing is laid over when nothing differs."""
        if self.read_only or self._values.get(value.id) == value:
            self.drop_draft(value.id)
        elif self._drafts.get(value.id) != value:
            self._drafts[value.id] = value
            self.drafted.emit(Change(frozenset({kind_of(value)}), frozenset({value.id})))

    def drop_draft(self, entry: str) -> None:
        """Take the unsaved value off again."""
        if (value := self._drafts.pop(entry, None)) is not None:
            self.drafted.emit(Change(frozenset({kind_of(value)}), frozenset({entry})))

    def reload(self) -> None:
        """Read every entry from the file again. What could not be saved and the steps to undo are let go."""
        self.writer.flush()
        self.writer.give_up()
        QCoreApplication.sendPostedEvents(self, QEvent.Type.MetaCall)  # answers of the writer that are on their way
        fresh = {value.id: value for value in self.writer.library.values()}
        shown = self._values | self._drafts
        touched = [
            value
            for entry in shown.keys() | fresh.keys()
            if (old := shown.get(entry)) != (new := fresh.get(entry))
            for value in (old, new)
            if value is not None
        ]
        self._take(fresh.values())
        self._read_so_far = frozenset()
        self._drafts.clear()
        self.undo_stack.clear()
        self._sent = self._done = 0
        self.saved_changed.emit(True)
        self._announce(touched, "Read again")

    def _take(self, values: Iterable[Value]) -> None:
        """Hold these entries and no others."""
        self._values, self._of_pattern = {}, {}
        for value in values:
            self._keep(value)

    def _keep(self, value: Value) -> None:
        self._values[value.id] = value
        if pattern := _pattern_of(value):
            self._of_pattern.setdefault(pattern, {})[value.id] = None

    def _put(self, text: str, pairs: Sequence[Pair]) -> None:
        for before, after in pairs:
            if (value := before or after) is not None:
                self._drafts.pop(value.id, None)
            if after is not None:
                self._keep(after)
            elif before is not None:
                self._values.pop(before.id, None)
                self._of_pattern.get(_pattern_of(before), {}).pop(before.id, None)
        self._sent += 1
        self.saved_changed.emit(False)
        self.writer.submit(text, pairs, self._committed.emit, self._refused.emit)
        touched = [value for pair in pairs for value in pair if value is not None]
        self._announce(touched, text)

    def _announce(self, touched: Sequence[Value], text: str) -> None:
        self.changed.emit(Change(frozenset(kind_of(v) for v in touched), frozenset(v.id for v in touched), text))

    def _on_committed(self, count: int) -> None:
        self._done += count
        if self.saved:
            self.saved_changed.emit(True)
