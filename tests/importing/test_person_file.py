"""A person's file says who she is and what was measured; whatever is unclear is one sentence with file and field."""

from __future__ import annotations

import datetime as dt
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizekeeper import assets
from sizekeeper.core.person import Person
from sizekeeper.errors import ReadError
from sizekeeper.importing.person_file import read_person_file

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

    from sizekeeper.core.person import Reading

TODAY = dt.date(2026, 11, 25)
ILSE = 'name = "Ilse"\nunit = "cm"\n'


@pytest.fixture
def read(tmp_path: Path) -> Callable[[str], Person]:
    def read(text: str) -> Person:
        path = tmp_path / "ilse.toml"
        path.write_text(text, encoding="utf-8")
        return read_person_file(path, today=TODAY)

    return read


def only(person: Person) -> Reading:
    (reading,) = person.readings
    return reading


def test_a_figure_is_kept_as_it_was_typed(read: Callable[[str], Person]) -> None:
    reading = only(read('name = "Ilse"\nunit = "in"\n[measurements]\nbust = "37 3/4"'))

    assert reading.text == "37 3/4"
    assert reading.length is not None
    assert (reading.length.value, reading.length.unit) == (Fraction(151, 4), "in")


@pytest.mark.parametrize(
    ("figure", "cm"),
    [('"96 cm"', 96), ('"38 in"', 96.52), ("96.5", 96.5), ("96", 96), ('"95,5"', 95.5), ('"955 mm"', 95.5),
     ('"37¾ in"', 95.885), ('"1 yd 4 in"', 101.6)],
)  # fmt: skip
def test_any_length_text_is_a_figure(read: Callable[[str], Person], figure: str, cm: float) -> None:
    length = only(read(f"{ILSE}[measurements]\nbust = {figure}")).length

    assert length is not None
    assert length.cm == pytest.approx(cm)


def test_a_decimal_number_keeps_every_digit_that_was_written(read: Callable[[str], Person]) -> None:
    assert only(read(f"{ILSE}[measurements]\nbust = 96.50")).text == "96.50"


def test_capitals_spaces_and_hyphens_in_a_measures_name_do_not_matter(read: Callable[[str], Person]) -> None:
    assert only(read(f'{ILSE}[measurements]\n"High-bust" = 90')).measure == "high_bust"


def test_a_reading_takes_the_day_and_the_hand_of_the_whole_file(read: Callable[[str], Person]) -> None:
    reading = only(read(f'{ILSE}measured_on = 2026-10-11\nmeasured_by = "alone"\n[measurements]\nbust = 96'))

    assert (reading.on, reading.by) == (dt.date(2026, 10, 11), "alone")


def test_a_reading_without_a_day_was_taken_today_with_help(read: Callable[[str], Person]) -> None:
    reading = only(read(f"{ILSE}[measurements]\nbust = 96"))

    assert (reading.on, reading.by) == (TODAY, "helped")


def test_a_reading_can_have_a_day_a_hand_and_a_note_of_its_own(read: Callable[[str], Person]) -> None:
    row = '{ figure = "96", on = 2026-03-02, by = "trained", over = "slip", note = "tired" }'
    reading = only(read(f"{ILSE}[measurements]\nbust = {row}"))

    assert (reading.on, reading.by, reading.over, reading.note) == (dt.date(2026, 3, 2), "trained", "slip", "tired")


def test_a_list_of_figures_is_as_many_readings_of_one_measure(read: Callable[[str], Person]) -> None:
    person = read(f'{ILSE}[measurements]\nwaist = ["70", {{ figure = "71" }}]')

    assert [(r.measure, r.text) for r in person.readings] == [("waist", "70"), ("waist", "71")]


def test_birth_child_groups_and_notes_are_read(read: Callable[[str], Person]) -> None:
    person = read(f'{ILSE}born = 2019-02-28\nchild = true\ngroups = ["Home"]\nnotes = "Ticklish."')

    assert (person.born, person.child, person.groups, person.notes) == (
        dt.date(2019, 2, 28), True, ("Home",), "Ticklish.",
    )  # fmt: skip


def test_two_readings_of_one_file_are_two_people(read: Callable[[str], Person]) -> None:
    assert read(ILSE).id != read(ILSE).id


def test_her_ease_holds_for_every_garment_woven_or_knit(read: Callable[[str], Person]) -> None:
    person = read(f'{ILSE}[ease]\nbust = "-1.5 cm"')

    for knit in (False, True):
        own = person.preference("top", knit=knit).region("bust").own
        assert own is not None
        assert own.cm == -1.5


def test_the_ease_of_one_kind_of_garment_goes_before_that_of_every_garment(read: Callable[[str], Person]) -> None:
    person = read(f'{ILSE}[ease]\nbust = "5"\nwaist = "2"\n[ease.jacket]\nbust = "10"')
    jacket, dress = person.preference("jacket", knit=False), person.preference("dress", knit=False)

    assert [length.cm for length in (jacket.region("bust").own, jacket.region("waist").own) if length] == [10, 2]
    assert [length.cm for length in (dress.region("bust").own,) if length] == [5]


def test_without_ease_she_has_no_preferences(read: Callable[[str], Person]) -> None:
    assert read(ILSE).preferences == ()


@pytest.mark.parametrize(
    ("unit_line", "unit"), [('unit = "inches"', "in"), ('unit = "Centimetres"', "cm")], ids=["inches", "centimetres"]
)
def test_the_unit_may_be_a_word(read: Callable[[str], Person], unit_line: str, unit: str) -> None:
    assert read(f'name = "Ilse"\n{unit_line}').unit == unit


def test_without_a_unit_the_written_one_is_hers(read: Callable[[str], Person]) -> None:
    assert read('name = "Ilse"\n[measurements]\nbust = "38 in"').unit == "in"


def test_a_byte_order_mark_before_the_text_does_no_harm(tmp_path: Path) -> None:
    path = tmp_path / "ilse.toml"
    path.write_bytes(b"\xef\xbb\xbf" + ILSE.encode())

    assert read_person_file(path).name == "Ilse"


@pytest.mark.parametrize(
    ("text", "sentence"),
    [
        (f"{ILSE}[measurements]\nbustt = 96", "“bustt” is not a measure we know; did you mean “bust”?"),
        (f"{ILSE}[measurements]\nqqqq = 96", "“qqqq” is not a measure we know."),
        (f"{ILSE}[measurements]\nhem = 96", "“hem” is a measure of garments, not of a body."),
        (f'{ILSE}[measurements]\nbust = "wide"', "in “bust”, “wide” is not a length."),
        (f'{ILSE}[measurements]\nbust = "96 kg"', "in “bust”, “kg” is not a unit of length."),
        (f'{ILSE}[measurements]\nbust = ""', "in “bust”, no length is given."),
        (f"{ILSE}[measurements]\nbust = -96", "“bust” must be more than nothing."),
        (f"{ILSE}[measurements]\nbust = true", "“bust” must be a length such as “96 cm” or “37 3/4 in”."),
        (f"{ILSE}[measurements]\nbust = {{ on = 2026-03-02 }}", "“bust” has no figure."),
        (
            f'{ILSE}[measurements]\nbust = {{ figure = "96", by = "cat" }}',
            "“bust.by” must be trained, helped or alone.",
        ),
        (
            f'{ILSE}[measurements]\nbust = {{ figure = "96", one = "May" }}',
            "“one” is not known in “bust”; did you mean “on”?",
        ),
        (
            f'{ILSE}[measurements]\nbust = {{ figure = "96", on = "May" }}',
            "“bust.on” must be a day such as 2026-10-11.",
        ),
        (
            f'{ILSE}[measurements]\nbust = 96\n"Bust" = 97',
            "“Bust” is measured twice; put its figures in one list.",
        ),
        (
            'name = "Ilse"\n[measurements]\nbust = 96',
            "in “bust”, “96” has no unit: write cm or in behind it.",
        ),
        ('name = "Ilse"\nunit = "ell"', "“unit” must be cm or in, not “ell”."),
        ('name = "Ilse"\nunit = 3', "“unit” must be a text in quotation marks."),
        ('unit = "cm"', "“name” is missing."),
        (f'{ILSE}child = "no"', "“child” must be true or false."),
        (f'{ILSE}groups = "Home"', "“groups” must be a list of texts in quotation marks."),
        (f'{ILSE}born = "in May"', "“born” must be a day such as 2026-10-11."),
        (f"{ILSE}measurements = 5", "“measurements” must be a section: write [measurements] on a line of its own."),
        (f'{ILSE}measured_by = "cat"', "“measured_by” must be trained, helped or alone."),
        (
            f'{ILSE}mesured_by = "alone"',
            "“mesured_by” is not known in a person's file; did you mean “measured_by”?",
        ),
        (f'{ILSE}[ease]\nbust = "much"', "in “ease.bust”, “much” is not a length."),
        (f'{ILSE}[ease]\nwast = "2"', "“wast” is not known in [ease], which is about regions; did you mean “waist”?"),
        (
            f'{ILSE}[ease.jackets]\nbust = "2"',
            "“jackets” is not known as a kind of garment in [ease]; did you mean “jacket”?",
        ),
    ],
)  # fmt: skip
def test_what_is_unclear_is_one_sentence_that_names_file_and_field(
    read: Callable[[str], Person], text: str, sentence: str
) -> None:
    with pytest.raises(ReadError) as error:
        read(text)

    assert str(error.value) == f"ilse.toml: {sentence}"


def test_a_trade_name_is_answered_with_the_measure_it_means(read: Callable[[str], Person]) -> None:
    with pytest.raises(ReadError, match="did you mean “hip”"):
        read(f"{ILSE}[measurements]\nseat = 96")


@pytest.mark.parametrize(
    "raw",
    [b"name = ", b"\xff\xfe\x00", b"PK\x03\x04\x00", b"a = " + b"[" * 5000, b"a = " + b"9" * 5000, b"name"],
    ids=["cut off", "other encoding", "workbook", "nested", "endless number", "no value"],
)
def test_what_is_not_toml_is_said_in_one_sentence(tmp_path: Path, raw: bytes) -> None:
    path = tmp_path / "ilse.toml"
    path.write_bytes(raw)

    with pytest.raises(ReadError, match=r"^ilse\.toml is not a TOML file: .+\.$"):
        read_person_file(path)


def test_a_missing_file_is_named(tmp_path: Path) -> None:
    with pytest.raises(ReadError, match=r"^nobody\.toml cannot be read: no such file or directory\.$"):
        read_person_file(tmp_path / "nobody.toml")


def test_a_huge_file_is_not_taken_for_one_written_by_hand(tmp_path: Path) -> None:
    path = tmp_path / "ilse.toml"
    path.write_bytes(b"#" * 1_000_001)

    with pytest.raises(ReadError, match="too large"):
        read_person_file(path)


@settings(max_examples=200, deadline=None)
@given(changes=st.lists(st.tuples(st.integers(0, 1200), st.binary(max_size=3)), min_size=1, max_size=4))
def test_a_damaged_file_is_still_a_person_or_one_sentence(
    tmp_path_factory: pytest.TempPathFactory, changes: list[tuple[int, bytes]]
) -> None:
    raw = assets.chart_file("demo", "people", "tilde.toml").read_bytes()
    for place, put in changes:
        raw = raw[:place] + put + raw[place + 1 :]
    path = tmp_path_factory.mktemp("damaged") / "ilse.toml"
    path.write_bytes(raw)

    try:
        found: Person | str = read_person_file(path)
    except ReadError as error:
        found = str(error)

    assert isinstance(found, Person) or (found.startswith("ilse.toml") and "\n" not in found)
