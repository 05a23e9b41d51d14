"""The demo household's sizes as a table for the terminal."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core import sentences
from sizekeeper.core.body import body_figures
from sizekeeper.core.chart import Chart
from sizekeeper.core.fit import fit
from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.question import Question
from sizekeeper.core.wording import Wording
from sizekeeper.errors import FitError

if TYPE_CHECKING:
    from collections.abc import Sequence


def demo_table() -> str:
    """For everybody in the demo household what to cut in the patterns for their age, in words."""
    from sizekeeper.demo import demo_values  # noqa: PLC0415 - it reads files, wanted only here
    from sizekeeper.store.codec import new_id  # noqa: PLC0415 - the same

    values = demo_values(new_id)
    people = [value for value in values if isinstance(value, Person)]
    patterns = [value for value in values if isinstance(value, Pattern)]
    charts = [value for value in values if isinstance(value, Chart)]
    blocks = []
    for person in people:
        rows = [[f"  {p.title}", _verdict(person, p, charts)] for p in patterns if p.child == person.child]
        blocks.append("\n".join([person.name, *align_left(rows)]))
    return "\n\n".join(blocks)


def align_left(rows: list[list[str]]) -> list[str]:
    """Two columns, both to the left."""
    width = max(len(first) for first, _ in rows)
    return [f"{first.ljust(width)}  {second}" for first, second in rows]


def _verdict(person: Person, pattern: Pattern, charts: Sequence[Chart]) -> str:
    own = {chart.kind: chart for chart in reversed(charts) if chart.pattern == pattern.id}
    question = Question(
        garment=pattern.garment,
        stretch=pattern.stretch,
        preference=person.preference(pattern.garment, knit=pattern.knit),
    )
    words = Wording(INCHES if person.unit == "in" else CENTIMETRES, assets.measures().name)
    figures = body_figures(person, assets.measures())
    try:
        found = fit(figures, own.get("body"), own.get("finished"), question, assets.ease_defaults())
    except FitError as error:
        return str(error)
    return " ".join([sentences.headline(found, words), *sentences.warnings(found, words)])
