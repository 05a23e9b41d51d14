"""The views of a pattern: those that have finished figures of their own, as names above the finished chart."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QDialogButtonBox,
    QHBoxLayout,
    QLineEdit,
    QMenu,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.tab_order import one_after_the_other

if TYPE_CHECKING:
    from collections.abc import Sequence

ALL_VIEWS = "All views"


class ViewDialog(PaperDialog):
    """Names a view, and for a new one says where its figures come from.

    Signals:
        named(str, bool): the view's name, and whether its figures start as a copy.
    """

    named = Signal(str, bool)

    def __init__(self, taken: Sequence[str], name: str = "", copied: str = "", parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._taken = {view.casefold() for view in taken}
        self.setWindowTitle("Rename view" if name else "Add view")
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(*[theme.spacing(3)] * 4)
        layout.setSpacing(theme.spacing(1))
        layout.addWidget(Lettering("The view as the envelope calls it, like B or Long sleeve", "plain"))
        self.field = QLineEdit(name)
        self.field.setAccessibleName("Name of the view")
        self.field.selectAll()
        layout.addWidget(self.field)
        self.copy = QRadioButton(f"Start with the figures of {copied.lower()}")
        self.empty = QRadioButton("Start empty, with the same sizes and measures")
        self.copy.setChecked(True)
        for button in (self.copy, self.empty):
            button.setVisible(not name)
            layout.addWidget(button)
        self.problem = Lettering("", "warning")
        layout.addWidget(self.problem)
        buttons = QDialogButtonBox()
        done = buttons.addButton("Rename" if name else "Add", QDialogButtonBox.ButtonRole.AcceptRole)
        buttons.addButton("Cancel", QDialogButtonBox.ButtonRole.RejectRole).setAutoDefault(False)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        layout.addWidget(buttons)
        done.setDefault(True)
        self.setMinimumWidth(theme.spacing(48))

    @classmethod
    def ask(cls, taken: Sequence[str], name: str = "", copied: str = "", *, parent: QWidget) -> ViewDialog:
        """Open the question over a window; `named` answers."""
        dialog = cls(taken, name, copied, parent)
        dialog.open()
        return dialog

    def accept(self) -> None:
        """Take the name, or say why it cannot be."""
        name = " ".join(self.field.text().split())
        if not name:
            self.problem.setText("A view needs a name.")
        elif name.casefold() in self._taken or name.casefold() == ALL_VIEWS.casefold():
            self.problem.setText(f"There is a view {name} already.")
        else:
            super().accept()
            self.named.emit(name, self.copy.isChecked())


class ViewStrip(QWidget):
    """The names of the views in a row; the one whose finished figures are shown is marked.

    Signals:
        chosen(str): a view was chosen, "" for the figures that serve all views.
        add_wanted(), rename_wanted(), remove_wanted(): the view shown should be added to, renamed or removed.
    """

    chosen = Signal(str)
    add_wanted = Signal()
    rename_wanted = Signal()
    remove_wanted = Signal()

    def __init__(self, after: QWidget, parent: QWidget | None = None) -> None:
        """Without views; Tab comes here from `after`."""
        super().__init__(parent)
        self._after = after
        self._shown: tuple[tuple[str, ...], str, bool] | None = None
        self._buttons: list[QRadioButton] = []
        self._group = QButtonGroup(self)
        self._row = QHBoxLayout(self)
        self._row.setContentsMargins(0, 0, 0, 0)
        self._row.setSpacing(theme.spacing(2))
        self.add = Link("Add a view…")
        self.add.clicked.connect(self.add_wanted)
        self.change = Link("Change view", "Rename or remove the view")
        menu = QMenu(self.change)
        self.rename = menu.addAction("Rename the view…")
        self.remove = menu.addAction("Remove the view, its figures and its pieces")
        self.rename.triggered.connect(self.rename_wanted)
        self.remove.triggered.connect(self.remove_wanted)
        self.change.setMenu(menu)
        self._row.addWidget(self.add)
        self._row.addWidget(self.change)
        self._row.addStretch(1)
        self._group.buttonClicked.connect(self._on_clicked)

    def show_views(self, views: Sequence[str], current: str, *, editable: bool) -> None:
        """Show the views of a pattern, and which one's figures are shown."""
        wanted = (tuple(views), current, editable)
        if wanted == self._shown:
            return
        if self._shown is None or self._shown[0] != wanted[0]:
            self._make_buttons(views)
        self._shown = wanted
        for button in self._buttons:
            button.setChecked(button.property("view") == current)
            button.setVisible(bool(views))
        self.add.setVisible(editable)
        self.change.setVisible(editable and bool(current))

    def _make_buttons(self, views: Sequence[str]) -> None:
        for button in self._buttons:
            self._group.removeButton(button)
            self._row.removeWidget(button)
            button.hide()
            button.deleteLater()
        self._buttons = []
        for place, view in enumerate(("", *views)):
            button = QRadioButton(view.replace("&", "&&") or ALL_VIEWS)
            button.setAccessibleName(f"Finished measurements of view {view}" if view else "Finished measurements, all")
            button.setProperty("view", view)
            self._group.addButton(button)
            self._row.insertWidget(place, button)
            self._buttons.append(button)
        one_after_the_other(self._after, *self._buttons, self.add, self.change)

    def _on_clicked(self, button: QWidget) -> None:
        self.chosen.emit(str(button.property("view")))
