"""The questions about whole tables: their unit, their kind, and which of several is meant."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper.importing.question import KINDS, UNITS, Answer, Ask
from sizekeeper.importing.setting import with_kinds, with_units

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sizekeeper.core.chart import ChartKind
    from sizekeeper.importing.draft import DraftTable
    from sizekeeper.importing.opened import Answers, Opened

_CHOICES = 4
"""How many tables are offered by name; the others can be left out by their ticks."""
_CLASH = "tables_clash"


def table_words(opened: Opened, table: DraftTable) -> str:
    """A table among several: `the finished measurements`, with its sheet or title where two are of one kind."""
    alike = [other for other in opened.draft.tables if other.kind == table.kind]
    name = f"the {KINDS[table.kind]}"
    if len(alike) == 1:
        return name
    if sum(other.sheet == table.sheet for other in alike) == 1:
        return f"{name} on {table.sheet}"
    return f"{name}, “{table.title}”" if table.title else f"{name}, table {opened.draft.tables.index(table) + 1}"


def _of(opened: Opened, table: DraftTable) -> str:
    return "" if len(opened.tables) == 1 else f" for {table_words(opened, table)}"


def _start(table: DraftTable) -> str:
    return table.key.partition("!")[2]


def unit_asks(opened: Opened) -> Iterator[Ask]:
    """The tables that print no unit."""
    asked = [table for table in opened.tables if table.key in opened.inferred.get("unit_inferred", ())]
    for table in asked:
        read = "several units" if table.unit == "mixed" else UNITS[table.unit]
        says = f"No unit is printed{_of(opened, table)}; the figures look like {read}. Which unit is it?"
        choices = [Answer(unit, partial(with_units, tables=[table.key], unit=unit)) for unit in UNITS]
        if len(asked) > 1 and table.unit != "mixed":
            every = partial(with_units, tables=[t.key for t in asked], unit=table.unit)
            choices.append(Answer(f"All {len(asked)} tables in {table.unit}", every))
        yield Ask("unit_inferred", says, table.sheet, _start(table), tuple(choices))


def kind_asks(opened: Opened) -> Iterator[Ask]:
    """The tables that do not say whether they are of the body or the garment."""
    flagged = {(f.sheet, f.at) for f in opened.draft.flags if f.code == "kind_inferred" and f.at}
    inferred = opened.inferred.get("kind_inferred", ())
    asked = [t for t in opened.tables if t.key in inferred or any((t.sheet, r.label_at) in flagged for r in t.rows)]
    for table in asked:
        rows = ", ".join(row.label for row in table.rows[:3])
        what = f" of the table with {rows}" if len(opened.tables) > 1 else ""
        says = f"Nothing says what the figures{what} are; they were read as {KINDS[table.kind]}. Which are they?"
        choices = [Answer(_capital(KINDS[k]), partial(with_kinds, tables=[table.key], kind=k)) for k in KINDS]
        if len(asked) > 1:
            every = partial(with_kinds, tables=[t.key for t in asked], kind=table.kind)
            choices.append(Answer(f"All {len(asked)} are {KINDS[table.kind]}", every))
        yield Ask("kind_inferred", says, table.sheet, _start(table), tuple(choices))


def _capital(text: str) -> str:
    return text[0].upper() + text[1:]


def clash_asks(opened: Opened) -> Iterator[Ask]:
    """A pattern has one chart of a kind: tables that give different figures for it cannot all be that."""
    for kind, words in KINDS.items():
        tables = [table for table in opened.tables if table.kind == kind]
        confirmed_before = (_CLASH, kind, "") in opened.answers.confirmed
        if confirmed_before or not _any_clash(tables):
            continue
        says = f"{len(tables)} tables give different {words} for the same sizes. Which are this pattern’s?"
        choices = [
            Answer(f"Only {_short(table)}", partial(_with_only, table=table.key, others=_keys(tables)))
            for table in tables[:_CHOICES]
        ]
        choices.append(Answer("All, in rows of their own", partial(_with_all, kind=kind)))
        yield Ask(_CLASH, says, tables[0].sheet, _start(tables[0]), tuple(choices))


def _any_clash(tables: Sequence[DraftTable]) -> bool:
    """Whether two tables give different figures for one measure and size."""
    known: dict[tuple[str | None, str, str], tuple[float | None, float | None]] = {}
    for table in tables:
        figures: dict[tuple[str | None, str, str], tuple[float | None, float | None]] = {}
        for row in table.rows:
            for size, low, high in zip(table.sizes, row.cm_low, row.cm_high, strict=True):
                if low is not None:
                    figures |= {(row.view, row.measure, n.casefold()): (low, high) for n in (size.label, *size.aliases)}
        if any(known.get(place, ends) != ends for place, ends in figures.items()):
            return True
        known |= figures
    return False


def _short(table: DraftTable) -> str:
    """A table by its title, or by the sheet and cell it begins at."""
    return f"“{table.title[:28]}”" if table.title else table.key.replace("!", ", ")


def _keys(tables: Sequence[DraftTable]) -> frozenset[str]:
    return frozenset(table.key for table in tables)


def _with_only(answers: Answers, table: str, others: frozenset[str]) -> Answers:
    return replace(answers, left_out=answers.left_out | (others - {table}))


def _with_all(answers: Answers, kind: ChartKind) -> Answers:
    return replace(answers, confirmed=answers.confirmed | {(_CLASH, kind, "")})
