"""Finds the charts and resources, in a checkout or installed, and loads the tables among them."""

from __future__ import annotations

import functools
from pathlib import Path
from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from sizekeeper.core.ease import EaseDefaults
    from sizekeeper.core.measure import Measure, Measures
    from sizekeeper.core.piece import Piece
    from sizekeeper.core.preference import Garment

_PACKAGE = Path(__file__).parent


def folder(name: str) -> Path:
    """The `charts` or `resources` folder: inside the installed package, else beside it in a checkout.

    Raises:
        FileNotFoundError: neither place has it, so the installation is broken.
    """
    for place in (_PACKAGE / name, _PACKAGE.parent / name):
        if place.is_dir():
            return place
    raise FileNotFoundError(f"the folder “{name}” is missing from the installation")


def resource(*parts: str) -> Path:
    """The path of a file below `resources`."""
    return folder("resources").joinpath(*parts)


def chart_file(*parts: str) -> Path:
    """The path of a file below `charts`."""
    return folder("charts").joinpath(*parts)


def _table(name: str) -> dict[str, Any]:
    import tomllib  # noqa: PLC0415 - as above

    return tomllib.loads(resource(name).read_text(encoding="utf-8"))


@functools.cache
def measures() -> Measures:
    """Every measure the program knows, from resources/measures.toml, in body order."""
    from sizekeeper.core.measure import Measures  # noqa: PLC0415 - who only wants a file's path loads no values

    return Measures([_measure(key, row) for key, row in _table("measures.toml").items()])


def _measure(key: str, row: dict[str, Any]) -> Measure:
    from sizekeeper.core.measure import Measure  # noqa: PLC0415 - as above

    span = row.get("human_cm")
    return Measure(
        id=key,
        name=row["name"],
        dimension=row["dimension"],
        use=row["use"],
        order=row["order"],
        how=row["how"],
        synonyms={language: tuple(names) for language, names in row.get("synonyms", {}).items()},
        iso_name=row.get("iso_name", ""),
        iso_clause=row.get("iso_clause", ""),
        tolerance_cm=row.get("tolerance_cm", {}),
        human_cm=(span[0], span[1]) if span else None,
    )


@functools.cache
def ease_defaults() -> EaseDefaults:
    """The band edges nobody has changed, from resources/ease.toml."""
    from sizekeeper.core.ease import EaseDefaults  # noqa: PLC0415 - as above

    table = _table("ease.toml")
    knit = table["knit"]
    return EaseDefaults(
        woven={measure: _edges(row) for measure, row in table["woven"].items()},
        skirt_trousers={measure: _edges(row) for measure, row in table["skirt_trousers"].items()},
        added={kind: {measure: row["add"] for measure, row in table[kind].items()} for kind in ("jacket", "coat")},
        knit_from=knit["from_stretch"],
        knit_most=knit["most_share"],
        knit_loose=knit["loose_share"],
        knit_close=1 / knit["close_divisor"],
    )


def _edges(row: dict[str, Any]) -> tuple[float, float, float]:
    a, b, c = row["edges"]
    return (a, b, c)


@functools.cache
def starter_pieces(garment: Garment) -> tuple[Piece, ...]:
    """The pieces a plain garment of a kind usually has, from resources/pieces.toml, to be edited to the pattern."""
    return tuple(_piece(str(number), row) for number, row in enumerate(_table("pieces.toml")[garment], start=1))


def _piece(piece: str, row: dict[str, Any]) -> Piece:
    from sizekeeper.core.piece import Piece  # noqa: PLC0415 - as above

    return Piece(
        id=piece,
        name=row["name"],
        cut=row.get("cut", 1),
        on_fold=row.get("fold", False),
        layer=row.get("layer", "self"),
        role=row["role"],
        levels=tuple(row["levels"]),
        line=row.get("line", False),
        dart=row.get("dart", False),
        around=row.get("around"),
    )
