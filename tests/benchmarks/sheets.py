"""One decision sheet as PDF against a bare typst compile of an empty page with the same fonts, and runs of many sheets.

Twice: as whole processes, as somebody waits for a file from the terminal, and within one process, where the compiler
is kept. The texts of every sheet are new, so that nothing that was laid out before is taken again.

Run by hand: `.venv/bin/python -m tests.benchmarks.sheets`. Aim: at most 3 times the empty page; 25, 50 and 100 sheets
in one run take times in proportion.
"""

from __future__ import annotations

import itertools
import os
import pickle
import statistics
import subprocess
import sys
import tempfile
import time
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.core.make import Make
from sizekeeper.core.planned import plan_ahead
from sizekeeper.demo import demo_values
from sizekeeper.reports.pdf import pdf
from sizekeeper.reports.sheet_making import decision_sheet
from sizekeeper.reports.snapshot import Snapshot
from tests.build import DAY

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.found import Found
    from sizekeeper.reports.sheet import Sheet, SheetRow

ROUNDS = 9
EMPTY = '#set page("a4")\n#set text(font: "Libertinus Serif")\n#let _ = sys.inputs.at("data", default: "")\n'
BARE = f"""
import typst
own = typst.Fonts(include_system_fonts=False)
typst.Compiler({EMPTY!r}.encode(), font_paths=own, ignore_system_fonts=True).compile()
"""
OURS = """
import pickle, sys
from sizekeeper.reports.pdf import pdf
pdf(pickle.load(open(sys.argv[1], "rb")), "a4")
"""
COUNT = itertools.count()


def sheets() -> list[Sheet]:
    """The demo household's sheets: four people, six patterns."""
    snapshot = Snapshot(demo_values(lambda: str(next(COUNT))))
    found = [snapshot.found(pairing) for pairing in snapshot.pairings(snapshot.people(), snapshot.patterns())]
    return [_sheet(one) for one in found]


def _sheet(found: Found) -> Sheet:
    make = Make("make", found.person.id, found.pattern.id, found.view)
    return decision_sheet(found, plan_ahead(found, make), today=DAY, names=assets.measures().name)


def renewed(sheet: Sheet) -> Sheet:
    """A sheet with other texts of the same length everywhere, so that nothing of it was laid out before."""
    mark = f"{next(COUNT):05d}"
    rows = tuple(_renewed_row(row, mark) for row in sheet.table.rows)
    trace = tuple(replace(piece, name=f"{piece.name[:-3]}{mark[-3:]}") for piece in sheet.trace)
    person, table = f"{sheet.person} {mark}", replace(sheet.table, rows=rows)
    return replace(sheet, person=person, table=table, trace=trace, doubts=tuple(f"{d} {mark}" for d in sheet.doubts))


def _renewed_row(row: SheetRow, mark: str) -> SheetRow:
    cells = tuple(replace(cell, printed=f"{cell.printed[:2]}{mark[-3:]}") for cell in row.cells)
    return replace(row, name=f"{row.name}{mark[-2:]}", cells=cells)


def process_ms(code: str, *arguments: str) -> float:
    """How long a whole process takes, what is compiled of its modules being kept, as it is for everybody."""
    kept = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
    start = time.perf_counter()
    subprocess.run([sys.executable, "-c", code, *arguments], check=True, env=kept)  # noqa: S603 - our own code
    return (time.perf_counter() - start) * 1000


def within_ms(run: Callable[[], object]) -> float:
    """The median time of a run within this process."""
    run()
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        run()
        times.append((time.perf_counter() - start) * 1000)
    return statistics.median(times)


def as_processes(sheet: Sheet) -> None:
    """Print one sheet against the empty page, both as whole processes, in turns."""
    with tempfile.TemporaryDirectory() as folder:
        kept = Path(folder) / "sheet"
        kept.write_bytes(pickle.dumps(sheet))
        for code in (BARE, OURS):
            process_ms(code, str(kept))
        pairs = [(process_ms(BARE), process_ms(OURS, str(kept))) for _ in range(ROUNDS)]
    bare, own = (statistics.median(column) for column in zip(*pairs, strict=True))
    print(f"whole processes: empty page {bare:.0f} ms, a sheet {own:.0f} ms, ratio {own / bare:.1f} (aim: at most 3)")


def within_one(sheet: Sheet) -> None:
    """Print one sheet against the empty page, compiler and fonts kept."""
    import typst  # noqa: PLC0415 - wanted here only

    empty = typst.Compiler(font_paths=typst.Fonts(include_system_fonts=False))
    bare = within_ms(lambda: empty.compile(EMPTY.encode(), sys_inputs={"data": str(next(COUNT))}))
    own = within_ms(lambda: pdf(renewed(sheet), "a4"))
    print(f"within a process: empty page {bare:.1f} ms, a sheet with new texts {own:.0f} ms, ratio {own / bare:.0f}")


def runs(all_sheets: list[Sheet]) -> None:
    """Print how long runs of many different sheets take."""
    for many in (25, 50, 100):
        start = time.perf_counter()
        for sheet in itertools.islice(itertools.cycle(all_sheets), many):
            pdf(renewed(sheet), "a4")
        took = time.perf_counter() - start
        print(f"{many} sheets in one run: {took:.1f} s, {took / many * 1000:.0f} ms each")


def main() -> None:
    """Print all three."""
    made = sheets()
    usual = max(made, key=lambda sheet: len(sheet.trace))
    as_processes(usual)
    within_one(usual)
    runs(made)


if __name__ == "__main__":
    main()
