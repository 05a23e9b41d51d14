"""Sizes to trace for several people: who shares which line, and what fewer lines would cost each of them.

A *line* is a listed size or a drawable place between two. What a set of lines costs is the root mean square of the
misfits of the people, each on the line that suits her best: as within one misfit, one person far off counts more than
two who are a little off. Only lines that a person can wear, and that have the figures she is judged by, are offered to
her; so the search is the choice of k columns of a table of costs that makes the sum of the least in each row smallest.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from sizekeeper.core.ease import SAME
from sizekeeper.core.household import Standing
from sizekeeper.core.line_search import SAME_LOSS, best_lines
from sizekeeper.core.places import split
from sizekeeper.core.result import Candidate

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from sizekeeper.core.result import Fit

WORTH_ALTERING_CM = 1.0
"""A difference all round from which an alteration is spoken of: 2.5 mm at each of four edges (coined)."""


Key = tuple[float, str]
"""A line among those of everybody: where it stands along all listed sizes, and its label."""


@dataclass(frozen=True, slots=True)
class Wearer:
    """Somebody for whom a line is traced; `measures` are the levels at which she takes it in a blend, else empty."""

    standing: Standing
    measures: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Line:
    """A line to trace and who takes it. `place` is the position on `labels`, her run of listed sizes."""

    label: str
    place: float
    labels: tuple[str, ...]
    wearers: tuple[Wearer, ...]

    @property
    def listed(self) -> bool:
        """Whether the line is printed; else it is drawn between two."""
        return split(self.place, len(self.labels))[1] == 0


@dataclass(frozen=True, slots=True)
class Alteration:
    """What to change of a shared line for one person, in cm all round: above 0 to take in, below 0 to let out."""

    measure: str
    cm: float


@dataclass(frozen=True, slots=True)
class Shared:
    """One person on a shared line: how far that is off, how far her own best line would be, and what to alter."""

    standing: Standing
    misfit_cm: float
    own_cm: float
    alterations: tuple[Alteration, ...]


@dataclass(frozen=True, slots=True)
class SharedLine:
    """A line with everybody who is to wear it."""

    line: Line
    people: tuple[Shared, ...]


@dataclass(frozen=True, slots=True)
class Choice:
    """So many lines for everybody, at the least misfit there is: the lines from small to large, cm."""

    lines: tuple[SharedLine, ...]
    misfit_cm: float

    @property
    def count(self) -> int:
        """How many lines are traced."""
        return len(self.lines)


@dataclass(frozen=True)
class Sharing:
    """Sizes to trace for these people.

    `own` are the lines when each takes what her verdict says. `choices` go from one line for all up to as many as
    give each her best single line; `groups` say which two, three ... of them can share one line with the least misfit.
    `left_out` cannot wear any line, or cannot be compared.
    """

    own: tuple[Line, ...]
    choices: tuple[Choice, ...]
    groups: tuple[Choice, ...]
    left_out: tuple[Standing, ...]


@dataclass(frozen=True)
class _Table:
    """What every line costs everybody: squared misfits, shape (people, lines), infinite where she cannot wear it."""

    standings: tuple[Standing, ...]
    lines: tuple[Key, ...]
    offers: tuple[Mapping[Key, Candidate], ...]
    squares: NDArray[np.float64]


def share(standings: Sequence[Standing], labels: Sequence[str], *, between: bool = True) -> Sharing:
    """The sizes to trace for these people.

    Args:
        standings: one pattern's; those without a fit are left out.
        labels: the listed sizes in order, as the household has them.
        between: whether lines between two sizes may be shared, not only printed ones.
    """
    offers = [_offered(standing, labels, between=between) for standing in standings]
    able = [(standing, offered) for standing, offered in zip(standings, offers, strict=True) if offered]
    left_out = tuple(standing for standing, offered in zip(standings, offers, strict=True) if not offered)
    own = own_lines([standing for standing, _ in able], labels)
    if not able:
        return Sharing(own, (), (), left_out)
    table = _table(able)
    return Sharing(own, _choices(table), _groups(table), left_out)


def own_lines(standings: Iterable[Standing], labels: Sequence[str]) -> tuple[Line, ...]:
    """The lines when each takes what her verdict says, from small to large; a blend takes several."""
    places: dict[str, tuple[float, Fit]] = {}
    wearers: dict[str, list[Wearer]] = {}
    for standing in standings:
        for label, position, measures in _cuts(standing):
            assert standing.fit is not None  # noqa: S101 - what has a cut was compared
            places.setdefault(label, (position, standing.fit))
            wearers.setdefault(label, []).append(Wearer(standing, measures))
    lines = [Line(label, at, fit.labels, tuple(wearers[label])) for label, (at, fit) in places.items()]
    return tuple(sorted(lines, key=lambda line: _along(line.place, line.labels, labels)))


def _cuts(standing: Standing) -> list[tuple[str, float, tuple[str, ...]]]:
    """The lines of a verdict: label, position, and the levels at which a blend takes it."""
    fit = standing.fit
    if fit is None:
        return []
    if fit.verdict.kind != "blend" or fit.blend is None:
        return [(fit.verdict.label, fit.verdict.position, ())]
    found: dict[str, tuple[float, list[str]]] = {}
    for measure, position in fit.blend.positions.items():
        found.setdefault(fit.blend.labels[measure], (position, []))[1].append(measure)
    return [(label, position, tuple(measures)) for label, (position, measures) in found.items()]


def _offered(standing: Standing, labels: Sequence[str], *, between: bool) -> dict[Key, Candidate]:
    """The lines a person can take: wearable, and as complete as her best is; empty where there is none."""
    if standing.fit is None:
        return {}
    worn = [c for c in standing.fit.candidates if c.wearable and c.misfit_cm is not None]
    worn = [c for c in worn if between or c.between is None]
    fewest = min((len(c.missing) for c in worn), default=0)
    own = standing.fit.labels
    return {(_along(c.position, own, labels), c.label): c for c in worn if len(c.missing) == fewest}


def _along(position: float, own: Sequence[str], labels: Sequence[str]) -> float:
    """Where a line stands along all listed sizes: its lower size there, and the part of the way from it."""
    lower, part = split(position, len(own))
    return labels.index(own[lower]) + float(part)


def _table(able: Sequence[tuple[Standing, Mapping[Key, Candidate]]]) -> _Table:
    lines = tuple(sorted({key for _, offered in able for key in offered}))
    misfits = [[offered[key].misfit_cm if key in offered else math.inf for key in lines] for _, offered in able]
    squares = np.array(misfits, dtype=float) ** 2
    return _Table(tuple(standing for standing, _ in able), lines, tuple(offered for _, offered in able), squares)


def _choices(table: _Table) -> tuple[Choice, ...]:
    """One line for all, two lines ... until each has her best single line; numbers that serve not all are left out."""
    best = float(table.squares.min(axis=1).sum())
    choices: list[Choice] = []
    for columns in best_lines(table.squares, listed=_listed(table)):
        chosen = table.squares[:, columns]
        takes = [columns[int(i)] for i in chosen.argmin(axis=1)]
        choices.append(_choice(table, dict(enumerate(takes))))
        if float(chosen.min(axis=1).sum()) <= best + SAME_LOSS:
            break
    return tuple(choices)


def _listed(table: _Table) -> NDArray[np.bool_]:
    return np.array([place == math.floor(place) for place, _ in table.lines])


def _groups(table: _Table) -> tuple[Choice, ...]:
    """For two, three ... people: those who can share one line with the least misfit, and the line.

    On any one line the best group of m are the m who are least off there, so trying every line is exact.
    """
    order = np.argsort(table.squares, axis=0, kind="stable")
    sums = np.cumsum(np.take_along_axis(table.squares, order, axis=0), axis=0)
    found, listed = [], _listed(table)
    for rows in range(1, len(table.standings)):
        least = sums[rows].min()
        if not np.isfinite(least):
            break
        near = np.flatnonzero(sums[rows] <= least + SAME_LOSS)
        column = int(max(near, key=lambda line: (listed[line], line)))
        found.append(_choice(table, {int(row): column for row in sorted(order[: rows + 1, column])}))
    return tuple(found)


def _choice(table: _Table, takes: Mapping[int, int]) -> Choice:
    """Who takes which column, as a value."""
    lines = []
    for column in sorted(set(takes.values())):
        rows = [row for row, taken in takes.items() if taken == column]
        people = tuple(_shared(table, row, column) for row in rows)
        first = table.offers[rows[0]][table.lines[column]]
        fit = people[0].standing.fit
        assert fit is not None  # noqa: S101 - only compared people are in the table
        wearers = tuple(Wearer(shared.standing) for shared in people)
        lines.append(SharedLine(Line(first.label, first.position, fit.labels, wearers), people))
    total = sum(float(table.squares[row, column]) for row, column in takes.items())
    return Choice(tuple(lines), math.sqrt(total / len(takes)))


def _shared(table: _Table, row: int, column: int) -> Shared:
    standing, candidate = table.standings[row], table.offers[row][table.lines[column]]
    return Shared(
        standing,
        math.sqrt(float(table.squares[row, column])),
        math.sqrt(float(table.squares[row].min())),
        alterations(standing, candidate),
    )


def alterations(standing: Standing, candidate: Candidate) -> tuple[Alteration, ...]:
    """What to change of a size for one person to give her the ease she asks for, from 1 cm all round, in body order.

    Where it hangs free nothing is altered; what gathers is never taken in.
    """
    found = []
    for region in standing.fit.regions if standing.fit is not None else ():
        at = candidate.regions.get(region.measure)
        if at is None or at.diff_cm is None or not region.weight:
            continue
        wide = at.diff_cm > 0 and region.role == "adjustable"
        if abs(at.diff_cm) >= WORTH_ALTERING_CM - SAME and not wide:
            found.append(Alteration(region.measure, at.diff_cm))
    return tuple(found)
