"""Layouts with readings written by hand: loads them, and says in which points a draft differs from one."""

from __future__ import annotations

import csv
import io
import json
import re
import tomllib
from collections import Counter
from fractions import Fraction
from pathlib import Path
from typing import Any

import openpyxl

from sizekeeper.importing.grid import address, place

FOLDER = Path(__file__).parent.parent / "data" / "layouts"
NAMES = sorted(path.name.removesuffix(".expected.toml") for path in FOLDER.glob("*.expected.toml"))
PAGES = {path.stem for path in FOLDER.glob("*.html")}
"""The layouts of ours that are web pages; the others are texts, kept as CSV."""
SAMPLES = sorted(path.name.removesuffix(".expected.json") for path in FOLDER.glob("*.expected.json"))
PER_CM = {"cm": Fraction(1), "in": Fraction(254, 100), "mm": Fraction(1, 10)}


def expected(name: str) -> dict[str, Any]:
    """The reading written by hand for a layout of ours, as the contract's JSON."""
    told = tomllib.loads((FOLDER / f"{name}.expected.toml").read_text(encoding="utf-8"))
    return {"tables": [_table(table) for table in told["tables"]], "flags": told["flags"]}


def layout(name: str) -> Path:
    """The file of a layout of ours."""
    return FOLDER / f"{name}.{'html' if name in PAGES else 'csv'}"


def sample(name: str) -> dict[str, Any]:
    """The reading that came with a sample."""
    made: dict[str, Any] = json.loads((FOLDER / f"{name}.expected.json").read_text(encoding="utf-8"))
    return made


def _table(table: dict[str, Any]) -> dict[str, Any]:
    return {**table, "rows": [_row(text) for text in table["rows"]]}


def _row(text: str) -> dict[str, Any]:
    """`bust | in x2 | 18 1/2, - | B3> | view A`: measure, unit and factor, figures as printed, cells, extras."""
    measure, unit, figures, cells, *extra = (part.strip() for part in text.split(" | "))
    unit, _, times = unit.partition(" x")
    ends = [_ends(figure.strip(), PER_CM[unit] * int(times or 1)) for figure in figures.split(",")]
    ranged = any(low != high for low, high in ends)
    row: dict[str, Any] = {
        "measure": measure,
        "unit_in_file": unit,
        "written_as": {"": "full", "2": "half", "4": "quarter"}[times],
        "cm": [None if low is None or high is None else float((low + high) / 2) for low, high in ends],
        "cm_low": [None if low is None else float(low) for low, _ in ends] if ranged else None,
        "cm_high": [None if high is None else float(high) for _, high in ends] if ranged else None,
        "at": _cells(cells, len(ends)),
        "view": None,
        "variant": None,
        "same_for_all_sizes": "same" in extra,
    }
    return row | {word.split(" ", 1)[0]: word.split(" ", 1)[1] for word in extra if " " in word}


def _ends(figure: str, per_cm: Fraction) -> tuple[Fraction | None, Fraction | None]:
    if figure == "-":
        return None, None
    low, _, high = figure.partition("-")
    return _number(low) * per_cm, _number(high or low) * per_cm


def _number(text: str) -> Fraction:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


def _cells(text: str, count: int) -> list[str]:
    if text[-1] not in ">v=":
        return [cell.strip() for cell in text.split(",")]
    row, column = place(text[:-1])
    down, across = {">": (0, 1), "v": (1, 0), "=": (0, 0)}[text[-1]]
    return [address(row + i * down, column + i * across) for i in range(count)]


def differences(got: dict[str, Any], wanted: dict[str, Any], *, exact_flags: bool = True) -> list[str]:
    """Every point in which a reading differs from the one wanted; empty where they agree."""
    found = [f"{len(got['tables'])} tables"] if len(got["tables"]) != len(wanted["tables"]) else []
    for ours, theirs in zip(got["tables"], wanted["tables"], strict=False):
        found += [f"{key}: {ours[key]}" for key in theirs if key != "rows" and ours[key] != theirs[key]]
        names = [row["measure"] for row in ours["rows"]]
        if names != [row["measure"] for row in theirs["rows"]]:
            found.append(f"rows: {names}")
        for a, b in zip(ours["rows"], theirs["rows"], strict=False):
            found += [f"{b['measure']} {key}: {a[key]}" for key in b if key in a and not _same(a[key], b[key])]
    return found + _flag_differences(got["flags"], wanted["flags"], exact=exact_flags)


def _same(ours: Any, theirs: Any) -> bool:  # noqa: ANN401 - any value of the contract
    if isinstance(theirs, list) and isinstance(ours, list) and len(ours) == len(theirs):
        return all(_near(a, b) for a, b in zip(ours, theirs, strict=True))
    return bool(ours == theirs)


def _near(ours: object, theirs: object) -> bool:
    if isinstance(ours, float) and isinstance(theirs, float):
        return abs(ours - theirs) < 0.05
    return ours == theirs


def _flag_differences(got: list[dict[str, Any]], wanted: list[Any], *, exact: bool) -> list[str]:
    """Flags wanted and absent, and, where exact, those that nobody asked for."""
    asked = [(w["code"], w.get("at")) if isinstance(w, dict) else _asked(w) for w in wanted]
    found = [f"no flag {code} {at or ''}" for code, at in asked if not _has(got, code, at)]
    if exact:
        ours, theirs = Counter(flag["code"] for flag in got), Counter(code for code, _ in asked)
        found += [f"flags {code} {n} times instead of {theirs[code]}" for code, n in ours.items() if n != theirs[code]]
    return found


def _asked(text: str) -> tuple[str, str | None]:
    code, _, at = text.partition("@")
    return code, at or None


def _has(got: list[dict[str, Any]], code: str, at: str | None) -> bool:
    return any(flag["code"] == code and at in (None, flag["at"]) for flag in got)


def grid(name: str) -> list[list[str]]:
    """The cells of a layout of ours, as its CSV has them."""
    text = (FOLDER / f"{name}.csv").read_text(encoding="utf-8")
    delimiter = (
        next((d for d in ("\t", ";", "|", ",") if d in text), "\0")
        if "#" not in (FOLDER / f"{name}.expected.toml").read_text()
        else "\0"
    )
    if delimiter == "\0":
        return [[line] for line in text.splitlines()]
    return list(csv.reader(io.StringIO(text), delimiter=delimiter))


def as_workbook(name: str, path: Path) -> Path:
    """The same layout as a workbook, with plain numbers stored as numbers."""
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.title = "Sheet1"
    for r, row in enumerate(grid(name), 1):
        for c, text in enumerate(row, 1):
            if text.strip():
                plain = re.fullmatch(r"(?!0\d)\d+(?:\.\d+)?", text.strip())
                sheet.cell(r, c).value = (float(text) if "." in text else int(text)) if plain else text.strip()
    book.save(path)
    return path
