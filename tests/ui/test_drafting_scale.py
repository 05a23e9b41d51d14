from __future__ import annotations

import pytest
from PySide6.QtCore import QPointF, QRectF

from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.ui.drafting_scale import Scale, round_ticks


@pytest.mark.parametrize(
    ("low", "high", "words"),
    [
        (5.0, 7.9, ["5", "6", "7", "8"]),
        (-3.2, 4.1, ["−4", "−2", "0", "2", "4", "6"]),
        (88.0, 104.0, ["85", "90", "95", "100", "105"]),
        (6.0, 6.0, ["5.9", "6", "6.1"]),
    ],
)
def test_an_axis_has_round_figures_around_all_values(low: float, high: float, words: list[str]) -> None:
    assert [tick.words for tick in round_ticks(low, high, 5, CENTIMETRES)] == words


def test_inches_are_divided_like_a_rule() -> None:
    ticks = round_ticks(6 * 2.54, 7 * 2.54, 5, INCHES)
    assert [tick.words for tick in ticks] == ["6", "6 1/4", "6 1/2", "6 3/4", "7"]
    assert ticks[1].value == pytest.approx(6.25 * 2.54)


def test_a_point_lies_where_the_axes_say() -> None:
    scale = Scale(QRectF(10, 20, 100, 50), (80.0, 100.0), (0.0, 10.0))
    assert scale.at(85.0, 2.0) == QPointF(35, 60)
