"""The stretch of a knit as people write it: a share in percent, or what a length stretches to."""

from __future__ import annotations

import re

from sizekeeper.core.notation import parse_length
from sizekeeper.errors import LengthError

MOST = 3.0
"""The most a fabric is taken to stretch; swimwear knits reach about 1 (from memory)."""
_FROM_TO = re.compile(r"(.+?)\s*(?:\bto\b|→|->|[-–])\s*(.+)")
_PERCENT = re.compile(r"(\d+(?:[.,]\d+)?)\s*%?")


def parse_stretch(text: str) -> float:
    """The share by which a fabric stretches, (stretched - rest) / rest.

    Args:
        text: `40`, `40 %`, or `10 to 14`: ten at rest reach fourteen. A blank text is no stretch.

    Raises:
        LengthError: the text is neither, or says more than a fabric can do.
    """
    kept = " ".join(text.split())
    if not kept:
        return 0.0
    if match := _PERCENT.fullmatch(kept):
        share = float(match[1].replace(",", ".")) / 100
    elif match := _FROM_TO.fullmatch(kept):
        rest, stretched = (parse_length(part, "cm").exact_cm for part in match.groups())
        if not 0 < rest <= stretched:
            raise LengthError(f"“{kept}” does not stretch: write the length at rest first, like 10 to 14")
        share = float((stretched - rest) / rest)
    else:
        raise LengthError(f"“{kept}” is not a stretch: write percent, like 40, or 10 to 14")
    if share > MOST:
        raise LengthError(f"{share:.0%} is more than a fabric stretches")
    return share


def write_stretch(share: float) -> str:
    """A stretch in percent, as it is typed; blank for none."""
    return f"{share * 100:.1f}".removesuffix(".0") if share else ""
