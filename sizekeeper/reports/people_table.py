"""People as a table, a row each and a column a measure, as CSV or XLSX: made to be read again as well as by people.

Names, notes and groups are what somebody typed; none of it can become a formula.
"""

from __future__ import annotations

import datetime as dt
import io
from collections import Counter
from dataclasses import dataclass
from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.exact_text import exact_text
from sizekeeper.core.groups import groups_text
from sizekeeper.core.notation import Notation, rounded, show
from sizekeeper.core.people_headings import HEADINGS, OF_READING, cleaned, guarded
from sizekeeper.core.person import Person
from sizekeeper.core.reading_edit import Figure, figure_of, median_cm, shown_text

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from openpyxl.worksheet.worksheet import Worksheet
    from pandas import DataFrame

    from sizekeeper.core.measure import Measures
    from sizekeeper.core.person import Reading

Value = str | Fraction | dt.date
"""What a cell holds; an empty text for nothing."""

_LONGEST = 32_000
"""The most characters of one cell; spreadsheets hold 32,767 (Microsoft, "Excel specifications and limits")."""

_LONGEST_SHOWN, _NARROWEST = 40, 9
_SHEET = "People"


@dataclass(frozen=True, slots=True)
class PeopleTable:
    """Headings and rows. `notation` is how lengths are written that are numbers, None where they stand as typed."""

    headings: tuple[str, ...]
    rows: tuple[tuple[Value, ...], ...]
    notation: Notation | None = None


@dataclass(frozen=True, slots=True)
class _Row:
    """A person with the newest figure of each measure, and what most of these have in common."""

    person: Person
    figures: dict[str, Figure]
    on: dt.date | None
    by: str
    over: str


def people_table(people: Iterable[Person], measures: Measures, notation: Notation | None = None) -> PeopleTable:
    """The newest figures of people as a table.

    Args:
        people: one row each, in this order.
        measures: give the measures' names and their order.
        notation: the unit and step for all lengths, which are then numbers; None leaves each as it was typed.
    """
    rows = [_row(person) for person in people]
    used = {measure for row in rows for measure in row.figures}
    columns = [m.id for m in measures if m.id in used] + sorted(used - {m.id for m in measures})
    own = [(m, part) for m in columns for part in OF_READING if any(_own(row, m, part) for row in rows)]
    before = [f for f in HEADINGS if f in _ALWAYS or (f in _WHERE_KNOWN and any(_told(row, f) for row in rows))]
    behind = ["notes"] if any(row.person.notes for row in rows) else []
    unit = f" ({notation.unit})" if notation else ""
    headings = (
        *(HEADINGS[f] for f in before),
        *(f"{measures.name(m)}{unit}" for m in columns),
        *(f"{measures.name(m)}: {OF_READING[part]}" for m, part in own),
        *(HEADINGS[f] for f in behind),
    )
    made = tuple(
        (
            *(_told(row, f) for f in before),
            *(_figure(row, m, notation) for m in columns),
            *(_own(row, m, part) for m, part in own),
            *(_told(row, f) for f in behind),
        )
        for row in rows
    )
    return PeopleTable(headings, made, notation)


_ALWAYS = ("name", "unit", "on", "by")
_WHERE_KNOWN = ("groups", "born", "child", "over")


def _row(person: Person) -> _Row:
    found = {reading.measure: figure_of(person, reading.measure) for reading in person.readings}
    figures = {measure: figure for measure, figure in found.items() if figure is not None}
    last = [figure.last for figure in figures.values()]
    days = Counter(reading.on for reading in last)
    overs = {reading.over for reading in last}
    return _Row(
        person,
        figures,
        max(days, key=lambda day: (days[day], day), default=None),
        next((by for by, _ in Counter(reading.by for reading in last).most_common(1)), ""),
        overs.pop() if len(overs) == 1 else "",
    )


def _told(row: _Row, field: str) -> Value:
    """What stands in a column besides figures; empty where nothing is known."""
    person = row.person
    days = {"born": person.born, "on": row.on}
    if field in days:
        return days[field] or ""
    texts = {
        "name": person.name,
        "groups": groups_text(person.groups),
        "child": "yes" if person.child else "",
        "unit": person.unit,
        "by": row.by,
        "over": row.over,
        "notes": person.notes,
    }
    return _text(texts[field])


def _own(row: _Row, measure: str, part: str) -> Value:
    """What is told of one figure alone: empty where it is as with most of hers."""
    figure = row.figures.get(measure)
    if figure is None:
        return ""
    last = figure.last
    match part:
        case "on":
            return last.on if last.on != row.on else ""
        case "by":
            return last.by if last.by != row.by else ""
        case "over":
            return _text(last.over) if last.over != row.over else ""
        case _:
            return _text(last.note)


def _figure(row: _Row, measure: str, notation: Notation | None) -> Value:
    """The newest figure: of several on one day the median, as it counts everywhere."""
    figure = row.figures.get(measure)
    if figure is None:
        return ""
    exact = figure.exact_cm
    if exact is None:
        return _text(figure.last.text)
    if notation is not None:
        return rounded(exact, notation)
    return _text(_as_typed(figure, row.person))


def _as_typed(figure: Figure, person: Person) -> str:
    legible = [reading for reading in figure.readings if reading.length is not None]
    same: Reading | None = next(
        (r for r in reversed(legible) if r.length and r.length.exact_cm == figure.exact_cm), None
    )
    if same is not None:
        return shown_text(same, person.unit)
    middle = median_cm(tuple(legible))
    assert middle is not None  # noqa: S101 - there is a legible one
    value = middle / Fraction(254, 100) if person.unit == "in" else middle
    return exact_text(value, person.unit)


def _text(text: str) -> str:
    return cleaned(text)[:_LONGEST].strip()


def people_csv(table: PeopleTable) -> bytes:
    """The table as CSV in UTF-8 with its mark, as spreadsheets like it."""
    made: str = _frame([[_plain(value, table.notation) for value in row] for row in table.rows], table.headings).to_csv(
        index=False, lineterminator="\r\n"
    )
    return made.encode("utf-8-sig")


def _plain(value: Value, notation: Notation | None) -> str:
    if isinstance(value, Fraction):
        assert notation is not None  # noqa: S101 - figures are numbers in one notation only
        return show(value * (Fraction(254, 100) if notation.unit == "in" else 1), notation, unit=False)
    return value.isoformat() if isinstance(value, dt.date) else guarded(value)


def _frame(rows: Sequence[Sequence[object]], headings: Sequence[str]) -> DataFrame:
    import pandas as pd

    return pd.DataFrame(rows, columns=list(headings), dtype=object)


def people_workbook(table: PeopleTable) -> bytes:
    """The table as a workbook with one sheet; figures in one unit and days are real ones, all else is text."""
    import pandas as pd

    rows = [[_number(value) for value in row] for row in table.rows]
    file = io.BytesIO()
    with pd.ExcelWriter(file, engine="openpyxl") as writer:
        _frame(rows, table.headings).to_excel(writer, sheet_name=_SHEET, index=False)
        _dress(writer.sheets[_SHEET], table)
    return file.getvalue()


def _number(value: Value) -> str | float | dt.date | None:
    return float(value) if isinstance(value, Fraction) else value or None


def _dress(sheet: Worksheet, table: PeopleTable) -> None:
    """Text stays text, lengths and days look as people write them, the headings stay in sight."""
    from openpyxl.styles import Alignment, Font
    from openpyxl.utils import get_column_letter

    sheet.freeze_panes = "B2"
    for cells in sheet.iter_rows():
        for cell in cells:
            if isinstance(cell.value, str):
                cell.data_type = "s"  # a text that begins like a formula is none
                cell.quotePrefix = bool(cell.row > 1)  # and stays none when it is edited
            elif isinstance(cell.value, float):
                cell.number_format = _format(table.notation)
            elif isinstance(cell.value, dt.date):
                cell.number_format = "yyyy-mm-dd"
            cell.alignment = Alignment(vertical="top")
    for cell in sheet[1]:
        cell.font = Font(bold=True)
    for column, heading in enumerate(table.headings):
        longest = max([len(heading), *(len(str(row[column])) for row in table.rows)])
        sheet.column_dimensions[get_column_letter(column + 1)].width = min(max(longest + 2, _NARROWEST), _LONGEST_SHOWN)


def _format(notation: Notation | None) -> str:
    if notation is None or notation.unit == "cm":
        return "0.0"
    return f"# ??/{notation.step.denominator}"
