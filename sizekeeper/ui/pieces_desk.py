"""The pieces of the pattern in hand: what is shown, what is being typed, and where edits go."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Pieces
from sizekeeper.core.views import pieces_in
from sizekeeper.store.codec import new_id
from sizekeeper.ui.piece_edit import with_piece
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from fractions import Fraction

    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.session import Change, Session
    from sizekeeper.ui.settings import Settings

FIELD = "pieces"
"""What the places of edits on pieces begin with."""


class PiecesDesk(QObject):
    """The pieces of one pattern. They come into the library with their first edit.

    Signals:
        changed(): an edit, an undo, another pattern or another piece: everything is to be shown again.
        drafted(): something is being typed: figures that follow from it are to be shown again.
    """

    changed = Signal()
    drafted = Signal()

    def __init__(self, session: Session, settings: Settings, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.session = session
        self._settings = settings
        self._entry = ""
        self._to_be: dict[str, Pieces] = {}
        self._chosen: dict[str, str] = {}
        session.changed.connect(self._on_changed)
        session.drafted.connect(self._on_drafted)
        settings.changed.connect(self.changed)

    @property
    def pattern(self) -> Pattern | None:
        """The pattern whose pieces they are, as last edited."""
        value = self.session.committed(self._entry)
        return value if isinstance(value, Pattern) else None

    @property
    def committed(self) -> Pieces:
        """The pieces as last edited, or the empty list that comes into the library with the first edit."""
        found = (v for v in self.session.belonging(self._entry) if isinstance(v, Pieces))
        return next(found, None) or self._to_be.setdefault(self._entry, Pieces(new_id(), self._entry))

    @property
    def pieces(self) -> Pieces:
        """The pieces with what is being typed."""
        committed = self.committed
        value = self.session.value(committed.id)
        return value if isinstance(value, Pieces) else committed

    def pieces_of(self, view: str) -> tuple[Piece, ...]:
        """The pieces of a view, with what is being typed; "" stands for the views that share one finished chart."""
        pieces, pattern = self.pieces, self.pattern
        if pattern is None:
            return pieces.pieces
        found = pieces_in(pieces, pattern, self.session.charts(pattern.id), view)
        return found.pieces if found is not None else ()

    @property
    def chosen(self) -> str:
        """The id of the piece in hand: the one last chosen, else the first; "" where there is none."""
        pieces = self.committed.pieces
        kept = self._chosen.get(self._entry, "")
        return kept if any(one.id == kept for one in pieces) else pieces[0].id if pieces else ""

    @property
    def piece(self) -> Piece | None:
        """The piece in hand, as last edited."""
        return self.committed.piece(self.chosen)

    @property
    def drafted_piece(self) -> Piece | None:
        """The piece in hand, with what is being typed."""
        return self.pieces.piece(self.chosen)

    @property
    def notation(self) -> Notation:
        """How lengths of the pattern are shown."""
        pattern = self.pattern
        return self._settings.notation_in(pattern.unit if pattern is not None else self._settings.unit)

    @property
    def writable(self) -> bool:
        """Whether the library can be changed in this window."""
        return not self.session.read_only

    def allowance(self, piece: Piece) -> Fraction | None:
        """The seam allowance printed on a piece: its own, else the pattern's; exact cm."""
        own = piece.seam_allowance or (self.pattern.seam_allowance if self.pattern is not None else None)
        return own.exact_cm if own is not None else None

    def show_pattern(self, entry: str) -> None:
        """Take another pattern in hand, "" for none."""
        if entry != self._entry:
            self._entry = entry
            self.changed.emit()

    def choose(self, piece: str) -> None:
        """Take another piece in hand."""
        if piece != self.chosen:
            self._chosen[self._entry] = piece
            self.changed.emit()

    def apply(self, text: str, after: Pieces, field: str, piece: str = "") -> None:
        """Make an edit; a piece named is in hand from then on."""
        if piece:
            self._chosen[self._entry] = piece
        before = self.session.committed(after.id)
        place = Place("pattern", self._entry, f"{FIELD}|{piece or self.chosen}|{field}")
        self.session.apply(text, before, after, place=place)

    def apply_piece(self, text: str, after: Piece, field: str) -> None:
        """Make an edit of one piece."""
        self.apply(text, with_piece(self.committed, after), field, after.id)

    def draft_piece(self, drafted: Piece) -> None:
        """Lay what is being typed over the pieces; those that are not in the library yet have no draft."""
        if self.session.committed(self.committed.id) is not None:
            self.session.draft(with_piece(self.committed, drafted))

    def drop_draft(self) -> None:
        """Take off what was being typed."""
        self.session.drop_draft(self.committed.id)

    def _on_changed(self, change: Change) -> None:
        if self._entry and change.ids & {self._entry, self.committed.id}:
            self.changed.emit()
        elif self._entry and "chart" in change.kinds:
            self.drafted.emit()

    def _on_drafted(self, change: Change) -> None:
        if self._entry and self.committed.id in change.ids:
            self.drafted.emit()
