"""What the Fit page shows: the chosen person against the chosen pattern, or what is missing first."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING, Literal

from sizekeeper import assets
from sizekeeper.core.body import body_figures
from sizekeeper.core.chart import Chart
from sizekeeper.core.comparison import Comparison, compare
from sizekeeper.core.fit import fit_of
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
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.result import Mode
    from sizekeeper.ui.session import Session


@dataclass(frozen=True, slots=True)
class Missing:
    """What has to be done before a size can be compared: a heading, a sentence, and a button that leads there."""

    heading: str
    sentence: str
    button: str = ""
    place: Place | None = None


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


_NOBODY = Missing(
    "Whose size is it?",
    "Choose a person on the left, or add one and type her measurements. Bust, waist and hip are enough to start.",
    "Go to the measurements",
    Place("person"),
)
_NO_PATTERN = Missing(
    "Which pattern is it?",
    "Choose a pattern on the left, or add one and type what its envelope prints: the two or three sizes "
    "that come into question are enough.",
    "Go to the pattern",
    Place("pattern"),
)


def look_up(session: Session, person: str, pattern: str, *, view: str) -> Found | Missing:
    """Compare the chosen person with the chosen pattern, drafts laid over; or say what comes first."""
    who, what = session.person(person), session.pattern(pattern)
    if who is None:
        return _NOBODY
    if what is None:
        return _NO_PATTERN
    body, finished = (_filled(session.chart(what.id, kind, view)) for kind in ("body", "finished"))
    if body is None and finished is None:
        return Missing(
            "What does the envelope say?",
            f"{what.title or 'This pattern'} has no figures yet. Type its body chart, its finished measurements, "
            "or both; two or three sizes are enough.",
            "Type the charts",
            Place("pattern", what.id),
        )
    pieces = pieces_of(session, what.id)
    scale = _scale(pieces)
    finished = None if finished is None else scaled_chart(finished, scale)
    found = _compare(who, what, body, finished)
    if isinstance(found, Missing):
        return found
    return replace(found, read_only=session.read_only, pieces=pieces, scale=scale, view=view)


def pieces_of(session: Session, pattern: str) -> Pieces | None:
    """What is known of a pattern's paper, drafts laid over; None while nothing is."""
    found = next((v.id for v in session.belonging(pattern) if isinstance(v, Pieces)), "")
    value = session.value(found)
    return value if isinstance(value, Pieces) else None


def _scale(pieces: Pieces | None) -> PrintScale:
    """The scale the test square shows; true while its figures are not whole, which the Pattern page says."""
    try:
        return print_scale(pieces.square if pieces is not None else None)
    except PlanError:
        return PrintScale()


def view_choices(session: Session, pattern: Pattern) -> dict[str, str]:
    """The views to choose between and what each is called, by name; empty where there is nothing to choose.

    Views without finished figures of their own share the chart that serves all: they are one choice, named "".
    """
    with_figures = {chart.view for chart in session.charts(pattern.id) if chart.kind == "finished" and _filled(chart)}
    own = {view: f"View {view}" for view in pattern.views if view in with_figures}
    others = [view for view in pattern.views if view not in with_figures]
    if not own:
        return {}
    if "" not in with_figures:
        return own
    return {"": f"View {' and '.join(others)}" if others else "Other views", **own}


def _filled(chart: Chart | None) -> Chart | None:
    """A chart that has at least one figure; a blank one counts as none."""
    if chart is None or not any(cell.low is not None for row in chart.rows for cell in row.cells):
        return None
    return chart


def usual_mode(charts: tuple[bool, bool]) -> Mode:
    """By what a size is judged where nothing is set: her ease with finished measurements, else the body chart."""
    return "my" if charts[1] else "body"


def _mode(wanted: Mode | None, charts: tuple[bool, bool]) -> Mode:
    """The mode set, where the charts allow it; else the usual one."""
    allowed = {"my": charts[1], "body": charts[0], "designer": all(charts)}
    return wanted if wanted is not None and allowed[wanted] else usual_mode(charts)


def _compare(person: Person, pattern: Pattern, body: Chart | None, finished: Chart | None) -> Found | Missing:
    preference = person.preference(pattern.garment, knit=pattern.knit)
    charts = (body is not None, finished is not None)
    mode = _mode(preference.mode, charts)
    figures = body_figures(person, assets.measures())
    question = Question(pattern.garment, mode, pattern.stretch, preference=preference)
    comparison, fit, problem = None, None, ""
    try:
        comparison = compare(figures, body, finished, question, assets.ease_defaults())
        fit = fit_of(comparison, chart_says(figures, body, comparison.run.sizes))
    except FitError as error:
        problem = str(error)
    illegible = _illegible(person, (chart for chart in (body, finished) if chart is not None))
    if fit is None and not illegible and not preference.regions and preference.mode is None:
        return _nothing_in_common(person, problem)
    compared = body if mode == "body" or finished is None else finished
    printed_in: Literal["cm", "in"] = "in" if compared is not None and compared.unit == "in" else "cm"
    return Found(
        person, pattern, preference, comparison, fit, problem, illegible, charts, printed_in, body=figures,
        laid=(body, finished),
    )  # fmt: skip


def _illegible(person: Person, charts: Iterable[Chart]) -> tuple[str, ...]:
    """Regions of the charts whose newest reading of the person is not a length."""
    asked = {row.measure for chart in charts for row in chart.rows}
    found = ((measure, figure_of(person, measure)) for measure in REGION_ORDER if measure in asked)
    return tuple(measure for measure, figure in found if figure is not None and figure.exact_cm is None)


def _nothing_in_common(person: Person, problem: str) -> Missing:
    if any(reading.length is not None for reading in person.readings):
        return Missing("Nothing to compare yet", problem, "Go to the measurements", Place("person", person.id))
    return Missing(
        f"Measure {person.name or 'her'} first",
        "No measurements are typed yet. Bust, waist and hip are enough to see a size.",
        "Type the measurements",
        Place("person", person.id),
    )
