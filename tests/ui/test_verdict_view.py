"""The answer in words, as labels."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.ui.verdict_view import VerdictText, VerdictView
from tests.fits import IN, dress, without_margins

if TYPE_CHECKING:
    from pytestqt.qtbot import QtBot


def test_a_fit_gives_the_verdict_its_doubts_and_what_the_chart_says() -> None:
    fit = replace(without_margins(dress()), ties=(("bust", 2.54, "42"),))
    text = VerdictText.of(fit, IN)
    assert (text.headline, text.doubts) == ("Cut 40 straight.", "42 only if the bust is really 1 in more.")
    assert text.chart == "The body chart alone says 40 at the bust, 38 at the waist, 42 at the hip."


def test_what_is_empty_takes_no_room(qtbot: QtBot) -> None:
    view = VerdictView()
    qtbot.addWidget(view)
    view.show_text(VerdictText("Cut 40 straight."))
    assert [label.isHidden() for label in (view.headline, view.doubts, view.warnings, view.chart)] == [
        False,
        True,
        True,
        True,
    ]


def test_a_warning_appears_and_goes_again(qtbot: QtBot) -> None:
    view = VerdictView()
    qtbot.addWidget(view)
    view.show_text(VerdictText("Cut 40 straight.", warnings="Make a toile first."))
    assert not view.warnings.isHidden()
    view.show_text(VerdictText("Cut 40 straight."))
    assert view.warnings.isHidden()
