"""What a label or heading says: the measure, and beside it unit, kind, half widths, view, variant and cup."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass

from sizekeeper import assets
from sizekeeper.core.chart import WrittenAs
from sizekeeper.importing import vocabulary as words
from sizekeeper.importing.measure_names import NOTHING, Names, exactly, names_of
from sizekeeper.importing.units import stated_units, unit_of, without_units

_NUMBERING = re.compile(r"^\s*(?:\(?[A-Za-z0-9]{1,2}[).:]\s+|\d{1,2}\s+(?=[^\W\d_]{3})|[A-Z]\s[–—-]\s+|[*†‡•·#]+\s*)")
_MARKS = re.compile(r"\s*[*†‡§¹²³⁴⁵:]+\s*$")
_WHERE = re.compile(
    r"[\s,(]+(?:\d[\d.,/]*\s*(?:cm|mm|in|\"|″)?\s*)?(?:below|above|under|at|from|down|measured|unter(?:halb)?|über|ab|an|"
    r"en dessous|sous|à partir|depuis|au|onder|vanaf|boven|bajo|debajo|desde|sotto|da|dal)\s"
    r"(?!(?:the )?(?:nape|neck|cent(?:re|er) back|cb)\b).*$",
    re.IGNORECASE,
)
"""Where on the body or garment a measure is taken, which is no part of its name.

From the nape or the centre back makes another measure of a sleeve or a length, so it stays.
"""

_ACROSS = re.compile(
    r"(?<!\w)(?:across|wide|width|breite?|breit|large(?:ur)?|ancho|breedte|larghezza)(?!\w)", re.IGNORECASE
)
_SIZE_AND = re.compile(r"(?P<size>[^(\[]+?)\s*[(\[]\s*(?P<name>[^()\[\]]+?)(?:\s+(?:in|en))?\s*[)\]]?")
"""A word for size with the measure that names the sizes beside it: `Talla (altura)`."""
_SENTENCE = 60
_FEW_WORDS, _LONGEST = 3, 300


@dataclass(frozen=True, slots=True)
class Label:
    """A label taken apart. `size_word` tells that it heads a row of sizes; `prose` that it is a sentence."""

    text: str
    names: Names = NOTHING
    units: tuple[str, ...] = ()
    kind: words.Kind | None = None
    written_as: WrittenAs = "full"
    view: str | None = None
    variant: str | None = None
    cup: str | None = None
    size_word: bool = False
    unit_only: bool = False
    kind_only: bool = False
    generic: bool = False
    prose: bool = False

    @property
    def is_measure(self) -> bool:
        """Whether the label names a measure we know."""
        return bool(self.names.ids)

    @property
    def says_only_how(self) -> bool:
        """Whether the label qualifies figures (kind, unit, view, variant, cup) without naming a measure."""
        return not self.is_measure and (self.unit_only or self.kind_only or self._is_group())

    def _is_group(self) -> bool:
        bare = words.VIEW.sub("", words.CUP.sub("", words.VARIANT_ALONE.sub("", self.text)))
        return bool(self.view or self.variant or self.cup) and not re.search(r"\w{2}", words.GENERIC.sub("", bare))


@functools.lru_cache(8192)
def label_of(text: str) -> Label:
    """The label taken apart; a text longer than any label is prose."""
    if len(text) > _LONGEST:
        return Label(text[:_LONGEST], prose=True)
    shown = " ".join(text.split())
    spaced = shown.replace("_", " ")  # as the heads of columns are written in files that programs made
    units = stated_units(spaced)
    unit_only = unit_of(spaced) is not None or (bool(units) and not re.search(r"\w", without_units(spaced)))
    if unit_only:
        return Label(shown, units=units or ((unit_of(spaced) or ""),), unit_only=True)
    bare = _MARKS.sub("", without_units(_NUMBERING.sub("", spaced)))
    kind = None if _is_own_name(bare) else words.kind_in(bare)
    view, cup, variant = words.view_in(bare), words.cup_in(bare), _variant(bare)
    names, written = _names(_without_bound(bare))
    longest = max(len(part) for part in re.split(r"\s[/|·]\s", shown))
    prose = (longest > _SENTENCE and not names.ids) or (shown.endswith(".") and len(shown.split()) > _FEW_WORDS)
    return Label(
        shown,
        names=names,
        units=units,
        kind=kind,
        written_as=written,
        view=view,
        variant=variant,
        cup=cup,
        size_word=_is_size_word(bare),
        kind_only=kind is not None and words.only(words.BODY if kind == "body" else words.FINISHED, bare),
        generic=not re.search(r"\w", words.GENERIC.sub("", bare)),
        prose=prose,
    )


def _without_bound(bare: str) -> str:
    """A label without the word at its end that makes it one end of a range: `bust from` names the bust."""
    stem = bare.strip(" ():.,-").rpartition(" ")[0]
    return stem if stem and words.bound_in(bare) and names_of(stem).ids else bare


def _is_own_name(bare: str) -> bool:
    """Whether a word of kind belongs to the measure's own name, as in `body rise`."""
    stripped = words.FINISHED.sub("", words.BODY.sub("", bare)).strip()
    return bool(exactly(bare)) and not exactly(stripped) and not words.FINISHED.search(bare)


def _variant(bare: str) -> str | None:
    match = words.VARIANT.search(bare)
    if match:
        return match[0]
    if words.VARIANT_ALONE.fullmatch(bare):
        return bare
    bracket = re.search(r"[(\[,–-]\s*([^()\[\],]+?)\s*[)\]]?$", bare)
    return bracket[1] if bracket and words.VARIANT_ALONE.fullmatch(bracket[1]) else None


def _is_size_word(bare: str) -> bool:
    """Whether every part of a label is a word for size, whatever else it can mean in another language."""
    parts = [p for p in re.split(r"\s*[/|·•]\s*", bare) if p.strip()]
    return bool(parts) and all(words.SIZE.search(p) and not _more_than_size(p) for p in parts)


def _more_than_size(part: str) -> bool:
    left = words.GENERIC.sub("", words.SIZE.sub("", words.VARIANT_ALONE.sub("", part)))
    left = words.BODY.sub("", words.FINISHED.sub("", left))
    return bool(re.search(r"\w", left))


def _names(bare: str) -> tuple[Names, WrittenAs]:
    """The measure named and how it is written; words that mark halves, kinds, views and variants are set aside."""
    exact = names_of(bare) if exactly(bare) else NOTHING
    beside_size = _SIZE_AND.fullmatch(bare)
    if beside_size and _is_size_word(beside_size["size"]) and exactly(beside_size["name"]):
        return names_of(beside_size["name"]), "full"
    if exact.ids and not (words.HALF.search(bare) or words.QUARTER.search(bare)):
        return exact, "full"
    left = words.CUP.sub(" ", words.VIEW.sub(" ", bare))
    written: WrittenAs = "full"
    if words.QUARTER.search(left):
        written, left = "quarter", words.QUARTER.sub(" ", left)
    elif words.HALF.search(left):
        written, left = "half", words.HALF.sub(" ", left)
    if not exactly(left):
        left = words.VARIANT.sub(" ", left)
    without_kind = words.FINISHED.sub(" ", words.BODY.sub(" ", left))
    for text in (
        left,
        without_kind,
        _before_comma(without_kind),
        _WHERE.sub("", without_kind),
        re.sub(r"[(\[][^()\[\]]*[)\]]", " ", without_kind),
    ):
        found = names_of(_tidy(text))
        if found.sure >= 0.8:  # noqa: PLR2004 - surer than a name found within the label
            return found, written
    if written != "full":
        found = names_of(_tidy(_ACROSS.sub(" ", without_kind)))  # "hem across, flat" is half of the hem
        if found.sure >= 0.8:  # noqa: PLR2004 - as above
            return found, written
    found = names_of(_tidy(without_kind))
    return (found if found.ids else exact), written


def _unbracketed(text: str) -> str:
    return re.sub(r"[(\[][^()\[\]]*[)\]]", " ", text)


def _before_comma(text: str) -> str:
    """What stands before a comma and words that explain it: `Shoulder seam, neck to edge`; never a bare `Length`."""
    head, _, rest = text.partition(",")
    explained = len(rest.split()) > 1 and len(head.split()) > 1
    return head if explained else text


def _tidy(text: str) -> str:
    return " ".join(text.split()).strip(" ,;:()[]–—-")


def resolved(names: Names, kind: words.Kind | None, finished_words: bool) -> str | None:  # noqa: FBT001 - told by the row
    """The one measure a label means in a chart of a kind: a back length is the garment's in a finished chart.

    None where it names none that we know.
    """
    if not names.ids:
        return None
    measures = assets.measures()
    wrong = "body" if kind == "finished" or finished_words else "finished"
    fitting = [m for m in names.ids if measures[m].use != wrong]
    exact_kind = [m for m in fitting if measures[m].use == (kind or "body")]
    return (exact_kind or fitting or list(names.ids))[0]
