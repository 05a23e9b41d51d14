"""The answer in words: the verdict large, its doubts, warnings, and what the body chart alone would say."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt
from PySide6.QtWidgets import QVBoxLayout, QWidget

from sizekeeper.core import sentences
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering

if TYPE_CHECKING:
    from sizekeeper.core.result import Fit
    from sizekeeper.core.wording import Wording


@dataclass(frozen=True, slots=True)
class VerdictText:
    """The texts above the table."""

    headline: str
    doubts: str = ""
    warnings: str = ""
    chart: str = ""

    @classmethod
    def of(cls, fit: Fit, words: Wording) -> VerdictText:
        """What a fit says."""
        doubts = " ".join([*sentences.doubts(fit, words), sentences.room_for_error(fit, words)]).strip()
        return cls(
            sentences.headline(fit, words),
            doubts,
            "\n".join(sentences.warnings(fit, words)),
            sentences.chart_says(fit, words),
        )


class VerdictView(QWidget):
    """Four texts, each hidden while it is empty. Nothing is built anew when they change."""

    def __init__(self, parent: QWidget | None = None) -> None:
        """Start silent."""
        super().__init__(parent)
        self._shown = VerdictText("")
        self.headline = Lettering("", "title", self)
        self.headline.setWordWrap(True)
        self.doubts = Lettering("", "plain", self)
        self.warnings = Lettering("", "warning", self)
        self.chart = Lettering("", "muted", self)
        self._column = QVBoxLayout(self)
        self._column.setContentsMargins(0, 0, 0, 0)
        for label in (self.headline, self.doubts, self.warnings, self.chart):
            label.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
            self._column.addWidget(label)
            label.hide()
        self._space()

    @property
    def shown(self) -> VerdictText:
        """The texts shown."""
        return self._shown

    def show_text(self, text: VerdictText) -> None:
        """Show other texts, touching only what is different."""
        self._shown = text
        pairs = (
            (self.headline, text.headline),
            (self.doubts, text.doubts),
            (self.warnings, text.warnings),
            (self.chart, text.chart),
        )
        for label, words in pairs:
            if label.text() != words:
                label.setText(words)
            if label.isHidden() == bool(words):
                label.setVisible(bool(words))

    def _space(self) -> None:
        self._column.setSpacing(theme.spacing(0.75))

    # Qt's own names from here on.

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if hasattr(self, "_column") and theme.font_changed(event):
            self._space()
