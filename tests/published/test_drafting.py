"""How houses draft, worked out from printed tables of the trade. Inches.

Sources as kept in the project's reference notes: [P] read in the publisher's page, [S] second-hand, [C] computed from
the figures given. The figures are facts for tests; none is product data.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper.core.draft import Draft, draft_of, figures
from sizekeeper.core.drafting import Side, apart, drafting
from sizekeeper.core.drafting_words import main_differences
from sizekeeper.core.pattern import Pattern
from tests.build import chart
from tests.fits import IN

if TYPE_CHECKING:
    from sizekeeper.core.draft import Topic
    from sizekeeper.core.preference import Garment


def row(*inches: float) -> str:
    return ",".join(str(x) for x in inches)


def draft(title: str, garment: Garment, sizes: str, body: dict[str, str], finished: dict[str, str]) -> Draft:
    charts = chart("body", sizes, "in", **body), chart("finished", sizes, "in", **finished) if finished else None
    return draft_of(Pattern(title, title, garment=garment), *charts)


def inches(found: Draft, topic: Topic, subject: str) -> list[float]:
    return [float(cm) / 2.54 for cm in figures(found, topic)[subject]]


# Printed sheet of a loose jacket, 8-16 [P]; ease 6.25 at the bust and 7.5 at the hip in every size [C].
JACKET = draft(
    "Jacket",
    "jacket",
    "8 10 12 14 16",
    {"bust": row(31.5, 32.5, 34, 36, 38), "hip": row(33.5, 34.5, 36, 38, 40)},
    {"bust": row(37.75, 38.75, 40.25, 42.25, 44.25), "hip": row(41, 42, 43.5, 45.5, 47.5)},
)
# A publisher's finished-measurements sheet of a pajama shirt [P]; ease 6.0 in every size, high bust 2 less [C].
SHIRT = draft(
    "Shirt",
    "top",
    "0 2 4 6",
    {"high_bust": row(29, 30, 31, 32), "bust": row(31, 32, 33, 34)},
    {"bust": row(37, 38, 39, 40)},
)
# The US pattern trade's body charts in force since 1967/68, misses and miss petite [S].
MISSES = draft(
    "Misses", "dress", "6 8 10 12",
    {"bust": row(30.5, 31.5, 32.5, 34), "waist": row(23, 24, 25, 26.5), "hip": row(32.5, 33.5, 34.5, 36),
     "back_waist_length": row(15.5, 15.75, 16, 16.25)}, {},
)  # fmt: skip
PETITE = draft(
    "Miss petite", "dress", "6mp 8mp 10mp 12mp",
    {"bust": row(30.5, 31.5, 32.5, 34), "waist": row(23.5, 24.5, 25.5, 27), "hip": row(32.5, 33.5, 34.5, 36),
     "back_waist_length": row(14.5, 14.75, 15, 15.25)}, {},
)  # fmt: skip
# Elastic-waist knit skirt, sizes 34-42, with the ease its publisher names [P].
SKIRT = draft(
    "Skirt", "skirt", "34 36 38 40 42",
    {"waist": row(23.5, 25.25, 26.75, 28.5, 30), "hip": row(33.75, 35.5, 37, 38.5, 40.25)},
    {"waist": row(19, 20.25, 21.5, 22.75, 24), "hip": row(33, 34.5, 36, 37.5, 39.25)},
)  # fmt: skip


@pytest.mark.parametrize(
    ("found", "subject", "ease"),
    [
        (JACKET, "bust", [6.25] * 5),
        (JACKET, "hip", [7.5] * 5),
        (SHIRT, "bust", [6.0] * 4),
        (SKIRT, "waist", [-4.5, -5, -5.25, -5.75, -6]),
        (SKIRT, "hip", [-0.75, -1, -1, -1, -1]),
    ],
)
def test_the_ease_by_size_is_the_published_one(found: Draft, subject: str, ease: list[float]) -> None:
    assert inches(found, "ease", subject) == pytest.approx(ease)


def test_the_shirt_is_drafted_with_two_inches_from_high_bust_to_bust() -> None:
    assert inches(SHIRT, "proportion", "high_bust_bust") == pytest.approx([2.0] * 4)


def test_the_jacket_allows_a_quarter_inch_more_at_the_bust_than_the_shirt_for_the_same_body() -> None:
    found = drafting(Side("Jacket", (JACKET,)), Side("Shirt", (SHIRT,)))
    panel = next(p for p in found.of("ease") if p.subject == "bust")
    assert [a.label for a in apart(panel)] == ["8", "10", "12"]
    assert [a.cm / 2.54 for a in apart(panel)] == pytest.approx([0.25] * 3)
    assert main_differences(found, "ease", IN) == (
        "Jacket allows 1/4 in more ease at the bust than Shirt, in every size that both have."
    )


def test_the_petite_chart_is_an_inch_shorter_in_the_back_and_half_an_inch_wider_in_the_waist() -> None:
    found = drafting(Side("Misses", (MISSES,)), Side("Miss petite", (PETITE,)))
    assert main_differences(found, "proportion", IN) == (
        "Misses counts on 1 in more in the back waist length than Miss petite, in every size. "
        "It counts on 1/2 in more from waist to bust and from waist to hip, in every size."
    )


def test_both_trade_charts_grow_alike() -> None:
    found = drafting(Side("Misses", (MISSES,)), Side("Miss petite", (PETITE,)))
    assert main_differences(found, "body_step", IN) == "Much the same at the bust, at the waist and at the hip."
