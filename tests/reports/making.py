"""Decision sheets made from people, patterns and makes, built in one line."""

from __future__ import annotations

import datetime as dt
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.found import find
from sizekeeper.core.make import Make
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import Pieces
from sizekeeper.core.planned import plan_ahead
from sizekeeper.reports.sheet_making import decision_sheet
from tests.build import chart, person
from tests.core.paper import across, along, piece
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.found import Found
    from sizekeeper.core.person import Person
    from sizekeeper.core.piece import Piece
    from sizekeeper.reports.sheet import Sheet

TODAY = dt.date(2026, 11, 25)
ADA = person("in", bust="38", waist="28", hip="43", back_waist_length="16")
DRESS = Pattern("pattern", "Wrap dress", "Quill & Thimble")
BODICE = (
    piece("Front", "neck bust waist", "front", on_fold=True, line=True, dart=True, across=across("waist", "8 in")),
    piece("Back", "neck bust waist", "back", cut=2, line=True, along=along("back_waist", "14 3/8 in", 2)),
    piece("Facing", "neck bust waist", "facing", cut=2),
)
LONG = chart("finished", " ".join(str(s) for s in range(2, 62, 2)), bust=", ".join(str(80 + 3 * i) for i in range(30)))
"""Thirty sizes, three centimetres apart."""


def found_for(
    her: Person = ADA,
    finished: Chart | None = FINISHED,
    body: Chart | None = BODY_CHART,
    pattern: Pattern = DRESS,
    pieces: tuple[Piece, ...] = BODICE,
    view: str = "",
) -> Found:
    """A person against a pattern."""
    return find(
        her,
        pattern,
        body,
        finished,
        Pieces("pieces", pattern.id, pieces),
        view=view,
        measures=assets.measures(),
        defaults=assets.ease_defaults(),
    )


def sheet_for(found: Found, today: dt.date = TODAY, *, private: bool = False, **make: object) -> Sheet:
    """The sheet of a comparison and a make in which these things were chosen."""
    chosen = replace(Make("make", found.person.id, found.pattern.id), **make)  # type: ignore[arg-type]  # as given
    return decision_sheet(found, plan_ahead(found, chosen), today=today, names=assets.measures().name, private=private)
