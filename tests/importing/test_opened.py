from __future__ import annotations

from functools import partial
from pathlib import Path

import pytest

from sizekeeper.core.learned import Learned
from sizekeeper.errors import ReadError
from sizekeeper.importing.opened import headings, likely_title, open_file, open_pasted
from sizekeeper.importing.setting import (
    with_cell,
    with_cells_left_out,
    with_cells_read,
    with_kinds,
    with_measure,
    with_size,
    with_table,
    with_units,
    with_written,
)
from tests.importing.charts import BODY, FLAT, MISSPELT, NO_KIND, NO_TABLE, NO_UNIT, after, opened, texts

LAYOUTS = Path(__file__).parents[1] / "data" / "layouts"
LINES = "Body measurements cm\nSize S M L\nBust 82 88 94\nWaist 64 70 76"
TWO = "Body measurements|S|M / Bust|82|88 /  / Finished measurements (cm)|S|M / Bust|90|96"


def codes(reading: object) -> list[str]:
    return [flag.code for flag in reading.draft.flags]  # type: ignore[attr-defined]  # an Opened


def figures(chart: str, row: int, *changes: object) -> list[str]:
    reading = opened(chart)
    for change in changes:
        reading = after(reading, change)  # type: ignore[arg-type]  # each is a change of the answers
    return [cell.text for cell in reading.draft.tables[0].rows[row].cells]


def test_a_file_opens_with_its_tables_and_its_name() -> None:
    reading = open_file(LAYOUTS / "L07_two_tables_stacked.csv", Learned())
    assert (reading.name, [table.kind for table in reading.tables]) == (
        "L07_two_tables_stacked.csv",
        ["body", "finished"],
    )


def test_a_file_without_a_table_opens_so_that_it_can_be_shown() -> None:
    assert opened(NO_TABLE).tables == ()


def test_a_file_that_is_missing_is_named(tmp_path: Path) -> None:
    with pytest.raises(ReadError, match="“gone"):
        open_file(tmp_path / "gone.csv", Learned())


def test_an_empty_clipboard_is_told_in_words() -> None:
    with pytest.raises(ReadError, match="clipboard"):
        open_pasted("", " \n ", Learned())


def test_a_table_of_a_web_page_goes_before_its_plain_text() -> None:
    html = "<table><tr><td>Body (cm)<td>S<td>M</tr><tr><td>Bust<td>82<td>88</tr></table>"
    assert open_pasted(html, "nothing", Learned()).tables[0].labels == ("S", "M")


def test_html_without_a_chart_leaves_the_plain_text() -> None:
    html = "<table><tr><td>hello</td></tr></table>"
    assert open_pasted(html, texts(BODY), Learned()).tables[0].labels == ("S", "M", "L")


def test_a_figure_of_a_pasted_line_can_be_corrected_by_itself() -> None:
    reading = open_pasted("", LINES, Learned())
    at = reading.tables[0].rows[0].cells[1].at
    fixed = after(reading, partial(with_cell, cell=("Sheet1", at), text="89"))
    assert [cell.text for cell in fixed.tables[0].rows[0].cells] == ["82", "89", "94"]


def test_a_corrected_cell_is_read_with_its_new_text() -> None:
    assert figures(BODY, 0, partial(with_cell, cell=("Sheet1", "C2"), text="89")) == ["82", "89", "94"]


def test_a_cell_that_was_left_out_is_a_gap_until_it_is_taken_back() -> None:
    cells = [("Sheet1", "C2")]
    assert figures(BODY, 0, partial(with_cells_left_out, cells=cells)) == ["82", "", "94"]
    back = partial(with_cells_read, cells=cells)
    assert figures(BODY, 0, partial(with_cells_left_out, cells=cells), back) == ["82", "88", "94"]


def test_typing_into_a_cell_that_was_left_out_reads_it_again() -> None:
    left = partial(with_cells_left_out, cells=[("Sheet1", "C2")])
    assert figures(BODY, 0, left, partial(with_cell, cell=("Sheet1", "C2"), text="90")) == ["82", "90", "94"]


def test_a_size_takes_the_label_typed_for_it() -> None:
    reading = after(opened(BODY), partial(with_size, cell=("Sheet1", "B1"), label="Small"))
    assert reading.tables[0].labels == ("Small", "M", "L")


def test_a_learned_name_is_read_and_said_to_be_learned() -> None:
    reading = opened(MISSPELT, Learned(names={"busst": "hip"}))
    assert (reading.tables[0].rows[0].measure, reading.heard) == ("hip", {("Sheet1", "A2"): "hip"})


def test_a_corrected_measure_is_no_question_any_more() -> None:
    before = opened(MISSPELT)
    fixed = after(before, partial(with_measure, row=("Sheet1", "A2"), measure="bust"))
    assert ("measure_inferred" in codes(before), "measure_inferred" in codes(fixed)) == (True, False)


def test_a_girth_said_to_be_printed_whole_is_doubted_no_more() -> None:
    fixed = after(opened(FLAT), partial(with_written, rows=[("Sheet1", "A6")], written_as="full"))
    assert [row.doubt for row in fixed.tables[1].rows] == ["", "half_width_suspected"]


def test_a_girth_said_to_be_flat_counts_twice() -> None:
    fixed = after(opened(FLAT), partial(with_written, rows=[("Sheet1", "A6")], written_as="half"))
    assert fixed.tables[1].rows[0].cm == (96.0, 102.0, 108.0)


def test_the_unit_is_asked_of_the_table_that_prints_none() -> None:
    reading = opened(TWO)
    assert reading.inferred["unit_inferred"] == {reading.tables[0].key}


def test_a_unit_that_was_set_is_used_and_no_question_any_more() -> None:
    before = opened(NO_UNIT)
    fixed = after(before, partial(with_units, tables=[before.tables[0].key], unit="in"))
    assert (fixed.tables[0].unit, fixed.inferred["unit_inferred"]) == ("in", frozenset())


def test_a_kind_that_was_set_is_used_and_no_question_any_more() -> None:
    before = opened(NO_KIND)
    fixed = after(before, partial(with_kinds, tables=[before.tables[0].key], kind="finished"))
    assert (fixed.tables[0].kind, fixed.inferred["kind_inferred"]) == ("finished", frozenset())


def test_a_table_that_was_left_out_is_not_taken_in_until_it_is_ticked_again() -> None:
    before = opened(TWO)
    left = after(before, partial(with_table, table=before.tables[0].key, taken=False))
    again = after(left, partial(with_table, table=before.tables[0].key, taken=True))
    assert ([t.kind for t in left.taken.tables], len(again.taken.tables)) == (["finished"], 2)


@pytest.mark.parametrize(
    ("name", "title"),
    [("wrap_dress.csv", "wrap dress"), ("Summer-skirt v2.xlsx", "Summer skirt v2"), (".csv", "Imported pattern")],
)
def test_a_file_s_name_in_words_is_the_title_to_begin_with(tmp_path: Path, name: str, title: str) -> None:
    (tmp_path / name).write_text(texts(BODY))
    assert likely_title(open_file(tmp_path / name, Learned())) == title


def test_a_pasted_chart_takes_the_line_above_it_for_its_title() -> None:
    assert likely_title(opened(f"Wrap dress / {BODY}")) == "Wrap dress"


def test_a_pasted_chart_without_a_line_above_it_is_a_pasted_pattern() -> None:
    assert likely_title(opened(NO_TABLE)) == "Pasted pattern"


def test_the_lines_above_a_table_are_its_headings() -> None:
    assert headings(opened(f"Wrap dress / {BODY}"))[0] == "Wrap dress"
