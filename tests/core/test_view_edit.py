from __future__ import annotations

from dataclasses import replace

from sizekeeper.core.pattern import Pattern
from sizekeeper.core.piece import FabricLine
from sizekeeper.core.view_edit import (
    pieces_with_view_renamed,
    pieces_without_view,
    with_view,
    with_view_renamed,
    without_view,
)
from tests.core.paper import long, piece, pieces
from tests.core.written import chart, sizes, texts

PATTERN = Pattern("p", "Dress", views=("A", "B"))
FINISHED = chart("38, 40", "finished", bust="96, 100")
PAPER = replace(
    pieces(piece("Bodice"), piece("Skirt", view="A"), piece("Full skirt", view="B")),
    fabric=tuple(FabricLine(long("140 cm"), long("2 m"), view=view) for view in ("A", "B", "")),
)


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


def test_a_renamed_view_keeps_its_pieces_and_its_fabric() -> None:
    renamed = pieces_with_view_renamed(PAPER, "A", "Long")
    assert [(one.name, one.view) for one in renamed.pieces] == [("Bodice", ""), ("Skirt", "Long"), ("Full skirt", "B")]
    assert [line.view for line in renamed.fabric] == ["Long", "B", ""]


def test_a_removed_view_takes_only_its_own_pieces_and_fabric_along() -> None:
    left = pieces_without_view(PAPER, "A")
    assert [one.name for one in left.pieces] == ["Bodice", "Full skirt"]
    assert [line.view for line in left.fabric] == ["B", ""]
