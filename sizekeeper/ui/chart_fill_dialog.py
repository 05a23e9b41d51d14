"""Asks by which step a row goes on from size to size."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QDialogButtonBox, QLineEdit, QVBoxLayout, QWidget

from sizekeeper.core.notation import parse_length
from sizekeeper.errors import LengthError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog

if TYPE_CHECKING:
    from sizekeeper.core.length import Length, Unit


class FillDialog(PaperDialog):
    """A step, typed or taken from two neighbouring figures.

    Signals:
        stepped(object): the step as a `Length`, or None for each row's own last step.
    """

    stepped = Signal(object)

    def __init__(self, says: str, step: str, unit: Unit, *, own: bool, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._unit: Unit = unit
        self._own = own
        self.setWindowTitle("Fill to the right")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*[theme.spacing(3)] * 4)
        layout.setSpacing(theme.spacing(1.5))
        layout.addWidget(Lettering(says, "plain"))
        self.field = QLineEdit(step)
        self.field.setAccessibleName("Step from size to size")
        self.field.setPlaceholderText("each row's own last step" if own else f"step in {unit}, like 4 or 1 1/2")
        self.field.selectAll()
        layout.addWidget(self.field)
        self.problem = Lettering("", "warning")
        layout.addWidget(self.problem)
        buttons = QDialogButtonBox()
        fill = buttons.addButton("Fill", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole).setAutoDefault(False)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout.addWidget(buttons)
        fill.setDefault(True)
        self.setMinimumWidth(theme.spacing(48))

    @classmethod
    def ask(cls, says: str, step: str, unit: Unit, *, own: bool, parent: QWidget) -> FillDialog:
        """Open the question over a window; `stepped` answers."""
        dialog = cls(says, step, unit, own=own, parent=parent)
        dialog.open()
        return dialog

    def step(self) -> Length | None:
        """The step typed, None for each row's own; raises LengthError."""
        text = self.field.text().strip()
        if not text and self._own:
            return None
        step = parse_length(text, self._unit)
        if step.value == Fraction(0):
            raise LengthError("A step of nothing fills every size with the same figure: copy it instead")
        return step

    def accept(self) -> None:
        """Take the step, or say what is wrong with it."""
        try:
            step = self.step()
        except LengthError as error:
            said = str(error)
            self.problem.setText(f"{said[0].upper()}{said[1:].rstrip('.')}.")
            self.field.setFocus()
            return
        super().accept()
        self.stepped.emit(step)
