"""A measure: a named dimension of the body or of a garment."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import Literal

Dimension = Literal["girth", "length", "width"]
MeasuredBy = Literal["trained", "helped", "alone"]
Use = Literal["body", "finished", "both"]

REGION_ORDER = ("across_back", "bust", "upper_arm", "wrist", "waist", "high_hip", "hip", "thigh", "calf")
"""The measures at which fit is judged, from the top of the body down."""

LEVELS = ("bust", "waist", "high_hip", "hip", "thigh")
"""The regions at which a traced line can go over to another size, in body order."""

TORSO_GIRTHS = ("bust", "waist", "high_hip", "hip")


@dataclass(frozen=True, slots=True)
class Measure:
    """What is known of one measure.

    `order` runs from the top of the body down. `tolerance_cm` has an entry for each way of measuring. `human_cm` is
    the span of figures a person can have, None for a garment's own measures. `synonyms` are the trade's names by
    language code. `source` names the standard's clause, empty where none is known.
    """

    id: str
    name: str
    dimension: Dimension
    use: Use
    order: int
    how: str
    synonyms: Mapping[str, tuple[str, ...]] = field(default_factory=dict)
    iso_name: str = ""
    iso_clause: str = ""
    tolerance_cm: Mapping[str, float] = field(default_factory=dict)
    human_cm: tuple[float, float] | None = None

    def tolerance(self, by: MeasuredBy) -> float:
        """How far one reading may be off, in cm, by who held the tape."""
        return self.tolerance_cm[by]


class Measures:
    """The known measures by id, in body order."""

    def __init__(self, measures: Iterator[Measure] | list[Measure]) -> None:
        """Keep the measures, sorted from the top of the body down."""
        self._by_id = {m.id: m for m in sorted(measures, key=lambda m: m.order)}

    def __iter__(self) -> Iterator[Measure]:
        return iter(self._by_id.values())

    def __contains__(self, measure: object) -> bool:
        return measure in self._by_id

    def __getitem__(self, measure: str) -> Measure:
        return self._by_id[measure]

    def __len__(self) -> int:
        return len(self._by_id)

    def name(self, measure: str) -> str:
        """The trade name, or the id in plain words for a measure of the user's own."""
        known = self._by_id.get(measure)
        return known.name if known else measure.replace("_", " ").capitalize()
