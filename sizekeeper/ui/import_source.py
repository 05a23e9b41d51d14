"""One of many files that are imported: what became of it, and the work that reads them all."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Literal

from sizekeeper.errors import SizekeeperError
from sizekeeper.importing.asking import asks
from sizekeeper.importing.opened import NOTHING_SAID, Opened, open_file

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.core.learned import Learned
    from sizekeeper.ui.import_reading import Reading

State = Literal["waiting", "read", "failed", "saved", "stopped"]


@dataclass(frozen=True, slots=True)
class Source:
    """One of the files: what became of it, and the sentence that says so."""

    path: Path
    state: State = "waiting"
    says: str = "waiting"
    opened: Opened | None = None
    questions: int = 0

    @property
    def answered(self) -> bool:
        """Whether something was set by hand that is not saved."""
        return self.state == "read" and self.opened is not None and self.opened.answers != NOTHING_SAID

    @property
    def ready(self) -> bool:
        """Whether it can be saved without a question."""
        return self.state == "read" and not self.questions


def source_read(path: Path, opened: Opened) -> Source:
    """A file that was read; one without a table has one question: where it is."""
    return Source(path, "read", _read_words(opened), opened, len(asks(opened)) if opened.tables else 1)


def _read_words(opened: Opened) -> str:
    """What was read of a file in a few words."""
    if not opened.tables:
        return "No table was found; open it and show where it is."
    parts = [
        f"{t.kind}: {_counted(len(t.sizes), 'size')}, {_counted(len(t.rows), 'measure')}" for t in opened.tables[:3]
    ]
    more = len(opened.tables) - len(parts)
    said = "; ".join([*parts, *([_counted(more, "more table")] if more else [])])
    return f"{said[0].upper()}{said[1:]}"


def _counted(count: int, what: str) -> str:
    return f"{count} {what}" if count == 1 else f"{count} {what}s"


def read_all(paths: Sequence[Path], learned: Learned, reading: Reading) -> None:
    """Read one file after the other, telling of each by its place; one that cannot be read stops no other."""
    for i, path in enumerate(paths):
        reading.progress(i, len(paths))
        try:
            opened = open_file(path, learned, reading.check)
        except SizekeeperError as error:
            reading.check(0, 0)
            reading.tell((i, Source(path, "failed", str(error))))
        else:
            reading.tell((i, source_read(path, opened)))
