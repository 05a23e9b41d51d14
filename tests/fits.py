"""Comparisons for tests, built in one line."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.fit import fit
from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.core.question import Question
from sizekeeper.core.result import Blend, Fit, RegionFit, Verdict
from sizekeeper.core.wording import Wording
from tests.build import body, chart

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.chart import Chart

IN, CM = (Wording(notation, assets.measures().name) for notation in (INCHES, CENTIMETRES))

BODY_CHART = chart("body", "38 40 42", "in", bust="36, 38, 40", waist="28, 29 1/2, 31", hip="39, 41, 43")
FINISHED = chart(
    "finished",
    "38 40 42",
    "in",
    bust="38 1/2, 40 1/8, 41 3/4",
    waist="28 3/8, 29 7/8, 31 3/8",
    hip="68 3/8, 69 5/8, 71",
)
"""A fitted bodice on a gathered skirt: for a body of 38, 28, 43 the straight size 40 (common practice)."""


def dress(finished: Chart | None = FINISHED, body_chart: Chart | None = BODY_CHART, **question: object) -> Fit:
    """A body of bust 38, waist 28 and hip 43 inches against the dress."""
    asked = Question(**question)  # type: ignore[arg-type]  # passed on as given
    her = body("in", bust=38, waist=28, hip=43)
    return fit(her, body_chart, finished, asked, assets.ease_defaults())


def with_region(found: Fit, measure: str, **changes: object) -> Fit:
    """A fit with one region changed."""
    regions = [replace(r, **changes) if r.measure == measure else r for r in found.regions]  # type: ignore[arg-type]
    return replace(found, regions=tuple(regions))


def without_margins(found: Fit) -> Fit:
    """A fit in which no measurement can be so far off that it matters."""
    regions: list[RegionFit] = [replace(r, safe_down_cm=None, safe_up_cm=None) for r in found.regions]
    return replace(found, regions=tuple(regions), ties=())


def blended(found: Fit, positions: Mapping[str, float], *, flags: tuple[str, ...] = ()) -> Fit:
    """A fit whose verdict is a blend at these positions; the first level leads."""
    labels = {m: f"{position:g}" for m, position in positions.items()}
    first = next(iter(positions.values()))
    blend = Blend(dict(positions), labels, 0.5, 2.0, offered=True, flags=flags)
    return replace(found, blend=blend, verdict=Verdict("blend", "", first))
