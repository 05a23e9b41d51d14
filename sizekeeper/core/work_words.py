"""What the alterations say in words."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from sizekeeper.core.length import CM_PER
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.piece_words import LEVEL_NAMES
from sizekeeper.core.places import join

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    from sizekeeper.core.follows import FollowReason
    from sizekeeper.core.knit import KnitCheck
    from sizekeeper.core.opening import Passage
    from sizekeeper.core.piece import Level, Pieces
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import LengthLine, WidthLine
    from sizekeeper.core.worksheet import Step, StepKind

_BASIS = {
    "pieces": ("{wanted} is needed", "the pieces give {given}"),
    "body_chart": ("the body measures {wanted}", "the body chart is drafted for {given}"),
    "finished_chart": ("{wanted} is needed", "the chart gives {given}"),
    "length_size": ("by the size for the lengths {wanted} is needed", "what is cut gives {given}"),
}
_FOLLOWS: dict[FollowReason, str] = {
    "layer": "the same, as another layer of it",
    "joins": "must still meet it",
    "absorbs": "gathers there and takes it up",
    "cap": "its cap must still meet the armhole",
    "armhole": "its armhole must still meet the cap",
}
_PART_WORDS = {"trace": "Trace", "length": "Length", "width": "Width, from the top down", "match": "Matching pieces"}


def amount(cm: Fraction | float, words: Wording) -> str:
    """A change as it is drawn: to the millimetre or the sixteenth of an inch, without its sign."""
    return words.drawn(abs(float(cm)))


def name_of(pieces: Pieces, piece: str) -> str:
    """A piece's name by id."""
    found = pieces.piece(piece)
    return (found.name or "a piece without a name") if found is not None else "a piece no longer listed"


def where_words(levels: Iterable[str]) -> str:
    """Where a line lies: `between bust and waist`, `at the waist`."""
    names = [LEVEL_NAMES.get(level, level.replace("_", " ")) for level in levels]  # type: ignore[call-overload]
    if len(names) > 1:
        return f"between {names[0]} and {names[-1]}"
    return f"at the {names[0]}" if names else ""


def length_summary(line: LengthLine, words: Wording) -> str:
    """What a chain comes to: `sleeve 2 cm longer`."""
    name = CHAIN_NAMES[line.choice.chain]
    if line.change is None:
        return ""
    if not line.change.change:
        return f"{name} as it is"
    return f"{name} {amount(line.change.change, words)} {'longer' if line.change.change > 0 else 'shorter'}"


def length_words(line: LengthLine, words: Wording) -> str:
    """What a chain's change is computed from."""
    change = line.change
    if change is None and line.choice.chain == "skirt":
        return "Type how long it is to be: no measurement of the body says so."
    if change is None:
        return "Nothing says how long it is: measure the pieces, or type a length above."
    said = []
    if change.basis in _BASIS and change.wanted is not None and change.given is not None:
        hers, theirs = _BASIS[change.basis]
        given = words.length(float(change.given))
        said.append(f"{hers.format(wanted=words.length(float(change.wanted)))}, {theirs.format(given=given)}")
    if line.from_toile:
        way = "longer" if line.from_toile > 0 else "shorter"
        said.append(f"the toile asks for {amount(line.from_toile, words)} {way}")
    text = "; ".join(said)
    return f"{text[:1].upper()}{text[1:]}." if text else ""


def length_place_words(line: LengthLine, pieces: Pieces, words: Wording) -> str:
    """Where a change of length goes in, how it is folded, and what must get the same."""
    if line.plan is None or line.change is None:
        return ""
    how = "Cut and spread by" if line.change.change > 0 else "Fold away"
    said = [f"{how} {amount(line.change.change, words)} {where_words(line.plan.levels)}"]
    if line.change.pleat:
        said[0] += f": a pleat {amount(line.change.pleat, words)} deep"
    names = [name_of(pieces, piece) for piece in line.plan.same]
    said.append(f"The same on {join(names)}" if names else "No other piece crosses that line")
    return ". ".join(said) + "."


def width_summary(line: WidthLine, words: Wording) -> str:
    """What a change of width comes to: `waist 2 cm narrower`."""
    cm = line.choice.amount.exact_cm
    return f"{LEVEL_NAMES[line.choice.level]} {amount(cm, words)} {'wider' if cm > 0 else 'narrower'}"


def follow_words(line: WidthLine, pieces: Pieces) -> str:
    """The pieces that must follow a change of width, and why."""
    if line.plan is None or not line.plan.follows:
        return ""
    said = [f"{name_of(pieces, follow.piece)} ({_FOLLOWS[follow.reason]})" for follow in line.plan.follows]
    return f"These follow: {join(said)}."


def gather_words(line: WidthLine) -> str:
    """What becomes of the gathers."""
    if line.plan is None or line.plan.gathers is None:
        return ""
    before, after = (f"{float(ratio):.2f}" for ratio in (line.plan.gathers.before, line.plan.gathers.after))
    return f"The gathers take it up: {before} times as long as their seam before, {after} times after."


def drawn_words(line: WidthLine, words: Wording) -> str:
    """What the shares make all round as they are drawn; empty where that is what was asked for."""
    if line.plan is None:
        return ""
    step = CM_PER["in"] / 16 if words.notation.unit == "in" else CM_PER["cm"] / 10
    shares = line.plan.shares
    drawn = sum(int(abs(s.per_edge) / step + Fraction(1, 2)) * step * s.edges * s.times for s in shares)
    asked, made = amount(line.choice.amount.exact_cm, words), amount(drawn, words)
    if made == asked:
        return ""
    return f"Drawn like that it makes {made} all round: no step of the ruler gives {asked} at so many edges."


def knit_words(check: KnitCheck, words: Wording) -> list[str]:
    """What a stretch test says of a pattern and a body."""
    said = []
    if check.short_of_pattern:
        said.append(
            f"The fabric stretches by {check.stretch:.0%}, the pattern asks for {check.pattern_stretch:.0%}: "
            "it will be tighter than drafted."
        )
    said += [
        f"It does not reach round {words.the(region.measure)}: it needs {region.needed:.0%}."
        for region in check.regions
        if not region.enough
    ]
    return said


_PASSING = {"head": "the head", "shoulders": "both shoulders", "hips": "the hips", "hand": "the hand",
            "heel": "the heel"}  # fmt: skip
_MANY = ("shoulders", "hips")


def passage_words(passage: Passage, words: Wording) -> tuple[str, bool]:
    """Whether a part of the body passes an opening, and whether that is a warning."""
    where, what, many = passage.opening, _PASSING[passage.passing], passage.passing in _MANY
    passes, need = ("pass", "need") if many else ("passes", "needs")
    if passage.needs_cm is None:
        return f"{where}: measure around {what} to see whether {'they pass' if many else 'it passes'}.", False
    if passage.gives_cm is None:
        return f"{where}: type its finished edge on the Pattern page to see whether {what} {passes}.", False
    needs, gives = words.length(passage.needs_cm), words.length(passage.gives_cm)
    if passage.short_cm:
        return (
            f"{where}: {what} {need} {needs} and it opens to {gives}: {words.sewn(passage.short_cm)} too little.",
            True,
        )
    return f"{where}: {what} {passes}, {needs} through {gives}.", False


def step_words(step: Step, words: Wording) -> str:
    """One step of the worksheet, without the piece's name."""
    return _STEPS[step.kind](step, words)


def _trace_words(_step: Step, _words: Wording) -> str:
    return "Trace the plan’s line, not a printed one."


def _length_step_words(step: Step, words: Wording) -> str:
    where, much = where_words(step.where), amount(step.amount, words)
    if step.amount > 0:
        return f"Cut across {where} and spread by {much}."
    return f"Fold away {much} {where}: a pleat {amount(step.pleat, words)} deep."


def _width_step_words(step: Step, words: Wording) -> str:
    edges = "its edge" if step.edges == 1 else f"each of {step.edges} edges"
    return f"{amount(step.per_edge, words)} {_wide(step)} {where_words(step.where)}, at {edges}."


def _bust_step_words(step: Step, words: Wording) -> str:
    return f"Bust adjustment: open this half by {amount(step.amount, words)} at the bust; true the side seam."


def _crotch_step_words(step: Step, words: Wording) -> str:
    way = "out" if step.amount > 0 else "in"
    return f"Move the crotch point {way} by {amount(step.amount, words)}, tapering along the inseam."


def _follow_step_words(step: Step, words: Wording) -> str:
    why = _FOLLOWS[step.why] if step.why is not None else "must match"
    return (
        f"Follow the change of {amount(step.amount, words)} {_wide(step)} all round {where_words(step.where)}: {why}."
    )


def _wide(step: Step) -> str:
    return "wider" if step.amount > 0 else "narrower"


_STEPS: dict[StepKind, Callable[[Step, Wording], str]] = {
    "line": _trace_words,
    "length": _length_step_words,
    "width": _width_step_words,
    "bust": _bust_step_words,
    "crotch": _crotch_step_words,
    "follow": _follow_step_words,
}


def part_words(part: str) -> str:
    """What a part of the order of work is called."""
    return _PART_WORDS[part]


def level_name(level: Level) -> str:
    """A level with a capital, as a heading."""
    return LEVEL_NAMES[level].capitalize()
