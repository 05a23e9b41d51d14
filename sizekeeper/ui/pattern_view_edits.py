"""Adding, renaming and removing the views of the pattern on the page, each as one step."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from PySide6.QtCore import QObject

from sizekeeper.core.make import Make
from sizekeeper.core.piece import Pieces
from sizekeeper.core.view_edit import (
    pieces_with_view_renamed,
    pieces_without_view,
    with_view,
    with_view_renamed,
    without_view,
)
from sizekeeper.store.codec import new_id
from sizekeeper.ui.pattern_views import ALL_VIEWS, ViewDialog
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.ui.pattern_page import PatternPage
    from sizekeeper.ui.session import Session

    Kept = Pattern | Chart | Pieces | Make | None
    Pair = tuple[Kept, Kept]


class ViewEdits(QObject):
    """What the names above the finished chart ask for."""

    def __init__(self, page: PatternPage, session: Session) -> None:
        super().__init__(page)
        self._page = page
        self._session = session
        page.views.add_wanted.connect(self._on_add)
        page.views.rename_wanted.connect(self._on_rename)
        page.views.remove_wanted.connect(self._on_remove)

    def _on_add(self) -> None:
        if (pattern := self._page.pattern) is not None:
            shown = f"view {self._page.view}" if self._page.view else ALL_VIEWS
            ViewDialog.ask(pattern.views, copied=shown, parent=self._page.window()).named.connect(self._add)

    def _add(self, name: str, copied: bool) -> None:  # noqa: FBT001 - a slot
        if (pattern := self._page.pattern) is not None:
            after, chart = with_view(pattern, self._page.finished.chart, name, new_id(), copied=copied)
            self._apply(f"Add view {name}", [(pattern, after), (None, chart)], name)

    def _on_rename(self) -> None:
        pattern, old = self._page.pattern, self._page.view
        if pattern is not None and old:
            others = [view for view in pattern.views if view != old]
            ViewDialog.ask(others, old, parent=self._page.window()).named.connect(self._rename)

    def _rename(self, name: str) -> None:
        pattern, old = self._page.pattern, self._page.view
        if pattern is not None and name != old:
            pairs: list[Pair] = [(pattern, with_view_renamed(pattern, old, name))]
            if (chart := self._page.saved(self._page.finished.chart)) is not None:
                pairs.append((chart, replace(chart, view=name)))
            for value in self._session.belonging(pattern.id):
                if isinstance(value, Pieces):
                    pairs.append((value, pieces_with_view_renamed(value, old, name)))
                elif isinstance(value, Make) and value.view == old:
                    pairs.append((value, replace(value, view=name)))
            self._apply(f"Rename view {old}", pairs, name)

    def _on_remove(self) -> None:
        pattern, old = self._page.pattern, self._page.view
        if pattern is not None and old:
            pairs: list[Pair] = [(pattern, without_view(pattern, old))]
            if (chart := self._page.saved(self._page.finished.chart)) is not None:
                pairs.append((chart, None))
            listed = [value for value in self._session.belonging(pattern.id) if isinstance(value, Pieces)]
            pairs += [(pieces, pieces_without_view(pieces, old)) for pieces in listed]
            self._apply(f"Remove view {old}", pairs, "")

    def _apply(self, text: str, pairs: list[Pair], view: str) -> None:
        """Make the edit, with the view that is shown from then on."""
        self._page.view = view
        place = Place("pattern", pairs[0][0].id if pairs[0][0] else "", f"finished|{view}||")
        self._session.apply_all(text, pairs, place=place)
