"""A draft in words, for the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sizekeeper.importing.draft import Draft, DraftRow, DraftTable

_KINDS = {"body": "Body measurements", "finished": "Finished measurements"}
_UNITS = {"cm": "in cm", "in": "in inches", "mm": "in mm", "mixed": "in several units"}
_QUESTIONS: dict[str, str] = {
    "unit_inferred": "Which unit?",
    "kind_inferred": "Body or finished?",
    "half_width_suspected": "Half or full?",
    "label_looks_like_date": "Is the label right?",
    "dual_unit_disagrees": "Which is right?",
    "sizes_inferred": "What are the sizes?",
    "measure_inferred": "Is it this measure?",
    "unit_doubtful": "Which unit?",
    "size_repeated": "Which is right?",
    "row_repeated": "What is it?",
}
"""The flags that ask something, each with its question."""


def as_text(draft: Draft) -> str:
    """The tables with all figures as printed, then what to know and what to answer, each with its cell."""
    parts = [_table(table) for table in draft.tables]
    asked = [_line(f.code, f.at, f.note) for f in draft.flags if f.code in _QUESTIONS]
    told = [_line(f.code, f.at, f.note) for f in draft.flags if f.code not in _QUESTIONS]
    if asked:
        parts.append("To answer:\n" + "\n".join(asked))
    if told:
        parts.append("To know:\n" + "\n".join(told))
    return "\n\n".join(parts)


def _line(code: str, at: str, note: str) -> str:
    place = f"{at}: " if at else ""
    question = f" {_QUESTIONS[code]}" if code in _QUESTIONS else ""
    return f"  {place}{note}.{question}"


def _table(table: DraftTable) -> str:
    """One table, set in columns."""
    head = f"{_KINDS[table.kind]} {_UNITS[table.unit]} ({table.sheet})"
    rows = [["", *table.labels], *(_row(row) for row in table.rows)]
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    lines = [
        "  ".join([row[0].ljust(widths[0]), *(t.rjust(w) for t, w in zip(row[1:], widths[1:], strict=True))])
        for row in rows
    ]
    return "\n".join([head, *(line.rstrip() for line in lines)])


def _row(row: DraftRow) -> list[str]:
    extra = [f"view {row.view}" if row.view else "", row.variant or ""]
    name = ", ".join([row.label, *(part for part in extra if part and part.casefold() not in row.label.casefold())])
    times = {"full": "", "half": " (half of the girth)", "quarter": " (a quarter of the girth)"}[row.written_as]
    return [name + times, *(cell.text or "–" for cell in row.cells)]
