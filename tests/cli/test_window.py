"""Where no window can be opened the command says so in one line and shows the demo household instead."""

from __future__ import annotations

import os
import subprocess
import sys

import pytest

from sizekeeper.cli import display, window
from sizekeeper.cli.main import main

_DISPLAYS = ("DISPLAY", "WAYLAND_DISPLAY", "QT_QPA_PLATFORM")


def environment(**extra: str) -> dict[str, str]:
    kept = {key: value for key, value in os.environ.items() if key not in _DISPLAYS and not key.startswith("COV")}
    return {**kept, **extra}


def run_demo(**extra: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, "-m", "sizekeeper", "demo"]
    return subprocess.run(command, env=environment(**extra), capture_output=True, text=True, check=False, timeout=120)  # noqa: S603 - our own program


@pytest.mark.skipif(sys.platform != "linux", reason="displays are named by environment variables on Linux only")
@pytest.mark.parametrize(
    ("extra", "says"),
    [
        ({}, "there is no display (neither DISPLAY nor WAYLAND_DISPLAY is set)"),
        ({"DISPLAY": ":987"}, "the display “:987” does not answer"),
        ({"WAYLAND_DISPLAY": "wayland-987"}, "the Wayland display “wayland-987” does not answer"),
        ({"DISPLAY": ":987", "QT_QPA_PLATFORM": "xcb"}, "the display “:987” does not answer"),
    ],
    ids=["none", "dead", "dead wayland", "dead, chosen"],
)
def test_without_a_display_the_demo_household_is_ranked_in_the_terminal(extra: dict[str, str], says: str) -> None:
    done = run_demo(**extra)
    assert done.returncode == 0
    assert done.stderr == ""
    assert done.stdout.splitlines()[0] == f"No window can be opened here: {says}."
    assert done.stdout.count("Cut ") >= 4


def test_a_missing_system_library_is_named_and_the_demo_is_shown(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(window, "no_window_reason", lambda: "a system library is missing (libxcb-cursor.so.0)")
    assert main(["demo"]) == 0
    assert "a system library is missing (libxcb-cursor.so.0)." in capsys.readouterr().out


def test_a_library_that_qt_misses_is_a_reason_and_not_a_traceback(
    monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    class Missing:
        def find_spec(self, name: str, *_: object) -> None:
            if name == "sizekeeper.ui.app":
                raise ImportError("libEGL.so.1: cannot open shared object file: No such file or directory")

    monkeypatch.setattr(window, "no_window_reason", lambda: None)
    monkeypatch.delitem(sys.modules, "sizekeeper.ui.app", raising=False)
    monkeypatch.setattr(sys, "meta_path", [Missing(), *sys.meta_path])
    assert main([]) == 0
    out = capsys.readouterr().out
    assert "a system library is missing (libEGL.so.1)." in out
    assert "sizekeeper --help" in out


def test_our_own_broken_import_is_not_called_a_missing_library() -> None:
    with pytest.raises(ImportError, match="no such name"):
        window._missing(ImportError("no such name"))


def test_a_platform_plugin_that_does_not_load_names_the_missing_library(monkeypatch: pytest.MonkeyPatch) -> None:
    def missing(_name: str) -> None:
        raise OSError("libxcb-icccm.so.4: cannot open shared object file: No such file or directory")

    monkeypatch.setattr("ctypes.CDLL", missing)
    assert display._plugin_reason("libqxcb.so") == "a system library is missing (libxcb-icccm.so.4)"


def test_an_offscreen_platform_needs_no_display(monkeypatch: pytest.MonkeyPatch) -> None:
    for name in _DISPLAYS:
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("QT_QPA_PLATFORM", "offscreen")
    assert display.no_window_reason() is None
