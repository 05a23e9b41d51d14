"""Edits of a make, each one undo step, with a draft while somebody types."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject, Signal

from sizekeeper.core.make import LengthChoice, Make, WidthChoice
from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import Pieces
from sizekeeper.store.codec import new_id
from sizekeeper.ui.plan_source import make_of, standing_make
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.core.found import Found
    from sizekeeper.core.length import Length
    from sizekeeper.core.piece import Chain, FabricLine
    from sizekeeper.ui.session import Session


class MakeEdits(QObject):
    """Lays drafts over the make in front and makes its edits. A make that nobody edited yet is not saved.

    `part` is the part of the desk in front, `taken` the id of a make that was taken up, finished or not.

    Signals:
        again(): what is shown is to be shown again, though nothing was edited.
    """

    again = Signal()

    def __init__(self, session: Session, parent: QObject | None = None) -> None:
        """Without a make in front."""
        super().__init__(parent)
        self._session = session
        self._fresh = new_id()
        self._shown: tuple[str, str, str] = ("", "", "")
        self.part, self.taken = "plans", ""

    @property
    def read_only(self) -> bool:
        """Whether nothing can be edited: in a read-only library, and in a make that is finished or given up."""
        return self._session.read_only or not self.make.open

    def look_up(self, found: Found) -> Make:
        """The make of what is shown, drafts laid over."""
        shown = (found.person.id, found.pattern.id, found.view)
        if shown != self._shown:
            self._shown, self._fresh = shown, new_id()
        return make_of(self._session, *shown, self._fresh, self.taken)

    @property
    def shown(self) -> str:
        """Whose make of which pattern is in front, in a word that no other has."""
        return "/".join(self._shown)

    @property
    def make(self) -> Make:
        """The make as last edited, without a draft."""
        return standing_make(self._session, *self._shown, self._fresh, self.taken)

    @property
    def pieces(self) -> Pieces:
        """What is known of the paper of the pattern in front, as last edited."""
        pattern = self._shown[1]
        found = next((v for v in self._session.belonging(pattern) if isinstance(v, Pieces)), None)
        return found or Pieces(new_id(), pattern)

    def apply_fabric(self, text: str, fabric: tuple[FabricLine, ...]) -> None:
        """Give the pattern in front another table of fabric, as one undo step that leads back here."""
        before = self.pieces
        saved = before if self._session.committed(before.id) is not None else None
        place = Place("fit", self._shown[0], f"{before.pattern}/plan:{self.part}/{self._shown[2]}")
        self._session.apply(text, saved, replace(before, fabric=fabric), place=place)

    def draft(self, after: Make) -> None:
        """Show what a text would do while it is typed."""
        self._session.draft(after)

    def drop(self) -> None:
        """Show again what stands."""
        self._session.drop_draft(self.make.id)

    def apply(self, text: str, after: Make) -> None:
        """Make the edit, as one undo step that leads back to the view and the part it was made in."""
        saved = self._session.committed(after.id)
        before = saved if isinstance(saved, Make) else None
        if before is None and after == self.make:
            return
        entry = after.person if before is None else after.id
        place = Place("fit", entry, f"{after.pattern}/plan:{self.part}/{after.view}")
        self._session.apply(text, before, after, place=place)


def length_typed(text: str, unit: str) -> Length | None:
    """A length as typed, None for an empty text.

    Raises:
        LengthError: the text is no length.
    """
    return parse_length(text, "in" if unit == "in" else "cm") if text.strip() else None


def with_length(make: Make, chain: Chain, **changes: object) -> Make:
    """The make with another choice for a chain; an empty choice is not kept."""
    old = next((choice for choice in make.lengths if choice.chain == chain), LengthChoice(chain))
    new = replace(old, **changes)  # type: ignore[arg-type]  # the callers name fields of the choice
    kept = tuple(choice for choice in make.lengths if choice.chain != chain)
    return replace(make, lengths=kept if new == LengthChoice(chain) else (*kept, new))


def with_width(make: Make, old: WidthChoice, new: WidthChoice) -> Make:
    """The make with one change of width in place of another at the same level for the same reason."""
    known = [(c.level, c.reason) for c in make.widths]
    if (old.level, old.reason) not in known:
        return replace(make, widths=(*make.widths, new))
    swapped = tuple(new if (c.level, c.reason) == (old.level, old.reason) else c for c in make.widths)
    return replace(make, widths=swapped)


def without_width(make: Make, old: WidthChoice) -> Make:
    """The make without a change of width."""
    kept = tuple(c for c in make.widths if (c.level, c.reason) != (old.level, old.reason))
    return replace(make, widths=kept)
