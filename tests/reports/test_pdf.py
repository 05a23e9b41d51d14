"""The decision sheet as PDF: everything stands on it, nothing runs over, nobody's text is code."""

from __future__ import annotations

import io
import shutil
from dataclasses import replace
from typing import TYPE_CHECKING

import pdfplumber
import pytest
from PIL import Image

from sizekeeper import assets
from sizekeeper.reports import pdf as pdf_module
from sizekeeper.reports.pdf import page_images, pdf
from sizekeeper.reports.sheet import SheetPart, SheetStep
from tests.build import person
from tests.reports import sheets
from tests.reports.making import ADA, BODICE, LONG, found_for, sheet_for
from tests.reports.pages import band_cells, extracted, page_texts, pages, runs_over, signs_outside

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.reports.sheet import Paper, Sheet

PAPERS: tuple[Paper, ...] = ("a4", "us-letter")
HOSTILE = (
    "#panic()", "$x$", "[", "]", "\\", "//", "/*", "*_", '#import "/etc/passwd"', "<label>", "@ref", "`raw`", "```",
    "#{1+1}", "\\u{41}", "= heading", "- item", "~", '"', "'", "-- ---", "https://example.org/" + "a" * 90,
    *sheets.HOSTILE,
)  # fmt: skip
NAMES = ("Ida 🧵👩‍👩‍👧‍👦", "美咲", "ليلى بنت", "נועה בן דוד", "अनु", "e\u0301" * 40, "Łucja Ångström")


def forget() -> None:
    """Forget what was laid out, and the template."""
    pdf_module._laid_out.cache_clear()
    pdf_module._compiler.cache_clear()


def made() -> Sheet:
    """A sheet with alterations, made by the program."""
    return sheet_for(found_for())


def long_names() -> Sheet:
    """The program's longest: thirty sizes, long names everywhere, many pieces and steps."""
    name = "Wilhelmina-Alexandrine von und zu Mellenthin-Overbrook " + "Donaudampfschifffahrt" * 4
    pieces = tuple(replace(BODICE[i % 3], id=str(i), name=f"{name} {i}") for i in range(24))
    sheet = sheet_for(found_for(replace(person("in", bust="47 1/4"), name=name), LONG, None, pieces=pieces))
    steps = tuple(SheetStep(str(i), f"{name} {i}", "Fold away 3/8 in between bust and waist.") for i in range(40))
    return replace(sheet, work=(SheetPart("Length", steps),), pattern=name, publisher=name, view=name)


def fractions_of_twelve() -> Sheet:
    """Twelve regions in inches, each cell as wide as figures get."""
    sheet = sheets.longest()
    rows = tuple(
        replace(row, body="101 15/16", asked="−10 11/16",
                cells=tuple(replace(c, amount="−26 13/16", printed="101 15/16", short="short by 1 15/16 in")
                            for c in row.cells[:9]))
        for row in sheet.table.rows
    )  # fmt: skip
    return replace(sheet, table=replace(sheet.table, columns=sheet.table.columns[:9], rows=rows), work=())


def nothing_but_tracing(count: int) -> Sheet:
    """A sheet with so many pieces to trace and no work list."""
    pieces = tuple(replace(BODICE[i % 3], id=str(i), name=f"No.{i:02d}") for i in range(count))
    return replace(sheet_for(found_for(pieces=pieces)), work=())


@pytest.mark.parametrize("paper", PAPERS)
def test_every_figure_of_the_ease_table_can_be_read_in_its_cell(paper: Paper) -> None:
    sheet = made()
    cells = [cell for row in sheet.table.rows for cell in row.cells if cell.band]
    said = [f"{c.amount}{c.printed}{c.band}{'toosmall' if c.short else ''}".replace(" ", "") for c in cells]
    assert sorted(cell.said for cell in band_cells(pdf(sheet, paper))) == sorted(said)


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("sheet", [made(), sheets.longest(), long_names()], ids=["usual", "longest", "names"])
def test_every_figure_and_every_step_can_be_read(sheet: Sheet, paper: Paper) -> None:
    text = extracted(pdf(sheet, paper)).replace(" ", "")
    wanted = {
        f for r in sheet.table.rows for f in (r.name, r.body, *(x for c in r.cells for x in (c.amount, c.printed)))
    }
    wanted |= {x for part in sheet.work for step in part.steps for x in (step.piece, step.words)}
    wanted |= {x for piece in sheet.trace for x in (piece.name, piece.cut)}
    wanted |= {x for figures in sheet.figures for name, texts in figures.rows for x in (name, *texts)}
    wanted |= {sheet.verdict, *sheet.doubts, *sheet.measure_again, *sheet.cautions, *sheet.toile}
    assert [words for words in wanted if words.replace(" ", "") not in text] == []


@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize(
    "sheet",
    [made(), sheets.longest(), long_names(), fractions_of_twelve(), sheet_for(found_for(), private=True)],
    ids=["usual", "longest", "names", "fractions", "private"],
)
def test_nothing_runs_over(sheet: Sheet, paper: Paper) -> None:
    assert runs_over(pdf(sheet, paper), page_images(sheet, paper, 72), 72) == []


@pytest.mark.parametrize(
    ("was", "is_now"),
    [
        ("size: 12.5 * u, weight: weight", "size: 34 * u, weight: weight"),  # figures too large for their cells
        ("margin: margin,", "margin: 4mm,"),
        ("leading: 0.36em", "leading: -0.4em"),  # lines over each other
    ],
)
def test_these_checks_see_what_runs_over(
    was: str, is_now: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    shutil.copytree(assets.resource("reports"), tmp_path / "reports")
    parts = tmp_path / "reports" / "parts.typ"
    before = parts.read_text(encoding="utf-8")
    assert was in before
    parts.write_text(before.replace(was, is_now), encoding="utf-8")
    monkeypatch.setattr(pdf_module, "resource", tmp_path.joinpath)
    forget()
    try:
        with pytest.raises(AssertionError):
            test_nothing_runs_over(made(), "a4")
    finally:
        forget()


@pytest.mark.parametrize("paper", PAPERS)
def test_a_usual_sheet_stands_on_one_page(paper: Paper) -> None:
    assert len(pages(pdf(made(), paper))) == 1


def test_further_pages_are_counted_and_say_whose_they_are() -> None:
    sheet = long_names()
    texts = page_texts(pdf(sheet, "a4"))
    count = len(texts)
    assert count > 1
    assert all(f"page {at} of {count}" in text for at, text in enumerate(texts, 1))
    assert all(text.startswith("Wilhelmina-Alexandrine von und zu M") for text in texts[1:])


def test_a_work_list_that_goes_on_has_its_heading_again() -> None:
    with_steps = [text for text in page_texts(pdf(long_names(), "a4")) if "Fold away" in text]
    assert len(with_steps) > 1
    assert all("Work list" in text for text in with_steps)


@pytest.mark.parametrize(("paper", "size"), [("a4", (595, 842)), ("us-letter", (612, 792))])
def test_the_page_has_the_size_of_the_paper(paper: Paper, size: tuple[int, int]) -> None:
    [page] = pages(pdf(made(), paper))
    assert (round(page.width), round(page.height)) == size
    image = Image.open(io.BytesIO(page_images(made(), paper, 72)[0]))
    assert image.size == pytest.approx(size, abs=1)


@pytest.mark.parametrize("text", HOSTILE)
def test_what_people_type_is_only_text(text: str) -> None:
    file = pdf(sheets.hostile(text), "a4")
    plain = "".join(c for c in text if c.isprintable() and c != "\u202e").replace(" ", "")
    if not any("\u0590" <= c <= "\u05ff" for c in text):  # readers turn Hebrew round
        assert plain in extracted(file).replace(" ", "")
    assert signs_outside(file) == []


@pytest.mark.parametrize("name", NAMES)
def test_names_in_any_writing_are_set(name: str) -> None:
    file = pdf(replace(sheets.small(), person=name, pattern=name), "a4")
    assert len(pages(file)) == 1
    assert signs_outside(file) == []


def test_the_same_sheet_gives_the_same_bytes() -> None:
    first = pdf(made(), "a4")
    forget()
    assert pdf(made(), "a4") == first


def test_the_file_says_when_the_sheet_was_made_rather_than_the_clock() -> None:
    assert b"20261125" in pdf(made(), "a4")


def test_a_private_sheet_has_no_body_figure() -> None:
    sheet = sheet_for(found_for(replace(ADA, name="Ilse")), private=True)
    text = extracted(pdf(sheet, "a4"))
    assert "without body measurements" in text.lower()
    assert "body, in" not in text
    assert "43" not in text


def test_ticks_of_steps_that_are_done_are_drawn() -> None:
    open_sheet = sheets.small()
    step = replace(open_sheet.work[0].steps[0], done=True)
    done = replace(open_sheet, work=(replace(open_sheet.work[0], steps=(step,)), *open_sheet.work[1:]))
    assert page_images(done, "a4", 72) != page_images(open_sheet, "a4", 72)


def test_what_is_cut_is_framed_thrice_as_strong_as_a_line() -> None:
    with pdfplumber.open(io.BytesIO(pdf(sheets.small(), "a4"))) as file:
        widths = [line["linewidth"] for line in (*file.pages[0].lines, *file.pages[0].rects, *file.pages[0].curves)]
    assert max(widths) >= 3 * 0.6


def test_the_images_are_as_fine_as_asked_for() -> None:
    rough, fine = (Image.open(io.BytesIO(page_images(made(), "a4", ppi)[0])).width for ppi in (72, 144))
    assert fine == pytest.approx(2 * rough, abs=2)


@pytest.mark.parametrize("count", [5, 23, 24])
def test_pieces_with_nothing_beside_them_stand_down_two_columns_on_one_page(count: int) -> None:
    with pdfplumber.open(io.BytesIO(pdf(nothing_but_tracing(count), "a4"))) as file:
        (page,) = file.pages
        traced = [word for word in page.extract_words() if word["text"].startswith("No.")]
    names, half = [f"No.{i:02d}" for i in range(count)], (count + 1) // 2
    left = [word["text"].strip(",") for word in traced if word["x0"] < page.width / 2]
    right = [word["text"].strip(",") for word in traced if word["x0"] >= page.width / 2]
    assert (left, right) == (names[:half], names[half:])
