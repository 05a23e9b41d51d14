"""The fields of one piece: what it is, how it is cut, which heights it crosses; its figures below."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QCheckBox, QGridLayout, QHBoxLayout, QSpinBox, QVBoxLayout, QWidget

from sizekeeper.core.notation import show
from sizekeeper.core.piece import LAYERS, LEVEL_ORDER, PIECE_ROLES
from sizekeeper.core.piece_words import LAYER_NAMES, LEVEL_NAMES, ROLE_NAMES
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo, DraftField
from sizekeeper.ui.piece_edit import with_level
from sizekeeper.ui.piece_length_field import LengthField
from sizekeeper.ui.piece_sheet import PieceSheet
from sizekeeper.ui.piece_view_field import PieceViewField

if TYPE_CHECKING:
    from PySide6.QtGui import QWheelEvent

    from sizekeeper.core.length import Length
    from sizekeeper.core.piece import Piece
    from sizekeeper.ui.pieces_desk import PiecesDesk

_AROUND = (("as cut", None), ("once", 1), ("2 times", 2), ("3 times", 3), ("4 times", 4), ("not at all", 0))
_MOST = 40
"""No piece is cut more often than this; coined."""


class CalmSpin(QSpinBox):
    """A number that the wheel does not change while the page scrolls under the pointer."""

    def __init__(self, name: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(name)
        self.lineEdit().setAccessibleName(name)
        self.setKeyboardTracking(False)
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def wheelEvent(self, event: QWheelEvent) -> None:
        """Let the page scroll."""
        event.ignore()


class PieceForm(QWidget):
    """Everything about the piece in hand. Each change is an edit."""

    def __init__(self, desk: PiecesDesk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self._piece = ""
        self._showing = False
        self.name = DraftField("Name of the piece", self)
        self.role = CalmCombo("What the piece is", self)
        for role in PIECE_ROLES:
            self.role.addItem(ROLE_NAMES[role], role)
        self.cut = CalmSpin("How many to cut", self)
        self.cut.setRange(1, _MOST)
        self.fold = QCheckBox("on the &fold", self)
        self.layer = CalmCombo("Layer", self)
        for layer in LAYERS:
            self.layer.addItem(LAYER_NAMES[layer], layer)
        self.levels = {level: QCheckBox(LEVEL_NAMES[level], self) for level in LEVEL_ORDER}
        for level, box in self.levels.items():
            box.setAccessibleName(f"Crosses the {LEVEL_NAMES[level]}")
        self.sheet = PieceSheet(desk, self)
        self.line = QCheckBox("Lengthen or shorten &line", self)
        self.dart = QCheckBox("Bust &dart", self)
        self.around = CalmCombo("How often it goes round the body", self)
        for words, times in _AROUND:
            self.around.addItem(words, times)
        self.allowance = LengthField("Seam allowance of this piece", self)
        self.view = PieceViewField(self)
        self.note = DraftField("Note on the piece", self)
        self.problem = Lettering("", "warning", self)
        self._lay()
        self._connect()

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        self._grid = QGridLayout()
        self._put(0, 0, "Name", self.name)
        self._put(0, 1, "What it is", self.role)
        self._put(0, 2, "Cut", self.cut, self.fold)
        self._put(0, 3, "Layer", self.layer)
        column.addLayout(self._grid)
        self.beside = QHBoxLayout()
        column.addLayout(self.beside, 1)
        below = QVBoxLayout()
        below.setSpacing(theme.spacing(1))
        self.beside.addLayout(below, 1)
        self._lay_below(below)
        self._space()

    def _lay_below(self, column: QVBoxLayout) -> None:
        """What stands below the first line; a drawing finds room beside it."""
        column.addWidget(Lettering("It crosses, at its edges or between them", "note", self))
        self._boxes = QGridLayout()
        for number, box in enumerate(self.levels.values()):
            self._boxes.addWidget(box, *divmod(number, 5))
        self._boxes.setColumnStretch(5, 1)
        column.addLayout(self._boxes)
        column.addSpacing(theme.spacing(0.5))
        column.addWidget(self.sheet)
        column.addSpacing(theme.spacing(0.5))
        self._more = QGridLayout()
        self._put(0, 0, "On the paper", self.line, self.dart, grid=self._more)
        self._put(0, 1, "Goes round", self.around, grid=self._more)
        self._put(0, 2, "Its own seam allowance", self.allowance, grid=self._more)
        self._more.addWidget(self.view.label, 0, 3)
        self._more.addWidget(self.view, 1, 3)
        column.addLayout(self._more)
        note = Lettering("Note", "note", self)
        note.setBuddy(self.note)
        line = QHBoxLayout()
        line.setSpacing(theme.spacing(1))
        line.addWidget(note)
        line.addWidget(self.note, 1)
        column.addLayout(line)
        column.addWidget(self.problem)
        column.addStretch(1)

    def _put(self, row: int, at: int, label: str, *widgets: QWidget, grid: QGridLayout | None = None) -> None:
        """A label above its fields."""
        grid = grid or self._grid
        text = Lettering(label, "note", self)
        text.setWordWrap(False)
        text.setBuddy(widgets[0])
        grid.addWidget(text, 2 * row, at)
        line = QHBoxLayout()
        line.setSpacing(theme.spacing(1))
        for widget in widgets:
            line.addWidget(widget)
        grid.addLayout(line, 2 * row + 1, at)

    def _space(self) -> None:
        for grid in (self._grid, self._more):
            grid.setHorizontalSpacing(theme.spacing(2))
            grid.setVerticalSpacing(theme.spacing(0.25))
        self.beside.setSpacing(theme.spacing(2))
        self._boxes.setHorizontalSpacing(theme.spacing(2))
        self._boxes.setVerticalSpacing(theme.spacing(0.5))
        self._grid.setColumnStretch(0, 3)
        self._grid.setColumnStretch(1, 2)
        self._more.setColumnStretch(4, 1)
        self.allowance.setMaximumWidth(theme.spacing(14))

    def _connect(self) -> None:
        self.name.typed.connect(self._on_name_typed)
        self.name.entered.connect(self._on_name)
        self.name.stepped.connect(self._on_name_stepped)
        self.note.typed.connect(self._on_note_typed)
        self.note.entered.connect(self._on_note)
        self.allowance.length_typed.connect(self._on_allowance_typed)
        self.allowance.length_entered.connect(self._on_allowance)
        self.allowance.problem_changed.connect(self._say)
        for field in (self.name, self.note, self.allowance):
            field.restored.connect(self._desk.drop_draft)
        self.role.activated.connect(self._on_role)
        self.layer.activated.connect(self._on_layer)
        self.view.activated.connect(self._on_view)
        self.around.activated.connect(self._on_around)
        self.cut.valueChanged.connect(self._on_cut)
        self.fold.clicked.connect(self._on_fold)
        self.line.clicked.connect(self._on_line)
        self.dart.clicked.connect(self._on_dart)
        for box in self.levels.values():
            box.clicked.connect(self._on_level)

    def refresh(self, piece: Piece, drafted: Piece) -> None:
        """Show a piece; `drafted` has what is being typed."""
        self._showing = True
        if piece.id != self._piece:
            self._piece = piece.id
            self.name.put_text(piece.name)
            self.note.put_text(piece.note)
            self.allowance.turn_to(piece.id)
        self.name.show_text(piece.name)
        self.note.show_text(piece.note)
        if not self.name.hasFocus():
            self.name.setCursorPosition(0)
        self.role.setCurrentIndex(self.role.findData(piece.role))
        self.layer.setCurrentIndex(self.layer.findData(piece.layer))
        self.cut.setValue(piece.cut)
        self.fold.setChecked(piece.on_fold)
        for level, box in self.levels.items():
            box.setChecked(level in piece.levels)
        self.line.setChecked(piece.line)
        self.dart.setChecked(piece.dart)
        self.dart.setVisible(piece.role in ("front", "side", "other", "facing") or piece.dart)
        self._show_around(piece)
        self.allowance.show_length(piece.seam_allowance, self._desk.notation.unit)
        pattern = self._desk.pattern
        self.view.show_view(piece, pattern)
        usual = pattern.seam_allowance if pattern is not None else None
        self.allowance.setPlaceholderText(
            show(usual.exact_cm, self._desk.notation) if usual is not None else "not known"
        )
        self._set_writable()
        self.sheet.refresh(piece, drafted)
        self._showing = False

    def _show_around(self, piece: Piece) -> None:
        """As cut says how often that is, where the piece crosses a level at all."""
        as_cut = replace(piece, around=None)
        times = as_cut.times(piece.levels[0]) if piece.levels else 0
        limb = f"as cut: {times} ×" if times else "as cut"
        self.around.setItemText(0, limb)
        known = [times for _, times in _AROUND]
        self.around.setCurrentIndex(known.index(piece.around) if piece.around in known else 0)

    def _set_writable(self) -> None:
        writable = self._desk.writable
        for field in (self.name, self.note, self.allowance):
            field.setReadOnly(not writable)
        boxes = (*self.levels.values(), self.fold, self.line, self.dart)
        for widget in (self.role, self.layer, self.view, self.around, self.cut, *boxes):
            widget.setEnabled(writable)

    def _say(self) -> None:
        self.problem.setText(self.allowance.problem)
        self.problem.setVisible(bool(self.allowance.problem))

    def finish(self) -> None:
        """Make the edit of what is being typed."""
        for field in (self.name, self.note, self.allowance):
            field.finish()
        self.cut.interpretText()
        self.sheet.finish()

    def field(self, name: str) -> QWidget | None:
        """The field of a name in the history, by which undo finds it again."""
        kind, _, rest = name.partition(":")
        if kind in ("along", "across"):
            where, _, key = rest.partition(":")
            row = self.sheet.row(where, along=kind == "along")
            return row.lengths.get(key, row.figure)
        if kind == "level":
            return next((box for level, box in self.levels.items() if level == rest), None)
        known: dict[str, QWidget] = {
            "name": self.name, "role": self.role, "layer": self.layer, "cut": self.cut, "on_fold": self.fold,
            "line": self.line, "dart": self.dart, "around": self.around, "seam_allowance": self.allowance,
            "note": self.note, "view": self.view,
        }  # fmt: skip
        return known.get(kind)

    def _edit(self, text: str, field: str, **changed: Any) -> None:  # noqa: ANN401 - the fields of a Piece
        piece = self._desk.piece
        if piece is not None and not self._showing:
            self._desk.apply_piece(text, replace(piece, **changed), field)

    def _draft(self, **changed: Any) -> None:  # noqa: ANN401 - the fields of a Piece
        piece = self._desk.piece
        if piece is not None:
            self._desk.draft_piece(replace(piece, **changed))

    def _called(self) -> str:
        piece = self._desk.piece
        return (piece.name if piece is not None else "") or "the piece"

    def _on_name_typed(self, text: str) -> None:
        self._draft(name=text)

    def _on_name(self, text: str) -> None:
        self._edit(f"Rename {self._called()}", "name", name=" ".join(text.split()))

    def _on_name_stepped(self, step: int) -> None:
        if step > 0:
            self.sheet.start()

    def _on_note_typed(self, text: str) -> None:
        self._draft(note=text)

    def _on_note(self, text: str) -> None:
        self._edit(f"Change note on {self._called()}", "note", note=text.strip())

    def _on_allowance_typed(self, length: Length | None) -> None:
        self._draft(seam_allowance=length)

    def _on_allowance(self, length: Length | None) -> None:
        self._edit(f"Change seam allowance of {self._called()}", "seam_allowance", seam_allowance=length)

    def _on_role(self, index: int) -> None:
        self._edit(f"Change what {self._called()} is", "role", role=self.role.itemData(index))

    def _on_layer(self, index: int) -> None:
        self._edit(f"Change layer of {self._called()}", "layer", layer=self.layer.itemData(index))

    def _on_view(self, _index: int) -> None:
        self._edit(f"Change the view of {self._called()}", "view", view=self.view.chosen)

    def _on_around(self, index: int) -> None:
        self._edit(f"Change how often {self._called()} goes round", "around", around=self.around.itemData(index))

    def _on_cut(self, count: int) -> None:
        self._edit(f"Change how many of {self._called()} to cut", "cut", cut=count)

    def _on_fold(self) -> None:
        on = self.fold.isChecked()
        self._edit(f"{'Lay' if on else 'Do not lay'} {self._called()} on the fold", "on_fold", on_fold=on)

    def _on_line(self) -> None:
        on = self.line.isChecked()
        self._edit(f"{'Mark' if on else 'Unmark'} the line of {self._called()}", "line", line=on)

    def _on_dart(self) -> None:
        on = self.dart.isChecked()
        self._edit(f"{'Mark' if on else 'Unmark'} the bust dart of {self._called()}", "dart", dart=on)

    def _on_level(self) -> None:
        piece = self._desk.piece
        level = next(level for level, box in self.levels.items() if box is self.sender())
        if piece is not None:
            on = self.levels[level].isChecked()
            text = f"{self._called()} {'crosses' if on else 'does not cross'} the {LEVEL_NAMES[level]}"
            self._desk.apply_piece(text, with_level(piece, level, on=on), f"level:{level}")

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "sheet"):
            self._space()
