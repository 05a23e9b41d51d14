from __future__ import annotations

from fractions import Fraction

import pytest

from sizekeeper.core.lengths import Basis, LengthChange
from sizekeeper.core.make import LengthChoice
from sizekeeper.core.notation import Notation
from sizekeeper.core.opening import Passage
from sizekeeper.core.wording import Wording
from sizekeeper.core.work import LengthLine
from sizekeeper.core.work_words import length_words, passage_words

WORDS = Wording(Notation("cm"), str.capitalize)


@pytest.mark.parametrize(
    ("passage", "said"),
    [
        (Passage("Neck", "head", 52, 50), "Neck: the head needs 52 cm and it opens to 50 cm: 2 cm too little."),
        (Passage("Waist", "hips", 63, 60), "Waist: the hips need 63 cm and it opens to 60 cm: 3 cm too little."),
        (Passage("Waist", "hips", 63, 64), "Waist: the hips pass, 63 cm through 64 cm."),
        (Passage("Cuff", "hand", 21, 22), "Cuff: the hand passes, 21 cm through 22 cm."),
        (Passage("Waist", "shoulders", None, 64), "Waist: measure around both shoulders to see whether they pass."),
        (Passage("Hem", "heel", None, 30), "Hem: measure around the heel to see whether it passes."),
    ],
)
def test_one_head_passes_and_two_shoulders_pass(passage: Passage, said: str) -> None:
    assert passage_words(passage, WORDS)[0] == said


@pytest.mark.parametrize(
    ("basis", "said"),
    [
        ("body_chart", "The body measures 28 cm, the body chart is drafted for 26 cm."),
        ("length_size", "By the size for the lengths 28 cm is needed, what is cut gives 26 cm."),
    ],
)
def test_a_length_says_what_it_is_computed_from(basis: Basis, said: str) -> None:
    change = LengthChange("back_waist", Fraction(2), basis, Fraction(28), Fraction(26))
    assert length_words(LengthLine(LengthChoice("back_waist"), change, None), WORDS) == said
