"""The rows of the household's tables: a person a row, or a pattern a row."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME
from sizekeeper.core.household_words import (
    MODES,
    NOTHING,
    blend_short,
    in_two,
    margin_words,
    off_words,
    shift_words,
    trouble_words,
    troubles_words,
    verdict_short,
)
from sizekeeper.core.notation import show, spoken
from sizekeeper.core.places import place_words, short_place
from sizekeeper.core.sentences import headline
from sizekeeper.ui.household_cells import Heading, HouseCell, HouseRow, Mark, Swatch, by_number, by_words

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.household import Standing
    from sizekeeper.core.person import Person
    from sizekeeper.core.result import Candidate
    from sizekeeper.core.wording import Wording

_STRIP_NAMES = {"across_back": "back", "upper_arm": "arm", "high_hip": "h. hip"}
_WAITING = "…"


def people_headings(labels: Sequence[str], measures: Sequence[str], measure: str, words: Wording) -> list[Heading]:
    """What stands over the columns of one pattern on everybody; the sizes at one region come last."""
    where = words.the(measure) if measure else ""
    sizes = [
        Heading(*short_place(i, labels), f"{label}, ease at {where}", matrix=True) for i, label in enumerate(labels)
    ]
    return [
        Heading("Person"),
        Heading("Straight", said="Best straight size"),
        Heading("Between", said="Best line between two sizes"),
        Heading("Blended", said="Another size at another level; 38–40 is halfway between the two"),
        Heading("Off by", said="How far what is to be cut is off the ease asked for"),
        Heading("Safe unless", said="The smallest error of one measurement that would change the size"),
        Heading(
            "Regions", said="Every region at what is to be cut", strip=tuple(_strip_name(m, words) for m in measures)
        ),
        Heading("In the way", said="What stands in the way", wide=True),
        *sizes,
    ]


def _strip_name(measure: str, words: Wording) -> str:
    return _STRIP_NAMES.get(measure, words.name(measure).lower())


def person_row(
    person: Person,
    standing: Standing | None,
    labels: Sequence[str],
    measures: Sequence[str],
    measure: str,
    words: Wording,
    *,
    ticked: bool,
) -> HouseRow:
    """One person in one pattern; `standing` is None while it is still to be compared, or she is left out."""
    name = person.name.strip() or "No name yet"
    said = name if ticked else f"{name}, left out"
    first = HouseCell(name, ", ".join(person.groups), by_words(name), said)
    if standing is None:
        waits = HouseCell(_WAITING if ticked else "", said=f"{name}: {'being compared' if ticked else 'left out'}")
        return HouseRow(person.id, (first, *([waits] * 7), *([HouseCell("", said=waits.said)] * len(labels))), ticked)
    cells = (
        first,
        *_sizes(standing, labels, name, words),
        _off(standing, name, words),
        _margin(standing, name, words),
        _strip(standing, measures, name, words),
        _trouble(standing, name, words),
        *(_at_size(standing, label, measure, name, words) for label in labels),
    )
    return HouseRow(person.id, cells, ticked)


def _sizes(standing: Standing, labels: Sequence[str], name: str, words: Wording) -> tuple[HouseCell, ...]:
    """The best straight size, line between and blend, each with how far it is off; what is advised is strong."""
    kind = standing.fit.verdict.kind if standing.fit is not None else ""
    straight = _size(
        standing, standing.straight, labels, f"{name}, best straight size", words, strong=kind == "straight"
    )
    between = _size(standing, standing.between, labels, f"{name}, best between sizes", words, strong=kind == "between")
    if standing.blend is None:
        return straight, between, HouseCell(NOTHING, said=f"{name}, blended: nothing gained")
    text, off = blend_short(standing, words), words.length(standing.blend.misfit_cm)
    advised = ", advised" if kind == "blend" else ""
    order = by_number(next(iter(standing.blend.positions.values())))
    blended = HouseCell(text, off, order, f"{name}, blended: {text}, off by {off}{advised}", kind == "blend")
    return straight, between, blended


def _size(
    standing: Standing, candidate: Candidate | None, labels: Sequence[str], what: str, words: Wording, *, strong: bool
) -> HouseCell:
    if candidate is None or standing.fit is None:
        return HouseCell(NOTHING, said=f"{what}: none")
    off = off_words(candidate.misfit_cm, words)
    own = standing.fit.labels
    lower = own[int(candidate.position)]
    order = by_number(labels.index(lower) + candidate.position % 1)
    said = f"{what}: {place_words(candidate.position, own)}, off by {off}{', advised' if strong else ''}"
    place, part = in_two(candidate.position, own)
    return HouseCell(place, f"{part} · {off}" if part else off, order, said, strong)


def _off(standing: Standing, name: str, words: Wording) -> HouseCell:
    misfit = standing.misfit_cm
    said = "not known" if misfit is None else spoken(misfit, words.notation)
    return HouseCell(off_words(misfit, words), order=by_number(misfit), said=f"{name}, off by: {said}")


def _margin(standing: Standing, name: str, words: Wording) -> HouseCell:
    said = f"{name}, safe unless: {margin_words(standing, words)}"
    if standing.fit is None or standing.only_closest:
        return HouseCell(NOTHING, said=said)
    if standing.margin is None:
        return HouseCell("safe", order=by_number(math.inf), said=said)
    measure, shift = standing.margin
    return HouseCell(shift_words(shift, words), words.name(measure).lower(), by_number(abs(shift)), said)


def _strip(standing: Standing, measures: Sequence[str], name: str, words: Wording) -> HouseCell:
    """Every region at what is to be cut, sorted by how many are tight."""
    at = standing.at_cut()
    if not at:
        return HouseCell("", said=f"{name}: no region is judged")
    strip = tuple(Swatch(_strip_name(m, words), at[m][1].band if m in at else None) for m in measures)
    said = ", ".join(f"{words.name(m).lower()} {at[m][1].band or 'unknown'}" for m in measures if m in at)
    tight = sum(swatch.band == "tight" for swatch in strip)
    return HouseCell("", order=by_number(tight), said=f"{name}: {said}", strip=strip)


def _trouble(standing: Standing, name: str, words: Wording) -> HouseCell:
    if standing.trouble is None:
        return HouseCell(NOTHING, said=f"{name}: nothing stands in the way")
    text = trouble_words(standing.trouble, words)
    return HouseCell(_capital(text), order=by_words(text), said=f"{name}: {'; '.join(troubles_words(standing, words))}")


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _at_size(standing: Standing, label: str, measure: str, name: str, words: Wording) -> HouseCell:
    """One region in one listed size: its ease and band, or the body chart's figure beyond the body."""
    at, where = standing.at(label, measure), f"{name}, {words.name(measure).lower()} in {label}" if measure else name
    amount = None if at is None else at.ease_cm if at.ease_cm is not None else at.diff_cm
    if at is None or amount is None:
        return HouseCell(NOTHING, said=f"{where}: no figure")
    short_of = f", too small by {words.sewn(at.short_cm)}" if at.short_cm else ""
    mark = _mark(standing, label, measure)
    if at.band is None:
        text = show(amount, words.notation, unit=False, sign=True)
        note, said = "", f"{where}: {spoken(amount, words.notation)} beyond the body"
    else:
        text = show(amount, words.notation, unit=False)
        note = "small" if at.short_cm else at.band
        said = f"{where}: {spoken(amount, words.notation)} of ease, {at.band}{short_of}"
    said += ", to be cut" if mark == "cut" else ""
    return HouseCell(text, note, by_number(amount), said, mark == "cut", at.band, mark)


def _mark(standing: Standing, label: str, measure: str) -> Mark:
    """How what is to be cut at a region stands to a listed size."""
    cut = standing.at_cut().get(measure)
    if cut is None or standing.fit is None:
        return ""
    apart = cut[0] - standing.fit.labels.index(label)
    if abs(apart) < SAME:
        return "cut"
    return "from" if 0 < apart < 1 else "to" if -1 < apart < 0 else ""


def pattern_headings() -> list[Heading]:
    """What stands over the columns of one person in every pattern."""
    return [
        Heading("Pattern"),
        Heading("Garment"),
        Heading("Size", said="What to cut"),
        Heading("Off by", said="How far that is off the ease asked for"),
        Heading("Judged by"),
        Heading("Safe unless", said="The smallest error of one measurement that would change the size"),
        Heading("In the way", said="What stands in the way", wide=True),
    ]


def pattern_row(key: str, title: str, note: str, garment: str, standing: Standing | None, words: Wording) -> HouseRow:
    """One pattern for one person; `standing` is None while it is still to be compared."""
    first = HouseCell(title, note, by_words(title), f"{title}, {note}" if note else title)
    kind = HouseCell(garment, order=by_words(garment), said=f"{title}: {garment}")
    if standing is None:
        return HouseRow(key, (first, kind, *([HouseCell(_WAITING, said=f"{title}: being compared")] * 5)))
    return HouseRow(
        key,
        (
            first,
            kind,
            _cut(standing, title, words),
            _off(standing, title, words),
            _mode(standing, title),
            _margin(standing, title, words),
            _trouble(standing, title, words),
        ),
    )


_KINDS = {"straight": "straight", "between": "between sizes", "blend": "blended"}


def _cut(standing: Standing, title: str, words: Wording) -> HouseCell:
    """What to cut; sizes of different patterns are no numbers, so they are sorted as words."""
    if standing.fit is None:
        return HouseCell(NOTHING, said=f"{title}: no size yet")
    text = verdict_short(standing, words)
    return HouseCell(
        text,
        _KINDS[standing.fit.verdict.kind],
        by_words(text),
        f"{title}: {headline(standing.fit, words)}",
        strong=True,
    )


def _mode(standing: Standing, title: str) -> HouseCell:
    if standing.fit is None:
        return HouseCell(NOTHING, said=f"{title}: not judged")
    text = MODES[standing.fit.mode]
    return HouseCell(_capital(text), order=by_words(text), said=f"{title}: judged by {text}")
