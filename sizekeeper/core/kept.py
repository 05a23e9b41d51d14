"""Finishing a make: what it rested on is kept with it, read off the plan that was decided on."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core import plan_words
from sizekeeper.core.make import Kept, KeptRegion
from sizekeeper.core.toile_change import altered_by
from sizekeeper.core.work import work_of

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.found import Found
    from sizekeeper.core.make import Make, Progress
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording


def kept_of(found: Found, planned: Planned | None, words: Wording, on: dt.date) -> Kept:
    """What a make rests on: her figures, and what the plan decided on gives.

    Args:
        found: the person against the pattern.
        planned: her plans for the make; None while nothing can be compared.
        words: how figures are said in what was cut.
        on: the day.
    """
    kept = Kept(
        on,
        garment=found.pattern.garment,
        knit=found.pattern.knit,
        body={measure: figure.cm for measure, figure in found.body.items()},
    )
    if planned is None or planned.chosen is None:
        return kept
    cut = plan_words.title(planned.chosen, planned.plans.labels, words)
    return replace(kept, cut=cut, regions=_regions(planned))


def _regions(planned: Planned) -> dict[str, KeptRegion]:
    """The regions of the plan; worn ease is what a toile left, else what was printed with the changes of width."""
    altered = altered_by((t.choice for t in work_of(planned).widths if t.plan is not None), planned.found.person.unit)
    toiles = {state.at: state for state in planned.toile()}
    kept = {}
    for measure, at in planned.shown.regions.items():
        state = toiles.get(measure)
        worn = at.ease_cm
        if state is not None and state.left is not None:
            worn = float(state.left)
        elif worn is not None:
            worn += altered[measure].cm if measure in altered else 0.0
            worn += float(state.change) if state is not None else 0.0
        if measure in planned.found.body:
            kept[measure] = KeptRegion(planned.found.body[measure].cm, at.ease_cm, worn, at.asked_cm)
    return kept


def with_progress(make: Make, progress: Progress, kept: Kept | None, today: dt.date) -> Make:
    """The make that has come so far. A finished one gets its day and what it rested on, another has neither.

    Args:
        make: the make.
        progress: how far it is.
        kept: what it rests on now; None where nothing can be said.
        today: the day on which it counts as finished.
    """
    if progress == "finished":
        return replace(make, progress=progress, finished_on=make.finished_on or today, kept=kept)
    return replace(make, progress=progress, finished_on=None, kept=None)
