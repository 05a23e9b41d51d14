"""What stands beside the rows of the ease table, and the notes beneath it, as texts."""

from __future__ import annotations

import functools
from dataclasses import replace
from typing import TYPE_CHECKING, Literal

from sizekeeper import assets
from sizekeeper.core import sentences
from sizekeeper.core.found_words import for_child, is_old, old_words, scale_words
from sizekeeper.core.notation import show
from sizekeeper.core.plausible import question
from sizekeeper.core.reading_edit import read_text, shown_text
from sizekeeper.core.staleness import ago
from sizekeeper.ui.ease_row import RegionText

if TYPE_CHECKING:
    import datetime as dt

    from sizekeeper.core.found import Found
    from sizekeeper.core.person import Person, Reading
    from sizekeeper.core.reading_edit import Figure
    from sizekeeper.core.result import RegionFit
    from sizekeeper.core.wording import Wording


def region_texts(found: Found, words: Wording, today: dt.date) -> list[RegionText]:
    """The text beside each row, in body order."""
    judged = {region.measure: region for region in found.fit.regions} if found.fit else {}
    return [_region_text(found, measure, judged.get(measure), words, today) for measure in found.measures]


def _region_text(found: Found, measure: str, region: RegionFit | None, words: Wording, today: dt.date) -> RegionText:
    figure = found.figure(measure)
    name = words.name(measure)
    if figure is None:
        return RegionText(measure, name, "not measured yet", "")
    locked, tip = _locked(figure, today, read_only=found.read_only), _tip(figure, today)
    if region is None:
        return RegionText(measure, name, "not a length yet", figure.last.text, doubtful=True, locked=locked, tip=tip)
    old = is_old(found.person, figure, today)
    notes = [ago(figure.last.on, today)] if old else []
    notes += [f"middle of {figure.count}"] if figure.count > 1 else []
    notes.append(sentences.region_note(region, words))
    return RegionText(
        measure=measure,
        name=name,
        note=" · ".join(notes),
        figure=_figure_text(found.person, figure, words),
        converted=_converted(region, figure, words),
        leads=region.role == "lead",
        muted=region.weight == 0,
        doubtful=old,
        locked=locked,
        tip=tip,
    )


def _figure_text(person: Person, figure: Figure, words: Wording) -> str:
    """A single reading as typed; of several the one in the middle."""
    if figure.count > 1 and figure.exact_cm is not None:
        return show(figure.exact_cm, words.notation)
    return _shown_text(figure.last, person.unit)


@functools.lru_cache(maxsize=256)
def _shown_text(reading: Reading, unit: Literal["cm", "in"]) -> str:
    """A reading as typed; kept, because the same ones are asked for at every keystroke."""
    return shown_text(reading, unit)


def _converted(region: RegionFit, figure: Figure, words: Wording) -> str:
    """The figure in the unit that is shown, where it was typed in the other one."""
    length = figure.last.length
    if length is None or figure.count > 1 or (length.unit in ("in", "ft", "yd")) == (words.notation.unit == "in"):
        return ""
    return f"= {words.length(region.body_cm)}"


def _locked(figure: Figure, today: dt.date, *, read_only: bool) -> str:
    """Why a figure cannot be typed here: another window has the library, or several readings of today stand behind."""
    if read_only:
        return "The library is open in another window; here it can only be looked at."
    if len(figure.readings) > 1 and figure.last.on == today:
        return f"The middle of {len(figure.readings)} readings of today; change them on the Person page."
    return ""


def _tip(figure: Figure, today: dt.date) -> str:
    if figure.last.on == today:
        return "Measured today; typing corrects it."
    return f"Measured {ago(figure.last.on, today)}; typing adds a measurement of today, the old one is kept."


def questions(found: Found) -> dict[str, str]:
    """What is to be asked about the figures that stand: texts that are no length, and figures no body has."""
    said = {}
    for measure in found.measures:
        figure = found.figure(measure)
        if figure is not None and (sentence := doubt_about(found.person, measure, figure.last.text)):
            said[measure] = sentence
    return said


def doubt_about(person: Person, measure: str, text: str) -> str:
    """What is doubtful about a typed figure, in a sentence that names the measure; empty when nothing is."""
    return _doubt_about(measure, text, person.unit, child=person.child)


@functools.lru_cache(maxsize=256)
def _doubt_about(measure: str, text: str, unit: Literal["cm", "in"], *, child: bool) -> str:
    name = assets.measures().name(measure)
    length, problem = read_text(text, unit)
    if length is None:
        return f"{name}: {problem}."
    asked = question(assets.measures()[measure], length, child=child)
    if asked is None:
        return ""
    return f"{name}: {asked.sentence}" + (f" If so, type {asked.answer}." if asked.answer else "")


def notes(found: Found, words: Wording, today: dt.date) -> str:
    """The lines under the table: what to measure again, and what is old."""
    lines = [old_words(found, words, today), scale_words(found)]
    if found.fit is not None:
        lines.insert(0, sentences.measure_again(found.fit, words))
    return "\n".join(line for line in lines if line)


def asides(found: Found, words: Wording, today: dt.date) -> str:
    """The small lines at the foot: what could not be judged, and what the program is not for."""
    if found.fit is None:
        return ""
    told = tuple(entry for entry in found.fit.left_out if entry.measure not in found.illegible)
    lines = [sentences.left_out(replace(found.fit, left_out=told), words)]
    lines += sentences.cautions(found.fit, child=for_child(found, today))
    return "\n".join(line for line in lines if line)
