from __future__ import annotations

import pytest

from sizekeeper.core.notation import Notation
from sizekeeper.core.opening import Passage
from sizekeeper.core.wording import Wording
from sizekeeper.core.work_words import passage_words

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
