"""How the benchmarks take the time of something."""

from __future__ import annotations

import statistics
import time
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable

ROUNDS = 9


def median_ms(run: Callable[[], object]) -> float:
    """The median time of several runs in milliseconds, after one to warm up."""
    run()
    times = []
    for _ in range(ROUNDS):
        start = time.perf_counter()
        run()
        times.append(time.perf_counter() - start)
    return statistics.median(times) * 1000
