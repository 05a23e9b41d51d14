"""Finds the tables of a sheet whose sizes run across; the other way round is the same sheet, transposed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.importing.bands import Band, bands, is_blank, is_figure, is_text, label, zones
from sizekeeper.importing.context import Context
from sizekeeper.importing.headers import (
    Column,
    Header,
    header_of,
    is_attribute_row,
    is_size_row,
    with_aliases,
    with_attributes,
)
from sizekeeper.importing.lines import Line, line_at
from sizekeeper.importing.raw import Found, Orientation, RawFigure, RawRow, RawTable
from sizekeeper.importing.row_words import new_row, own_name, said_of
from sizekeeper.importing.sizes import likeness, one_size_in, shown_label
from sizekeeper.importing.units import unit_of, without_units
from sizekeeper.importing.vocabulary import EASE, NO_SIZE, NOTIONS, SIZE, STATED_FOR_ALL, only

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from sizekeeper.importing.grid import GridCell, Sheet
    from sizekeeper.importing.labels import Label

_SURE, _UNHEADED = 0.8, 0.3
_TICK, _LEAST = 200, 2


class BandReader:
    """Reads one band from top to bottom and adds its tables to what was found."""

    def __init__(
        self, sheet: Sheet, band: Band, found: Found, orientation: Orientation, tick: Callable[[], None]
    ) -> None:
        """Start with nothing headed. `tick` is called now and then while a long band is read."""
        self.sheet, self.band, self.found, self.orientation, self.tick = sheet, band, found, orientation, tick
        self.header: Header | None = None
        self.attributes: list[tuple[list[Label], list[tuple[int, GridCell]]]] = []
        self.context = Context()
        self.table: RawTable | None = None
        self.fresh = True
        self.measure: tuple[Label, str] | None = None
        self.waiting: tuple[Label, str] | None = None
        self.carried: dict[int, GridCell] = {}
        self.sections: list[str] = []
        self.rows = range(0)
        self.below = -1
        self.named_at: int | None = None

    def read(self, rows: range, inherited: Header | None) -> Header | None:
        """Read the rows; `inherited` is the header of the table above, for a table that goes on under it."""
        self.inherited = inherited
        self.rows = rows
        for r in rows:
            if r % _TICK == 0:
                self.tick()
            if r != self.below:
                self._row(r, rows)
        self._settle_waiting()
        return self.header or inherited

    def _row(self, r: int, rows: range) -> None:
        line = line_at(self.sheet, self.band, r)
        if not line.labels and not line.data and not line.tail:
            self.fresh = True
            return
        words = list(line.words().values())
        shown = line.shown()
        if self._is_heading(line, shown):
            self._heading([*line.labels.values(), *(c for _, c in shown)])
        elif is_attribute_row(words, shown):
            self._attributes(line, shown)
        elif not self._is_waist(words, shown) and self._heads(line, words, shown):
            self._sizes(line, shown, r, rows)
        elif any(is_figure(c) for _, c in shown) or (line.data and self._known() and any(w.is_measure for w in words)):
            self._figures(line)
        else:
            self._words(line)

    def _is_heading(self, line: Line, shown: Sequence[tuple[int, GridCell]]) -> bool:
        """Words without figures: at the left alone, or one text above the figures of several columns."""
        if not shown:
            return not any(is_blank(c) for _, c in line.data) and bool(line.labels)
        one = len(shown) == 1 and is_text(shown[0][1]) and not line.labels
        return one and (self.band.right > self.band.first) and not label(shown[0][1]).says_only_how

    def _heading(self, cells: Sequence[GridCell]) -> None:
        for cell in cells:
            word = label(cell)
            if self._heads_one_size(word):
                self._one_size(cell)
            elif self._names_one_size(word):
                self._say(word, cell)
                self._one_size(cell, one_size_in(without_units(word.text)))
            elif word.prose:
                self._stated(word)
            elif word.is_measure and word.names.sure > _SURE and not word.size_word and self._known():
                self._settle_waiting()
                self.waiting = self.measure = (word, cell.at)
                self.found.roles[cell.at] = "measure"
            else:
                self._say(word, cell)

    def _heads_one_size(self, word: Label) -> bool:
        """Whether a heading such as `Size 10` names the only column of figures below it."""
        named = SIZE.search(word.text) is not None and not word.size_word and not word.is_measure
        return named and self.band.first == self.band.right and likeness(word.text) >= _SURE

    def _names_one_size(self, word: Label) -> bool:
        """Whether a title such as `Finished measurements of size 10` names the only column of figures below it."""
        return self.band.first == self.band.right and bool(one_size_in(without_units(word.text)))

    def _one_size(self, cell: GridCell, named: str = "") -> None:
        column = Column(named or shown_label(cell.text), cell.at)
        self.header = Header({self.band.first: column}, sure=1.0)
        self.table = self.measure = None
        self.found.roles[cell.at] = "size"

    def _stated(self, word: Label) -> None:
        if STATED_FOR_ALL.search(word.text) and word.units:
            self.context.units = word.units

    def _say(self, word: Label, cell: GridCell) -> None:
        """Let a heading start a new context, or add to the one that the heading above it began."""
        self._settle_waiting()
        if self.header:
            self.sections.append(cell.at)
        if self.header and self.header.used and not self.context.title:
            kept = self.table if word.unit_only else None
            about = self.context.about
            self.context = Context(kept.kind if kept else None, self.context.units, title=kept.title if kept else "")
            self.context.about = about
        self.context.say(word, cell.at)
        self.measure = None
        self.fresh = True
        self._part_from_table(word)

    def _part_from_table(self, word: Label) -> None:
        """A heading of another kind or unit starts a table of its own; any other is a section of the table."""
        if self.table is None:
            return
        if word.unit_only and not self.table.units:
            self.table.units = word.units
        other_kind = word.kind is not None and word.kind != self.table.kind
        other_unit = bool(word.units) and word.units != self.table.units
        if other_kind or other_unit:
            self.table = None

    def _attributes(self, line: Line, shown: list[tuple[int, GridCell]]) -> None:
        row = (list(line.words().values()), shown)
        for word in row[0]:
            self.context.add(word)
        for cell in [*line.labels.values(), *(c for _, c in shown)]:
            self.found.roles[cell.at] = "heading"
        if self.header is not None and not self.header.used:
            with_attributes(self.header, *row)
        else:
            self.attributes.append(row)
        self.fresh = True

    def _is_waist(self, words: Sequence[Label], shown: Sequence[tuple[int, GridCell]]) -> bool:
        """Whether `Taille`, a size and the waist, stands for the waist: sizes are headed and no new table starts."""
        if self.header is None or not any(word.is_measure and word.size_word for word in words):
            return False
        if any(word.is_measure and word.size_word and word.units for word in words):
            return True  # "Talla (altura en cm)" is counted in cm, as no size is
        same = [shown_label(cell.text) for _, cell in shown] == [size.label for size in self.header.sizes()]
        return not same and not (self.header.used and self.context.title)

    def _heads(self, line: Line, words: Sequence[Label], shown: Sequence[tuple[int, GridCell]]) -> bool:
        """Whether a row heads columns with sizes, for the first time or again."""
        again = self._heads_again(words, shown, min(line.labels, default=None))
        return again or is_size_row(words, shown, fresh=self._may_start(), known=self._known())

    def _heads_again(self, words: Sequence[Label], shown: Sequence[tuple[int, GridCell]], left: int | None) -> bool:
        """Whether a row that names no measure repeats the sizes headed above."""
        header = self.header or self.inherited
        if header is None or len(shown) < _LEAST or any(word.is_measure for word in words):
            return False
        if not self.fresh and (self.waiting is not None or left is None or left != self.named_at):
            return False  # "finished" beside or below a measure's name is of that measure
        return [shown_label(cell.text) for _, cell in shown] == [size.label for size in header.sizes()]

    def _may_start(self) -> bool:
        if self.waiting is not None:  # a measure's name stands above, so figures follow
            return False
        if self.fresh or self.header is None or not self.header.used:
            return True
        return self.table is not None and not any(row.label.is_measure for row in self.table.rows)  # facts, no chart

    def _known(self) -> bool:
        return self.header is not None or self.inherited is not None

    def _sizes(self, line: Line, shown: list[tuple[int, GridCell]], r: int, rows: range) -> None:
        for _, cell in [*shown, *((p, c) for p, c in line.labels.items())]:
            self.found.roles[cell.at] = "size"
        if self.header is not None and not self._is_finer(shown) and self._names_again(r, rows):
            with_aliases(self.header, shown)
            return
        header = header_of(line.words(), shown, range(self.band.first, self.band.right + 1))
        for row in self.attributes:
            with_attributes(header, *row)
        self.attributes = []
        self.header, self.table, self.measure, self.carried = header, None, None, {}
        self._corner(line)

    def _is_finer(self, shown: Sequence[tuple[int, GridCell]]) -> bool:
        """Whether a row parts the sizes headed just above it, as 8 and 10 part `Small`."""
        return self.header is not None and not self.header.used and len(shown) > len(self.header.sizes())

    def _names_again(self, r: int, rows: range) -> bool:
        """Whether a row of sizes gives other names to the sizes headed already."""
        assert self.header is not None  # noqa: S101 - asked only then
        if not self.header.used:
            return True
        return not self.fresh and not (r + 1 < rows.stop and self._is_measured(r + 1))

    def _is_measured(self, r: int) -> bool:
        line = line_at(self.sheet, self.band, r)
        return bool(line.data) and any(word.is_measure for word in line.words().values())

    def _corner(self, line: Line) -> None:
        """The words at the corner say what the whole table is counted in and is."""
        fresh = not self.context.title
        if fresh and not self.context.titled:
            goes_on = any(label(cell).variant for cell in line.labels.values())  # "Tall sizes" of the same chart
            self.context = Context(self.context.kind if goes_on else None, self.context.units)
        for cell in line.labels.values():
            word = label(cell)
            if word.prose:
                continue
            self.context.add(word)
            if fresh and not (word.size_word or word.generic or word.unit_only or only(NO_SIZE, word.text)):
                self.context.title, self.context.title_at = word.text, cell.at

    def _figures(self, line: Line) -> None:
        header = self._header_for(line)
        words = self._carried(line)
        named = next(((w, line.labels[p].at) for p, w in words.items() if w.is_measure and p in line.labels), None)
        named = named or own_name(words, line, self.header) or self.measure
        if named is None or (not named[0].is_measure and NOTIONS.search(named[0].text)):
            return self._words(line)
        other = next((cell for cell in line.labels.values() if only(EASE, cell.text)), None)
        if other is None and self.context.leaves_out(named[0]):
            other = next(iter(line.labels.values()), None)
        if other is not None:
            return self._left_out(other, line)
        self.named_at = next((p for p, cell in line.labels.items() if cell.at == named[1]), None)
        self._settle_waiting(keep=named)
        self.measure, self.fresh = named, False
        self.waiting = None
        header.used = True
        self.found.roles |= {place: "heading" for place in self.sections if place not in self.found.roles}
        self.sections = []
        self._add(line, header, words, *named)
        self.context.title = ""
        return None

    def _header_for(self, line: Line) -> Header:
        if self.header is None:
            self.header = self.inherited
        if self.header is None:
            self._sizes_below()
        named = one_size_in(self.sheet.name) if self.band.first == self.band.right else ""
        if self.header is None and named:
            self.header = Header({self.band.first: Column(named)}, sure=1.0)
        if self.header is None:
            self.header = header_of({}, line.shown(), range(self.band.first, self.band.right + 1))
            self.header.sure = _UNHEADED
        return self.header

    def _sizes_below(self) -> None:
        """Sizes may be headed below the figures, or in the last column of a list that lies the other way."""
        for r in self.rows:
            line = line_at(self.sheet, self.band, r)
            shown = line.shown()
            if any(w.size_word for w in line.words().values()) and is_size_row(
                [*line.words().values()], shown, fresh=True, known=False
            ):
                self.below = r
                self._sizes(line, shown, r, self.rows)
                return

    def _carried(self, line: Line) -> dict[int, Label]:
        """The words of the line, and of a group's name that stands only beside the first line of its group."""
        words = line.words()
        measured = next((p for p, w in words.items() if w.is_measure), None)
        for place, cell in line.labels.items():
            if label(cell).says_only_how:
                self.carried[place] = cell
        if measured is not None:
            for place, cell in self.carried.items():
                if place < measured and place not in words:
                    words[place] = label(cell)
        return dict(sorted(words.items()))

    def _add(self, line: Line, header: Header, words: dict[int, Label], name: Label, at: str) -> None:
        self.found.roles[at] = "measure"
        said, used = said_of(line, words, {**self.carried, **line.labels}, header, at)
        self.found.roles |= {cell: "heading" for cell in used if cell not in self.found.roles}
        rows: dict[tuple[str | None, ...], RawRow] = {}
        also = tuple(w.text for w in words.values() if w.is_measure and w is not name)
        table = self._table(header)
        places = {size.label: i for i, size in enumerate(table.sizes)}
        for place, cell in line.spanned.items():
            column = header.columns.get(place, Column())
            if unit_of(cell.text) and not is_figure(cell):
                self._unit_behind(rows, cell)
            elif column.size in places:
                key = (column.kind, column.view, column.variant, column.bound)
                if key not in rows:
                    rows[key] = new_row(name, at, said, column, self.context)
                    rows[key].also = also
                rows[key].cells.setdefault(places[column.size], []).append(RawFigure(cell, column.unit))
                self.found.roles[cell.at] = "value" if is_figure(cell) else "missing" if is_blank(cell) else "text"
        table.rows.extend(row for row in rows.values() if row.cells)

    def _unit_behind(self, rows: dict[tuple[str | None, ...], RawRow], cell: GridCell) -> None:
        """A unit in a column of its own belongs to the figure left of it."""
        for row in rows.values():
            last = list(row.cells.values())[-1]
            if last and last[-1].unit is None:
                last[-1] = RawFigure(last[-1].cell, unit_of(cell.text))
        self.found.roles[cell.at] = "unit"

    def _table(self, header: Header) -> RawTable:
        if self.table is None:
            context = self.context
            self.table = RawTable(
                self.sheet.name,
                self.orientation,
                header.sizes(),
                title=context.title,
                title_at=context.title_at,
                kind=context.kind,
                units=context.units,
                titled=context.titled,
                unheaded=header.sure == _UNHEADED,
            )
            if context.title_at:
                self.found.roles[context.title_at] = "title"
            self.found.tables.append(self.table)
            self.found.scores.append(header.sure)
            self.context.titled = False
        return self.table

    def _words(self, line: Line) -> None:
        """A row that is neither sizes nor figures: words beside the tables."""
        for cell in line.labels.values():
            word = label(cell)
            if word.prose:
                self._stated(word)
            elif NOTIONS.search(word.text) and any(is_figure(c) for _, c in line.data):
                self._left_out(cell, line)

    def _left_out(self, cell: GridCell, line: Line) -> None:
        """A row that is no measure's is told of by the cell that says so."""
        self.found.roles |= {c.at: "remark" for c in (cell, *line.labels.values(), *(c for _, c in line.data))}
        self.found.left_out.append(cell)

    def _settle_waiting(self, keep: tuple[Label, str] | None = None) -> None:
        """A measure that was named and got no figures is told of."""
        if self.waiting is not None and self.waiting != keep and self.table is not None:
            self.table.missing_rows.append((self.waiting[0].text, self.waiting[1]))
        self.waiting = None


def tables_across(sheet: Sheet, orientation: Orientation, tick: Callable[[], None]) -> Found:
    """The tables of a sheet whose sizes run across; `tick` is called now and then on the way."""
    found = Found(sheet.name, single_column=sheet.single_column)
    headers: list[tuple[Band, Header]] = []
    for top, bottom in zones(sheet):
        for band in bands(sheet, top, bottom):
            inherited = next((h for b, h in reversed(headers) if b.first <= band.right and band.first <= b.right), None)
            header = BandReader(sheet, band, found, orientation, tick).read(range(top, bottom), inherited)
            if header is not None:
                headers.append((band, header))
    return found
