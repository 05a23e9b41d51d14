"""From a table as found to a table in the draft: units, halves and gaps settled, with a flag for each inference."""

from __future__ import annotations

import re
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.importing.amounts import Reading, RowReading, disagree, kept, others, settle_units, table_rows
from sizekeeper.importing.draft import Corrections, DraftCell, DraftRow, DraftSize, DraftTable, Flag
from sizekeeper.importing.figures import Amount, is_missing
from sizekeeper.importing.labels import resolved
from sizekeeper.importing.measure_names import CLOSE, slug
from sizekeeper.importing.repeats import part_by_section, unique
from sizekeeper.importing.sizes import is_double
from sizekeeper.importing.units import without_units

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from sizekeeper.core.chart import ChartKind, WrittenAs
    from sizekeeper.core.measure import Dimension
    from sizekeeper.importing.raw import RawRow, RawTable

_GIRTH = re.compile(
    r"circumf|girth|around|opening|umfang|tour|omtrek|contorno|circonf|giro|sweep|weite|wijdte", re.IGNORECASE
)
_FRONT = re.compile(r"across|front|devant|avant|vorder|vord|voor|delanter|davanti", re.IGNORECASE)
_WIDTH = re.compile(r"width|breite|largeur|breedte|ancho|larghezza|across", re.IGNORECASE)


class Settling:
    """Settles one raw table. `flat` tells that a title or note says girths are measured flat."""

    def __init__(self, table: RawTable, corrections: Corrections, *, beside: str | None, flat: bool) -> None:
        """Keep what is known; nothing is read yet."""
        self.raw, self.corrections, self.beside, self.flat = table, corrections, beside, flat
        self.flags: list[Flag] = []
        self.key = f"{table.sheet}!{_first_at(table)}"

    def table(self) -> DraftTable:
        """The settled table; `flags` then holds what was inferred on the way."""
        for found in self.raw.rows:
            if self.flat and found.kind != "body" and found.written == "full":
                found.written = "half"
        kind: ChartKind = self.corrections.kinds.get(self.key) or self.raw.kind or "body"
        measures = [self._measure(row, kind) for row in self.raw.rows]
        part_by_section(self.raw.rows)
        rows = table_rows(self.raw, measures)
        self._units(rows)
        drafted = [row for pairs in self._together(rows) if (row := self._row(pairs)) is not None]
        self._size_flags()
        rows_once = self._once_each(drafted)
        units = list(dict.fromkeys(row.unit_in_file for row in drafted))
        if len(units) > 1:
            self._flag("mixed_units", "", "rows are counted in different units: " + ", ".join(units))
        return DraftTable(
            kind,
            self.raw.sheet,
            self.raw.title,
            "mixed" if len(units) > 1 else units[0] if units else "cm",
            self.raw.orientation,
            tuple(self._size(s.label, s.at, s.aliases) for s in self.raw.sizes),
            rows_once,
            self.key,
        )

    def _flag(self, code: str, at: str, note: str) -> None:
        self.flags.append(Flag(code, at, note, self.raw.sheet))

    def _once(self, code: str, at: str, note: str) -> None:
        if not any(flag.code == code for flag in self.flags):
            self._flag(code, at, note)

    def _size(self, label: str, at: str, aliases: tuple[str, ...]) -> DraftSize:
        return DraftSize(self.corrections.sizes.get((self.raw.sheet, at), label), at, aliases)

    def _measure(self, row: RawRow, kind: ChartKind) -> str | None:
        corrected = self.corrections.measures.get((self.raw.sheet, row.at))
        named = resolved(row.label.names, kind, finished_words=row.label.kind == "finished")
        if named == "across_front" and kind == "finished" and self._is_chest(row):
            named = "bust"
        return corrected or named

    def _is_chest(self, row: RawRow) -> bool:
        """Whether a garment's `chest width` is its girth laid flat, where nothing else gives the bust."""
        others = any("bust" in other.label.names.ids for other in self.raw.rows)
        return not others and not _FRONT.search(row.label.text)

    def _units(self, rows: list[RowReading]) -> None:
        corrected = self.corrections.units.get(self.key)
        stated = (
            (corrected,)
            if corrected
            else self.raw.units or next((r.context_units for r in self.raw.rows if r.context_units), ())
        )
        inferred = settle_units(rows, stated, self.beside)
        counted = [row.unit for row in rows if any(row.readings.values())]
        for row in rows:
            if counted and not any(row.readings.values()):
                row.unit = counted[0]  # a row of dashes is counted like the others
        if inferred:
            unit = next(row.unit for row in rows if row.inferred)
            which = f" of “{self.raw.title}”" if self.raw.title else ""
            self._flag("unit_inferred", "", f"no unit is printed; the figures{which} read as {unit}")

    def _together(self, rows: list[RowReading]) -> list[list[RowReading]]:
        """Rows that state one measure twice, in two units, belong together."""
        groups: list[list[RowReading]] = []
        known: dict[tuple[str | None, ...], list[RowReading]] = {}
        for row in rows:
            keys = self._names(row)
            twin = next((g for key in keys if (g := known.get(key)) and self._twins(g[0], row)), None)
            if twin is None:
                twin = []
                groups.append(twin)
            twin.append(row)
            for key in keys:
                known.setdefault(key, twin)
        return groups

    def _names(self, row: RowReading) -> list[tuple[str | None, ...]]:
        """What a row goes by: its measure, its label, the cell of its label."""
        of = (row.row.view, row.row.variant)
        measured = [("measure", row.measure, *of)] if row.measure else []
        return [*measured, ("label", row.row.label.text, *of), ("at", row.row.at, *of)]

    def _twins(self, first: RowReading, second: RowReading) -> bool:
        """Whether two rows of one name state it in two units, or as the two ends of ranges."""
        bounds = {first.row.bound, second.row.bound} == {"low", "high"}
        return bounds if first.unit == second.unit else bool(second.readings)

    def _row(self, pair: list[RowReading]) -> DraftRow | None:
        first, row = pair[0], pair[0].row
        if row.bound and len(pair) > 1 and pair[1].row.bound:
            self._spanned(pair[0], pair[1])
            pair = pair[:1]
        readings = {i: [x for part in pair for x in part.readings.get(i, [])] for i in range(len(self.raw.sizes))}
        if not any(readings.values()):
            printed = any(cells for cells in row.cells.values())
            self._flag("missing_row", row.at, f"{row.label.text}: no figures are given")
            if not printed:
                return None
        dimension = self._dimension(first)
        written = self._written_as(row, dimension)
        same = self._same_for_all(row, readings)
        cells = [self._cell(first, readings, i, same=same) for i in range(len(self.raw.sizes))]
        self._value_flags(row, readings, first)
        self._repeats(row, readings, first)
        self._name_flags(row, first)
        return DraftRow(
            first.measure or slug(without_units(row.label.text)),
            row.label.text,
            row.at,
            dimension,
            first.unit,
            tuple(cells),
            written_as=written,
            view=row.view,
            variant=row.variant,
            same_for_all_sizes=same is not None,
            sure=row.label.names.sure,
        )

    def _spanned(self, first: RowReading, second: RowReading) -> None:
        """Put the ends of ranges that are printed in two rows or columns together."""
        for i, readings in first.readings.items():
            for ours, theirs in zip(readings, second.readings.get(i, []), strict=False):
                a, b = ours.amounts[0], theirs.amounts[0]
                ours.cell = replace(ours.cell, text=f"{ours.cell.text}–{theirs.cell.text}")
                ours.amounts = [replace(a, low=min(a.low, b.low), high=max(a.high, b.high))]
                self._once(
                    "range_values", ours.cell.at, "the ends of ranges have columns of their own; the middle is taken"
                )

    def _dimension(self, row: RowReading) -> Dimension:
        measures = assets.measures()
        if row.measure and row.measure in measures:
            return measures[row.measure].dimension
        text = row.row.label.text
        return "girth" if _GIRTH.search(text) else "width" if _WIDTH.search(text) else "length"

    def _written_as(self, row: RawRow, dimension: Dimension) -> WrittenAs:
        written: WrittenAs = row.label.written_as if dimension == "girth" else "full"
        if dimension == "girth" and written == "full" and row.kind != "body":
            written = row.written
        written = self.corrections.written_as.get((self.raw.sheet, row.at), written)
        if written == "half":
            self._flag("half_width_doubled", row.at, f"{row.label.text}: printed as half of the girth")
        elif written == "quarter":
            self._flag("quarter_width_x4", row.at, f"{row.label.text}: printed as a quarter of the girth")
        return written

    def _same_for_all(self, row: RawRow, readings: dict[int, list[Reading]]) -> Reading | None:
        """The one figure of a row that is printed for all sizes: merged over them, or alone before empty places."""
        given = [r for r in readings.values() if r]
        if len(self.raw.sizes) < 2 or not given:  # noqa: PLR2004 - one size has nothing to share
            return None
        at = {r[0].cell.at for r in given}
        alone = len(given) == 1 and bool(readings[0]) and not any(cells for i, cells in row.cells.items() if i)
        if len(at) == 1 and (alone or len(given) == len(self.raw.sizes)):
            self._flag("same_for_all_sizes", given[0][0].cell.at, f"{row.label.text}: one figure for all sizes")
            return given[0][0]
        return None

    def _cell(
        self, first: RowReading, readings: dict[int, list[Reading]], i: int, *, same: Reading | None
    ) -> DraftCell:
        found = kept([same], first.unit) if same else kept(readings[i], first.unit)
        if found is not None:
            reading, amount = found
            return DraftCell(reading.cell.at, reading.cell.text, amount.low, amount.high, amount.step)
        return self._empty_cell(first.row, i)

    def _empty_cell(self, row: RawRow, i: int) -> DraftCell:
        """A place without a figure: the mark printed there, words that are no figure, or nothing."""
        figures = row.cells.get(i)
        if not figures:
            at = row.blanks.get(i, "")
            self._flag("missing_value", at, f"{row.label.text}: nothing is printed")
            return DraftCell(at)
        cell = figures[0].cell
        note = {"formula": "a formula without a computed value", "error": "a formula that ended in an error"}.get(
            cell.note, ""
        )
        note = note or ("a dash" if is_missing(cell.text) else f"“{cell.text[:40]}” is not a figure")
        self._flag("missing_value", cell.at, f"{row.label.text}: {note}")
        return DraftCell(cell.at, cell.text)

    def _value_flags(self, row: RawRow, readings: dict[int, list[Reading]], first: RowReading) -> None:
        finest: dict[str | None, Fraction] = {}
        for amount in (a for found in readings.values() for r in found for a in r.amounts):
            finest[amount.unit] = min(finest.get(amount.unit, amount.step), amount.step)
        told: set[str] = set()
        for found in readings.values():
            for reading in found:
                if reading.cell.at not in told:
                    told.add(reading.cell.at)
                    self._reading_flags(row, reading)
            self._dual(row, found, first, finest)

    def _reading_flags(self, row: RawRow, reading: Reading) -> None:
        at = reading.cell.at
        if reading.figure.ranged:
            self._once("range_values", at, "cells hold ranges; the middle is taken")
        if reading.figure.comma:
            self._once("decimal_comma", at, "the comma is the decimal mark")
        if reading.figure.mark:
            self._flag(
                "footnote_on_value", at, f"{row.label.text}: the mark {reading.figure.mark} stands beside the figure"
            )
        if reading.figure.aside:
            self._flag("footnote_on_value", at, f"{row.label.text}: {reading.figure.aside} was left out")
        if reading.date:
            self._flag(
                "label_looks_like_date", at, f"“{reading.cell.text}” was a range before a spreadsheet made it a date"
            )

    def _dual(self, row: RawRow, found: list[Reading], first: RowReading, finest: dict[str | None, Fraction]) -> None:
        """Both units of a figure are held against each other."""
        chosen, rest = kept(found, first.unit), others(found, first.unit)
        if chosen is None or not rest or chosen[1].unit not in finest:
            return
        reading, amount = chosen
        if not any(a.unit == first.unit for r in found for a in r.amounts):
            self._flag("mixed_units", reading.cell.at, f"{row.label.text}: {reading.cell.text} is not in {first.unit}")
            return
        self._once("dual_unit", reading.cell.at, f"figures are printed in two units; {first.unit} is taken")
        main = replace(amount, step=min(amount.step, finest[amount.unit]))
        for other in rest:
            if disagree(main, other, finest[other.unit]):
                note = f"{row.label.text}: {_shown(amount)} and {_shown(other)} are not the same"
                self._flag("dual_unit_disagrees", reading.cell.at, note)

    def _repeats(self, row: RawRow, readings: dict[int, list[Reading]], first: RowReading) -> None:
        """Two figures of one unit for one size: the first is taken, the other is told of."""
        for i, found in readings.items():
            ours = {r.cell.at: r.cell for r in found if any(a.unit == first.unit for a in r.amounts)}
            for cell in list(ours.values())[1:]:
                note = f"{row.label.text}: size {self.raw.sizes[i].label} stands twice; {cell.text} is left out"
                self._flag("size_repeated", cell.at, note)

    def _once_each(self, drafted: list[DraftRow]) -> tuple[DraftRow, ...]:
        """The rows, each measure once, with a flag for each that is given again."""
        kept_rows = tuple(unique(drafted))
        for before, row in zip(drafted, kept_rows, strict=True):
            if row.measure != before.measure and before.measure in assets.measures():
                name = assets.measures().name(before.measure)
                self._flag("row_repeated", row.label_at, f"{row.label}: {name} is given twice; this row is kept apart")
        return kept_rows

    def _name_flags(self, row: RawRow, first: RowReading) -> None:
        if first.measure and row.label.names.sure == CLOSE:
            self._flag(
                "measure_inferred", row.at, f"“{row.label.text}” is taken for {assets.measures().name(first.measure)}"
            )
        several = (
            len(row.label.names.languages) > 1 and re.search(r"[/|·•]", row.label.text) and row.label.names.sure < 1
        )
        if several or row.also:
            self._once("multi_language", row.at, "labels are printed in several languages")
        if row.kind_inferred:
            self._flag(
                "kind_inferred", row.at, f"{row.label.text}: nothing says whether this is the body or the garment"
            )

    def _size_flags(self) -> None:
        for size in self.raw.sizes:
            if size.date:
                self._flag("label_looks_like_date", size.at, f"size {size.label} had become a date")
        double = next((s for s in self.raw.sizes if is_double(s.label)), None)
        if double is not None:
            self._flag("double_size_label", double.at, f"“{double.label}” names the size in two ways")
        if _by_cup([size.label for size in self.raw.sizes]):
            self._flag("cup_sizes", self.raw.sizes[0].at, "sizes are listed for each cup")
        aliased = next((s for s in self.raw.sizes if s.aliases), None)
        if aliased is not None:
            self._flag("size_aliases", aliased.at, f"size {aliased.label} is also called {', '.join(aliased.aliases)}")
        if self.raw.unheaded:
            self._flag(
                "sizes_inferred", self.raw.sizes[0].at, "no sizes are headed; the first row's figures stand for them"
            )
        for label, at in self.raw.missing_rows:
            self._flag("missing_row", at, f"{label}: no figures are given")


def _by_cup(labels: Sequence[str]) -> bool:
    """Whether one size is listed with several cups, as `10B` and `10C`."""
    cups = [match.groups() for label in labels if (match := re.fullmatch(r"(\d{1,2})\s?([A-K]{1,2})", label))]
    return len({size for size, _ in cups}) < len(cups)


def _first_at(table: RawTable) -> str:
    return next((f.cell.at for row in table.rows for i in sorted(row.cells) for f in row.cells[i]), "")


def _shown(amount: Amount) -> str:
    low, high = float(amount.low), float(amount.high)
    return f"{low:g} {amount.unit}" if low == high else f"{low:g}–{high:g} {amount.unit}"
