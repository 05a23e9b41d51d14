from __future__ import annotations

from sizekeeper.core.notation import parse_length
from sizekeeper.core.piece import FabricLine
from sizekeeper.ui.pieces_fabric_lines import Cloth, cloths, length_of, with_cloth, with_length

NARROW, WIDE = Cloth(parse_length("115 cm")), Cloth(parse_length("150 cm"))
TWO = parse_length("2 m")
LINES = (
    FabricLine(NARROW.width, parse_length("2.6 m")),
    FabricLine(WIDE.width, TWO, "38"),
    FabricLine(WIDE.width, TWO, "38", view="B"),
)


def test_each_width_is_a_row_of_its_view() -> None:
    assert cloths(LINES, "") == (NARROW, WIDE)
    assert cloths(LINES, "B") == (WIDE,)


def test_the_same_width_written_otherwise_is_the_same_row() -> None:
    assert cloths((*LINES, FabricLine(parse_length("1.5 m"), TWO, "40")), "") == (NARROW, WIDE)


def test_a_width_with_nap_is_a_row_of_its_own() -> None:
    assert cloths((*LINES, FabricLine(WIDE.width, TWO, nap=True)), "") == (NARROW, WIDE, Cloth(WIDE.width, nap=True))


def test_a_length_is_added_changed_and_taken_out() -> None:
    added = with_length(LINES, WIDE, "40", "", parse_length("2.1 m"))
    assert length_of(added, WIDE, "40", "") == parse_length("2.1 m")
    assert length_of(with_length(added, WIDE, "38", "", parse_length("3 m")), WIDE, "38", "") == parse_length("3 m")
    assert with_length(added, WIDE, "40", "", None) == LINES


def test_another_width_moves_the_whole_row_of_this_view_only() -> None:
    after = with_cloth(LINES, WIDE, "", Cloth(parse_length("140 cm")))
    assert [line.width.text for line in after] == ["115 cm", "140 cm", "150 cm"]


def test_a_row_is_taken_out_with_its_lengths() -> None:
    assert with_cloth(LINES, WIDE, "", None) == (LINES[0], LINES[2])
