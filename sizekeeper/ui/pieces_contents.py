"""The left side of the pieces: the list, the line in which one is added, and what can be done with the one in hand."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QCompleter, QGridLayout, QLineEdit, QMenu, QPushButton, QVBoxLayout, QWidget

from sizekeeper.assets import starter_pieces
from sizekeeper.core.piece import Pieces
from sizekeeper.core.preference import GARMENTS
from sizekeeper.store.codec import new_id
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.piece_edit import for_views, moved, suggested, with_added, without
from sizekeeper.ui.pieces_list import PieceList

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QAction, QResizeEvent

    from sizekeeper.core.piece import Piece
    from sizekeeper.core.preference import Garment
    from sizekeeper.ui.pieces_desk import PiecesDesk

FIRST = "Nothing listed yet. Start from the usual pieces of such a garment, or type the first name below."


class PiecesContents(QWidget):
    """The pieces as a table of contents, and everything that changes the list itself.

    Signals:
        details_wanted(): the fields of the piece in hand are wanted.
    """

    details_wanted = Signal()

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._offered: list[str] | None = None
        self.first = Lettering(FIRST, "plain", self)
        self.start = QPushButton(self)
        self.list = PieceList(self)
        self.add = QLineEdit(self)
        self.add.setPlaceholderText("Add a piece: type its name")
        self.add.setAccessibleName("Name of a piece to add")
        self.up = Link("Up", "Move the piece up", self)
        self.down = Link("Down", "Move the piece down", self)
        self.double = Link("Copy", "Copy the piece", self)
        self.remove = Link("Remove", "Remove the piece", self)
        self.more = Link("More", "More for the list of pieces", self)
        self._menu = QMenu(self.more)
        self.more.setMenu(self._menu)
        self._lay()
        self._connect()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        column.addWidget(self.first)
        column.addWidget(self.start, 0, Qt.AlignmentFlag.AlignLeft)
        column.addWidget(self.list)
        column.addWidget(self.add)
        self._links = QGridLayout()
        self._links.setSpacing(0)
        self._links.setColumnStretch(5, 1)
        column.addLayout(self._links)
        self._place_links()

    def _place_links(self) -> None:
        """The links in one row, in two where the column is too narrow for that."""
        links = (self.up, self.down, self.double, self.remove, self.more)
        narrow = sum(link.sizeHint().width() for link in links) > self.width()
        for at, link in enumerate(links):
            self._links.addWidget(link, *((1, at - 3) if narrow and at > 2 else (0, at)))  # noqa: PLR2004 - two rows

    def _connect(self) -> None:
        self.list.chosen.connect(self._desk.choose)
        self.list.edit_wanted.connect(self.details_wanted)
        self.list.remove_wanted.connect(self.take_out)
        self.list.copy_wanted.connect(self.duplicate)
        self.list.move_wanted.connect(self.shift)
        self.add.returnPressed.connect(self._on_add)
        self.start.clicked.connect(self._on_start)
        self.double.clicked.connect(self.duplicate)
        self.remove.clicked.connect(self.take_out)
        self.up.clicked.connect(self._on_up)
        self.down.clicked.connect(self._on_down)
        self._menu.aboutToShow.connect(self.fill_menu)

    @property
    def _garment(self) -> Garment:
        pattern = self._desk.pattern
        return pattern.garment if pattern is not None else "dress"

    def refresh(self) -> None:
        """Show the list as it is now."""
        pieces = self._desk.pieces.pieces
        writable = self._desk.writable
        self.list.show_pieces(pieces, self._desk.chosen, self._desk.notation)
        self.list.setVisible(bool(pieces))
        self.first.setVisible(not pieces)
        self.start.setVisible(not pieces and writable)
        self.start.setText(f"&Usual pieces of {_a(self._garment)}")
        self.add.setEnabled(writable)
        at = next((i for i, one in enumerate(pieces) if one.id == self._desk.chosen), -1)
        for link in (self.double, self.remove, self.up, self.down):
            link.setVisible(bool(pieces) and writable)
        self.up.setEnabled(at > 0)
        self.down.setEnabled(0 <= at < len(pieces) - 1)
        self.more.setVisible(writable)
        self._complete()

    def _complete(self) -> None:
        """Offer the garment's usual names that are not in the list yet."""
        names = {one.name for one in self._desk.pieces.pieces}
        offered = [one.name for one in starter_pieces(self._garment) if one.name not in names]
        if self._offered == offered:
            return
        self._offered = offered
        completer = QCompleter(offered, self.add)
        completer.setCaseSensitivity(Qt.CaseSensitivity.CaseInsensitive)
        self.add.setCompleter(completer)

    def fill_menu(self) -> None:
        """Offer the starter lists, and the patterns whose pieces can be copied."""
        self._menu.clear()
        usual = self._menu.addMenu("Add the usual pieces of")
        for garment in GARMENTS:
            self._offer(usual, _a(garment), self._on_usual, garment)
        if others := self._others():
            copies = self._menu.addMenu("Copy the pieces of")
            for title, entry in others:
                self._offer(copies, title.replace("&", "&&"), self._on_copy, entry)

    def _offer(self, menu: QMenu, text: str, run: object, data: str) -> QAction:
        action = menu.addAction(text)
        action.setData(data)
        action.triggered.connect(run)
        return action

    def _others(self) -> list[tuple[str, str]]:
        """The other patterns that have pieces: title and the pieces' id."""
        session, here = self._desk.session, self._desk.committed.id
        kept = [v for v in session.values() if isinstance(v, Pieces) and v.pieces and v.id != here]
        found = [(pattern.title, one.id) for one in kept if (pattern := session.pattern(one.pattern)) is not None]
        return sorted(found, key=lambda pair: pair[0].casefold())

    def _on_add(self) -> None:
        name = " ".join(self.add.text().split())
        if not name or not self._desk.writable:
            return
        piece = suggested(name, self._garment, starter_pieces(self._garment), new_id())
        self._desk.apply(f"Add {name}", with_added(self._desk.committed, [piece]), "name", piece.id)
        self.add.clear()

    def _on_start(self) -> None:
        self._add_all(f"Add the usual pieces of {_a(self._garment)}", starter_pieces(self._garment))
        self.list.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_usual(self) -> None:
        garment = cast("Garment", self._asked())
        self._add_all(f"Add the usual pieces of {_a(garment)}", starter_pieces(garment))

    def _on_copy(self) -> None:
        other = self._desk.session.committed(self._asked())
        if isinstance(other, Pieces):
            pattern, here = self._desk.session.pattern(other.pattern), self._desk.pattern
            pieces = for_views(other.pieces, here.views if here is not None else ())
            self._add_all(f"Copy the pieces of {pattern.title if pattern else 'another pattern'}", pieces)

    def _asked(self) -> str:
        """What the menu's entry that was chosen stands for."""
        return str(cast("QAction", self.sender()).data())

    def _add_all(self, text: str, pieces: Sequence[Piece]) -> None:
        """Add copies of pieces, with ids of their own, as one step."""
        added = [replace(one, id=new_id()) for one in pieces]
        if added:
            self._desk.apply(text, with_added(self._desk.committed, added), "name", added[0].id)

    def duplicate(self) -> None:
        """Add a copy of the piece in hand behind it."""
        piece = self._desk.piece
        if piece is None or not self._desk.writable:
            return
        copy = replace(piece, id=new_id(), name=f"{piece.name} (copy)")
        self._desk.apply(f"Copy {piece.name}", with_added(self._desk.committed, [copy], piece.id), "name", copy.id)

    def take_out(self) -> None:
        """Take the piece in hand out of the list; the next one is in hand then."""
        piece = self._desk.piece
        if piece is None or not self._desk.writable:
            return
        pieces = self._desk.committed.pieces
        at = pieces.index(piece)
        following = pieces[at + 1] if at + 1 < len(pieces) else pieces[at - 1] if at else None
        after = without(self._desk.committed, piece.id)
        self._desk.apply(f"Remove {piece.name}", after, "list", piece.id)
        if following is not None:
            self._desk.choose(following.id)
        else:
            self.add.setFocus(Qt.FocusReason.OtherFocusReason)

    def shift(self, step: int) -> None:
        """Move the piece in hand up (-1) or down (1)."""
        piece = self._desk.piece
        if piece is not None and self._desk.writable:
            way = "up" if step < 0 else "down"
            self._desk.apply(f"Move {piece.name} {way}", moved(self._desk.committed, piece.id, step), "list", piece.id)

    def _on_up(self) -> None:
        self.shift(-1)

    def _on_down(self) -> None:
        self.shift(1)

    # Qt's own names from here on.

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Find the place of the links."""
        super().resizeEvent(event)
        self._place_links()


def _a(garment: Garment) -> str:
    """The garment with its article."""
    return garment if garment == "trousers" else f"a {garment}"
