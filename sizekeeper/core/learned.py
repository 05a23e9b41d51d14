"""What the reader of charts was taught: names that people print for a measure, beyond those it knows."""

from __future__ import annotations

from dataclasses import dataclass, field

LEARNED = "learned"
"""The id of the one entry of a library that keeps the names."""


@dataclass(frozen=True, slots=True)
class Learned:
    """Names as they are compared, each with the measure it was said to mean; own measures count too."""

    id: str = LEARNED
    names: dict[str, str] = field(default_factory=dict)
