"""The alterations of the plan: every part that applies, one under the other, each folds away."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core import plan_words
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.plan_body import BeyondFold, BustFold, SeatFold
from sizekeeper.ui.plan_cloth import AllowanceFold, KnitFold
from sizekeeper.ui.plan_fabric import FabricFold
from sizekeeper.ui.plan_lengths import LengthsFold
from sizekeeper.ui.plan_sleeve import SleeveFold
from sizekeeper.ui.plan_wearer import ChildFold, OpeningFold
from sizekeeper.ui.plan_widths import WidthsFold
from sizekeeper.ui.scroll_sheet import ScrollSheet

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits
    from sizekeeper.ui.plan_fold import Fold


class AlterPart(ScrollSheet):
    """All alterations of the plan that is shown."""

    def __init__(self, edits: MakeEdits, today: Callable[[], dt.date], parent: QWidget | None = None) -> None:
        """Lengths and widths open, the rest folded away."""
        super().__init__(0.5, parent)
        sheet = self.sheet
        self.whose = Lettering("", "small heading", sheet)
        self.whose.setWordWrap(True)
        self.note = Lettering("", "muted", sheet)
        self.lengths, self.widths = LengthsFold(edits, sheet), WidthsFold(edits, sheet)
        self.beyond, self.bust, self.sleeve = BeyondFold(edits, sheet), BustFold(edits, sheet), SleeveFold(edits, sheet)
        self.seat, self.knit = SeatFold(edits, sheet), KnitFold(edits, sheet)
        self.child, self.opening = ChildFold(edits, today, sheet), OpeningFold(edits, today, sheet)
        self.allowance, self.fabric = AllowanceFold(edits, sheet), FabricFold(edits, sheet)
        self.folds: tuple[Fold, ...] = (
            self.beyond, self.lengths, self.bust, self.widths, self.sleeve, self.seat, self.knit, self.child,
            self.opening, self.allowance, self.fabric,
        )  # fmt: skip
        for button in (self.lengths.button, self.widths.button):
            button.setChecked(True)
        self.column.addWidget(self.whose)
        self.column.addWidget(self.note)
        for fold in self.folds:
            self.column.addWidget(fold)
            fold.button.clicked.connect(self._on_fold)
        self.column.addStretch(1)

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> None:
        """Show what the plan needs."""
        self.whose.setText(plan_words.title(planned.shown, planned.plans.labels, words))
        note = "" if planned.chosen is not None else "Worked out for the best plan, because none is chosen yet."
        if not planned.pieces.pieces:
            note = f"{note} No pieces are listed yet: the Pattern page has a list to start from.".strip()
        say(self.note, note)
        for fold in self.folds:
            fold.refresh(planned, work, words)

    def _on_fold(self) -> None:
        """Bring what was opened into view, as much of it as there is room for, its heading always."""
        fold = next(fold for fold in self.folds if fold.button is self.sender())
        if fold.button.isChecked():
            self.column.activate()
            self.sheet.resize(self.sheet.width(), max(self.viewport().height(), self.sheet.sizeHint().height()))
            self.ensureWidgetVisible(fold, 0, 0)
            self.ensureWidgetVisible(fold.button, 0, 0)
