"""A decision sheet as plain text, line by line: to be read aloud, searched or copied."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

    from sizekeeper.reports.sheet import Sheet, SheetCell, SheetPlan, SheetRow, SheetTable

_NOTHING = ("", "–")


def sheet_text(sheet: Sheet) -> str:
    """Everything that stands on a sheet, in the order of the page."""
    return "\n".join(_lines(sheet)).strip() + "\n"


def _lines(sheet: Sheet) -> Iterator[str]:
    yield " · ".join(part for part in (sheet.person, sheet.pattern, sheet.publisher, sheet.view) if part)
    yield day_words(sheet.on)
    yield ""
    yield sheet.verdict
    yield from sheet.doubts
    yield from _table(sheet)
    if sheet.plan is not None:
        yield from _plan(sheet.plan)
    for part in sheet.work:
        yield from _part(part.title, (f"{_tick(step.done)} {step.piece}: {step.words}" for step in part.steps))
    yield from _part("Pieces to trace", (f"{_tick(False)} {p.name}: {p.cut}, {p.size}" for p in sheet.trace))  # noqa: FBT003 - it is the box's state
    yield from _part("Measure again", sheet.measure_again)
    yield from _part("Look at on the toile", sheet.toile)
    yield from _part("Take care", sheet.cautions)
    for figures in sheet.figures:
        yield from _part(figures.title, (_figures(name, figures.across, texts) for name, texts in figures.rows))


def _part(title: str, lines: Iterable[str]) -> Iterator[str]:
    """A heading and its lines; nothing where there are none."""
    kept = list(lines)
    if kept:
        yield ""
        yield title
        yield from kept


def _tick(done: bool) -> str:  # noqa: FBT001 - the state of a box
    return "[x]" if done else "[ ]"


def _table(sheet: Sheet) -> Iterator[str]:
    table: SheetTable = sheet.table
    yield ""
    yield table.what
    for row in table.rows:
        yield _row_words(row)
        for column, cell in zip(table.columns, row.cells, strict=True):
            yield f"  {column.words}{' (chosen)' if column.chosen else ''}: {_cell_words(cell)}"
    if table.left_out:
        yield f"{table.left_out} more {'size is' if table.left_out == 1 else 'sizes are'} not shown."


def _row_words(row: SheetRow) -> str:
    said = [row.role]
    said += [f"body {row.body}"] if row.body not in _NOTHING else []
    said += [f"asked for {row.asked}"] if row.asked not in _NOTHING else []
    return f"{row.name}: {', '.join(part for part in said if part)}"


def _cell_words(cell: SheetCell) -> str:
    said = [cell.amount] if cell.amount not in _NOTHING else []
    said += [cell.band] if cell.band else []
    said += [f"printed {cell.printed}"] if cell.printed not in _NOTHING else []
    said += [cell.short] if cell.short else []
    return ", ".join(said) or "not known"


def _plan(plan: SheetPlan) -> Iterator[str]:
    when = f" on {day_words(plan.on)}" if plan.on is not None else ""
    yield ""
    yield f"{'Decided' + when if plan.decided else 'Advised'}: {plan.title}"
    yield from plan.lines
    if plan.reason:
        yield f"Reason: {plan.reason}"
    if plan.advised:
        yield f"Advised was: {plan.advised}"


def _figures(name: str, across: tuple[str, ...], texts: tuple[str, ...]) -> str:
    pairs = [f"{words} {text}".strip() for words, text in zip(across, texts, strict=False) if text not in _NOTHING]
    return f"{name}: {', '.join(pairs)}" if pairs else name
