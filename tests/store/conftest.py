"""A library in a folder of its own, and a clock that moves when told."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.store.library import Library
from tests.store.made import Clock

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path


@pytest.fixture
def clock() -> Clock:
    """Wednesday morning, 25 November 2026."""
    return Clock()


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Where the library goes; nothing is there yet."""
    return tmp_path / "home.sizekeeper"


@pytest.fixture
def library(place: Path, clock: Clock) -> Iterator[Library]:
    """A new library."""
    with Library.open(place, now=clock) as made:
        yield made
