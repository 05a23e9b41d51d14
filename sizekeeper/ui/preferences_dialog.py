"""The preferences: in which unit lengths are shown, and how finely. A choice acts at once."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from PySide6.QtCore import Qt
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialogButtonBox,
    QFormLayout,
    QHBoxLayout,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.core.notation import show
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog

if TYPE_CHECKING:
    from sizekeeper.ui.settings import Settings

_SAMPLE = Fraction(3775 * 254, 10000)
"""37 3/4 in, in cm: a bust that shows what the steps do."""


class PreferencesDialog(PaperDialog):
    """Units and steps, with a sample of how a length then looks."""

    def __init__(self, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Preferences")
        self._settings = settings
        self.sample = Lettering("", "muted", self)
        units = {"as each person is measured": "own", "centimetres": "cm", "inches": "in"}
        self.unit = self._choices(units, settings.shown_unit, "Show lengths in")
        steps = {"to ⅛": "1/8", "to 1⁄16": "1/16"}
        self.inch_step = self._choices(steps, str(settings.inch_step), "Inches are shown")
        steps = {"to 0.1": "1/10", "to 0.5": "1/2"}
        self.cm_step = self._choices(steps, str(settings.cm_step), "Centimetres are shown")
        self._arrange()
        self._show_sample()

    def _choices(self, choices: dict[str, str], chosen: str, question: str) -> QButtonGroup:
        group = QButtonGroup(self)
        for text, value in choices.items():
            button = QRadioButton(text, self)
            button.setProperty("choice", value)
            button.setAccessibleName(f"{question} {text}")
            button.setChecked(value == chosen)
            group.addButton(button)
        group.buttonClicked.connect(self._choose)
        return group

    def _arrange(self) -> None:
        form = QFormLayout()
        form.setHorizontalSpacing(theme.spacing(2))
        form.setVerticalSpacing(theme.spacing(1.5))
        rows = (
            ("Show lengths in", self.unit),
            ("Inches are shown", self.inch_step),
            ("Centimetres are shown", self.cm_step),
        )
        for label, group in rows:
            row = QHBoxLayout()
            row.setSpacing(theme.spacing(2))
            for button in group.buttons():
                row.addWidget(button)
            row.addStretch(1)
            form.addRow(label, row)
        buttons = QDialogButtonBox(self)
        buttons.addButton("Close", QDialogButtonBox.ButtonRole.RejectRole)
        buttons.rejected.connect(self.reject)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*(theme.spacing(3),) * 4)
        layout.setSpacing(theme.spacing(2))
        layout.addWidget(Lettering("Units and fractions", "part", self))
        layout.addLayout(form)
        layout.addWidget(self.sample)
        layout.addWidget(
            Lettering("What you type stays as you typed it. Each person and each chart has a unit of its own.", "note")
        )
        layout.addStretch(1)
        layout.addWidget(buttons)

    @staticmethod
    def _chosen(group: QButtonGroup) -> str:
        button = group.checkedButton()
        return str(button.property("choice")) if button is not None else ""

    def _choose(self) -> None:
        self._settings.choose(
            unit=self._chosen(self.unit),
            inch_step=Fraction(self._chosen(self.inch_step)),
            cm_step=Fraction(self._chosen(self.cm_step)),
        )
        self._show_sample()

    def _show_sample(self) -> None:
        shown = self._settings.notation_for("in")
        other = self._settings.notation_in("cm" if shown.unit == "in" else "in")
        first, second = (show(_SAMPLE, notation) for notation in (shown, other))
        self.sample.setText(
            f"A bust measured as 37 3/4 in is shown as {first}; where both are shown, {first} · {second}."
        )
