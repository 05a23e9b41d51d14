"""What labels, headings and size labels say."""

from __future__ import annotations

import pytest

from sizekeeper.importing.grid import GridCell, address, column_letters, place
from sizekeeper.importing.labels import label_of, resolved
from sizekeeper.importing.sizes import gaps, is_double, likeness, recovered_date
from sizekeeper.importing.units import stated_units, without_units

MEASURES = {
    "Bust": "bust", "Tour de poitrine / Bust / Oberweite": "bust", "½ chest": "bust", "Hips": "hip", "Hüfte": "hip",
    "Contorno de cadera": "hip", "Circonferenza fianchi": "hip", "Heupomtrek": "hip", "1. Bust": "bust",
    "A - Waist": "waist",
    "Hip 20 cm below waist": "hip", "BACK NECK TO WAIST": "back_waist_length", "Wiast": "waist",
    "Body rise": "crotch_depth",
    "Upper amr": "upper_arm", "Inseam (tall)": "inseam", "Bust (C cup)": "bust",
}  # fmt: skip


@pytest.mark.parametrize("text", MEASURES)
def test_a_label_names_its_measure(text: str) -> None:
    assert resolved(label_of(text).names, "body", finished_words=False) == MEASURES[text]


@pytest.mark.parametrize("text", ["Cuff depth", "Skirt fabric", "Collar stand", "Size", "Type", "Wrap-over"])
def test_a_label_that_only_holds_a_measures_word_names_none(text: str) -> None:
    assert label_of(text).names.ids == ()


def test_a_back_length_is_the_bodys_or_the_garments_by_the_chart() -> None:
    names = label_of("Back length").names
    assert resolved(names, "body", finished_words=False) == "back_waist_length"
    assert resolved(names, "finished", finished_words=False) == "garment_back_length"


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("Body measurements (cm)", "body"), ("To fit bust", "body"), ("Körpermaße", "body"),
        ("Mesures du corps", "body"),
        ("Lichaamsmaten", "body"), ("Medidas del cuerpo", "body"), ("Misure del corpo", "body"),
        ("Garment", "finished"),
        ("Finished garment measurements", "finished"), ("Fertigmaße", "finished"),
        ("Mesures du vêtement fini", "finished"),
        ("Afgewerkte maten", "finished"), ("Medidas de la prenda", "finished"), ("Misure del capo finito", "finished"),
        ("Body and finished measurements", None), ("Size guide", None), ("Body length", None),
    ],
)  # fmt: skip
def test_words_in_six_languages_tell_body_from_finished(text: str, kind: str | None) -> None:
    assert label_of(text).kind == kind


@pytest.mark.parametrize(
    ("text", "written"),
    [
        ("½ chest", "half"), ("Bust (laid flat)", "half"), ("Chest across, x2", "half"), ("halbe Brustweite", "half"),
        ("1/2 tour de taille", "half"), ("¼ hem", "quarter"), ("Bust", "full"), ("Hip 3 1/2 in down", "full"),
    ],
)  # fmt: skip
def test_words_and_signs_of_halves_and_quarters_are_known(text: str, written: str) -> None:
    assert label_of(text).written_as == written


@pytest.mark.parametrize(
    ("text", "units"),
    [
        ("Bust (cm)", ("cm",)), ("Bust, in", ("in",)), ('Bust "', ("in",)), ("cm/in", ("cm", "in")),
        ("Maße in cm", ("cm",)),
        ("Hip 20 cm below waist", ()), ('Hip (8" below waist)', ()), ("Measurements in inches", ("in",)),
        ("Bust in", ("in",)),
    ],
)  # fmt: skip
def test_a_unit_is_stated_only_where_it_counts_the_figures(text: str, units: tuple[str, ...]) -> None:
    assert stated_units(text) == units


def test_a_label_is_left_when_its_unit_is_taken_away() -> None:
    assert [without_units(t) for t in ("Bust (cm)", "Bust [inches]", 'Hip (8" down) (in)')] == [
        "Bust",
        "Bust",
        'Hip (8" down)',
    ]


def test_views_variants_and_cups_are_told_apart() -> None:
    assert (label_of("Length, view B").view, label_of("Inseam (tall)").variant, label_of("Bust, C cup").cup) == (
        "B",
        "tall",
        "C cup",
    )


def test_labels_of_the_trade_look_more_like_sizes_than_names_do() -> None:
    assert min(map(likeness, ["8", "00", "XXL", "18M", "2Y", "1X", "34/36", "S (8-10)", "Size 10"])) > likeness("Value")


def test_figures_with_decimals_are_no_sizes() -> None:
    assert likeness("86.5") == 0


@pytest.mark.parametrize("text", ["S (8-10)", "M/L", "34/36", "XS - S"])
def test_labels_in_two_systems_are_noticed(text: str) -> None:
    assert is_double(text)


@pytest.mark.parametrize(
    ("cell", "label"),
    [
        (GridCell("B1", "2024-10-08", date=(2024, 10, 8)), "8-10"),
        (GridCell("B1", "2024-08-10", date=(2024, 8, 10)), "8-10"),
        (GridCell("B1", "08-Oct"), "8-10"), (GridCell("B1", "12. Dez"), "12-12"), (GridCell("B1", "Apr-06"), "4-6"),
        (GridCell("B1", "2024-12-10 00:00:00"), "10-12"), (GridCell("B1", "1932-10-01", date=(1932, 10, 1)), "10-32"),
        (GridCell("B1", "8-10"), None), (GridCell("B1", "Bust"), None),
    ],
)  # fmt: skip
def test_a_date_gives_back_the_label_it_was(cell: GridCell, label: str | None) -> None:
    assert recovered_date(cell) == label


def test_a_size_left_out_of_an_even_run_is_found() -> None:
    assert (gaps(["8", "10", "12", "16", "18"]), gaps(["8", "10", "12", "14"]), gaps(["S", "M", "L", "XL"])) == (
        [3],
        [],
        [],
    )


def test_addresses_go_past_the_letter_z() -> None:
    assert (address(5, 1), column_letters(26), column_letters(701), place("AB12")) == ("B6", "AA", "ZZ", (11, 27))
