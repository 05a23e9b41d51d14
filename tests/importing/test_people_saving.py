from __future__ import annotations

import datetime as dt
import itertools
from dataclasses import replace
from typing import TYPE_CHECKING

from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from sizekeeper.importing.people_saving import plan_people, with_more
from tests.importing.people import answered, pasted, said

if TYPE_CHECKING:
    from sizekeeper.importing.people_draft import PeopleDraft
    from sizekeeper.importing.people_saving import PeoplePlan

DAY = dt.date(2026, 11, 2)
BUST = Reading("bust", "92", parse_length("92", "cm"), DAY)
ADA = Person("a", "Ada", readings=(BUST,), groups=("Household",), notes="likes pockets")


def plan(draft: PeopleDraft, *known: Person) -> PeoplePlan:
    ids = (f"new{number}" for number in itertools.count())
    return plan_people(draft, known, lambda: next(ids))


def test_new_people_are_added_with_ids_of_their_own() -> None:
    made = plan(pasted("Name,Bust (cm)\nAda,92\nBo,100\n"))
    assert [(before, after.id, after.name) for before, after in made.pairs] == [
        (None, "new0", "Ada"),
        (None, "new1", "Bo"),
    ]
    assert (made.text, made.says) == ("Import 2 people", "2 people are added.")


def test_somebody_known_gets_only_what_she_has_not_yet() -> None:
    text = "Name,Measured on,Bust (cm),Waist (cm),Group,Notes\nAda,2026-11-02,92.0,74,household,tall\n"
    made = plan(answered(pasted(text, known=[ADA]), "The same person", [ADA]), ADA)
    (before, after), *rest = made.pairs
    assert (before, rest) == (ADA, [])
    assert [(r.measure, r.text) for r in after.readings] == [("bust", "92"), ("waist", "74")]
    assert (after.groups, after.notes) == (("Household",), "likes pockets\ntall")
    assert made.says == "1 person of the library gets 1 measurement more."


def test_what_is_known_of_her_is_not_written_over() -> None:
    found = replace(ADA, id="", born=dt.date(2001, 1, 1), child=True, readings=())
    known = replace(ADA, born=dt.date(2000, 2, 2))
    assert with_more(known, found).born == dt.date(2000, 2, 2)
    assert with_more(ADA, found).born == dt.date(2001, 1, 1)


def test_a_bare_figure_in_her_other_unit_gets_its_unit_written() -> None:
    inches = replace(ADA, unit="in", readings=())
    assert with_more(inches, replace(ADA, id="")).readings[0].text == "92 cm"


def test_who_is_left_out_is_not_saved() -> None:
    draft = said(pasted("Name,Bust (cm)\nAda,92\nBo,100\n"), left_out=frozenset({"A2"}))
    assert [after.name for _, after in plan(draft).pairs] == ["Bo"]


def test_nothing_is_saved_of_somebody_who_has_all_of_it() -> None:
    text = "Name,Measured on,Bust (cm)\nAda,2026-11-02,92\n"
    made = plan(answered(pasted(text, known=[ADA]), "The same person", [ADA]), ADA)
    assert (made.pairs, made.says) == ((), "1 person has all of it already.")


def test_the_median_of_a_day_is_there_already() -> None:
    again = Reading("bust", "93", parse_length("93", "cm"), DAY)
    known = replace(ADA, readings=(BUST, again))
    middle = Reading("bust", "92.5", parse_length("92.5", "cm"), DAY)
    assert with_more(known, replace(ADA, id="", readings=(middle,))).readings == (BUST, again)
    another = replace(middle, on=dt.date(2026, 11, 3))
    assert with_more(known, replace(ADA, id="", readings=(another,))).readings == (BUST, again, another)


def test_a_text_that_is_no_length_is_saved_as_a_reading_without_one() -> None:
    person = plan(pasted("Name,Bust (cm)\nAda,about 92\n")).pairs[0][1]
    assert [(r.text, r.length) for r in person.readings] == [("about 92", None)]
