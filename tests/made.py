"""Makes for tests, built in one line."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING

from sizekeeper.core.make import Decision, Kept, KeptRegion, Make, Place

if TYPE_CHECKING:
    from sizekeeper.core.make import Felt, Progress

MAY = dt.date(2026, 5, 2)


def make(
    entry: str = "make",
    *,
    person: str = "person",
    pattern: str = "pattern",
    view: str = "",
    size: str = "40",
    progress: Progress = "planned",
    **more: object,
) -> Make:
    """A make that was decided on in May."""
    decision = Decision("straight", Place(size), on=MAY) if size else None
    return Make(entry, person, pattern, view, "Dress", decision, progress=progress, **more)  # type: ignore[arg-type]  # passed on as given


def finished(entry: str = "make", on: dt.date = MAY, next_time: str = "", **worn: tuple[float, Felt]) -> Make:
    """A finished make of a woven dress, with the ease of each region and how it was worn: `bust=(5.0, "right")`."""
    regions = {measure: KeptRegion(90.0, cm, cm, 5.0) for measure, (cm, _) in worn.items()}
    felt = {measure: how for measure, (_, how) in worn.items()}
    kept = Kept(on, "Cut 40 straight", "dress", regions=regions)
    return make(entry, progress="finished", finished_on=on, worn=felt, next_time=next_time, kept=kept)
