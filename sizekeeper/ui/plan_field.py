"""A figure of a make: typing drafts it, Enter, Tab or leaving makes the edit, what is no figure is said beneath."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QSize
from PySide6.QtGui import QFontMetricsF
from PySide6.QtWidgets import QApplication

from sizekeeper.errors import SizekeeperError
from sizekeeper.ui import theme
from sizekeeper.ui.fit_field import FigureField

if TYPE_CHECKING:
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.make import Make
    from sizekeeper.ui.lettering import Lettering
    from sizekeeper.ui.plan_edits import MakeEdits


class MakeField(FigureField):
    """One figure of the make in front, as typed."""

    def __init__(
        self,
        edits: MakeEdits,
        name: str,
        what: str,
        write: Callable[[Make, str], Make],
        problem: Lettering,
        parent: QWidget | None = None,
        *,
        wide: int = 10,
    ) -> None:
        """An empty field.

        Args:
            edits: what drafts and edits the make.
            name: what a screen reader says.
            what: what Undo shows.
            write: the make with a text in this field; raises SizekeeperError.
            problem: where it says what is wrong.
            parent: the widget it stands in.
            wide: for how many letters there is room.
        """
        super().__init__(name, parent)
        self._edits, self._what, self._write, self._problem_label = edits, what, write, problem
        self._wide, self._for = wide, ""
        self.typed.connect(self._on_typed)
        self.entered.connect(self._on_entered)
        self.restored.connect(self._on_restored)

    def show_value(self, text: str, usual: str = "") -> None:
        """Show what stands, and what is reckoned with where nothing does; what was typed for another make is let go."""
        if self._for not in ("", self._edits.shown):
            self.forget()
        self._for = self._edits.shown
        self.set_figure(text)
        if self.placeholderText() != usual:
            self.setPlaceholderText(usual)
        self.setReadOnly(self._edits.read_only)

    def forget(self) -> None:
        """Let go of what is typed, and of what was said about it."""
        if self.typing:
            self._said("")
        super().forget()

    def _said(self, sentence: str) -> None:
        self.set_problem(sentence)
        self._problem_label.setText(sentence)
        self._problem_label.setVisible(bool(sentence))

    def _on_typed(self, text: str) -> None:
        try:
            after = self._write(self._edits.make, text)
        except SizekeeperError as error:
            self._said(f"{self.accessibleName()}: {error}")
            return
        self._said("")
        self._edits.draft(after)

    def _on_entered(self, text: str) -> None:
        try:
            after = self._write(self._edits.make, text)
        except SizekeeperError as error:
            self._edits.drop()
            self.setModified(True)
            self._said(f"{self.accessibleName()}: {error}")
            return
        self._said("")
        self._edits.apply(self._what, after)
        self._edits.drop()

    def _on_restored(self) -> None:
        self._said("")
        self._edits.drop()

    # Qt's own names from here on.

    def sizeHint(self) -> QSize:
        """Room for some letters."""
        wide = QFontMetricsF(QApplication.font()).horizontalAdvance("0") * self._wide
        return QSize(round(wide) + theme.spacing(1.5), super().sizeHint().height())

    def minimumSizeHint(self) -> QSize:
        """The same."""
        return self.sizeHint()
