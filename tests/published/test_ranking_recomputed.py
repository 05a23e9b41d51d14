"""The ranking against a plain-Python re-computation that shares no code with it (tests/plain.py).

Source of the rules: the ranking's written contract. The cases are invented (tests/drawn.py). The continuous optimum is
checked with scipy.optimize, the blend by trying every path, the safe margins by stepping and halving.
"""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

import numpy as np
import pytest
from scipy.optimize import minimize_scalar

from tests.drawn import compared, draw, program

if TYPE_CHECKING:
    from collections.abc import Mapping

    from tests.plain import Plain

SEEDS = range(150)


def test_every_candidate_has_the_misfit_and_place_that_plain_arithmetic_gives() -> None:
    for seed in SEEDS:
        plain = draw(seed, holes=seed % 3 == 0)
        found = program(plain)
        assert [c.position for c in found.candidates] == plain.ranked(), seed
        for c in found.candidates:
            misfit = plain.misfit(c.position)
            assert (c.misfit_cm is None) == (misfit is None), seed
            assert misfit is None or c.misfit_cm == pytest.approx(misfit, abs=1e-9), seed
            assert c.wearable == plain.wearable(c.position), seed
            assert (not c.missing) == plain.complete(c.position), seed


def test_every_region_has_the_figures_that_plain_arithmetic_gives() -> None:
    for seed in SEEDS:
        plain = draw(seed, holes=seed % 3 == 0)
        found = program(plain)
        assert [r.measure for r in found.regions] == plain.regions(), seed
        for region in found.regions:
            m = region.measure
            assert region.weight == plain.weight(m), seed
            assert region.role == plain.role(m), seed
            assert region.edges == pytest.approx(plain.edges(m)), seed
            assert region.asked_cm == (pytest.approx(plain.asked(m)) if plain.mode == "my" else None), seed
            for c in found.candidates:
                diff = plain.diff(m, c.position)
                assert c.regions[m].diff_cm == (None if diff is None else pytest.approx(diff, abs=1e-9)), seed
                girth = plain.f(m, c.position) if plain.mode != "body" else None
                assert c.regions[m].finished_cm == (None if girth is None else pytest.approx(girth, abs=1e-9)), seed
                ease = None if girth is None else pytest.approx(girth - plain.body[m], abs=1e-9)
                assert c.regions[m].ease_cm == ease, seed


def _first_at(plain: Plain, measure: str, shift: float) -> float:
    return plain.shifted(measure, shift).best_listed()


def _stepped_margin(plain: Plain, measure: str, sign: int, step: float) -> float | None:
    """The first shift on a fine grid at which another listed size is first, brought down by halving."""
    best, last = plain.best_listed(), 0.0
    farthest = min(15.0, plain.body[measure]) if sign < 0 else 15.0
    for k in range(1, math.floor(farthest / step) + 1):
        if _first_at(plain, measure, sign * k * step) != best:
            low, high = last, k * step
            for _ in range(40):
                middle = (low + high) / 2
                low, high = (low, middle) if _first_at(plain, measure, sign * middle) != best else (middle, high)
            return high
        last = k * step
    return None


def test_a_safe_margin_is_the_first_shift_at_which_another_listed_size_wins() -> None:
    looked_at = 0
    for seed in range(40):
        plain = draw(seed, sizes=4)
        for region in program(plain).regions:
            for sign, margin in ((-1, region.safe_down_cm), (1, region.safe_up_cm)):
                expected = _stepped_margin(plain, region.measure, sign, 0.1)
                if expected is None:
                    assert margin is None or margin > 14.9, (seed, region.measure, sign)
                    continue
                assert margin is not None, (seed, region.measure, sign)
                assert margin == pytest.approx(expected, abs=1e-4), (seed, region.measure, sign)
                looked_at += 1
    assert looked_at > 50


def test_tied_sizes_are_those_that_become_first_within_the_tolerance_of_one_region() -> None:
    several = 0
    for seed in range(120):
        plain, tolerance = draw(seed, sizes=4), 2.0
        best = plain.best_listed()
        shifts = np.linspace(-tolerance, tolerance, 81)
        counted = [m for m in plain.regions() if plain.weight(m) or m in plain.gated()]
        expected = {_first_at(plain, m, float(s)) for m in counted for s in shifts} | {best}
        found = {c.position for c in program(plain, tolerance).candidates if c.tied}
        assert found == (expected if len(expected) > 1 else set()), seed
        several += len(expected) > 1
    assert several > 20


def test_the_best_position_of_all_is_the_one_scipy_finds() -> None:
    for seed in SEEDS:
        plain = draw(seed)
        found = program(plain).best_position
        assert found is not None

        def misfit(t: float, plain: Plain = plain) -> float:
            value = plain.misfit(float(t))
            assert value is not None
            return value

        least = math.inf
        for low in np.arange(-1.0, len(plain.labels), 0.25):
            result = minimize_scalar(misfit, bounds=(low, low + 0.25), method="bounded", options={"xatol": 1e-9})
            least = min(least, float(result.fun), misfit(float(low)), misfit(float(low) + 0.25))
        assert -1 <= found <= len(plain.labels), seed
        assert misfit(found) == pytest.approx(least, abs=1e-5), seed
        assert misfit(found) <= least + 1e-9, seed


def test_a_blend_is_the_best_of_all_paths_over_the_levels() -> None:
    looked_at = 0
    for seed in range(160):
        plain = draw(seed, sizes=4)
        expected, found = plain.blend(), program(plain).blend
        assert (expected is None) == (found is None), seed
        if expected is None or found is None:
            continue
        looked_at += 1
        cost, own = (_path_cost(plain, positions) for positions in (expected[0], found.positions))
        assert own == pytest.approx(cost, abs=1e-9), seed
        assert found.single_misfit_cm == pytest.approx(expected[2], abs=1e-9), seed
        assert found.offered == (found.misfit_cm <= found.single_misfit_cm - 1 + 1e-6), seed
    assert looked_at > 30


def _path_cost(plain: Plain, positions: Mapping[str, float]) -> float:
    places = list(positions.values())
    apart = sum((a - b) ** 2 for a, b in zip(places[1:], places, strict=False))
    return float(sum(plain.loss(m, t) for m, t in positions.items())) + 1.5 * apart


def test_the_verdict_follows_from_the_candidates_and_the_blend() -> None:
    kinds = set()
    for seed in SEEDS:
        plain = draw(seed)
        found = program(plain)
        best = plain.best_listed()
        drawn = [t for t in plain.ranked() if not t.is_integer()]
        kind, position = "straight", best
        if drawn and plain.before(drawn[0], best):
            own, other = plain.misfit(best), plain.misfit(drawn[0])
            assert own is not None
            assert other is not None
            if other <= own - 1 + 1e-6:
                kind, position = "between", drawn[0]
        if found.blend is not None and found.blend.offered:
            kind = "blend"
        kinds.add(kind)
        assert found.verdict.kind == kind, seed
        assert kind == "blend" or found.verdict.position == position, seed
    assert kinds == {"straight", "between", "blend"}


def test_the_ruler_shows_the_same_as_plain_arithmetic_at_any_position() -> None:
    for seed in range(40):
        plain = draw(seed)
        comparison = compared(plain)
        for t in (-1.0, -0.4, 0.3, 0.99, len(plain.labels) - 0.5, float(len(plain.labels))):
            for measure, at in comparison.at(t).items():
                diff = plain.diff(measure, t)
                assert diff is not None
                assert at.diff_cm == pytest.approx(diff, abs=1e-9), (seed, t)
