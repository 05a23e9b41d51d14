"""The cells of the household's tables: what is painted, what they are sorted by, and what is said of them."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from sizekeeper.core.preference import Band

Order = tuple[int, float, str]
"""What a cell is sorted by: what has no value comes last, numbers by size, words by the alphabet."""

Mark = Literal["", "cut", "from", "to"]
"""How what is to be cut stands to a size: it is the size, or it lies between the size and the next one up or down."""

NOWHERE: Order = (1, 0.0, "")


@dataclass(frozen=True, slots=True)
class Swatch:
    """One region in a strip: its short name, and the band at what is to be cut, None where no ease is known."""

    name: str
    band: Band | None


@dataclass(frozen=True, slots=True)
class HouseCell:
    """A cell ready to paint: a text, a smaller note below, and its order; or a band with its amount; or a strip."""

    text: str
    note: str = ""
    order: Order = NOWHERE
    said: str = ""
    strong: bool = False
    band: Band | None = None
    mark: Mark = ""
    strip: tuple[Swatch, ...] = ()


@dataclass(frozen=True, slots=True)
class Heading:
    """What stands over a column; `wide` takes the room that is left, `matrix` columns are the sizes."""

    text: str
    note: str = ""
    said: str = ""
    wide: bool = False
    matrix: bool = False
    strip: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class HouseRow:
    """A row: what it is about, whether it is ticked (None where there is nothing to tick), and its cells."""

    key: str
    cells: tuple[HouseCell, ...]
    ticked: bool | None = None


def by_number(value: float | None) -> Order:
    """The order of a number; none comes last."""
    return NOWHERE if value is None else (0, value, "")


def by_words(text: str) -> Order:
    """The order of a text; an empty one comes last."""
    return (0, 0.0, text.casefold()) if text else NOWHERE
