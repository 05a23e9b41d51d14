"""A person: her readings, her household group and her ease preferences."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import Literal

from sizekeeper.core.length import Length
from sizekeeper.core.measure import MeasuredBy
from sizekeeper.core.preference import EasePreference, Garment


@dataclass(frozen=True, slots=True)
class Reading:
    """One measured value, as typed. `length` is None while the text is not a length: it then counts as missing."""

    measure: str
    text: str
    length: Length | None
    on: dt.date
    by: MeasuredBy = "helped"
    over: str = ""
    note: str = ""


@dataclass(frozen=True, slots=True)
class Person:
    """Somebody who is sewn for. `unit` is the unit of a bare number typed for her."""

    id: str
    name: str
    unit: Literal["cm", "in"] = "cm"
    readings: tuple[Reading, ...] = ()
    preferences: tuple[EasePreference, ...] = ()
    born: dt.date | None = None
    child: bool = False
    groups: tuple[str, ...] = ()
    notes: str = ""
    hidden: bool = False

    def preference(self, garment: Garment, *, knit: bool) -> EasePreference:
        """Her ease preferences for a kind of garment, empty where she set none."""
        for preference in self.preferences:
            if preference.garment == garment and preference.knit == knit:
                return preference
        return EasePreference(garment=garment, knit=knit)

    def of(self, measure: str) -> tuple[Reading, ...]:
        """Her readings of one measure, oldest day first, in the order typed within a day."""
        return tuple(sorted((r for r in self.readings if r.measure == measure), key=lambda r: r.on))
