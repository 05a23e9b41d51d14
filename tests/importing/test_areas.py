from __future__ import annotations

from functools import partial

from sizekeeper.importing.areas import area_words, with_orientation
from sizekeeper.importing.setting import with_area, with_corrections, without_areas
from tests.importing.charts import BODY, after, opened

STACKED = "Body (cm)|S|M / Bust|82|88 / Waist|64|70 /  / Finished (cm)|S|M / Bust|90|96 / Waist|72|78"
SQUARE = "Body (cm)|S|M / Bust|82|88 / Waist|64|70"


def test_a_rectangle_is_said_as_in_a_spreadsheet() -> None:
    assert area_words((0, 1, 8, 5)) == "B1:F9"


def test_only_the_marked_cells_are_read() -> None:
    fixed = after(opened(STACKED), partial(with_area, sheet="Sheet1", box=(4, 0, 6, 2), beside_others=False))
    assert [table.kind for table in fixed.tables] == ["finished"]


def test_another_marked_rectangle_joins_the_first() -> None:
    first = after(opened(STACKED), partial(with_area, sheet="Sheet1", box=(4, 0, 6, 2), beside_others=False))
    both = after(first, partial(with_area, sheet="Sheet1", box=(0, 0, 2, 2), beside_others=True))
    assert sorted(table.kind for table in both.tables) == ["body", "finished"]


def test_a_new_table_takes_the_place_of_those_marked_before() -> None:
    first = after(opened(STACKED), partial(with_area, sheet="Sheet1", box=(4, 0, 6, 2), beside_others=False))
    other = after(first, partial(with_area, sheet="Sheet1", box=(0, 0, 2, 2), beside_others=False))
    assert [table.kind for table in other.tables] == ["body"]


def test_looking_everywhere_finds_what_was_not_marked() -> None:
    first = after(opened(STACKED), partial(with_area, sheet="Sheet1", box=(4, 0, 6, 2), beside_others=False))
    assert len(after(first, partial(without_areas, sheet="Sheet1")).tables) == 2


def test_a_table_can_be_read_the_other_way_round() -> None:
    before = opened(SQUARE)
    turned = with_orientation(before, before.tables[0], "sizes_in_rows")
    fixed = after(before, partial(with_corrections, corrections=turned))
    assert [before.tables[0].orientation, fixed.tables[0].orientation] == ["measures_in_rows", "sizes_in_rows"]


def test_turning_one_of_two_tables_leaves_the_other_as_it_was() -> None:
    before = opened(STACKED)
    turned = with_orientation(before, before.tables[1], "sizes_in_rows")
    fixed = after(before, partial(with_corrections, corrections=turned))
    assert [table.orientation for table in fixed.tables] == ["measures_in_rows", "sizes_in_rows"]


def test_tables_that_share_their_labels_are_turned_together() -> None:
    shared = "|Body (cm)|Body (cm)|Finished (cm)|Finished (cm) / Size|S|M|S|M / Bust|82|88|90|96 / Waist|64|70|72|78"
    before = opened(shared)
    turned = with_orientation(before, before.tables[0], "measures_in_rows")
    assert turned.areas == {"Sheet1": (("A1:E4", "measures_in_rows"),)}


def test_the_marked_area_stays_when_its_table_is_turned() -> None:
    first = after(opened(BODY), partial(with_area, sheet="Sheet1", box=(0, 0, 2, 2), beside_others=False))
    turned = with_orientation(first, first.tables[0], "sizes_in_rows")
    assert turned.areas == {"Sheet1": (("A1:C3", "sizes_in_rows"),)}
