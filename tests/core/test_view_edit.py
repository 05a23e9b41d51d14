from __future__ import annotations

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.view_edit import with_view, with_view_renamed, without_view
from tests.core.written import chart, sizes, texts

PATTERN = Pattern("p", "Dress", views=("A", "B"))
FINISHED = chart("38, 40", "finished", bust="96, 100")


def test_a_view_may_start_with_the_figures_of_another() -> None:
    pattern, own = with_view(PATTERN, FINISHED, "C", "new", copied=True)
    assert (pattern.views, own.id, own.view, texts(own)) == (("A", "B", "C"), "new", "C", texts(FINISHED))


def test_a_view_may_start_empty_with_the_same_sizes_and_measures() -> None:
    _, own = with_view(PATTERN, FINISHED, "C", "new", copied=False)
    assert (sizes(own), texts(own)) == ("38, 40", {"bust": ", "})


def test_a_renamed_view_keeps_its_place() -> None:
    assert with_view_renamed(PATTERN, "A", "Long").views == ("Long", "B")


def test_a_removed_view_is_gone() -> None:
    assert without_view(PATTERN, "A").views == ("B",)
