"""The figures of a table of people: each as written, with its unit from the cell, the column, the row or the table."""

from __future__ import annotations

import re
from dataclasses import dataclass, replace
from functools import partial
from typing import TYPE_CHECKING, Literal, cast

from sizekeeper import assets
from sizekeeper.core.exact_text import exact_text
from sizekeeper.core.length import Length, Unit
from sizekeeper.core.notation import parse_length
from sizekeeper.core.plausible import question
from sizekeeper.core.reading_edit import read_text
from sizekeeper.errors import LengthError
from sizekeeper.importing.figures import figure_in, is_missing
from sizekeeper.importing.limits import Progress, no_progress
from sizekeeper.importing.people_draft import Column, Notes, PeopleAnswers, confirm, pick, put
from sizekeeper.importing.question import UNITS
from sizekeeper.importing.shown import general

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.plausible import Question
    from sizekeeper.importing.grid import GridCell

_FRACTION = re.compile(r"\d/\d|[½¼¾⅛⅜⅝⅞]")
_SEVERAL = 3
"""From so many figures on that seem to be in another unit, they are asked about together (coined)."""

_SAMPLE = 200
"""From so many figures the likeliest unit shows; looking at more would only take longer (coined)."""

_INCHES = ("in", "ft", "yd")


@dataclass(frozen=True, slots=True)
class Figure:
    """A figure of somebody. `unit` is the one it is in; `stated` tells whether that was said anywhere.

    `length` is None where the text is no length.
    """

    column: Column
    at: str
    text: str
    unit: Unit | Literal[""] = ""
    own: bool = False
    length: Length | None = None
    guessed: bool = False


def figure_at(column: Column, cell: GridCell, row_unit: str, table_unit: str) -> Figure | None:
    """The figure in a cell, None where it says that there is none. The cell's own unit goes before all others."""
    if cell.date is None and (is_missing(cell.text) or cell.note == "formula"):
        return None
    text = _text(cell)
    blank = Figure(column, cell.at, text)
    if cell.date is not None:
        return blank
    try:
        length = parse_length(text)
    except LengthError:
        stated = column.unit or row_unit or table_unit
        return replace(blank, unit=cast("Unit", stated)) if _is_bare(text) else blank
    return replace(blank, unit=length.unit, own=True)


def _text(cell: GridCell) -> str:
    """What a cell says: as shown, or the stored number where a spreadsheet shows it rounded."""
    shown = " ".join(cell.text.split())
    if cell.number is None:
        return shown
    try:
        length = parse_length(shown, "cm")
    except LengthError:
        return general(float(cell.number))
    if length.value == cell.number:
        return shown
    behind = re.search(r"[^\d\s.,/-][^\d]*$", shown)
    return f"{general(float(cell.number))}{f' {behind[0].strip()}' if behind else ''}"


def _is_bare(text: str) -> bool:
    return read_text(text, "cm")[0] is not None


def with_lengths(
    figures: Sequence[Figure], answers: PeopleAnswers, notes: Notes, progress: Progress = no_progress
) -> list[Figure]:
    """The figures with their lengths. Where nothing gives a unit it is asked for, and the likeliest is taken so far."""
    bare = [f for f in figures if not f.unit and _is_bare(f.text)]
    unit = cast("Unit", _unit_of_all(bare, answers, notes)) if bare else ""
    lacking, read = {f.at for f in bare}, []
    for i, figure in enumerate(figures):
        progress(i, len(figures))
        guess = unit if figure.at in lacking and not figure.unit else ""
        read.append(_read(replace(figure, unit=guess, guessed=not answers.unit) if guess else figure))
    return read


def _unit_of_all(bare: Sequence[Figure], answers: PeopleAnswers, notes: Notes) -> str:
    """The unit of figures that have none: as answered, else the likeliest, which is asked about."""
    if answers.unit:
        return answers.unit
    ways = sorted(UNITS, key=lambda unit: (_cost(bare[:_SAMPLE], unit), list(UNITS).index(unit)))
    some = "One figure has no unit" if len(bare) == 1 else f"{len(bare)} figures have no unit"
    says = f"{some}, as “{bare[0].text}” under {bare[0].column.label}. What are they?"
    choices = [pick(UNITS[way].capitalize(), partial(_with_unit, unit=way)) for way in ways]
    notes.ask("unit", says, bare[0].at, *choices, must=True)
    return ways[0]


def _with_unit(answers: PeopleAnswers, unit: str) -> PeopleAnswers:
    return replace(answers, unit=unit)


def _cost(figures: Iterable[Figure], unit: str) -> int:
    """How many figures no body has in a unit; fractions speak for inches."""
    measures, cost = assets.measures(), 0
    for figure in figures:
        length = parse_length(figure.text, cast("Unit", unit))
        cost += question(measures[figure.column.role], length, child=True) is not None
        cost += unit != "in" and _FRACTION.search(figure.text) is not None
    return cost


def _read(figure: Figure) -> Figure:
    """The figure with its length, where it has a unit and is more than nothing; a half girth counted twice."""
    if not figure.unit:
        return figure
    try:
        length = parse_length(figure.text, figure.unit)
    except LengthError:
        return figure
    if length.value <= 0:
        return figure
    if figure.column.times == 1:
        return replace(figure, length=length)
    text = f"{exact_text(length.value * figure.column.times, length.unit)} {length.unit}"
    return replace(figure, text=text, own=True, length=parse_length(text))


def usual_unit(figures: Iterable[Figure], default: Literal["cm", "in"]) -> Literal["cm", "in"]:
    """The unit in which most of a person's figures are written; the default where there are none."""
    units = ["in" if f.unit in _INCHES else "cm" for f in figures if f.length is not None]
    if not units:
        return default
    return "in" if units.count("in") * 2 > len(units) else "cm"


def ask_about_texts(figures: Iterable[Figure], notes: Notes) -> None:
    """Ask about each text that is no length. It is kept as it stands, and counts as not measured."""
    for figure in figures:
        if figure.length is not None:
            continue
        meant = _meant(figure)
        cell = (notes.sheet, figure.at)
        answers = [pick(f"Read it as {text}", partial(put, which="cells", key=cell, value=text)) for text in meant]
        answers.append(pick("Keep the text", partial(_looked_at, doubts=(("text", figure.at),))))
        if not meant:  # more answers would not fit beside each other
            answers.append(pick("Leave it out", partial(_left, cell=cell)))
        says = (
            f"“{_short(figure.text)}” under {figure.column.label} is not a length; kept so, it counts as not measured."
        )
        notes.ask("text", says, figure.at, *answers, edit="cell")


def _meant(figure: Figure) -> list[str]:
    """The single lengths that a text such as `ca. 96` or `96 cm / 37 3/4 in` may mean."""
    found = figure_in(figure.text)
    if found is None or found.ranged:
        return []
    shown = [exact_text(a.low, cast("Unit", a.unit or "cm")) + (f" {a.unit}" if a.unit else "") for a in found.amounts]
    return [text for text, amount in zip(shown, found.amounts, strict=True) if amount.low > 0]


def _short(text: str) -> str:
    return text if len(text) <= 40 else f"{text[:38]}…"  # noqa: PLR2004 - a line of a question


def _looked_at(answers: PeopleAnswers, doubts: tuple[tuple[str, str], ...]) -> PeopleAnswers:
    return confirm(answers, *doubts)


def _left(answers: PeopleAnswers, cell: tuple[str, str]) -> PeopleAnswers:
    return replace(answers, ignored=answers.ignored | {cell})


def ask_about_spans(figures: Sequence[tuple[Figure, bool]], notes: Notes, progress: Progress = no_progress) -> None:
    """Ask about figures that no body has, or only in another unit; many of the second kind are asked about together.

    Args:
        figures: each with whether the person still grows.
        notes: takes the questions.
        progress: told how far it is; may raise to stop.
    """
    measures = assets.measures()
    odd: list[tuple[Figure, Question]] = []
    for i, (figure, child) in enumerate(figures):
        progress(i, len(figures))
        if figure.length is None or figure.guessed or ("span", figure.at) in notes.answers.confirmed:
            continue
        asked = question(measures[figure.column.role], replace(figure.length, text=figure.text), child=child)
        if asked is not None:
            odd.append((figure, asked))
    for unit in UNITS:
        alike = [(f, q) for f, q in odd if q.answer.endswith(f" {unit}")]
        if len(alike) >= _SEVERAL:
            _ask_together(alike, UNITS[unit], notes)
            odd = [one for one in odd if one not in alike]
    for figure, asked in odd:
        _ask_alone(figure, asked, notes)


def _ask_together(alike: Sequence[tuple[Figure, Question]], unit: str, notes: Notes) -> None:
    first = alike[0][0]
    texts = {(notes.sheet, f.at): q.answer for f, q in alike}
    says = f"{len(alike)} figures, as {first.text} under {first.column.label}, look like {unit}."
    doubts = tuple(("span", f.at) for f, _ in alike)
    notes.ask(
        "spans",
        says,
        first.at,
        pick(f"Read them as {unit}", partial(_with_texts, texts=texts)),
        pick("They are right", partial(_looked_at, doubts=doubts)),
    )


def _with_texts(answers: PeopleAnswers, texts: dict[tuple[str, str], str]) -> PeopleAnswers:
    return replace(answers, cells={**answers.cells, **texts})


def _ask_alone(figure: Figure, asked: Question, notes: Notes) -> None:
    says = f"{figure.column.label}: {asked.sentence}"
    answers = [pick("It is right", partial(_looked_at, doubts=(("span", figure.at),)))]
    if asked.answer:
        change = partial(put, which="cells", key=(notes.sheet, figure.at), value=asked.answer)
        answers.insert(0, pick(f"Read it as {asked.answer}", change))
    notes.ask("span", says, figure.at, *answers, edit="cell")
