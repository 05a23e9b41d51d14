"""The ease table as a document, and its copies as text and HTML."""

from __future__ import annotations

import io
from dataclasses import replace
from html.parser import HTMLParser

import pandas as pd
import pytest

from sizekeeper import assets
from sizekeeper.core.fit import fit
from sizekeeper.core.question import Question
from sizekeeper.core.result import Verdict
from sizekeeper.core.sentences import headline
from sizekeeper.reports.ease_table import as_html, as_text, ease_table
from tests.build import body, chart
from tests.fits import CM, IN, blended, dress


def labels(found: object) -> list[str]:
    return [column.label for column in ease_table(found).columns]  # type: ignore[arg-type]  # a fit


def test_every_listed_size_has_a_column_in_order() -> None:
    assert [c.label for c in ease_table(dress()).columns if c.between is None] == ["38", "40", "42"]


def test_lines_between_sizes_stand_only_beside_the_chosen_size() -> None:
    wide = chart("finished", "36 38 40 42 44", bust="89, 93, 97, 101, 105")
    found = fit(body(bust=91.9), None, wide, Question(), assets.ease_defaults())
    assert labels(found) == ["36", "38", "38 + 3/4", "40", "40 + 1/4", "42", "44"]


def test_the_chosen_column_is_marked_and_known_for_centring() -> None:
    table = ease_table(dress())
    assert table.chosen is not None
    assert [c.label for c in table.columns if c.chosen] == ["40"] == [table.columns[table.chosen].label]


def test_a_line_that_is_chosen_has_its_own_column() -> None:
    found = replace(dress(), verdict=Verdict("between", "38 + 1/2", 0.5))
    table = ease_table(found)
    assert table.chosen is not None
    assert table.columns[table.chosen].between is not None


def test_a_blend_marks_at_each_region_what_is_cut_there() -> None:
    table = ease_table(blended(dress(), {"bust": 0, "waist": 2}))
    chosen = {
        row.region.measure: [c.label for c, cell in zip(table.columns, row.cells, strict=True) if cell.chosen]
        for row in table.rows
    }
    # The hip is no level of this blend: its line goes on from the waist above it.
    assert chosen == {"bust": ["38"], "waist": ["42"], "hip": ["42"]}
    assert [c.label for c in table.columns if c.chosen] == ["38", "42"]


def test_a_cell_is_finished_minus_body_beside_the_finished_figure() -> None:
    table = ease_table(dress())
    bust = dict(zip([c.label for c in table.columns], table.rows[0].cells, strict=True))["40"]
    assert (bust.amount_cm, bust.printed_cm) == pytest.approx((2.125 * 2.54, 40.125 * 2.54))


def test_by_the_body_chart_a_cell_is_chart_minus_body_beside_the_chart() -> None:
    table = ease_table(dress(mode="body"))
    bust = dict(zip([c.label for c in table.columns], table.rows[0].cells, strict=True))["42"]
    assert (bust.amount_cm, bust.printed_cm) == pytest.approx((2 * 2.54, 40 * 2.54))
    assert bust.band is None


def test_the_text_pastes_into_a_spreadsheet_as_a_table() -> None:
    text = as_text(dress(), "Ada: wrap dress", IN)
    frame = pd.read_csv(io.StringIO(text), sep="\t", skiprows=3)
    assert list(frame["Region"]) == ["Bust", "Waist", "Hip"]
    assert list(frame["Body, in"]) == [38, 28, 43]
    assert list(frame["40 (chosen)"]) == [
        "2 1/8 (40 1/8, close)",
        "1 7/8 (29 7/8, easy)",
        "26 5/8 (69 5/8, loose)",
    ]


def test_the_text_starts_with_whose_it_is_and_the_verdict() -> None:
    assert as_text(dress(), "Ada: wrap dress", IN).splitlines()[:2] == ["Ada: wrap dress", headline(dress(), IN)]


def test_a_size_that_is_too_small_is_short_in_the_copy_too() -> None:
    found = fit(body(bust=96), None, chart("finished", "38", bust="95.2"), Question(), assets.ease_defaults())
    assert "−0.8 (95.2, tight, short by 8 mm)" in as_text(found, "", CM)


def test_a_filled_in_figure_is_marked_and_a_missing_one_is_a_dash() -> None:
    gaps = chart("finished", "38 40 42", bust="92, -, 100", waist="74, 78, -")
    found = fit(body(bust=91, waist=70), None, gaps, Question(), assets.ease_defaults())
    text = as_text(found, "", CM)
    assert "(~96, close)" in text
    assert text.splitlines()[-1].endswith("\t–")


@pytest.mark.parametrize("title", ["=1+1", "+cmd", "@sum", "-2"])
def test_a_name_is_never_read_as_a_formula(title: str) -> None:
    assert as_text(dress(), title, IN).startswith(f"'{title}\n")


def test_a_name_with_tabs_and_line_ends_keeps_the_table_whole() -> None:
    assert as_text(dress(), "A\tB\nC\x00D", IN).splitlines()[0] == "A B C D"


class Seen(HTMLParser):
    """The tags and the text of a page."""

    def __init__(self, page: str) -> None:
        super().__init__()
        self.tags: list[str] = []
        self.text = ""
        self.feed(page)

    def handle_starttag(self, tag: str, _attrs: object) -> None:
        self.tags.append(tag)

    def handle_data(self, data: str) -> None:
        self.text += data


def test_hostile_names_are_only_text_in_the_html() -> None:
    hostile = chart("finished", "<b>38</b> 40", bust="98, 102")
    found = fit(body(bust=96), None, hostile, Question(), assets.ease_defaults())
    seen = Seen(as_html(found, "<script>alert(1)</script> & Söhne", CM))
    assert "script" not in seen.tags
    assert seen.tags.count("b") == 1  # the chosen size's only cell
    assert "<script>alert(1)</script> & Söhne" in seen.text
    assert "<b>38</b>" in seen.text


def test_the_html_holds_the_same_cells_as_the_text() -> None:
    lines = as_text(dress(), "Ada", IN).splitlines()[3:]
    [frame] = [Seen(as_html(dress(), "Ada", IN)).text]
    assert all(field in frame for line in lines for field in line.split("\t"))
