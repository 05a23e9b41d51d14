"""The table of measures says what the plan of the program says, once and without contradiction."""

from __future__ import annotations

import itertools
import re
from collections import Counter, defaultdict

import pytest

from sizekeeper import assets
from sizekeeper.core.measure import REGION_ORDER

BODY = [
    "high_bust",
    "bust",
    "underbust",
    "waist",
    "high_hip",
    "hip",
    "thigh",
    "knee",
    "calf",
    "ankle",
    "upper_arm",
    "elbow",
    "wrist",
    "neck",
    "across_back",
    "across_front",
    "shoulder",
    "head",
    "hand",
    "heel",
    "bust_point_width",
    "height",
    "back_waist_length",
    "front_waist_length",
    "bust_point_depth",
    "sleeve_length",
    "inseam",
    "outseam",
    "crotch_depth",
    "crotch_length",
    "front_rise",
    "back_rise",
    "waist_to_hip",
]
FINISHED_ONLY = ["hem", "garment_length", "garment_back_length", "skirt_length", "trouser_hem"]
WIDTHS = {"across_back", "across_front", "bust_point_width"}
LENGTHS = {
    "height",
    "shoulder",
    "bust_point_depth",
    "sleeve_length",
    "back_waist_length",
    "front_waist_length",
    "waist_to_hip",
    "crotch_depth",
    "crotch_length",
    "front_rise",
    "back_rise",
    "inseam",
    "outseam",
    "garment_length",
    "garment_back_length",
    "skirt_length",
}
LARGE_GIRTHS = {"high_bust", "bust", "underbust", "waist", "high_hip", "hip", "thigh", "hem"}

ISO_8559_1 = {
    "inseam": ("inside leg height", "5.1.15"),
    "bust_point_width": ("bust point width", "5.2.3"),
    "bust": ("bust girth", "5.3.4"),
    "high_bust": ("upper chest girth", "5.3.7"),
    "underbust": ("under-bust girth", "5.3.8"),
    "hip": ("hip girth", "5.3.13"),
    "upper_arm": ("upper arm girth", "5.3.16"),
    "back_waist_length": ("back neck point to waist", "5.4.5"),
    "front_waist_length": ("front neck point to waist", "5.4.8"),
    "bust_point_depth": ("side neck point to bust point", "5.4.10"),
    "crotch_length": ("crotch lengths", "5.4.18-20"),
}
"""The names and clauses of ISO 8559-1:2017 that we have seen (second-hand); no other may stand in the table."""

BACK = {"back_waist_length", "garment_back_length"}
EDGE = {"hem", "trouser_hem"}
TWO_MEANINGS = {
    **{("en", word): BACK for word in ("back length", "cb length")},
    **{("fr", word): BACK for word in ("longueur dos", "longueur du dos")},
    ("de", "rückenlänge"): BACK,
    ("nl", "ruglengte"): BACK,
    **{("es", word): BACK for word in ("largo de espalda", "largo espalda")},
    **{("it", word): BACK for word in ("lunghezza schiena", "lunghezza dorso")},
    ("en", "hem width"): EDGE,
    ("de", "saumweite"): EDGE,
    ("nl", "zoomwijdte"): EDGE,
    ("nl", "lengte"): {"height", "garment_length"},
}
"""Words that mean one thing on a body and another on a garment, or on a skirt and on trousers."""


def test_every_measure_of_the_plan_is_in_the_table_exactly_once() -> None:
    headers = re.findall(r"^\[(\w+)\]$", assets.resource("measures.toml").read_text(encoding="utf-8"), re.MULTILINE)

    assert Counter(headers) == Counter([*BODY, *FINISHED_ONLY])


def test_only_a_garments_own_measures_are_kept_from_the_body() -> None:
    assert {m.id for m in assets.measures() if m.use == "finished"} == set(FINISHED_ONLY)


def test_widths_and_lengths_are_never_girths() -> None:
    dimensions = {m.id: m.dimension for m in assets.measures()}

    assert {m for m, d in dimensions.items() if d == "width"} == WIDTHS
    assert {m for m, d in dimensions.items() if d == "length"} == LENGTHS


def test_measures_run_from_the_top_of_the_body_down_without_sharing_a_place() -> None:
    orders = [m.order for m in assets.measures()]

    assert all(a < b for a, b in itertools.pairwise(orders))


def test_regions_keep_their_order_in_the_table() -> None:
    assert [m.id for m in assets.measures() if m.id in REGION_ORDER] == list(REGION_ORDER)


def test_every_iso_name_and_clause_is_one_that_was_seen() -> None:
    named = {m.id: (m.iso_name, m.iso_clause) for m in assets.measures() if m.iso_name or m.iso_clause}

    assert named == ISO_8559_1


@pytest.mark.parametrize("measure", [*BODY, *FINISHED_ONLY])
def test_a_trained_hand_is_as_sure_as_the_standard_asks(measure: str) -> None:
    known = assets.measures()[measure]
    small = 0.4 if known.dimension == "girth" or measure == "height" else 0.5

    assert known.tolerance("trained") == (0.9 if measure in LARGE_GIRTHS else small)


@pytest.mark.parametrize("measure", [*BODY, *FINISHED_ONLY])
def test_other_hands_are_less_sure_and_the_waist_least(measure: str) -> None:
    known = assets.measures()[measure]

    assert known.tolerance("helped") == (1.5 if measure == "waist" else 1.0)
    assert known.tolerance("alone") == 2.0


def test_every_measure_is_explained_in_one_to_three_whole_sentences() -> None:
    for measure in assets.measures():
        assert 1 <= len(re.findall(r"[.](?:\s|$)", measure.how)) <= 3, measure.id
        assert measure.how[0].isupper(), measure.id
        assert measure.how.endswith("."), measure.id


def test_every_measure_has_names_in_six_languages() -> None:
    for measure in assets.measures():
        assert set(measure.synonyms) == {"en", "fr", "de", "nl", "es", "it"}, measure.id
        assert all(measure.synonyms.values()), measure.id


def test_the_trade_name_of_a_measure_is_among_its_english_names() -> None:
    for measure in assets.measures():
        assert measure.name.casefold() in [name.casefold() for name in measure.synonyms["en"]], measure.id


def test_no_name_is_given_twice_to_one_measure() -> None:
    for measure in assets.measures():
        for language, names in measure.synonyms.items():
            twice = [name for name, count in Counter(n.casefold() for n in names).items() if count > 1]
            assert not twice, (measure.id, language)


def test_a_word_of_one_language_means_one_measure_unless_it_is_known_to_mean_two() -> None:
    meanings: dict[tuple[str, str], set[str]] = defaultdict(set)
    for measure in assets.measures():
        for language, names in measure.synonyms.items():
            for name in names:
                meanings[language, name.casefold()].add(measure.id)

    assert {word: ids for word, ids in meanings.items() if len(ids) > 1} == TWO_MEANINGS


@pytest.mark.parametrize(
    ("language", "printed", "measure"),
    [
        ("en", "To fit bust", "bust"), ("en", "Finished bust width", "bust"), ("en", "Chest", "bust"),
        ("en", "Seat", "hip"), ("en", "Nape to waist", "back_waist_length"), ("en", "Inside leg", "inseam"),
        ("en", "Bicep", "upper_arm"), ("en", "Leg opening", "trouser_hem"), ("en", "Body rise", "crotch_depth"),
        ("fr", "Tour de poitrine", "bust"), ("fr", "Taille", "waist"), ("fr", "Petites hanches", "high_hip"),
        ("de", "Oberweite", "bust"), ("de", "Körpergröße", "height"), ("de", "Gesäßumfang", "hip"),
        ("nl", "Heupwijdte", "hip"), ("nl", "Mouwlengte", "sleeve_length"), ("es", "Contorno de cintura", "waist"),
        ("es", "Largo de manga", "sleeve_length"), ("it", "Circonferenza seno", "bust"), ("it", "Giro vita", "waist"),
    ],
)  # fmt: skip
def test_what_charts_print_is_a_name_of_the_measure(language: str, printed: str, measure: str) -> None:
    assert printed.casefold() in [name.casefold() for name in assets.measures()[measure].synonyms[language]]


def test_every_body_measure_has_a_human_span_and_a_garments_own_has_none() -> None:
    spans = {m.id: m.human_cm for m in assets.measures()}

    assert all(spans[m] is None for m in FINISHED_ONLY)
    assert all(span is not None and 0 < span[0] < span[1] for m, span in spans.items() if m not in FINISHED_ONLY)


@pytest.mark.parametrize(
    "figures",
    [
        {"height": 75, "head": 45, "bust": 46, "waist": 45, "hip": 46, "inseam": 26},
        {"height": 188, "bust": 170, "waist": 165, "hip": 180, "thigh": 100, "upper_arm": 60, "neck": 52},
    ],
    ids=["a child of one year", "a very large adult"],
)
def test_people_of_every_size_are_inside_the_human_span(figures: dict[str, float]) -> None:
    for measure, cm in figures.items():
        span = assets.measures()[measure].human_cm
        assert span is not None
        assert span[0] <= cm <= span[1], measure


@pytest.mark.parametrize(("measure", "inches"), [("bust", 38), ("waist", 30), ("hip", 40), ("height", 64)])
def test_an_inch_figure_of_an_adult_is_no_human_figure_in_centimetres(measure: str, inches: float) -> None:
    span = assets.measures()[measure].human_cm

    assert span is not None
    assert inches < span[0]
