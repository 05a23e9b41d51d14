"""Which paper lies in the printers of a country."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from sizekeeper.reports.sheet import Paper

LETTER_COUNTRIES = frozenset(("BZ", "CA", "CL", "CO", "CR", "GT", "MX", "NI", "PA", "PH", "PR", "SV", "US", "VE"))
"""Where Letter is usual, by ISO 3166 code (from memory of the Unicode locale data's paper sizes)."""

PAPER_CM: dict[Paper, tuple[float, float]] = {"a4": (21.0, 29.7), "us-letter": (21.59, 27.94)}
"""Width and height of the papers, cm (ISO 216; ANSI/ASME Y14.1)."""

PAPER_WORDS: dict[Paper, str] = {"a4": "A4", "us-letter": "Letter"}


def paper_of(country: str) -> Paper:
    """The paper usual in a country, by its ISO 3166 code in two letters; A4 where the country is not known."""
    return "us-letter" if country.upper() in LETTER_COUNTRIES else "a4"
