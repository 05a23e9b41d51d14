"""Plans for tests, built in one line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.comparison import compare
from sizekeeper.core.fit import fit_of
from sizekeeper.core.planning import Planner
from sizekeeper.core.question import Question
from sizekeeper.core.verdict import chart_says

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.allowance import Allowances
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.piece import Pieces
    from sizekeeper.core.result import BodyFigure


def planner(
    her: Mapping[str, BodyFigure],
    finished: Chart | None,
    body_chart: Chart | None = None,
    *,
    pieces: Pieces | None = None,
    allowances: Allowances | None = None,
    drafted_cm: float | None = None,
    per_change_cm: float = 0.1,
    **question: object,
) -> Planner:
    """What makes the plans of a body and a pattern's charts."""
    asked = Question(**question)  # type: ignore[arg-type]  # passed on as given
    comparison = compare(her, body_chart, finished, asked, assets.ease_defaults())
    found = fit_of(comparison, chart_says(her, body_chart, comparison.run.sizes))
    return Planner(comparison, found, her, pieces, allowances, drafted_cm, per_change_cm)
