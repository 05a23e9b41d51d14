"""The pieces of a pattern as they lie on the paper: what is cut, how often, and what was measured on it.

Everything is kept as measured, with what the figure includes beside it; `flat.py` and `lengths.py` take allowances,
hems, darts and pleats off. A value that nobody measured is absent, never guessed.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sizekeeper.core.length import Length

Layer = Literal["self", "lining", "underlining", "interfacing"]
LAYERS: tuple[Layer, ...] = ("self", "lining", "underlining", "interfacing")

PieceRole = Literal[
    "front", "back", "side", "yoke", "band", "waistband", "skirt_front", "skirt_back", "leg_front", "leg_back",
    "sleeve", "cuff", "collar", "facing", "placket", "pocket", "guide", "other",
]  # fmt: skip
PIECE_ROLES: tuple[PieceRole, ...] = (
    "front", "back", "side", "yoke", "band", "waistband", "skirt_front", "skirt_back", "leg_front", "leg_back",
    "sleeve", "cuff", "collar", "facing", "placket", "pocket", "guide", "other",
)  # fmt: skip
"""What a piece is. A band is a midriff or a hip yoke between two seams; a guide is paper only (elastic, pleats)."""

Level = Literal["neck", "bust", "waist", "high_hip", "hip", "thigh", "knee", "hem", "sleeve", "wrist"]
LEVEL_ORDER: tuple[Level, ...] = (
    "neck", "bust", "waist", "high_hip", "hip", "thigh", "knee", "hem", "sleeve", "wrist",
)  # fmt: skip
"""The heights a piece can cross, from the top down, then along the arm; `sleeve` is the upper arm."""

LIMB_LEVELS: frozenset[Level] = frozenset({"thigh", "knee", "sleeve", "wrist"})
"""Levels that go round one leg or one arm: of a pair of pieces only one lies round it."""

Chain = Literal["back_waist", "sleeve", "skirt", "inseam", "rise"]
CHAINS: tuple[Chain, ...] = ("back_waist", "sleeve", "skirt", "inseam", "rise")
"""The lengths a garment is fitted by: back neck to waist, shoulder to wrist, waist to hem, inside leg, crotch depth."""


@dataclass(frozen=True, slots=True)
class Along:
    """A length along the grain, of the part of a piece that belongs to one chain.

    `allowances` counts the seam allowances the figure includes (0 to 2); `hem` is the hem allowance it includes and
    `taken` what tucks or folds take up of it. `printed` marks a length listed in the pattern's text rather than
    measured on the paper: only those are multiplied by the print scale.
    """

    chain: Chain
    length: Length
    allowances: int = 0
    hem: Length | None = None
    taken: Length | None = None
    printed: bool = False


@dataclass(frozen=True, slots=True)
class Across:
    """The width of a piece at a level, of the paper as it lies: a piece on the fold is measured to the fold.

    `allowances` counts the seam allowances the figure includes (0 to 2). `darts` and `pleats` are what all darts and
    pleats of the piece take up at this level, `overlap` what runs past the centre (button stand, placket).
    `gathered` marks an edge that is gathered or eased onto a shorter one here.
    """

    level: Level
    width: Length
    allowances: int = 0
    darts: Length | None = None
    pleats: Length | None = None
    overlap: Length | None = None
    gathered: bool = False


@dataclass(frozen=True, slots=True)
class Piece:
    """One pattern piece. `id` is its own within the list; ticks and choices refer to it.

    `around` says how often it goes round the body where the number cut does not: 2 for a yoke cut four times with
    an inner layer. `line` tells whether a lengthen/shorten line is printed on it, `dart` whether it has a bust dart.
    `seam_allowance` is the piece's own where it differs from the pattern's. `view` is the view it is cut for, empty for
    a piece of all views.
    """

    id: str
    name: str
    cut: int = 1
    on_fold: bool = False
    layer: Layer = "self"
    role: PieceRole = "other"
    levels: tuple[Level, ...] = ()
    along: tuple[Along, ...] = ()
    across: tuple[Across, ...] = ()
    line: bool = False
    dart: bool = False
    around: int | None = None
    seam_allowance: Length | None = None
    note: str = ""
    view: str = ""

    def crosses(self, *levels: Level) -> bool:
        """Whether the piece crosses every one of some levels."""
        return all(level in self.levels for level in levels)

    def length(self, chain: Chain) -> Along | None:
        """Its length in a chain, None where nobody measured it."""
        return next((along for along in self.along if along.chain == chain), None)

    def width(self, level: Level) -> Across | None:
        """Its width at a level, None where nobody measured it."""
        return next((across for across in self.across if across.level == level), None)

    def gathered_at(self, level: Level) -> bool:
        """Whether its edge at a level is gathered or eased onto a shorter one."""
        across = self.width(level)
        return across is not None and across.gathered

    def times(self, level: Level) -> int:
        """How often a change of the piece counts around the body, or the limb, at a level; 0 for other layers.

        Cut twice counts twice, on the fold twice; of a pair round a limb one counts. A hem is a limb's where the
        piece crosses the thigh, as that of a trouser leg does.
        """
        if self.layer != "self" or self.role in ("guide", "facing", "pocket", "placket"):
            return 0
        if self.around is not None:
            return self.around
        times = self.cut * (2 if self.on_fold else 1)
        limb = level in LIMB_LEVELS or (level == "hem" and ("thigh" in self.levels or "sleeve" in self.levels))
        return max(1, times // 2) if limb else times


@dataclass(frozen=True, slots=True)
class PrintedSquare:
    """The printed square that shows whether a pattern came out to scale: its side as measured and as it should be."""

    measured: Length
    nominal: Length


@dataclass(frozen=True, slots=True)
class FabricLine:
    """One line of the envelope's table of fabric: the length needed at a fabric width, for a size.

    `size` is a size's label, or empty for all sizes; `view` a view's name, or empty for all.
    """

    width: Length
    length: Length
    size: str = ""
    view: str = ""
    nap: bool = False


Passing = Literal["head", "shoulders", "hips", "hand", "heel"]


@dataclass(frozen=True, slots=True)
class Opening:
    """Where one gets in: the edge that must let a part of the body pass.

    `around` is the finished edge, `fastening` the length of the zip, slit or button placket that opens it,
    `elastic` the edge's girth with its elastic stretched out. `measure` takes the edge from the finished chart
    instead, in the size that is cut.
    """

    name: str
    must_pass: tuple[Passing, ...]
    around: Length | None = None
    measure: str = ""
    fastening: Length | None = None
    elastic: Length | None = None


@dataclass(frozen=True, slots=True)
class Pieces:
    """What is known of a pattern's paper: its pieces, its test square, its table of fabric and its openings.

    `measured_in` is the label of the size along whose lines the pieces were measured, empty where nobody said.
    """

    id: str
    pattern: str
    pieces: tuple[Piece, ...] = ()
    square: PrintedSquare | None = None
    fabric: tuple[FabricLine, ...] = ()
    openings: tuple[Opening, ...] = ()
    measured_in: str = ""

    def piece(self, piece: str) -> Piece | None:
        """A piece by id, None where there is none."""
        return next((one for one in self.pieces if one.id == piece), None)
