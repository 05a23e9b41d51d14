"""A source that is open for correction: its grids, what was answered by hand, and what is read from them now."""

from __future__ import annotations

import re
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Chart
from sizekeeper.core.chart_join import merged
from sizekeeper.errors import ReadError
from sizekeeper.importing.delimited import sheet_from_text
from sizekeeper.importing.draft import NO_CORRECTIONS, Corrections, Draft, DraftTable, Flag
from sizekeeper.importing.files import bytes_of, readings
from sizekeeper.importing.grid import Sheet
from sizekeeper.importing.learned import Cell, remembered
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.plain_text import split_lines
from sizekeeper.importing.read import PASTED
from sizekeeper.importing.recognise import recognise
from sizekeeper.importing.to_chart import to_charts
from sizekeeper.importing.webpage import sheets_of_page

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.core.learned import Learned

_OF_TABLES = ("unit_inferred", "kind_inferred")
"""The flags that are about a whole table and name no cell."""


@dataclass(frozen=True, slots=True)
class Answers:
    """Everything set by hand for one source.

    `confirmed` are doubts that were looked at, each by code, sheet and cell. `left_out` are the keys of tables that
    are not taken in. `unlearned` are labels whose corrected measure shall not be remembered, as they are compared.
    """

    corrections: Corrections = NO_CORRECTIONS
    confirmed: frozenset[tuple[str, str, str]] = frozenset()
    left_out: frozenset[str] = frozenset()
    unlearned: frozenset[str] = frozenset()


NOTHING_SAID = Answers()


@dataclass(frozen=True, slots=True)
class Opened:
    """A source as read with the answers so far.

    `sheets` are the grids as they came, lines of text split into their figures. `inferred` tells for the flags
    "unit_inferred" and "kind_inferred" which tables they are about, by key. `heard` are the cells of labels that were
    read as an earlier correction says. `charts` are the charts that the tables make, without ids and a pattern yet.
    """

    name: str
    sheets: tuple[Sheet, ...]
    draft: Draft
    answers: Answers = NOTHING_SAID
    inferred: Mapping[str, frozenset[str]] = field(default_factory=dict)
    heard: Mapping[Cell, str] = field(default_factory=dict)
    charts: tuple[Chart, ...] = ()

    @property
    def tables(self) -> tuple[DraftTable, ...]:
        """The tables that are taken in."""
        return tuple(table for table in self.draft.tables if table.key not in self.answers.left_out)

    @property
    def taken(self) -> Draft:
        """The draft with nothing but the tables that are taken in."""
        return replace(self.draft, tables=self.tables)


def open_file(path: Path, learned: Learned, progress: Progress = no_progress) -> Opened:
    """A file's grids with the first reading of them; the reading may have no tables, which can then be shown it.

    Raises:
        ReadError: the file cannot be read; the sentence names it.
    """
    ways = readings(bytes_of(path), path.name, progress)
    opened = [read(path.name, tuple(map(split_lines, sheets)), NOTHING_SAID, learned, progress) for sheets in ways]
    return max(opened, key=_figures)


def open_pasted(html: str, text: str, learned: Learned) -> Opened:
    """What is on the clipboard: its HTML where that has a chart, else its text.

    Raises:
        ReadError: there is nothing on it, or more than any chart.
    """
    found: list[Opened] = []
    if "<table" in html.casefold():
        found.append(read(PASTED, tuple(sheets_of_page(html, PASTED)), NOTHING_SAID, learned))
    if text.strip() and not (found and found[0].draft.tables):
        plain = text.replace("\r\n", "\n").replace("\r", "\n").replace("\0", "")
        found.append(read(PASTED, (split_lines(sheet_from_text(plain, PASTED)),), NOTHING_SAID, learned))
    found = [one for one in found if any(sheet.rows for sheet in one.sheets)]
    if not found:
        raise ReadError("There is no text on the clipboard: copy the chart first, then paste it.")
    return max(found, key=_figures)


def read(
    name: str,
    sheets: tuple[Sheet, ...],
    answers: Answers,
    learned: Learned,
    progress: Progress = no_progress,
) -> Opened:
    """The reading of grids with answers and the names learned earlier; what was answered is no question any more."""
    draft = recognise(name, sheets, answers.corrections, progress)
    heard = remembered(learned, draft, answers.corrections)
    used = answers.corrections
    if heard:
        used = replace(used, measures={**used.measures, **heard})
        draft = recognise(name, sheets, used, progress)
    inferred = {code: _tables_with(code, draft, used, progress) for code in _OF_TABLES}
    opened = Opened(name, sheets, _answered(draft, used), answers, inferred, heard)
    return replace(opened, charts=tuple(merged(to_charts(opened.taken, "", str))))


def _figures(opened: Opened) -> int:
    return sum(cm is not None for table in opened.draft.tables for row in table.rows for cm in row.cm)


def _tables_with(code: str, draft: Draft, corrections: Corrections, progress: Progress) -> frozenset[str]:
    """The keys of the tables that a flag without a cell is about."""
    found: set[str] = set()
    for sheet in {flag.sheet for flag in draft.flags if flag.code == code and not flag.at}:
        tables = [table for table in draft.tables if table.sheet == sheet]
        if len(tables) == 1:
            found.add(tables[0].key)
            continue
        grids = [grid for grid in draft.sheets if grid.name == sheet]
        for table in tables:
            progress(0, 0)
            others = [other for other in tables if other is not table]
            trial = recognise(draft.source, grids, _settled(code, others, corrections))
            if any(flag.code == code and not flag.at for flag in trial.flags):
                found.add(table.key)
    return frozenset(found)


def _settled(code: str, tables: Sequence[DraftTable], corrections: Corrections) -> Corrections:
    """The corrections with the unit or the kind of some tables set to what it was read as: so they are not flagged."""
    if code == "kind_inferred":
        return replace(corrections, kinds={**{t.key: t.kind for t in tables}, **corrections.kinds})
    units = {t.key: t.unit for t in tables if t.unit != "mixed"}
    return replace(corrections, units={**units, **corrections.units})


def _answered(draft: Draft, corrections: Corrections) -> Draft:
    """The draft without the flags and doubts that a correction has answered."""
    told = set(corrections.written_as)
    tables = tuple(
        replace(t, rows=tuple(replace(r, doubt="") if (t.sheet, r.label_at) in told else r for r in t.rows))
        for t in draft.tables
    )
    settled = {
        "half_width_suspected": told,
        "measure_inferred": set(corrections.measures),
        "label_looks_like_date": set(corrections.sizes),
        "kind_inferred": _labels([t for t in tables if t.key in corrections.kinds]),
    }
    flags = tuple(f for f in draft.flags if not _is_settled(f, settled.get(f.code, ())))
    return replace(draft, tables=tables, flags=flags)


def _is_settled(flag: Flag, cells: Collection[Cell]) -> bool:
    return bool(flag.at) and (flag.sheet, flag.at) in cells


def _labels(tables: Sequence[DraftTable]) -> set[Cell]:
    return {(table.sheet, row.label_at) for table in tables for row in table.rows}


def likely_title(opened: Opened) -> str:
    """A title to begin with: the file's name in words, or the first line above a pasted chart."""
    if opened.name != PASTED:
        stem = re.sub(r"\.\w{1,5}$", "", opened.name)
        return " ".join(re.sub(r"[_]+|(?<=\w)-(?=\w{3})", " ", stem).split()) or "Imported pattern"
    if found := headings(opened):
        return found[0][:80]
    return "Pasted pattern"


def headings(opened: Opened) -> list[str]:
    """The lines that were read as titles, in order."""
    return [
        cell.text
        for sheet in opened.sheets
        for cell in sheet.cells()
        if opened.draft.roles.get(sheet.name, {}).get(cell.at) == "title"
    ]
