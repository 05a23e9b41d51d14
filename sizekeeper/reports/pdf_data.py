"""A decision sheet as plain data for the layout: texts only, made safe to break over lines, tables cut to page width.

Everything is handed over as JSON and set as text: nothing that somebody typed is ever read as code.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from sizekeeper.core.days import day_words
from sizekeeper.reports.typed_text import clean
from sizekeeper.reports.unbroken import unbroken

if TYPE_CHECKING:
    from collections.abc import Iterator

    from sizekeeper.reports.sheet import Paper, Sheet, SheetCell, SheetFigures, SheetPlan, SheetTable

ACROSS_AT_MOST = 9
"""The sizes that stand side by side; more go on below."""
_FIGURES_ACROSS = 10
_RUNNING = 36
"""Letters of a name in the running head."""
_REGION_FITS = 16
"""Letters of a region's name that surely stand in one line."""
_NAME_FITS, _ROW_FITS = 24, 72
"""Letters that surely stand in one line of a table of figures: in its first column, in all the others together."""
_LONG = re.compile(r"\S{17,}")
_STEP = 8
_BREAK = "\N{ZERO WIDTH SPACE}"
_FIGURE = re.compile(r"(?:(−?\d+) )?(−?\d+/(?:2|4|8|16))")
_FORMATTING = dict.fromkeys((*range(0x202A, 0x202F), *range(0x2066, 0x206A)))
"""Marks that turn the direction of the text after them; unpaired they would turn the rest of the line."""


def text(typed: str) -> str:
    """A text as it is set: in one line of thought, without marks that reach beyond it, long words free to break."""
    plain = " ".join(clean(typed).translate(_FORMATTING).split())
    return _LONG.sub(_broken, plain)


def sentence(typed: str) -> str:
    """A sentence: amounts never break from their units."""
    return unbroken(text(typed))


def figure(typed: str) -> list[str]:
    """A figure as whole and fraction: `37 3/4` as `37` and `3/4`; what is none as it is, with nothing behind it."""
    plain = text(typed)
    parts = _FIGURE.fullmatch(plain)
    return [parts[1] or "", parts[2]] if parts else [unbroken(plain), ""]


def _broken(match: re.Match[str]) -> str:
    """A very long word with places to break; never before a mark that belongs to the sign in front of it."""
    word = match[0]
    parts = [word[at : at + _STEP] for at in range(0, len(word), _STEP)]
    return "".join(f"{_BREAK if at and _starts(part[0]) else ''}{part}" for at, part in enumerate(parts))


def _starts(char: str) -> bool:
    return char.isalnum() or char in "-_/.,;:+&|"


def sheet_data(sheet: Sheet, paper: Paper) -> dict[str, Any]:
    """The whole sheet as plain data."""
    return {
        "paper": paper,
        "person": text(sheet.person) or "Somebody",
        "pattern": text(sheet.pattern) or "A pattern without a title",
        "running": " · ".join((short(sheet.person), short(sheet.pattern), day_words(sheet.on))),
        "from": [text(part) for part in (sheet.publisher, sheet.view) if part.strip()],
        "date": day_words(sheet.on),
        "private": sheet.private,
        "unit": sheet.notation.unit,
        "inches": "in" in (sheet.notation.unit, sheet.envelope.unit),
        "verdict": sentence(sheet.verdict),
        "doubts": [sentence(doubt) for doubt in sheet.doubts],
        "what": sentence(sheet.table.what),
        "left_out": "" if sheet.private else left_out_words(sheet.table),
        "tables": list(_tables(sheet.table)),
        "plan": None if sheet.plan is None else _plan(sheet.plan, sheet.verdict),
        "work": [
            {"title": text(part.title), "steps": [[text(s.piece), sentence(s.words), s.done] for s in part.steps]}
            for part in sheet.work
        ],
        "trace": [[text(p.name), text(p.cut), text(p.size), p.changed] for p in sheet.trace],
        "trace_size": _one_size(sheet),
        "again": [sentence(one) for one in sheet.measure_again],
        "toile": [text(place) for place in sheet.toile],
        "cautions": [sentence(one) for one in sheet.cautions],
        "figures": [block for figures in sheet.figures for block in _figures(figures)],
    }


def short(typed: str) -> str:
    """The beginning of a text, for one line with others."""
    plain = text(typed).replace(_BREAK, "")
    return plain if len(plain) <= _RUNNING else f"{plain[: _RUNNING - 1].rstrip()}…"


def _one_size(sheet: Sheet) -> str:
    """The size that all pieces are traced in, said once; empty where they are not."""
    sizes = {piece.size for piece in sheet.trace}
    return f"all in {text(sizes.pop())}" if len(sizes) == 1 else ""


def left_out_words(table: SheetTable) -> str:
    """How many sizes have no column; empty where all have."""
    if not table.left_out:
        return ""
    return "1 more size is not shown." if table.left_out == 1 else f"{table.left_out} more sizes are not shown."


def _plan(plan: SheetPlan, verdict: str) -> dict[str, Any]:
    """The plan; its title is left away where the verdict has said it already."""
    title = "" if plan.title.strip(" .") == verdict.strip(" .") else sentence(plan.title)
    return {
        "heading": "Decided" if plan.decided else "The plan",
        "on": day_words(plan.on) if plan.on is not None else "",
        "title": title,
        "lines": [sentence(line) for line in plan.lines],
        "reason": text(plan.reason),
        "advised": text(plan.advised),
    }


def _tables(table: SheetTable) -> Iterator[dict[str, Any]]:
    """The ease table, its columns cut into as many tables as there is width for."""
    for start in range(0, max(len(table.columns), 1), ACROSS_AT_MOST):
        columns = table.columns[start : start + ACROSS_AT_MOST]
        yield {
            "columns": [
                {
                    "words": [text(line) for line in (column.short if any(column.short) else (column.words, ""))],
                    "chosen": column.chosen,
                    "between": column.between,
                }
                for column in columns
            ],
            "rows": [
                {
                    "name": text(row.name),
                    "role": text(row.role),
                    "body": figure(row.body),
                    "asked": figure(row.asked),
                    "cells": [_cell(cell) for cell in row.cells[start : start + ACROSS_AT_MOST]],
                    "flat": len(row.name) <= _REGION_FITS and not any(cell.short for cell in row.cells),
                }
                for row in table.rows
            ],
        }


def _cell(cell: SheetCell) -> dict[str, Any]:
    return {
        "amount": figure(cell.amount),
        "printed": figure(cell.printed),
        "filled": cell.interpolated and bool(cell.printed),
        "band": cell.band or "",
        "short": sentence(cell.short) if cell.chosen else "too small" if cell.short else "",
        "chosen": cell.chosen,
    }


def _figures(figures: SheetFigures) -> Iterator[dict[str, Any]]:
    """A table of figures, its columns cut into as many tables as there is width for."""
    for start in range(0, max(len(figures.across), 1), _FIGURES_ACROSS):
        across = [text(one) for one in figures.across[start : start + _FIGURES_ACROSS]]
        rows = [(text(name), texts[start : start + _FIGURES_ACROSS]) for name, texts in figures.rows]
        longest = max((len(one) for one in (*across, *(one for _, texts in rows for one in texts))), default=0)
        yield {
            "title": text(figures.title) + (", more sizes" if start else ""),
            "across": across,
            "rows": [{"name": name, "texts": [figure(one) for one in texts]} for name, texts in rows],
            "flat": all(len(name) <= _NAME_FITS for name, _ in rows) and longest * max(len(across), 1) <= _ROW_FITS,
        }
