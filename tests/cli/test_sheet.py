"""`sizekeeper sheet` from a small library and from files; what stands on a sheet is tested with its writers."""

from __future__ import annotations

import dataclasses
import datetime as dt
import io
import sys
from typing import TYPE_CHECKING, Any

import pytest

from sizekeeper.cli import sheet as sheet_command
from sizekeeper.cli.main import main
from sizekeeper.core.found import Found
from sizekeeper.core.make import Decision, Make, Place
from sizekeeper.core.pattern import Pattern
from sizekeeper.core.planned import Planned
from sizekeeper.store.library import Library
from tests.build import chart, person
from tests.fits import BODY_CHART, FINISHED

if TYPE_CHECKING:
    from collections.abc import Iterator
    from pathlib import Path


NOW = dt.datetime(2026, 11, 25, 10, 0, tzinfo=dt.UTC)
ILSE = dataclasses.replace(person("in", bust="38", waist="28", hip="43"), id="ilse-id", name="Ilse")
MARIT = dataclasses.replace(person("cm", bust="92", waist="74"), id="marit-id", name="Marit Å")
MARTA = dataclasses.replace(MARIT, id="marta-id", name="Marta")
GONE = dataclasses.replace(MARIT, id="gone-id", name="Gone", hidden=True)
EMPTY = dataclasses.replace(MARIT, id="empty-id", name="Nobody", readings=())
DRESS, BLANK, COAT = Pattern("dress-id", "Wrap dress"), Pattern("blank-id", "Blank"), Pattern("coat-id", "Coat")
VIEWED = dataclasses.replace(DRESS, id="viewed-id", title="Viewed", views=("A", "B"))
VIEW_A, VIEW_B = (
    dataclasses.replace(chart("finished", "38 40", bust=f"{95 + more}, {99 + more}"), id=f"f{v}", view=v)
    for v, more in (("A", 0), ("B", 10))
)


def own(what: Pattern, *charts: object) -> list[Any]:
    return [what, *(dataclasses.replace(c, pattern=what.id, id=f"{what.id}{i}") for i, c in enumerate(charts))]  # type: ignore[type-var]  # charts all


@dataclasses.dataclass
class Made:
    """What the command asked for: found, planned, format and how."""

    found: Found
    planned: Planned | None
    form: str
    private: bool
    paper: str

    @property
    def words(self) -> str:
        return f"{self.found.person.name}/{self.found.pattern.title}/{self.found.view}"


@pytest.fixture
def made(monkeypatch: pytest.MonkeyPatch) -> list[Made]:
    """Sheets are only counted; a few tests make real ones."""
    all_made: list[Made] = []

    def count(found: Found, planned: Planned | None, form: str, *, private: bool, paper: str, **_: object) -> bytes:
        all_made.append(Made(found, planned, form, private, paper))
        return f"{all_made[-1].words} {form}".encode()

    monkeypatch.setattr(sheet_command, "export", count)
    for name in ("LC_ALL", "LC_PAPER", "LANG"):
        monkeypatch.delenv(name, raising=False)
    return all_made


@pytest.fixture
def library(tmp_path: Path) -> Path:
    return store(tmp_path, ILSE, MARIT, GONE, *own(DRESS, BODY_CHART, FINISHED))


def store(folder: Path, *values: Any) -> Path:  # noqa: ANN401 - entries of every kind
    path = folder / "home.sizekeeper"
    with Library.open(path, now=lambda: NOW) as opened:
        opened.save("Set up", [(None, value) for value in values])
    return path


def sheet(library: Path, *words: str) -> int:
    return main(["sheet", "--library", str(library), *words])


def one(library: Path, who: str, what: str, out: Path, *more: str) -> int:
    return sheet(library, "--person", who, "--pattern", what, "--out", str(out), *more)


def said(capsys: pytest.CaptureFixture[str]) -> str:
    """The one sentence of an error."""
    err = capsys.readouterr().err
    assert err.startswith("sizekeeper: ")
    assert err.count("\n") == 1
    return err


@pytest.mark.parametrize("who", ["Ilse", "ILSE", " ilse ", "ils", "ilse-id"])
@pytest.mark.parametrize("what", ["Wrap dress", "wrap  DRESS", "wrap", "dress-id"])
def test_a_name_its_beginning_or_an_id_names_somebody(
    library: Path, made: list[Made], tmp_path: Path, who: str, what: str
) -> None:
    assert one(library, who, what, tmp_path / "a.pdf") == 0
    assert [m.words for m in made] == ["Ilse/Wrap dress/"]


@pytest.mark.parametrize(
    ("file", "form"), [("a.pdf", "pdf"), ("a.HTML", "html"), ("a.htm", "html"), ("a.xlsx", "xlsx"), ("a.csv", "csv")]
)
def test_the_suffix_says_the_format(library: Path, made: list[Made], tmp_path: Path, file: str, form: str) -> None:
    assert one(library, "Ilse", "Wrap dress", tmp_path / file) == 0
    assert [m.form for m in made] == [form]
    assert (tmp_path / file).read_bytes() == f"Ilse/Wrap dress/ {form}".encode()


def test_a_file_without_a_suffix_is_written_when_the_format_is_named(
    library: Path, made: list[Made], tmp_path: Path
) -> None:
    assert one(library, "Ilse", "Wrap dress", tmp_path / "sheet", "--format", "csv") == 0
    assert [m.form for m in made] == ["csv"]


@pytest.mark.parametrize(
    ("file", "more", "says"),
    [
        ("a.doc", (), ".pdf, .html, .xlsx or .csv"),
        ("a", (), "does not say"),
        ("a.pdf", ("--format", "csv"), "only one"),
    ],
)
def test_a_format_that_is_not_clear_is_asked_for(
    library: Path,
    made: list[Made],
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    file: str,
    more: tuple[str, ...],
    says: str,
) -> None:
    assert one(library, "Ilse", "Wrap dress", tmp_path / file, *more) == 2
    assert says in said(capsys)
    assert made == []


@pytest.mark.parametrize(
    ("who", "what", "says"),
    [
        ("Isle", "Wrap dress", "did you mean “Ilse”?"),
        ("Zzz", "Wrap dress", "it has “Ilse”, “Marit Å”."),
        ("Ilse", "Warp dres", "did you mean “Wrap dress”?"),
        ("", "Wrap dress", "nobody and nothing called “”"),
    ],
)
def test_a_name_that_nobody_has_brings_those_that_are_near(
    library: Path, made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str], who: str, what: str, says: str
) -> None:
    assert one(library, who, what, tmp_path / "a.pdf") == 2
    assert says in said(capsys)
    assert made == []


def test_a_beginning_that_two_share_names_both_with_their_ids(
    tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    library = store(tmp_path, MARIT, MARTA, *own(DRESS, BODY_CHART, FINISHED))
    assert one(library, "mar", "Wrap dress", tmp_path / "a.pdf") == 2
    assert "“Marit Å” marit-id, “Marta” marta-id" in said(capsys)
    assert one(library, "marta", "Wrap dress", tmp_path / "a.pdf") == 0


def test_somebody_hidden_is_found_by_her_whole_name_only(library: Path, made: list[Made], tmp_path: Path) -> None:
    assert one(library, "gon", "Wrap dress", tmp_path / "a.pdf") == 2
    assert one(library, "gone", "Wrap dress", tmp_path / "a.pdf") == 0


def test_a_file_that_is_there_is_left_unless_it_may_be_replaced(
    library: Path, made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "a.csv").write_text("old")
    assert one(library, "Ilse", "Wrap dress", tmp_path / "a.csv") == 2
    assert "--replace" in said(capsys)
    assert (tmp_path / "a.csv").read_text() == "old"
    assert one(library, "Ilse", "Wrap dress", tmp_path / "a.csv", "--replace") == 0
    assert (tmp_path / "a.csv").read_text() == "Ilse/Wrap dress/ csv"


def test_the_make_of_the_library_is_planned_for(made: list[Made], tmp_path: Path) -> None:
    decided = Make("m", "ilse-id", "dress-id", decision=Decision("straight", Place("42"), reason="roomy"))
    library = store(tmp_path, ILSE, *own(DRESS, BODY_CHART, FINISHED), decided)
    assert one(library, "Ilse", "Wrap dress", tmp_path / "a.pdf") == 0
    planned = made[0].planned
    assert planned is not None
    assert (planned.make.decision, planned.shown.position) == (decided.decision, 2.0)


def test_the_library_is_only_looked_at_while_a_window_has_it(library: Path, made: list[Made], tmp_path: Path) -> None:
    before = library.read_bytes()
    with Library.open(library, now=lambda: NOW) as window:
        assert not window.read_only
        assert one(library, "Ilse", "Wrap dress", tmp_path / "a.pdf") == 0
    assert library.read_bytes() == before


def test_a_library_that_is_not_there_is_named_and_not_made(
    made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert one(tmp_path / "none.sizekeeper", "Ilse", "Wrap dress", tmp_path / "a.pdf") == 2
    assert "none.sizekeeper” does not exist" in said(capsys)
    assert not (tmp_path / "none.sizekeeper").exists()


def test_the_library_may_be_named_before_the_command(library: Path, made: list[Made], tmp_path: Path) -> None:
    words = ["--library", str(library), "sheet", "--person", "Ilse", "--pattern", "wrap", "--out"]
    assert main([*words, str(tmp_path / "a.pdf")]) == 0


@pytest.mark.parametrize("kept", [True, False], ids=["chosen", "default"])
def test_without_a_library_the_user_s_own_is_taken(
    library: Path, made: list[Made], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, *, kept: bool
) -> None:
    module = "sizekeeper.ui.own_library"
    monkeypatch.setattr(f"{module}.default_path", lambda: tmp_path / "nowhere" if kept else library)
    stored = {"library/own": str(library)} if kept else {}
    monkeypatch.setattr(f"{module}.QSettings", lambda *_: _Stored(stored))
    assert main(["sheet", "--person", "Ilse", "--pattern", "wrap", "--out", str(tmp_path / "a.pdf")]) == 0


def test_where_no_window_can_be_made_the_library_in_the_default_place_is_taken(
    library: Path, made: list[Made], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "sizekeeper.ui.own_library", None)  # as if Qt were not there
    monkeypatch.setattr("sizekeeper.store.place.default_path", lambda: library)
    assert main(["sheet", "--person", "Ilse", "--pattern", "wrap", "--out", str(tmp_path / "a.pdf")]) == 0


class _Stored:
    def __init__(self, values: dict[str, str]) -> None:
        self.values = values

    def value(self, key: str, default: str) -> str:
        return self.values.get(key, default)


def test_somebody_without_measurements_is_said_to_have_none(
    tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    library = store(tmp_path, EMPTY, *own(DRESS, BODY_CHART, FINISHED), BLANK)
    assert one(library, "Nobody", "wrap", tmp_path / "a.pdf") == 2
    assert "Nobody, Wrap dress: There is no measure" in said(capsys)
    assert one(library, "Nobody", "blank", tmp_path / "a.pdf") == 2
    assert "the pattern has no figures yet" in said(capsys)


def test_a_pattern_with_views_of_its_own_asks_which(
    tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    library = store(tmp_path, MARIT, *own(VIEWED, VIEW_A, VIEW_B))
    assert one(library, "Marit", "Viewed", tmp_path / "a.pdf") == 2
    assert "View A and View B; say which with --view" in said(capsys)
    assert one(library, "Marit", "Viewed", tmp_path / "a.pdf", "--view", "b") == 0
    assert one(library, "Marit", "Viewed", tmp_path / "b.pdf", "--view", "View A") == 0
    assert [m.words for m in made] == ["Marit Å/Viewed/B", "Marit Å/Viewed/A"]
    assert one(library, "Marit", "Viewed", tmp_path / "a.pdf", "--view", "Z") == 2
    assert "no view “Z”; it has “A” and “B”" in said(capsys)


def test_a_private_sheet_on_letter_paper_is_asked_for(library: Path, made: list[Made], tmp_path: Path) -> None:
    one(library, "Ilse", "wrap", tmp_path / "a.pdf", "--private", "--paper", "letter")
    one(library, "Ilse", "wrap", tmp_path / "b.pdf", "--paper", "a4")
    assert [(m.private, m.paper) for m in made] == [(True, "us-letter"), (False, "a4")]


@pytest.mark.parametrize(
    ("locale", "paper"),
    [("en_US.UTF-8", "us-letter"), ("es_MX", "us-letter"), ("en_GB.UTF-8", "a4"), ("C.UTF-8", "a4"), ("", "a4")],
)
def test_the_paper_is_that_of_the_country(
    library: Path, made: list[Made], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, locale: str, paper: str
) -> None:
    monkeypatch.setenv("LANG", locale)
    one(library, "Ilse", "wrap", tmp_path / "a.pdf")
    assert [m.paper for m in made] == [paper]


def test_a_mode_that_the_charts_do_not_allow_is_refused(
    tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    library = store(tmp_path, ILSE, *own(DRESS, BODY_CHART))
    assert one(library, "Ilse", "wrap", tmp_path / "a.pdf", "--mode", "my") == 2
    assert "has not got finished measurements" in said(capsys)
    assert one(library, "Ilse", "wrap", tmp_path / "a.pdf", "--mode", "body") == 0


# From files.

PERSON = 'name = "Marit"\nunit = "cm"\n[measurements]\nbust = "92"\nwaist = "74"\n'
CHART = (
    "Body measurements (cm),38,40,42\nBust,88,92,96\n\nFinished garment measurements (cm),38,40,42\nBust,94,99,103\n"
)
VIEWS = "Finished garment measurements (cm),View,38,40\nBust,A,94,98\nBust,B,104,108\n"


@pytest.fixture
def files(tmp_path: Path) -> tuple[str, str, str]:
    found = []
    for name, text in (("me.toml", PERSON), ("dress.csv", CHART), ("views.csv", VIEWS)):
        (tmp_path / name).write_text(text, encoding="utf-8")
        found.append(str(tmp_path / name))
    return found[0], found[1], found[2]


def from_files(files: tuple[str, str, str], out: Path, *more: str, chart: int = 1) -> int:
    return main(["sheet", "--person", files[0], "--pattern", files[chart], "--out", str(out), *more])


def test_a_sheet_is_made_from_two_files_without_a_library(
    files: tuple[str, str, str], made: list[Made], tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(Library, "open", None)  # not even looked at
    assert from_files(files, tmp_path / "a.pdf", "--garment", "jacket", "--stretch", "0.25", "--mode", "designer") == 0
    found = made[0].found
    assert made[0].words == "Marit/dress/"
    assert found.fit is not None
    assert (found.pattern.garment, found.pattern.knit, found.fit.mode) == ("jacket", True, "designer")


def test_of_several_views_in_a_file_the_named_one_counts(
    files: tuple[str, str, str], made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert from_files(files, tmp_path / "a.pdf", chart=2) == 2
    assert "--view" in said(capsys)
    assert from_files(files, tmp_path / "a.pdf", "--view", "b", chart=2) == 0
    finished = made[0].found.laid[1]
    assert finished is not None
    assert (made[0].found.view, finished.view) == ("B", "B")


def test_somebody_of_the_library_may_try_a_chart_from_a_file(
    library: Path, files: tuple[str, str, str], made: list[Made], tmp_path: Path
) -> None:
    assert one(library, "Ilse", files[1], tmp_path / "a.pdf") == 0
    assert made[0].words == "Ilse/dress/"


@pytest.mark.parametrize("option", [("--garment", "coat"), ("--stretch", "0.2"), ("--table", "1")])
def test_what_is_for_a_chart_file_is_refused_for_the_library(
    library: Path, made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str], option: tuple[str, str]
) -> None:
    assert one(library, "Ilse", "wrap", tmp_path / "a.pdf", *option) == 2
    assert f"{option[0]} is for a chart file" in said(capsys)


def test_a_missing_person_file_is_named(tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]) -> None:
    words = ["--person", str(tmp_path / "no.toml"), "--pattern", "x", "--out", "a.pdf"]
    assert main(["sheet", *words]) == 2
    assert "no.toml" in said(capsys)


# Many at once.


def everything(library: Path, out: Path, *more: str) -> int:
    return sheet(library, "--all", "--out", str(out), *more)


@pytest.fixture
def many(tmp_path: Path) -> Path:
    return store(
        tmp_path,
        ILSE,
        MARIT,
        GONE,
        *own(DRESS, BODY_CHART, FINISHED),
        *own(COAT, FINISHED),
        *own(VIEWED, VIEW_A, VIEW_B),
    )


def test_all_writes_one_for_each_person_pattern_and_view(many: Path, made: list[Made], tmp_path: Path) -> None:
    assert everything(many, tmp_path / "out") == 0
    assert sorted(path.name for path in (tmp_path / "out").iterdir()) == [
        f"{who} - {what}.pdf"
        for who in ("Ilse", "Marit Å")
        for what in ("Coat", "Viewed - View A", "Viewed - View B", "Wrap dress")
    ]


def test_all_of_one_person_or_of_one_pattern(many: Path, made: list[Made], tmp_path: Path) -> None:
    assert everything(many, tmp_path / "a", "--person", "Ilse", "--format", "csv") == 0
    assert everything(many, tmp_path / "b", "--pattern", "Coat") == 0
    assert everything(many, tmp_path / "c", "--view", "A", "--person", "Ilse", "--private") == 0
    assert [len(list((tmp_path / name).iterdir())) for name in "abc"] == [4, 2, 3]
    assert {m.form for m in made[:4]} == {"csv"}
    assert (tmp_path / "c" / "Ilse - Viewed - View A - private.pdf").exists()


def test_two_people_of_one_name_get_a_file_each(tmp_path: Path, made: list[Made]) -> None:
    twin = dataclasses.replace(ILSE, id="twin", name="ilse")
    library = store(tmp_path, ILSE, twin, *own(DRESS, BODY_CHART, FINISHED))
    assert everything(library, tmp_path / "out") == 0
    assert sorted(p.name for p in (tmp_path / "out").iterdir()) == [
        "Ilse - Wrap dress.pdf",
        "ilse - Wrap dress (2).pdf",
    ]


def test_nothing_is_written_while_one_of_the_files_is_there(
    many: Path, made: list[Made], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "out").mkdir()
    (tmp_path / "out" / "Marit Å - Coat.pdf").write_text("old")
    assert everything(many, tmp_path / "out") == 2
    assert "Marit Å - Coat.pdf” exists already, so nothing was written" in said(capsys)
    assert made == []
    assert everything(many, tmp_path / "out", "--replace") == 0
    assert len(made) == 8


def test_a_pair_that_cannot_be_compared_is_told_and_the_others_are_written(
    tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    library = store(tmp_path, ILSE, EMPTY, *own(DRESS, BODY_CHART, FINISHED))
    assert everything(library, tmp_path / "out") == 0
    told = capsys.readouterr()
    assert told.err.startswith("No sheet for Nobody, Wrap dress: ")
    assert told.out == f"1 sheet is in “{tmp_path / 'out'}”.\n"


def test_nothing_to_write_is_said(tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]) -> None:
    assert everything(store(tmp_path, ILSE), tmp_path / "out") == 2
    assert said(capsys).endswith("There is nothing to make a sheet of.\n")


def test_the_folder_must_be_one(
    many: Path, tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "file").write_text("")
    assert everything(many, tmp_path / "file") == 2
    assert "file” cannot be used as a folder for the sheets: it is a file." in said(capsys)
    assert everything(many, tmp_path / "no" / "where") == 2


def test_a_folder_that_is_called_like_a_file_is_asked_about(
    many: Path, tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    assert everything(many, tmp_path / "all.pdf") == 2
    assert "name a folder with --out" in said(capsys)
    (tmp_path / "all.pdf").mkdir()
    assert everything(many, tmp_path / "all.pdf") == 0


def test_a_name_that_is_too_long_is_told_in_a_sentence(
    library: Path, tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    assert one(library, "Ilse", "Wrap dress", tmp_path / f"{'n' * 300}.pdf") == 2
    assert said(capsys).endswith("cannot be written: its name is too long.\n")


def test_somebody_and_something_must_be_named(
    library: Path, tmp_path: Path, made: list[Made], capsys: pytest.CaptureFixture[str]
) -> None:
    assert sheet(library, "--person", "Ilse", "--out", str(tmp_path / "a.pdf")) == 2
    assert "--pattern" in said(capsys)


class _Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_terminal_sees_how_far_it_is_and_a_file_does_not(
    many: Path, tmp_path: Path, made: list[Made], monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    everything(many, tmp_path / "a")
    assert capsys.readouterr().err == ""
    terminal = _Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    everything(many, tmp_path / "b")
    assert "Sheet 3 of 8: Ilse, Viewed, View B" in terminal.getvalue()
    assert terminal.getvalue().endswith("\r\x1b[K")  # nothing of it is left


def test_stopping_at_the_keyboard_keeps_what_is_written(
    many: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    answers: Iterator[object] = iter([b"1", b"2", KeyboardInterrupt()])

    def stopped(*_: object, **__: object) -> bytes:
        answer = next(answers)
        if isinstance(answer, KeyboardInterrupt):
            raise answer
        assert isinstance(answer, bytes)
        return answer

    monkeypatch.setattr(sheet_command, "export", stopped)
    assert everything(many, tmp_path / "out") == 130
    assert capsys.readouterr().err == f"Stopped: 2 of 8 sheets are in “{tmp_path / 'out'}”.\n"
    assert len(list((tmp_path / "out").iterdir())) == 2


def test_help_shows_how(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["sheet", "--help"])
    assert stopped.value.code == 0
    told = capsys.readouterr().out
    assert all(word in told for word in ("--person", "--all", "--private", "letter", "examples:", "--replace"))
