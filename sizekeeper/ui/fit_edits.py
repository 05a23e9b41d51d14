"""Edits of how a person likes a garment to fit. Each gives the person after the edit."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.length import CM_PER, Length
from sizekeeper.core.notation import Notation, parse_length, show
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.errors import FitError

if TYPE_CHECKING:
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.core.preference import Band, Role
    from sizekeeper.core.result import Mode

Counting = Literal["", "lead", "counted", "free", "adjustable"]
"""How a region is set to count; empty is "as it comes"."""
Edges = tuple[Length, Length, Length]


def preference_of(person: Person, pattern: Pattern) -> EasePreference:
    """What a person set for garments like a pattern's."""
    return person.preference(pattern.garment, knit=pattern.knit)


def with_preference(person: Person, preference: EasePreference) -> Person:
    """The person with preferences for one kind of garment; empty ones are not kept."""
    kept = tuple(p for p in person.preferences if (p.garment, p.knit) != (preference.garment, preference.knit))
    regions = {m: r for m, r in preference.regions.items() if r != RegionPreference()}
    preference = replace(preference, regions=regions)
    empty = not regions and preference == EasePreference(preference.garment, preference.knit)
    return replace(person, preferences=kept if empty else (*kept, preference))


def with_region(person: Person, pattern: Pattern, measure: str, region: RegionPreference) -> Person:
    """The person with another preference for one region."""
    old = preference_of(person, pattern)
    return with_preference(person, replace(old, regions={**old.regions, measure: region}))


def counting(person: Person, pattern: Pattern, measure: str) -> Counting:
    """How a region is set to count."""
    preference = preference_of(person, pattern)
    if preference.lead == measure:
        return "lead"
    return preference.region(measure).role or ""


def with_counting(person: Person, pattern: Pattern, measure: str, how: Counting) -> Person:
    """The person with a region that counts so; only one can be the one to choose size by."""
    old = preference_of(person, pattern)
    lead = measure if how == "lead" else None if old.lead == measure else old.lead
    role: Role | None = None if how in ("", "lead") else how  # type: ignore[assignment]  # the others are the roles
    regions = {**old.regions, measure: replace(old.region(measure), role=role)}
    return with_preference(person, replace(old, lead=lead, regions=regions))


def with_mode(person: Person, pattern: Pattern, mode: Mode | None) -> Person:
    """The person for whom sizes are judged by a mode; None is as usual."""
    return with_preference(person, replace(preference_of(person, pattern), mode=mode))


def with_band(person: Person, pattern: Pattern, measure: str, band: Band | None) -> Person:
    """The person who likes a band in a region; her own figure there gives way to it."""
    old = preference_of(person, pattern).region(measure)
    own = old.own if band is None else None
    liked = old.liked if band is None else ""
    return with_region(person, pattern, measure, replace(old, band=band, own=own, liked=liked))


def with_own(person: Person, pattern: Pattern, measure: str, own: Length | None, liked: str = "") -> Person:
    """The person with her own ease in a region; `liked` says which garment it was taken from."""
    old = preference_of(person, pattern).region(measure)
    return with_region(person, pattern, measure, replace(old, own=own, liked=liked))


def with_edge(
    person: Person, pattern: Pattern, measure: str, place: int, edge: Length, now: tuple[float, float, float]
) -> Person:
    """The person with one band edge of her own; the other two stay as they are.

    Raises:
        FitError: the edges would not rise.
    """
    old = preference_of(person, pattern).region(measure)
    edges = list(old.edges or _as_lengths(now, person.unit))
    edges[place] = edge
    if not edges[0].exact_cm < edges[1].exact_cm < edges[2].exact_cm:
        shown = ", ".join(e.text for e in edges)
        raise FitError(f"The edges must rise from tight to loose; {shown} do not.")
    return with_region(person, pattern, measure, replace(old, edges=(edges[0], edges[1], edges[2])))


def with_edges_as_they_come(person: Person, pattern: Pattern, measure: str) -> Person:
    """The person with the usual band edges in a region."""
    old = preference_of(person, pattern).region(measure)
    return with_region(person, pattern, measure, replace(old, edges=None))


def _as_lengths(edges: tuple[float, float, float], unit: Literal["cm", "in"]) -> list[Length]:
    """Band edges as lengths, to a hundredth of a millimetre, each with a text to show."""
    notation = _notation(unit)
    exact = [Fraction(round(edge * 1000), 1000) for edge in edges]
    return [Length(cm, "cm", show(cm, notation)) for cm in exact]


def _notation(unit: Literal["cm", "in"]) -> Notation:
    return Notation(unit, Fraction(1, 16) if unit == "in" else Fraction(1, 10))


def ease_typed(text: str, unit: Literal["cm", "in"]) -> Length | None:
    """An ease as typed, which may be negative; None for an empty text.

    Raises:
        LengthError: the text is no length.
    """
    return parse_length(text, unit) if text.strip() else None


def ease_of_liked(garment: Length, times: int, body_cm: Fraction, unit: Literal["cm", "in"]) -> Length:
    """The ease of a garment she likes: its flat width times two, or its girth, minus her body of that day."""
    cm = garment.exact_cm * times - body_cm
    return Length(cm / CM_PER[unit], unit, show(cm, _notation(unit)).replace("−", "-"))


def ease_worn(cm: float, unit: Literal["cm", "in"]) -> Length:
    """The ease that garments were worn with, as a length of her own: to the millimetre or the sixteenth of an inch."""
    return parse_length(show(cm, _notation(unit)).replace("−", "-"), unit)
