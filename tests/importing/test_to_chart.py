"""A draft becomes the charts of a pattern, with every figure's text as printed."""

from __future__ import annotations

from fractions import Fraction
from itertools import count
from typing import TYPE_CHECKING

from sizekeeper.core.chart import Size
from sizekeeper.core.length import Length
from sizekeeper.importing.read import read_text
from sizekeeper.importing.to_chart import to_charts

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart


def charts(text: str) -> list[Chart]:
    numbers = count(1)
    return to_charts(read_text(text), "pattern-1", lambda: f"chart-{next(numbers)}")


def test_a_figure_is_exact_and_keeps_its_text() -> None:
    cell = charts("Body (in)\tS\tM\nBust\t34¼\t36-38\n")[0].rows[0].cells
    assert (cell[0].text, cell[0].low and cell[0].low.value, cell[0].low and cell[0].low.unit) == (
        "34¼",
        Fraction(137, 4),
        "in",
    )
    assert (cell[1].low, cell[1].high) == (Length(Fraction(36), "in", "36-38"), Length(Fraction(38), "in", "36-38"))


def test_a_half_width_stays_as_printed_and_says_so() -> None:
    row = charts("Finished (cm),S,M\n½ bust,48,51\n")[0].rows[0]
    assert (row.written_as, row.lows()) == ("half", [96.0, 102.0])


def test_a_suspected_half_width_keeps_its_doubt() -> None:
    assert charts("Finished (cm),S,M\nBust,48,51\n")[0].rows[0].doubt == "half_width_suspected"


def test_each_table_is_a_chart_of_the_pattern_with_an_id_of_its_own() -> None:
    made = charts("Body (cm),S,M\nBust,86,92\n,,\nFinished (cm),S,M\nBust,96,102\n")
    assert [(c.id, c.pattern, c.kind) for c in made] == [
        ("chart-1", "pattern-1", "body"),
        ("chart-2", "pattern-1", "finished"),
    ]


def test_figures_of_a_view_make_a_chart_of_their_own() -> None:
    made = charts("Finished (cm),S,M\nBust,96,102\nLength view A,60,61\nLength view B,90,91\n")
    assert [(c.view, [row.measure for row in c.rows]) for c in made] == [
        ("", ["bust"]), ("A", ["garment_length"]), ("B", ["garment_length"]),
    ]  # fmt: skip


def test_other_names_of_a_size_become_its_aliases() -> None:
    assert charts("UK,8,10\nEU,36,38\nBust (cm),82,86\n")[0].sizes == (Size("8", ("36",)), Size("10", ("38",)))


def test_rows_of_further_variants_do_not_hide_the_first() -> None:
    rows = charts("Body (in),8,10\nInseam (regular),30,30\nInseam (tall),33,33\n")[0].rows
    assert [row.measure for row in rows] == ["inseam", "inseam_tall"]


def test_a_mark_for_no_figure_is_an_empty_cell() -> None:
    cell = charts("Body (cm),S,M,L\nBust,86,–,98\n")[0].rows[0].cells[1]
    assert (cell.text, cell.low, cell.bad) == ("", None, False)
