"""What a make says in words: how far it is, what was cut, how it was worn, and what to do next time."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.days import day_words
from sizekeeper.core.piece_words import LEVEL_NAMES, with_unit
from sizekeeper.core.places import join, part_words

if TYPE_CHECKING:
    from sizekeeper.core.length import Length
    from sizekeeper.core.make import Decision, Felt, KeptRegion, Make, Place, PlanKind, Progress
    from sizekeeper.core.wording import Wording

PROGRESS_WORDS: dict[Progress, str] = {
    "planned": "being planned", "sewing": "cut and being sewn", "finished": "finished", "given_up": "given up",
}  # fmt: skip
FELT_WORDS: dict[Felt, str] = {"tight": "too tight", "right": "as wanted", "loose": "too loose"}
_KINDS: dict[PlanKind, str] = {
    "straight": "straight", "size_below": "the size below", "size_above": "the size above",
    "between": "between two sizes", "blended": "graded between sizes", "bust": "with a bust adjustment",
    "own": "own choice",
}  # fmt: skip
_SHORT = 120
"""How many letters of a note stand in a line; coined."""


def decided_words(decision: Decision) -> str:
    """What was decided, from the decision alone: it can be said when the chart is gone."""
    levels = [f"{LEVEL_NAMES.get(level, level)} {_place(at)}" for level, at in decision.levels.items()]  # type: ignore[call-overload]  # levels are kept as texts
    add = f", {_typed(decision.add)} added at the bust" if decision.add is not None else ""
    kind = f", {_KINDS[decision.kind]}" if decision.kind != "between" or not decision.place.part else ""
    return f"{', '.join(levels) or _place(decision.place)}{kind}{add}"


def _place(place: Place) -> str:
    return f"{part_words(place.part)} from {place.size} to the next size" if place.part else place.size


def _typed(length: Length) -> str:
    return with_unit(length.text or f"{float(length.value):g}", length.unit)


def cut_words(make: Make) -> str:
    """What was cut, as it was said when the make was finished, else what was decided; empty without a decision."""
    if make.kept is not None and make.kept.cut:
        return make.kept.cut
    return decided_words(make.decision) if make.decision is not None else ""


def worn_words(make: Make, words: Wording) -> str:
    """How it was worn: `waist too tight, hip as wanted`; empty where nothing was said."""
    return ", ".join(f"{words.name(measure).lower()} {FELT_WORDS[felt]}" for measure, felt in make.worn.items())


def worn_badly_words(make: Make, words: Wording) -> str:
    """Where it was not worn as wanted: `waist too tight`; `as wanted` where nothing was wrong; empty without."""
    wrong = [f"{words.name(m).lower()} {FELT_WORDS[felt]}" for m, felt in make.worn.items() if felt != "right"]
    return join(wrong) or (FELT_WORDS["right"] if make.worn else "")


def next_time_words(make: Make | None) -> str:
    """The note for next time of an earlier make, short; empty without one."""
    return shortened(make.next_time) if make is not None else ""


def shortened(text: str, most: int = _SHORT) -> str:
    """A note on one line, cut between words with dots where it is long."""
    line = " ".join(text.split())
    if len(line) <= most:
        return line
    return f"{line[: most - 1].rsplit(' ', 1)[0]}…"


def made_before_words(make: Make, words: Wording, whose: str = "") -> str:
    """What an earlier make tells the next: what was cut, when, how it was worn, and the note for next time.

    Args:
        make: a finished make.
        words: how measures are said.
        whose: for whom it was made, where that is somebody else.
    """
    when = f", {day_words(make.finished_on)}" if make.finished_on is not None else ""
    who = f" for {whose}" if whose else ""
    said = [f"Made before{who}: {cut_words(make) or 'nothing was noted of the size'}{when}."]
    if worn := worn_badly_words(make, words):
        said.append(f"Worn: {worn}.")
    if note := next_time_words(make):
        said.append(f"Next time: {note}")
    return " ".join(said)


def kept_words(region: KeptRegion, words: Wording) -> str:
    """What a region rested on: `body 96 cm; 5 cm of ease as cut, 4 cm as sewn; asked for 5.1 cm`."""
    said = [f"body {words.length(region.body_cm)}"]
    if region.ease_cm is not None:
        cut, sewn = words.length(region.ease_cm), region.worn_cm
        ease = f"{cut} of ease"
        if sewn is not None and (now := words.length(sewn)) != cut:
            ease += f" as printed, {now} as sewn"
        said.append(ease)
    if region.asked_cm is not None:
        said.append(f"asked for {words.length(region.asked_cm)}")
    return "; ".join(said)
