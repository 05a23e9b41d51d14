"""A decision sheet in any of its formats, as the bytes of a file."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, get_args

from sizekeeper.errors import ReportError

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable
    from pathlib import Path

    from sizekeeper.core.found import Found
    from sizekeeper.core.planned import Planned
    from sizekeeper.reports.sheet import Paper, Sheet

Format = Literal["pdf", "html", "xlsx", "csv"]
FORMATS: tuple[Format, ...] = get_args(Format)
FORMAT_WORDS: dict[Format, str] = {"pdf": "PDF", "html": "Web page", "xlsx": "Workbook", "csv": "CSV"}

_SUFFIXES: dict[str, Format] = {**{f".{name}": name for name in FORMATS}, ".htm": "html"}
_BOM = "\N{ZERO WIDTH NO-BREAK SPACE}"


def format_of(path: Path) -> Format | None:
    """The format that a file's suffix asks for, None where it is none of ours."""
    return _SUFFIXES.get(path.suffix.casefold())


def written(sheet: Sheet, form: Format, paper: Paper = "a4") -> bytes:
    """A sheet in one format.

    Args:
        sheet: what stands on it.
        form: the format.
        paper: what a PDF is laid out for; the others do not ask.
    """
    if form == "pdf":
        from sizekeeper.reports.pdf import pdf  # noqa: PLC0415 - each format loads only what it needs

        return pdf(sheet, paper)
    if form == "html":
        from sizekeeper.reports.webpage import webpage  # noqa: PLC0415 - as above

        return webpage(sheet).encode("utf-8")
    if form == "xlsx":
        from sizekeeper.reports.workbook import workbook  # noqa: PLC0415 - as above

        return workbook(sheet)
    from sizekeeper.reports.table_text import table_text  # noqa: PLC0415 - as above

    return (_BOM + table_text(sheet).removeprefix(_BOM)).encode("utf-8")  # spreadsheets take it for UTF-8 by this mark


def export(
    found: Found,
    planned: Planned | None,
    form: Format,
    *,
    today: dt.date,
    names: Callable[[str], str],
    private: bool = False,
    paper: Paper = "a4",
    view_words: str = "",
    next_time: str = "",
) -> bytes:
    """The decision sheet of a person and a pattern in one format.

    Args:
        found: the comparison.
        planned: its plans.
        form: the format.
        today: the date on the sheet.
        names: the trade name of a measure by id.
        private: leave out everything from which her measurements could be worked out.
        paper: what a PDF is laid out for.
        view_words: what the view is called; without it, by its own name.
        next_time: what she noted after an earlier make, short.

    Raises:
        ReportError: nothing can be compared.
    """
    from sizekeeper.reports.sheet_making import decision_sheet  # noqa: PLC0415 - as above

    if found.fit is None:
        raise ReportError(found.problem)
    sheet = decision_sheet(
        found, planned, today=today, names=names, private=private, view_words=view_words,
        next_time=next_time,
    )  # fmt: skip
    return written(sheet, form, paper)
