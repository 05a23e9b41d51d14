"""What finished makes tell of the ease a person likes: with how much it was worn as wanted, too tight, too loose."""

from __future__ import annotations

import statistics
from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.make_words import FELT_WORDS
from sizekeeper.core.makes import finished
from sizekeeper.core.places import join

if TYPE_CHECKING:
    from collections.abc import Iterable

    from sizekeeper.core.make import Felt, Make
    from sizekeeper.core.preference import Garment
    from sizekeeper.core.wording import Wording


@dataclass(frozen=True, slots=True)
class Worn:
    """The ease of her finished garments at one region, cm, by how they were worn, the newest first."""

    right: tuple[float, ...] = ()
    tight: tuple[float, ...] = ()
    loose: tuple[float, ...] = ()

    @property
    def liked_cm(self) -> float | None:
        """The ease she was content with: the median of those worn as wanted; None where none was."""
        return statistics.median(self.right) if self.right else None


def worn_ease(makes: Iterable[Make], person: str, garment: Garment, measure: str, *, knit: bool) -> Worn:
    """What a person's finished garments of one kind tell of one region.

    Args:
        makes: every make.
        person: her id.
        garment: the kind of garment; another kind is worn with another ease.
        measure: the region.
        knit: whether it is of knit fabric.
    """
    found: dict[Felt, list[float]] = {"right": [], "tight": [], "loose": []}
    for make in finished(makes):
        kept, felt = make.kept, make.worn.get(measure)
        if make.person != person or kept is None or felt is None or (kept.garment, kept.knit) != (garment, knit):
            continue
        region = kept.regions.get(measure)
        if region is not None and region.worn_cm is not None:
            found[felt].append(region.worn_cm)
    return Worn(tuple(found["right"]), tuple(found["tight"]), tuple(found["loose"]))


def evidence_words(worn: Worn, words: Wording) -> str:
    """The evidence in one sentence: `Made before: as wanted with 5 cm, too tight with 2 cm of ease.`; empty without."""
    felt: tuple[tuple[Felt, tuple[float, ...]], ...] = (
        ("right", worn.right), ("tight", worn.tight), ("loose", worn.loose),
    )  # fmt: skip
    said = [
        f"{FELT_WORDS[how]} with {join(list(dict.fromkeys(words.length(cm) for cm in eases)))}"
        for how, eases in felt
        if eases
    ]
    return f"Made before: {', '.join(said)} of ease." if said else ""
