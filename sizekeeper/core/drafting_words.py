"""How two sides draft, in words: the main differences, and every figure of a plot."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.draft import PROPORTIONS
from sizekeeper.core.drafting import SAME_PLACE_CM, apart, same_names
from sizekeeper.core.ease import SAME
from sizekeeper.core.notation import show
from sizekeeper.core.places import join

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

    from sizekeeper.core.draft import Topic
    from sizekeeper.core.drafting import Apart, Curve, Drafting, Panel, Point, Side
    from sizekeeper.core.wording import Wording

_WORTH_SAYING_CM = 0.5
"""Differences below this are called much the same (coined: what two careful tape measurements may differ by)."""
_MOST_SENTENCES = 2

TOPIC_WORDS: Mapping[Topic, str] = {
    "ease": "Ease",
    "body_step": "Steps of the body",
    "garment_step": "Steps of the garment",
    "proportion": "Proportions",
}

_PROPORTION_WORDS = {
    "bust_waist": "Bust less waist",
    "waist_hip": "Hip less waist",
    "high_bust_bust": "Bust less high bust",
    "back_waist_length": "Back waist length",
    "height": "Height",
}


def subject_words(subject: str, words: Wording) -> str:
    """What a plot or a column is about: `Bust`, `Hip less waist`."""
    return _PROPORTION_WORDS.get(subject) or words.name(subject)


@dataclass(frozen=True, slots=True)
class _Finding:
    """What one panel comes to: `how much` more or less the left side has, and `where`; empty for much the same."""

    subject: str
    how_much: str
    where: str
    weight_cm: float


def main_differences(compared: Drafting, topic: Topic, words: Wording) -> str:
    """The main differences of a topic in one or two sentences, and where both are much the same."""
    panels = compared.of(topic)
    if not panels:
        return _NOTHING[topic]
    pairs = [(panel, apart(panel)) for panel in panels]
    if not any(found for _, found in pairs):
        return _nothing_together(compared, panels)
    findings = [_finding(compared, panel, found, words) for panel, found in pairs if found]
    telling = sorted((f for f in findings if f.how_much), key=lambda f: -f.weight_cm)
    groups = _grouped(telling)[:_MOST_SENTENCES]
    said = [_sentence(compared, topic, group, words, first=group is groups[0]) for group in groups]
    if same := [_place(f.subject, words) for f in findings if not f.how_much]:
        said.append(f"Much the same {join(same)}.")
    return " ".join(said)


_NOTHING: Mapping[Topic, str] = {
    "ease": "Neither gives body chart and finished measurements of the same size, so no ease is known.",
    "body_step": "Neither has a body chart with two sizes next to each other.",
    "garment_step": "Neither has finished measurements of two sizes next to each other.",
    "proportion": "Neither body chart gives two girths to compare, or a length.",
}


def _nothing_together(compared: Drafting, panels: Sequence[Panel]) -> str:
    """Why there is no difference to speak of: a side without figures, or sizes that do not meet."""
    for side, curves in ((compared.left, [p.left for p in panels]), (compared.right, [p.right for p in panels])):
        if not any(curves):
            return f"{side.name} gives no figures for this, so there is nothing to compare."
    if any(panel.left and panel.right for panel in panels):
        return "The sizes of the two do not meet anywhere, so no difference can be given."
    return "The two give no figures for the same place."


def _grouped(findings: Sequence[_Finding]) -> list[list[_Finding]]:
    """Findings that say the same of several places come together."""
    groups: dict[tuple[str, str], list[_Finding]] = {}
    for finding in findings:
        groups.setdefault((finding.how_much, finding.where), []).append(finding)
    return list(groups.values())


def _finding(compared: Drafting, panel: Panel, found: Sequence[Apart], words: Wording) -> _Finding:
    weight = sum(abs(a.cm) for a in found) / len(found)
    worth = [i for i, a in enumerate(found) if abs(a.cm) >= _WORTH_SAYING_CM - SAME]
    if not worth:
        return _Finding(panel.subject, "", "", weight)
    if len({found[i].cm > 0 for i in worth}) > 1:
        return _both_ways(compared, panel, found, words)
    first, last = worth[0], worth[-1]
    amount = _amount([abs(a.cm) for a in found[first : last + 1]], words)
    where = f", {_where([_at(compared, panel, a, words) for a in found], first, last, len(panel.left))}"
    return _Finding(panel.subject, f"{amount} {_way(found[first].cm)}", where, weight)


def _way(cm: float) -> str:
    return "more" if cm > 0 else "less"


def _amount(cm: Sequence[float], words: Wording) -> str:
    """An amount, or the least and the greatest: `2 cm`, `1.5 to 3 cm`."""
    low, high = (show(x, words.notation, unit=False) for x in (min(cm), max(cm)))
    if low == high:
        return words.length(max(cm))
    return f"{'up to' if min(cm) < _WORTH_SAYING_CM - SAME else f'{low} to'} {words.length(max(cm))}"


def _both_ways(compared: Drafting, panel: Panel, found: Sequence[Apart], words: Wording) -> _Finding:
    """The ends of a difference that changes sides: less `at 38 (by 1 cm) and more at 46 (by 2 cm)`."""
    ends = (min(found, key=lambda a: a.cm), max(found, key=lambda a: a.cm))
    one, other = sorted(ends, key=lambda a: a.x)
    places = [f"at {_at(compared, panel, a, words)} (by {words.length(abs(a.cm))})" for a in (one, other)]
    where = f" {places[0]} and {_way(other.cm)} {places[1]}"
    return _Finding(panel.subject, _way(one.cm), where, sum(abs(a.cm) for a in found) / len(found))


def _where(places: Sequence[str], first: int, last: int, sizes: int) -> str:
    """The sizes a difference holds for: `in every size`, `from 40 up`, `up to 40`, `from 38 to 42`, `at 40`.

    `places` are those that both sides have, of `sizes` that the left one has.
    """
    if first == last:
        return f"at {places[first]}"
    if (first, last) == (0, len(places) - 1):
        return "in every size" if len(places) == sizes else "in every size that both have"
    if last == len(places) - 1:
        return f"from {places[first]} up"
    return f"up to {places[last]}" if first == 0 else f"from {places[first]} to {places[last]}"


def _at(compared: Drafting, panel: Panel, a: Apart, words: Wording) -> str:
    """A place across: the size's name where both sides mean the same by it, else the body measure."""
    if not compared.axis or same_names(panel):
        return a.label
    return across_words(compared, a.x, words)


def across_words(compared: Drafting, x: float, words: Wording) -> str:
    """A place across by the body measure that lines the sizes up: `bust 92 cm`; a size's name without one."""
    if not compared.axis:
        return compared.labels[round(x)]
    return f"{words.name(compared.axis).lower()} {words.length(x)}"


def _place(subject: str, words: Wording) -> str:
    """Where, inside a sentence: `at the bust`, `from waist to hip`, `in the back waist length`."""
    if subject not in PROPORTIONS:
        return f"at {words.the(subject)}"
    larger, smaller = PROPORTIONS[subject]
    if not smaller:
        return f"in {words.the(larger)}"
    return f"from {words.name(smaller).lower()} to {words.name(larger).lower()}"


_VERBS: Mapping[Topic, tuple[str, str]] = {
    "ease": ("allows", "ease "),
    "body_step": ("adds", "to the body from size to size "),
    "garment_step": ("adds", "to the garment from size to size "),
    "proportion": ("counts on", ""),
}


def _sentence(compared: Drafting, topic: Topic, group: Sequence[_Finding], words: Wording, *, first: bool) -> str:
    """One finding as a sentence; only the first one names both sides."""
    verb, noun = _VERBS[topic]
    where = join([_place(finding.subject, words) for finding in group])
    one, other = (compared.left.name, f" than {compared.right.name}") if first else ("It", "")
    return f"{one} {verb} {group[0].how_much} {noun}{where}{other}{group[0].where}."


def notes(compared: Drafting, words: Wording) -> tuple[str, ...]:
    """What could not be compared, and why: patterns without the measure that lines sizes up, doubtful half widths."""
    drafts = [draft for side in (compared.left, compared.right) for draft in side.drafts]
    said = []
    if compared.axis and (lacking := [d.title for d in drafts if compared.axis not in d.body]):
        said.append(f"Left out, as the body chart gives no {words.name(compared.axis).lower()}: {join(lacking)}.")
    for draft in drafts:
        if draft.doubtful:
            where = join([words.the(m) for m in draft.doubtful])
            said.append(f"{draft.title}: {where} may be printed as a half width and is left out until that is settled.")
    return tuple(said)


def reading(compared: Drafting, panel: Panel, x: float, words: Wording) -> str:
    """What both curves say at one place across: `Bust at 40: Marlet dress 5 cm, Ombry shirt 6.5 cm`."""
    here = [(side, point_at(curve, x)) for side, curve in _sides(compared, panel)]
    labels = dict.fromkeys(point.label for _, point in here if point is not None)
    place = "/".join(labels)
    if compared.axis:
        place = f"{place} ({across_words(compared, x, words)})"
    said = [f"{side.name} {_figure(point, words)}" for side, point in here if point is not None]
    return f"{subject_words(panel.subject, words)} at {place}: {', '.join(said)}"


def _figure(point: Point, words: Wording) -> str:
    figure = words.length(point.cm)
    if point.patterns == 1:
        return figure
    low, high = (show(cm, words.notation, unit=False) for cm in (point.low, point.high))
    span = f", {low} to {high}" if low != high else ""
    return f"{figure} (mean of {point.patterns} patterns{span})"


def point_at(curve: Curve, x: float) -> Point | None:
    """The point of a curve at a place across; None where it has none there."""
    return next((point for point in curve if abs(point.x - x) <= SAME_PLACE_CM), None)


def summary(compared: Drafting, panel: Panel, words: Wording) -> str:
    """A plot in words for who does not see it: both curves from their first size to their last."""
    said = [f"{side.name}: {_course(curve, words)}" for side, curve in _sides(compared, panel)]
    return f"{subject_words(panel.subject, words)}. {'. '.join(said)}."


def _sides(compared: Drafting, panel: Panel) -> tuple[tuple[Side, Curve], ...]:
    return ((compared.left, panel.left), (compared.right, panel.right))


def _course(curve: Curve, words: Wording) -> str:
    """How a curve runs: `5 cm at 38 to 7 cm at 46`, with its least and greatest where these lie between."""
    if not curve:
        return "no figures"
    first, last = curve[0], curve[-1]
    if len(curve) == 1:
        return f"{words.length(first.cm)} at {first.label}"
    low, high = min(curve, key=lambda p: p.cm), max(curve, key=lambda p: p.cm)
    if words.length(low.cm) == words.length(high.cm):
        return f"{words.length(first.cm)} from {first.label} to {last.label}"
    said = f"{words.length(first.cm)} at {first.label} to {words.length(last.cm)} at {last.label}"
    inner = [f"{word} {words.length(p.cm)} at {p.label}" for word, p in (("least", low), ("most", high))
             if p not in (first, last)]  # fmt: skip
    return ", ".join([said, *inner])
