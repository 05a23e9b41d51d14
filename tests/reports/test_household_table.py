from __future__ import annotations

from dataclasses import replace

from sizekeeper.core.pattern import Pattern
from sizekeeper.reports.household_table import as_html, as_text, patterns_table, people_table
from tests.fits import CM
from tests.households import called, envelope, household, stand

ADA, BEA = called("Ada", bust="95"), called("Bea", bust="99")
NASTY = '=HYPERLINK("http://x")\t<script>\nalert(1)</script>'


def rows(text: str) -> list[list[str]]:
    return [line.split("\t") for line in text.splitlines()]


def test_everybody_stands_in_a_row_with_the_ease_in_each_size() -> None:
    table = people_table(household(ADA, BEA), "bust", CM)
    ada, bea = (dict(zip(table.heading[9:], row[9:], strict=True)) for row in table.rows)
    assert [table.rows[0][0], table.rows[0][1], table.rows[1][1]] == ["Ada", "38", "40"]
    assert [ada["38"], ada["40"], ada["42"]] == ["5 close", "9 easy", "13 loose"]
    assert bea["Safe unless"] == "1.2 cm more at the bust"  # 1.333 less 0.1 that 40 is short already


def test_every_row_is_as_long_as_the_heading() -> None:
    for table in (
        people_table(household(ADA, called("Unmeasured"), called("Big", bust="130")), "bust", CM),
        patterns_table(ADA, [stand(ADA), stand(ADA, envelope(None))], CM),
    ):
        assert {len(row) for row in table.rows} == {len(table.heading)}


def test_each_pattern_stands_in_a_row_with_what_it_was_judged_by() -> None:
    table = patterns_table(ADA, [stand(ADA), stand(ADA, envelope(None))], CM)
    judged = table.heading.index("Judged by")
    assert [row[judged] for row in table.rows] == ["the ease asked for", "–"]
    assert table.rows[1][-1] == "no chart typed yet"


def test_the_text_has_a_tab_between_cells_and_nothing_a_spreadsheet_works_out() -> None:
    found = rows(as_text(people_table(household(replace(ADA, name=NASTY)), "bust", CM)))
    assert found[0] == ["Wrap dress"]
    assert len(found) == 4
    assert found[3][0].startswith("'=HYPERLINK")
    assert len(found[3]) == len(found[2])


def test_no_name_becomes_markup() -> None:
    html = as_html(patterns_table(ADA, [stand(ADA, envelope(pattern=Pattern("p", NASTY, publisher="<b>")))], CM))
    assert "<script>" not in html
    assert "<b>" not in html
    assert "&lt;script&gt;" in html
