from __future__ import annotations

import pytest

from sizekeeper.core.measure import Measure
from sizekeeper.core.notation import parse_length
from sizekeeper.core.plausible import Question, question

BUST = Measure("bust", "Bust", "girth", "both", 1, "", human_cm=(42, 200))
HEAD = Measure("head", "Head", "girth", "body", 1, "", human_cm=(40, 68))


def asked(text: str, unit: str = "cm", *, measure: Measure = BUST, child: bool = False) -> Question | None:
    return question(measure, parse_length(text, "in" if unit == "in" else "cm"), child=child)


@pytest.mark.parametrize(
    ("text", "unit", "sentence", "answer"),
    [
        ("37", "cm", "37 cm? That looks like a figure in inches.", "37 in"),
        ("37 3/4", "cm", "37 3/4 cm? That looks like a figure in inches.", "37 3/4 in"),
        ("37¾", "cm", "37¾ cm? That looks like a figure in inches.", "37¾ in"),
        ("37 cm", "cm", "37 cm? That looks like a figure in inches.", "37 in"),
        ("95,5", "in", "95,5 in? That looks like a figure in centimetres.", "95,5 cm"),
        ("955", "cm", "955 cm? That looks like a figure in millimetres.", "955 mm"),
    ],
)
def test_a_figure_human_only_in_another_unit_is_asked_about(text: str, unit: str, sentence: str, answer: str) -> None:
    assert asked(text, unit) == Question(sentence, answer)


def test_a_figure_human_in_no_unit_is_asked_about_without_an_answer() -> None:
    assert asked("3") == Question("3 cm? People measure 42 cm to 200 cm here.")


def test_the_answer_means_the_same_number() -> None:
    found = asked("37 3/4")
    assert found is not None
    assert parse_length(found.answer).value == parse_length("37 3/4", "cm").value


def test_a_length_of_two_units_is_asked_about_without_an_answer() -> None:
    assert asked("9'3\"") == Question("9'3\"? People measure 16 1/2 in to 78 3/4 in here.")


@pytest.mark.parametrize("text", ["42", "95.5", "200", "37 3/4 in"])
def test_a_childs_or_any_ordinary_figure_is_not_asked_about(text: str) -> None:
    assert asked(text, child=True) is None


def test_a_grown_bust_of_a_small_childs_figure_is_asked_about_as_inches() -> None:
    assert asked("44") == Question("44 cm? That looks like a figure in inches.", "44 in")


def test_a_grown_persons_head_may_be_as_small_as_a_childs() -> None:
    assert asked("52", measure=HEAD) is None


def test_a_measure_without_a_known_span_is_not_asked_about() -> None:
    assert question(Measure("hem", "Hem", "girth", "finished", 1, ""), parse_length("1", "cm"), child=False) is None


def test_a_grown_persons_small_figure_is_let_be_when_no_other_unit_fits() -> None:
    assert asked("90", measure=Measure("height", "Height", "length", "body", 1, "", human_cm=(65, 225))) is None


def test_a_text_with_no_room_for_another_unit_is_asked_about_without_an_answer() -> None:
    found = asked("0" * 78 + "37")
    assert found is not None
    assert found.answer == ""
