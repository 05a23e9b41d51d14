"""A make: one garment for one person from one pattern, with what was decided, done and found out.

Places on the size run are kept as a size's label and the part of the way to the next, so that they stay true when a
size is added to the chart or taken out.
"""

from __future__ import annotations

import datetime as dt
import math
from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Literal

from sizekeeper.core.length import Length
from sizekeeper.core.piece import Chain, Level
from sizekeeper.core.preference import Garment

if TYPE_CHECKING:
    from collections.abc import Sequence

PlanKind = Literal["straight", "size_below", "size_above", "between", "blended", "bust", "own"]
"""The best listed size; the one below or above it; a line between two sizes; another size at another level; a
straight size with a bust adjustment; a place of her own choice, against advice."""

Sharing = Literal["equal", "by_width"]
Felt = Literal["tight", "right", "loose"]
Progress = Literal["planned", "sewing", "finished", "given_up"]
"""How far a make is: being planned, cut and being sewn, finished, or given up."""
Seams = Literal["both", "one"]


@dataclass(frozen=True, slots=True)
class Place:
    """A place on the size run: a listed size, and the part of the way from it to the next."""

    size: str
    part: Fraction = Fraction(0)


def place_at(position: float, labels: Sequence[str]) -> Place:
    """The place of a position, its part to the hundredth; beyond the ends counted from the end size."""
    lower = min(max(math.floor(position), 0), len(labels) - 1)
    return Place(labels[lower], Fraction(round((position - lower) * 100), 100))


def position_of(place: Place, labels: Sequence[str]) -> float | None:
    """The position of a place, None where its size is no longer listed."""
    return labels.index(place.size) + float(place.part) if place.size in labels else None


@dataclass(frozen=True, slots=True)
class Decision:
    """What she decided to cut. `levels` holds the place per level of a blended plan; `add` what goes in at the bust.

    `reason` is hers, and kept above all when she chose against advice; `advised` is what was advised then, in words.
    """

    kind: PlanKind
    place: Place
    levels: dict[str, Place] = field(default_factory=dict)
    add: Length | None = None
    reason: str = ""
    advised: str = ""
    on: dt.date | None = None


@dataclass(frozen=True, slots=True)
class LengthChoice:
    """How one chain is lengthened or shortened.

    `ease` is the length ease she wants, `wanted` the finished length where she states one instead of the body's
    (sleeve, skirt). `amount` replaces the computed change. `piece` takes the change at the line between or at
    `levels`; empty is the first choice of `lengths.py`. `chain_pieces` are the ids of the pieces whose lengths make
    up the chain, empty for the usual ones.
    """

    chain: Chain
    ease: Length | None = None
    wanted: Length | None = None
    amount: Length | None = None
    piece: str = ""
    levels: tuple[Level, ...] = ()
    chain_pieces: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class WidthChoice:
    """A change of width at a level, all round: wider is positive. `pieces` are the ids of the pieces it is spread over.

    `edges` says at how many edges of a piece the change is made, where it is not one for a piece on the fold and two
    for another.
    """

    level: Level
    amount: Length
    pieces: tuple[str, ...] = ()
    edges: dict[str, int] = field(default_factory=dict)
    sharing: Sharing = "equal"
    reason: str = ""


@dataclass(frozen=True, slots=True)
class Pinned:
    """What a toile showed at one measure (bust, waist ...) or along one chain.

    `found` is the surplus over the body as pinned or measured on it, all round; negative where it was too small.
    `taken` is what she decided to take in, all round; negative where she lets out. `seams` says whether at both side
    seams or at one, `where` the place in her words.
    """

    at: str
    taken: Length | None = None
    found: Length | None = None
    seams: Seams = "both"
    where: str = ""
    felt: Felt | None = None


@dataclass(frozen=True, slots=True)
class ToileRound:
    """One toile, tried on. Each round is kept; its figures are of the toile with the changes of the rounds before.

    `altered` are the changes of width that stood in the worksheet when the round was begun, and so were sewn into the
    toile: all round, by measure, without what earlier toiles asked for. None where that was not noted.
    """

    on: dt.date | None = None
    pinned: tuple[Pinned, ...] = ()
    note: str = ""
    altered: dict[str, Length] | None = None


@dataclass(frozen=True, slots=True)
class FabricHad:
    """The fabric she has: its width and length, the share it loses in washing, and whether it has a nap."""

    width: Length
    length: Length
    shrinks: float = 0.0
    nap: bool = False


@dataclass(frozen=True, slots=True)
class StretchTest:
    """A knit tried at home: a length at rest, and to what it stretches without strain."""

    rest: Length
    stretched: Length


@dataclass(frozen=True, slots=True)
class KeptRegion:
    """One region on the day a make was finished; cm, None where it was not known.

    `ease_cm` is the ease the cut gave from the printed figures, `worn_cm` the ease of the garment as it was sewn, with
    the changes of width and what the toiles showed; `asked_cm` is the ease that was asked for then.
    """

    body_cm: float
    ease_cm: float | None = None
    worn_cm: float | None = None
    asked_cm: float | None = None


@dataclass(frozen=True, slots=True)
class Kept:
    """What a finished make rested on, so that it can be read after her figures or the chart have changed.

    `cut` says in words what was cut, `body` are her figures of that day in cm, by measure. `regions` are empty where
    no plan was decided on, or its size is no longer listed.
    """

    on: dt.date
    cut: str = ""
    garment: Garment = "dress"
    knit: bool = False
    body: dict[str, float] = field(default_factory=dict)
    regions: dict[str, KeptRegion] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Make:
    """One garment made. `ticks` are the keys of the steps of the worksheet that are done.

    `seam_allowance` is the one she sews with, None for the pattern's. `length_size` is the size whose lengths she
    takes, for a child whose height and girth lie in different sizes; `growth` the length she adds to grow into.
    `shoulders` is the girth round both shoulders, where an opening must let them pass. `sleeve_cap` and `armhole` are
    the seam lines of the paper as she measured them, net of allowances, `shoulder_to_waist` from the shoulder's end
    straight down. `laid` is how many of the lengthened pieces lie end to end along the fabric.

    `outcome` is how it turned out in her words, `worn` how it was worn region by region, `next_time` what she would do
    otherwise. `kept` is what it rested on when it was finished.
    """

    id: str
    person: str
    pattern: str
    view: str = ""
    name: str = ""
    decision: Decision | None = None
    lengths: tuple[LengthChoice, ...] = ()
    widths: tuple[WidthChoice, ...] = ()
    rounds: tuple[ToileRound, ...] = ()
    ticks: tuple[str, ...] = ()
    seam_allowance: Length | None = None
    length_size: str = ""
    growth: Length | None = None
    shoulders: Length | None = None
    fabric: FabricHad | None = None
    stretch_test: StretchTest | None = None
    notes: str = ""
    hidden: bool = False
    sleeve_cap: Length | None = None
    armhole: Length | None = None
    shoulder_to_waist: Length | None = None
    laid: int = 2
    progress: Progress = "planned"
    finished_on: dt.date | None = None
    outcome: str = ""
    worn: dict[str, Felt] = field(default_factory=dict)
    next_time: str = ""
    kept: Kept | None = None

    @property
    def open(self) -> bool:
        """Whether it is still worked on: neither finished nor given up."""
        return self.progress in ("planned", "sewing")
