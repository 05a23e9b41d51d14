"""The regions of a comparison as lines, so that those of two comparisons stand next to each other."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.core.notation import show, spoken
from sizekeeper.core.places import offered_cm, short_place
from sizekeeper.core.sentences import cut_at
from sizekeeper.ui.fit_lines import Line

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.result import Fit, RegionAt, RegionFit
    from sizekeeper.core.wording import Wording

HEADING = ("Where", "Body", "Asked", "Ease", "Band", "Finished", "Off")
_NOTHING = "–"


def heading(words: Wording, *, by_body: bool) -> tuple[str, ...]:
    """The columns with the units of their figures; `by_body` where sizes are judged by the body chart alone."""
    printed = "Body chart" if by_body else "Finished"
    units = {"Body": words.notation.unit, "Finished": words.envelope.unit}
    said = {"Finished": printed}
    return tuple(f"{said.get(name, name)}, {units[name]}" if name in units else name for name in HEADING)


def shared_measures(fits: Iterable[Fit | None]) -> tuple[str, ...]:
    """The regions that any of the comparisons judges, from the top of the body down."""
    found = {region.measure for fit in fits if fit is not None for region in fit.regions}
    return tuple(measure for measure in REGION_ORDER if measure in found)


def beside_lines(fit: Fit | None, measures: Sequence[str], words: Wording) -> list[Line]:
    """A line for each region, figures at what is to be cut; dashes where the comparison does not judge it."""
    regions = {} if fit is None else {region.measure: region for region in fit.regions}
    cut = {} if fit is None else cut_at(fit)
    lines = []
    for measure in measures:
        if fit is None or measure not in regions or measure not in cut:
            texts = (words.name(measure), *(_NOTHING for _ in HEADING[1:]))
            lines.append(Line(texts, f"{words.name(measure)}: not judged"))
            continue
        position, at = cut[measure]
        place = short_place(position, fit.labels)
        size = " ".join(part for part in place if part) if fit.verdict.kind == "blend" else ""
        lines.append(_line(regions[measure], at, size, words))
    return lines


def _line(region: RegionFit, at: RegionAt, size: str, words: Wording) -> Line:
    name = words.name(region.measure)
    asked = at.asked_cm if at.asked_cm is not None else region.asked_cm
    printed = offered_cm(at)
    figure = _NOTHING if printed is None else show(printed, words.envelope, unit=False)
    texts = (
        f"{name}, {size}" if size else name,
        show(region.body_cm, words.notation, unit=False),
        _length(asked, words),
        _length(at.ease_cm, words),
        "too small" if at.short_cm else at.band or _NOTHING,
        f"~{figure}" if at.interpolated else figure,
        _NOTHING if at.diff_cm is None else show(at.diff_cm, words.notation, unit=False, sign=True),
    )
    return Line(texts, _said(region, at, texts[0], asked, words), at.band, strong=region.role == "lead")


def _length(cm: float | None, words: Wording) -> str:
    return _NOTHING if cm is None else show(cm, words.notation, unit=False)


def _said(region: RegionFit, at: RegionAt, name: str, asked: float | None, words: Wording) -> str:
    """A line in words."""
    notation = words.notation
    said = [f"body {spoken(region.body_cm, notation)}"]
    if at.ease_cm is None:
        said.append("ease unknown")
    else:
        said.append(f"{spoken(at.ease_cm, notation)} of ease, {at.band or 'no band'}")
    if asked is not None:
        said.append(f"asked {spoken(asked, notation)}")
    if at.short_cm:
        said.append(f"will not close, short by {words.sewn(at.short_cm)}")
    if (printed := offered_cm(at)) is not None:
        what = "finished" if at.finished_cm is not None else "body chart"
        filled = ", filled in between its neighbours" if at.interpolated else ""
        said.append(f"{what} {spoken(printed, words.envelope)}{filled}")
    if at.diff_cm is not None:
        said.append(f"off by {spoken(at.diff_cm, notation)}")
    return f"{name}: {', '.join(said)}"
