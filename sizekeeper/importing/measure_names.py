"""Which measure a label names: exact synonyms first, then several languages in one label, then close spelling."""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass

from sizekeeper import assets
from sizekeeper.importing.vocabulary import NOTIONS, folded

CLOSE = 0.8
"""How sure a name is that was found by its close spelling: one letter off, two in a long name (coined)."""

_FILLERS = frozenset(
    {
        "circumference", "girth", "measurement", "measurements", "measure", "around", "round", "the", "of", "at",
        "your", "a", "full", "total", "body", "line", "circonference", "tour", "perimetre", "du", "de", "la", "le",
        "des", "d", "l", "umfang", "weite", "der", "die", "das", "am", "um", "omtrek", "omvang", "wijdte", "rond",
        "van", "het", "contorno", "perimetro", "del", "el", "circonferenza", "giro", "della", "al", "dell", "approx",
    },
)  # fmt: skip
_PARTS = re.compile(r"\s*(?:\s/\s|\||•|·|\s[–—-]\s|\n|(?<=\w)/(?=\w{3}))\s*")
_SHORTEST_FUZZY, _SHORTEST_WITHIN = 5, 3
_LONG = 9
_WORTH = {"exact": 1.0, "bare": 0.95, "parts": 0.9, "within": 0.7}
_NOUNS = frozenset(
    {
        "depth", "across", "slope", "point", "armhole", "length", "width", "height", "drop", "opening", "position",
        "distance", "from", "to", "tiefe", "lange", "hohe", "breite", "hoogte", "diepte", "breedte", "profondeur",
        "largeur", "longueur", "hauteur", "largo", "ancho", "alto", "profundidad", "lunghezza", "larghezza", "altezza",
        "allowance", "ease", "stand", "pocket", "flap", "strap", "tie", "belt", "dart", "pleat", "yoke", "placket",
        "facing", "frill", "stretch", "slit", "vent", "gusset", "button", "buttons", "zip", "zipper", "band", "elastic",
        "ribbon", "fabric",
    },
)  # fmt: skip
"""Words that make another measure of the name beside them: a cuff depth is not a cuff."""


_BARE = frozenset({"length", "longueur", "lange", "lengte", "largo", "longitud", "lunghezza"})
"""Words that are a garment's length alone, and another measure with a word beside them: a strap's, a foot's."""


@dataclass(frozen=True, slots=True)
class Names:
    """The measures a label can mean, best first, how sure that is (0 to 1), and the languages it is written in."""

    ids: tuple[str, ...] = ()
    sure: float = 0.0
    languages: frozenset[str] = frozenset()


NOTHING = Names()


@functools.cache
def _index() -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = {}
    for measure in assets.measures():
        for name in (measure.name, measure.id.replace("_", " "), measure.iso_name):
            if name:
                found.setdefault(folded(name), []).append((measure.id, "en"))
        for language, names in measure.synonyms.items():
            for name in names:
                for spelling in {folded(name), folded(name.replace("ä", "ae").replace("ö", "oe").replace("ü", "ue"))}:
                    found.setdefault(spelling, []).append((measure.id, language))
    return {name: tuple(dict.fromkeys(ids)) for name, ids in found.items() if name}


@functools.cache
def _bare_index() -> dict[str, tuple[tuple[str, str], ...]]:
    found: dict[str, list[tuple[str, str]]] = {}
    for name, ids in _index().items():
        bare = _bare(name)
        if bare:
            found.setdefault(bare, []).extend(ids)
    return {name: tuple(dict.fromkeys(ids)) for name, ids in found.items()}


def _bare(name: str) -> str:
    return " ".join(word for word in name.split() if word not in _FILLERS)


@functools.lru_cache(8192)
def names_of(label: str) -> Names:
    """The measures that a label can name."""
    if not re.search(r"[^\W\d_]", label):
        return NOTHING
    whole = _looked_up(label)
    if whole.sure >= _WORTH["bare"]:
        return whole
    parts = [part for part in _PARTS.split(label) if part.strip()]
    if len(parts) > 1:
        several = _of_parts(parts)
        if several.ids:
            return several
    return whole if whole.ids else _close(folded(label)) if len(label) <= 60 else NOTHING  # noqa: PLR2004 - a sentence


@functools.lru_cache(8192)
def exactly(label: str) -> tuple[str, ...]:
    """The measures that have this very name, none where it is only near one."""
    return tuple(dict.fromkeys(i for i, _ in _index().get(folded(label), ())))


def _looked_up(label: str) -> Names:
    name = folded(label)
    for index, key, sure in ((_index(), name, "exact"), (_bare_index(), _bare(name), "bare")):
        found = index.get(key)
        if found:
            ids = tuple(dict.fromkeys(i for i, _ in found))
            return Names(ids, _WORTH[sure], frozenset(language for _, language in found))
    return NOTHING


def _of_parts(parts: list[str]) -> Names:
    """The measure that most parts of a label agree on, as when it is printed in several languages."""
    votes: dict[str, int] = {}
    languages: set[str] = set()
    for part in parts:
        found = _looked_up(part)
        if not found.ids:
            found = _close(folded(part))
        for measure in found.ids:
            votes[measure] = votes.get(measure, 0) + 1
        if len(found.languages) == 1:
            languages |= found.languages
    if not votes:
        return NOTHING
    most = max(votes.values())
    return Names(tuple(m for m, n in votes.items() if n == most), _WORTH["parts"], frozenset(languages))


@functools.lru_cache(8192)
def _close(name: str) -> Names:
    """A measure whose name is spelt nearly so, else the longest name that stands within the label."""
    within = _within(name)
    if within.ids or len(name) < _SHORTEST_FUZZY or NOTIONS.search(name):  # a weight is no height
        return within
    from rapidfuzz import process
    from rapidfuzz.distance import OSA

    most = 1 if len(name) < _LONG else 2
    near = process.extract(name, list(_index()), scorer=OSA.distance, score_cutoff=most, limit=6)
    nearest = [found for found, distance, _ in near if distance == near[0][1]]
    ids = [dict.fromkeys(i for i, _ in _index()[found]) for found in nearest]
    if not ids or any(not set(ids[0]) & set(other) for other in ids):
        return NOTHING
    return Names(tuple(ids[0]), CLOSE, frozenset(language for _, language in _index()[nearest[0]]))


def _within(name: str) -> Names:
    words = name.split()
    for length in range(min(len(words), 6), 0, -1):
        for start in range(len(words) - length + 1):
            piece = " ".join(words[start : start + length])
            ids = _index().get(piece)
            rest = words[:start] + words[start + length :]
            other = any(word in _index() for word in words[:start])  # a knee height is no height
            if piece in _BARE and rest:
                continue
            if ids and len(piece) >= _SHORTEST_WITHIN and not other and not _NOUNS & set(rest):
                return Names(tuple(dict.fromkeys(i for i, _ in ids)), _WORTH["within"], frozenset(x for _, x in ids))
    return NOTHING


def slug(label: str) -> str:
    """An id for a measure of the chart's own: `Cuff depth (cm)` gives `cuff_depth`."""
    return folded(label).replace(" ", "_") or "measure"
