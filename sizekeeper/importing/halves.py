"""Girths printed as flat widths: those that say so are multiplied out, those that only look so are asked about."""

from __future__ import annotations

import re
import statistics
from typing import TYPE_CHECKING

from sizekeeper.importing.sizes import number_in

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sizekeeper.importing.draft import DraftRow, DraftTable

ADULT_LEAST_CM: Mapping[str, float] = {
    "bust": 66, "high_bust": 64, "underbust": 55, "waist": 50, "high_hip": 60, "hip": 70, "thigh": 38, "upper_arm": 19,
    "calf": 25, "knee": 27, "wrist": 11,
}  # fmt: skip
"""Below these, the middle figure of an adult's row is more likely half a girth (from memory: slim adult figures)."""

CHILD_LEAST_CM: Mapping[str, float] = {"bust": 38, "waist": 36, "high_hip": 36, "hip": 38}
"""The same for a child of a year, from memory."""

HALF_OF_BODY = 0.66
"""Finished below this share of the body's girth is no knit's negative ease but a flat width (coined)."""

_CHILD_LABEL = re.compile(
    r"\d\s*(?:M|Y|T|yrs?|years?|months?|mois|ans?|jahre?|monate?|jaar|mnd|años|meses|anni|mesi|mo)\b|newborn|\bNB\b",
    re.IGNORECASE,
)
_CHILD_WORDS = re.compile(
    r"\b(?:child|children|kids?|girls?|boys?|bab(?:y|ies)|toddlers?|infants?|kinder|mädchen|jungen|enfants?|"
    r"filles?|garçons?|"
    r"bébés?|kinderen|meisjes?|jongens?|niñ[oa]s?|bebés?|bambin[oaie]|ragazz[oaie]|neonat[oi])\b",
    re.IGNORECASE,
)
_ALL_FLAT = re.compile(
    r"\b(?:(?:laid|measured|lying|taken)\s+(?:out\s+)?flat|flat measurements?|flach (?:liegend )?gemessen|"
    r"à plat|plat gemeten|"
    r"en plano|in piano|halbe weiten?|half widths?|demi[- ]mesures)\b",
    re.IGNORECASE,
)
_TALL_CHILD, _NEWBORN, _GROWTH = 80, 50, 6
_MOST_BODIES = 6


def all_flat(texts: Iterable[str]) -> bool:
    """Whether a title or note says that every girth is measured flat."""
    return any(_ALL_FLAT.search(text) for text in texts)


def for_children(table: DraftTable) -> bool:
    """Whether a table's sizes are children's: by age, by body height, or by its title."""
    if _CHILD_WORDS.search(table.title) or any(_CHILD_LABEL.search(label) for label in table.labels):
        return True
    heights = [cm for row in table.rows if row.measure == "height" for cm in row.cm if cm is not None]
    if heights:
        return statistics.median(heights) < 145  # noqa: PLR2004 - cm; few adults are shorter (coined)
    numbers = [number_in(label) for label in table.labels]
    return bool(numbers) and all(n is not None and _is_body_height(n) for n in numbers)


def _is_body_height(number: int) -> bool:
    """Whether a size can be a child's height: 80 and more, or a step of the usual 50, 56, 62 ..."""
    return number >= _TALL_CHILD or (number >= _NEWBORN and (number - _NEWBORN) % _GROWTH == 0)


def suspected(row: DraftRow, table: DraftTable, bodies: Sequence[DraftTable], *, kind_inferred: bool) -> bool:
    """Whether a girth's row that is not marked looks like half of the girth."""
    if row.dimension != "girth" or row.written_as != "full":
        return False
    if table.kind == "body" and not kind_inferred:
        return False
    if any(cell.low is not None and cell.low <= 0 for cell in row.cells):
        return False
    ratio = _to_body(row, table, bodies) if table.kind == "finished" else None
    if ratio is not None:
        return ratio < HALF_OF_BODY
    least = (CHILD_LEAST_CM if for_children(table) else ADULT_LEAST_CM).get(row.measure)
    figures = [cm for cm in row.cm if cm is not None]
    return least is not None and bool(figures) and statistics.median(figures) < least


def bodies_for(table: DraftTable, tables: Sequence[DraftTable]) -> list[DraftTable]:
    """The body tables to hold a table against: those on its sheet, else the first few of the other sheets."""
    bodies = [t for t in tables if t.kind == "body" and t is not table]
    beside = [t for t in bodies if t.sheet == table.sheet]
    return (beside or bodies)[:_MOST_BODIES]


def _to_body(row: DraftRow, table: DraftTable, bodies: Sequence[DraftTable]) -> float | None:
    """The middle ratio of a row to the body's of the same sizes, None where no body chart has it."""
    ratios = [
        ours / theirs
        for body in bodies
        if body.kind == "body" and body is not table
        for other in body.rows
        if other.measure == row.measure
        for ours, theirs in _matched(row, table, other, body)
    ]
    return statistics.median(ratios) if ratios else None


def _matched(row: DraftRow, table: DraftTable, other: DraftRow, body: DraftTable) -> list[tuple[float, float]]:
    theirs = dict(zip(body.labels, other.cm, strict=True))
    pairs = [(ours, theirs.get(label)) for label, ours in zip(table.labels, row.cm, strict=True)]
    return [(ours, cm) for ours, cm in pairs if ours is not None and cm]


def matched_figures(
    row: DraftRow, table: DraftTable, other: DraftRow, body: DraftTable
) -> dict[str, tuple[float, float]]:
    """A finished row's and a body row's figures in cm, by the size label that both have."""
    theirs = dict(zip(body.labels, other.cm, strict=True))
    found = {}
    for label, ours in zip(table.labels, row.cm, strict=True):
        cm = theirs.get(label)
        if ours is not None and cm is not None:
            found[label] = (ours, cm)
    return found
