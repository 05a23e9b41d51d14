from __future__ import annotations

import datetime as dt

import pytest

from sizekeeper.core.notation import parse_length
from sizekeeper.core.person import Person, Reading
from tests.importing.people import answered, codes, figures, pasted, said

DAY = dt.date(2026, 5, 1)
ADA = Person("a", "Ada", readings=(Reading("bust", "92", parse_length("92", "cm"), DAY),), groups=("Household",))


def test_figures_without_a_unit_are_asked_about_and_nothing_can_be_saved_before() -> None:
    draft = pasted("Name,Bust,Waist\nAda,92,74\n")
    assert [(ask.code, ask.at, ask.must) for ask in draft.asks] == [("unit", "B2", True)]


@pytest.mark.parametrize(
    ("row", "likeliest"), [("92,74", "Centimetres"), ("38 1/2,29", "Inches"), ("920,740", "Millimetres")]
)
def test_the_likeliest_unit_is_offered_first(row: str, likeliest: str) -> None:
    assert pasted(f"Name,Bust,Waist\nAda,{row}\n").asks[0].answers[0].text == likeliest


def test_the_unit_that_was_answered_is_every_bare_figures() -> None:
    draft = answered(pasted("Name,Bust,Waist\nAda,38,74 cm\n"), "Inches")
    assert (figures(draft), codes(draft)) == ({"Ada": {"bust": "38 in", "waist": "74 cm"}}, [])


def test_a_heading_that_can_mean_two_days_is_asked_about() -> None:
    draft = pasted("Name,Date,Bust (cm)\nAda,2001-02-03,92\n")
    assert codes(draft) == [("unclear", "B1")]
    assert answered(draft, "Born").people[0].person.born == dt.date(2001, 2, 3)


def test_a_date_beside_a_birth_date_is_the_day_of_measuring_and_that_is_told() -> None:
    draft = pasted("Name,Born,Date,Bust (cm)\nAda,2001-02-03,2026-11-02,92\n")
    assert (draft.people[0].person.readings[0].on, draft.asks) == (dt.date(2026, 11, 2), ())
    assert [(remark.says, remark.at) for remark in draft.remarks] == [("“Date” was read as measured on.", "C1")]


def test_a_day_that_can_be_two_is_not_taken_before_it_was_asked() -> None:
    draft = pasted("Name,Born,Bust (cm)\nAda,3/4/2001,92\nBo,5/6/2001,100\n")
    assert (codes(draft), draft.people[0].person.born) == ([("order", "B2")], None)
    assert answered(draft, "The second").people[0].person.born == dt.date(2001, 3, 4)
    assert answered(draft, "The first").people[1].person.born == dt.date(2001, 6, 5)


def test_one_day_past_the_twelfth_settles_the_order_of_all() -> None:
    draft = pasted("Name,Born,Bust (cm)\nAda,3/4/2001,92\nBo,25/6/2001,100\n")
    assert ([one.person.born for one in draft.people], draft.asks) == ([dt.date(2001, 4, 3), dt.date(2001, 6, 25)], ())


@pytest.mark.parametrize("day", ["soon", "2001", "31.2.2001", "2030-01-01", "17.5.14"])
def test_what_is_no_day_of_the_past_is_left_out_and_asked_about(day: str) -> None:
    draft = pasted(f"Name,Born,Bust (cm)\nAda,{day},92\n")
    assert (codes(draft), draft.people[0].person.born) == ([("day", "B2")], None)


@pytest.mark.parametrize("day", ["17 May 2014", "May 17, 2014", "17. Mai 2014", "17 mai 2014", "17 de mayo de 2014",
                                 "17 maggio 2014", "17 mei 2014", "17.05.2014", "2014/5/17"])  # fmt: skip
def test_days_are_read_in_words_of_six_languages(day: str) -> None:
    assert pasted(f"Name;Born;Bust (cm)\nAda;{day};92\n").people[0].person.born == dt.date(2014, 5, 17)


@pytest.mark.parametrize("day", ["17/5/14", "17.05.14", "5/17/14"])
def test_a_day_of_measuring_may_have_a_short_year(day: str) -> None:
    reading = pasted(f"Name;Measured on;Bust (cm)\nAda;{day};92\n").people[0].person.readings[0]
    assert reading.on == dt.date(2014, 5, 17)


def test_a_short_year_after_numbers_that_can_be_two_days_is_asked_about_once() -> None:
    draft = pasted("Name,Measured on,Bust (cm)\nAda,03/11/26,92\nBo,04/11/26,100\n")
    assert codes(draft) == [("order", "B2")]
    assert answered(draft, "The first").people[1].person.readings[0].on == dt.date(2026, 11, 4)


def test_a_short_year_that_may_stand_at_the_beginning_is_asked_about() -> None:
    assert codes(pasted("Name,Measured on,Bust (cm)\nAda,26-11-03,92\n")) == [("day", "B2")]


@pytest.mark.parametrize("foot", ["Total", "AVERAGE", "Mittelwert", "Moyenne", "Gemiddelde", "Media", "Totale"])
def test_a_row_of_sums_or_means_is_nobody_unless_it_is_said_to_be(foot: str) -> None:
    draft = pasted(f"Name,Bust (cm)\nAda,92\nBo,100\n{foot},2\n")
    assert ([one.person.name for one in draft.people], codes(draft)) == (["Ada", "Bo"], [("sum", "A4")])
    person = answered(draft, "A person")
    assert ([one.person.name for one in person.people], codes(person)) == (["Ada", "Bo", foot], [("span", "B4")])
    left = answered(draft, "Leave it out")
    assert ([one.person.name for one in left.people], left.asks) == (["Ada", "Bo"], ())


def test_a_column_that_is_not_known_is_not_read_and_can_be_assigned() -> None:
    draft = pasted("Name,Bust (cm),Lucky number\nAda,92,100\n")
    assert (codes(draft), figures(draft)) == ([("unknown", "C1")], {"Ada": {"bust": "92 cm"}})
    draft = said(draft, roles={"C1": "hip"}, units={"C1": "cm"})
    assert (codes(draft), figures(draft)) == ([], {"Ada": {"bust": "92 cm", "hip": "100 cm"}})


def test_two_columns_of_one_measure_are_asked_about() -> None:
    draft = pasted("Name,Bust (cm),Chest (cm)\nAda,92,93\n")
    assert (codes(draft), figures(draft)) == ([("twice", "C1")], {"Ada": {"bust": "92 cm"}})
    assert figures(answered(draft, "“Chest (cm)”")) == {"Ada": {"bust": "93 cm"}}
    both = answered(draft, "Both: measured twice").people[0].person.readings
    assert [reading.text for reading in both] == ["92", "93"]


def test_a_name_spelt_nearly_like_a_measures_is_asked_about() -> None:
    draft = pasted("Name,Wiast (cm)\nAda,74\n")
    assert (codes(draft), figures(draft)) == ([("inferred", "B1")], {"Ada": {"waist": "74 cm"}})
    assert figures(answered(draft, "Leave it out")) == {"Ada": {}}


def test_names_without_a_heading_are_found_and_asked_about() -> None:
    draft = pasted(",Ada,Bo\nBust (cm),92,104\nHip (cm),100,110\n")
    assert codes(draft) == [("names_inferred", "A1")]
    assert figures(draft) == {"Ada": {"bust": "92 cm", "hip": "100 cm"}, "Bo": {"bust": "104 cm", "hip": "110 cm"}}


def test_without_names_nothing_is_read_but_the_question() -> None:
    draft = pasted("Bust (cm),Hip (cm)\n92,100\n")
    assert (codes(draft), draft.people) == ([("names", "")], ())


@pytest.mark.parametrize(("bust", "meant"), [("36", "36 in"), ("915", "915 mm")])
def test_a_figure_that_is_human_in_another_unit_only_is_questioned(bust: str, meant: str) -> None:
    draft = pasted(f"Name,Bust (cm)\nAda,{bust}\n")
    assert codes(draft) == [("span", "B2")]
    draft = answered(draft, f"Read it as {meant}")
    assert (codes(draft), draft.people[0].person.readings[0].text) == ([], meant)


def test_many_figures_of_another_unit_are_one_question() -> None:
    draft = pasted("Name,Bust (cm),Waist (cm),Hip (cm)\nAda,36,28,39\n")
    assert codes(draft) == [("spans", "B2")]
    assert figures(answered(draft, "Read them as inches")) == {
        "Ada": {"bust": "36 in", "waist": "28 in", "hip": "39 in"}
    }
    assert codes(answered(draft, "They are right")) == []


def test_a_figure_of_nobody_is_questioned_and_may_stay() -> None:
    draft = pasted("Name,Bust (cm)\nAda,320\n")
    assert (codes(draft), codes(answered(draft, "It is right"))) == ([("span", "B2")], [])


def test_a_text_that_is_no_length_is_kept_as_it_stands() -> None:
    draft = pasted("Name;Bust (cm);Hip (cm)\nAda;about 92;100\n")
    assert (codes(draft), figures(draft)) == ([("text", "B2")], {"Ada": {"bust": "(about 92)", "hip": "100 cm"}})
    assert codes(answered(draft, "Keep the text")) == []
    assert figures(answered(draft, "Read it as 92")) == {"Ada": {"bust": "92 cm", "hip": "100 cm"}}


def test_a_text_that_is_no_length_can_be_left_out() -> None:
    draft = pasted("Name;Bust (cm);Hip (cm)\nAda;ask her mother;100\n")
    assert figures(answered(draft, "Leave it out")) == {"Ada": {"hip": "100 cm"}}


def test_a_length_said_in_two_units_is_offered_in_each() -> None:
    draft = pasted("Name;Bust\nAda;96 cm / 37 3/4 in\n")
    assert figures(answered(draft, "Read it as 37 3/4 in")) == {"Ada": {"bust": "151/4 in"}}


def test_a_row_without_a_name_is_nobodys_until_answered() -> None:
    draft = pasted("Name,Bust (cm),Waist (cm)\nAda,92,\n,,74\n")
    assert (codes(draft), figures(draft)) == ([("nameless", "A3")], {"Ada": {"bust": "92 cm"}})
    assert figures(answered(draft, "Of Ada")) == {"Ada": {"bust": "92 cm", "waist": "74 cm"}}
    assert codes(answered(draft, "Leave it out")) == []


def test_a_name_that_comes_again_is_asked_about() -> None:
    draft = pasted("Name,Bust (cm)\nAda,92\nADA,93\n")
    assert codes(draft) == [("same_name", "A3")]
    assert [len(one.person.readings) for one in answered(draft, "One person").people] == [2]
    assert figures(answered(draft, "Two people")) == {"Ada": {"bust": "92 cm"}, "ADA": {"bust": "93 cm"}}
    assert figures(answered(draft, "Leave this row out")) == {"Ada": {"bust": "92 cm"}}


def test_the_same_row_twice_is_one_reading_when_it_is_one_person() -> None:
    draft = answered(pasted("Name,Bust (cm)\nAda,92\nAda,92.0\n"), "One person")
    assert len(draft.people[0].person.readings) == 1


def test_who_is_in_the_library_is_not_taken_in_before_it_was_asked() -> None:
    draft = pasted("Name,Waist (cm)\nada ,74\n", known=[ADA])
    assert (codes(draft), draft.taken) == ([("known", "A2")], ())
    fates = [answered(draft, text, [ADA]).people[0].fate for text in ("The same person", "Another person", "Leave out")]
    assert fates == ["add:a", "new", "skip"]


def test_everybody_known_can_be_answered_at_once() -> None:
    known = [ADA, Person("b", "Bo")]
    draft = pasted("Name,Waist (cm)\nAda,74\nBo,80\n", known=known)
    assert [one.fate for one in answered(draft, "All are the same people", known).people] == ["add:a", "add:b"]


def test_two_people_of_one_name_in_the_library_are_told_apart() -> None:
    known = [ADA, Person("b", "Ada", born=dt.date(2015, 3, 4))]
    draft = pasted("Name,Waist (cm)\nAda,74\n", known=known)
    assert [answer.text for answer in draft.asks[0].answers] == [
        "The one of Household", "The one born 2015-03-04", "Another person", "Leave out",
    ]  # fmt: skip


def test_an_answer_about_somebody_who_is_gone_is_asked_again() -> None:
    draft = answered(pasted("Name,Waist (cm)\nAda,74\n", known=[ADA]), "The same person", [ADA])
    assert [one.fate for one in said(draft, [ADA]).people] == ["add:a"]
    assert [one.fate for one in said(draft, [Person("z", "Ada")]).people] == [""]


def test_who_measured_in_other_words_is_asked_about_once() -> None:
    draft = pasted("Name,Measured by,Bust (cm)\nAda,Mum,92\nBo,mum,100\n")
    assert codes(draft) == [("word", "B2")]
    assert [one.person.readings[0].by for one in answered(draft, "Trained").people] == ["trained", "trained"]


def test_figures_without_day_and_hand_are_counted_and_filled_in() -> None:
    draft = said(pasted("Name,Bust (cm)\nAda,92\n"), on=DAY, by="alone", groups=("Course",))
    person = draft.people[0].person
    assert (draft.undated, draft.unsigned, person.groups) == (1, 1, ("Course",))
    assert (person.readings[0].on, person.readings[0].by) == (DAY, "alone")


def test_a_cell_can_be_typed_over_and_an_empty_one_filled() -> None:
    draft = pasted("Name,Bust (cm),Hip (cm)\nAda,9O,\n")
    sheet = draft.sheet.name
    fixed = said(draft, cells={(sheet, "B2"): "90", (sheet, "C2"): "100"})
    assert (figures(fixed), codes(fixed)) == ({"Ada": {"bust": "90 cm", "hip": "100 cm"}}, [])


def test_headings_can_be_set_by_hand() -> None:
    draft = pasted("x,y\nThem,Something\nAda,92\n")
    assert draft.table is None
    draft = said(draft, sheet=draft.sheet.name, turned=False, head=1, roles={"A2": "name", "B2": "bust"}, unit="cm")
    assert figures(draft) == {"Ada": {"bust": "92 cm"}}


def test_each_question_names_its_cell() -> None:
    draft = pasted("Name,Date,Bust,Chest,Foo\nAda,1/2/2026,92,93,1\nAda,x,about,5,\n,,70,,\n", known=[ADA])
    assert all(ask.at and ask.says.endswith(("?", ".")) and ask.answers for ask in draft.asks)
    assert {ask.code for ask in draft.asks} >= {"unclear", "twice", "unknown", "unit", "same_name", "nameless", "known"}
