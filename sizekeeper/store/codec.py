"""The values as they stand in the library file: JSON, with the kind and the shape number kept beside it.

A length keeps its exact fraction ("151/4"), its unit and the text that was typed. Old shapes are upgraded when they are
read and never rewritten: an upgrade takes the JSON object of one shape to that of the next.
"""

from __future__ import annotations

import functools
import importlib
import os
import re
from fractions import Fraction
from typing import TYPE_CHECKING, Any

import msgspec

from sizekeeper.store.trouble import EntryError

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.chart import Chart
    from sizekeeper.core.learned import Learned
    from sizekeeper.core.make import Make
    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person
    from sizekeeper.core.piece import Pieces

    Value = Person | Pattern | Chart | Learned | Pieces | Make
    """What an entry of the library can be."""
else:
    Value = object  # so that annotations can name it although the classes are not loaded

KINDS: dict[str, tuple[str, str]] = {
    "person": ("person", "Person"),
    "pattern": ("pattern", "Pattern"),
    "chart": ("chart", "Chart"),
    "learned": ("learned", "Learned"),
    "pieces": ("piece", "Pieces"),
    "make": ("make", "Make"),
}
"""The kinds of entries by the name they have in the file: the module of the core, and the class in it.

A class is imported when the first entry of its kind is read, so that the window does not start with all of them.
"""

SHAPES: dict[str, int] = {"person": 1, "pattern": 1, "chart": 1, "learned": 1, "pieces": 1, "make": 1}
"""The shape number in which each kind is written now."""

UPGRADES: dict[tuple[str, int], Callable[[dict[str, Any]], dict[str, Any]]] = {}
"""How the JSON object of a kind goes from one shape to the next, by kind and the shape it comes from."""

_NAMES = {name: kind for kind, (_, name) in KINDS.items()}

_UNNAMED = {
    "person": "a person without a name",
    "pattern": "a pattern without a title",
    "learned": "the names learned from charts",
    "pieces": "the pieces of a pattern",
    "make": "a make without a name",
}

_BAD = (msgspec.MsgspecError, ValueError, KeyError, TypeError, RecursionError, ZeroDivisionError)
"""What comes of a text that is not a value, or of a value that is not one."""

_FRACTION = re.compile(r"-?[0-9]{1,200}(/[0-9]{1,200})?")


def new_id() -> str:
    """An id that no other entry has."""
    return os.urandom(16).hex()


@functools.cache
def class_of(kind: str) -> type[Value]:
    """The class of a kind's values."""
    module, name = KINDS[kind]
    made: type[Value] = getattr(importlib.import_module(f"sizekeeper.core.{module}"), name)
    return made


def kind_of(value: Value) -> str:
    """The name of a value's kind in the file."""
    return _NAMES[type(value).__name__]


def called(value: Value) -> str:
    """What a sentence calls a value: a person's name, a pattern's title, a chart's kind."""
    kind = kind_of(value)
    if kind == "chart":
        return "a body chart" if getattr(value, "kind", "") == "body" else "a finished chart"
    name = getattr(value, "title" if kind == "pattern" else "name", "")
    return f"“{name}”" if name else _UNNAMED[kind]


def encode(value: Value) -> str:
    """A value as JSON text, read back once to be sure that it comes back unchanged.

    Raises:
        EntryError: the value could not be read back from the text.
    """
    kind = kind_of(value)
    try:
        text = _ENCODER.encode(value).decode()
        same = _read(kind, SHAPES[kind], text) == value
    except _BAD as error:
        raise EntryError(f"{called(value)} cannot be saved: {error}") from error
    if not same:
        raise EntryError(f"{called(value)} cannot be saved: it would not come back unchanged")
    return text


def decode(kind: str, shape: int, text: str, entry: str = "") -> Value:
    """The value of a JSON text, brought up to the present shape.

    Args:
        kind: the kind's name in the file.
        shape: the shape number the text was written in.
        text: the JSON.
        entry: the entry's id, which the value must have; "" for any.

    Raises:
        EntryError: the text is not a value of this kind, or newer than this program knows; the message names the entry.
    """
    if kind not in KINDS or not 1 <= shape <= SHAPES[kind]:
        raise EntryError(f"the {kind} {_named(text, entry)} was written by a newer Sizekeeper and cannot be read")
    try:
        value = _read(kind, shape, text)
    except _BAD as error:
        raise EntryError(f"the {kind} {_named(text, entry)} is damaged in the file: {error}") from error
    if entry and value.id != entry:
        raise EntryError(f"the {kind} {_named(text, entry)} is damaged in the file: it carries the id of another entry")
    return value


def _read(kind: str, shape: int, text: str) -> Value:
    if shape == SHAPES[kind]:
        value: Value = _decoder(kind).decode(text)
        return value
    return msgspec.convert(_upgraded(kind, shape, text), class_of(kind), dec_hook=_from_json)


def _named(text: str, entry: str) -> str:
    """What a sentence calls an entry that cannot be read: its name if that can be made out, else its id."""
    try:
        raw = msgspec.json.decode(text)
        return f"“{raw.get('name') or raw['title']}”"
    except (*_BAD, AttributeError):
        return entry or "without an id"


def _upgraded(kind: str, shape: int, text: str) -> dict[str, Any]:
    raw = msgspec.json.decode(text, type=dict[str, Any])
    for old in range(shape, SHAPES[kind]):
        raw = UPGRADES[kind, old](raw)
    return raw


def _to_json(value: object) -> str:
    if isinstance(value, Fraction):
        return str(value)
    raise ValueError(f"{type(value).__name__} is not kept in a library")


def _from_json(wanted: type, raw: object) -> object:
    if wanted is Fraction and isinstance(raw, str):
        return _fraction(raw)
    raise ValueError(f"{raw!r} is not a fraction")


@functools.lru_cache(maxsize=4096)  # the same few figures stand in every chart
def _fraction(raw: str) -> Fraction:
    if not _FRACTION.fullmatch(raw):
        raise ValueError(f"{raw[:40]!r} is not a fraction")
    numerator, _, denominator = raw.partition("/")
    return Fraction(int(numerator), int(denominator or 1))


_ENCODER = msgspec.json.Encoder(enc_hook=_to_json)


@functools.cache
def _decoder(kind: str) -> msgspec.json.Decoder[Any]:
    return msgspec.json.Decoder(class_of(kind), dec_hook=_from_json)
