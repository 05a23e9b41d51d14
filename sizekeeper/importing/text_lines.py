"""Lines of plain text that say more than one row or less: lists of named figures, and labels broken in two."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from sizekeeper.importing.grid import GridCell
from sizekeeper.importing.labels import label_of
from sizekeeper.importing.sizes import likeness

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

_HEAD = re.compile(r"\s*[•*·–-]?\s*(?P<size>[^:=]{1,20}?)\s*(?:[:=]|\s[–—-]\s)\s*(?P<rest>.+)")
_NAMED = re.compile(r"\s*(?P<name>[^\W\d][^\d,;]*?)\s*[:=]?\s*(?P<figure>\d.*)$")
_BETWEEN = re.compile(r"\s*(?:;|,(?!\d)|\s/\s|\|)\s*")
_SURE, _EXACT = 0.8, 0.95
_HEADED = 100
"""Where the names at the head of a list are counted from, as its figures are from 1."""
_LEAST = 2

Named = list[tuple[str, str]]


def listed_by_size(cells: Sequence[GridCell]) -> list[list[GridCell | None]] | None:
    """Rows of lines such as `S: bust 86 cm, waist 68 cm`, under a head of their names; None where there are none."""
    lists = [(cell, *found) if (found := _named(cell.text)) else (cell, "", []) for cell in cells]
    names = [[name.casefold() for name, _ in named] for _, _, named in lists if named]
    if len(names) < _LEAST or any(other != names[0] for other in names):
        return None
    rows: list[list[GridCell | None]] = []
    headed = False
    for cell, size, named in lists:
        if named and not headed:
            heads = [GridCell(f"{cell.at}#{_HEADED + i}", name) for i, (name, _) in enumerate(named, 1)]
            rows.append([None, *heads])
            headed = True
        figures = [GridCell(f"{cell.at}#{i}", figure) for i, (_, figure) in enumerate(named, 1)]
        rows.append([GridCell(f"{cell.at}#0", size), *figures] if named else [cell])
    return rows


def _named(line: str) -> tuple[str, Named] | None:
    """A line's size and its figures, each with the name in front of it."""
    head = _HEAD.match(line)
    if head is None or likeness(head["size"]) < _SURE or label_of(head["size"]).is_measure:
        return None
    parts = [_NAMED.match(part) for part in _BETWEEN.split(head["rest"].strip(" .;,")) if part]
    named = [(part["name"].strip(), part["figure"].strip()) for part in parts if part]
    if len(named) < len(parts) or not all(label_of(name).is_measure for name, _ in named):
        return None
    return head["size"].strip(), named


def unbroken(cells: Sequence[GridCell], lead: Callable[[str], str | None]) -> list[GridCell]:
    """The lines with a label that was broken in two put together: `Back length from base` and `of neck 24 25`.

    `lead` gives the words in front of a line's figures, None for a line without any.
    """
    done: list[GridCell] = []
    for cell in cells:
        words = lead(cell.text)
        if words and done and lead(done[-1].text) is None and _is_one_label(done[-1].text, words):
            cell = GridCell(cell.at, f"{done.pop().text} {cell.text.strip()}")  # noqa: PLW2901 - the same line, whole
        done.append(cell)
    return done


def _is_one_label(first: str, second: str) -> bool:
    start, whole, rest = label_of(first), label_of(f"{first} {second}"), label_of(second)
    if start.says_only_how or start.kind_only or start.size_word or start.generic or start.prose:
        return False
    if start.is_measure and start.names.sure >= _EXACT:
        return False
    return whole.names.sure >= _EXACT and (not rest.is_measure or rest.names.ids[0] not in whole.names.ids)
