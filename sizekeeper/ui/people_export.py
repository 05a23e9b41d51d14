"""The question whom to export, in which figures and into what kind of file; then the file is written."""

from __future__ import annotations

from functools import partial
from pathlib import Path
from typing import TYPE_CHECKING, Literal, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QComboBox,
    QFileDialog,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QMessageBox,
    QPushButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper import assets
from sizekeeper.core.groups import belongs, known_groups
from sizekeeper.core.person import Person
from sizekeeper.reports.filing import file_name, write_file
from sizekeeper.ui import theme
from sizekeeper.ui.entry_words import entry_name, place_in_list
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.paper_dialog import PaperDialog
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from collections.abc import Sequence

    from PySide6.QtGui import QCloseEvent

    from sizekeeper.core.notation import Notation
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

Kind = Literal["xlsx", "csv"]

_KINDS: dict[Kind, str] = {"xlsx": "Workbook (XLSX)", "csv": "Plain table (CSV)"}
_FIGURES = {"": "as they were typed", "cm": "all in centimetres", "in": "all in inches"}
_ENTRY = Qt.ItemDataRole.UserRole


class ExportFile:
    """The questions where the table goes and whether an old file may go. A test puts its own answers here."""

    @classmethod
    def ask(cls, parent: QWidget, suggested: Path, kind: Kind) -> Path | None:
        """Where it goes, with its suffix; None when the question was put away."""
        plain = QFileDialog.Option.DontConfirmOverwrite  # asked below, about the name with its suffix
        kinds = f"{_KINDS[kind]} (*.{kind})"
        name, _ = QFileDialog.getSaveFileName(parent, "Export people", str(suggested), kinds, options=plain)
        path = Path(name)
        if not name:
            return None
        return path if path.suffix.casefold() == f".{kind}" else path.with_name(f"{path.name}.{kind}")

    @classmethod
    def ask_to_replace(cls, parent: QWidget, path: Path) -> bool:
        """Whether a file that is there may be written over."""
        buttons = QMessageBox.StandardButton.Yes | QMessageBox.StandardButton.Cancel
        words = f"“{path.name}” is there already. Shall the new table take its place?"
        answer = QMessageBox.question(parent, "Export people", words, buttons, QMessageBox.StandardButton.Cancel)
        return answer == QMessageBox.StandardButton.Yes


class ExportDialog(PaperDialog):
    """Whom, how and where.

    Signals:
        written(str): the file was written; the sentence says where.
    """

    written = Signal(str)

    def __init__(self, session: Session, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._settings = settings
        self._reading: Reading | None = None
        every = [value for value in session.values() if isinstance(value, Person)]
        self._people = sorted(every, key=place_in_list)
        self.who = QComboBox(self)
        self.list = QListWidget(self)
        self.figures = QComboBox(self)
        self.kind = QComboBox(self)
        self.all = Link("Tick all", parent=self)
        self.none = Link("Tick none", parent=self)
        self.says = Lettering("", "muted", self)
        self.cancel = QPushButton("Cancel", self)
        self.save = QPushButton("&Export…", self)
        self.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.setWindowTitle("Export people")
        self._fill()
        self._arrange()
        self._connect()
        self._on_who()

    def _fill(self) -> None:
        self.who.setAccessibleName("Whom to export")
        self.who.addItem("Everybody", ("all", ""))
        for group in known_groups(self._people):
            self.who.addItem(f"The group {group}", ("group", group))
        self.who.addItem("Those ticked", ("ticked", ""))
        self.list.setAccessibleName("People to export")
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.list.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.list.setSpacing(theme.spacing(0.2))
        for person in self._people:
            item = QListWidgetItem(f"{entry_name(person)}{' (hidden)' if person.hidden else ''}", self.list)
            item.setData(_ENTRY, person.id)
            item.setToolTip(entry_name(person))
            item.setFlags(item.flags() | Qt.ItemFlag.ItemIsUserCheckable)
            item.setCheckState(Qt.CheckState.Unchecked)
        self.figures.setAccessibleName("How the figures are written")
        for unit, words in _FIGURES.items():
            self.figures.addItem(words, unit)
        self.kind.setAccessibleName("Kind of file")
        for kind, words in _KINDS.items():
            self.kind.addItem(words, kind)
        self.who.setSizeAdjustPolicy(QComboBox.SizeAdjustPolicy.AdjustToMinimumContentsLengthWithIcon)
        self.who.setMinimumContentsLength(24)

    def _arrange(self) -> None:
        fields = QGridLayout()
        fields.setSpacing(theme.spacing(1))
        for row, (text, widget) in enumerate(
            (("&Whom", self.who), ("&Figures", self.figures), ("&Kind of file", self.kind))
        ):
            label = QLabel(text, self)
            label.setBuddy(widget)
            fields.addWidget(label, row, 0)
            fields.addWidget(widget, row, 1)
        fields.setColumnStretch(1, 1)
        ticks, buttons = QHBoxLayout(), QHBoxLayout()
        for link in (self.all, self.none):
            ticks.addWidget(link)
        ticks.addStretch(1)
        buttons.addStretch(1)
        for button in (self.cancel, self.save):
            buttons.addWidget(button)
        column = QVBoxLayout(self)
        column.setContentsMargins(theme.spacing(3), theme.spacing(2), theme.spacing(3), theme.spacing(2))
        column.setSpacing(theme.spacing(1))
        column.addWidget(Lettering("Export people", "title", self))
        column.addLayout(fields)
        column.addWidget(self.list, 1)
        column.addLayout(ticks)
        column.addWidget(self.says)
        column.addLayout(buttons)
        self.save.setDefault(True)
        self.resize(theme.spacing(58), theme.spacing(66))

    def _connect(self) -> None:
        self.who.currentIndexChanged.connect(self._on_who)
        self.list.itemChanged.connect(self._on_ticked)
        self.all.clicked.connect(self._tick_all)
        self.none.clicked.connect(self._tick_none)
        self.figures.currentIndexChanged.connect(self._refresh)
        self.save.clicked.connect(self._export)
        self.cancel.clicked.connect(self.reject)

    def chosen(self) -> list[Person]:
        """Those who are exported, by name."""
        ticked = {item.data(_ENTRY) for item in self._items() if item.checkState() == Qt.CheckState.Checked}
        return [person for person in self._people if person.id in ticked]

    def _items(self) -> list[QListWidgetItem]:
        return [self.list.item(row) for row in range(self.list.count())]

    def _tick(self, wanted: set[str]) -> None:
        self.list.blockSignals(True)
        for item in self._items():
            item.setCheckState(Qt.CheckState.Checked if item.data(_ENTRY) in wanted else Qt.CheckState.Unchecked)
        self.list.blockSignals(False)
        self.list.viewport().update()
        self._refresh()

    def _on_who(self) -> None:
        """Everybody leaves the hidden out; a group takes all of its own in."""
        how, group = self.who.currentData()
        if how == "all":
            self._tick({person.id for person in self._people if not person.hidden})
        elif how == "group":
            self._tick({person.id for person in self._people if belongs(person, group)})
        else:
            self._refresh()

    def _on_ticked(self) -> None:
        """A tick set by hand makes it those ticked."""
        self.who.blockSignals(True)
        self.who.setCurrentIndex(self.who.count() - 1)
        self.who.blockSignals(False)
        self._refresh()

    def _tick_all(self) -> None:
        self._tick({person.id for person in self._people})
        self._on_ticked()

    def _tick_none(self) -> None:
        self._tick(set())
        self._on_ticked()

    def _refresh(self) -> None:
        count = len(self.chosen())
        self.save.setEnabled(bool(count))
        if not count:
            self.says.speak("Tick the people to be exported.", "muted")
            return
        people = "One person" if count == 1 else f"{count} people"
        rest = " Figures in one unit are rounded to your usual step." if self.figures.currentData() else ""
        self.says.speak(f"{people}: the newest figure of each measure.{rest}", "muted")

    @property
    def _notation(self) -> Notation | None:
        unit = self.figures.currentData()
        return self._settings.notation_in(unit) if unit else None

    def _export(self) -> None:
        kind = cast("Kind", self.kind.currentData())
        stored = self._settings.stored
        folder = Path(str(stored.value("people/folder", str(Path.home()))))
        group = str(self.who.currentData()[1])
        path = ExportFile.ask(self, folder / file_name("People", group, suffix=f".{kind}"), kind)
        if path is None or (path.exists() and not ExportFile.ask_to_replace(self, path)):
            return
        stored.setValue("people/folder", str(path.parent))
        self._write(path, kind, replace=path.exists())

    def _write(self, path: Path, kind: Kind, *, replace: bool) -> None:
        """Make and write the table in the background; the dialog waits and can be put away."""
        self.save.setEnabled(False)
        self.says.speak("Writing…", "muted")
        work = partial(_written, self.chosen(), self._notation, path, kind, replace)
        self._reading = Reading(work)
        self._reading.done.connect(self._on_written)
        self._reading.failed.connect(self._on_failed)
        self._reading.start()

    def _on_written(self, path: object) -> None:
        count = len(self.chosen())
        self.written.emit(f"{'One person is' if count == 1 else f'{count} people are'} in “{path}”.")
        self._reading = None
        self.accept()

    def _on_failed(self, sentence: str) -> None:
        self._reading = None
        self.save.setEnabled(True)
        self.says.speak(sentence, "warning")

    def closeEvent(self, event: QCloseEvent) -> None:
        """Let a file that is being made go."""
        if self._reading is not None:
            self._reading.cancel()
        super().closeEvent(event)


def _written(
    people: Sequence[Person],
    notation: Notation | None,
    path: Path,
    kind: Kind,
    replace: bool,  # noqa: FBT001 - bound by place
    reading: Reading,
) -> Path:
    from sizekeeper.reports.people_table import people_csv, people_table, people_workbook  # noqa: PLC0415 - loads much

    table = people_table(people, assets.measures(), notation)
    data = people_csv(table) if kind == "csv" else people_workbook(table)
    reading.check(1, 1)
    write_file(path, data, replace=replace)
    return path
