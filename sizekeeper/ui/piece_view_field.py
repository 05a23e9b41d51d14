"""The choice of the view a piece is cut for, shown where the pattern has views at all."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.pattern_views import ALL_VIEWS
from sizekeeper.ui.person_fields import CalmCombo

if TYPE_CHECKING:
    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.piece import Piece

_LETTERS = 8
"""So many letters of a view's name are seen while the list is closed, however long others are."""


class PieceViewField(CalmCombo):
    """The views of the pattern, and all of them; `label` is the word above it."""

    def __init__(self, parent: QWidget) -> None:
        """Hidden until a pattern with views is shown."""
        super().__init__("View the piece is cut for", parent)
        self.setSizeAdjustPolicy(CalmCombo.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.setMinimumContentsLength(_LETTERS)
        self.label = Lettering("View", "note", parent)
        self.label.setWordWrap(False)
        self.label.setBuddy(self)

    @property
    def chosen(self) -> str:
        """The view chosen, "" for all."""
        return str(self.currentData() or "")

    def show_view(self, piece: Piece, pattern: Pattern | None) -> None:
        """Show the view of a piece; one that the pattern no longer has can still be seen, and changed."""
        views = pattern.views if pattern is not None else ()
        known = ["", *views, *([piece.view] if piece.view and piece.view not in views else [])]
        if [self.itemData(at) for at in range(self.count())] != known:
            self.clear()
            for view in known:
                self.addItem(view or ALL_VIEWS, view)
        self.setCurrentIndex(known.index(piece.view))
        for widget in (self, self.label):
            widget.setVisible(len(known) > 1)
