from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper import assets
from sizekeeper.core.make import Kept
from sizekeeper.core.notation import CENTIMETRES
from sizekeeper.core.wording import Wording
from sizekeeper.core.worn import Worn, evidence_words, worn_ease
from tests.made import MAY, finished, make

WORDS = Wording(CENTIMETRES, assets.measures().name)
DRESSES = [
    finished("a", bust=(4.0, "right"), waist=(1.0, "tight")),
    finished("b", bust=(7.0, "right"), waist=(3.0, "right")),
    finished("c", bust=(12.0, "loose")),
]


def of_dresses(measure: str, makes: list[object] | None = None) -> Worn:
    return worn_ease(makes or DRESSES, "person", "dress", measure, knit=False)  # type: ignore[arg-type]  # all are makes


def test_the_ease_of_finished_garments_is_gathered_by_how_they_were_worn() -> None:
    assert of_dresses("bust") == Worn(right=(4.0, 7.0), loose=(12.0,))
    assert of_dresses("waist") == Worn(right=(3.0,), tight=(1.0,))
    assert of_dresses("hip") == Worn()


@pytest.mark.parametrize(
    "other",
    [
        replace(DRESSES[0], person="somebody else"),
        replace(DRESSES[0], progress="sewing"),
        replace(DRESSES[0], hidden=True),
        replace(DRESSES[0], kept=None),
        replace(DRESSES[0], kept=Kept(MAY, garment="jacket", regions=DRESSES[0].kept.regions)),  # type: ignore[union-attr]  # it has one
        replace(DRESSES[0], kept=Kept(MAY, knit=True, regions=DRESSES[0].kept.regions)),  # type: ignore[union-attr]  # as above
        make(worn={"bust": "right"}),
    ],
)
def test_only_her_own_finished_garments_of_the_same_kind_tell_of_her_ease(other: object) -> None:
    assert of_dresses("bust", [other]) == Worn()


def test_the_ease_she_was_content_with_is_the_median_of_what_was_worn_as_wanted() -> None:
    assert of_dresses("bust").liked_cm == 5.5
    assert Worn(tight=(1.0,)).liked_cm is None


def test_the_evidence_is_one_sentence_with_each_ease_once() -> None:
    assert evidence_words(Worn((4.0, 7.0, 4.0), (1.0,)), WORDS) == (
        "Made before: as wanted with 4 cm and 7 cm, too tight with 1 cm of ease."
    )
    assert evidence_words(Worn(), WORDS) == ""
