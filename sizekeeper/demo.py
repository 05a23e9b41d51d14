"""The demo household: four invented people, six invented patterns and three makes, read from charts/demo.

Every number is invented. Together they show a straight size below what the body chart says, a body in three sizes, a
tie within measuring error, a body past a pattern's last size, and a knit with negative ease.
"""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING, Literal, TypeVar, get_args

from sizekeeper import assets
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.preference import GARMENTS
from sizekeeper.demo_makes import demo_makes
from sizekeeper.demo_pieces import demo_pieces
from sizekeeper.importing.person_file import read_person_file
from sizekeeper.importing.read import read_file
from sizekeeper.importing.to_chart import to_charts
from sizekeeper.importing.toml_fields import TomlFields, read_toml

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from pathlib import Path

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.length import Length
    from sizekeeper.core.make import Make
    from sizekeeper.core.person import Person
    from sizekeeper.core.piece import Pieces

PEOPLE = ("tilde", "ottilie", "jorun", "pip")
PATTERNS = ("marlet-dress", "ombry-shirt", "kestin-trousers", "wimmel-top", "brackwater-jacket", "pottle-pinafore")

_Fabric = Literal["woven", "knit"]
_Unit = Literal["cm", "in"]
_Word = TypeVar("_Word", bound=str)
_FIELDS = (
    "title", "publisher", "garment", "fabric", "stretch", "seam_allowance", "drafted_difference", "drafted_height",
    "unit", "child", "views", "notes",
)  # fmt: skip


def demo_values(new_id: Callable[[], str]) -> list[Person | Pattern | Chart | Pieces | Make]:
    """Everything of the demo household: the people, each pattern with its charts and its pieces, then the makes.

    Args:
        new_id: makes an id that no other entry has.

    Raises:
        ReadError: a file of the demo is missing or damaged.
    """
    people = [_person(assets.chart_file("demo", "people", f"{name}.toml"), new_id()) for name in PEOPLE]
    values: list[Person | Pattern | Chart | Pieces | Make] = [*people]
    for name in PATTERNS:
        folder = assets.chart_file("demo", "patterns", name)
        pattern = demo_pattern(folder / "pattern.toml", new_id())
        values += [pattern, *_charts(folder, pattern, new_id)]
        if (pieces := demo_pieces(folder, pattern, new_id())) is not None:
            values.append(pieces)
    patterns = [value for value in values if isinstance(value, Pattern)]
    return [*values, *demo_makes(assets.chart_file("demo", "makes.toml"), people, patterns, new_id)]


def _person(path: Path, person_id: str) -> Person:
    return replace(read_person_file(path), id=person_id)


def demo_pattern(path: Path, pattern_id: str) -> Pattern:
    """The pattern that a pattern.toml describes.

    Raises:
        ReadError: the file is missing or says something unclear.
    """
    fields = TomlFields(path.name, read_toml(path))
    fields.known(fields.table, _FIELDS, "in a pattern's file")
    unit = _one_of(fields, "unit", get_args(_Unit))
    return Pattern(
        id=pattern_id,
        title=fields.text("title"),
        publisher=fields.text("publisher"),
        garment=_one_of(fields, "garment", GARMENTS),
        fabric=_one_of(fields, "fabric", get_args(_Fabric)),
        stretch=float(fields.table.get("stretch", 0)),
        seam_allowance=_length(fields, "seam_allowance", unit),
        drafted_difference=_length(fields, "drafted_difference", unit),
        drafted_height=_length(fields, "drafted_height", unit),
        views=fields.texts("views"),
        unit=unit,
        child=fields.flag("child"),
        notes=fields.text("notes"),
    )


def _one_of(fields: TomlFields, field: str, words: Sequence[_Word]) -> _Word:
    for word in words:
        if fields.table.get(field) == word:
            return word
    raise fields.fail(f"“{field}” must be one of {', '.join(words)}.")


def _length(fields: TomlFields, field: str, unit: _Unit) -> Length | None:
    return fields.length(fields.table[field], unit, field) if field in fields.table else None


def _charts(folder: Path, pattern: Pattern, new_id: Callable[[], str]) -> Iterator[Chart]:
    """The pattern's charts: of one workbook, or of body.csv, finished.csv and finished-VIEW.csv for each view."""
    files = {"chart.xlsx": "", "body.csv": "", "finished.csv": "", **{f"finished-{v}.csv": v for v in pattern.views}}
    for name, view in files.items():
        if (folder / name).is_file():
            for chart in to_charts(read_file(folder / name), pattern.id, new_id):
                yield replace(chart, view=view or chart.view)
