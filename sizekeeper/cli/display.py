"""Whether a window can be opened here, found out before Qt tries: Qt ends the process when it cannot.

On Linux the display server is asked through its own small client library, and Qt's platform plugin is loaded once to
see that its system libraries are there. Both are needed by the window anyway, so nothing is wasted.
"""

from __future__ import annotations

import ctypes
import importlib.util
import os
import sys
from pathlib import Path

_XCB_OK = 0


def no_window_reason() -> str | None:
    """Why no window can be opened here, as the end of a sentence; None when one can."""
    if sys.platform != "linux":
        return None
    chosen = os.environ.get("QT_QPA_PLATFORM", "")
    if not (chosen or os.environ.get("DISPLAY") or os.environ.get("WAYLAND_DISPLAY")):
        return "there is no display (neither DISPLAY nor WAYLAND_DISPLAY is set)"
    if chosen and not chosen.startswith(("xcb", "wayland")):
        return None
    return _display_reason(chosen)


def _display_reason(chosen: str) -> str | None:
    """Why neither display server that is named can be used; `chosen` limits it to one."""
    reasons = []
    if os.environ.get("WAYLAND_DISPLAY") and not chosen.startswith("xcb"):
        if _wayland_answers():
            return None
        reasons.append(f"the Wayland display “{os.environ['WAYLAND_DISPLAY']}” does not answer")
    if os.environ.get("DISPLAY") and not chosen.startswith("wayland"):
        if _x_answers():
            return _plugin_reason("libqxcb.so")
        reasons.append(f"the display “{os.environ['DISPLAY']}” does not answer")
    return " and ".join(reasons) or f"the display that QT_QPA_PLATFORM={chosen} needs is not set"


def _x_answers() -> bool:
    """Whether the X server of DISPLAY lets us in."""
    try:
        xcb = ctypes.CDLL("libxcb.so.1")
    except OSError:
        return True  # the plugin's own check names the library that is missing
    xcb.xcb_connect.restype = ctypes.c_void_p
    xcb.xcb_connect.argtypes = [ctypes.c_char_p, ctypes.c_void_p]
    xcb.xcb_connection_has_error.argtypes = [ctypes.c_void_p]
    xcb.xcb_disconnect.argtypes = [ctypes.c_void_p]
    connection = xcb.xcb_connect(None, None)
    answers = xcb.xcb_connection_has_error(connection) == _XCB_OK
    xcb.xcb_disconnect(connection)
    return bool(answers)


def _wayland_answers() -> bool:
    """Whether the Wayland compositor of WAYLAND_DISPLAY lets us in."""
    if not (Path(os.environ.get("XDG_RUNTIME_DIR", "")) / os.environ["WAYLAND_DISPLAY"]).is_socket():
        return False
    try:
        wayland = ctypes.CDLL("libwayland-client.so.0")
    except OSError:
        return False
    wayland.wl_display_connect.restype = ctypes.c_void_p
    wayland.wl_display_connect.argtypes = [ctypes.c_char_p]
    wayland.wl_display_disconnect.argtypes = [ctypes.c_void_p]
    display = wayland.wl_display_connect(None)
    if not display:
        return False
    wayland.wl_display_disconnect(display)
    return True


def _plugin_reason(name: str) -> str | None:
    """The system library that a platform plugin of Qt misses, None when it loads."""
    spec = importlib.util.find_spec("PySide6")
    if spec is None or spec.origin is None:
        return "PySide6 is not installed"
    plugin = Path(spec.origin).parent / "Qt" / "plugins" / "platforms" / name
    if not plugin.is_file():
        return None  # another layout of Qt: Qt finds its plugin itself
    try:
        ctypes.CDLL(str(plugin))
    except OSError as error:
        return f"a system library is missing ({str(error).split(':')[0]})"
    return None
