"""The decision sheet as a plain document value: everything that stands on it, said in her units, before any format.

The writers (`pdf.py`, `webpage.py`, `workbook.py`, `table_text.py`) lay it out; none of them works anything out. What
people typed (names, notes, labels, reasons) stands here as it was typed: each writer makes it harmless for its format.
"""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

if TYPE_CHECKING:  # nothing reads the annotations of a sheet when the program runs
    from sizekeeper.core.notation import Notation  # noqa: TC004 - as above
    from sizekeeper.core.preference import Band  # noqa: TC004 - as above
    from sizekeeper.core.result import Edges, Mode  # noqa: TC004 - as above

Paper = Literal["a4", "us-letter"]


@dataclass(frozen=True, slots=True)
class SheetCell:
    """One region in one size. The texts are in her notation without the unit, "–" where nothing is known.

    The numbers are cm. `printed` is the figure to check against the envelope, in the envelope's notation. `short` is ""
    where it closes, else says so ("short by 8 mm"). `chart_cm` is what the body chart gives for the size, from and to,
    where a size is judged by it (body and designer's mode).
    """

    amount: str
    printed: str
    band: Band | None
    amount_cm: float | None
    printed_cm: float | None
    short: str = ""
    interpolated: bool = False
    chosen: bool = False
    chart_cm: tuple[float, float] | None = None


@dataclass(frozen=True, slots=True)
class SheetRow:
    """One region: her body figure, the ease asked for, where the bands begin, and a cell a column.

    `edges_share` holds the edges as shares of the body (a knit's), None where they are fixed lengths; `asked_share` is
    the part of the ease asked for that goes with the body. `role` is said in words ("choose size by", "must fit",
    "hangs free", "gathers or elastic"); `weight` is how much the region counts, and `adjustable` says that too much
    does no harm there. On a private sheet `body`, `asked` and the cells' amounts are "", their numbers None and the
    edges nothing, so that the body figure cannot be worked out.
    """

    measure: str
    name: str
    body: str
    body_cm: float | None
    asked: str
    asked_cm: float | None
    role: str
    edges_cm: Edges
    edges_share: Edges | None
    cells: tuple[SheetCell, ...]
    asked_share: float = 0.0
    weight: int = 1
    adjustable: bool = False


@dataclass(frozen=True, slots=True)
class SheetColumn:
    """A size across the top: its words ("38", "between 38 and 40, halfway") and whether it is the one to cut.

    `between` tells a line drawn between two sizes from a listed size. `short` are its words for a narrow heading, on
    two lines, the second mostly "" ("38–40", "halfway"); both "" where the words are short enough.
    """

    words: str
    chosen: bool = False
    between: bool = False
    short: tuple[str, str] = ("", "")


@dataclass(frozen=True, slots=True)
class SheetTable:
    """The ease table. `what` says in one sentence what its figures are. `left_out` counts sizes that are not shown.

    `stretch` is the share the fabric stretches to comfortable resistance. `bust_on_top` says that the plan adds at the
    bust what these figures do not hold.
    """

    mode: Mode
    what: str
    columns: tuple[SheetColumn, ...]
    rows: tuple[SheetRow, ...]
    left_out: int = 0
    stretch: float = 0.0
    bust_on_top: bool = False


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """The plan that is shown: its title, what it says line by line, and, once decided, why and against what."""

    title: str
    decided: bool
    lines: tuple[str, ...] = ()
    reason: str = ""
    advised: str = ""
    on: dt.date | None = None


@dataclass(frozen=True, slots=True)
class SheetStep:
    """One thing to do to one piece, with a box to tick. `key` is what its tick refers to."""

    key: str
    piece: str
    words: str
    done: bool = False


@dataclass(frozen=True, slots=True)
class SheetPart:
    """A part of the work list, in the order of work: Trace, Length, Width, Matching pieces."""

    title: str
    steps: tuple[SheetStep, ...]


@dataclass(frozen=True, slots=True)
class SheetPiece:
    """A piece to trace, with a box to tick: its name, how it is cut, its size, and whether it needs more than that."""

    key: str
    name: str
    cut: str
    size: str
    changed: bool = False


@dataclass(frozen=True, slots=True)
class SheetFigures:
    """Figures the sheet rests on: a title, the words across the top, and rows of a name and its texts."""

    title: str
    across: tuple[str, ...]
    rows: tuple[tuple[str, tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Sheet:
    """A decision sheet for one person and one pattern.

    `key` tells sheets apart (for the ticks a browser keeps). `notation` is hers, `envelope` the pattern's. `private`
    says that no body measurement stands on it, nor can one be worked out. `toile` are the places to write in what a
    toile shows.
    """

    key: str
    person: str
    pattern: str
    publisher: str
    view: str
    on: dt.date
    notation: Notation
    envelope: Notation
    verdict: str
    doubts: tuple[str, ...]
    table: SheetTable
    plan: SheetPlan | None
    work: tuple[SheetPart, ...]
    trace: tuple[SheetPiece, ...]
    measure_again: tuple[str, ...]
    toile: tuple[str, ...]
    cautions: tuple[str, ...]
    figures: tuple[SheetFigures, ...]
    private: bool = False
