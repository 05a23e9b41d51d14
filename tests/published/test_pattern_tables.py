"""Printed tables of the pattern trade: ease worked out from them, and sizes picked in them. Inches.

Sources, named at each check, as kept in the project's reference notes: [P] read in the publisher's page, [S]
second-hand, [C] computed from the figures given. The figures are facts for tests; none is product data.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest

from sizekeeper import assets
from sizekeeper.core.fit import fit
from sizekeeper.core.question import Question
from tests.build import body, chart

if TYPE_CHECKING:
    from sizekeeper.core.chart import Chart
    from sizekeeper.core.preference import Garment
    from sizekeeper.core.result import Fit, RegionAt

IN = 2.54


def row(*inches: float) -> str:
    return ",".join(str(x) for x in inches)


def found(her: dict[str, float], body_chart: Chart | None, finished: Chart | None, **question: object) -> Fit:
    figures = dict(body("in", **her).items())
    return fit(figures, body_chart, finished, Question(**question), assets.ease_defaults())  # type: ignore[arg-type]


def at(result: Fit, label: str, measure: str) -> RegionAt:
    candidate = result.candidate(label)
    assert candidate is not None
    return candidate.regions[measure]


JACKET_SIZES = "8 10 12 14 16"
JACKET_BODY = {"bust": (31.5, 32.5, 34, 36, 38), "hip": (33.5, 34.5, 36, 38, 40)}
JACKET_FINISHED = {"bust": (37.75, 38.75, 40.25, 42.25, 44.25), "hip": (41, 42, 43.5, 45.5, 47.5)}


@pytest.mark.parametrize("size", range(5))
def test_the_loose_jacket_has_the_same_ease_in_every_size(size: int) -> None:
    # Source: printed sheet of a loose jacket pattern, 8-16 [P]; ease 6.25 at the bust and 7.5 at the hip [C].
    finished = chart("finished", JACKET_SIZES, "in", **{m: row(*x) for m, x in JACKET_FINISHED.items()})
    her = {m: float(x[size]) for m, x in JACKET_BODY.items()}
    result = found(her, None, finished, garment="jacket")
    label = JACKET_SIZES.split()[size]
    assert at(result, label, "bust").ease_cm == pytest.approx(6.25 * IN)
    assert at(result, label, "hip").ease_cm == pytest.approx(7.5 * IN)


@pytest.mark.parametrize("size", range(5))
def test_the_loose_jacket_in_designers_ease_is_the_size_the_sheet_says(size: int) -> None:
    # Source: the same printed sheet [P]: a body that is the chart's own is asked its own size.
    finished = chart("finished", JACKET_SIZES, "in", **{m: row(*x) for m, x in JACKET_FINISHED.items()})
    sizes = chart("body", JACKET_SIZES, "in", **{m: row(*x) for m, x in JACKET_BODY.items()})
    her = {m: float(x[size]) for m, x in JACKET_BODY.items()}
    result = found(her, sizes, finished, garment="jacket", mode="designer")
    assert (result.verdict.kind, result.verdict.label) == ("straight", JACKET_SIZES.split()[size])
    assert result.candidates[0].misfit_cm == pytest.approx(0.0, abs=1e-9)


SHIRT_SIZES = "0 2 4 6 8 10 12 14 16 18"
SHIRT_HIGH = (29, 30, 31, 32, 33, 34.5, 36, 38, 40, 42)
SHIRT_FULL = (31, 32, 33, 34, 35, 36.5, 38, 40, 42, 44)
SHIRT_FINISHED = (37, 38, 39, 40, 41, 42.5, 44, 46, 48, 50)


@pytest.mark.parametrize("size", range(10))
def test_the_pyjama_shirt_has_six_inches_of_ease_in_every_size(size: int) -> None:
    # Source: publisher's finished-measurements sheet of a pyjama shirt [P]; ease 6.0, high bust 2 less [C].
    finished = chart("finished", SHIRT_SIZES, "in", bust=row(*SHIRT_FINISHED))
    result = found({"bust": SHIRT_FULL[size], "high_bust": SHIRT_HIGH[size]}, None, finished, garment="top")
    assert at(result, SHIRT_SIZES.split()[size], "bust").ease_cm == pytest.approx(6.0 * IN)
    assert [region.measure for region in result.regions] == ["bust"]


SKIRT_SIZES = "34 36 38 40 42"
SKIRT_WAIST, SKIRT_WAIST_FINISHED = (23.5, 25.25, 26.75, 28.5, 30), (19, 20.25, 21.5, 22.75, 24)
SKIRT_HIP, SKIRT_HIP_FINISHED = (33.75, 35.5, 37, 38.5, 40.25), (33, 34.5, 36, 37.5, 39.25)


@pytest.mark.parametrize(
    ("size", "waist", "hip"), [(0, -4.5, -0.75), (1, -5, -1), (2, -5.25, -1), (3, -5.75, -1), (4, -6, -1)]
)
def test_the_knit_skirt_has_negative_ease_and_still_goes_on_at_forty_per_cent(
    size: int, waist: float, hip: float
) -> None:
    # Source: elastic-waist knit skirt, sizes 34-42, needs 40 % stretch (schoolofsewing, broomstick skirt) [P].
    finished = chart("finished", SKIRT_SIZES, "in", waist=row(*SKIRT_WAIST_FINISHED), hip=row(*SKIRT_HIP_FINISHED))
    her = {"waist": SKIRT_WAIST[size], "hip": SKIRT_HIP[size]}
    label = SKIRT_SIZES.split()[size]
    at_forty = found(her, None, finished, garment="skirt", stretch=0.4, lead="waist")
    assert at(at_forty, label, "waist").ease_cm == pytest.approx(waist * IN)
    assert at(at_forty, label, "hip").ease_cm == pytest.approx(hip * IN)
    candidate = at_forty.candidate(label)
    assert candidate is not None
    assert candidate.wearable


def test_the_knit_skirt_does_not_go_on_in_a_fabric_that_stretches_half_as_much() -> None:
    # Source: the same [P]; 19 in x 1.2 = 22.8 in does not go round 23.5 in [C].
    finished = chart("finished", SKIRT_SIZES, "in", waist=row(*SKIRT_WAIST_FINISHED), hip=row(*SKIRT_HIP_FINISHED))
    result = found({"waist": 23.5, "hip": 33.75}, None, finished, garment="skirt", stretch=0.2, lead="waist")
    smallest = result.candidate("34")
    assert smallest is not None
    assert not smallest.wearable
    assert smallest.regions["waist"].short_cm == pytest.approx(0.7 * IN)


MISSES = {
    "8": (31.5, 24, 33.5), "10": (32.5, 25, 34.5), "12": (34, 26.5, 36), "14": (36, 28, 38), "16": (38, 30, 40),
}  # fmt: skip
WOMENS = {"38": (42, 35, 44), "40": (44, 37, 46), "42": (46, 39, 48), "44": (48, 41.5, 50), "46": (50, 44, 52)}
PETITES = {"8mp": (31.5, 24.5, 33.5), "10mp": (32.5, 25.5, 34.5), "12mp": (34, 27, 36), "14mp": (36, 28.5, 38)}


@pytest.mark.parametrize("table", [MISSES, WOMENS, PETITES], ids=["misses", "womens", "miss petite"])
def test_a_body_of_the_trade_chart_is_told_its_own_size(table: dict[str, tuple[float, float, float]]) -> None:
    # Source: the US pattern trade's body charts since 1967/68 [S], sewingscholar.blogspot.com 2011/02; misses 8-16
    # confirmed by a printed pattern sheet.
    columns = {m: row(*(figures[k] for figures in table.values())) for k, m in enumerate(("bust", "waist", "hip"))}
    sizes = chart("body", " ".join(table), "in", **columns)
    for label, (bust, waist, hip) in table.items():
        result = found({"bust": bust, "waist": waist, "hip": hip}, sizes, None)
        assert result.chart_says == {"bust": label, "waist": label, "hip": label}
        assert (result.mode, result.verdict.label) == ("body", label)


def test_waist_34_and_hip_44_are_two_sizes_of_the_trade_chart() -> None:
    # Source: a pattern company's handbook, 1927 [S]: waist 34, hip 44; the pattern for hip 44 has waist 30, so 4 in are
    # to be added. By a skirt's hip the size is that of hip 44, and the waist stays 4 in short.
    sizes = chart("body", "26 28 30 32", "in", waist="26,28,30,32", hip="40,42,44,46")
    result = found({"waist": 34, "hip": 44}, sizes, None, garment="skirt", mode="body")
    thirty = result.candidate("30")
    assert thirty is not None
    assert thirty.regions["waist"].diff_cm == pytest.approx(-4 * IN)
    assert thirty.regions["hip"].diff_cm == pytest.approx(0.0)
    assert result.chart_says["hip"] == "30"


LETTERS = "XXS XS S M L XL XXL 3XL"
LETTER_BUST = "66..74,74..82,82..90,90..98,98..107,107..119,119..131,131..143"


@pytest.mark.parametrize(
    ("bust", "letter"),
    [(70, "XXS"), (88, "S"), (90, "M"), (97.9, "M"), (100, "L"), (106.9, "L"), (125, "XXL"), (140, "3XL")],
)
def test_a_bust_is_told_its_letter_of_the_european_standard(bust: float, letter: str) -> None:
    # Source: EN 13402-3 letter codes, women's bust [S], Wikipedia, EN 13402. On a limit the larger code counts.
    her = body(bust=bust)
    result = fit(her, chart("body", LETTERS, bust=LETTER_BUST), None, Question(), assets.ease_defaults())
    assert result.chart_says == {"bust": letter}
    assert result.verdict.label == letter


def test_body_and_ease_make_the_pattern() -> None:
    # Source: New Mexico State University Extension C-228, footnote [P]: body 36 + ease 2.5 = pattern 38.5.
    result = found({"bust": 36}, None, chart("finished", "12 14", "in", bust="36.5,38.5"))
    assert at(result, "14", "bust").ease_cm == pytest.approx(2.5 * IN)


DRESS_BUST, DRESS_WAIST, DRESS_HIP = "38 1/2,40 1/8,41 3/4", "28 3/8,29 7/8,31 3/8", "68,69 5/8,71 1/4"


def test_ease_is_read_off_in_fractions_of_an_inch() -> None:
    # Common practice, no source: body 38, finished 40 1/8: ease 2 1/8; body 28, finished 29 7/8: 1 7/8; the size below
    # has finished 28 3/8 and leaves 3/8, tight.
    finished = chart("finished", "38 40 42", "in", bust=DRESS_BUST, waist=DRESS_WAIST)
    result = found({"bust": 38, "waist": 28}, None, finished)
    assert at(result, "40", "bust").ease_cm == pytest.approx(2.125 * IN)
    assert at(result, "40", "waist").ease_cm == pytest.approx(1.875 * IN)
    assert at(result, "38", "waist").ease_cm == pytest.approx(0.375 * IN)
    assert at(result, "38", "waist").band == "tight"


def test_the_straight_size_is_the_one_with_the_ease_she_likes_not_the_charts() -> None:
    # Common practice, no source: 38, 28, 43 against finished bust and waist of 38, 40 and 42: cut 40 straight.
    finished = chart("finished", "38 40 42", "in", bust=DRESS_BUST, waist=DRESS_WAIST, hip=DRESS_HIP)
    result = found({"bust": 38, "waist": 28, "hip": 43}, None, finished)
    assert (result.verdict.kind, result.verdict.label) == ("straight", "40")


@pytest.mark.parametrize("mode", ["my", "designer", "body"])
@pytest.mark.parametrize("garment", ["dress", "top", "jacket", "coat"])
def test_a_gathered_skirt_pushes_the_size_neither_up_nor_down_in_any_mode(mode: str, garment: Garment) -> None:
    # Common practice, no source: hip 43 in a gathered skirt of 69 5/8 does not count, without a setting touched.
    sizes = chart("body", "38 40 42", "in", bust="36,38,40", waist="28,30,32", hip="38,40,42")
    finished = chart("finished", "38 40 42", "in", bust=DRESS_BUST, waist=DRESS_WAIST, hip=DRESS_HIP)
    with_hip = found({"bust": 38, "waist": 28, "hip": 43}, sizes, finished, mode=mode, garment=garment)
    without = found({"bust": 38, "waist": 28}, sizes, finished, mode=mode, garment=garment)
    assert next(r.role for r in with_hip.regions if r.measure == "hip") == "free"
    assert with_hip.verdict == without.verdict
    assert [(c.label, c.misfit_cm) for c in with_hip.candidates] == [(c.label, c.misfit_cm) for c in without.candidates]
