"""Where everything stands on the first page of a workbook, and the formulas that tie it together.

A size takes a pair of columns: in the first block its ease and its band, in the next its finished figure and how far
that is off what is asked for. All formulas are in the unit of the page, and values nearer than a millionth of a
centimetre count as equal, as everywhere in the program.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from openpyxl.utils import get_column_letter  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.core.ease import SAME
from sizekeeper.core.length import CM_PER
from sizekeeper.core.misfit import SHORT_TIMES
from sizekeeper.core.result import Mode
from sizekeeper.core.verdict import WORTH_CM

if TYPE_CHECKING:
    from sizekeeper.core.notation import Notation
    from sizekeeper.reports.sheet import SheetTable

HEADING, TOP = 5, 7
"""The row of the sizes, and the first row below the frozen ones."""
FIRST_SIZE = 5
"""The column of the first size; before it stand region, body, ease asked for, and how the region counts."""
_LACKING, _UNWEARABLE, _UNKNOWN = 2000, 1000, 9000
"""What is added to a size's misfit to rank it behind all others; a misfit is never as large."""


@dataclass(frozen=True, slots=True)
class Places:
    """The rows of the blocks and the columns of the sizes.

    Each block has a row a region and its heading in the row before. `off` and `closes` are the rows below the first
    block; `printed` is the block of finished figures, 0 in body mode; `chart` that of the body chart, 0 in my mode.
    """

    mode: Mode
    regions: int
    sizes: int
    per: float
    stretch: float

    @property
    def off(self) -> int:
        """The row of the misfits."""
        return TOP + self.regions

    @property
    def closes(self) -> int:
        """The row that says where a size will not close."""
        return self.off + 1

    @property
    def notes(self) -> int:
        """The first of two rows of notes."""
        return self.closes + 2

    @property
    def printed(self) -> int:
        """The first row of the finished figures, 0 where there are none."""
        return 0 if self.mode == "body" else self.notes + 4

    @property
    def chart(self) -> int:
        """The first row of the body chart, 0 where sizes are not judged by it."""
        if self.mode == "my":
            return 0
        return self.notes + 4 if self.mode == "body" else self.printed + self.regions + 2

    @property
    def edges(self) -> int:
        """The first row of the band edges and weights."""
        return max(self.printed, self.chart) + self.regions + 2

    @property
    def working(self) -> int:
        """The first row of what each region adds to the misfit."""
        return self.edges + self.regions + 2

    @property
    def standing(self) -> int:
        """The row that ranks the sizes."""
        return self.working + self.regions

    @property
    def last_column(self) -> int:
        """The last column of the last size."""
        return FIRST_SIZE + 2 * self.sizes - 1

    @property
    def near(self) -> str:
        """What counts as equal, in the unit of the page."""
        return number(SAME / self.per)

    def column(self, size: int, half: int) -> int:
        """The column of a size's first (0) or second (1) half."""
        return FIRST_SIZE + 2 * size + half

    def at(self, size: int, half: int, row: int) -> str:
        """The cell of a size in a row: `F12`."""
        return f"{get_column_letter(self.column(size, half))}{row}"

    def span(self, size: int, half: int, first: int) -> str:
        """The cells of a size in a block: `F12:F14`."""
        return f"{self.at(size, half, first)}:{self.at(size, half, first + self.regions - 1)}"


def places_of(table: SheetTable, notation: Notation) -> Places:
    """Where everything stands for a table in a notation."""
    per = float(CM_PER[notation.unit])
    return Places(table.mode, len(table.rows), len(table.columns), per, table.stretch)


def number(value: float) -> str:
    """A number as formulas have it, with every digit."""
    return f"{value:.17g}".upper()


def ease(p: Places, size: int, region: int) -> str:
    """Finished minus body."""
    printed, body = p.at(size, 0, p.printed + region), f"$B{TOP + region}"
    return f'=IF(AND(ISNUMBER({printed}),ISNUMBER({body})),{printed}-{body},"")'


def band(p: Places, size: int, region: int) -> str:
    """The word of the band that the ease lies in."""
    here, edges = p.at(size, 0, TOP + region), p.edges + region
    a, b, c = (f"{here}<${letter}${edges}-{p.near}" for letter in "BCD")
    return f'=IF(ISNUMBER({here}),IF({a},"tight",IF({b},"close",IF({c},"easy","loose"))),"")'


def difference(p: Places, size: int, region: int) -> str:
    """What is given minus what is asked for: by the finished figure, or by the body chart and its range."""
    body = f"$B{TOP + region}"
    if p.mode == "my":
        printed, asked = p.at(size, 0, p.printed + region), f"$C{TOP + region}"
        return f'=IF(AND(ISNUMBER({printed}),ISNUMBER({body}),ISNUMBER({asked})),{printed}-{body}-{asked},"")'
    low, high = (p.at(size, half, p.chart + region) for half in (0, 1))
    known = f"AND(ISNUMBER({low}),ISNUMBER({high}),ISNUMBER({body}))"
    return f'=IF({known},MAX({low}-{body},0)+MIN({high}-{body},0),"")'


def difference_cell(p: Places, size: int, region: int) -> str:
    """Where the difference stands."""
    return p.at(size, 0, TOP + region) if p.mode == "body" else p.at(size, 1, p.printed + region)


def loss(p: Places, size: int, region: int) -> str:
    """What a region adds: its weight times the square, what is short twice as long, and no surplus that is taken up."""
    d, row = difference_cell(p, size, region), p.edges + region
    times = number(SHORT_TIMES**2)
    return f"=IF(ISNUMBER({d}),$E${row}*IF({d}<0,{times},IF($F${row}=1,0,1))*{d}^2,0)"


def weighed(p: Places, size: int, region: int) -> str:
    """How much a region counts at a size: its weight, nothing where its figure is missing."""
    return f"=IF(ISNUMBER({difference_cell(p, size, region)}),$E${p.edges + region},0)"


def misfit(p: Places, size: int) -> str:
    """The root of the weighted mean of what the regions add."""
    losses, weights = p.span(size, 0, p.working), p.span(size, 1, p.working)
    return f'=IF(SUM({weights})>0,SQRT(SUM({losses})/SUM({weights})),"")'


def _goes_round(p: Places, size: int, region: int) -> str:
    printed, body = p.at(size, 0, p.printed + region), f"$B{TOP + region}"
    stretched = f"{printed}*{number(1 + p.stretch)}" if p.stretch else printed
    return f"{stretched}>={body}-{p.near}"


def closes(p: Places, size: int, must: list[int]) -> str:
    """The names of the regions at which a size will not close."""
    said = [
        f'IF(ISNUMBER({p.at(size, 0, p.printed + r)}),IF({_goes_round(p, size, r)},"",", "&$A{TOP + r}),"")'
        for r in must
    ]
    return f"=MID({'&'.join(said)},3,999)" if said else '=""'


def standing(p: Places, size: int, gated: list[int]) -> str:
    """What ranks a size: its misfit, behind all others where it cannot be worn, further where a figure is missing."""
    off, edges = p.at(size, 0, p.off), f"$E${p.edges}:$E${p.edges + p.regions - 1}"
    lacking = f"IF(SUM({p.span(size, 1, p.working)})<SUM({edges}),{_LACKING},0)"
    tests = [
        f"IF(ISNUMBER({p.at(size, 0, p.printed + r)}),{_goes_round(p, size, r)},FALSE)" for r in gated if p.printed
    ]
    worn = f"IF(AND({','.join(tests)}),0,{_UNWEARABLE})" if tests else "0"
    return f"=IF(ISNUMBER({off}),{off},{_UNKNOWN})+{lacking}+{worn}"


def place_if_best(p: Places, size: int, rivals: list[int]) -> str:
    """A size's own number where it is the best of its kind, else 0; of equals the largest counts."""
    here = p.at(size, 0, p.standing)
    return f"=IF({here}<={_least(p, rivals)}+{p.near},{size + 1},0)"


def mark(p: Places, size: int, listed: list[int], between: list[int]) -> str:
    """`best` beside the size that is: a line between two sizes only where it is better by a centimetre or more."""
    mine, others = (between, listed) if size in between else (listed, between)
    first = f"{p.at(size, 1, p.standing)}=MAX({_all(p, mine, 1)}),{p.at(size, 1, p.standing)}>0"
    if not others:
        return f'=IF(AND({first}),"best","")'
    line, whole = _least(p, between), _least(p, listed)
    worth = number(WORTH_CM / p.per)
    better = f"AND({line}<{whole},MOD({line},1000)<=MOD({whole},1000)-{worth}+{p.near})"
    return f'=IF(AND({first},{better if size in between else f"NOT({better})"}),"best","")'


def _least(p: Places, sizes: list[int]) -> str:
    return f"MIN({_all(p, sizes, 0)})"


def _all(p: Places, sizes: list[int], half: int) -> str:
    return ",".join(p.at(size, half, p.standing) for size in sizes)
