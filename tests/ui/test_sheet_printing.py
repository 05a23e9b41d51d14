"""Pages on a printer that prints into a PDF file, which is then looked at."""

from __future__ import annotations

import datetime as dt
from typing import TYPE_CHECKING, Any

import pypdfium2  # type: ignore[import-untyped]
import pytest
from PySide6.QtGui import QColor, QImage, QPageLayout, QPageSize
from PySide6.QtPrintSupport import QPrintDialog, QPrinter
from PySide6.QtWidgets import QWidget

from sizekeeper.errors import ReportError
from sizekeeper.ui.import_reading import Reading
from sizekeeper.ui.sheet_printing import PPI, Printing, PrintQuestion, paper_in, print_pages, printer_for
from sizekeeper.ui.sheet_source import SheetSource, source_of
from tests.ui.household import settle
from tests.ui.sheets import Pages, instead

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator
    from pathlib import Path

    from pytestqt.qtbot import QtBot

    from sizekeeper.ui.selection import Selection
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

COLOURS = ("#ff0000", "#00ff00", "#0000ff")
NAMES = {(255, 0, 0): "red", (0, 255, 0): "green", (0, 0, 255): "blue", (255, 255, 255): "white"}
DAY = dt.date(2026, 11, 25)


def page(colour: str, wide: int = 210, high: int = 297) -> QImage:
    image = QImage(wide, high, QImage.Format.Format_RGB32)
    image.fill(QColor(colour))
    return image


@pytest.fixture
def printer(tmp_path: Path) -> QPrinter:
    printer = printer_for("a4", "Ilse - Wrap dress")
    into_file(printer, tmp_path / "out.pdf")
    return printer


def into_file(printer: QPrinter, path: Path) -> None:
    printer.setOutputFormat(QPrinter.OutputFormat.PdfFormat)
    printer.setOutputFileName(str(path))


def seen(path: Path, across: float = 0.5, down: float = 0.5) -> list[str]:
    """The colour at a spot of each page of a PDF."""
    document = pypdfium2.PdfDocument(path)
    found = []
    for number in range(len(document)):
        image: Any = document[number].render(scale=1).to_pil().convert("RGB")
        at = (min(int(image.width * across), image.width - 1), min(int(image.height * down), image.height - 1))
        red, green, blue = image.getpixel(at)
        found.append(NAMES.get((round(red, -2) and 255, round(green, -2) and 255, round(blue, -2) and 255), "?"))
    document.close()
    return found


def test_every_page_is_printed_on_a_paper_of_its_size(printer: QPrinter, tmp_path: Path) -> None:
    print_pages(printer, [page(colour) for colour in COLOURS])
    document = pypdfium2.PdfDocument(tmp_path / "out.pdf")
    assert [tuple(round(side) for side in p.get_size()) for p in document] == [(595, 842)] * 3
    document.close()
    assert seen(tmp_path / "out.pdf") == ["red", "green", "blue"]


@pytest.mark.parametrize(("across", "down"), [(0.005, 0.005), (0.995, 0.995), (0.005, 0.995), (0.995, 0.005)])
def test_a_page_reaches_to_the_edges_of_its_paper(
    printer: QPrinter, tmp_path: Path, across: float, down: float
) -> None:
    print_pages(printer, [page("#ff0000", 2480, 3508)])
    assert seen(tmp_path / "out.pdf", across, down) == ["red"]


def test_a_page_of_another_shape_stands_whole_in_the_middle(printer: QPrinter, tmp_path: Path) -> None:
    print_pages(printer, [page("#ff0000", 100, 100)])
    spots = [seen(tmp_path / "out.pdf", 0.5, down) for down in (0.02, 0.5, 0.98)]
    assert spots == [["white"], ["red"], ["white"]]


def test_only_the_chosen_pages_are_printed(printer: QPrinter, tmp_path: Path) -> None:
    printer.setPrintRange(QPrinter.PrintRange.PageRange)
    printer.setFromTo(2, 3)
    print_pages(printer, [page(colour) for colour in COLOURS])
    assert seen(tmp_path / "out.pdf") == ["green", "blue"]


def test_the_last_page_comes_first_when_asked_for(printer: QPrinter, tmp_path: Path) -> None:
    printer.setPageOrder(QPrinter.PageOrder.LastPageFirst)
    print_pages(printer, [page(colour) for colour in COLOURS])
    assert seen(tmp_path / "out.pdf") == ["blue", "green", "red"]


@pytest.mark.parametrize(
    ("collated", "order"),
    [(True, ["red", "green", "red", "green"]), (False, ["red", "red", "green", "green"])],
)
def test_copies_that_the_printer_does_not_make_are_made(
    printer: QPrinter, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, collated: bool, order: list[str]
) -> None:
    monkeypatch.setattr(QPrinter, "supportsMultipleCopies", lambda _self: False)
    printer.setCopyCount(2)
    printer.setCollateCopies(collated)
    print_pages(printer, [page("#ff0000"), page("#00ff00")])
    assert seen(tmp_path / "out.pdf") == order


@pytest.mark.qt_log_ignore("Returned false")  # Qt says so too
def test_a_printer_that_takes_nothing_is_named(tmp_path: Path) -> None:
    printer = printer_for("a4", "x")
    into_file(printer, tmp_path / "no folder" / "out.pdf")
    with pytest.raises(ReportError, match=r"out\.pdf” does not take the sheet"):
        print_pages(printer, [page("#ff0000")])


def test_the_paper_in_the_printer_decides_the_pages() -> None:
    printer = printer_for("us-letter", "x")
    assert paper_in(printer) == "us-letter"
    for size, paper in ((QPageSize.PageSizeId.A4, "a4"), (QPageSize.PageSizeId.A5, "a4")):
        printer.setPageLayout(
            QPageLayout(QPageSize(size), QPageLayout.Orientation.Portrait, printer.pageLayout().margins())
        )
        assert paper_in(printer) == paper


# From the sheet to the printer.


@pytest.fixture
def source(session: Session, selection: Selection, settings: Settings) -> SheetSource:
    settle(session, selection)
    found = source_of(session, settings, (selection.person, selection.pattern, ""), DAY, private=False)
    assert isinstance(found, SheetSource)
    return found


@pytest.fixture
def printing(qtbot: QtBot) -> Iterator[Printing]:
    parent = QWidget()
    qtbot.addWidget(parent)
    yield Printing(parent)
    Reading.finish_all()


def choose(monkeypatch: pytest.MonkeyPatch, path: Path, size: QPageSize.PageSizeId | None = None) -> list[str]:
    """Choose a printer that prints into a file; the name of what is printed is kept."""
    titles: list[str] = []

    def ask(printer: QPrinter, _parent: object, then: Callable[[], None]) -> None:
        titles.append(printer.docName())
        into_file(printer, path)
        if size is not None:
            printer.setPageSize(QPageSize(size))
        then()

    monkeypatch.setattr(PrintQuestion, "ask", ask)
    return titles


def test_the_pages_are_drawn_as_finely_as_a_printer_prints(
    printing: Printing, source: SheetSource, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    pages = instead(monkeypatch, Pages(COLOURS[:2]))
    titles = choose(monkeypatch, tmp_path / "out.pdf")
    with qtbot.waitSignal(printing.printed) as printed:
        printing.start(source, "a4")
    assert [(paper, ppi) for _, paper, ppi in pages.asked] == [("a4", PPI)] == [("a4", 300)]
    assert seen(tmp_path / "out.pdf") == ["red", "green"]
    assert printed.args == [f"The sheet was printed into “{tmp_path / 'out.pdf'}”."]
    assert titles == ["Ilse - Wrap dress"]


def test_letter_paper_chosen_at_the_printer_gets_pages_for_letter(
    printing: Printing, source: SheetSource, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    pages = instead(monkeypatch, Pages())
    choose(monkeypatch, tmp_path / "out.pdf", QPageSize.PageSizeId.Letter)
    with qtbot.waitSignal(printing.printed):
        printing.start(source, "a4")
    assert pages.asked[0][1] == "us-letter"
    document = pypdfium2.PdfDocument(tmp_path / "out.pdf")
    assert [round(side) for side in document[0].get_size()] == [612, 792]
    document.close()


@pytest.mark.qt_log_ignore("Returned false")  # Qt says so too
def test_a_printer_that_fails_is_said(
    printing: Printing, source: SheetSource, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    instead(monkeypatch, Pages())
    choose(monkeypatch, tmp_path / "no folder" / "out.pdf")
    with qtbot.waitSignal(printing.failed) as failed:
        printing.start(source, "a4")
    assert failed.args is not None
    assert "does not take the sheet" in failed.args[0]


def test_the_real_pages_are_printed_and_hold_the_verdict(
    printing: Printing, source: SheetSource, tmp_path: Path, qtbot: QtBot, monkeypatch: pytest.MonkeyPatch
) -> None:
    choose(monkeypatch, tmp_path / "out.pdf")
    with qtbot.waitSignal(printing.printed, timeout=20000):
        printing.start(source, "a4")
    document = pypdfium2.PdfDocument(tmp_path / "out.pdf")
    shades: list[int] = document[0].render(scale=1).to_pil().convert("L").histogram()
    document.close()
    assert 0.005 < sum(shades[:128]) / sum(shades) < 0.5  # the dark of text, bands and rules


def test_the_platform_s_dialog_calls_back_once_when_it_is_accepted(qtbot: QtBot) -> None:
    parent, calls = QWidget(), list[int]()
    qtbot.addWidget(parent)
    printer = printer_for("a4", "x")
    PrintQuestion.ask(printer, parent, lambda: calls.append(1))
    dialog = parent.findChild(QPrintDialog)
    assert dialog is not None
    assert dialog.isVisible()
    dialog.accepted.emit(printer)
    dialog.close()
    assert calls == [1]


def test_a_private_sheet_is_not_printed_under_the_name_of_the_whole_one(
    printing: Printing,
    session: Session,
    selection: Selection,
    settings: Settings,
    tmp_path: Path,
    qtbot: QtBot,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    settle(session, selection)
    private = source_of(session, settings, (selection.person, selection.pattern, ""), DAY, private=True)
    assert isinstance(private, SheetSource)
    instead(monkeypatch, Pages())
    titles = choose(monkeypatch, tmp_path / "out.pdf")
    with qtbot.waitSignal(printing.printed):
        printing.start(private, "a4")
    assert titles == ["Ilse - Wrap dress - private"]
