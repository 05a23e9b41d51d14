"""What was worked out from frozen values is kept, but only so much of it, and only for the very same values."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.identity_cache import once_for_these
from tests.build import length

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.length import Length

CM, INCH, FOOT = length("1 cm"), length("1 in"), length("1 ft")


def counting(most: int) -> tuple[list[str], Callable[..., str]]:
    """A function of a length that keeps its last results, and what it had to work out."""
    asked: list[str] = []

    @once_for_these(most)
    def said(of: Length, *, loud: bool = False) -> str:
        asked.append(of.text)
        return of.text.upper() if loud else of.text

    return asked, said


def test_the_same_value_is_worked_out_once() -> None:
    asked, said = counting(2)
    assert [said(CM), said(CM)] == ["1 cm", "1 cm"]
    assert asked == ["1 cm"]


def test_every_argument_counts_also_those_with_a_name() -> None:
    _, said = counting(9)
    assert [said(CM), said(CM, loud=True), said(INCH, loud=False)] == ["1 cm", "1 CM", "1 in"]


def test_an_equal_value_that_took_the_place_of_another_is_worked_out_anew() -> None:
    asked, said = counting(9)
    assert said(CM) == said(length("1 cm"))
    assert len(asked) == 2


def test_what_was_asked_for_longest_ago_is_let_go() -> None:
    asked, said = counting(2)
    for one in (CM, INCH, CM, FOOT, CM, INCH):
        said(one)
    assert asked == ["1 cm", "1 in", "1 ft", "1 in"]


def test_values_that_were_let_go_are_never_taken_for_new_ones() -> None:
    _, said = counting(1)
    texts = [f"{n} cm" for n in range(1, 300)]
    assert [said(length(text)) for text in texts] == texts
