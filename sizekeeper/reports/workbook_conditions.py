"""What follows the figures of a workbook’s first page: band fills, the mark of the best, and what may be typed."""

from __future__ import annotations

from typing import TYPE_CHECKING

from openpyxl.worksheet.datavalidation import DataValidation  # noqa: TID253 - loaded when a workbook is written

from sizekeeper.core.preference import BANDS
from sizekeeper.reports import workbook_style as style
from sizekeeper.reports.workbook_places import TOP, Places

if TYPE_CHECKING:
    from collections.abc import Iterator

    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.notation import Notation


def lay_conditions(page: Worksheet, p: Places, notation: Notation) -> None:
    """The fills of the bands, the mark of the best size, and fractions cancelled down."""
    for size in range(p.sizes):
        for half in (0, 1):
            cancelled = notation if half == 0 else None
            for band in BANDS if p.printed else ():
                test = f'${p.at(size, 1, TOP)}="{band}"'
                style.lay(
                    page, p.span(size, half, TOP), test, (style.band_font(band), style.band_fill(band)), cancelled
                )
            best = f'${p.at(size, 1, p.off)}="best"'
            style.lay(page, p.at(size, half, p.off), best, (style.ON_ACCENT, style.BEST), cancelled)
    for span, sign in _lengths(p):
        style.cancel(page, span, notation, sign=sign)


def _lengths(p: Places) -> Iterator[tuple[str, bool]]:
    """The ranges of lengths, and whether they have a sign."""
    yield f"B{TOP}:C{p.off - 1}", False
    if p.printed:
        yield f"B{p.edges}:D{p.edges + p.regions - 1}", False
    for size in range(p.sizes):
        yield p.span(size, 0, TOP), p.mode == "body"
        yield p.at(size, 0, p.off), False
        if p.printed:
            yield p.span(size, 0, p.printed), False
            yield p.span(size, 1, p.printed), True
        for half in (0, 1) if p.chart else ():
            yield p.span(size, half, p.chart), False


def only_numbers(page: Worksheet, p: Places, notation: Notation) -> None:
    """Let only numbers into the cells that may be changed."""
    check = _check(notation)
    spans = [f"B{TOP}:C{p.off - 1}"]
    for first in filter(None, (p.printed, p.chart)):
        spans.extend(p.span(size, 0, first) for size in range(p.sizes))
    if p.printed:
        spans.append(f"B{p.edges}:D{p.edges + p.regions - 1}")
    for span in spans:
        check.add(span)
    page.add_data_validation(check)


def _check(notation: Notation) -> DataValidation:
    example = "38 1/4" if notation.unit == "in" else "97.5"
    return DataValidation(
        type="decimal",
        operator="between",
        formula1="-999",
        formula2="999",
        allow_blank=True,
        errorTitle="A length",
        error=f"Type a number in {notation.unit}, like {example}, without the unit.",
    )
