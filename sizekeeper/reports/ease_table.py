"""The ease table as a document: regions down, sizes across, and its copies as text and HTML."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.notation import show
from sizekeeper.core.places import place_words
from sizekeeper.core.preference import Band
from sizekeeper.core.result import Between, Mode, RegionFit
from sizekeeper.core.sentences import headline
from sizekeeper.core.touched import place_of

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable, Mapping

    from sizekeeper.core.result import Candidate, Fit, RegionAt
    from sizekeeper.core.wording import Wording

Amount = float | None
_BEFORE_SIZES = 3
"""The columns before the sizes: region, body, ease asked for."""


@dataclass(frozen=True, slots=True)
class Column:
    """A size across the top: a listed one, or a line between two beside the chosen size."""

    label: str
    position: float
    between: Between | None = None
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class EaseCell:
    """One region in one size; cm. `amount_cm` is the ease, in body mode chart body minus body.

    `printed_cm` is the figure to check against the envelope. `chosen` marks what is to be cut at this region.
    """

    amount_cm: Amount
    printed_cm: Amount
    band: Band | None
    short_cm: float = 0.0
    interpolated: bool = False
    chosen: bool = False


@dataclass(frozen=True, slots=True)
class EaseRow:
    """One region with its cells, as many as there are columns."""

    region: RegionFit
    cells: tuple[EaseCell, ...]


@dataclass(frozen=True, slots=True)
class EaseTable:
    """The whole table. `labels` are the listed sizes; `chosen` is the column to be centred, None without a choice."""

    mode: Mode
    labels: tuple[str, ...]
    columns: tuple[Column, ...]
    rows: tuple[EaseRow, ...]
    chosen: int | None


def ease_table(fit: Fit) -> EaseTable:
    """The table of a fit: every listed size, and beside the chosen one the best drawable line on either side."""
    chosen_at = _chosen_positions(fit)
    cut = {fit.verdict.position, *chosen_at.values()}
    columns = tuple(
        Column(c.label, c.position, c.between, any(_same(c.position, position) for position in cut))
        for c in _shown(fit, cut)
    )
    regions_at = {c.label: c.regions for c in fit.candidates}
    rows = tuple(
        EaseRow(r, tuple(_cell(fit, r, column, regions_at[column.label], chosen_at) for column in columns))
        for r in fit.regions
    )
    chosen = next((i for i, column in enumerate(columns) if _same(column.position, fit.verdict.position)), None)
    return EaseTable(fit.mode, fit.labels, columns, rows, chosen)


def _same(one: float, other: float) -> bool:
    return abs(one - other) < SAME


def _chosen_positions(fit: Fit) -> Mapping[str, float]:
    """What is to be cut at each region of a blend; empty for a single size."""
    if fit.verdict.kind != "blend" or fit.blend is None:
        return {}
    return {region.measure: place_of(region.measure, fit.blend.positions) for region in fit.regions}


def _shown(fit: Fit, cut: Collection[float]) -> list[Candidate]:
    """The candidates that get a column, in order along the run.

    Of the lines between two sizes only those chosen, and beside the chosen size the best on either side.
    """
    at = fit.verdict.position
    ranked = sorted((c for c in fit.candidates if c.between is not None), key=lambda c: c.rank)
    beside = [
        next((c for c in ranked if low < c.position < high and not _same(c.position, at)), None)
        for low, high in ((at - 1, at), (at, at + 1))
    ]
    keep = {c.label for c in beside if c is not None}
    shown = [
        c for c in fit.candidates if c.between is None or c.label in keep or any(_same(c.position, w) for w in cut)
    ]
    return sorted(shown, key=lambda c: c.position)


def _cell(
    fit: Fit, region: RegionFit, column: Column, regions: Mapping[str, RegionAt], chosen_at: Mapping[str, float]
) -> EaseCell:
    at = regions.get(region.measure)
    chosen = _same(chosen_at.get(region.measure, fit.verdict.position), column.position)
    if at is None:
        return EaseCell(None, None, None, chosen=chosen)
    body = fit.mode == "body"
    return EaseCell(
        amount_cm=at.diff_cm if body else at.ease_cm,
        printed_cm=at.chart_cm if body else at.finished_cm,
        band=at.band,
        short_cm=at.short_cm or 0.0,
        interpolated=at.interpolated,
        chosen=chosen,
    )


def cell_words(cell: EaseCell, words: Wording) -> str:
    """A cell as one reads it: `5.1 (101.6, close)`."""
    if cell.amount_cm is None:
        return "–"
    printed = "" if cell.printed_cm is None else show(cell.printed_cm, words.envelope, unit=False)
    notes = [("~" if cell.interpolated else "") + printed] if printed else []
    notes += [cell.band] if cell.band else []
    notes += [f"short by {words.sewn(cell.short_cm)}"] if cell.short_cm else []
    amount, said = _bare(cell.amount_cm, words), ", ".join(notes)
    return f"{amount} ({said})" if said else amount


def _bare(cm: float, words: Wording) -> str:
    return show(cm, words.notation, unit=False)


def _grid(table: EaseTable, words: Wording) -> tuple[list[str], list[list[str]]]:
    """The table's words: its heading, and one list a row."""
    heading = ["Region", f"Body, {words.notation.unit}", "Asked"]
    heading += [place_words(c.position, table.labels) + (" (chosen)" if c.chosen else "") for c in table.columns]
    rows = []
    for row in table.rows:
        asked = "–" if row.region.asked_cm is None else _bare(row.region.asked_cm, words)
        first = [words.name(row.region.measure), _bare(row.region.body_cm, words), asked]
        rows.append([*first, *(cell_words(cell, words) for cell in row.cells)])
    return heading, rows


def _what(table: EaseTable, words: Wording) -> str:
    unit, printed = words.notation.unit, words.envelope.unit
    if table.mode == "body":
        return f"In {unit}: body chart minus body, with the body chart’s figure in brackets, in {printed}."
    return f"Ease in {unit}: finished minus body, with the finished figure in brackets, in {printed}."


def as_text(fit: Fit, title: str, words: Wording) -> str:
    """The verdict and the table as tab-separated text, to paste into a letter or a spreadsheet."""
    table = ease_table(fit)
    heading, rows = _grid(table, words)
    lines = [[title], [headline(fit, words)], [_what(table, words)], heading, *rows]
    return "\n".join("\t".join(_plain(field) for field in line) for line in lines) + "\n"


def _plain(field: str) -> str:
    """A field without tabs and line ends, and not read as a formula by a spreadsheet."""
    text = " ".join("".join(c if c.isprintable() else " " for c in field).split())
    return f"'{text}" if text[:1] in ("=", "+", "@", "-") else text


def as_html(fit: Fit, title: str, words: Wording) -> str:
    """The verdict and the table as HTML; every name is escaped."""
    table = ease_table(fit)
    heading, rows = _grid(table, words)
    head = _html_row("th", heading, table)
    body = "".join(_html_row("td", row, table) for row in rows)
    return (
        f"<h2>{escape(title)}</h2><p><strong>{escape(headline(fit, words))}</strong></p>"
        f"<p>{escape(_what(table, words))}</p>"
        f'<table border="1" cellspacing="0" cellpadding="4"><thead>{head}</thead><tbody>{body}</tbody></table>'
    )


def _html_row(tag: str, fields: Iterable[str], table: EaseTable) -> str:
    cells = []
    for index, field in enumerate(fields):
        chosen = index >= _BEFORE_SIZES and table.columns[index - _BEFORE_SIZES].chosen
        text = f"<b>{escape(field)}</b>" if chosen and tag == "td" else escape(field)
        cells.append(f"<{tag}>{text}</{tag}>")
    return f"<tr>{''.join(cells)}</tr>"
