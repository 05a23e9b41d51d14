"""The blank charts that come with the program: their measures to start a chart with, and copies to fill in."""

from __future__ import annotations

import csv
import shutil
from dataclasses import dataclass, replace
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFileDialog, QWidget

from sizekeeper import assets
from sizekeeper.core.chart import Cell, ChartRow
from sizekeeper.core.measure_search import find_measure, own_measure
from sizekeeper.errors import StoreError

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.measure import Measures

KINDS = {"xlsx": "spreadsheet (XLSX)", "csv": "plain table (CSV)"}
"""The kinds of file each template comes in, in words."""


@dataclass(frozen=True, slots=True)
class Template:
    """A blank chart: what it is for, and the names of the measures in its two tables."""

    title: str
    stem: str
    body: tuple[str, ...]
    finished: tuple[str, ...]

    def names(self, kind: ChartKind) -> tuple[str, ...]:
        """The names of the measures in one of its tables."""
        return self.body if kind == "body" else self.finished

    def path(self, kind: str) -> Path:
        """The file of the template, as "csv" or "xlsx"."""
        return assets.chart_file("templates", f"{self.stem}.{kind}")


def templates() -> list[Template]:
    """The templates that come with the program, by title."""
    found = [_read(path) for path in sorted(assets.chart_file("templates").glob("*.csv"))]
    return sorted(found, key=lambda template: template.title)


def _read(path: Path) -> Template:
    """A template: its title up to the colon, and below each heading the measures that follow the sizes' line."""
    with path.open(encoding="utf-8-sig", newline="") as file:
        firsts = [line[0].strip() if line else "" for line in csv.reader(file)]
    tables: dict[str, list[str]] = {"body": [], "finished": []}
    kind, listing = "", False
    for first in firsts[1:]:
        word = first.casefold()
        if word.startswith(("body", "finished")):
            kind, listing = ("body" if word.startswith("body") else "finished"), False
        elif kind and word == "size":
            listing = True
        elif kind and listing and first:
            tables[kind].append(first)
    return Template(firsts[0].partition(":")[0], path.stem, tuple(tables["body"]), tuple(tables["finished"]))


def with_template(chart: Chart, template: Template, measures: Measures) -> Chart:
    """The chart with the measures of a template; measures it has already stay, empty rows of others go."""
    wanted = []
    for name in template.names(chart.kind):
        known = find_measure(measures, name, chart.kind)
        wanted.append((known.id, "") if known else (own_measure(name), name))
    blank = tuple(Cell() for _ in chart.sizes)
    kept = {row.measure: row for row in chart.rows}
    rows = [kept.pop(measure, ChartRow(measure, blank, label)) for measure, label in wanted]
    written = [row for row in kept.values() if any(cell.text for cell in row.cells)]
    return replace(chart, rows=(*rows, *written))


class SaveTemplate:
    """Asks where the copy of a blank template should lie, and writes it."""

    @classmethod
    def ask(cls, template: Template, kind: str, *, parent: QWidget) -> QFileDialog:
        """Open the question over a window."""
        dialog = QFileDialog(parent, "Save blank template", f"{template.stem}.{kind}")
        dialog.setAcceptMode(QFileDialog.AcceptMode.AcceptSave)
        dialog.setDefaultSuffix(kind)
        dialog.open()
        return dialog

    @staticmethod
    def write(template: Template, kind: str, into: Path) -> None:
        """Copy the template's file; raises StoreError naming the place."""
        try:
            shutil.copyfile(template.path(kind), into)
        except OSError as error:
            raise StoreError(f"“{into}” could not be written: {error.strerror or error}.") from error
