"""The worksheet: every step in the order of work with its tick, the piece drawn, and the line at the side seam."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.core import plan_words
from sizekeeper.core.seam_line import side_seam
from sizekeeper.core.work_words import amount, name_of, part_words
from sizekeeper.core.worksheet import PARTS, ticked
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.piece_drawing import PieceChange, PieceDrawing
from sizekeeper.ui.seam_drawing import SeamDrawing
from sizekeeper.ui.worksheet_row import StepRow

if TYPE_CHECKING:
    from sizekeeper.core.piece import Level, Piece
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.core.worksheet import Step, Worksheet
    from sizekeeper.ui.plan_edits import MakeEdits


class WorksheetPart(QWidget):
    """The steps at the left, the drawings at the right."""

    def __init__(self, edits: MakeEdits, parent: QWidget | None = None) -> None:
        """Without steps."""
        super().__init__(parent)
        self._edits = edits
        self._shown: tuple[Planned, Work, Wording] | None = None
        self._piece = ""
        self.rows: list[StepRow] = []
        self._scroll = QScrollArea(self)
        self._scroll.setFrameShape(QFrame.Shape.NoFrame)
        self._scroll.setWidgetResizable(True)
        self._scroll.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self._scroll.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        sheet = QWidget()
        self._scroll.setWidget(sheet)
        for bare in (self._scroll.viewport(), sheet):
            bare.setAutoFillBackground(False)
        self.whose = Lettering("", "small heading", sheet)
        self.whose.setWordWrap(True)
        self.count = Lettering("", "muted", sheet)
        self.heads = {part: Lettering(part_words(part), "small heading", sheet) for part in PARTS}
        self.lists = {part: QVBoxLayout() for part in PARTS}
        self.drawing = PieceDrawing(parent=self)
        self.seam = SeamDrawing(self)
        self.seam_head = Lettering("The line at the side seam, each edge", "muted", self)
        self._sheet, self._column, self._side = sheet, QVBoxLayout(sheet), QVBoxLayout()
        self._lay_out()
        self._space()

    def _lay_out(self) -> None:
        self._column.addWidget(self.whose)
        self._column.addWidget(self.count)
        for part in PARTS:
            self._column.addWidget(self.heads[part])
            self._column.addLayout(self.lists[part])
        self._column.addStretch(1)
        self._side.addWidget(self.drawing, 1)
        self._side.addWidget(self.seam_head)
        self._side.addWidget(self.seam)
        self._side.addStretch(0)  # where no piece is drawn, the line stands at the top
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.addWidget(self._scroll, 3)
        row.addLayout(self._side, 2)

    def show_planned(self, planned: Planned, work: Work, words: Wording) -> None:
        """Show every step."""
        self._shown = (planned, work, words)
        sheet = work.sheet
        self.whose.setText(plan_words.title(planned.shown, planned.plans.labels, words))
        self.count.setText(_count_words(sheet, planned))
        keys = [(step.part, step.key) for step in sheet.steps]
        if [(row.step.part, row.step.key) for row in self.rows if row.step is not None] != keys:
            self._build(sheet)
        for row, step in zip(self.rows, sheet.steps, strict=True):
            done = sheet.done(step)
            row.show_step(step, planned.pieces, words, done=done, read_only=self._edits.read_only)
        for part, head in self.heads.items():
            head.setVisible(any(step.part == part for step in sheet.steps))
        touched = [step.piece for step in sheet.steps]
        if self._piece not in touched:
            self._piece = touched[0] if touched else ""
        self._draw()

    def _build(self, sheet: Worksheet) -> None:
        """Rows for other steps; the row that had the focus has it again where its place is still there."""
        at = next((i for i, row in enumerate(self.rows) if row.tick.hasFocus()), -1)
        for old in self.rows:
            old.hide()
            old.deleteLater()
        self.rows = []
        for step in sheet.steps:
            row = StepRow(self._sheet)
            row.step = step
            row.ticked.connect(self._on_ticked)
            row.looked_at.connect(self._on_looked_at)
            self.lists[step.part].addWidget(row)
            self.rows.append(row)
        if 0 <= at < len(self.rows):
            self.rows[at].tick.setFocus()

    def _draw(self) -> None:
        assert self._shown is not None  # noqa: S101 - called after it is set
        planned, work, words = self._shown
        piece = planned.pieces.piece(self._piece)
        self.drawing.setVisible(piece is not None)
        if piece is not None:
            found = (change_of(step, piece, words) for step in work.sheet.of(piece.id))
            self.drawing.show_piece(piece, [c for c in found if c is not None], words.notation)
        plan = planned.shown
        between = bool(plan.levels) or any(change.kind == "line" for change in plan.changes)
        points = side_seam(plan, planned.fit) if between else ()
        points = tuple(p for p in points if not plan.levels or p.level in plan.levels)
        self.seam.setVisible(bool(points))
        self.seam_head.setVisible(bool(points))
        if points:
            self.seam.show_points(points, words)

    def _on_looked_at(self, piece: str) -> None:
        if piece != self._piece and self._shown is not None:
            self._piece = piece
            self._draw()

    def _on_ticked(self, step: Step, done: bool) -> None:  # noqa: FBT001 - a signal's own shape
        assert self._shown is not None  # noqa: S101 - there are rows
        make = self._edits.make
        name = name_of(self._shown[0].pieces, step.piece)
        verb = "Tick" if done else "Untick"
        after = replace(make, ticks=ticked(make.ticks, step, done=done))
        self._edits.apply(f"{verb} a step: {name}", after)

    def _space(self) -> None:
        side = theme.spacing(4)
        self._column.setContentsMargins(side, theme.spacing(1), theme.spacing(2), theme.spacing(3))
        self._column.setSpacing(theme.spacing(1))
        for rows in self.lists.values():
            rows.setSpacing(theme.spacing(0.75))
            rows.setContentsMargins(0, 0, 0, theme.spacing(1))
        self._side.setContentsMargins(theme.spacing(1), theme.spacing(1), theme.spacing(3), theme.spacing(2))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_side") and theme.font_changed(event):
            self._space()


def _count_words(sheet: Worksheet, planned: Planned) -> str:
    if not planned.pieces.pieces:
        return "List the pattern’s pieces on the Pattern page first: each step belongs to a piece."
    if not sheet.steps:
        return "Nothing to change: trace the size as it is printed."
    done = len(sheet.steps) - sheet.left
    return f"{done} of {len(sheet.steps)} done" if sheet.left else "All done."


def change_of(step: Step, piece: Piece, words: Wording) -> PieceChange | None:
    """A step as it is drawn on its piece; None where nothing can be drawn on it."""
    kind: Literal["length", "width"] = "length" if step.kind == "length" else "width"
    if step.kind not in ("length", "width", "bust", "crotch"):
        return None
    levels: tuple[Level, ...] = tuple(level for level in piece.levels if level in step.where)
    if step.kind == "crotch":
        levels = levels[-1:]
    if not levels:
        return None
    sign = "+" if step.amount > 0 else "−"
    said = f"{sign}{amount(step.per_edge, words)}{' at each edge' if step.edges > 1 else ''}"
    if step.pleat:
        said += f", pleat {amount(step.pleat, words)}"
    return PieceChange(kind, step.amount, levels, said)
