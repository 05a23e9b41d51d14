"""The household against patterns: one pattern on everybody, or one person in every pattern.

Each pair is compared by `found.find`, as the Fit page does; nothing of the fit is worked out here again. A `Standing`
is one such pair with what a table of many wants to know of it. Standings are made one by one, so that a window can
keep those that no edit has touched.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.chart import Chart
from sizekeeper.core.ease import SAME
from sizekeeper.core.found import Found, find
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Pieces
from sizekeeper.core.result import Blend, Candidate
from sizekeeper.core.sentences import chosen_candidate, cut_at, far_past, nearest_margins, past_end

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sizekeeper.core.ease import EaseDefaults
    from sizekeeper.core.measure import Measures
    from sizekeeper.core.person import Person
    from sizekeeper.core.result import Fit, RegionAt

TroubleKind = Literal[
    "not_compared", "no_chart", "not_measured", "too_small", "will_not_close", "out_of_range", "no_single_size",
    "no_figure", "just_past", "unmeasured", "lead_absent", "tied", "ease_unknown",
]  # fmt: skip
"""What can stand in the way of a size, the gravest first."""


@dataclass(frozen=True)
class Envelope:
    """A pattern with the charts it is compared by: its body chart and the finished measurements of one view."""

    pattern: Pattern
    body: Chart | None
    finished: Chart | None
    pieces: Pieces | None = None
    view: str = ""


@dataclass(frozen=True, slots=True)
class Trouble:
    """Something that stands in the way of a size: where, by how much in cm, and which size is meant.

    `cm` is what is short where it will not close, and the shift of the body at which another size is best where tied.
    `said` is the reason as the comparison gives it where there is no fit.
    """

    kind: TroubleKind
    measures: tuple[str, ...] = ()
    cm: float = 0.0
    label: str = ""
    said: str = ""


@dataclass(frozen=True, slots=True)
class Standing:
    """How one person stands to one pattern.

    `straight` is the best listed size, `between` the best line between two, None where none can be drawn. `blend` is
    another size at another level, None where all levels want the same. `margin` is the region with the smallest safe
    margin and the shift of the body in cm that ends it, None when 15 cm change nothing. `troubles` come gravest first.
    """

    found: Found
    straight: Candidate | None = None
    between: Candidate | None = None
    blend: Blend | None = None
    margin: tuple[str, float] | None = None
    troubles: tuple[Trouble, ...] = ()

    @property
    def person(self) -> Person:
        """Whose body it is."""
        return self.found.person

    @property
    def pattern(self) -> Pattern:
        """The pattern."""
        return self.found.pattern

    @property
    def fit(self) -> Fit | None:
        """The whole comparison, None while nothing can be compared."""
        return self.found.fit

    @property
    def misfit_cm(self) -> float | None:
        """How far what is to be cut is off; a blend's counts only the levels it joins."""
        if self.fit is None:
            return None
        if self.fit.verdict.kind == "blend" and self.fit.blend is not None:
            return self.fit.blend.misfit_cm
        chosen = chosen_candidate(self.fit)
        return None if chosen is None else chosen.misfit_cm

    @property
    def trouble(self) -> Trouble | None:
        """The gravest of what stands in the way; None when nothing does."""
        return self.troubles[0] if self.troubles else None

    @property
    def only_closest(self) -> bool:
        """Whether nothing fits well, so that how sure the size is does not matter."""
        return any(self.has(kind) for kind in ("too_small", "out_of_range", "no_single_size"))

    def has(self, kind: TroubleKind) -> bool:
        """Whether something of a kind stands in the way."""
        return any(trouble.kind == kind for trouble in self.troubles)

    def at(self, label: str, measure: str) -> RegionAt | None:
        """A region in a listed size; None where there is no such size or the region is not judged."""
        return None if self.fit is None else self.fit.listed.get(label, {}).get(measure)

    def at_cut(self) -> Mapping[str, tuple[float, RegionAt]]:
        """Each region in what is to be cut: the position and the figures there; empty without a fit."""
        return {} if self.fit is None else cut_at(self.fit)


@dataclass(frozen=True)
class Household:
    """Everybody against one pattern, in the order asked.

    `labels` are the listed sizes of all runs that were compared, in order; `measures` the regions that anybody is
    judged at, in body order; `lead` the one most of them choose their size by, "" where nobody can be compared.
    """

    envelope: Envelope
    standings: tuple[Standing, ...]
    labels: tuple[str, ...]
    measures: tuple[str, ...]
    lead: str


def compare_household(
    people: Iterable[Person], envelope: Envelope, *, measures: Measures, defaults: EaseDefaults
) -> Household:
    """One pattern on everybody, by each one's own preferences."""
    return household_of(envelope, [standing(p, envelope, measures=measures, defaults=defaults) for p in people])


def every_pattern(
    person: Person, envelopes: Iterable[Envelope], *, measures: Measures, defaults: EaseDefaults
) -> tuple[Standing, ...]:
    """One person in every pattern, in the order given."""
    return tuple(standing(person, envelope, measures=measures, defaults=defaults) for envelope in envelopes)


def standing(person: Person, envelope: Envelope, *, measures: Measures, defaults: EaseDefaults) -> Standing:
    """One person against one pattern."""
    found = find(
        person,
        envelope.pattern,
        envelope.body,
        envelope.finished,
        envelope.pieces,
        view=envelope.view,
        measures=measures,
        defaults=defaults,
    )
    return standing_of(found)


def standing_of(found: Found) -> Standing:
    """What a table of many wants to know of a comparison that was made."""
    fit = found.fit
    if fit is None:
        return Standing(found, troubles=(_why_not(found),))
    margins = nearest_margins(fit.regions)
    return Standing(
        found,
        straight=next((c for c in fit.candidates if c.between is None), None),
        between=next((c for c in fit.candidates if c.between is not None), None),
        blend=fit.blend if fit.blend is not None and len(set(fit.blend.positions.values())) > 1 else None,
        margin=(margins[0][0].measure, margins[0][1]) if margins else None,
        troubles=tuple(_troubles(found, fit)),
    )


def household_of(envelope: Envelope, standings: Sequence[Standing]) -> Household:
    """Standings that were made before, put together."""
    fits = [s.fit for s in standings if s.fit is not None]
    judged = {region.measure for fit in fits for region in fit.regions}
    leads = [region.measure for fit in fits for region in fit.regions if region.role == "lead"]
    in_order = tuple(measure for measure in REGION_ORDER if measure in judged)
    lead = max(in_order, key=leads.count, default="")
    return Household(envelope, tuple(standings), _merged([fit.labels for fit in fits]), in_order, lead)


def _merged(runs: Iterable[tuple[str, ...]]) -> tuple[str, ...]:
    """Size runs as one: a size that only a later run lists goes behind the one it follows there."""
    merged: list[str] = []
    for run in dict.fromkeys(runs):
        after = 0
        for label in run:
            if label not in merged:
                merged.insert(after, label)
            after = merged.index(label) + 1
    return tuple(merged)


def _why_not(found: Found) -> Trouble:
    """Why there is no fit."""
    if not any(found.charts):
        return Trouble("no_chart", said=found.problem)
    if not any(reading.length is not None for reading in found.person.readings):
        return Trouble("not_measured", said=found.problem)
    return Trouble("not_compared", said=found.problem)


def _troubles(found: Found, fit: Fit) -> Iterable[Trouble]:
    """What stands in the way of what is to be cut, the gravest first."""
    chosen = chosen_candidate(fit)
    if chosen is not None and not chosen.wearable:
        yield Trouble("too_small", label=chosen.label)
    yield from _will_not_close(fit)
    past = past_end(fit)
    if past and far_past(fit):
        yield Trouble("out_of_range", label=past)
    if "no_single_size" in fit.flags and fit.verdict.kind != "blend":
        yield Trouble("no_single_size")
    if chosen is not None and chosen.missing:
        yield Trouble("no_figure", measures=chosen.missing, label=chosen.label)
    if past and not far_past(fit):
        yield Trouble("just_past", label=past)
    unmeasured = [entry.measure for entry in fit.left_out if entry.reason == "no_measurement" and entry.expected]
    if unmeasured or found.illegible:
        missing = {*unmeasured, *found.illegible}
        yield Trouble("unmeasured", measures=tuple(m for m in REGION_ORDER if m in missing))
    if "lead_absent" in fit.flags:
        yield Trouble("lead_absent")
    if fit.ties:
        measure, shift, label = min(fit.ties, key=lambda tie: abs(tie[1]))
        yield Trouble("tied", measures=(measure,), cm=shift, label=label)
    if fit.mode == "body":
        yield Trouble("ease_unknown")


def _will_not_close(fit: Fit) -> list[Trouble]:
    """Where what is to be cut is smaller than the body and must not be, the most first."""
    cut, found = cut_at(fit), []
    for region in fit.regions:
        at = cut[region.measure][1] if region.measure in cut else None
        short = at.short_cm if at is not None else None
        if short and short > SAME and region.weight and region.role != "adjustable":
            found.append(Trouble("will_not_close", measures=(region.measure,), cm=short))
    return sorted(found, key=lambda trouble: -trouble.cm)
