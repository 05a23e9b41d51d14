"""Sends the pages of a sheet to a printer: the same pages that are shown and saved."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import QMarginsF, QObject, QRect, QSize, Qt, Signal
from PySide6.QtGui import QPageLayout, QPageSize, QPainter
from PySide6.QtPrintSupport import QAbstractPrintDialog, QPrintDialog, QPrinter
from PySide6.QtWidgets import QDialog

from sizekeeper.errors import ReportError, SizekeeperError
from sizekeeper.ui.sheet_drawing import Drawing

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from PySide6.QtGui import QImage
    from PySide6.QtWidgets import QWidget

    from sizekeeper.reports.sheet import Paper
    from sizekeeper.ui.sheet_drawing import Drawn
    from sizekeeper.ui.sheet_source import SheetSource

PPI = 300
"""Dots to the inch of a printed page: what a home printer makes of text and thin rules without loss (common practice,
no source)."""

_PAGE_SIZES: dict[Paper, QPageSize.PageSizeId] = {
    "a4": QPageSize.PageSizeId.A4,
    "us-letter": QPageSize.PageSizeId.Letter,
}


class PrintQuestion:
    """The platform's own print dialog. A test puts its own answer here."""

    @classmethod
    def ask(cls, printer: QPrinter, parent: QWidget, then: Callable[[], None]) -> None:
        """Let the user choose a printer and how; `then` is called when she did, with all of it set in `printer`."""
        dialog = QPrintDialog(printer, parent)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.setOption(QAbstractPrintDialog.PrintDialogOption.PrintSelection, on=False)
        dialog.accepted.connect(then)
        QDialog.open(dialog)  # its own form wants a slot by its C++ name


class Printing(QObject):
    """Prints one sheet after another.

    Signals:
        printed(str): the sheet is on its way; the sentence says where.
        failed(str): it cannot be printed; the sentence says why.
    """

    printed = Signal(str)
    failed = Signal(str)

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self._parent = parent
        self._printer: QPrinter | None = None
        self._source: SheetSource | None = None
        self._drawing = Drawing(self)
        self._drawing.drawn.connect(self._on_drawn)
        self._drawing.failed.connect(self._on_failed)

    @property
    def busy(self) -> bool:
        """Whether pages are being drawn for the printer."""
        return self._drawing.busy

    def start(self, source: SheetSource, paper: Paper) -> None:
        """Ask for the printer, then print."""
        self._source = source
        self._printer = printer = printer_for(paper, source.file_name(""))
        PrintQuestion.ask(printer, self._parent, self._on_chosen)

    def drop(self) -> None:
        """The window closes: what is not drawn yet is not printed."""
        self._drawing.drop()

    def _on_chosen(self) -> None:
        """Draw the pages for the paper that is in the printer; A4 pages are made to fit any other paper."""
        if self._printer is not None and self._source is not None:
            self._drawing.want(self._source, paper_in(self._printer), PPI)

    def _on_drawn(self, drawn: object) -> None:
        printer, self._printer = self._printer, None
        if printer is None:
            return
        try:
            print_pages(printer, cast("Drawn", drawn).pages)
        except SizekeeperError as error:
            self.failed.emit(str(error))
        else:
            self.printed.emit(_where(printer))

    def _on_failed(self, sentence: str) -> None:
        self._printer = None
        self.failed.emit(sentence)


def printer_for(paper: Paper, title: str) -> QPrinter:
    """A printer set up for whole pages of a paper: the pages have margins of their own.

    The title can stand in a file's name, because that is what some printers make of it.
    """
    printer = QPrinter(QPrinter.PrinterMode.HighResolution)
    printer.setDocName(title)
    printer.setCreator("Sizekeeper")
    layout = QPageLayout(QPageSize(_PAGE_SIZES[paper]), QPageLayout.Orientation.Portrait, QMarginsF())
    printer.setPageLayout(layout)
    printer.setFullPage(True)
    return printer


def paper_in(printer: QPrinter) -> Paper:
    """The paper to lay the pages out for: Letter where that is in the printer, else A4."""
    letter = printer.pageLayout().pageSize().id() == QPageSize.PageSizeId.Letter
    return "us-letter" if letter else "a4"


def print_pages(printer: QPrinter, pages: Sequence[QImage]) -> None:
    """Draw pages on a printer, each as large as its paper.

    Raises:
        ReportError: the printer or the file it prints to does not take them.
    """
    printer.setFullPage(True)
    painter = QPainter()
    if not painter.begin(printer):
        raise ReportError(f"{_name(printer)} does not take the sheet; look whether it is switched on and connected.")
    try:
        for number, page in enumerate(_wanted(printer, pages)):
            if number:
                printer.newPage()
            painter.setRenderHint(QPainter.RenderHint.SmoothPixmapTransform)
            painter.drawImage(_fitted(page.size(), printer), page)
    finally:
        painter.end()
    if printer.printerState() in (QPrinter.PrinterState.Error, QPrinter.PrinterState.Aborted):
        raise ReportError(f"{_name(printer)} broke off while the sheet was sent to it.")


def _wanted(printer: QPrinter, pages: Sequence[QImage]) -> list[QImage]:
    """The pages that are to be printed, in the printer's order, as often as it does not see to by itself."""
    first, last = printer.fromPage() or 1, printer.toPage() or len(pages)
    chosen = list(pages[first - 1 : last]) if printer.printRange() == QPrinter.PrintRange.PageRange else list(pages)
    if printer.pageOrder() == QPrinter.PageOrder.LastPageFirst:
        chosen.reverse()
    copies = 1 if printer.supportsMultipleCopies() else printer.copyCount()
    if printer.collateCopies():
        return chosen * copies
    return [page for page in chosen for _ in range(copies)]


def _fitted(size: QSize, printer: QPrinter) -> QRect:
    """Where a page is drawn: the whole paper, in the middle where the two are of different shapes."""
    paper = printer.pageLayout().fullRectPixels(printer.resolution())
    rect = QRect(paper.topLeft(), size.scaled(paper.size(), Qt.AspectRatioMode.KeepAspectRatio))
    rect.moveCenter(paper.center())
    return rect


def _name(printer: QPrinter) -> str:
    if printer.outputFileName():
        return f"The file “{printer.outputFileName()}”"
    return f"The printer “{printer.printerName()}”" if printer.printerName() else "The printer"


def _where(printer: QPrinter) -> str:
    if printer.outputFileName():
        return f"The sheet was printed into “{printer.outputFileName()}”."
    return f"The sheet was sent to “{printer.printerName()}”."
