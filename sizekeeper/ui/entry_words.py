"""What an entry of the library is called on screen."""

from __future__ import annotations

import unicodedata
from typing import TYPE_CHECKING

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.learned import Learned
    from sizekeeper.core.make import Make
    from sizekeeper.core.piece import Pieces
    from sizekeeper.store.codec import Value


def entry_name(value: Value) -> str:
    """The name of an entry, or that it has none yet."""
    if isinstance(value, Person):
        return value.name.strip() or "No name yet"
    if isinstance(value, Pattern):
        return value.title.strip() or "No title yet"
    return _name_of_part(value)


def _name_of_part(value: Chart | Learned | Pieces | Make) -> str:
    """The name of what belongs to a pattern or to the reader."""
    from sizekeeper.core.chart import Chart  # noqa: PLC0415 - the lists of the first picture name none of these
    from sizekeeper.core.make import Make  # noqa: PLC0415 - as above
    from sizekeeper.core.piece import Pieces  # noqa: PLC0415 - as above

    if isinstance(value, Pieces):
        return "Pieces"
    if isinstance(value, Make):
        return f"Make: {value.name.strip() or 'no name yet'}"
    if not isinstance(value, Chart):
        return "Names learned from charts"
    kind = "Body chart" if value.kind == "body" else "Finished chart"
    return f"{kind}, {value.view}" if value.view else kind


def place_in_list(value: Person | Pattern) -> tuple[str, str]:
    """What entries are sorted by: the name without regard to capitals and accents, then the id."""
    plain = unicodedata.normalize("NFKD", entry_name(value))
    return "".join(mark for mark in plain if not unicodedata.combining(mark)).casefold(), value.id


def entry_note(value: Person | Pattern) -> str:
    """The line below a name in a list: how much is known of a person, what kind of pattern it is."""
    if isinstance(value, Person):
        return " · ".join((_measured(value), *value.groups))
    garment = f"knit {value.garment}" if value.fabric == "knit" else value.garment
    return " · ".join(part for part in (value.publisher.strip(), garment) if part)


def _measured(person: Person) -> str:
    count = len({reading.measure for reading in person.readings if reading.length is not None})
    if not count:
        return "not measured yet"
    return "1 measurement" if count == 1 else f"{count} measurements"


def is_hidden(value: Value) -> bool:
    """Whether an entry is kept out of the lists; a chart follows its pattern."""
    return isinstance(value, Person | Pattern) and value.hidden


def found_by(value: Person | Pattern, words: str) -> bool:
    """Whether every word typed into the search box stands somewhere in what is known of the entry."""
    parts = [entry_name(value), entry_note(value), value.notes]
    text = " ".join(parts).casefold()
    return all(word in text for word in words.casefold().split())
