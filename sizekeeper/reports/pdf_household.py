"""The household sheet as PDF and as page images, laid out like the decision sheet."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from sizekeeper.core.days import day_words
from sizekeeper.reports.pdf import typeset
from sizekeeper.reports.pdf_data import figure, sentence, short, text

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from sizekeeper.reports.household_sheet import EaseMark, HouseholdSheet, LineRow
    from sizekeeper.reports.sheet import Paper

_ACROSS_AT_MOST = 11
"""The sizes that stand side by side; more go on below."""
_SCALES = (1.0, 0.9, 0.82)
"""The sizes of text at which a sheet is tried on one page."""


def household_pdf(sheet: HouseholdSheet, paper: Paper) -> bytes:
    """The sheet as a PDF file; the same bytes for the same sheet.

    Raises:
        ReportError: the sheet cannot be laid out.
    """
    return typeset("household.typ", household_data(sheet, paper), sheet.on, _scales(sheet)).file


def household_images(sheet: HouseholdSheet, paper: Paper, ppi: float) -> list[bytes]:
    """The pages of the sheet as PNG images, as they stand in the PDF.

    Raises:
        ReportError: the sheet cannot be laid out.
    """
    return typeset("household.typ", household_data(sheet, paper), sheet.on, _scales(sheet)).images(ppi)


def _scales(sheet: HouseholdSheet) -> tuple[float, ...]:
    """One page is tried for a household, not for a class."""
    return _SCALES if len(sheet.people) <= _ACROSS_AT_MOST else ()


def household_data(sheet: HouseholdSheet, paper: Paper) -> dict[str, Any]:
    """The whole sheet as plain data."""
    title = text(sheet.pattern) or "A pattern without a title"
    return {
        "paper": paper,
        "pattern": title,
        "running": f"{short(title)} · {day_words(sheet.on)}",
        "from": [text(part) for part in (sheet.publisher, sheet.view) if part.strip()],
        "date": day_words(sheet.on),
        "unit": sheet.notation.unit,
        "inches": sheet.notation.unit == "in",
        "where": text(sheet.where),
        "people": [
            {
                "name": text(person.name),
                "cut": text(person.cut),
                "off": sentence(person.off),
                "safe": sentence(person.safe),
                "trouble": sentence(person.trouble),
            }
            for person in sheet.people
        ],
        "tables": list(_tables(sheet)) if sheet.where else [],
        "lines": [_line(line) for line in sheet.lines],
        "choices": [
            {"title": text(c.title), "off": sentence(c.off), "lines": [_line(line) for line in c.lines]}
            for c in sheet.choices
        ],
    }


def _tables(sheet: HouseholdSheet) -> Iterator[dict[str, Any]]:
    """The ease of everybody, the sizes cut into as many tables as there is width for."""
    for start in range(0, len(sheet.labels), _ACROSS_AT_MOST):
        yield {
            "labels": [text(label) for label in sheet.labels[start : start + _ACROSS_AT_MOST]],
            "rows": [
                {"name": text(person.name), "cells": _marks(person.marks[start : start + _ACROSS_AT_MOST])}
                for person in sheet.people
            ],
        }


def _marks(marks: Sequence[EaseMark]) -> list[dict[str, Any]]:
    return [{"amount": figure(mark.amount), "band": mark.band or "", "chosen": mark.chosen} for mark in marks]


def _line(line: LineRow) -> list[Any]:
    return [text(line.words), [sentence(person) for person in line.people]]
