"""From one keystroke in a measurement to the repainted Fit page, in a library of 50 people and 300 patterns.

Run by hand: `.venv/bin/python -m tests.benchmarks.keystroke`. Aim: at most 16 ms median.
"""

from __future__ import annotations

import os
import statistics
import tempfile
import time
from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

os.environ.setdefault("QT_QPA_PLATFORM", "offscreen")  # before Qt is loaded

from PySide6.QtCore import QSettings
from PySide6.QtWidgets import QApplication

from sizekeeper.core.chart import Chart
from sizekeeper.core.notation import parse_length
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.demo import demo_values
from sizekeeper.store.codec import new_id
from sizekeeper.store.library import Library
from sizekeeper.store.writer import Writer
from sizekeeper.ui.app import collect_again
from sizekeeper.ui.fit_page import FitPage
from sizekeeper.ui.selection import Selection
from sizekeeper.ui.session import Session
from sizekeeper.ui.settings import Settings

if TYPE_CHECKING:
    from sizekeeper.store.codec import Value

PEOPLE, PATTERNS, KEYSTROKES = 50, 300, 120


def large_library() -> list[Value]:
    """The demo household again and again, until there are enough people and patterns."""
    people: list[Value] = []
    patterns: list[Value] = []
    charts: list[Value] = []
    while len(people) < PEOPLE or len(patterns) < PATTERNS:
        for value in demo_values(new_id):
            kind = people if isinstance(value, Person) else patterns if isinstance(value, Pattern) else charts
            kind.append(value)
    kept = {pattern.id for pattern in patterns[:PATTERNS]}
    return [*people[:PEOPLE], *patterns[:PATTERNS], *(c for c in charts if isinstance(c, Chart) and c.pattern in kept)]


def typed(person: Person, text: str) -> Person:
    """The person with another bust, as a keystroke drafts it."""
    readings = tuple(
        replace(r, text=text, length=parse_length(text, person.unit)) if r.measure == "bust" else r
        for r in person.readings
    )
    return replace(person, readings=readings)


def main() -> None:
    """Print the median and the worst of the keystrokes."""
    app = QApplication([])
    with tempfile.TemporaryDirectory() as folder:
        library = Library.open(Path(folder) / "large.sizekeeper", now=lambda: datetime.now().astimezone())
        library.save("Fill", [(None, value) for value in large_library()])
        writer = Writer(library)
        session, selection = Session(writer), Selection()
        settings = Settings(QSettings(str(Path(folder) / "settings.ini"), QSettings.Format.IniFormat))
        page = FitPage(session, selection, settings)
        page.resize(1000, 740)
        person, pattern = session.people()[0], next(p for p in session.patterns() if p.garment == "dress")
        selection.choose_person(person.id)
        selection.choose_pattern(pattern.id)
        page.show()
        app.processEvents()
        collect_again()
        times = []
        for k in range(KEYSTROKES):
            drafted = typed(person, f"{36 + k % 40 / 8}")
            start = time.perf_counter()
            session.draft(drafted)
            app.processEvents()
            times.append(time.perf_counter() - start)
        writer.close()
        library.close()
    median = statistics.median(times) * 1000
    print(f"keystroke to repainted Fit page: median {median:.1f} ms, worst {max(times) * 1000:.1f} ms (aim: 16 median)")


if __name__ == "__main__":
    main()
