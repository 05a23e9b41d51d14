"""The pieces of a demo pattern: a pieces.toml written by hand, and the envelope's table of fabric beside it."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from sizekeeper.core.piece import CHAINS, LAYERS, LEVEL_ORDER, PIECE_ROLES, Across, Along, Chain, Level, Piece, Pieces
from sizekeeper.importing.fabric_table import FabricTable, read_fabric_file
from sizekeeper.importing.toml_fields import TomlFields, read_toml

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping, Sequence
    from pathlib import Path

    from sizekeeper.core.length import Length
    from sizekeeper.core.pattern import Pattern

_Word = TypeVar("_Word", bound=str)
_FIELDS = (
    "name", "cut", "on_fold", "layer", "role", "levels", "line", "dart", "allowances", "along", "hem", "across",
    "darts", "gathered", "view", "note",
)  # fmt: skip


def demo_pieces(folder: Path, pattern: Pattern, entry: str) -> Pieces | None:
    """The pieces and the table of fabric of a pattern's folder; None where it has neither.

    Args:
        folder: the pattern's folder.
        pattern: the pattern; bare figures are in its unit.
        entry: the id the list gets.

    Raises:
        ReadError: a file is damaged or says something unclear; the sentence names file and field.
    """
    paper, cloth = folder / "pieces.toml", folder / "fabric.csv"
    if not paper.is_file() and not cloth.is_file():
        return None
    pieces, measured_in = _pieces(paper, pattern) if paper.is_file() else ((), "")
    table = FabricTable(cloth.name, pattern.unit, views=pattern.views)
    fabric = read_fabric_file(cloth, table) if cloth.is_file() else ()
    return Pieces(entry, pattern.id, pieces, fabric=fabric, measured_in=measured_in)


def _pieces(path: Path, pattern: Pattern) -> tuple[tuple[Piece, ...], str]:
    """The pieces, and the size along whose lines they were measured."""
    file = TomlFields(path.name, read_toml(path))
    file.known(file.table, ("measured_in", "piece"), "in a file of pieces")
    listed = file.table.get("piece", [])
    if not isinstance(listed, list) or not all(isinstance(one, dict) for one in listed):
        raise file.fail("each piece must be a section: write [[piece]] on a line of its own.")
    pieces = (_piece(TomlFields(path.name, table), pattern, str(number)) for number, table in enumerate(listed, 1))
    return tuple(pieces), file.text("measured_in")


def _piece(fields: TomlFields, pattern: Pattern, entry: str) -> Piece:
    fields.known(fields.table, _FIELDS, "in a piece")
    return Piece(
        id=entry,
        name=fields.text("name"),
        cut=_whole(fields, fields.table, "cut", 1),
        on_fold=fields.flag("on_fold"),
        layer=_one_of(fields, fields.table.get("layer", "self"), LAYERS, "layer"),
        role=_one_of(fields, fields.table.get("role", "other"), PIECE_ROLES, "role"),
        levels=_all_of(fields, fields.texts("levels"), LEVEL_ORDER, "levels"),
        along=tuple(_along(fields, pattern)),
        across=tuple(_across(fields, pattern)),
        line=fields.flag("line"),
        dart=fields.flag("dart"),
        note=fields.text("note"),
        view=_view(fields, pattern),
    )


def _view(fields: TomlFields, pattern: Pattern) -> str:
    """The view of the pattern that a piece is cut for, empty for all."""
    if "view" not in fields.table:
        return ""
    if not pattern.views:
        raise fields.fail("“view” is given, but the pattern has no views.")
    return _one_of(fields, fields.table["view"], pattern.views, "view")


def _along(fields: TomlFields, pattern: Pattern) -> Iterator[Along]:
    included = _whole(fields, fields.section("allowances"), "along", 0)
    hem = fields.length(fields.table["hem"], pattern.unit, "hem") if "hem" in fields.table else None
    chain: Chain
    for chain, length in _figures(fields, "along", CHAINS, pattern):
        yield Along(chain, length, included, hem)


def _across(fields: TomlFields, pattern: Pattern) -> Iterator[Across]:
    included = _whole(fields, fields.section("allowances"), "across", 0)
    darts = dict(_figures(fields, "darts", LEVEL_ORDER, pattern))
    gathered = _all_of(fields, fields.texts("gathered"), LEVEL_ORDER, "gathered")
    level: Level
    for level, width in _figures(fields, "across", LEVEL_ORDER, pattern):
        yield Across(level, width, included, darts.get(level), gathered=level in gathered)


def _figures(
    fields: TomlFields, field: str, words: Sequence[_Word], pattern: Pattern
) -> Iterator[tuple[_Word, Length]]:
    for word, figure in fields.section(field).items():
        yield _one_of(fields, word, words, field), fields.length(figure, pattern.unit, f"{field}.{word}")


def _whole(fields: TomlFields, table: Mapping[str, object], field: str, usual: int) -> int:
    value = table.get(field, usual)
    if isinstance(value, bool) or not isinstance(value, int) or value < 0:
        raise fields.fail(f"“{field}” must be a whole number.")
    return value


def _one_of(fields: TomlFields, value: object, words: Sequence[_Word], field: str) -> _Word:
    for word in words:
        if value == word:
            return word
    raise fields.fail(f"“{field}” must be one of {', '.join(words)}.")


def _all_of(fields: TomlFields, values: Iterable[str], words: Sequence[_Word], field: str) -> tuple[_Word, ...]:
    return tuple(_one_of(fields, value, words, field) for value in values)
