"""The header of a table: which size each column stands for, and what stands above it about unit, kind, view or cup."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field, replace

from sizekeeper.importing import vocabulary as words
from sizekeeper.importing.bands import is_figure, is_text, label
from sizekeeper.importing.grid import GridCell
from sizekeeper.importing.labels import Label
from sizekeeper.importing.raw import RawSize
from sizekeeper.importing.sizes import likeness, names_wearers, recovered_date, shown_label
from sizekeeper.importing.units import stated_units, unit_of, without_units
from sizekeeper.importing.vocabulary import Kind

Data = Sequence[tuple[int, GridCell]]
_SURE = 0.8
_LETTERS = 0.5
_ANY = 0.25


@dataclass(frozen=True, slots=True)
class Column:
    """What is headed above one column of figures."""

    size: str = ""
    at: str = ""
    date: bool = False
    aliases: tuple[str, ...] = ()
    unit: str | None = None
    kind: Kind | None = None
    view: str | None = None
    variant: str | None = None
    bound: str = ""


@dataclass(slots=True)
class Header:
    """The columns by their place, the words at the corner by theirs, and how sure it is that these are sizes."""

    columns: dict[int, Column]
    corner: dict[int, Label] = field(default_factory=dict)
    sure: float = 0.0
    used: bool = False
    text: str = ""

    def sizes(self) -> list[RawSize]:
        """The sizes in order, each once."""
        found: dict[str, RawSize] = {}
        for column in self.columns.values():
            if column.size and column.size not in found:
                found[column.size] = RawSize(column.size, column.at, column.aliases, column.date)
        return list(found.values())


def size_likeness(cell: GridCell) -> float:
    """How much a cell looks like a size label; names of measures never do."""
    if recovered_date(cell) is not None:
        return 0.9
    text = without_units(cell.text) if stated_units(cell.text) and unit_of(cell.text) is None else cell.text
    like = likeness(_apart(text)[0])
    if like < 0.9 and is_text(cell):  # noqa: PLR2004 - a plain size label is one whatever else it means
        words_of = label(cell)
        if words_of.names.sure >= _SURE or words_of.kind_only or words_of.unit_only or words_of.prose:
            return 0.0
    return like


def _apart(text: str) -> tuple[str, Kind | None]:
    """A size label without the word of kind in it, and that kind: `12 garment` heads the finished figures of 12."""
    kind = words.kind_in(text)
    pattern = words.BODY if kind == "body" else words.FINISHED
    rest = " ".join(pattern.sub(" ", text).split()).strip(" ,;:()–—-") if kind else ""
    return (rest, kind) if rest and likeness(rest) >= _SURE else (text, None)


def is_size_row(labels: Sequence[Label], data: Data, *, fresh: bool, known: bool) -> bool:
    """Whether a row heads columns with sizes.

    Args:
        labels: the words left of the figures.
        data: the cells above the figures.
        fresh: whether a new table may start here: nothing headed yet, or a blank row or title since the last figures.
        known: whether sizes are headed already.
    """
    likes = [size_likeness(cell) for _, cell in data]
    if not likes or likes.count(0.0) * 3 > len(likes):
        return False
    mean = sum(likes) / len(likes)
    if any(word.is_measure and not word.size_word and word.names.sure >= _SURE for word in labels):
        return False
    if known and any(word.is_measure and word.units for word in labels):  # no size is counted in cm
        return False
    if any(word.size_word for word in labels):
        ambiguous = any(word.is_measure for word in labels)
        return mean >= _ANY and (not ambiguous or fresh)
    if not all(is_figure(cell) for _, cell in data):
        return mean >= _LETTERS
    return _numbers_head(labels, data, mean, fresh=fresh, known=known)


def _numbers_head(labels: Sequence[Label], data: Data, mean: float, *, fresh: bool, known: bool) -> bool:
    """Numbers without the word size head columns only where a table starts, and only where no two are alike."""
    told = [word for word in labels if not word.prose]
    plain = all(word.generic or word.unit_only or word.kind or word.view or word.variant for word in told)
    texts = [cell.text for _, cell in data]
    return (plain or not known) and fresh and mean >= _SURE and (len(set(texts)) * 2 > len(texts) or _in_blocks(texts))


def _in_blocks(texts: Sequence[str]) -> bool:
    """Whether the same several labels come again and again, as under short, regular and long."""
    length = len(set(texts))
    return length > 1 and len(texts) % length == 0 and list(texts) == list(texts[:length]) * (len(texts) // length)


def header_of(labels: dict[int, Label], data: Data, columns: Sequence[int]) -> Header:
    """The header that a row of size labels makes."""
    size_word = any(word.size_word for word in labels.values())
    likes = [size_likeness(cell) for _, cell in data]
    sure = max(sum(likes) / len(likes), 0.9 if size_word else 0.0)
    made = dict.fromkeys(columns, Column())
    for place, cell in data:
        if not words.only(words.NO_SIZE, cell.text):
            made[place] = _column(cell)
    text = " ".join(word.text for word in labels.values())
    return Header(made, labels, sure, text=text)


def _column(cell: GridCell) -> Column:
    date = recovered_date(cell)
    if date is not None:
        return Column(date, cell.at, date=True)
    text, kind = _apart(cell.text)
    units = stated_units(text)
    if units and unit_of(text) is None and is_text(cell):
        return Column(shown_label(without_units(text)), cell.at, unit=units[0], kind=kind)
    return Column(shown_label(text), cell.at, kind=kind)


def is_attribute_row(labels: Sequence[Label], data: Data) -> bool:
    """Whether a row says what the columns are counted in or stand for: units, kinds, views, variants or cups."""
    if not data or not all(is_text(cell) for _, cell in data):
        return False
    if any(_head_of(word) for word in labels) and not any(word.generic or word.size_word for word in labels):
        return True
    told = [label(cell) for _, cell in data]
    plain = all(not word.is_measure or word.names.sure < _SURE for word in labels)
    ends = {words.bound_in(word.text) for word in told if " " not in word.text}
    qualified = all(word.says_only_how or word.unit_only or word.kind_only for word in told)
    return plain and (qualified or ends == {"low", "high"})


def _head_of(word: Label) -> str:
    """Which kind of word a column or row of such words is headed with: view, cup, variant, unit, kind or nothing."""
    text = word.text
    for name, pattern in (
        ("view", words.VIEW_HEAD),
        ("cup", words.CUP_HEAD),
        ("unit", words.UNIT_HEAD),
        ("kind", words.KIND_HEAD),
        ("variant", words.VARIANT_HEAD),
    ):
        if pattern.fullmatch(text.strip(" :")):
            return name
    return ""


def heads_attribute(word: Label) -> bool:
    """Whether a word heads a column about figures, of views or units, rather than one of names."""
    return bool(_head_of(word))


def attribute(head: Label | None, cell: GridCell) -> dict[str, str]:
    """What one such cell says, given the word that heads it."""
    word = label(cell)
    said: dict[str, str] = {}
    named = _head_of(head) if head else ""
    bare = cell.text.strip()
    if named == "view" and not word.view:
        said["view"] = re.sub(words.VIEW_HEAD, "", bare).strip() or bare
    elif named == "cup" and not word.cup:
        said["variant"] = f"{bare.upper()} cup"
    elif named == "variant":
        said["variant"] = bare
    if word.units:
        said["unit"] = word.units[0]
    if word.kind:
        said["kind"] = word.kind
    if " " not in bare and words.bound_in(bare):
        said["bound"] = bare
    if word.view:
        said["view"] = word.view
    if word.cup or (word.variant and "variant" not in said):
        said["variant"] = word.cup or word.variant or ""
    return said


def with_attributes(header: Header, labels: Sequence[Label], data: Data) -> None:
    """Give the columns what a row of attributes says; each word holds until the next one to its right."""
    said = dict(_at_their_blocks(header, data))
    head = labels[0] if labels else None
    current: dict[str, str] = {}
    size = Column()
    for place in sorted(header.columns):
        column = header.columns[place]
        if place in said:
            current = attribute(head, said[place])
        if column.size:
            size = column
        elif place in said and size.size:
            column = replace(column, size=size.size, at=size.at, date=size.date, aliases=size.aliases)
        header.columns[place] = _told(column, current)
    _drop_groups(header)


def _drop_groups(header: Header) -> None:
    """Words for wearers over a run of different sizes, misses' and women's, part the run; they are no variants."""
    groups: dict[str, set[str]] = {}
    for column in header.columns.values():
        if column.variant and column.size:
            groups.setdefault(column.variant, set()).add(column.size)
    sizes = [size for group in groups.values() for size in group]
    if len(groups) > 1 and len(set(sizes)) == len(sizes) and all(names_wearers(group) for group in groups):
        for place, column in header.columns.items():
            header.columns[place] = replace(column, variant=None)


def _at_their_blocks(header: Header, data: Data) -> Data:
    """Words set in the middle above blocks of the same sizes, moved to where their blocks begin."""
    places = [place for place in sorted(header.columns) if header.columns[place].size]
    if not places or len(data) < 2 or min(place for place, _ in data) <= places[0]:  # noqa: PLR2004 - blocks
        return data
    length, over = divmod(len(places), len(data))
    sizes = [header.columns[place].size for place in places]
    if over or length < 2 or sizes != sizes[:length] * len(data):  # noqa: PLR2004 - nothing to be in the middle of
        return data
    return [(places[i * length], cell) for i, (_, cell) in enumerate(sorted(data, key=lambda found: found[0]))]


def _told(column: Column, said: Mapping[str, str]) -> Column:
    """A column with what was said of it."""
    kind: Kind | None = "body" if said.get("kind") == "body" else "finished" if "kind" in said else column.kind
    return replace(
        column,
        unit=said.get("unit", column.unit),
        kind=kind,
        view=said.get("view", column.view),
        variant=said.get("variant", column.variant),
        bound=said.get("bound", column.bound),
    )


def with_aliases(header: Header, data: Data) -> None:
    """Give the columns another name for their sizes."""
    for place, cell in data:
        column = header.columns.get(place)
        if column is not None and column.size:
            name = recovered_date(cell) or shown_label(cell.text)
            header.columns[place] = replace(column, aliases=(*column.aliases, name))
