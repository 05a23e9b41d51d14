"""What the user prefers about the window itself: units, fractions, and where the window stood."""

from __future__ import annotations

from fractions import Fraction
from typing import Literal

from PySide6.QtCore import QLocale, QObject, QSettings, Signal

from sizekeeper.core.notation import Notation

INCH_STEPS = (Fraction(1, 8), Fraction(1, 16))
CM_STEPS = (Fraction(1, 10), Fraction(1, 2))


class Settings(QObject):
    """The preferences, kept in the platform's own settings place.

    Signals:
        changed(): a preference is different now; views repaint.
    """

    changed = Signal()

    def __init__(self, stored: QSettings, parent: QObject | None = None) -> None:
        """Read the preferences from a settings file."""
        super().__init__(parent)
        self.stored = stored

    @property
    def shown_unit(self) -> Literal["own", "cm", "in"]:
        """The unit in which lengths are shown: one for everybody, or "own": as each person is measured."""
        stored = self.stored.value("unit")
        return "cm" if stored == "cm" else "in" if stored == "in" else "own"

    @property
    def unit(self) -> Literal["cm", "in"]:
        """The unit of somebody or something new: the one chosen, else the one usual in the user's country."""
        if self.shown_unit != "own":
            return "in" if self.shown_unit == "in" else "cm"
        metric = QLocale().measurementSystem() == QLocale.MeasurementSystem.MetricSystem
        return "cm" if metric else "in"

    @property
    def inch_step(self) -> Fraction:
        """The step of shown inches."""
        return self._step("inch_step", INCH_STEPS)

    @property
    def cm_step(self) -> Fraction:
        """The step of shown centimetres."""
        return self._step("cm_step", CM_STEPS)

    def _step(self, key: str, known: tuple[Fraction, ...]) -> Fraction:
        text = str(self.stored.value(key, str(known[0])))
        return next((step for step in known if str(step) == text), known[0])

    def notation_for(self, own: Literal["cm", "in"]) -> Notation:
        """How lengths are shown for a person measured in a unit of her own."""
        return self.notation_in(own if self.shown_unit == "own" else self.unit)

    def notation_in(self, unit: Literal["cm", "in"]) -> Notation:
        """How lengths are shown in a unit."""
        return Notation(unit, self.inch_step if unit == "in" else self.cm_step)

    def choose(
        self, *, unit: str | None = None, inch_step: Fraction | None = None, cm_step: Fraction | None = None
    ) -> None:
        """Change preferences; those not named stay."""
        for key, value in (("unit", unit), ("inch_step", inch_step), ("cm_step", cm_step)):
            if value is not None:
                self.stored.setValue(key, str(value))
        self.changed.emit()
