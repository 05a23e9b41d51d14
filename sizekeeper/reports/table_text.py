"""The decision sheet as plain comma-separated text, for whatever reads tables.

Lengths are decimal numbers, hers in her unit and printed ones in the pattern's, because spreadsheets take `7/8` for a
day in August; texts are quoted and never read as a formula. Lines end as RFC 4180 has it. The text holds no byte order
mark: `export.py`, which makes bytes of it, writes one, since without it some spreadsheets do not take the file for
UTF-8.
"""

from __future__ import annotations

import csv
import io
from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words
from sizekeeper.core.length import CM_PER
from sizekeeper.reports.typed_text import plain_field

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

    from sizekeeper.core.notation import Notation
    from sizekeeper.reports.sheet import Sheet, SheetCell, SheetRow

Field = str | float | None
_PLACES = 4
"""Decimal places: a sixteenth of an inch is 0.0625."""


def table_text(sheet: Sheet) -> str:
    """The whole sheet: heading, ease table, plan, pieces, work list, what to check, and the figures."""
    out = io.StringIO()
    writer = csv.writer(out, quoting=csv.QUOTE_NONNUMERIC, lineterminator="\r\n")
    for line in _lines(sheet):
        writer.writerow([plain_field(field) if isinstance(field, str) else _empty(field) for field in line])
    return out.getvalue()


def _empty(field: float | None) -> float | str:
    return "" if field is None else field


def _lines(sheet: Sheet) -> Iterator[Sequence[Field]]:
    yield ["Pattern", sheet.pattern]
    yield ["For", sheet.person]
    for name, text in (("Publisher", sheet.publisher), ("View", sheet.view)):
        if text:
            yield [name, text]
    yield ["Date", day_words(sheet.on)]
    yield ["Verdict", sheet.verdict]
    for title, said in (
        ("Doubt", sheet.doubts),
        ("Take care", sheet.cautions),
        ("Measure again", sheet.measure_again),
    ):
        yield from ([title, text] for text in said)
    yield []
    yield from _table(sheet)
    yield from _plan(sheet)
    yield from _work(sheet)
    for part in sheet.figures:
        yield from _block([part.title, *part.across], ([name, *texts] for name, texts in part.rows))


def _block(heading: Sequence[Field], rows: Iterable[Sequence[Field]]) -> Iterator[Sequence[Field]]:
    """A heading with its rows, set off by an empty line; nothing without rows."""
    found = list(rows)
    if found:
        yield []
        yield heading
        yield from found


def _table(sheet: Sheet) -> Iterator[Sequence[Field]]:
    table, unit = sheet.table, sheet.notation.unit
    yield [table.what]
    if table.left_out:
        yield [f"{table.left_out} more {'size is' if table.left_out == 1 else 'sizes are'} not shown."]
    heading: list[Field] = ["Region"]
    heading += [] if sheet.private else [f"Body, {unit}", f"Asked, {unit}"]
    heading.append("Counts as")
    for column in table.columns:
        name = f"{column.words} (to cut)" if column.chosen else column.words
        heading += [f"{name}: {what}" for what in _over(sheet)]
    yield heading
    for row in table.rows:
        yield _row(sheet, row)


def _over(sheet: Sheet) -> list[str]:
    """The words over the columns of a size; printed figures are in the pattern's unit."""
    hers, printed = sheet.notation.unit, sheet.envelope.unit
    if sheet.private:
        return [f"finished, {printed}", "band"]
    if sheet.table.mode == "body":
        return [f"difference, {hers}", f"body chart, {printed}"]
    return [f"ease, {hers}", f"finished, {printed}", "band"]


def _row(sheet: Sheet, row: SheetRow) -> list[Field]:
    line: list[Field] = [row.name]
    if not sheet.private:
        line += [_length(row.body_cm, sheet.notation), _length(row.asked_cm, sheet.notation)]
    line.append(row.role)
    for cell in row.cells:
        line += _cell(sheet, cell)
    return line


def _cell(sheet: Sheet, cell: SheetCell) -> list[Field]:
    amount, printed = _length(cell.amount_cm, sheet.notation), _length(cell.printed_cm, sheet.envelope)
    band = ", ".join(part for part in (cell.band, cell.short) if part)
    if sheet.private:
        return [printed, band]
    return [amount, printed] if sheet.table.mode == "body" else [amount, printed, band]


def _length(cm: float | None, notation: Notation) -> float | None:
    return None if cm is None else round(cm / float(CM_PER[notation.unit]), _PLACES) + 0.0


def _plan(sheet: Sheet) -> Iterator[Sequence[Field]]:
    plan = sheet.plan
    if plan is None:
        return
    rows: list[list[Field]] = [["", line] for line in plan.lines]
    if plan.advised:
        rows.append(["Chosen against the advice", plan.advised])
    if plan.reason:
        rows.append(["Why", plan.reason])
    if plan.decided and plan.on is not None:
        rows.append(["Decided on", day_words(plan.on)])
    yield []
    yield ["Plan" if plan.decided else "Plan advised", plan.title]
    yield from rows


def _work(sheet: Sheet) -> Iterator[Sequence[Field]]:
    trace = (["", piece.name, piece.size, piece.cut] for piece in sheet.trace)
    yield from _block(["Traced", "Piece", "Size", "Cut"], trace)
    steps = (["x" if s.done else "", part.title, s.piece, s.words] for part in sheet.work for s in part.steps)
    yield from _block(["Done", "Part", "Piece", "What to do"], steps)
