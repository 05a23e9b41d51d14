"""Everything that was recognised can be set right by hand and read again."""

from __future__ import annotations

from sizekeeper.importing.draft import Corrections, Draft
from sizekeeper.importing.read import read_sheets, read_text

TEXT = "Size,S,M,L\nChest,48,51,54\nCuff,20,21,22\n"


def again(draft: Draft, corrections: Corrections) -> Draft:
    return read_sheets(list(draft.sheets), corrections, draft.source)


def test_nothing_changes_when_nothing_is_corrected() -> None:
    draft = read_text(TEXT)
    assert again(draft, Corrections()) == draft


def test_a_corrected_unit_and_kind_are_no_longer_in_question() -> None:
    draft = read_text(TEXT)
    key = draft.tables[0].key
    told = again(draft, Corrections(kinds={key: "finished"}, units={key: "cm"}))
    assert (told.tables[0].kind, told.tables[0].unit) == ("finished", "cm")
    assert not {"unit_inferred", "kind_inferred"} & {flag.code for flag in told.flags}


def test_a_row_corrected_to_half_is_doubled_and_no_longer_suspected() -> None:
    draft = read_text(TEXT)
    key = draft.tables[0].key
    told = again(draft, Corrections(units={key: "cm"}, written_as={("Sheet1", "A2"): "half"}))
    assert told.tables[0].rows[0].cm == (96.0, 102.0, 108.0)
    assert told.tables[0].rows[0].doubt == ""


def test_a_rows_measure_and_a_sizes_label_are_taken_as_told() -> None:
    draft = read_text(TEXT)
    told = again(draft, Corrections(measures={("Sheet1", "A3"): "wrist"}, sizes={("Sheet1", "B1"): "Small"}))
    assert told.tables[0].rows[1].measure == "wrist"
    assert told.tables[0].labels == ("Small", "M", "L")


def test_a_corrected_cell_is_read_anew_and_an_ignored_one_is_left_out() -> None:
    draft = read_text("Body (cm),S,M,L\nBust,86,29,98\nHip,94,100,106\n")
    told = again(draft, Corrections(cells={("Sheet1", "C2"): "92"}, ignored=frozenset({("Sheet1", "D3")})))
    assert told.tables[0].rows[0].cm == (86.0, 92.0, 98.0)
    assert told.tables[0].rows[1].cm == (94.0, 100.0, None)


def test_an_area_set_by_hand_holds_the_only_table() -> None:
    draft = read_text("Body (cm),S,M\nBust,86,92\n,,\nFinished (cm),S,M\nBust,96,102\n")
    told = again(draft, Corrections(areas={"Sheet1": (("A4:C5", "measures_in_rows"),)}))
    assert [(table.kind, table.rows[0].cells[0].at) for table in told.tables] == [("finished", "B5")]


def test_a_figure_of_a_pasted_line_can_be_corrected() -> None:
    draft = read_text("Body measurements (cm)\nSize 8 10 12\nBust 82 86 90\nHip 90 49 98")
    told = again(draft, Corrections(cells={("Sheet1", "A4#2"): "94"}))
    assert told.tables[0].rows[1].cm == (90.0, 94.0, 98.0)


def test_every_cell_that_was_used_has_a_role() -> None:
    roles = read_text("Guide\n\nBody (cm),S,M\nBust,86,–\nHip,94,100\n\nMind the nap.").roles["Sheet1"]
    assert {at: roles[at] for at in ("A1", "B3", "A4", "B4", "C4", "A7")} == {
        "A1": "title", "B3": "size", "A4": "measure", "B4": "value", "C4": "missing", "A7": "note",
    }  # fmt: skip
