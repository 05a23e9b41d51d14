"""A table of people is told from a chart of sizes, before anybody's measurements are taken for a size."""

from __future__ import annotations

from pathlib import Path

import pytest

from sizekeeper.core.learned import Learned
from sizekeeper.importing.opened import open_file
from sizekeeper.importing.people_open import open_people_pasted
from sizekeeper.importing.people_seen import holds_people

LAYOUTS = Path(__file__).parents[1] / "data" / "layouts"
CHARTS = [path for path in sorted(LAYOUTS.iterdir()) if path.suffix in (".csv", ".xlsx", ".html", ".txt")]
PEOPLE = {
    "a row each": "Name\tBust\tWaist\tHip\nMarit\t92\t74\t100\nSolveig\t101\t84\t108",
    "given and family names": "First name,Surname,Chest,Waist\nJon,Dahl,98,84\nPer,Lie,104,92",
    "in German": "Name;Brustumfang;Taille;Hüfte\nAnna;92;74;100\nBea;88,5;70;96",
    "a column each": "Name\tMarit\tSolveig\nBust\t92\t101\nWaist\t74\t84\nHip\t100\t108",
    "names without a heading": "\tBust\tWaist\tHip\nMarit\t92\t74\t100\nSolveig\t101\t84\t108",
}
OTHERS = {
    "sizes under a name": "Name\tBust\tWaist\nS\t84\t66\nM\t92\t74",
    "sizes across": "Size\t38\t40\nBust\t88\t92\nWaist\t70\t74",
    "nothing of the body": "Name\tStreet\tTown\nMarit\tHill Road\tVik",
    "one measure": "Name\tHeight\nMarit\t170\nSiv\t164",
    "one name twice": "Name\tBust\tWaist\nMarit\t92\t74\nMarit\t93\t75",
}


@pytest.mark.parametrize("table", PEOPLE.values(), ids=PEOPLE)
def test_people_with_measurements_are_seen(table: str) -> None:
    assert holds_people(open_people_pasted("", table)[1])


@pytest.mark.parametrize("table", OTHERS.values(), ids=OTHERS)
def test_sizes_and_lists_are_not_taken_for_people(table: str) -> None:
    assert not holds_people(open_people_pasted("", table)[1])


@pytest.mark.parametrize("path", CHARTS, ids=lambda path: path.name)
def test_no_chart_is_taken_for_people(path: Path) -> None:
    assert not holds_people(open_file(path, Learned()).sheets)
