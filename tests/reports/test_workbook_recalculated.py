"""The workbook worked out by another program gives our numbers, as written and after a measurement is changed."""

from __future__ import annotations

import io
import random
import shutil
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from typing import TYPE_CHECKING

import openpyxl
import pytest

from sizekeeper.core.chart import Chart
from sizekeeper.core.length import CM_PER
from sizekeeper.core.notation import CENTIMETRES, INCHES, Notation
from sizekeeper.core.places import place_words
from sizekeeper.core.preference import EasePreference, RegionPreference
from sizekeeper.core.result import BodyFigure
from sizekeeper.core.sharing import share
from sizekeeper.core.verdict import decide
from sizekeeper.reports.household_workbook import household_workbook
from sizekeeper.reports.workbook import workbook
from tests.build import DAY, body, chart
from tests.fits import BODY_CHART, FINISHED, IN
from tests.households import DRESS, called, envelope, household
from tests.reports.sheets import HOSTILE, found_for, hostile, sheet, table_for

if TYPE_CHECKING:
    from collections.abc import Callable

    from openpyxl.worksheet.worksheet import Worksheet

    from sizekeeper.core.comparison import Comparison
    from sizekeeper.core.result import Candidate, Fit, RegionAt
    from sizekeeper.reports.sheet import Sheet

pytestmark = pytest.mark.libreoffice

HER = body("in", bust=38, waist=28, hip=43)
WIDE = chart(
    "finished", "36 38 40 42 44 46", bust="92, 97, 101, 105, 109, 114", waist="72, 76, 80, 84, 88, 93",
    hip="98, 102, 106, 110, 114, 119", upper_arm="30, 31.2, 32.4, 33.6, 34.8, 36",
)  # fmt: skip
RANGES = chart("body", "36 38 40 42 44 46", bust="82..85, 86..89, 90..93, 94..97, 98..102, 103..107",
               waist="64..67, 68..71, 72..75, 76..79, 80..84, 85..89", hip="90, 94, 98, 102, 106, 111")  # fmt: skip
GAPS = chart("finished", "38 40 42 44", bust="97, -, 105, 109", waist="76, 80, 84, -", hip="102, 106, 110, 114")


@dataclass(frozen=True)
class Case:
    """A body against charts, and what she changes in the workbook; figures in cm, in the page's unit once written."""

    her: Mapping[str, BodyFigure]
    finished: Chart | None = None
    body_chart: Chart | None = None
    notation: Notation = CENTIMETRES
    changed: Mapping[str, float] = field(default_factory=dict)
    question: Mapping[str, object] = field(default_factory=dict)

    @property
    def sheet(self) -> Sheet:
        """The sheet before anything is changed."""
        return sheet(table_for(*found_for(self.her, self.finished, self.body_chart, **self.question), self.notation),
                     self.notation)  # fmt: skip

    def found(self) -> tuple[Comparison, Fit]:
        """What the program itself says of the changed body."""
        her = {m: replace(f, cm=self.changed.get(m, f.cm)) for m, f in self.her.items()}
        return found_for(her, self.finished, self.body_chart, **self.question)

    def written(self) -> bytes:
        """The workbook, its body figures changed as she would."""
        data = workbook(self.sheet)
        if not self.changed:
            return data
        book = openpyxl.load_workbook(io.BytesIO(data))
        for index, row in enumerate(self.sheet.table.rows):
            if row.measure in self.changed:
                cell = book.worksheets[0].cell(7 + index, 2)
                cell.value = self.changed[row.measure] / float(CM_PER[self.notation.unit])
        out = io.BytesIO()
        book.save(out)
        return out.getvalue()


def _random_cases() -> dict[str, Case]:
    pick = random.Random(11)  # noqa: S311 - any bodies will do, the same ones each time
    cases = {}
    for number in range(8):
        figures = {m: pick.uniform(low, high) for m, low, high in (("bust", 82, 108), ("waist", 62, 92),
                   ("hip", 88, 114), ("upper_arm", 24, 33))}  # fmt: skip
        new = {m: figure + pick.uniform(-6, 6) for m, figure in figures.items()}
        cases[f"random {number}"] = Case(
            body(**figures),
            WIDE,
            RANGES,
            INCHES if number % 2 else CENTIMETRES,
            new,
            {"roles": dict.fromkeys(("waist", "hip", "upper_arm"), "counted")},
        )
    return cases


KNIT = {"garment": "top", "stretch": 0.4}
OWN = EasePreference("dress", regions={"waist": RegionPreference(band="easy"), "hip": RegionPreference(band="loose")})
CASES: dict[str, Case] = {
    "woven in inches": Case(HER, FINISHED, BODY_CHART, INCHES),
    "woven in inches, a waist of 31": Case(HER, FINISHED, BODY_CHART, INCHES, {"waist": 31 * 2.54}),
    "a bust that no size goes round": Case(HER, FINISHED, BODY_CHART, INCHES, {"bust": 43 * 2.54}),
    "a waist that does not close": Case(HER, FINISHED, BODY_CHART, INCHES, {"waist": 31.5 * 2.54}),
    "knit": Case(body(bust=104, waist=82, hip=108), WIDE, question=KNIT),
    "knit, a larger bust": Case(body(bust=104, waist=82, hip=108), WIDE, changed={"bust": 111}, question=KNIT),
    "designer, ranges": Case(body(bust=91, waist=77.5, hip=99), WIDE, RANGES, question={"mode": "designer"}),
    "designer, changed": Case(
        body(bust=91, waist=77.5, hip=99), WIDE, RANGES, INCHES, {"bust": 97.5, "hip": 104}, {"mode": "designer"}
    ),
    "body chart, ranges": Case(body(bust=91, waist=77.5, hip=99), None, RANGES),
    "body chart, changed": Case(body(bust=91, waist=77.5, hip=99), None, RANGES, INCHES, {"waist": 86, "bust": 101}),
    "gaps": Case(body(bust=94, waist=77, hip=101), GAPS),
    "gaps, changed": Case(body(bust=94, waist=77, hip=101), GAPS, changed={"bust": 99.5, "hip": 103}),
    "a waist that gathers": Case(body(bust=94, waist=66, hip=98), WIDE, question={"roles": {"waist": "adjustable"}}),
    "without a lead": Case(body(waist=77, hip=101), WIDE, changed={"hip": 118}),
    "her own bands": Case(body(bust=94, waist=77, hip=98), WIDE, question={"preference": OWN}),
    "one size": Case(body(bust=94), chart("finished", "one", bust="101")),
    **_random_cases(),
}  # fmt: skip

HOUSEHOLD = household(
    called("Ada", bust="95", waist="77"),
    called("Bea", bust="101.5", waist="86"),
    against=envelope(WIDE, pattern=replace(DRESS, fabric="knit", stretch=0.3)),
)


@pytest.fixture(scope="module")
def recalculated(tmp_path_factory: pytest.TempPathFactory) -> Callable[..., Worksheet]:
    """A page of a case after LibreOffice has worked it out; all in one run, because it starts slowly."""
    program = shutil.which("soffice")
    if program is None:
        pytest.skip("LibreOffice Calc is not installed (Debian: libreoffice-calc)")
    folder = tmp_path_factory.mktemp("workbooks")
    files = {name: folder / f"{number}.xlsx" for number, name in enumerate((*CASES, *HOSTILE, "household"))}
    for name, file in files.items():
        file.write_bytes(_written(name))
    out = folder / "out"
    subprocess.run(  # noqa: S603 - our own files
        [program, "--headless", f"-env:UserInstallation={(folder / 'profile').as_uri()}", "--convert-to", "xlsx",
         "--outdir", str(out), *map(str, files.values())],
        check=True, capture_output=True, timeout=300,
    )  # fmt: skip

    def page(name: str, number: int = 0) -> Worksheet:
        return openpyxl.load_workbook(out / files[name].name, data_only=True).worksheets[number]

    return page


def _written(name: str) -> bytes:
    """The workbook of a case, of a hostile text, or of the household."""
    if name == "household":
        return household_workbook(HOUSEHOLD, share(HOUSEHOLD.standings, HOUSEHOLD.labels), IN, on=DAY)
    return CASES[name].written() if name in CASES else workbook(hostile(name))


def number(page: Worksheet, row: int, column: int, notation: Notation) -> float | None:
    """A length on the page, in cm; None where the cell shows nothing."""
    value = page.cell(row, column).value
    return None if value in (None, "") else float(str(value)) * float(CM_PER[notation.unit])


def near(cm: float | None) -> object:
    return None if cm is None else pytest.approx(cm, abs=1e-6)


def shown(case: Case, comparison: Comparison, fit: Fit) -> list[tuple[Candidate, Mapping[str, RegionAt]]]:
    """What the program says of each size that has a column, in order."""
    by_words = {place_words(c.position, fit.labels): c for c in fit.candidates}
    found = [by_words[column.words] for column in case.sheet.table.columns]
    return [(candidate, comparison.at(candidate.position)) for candidate in found]


@pytest.mark.parametrize("name", CASES)
def test_ease_and_band_of_every_size_are_ours(name: str, recalculated: Callable[..., Worksheet]) -> None:
    case, page = CASES[name], recalculated(name)
    comparison, fit = case.found()
    for size, (_, regions) in enumerate(shown(case, comparison, fit)):
        for index, region in enumerate(fit.regions):
            at, cell = regions[region.measure], (7 + index, 5 + 2 * size)
            amount = at.diff_cm if case.finished is None else at.ease_cm
            assert number(page, *cell, case.notation) == near(amount), (size, region.measure)
            assert (page.cell(cell[0], cell[1] + 1).value or None) == at.band, (size, region.measure)


@pytest.mark.parametrize("name", CASES)
def test_the_misfit_of_every_size_is_ours(name: str, recalculated: Callable[..., Worksheet]) -> None:
    case, page = CASES[name], recalculated(name)
    comparison, fit = case.found()
    row = 7 + len(fit.regions)
    found = [number(page, row, 5 + 2 * size, case.notation) for size in range(len(case.sheet.table.columns))]
    assert found == [near(candidate.misfit_cm) for candidate, _ in shown(case, comparison, fit)]


@pytest.mark.parametrize("name", CASES)
def test_the_size_marked_best_is_ours(name: str, recalculated: Callable[..., Worksheet]) -> None:
    case, page = CASES[name], recalculated(name)
    comparison, fit = case.found()
    there = [candidate for candidate, _ in shown(case, comparison, fit)]
    best = decide(sorted(there, key=lambda c: c.rank), None, comparison.regions.lead)
    row = 7 + len(fit.regions)
    marked = [c.position for size, c in enumerate(there) if page.cell(row, 6 + 2 * size).value == "best"]
    assert marked == [best.position]


@pytest.mark.parametrize("name", [name for name in CASES if CASES[name].finished is not None])
def test_where_a_size_will_not_close_is_ours(name: str, recalculated: Callable[..., Worksheet]) -> None:
    case, page = CASES[name], recalculated(name)
    comparison, fit = case.found()
    names = {row.measure: row.name for row in case.sheet.table.rows}
    for size, (_, regions) in enumerate(shown(case, comparison, fit)):
        short = [names[region.measure] for region in fit.regions if (regions[region.measure].short_cm or 0) > 1e-6]
        assert (page.cell(8 + len(fit.regions), 5 + 2 * size).value or "") == ", ".join(short)


def test_the_cases_hold_what_they_are_meant_to() -> None:
    bands = {at.band for case in CASES.values() for _, rs in shown(case, *case.found()) for at in rs.values()}
    assert {"tight", "close", "easy", "loose", None} <= bands
    assert any(
        not c.wearable
        for c, _ in shown(CASES["a bust that no size goes round"], *CASES["a bust that no size goes round"].found())
    )
    assert any(c.missing for c, _ in shown(CASES["gaps"], *CASES["gaps"].found()))


@pytest.mark.parametrize("text", HOSTILE)
def test_what_people_type_is_still_a_text_there(text: str, recalculated: Callable[..., Worksheet]) -> None:
    cell = recalculated(text)["A1"]
    assert cell.data_type == "s"
    assert str(cell.value).strip()[:4] == text.replace("\x00", "").replace("\x07", "").strip()[:4]


def test_ease_and_band_of_everybody_in_every_size_are_ours(recalculated: Callable[..., Worksheet]) -> None:
    page, seen = recalculated("household", 1), []
    for measure in HOUSEHOLD.measures:
        top = next(c.row for c in page["A"] if c.value == IN.name(measure))
        for index, standing in enumerate(HOUSEHOLD.standings):
            for size, label in enumerate(HOUSEHOLD.labels):
                at, cell = standing.at(label, measure), (top + 2 + index, 6 + 2 * size)
                assert at is not None
                assert number(page, *cell, INCHES) == near(at.ease_cm)
                assert page.cell(cell[0], cell[1] + 1).value == at.band
                seen.append(at.band)
    assert len(set(seen)) == 4
