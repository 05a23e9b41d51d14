"""Amounts inside sentences stay together where a line ends."""

from __future__ import annotations

import pytest

from sizekeeper.reports.unbroken import unbroken


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("spread by 3/8 in.", "spread by_3/8_in."),
        ("longer: 16 1/8 in, then 15 cm", "longer: 16_1/8_in, then 15_cm"),
        ("let out 8 mm at 2 edges", "let out 8_mm at 2 edges"),
        ("0.5 cm in the middle", "0.5_cm in the middle"),
        ("40 in the end", "40_in the end"),
        ("Cut 2 inside", "Cut 2 inside"),
        ("stand by 12 o’clock", "stand by 12 o’clock"),
    ],
)
def test_number_fraction_and_unit_are_never_in_two_lines(text: str, said: str) -> None:
    assert unbroken(text) == said.replace("_", "\N{NO-BREAK SPACE}")
