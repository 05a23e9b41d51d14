"""The ranking re-computed in plain Python, one number at a time, from the written rules: what the tests compare with.

It shares no code with the program. Figures are cm; a missing figure is None. Positions count along the run.
"""

from __future__ import annotations

import itertools
import math
from dataclasses import dataclass, field
from functools import cached_property
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Mapping

ORDER = ["across_back", "bust", "upper_arm", "wrist", "waist", "high_hip", "hip", "thigh", "calf"]
TORSO = ["bust", "waist", "high_hip", "hip"]
LEVELS = ["bust", "waist", "high_hip", "hip", "thigh"]
WOVEN = {
    "bust": (2.5, 7.7, 13.0),
    "waist": (1.2, 4.0, 9.0),
    "high_hip": (1.5, 5.0, 10.0),
    "hip": (2.5, 6.5, 11.0),
    "thigh": (1.5, 4.0, 9.0),
    "upper_arm": (4.0, 7.0, 11.0),
    "across_back": (1.0, 2.5, 5.0),
    "calf": (1.5, 4.0, 8.0),
    "wrist": (1.5, 4.0, 8.0),
}
JACKET = {"bust": 5, "waist": 5, "high_hip": 5, "hip": 5, "upper_arm": 3, "across_back": 1.5, "wrist": 2, "calf": 2}


@dataclass
class Plain:
    """One comparison to re-compute. Nothing of it is changed once it is made, so what it is asked often is kept."""

    labels: list[str]
    body: dict[str, float]
    finished: dict[str, list[float | None]] = field(default_factory=dict)
    chart: dict[str, list[tuple[float, float] | None]] = field(default_factory=dict)
    mode: str = "my"
    garment: str = "dress"
    stretch: float = 0.0
    roles: dict[str, str] = field(default_factory=dict)

    def regions(self) -> list[str]:
        return self._regions

    @cached_property
    def _regions(self) -> list[str]:
        tables: dict[str, list[Mapping[str, object]]] = {
            "my": [self.finished],
            "designer": [self.finished, self.chart],
            "body": [self.chart],
        }
        return [m for m in ORDER if m in self.body and all(m in table for table in tables[self.mode])]

    def lead(self) -> str | None:
        lead = "hip" if self.garment in ("skirt", "trousers") else "bust"
        return lead if lead in self.regions() and self.roles.get(lead, "counted") == "counted" else None

    def role(self, m: str) -> str:
        return self._roles[m]

    @cached_property
    def _roles(self) -> dict[str, str]:
        return {m: self._role(m) for m in self.regions()}

    def _role(self, m: str) -> str:
        if m == self.lead():
            return "lead"
        if m in self.roles:
            return self.roles[m]
        if m != "across_back" and m in self.finished:
            over = []
            for i, f in enumerate(self.finished[m]):
                c = self.chart.get(m, [None] * len(self.labels))[i]
                if f is not None:
                    over.append(f > 1.25 * max(self.body[m], (c[0] + c[1]) / 2 if c else 0) + 1e-6)
            if over and all(over):
                return "free"
        return "counted"

    def weight(self, m: str) -> int:
        return {"lead": 2, "counted": 1, "adjustable": 1, "free": 0}[self.role(m)]

    def edges(self, m: str) -> tuple[float, float, float]:
        if self.stretch >= 0.15:
            n = min(1 - 1 / (1 + self.stretch / 2), 0.10)
            return (-n * self.body[m], 0.0, 0.08 * self.body[m])
        e = WOVEN[m]
        if m == "waist" and self.garment in ("skirt", "trousers"):
            e = (0.6, 2.5, 5.0)
        add = {"jacket": 1, "coat": 2}.get(self.garment, 0) * JACKET.get(m, 0)
        return (e[0] + add, e[1] + add, e[2] + add)

    def asked(self, m: str) -> float:
        a, b, _ = self.edges(m)
        return a / 3 if self.stretch >= 0.15 else (a + b) / 2

    def f(self, m: str, t: float) -> float | None:
        return at(self.finished[m], t)

    def diff(self, m: str, t: float) -> float | None:
        if self.mode == "my":
            f = self.f(m, t)
            return None if f is None else f - self.body[m] - self.asked(m)
        low = at([c and c[0] for c in self.chart[m]], t)
        high = at([c and c[1] for c in self.chart[m]], t)
        if low is None or high is None:
            return None
        if self.body[m] < low:
            return low - self.body[m]
        return high - self.body[m] if self.body[m] > high else 0.0

    def loss(self, m: str, t: float) -> float:
        d = self.diff(m, t)
        assert d is not None
        if self.role(m) == "adjustable" and d > 0:
            return 0.0
        return self.weight(m) * (4 if d < 0 else 1) * d * d

    def misfit(self, t: float) -> float | None:
        known = [m for m in self.regions() if self.weight(m) and self.diff(m, t) is not None]
        if not known:
            return None
        return math.sqrt(sum(self.loss(m, t) for m in known) / sum(self.weight(m) for m in known))

    def complete(self, t: float) -> bool:
        return all(self.diff(m, t) is not None for m in self.regions() if self.weight(m))

    def closes(self, m: str, t: float) -> bool:
        f = self.f(m, t)
        return f is not None and f * (1 + self.stretch) >= self.body[m] - 1e-6

    def gated(self) -> list[str]:
        if self.mode == "body":
            return []
        lead = self.lead()
        return [lead] if lead else [m for m in self.regions() if self.role(m) == "counted"]

    def wearable(self, t: float) -> bool:
        return all(self.closes(m, t) for m in self.gated())

    def gap(self, i: int) -> float | None:
        steps = []
        for m in TORSO:
            if m in self.regions() and self.role(m) in ("lead", "counted"):
                row = [c and (c[0] + c[1]) / 2 for c in self.chart[m]] if self.mode == "body" else self.finished[m]
                a, b = at(row, i), at(row, i + 1)
                if a is not None and b is not None:
                    steps.append(abs(b - a) / 4)
        return min(steps) if steps else None

    def positions(self) -> list[float]:
        out: list[float] = []
        for i in range(len(self.labels)):
            out.append(float(i))
            gap = self.gap(i) if i + 1 < len(self.labels) else None
            if gap is not None and gap >= 1.0 - 1e-6:
                out += [i + 0.25, i + 0.5, i + 0.75]
            elif gap is not None and gap >= 0.6 - 1e-6:
                out.append(i + 0.5)
        return out

    def ranked(self, positions: list[float] | None = None) -> list[float]:
        """The positions from best to worst, by pairwise comparison (insertion sort: no tricks)."""
        out: list[float] = []
        for t in self.positions() if positions is None else positions:
            place = next((k for k, other in enumerate(out) if self.before(t, other)), len(out))
            out.insert(place, t)
        return out

    def before(self, t: float, other: float) -> bool:
        for one, two in ((self.complete(t), self.complete(other)), (self.wearable(t), self.wearable(other))):
            if one != two:
                return one
        a, b = self.misfit(t), self.misfit(other)
        if a is None or b is None:
            return b is None and (a is not None or t > other)
        if abs(a - b) > 1e-6:
            return a < b
        if t.is_integer() != other.is_integer():
            return t.is_integer()
        return t > other

    def listed(self) -> list[float]:
        return [float(i) for i in range(len(self.labels))]

    def best_listed(self) -> float:
        return self.ranked(self.listed())[0]

    def shifted(self, m: str, by: float) -> Plain:
        """The same with one body figure changed, every role kept."""
        roles = {r: "counted" if self.role(r) == "lead" else self.role(r) for r in self.regions()}
        body = {**self.body, m: self.body[m] + by}
        return Plain(self.labels, body, self.finished, self.chart, self.mode, self.garment, self.stretch, roles)

    def blend(self) -> tuple[dict[str, float], float, float] | None:
        """The best blend by trying every path: positions, misfit, the best single misfit over the same levels."""
        levels = [m for m in LEVELS if m in self.regions() and self.weight(m)]
        levels = [m for m in levels if all(self.diff(m, t) is not None for t in self.listed())]
        if len(levels) < 2:
            return None
        places = [t for t in self.positions() if (2 * t).is_integer()]
        best: tuple[float, float, tuple[float, ...]] | None = None
        for path in itertools.product(places, repeat=len(levels)):
            if any(abs(a - b) > 3 for a, b in itertools.pairwise(path)):
                continue
            if any(m in self.gated() and not self.closes(m, t) for m, t in zip(levels, path, strict=True)):
                continue
            fit = sum(self.loss(m, t) for m, t in zip(levels, path, strict=True))
            cost = fit + 1.5 * sum((a - b) ** 2 for a, b in itertools.pairwise(path))
            if best is None or cost < best[0] - 1e-12:
                best = (cost, fit, path)
        singles = [sum(self.loss(m, t) for m in levels) for t in self.positions() if self.wearable(t)]
        if best is None or not singles:
            return None
        weights = sum(self.weight(m) for m in levels)
        chosen = dict(zip(levels, best[2], strict=True))
        return chosen, math.sqrt(best[1] / weights), math.sqrt(min(singles) / weights)


def at(row: list[float | None], t: float) -> float | None:
    """A row at a position: straight lines between given figures, the last step going on, None past a missing end."""
    n = len(row)
    known = [i for i in range(n) if row[i] is not None]
    if not known:
        return None
    full: list[float | None] = list(row)
    for i in range(n):
        if full[i] is None and known[0] < i < known[-1]:
            a = max(k for k in known if k < i)
            b = min(k for k in known if k > i)
            low, high = row[a], row[b]
            assert low is not None
            assert high is not None
            full[i] = low + (high - low) * (i - a) / (b - a)
    if float(t).is_integer() and 0 <= t < n:
        return full[int(t)]
    if n == 1:
        return None
    i = min(max(math.floor(t), 0), n - 2)
    one, two = full[i], full[i + 1]
    return None if one is None or two is None else one + (t - i) * (two - one)
