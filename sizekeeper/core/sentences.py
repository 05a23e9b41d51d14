"""What a fit says in words: the verdict, its doubts, and how sure it is.

Every sentence is made from the values of `result.py` alone, so that window, terminal and paper say the same. The
sentences speak of "the bust", never of "your bust": the one who sews is often not the one who is measured.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.candidates import HALVES_FROM_CM
from sizekeeper.core.ease import SAME
from sizekeeper.core.places import beyond, inline_words, join, line_gap_cm, split
from sizekeeper.core.touched import place_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from sizekeeper.core.result import Blend, Candidate, Fit, LeftOut, RegionAt, RegionFit
    from sizekeeper.core.wording import Wording


LEAD_ABSENT = "The measure that usually leads is missing, so all count alike."
"""What is said where there is no measure to choose the size by."""
_WORTH_SAYING = 0.25 - SAME
"""How many steps past the listed sizes the best place must lie to be spoken of: the finest line there is (coined)."""


def headline(fit: Fit, words: Wording) -> str:
    """The verdict in one sentence."""
    if fit.verdict.kind == "blend" and fit.blend is not None:
        return f"Grade between sizes: {blend_words(fit.blend, fit.labels, words)}."
    place = inline_words(fit.verdict.position, fit.labels)
    if why := _only_closest(fit):
        trace = fit.verdict.kind == "between" and why == _NO_SIZE
        return f"{why}. Trace {place}." if trace else f"{_capital(_closest(why, place))}."
    return f"Trace {place}." if fit.verdict.kind == "between" else f"Cut {place} straight."


_NO_SIZE, _TOO_SMALL = "No single size fits", "No size goes round the body"
_PAST = "the figure lies past the chart"


def _only_closest(fit: Fit) -> str:
    """Why the best there is fits badly; empty when it is to be cut as it is."""
    chosen = chosen_candidate(fit)
    if chosen is not None and not chosen.wearable:
        return _TOO_SMALL
    if "no_single_size" in fit.flags:
        return _NO_SIZE
    return _PAST if far_past(fit) else ""


def _closest(why: str, place: str) -> str:
    return f"{place} comes closest; {why}" if why == _PAST else f"{why}; {place} comes closest"


def blend_words(blend: Blend, labels: tuple[str, ...], words: Wording) -> str:
    """The sizes of a blend from the top down: `38 at the bust and the waist, 42 at the hip`."""
    return levels_words(blend.positions, labels, words)


def levels_words(positions: Mapping[str, float], labels: Sequence[str], words: Wording) -> str:
    """Places per level from the top down: `38 at the bust and the waist, 42 at the hip`."""
    runs: list[tuple[float, list[str]]] = []
    for measure, position in positions.items():
        if not runs or runs[-1][0] != position:
            runs.append((position, []))
        runs[-1][1].append(words.the(measure))
    return ", ".join(f"{inline_words(position, labels)} at {join(names)}" for position, names in runs)


def doubts(fit: Fit, words: Wording) -> tuple[str, ...]:
    """Which other size it might be, and when: what stands beside the verdict. Empty when nothing does."""
    return (*_straight(fit), *ties(fit, words))


def warnings(fit: Fit, words: Wording) -> tuple[str, ...]:
    """What is wrong with the best there is, the gravest first; empty when nothing is."""
    chosen = chosen_candidate(fit)
    said = [*_will_not_close(fit, words), *_out_of_range(fit), *_lacking(chosen, words)]
    if fit.blend is not None and fit.verdict.kind == "blend" and fit.blend.flags:
        said.append("More than two sizes between neighbouring levels: alter the pattern there instead of grading.")
    if fit.mode == "body":
        said.append("Judged by the body chart alone, so nothing is known of the ease.")
    if "lead_absent" in fit.flags:
        said.append(LEAD_ABSENT)
    return tuple(said)


def chosen_candidate(fit: Fit) -> Candidate | None:
    """The candidate at the verdict's position; for a blend the size at the level that leads."""
    return next((c for c in fit.candidates if abs(c.position - fit.verdict.position) < SAME), None)


def cut_at(fit: Fit) -> dict[str, tuple[float, RegionAt]]:
    """What is to be cut at each region: the verdict's position, in a blend the one at the region's height."""
    levels = fit.blend.positions if fit.verdict.kind == "blend" and fit.blend is not None else {}
    found = {}
    for region in fit.regions:
        position = place_of(region.measure, levels) if levels else fit.verdict.position
        candidate = next((c for c in fit.candidates if abs(c.position - position) < SAME), None)
        if candidate is not None and region.measure in candidate.regions:
            found[region.measure] = (position, candidate.regions[region.measure])
    return found


def _will_not_close(fit: Fit, words: Wording) -> list[str]:
    said = []
    cut = cut_at(fit)
    for region in fit.regions:
        position, at = cut.get(region.measure, (0.0, None))
        if at is not None and at.short_cm and region.weight and region.role != "adjustable":
            place, where = _capital(inline_words(position, fit.labels)), words.the(region.measure)
            said.append(f"{place} will not close at {where}: let out {words.sewn(at.short_cm)}.")
    return said


def past_end(fit: Fit) -> str:
    """The listed size that the best place of all lies past, the first or the last; empty where it lies among them."""
    best, last = fit.best_position, len(fit.labels) - 1
    if best is None or -_WORTH_SAYING < best < last + _WORTH_SAYING:
        return ""
    return fit.labels[-1] if best > last else fit.labels[0]


def far_past(fit: Fit) -> bool:
    """Whether the best place of all lies a whole size or more past the listed ones, as far as it is sought there."""
    return fit.best_position is not None and not -1 + SAME < fit.best_position < len(fit.labels) - SAME


def _out_of_range(fit: Fit) -> list[str]:
    label = past_end(fit)
    if not label:
        return []
    above = fit.best_position is not None and fit.best_position > 0
    if far_past(fit):
        end = f"{'last' if above else 'first'} size, {label}"
        return [f"The best place lies past the chart’s {end}: what is said there is extrapolated; make a toile first."]
    way, end = ("above", "ends") if above else ("below", "begins")
    closer = f"A little {way} {label} would come closer, but the chart {end} there"
    return [f"{closer}: add the size {way} if the pattern has one, else make a toile first."]


def _straight(fit: Fit) -> list[str]:
    """Which listed size is the best, where the verdict is not one."""
    if fit.verdict.kind == "straight":
        return []
    best = next((c for c in fit.candidates if c.between is None), None)
    return [f"The best single size is {best.label}."] if best is not None else []


def _lacking(chosen: Candidate | None, words: Wording) -> list[str]:
    if chosen is None or not chosen.missing:
        return []
    where = join([words.the(m) for m in chosen.missing])
    return [f"The chart gives {chosen.label} no figure at {where}, so that is not judged."]


def ties(fit: Fit, words: Wording) -> list[str]:
    """The sizes that would be best within the error of the tape: `42 only if the bust is really 1 in more`.

    The smallest change of the body comes first.
    """
    said: dict[str, list[str]] = {}
    for measure, shift, label in sorted(fit.ties, key=lambda tie: abs(tie[1])):
        ifs = said.setdefault(label, [])
        ifs.append(f"{words.the(measure)} {'' if ifs else 'is really '}{words.shift(shift)}")
    return [f"{label} only if {join(ifs, 'or')}." for label, ifs in said.items()]


def room_for_error(fit: Fit, words: Wording) -> str:
    """How far the tape may be off: `Safe unless the waist is 1.2 cm more than measured`.

    Empty where the doubts say it, and where nothing fits well anyway.
    """
    if fit.ties or fit.verdict.kind != "straight" or _only_closest(fit):
        return ""
    found = nearest_margins(fit.regions)
    if not found:
        return "Safe: no single measurement is likely to be so far off that it would change the size."
    region, shift = found[0]
    way = "more" if shift > 0 else "less"
    return f"Safe unless {words.the(region.measure)} is {words.room(abs(shift))} {way} than measured."


def nearest_margins(regions: Iterable[RegionFit]) -> list[tuple[RegionFit, float]]:
    """The regions with a safe margin, the smallest first, with the shift that ends it (negative: smaller)."""
    found = []
    for region in regions:
        shifts = [-region.safe_down_cm] if region.safe_down_cm is not None else []
        shifts += [region.safe_up_cm] if region.safe_up_cm is not None else []
        if shifts:
            found.append((region, min(shifts, key=abs)))
    return sorted(found, key=lambda pair: abs(pair[1]))


def measure_again(fit: Fit, words: Wording, *, at_most: int = 3) -> str:
    """What to measure again before cutting: the regions whose margin lies within what the tape may be off."""
    found = [(r, s) for r, s in nearest_margins(fit.regions) if abs(s) <= r.tolerance_cm + SAME]
    if not found:
        return ""
    reasons: list[str] = []
    for region, shift in found[:at_most]:
        change = words.shift(shift) if reasons else f"{words.shift(shift)} changes the size"
        reasons.append(f"{words.the(region.measure)} ({change})")
    errors = sorted({region.tolerance_cm for region, _ in found[:at_most]})
    span = " to ".join(words.length(error) for error in dict.fromkeys((errors[0], errors[-1])))
    return f"Measure again before cutting: {join(reasons)}. The tape may be off by {span}."


def chart_says(fit: Fit, words: Wording) -> str:
    """What the body chart alone would say; empty without a body chart."""
    if not fit.chart_says:
        return ""
    if len(fit.chart_says) > 1 and len(set(fit.chart_says.values())) == 1:
        return f"The body chart alone says {next(iter(fit.chart_says.values()))} all over."
    by_size: dict[str, list[str]] = {}
    for measure, label in fit.chart_says.items():
        by_size.setdefault(label, []).append(words.the(measure))
    said = ", ".join(f"{label} at {join(where)}" for label, where in by_size.items())
    return f"The body chart alone says {said}."


def line_words(fit: Fit, position: float, words: Wording) -> str:
    """Where a line at a position runs: `The line runs 5 mm outside 38.` Empty at a listed size."""
    if beyond(position, len(fit.labels)):
        return "Past the listed sizes everything is extrapolated: make a toile first."
    lower, part = split(position, len(fit.labels))
    gap = line_gap_cm(fit, lower) if part else None
    if gap is None:
        return ""
    if gap < HALVES_FROM_CM - SAME:
        return f"The printed lines lie only {words.drawn(gap)} apart: too near to draw another between them."
    return f"The line runs {words.drawn(gap * float(part))} outside {fit.labels[lower]}, along each edge."


_WHY_LEFT_OUT = {
    "no_measurement": "not measured yet",
    "no_finished": "no finished figure on the pattern",
    "no_chart": "no figure in the body chart",
    "half_width_suspected": "may be printed as a half width: say which on the Pattern page",
}


def left_out(fit: Fit, words: Wording) -> str:
    """The measures that could not be judged and would be looked for, with the reason; empty when there are none."""
    by_reason: dict[str, list[str]] = {}
    for entry in (entry for entry in fit.left_out if entry.expected):
        by_reason.setdefault(why_left_out(entry), []).append(words.the(entry.measure))
    if not by_reason:
        return ""
    return f"Not judged: {'; '.join(f'{join(names)} ({why})' for why, names in by_reason.items())}."


def why_left_out(entry: LeftOut) -> str:
    """Why a measure could not be judged, in a few words."""
    return _WHY_LEFT_OUT[entry.reason]


ROLE_WORDS = {
    "lead": "choose size by",
    "counted": "must fit",
    "free": "hangs free",
    "adjustable": "gathers or elastic",
}
"""The roles of a region as they are said on screen."""


def region_note(region: RegionFit, words: Wording) -> str:
    """How a region counts, in a few words: `hangs clear: 66 cm of ease`, `choose size by · asks 5.1 cm`."""
    if region.hangs_clear_cm is not None and region.role == "free" and not region.role_given:
        return f"hangs clear: {words.length(region.hangs_clear_cm)} of ease"
    role = ROLE_WORDS[region.role]
    if region.asked_cm is None or region.role == "free":
        return role
    asked = f"asks {words.length(region.asked_cm)}"
    return asked if region.role == "counted" else f"{role} · {asked}"


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def cautions(fit: Fit, *, child: bool) -> tuple[str, ...]:
    """What the program is not for, said where it matters: children's wear, and knits smaller than the body."""
    said = []
    if child:
        said.append(
            "Children’s clothes: cords, small parts and nightwear flammability follow local rules "
            "(EN 14682 and local law)."
        )
    eases = [at.ease_cm for _, at in cut_at(fit).values()]
    if fit.stretch and any(ease is not None and ease < -SAME for ease in eases):
        said.append("Smaller than the body by design; not for compression or medical garments.")
    return tuple(said)
