"""What belongs together is found again: charts, pieces, makes and views."""

from __future__ import annotations

from dataclasses import replace

import pytest

from sizekeeper.core.make import Decision, Make, Place
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.person import Person
from sizekeeper.core.piece import Piece, Pieces
from sizekeeper.errors import ReportError
from sizekeeper.reports.snapshot import Pairing, Snapshot
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

ILSE = replace(person("in", bust="38", waist="28", hip="43"), id="ilse")
DRESS = Pattern("dress", "Wrap dress")
CHARTS = tuple(replace(c, pattern="dress") for c in (BODY_CHART, FINISHED))
DECIDED = Make("m1", "ilse", "dress", decision=Decision("straight", Place("38")))


def of_view(view: str) -> object:
    return replace(chart("finished", "38 40", bust="98, 102"), id=f"f{view}", pattern="dress", view=view)


def planned_size(*values: object) -> float:
    snapshot = Snapshot([ILSE, DRESS, *CHARTS, *values])
    planned = snapshot.planned(snapshot.found(Pairing(ILSE, DRESS)))
    assert planned is not None
    return planned.shown.position


def test_people_and_patterns_come_by_name_and_hidden_ones_only_when_asked() -> None:
    bo, gone = Person("b", "bo"), replace(ILSE, id="g", name="Ada", hidden=True)
    snapshot = Snapshot([ILSE, bo, gone])
    assert [p.name for p in snapshot.people()] == ["bo", "Ilse"]
    assert [p.name for p in snapshot.people(hidden=True)] == ["Ada", "bo", "Ilse"]


def test_the_newest_make_is_planned_for() -> None:
    newer = replace(DECIDED, id="m2", decision=Decision("straight", Place("42")))
    assert planned_size(DECIDED) == 0.0
    assert planned_size(DECIDED, newer) == 2.0


@pytest.mark.parametrize("other", [{"hidden": True}, {"view": "B"}, {"person": "bo"}, {"pattern": "coat"}])
def test_a_make_that_is_hidden_or_of_something_else_is_not(other: dict[str, object]) -> None:
    newer = replace(DECIDED, id="m2", decision=Decision("straight", Place("42")), **other)  # type: ignore[arg-type]  # fields of a make
    assert planned_size(DECIDED, newer) == 0.0


def test_a_finished_make_is_not_planned_for_but_its_note_is_kept_for_the_next() -> None:
    done = replace(
        DECIDED, id="m2", decision=Decision("straight", Place("42")), progress="finished", next_time="Longer\nstraps"
    )
    snapshot = Snapshot([ILSE, DRESS, *CHARTS, DECIDED, done])

    assert planned_size(DECIDED, done) == 0.0
    assert snapshot.next_time(snapshot.found(Pairing(ILSE, DRESS))) == "Longer straps"


@pytest.mark.parametrize("other", [{"hidden": True}, {"person": "bo"}, {"progress": "given_up"}, {"next_time": ""}])
def test_no_other_make_leaves_a_note_for_the_next(other: dict[str, object]) -> None:
    done = replace(DECIDED, progress="finished", next_time="Longer straps")
    snapshot = Snapshot([ILSE, DRESS, *CHARTS, replace(done, **other)])  # type: ignore[arg-type]  # fields of a make

    assert snapshot.next_time(snapshot.found(Pairing(ILSE, DRESS))) == ""


def test_the_pieces_of_the_pattern_are_taken() -> None:
    pieces = Pieces("p", "dress", pieces=(Piece("1", "Front", role="front"),))
    snapshot = Snapshot([ILSE, DRESS, *CHARTS, Pieces("q", "coat"), pieces])
    assert snapshot.found(Pairing(ILSE, DRESS)).pieces == pieces


def test_each_view_with_figures_of_its_own_is_a_pairing() -> None:
    viewed = replace(DRESS, views=("A", "B", "C"))
    snapshot = Snapshot([ILSE, viewed, of_view("B"), of_view("")])
    found = snapshot.pairings([ILSE], [viewed])
    assert [(p.view, p.view_words) for p in found] == [("", "View A and C"), ("B", "View B")]
    assert [p.words for p in found] == ["Ilse, Wrap dress, View A and C", "Ilse, Wrap dress, View B"]
    finished = snapshot.found(found[1]).laid[1]
    assert finished is not None
    assert finished.view == "B"


def test_a_pattern_without_views_is_one_pairing() -> None:
    assert Snapshot([ILSE, DRESS, *CHARTS]).pairings([ILSE], [DRESS]) == [Pairing(ILSE, DRESS)]


def test_a_file_is_named_after_both_and_a_private_one_says_so() -> None:
    pairing = Pairing(ILSE, replace(DRESS, title="Coat/Cape"), "B", "View B")
    assert pairing.file_name(".pdf") == "Ilse - Coat-Cape - View B.pdf"
    assert pairing.file_name(".csv", private=True) == "Ilse - Coat-Cape - View B - private.csv"


def test_what_cannot_be_compared_is_said_with_both_names() -> None:
    with pytest.raises(ReportError, match=r"^Ilse, Wrap dress: the pattern has no figures yet"):
        Snapshot([ILSE, DRESS]).found(Pairing(ILSE, DRESS))
    nobody = replace(ILSE, name="", readings=())
    with pytest.raises(ReportError, match=r"^Somebody, Wrap dress: There is no measure"):
        Snapshot([nobody, DRESS, *CHARTS]).found(Pairing(nobody, DRESS))


def test_a_view_takes_its_own_pieces_and_those_of_all() -> None:
    viewed = replace(DRESS, views=("A", "B"))
    listed = tuple(Piece(view or "all", "Skirt", view=view) for view in ("", "A", "B"))
    snapshot = Snapshot([ILSE, viewed, of_view("B"), of_view(""), Pieces("p", "dress", listed)])
    taken = {p.view: snapshot.found(p).pieces for p in snapshot.pairings([ILSE], [viewed])}
    assert {view: [one.id for one in found.pieces] for view, found in taken.items() if found is not None} == {
        "": ["all", "A"],
        "B": ["all", "B"],
    }


def test_a_view_with_pieces_of_its_own_begins_with_what_was_decided_for_all() -> None:
    viewed = replace(DRESS, views=("A", "B"))
    listed = tuple(Piece(view, "Skirt", view=view) for view in ("A", "B"))
    shared = replace(DECIDED, decision=Decision("straight", Place("42")))
    own = replace(DECIDED, id="m2", view="B", decision=Decision("straight", Place("38")))
    snapshot = Snapshot([ILSE, viewed, *CHARTS, Pieces("p", "dress", listed), shared, own])
    planned = {p.view: snapshot.planned(snapshot.found(p)) for p in snapshot.pairings([ILSE], [viewed])}
    assert {view: plan.shown.position for view, plan in planned.items() if plan is not None} == {"A": 2.0, "B": 0.0}
