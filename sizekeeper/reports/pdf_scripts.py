"""Which writing the fonts that come with typst can set: Latin, Greek, Cyrillic, Hebrew and the usual signs."""

from __future__ import annotations

_OWN = (
    (0x0020, 0x017F), (0x0180, 0x024F), (0x0300, 0x0341), (0x0384, 0x038A), (0x0391, 0x03CE), (0x0400, 0x045F),
    (0x05D0, 0x05EA), (0x1E00, 0x1EFF), (0x2002, 0x2027), (0x2030, 0x203A), (0x2044, 0x2044), (0x2212, 0x2212),
    (0x2260, 0x2265), (0x00A0, 0x00FF), (0x2153, 0x215E), (0x20AC, 0x20AC), (0x2190, 0x2193), (0x2713, 0x2713),
)  # fmt: skip
"""Ranges of signs that they hold; a test sets each of them."""


def beyond_own_fonts(text: str) -> bool:
    """Whether a text has a sign that they may lack, so that the machine's fonts are to be asked too."""
    return not text.isascii() and any(not _held(ord(char)) for char in set(text) if not char.isascii())


def _held(code: int) -> bool:
    return any(first <= code <= last for first, last in _OWN)
