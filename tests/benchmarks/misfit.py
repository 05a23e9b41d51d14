"""The misfit of 6,000 people over 20 sizes with quarter positions and 6 regions, against the bare numpy expression.

Run by hand: `.venv/bin/python -m tests.benchmarks.misfit`. Aim: at most 3 times the bare expression.
"""

from __future__ import annotations

import numpy as np

from sizekeeper.core.misfit import misfit
from tests.benchmarks.timing import median_ms

PEOPLE, SIZES, REGIONS = 6000, 20, 6


def main() -> None:
    """Print both times and their ratio."""
    random = np.random.default_rng(7)
    positions = np.arange(0, SIZES - 0.75, 0.25)
    offered = 90 + np.cumsum(random.uniform(2, 5, (REGIONS, len(positions))) / 4, axis=1)
    wanted = random.uniform(90, 150, (PEOPLE, REGIONS))
    weight = np.array([2.0, 1, 1, 1, 1, 1])
    adjustable = np.zeros(REGIONS, dtype=bool)

    def bare() -> np.ndarray:
        diff = offered[None] - wanted[:, :, None]
        loss = weight[:, None] * np.where(diff < 0, 4.0, 1.0) * diff**2
        return np.asarray(np.sqrt(loss.sum(axis=1) / weight.sum()))

    def ours() -> np.ndarray:
        return misfit(offered, offered, wanted, weight, adjustable)

    assert np.allclose(bare(), ours())
    plain, own = median_ms(bare), median_ms(ours)
    print(f"bare numpy {plain:.0f} ms, ours {own:.0f} ms, ratio {own / plain:.2f} (aim: at most 3)")
    gathered = np.arange(REGIONS) == 2
    own = median_ms(lambda: misfit(offered, offered, wanted, weight, gathered))
    print(f"with a gathered region {own:.0f} ms, ratio {own / plain:.2f}")


if __name__ == "__main__":
    main()
