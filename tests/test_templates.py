"""The blank charts to fill in: filled they read without a question, left blank they are said to be blank."""

from __future__ import annotations

import csv
from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.errors import ReadError
from sizekeeper.importing.read import read_file

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.importing.draft import Draft

BODY = {
    "High bust": 85, "Bust": 90, "Chest": 60, "Waist": 72, "High hip": 90, "Hip": 98, "Upper arm": 28, "Thigh": 56,
    "Calf": 36, "Across back": 35, "Back waist length": 41, "Height": 168, "Waist to hip": 20, "Crotch depth": 27,
    "Inseam": 78, "Outseam": 104, "Sleeve length": 58,
}  # fmt: skip
FINISHED = {
    "Bust": 100, "Chest": 70, "Waist": 80, "High hip": 98, "Hip": 106, "Upper arm": 34, "Across back": 38, "Wrist": 22,
    "Sleeve length": 59, "Back length": 95, "Hem": 130, "Skirt length": 60, "Thigh": 62, "Knee": 46, "Calf": 44,
    "Trouser hem": 42, "Front rise": 28, "Back rise": 37, "Inseam": 79, "Outseam": 105, "Garment length": 60,
}  # fmt: skip
"""Invented figures of a first size; each further size is four more at girths, a half more elsewhere."""

MEASURE = {"Chest": "bust", "Back length": "garment_back_length"}
GIRTHS = {"Chest", "High bust", "Bust", "Waist", "High hip", "Hip", "Hem"}
SLUGS = ["dress-top", "skirt", "trousers", "jacket-coat", "child"]
SIZES = ["10", "12", "14", "16"]


def row_of(label: str, finished: dict[str, float] | dict[str, int]) -> list[float]:
    step = 4 if label in GIRTHS else 0.5
    return [finished[label] + i * step for i in range(len(SIZES))]


def filled_rows(rows: list[list[str]]) -> list[list[str | float]]:
    """A template's rows with sizes and figures written in."""
    out: list[list[str | float]] = []
    figures = BODY
    for row in rows:
        label = row[0]
        figures = FINISHED if label.startswith("Finished") else figures
        if label == "Size":
            out.append([label, *SIZES])
        elif label in figures:
            out.append([label, *row_of(label, figures)])
        else:
            out.append(list(row))
    return out


def template_rows(slug: str) -> list[list[str]]:
    with assets.chart_file("templates", f"{slug}.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.reader(file))


def fill_csv(slug: str, path: Path) -> None:
    with path.open("w", encoding="utf-8", newline="") as file:
        csv.writer(file).writerows(filled_rows(template_rows(slug)))


def fill_xlsx(slug: str, path: Path) -> None:
    from openpyxl import load_workbook  # noqa: PLC0415 - heavy, loaded inside functions everywhere

    book = load_workbook(assets.chart_file("templates", f"{slug}.xlsx"))
    sheet = book.active
    assert sheet is not None
    rows = [["" if cell is None else str(cell) for cell in row] for row in sheet.iter_rows(values_only=True)]
    for r, row in enumerate(filled_rows(rows), start=1):
        for c, value in enumerate(row, start=1):
            if value != "":
                sheet.cell(r, c).value = value
    book.save(path)


def read_filled(slug: str, ending: str, folder: Path) -> Draft:
    path = folder / f"{slug}.{ending}"
    (fill_csv if ending == "csv" else fill_xlsx)(slug, path)
    return read_file(path)


def labels(slug: str, heading: str) -> list[str]:
    """The measures a template lists below one of its headings."""
    rows = [row[0] for row in template_rows(slug)]
    start = next(i for i, label in enumerate(rows) if label.startswith(heading)) + 2
    block = rows[start:]
    return block[: block.index("")] if "" in block else block


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@pytest.mark.parametrize("slug", SLUGS)
def test_a_filled_template_reads_as_a_body_and_a_finished_chart(slug: str, ending: str, tmp_path: Path) -> None:
    body, finished = read_filled(slug, ending, tmp_path).tables

    assert (body.kind, body.unit, list(body.labels)) == ("body", "cm", SIZES)
    assert (finished.kind, finished.unit, list(finished.labels)) == ("finished", "cm", SIZES)


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@pytest.mark.parametrize("slug", SLUGS)
def test_every_row_of_a_filled_template_is_known_and_keeps_its_figures(slug: str, ending: str, tmp_path: Path) -> None:
    body, finished = read_filled(slug, ending, tmp_path).tables

    for table, heading, figures in ((body, "Body", BODY), (finished, "Finished", FINISHED)):
        expected = [(MEASURE.get(n, n.lower().replace(" ", "_")), row_of(n, figures)) for n in labels(slug, heading)]
        assert [(row.measure, list(row.cm)) for row in table.rows] == expected


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@pytest.mark.parametrize("slug", SLUGS)
def test_a_filled_template_leaves_no_question_open(slug: str, ending: str, tmp_path: Path) -> None:
    codes = {flag.code for flag in read_filled(slug, ending, tmp_path).flags}

    assert codes <= {"multi_table", "title_block", "trailing_note"}


@pytest.mark.parametrize("ending", ["csv", "xlsx"])
@pytest.mark.parametrize("slug", SLUGS)
def test_a_blank_template_is_said_to_hold_no_chart(slug: str, ending: str) -> None:
    with pytest.raises(ReadError, match=rf"“{slug}\.{ending}”"):
        read_file(assets.chart_file("templates", f"{slug}.{ending}"))


@pytest.mark.parametrize("slug", SLUGS)
def test_both_forms_of_a_template_ask_for_the_same(slug: str) -> None:
    from openpyxl import load_workbook  # noqa: PLC0415 - heavy, loaded inside functions everywhere

    sheet = load_workbook(assets.chart_file("templates", f"{slug}.xlsx")).active

    assert sheet is not None
    first = ["" if row[0] is None else str(row[0]) for row in sheet.iter_rows(values_only=True)]
    assert first == [row[0] for row in template_rows(slug)]
    assert sheet.freeze_panes == "B5"


@pytest.mark.parametrize("slug", SLUGS)
def test_a_template_names_each_measure_once_and_by_a_name_we_know(slug: str) -> None:
    for heading, use in (("Body", "finished"), ("Finished", "body")):
        names = labels(slug, heading)
        known = {n.casefold() for m in assets.measures() if m.use != use for n in m.synonyms["en"]}
        assert len(set(names)) == len(names)
        assert {name.casefold() for name in names} <= known
