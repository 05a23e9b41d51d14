from __future__ import annotations

from typing import TYPE_CHECKING

import platformdirs

from sizekeeper.store.place import default_path

if TYPE_CHECKING:
    from pathlib import Path

    import pytest


def test_the_library_is_kept_in_the_users_data_folder_which_asking_does_not_make(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path / "data"))
    assert default_path() == platformdirs.user_data_path("sizekeeper", appauthor=False) / "home.sizekeeper"
    assert not default_path().parent.exists()
