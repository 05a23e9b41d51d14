from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.fabric import FabricNeed, fabric_need
from sizekeeper.core.make import FabricHad
from sizekeeper.core.piece import FabricLine
from sizekeeper.errors import PlanError
from tests.core.paper import cm, long

TABLE = [
    FabricLine(long("115 cm"), long("3 m"), "38"),
    FabricLine(long("115 cm"), long("3.3 m"), "38", nap=True),
    FabricLine(long("150 cm"), long("2.2 m"), "38"),
    FabricLine(long("150 cm"), long("2.6 m"), "40", "B"),
]


def had(width: str = "150 cm", length: str = "2.5 m", *, shrinks: float = 0.0, nap: bool = False) -> FabricHad:
    return FabricHad(long(width), long(length), shrinks, nap)


def need(fabric: FabricHad, size: str = "38", view: str = "", **more: object) -> FabricNeed:
    found = fabric_need(TABLE, fabric, size, view, **more)  # type: ignore[arg-type]  # as given
    assert found is not None
    return found


def test_the_line_of_the_size_and_the_width_counts() -> None:
    assert (need(had()).needed, need(had()).left) == cm(220, 30)
    assert need(had()).notes == ()


def test_what_is_lengthened_is_added_once_for_each_length_laid_end_to_end() -> None:
    # 220 + 2 x 12 = 244 of 250.
    found = need(had(), longer=Fraction(12), lengths_end_to_end=2)
    assert (found.added, found.needed, found.left) == cm(24, 244, 6)


def test_shortening_saves_nothing_for_certain() -> None:
    assert need(had(), longer=Fraction(-12)).needed == 220


def test_shrinkage_is_reckoned_in_and_said() -> None:
    # What is 220 after losing 12 % was 250 before.
    found = need(had(shrinks=0.12))
    assert (found.needed, found.left) == cm(250, 0)
    assert found.notes == ("shrinkage",)


@pytest.mark.parametrize(
    ("width", "table", "notes"),
    [("140 cm", 300, ("wider_than_table",)), ("90 cm", 300, ("narrower",)), ("160 cm", 220, ("wider_than_table",))],
)
def test_of_several_widths_the_widest_that_the_fabric_reaches_counts(
    width: str, table: int, notes: tuple[str, ...]
) -> None:
    assert need(had(width)).table == table
    assert need(had(width)).notes == notes


def test_a_nap_takes_the_line_for_it() -> None:
    found = need(had("115 cm", nap=True))
    assert found.table == 330
    assert found.notes == ()


def test_a_nap_that_the_table_does_not_reckon_with_is_noted() -> None:
    assert need(had(nap=True), "40", "B").notes == ("nap",)


def test_a_size_that_the_table_does_not_list_has_no_need() -> None:
    assert fabric_need(TABLE, had(), "44") is None
    assert fabric_need(TABLE, had(), "40", "A") is None


def test_a_fabric_cannot_lose_all_of_itself() -> None:
    with pytest.raises(PlanError, match="share below the whole"):
        fabric_need(TABLE, had(shrinks=1.0), "38")
