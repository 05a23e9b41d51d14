"""A person against a pattern: what is compared, by which preferences, and what came of it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from types import MappingProxyType
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.align import CHARTS_KEPT
from sizekeeper.core.body import body_figures
from sizekeeper.core.chart import Chart
from sizekeeper.core.comparison import Comparison, compare
from sizekeeper.core.fit import fit_of
from sizekeeper.core.identity_cache import once_for_these
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Pieces
from sizekeeper.core.preference import EasePreference
from sizekeeper.core.print_scale import PrintScale, print_scale, scaled_chart
from sizekeeper.core.question import Question
from sizekeeper.core.reading_edit import Figure, figure_of
from sizekeeper.core.result import BodyFigure, Fit
from sizekeeper.core.verdict import chart_says
from sizekeeper.errors import FitError, PlanError

if TYPE_CHECKING:
    from sizekeeper.core.ease import EaseDefaults
    from sizekeeper.core.measure import Measures
    from sizekeeper.core.piece import PrintedSquare
    from sizekeeper.core.result import Mode

_PEOPLE_KEPT = 100
"""The figures of how many people are kept: more than a class has (coined)."""


@dataclass(frozen=True)
class Found:
    """A person against a pattern. `fit` is None while nothing can be compared; `problem` then says why.

    `illegible` are measures of the pattern whose newest reading is not a length: they keep a field to be mended in.
    `charts` tells whether there are a body chart and finished measurements; `printed_in` the unit of the figures that
    are compared. `body` and `laid` are the figures and the body and finished chart that were compared; `scale` is what
    the finished chart was multiplied by, as the pattern's test square shows. `pieces` are empty while none are listed.
    """

    person: Person
    pattern: Pattern
    preference: EasePreference
    comparison: Comparison | None
    fit: Fit | None
    problem: str
    illegible: tuple[str, ...]
    charts: tuple[bool, bool]
    printed_in: Literal["cm", "in"]
    read_only: bool = False
    body: Mapping[str, BodyFigure] = field(default_factory=dict)
    laid: tuple[Chart | None, Chart | None] = (None, None)
    pieces: Pieces | None = None
    scale: PrintScale = field(default_factory=PrintScale)
    view: str = ""

    def figure(self, measure: str) -> Figure | None:
        """The readings that stand in the field of a measure."""
        return figure_of(self.person, measure)

    @property
    def measures(self) -> tuple[str, ...]:
        """The measures with a row: those judged, and those illegible."""
        judged = [region.measure for region in self.fit.regions] if self.fit else []
        both = {*judged, *self.illegible}
        return tuple(measure for measure in REGION_ORDER if measure in both)


def find(
    person: Person,
    pattern: Pattern,
    body: Chart | None,
    finished: Chart | None,
    pieces: Pieces | None = None,
    *,
    view: str = "",
    measures: Measures,
    defaults: EaseDefaults,
) -> Found:
    """Compare a person with a pattern as her preferences ask; `problem` says why where nothing can be compared.

    Args:
        person: whose figures are compared.
        pattern: the pattern.
        body: its body chart.
        finished: its finished measurements, as printed; the test square among the pieces scales them.
        pieces: what is known of its paper.
        view: the view that `finished` belongs to.
        measures: every known measure.
        defaults: the usual band edges.
    """
    scale = scale_of(pieces)
    if finished is not None and pieces is not None and pieces.square is not None:
        finished = _on_paper(finished, pieces.square)
    found = _compare(person, pattern, body, finished, measures, defaults)
    return replace(found, pieces=pieces, scale=scale, view=view)


def filled(chart: Chart | None) -> Chart | None:
    """A chart that has at least one figure; a blank one counts as none."""
    if chart is None or not any(cell.low is not None for row in chart.rows for cell in row.cells):
        return None
    return chart


def scale_of(pieces: Pieces | None) -> PrintScale:
    """The scale the test square shows; true while its figures are not whole, which the Pattern page says."""
    return _scale(pieces.square if pieces is not None else None)


def _scale(square: PrintedSquare | None) -> PrintScale:
    try:
        return print_scale(square)
    except PlanError:
        return PrintScale()


@once_for_these(CHARTS_KEPT)
def _on_paper(finished: Chart, square: PrintedSquare) -> Chart:
    """The finished chart as the test square scales it: one and the same for everybody it is compared with."""
    return scaled_chart(finished, _scale(square))


def usual_mode(charts: tuple[bool, bool]) -> Mode:
    """By what a size is judged where nothing is set: her ease with finished measurements, else the body chart."""
    return "my" if charts[1] else "body"


def _mode(wanted: Mode | None, charts: tuple[bool, bool]) -> Mode:
    """The mode set, where the charts allow it; else the usual one."""
    allowed = {"my": charts[1], "body": charts[0], "designer": all(charts)}
    return wanted if wanted is not None and allowed[wanted] else usual_mode(charts)


def _compare(
    person: Person,
    pattern: Pattern,
    body: Chart | None,
    finished: Chart | None,
    measures: Measures,
    defaults: EaseDefaults,
) -> Found:
    preference = person.preference(pattern.garment, knit=pattern.knit)
    charts = (body is not None, finished is not None)
    mode = _mode(preference.mode, charts)
    figures, illegible = _tape(person, measures)
    question = Question(pattern.garment, mode, pattern.stretch, preference=preference)
    comparison, fit, problem = None, None, ""
    try:
        comparison = compare(figures, body, finished, question, defaults)
        fit = fit_of(comparison, chart_says(figures, body, comparison.run.sizes))
    except FitError as error:
        problem = str(error)
    asked = {row.measure for chart in (body, finished) if chart is not None for row in chart.rows}
    illegible = tuple(measure for measure in illegible if measure in asked)
    compared = body if mode == "body" or finished is None else finished
    printed_in: Literal["cm", "in"] = "in" if compared is not None and compared.unit == "in" else "cm"
    return Found(
        person, pattern, preference, comparison, fit, problem, illegible, charts, printed_in, body=figures,
        laid=(body, finished),
    )  # fmt: skip


@once_for_these(_PEOPLE_KEPT)
def _tape(person: Person, measures: Measures) -> tuple[Mapping[str, BodyFigure], tuple[str, ...]]:
    """The figures of a person that count, and the regions whose newest reading is not a length."""
    found = ((measure, figure_of(person, measure)) for measure in REGION_ORDER)
    illegible = tuple(measure for measure, figure in found if figure is not None and figure.count == 0)
    return MappingProxyType(body_figures(person, measures)), illegible
