"""The questions a reading leaves open, each a sentence with its cell and with answers to choose from."""

from __future__ import annotations

import re
from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.importing.asking_tables import clash_asks, kind_asks, unit_asks
from sizekeeper.importing.figures import figure_in
from sizekeeper.importing.question import UNITS, Answer, Ask, Remark
from sizekeeper.importing.setting import with_cell, with_measure, with_size, with_written
from sizekeeper.importing.unit_doubts import likelier_unit

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.importing.draft import ChartUnit, DraftRow, DraftTable, Flag
    from sizekeeper.importing.opened import Answers, Opened

_TWO = re.compile(r".*?: (?P<one>.+) and (?P<other>.+) are not the same")

_BOTH = 2


def asks(opened: Opened) -> list[Ask]:
    """What is to be answered before the reading can be trusted, table by table."""
    found = [*unit_asks(opened), *kind_asks(opened), *clash_asks(opened)]
    for flag in opened.draft.flags:
        maker = _MAKERS.get(flag.code)
        if maker is not None and _key(flag) not in opened.answers.confirmed and _is_taken(opened, flag):
            found.append(maker(opened, flag))
    return found


def remarks(opened: Opened) -> list[Remark]:
    """What is good to know and asks nothing, each note once."""
    asked = {"unit_inferred", "kind_inferred", *_MAKERS}
    in_question = {(ask.sheet, ask.at) for ask in asks(opened)}
    return [
        Remark(_sentence(f.note), f.sheet, f.at)
        for f in opened.draft.flags
        if f.code not in asked | _SEEN and _is_taken(opened, f) and not _is_known(opened, f, in_question)
    ]


_SEEN = {"multi_table", "multi_sheet"}
"""What can be seen at a glance in the window."""


def _is_known(opened: Opened, flag: Flag, in_question: set[tuple[str, str]]) -> bool:
    """Whether a flag says nothing new: of a cell that a question is about already, or that was left out by hand."""
    cell = (flag.sheet, flag.at)
    if flag.code == "missing_value":
        return cell in opened.answers.corrections.ignored
    return flag.code == "uneven_step" and (cell in in_question or ("non_monotonic", *cell) in opened.answers.confirmed)


def _key(flag: Flag) -> tuple[str, str, str]:
    return flag.code, flag.sheet, flag.at


def _sentence(note: str) -> str:
    return f"{note[0].upper()}{note[1:].rstrip('.')}." if note else ""


def _is_taken(opened: Opened, flag: Flag) -> bool:
    """Whether a flag is about something that is taken in: not the cell of a table that was left out."""
    if not opened.answers.left_out:
        return True
    if not opened.tables:
        return False
    left = [t for t in opened.draft.tables if t.key in opened.answers.left_out]
    return not any(t.sheet == flag.sheet and flag.at in _cells(t) for t in left)


def _cells(table: DraftTable) -> set[str]:
    labels = {size.at for size in table.sizes} | {row.label_at for row in table.rows}
    return (labels | {cell.at for row in table.rows for cell in row.cells}) - {""}


def row_at(opened: Opened, sheet: str, at: str) -> tuple[DraftTable, DraftRow] | None:
    """The table and row that a cell belongs to as label or figure."""
    for table in opened.draft.tables:
        for row in table.rows:
            if table.sheet == sheet and (row.label_at == at or any(cell.at == at for cell in row.cells)):
                return table, row
    return None


def _half(opened: Opened, flag: Flag) -> Ask:
    place = row_at(opened, flag.sheet, flag.at)
    label = place[1].label if place else flag.note.partition(":")[0]
    figures = [cell.text for cell in place[1].cells if cell.low is not None] if place else []
    shown = f" ({figures[0]} to {figures[-1]})" if len(figures) > 1 else ""
    says = f"{label}{shown} looks like half of the girth, as on a garment laid flat. How was it measured?"
    one = [(flag.sheet, flag.at)]
    every = [(f.sheet, f.at) for f in opened.draft.flags if f.code == flag.code]
    choices = [
        Answer("Flat: count it twice", partial(with_written, rows=one, written_as="half")),
        Answer("All around, as printed", partial(with_written, rows=one, written_as="full")),
    ]
    if len(every) > 1:
        words = "Both are flat" if len(every) == _BOTH else f"All {len(every)} are flat"
        choices.append(Answer(words, partial(with_written, rows=every, written_as="half")))
    return Ask(flag.code, says, flag.sheet, flag.at, tuple(choices))


def _date(opened: Opened, flag: Flag) -> Ask:
    size = next((s for t in opened.draft.tables for s in t.sizes if (t.sheet, s.at) == (flag.sheet, flag.at)), None)
    if size is None:
        return Ask(flag.code, f"{_sentence(flag.note)} Is it right?", flag.sheet, flag.at, (_yes(flag),), "cell")
    says = f"A spreadsheet had turned this size into a date; it was read as {size.label}. Is that right?"
    right = Answer(f"Yes, {size.label}", partial(with_size, cell=(flag.sheet, flag.at), label=size.label))
    return Ask(flag.code, says, flag.sheet, flag.at, (right,), "size")


def _two_units(_opened: Opened, flag: Flag) -> Ask:
    match = _TWO.fullmatch(flag.note)
    choices = [Answer("It is right as read", partial(confirmed, flag=flag))]
    if match is not None:
        cell = (flag.sheet, flag.at)
        choices = [
            Answer(f"{text} is right", partial(_settled_as, flag=flag, cell=cell, text=text))
            for text in (match["one"], match["other"])
        ]
    return Ask(flag.code, f"{_sentence(flag.note)} Which is right?", flag.sheet, flag.at, tuple(choices), "cell")


def _measure(opened: Opened, flag: Flag) -> Ask:
    place = row_at(opened, flag.sheet, flag.at)
    choices: tuple[Answer, ...] = ()
    if place is not None:
        measure = place[1].measure
        name = assets.measures().name(measure)
        choices = (Answer(f"Yes, {name.lower()}", partial(with_measure, row=(flag.sheet, flag.at), measure=measure)),)
    return Ask(flag.code, f"{_sentence(flag.note)} Is it that?", flag.sheet, flag.at, choices, "measure")


def _measure_again(_opened: Opened, flag: Flag) -> Ask:
    keep = Answer("Keep it apart", partial(confirmed, flag=flag))
    return Ask(flag.code, f"{_sentence(flag.note)} What is it?", flag.sheet, flag.at, (keep,), "measure")


def _sizes(_opened: Opened, flag: Flag) -> Ask:
    return Ask(flag.code, f"{_sentence(flag.note)} Are they the sizes?", flag.sheet, flag.at, (_yes(flag),), "size")


def _odd(opened: Opened, flag: Flag) -> Ask:
    place = row_at(opened, flag.sheet, flag.at)
    text = next((c.text for c in place[1].cells if c.at == flag.at), "") if place else ""
    shown = f" Is “{text}” right?" if text else " Is it right?"
    says = f"{_sentence(flag.note)}{shown}"
    return Ask(
        flag.code, says, flag.sheet, flag.at, (Answer("Yes, as printed", partial(confirmed, flag=flag)),), "cell"
    )


def _unit(opened: Opened, flag: Flag) -> Ask:
    """Asks of figures that no person has in their unit: one row's where the flag is at its label, else the table's."""
    place = row_at(opened, flag.sheet, flag.at)
    rows = [] if place is None else [place[1]] if place[1].label_at == flag.at else list(place[0].rows)
    units = [unit for row in rows if place and (unit := likelier_unit(row, place[0]))]
    cells = [((flag.sheet, c.at), c.text) for row in rows for c in row.cells if _names_no_unit(c.text)]
    choices = [Answer("As printed", partial(confirmed, flag=flag))]
    if units and cells:
        recount = partial(_recounted, flag=flag, cells=cells, unit=units[0])
        choices.insert(0, Answer(f"They are {UNITS[units[0]]}", recount))
    return Ask(flag.code, f"{_sentence(flag.note)} What are they?", flag.sheet, flag.at, tuple(choices), "cell")


def _names_no_unit(text: str) -> bool:
    found = figure_in(text)
    return found is not None and all(amount.unit is None for amount in found.amounts)


def _recounted(answers: Answers, flag: Flag, cells: list[tuple[tuple[str, str], str]], unit: ChartUnit) -> Answers:
    """The answers with a unit written beside every figure of some cells."""
    for cell, text in cells:
        answers = with_cell(answers, cell, f"{text} {unit}")
    return confirmed(answers, flag)


def _yes(flag: Flag) -> Answer:
    return Answer("Yes", partial(confirmed, flag=flag))


def _settled_as(answers: Answers, flag: Flag, cell: tuple[str, str], text: str) -> Answers:
    return with_cell(confirmed(answers, flag), cell, text)


def confirmed(answers: Answers, flag: Flag) -> Answers:
    """The answers with a doubt that was looked at: it is right as it was read."""
    return replace(answers, confirmed=answers.confirmed | {_key(flag)})


_MAKERS: dict[str, Callable[[Opened, Flag], Ask]] = {
    "half_width_suspected": _half,
    "label_looks_like_date": _date,
    "dual_unit_disagrees": _two_units,
    "measure_inferred": _measure,
    "sizes_inferred": _sizes,
    "non_monotonic": _odd,
    "unit_doubtful": _unit,
    "size_repeated": _odd,
    "row_repeated": _measure_again,
}
