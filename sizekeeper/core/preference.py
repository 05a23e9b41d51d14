"""How somebody likes a garment to fit: roles, bands and own figures per region."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

from sizekeeper.core.length import Length

Garment = Literal["dress", "top", "skirt", "trousers", "jacket", "coat"]
GARMENTS: tuple[Garment, ...] = ("dress", "top", "skirt", "trousers", "jacket", "coat")
Role = Literal["counted", "free", "adjustable"]
Band = Literal["tight", "close", "easy", "loose"]
BANDS: tuple[Band, ...] = ("tight", "close", "easy", "loose")


@dataclass(frozen=True, slots=True)
class RegionPreference:
    """What she set for one region; None is "as it comes".

    `edges` are the three band edges a < b < c as lengths of ease. `own` is her own ease in this region; `liked` says
    which garment it was taken from.
    """

    band: Band | None = None
    own: Length | None = None
    edges: tuple[Length, Length, Length] | None = None
    role: Role | None = None
    liked: str = ""


@dataclass(frozen=True, slots=True)
class EasePreference:
    """Her preferences for one kind of garment in woven or in knit fabric.

    `lead` is the measure to choose size by; `mode` is by what a size is judged, where the pattern's charts allow it.
    """

    garment: Garment
    knit: bool = False
    lead: str | None = None
    regions: dict[str, RegionPreference] = field(default_factory=dict)
    mode: Literal["my", "designer", "body"] | None = None

    def region(self, measure: str) -> RegionPreference:
        """What she set for a region, empty where she set nothing."""
        return self.regions.get(measure, RegionPreference())
