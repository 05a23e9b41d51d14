"""A household comparison as a table of words, and its copies as text and HTML."""

from __future__ import annotations

from dataclasses import dataclass
from html import escape
from typing import TYPE_CHECKING

from sizekeeper.core.household_words import (
    MODES,
    NOTHING,
    blend_short,
    margin_words,
    name_of,
    off_words,
    size_short,
    troubles_words,
    verdict_short,
)
from sizekeeper.core.notation import show
from sizekeeper.reports.typed_text import clean, plain_field

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.household import Household, Standing
    from sizekeeper.core.person import Person
    from sizekeeper.core.wording import Wording


@dataclass(frozen=True, slots=True)
class HouseholdTable:
    """A title, a sentence that says what the figures are, a heading, and rows of as many texts as the heading."""

    title: str
    what: str
    heading: tuple[str, ...]
    rows: tuple[tuple[str, ...], ...]


def people_table(household: Household, measure: str, words: Wording) -> HouseholdTable:
    """One pattern on everybody, with the ease at one region in every listed size."""
    first = ("Person", "To cut", "Off by", "Straight", "Off by", "Between", "Off by", "Blended", "Off by")
    heading = (*first, "Safe unless", "In the way", *household.labels)
    rows = tuple((*_person(s, words), *_sizes(s, household.labels, measure, words)) for s in household.standings)
    what = f"Under the sizes: ease at {words.the(measure)} in {words.notation.unit}." if measure else ""
    return HouseholdTable(household.envelope.pattern.title, what, heading, rows)


def _person(standing: Standing, words: Wording) -> tuple[str, ...]:
    sizes: list[str] = []
    for candidate in (standing.straight, standing.between):
        off = NOTHING if candidate is None else off_words(candidate.misfit_cm, words)
        sizes += [size_short(candidate, standing), off]
    blended = NOTHING if standing.blend is None else words.length(standing.blend.misfit_cm)
    said = "; ".join(troubles_words(standing, words)) or NOTHING
    return (
        name_of(standing),
        verdict_short(standing, words),
        off_words(standing.misfit_cm, words),
        *sizes,
        blend_short(standing, words),
        blended,
        margin_words(standing, words),
        said,
    )


def _sizes(standing: Standing, labels: Sequence[str], measure: str, words: Wording) -> list[str]:
    """The ease at a region in each listed size with its band: `5.1 close`."""
    said = []
    for label in labels:
        at = standing.at(label, measure)
        amount = None if at is None else at.ease_cm if at.ease_cm is not None else at.diff_cm
        if at is None or amount is None:
            said.append(NOTHING)
        else:
            said.append(f"{show(amount, words.notation, unit=False)} {at.band or ''}".strip())
    return said


def patterns_table(person: Person, standings: Sequence[Standing], words: Wording) -> HouseholdTable:
    """One person in every pattern."""
    heading = ("Pattern", "View", "Publisher", "Garment", "Size", "Off by", "Judged by", "Safe unless", "In the way")
    return HouseholdTable(person.name, "", heading, tuple(_pattern(standing, words) for standing in standings))


def _pattern(standing: Standing, words: Wording) -> tuple[str, ...]:
    pattern = standing.pattern
    return (
        pattern.title,
        standing.found.view,
        pattern.publisher,
        f"knit {pattern.garment}" if pattern.knit else pattern.garment,
        verdict_short(standing, words),
        off_words(standing.misfit_cm, words),
        MODES[standing.fit.mode] if standing.fit is not None else NOTHING,
        margin_words(standing, words),
        "; ".join(troubles_words(standing, words)) or NOTHING,
    )


def as_text(table: HouseholdTable) -> str:
    """The comparison as tab-separated text, to paste into a letter or a spreadsheet."""
    lines = [(table.title,), *([(table.what,)] if table.what else []), table.heading, *table.rows]
    return "\n".join("\t".join(plain_field(field) for field in line) for line in lines) + "\n"


def as_html(table: HouseholdTable) -> str:
    """The comparison as HTML; every name is escaped."""
    head = "".join(f"<th>{escape(clean(field))}</th>" for field in table.heading)
    body = "".join(f"<tr>{''.join(f'<td>{escape(clean(field))}</td>' for field in row)}</tr>" for row in table.rows)
    what = f"<p>{escape(table.what)}</p>" if table.what else ""
    return (
        f"<h2>{escape(clean(table.title))}</h2>{what}"
        f'<table border="1" cellspacing="0" cellpadding="4"><thead><tr>{head}</tr></thead><tbody>{body}</tbody></table>'
    )
