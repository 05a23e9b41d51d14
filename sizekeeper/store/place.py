"""Where the library is kept unless the user says otherwise."""

from __future__ import annotations

from pathlib import Path

from sizekeeper.store.shelf import SUFFIX


def default_path() -> Path:
    """The library in the platform's own place for a user's data. Neither the file nor its folder is made by asking."""
    import platformdirs  # noqa: PLC0415 - not needed at start-up when a library is named

    return Path(platformdirs.user_data_dir("sizekeeper", appauthor=False, ensure_exists=False)) / f"home{SUFFIX}"
