"""Names that every system takes, whatever was typed."""

from __future__ import annotations

import unicodedata
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sizekeeper.reports.file_names import file_name, free_name, numbered

DEVICES = ["CON", "prn", "Aux", "NUL", "COM1", "com9", "LPT1", "COM¹", "conin$", "CONOUT$", "com0"]


@pytest.mark.parametrize(
    ("parts", "name"),
    [
        (("Ilse", "Wrap dress"), "Ilse - Wrap dress.pdf"),
        (("Zoë Ångström", "Kjole æøå"), "Zoë Ångström - Kjole æøå.pdf"),
        (("雪", "عباءة"), "雪 - عباءة.pdf"),
        (("a/b", "c\\d"), "a-b - c-d.pdf"),
        (("../../etc/passwd",), "etc-passwd.pdf"),
        (('what? "no" <yes>: 1|2*',), "what- -no- -yes- 1-2-.pdf"),
        (("Ilse. . ", "Skirt..."), "Ilse - Skirt.pdf"),
        (("one\ntwo\tthree\x00four\x7f",), "one two threefour.pdf"),
        ((".hidden", "-rf"), "hidden - rf.pdf"),
        (("safe\u202efdp.exe",), "safefdp.exe.pdf"),
        (("half \ud83d letter",), "half letter.pdf"),
        (("", "Skirt", "  "), "Skirt.pdf"),
        (("", ""), "sheet.pdf"),
        (("...", "???"), "sheet.pdf"),
        ((), "sheet.pdf"),
    ],
)  # fmt: skip
def test_a_name_is_made_of_what_can_stand_in_one(parts: tuple[str, ...], name: str) -> None:
    assert file_name(*parts, suffix=".pdf") == name


@pytest.mark.parametrize("device", DEVICES)
@pytest.mark.parametrize("typed", ["{}", "{}.notes", "{} .old", " {} "])
def test_a_name_that_windows_keeps_for_a_device_gets_a_mark(device: str, typed: str) -> None:
    assert file_name(typed.format(device), suffix=".csv").startswith("_")


@pytest.mark.parametrize("typed", ["Connie", "Auxiliary", "COM10", "Null"])
def test_a_name_that_only_begins_like_a_device_stays(typed: str) -> None:
    assert file_name(typed, suffix=".csv") == f"{typed}.csv"


def test_of_two_long_names_each_keeps_its_beginning() -> None:
    name = file_name("A" * 400, "B" * 400, suffix=".pdf")
    assert (name.count("A"), name.count("B")) == (76, 77)  # 160 bytes less the suffix and the dash between
    assert name.endswith(".pdf")


def test_a_long_name_leaves_the_short_one_whole() -> None:
    assert " - Skirt.pdf" in file_name("A" * 400, "Skirt", suffix=".pdf")


def test_a_letter_is_never_cut_from_its_marks() -> None:
    stem = file_name("e\u0301\u0328" * 100, suffix=".pdf").removesuffix(".pdf")
    assert stem == "ę\u0301" * (len(stem) // 2)


def test_a_family_of_signs_joined_into_one_is_cut_as_one() -> None:
    family = "👩\u200d👩\u200d👧"
    stem = file_name(family * 30, suffix=".pdf").removesuffix(".pdf")
    assert stem == family * (len(stem) // len(family))


@given(st.lists(st.text(), max_size=3))
def test_every_name_can_be_written_on_every_system(parts: list[str]) -> None:
    name = file_name(*parts, suffix=".xlsx")
    stem = name.removesuffix(".xlsx")
    assert stem.strip(" .") == stem != ""
    assert not set(name) & set('<>:"/\\|?*')
    assert not any(unicodedata.category(char) in ("Cc", "Cs") for char in name)
    assert len(unicodedata.normalize("NFD", name).encode()) <= 161  # one more for the mark of a device's name
    assert Path(name).name == name


@pytest.mark.parametrize(
    ("taken", "name"),
    [
        ([], "Ilse.pdf"),
        (["ilse.PDF"], "Ilse (2).pdf"),
        (["Ilse.pdf", "Ilse (2).pdf"], "Ilse (3).pdf"),
        (["Ilse.html"], "Ilse.pdf"),
    ],
)
def test_a_taken_name_gets_the_next_number(taken: list[str], name: str) -> None:
    assert free_name("Ilse.pdf", taken) == name


def test_the_same_name_with_its_marks_taken_apart_is_taken() -> None:
    assert free_name("Zoë.pdf", [unicodedata.normalize("NFD", "Zoë.pdf")]) == "Zoë (2).pdf"


def test_a_number_stands_before_the_suffix() -> None:
    assert [numbered("a.b.pdf", 2), numbered("plain", 3)] == ["a.b (2).pdf", "plain (3)"]
