"""Finds the measure that a name printed in a chart means, or makes one of the user's own."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sizekeeper.core.chart import ChartKind
    from sizekeeper.core.measure import Measure, Measures


def plain_name(text: str) -> str:
    """A name for comparing: small letters without accents, marks as single spaces."""
    bare = "".join(c for c in unicodedata.normalize("NFKD", text.casefold()) if not unicodedata.combining(c))
    return " ".join(re.sub(r"[\W_]+", " ", bare).split())


def find_measure(measures: Measures, text: str, kind: ChartKind) -> Measure | None:
    """The measure that a text names in any language, None where no name is exactly that.

    A trade name wins over a synonym, and a measure that belongs in this kind of chart over one that does not.
    """
    wanted = plain_name(text)
    found = [(_rank(measure, wanted, kind), measure) for measure in measures]
    best = min(((rank, measure) for rank, measure in found if rank is not None), key=lambda f: f[0], default=None)
    return best[1] if best else None


def _rank(measure: Measure, wanted: str, kind: ChartKind) -> int | None:
    elsewhere = 0 if measure.use in ("both", kind) else 2
    if wanted in (plain_name(measure.name), plain_name(measure.id)):
        return elsewhere
    if any(plain_name(name) == wanted for names in measure.synonyms.values() for name in names):
        return elsewhere + 1
    return None


def suggest(measures: Measures, text: str, kind: ChartKind) -> dict[str, str]:
    """Names to pick from for what is being typed, each measure once, with the measures' ids.

    Names that are just that come first, then those that begin so, then those that have it inside; trade names before
    English synonyms, which are written behind the trade name.
    """
    wanted = plain_name(text)
    found: list[tuple[int, str, str]] = []
    for measure in measures:
        if measure.use in ("both", kind):
            names = [(_nearness(measure.name, wanted), measure.name)]
            synonyms = measure.synonyms.get("en", ())
            names += [(_nearness(synonym, wanted) + 1, f"{measure.name} ({synonym})") for synonym in synonyms]
            rank, shown = min(names, key=lambda name: name[0])
            if rank < _FAR:
                found.append((rank, shown, measure.id))
    return {shown: measure for _, shown, measure in sorted(found, key=lambda f: f[0])}


_FAR = 9


def _nearness(name: str, wanted: str) -> int:
    """How near a name is to what is typed: 0 the same, 2 begins so, 4 has it inside, 9 nothing of it."""
    plain = plain_name(name)
    if plain == wanted:
        return 0
    return 2 if plain.startswith(wanted) else 4 if wanted in plain else _FAR


def own_measure(label: str) -> str:
    """The id of a measure of the user's own: a slug of its label."""
    return plain_name(label).replace(" ", "_")
