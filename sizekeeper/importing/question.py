"""A question about a reading, its answers, and a remark: what the window shows beside the chart."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from sizekeeper.importing.opened import Answers

if TYPE_CHECKING:
    from sizekeeper.core.chart import ChartKind, WrittenAs
    from sizekeeper.importing.draft import ChartUnit

UNITS: dict[ChartUnit, str] = {"cm": "centimetres", "in": "inches", "mm": "millimetres"}
KINDS: dict[ChartKind, str] = {"body": "body measurements", "finished": "finished measurements"}
WRITTEN: dict[WrittenAs, str] = {
    "full": "all around",
    "half": "half, counts twice",
    "quarter": "a quarter, counts 4 times",
}

Edit = Literal["", "measure", "size", "cell"]


@dataclass(frozen=True, slots=True)
class Answer:
    """One way to answer: what its button says, and what it makes of everything set by hand so far."""

    text: str
    change: Callable[[Answers], Answers]


@dataclass(frozen=True, slots=True)
class Ask:
    """A question about a cell or a table. `edit` names what else can be typed instead, in place."""

    code: str
    says: str
    sheet: str
    at: str
    answers: tuple[Answer, ...] = ()
    edit: Edit = ""


@dataclass(frozen=True, slots=True)
class Remark:
    """Something to know about what was read, with its cell; `at` is empty where it is about a whole table."""

    says: str
    sheet: str
    at: str
