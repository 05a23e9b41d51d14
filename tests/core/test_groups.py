from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.core.groups import (
    as_known,
    belongs,
    dissolved,
    groups_in,
    groups_text,
    known_groups,
    members,
    renamed,
    tidy,
)
from sizekeeper.core.person import Person

ADA = Person("a", "Ada", groups=("Household", "Cast"))
BO = Person("b", "Bo", groups=("household",))
CY = Person("c", "Cy")


def test_groups_stand_between_commas_semicolons_and_line_ends() -> None:
    assert groups_in("Household, class 3b;cast\nfriends") == ("Household", "class 3b", "cast", "friends")


def test_a_group_in_quotation_marks_may_hold_a_comma() -> None:
    assert groups_in('"Cast, act 2", Household') == ("Cast, act 2", "Household")


def test_a_lonely_quotation_mark_is_part_of_the_name() -> None:
    assert groups_in('the 6" club, friends') == ('the 6" club', "friends")


@pytest.mark.parametrize("text", ["", "  ", ",;,", '""'])
def test_nothing_between_commas_is_no_group(text: str) -> None:
    assert groups_in(text) == ()


def test_a_group_is_named_once_whatever_its_capitals() -> None:
    assert groups_in("Household, HOUSEHOLD,  house hold ") == ("Household", "house hold")


@given(st.lists(st.text(max_size=12), max_size=5))
def test_groups_written_as_text_are_read_as_the_same_groups(groups: list[str]) -> None:
    assert groups_in(groups_text(tidy(groups))) == tidy(groups)


def test_the_known_groups_are_those_of_everybody_by_the_alphabet() -> None:
    assert known_groups([ADA, BO, CY]) == ("Cast", "Household")


def test_who_belongs_to_a_group_is_found_whatever_the_capitals() -> None:
    assert members([ADA, BO, CY], "HOUSEHOLD") == (ADA, BO)
    assert not belongs(CY, "Household")


def test_a_group_is_spelt_as_it_is_known() -> None:
    assert as_known(("HOUSEHOLD", "new one"), ("Household", "Cast")) == ("Household", "new one")


def test_renaming_changes_everybody_of_the_group_and_nobody_else() -> None:
    assert renamed([ADA, BO, CY], "Household", "Home") == [
        (ADA, replace(ADA, groups=("Home", "Cast"))),
        (BO, replace(BO, groups=("Home",))),
    ]


def test_a_group_renamed_to_another_one_becomes_one_with_it() -> None:
    assert renamed([ADA], "Household", "cast")[0][1].groups == ("cast",)


def test_a_dissolved_group_is_nobodys() -> None:
    assert [after.groups for _, after in dissolved([ADA, BO, CY], "household")] == [("Cast",), ()]
