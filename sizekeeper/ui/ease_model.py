"""The ease table as an item model: regions down, sizes across."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from sizekeeper.core.notation import CENTIMETRES, show, spoken
from sizekeeper.core.places import place_words, short_place
from sizekeeper.core.preference import Band
from sizekeeper.core.wording import Wording
from sizekeeper.reports.ease_table import EaseCell, EaseTable

if TYPE_CHECKING:
    from collections.abc import Sequence

Index = QModelIndex | QPersistentModelIndex

CELL = Qt.ItemDataRole.UserRole
"""The `CellText` of a cell, ready to paint."""
CHOSEN = Qt.ItemDataRole.UserRole + 1
"""Whether a column, or a cell, is what is to be cut."""
BETWEEN = Qt.ItemDataRole.UserRole + 2
"""Whether a column is a line between two sizes."""

_SAME_CM = 0.05
NO_TABLE = EaseTable("my", (), (), (), None)


@dataclass(frozen=True, slots=True)
class CellText:
    """A cell ready to paint: the ease, the printed figure, the band's word, and what the band looks like."""

    amount: str
    printed: str
    word: str
    band: Band | None
    chosen: bool
    short: bool = False


class EaseModel(QAbstractTableModel):
    """The cells of an ease table, kept as texts so that painting only draws."""

    def __init__(self, parent: QObject | None = None) -> None:
        """Start empty."""
        super().__init__(parent)
        self._table = NO_TABLE
        self._words = Wording(CENTIMETRES, str)
        self._measures: tuple[str, ...] = ()
        self._texts: list[list[CellText]] = []
        self._headings: list[tuple[str, str]] = []

    @property
    def table(self) -> EaseTable:
        """The table shown."""
        return self._table

    @property
    def measures(self) -> tuple[str, ...]:
        """The measure of each row; a row may have no cells yet."""
        return self._measures

    def set_table(self, table: EaseTable, measures: tuple[str, ...], words: Wording) -> None:
        """Show another table, touching only what is different."""
        texts = self._texts_of(table, measures, words)
        headings = [short_place(column.position, table.labels) for column in table.columns]
        same_shape = headings == self._headings and measures == self._measures
        if not same_shape:
            self.beginResetModel()
        before = self._texts
        old_chosen = self._table.chosen
        self._table, self._words, self._measures = table, words, measures
        self._texts, self._headings = texts, headings
        if not same_shape:
            self.endResetModel()
            return
        self._announce(before)
        if table.chosen != old_chosen and headings:
            self.headerDataChanged.emit(Qt.Orientation.Horizontal, 0, len(headings) - 1)

    def _texts_of(self, table: EaseTable, measures: tuple[str, ...], words: Wording) -> list[list[CellText]]:
        """The texts of every cell, taken over where a cell is as before; a row without a region is blank."""
        rows = {row.region.measure: row.cells for row in table.rows}
        same = (words.notation, words.envelope) == (
            self._words.notation,
            self._words.envelope,
        ) and table.mode == self._table.mode
        known = {row.region.measure: row.cells for row in self._table.rows} if same else {}
        texts = dict(zip(self._measures, self._texts, strict=True))
        blank = [CellText("", "", "", None, chosen=column.chosen) for column in table.columns]
        return [
            _row_texts(rows[m], known.get(m, ()), texts.get(m, []), words) if m in rows else blank for m in measures
        ]

    def _announce(self, before: list[list[CellText]]) -> None:
        """Say which rows are different, from the first changed cell to the last."""
        for row, (old, new) in enumerate(zip(before, self._texts, strict=True)):
            changed = [column for column, pair in enumerate(zip(old, new, strict=True)) if pair[0] != pair[1]]
            if changed:
                self.dataChanged.emit(self.index(row, changed[0]), self.index(row, changed[-1]))

    def widest(self) -> tuple[set[str], set[str], set[str]]:
        """The texts that decide how wide a column is: large, small and in the heading."""
        cells = [text for row in self._texts for text in row]
        small = {t.printed for t in cells} | {t.word for t in cells} | {second for _, second in self._headings}
        between = [column.between is not None for column in self._table.columns]
        small |= {first for (first, _), b in zip(self._headings, between, strict=True) if b}
        return {t.amount for t in cells}, small, {f for (f, _), b in zip(self._headings, between, strict=True) if not b}

    def said(self, row: int, column: int) -> str:
        """A cell in words, for a screen reader and the tip."""
        where = self._words.name(self._measures[row])
        place = place_words(self._table.columns[column].position, self._table.labels)
        cell = self._cell(row, column)
        if cell is None or cell.amount_cm is None:
            return f"{where} in {place}: no figure on the pattern"
        notation = self._words.notation
        if self._table.mode == "body":
            parts = [f"{spoken(cell.amount_cm, notation)} beyond the body"]
            name = "body chart"
        else:
            parts = [f"{spoken(cell.amount_cm, notation)} of ease", cell.band or ""]
            name = "finished"
        if cell.printed_cm is not None:
            filled = ", filled in between its neighbours" if cell.interpolated else ""
            parts.append(f"{name} {spoken(cell.printed_cm, self._words.envelope)}{filled}")
        parts += [f"will not close, short by {self._words.sewn(cell.short_cm)}"] if cell.short_cm else []
        parts += ["chosen"] if cell.chosen else []
        return f"{where} in {place}: {', '.join(part for part in parts if part)}"

    def _cell(self, row: int, column: int) -> EaseCell | None:
        found = next((r for r in self._table.rows if r.region.measure == self._measures[row]), None)
        return found.cells[column] if found is not None else None

    # Qt's own names from here on.

    def rowCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many regions."""
        return 0 if parent.isValid() else len(self._measures)

    def columnCount(self, parent: Index = QModelIndex()) -> int:  # noqa: B008 - Qt's own signature
        """How many sizes and lines between sizes."""
        return 0 if parent.isValid() else len(self._headings)

    def data(self, index: Index, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """A cell's texts, and its words."""
        if not index.isValid():
            return None
        text = self._texts[index.row()][index.column()]
        if role == CELL:
            return text
        if role == CHOSEN:
            return text.chosen
        if role == Qt.ItemDataRole.DisplayRole:
            return text.amount
        if role in (Qt.ItemDataRole.AccessibleTextRole, Qt.ItemDataRole.ToolTipRole):
            return self.said(index.row(), index.column())
        return None

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = Qt.ItemDataRole.DisplayRole) -> object:
        """The size over a column, the region beside a row."""
        if orientation == Qt.Orientation.Vertical:
            named = role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.AccessibleTextRole)
            return self._words.name(self._measures[section]) if named and section < len(self._measures) else None
        return self._over_column(section, role) if 0 <= section < len(self._headings) else None

    def _over_column(self, section: int, role: int) -> object:
        """What stands over a column, by role."""
        column = self._table.columns[section]
        place = place_words(column.position, self._table.labels)
        said = f"{place}, chosen" if column.chosen else place
        by_role: dict[int, object] = {
            CELL: self._headings[section],
            CHOSEN: column.chosen,
            BETWEEN: column.between is not None,
            Qt.ItemDataRole.DisplayRole: " ".join(part for part in self._headings[section] if part),
            Qt.ItemDataRole.AccessibleTextRole: said,
            Qt.ItemDataRole.ToolTipRole: said,
        }
        return by_role.get(role)


def _row_texts(
    cells: Sequence[EaseCell], known: Sequence[EaseCell], texts: Sequence[CellText], words: Wording
) -> list[CellText]:
    """The texts of one row; `known` are cells whose texts are there already, in the same order."""
    if len(known) != len(cells):
        return [_text(cell, words) for cell in cells]
    return [
        text if cell == before else _text(cell, words) for cell, before, text in zip(cells, known, texts, strict=True)
    ]


def _text(cell: EaseCell, words: Wording) -> CellText:
    if cell.amount_cm is None:
        return CellText("–", "", "no figure", None, cell.chosen)
    printed = "" if cell.printed_cm is None else show(cell.printed_cm, words.envelope, unit=False)
    return CellText(
        amount=show(cell.amount_cm, words.notation, unit=False, sign=cell.band is None),
        printed=f"~{printed}" if cell.interpolated else printed,
        word="too small" if cell.short_cm else cell.band or _against_body(cell.amount_cm),
        band=cell.band,
        chosen=cell.chosen,
        short=bool(cell.short_cm),
    )


def _against_body(cm: float) -> str:
    """How a body chart's figure stands to the body, where no ease is known."""
    if abs(cm) < _SAME_CM:
        return "same"
    return "smaller" if cm < 0 else "larger"
