"""What the headings above a table say about the figures below them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.chart import WrittenAs
from sizekeeper.importing.vocabulary import EASE, Kind, topic_in

if TYPE_CHECKING:
    from sizekeeper.importing.labels import Label


@dataclass(slots=True)
class Context:
    """What the headings since the last table say about the figures below them."""

    kind: Kind | None = None
    units: tuple[str, ...] = ()
    view: str | None = None
    variant: str | None = None
    written: WrittenAs = "full"
    title: str = ""
    title_at: str = ""
    titled: bool = False
    about: Literal["", "cloth", "ease"] = ""
    section: str = ""

    def leaves_out(self, name: Label) -> bool:
        """Whether a row of this name is no measure here: it tells of cloth, or of ease."""
        if name.is_measure:
            return self.about == "ease"
        return bool(self.about) or EASE.search(name.text) is not None

    def say(self, word: Label, at: str) -> None:
        """Take in a heading: what it says holds until another heading says otherwise."""
        self.about = topic_in(word.text) or ("" if word.kind else self.about)
        tells = bool(word.kind or word.units or word.view or word.variant or word.cup)
        self.section = "" if tells else word.text
        self.kind = word.kind or self.kind
        self.units = word.units or self.units
        if word.kind or word.written_as != "full":
            self.written = word.written_as
        self.view = word.view or (None if word.kind else self.view)
        self.variant = word.cup or word.variant or (None if word.kind else self.variant)
        if not self.title or ((tells or not self.titled) and not word.unit_only):
            self.title, self.title_at = word.text, at
        self.titled = self.titled or tells

    def add(self, word: Label) -> None:
        """Take in a word at the corner, which adds to the title above it."""
        self.about = topic_in(word.text) or ("" if word.kind else self.about)
        self.kind = word.kind or self.kind
        self.units = word.units or self.units
        self.view = word.view or self.view
        self.variant = word.cup or word.variant or self.variant
        if word.written_as != "full":
            self.written = word.written_as
        self.titled = self.titled or word.kind is not None
