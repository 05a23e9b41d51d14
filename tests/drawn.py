"""Invented comparisons drawn by seed, as values for the plain re-computation and for the program."""

from __future__ import annotations

import random
from dataclasses import replace
from fractions import Fraction
from typing import TYPE_CHECKING, cast

from sizekeeper import assets
from sizekeeper.core.chart import Cell, Chart, ChartRow, Size
from sizekeeper.core.comparison import Comparison, compare
from sizekeeper.core.fit import fit
from sizekeeper.core.length import Length
from sizekeeper.core.preference import GARMENTS
from sizekeeper.core.question import Question
from sizekeeper.core.result import BodyFigure, Fit
from tests.plain import ORDER, Plain

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.preference import Garment, Role
    from sizekeeper.core.result import Mode

TYPICAL = dict(zip(ORDER, (35, 92, 29, 16, 74, 92, 99, 57, 36), strict=True))


def draw(seed: int, *, sizes: int = 6, holes: bool = False) -> Plain:
    """One comparison: 1 to 4 regions, 2 to `sizes` sizes, figures in whole millimetres."""
    r = random.Random(seed)  # noqa: S311 - cases, not secrets
    n = r.randint(2, sizes)
    measures = r.sample(ORDER, r.randint(1, 4))
    body: dict[str, float] = {}
    finished: dict[str, list[float | None]] = {}
    chart: dict[str, list[tuple[float, float] | None]] = {}
    for m in measures:
        start = TYPICAL[m] + r.randint(-60, 20) / 10
        body[m] = round(start + r.randint(-40, 40 * n) / 10, 1)
        finished[m] = _row(r, start + r.choice([-3, 2, 5, 8, 40]), n, holes=holes)
        wide = r.choice([0, 0, 2, 3])
        chart[m] = [None if x is None else (x, round(x + wide, 1)) for x in _row(r, start, n, holes=holes)]
    roles = {m: role for m in measures if (role := r.choice(["", "", "", "counted", "adjustable", "free"]))}
    plain = Plain(
        labels=[f"S{i}" for i in range(n)],
        body=body,
        finished=finished,
        chart=chart,
        mode=r.choice(["my", "my", "designer", "body"]),
        garment=r.choice(GARMENTS),
        stretch=r.choice([0.0, 0.0, 0.1, 0.15, 0.4]),
        roles=roles,
    )
    counts = any(plain.weight(m) for m in plain.regions())
    return plain if counts else replace(plain, roles=dict.fromkeys(measures, "counted"))


def _row(r: random.Random, start: float, n: int, *, holes: bool) -> list[float | None]:
    steps = [r.choice([0.5, 2, 2.4, 3, 4, 4.5, 6]) for _ in range(n - 1)]
    row: list[float | None] = [round(start + sum(steps[:i]), 1) for i in range(n)]
    if holes and n > 2 and r.random() < 0.5:
        row[r.randrange(n)] = None
    return row


def _charts(plain: Plain) -> tuple[Chart, Chart]:
    sizes = tuple(Size(label) for label in plain.labels)
    spans: Mapping[str, list[tuple[float, float] | None]] = {
        m: [None if x is None else (x, x) for x in row] for m, row in plain.finished.items()
    }
    body, finished = (
        tuple(ChartRow(m, tuple(_cell(x) for x in row)) for m, row in table.items()) for table in (plain.chart, spans)
    )
    return Chart("b", "p", "body", sizes, body), Chart("f", "p", "finished", sizes, finished)


def _cell(span: tuple[float, float] | None) -> Cell:
    if span is None:
        return Cell()
    low, high = (Length(Fraction(round(x * 10), 10), "cm") for x in span)
    return Cell("as drawn", low, high)


def _arguments(plain: Plain, tolerance_cm: float) -> tuple[dict[str, BodyFigure], Chart, Chart, Question]:
    body_chart, finished_chart = _charts(plain)
    question = Question(
        garment=cast("Garment", plain.garment),
        mode=cast("Mode", plain.mode),
        stretch=plain.stretch,
        roles=cast("Mapping[str, Role]", plain.roles),
    )
    return {m: BodyFigure(b, tolerance_cm) for m, b in plain.body.items()}, body_chart, finished_chart, question


def program(plain: Plain, tolerance_cm: float = 1.0) -> Fit:
    """What the program says of a comparison."""
    return fit(*_arguments(plain, tolerance_cm), assets.ease_defaults())


def compared(plain: Plain) -> Comparison:
    """The program's comparison, to be asked about any position."""
    return compare(*_arguments(plain, 1.0), assets.ease_defaults())
