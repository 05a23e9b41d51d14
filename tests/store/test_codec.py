from __future__ import annotations

import dataclasses
import datetime as dt
import json
from fractions import Fraction
from typing import TYPE_CHECKING, Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from sizekeeper.core.chart import Chart
from sizekeeper.core.learned import LEARNED, Learned
from sizekeeper.core.length import Length
from sizekeeper.core.make import Decision, Kept, KeptRegion, Make, Place, ToileRound
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person, Reading
from sizekeeper.core.piece import Piece, Pieces
from sizekeeper.store import codec
from sizekeeper.store.codec import decode, encode, kind_of, new_id
from sizekeeper.store.trouble import EntryError
from tests.store.made import DRESS, ILSE

if TYPE_CHECKING:
    from sizekeeper.store.codec import Value

READING = Reading("bust", "37 3/4 in", Length(Fraction(151, 4), "in", "37 3/4 in"), dt.date(2026, 11, 20))
MEASURED = Person("p1", "Ilse", readings=(READING,), born=dt.date(1961, 2, 3))
HOSTILE = [
    "'; DROP TABLE entry; --",
    "\0",
    "“”‘’",
    "Zoë 👩🏽‍🦰",
    "a\u202eb",
    '{"id": "p9"}',
    "\\u0000",
    "x" * 100_000,
    "\r\n\t",
    " ",
]

patterns = st.builds(Pattern, stretch=st.floats(0, 10), title=st.text())
cm = st.floats(-500, 500)  # all kept figures are finite numbers, as is a share lost in washing
unknown = st.none() | cm
regions = st.builds(KeptRegion, cm, unknown, unknown, unknown)
kept = st.builds(Kept, body=st.dictionaries(st.text(), cm), regions=st.dictionaries(st.text(), regions))
st.register_type_strategy(Make, st.builds(Make, fabric=st.none(), kept=st.none() | kept))
values = st.one_of(st.from_type(Person), patterns, st.from_type(Chart), st.from_type(Pieces), st.from_type(Make))


@settings(max_examples=60, deadline=None)
@given(values)
def test_every_value_comes_back_unchanged(value: Value) -> None:
    assert decode(kind_of(value), 1, encode(value), value.id) == value


def test_a_length_is_kept_as_its_exact_fraction_its_unit_and_what_was_typed() -> None:
    raw = json.loads(encode(MEASURED))["readings"][0]
    assert raw["length"] == {"value": "151/4", "unit": "in", "text": "37 3/4 in"}


def test_a_day_is_kept_as_an_iso_date() -> None:
    raw = json.loads(encode(MEASURED))
    assert (raw["born"], raw["readings"][0]["on"]) == ("1961-02-03", "2026-11-20")


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_text_is_only_text(text: str) -> None:
    assert decode("person", 1, encode(Person("p1", text, notes=text))) == Person("p1", text, notes=text)


def test_an_old_shape_is_upgraded_step_by_step_when_it_is_read(monkeypatch: pytest.MonkeyPatch) -> None:
    def named(raw: dict[str, Any]) -> dict[str, Any]:
        return {"id": raw["id"], "called": raw["alias"].title()}

    def renamed(raw: dict[str, Any]) -> dict[str, Any]:
        return {"id": raw["id"], "name": raw["called"], "born": "2001-02-03"}

    monkeypatch.setitem(codec.SHAPES, "person", 3)
    monkeypatch.setitem(codec.UPGRADES, ("person", 1), named)
    monkeypatch.setitem(codec.UPGRADES, ("person", 2), renamed)
    expected = Person("p1", "Ilse", born=dt.date(2001, 2, 3))
    assert decode("person", 1, '{"id": "p1", "alias": "ilse"}', "p1") == expected
    assert decode("person", 2, '{"id": "p1", "called": "Ilse"}', "p1") == expected


def test_a_toile_kept_before_changes_were_noted_reads_as_not_noted() -> None:
    text = '{"id": "m1", "person": "p1", "pattern": "d1", "rounds": [{"on": "2026-11-20", "note": "first try"}]}'
    assert decode("make", 1, text) == Make(
        "m1", "p1", "d1", rounds=(ToileRound(dt.date(2026, 11, 20), (), "first try"),)
    )


def test_a_make_written_before_it_could_be_finished_reads_as_being_planned() -> None:
    text = '{"id":"m1","person":"p1","pattern":"d1","decision":{"kind":"straight","place":{"size":"40","part":"0"}}}'
    made = decode("make", 1, text, "m1")

    assert made == Make("m1", "p1", "d1", decision=Decision("straight", Place("40")))
    assert isinstance(made, Make)
    assert (made.progress, made.open, made.worn, made.kept) == ("planned", True, {}, None)


def test_an_upgrade_that_is_missing_is_said_with_the_entry(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(codec.SHAPES, "person", 2)
    with pytest.raises(EntryError, match="the person “Ilse” is damaged"):
        decode("person", 1, encode_as_is(ILSE), "p1")


def encode_as_is(value: Value) -> str:
    return json.dumps({"id": value.id, "name": "Ilse"})


@pytest.mark.parametrize(
    ("text", "named"),
    [
        ("", "p1"),
        ("[]", "p1"),
        ("3", "p1"),
        ("{", "p1"),
        ("[" * 100_000, "p1"),
        ('{"id": "p1"}', "p1"),
        ('{"id": "p1", "name": "Ilse", "unit": "furlong"}', "“Ilse”"),
        ('{"id": "p1", "name": "Ilse", "born": "2026-13-01"}', "“Ilse”"),
        ('{"id": "p2", "name": "Ilse"}', "“Ilse”"),
    ],
)
def test_a_damaged_entry_is_named(text: str, named: str) -> None:
    with pytest.raises(EntryError, match=f"the person {named} is damaged"):
        decode("person", 1, text, "p1")


def test_a_damaged_pattern_is_named_by_its_title() -> None:
    with pytest.raises(EntryError, match="the pattern “Summer dress” is damaged"):
        decode("pattern", 1, '{"id": "d1", "title": "Summer dress", "stretch": "much"}')


def test_a_damaged_entry_without_name_or_id_is_said_as_such() -> None:
    with pytest.raises(EntryError, match="the person without an id is damaged"):
        decode("person", 1, "{")


@pytest.mark.parametrize("amount", ["1/0", "151/-4", "1e9", "9" * 300, "", " 1", "nan", 3, None, "1_0", "٣"])
def test_only_a_plain_fraction_is_a_length(amount: object) -> None:
    raw = json.loads(encode(MEASURED))
    raw["readings"][0]["length"]["value"] = amount
    with pytest.raises(EntryError, match="“Ilse” is damaged"):
        decode("person", 1, json.dumps(raw))


@pytest.mark.parametrize(("kind", "shape"), [("person", 2), ("person", 0), ("shoe", 1)])
def test_a_newer_kind_or_shape_is_refused_in_words(kind: str, shape: int) -> None:
    with pytest.raises(EntryError, match=f"the {kind} “Ilse” was written by a newer Sizekeeper"):
        decode(kind, shape, encode_as_is(ILSE))


@pytest.mark.parametrize(
    ("value", "named"),
    [
        (Person("p1", "Ilse", notes="\ud800"), "“Ilse”"),
        (Person("p1", "", notes="\ud800"), "a person without a name"),
        (dataclasses.replace(DRESS, stretch=float("nan")), "“Summer dress”"),
        (Pattern("d1", "", stretch=float("inf")), "a pattern without a title"),
        (Chart("c1", "d1", "body", unit="ell"), "a body chart"),  # type: ignore[arg-type]
        (Chart("c1", "d1", "finished", rows=(3,)), "a finished chart"),  # type: ignore[arg-type]
        (Make("m1", "p1", "d1", notes="\ud800"), "a make without a name"),
        (Make("m1", "p1", "d1", name="Sundays", notes="\ud800"), "“Sundays”"),
        (Pieces("s1", "d1", pieces=(3,)), "the pieces of a pattern"),  # type: ignore[arg-type]
        (Person("p1", "Ilse", notes=b"raw"), "“Ilse”"),  # type: ignore[arg-type]
        (Person("p1", "Ilse", notes=1j), "“Ilse”"),  # type: ignore[arg-type]
        (Person("p1", "Ilse", groups=["list"]), "“Ilse”"),  # type: ignore[arg-type]
    ],
)
def test_a_value_that_could_not_be_read_back_is_refused_before_it_is_saved(value: Value, named: str) -> None:
    with pytest.raises(EntryError, match=f"^{named} cannot be saved: "):
        encode(value)


def test_ids_do_not_repeat() -> None:
    assert len({new_id() for _ in range(1000)}) == 1000


def test_every_kind_has_a_shape() -> None:
    assert codec.SHAPES.keys() == codec.KINDS.keys()


def test_the_names_learned_from_charts_come_back_as_they_were() -> None:
    known = Learned(names={"busst": "bust", "rückenlänge": "back_waist_length"})
    assert decode("learned", 1, encode(known), LEARNED) == known


def test_pieces_written_before_they_had_a_view_and_a_size_are_for_all_views() -> None:
    old = '{"id": "pp", "pattern": "d1", "pieces": [{"id": "f", "name": "Front", "cut": 2, "role": "front"}]}'
    assert decode("pieces", 1, old, "pp") == Pieces("pp", "d1", (Piece("f", "Front", 2, role="front", view=""),))
