"""What a comparison of a person and a pattern says. Every number of the verdict can be read off here."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from sizekeeper.core.preference import Band

Mode = Literal["my", "designer", "body"]
FitRole = Literal["lead", "counted", "free", "adjustable"]
Edges = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class BodyFigure:
    """A body measure that the fit is judged by, in cm, and how far it may be off."""

    cm: float
    tolerance_cm: float


@dataclass(frozen=True, slots=True)
class RegionAt:
    """One region at one position on the size run; cm. None where the charts or the mode do not say.

    `diff_cm` is the ease given minus the ease asked for (in body and designer's mode chart body minus body).
    `short_cm` is how much the garment, stretched, is smaller than the body.
    """

    finished_cm: float | None
    chart_cm: float | None
    ease_cm: float | None
    asked_cm: float | None
    diff_cm: float | None
    loss: float | None
    band: Band | None
    short_cm: float | None
    interpolated: bool = False


@dataclass(frozen=True, slots=True)
class RegionFit:
    """A region at which fit is judged, and how it counts.

    `safe_down_cm` and `safe_up_cm` say how much smaller or larger the body may really be before another listed size
    is best; None when 15 cm change nothing. `hangs_clear_cm` is the least ease of a girth that was left free because
    it hangs clear of the body at every listed size. `role_given` tells whether the role was set rather than found.
    """

    measure: str
    body_cm: float
    asked_cm: float | None
    weight: int
    role: FitRole
    edges: Edges
    tolerance_cm: float
    safe_down_cm: float | None
    safe_up_cm: float | None
    hangs_clear_cm: float | None = None
    role_given: bool = False
    own: bool = False


@dataclass(frozen=True, slots=True)
class Between:
    """Where a line between two neighbouring listed sizes runs; `mm_from_lower` is measured at each edge."""

    lower: str
    upper: str
    fraction: float
    mm_from_lower: float


@dataclass(frozen=True, slots=True)
class Candidate:
    """A listed size, or a drawable position between two, with its fit. `rank` counts from 1."""

    rank: int
    label: str
    position: float
    between: Between | None
    misfit_cm: float | None
    wearable: bool
    tied: bool
    missing: tuple[str, ...]
    flags: tuple[str, ...]
    regions: Mapping[str, RegionAt]


@dataclass(frozen=True, slots=True)
class Verdict:
    """What to cut: one listed size, a line between two, or another size at another level."""

    kind: Literal["straight", "between", "blend"]
    label: str
    position: float


@dataclass(frozen=True, slots=True)
class Blend:
    """Another size at another level: the position for each level, and its misfit over these levels."""

    positions: Mapping[str, float]
    labels: Mapping[str, str]
    misfit_cm: float
    single_misfit_cm: float
    offered: bool
    flags: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LeftOut:
    """A measure at which fit could not be judged, and why.

    `expected` is false where nobody would look for it: the garment does not reach there, and its charts do not ask.
    """

    measure: str
    reason: Literal["no_finished", "no_chart", "no_measurement", "half_width_suspected"]
    expected: bool = True


@dataclass(frozen=True, slots=True)
class Fit:
    """The whole comparison. `labels` are the listed sizes in order; positions count along them from 0.

    `tied` are the labels of listed sizes that become first within the tolerance of one region, with that region, the
    shift of the body measure in cm at which it happens (negative: smaller) and the label.
    """

    mode: Mode
    labels: tuple[str, ...]
    verdict: Verdict
    chart_says: Mapping[str, str]
    regions: tuple[RegionFit, ...]
    candidates: tuple[Candidate, ...]
    best_position: float | None
    blend: Blend | None
    left_out: tuple[LeftOut, ...]
    flags: tuple[str, ...]
    ties: tuple[tuple[str, float, str], ...] = ()
    stretch: float = 0.0
    listed: Mapping[str, Mapping[str, RegionAt]] = field(default_factory=dict)

    def candidate(self, label: str) -> Candidate | None:
        """The candidate with a label, None where there is none."""
        return next((c for c in self.candidates if c.label == label), None)
