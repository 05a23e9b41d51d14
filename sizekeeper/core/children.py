"""Children: the size for the girths and the size for the lengths lie apart, and growth goes into the length only.

Growth allowance in length only, kept in tucks or a deep hem, is common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from sizekeeper.core.ease import SAME

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from fractions import Fraction

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.result import BodyFigure

GIRTHS_OF_CHILDREN = ("bust", "waist", "hip")
LENGTHS_OF_CHILDREN = ("height", "back_waist_length")
"""What tells a child's size by the tape, the first that child and chart have."""


@dataclass(frozen=True, slots=True)
class ChildSizes:
    """The listed sizes for a child's girths and lengths, as columns of the chart, and the measures they rest on."""

    girth: int
    girth_by: str
    length: int
    length_by: str

    @property
    def apart(self) -> int:
        """How many sizes longer than wide the child is; negative where shorter."""
        return self.length - self.girth


def child_sizes(body: Mapping[str, BodyFigure], chart: Chart) -> ChildSizes | None:
    """The size for the girths and the one for the lengths, by the body chart; None where either cannot be told.

    The nearest figure counts, of two equally near the larger.
    """
    girth = _by_first(GIRTHS_OF_CHILDREN, body, chart)
    length = _by_first(LENGTHS_OF_CHILDREN, body, chart)
    return None if girth is None or length is None else ChildSizes(*girth, *length)


def _by_first(measures: Sequence[str], body: Mapping[str, BodyFigure], chart: Chart) -> tuple[int, str] | None:
    for measure in measures:
        row = chart.row(measure)
        if measure not in body or row is None or row.doubt:
            continue
        near = [
            (max(low - body[measure].cm, body[measure].cm - high, 0.0), -at)
            for at, (low, high) in enumerate(zip(row.lows(), row.highs(), strict=True))
            if low is not None and high is not None
        ]
        if near:
            least = min(off for off, _ in near)
            return max(-at for off, at in near if off <= least + SAME), measure
    return None


def longer_by(girth_size: Fraction, length_size: Fraction, growth: Fraction) -> Fraction:
    """How much longer a piece of the girth's size is to be, exact cm.

    Args:
        girth_size: the length in the size that is traced for its width.
        length_size: the length in the size that fits the child's height.
        growth: what she adds to grow into, in length only.
    """
    return length_size - girth_size + growth


def tucks(growth: Fraction, depth: Fraction) -> int:
    """How many tucks of a depth take up a growth allowance: a tuck takes up twice its depth; rounded up."""
    return int(-(-growth // (2 * depth))) if growth > 0 else 0
