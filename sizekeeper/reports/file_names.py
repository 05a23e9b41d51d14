"""Names for files that every system takes, made of what people typed.

What Windows forbids is from Microsoft's "Naming Files, Paths, and Namespaces"; the others forbid less.
"""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

BETWEEN = " - "
"""What stands between the parts of a name."""

_LONGEST = 160
"""The most bytes of a name in UTF-8, marks taken apart as macOS does. Systems allow 255; the rest is for the folder's
path on Windows, a number, and the mark of a file that is not finished (coined)."""

_FORBIDDEN = re.compile(r'[<>:"/\\|?*]+')
_TURNS = frozenset("\u061c\u200b\u200e\u200f\ufeff\u202a\u202b\u202c\u202d\u202e\u2066\u2067\u2068\u2069")
"""Marks that are not seen but turn the order of what is read, so that a name could hide its suffix."""

_DEVICES = re.compile(r"(?:CON|PRN|AUX|NUL|CLOCK\$|CONIN\$|CONOUT\$|(?:COM|LPT)[0-9¹²³])", re.IGNORECASE)
_EMPTY = "sheet"


def file_name(*parts: str, suffix: str) -> str:
    """A file's name from parts such as a person's and a pattern's name; never empty, and safe on every system.

    Args:
        parts: what people typed; an empty part is left out.
        suffix: with its dot, `.pdf`.
    """
    kept = [clean for part in parts if (clean := _clean(part))]
    room = _LONGEST - _size(suffix)
    name = BETWEEN.join(_shortened(kept, room - len(BETWEEN) * (len(kept) - 1))).rstrip(" .") or _EMPTY
    if _DEVICES.fullmatch(name.split(".")[0].rstrip(" ")):
        name = f"_{name}"
    return name + suffix


def numbered(name: str, number: int) -> str:
    """A file's name with a number before its suffix: `Ilse - Skirt (2).pdf`."""
    stem, dot, suffix = name.rpartition(".")
    return f"{stem} ({number}){dot}{suffix}" if dot else f"{name} ({number})"


def free_name(wanted: str, taken: Iterable[str]) -> str:
    """The wanted name, or with a number the first that is not taken; capitals make no difference."""
    used = {same_name(name) for name in taken}
    number = 1
    name = wanted
    while same_name(name) in used:
        number += 1
        name = numbered(wanted, number)
    return name


def same_name(name: str) -> str:
    """The form in which two names are the same file on some system."""
    return unicodedata.normalize("NFC", unicodedata.normalize("NFC", name).casefold())


def _clean(part: str) -> str:
    text = unicodedata.normalize("NFC", part)
    text = "".join(_plain(char) for char in text)
    text = " ".join(_FORBIDDEN.sub("-", text).split())
    return text.lstrip(" .-~").rstrip(" .")


def _plain(char: str) -> str:
    """A character as it may stand in a name: white space as one space; nothing for what cannot be seen or written."""
    kind = unicodedata.category(char)
    if char.isspace() or kind in ("Zl", "Zp"):
        return " "
    return "" if kind in ("Cc", "Cs", "Cn") or char in _TURNS else char


def _shortened(parts: list[str], room: int) -> list[str]:
    """Parts that fit together: the longest gives way first."""
    while sum(map(_size, parts)) > room:
        longest = max(range(len(parts)), key=lambda i: _size(parts[i]))
        parts[longest] = _without_last(parts[longest])
    return parts


def _without_last(text: str) -> str:
    """A text without its last letter, and without the marks that belonged to it."""
    end = len(text) - 1
    while end > 0 and (unicodedata.category(text[end]) in ("Mn", "Me", "Mc", "Cf") or text[end - 1] == "\u200d"):
        end -= 1
    return text[:end].rstrip(" .")


def _size(text: str) -> int:
    return len(unicodedata.normalize("NFD", text).encode("utf-8"))
