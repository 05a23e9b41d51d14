"""The decision sheet as a web page: valid, closed in itself, and nothing typed becomes markup."""

from __future__ import annotations

import base64
import hashlib
import re
from dataclasses import replace
from typing import TYPE_CHECKING

import html5lib
import pytest

from sizekeeper.reports.sheet import SheetPlan
from sizekeeper.reports.webpage import webpage
from tests.reports.sheets import HOSTILE, cell_of, figure_row, hostile, longest, private, small

if TYPE_CHECKING:
    from collections.abc import Iterator
    from xml.etree.ElementTree import Element

    from sizekeeper.reports.sheet import Sheet


def page(sheet: Sheet) -> Element:
    """The page, read by a parser that refuses what is not valid."""
    parser = html5lib.HTMLParser(strict=True, namespaceHTMLElements=False)
    root: Element = parser.parse(webpage(sheet))
    return root


def said(element: Element) -> str:
    """The text of an element, in one line."""
    return " ".join("".join(element.itertext()).split())


def cells(root: Element) -> Iterator[Element]:
    """The cells of the ease table."""
    return root.iterfind(".//section[@aria-labelledby='table']//tbody/tr/td")


@pytest.mark.parametrize("sheet", [small(), longest(), private()], ids=["small", "longest", "private"])
def test_the_page_is_valid(sheet: Sheet) -> None:
    assert page(sheet).find("head/title") is not None


@pytest.mark.parametrize("text", HOSTILE)
def test_nothing_that_people_type_becomes_markup(text: str) -> None:
    def shape(root: Element) -> list[tuple[str, list[str]]]:
        return [(element.tag, sorted(element.attrib)) for element in root.iter()]

    assert shape(page(hostile(text))) == shape(page(hostile("plain")))


def test_what_people_type_is_read_back_as_it_was_typed() -> None:
    heading = page(hostile("<b>Söhne</b> & {{ 7 * 7 }}")).find(".//h1")
    assert heading is not None
    assert heading.text == "<b>Söhne</b> & {{ 7 * 7 }}"


@pytest.mark.parametrize("sheet", [small(), longest()], ids=["small", "longest"])
def test_the_page_names_no_other_file(sheet: Sheet) -> None:
    root = page(sheet)
    assert not [e.tag for e in root.iter() if {"src", "href", "srcset", "action", "data", "poster"} & set(e.attrib)]
    style = root.find("head/style")
    assert style is not None
    assert not re.search(r"url\(|@import|@font-face", style.text or "")


def test_only_our_own_style_and_script_are_let_run() -> None:
    root = page(small())
    policy = root.find("head/meta[@http-equiv='Content-Security-Policy']")
    assert policy is not None
    rules = dict(rule.strip().split(" ", 1) for rule in policy.attrib["content"].split(";"))
    assert rules["default-src"] == "'none'"
    for name, path in (("style-src", "head/style"), ("script-src", "body/script")):
        element = root.find(path)
        assert element is not None
        digest = hashlib.sha256((element.text or "").encode()).digest()
        assert rules[name] == f"'sha256-{base64.b64encode(digest).decode()}'"


def test_no_element_needs_a_style_that_the_policy_forbids() -> None:
    assert not [e.tag for e in page(longest()).iter() if any(a == "style" or a.startswith("on") for a in e.attrib)]


def test_every_box_stands_in_its_own_label() -> None:
    root = page(small())
    labelled = [said(label) for label in root.iterfind(".//label") if label.find("input") is not None]
    assert len(labelled) == len(root.findall(".//input")) == 6
    assert labelled[-1] == "Skirt back: Cut across at the hip and spread by 2 cm."


def test_what_is_done_already_starts_ticked() -> None:
    ticked = [box.attrib["data-tick"] for box in page(small()).iterfind(".//input") if "checked" in box.attrib]
    assert ticked == ["step:s2"]


def test_before_any_script_runs_the_page_says_that_nothing_is_kept() -> None:
    kept = page(small()).find(".//*[@id='kept']")
    assert kept is not None
    assert said(kept).startswith("Ticks and notes are not kept")


def test_a_cell_says_ease_finished_figure_and_band() -> None:
    assert [said(cell) for cell in cells(page(small()))] == ["1 97 tight", "5 101 close", "9 105 easy"]


def test_the_size_to_cut_is_said_in_words_too() -> None:
    heads = page(small()).findall(".//section[@aria-labelledby='table']//thead//th")
    assert [said(head) for head in heads] == ["Region", "38", "40 to cut", "42"]


def test_headings_of_rows_and_columns_have_their_scope() -> None:
    scopes = [(e.attrib.get("scope"), said(e)) for e in page(small()).iterfind(".//table//th")]
    assert all(scope in ("row", "col") for scope, _ in scopes)
    assert ("row", "Bust body 96 asks 5 must fit") in scopes


def test_a_size_that_does_not_close_and_a_filled_in_figure_say_so() -> None:
    cell = cell_of(-3.0, short="short by 3 cm", interpolated=True)
    sheet = small()
    sheet = replace(sheet, table=replace(sheet.table, rows=(figure_row("Bust", (cell,)),)))
    assert [said(found) for found in cells(page(sheet))] == ["−3 ~93 tight short by 3 cm"]


def test_the_plan_says_why_and_against_what_it_was_chosen() -> None:
    plan = page(small()).find(".//section[@aria-labelledby='plan']")
    assert plan is not None
    assert "Chosen against the advice: Grade between sizes" in said(plan)
    assert "Why: Less to trace" in said(plan)


def test_a_plan_that_is_only_advised_does_not_say_decided() -> None:
    plan = page(small(plan=SheetPlan("40 straight", decided=False))).find(".//section[@aria-labelledby='plan']")
    assert plan is not None
    assert said(plan) == "The plan advised 40 straight"


def test_a_part_with_nothing_in_it_has_no_heading() -> None:
    bare = small(plan=None, work=(), trace=(), measure_again=(), cautions=(), toile=(), figures=())
    assert [said(heading) for heading in page(bare).iterfind(".//h2")] == ["Verdict", "Size by size"]


def test_every_id_is_used_once() -> None:
    ids = [e.attrib["id"] for e in page(longest()).iter() if "id" in e.attrib]
    assert len(ids) == len(set(ids))


def test_a_private_page_has_no_body_figure() -> None:
    text = webpage(private("96.7"))
    assert "96.7" not in text
    assert "97.7" in text  # the printed figure of the smallest size


def test_sizes_that_are_not_shown_are_counted() -> None:
    sheet = small()
    table = page(replace(sheet, table=replace(sheet.table, left_out=1))).find(".//section[@aria-labelledby='table']/p")
    assert table is not None
    assert said(table).endswith("1 more size is not shown.")


def test_an_amount_stays_in_one_line_with_its_unit() -> None:
    [step] = [label for label in page(small()).iterfind(".//label") if "Skirt back: Cut" in said(label)]
    assert "".join(step.itertext()).endswith("spread by\xa02\xa0cm.")


@pytest.mark.parametrize(("title", "shown"), [("Cut 40 straight", 0), ("40 straight", 1)])
def test_the_plan_does_not_repeat_the_verdict(title: str, shown: int) -> None:
    titles = page(small(plan=SheetPlan(title, decided=False))).findall(".//p[@class='title']")
    assert len(titles) == shown


def test_the_page_does_not_hold_the_place_of_a_file_that_it_was_made_from() -> None:
    whole = webpage(small(key="me:/home/ilse/charts/dress.csv::"))
    assert "/home/ilse" not in whole
    assert webpage(small(key="another")) != whole  # the ticks of two sheets stay apart
