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


def own_measure(label: str) -> str:
    """The id of a measure of the user's own: a slug of its label."""
    return plain_name(label).replace(" ", "_")
