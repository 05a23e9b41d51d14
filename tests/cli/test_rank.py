"""`sizekeeper rank` on small files, worked by hand."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

import openpyxl
import pytest

from sizekeeper.cli.main import main

if TYPE_CHECKING:
    from pathlib import Path

PERSON = """
name = "Marit"
unit = "cm"
[measurements]
bust = "92"
waist = "29 1/8 in"
thigh = 58
"""

CHART = """Body measurements (cm),38,40,42
Bust,88,92,96
Waist,70,74,78

Finished garment measurements (cm),38,40,42
Bust,94.4,98.8,103.2
Waist,72,76.4,80.8
"""

VIEWS = """Finished garment measurements (cm),View,38,40,42
Bust,A,94.4,98.8,103.2
Bust,B,104.4,108.8,113.2
"""


@pytest.fixture
def files(tmp_path: Path) -> dict[str, str]:
    paths = {}
    for name, text in {"me.toml": PERSON, "dress.csv": CHART, "views.csv": VIEWS}.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
        paths[name] = str(tmp_path / name)
    return paths


def rank(files: dict[str, str], *options: str, chart: str = "dress.csv", person: str = "me.toml") -> list[str]:
    return ["rank", "--person", files[person], "--chart", files[chart], *options]


def found(files: dict[str, str], capsys: pytest.CaptureFixture[str], *options: str) -> dict[str, Any]:
    assert main(rank(files, *options, "--json")) == 0
    answer: dict[str, Any] = json.loads(capsys.readouterr().out)
    return answer


def test_the_json_has_every_key_of_the_contract(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    answer = found(files, capsys)
    assert set(answer) == {
        "mode", "verdict", "chart_says", "regions", "candidates", "best_position", "blend", "left_out", "flags",
    }  # fmt: skip
    assert set(answer["verdict"]) == {"kind", "label", "position"}
    assert set(answer["regions"][0]) == {
        "measure", "body_cm", "asked_cm", "weight", "role", "bands_cm", "tolerance_cm", "safe_down_cm", "safe_up_cm",
    }  # fmt: skip
    assert set(answer["candidates"][0]) == {
        "rank", "label", "position", "between", "misfit_cm", "wearable", "tied", "missing", "flags", "regions",
    }  # fmt: skip
    assert set(answer["candidates"][0]["regions"]["bust"]) == {
        "finished_cm", "chart_cm", "ease_cm", "asked_cm", "diff_cm", "loss", "band", "short_cm",
    }  # fmt: skip


def test_the_figures_are_the_ones_worked_by_hand(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    # Size 40 at the bust: 98.8 - 92 = 6.8, asked 5.1, so 1.7 over; at the waist 76.4 - 73.9775 = 2.4225, asked 2.6, so
    # 0.1775 short: sqrt((2 x 1.7^2 + (2 x 0.1775)^2) / 3). The lines lie (4.4 / 4) = 1.1 cm apart: quarters.
    answer = found(files, capsys)
    best = {c["label"]: c for c in answer["candidates"]}["40"]
    assert best["misfit_cm"] == pytest.approx(((2 * 1.7**2 + (2 * 0.1775) ** 2) / 3) ** 0.5)
    assert best["regions"]["bust"]["loss"] == pytest.approx(2 * 1.7**2)
    assert best["regions"]["waist"]["diff_cm"] == pytest.approx(-0.1775)
    quarter = {c["label"]: c for c in answer["candidates"]}["38 + 3/4"]
    assert quarter["between"] == {"lower": "38", "upper": "40", "fraction": 0.75, "mm_from_lower": pytest.approx(8.25)}
    assert quarter["position"] == 0.75
    assert answer["verdict"] == {"kind": "straight", "label": "40", "position": 1.0}
    assert answer["chart_says"] == {"bust": "40", "waist": "40"}
    assert answer["left_out"] == [{"measure": "thigh", "reason": "no_finished"}]


def test_body_mode_knows_no_ease(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    answer = found(files, capsys, "--mode", "body")
    at = answer["candidates"][0]["regions"]["bust"]
    assert (at["finished_cm"], at["ease_cm"], at["band"], at["short_cm"]) == (None, None, None, None)
    assert (at["chart_cm"], at["diff_cm"]) == (92.0, 0.0)
    assert answer["regions"][0]["asked_cm"] is None


def test_designers_ease_asks_per_size(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    answer = found(files, capsys, "--mode", "designer")
    assert answer["regions"][0]["asked_cm"] is None
    at = {c["label"]: c for c in answer["candidates"]}["42"]["regions"]["bust"]
    assert (at["asked_cm"], at["diff_cm"]) == (pytest.approx(7.2), pytest.approx(4.0))


def test_roles_repeat_and_decide(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    answer = found(files, capsys, "--lead", "waist", "--adjustable", "bust")
    assert [(r["measure"], r["role"], r["weight"]) for r in answer["regions"]] == [
        ("bust", "adjustable", 1),
        ("waist", "lead", 2),
    ]


def test_own_ease_of_the_person_file_counts(
    files: dict[str, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "me.toml").write_text(PERSON + '[ease]\nbust = "-1 1/2 in"\n', encoding="utf-8")
    answer = found(files, capsys, "--stretch", "0.3", "--garment", "top")
    assert answer["regions"][0]["asked_cm"] == pytest.approx(-3.81)


def test_the_text_names_the_size_and_the_ease(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(rank(files)) == 0
    out = capsys.readouterr().out
    assert out.startswith("Marit: Cut 40 straight")
    assert "6.8 close" in out
    assert "5.1" in out


@pytest.mark.parametrize(
    ("options", "says"),
    [
        (["--lead", "torso"], "--lead: “torso” is not a measure"),
        (["--free", "bust", "--count", "bust"], "bust cannot be both free and counted"),
        (["--free", "bust", "--free", "waist"], "nothing decides the size"),
        (["--lead", "bust", "--free", "bust"], "cannot also be free"),
    ],
)
def test_what_cannot_be_ranked_is_one_sentence_and_exit_2(
    files: dict[str, str], capsys: pytest.CaptureFixture[str], options: list[str], says: str
) -> None:
    assert main(rank(files, *options)) == 2
    streams = capsys.readouterr()
    assert streams.out == ""
    assert says in streams.err
    assert streams.err.count("\n") == 1


def test_views_with_figures_of_their_own_must_be_chosen_between(
    files: dict[str, str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(rank(files, chart="views.csv")) == 2
    assert "finished figures for 2 views (“A”, “B”); say which with --view" in capsys.readouterr().err
    assert main(rank(files, "--view", "b", "--json", chart="views.csv")) == 0
    best = json.loads(capsys.readouterr().out)["candidates"][0]
    assert best["regions"]["bust"]["finished_cm"] > 104
    assert main(rank(files, "--view", "C", chart="views.csv")) == 2
    assert "no view “C”" in capsys.readouterr().err


def test_two_possible_tables_must_be_chosen_between_by_title_or_sheet(
    files: dict[str, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = openpyxl.Workbook()
    misses, women = book.worksheets[0], book.create_sheet("Women")
    misses.title = "Misses"
    for sheet, start in ((misses, 84), (women, 104)):
        for row in (
            ["Body measurements (cm)", "1", "2"],
            ["Bust", start, start + 4],
            ["Waist", start - 20, start - 16],
        ):
            sheet.append(row)
    book.save(tmp_path / "dress.csv")
    assert main(rank(files)) == 2
    err = capsys.readouterr().err
    assert "several body tables" in err
    assert "on sheet “Women”); say which with --table." in err
    assert main(rank(files, "--table", "women", "--json")) == 0
    assert json.loads(capsys.readouterr().out)["candidates"][0]["regions"]["bust"]["chart_cm"] == 104.0
    assert main(rank(files, "--table", "men's")) == 2
    assert "has no table “men's”" in capsys.readouterr().err


def test_an_unknown_measure_in_the_person_file_is_named(
    files: dict[str, str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "me.toml").write_text('name = "M"\nunit = "cm"\n[measurements]\nbusst = 92\n', encoding="utf-8")
    assert main(rank(files)) == 2
    err = capsys.readouterr().err
    assert "busst" in err
    assert "me.toml" in err


def test_a_file_that_is_not_there_is_named(files: dict[str, str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*rank(files)[:-1], "nowhere.csv"]) == 2
    assert "nowhere.csv" in capsys.readouterr().err


@pytest.mark.parametrize("stretch", ["1.2", "-0.1", "much"])
def test_a_stretch_is_a_share_of_at_most_one(
    files: dict[str, str], capsys: pytest.CaptureFixture[str], stretch: str
) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(rank(files, "--stretch", stretch))
    assert stopped.value.code == 2
    assert "--stretch" in capsys.readouterr().err


def test_help_names_the_commands(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit) as stopped:
        main(["--help"])
    assert stopped.value.code == 0
    out = capsys.readouterr().out
    assert all(word in out for word in ("demo", "read", "rank", "--library"))
