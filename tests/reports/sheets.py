"""Decision sheets for tests, built in one line: by hand, from a comparison, hostile, and the longest case."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.comparison import compare
from sizekeeper.core.fit import fit_of
from sizekeeper.core.notation import CENTIMETRES, INCHES, Notation, show
from sizekeeper.core.question import Question
from sizekeeper.core.wording import Wording
from sizekeeper.reports.sheet import (
    Sheet,
    SheetCell,
    SheetColumn,
    SheetFigures,
    SheetPart,
    SheetPiece,
    SheetPlan,
    SheetRow,
    SheetStep,
    SheetTable,
)
from sizekeeper.reports.sheet_table import cut_of, sheet_table

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.comparison import Comparison
    from sizekeeper.core.result import BodyFigure, Fit

HOSTILE = (
    "=1+1",
    "+cmd|'/c calc'!A0",
    "-2+3",
    "@SUM(A1)",
    "\t=1+1",
    "<script>alert(1)</script>",
    "</style></script><img src=x onerror=alert(1)>",
    "{{ 7 * 7 }} {% raw %}",
    '" onclick="alert(1)',
    "a & b; c, d\r\ne",
    "nul\x00bell\x07",
    "עברית \u202e mixed",
    '&C&"Arial"&D',
    "W" * 60,
)
"""What people might type, and what a format might take for its own."""


def found_for(
    her: Mapping[str, BodyFigure],
    finished: Chart | None = None,
    body_chart: Chart | None = None,
    **question: object,
) -> tuple[Comparison, Fit]:
    """The program's own comparison of a body and charts."""
    asked = Question(**question)  # type: ignore[arg-type]  # passed on as given
    comparison = compare(her, body_chart, finished, asked, assets.ease_defaults())
    return comparison, fit_of(comparison, {})


def table_for(comparison: Comparison, fit: Fit, notation: Notation = CENTIMETRES, *, at_most: int = 30) -> SheetTable:
    """The ease table of a comparison."""
    words = Wording(notation, assets.measures().name)
    return sheet_table(cut_of(fit, comparison, None), words, columns_at_most=at_most, private=False)


def sheet(table: SheetTable, notation: Notation = CENTIMETRES, **changes: object) -> Sheet:
    """A whole sheet round a table, with two parts of work, a decided plan and figures."""
    whole = Sheet(
        key="person-1/pattern-1",
        person="Ilse Marten",
        pattern="Marlet dress",
        publisher="Quill & Thimble",
        view="View B",
        on=dt.date(2026, 11, 25),
        notation=notation,
        envelope=notation,
        verdict="Cut 40 straight.",
        doubts=("42 only if the bust is really 1.2 cm more.",),
        table=table,
        plan=SheetPlan(
            "40 straight", decided=True, lines=("Off by 0.8 cm.", "Skirt 2 cm longer."), reason="Less to trace",
            advised="Grade between sizes", on=dt.date(2026, 11, 24),
        ),
        work=(
            SheetPart("Trace", (SheetStep("s1", "Bodice front", "Trace the plan’s line, not a printed one."),)),
            SheetPart(
                "Length",
                (
                    SheetStep("s2", "Skirt front", "Cut across at the hip and spread by 2 cm.", done=True),
                    SheetStep("s3", "Skirt back", "Cut across at the hip and spread by 2 cm."),
                ),
            ),
        ),
        trace=(
            SheetPiece("p1", "Bodice front", "cut 1 on the fold", "40"),
            SheetPiece("p2", "Skirt back", "cut 2", "40", changed=True),
        ),
        measure_again=("Measure again before cutting: the bust (1.2 cm more changes the size).",),
        toile=("Neck and shoulders", "Bust and waist"),
        cautions=("A toile first: the figure lies past the chart.",),
        figures=(
            SheetFigures("Her figures", ("measured", "on"), (("Bust", ("96", "2026-11-20")), ("Waist", ("70", "")))),
        ),
    )  # fmt: skip
    return replace(whole, **changes)  # type: ignore[arg-type]  # passed on as given


def figure_row(name: str, cells: tuple[SheetCell, ...], /, **changes: object) -> SheetRow:
    """A region by hand, bust-like: body 96, 5 asked for, edges 2.5, 7.5 and 13."""
    row = SheetRow(name, name, "96", 96.0, "5", 5.0, "must fit", (2.5, 7.5, 13.0), None, cells)
    return replace(row, **changes)  # type: ignore[arg-type]  # passed on as given


def cell_of(ease: float, body: float = 96.0, /, **changes: object) -> SheetCell:
    """A cell of a region whose edges are 2.5, 7.5 and 13."""
    band = ("tight", "close", "easy", "loose")[sum(ease >= edge for edge in (2.5, 7.5, 13.0))]
    cell = SheetCell(f"{ease:g}".replace("-", "−"), f"{body + ease:g}", band, ease, body + ease)  # type: ignore[arg-type]  # one of the bands
    return replace(cell, **changes)  # type: ignore[arg-type]  # passed on as given


def small(notation: Notation = CENTIMETRES, **changes: object) -> Sheet:
    """One region in three sizes, the middle one chosen: ease 1, 5 and 9."""
    cells = (cell_of(1.0), cell_of(5.0, chosen=True), cell_of(9.0))
    columns = (SheetColumn("38"), SheetColumn("40", chosen=True), SheetColumn("42"))
    table = SheetTable("my", "Ease: finished minus body.", columns, (figure_row("Bust", cells),))
    return sheet(table, notation, **changes)


def longest() -> Sheet:
    """Thirty sizes, twelve regions, inches, long names."""
    count = 30
    columns = tuple(SheetColumn(f"{20 + 2 * i} ({30 + i}-{31 + i})", chosen=i == count // 2) for i in range(count))
    rows = tuple(
        figure_row(
            f"Region {number} with a long trade name",
            tuple(cell_of(-4.0 + i, chosen=i == count // 2) for i in range(count)),
            weight=2 if number == 1 else 1,
            body=show(96, INCHES, unit=False),
        )
        for number in range(1, 13)
    )
    name = "Wilhelmina-Alexandrine von und zu Mellenthin-Overbrook the Younger"
    work = tuple(
        SheetPart(title, tuple(SheetStep(f"{title}{i}", f"Piece {i} with a rather long name", "Fold away 3/8 in." * 3)
                               for i in range(12)))
        for title in ("Trace", "Length", "Width, from the top down", "Matching pieces")
    )  # fmt: skip
    table = SheetTable("my", "Ease in in: finished minus body.", columns, rows, left_out=0)
    return sheet(table, INCHES, person=name, pattern=f"{name} {'Overcoat' * 12}", work=work)


def hostile(text: str) -> Sheet:
    """A sheet on which everything that people type is one text."""
    cells = (cell_of(1.0), cell_of(5.0, chosen=True))
    row = figure_row("Bust", cells, name=text, role=text)
    columns = (SheetColumn(text), SheetColumn(f"{text}2", chosen=True))
    table = SheetTable("my", text, columns, (row,))
    return sheet(
        table, key=text, person=text, pattern=text, publisher=text, view=text, verdict=text, doubts=(text,),
        plan=SheetPlan(text, decided=True, lines=(text,), reason=text, advised=text),
        work=(SheetPart(text, (SheetStep(text, text, text),)),), trace=(SheetPiece(text, text, text, text),),
        measure_again=(text,), toile=(text,), cautions=(text,),
        figures=(SheetFigures(text, (text,), ((text, (text,)),)),),
    )  # fmt: skip


def private(text: str = "96") -> Sheet:
    """A sheet without a body measurement; the printed figures stay. `text` is a figure that must not be found."""
    cells = tuple(replace(cell_of(e, float(text)), amount="", amount_cm=None) for e in (1.0, 5.0, 9.0))
    columns = (SheetColumn("38"), SheetColumn("40", chosen=True), SheetColumn("42"))
    row = figure_row("Bust", cells, body="", body_cm=None, asked="", asked_cm=None)
    return sheet(
        SheetTable("my", "Finished figures.", columns, (row,)), private=True, doubts=(), measure_again=(), figures=()
    )
