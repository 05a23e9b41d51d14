"""Everybody against one pattern as a workbook: who cuts what, the ease with live formulas, and the lines to trace."""

from __future__ import annotations

import datetime as dt
import io
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sizekeeper.core.household import Household
    from sizekeeper.core.sharing import Sharing
    from sizekeeper.core.wording import Wording


def household_workbook(
    household: Household, sharing: Sharing, words: Wording, *, on: dt.date, view_words: str = ""
) -> bytes:
    """The workbook as the bytes of an XLSX file.

    Args:
        household: everybody against one pattern, in the order to be shown.
        sharing: the lines to trace for them.
        words: how figures and measures are said; the pages are in its unit.
        on: the day of the comparison.
        view_words: what the view is called, `View A and C`; without it, by its own name.
    """
    from openpyxl import Workbook

    from sizekeeper.reports.household_workbook_ease import EaseBlocks  # noqa: PLC0415 - it loads openpyxl
    from sizekeeper.reports.household_workbook_pages import lines_page, people_page  # noqa: PLC0415 - the same
    from sizekeeper.reports.workbook_heading import set_up  # noqa: PLC0415 - the same

    book = Workbook()
    people = book.worksheets[0]
    people.title = "People"
    people_page(people, household, words, on, view_words)
    ease = book.create_sheet("Ease")
    EaseBlocks(ease, household, words).write()
    lines = book.create_sheet("Lines")
    lines_page(lines, sharing, words)
    for page in (people, ease, lines):
        set_up(page, words.notation, "landscape")
    book.properties.creator = "Sizekeeper"
    book.properties.created = dt.datetime.combine(on, dt.time())
    book.calculation.fullCalcOnLoad = True
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()
