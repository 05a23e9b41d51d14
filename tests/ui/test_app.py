from __future__ import annotations

import os
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest

if TYPE_CHECKING:
    from pathlib import Path

HEAVY = ("pandas", "openpyxl", "pint", "typst", "scipy", "numpy", "python_calamine", "rapidfuzz")

CLOSE_WHEN_PAINTED = """
import sys
from pathlib import Path
from PySide6.QtCore import Qt
from sizekeeper.ui import desk
from sizekeeper.ui.app import run
show = desk.Desk._show
def show_and_close(self, session):
    show(self, session)
    self.window.painted.connect(self.window.close, Qt.ConnectionType.QueuedConnection)
desk.Desk._show = show_and_close
sys.exit(run(Path(sys.argv[1]) if len(sys.argv) > 1 else None))
"""


def python(code: str, home: Path, *args: str) -> subprocess.CompletedProcess[str]:
    """A Python process of its own, at home in the test's folder."""
    places = {name: str(home / name.lower()) for name in ("XDG_DATA_HOME", "XDG_CONFIG_HOME", "XDG_STATE_HOME", "HOME")}
    env = {**os.environ, **places, "QT_QPA_PLATFORM": "offscreen", "PYTHONWARNINGS": "error"}
    return subprocess.run(  # noqa: S603 - our own interpreter and code
        [sys.executable, "-c", code, *args], env=env, capture_output=True, text=True, timeout=120, check=False
    )


def complaints(done: subprocess.CompletedProcess[str]) -> list[str]:
    """What the process said, but for what the platform without a screen always says."""
    return [line for line in done.stderr.splitlines() if "propagateSizeHints" not in line]


def test_importing_the_window_loads_no_heavy_package(tmp_path: Path) -> None:
    done = python(f"import sys, sizekeeper.ui.app; print(sorted(set({HEAVY}) & set(sys.modules)))", tmp_path)
    assert (done.stdout.strip(), done.returncode) == ("[]", 0)


def test_the_command_that_opens_the_window_loads_no_heavy_package_first(tmp_path: Path) -> None:
    code = f"import sys, sizekeeper.cli.main, sizekeeper.cli.window; print(sorted(set({HEAVY}) & set(sys.modules)))"
    done = python(code, tmp_path)
    assert (done.stdout.strip(), done.returncode) == ("[]", 0)


@pytest.mark.skipif(sys.platform != "linux", reason="the places of Linux")
def test_the_window_opens_on_the_users_own_library_and_closes_cleanly(tmp_path: Path) -> None:
    done = python(CLOSE_WHEN_PAINTED, tmp_path)
    assert (complaints(done), done.returncode) == ([], 0)
    assert (tmp_path / "xdg_data_home" / "sizekeeper" / "home.sizekeeper").exists()


def test_the_window_opens_on_a_library_that_is_named(tmp_path: Path) -> None:
    done = python(CLOSE_WHEN_PAINTED, tmp_path, str(tmp_path / "sewing.sizekeeper"))
    assert (complaints(done), done.returncode) == ([], 0)
    assert (tmp_path / "sewing.sizekeeper").exists()
