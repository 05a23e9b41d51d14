"""A plan: one way to get to a garment that fits, with what it gives, what it takes and what is doubtful about it.

The values only; `planning.py` makes them from a comparison and `plan_words.py` says them.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Literal

from sizekeeper.core.make import PlanKind
from sizekeeper.core.preference import Band
from sizekeeper.core.result import FitRole

PER_CHANGE_CM = 0.1
"""What a change weighs beside misfit when plans are put in order, cm (coined; she can set another figure)."""

ChangeKind = Literal["line", "join", "bust"]
DoubtCode = Literal[
    "not_wearable", "short", "past_allowance", "past_range", "extrapolated", "missing", "steep", "tight", "tied",
    "ease_unknown", "interpolated", "by_drafted_difference", "no_dart",
]  # fmt: skip


@dataclass(frozen=True, slots=True)
class PlanChange:
    """One change that is more than tracing.

    A `line` is drawn between two printed ones from `at` on, a `join` leads from one size to another between `at` and
    `to`, a `bust` change opens the front at the bust.
    """

    kind: ChangeKind
    at: str
    to: str = ""


@dataclass(frozen=True, slots=True)
class PlanDoubt:
    """What is doubtful about a plan: where, by how many cm, and the size concerned, as far as the code needs them.

    `short`: will not close at the measure by `cm`, which can be let out; `past_allowance`: and cannot. `tied`:
    `label` is the best if the measure is really `cm` more. `past_range`: the best place of all lies past size `label`.
    """

    code: DoubtCode
    measure: str = ""
    cm: float = 0.0
    label: str = ""


@dataclass(frozen=True, slots=True)
class PlanRegion:
    """What a plan gives in one region; cm, None where it is not known.

    `added_cm` is what the plan's alteration adds to the printed figure; `finished_cm` and all after it include it.
    `take_in_cm` can be taken in afterwards before the tight edge is passed, `let_out_cm` can be let out of the seam
    allowances. `line_mm` is how far the traced line runs outside the smaller size's line at each side-seam edge, None
    on a printed line.
    """

    measure: str
    role: FitRole
    position: float
    finished_cm: float | None
    ease_cm: float | None
    asked_cm: float | None
    diff_cm: float | None
    loss: float | None
    band: Band | None
    short_cm: float | None
    added_cm: float = 0.0
    take_in_cm: float | None = None
    let_out_cm: float | None = None
    line_mm: float | None = None


@dataclass(frozen=True, slots=True)
class BustAdjustment:
    """How much the front is to be widened at the bust, from a size chosen by the high bust.

    `position` is where the high bust lies on the size run, `size` the listed size nearest to it. `amount_cm` goes in
    all round, `half_cm` into each half of the front. `length_cm` is what the front then lacks in length, None where
    no front length tells; the front grows in length in any case. `from_high_bust_row` is False where the drafted
    difference had to stand in. `reached` tells that the garment's own ease does already, `past` that the high bust
    lies so far past the listed sizes that the nearest is not hers: then it makes no plan.
    """

    position: float
    size: int
    label: str
    amount_cm: float
    half_cm: float
    suggested: bool
    reached: bool
    from_high_bust_row: bool
    length_cm: float | None = None
    past: bool = False


@dataclass(frozen=True, slots=True)
class Plan:
    """One way to get there. `position` is where the lead is cut, `levels` the position per level of a blended plan.

    `misfit_cm` counts all regions that count, also in a blended plan; `cost_cm` adds the work and is what plans are
    ordered by. `touched` are the ids of the pieces that need more than tracing, None while no pieces are listed.
    """

    kind: PlanKind
    position: float
    label: str
    regions: Mapping[str, PlanRegion]
    misfit_cm: float | None
    cost_cm: float | None
    wearable: bool
    changes: tuple[PlanChange, ...] = ()
    levels: Mapping[str, float] = field(default_factory=dict)
    touched: tuple[str, ...] | None = None
    doubts: tuple[PlanDoubt, ...] = ()
    missing: tuple[str, ...] = ()
    bust: BustAdjustment | None = None

    @property
    def key(self) -> str:
        """What tells this plan from the others of the same comparison."""
        return f"{self.kind}:{self.label}"


@dataclass(frozen=True, slots=True)
class Plans:
    """Every plan for a person and a pattern, the best first. `labels` are the listed sizes in order."""

    plans: tuple[Plan, ...]
    labels: tuple[str, ...]
    per_change_cm: float = PER_CHANGE_CM

    @property
    def best(self) -> Plan:
        """The plan that the verdict names."""
        return self.plans[0]

    def of(self, kind: PlanKind) -> Plan | None:
        """The plan of a kind, None where there is none."""
        return next((plan for plan in self.plans if plan.kind == kind), None)
