"""What a household comparison says in words: sizes in short, what stands in the way, who shares which line."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.places import inline_words, join, short_place, split

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

    from sizekeeper.core.household import Standing, Trouble
    from sizekeeper.core.result import Candidate, Mode
    from sizekeeper.core.sharing import Alteration, Choice, Line, Shared, SharedLine
    from sizekeeper.core.wording import Wording

MODES: Mapping[Mode, str] = {
    "my": "own ease",
    "designer": "the ease it was drafted with",
    "body": "the body chart alone",
}
"""By what a size was judged."""

NOTHING = "–"
_NUMBERS = ("no", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")


def number(count: int) -> str:
    """A small number in words; larger ones in figures."""
    return _NUMBERS[count] if count < len(_NUMBERS) else str(count)


def short(position: float, labels: Sequence[str]) -> str:
    """A position in the fewest words: `40`, `38–40 halfway`."""
    lower, part = split(position, len(labels))
    return labels[lower] if part == 0 else " ".join(short_place(position, labels))


def in_two(position: float, labels: Sequence[str]) -> tuple[str, str]:
    """A position as its sizes and the part of the way: `40` and nothing, `38–40` and `halfway`."""
    lower, part = split(position, len(labels))
    return (labels[lower], "") if part == 0 else short_place(position, labels)


def name_short(name: str, most: int = 24) -> str:
    """A name with its middle left out where it is longer than so many letters."""
    if len(name) <= most:
        return name
    head = most * 2 // 3
    return f"{name[:head].rstrip()}…{name[head + 1 - most :].lstrip()}"


def size_short(candidate: Candidate | None, standing: Standing) -> str:
    """A candidate in the fewest words, a dash where there is none."""
    if candidate is None or standing.fit is None:
        return NOTHING
    return short(candidate.position, standing.fit.labels)


def blend_short(standing: Standing, words: Wording) -> str:
    """Another size at another level, in the fewest words from the top down: `34 bust, 36–38 waist`.

    Blends go by halves, so that `36–38` can only mean halfway.
    """
    if standing.blend is None or standing.fit is None:
        return NOTHING
    runs: list[tuple[float, list[str]]] = []
    for measure, position in standing.blend.positions.items():
        if not runs or runs[-1][0] != position:
            runs.append((position, []))
        runs[-1][1].append(words.name(measure).lower())
    labels = standing.fit.labels
    return ", ".join(f"{short_place(position, labels)[0]} {' and '.join(at)}" for position, at in runs)


def verdict_short(standing: Standing, words: Wording) -> str:
    """What to cut in the fewest words, a dash where nothing can be compared."""
    if standing.fit is None:
        return NOTHING
    if standing.fit.verdict.kind == "blend" and standing.blend is not None:
        return blend_short(standing, words)
    return short(standing.fit.verdict.position, standing.fit.labels)


def off_words(misfit_cm: float | None, words: Wording) -> str:
    """How far something is off, a dash where that is not known."""
    return NOTHING if misfit_cm is None else words.length(misfit_cm)


def margin_words(standing: Standing, words: Wording) -> str:
    """The smallest safe margin: `0.4 cm less at the waist`; a dash where nothing fits well anyway."""
    if standing.fit is None or standing.only_closest:
        return NOTHING
    if standing.margin is None:
        return "more than the tape errs"
    measure, shift = standing.margin
    return f"{shift_words(shift, words)} at {words.the(measure)}"


def shift_words(shift_cm: float, words: Wording) -> str:
    """A safe margin and its way, rounded down: `0.4 cm less`, `the least bit more`."""
    room = words.room(abs(shift_cm))
    return f"{'the least bit' if room.startswith('0 ') else room} {'more' if shift_cm > 0 else 'less'}"


def trouble_words(trouble: Trouble, words: Wording) -> str:
    """One thing that stands in the way, in a few words without a full stop."""
    return _SAID[trouble.kind](trouble, words)


def _where(trouble: Trouble, words: Wording) -> str:
    return join([words.the(measure) for measure in trouble.measures])


_SAID: Mapping[str, Callable[[Trouble, Wording], str]] = {
    "no_chart": lambda _t, _w: "no chart typed yet",
    "not_measured": lambda _t, _w: "not measured yet",
    "not_compared": lambda t, _w: t.said.rstrip("."),
    "too_small": lambda t, _w: f"no size goes round the body; {t.label} comes closest",
    "will_not_close": lambda t, w: f"will not close at {_where(t, w)}: let out {w.sewn(t.cm)}",
    "out_of_range": lambda t, _w: f"past the chart’s {t.label}: make a toile first",
    "no_single_size": lambda _t, _w: "no single size fits",
    "no_figure": lambda t, w: f"the chart gives {t.label} no figure at {_where(t, w)}",
    "just_past": lambda t, _w: f"a little past the chart’s {t.label} would come closer: a toile first",
    "unmeasured": lambda t, w: f"not measured at {_where(t, w)}",
    "lead_absent": lambda _t, _w: "the measure that usually leads is missing",
    "tied": lambda t, w: f"{t.label} if {_where(t, w)} is really {w.shift(t.cm)}",
    "ease_unknown": lambda _t, _w: "ease unknown: judged by the body chart alone",
}


def troubles_words(standing: Standing, words: Wording) -> tuple[str, ...]:
    """Everything that stands in the way, the gravest first; empty where nothing does."""
    return tuple(trouble_words(trouble, words) for trouble in standing.troubles)


def line_words(line: Line) -> str:
    """A line in words: `40`, `halfway between 38 and 40`."""
    return inline_words(line.place, line.labels)


def wearers_words(line: Line, words: Wording) -> list[str]:
    """Who takes a line, each by herself: `Ada`, `Bea (waist and hip)`."""
    said = []
    for wearer in line.wearers:
        where = join([words.name(measure).lower() for measure in wearer.measures])
        said.append(f"{name_of(wearer.standing)} ({where})" if where else name_of(wearer.standing))
    return said


def name_of(standing: Standing) -> str:
    """What a person is called, or that she has no name yet."""
    return standing.person.name.strip() or "No name yet"


def alteration_words(alteration: Alteration, words: Wording) -> str:
    """`take in 2 cm at the waist`, `let out 8 mm at the hip`: all round, as it is sewn."""
    if alteration.cm > 0:
        return f"take in {words.drawn(alteration.cm)} at {words.the(alteration.measure)}"
    return f"let out {words.sewn(-alteration.cm)} at {words.the(alteration.measure)}"


def alteration_short(alteration: Alteration, words: Wording) -> str:
    """`waist: take in 2 cm`, for a line of text."""
    return ": ".join(alteration_in_two(alteration, words))


def alteration_in_two(alteration: Alteration, words: Wording) -> tuple[str, str]:
    """`waist` and `take in 2 cm`, for a list."""
    amount = words.drawn(alteration.cm) if alteration.cm > 0 else words.sewn(-alteration.cm)
    return words.name(alteration.measure).lower(), f"{'take in' if alteration.cm > 0 else 'let out'} {amount}"


def alterations_words(shared: Shared, words: Wording) -> str:
    """What one person must alter on a shared line: `nothing to alter` where it is near enough."""
    if not shared.alterations:
        return "nothing to alter"
    return "; ".join(alteration_words(alteration, words) for alteration in shared.alterations)


def choice_words(choice: Choice) -> str:
    """The lines of a choice in the fewest words: `34, 40 and 46–48 halfway`."""
    return join([short(shared.line.place, shared.line.labels) for shared in choice.lines])


def shared_words(shared: SharedLine) -> str:
    """Who wears a shared line: `Ada and Bea on 40`."""
    names = join([name_of(person.standing) for person in shared.people])
    return f"{names} on {inline_words(shared.line.place, shared.line.labels)}"
