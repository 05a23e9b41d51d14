"""What a decision sheet says in sentences: the verdict, its doubts, the plan, what to measure again, the cautions."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core import plan_words, sentences, toile_words, work_words
from sizekeeper.core.found_words import for_child, old_words, scale_words
from sizekeeper.core.knit import knit_check, stretch_of
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.piece_words import LEVEL_NAMES
from sizekeeper.core.plan_verdict import is_verdict, plan_headline
from sizekeeper.core.planned import doubts_left, girths
from sizekeeper.core.plausible import question
from sizekeeper.core.work import passages_of
from sizekeeper.errors import PlanError
from sizekeeper.reports.sheet import SheetPlan

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Iterable

    from sizekeeper.core.found import Found
    from sizekeeper.core.plan import Plan
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.result import Fit
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import LengthLine, WidthLine, Work

_LOST = "The size that was decided on is no longer listed; the sheet is made for the best plan instead."


def verdict(fit: Fit, planned: Planned | None, words: Wording) -> str:
    """What to cut, in one sentence: what was decided, else the best plan, with what speaks against it."""
    if planned is None:
        return sentences.headline(fit, words)
    if planned.chosen is None and (is_verdict(planned.shown, fit) or planned.shown.bust is not None):
        return plan_headline(planned, words)
    return f"{plan_words.title(planned.shown, planned.plans.labels, words)}."


def doubts(fit: Fit, planned: Planned | None, words: Wording) -> tuple[str, ...]:
    """How sure it is, the gravest first, and what the body chart alone would say. These name lengths of the body."""
    if planned is None:
        said = [*sentences.warnings(fit, words), *sentences.doubts(fit, words), sentences.room_for_error(fit, words)]
    else:
        said = [_LOST] if planned.lost else []
        said += plan_words.doubt_words(replace(planned.shown, doubts=doubts_left(planned.shown, planned)), words)
        said += _beside(fit, planned, words)
        if sentences.LEAD_ABSENT in sentences.warnings(fit, words):
            said.append(sentences.LEAD_ABSENT)
    said += [sentences.left_out(fit, words), sentences.chart_says(fit, words)]
    return tuple(sentence for sentence in said if sentence)


def _beside(fit: Fit, planned: Planned, words: Wording) -> list[str]:
    """What the verdict says beside the plan: how safe it is, or which it is where the plan is another."""
    if is_verdict(planned.shown, fit):
        ties = sentences.ties(fit, words)
        best = [sentence for sentence in sentences.doubts(fit, words) if sentence not in ties]
        return [*best, sentences.room_for_error(fit, words)]
    return [f"By ease alone: {sentences.headline(fit, words)}"] if planned.shown.bust is None else []


def private_doubts(planned: Planned | None) -> tuple[str, ...]:
    """What can be said without a length of the body."""
    if planned is None:
        return ()
    said = [_LOST] if planned.lost else []
    codes = {doubt.code for doubt in doubts_left(planned.shown, planned)}
    if codes & {"past_range", "extrapolated"}:
        said.append("The best place lies past the sizes of the chart: make a toile first.")
    if codes & {"short", "past_allowance", "not_wearable", "tight"}:
        said.append("It is tight: make a toile first, and keep the seam allowances.")
    return tuple(said)


def plan(planned: Planned, work: Work, words: Wording, *, private: bool, next_time: str = "") -> SheetPlan:
    """The plan that is shown. A private one says only what is to be done, and nothing in her own words.

    `next_time` is what was noted after an earlier make of hers.
    """
    shown, decision = planned.shown, planned.make.decision
    decided = decision if planned.chosen is not None else None
    title = plan_words.title(shown, planned.plans.labels, words)
    lines = [plan_words.lines_words(shown, words)]
    lines += [] if private else [_off(shown, words), _with_bust(shown, words), _mending(shown, words)]
    lines += [_length(line, words, private=private) for line in work.lengths]
    lines += [_width(line, words) for line in work.widths]
    lines += [] if private else _toile(planned, words)
    lines.append(_amount_of_work(planned, work))
    lines += [f"Noted after the last make: {next_time}"] if next_time and not private else []
    return SheetPlan(
        title=title,
        decided=decided is not None,
        lines=tuple(line for line in lines if line),
        reason=decided.reason if decided is not None and not private else "",
        advised=decided.advised if decided is not None and not private else "",
        on=decided.on if decided is not None else None,
    )


def _amount_of_work(planned: Planned, work: Work) -> str:
    """How much is to be done; nothing where the work list says it or where no listed piece takes the change up."""
    shown = planned.shown
    if shown.changes:
        return f"Work: {plan_words.work_words(shown, planned.pieces)}."
    if work.sheet.steps:
        return ""
    changed = any(line.change is not None and line.change.change for line in work.lengths) or bool(work.widths)
    if not changed:
        return f"Work: {plan_words.work_words(shown, planned.pieces)}."
    return "" if planned.pieces.pieces else "Work: list the pieces to see which of them this changes."


def _off(shown: Plan, words: Wording) -> str:
    if shown.misfit_cm is None:
        return ""
    return f"Off by {words.drawn(shown.misfit_cm)} from the ease asked for, over all that counts."


def _with_bust(shown: Plan, words: Wording) -> str:
    """The ease at the bust with what is added there, which no printed figure has."""
    at = shown.regions.get("bust")
    if shown.bust is None or at is None or at.ease_cm is None:
        return ""
    return f"With what is added, {words.the('bust')} has {plan_words.ease_words(at, words)}."


def _mending(shown: Plan, words: Wording) -> str:
    said = [
        f"{words.the(m)} {text}" for m, at in shown.regions.items() if (text := plan_words.mending_words(at, words))
    ]
    return f"Afterwards: {'; '.join(said)}." if said else ""


def _length(line: LengthLine, words: Wording, *, private: bool) -> str:
    """A change of length and what it is computed from; a private sheet leaves away the second."""
    if line.problem:
        return f"{CHAIN_NAMES[line.choice.chain].capitalize()}: {line.problem}"
    if line.change is None or not line.change.change:
        return ""
    said = _capital(work_words.length_summary(line, words))
    why = "" if private else work_words.length_words(line, words).removesuffix(".")
    return f"{said}: {why[:1].lower()}{why[1:]}." if why else f"{said}."


def _width(line: WidthLine, words: Wording) -> str:
    if line.problem:
        return f"{LEVEL_NAMES[line.choice.level].capitalize()}: {line.problem}"
    said = f"{_capital(work_words.width_summary(line, words))}."
    return f"{said} {work_words.gather_words(line)}".strip()


def _toile(planned: Planned, words: Wording) -> list[str]:
    """What the toiles showed, place by place."""
    say = (toile_words.state_words, toile_words.tight_words, toile_words.contrary_words)
    said = [text for state in planned.toile() for one in say if (text := one(state, words))]
    return [f"On the toile: {said[0]}", *said[1:]] if said else []


def measure_again(found: Found, fit: Fit, words: Wording, today: dt.date) -> tuple[str, ...]:
    """What to measure again: within the tape's error, old, not a length, or no figure of a body."""
    said = [sentences.measure_again(fit, words), old_words(found, words, today)]
    said += _doubtful(found, words)
    return tuple(sentence for sentence in said if sentence)


def _doubtful(found: Found, words: Wording) -> Iterable[str]:
    for measure in found.measures:
        figure = found.figure(measure)
        if figure is None:
            continue
        if figure.last.length is None:
            yield f"{words.name(measure)}: “{figure.last.text}” is not a length."
        elif asked := question(assets.measures()[measure], figure.last.length, child=found.person.child):
            yield f"{words.name(measure)}: {asked.sentence}"


def cautions(
    found: Found, fit: Fit, planned: Planned | None, words: Wording, today: dt.date, *, private: bool
) -> tuple[str, ...]:
    """What applies to this garment: children's wear, knits, how the pattern printed, what has to pass an opening."""
    child = for_child(found, today)
    said = [*sentences.cautions(fit, child=child), scale_words(found)]
    if planned is not None and not private:
        passed = (work_words.passage_words(passage, words) for passage in passages_of(planned, child=child))
        said += [sentence for sentence, warns in passed if warns]
        said += _stretch(planned, words)
    return tuple(sentence for sentence in said if sentence)


def _stretch(planned: Planned, words: Wording) -> list[str]:
    """What her stretch test says against the fabric."""
    test = planned.make.stretch_test
    if test is None:
        return []
    try:
        stretch = float(stretch_of(test))
    except PlanError:
        return []
    return work_words.knit_words(knit_check(stretch, planned.found.pattern.stretch, girths(planned)), words)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]
