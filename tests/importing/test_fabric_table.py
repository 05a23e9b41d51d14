from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.piece import FabricLine
from sizekeeper.errors import ReadError
from sizekeeper.importing.fabric_table import FabricTable, merged, read_fabric_file, read_fabric_text
from tests.core.paper import inches, long

if TYPE_CHECKING:
    from pathlib import Path

INCHES = FabricTable("The envelope", "in", ("8", "10", "S"), ("A", "B"))
METRIC = FabricTable("The envelope", "cm", ("8", "10"))


def read(text: str, table: FabricTable = INCHES) -> list[tuple[object, ...]]:
    lines = read_fabric_text(text, table)
    return [(line.width.exact_cm, line.length.exact_cm, line.size, line.view, line.nap) for line in lines]


def test_widths_stand_at_the_left_sizes_above_and_lengths_are_in_yards() -> None:
    assert read("Width\t8\t10\n45\t3 1/8\t3 1/4\n60\t2\t-") == [
        (inches("45"), inches("112 1/2"), "8", "", False),
        (inches("45"), inches("117"), "10", "", False),
        (inches("60"), inches("72"), "8", "", False),
    ]


def test_in_centimetres_the_lengths_are_in_metres() -> None:
    assert read("Width,8,10\n150,2.2,2.3", METRIC) == [(150, 220, "8", "", False), (150, 230, "10", "", False)]


def test_units_that_are_written_count() -> None:
    assert read("Width\t8\n115 cm\t3 m") == [(115, 300, "8", "", False)]
    assert read("Length in metres\t8\n45\t3") == [(inches("45"), 300, "8", "", False)]
    assert read("Yards of fabric\nWidth\t8\n150\t2", METRIC) == [(150, inches("72"), "8", "", False)]


def test_without_a_row_of_sizes_the_length_is_for_all() -> None:
    assert read("45\t3") == read("Width\tAll sizes\n45\t3") == [(inches("45"), inches("108"), "", "", False)]


def test_a_nap_is_read_and_the_other_unit_in_brackets_left_out() -> None:
    found = read('Width\t8\n45" (115 cm) with nap\t3\n45" without nap\t2')
    assert [(width, nap) for width, *_, nap in found] == [(inches("45"), True), (inches("45"), False)]


def test_a_row_of_its_own_names_the_view_of_those_below() -> None:
    assert [view for *_, view, _ in read("Width\t8\nView A\n45\t3\nB\n45\t2")] == ["A", "B"]


def test_a_size_is_called_as_the_pattern_calls_it() -> None:
    assert read("Width\ts\n45\t3")[0][2] == "S"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        ("", "“The envelope” holds no table of fabric"),
        ("Width\t8\nsome\t3", "“The envelope”, A2: “some” is no width"),
        ("Width\t8\n45\tthree", "“The envelope”, B2: “three” is not a length."),
        ("Width\t8\n45\t250", "“The envelope”, B2: 250 yd is no length of fabric"),
        ("Width\t8\n450\t2", "“The envelope”, A2: 450 in is no width of a fabric"),
        ("Width\t8\n45 cm\t2", "“The envelope”, A2: 45 cm is no width of a fabric"),
        ("Width\t8\n45\t-2", "“The envelope”, B2: -2 yd is no length"),
        ("45\t3\t4", "“The envelope”, C1: this column has no size above it"),
        ("Width\t8\n45\t3\n45 in\t2", "“The envelope”, B3: this width and size stand in the table twice."),
        ("Width\t8\n45\t3\nLining", "“The envelope”, A3: “Lining” is neither a fabric’s width"),
        ("Yards or metres\t8\n45\t3", "“The envelope”, A1: the lengths are in yards or in metres"),
    ],
)
def test_what_is_unclear_is_refused_by_its_cell(text: str, sentence: str) -> None:
    with pytest.raises(ReadError) as refused:
        read(text)
    assert str(refused.value).startswith(sentence)


def test_a_file_is_read_like_a_text(tmp_path: Path) -> None:
    (tmp_path / "fabric.csv").write_text("Width;8;10\n45;3 1/8;3 1/4\n", encoding="utf-8")
    found = read_fabric_file(tmp_path / "fabric.csv", FabricTable("fabric.csv", "in"))
    assert [line.length.text for line in found] == ["3 1/8", "3 1/4"]


def test_lines_read_again_replace_the_old_and_leave_the_others() -> None:
    old, other = FabricLine(long("45 in"), long("3 yd"), "8"), FabricLine(long("60 in"), long("2 yd"), "8")
    new = FabricLine(long("45 in"), long("3 1/2 yd"), "8")
    assert merged((old, other), (new,)) == (new, other)
