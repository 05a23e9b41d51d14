"""The head of the Pattern page: what the envelope says besides its charts."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Any, cast

from PySide6.QtCore import QEvent, Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QCheckBox,
    QGridLayout,
    QHBoxLayout,
    QLabel,
    QRadioButton,
    QVBoxLayout,
    QWidget,
)

from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import KNIT_FROM
from sizekeeper.core.preference import GARMENTS
from sizekeeper.core.stretch import parse_stretch, write_stretch
from sizekeeper.errors import LengthError, SizekeeperError
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering
from sizekeeper.ui.person_fields import CalmCombo, DraftField, DraftNotes, TitleField
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from typing import Literal

    from sizekeeper.core.length import Length
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.ui.session import Session

LENGTHS = {
    "seam_allowance": ("Seam allowance", "Seam allowance", "Printed on the pieces or in the instructions"),
    "drafted_difference": (
        "Bust less high bust",
        "Bust less high bust, as drafted",
        "The cup the pattern is drafted for: bust minus high bust. Left empty, it counts as 5 cm.",
    ),
    "drafted_height": ("Height drafted for", "Height drafted for", "The body height the lengths are drafted for"),
}
"""The pattern's lengths: what stands above each field, its name in full, and what it is."""
STRETCH_HELP = (
    "Stretch: mark a length on the folded fabric and pull until it resists. (Stretched − rest) ÷ rest: "
    "10 that reach 14 are 40 %. You can type “10 to 14”."
)
LITTLE_STRETCH = "Below 15 % a knit is fitted like a woven."
CAUTIONS = {
    "child": (
        "Children’s clothes: cords, small parts and nightwear flammability follow local rules (EN 14682 and local law)."
    ),
    "knit": "Not for compression or medical garments: follow the clinician or the product’s standard.",
}


class PatternForm(QWidget):
    """The fields of a pattern. Each change is an edit.

    Signals:
        done(): Enter in the title asks to go on to the chart.
    """

    done = Signal()

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._session = session
        self._entry = ""
        self._problems: dict[str, str] = {}
        self.title = TitleField("Title of the pattern", self)
        self.title.setPlaceholderText("Title of the pattern")
        self.publisher = DraftField("Publisher", self)
        self.garment = CalmCombo("Garment", self)
        for garment in GARMENTS:
            self.garment.addItem(garment.capitalize(), garment)
        self.woven, self.knit = QRadioButton("Woven", self), QRadioButton("Knit", self)
        self.cm, self.inch = QRadioButton("cm", self), QRadioButton("in", self)
        self.cm.setAccessibleName("Lengths here in centimetres")
        self.inch.setAccessibleName("Lengths here in inches")
        self._groups = (self._group(self.woven, self.knit), self._group(self.cm, self.inch))
        self.stretch = DraftField("Stretch in percent", self)
        self.stretch.setPlaceholderText("%")
        self.lengths = {key: DraftField(names[1], self) for key, names in LENGTHS.items()}
        self.child = QCheckBox("Children’s wear", self)
        self.notes = DraftNotes("Notes on the pattern")  # the page puts it below the charts, and Tab goes there last
        self.notes.setPlaceholderText("Notes: what the envelope says of fabric, what to watch for")
        self.says = Lettering("", "warning", self)
        self.hint = Lettering("", "muted", self)
        self.caution = Lettering("", "note", self)
        self._lay()
        self._connect()

    def _group(self, *buttons: QRadioButton) -> QButtonGroup:
        group = QButtonGroup(self)
        for button in buttons:
            group.addButton(button)
        return group

    def _lay(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing(1))
        column.addWidget(self.title)
        grid = QGridLayout()
        grid.setHorizontalSpacing(theme.spacing(2))
        grid.setVerticalSpacing(theme.spacing(0.25))
        parts: list[tuple[str, tuple[QWidget, ...]]] = [
            ("Publisher", (self.publisher,)),
            ("Garment", (self.garment,)),
            ("Fabric", (self.woven, self.knit)),
            ("Stretch", (self.stretch,)),
            *((LENGTHS[key][0], (field,)) for key, field in self.lengths.items()),
            ("Lengths in", (self.cm, self.inch)),
        ]
        self.labels: dict[str, QLabel] = {}
        for place, (label, widgets) in enumerate(parts):
            self._put(grid, place, label, widgets)
        column.addLayout(grid)
        column.addWidget(self.child)
        for line in (self.says, self.hint, self.caution):
            column.addWidget(line)
        self._space()

    def _put(self, grid: QGridLayout, place: int, label: str, widgets: tuple[QWidget, ...]) -> None:
        """A label above its fields, four to a line."""
        row, at = divmod(place, 4)
        text = Lettering(label, "note", self)
        text.setWordWrap(False)
        text.setBuddy(widgets[0])
        self.labels[label] = text
        grid.addWidget(text, row * 3, at)
        line = QHBoxLayout()
        line.setSpacing(theme.spacing(1))
        for widget in widgets:
            line.addWidget(widget)
        if len(widgets) > 1:
            line.addStretch(1)
        grid.addLayout(line, row * 3 + 1, at)
        grid.setRowMinimumHeight(row * 3 + 2, theme.spacing(0.5))
        grid.setColumnStretch(at, 2 if at == 0 else 1)

    def _space(self) -> None:
        self.notes.setFixedHeight(theme.spacing(9))

    def _connect(self) -> None:
        self.title.typed.connect(self._on_title_typed)
        self.title.entered.connect(self._on_title)
        self.title.stepped.connect(self._on_title_stepped)
        self.publisher.typed.connect(self._on_publisher_typed)
        self.publisher.entered.connect(self._on_publisher)
        self.stretch.typed.connect(self._on_stretch_typed)
        self.stretch.entered.connect(self._on_stretch)
        self.notes.typed.connect(self._on_notes_typed)
        self.notes.entered.connect(self._on_notes)
        for field in self._fields():
            field.restored.connect(self._on_restored)
        for key, field in self.lengths.items():
            field.setToolTip(LENGTHS[key][2])
            field.entered.connect(self._on_length)
        self.garment.activated.connect(self._on_garment)
        self.woven.clicked.connect(self._on_woven)
        self.knit.clicked.connect(self._on_knit)
        self.cm.clicked.connect(self._on_cm)
        self.inch.clicked.connect(self._on_inch)
        self.child.clicked.connect(self._on_child)

    @property
    def pattern(self) -> Pattern | None:
        """The pattern shown, as last edited."""
        value = self._session.committed(self._entry)
        return cast("Pattern | None", value)

    def field(self, name: str) -> QWidget | None:
        """The field of a name in the history, by which undo finds it again."""
        known: dict[str, QWidget] = {
            "title": self.title, "publisher": self.publisher, "garment": self.garment, "fabric": self.woven,
            "stretch": self.stretch, "unit": self.cm, "child": self.child, "notes": self.notes, **self.lengths,
        }  # fmt: skip
        return known.get(name)

    def _fields(self) -> list[DraftField | DraftNotes]:
        return [self.title, self.publisher, self.stretch, self.notes, *self.lengths.values()]

    def finish(self) -> None:
        """Make the edits of what was typed, before another pattern is shown."""
        for field in self._fields():
            field.finish()

    def show_pattern(self, pattern: Pattern) -> None:
        """Show a pattern."""
        if pattern.id != self._entry:
            self._entry = pattern.id
            self._problems.clear()
        self.title.show_text(pattern.title)
        self.publisher.show_text(pattern.publisher)
        self.notes.show_text(pattern.notes)
        for line in (self.title, self.publisher):
            if not line.hasFocus():
                line.setCursorPosition(0)
        self.garment.setCurrentIndex(self.garment.findData(pattern.garment))
        (self.knit if pattern.fabric == "knit" else self.woven).setChecked(True)
        (self.inch if pattern.unit == "in" else self.cm).setChecked(True)
        self.child.setChecked(pattern.child)
        if "stretch" not in self._problems:
            self.stretch.show_text(write_stretch(pattern.stretch))
        for key, field in self.lengths.items():
            if key not in self._problems:
                field.show_text(_text(getattr(pattern, key)))
        self._set_writable()
        self._say(pattern)

    def _set_writable(self) -> None:
        writable = not self._session.read_only
        for field in self._fields():
            field.setReadOnly(not writable)
        for widget in (self.garment, self.woven, self.knit, self.cm, self.inch, self.child):
            widget.setEnabled(writable)

    def _say(self, pattern: Pattern) -> None:
        knit = pattern.fabric == "knit"
        self.stretch.setVisible(knit)
        self.labels["Stretch"].setVisible(knit)
        little = knit and pattern.stretch < KNIT_FROM
        self.hint.setText(f"{STRETCH_HELP} {LITTLE_STRETCH}" if little else STRETCH_HELP)
        self.hint.setVisible(knit)
        cautions = [text for key, text in CAUTIONS.items() if (pattern.child if key == "child" else knit)]
        self.caution.setText(" ".join(cautions))
        self.caution.setVisible(bool(cautions))
        self.says.setText(" ".join(self._problems.values()))
        self.says.setVisible(bool(self._problems))

    def _edit(self, text: str, field: str, **changed: Any) -> None:  # noqa: ANN401 - the fields of a Pattern
        before = self.pattern
        if before is None:
            return
        after = replace(before, **changed)
        if after == before:
            self._session.drop_draft(before.id)
            self._refresh()
        else:
            self._session.apply(text, before, after, place=Place("pattern", before.id, field))

    def _draft(self, **changed: Any) -> None:  # noqa: ANN401 - the fields of a Pattern
        before = self.pattern
        if before is not None and not self._session.read_only:
            self._session.draft(replace(before, **changed))

    def _on_restored(self) -> None:
        for key in [k for k in self._problems if self.field(k) is self.sender()]:
            del self._problems[key]
        self._session.drop_draft(self._entry)
        if self.pattern is not None:
            self._say(self.pattern)

    def _on_title_typed(self, text: str) -> None:
        self._draft(title=text)

    def _on_title(self, text: str) -> None:
        self._edit("Change title", "title", title=" ".join(text.split()))

    def _on_title_stepped(self, step: int) -> None:
        if step > 0:
            self.done.emit()

    def _on_publisher_typed(self, text: str) -> None:
        self._draft(publisher=text)

    def _on_publisher(self, text: str) -> None:
        self._edit("Change publisher", "publisher", publisher=" ".join(text.split()))

    def _on_notes_typed(self, text: str) -> None:
        self._draft(notes=text)

    def _on_notes(self, text: str) -> None:
        self._edit("Change notes", "notes", notes=text)

    def _on_garment(self, index: int) -> None:
        self._edit("Change garment", "garment", garment=self.garment.itemData(index))

    def _on_woven(self) -> None:
        self._problems.pop("stretch", None)
        self._edit("Change fabric to woven", "fabric", fabric="woven", stretch=0.0)

    def _on_knit(self) -> None:
        self._edit("Change fabric to knit", "fabric", fabric="knit")
        self.stretch.setFocus()

    def _on_stretch_typed(self, text: str) -> None:
        try:
            self._draft(stretch=parse_stretch(text))
        except LengthError:
            return

    def _on_stretch(self, text: str) -> None:
        try:
            stretch = parse_stretch(text)
        except LengthError as error:
            self._refuse("stretch", "Stretch", error)
            return
        self._problems.pop("stretch", None)
        self._edit("Change stretch", "stretch", stretch=stretch)
        self._refresh()

    def _on_length(self, text: str) -> None:
        key = next(key for key, field in self.lengths.items() if field is self.sender())
        pattern = self.pattern
        if pattern is None:
            return
        try:
            length = _length(text, pattern.unit)
        except LengthError as error:
            self._refuse(key, LENGTHS[key][0], error)
            return
        self._problems.pop(key, None)
        self._edit(f"Change {LENGTHS[key][0].lower()}", key, **{key: length})
        self._refresh()

    def _refuse(self, key: str, name: str, error: SizekeeperError) -> None:
        """Keep a text that cannot be taken in its field, and say why."""
        self._problems[key] = f"{name}: {str(error).rstrip('.')}."
        self._refresh()

    def _refresh(self) -> None:
        if self.pattern is not None:
            self.show_pattern(self.pattern)

    def _on_cm(self) -> None:
        self._read_in("cm")

    def _on_inch(self) -> None:
        self._read_in("in")

    def _read_in(self, unit: Literal["cm", "in"]) -> None:
        """Read the bare numbers of the pattern's lengths in another unit; their texts stay."""
        pattern = self.pattern
        if pattern is None or pattern.unit == unit:
            return
        reread = {key: getattr(pattern, key) for key in LENGTHS}
        changed = {key: parse_length(length.text, unit) for key, length in reread.items() if length is not None}
        name = "centimetres" if unit == "cm" else "inches"
        self._edit(f"Read the lengths as {name}", "unit", unit=unit, **changed)
        if changed:
            self.says.setText(f"The lengths above are now read as {name}, where no unit is written.")
            self.says.setVisible(True)

    def _on_child(self) -> None:
        on = self.child.isChecked()
        self._edit("Mark as children’s wear" if on else "No longer children’s wear", "child", child=on)

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "caution"):
            self._space()


def _text(length: Length | None) -> str:
    return "" if length is None else length.text


def _length(text: str, unit: Literal["cm", "in"]) -> Length | None:
    """A length of the pattern as typed, None for a blank field; raises LengthError."""
    if not text.strip():
        return None
    length = parse_length(text, unit)
    if length.value < 0:
        raise LengthError(f"“{text.strip()}” is below zero")
    return length
