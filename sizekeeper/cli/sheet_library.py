"""The library that a sheet is made from: only looked at, so that it works beside an open window."""

from __future__ import annotations

import datetime as dt
from functools import cached_property
from typing import TYPE_CHECKING

from sizekeeper.reports.snapshot import Snapshot

if TYPE_CHECKING:
    from pathlib import Path

    from sizekeeper.store.codec import Value


class ShelfLibrary:
    """A library file, read when something of it is first wanted."""

    def __init__(self, path: Path | None) -> None:
        """Name the file; None for the user's own library."""
        self._path = path

    @cached_property
    def path(self) -> Path:
        """The file."""
        return self._path or _own_path()

    @property
    def name(self) -> str:
        """The file's name, for messages."""
        return self.path.name

    @cached_property
    def values(self) -> list[Value]:
        """Every current value.

        Raises:
            StoreError: the file is not there or cannot be read.
        """
        from sizekeeper.store.library import Library  # noqa: PLC0415 - not wanted where everything is in files

        with Library.open(self.path, now=lambda: dt.datetime.now().astimezone(), read_only=True) as library:
            return library.values()

    @cached_property
    def snapshot(self) -> Snapshot:
        """The values, found by what belongs together."""
        return Snapshot(self.values)

    def values_if_read(self) -> list[Value]:
        """The values, none while nothing was wanted of them."""
        return self.values if "values" in self.__dict__ else []


def _own_path() -> Path:
    """The library that the window opens by itself; in the default place where no window can be opened."""
    try:
        from sizekeeper.ui.own_library import own_path  # noqa: PLC0415 - Qt keeps where it is
    except ImportError:
        from sizekeeper.store.place import default_path  # noqa: PLC0415 - as above

        return default_path()
    return own_path()
