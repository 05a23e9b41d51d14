"""What can be chosen for a sheet: paper, view, size on the screen, and whether it is private."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QLocale, QSignalBlocker, Signal
from PySide6.QtWidgets import QCheckBox, QComboBox, QHBoxLayout, QVBoxLayout, QWidget

from sizekeeper.reports.papers import PAPER_WORDS, paper_of
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.reports.sheet import Paper
    from sizekeeper.ui.settings import Settings
    from sizekeeper.ui.sheet_pages import Zoom
    from sizekeeper.ui.sheet_window import SheetWindow

_SIZES = {"width": "Page width", "whole": "Whole page", "actual": "Actual size", "text": "As text"}


def usual_paper(settings: Settings) -> Paper:
    """The paper chosen last, else the one usual in the user's country."""
    kept = settings.stored.value("sheet/paper")
    if kept in PAPER_WORDS:
        return cast("Paper", kept)
    return paper_of(QLocale.territoryToCode(QLocale().territory()))


def paper_box(settings: Settings, parent: QWidget) -> QComboBox:
    """The choice of paper, as it was left."""
    box = QComboBox(parent)
    for paper, words in PAPER_WORDS.items():
        box.addItem(words, paper)
    box.setCurrentIndex(box.findData(usual_paper(settings)))
    box.setAccessibleName("Paper")
    return box


def private_box(parent: QWidget) -> QCheckBox:
    """The choice of a private sheet, and what that is."""
    box = QCheckBox("Pri&vate: without body measurements", parent)
    box.setToolTip(
        "For somebody who only cuts or sews: what to cut and the work list, without measurements, ease and charts.\n"
        "Amounts to alter stay on it: with the pattern’s printed body chart a length of the body can be inferred."
    )
    box.setAccessibleDescription(box.toolTip())
    return box


class SheetBar(QWidget):
    """The choices above the pages.

    Signals:
        changed(): the sheet is another one now.
        size_chosen(): only the size on the screen is another one.
    """

    changed = Signal()
    size_chosen = Signal()

    def __init__(self, settings: Settings, parent: QWidget) -> None:
        super().__init__(parent)
        self._settings = settings
        self.paper_choice = paper_box(settings, self)
        self.view_choice = QComboBox(self)
        self.size_choice = QComboBox(self)
        self.private_choice = private_box(self)
        self._view_label = Lettering("View", "muted", self)
        self._pages = Lettering("", "muted", self)
        self._fill()
        self._arrange()
        self.paper_choice.activated.connect(self._on_paper)
        self.view_choice.activated.connect(self.changed)
        self.private_choice.toggled.connect(self.changed)
        self.size_choice.activated.connect(self._on_size)

    def _fill(self) -> None:
        for zoom, words in _SIZES.items():
            self.size_choice.addItem(words, zoom)
        kept = self.size_choice.findData(self._settings.stored.value("sheet/size", "width"))
        self.size_choice.setCurrentIndex(max(kept, 0))
        self.view_choice.setAccessibleName("View")
        self.size_choice.setAccessibleName("Show")

    def _arrange(self) -> None:
        row = QHBoxLayout(self)
        row.setContentsMargins(0, 0, 0, 0)
        row.setSpacing(theme.spacing(1))
        for label, box in (
            (Lettering("Paper", "muted", self), self.paper_choice),
            (self._view_label, self.view_choice),
            (Lettering("Show", "muted", self), self.size_choice),
        ):
            label.setWordWrap(False)
            row.addWidget(label)
            row.addWidget(box)
            row.addSpacing(theme.spacing(1))
        row.addWidget(self.private_choice)
        row.addStretch(1)
        self._pages.setWordWrap(False)
        row.addWidget(self._pages)
        self.show_views({}, "")

    @property
    def paper(self) -> Paper:
        """The paper."""
        return cast("Paper", self.paper_choice.currentData())

    @property
    def view(self) -> str:
        """The view; empty where there is nothing to choose."""
        return str(self.view_choice.currentData() or "")

    @property
    def view_words(self) -> str:
        """What the view is called; empty where there is nothing to choose."""
        return self.view_choice.currentText()

    @property
    def private(self) -> bool:
        """Whether body measurements are left out."""
        return self.private_choice.isChecked()

    @property
    def as_text(self) -> bool:
        """Whether the sheet is read as text."""
        return str(self.size_choice.currentData()) == "text"

    @property
    def zoom(self) -> Zoom:
        """How large the pages are shown."""
        return cast("Zoom", self.size_choice.currentData())

    def show_views(self, views: Mapping[str, str], chosen: str) -> None:
        """Offer the views of a pattern; nothing where there is only one."""
        with QSignalBlocker(self.view_choice):
            self.view_choice.clear()
            for view, words in views.items():
                self.view_choice.addItem(words, view)
            self.view_choice.setCurrentIndex(max(self.view_choice.findData(chosen), 0) if views else -1)
        for widget in (self._view_label, self.view_choice):
            widget.setVisible(bool(views))

    def say_pages(self, words: str) -> None:
        """Say how many pages there are."""
        self._pages.setText(words)

    def _on_paper(self) -> None:
        self._settings.stored.setValue("sheet/paper", self.paper)
        self.changed.emit()

    def _on_size(self) -> None:
        self._settings.stored.setValue("sheet/size", self.size_choice.currentData())
        self.size_chosen.emit()


def arrange(window: SheetWindow) -> None:
    """Lay the window out: whose sheet and the choices above, the pages, and what to do with them below."""
    edge = theme.spacing(3)
    head = QVBoxLayout()
    head.setContentsMargins(edge, theme.spacing(2), edge, theme.spacing(1.5))
    head.setSpacing(theme.spacing(0.5))
    head.addWidget(window.heading)
    head.addWidget(window.whose)
    head.addSpacing(theme.spacing(1))
    head.addWidget(window.bar)
    foot = QHBoxLayout()
    foot.setContentsMargins(edge, theme.spacing(1.5), edge, theme.spacing(1.5))
    foot.setSpacing(theme.spacing(1.5))
    words = QVBoxLayout()
    words.addWidget(window.said)
    words.addWidget(window.trouble)
    foot.addLayout(words, 1)
    foot.addWidget(window.print)
    foot.addWidget(window.save)
    column = QVBoxLayout(window)
    column.setContentsMargins(0, 0, 0, 0)
    column.setSpacing(0)
    column.addLayout(head)
    column.addWidget(Rule(window))
    column.addWidget(window.front, 1)
    column.addWidget(Rule(window))
    column.addLayout(foot)
