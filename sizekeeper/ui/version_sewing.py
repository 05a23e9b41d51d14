"""What the pieces of a pattern and a make say, as labelled lines, for their history."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.make_words import FELT_WORDS, PROGRESS_WORDS, decided_words
from sizekeeper.core.piece_words import LEVEL_NAMES, PASSING_NAMES, ROLE_NAMES, cut_words, view_words, with_unit
from sizekeeper.core.work import as_chain

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.length import Length
    from sizekeeper.core.make import LengthChoice, Make, Pinned, WidthChoice
    from sizekeeper.core.measure import Measures
    from sizekeeper.core.piece import Across, Along, FabricLine, Opening, Piece, Pieces


def said(length: Length | None) -> str:
    """A length as typed, with its unit; empty for none."""
    if length is None:
        return ""
    return with_unit(length.text or f"{float(length.value):g}", length.unit)


def _listed(parts: Iterable[str]) -> str:
    return "; ".join(part for part in parts if part)


def pieces_lines(pieces: Pieces) -> dict[str, str]:
    """Everything the pieces of a pattern say, by label."""
    lines = {f"Piece: {p.name or 'without a name'}": "" for p in pieces.pieces}
    for piece in pieces.pieces:
        label = f"Piece: {piece.name or 'without a name'}"
        lines[label] = " | ".join(part for part in (lines[label], _piece(piece)) if part)
    if pieces.square is not None:
        lines["Test square"] = f"{said(pieces.square.measured)}, should be {said(pieces.square.nominal)}"
    if pieces.measured_in:
        lines["Pieces measured in size"] = pieces.measured_in
    for line in pieces.fabric:
        label = f"Fabric, {said(line.width)} wide{', with nap' if line.nap else ''}"
        lines[label] = _listed((lines.get(label, ""), _fabric(line)))
    for opening in pieces.openings:
        lines[f"Opening: {opening.name}"] = _opening(opening)
    return lines


def _piece(piece: Piece) -> str:
    own = said(piece.seam_allowance)
    return _listed(
        (
            f"{ROLE_NAMES[piece.role]}, {cut_words(piece)}",
            view_words(piece.view),
            f"goes round {piece.around} times" if piece.around is not None else "",
            f"crosses {', '.join(LEVEL_NAMES[level] for level in piece.levels)}" if piece.levels else "",
            *(_along(along) for along in piece.along),
            *(_across(across) for across in piece.across),
            "lengthen or shorten line" if piece.line else "",
            "bust dart" if piece.dart else "",
            f"seam allowance {own}" if own else "",
            piece.note,
        )
    )


def _along(along: Along) -> str:
    parts = (
        f"with {along.allowances} seam allowances" if along.allowances else "",
        f"hem {said(along.hem)}" if along.hem is not None else "",
        f"tucks {said(along.taken)}" if along.taken is not None else "",
        "as printed" if along.printed else "",
    )
    return ", ".join(part for part in (f"{CHAIN_NAMES[along.chain]} {said(along.length)} long", *parts) if part)


def _across(across: Across) -> str:
    parts = (
        f"with {across.allowances} seam allowances" if across.allowances else "",
        f"darts {said(across.darts)}" if across.darts is not None else "",
        f"pleats {said(across.pleats)}" if across.pleats is not None else "",
        f"past the centre {said(across.overlap)}" if across.overlap is not None else "",
        "gathered" if across.gathered else "",
    )
    return ", ".join(part for part in (f"{LEVEL_NAMES[across.level]} {said(across.width)} wide", *parts) if part)


def _fabric(line: FabricLine) -> str:
    where = ", ".join(part for part in (line.size or "all sizes", f"view {line.view}" if line.view else "") if part)
    return f"{where}: {said(line.length)}"


def _opening(opening: Opening) -> str:
    passing = ", ".join(PASSING_NAMES[one] for one in opening.must_pass)
    return _listed(
        (
            f"must pass {passing}" if passing else "",
            f"around {said(opening.around)}" if opening.around is not None else "",
            f"the finished {opening.measure.replace('_', ' ')}" if opening.measure else "",
            f"fastening {said(opening.fastening)}" if opening.fastening is not None else "",
            f"elastic {said(opening.elastic)}" if opening.elastic is not None else "",
        )
    )


def make_lines(make: Make, measures: Measures) -> dict[str, str]:
    """Everything a make says, by label."""
    lines = {
        "Name": make.name,
        "View": make.view,
        "Decision": decided_words(make.decision) if make.decision is not None else "",
        "Reason": make.decision.reason if make.decision is not None else "",
        "Advised then": make.decision.advised if make.decision is not None else "",
    }
    lines |= {f"Length, {CHAIN_NAMES[choice.chain]}": _length(choice) for choice in make.lengths}
    for choice in make.widths:
        label = f"Width, {LEVEL_NAMES[choice.level]}{f' ({choice.reason})' if choice.reason else ''}"
        lines[label] = _width(choice)
    for number, one in enumerate(make.rounds, 1):
        day = day_words(one.on) if one.on is not None else ""
        before = [f"{measures.name(at).lower()} {said(by)}" for at, by in (one.altered or {}).items()]
        begun = f"sewn with changes: {', '.join(before)}" if before else ""
        pinned = (_pinned(pinned, measures) for pinned in one.pinned)
        lines[f"Toile {number}"] = _listed((day, begun, *pinned, one.note))
    lines |= {f"Worn, {measures.name(at).lower()}": FELT_WORDS[felt] for at, felt in make.worn.items()}
    return lines | _figures(make)


def _figures(make: Make) -> dict[str, str]:
    had, test = make.fabric, make.stretch_test
    fabric = "" if had is None else f"{said(had.width)} wide, {said(had.length)} long"
    if had is not None:
        fabric += f"{f', loses {had.shrinks:.0%} in washing' if had.shrinks else ''}{', with nap' if had.nap else ''}"
    return {
        "Seam allowance": said(make.seam_allowance),
        "Lengths of size": make.length_size,
        "To grow into": said(make.growth),
        "Around both shoulders": said(make.shoulders),
        "Sleeve cap": said(make.sleeve_cap),
        "Armhole": said(make.armhole),
        "Shoulder to waist": said(make.shoulder_to_waist),
        "Fabric": fabric,
        "Lengths laid end to end": f"{make.laid}",
        "Stretch test": f"{said(test.rest)} to {said(test.stretched)}" if test is not None else "",
        "Steps ticked": f"{len(make.ticks)}" if make.ticks else "",
        "Notes": make.notes,
        "How far": PROGRESS_WORDS[make.progress] if make.progress != "planned" else "",
        "Finished on": day_words(make.finished_on) if make.finished_on is not None else "",
        "How it turned out": make.outcome,
        "Next time": make.next_time,
        "Hidden": "yes" if make.hidden else "",
    }


def _length(choice: LengthChoice) -> str:
    return _listed(
        (
            f"ease {said(choice.ease)}" if choice.ease is not None else "",
            f"to be {said(choice.wanted)}" if choice.wanted is not None else "",
            f"change by {said(choice.amount)}" if choice.amount is not None else "",
            f"between {' and '.join(LEVEL_NAMES[level] for level in choice.levels)}" if choice.levels else "",
        )
    )


def _width(choice: WidthChoice) -> str:
    shared = "shared by width" if choice.sharing == "by_width" else ""
    return _listed((said(choice.amount), f"on {len(choice.pieces)} pieces" if choice.pieces else "", shared))


def _pinned(pinned: Pinned, measures: Measures) -> str:
    chain = as_chain(pinned.at)
    name = CHAIN_NAMES[chain] if chain is not None else measures.name(pinned.at).lower()
    parts = (
        f"{said(pinned.found)} found" if pinned.found is not None else "",
        f"{said(pinned.taken)} taken in" if pinned.taken is not None else "",
        "at one seam" if pinned.seams == "one" else "",
        pinned.where,
        f"felt {pinned.felt}" if pinned.felt is not None else "",
    )
    return f"{name}: {', '.join(part for part in parts if part)}"
