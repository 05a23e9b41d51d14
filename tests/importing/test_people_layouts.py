"""Layouts of tables of people, each with what it says written down by hand."""

from __future__ import annotations

import datetime as dt
import io

import openpyxl
import pytest

from tests.importing.people import codes, figures, of_file, pasted

CM = {"Ada": {"bust": "92 cm", "waist": "149/2 cm"}, "Bo": {"bust": "209/2 cm", "waist": "88 cm"}}

PLAIN = {
    "commas, units in the headings": "Name,Bust (cm),Waist (cm)\nAda,92,74.5\nBo,104.5,88\n",
    "semicolons and decimal commas": "Name;Brustumfang in cm;Taille in cm\nAda;92;74,5\nBo;104,5;88\n",
    "tabs, units in the cells": "Person\tBust\tWaist\nAda\t92 cm\t745 mm\nBo\t104.5cm\t0.88 m\n",
    "a row of units below the headings": "Name,Bust,Waist\n,cm,cm\nAda,92,74.5\nBo,104.5,88\n",
    "a column of units": "Naam;Eenheid;Borstomvang;Taille\nAda;cm;92;74,5\nBo;cm;104,5;88\n",
    "a title with the unit, empty rows": "Course, all in cm,,\n,,\nName,Bust,Waist\n,,\nAda,92,74.5\n,,\nBo,104.5,88",
    "a note with the unit below": "Name,Bust,Waist\nAda,92,74.5\nBo,104.5,88\nAll measurements in cm,,\n",
    "turned": "Name,Ada,Bo\nBust (cm),92,104.5\nWaist (cm),74.5,88\n",
    "headings again on the next page": "Name,Bust (cm),Waist (cm)\nAda,92,74.5\nName,Bust (cm),Waist (cm)\nBo,104.5,88",
    "columns set apart by spaces": "Nombre   Contorno de pecho (cm)   Cintura (cm)\nAda   92   74.5\nBo   104.5   88",
    "pipes": "Nome|Giro seno (cm)|Giro vita (cm)\nAda|92|74,5\nBo|104,5|88\n",
    "French": "Nom;Tour de poitrine (cm);Tour de taille (cm)\nAda;92;74,5\nBo;104,5;88\n",
}


@pytest.mark.parametrize("layout", PLAIN.values(), ids=PLAIN.keys())
def test_a_plain_table_is_read_without_a_question(layout: str) -> None:
    draft = pasted(layout)
    same = {who: {m: _in_cm(f) for m, f in row.items()} for who, row in figures(draft).items()}
    assert (same, codes(draft)) == (CM, [])


def _in_cm(figure: str) -> str:
    """745 mm and 0.88 m, as one of the layouts writes them, in centimetres."""
    return {"745 mm": "149/2 cm", "22/25 m": "88 cm"}.get(figure, figure)


def test_everything_that_can_be_told_of_a_person_is_read() -> None:
    draft = pasted(
        "Name,Household,Class,Date of birth,Child,Unit,Measured on,Measured by,Measured over,Bust,Notes\n"
        'Ada,Mill Lane,"3b, choir",17 May 2014,yes,in,2 Nov 2026,trained,vest,28 1/2,left shoulder lower\n',
    )
    person = draft.people[0].person
    reading = person.readings[0]
    assert (person.groups, person.born, person.child) == (("Mill Lane", "3b", "choir"), dt.date(2014, 5, 17), True)
    assert (person.unit, person.notes) == ("in", "left shoulder lower")
    assert (reading.text, reading.on, reading.by, reading.over) == ("28 1/2", dt.date(2026, 11, 2), "trained", "vest")
    assert codes(draft) == []


def test_first_and_family_names_make_one_name() -> None:
    draft = pasted("Vorname;Name;Taille (cm)\nIlse;Grün;70\nIlse;Ilse Braun;71\n")
    assert list(figures(draft)) == ["Ilse Grün", "Ilse Braun"]


def test_what_is_told_of_one_figure_goes_before_what_is_told_of_all() -> None:
    draft = pasted(
        "Name,Measured on,Bust (cm),Waist (cm),Waist: measured on,Waist: measured by,Waist: note\n"
        "Ada,2026-01-02,92,74,2026-03-04,alone,after lunch\n",
    )
    bust, waist = draft.people[0].person.readings
    assert (bust.on, bust.by, bust.note) == (dt.date(2026, 1, 2), "helped", "")
    assert (waist.on, waist.by, waist.note) == (dt.date(2026, 3, 4), "alone", "after lunch")


def test_fractions_of_every_kind_are_exact() -> None:
    draft = pasted("Name,Bust,Waist,Hip,Height\nAda,37 3/4 in,28¾”,38-1/8 in,5′6″\n")
    assert figures(draft) == {"Ada": {"height": "66 in", "bust": "151/4 in", "waist": "115/4 in", "hip": "305/8 in"}}


def test_a_half_girth_is_counted_twice_and_asked_about() -> None:
    draft = pasted("Name,½ bust (cm)\nAda,46.5\n")
    assert (figures(draft), codes(draft)) == ({"Ada": {"bust": "93 cm"}}, [("half", "B1")])


def test_a_workbook_is_read_with_its_numbers_fractions_and_days() -> None:
    book = openpyxl.Workbook()
    sheet = book.active
    assert sheet is not None
    sheet.append(["Name", "Born", "Bust (in)", "Waist (in)"])
    sheet.append(["Ada", dt.date(2001, 2, 3), 37.75, 28.123])
    sheet["C2"].number_format, sheet["D2"].number_format = "# ?/?", "0"
    file = io.BytesIO()
    book.save(file)
    draft = of_file(file.getvalue(), "class.xlsx")
    assert figures(draft) == {"Ada": {"bust": "151/4 in", "waist": "28123/1000 in"}}
    assert draft.people[0].person.readings[0].text == "37 3/4"
    assert draft.people[0].person.born == dt.date(2001, 2, 3)


def test_the_sheet_with_people_is_found_among_others() -> None:
    book = openpyxl.Workbook()
    first, second = book.active, book.create_sheet("Course")
    assert first is not None
    first.append(["Dear all, see the next sheet"])
    second.append(["Name", "Hip (cm)"])
    second.append(["Ada", 100])
    file = io.BytesIO()
    book.save(file)
    draft = of_file(file.getvalue(), "class.xlsx")
    assert (draft.sheet.name, figures(draft)) == ("Course", {"Ada": {"hip": "100 cm"}})


def test_a_table_of_a_web_page_is_read() -> None:
    html = "<table><tr><th>Name</th><th>Bust (cm)</th></tr><tr><td>Ada</td><td>92</td></tr></table>"
    assert figures(pasted("", html=html)) == {"Ada": {"bust": "92 cm"}}


@pytest.mark.parametrize("encoding", ["utf-8-sig", "utf-16", "cp1252"])
def test_a_text_file_is_read_in_any_usual_encoding(encoding: str) -> None:
    draft = of_file("Name;Hüfte (cm)\nZoë;100\n".encode(encoding))
    assert figures(draft) == {"Zoë": {"hip": "100 cm"}}


def test_a_dash_and_its_like_are_no_figures() -> None:
    assert figures(pasted("Name,Bust (cm),Hip (cm)\nAda,-,n/a\nBo,90,\n")) == {"Ada": {}, "Bo": {"bust": "90 cm"}}


def test_a_figure_of_a_garment_is_not_read_as_one_of_the_body() -> None:
    draft = pasted("Name,Bust (cm),Skirt length\nAda,92,60\n")
    assert (figures(draft), codes(draft)) == ({"Ada": {"bust": "92 cm"}}, [("unknown", "C1")])
