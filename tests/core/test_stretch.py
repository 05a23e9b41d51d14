from __future__ import annotations

import pytest

from sizekeeper.core.stretch import parse_stretch, write_stretch
from sizekeeper.errors import LengthError


@pytest.mark.parametrize(
    ("text", "share"),
    [("40", 0.4), ("40 %", 0.4), ("12,5%", 0.125), ("", 0), ("10 to 14", 0.4), ("4 in to 5 in", 0.25), ("10-14", 0.4)],
)
def test_a_stretch_is_a_percentage_or_what_a_length_stretches_to(text: str, share: float) -> None:
    assert parse_stretch(text) == pytest.approx(share)


@pytest.mark.parametrize("text", ["much", "400", "14 to 10", "0 to 5", "-5"])
def test_what_is_no_stretch_is_refused_in_words(text: str) -> None:
    with pytest.raises(LengthError, match=r"stretch"):
        parse_stretch(text)


@pytest.mark.parametrize(("share", "text"), [(0.4, "40"), (0.125, "12.5"), (0, ""), (0.25, "25")])
def test_a_stretch_is_written_in_percent(share: float, text: str) -> None:
    assert write_stretch(share) == text
