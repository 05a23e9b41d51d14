"""Makes the decision sheet of a person and a pattern from what was found, planned and worked out.

A private sheet is for somebody who only cuts or sews. On it stand what to cut, the printed figures and bands of just
that, the plan, the work list and the pieces. Left away are the body, the ease (which is printed minus body), the ease
asked for and the edges (a knit's are shares of the body), every other size (bands at many printed figures close in on
the body), all sentences that say how far something is off, too small or safe, the charts, and her reason, in which a
figure may stand. Amounts to cut stay, because without them nobody can cut; where one is worked out from the body at a
region, the printed figure there is left away instead.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.core.piece import LEVEL_ORDER
from sizekeeper.core.piece_words import cut_words
from sizekeeper.core.places import place_words
from sizekeeper.core.toile_words import place_name
from sizekeeper.core.touched import positions_at
from sizekeeper.core.wording import Wording
from sizekeeper.core.work import chains, work_of
from sizekeeper.core.work_words import name_of, part_words, step_words
from sizekeeper.core.worksheet import PARTS
from sizekeeper.errors import ReportError
from sizekeeper.reports import sheet_words
from sizekeeper.reports.sheet import Sheet, SheetPart, SheetPiece, SheetStep
from sizekeeper.reports.sheet_figures import figures_of
from sizekeeper.reports.sheet_table import cut_of, sheet_table

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from sizekeeper.core.found import Found
    from sizekeeper.core.notation import Notation
    from sizekeeper.core.piece import Piece
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.result import Fit
    from sizekeeper.core.work import Work

COLUMNS_AT_MOST = 9


def decision_sheet(
    found: Found,
    planned: Planned | None,
    *,
    today: dt.date,
    names: Callable[[str], str],
    private: bool = False,
    columns_at_most: int = COLUMNS_AT_MOST,
    notation: Notation | None = None,
    envelope: Notation | None = None,
    view_words: str = "",
    next_time: str = "",
) -> Sheet:
    """The decision sheet of a person and a pattern.

    Args:
        found: the person against the pattern.
        planned: her plans and the make in front; without them the sheet has no plan and no work list.
        today: the day on the sheet, from which measurements are counted as old.
        names: the trade name of a measure by id.
        private: without anything from which a body measurement could be worked out.
        columns_at_most: how many sizes the ease table shows at most.
        notation: how her lengths are written; None for the usual one of her unit.
        envelope: how the pattern's figures are written; None for the usual one of its unit.
        view_words: what the view is called, `View A and C`; without it, by its own name.
        next_time: what she noted after an earlier make of the pattern, short.

    Raises:
        ReportError: the two cannot be compared.
    """
    if found.fit is None or found.comparison is None:
        raise ReportError(f"There is nothing to put on a sheet yet. {found.problem}".strip())
    fit, person, pattern = found.fit, found.person, found.pattern
    own = notation or (INCHES if person.unit == "in" else CENTIMETRES)
    printed = envelope or (INCHES if found.printed_in == "in" else CENTIMETRES)
    words = Wording(own, names, printed)
    work = work_of(planned) if planned is not None else None
    doubts = sheet_words.private_doubts(planned) if private else sheet_words.doubts(fit, planned, words)
    return Sheet(
        key=":".join((person.id, pattern.id, found.view, planned.make.id if planned is not None else "")),
        person=person.name,
        pattern=pattern.title,
        publisher=pattern.publisher,
        view=view_words or (f"View {found.view}" if found.view else ""),
        on=today,
        notation=own,
        envelope=printed,
        verdict=sheet_words.verdict(fit, planned, words),
        doubts=doubts,
        table=sheet_table(
            cut_of(fit, found.comparison, planned), words, columns_at_most=columns_at_most, private=private
        ),
        plan=sheet_words.plan(planned, work, words, private=private, next_time=next_time) if planned and work else None,
        work=_work(planned, work, words) if planned and work else (),
        trace=_trace(planned, work) if planned and work else (),
        measure_again=() if private else sheet_words.measure_again(found, fit, words, today),
        toile=_toile(fit, planned, words),
        cautions=sheet_words.cautions(found, fit, planned, words, today, private=private),
        figures=() if private else figures_of(found, planned, words),
        private=private,
    )


def _work(planned: Planned, work: Work, words: Wording) -> tuple[SheetPart, ...]:
    """The steps in the order of work; parts without a step are left out."""
    found = []
    for part in PARTS:
        steps = tuple(
            SheetStep(step.key, name_of(planned.pieces, step.piece), step_words(step, words), work.sheet.done(step))
            for step in work.sheet.steps
            if step.part == part
        )
        found += [SheetPart(part_words(part), steps)] if steps else []
    return tuple(found)


def _trace(planned: Planned, work: Work) -> tuple[SheetPiece, ...]:
    """Every listed piece with the size it is traced in."""
    changed = {step.piece for step in work.sheet.steps}
    return tuple(
        SheetPiece(f"trace:{p.id}", name_of(planned.pieces, p.id), cut_words(p), _size_of(p, planned), p.id in changed)
        for p in planned.pieces.pieces
    )


def _size_of(piece: Piece, planned: Planned) -> str:
    """The size a piece is traced in; of a blended plan those from its top down."""
    plan, labels = planned.shown, planned.plans.labels
    if not plan.levels or not piece.levels:
        return place_words(plan.position, labels)
    at = positions_at(plan.levels)
    crossed = [at[level] for level in LEVEL_ORDER if level in piece.levels]
    return " to ".join(dict.fromkeys(place_words(position, labels) for position in crossed))


def _toile(fit: Fit, planned: Planned | None, words: Wording) -> tuple[str, ...]:
    """The places at which a toile is looked at: where fit is judged, then along the lengths."""
    judged = {region.measure for region in fit.regions}
    places = [measure for measure in REGION_ORDER if measure in judged]
    places += chains(planned) if planned is not None else []
    return tuple(place_name(place, words) for place in places)
