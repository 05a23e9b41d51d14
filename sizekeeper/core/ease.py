"""Ease bands: where tight ends and close begins, per region, and how much ease is asked for.

Every edge and every figure asked for is `fixed + share * body`: wovens use fixed centimetres, knits a share of the
body. That keeps all of fit linear in the body, which the safe margins rely on.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sizekeeper.core.preference import BANDS, Band, EasePreference, Garment
from sizekeeper.core.result import Edges
from sizekeeper.errors import FitError

SAME = 1e-6
"""Values nearer than this, in cm, count as equal."""

_OTHER = (0.0, 0.0, 0.0)


@dataclass(frozen=True, slots=True)
class EaseDefaults:
    """The band edges nobody has changed, from resources/ease.toml; cm.

    `woven` by region; `skirt_trousers` replaces entries of it for these garments; `added` is what a garment kind adds
    to every edge of a region. Knits from `knit_from` on have their edges at `-n B`, 0 and `knit_loose * B`, where
    n = min(1 - 1 / (1 + s / 2), `knit_most`), and close fit asks for `-n B * knit_close`.
    """

    woven: Mapping[str, Edges]
    skirt_trousers: Mapping[str, Edges] = field(default_factory=dict)
    added: Mapping[str, Mapping[str, float]] = field(default_factory=dict)
    knit_from: float = 0.15
    knit_most: float = 0.10
    knit_loose: float = 0.08
    knit_close: float = 1 / 3

    def edges(self, measure: str, garment: Garment) -> Edges:
        """The edges a < b < c of a woven garment in a region, cm of ease."""
        edges = self.woven.get(measure, _OTHER)
        if garment in ("skirt", "trousers"):
            edges = self.skirt_trousers.get(measure, edges)
        more = self.added.get(garment, {}).get(measure, 0.0)
        return (edges[0] + more, edges[1] + more, edges[2] + more)

    def negative_share(self, stretch: float) -> float:
        """How much smaller than the body a knit may comfortably be, as a share of the body: n."""
        return min(1 - 1 / (1 + stretch / 2), self.knit_most)


@dataclass(frozen=True, slots=True)
class EaseRule:
    """The edges of one region and the ease asked for, each `fixed + share * body`; `band` is the band asked for."""

    edges: Edges
    edge_shares: Edges
    asked: float
    asked_share: float
    band: Band
    own: bool

    def edges_at(self, body_cm: float) -> Edges:
        """The three edges for a body, cm of ease."""
        a, b, c = (e + s * body_cm for e, s in zip(self.edges, self.edge_shares, strict=True))
        return (a, b, c)

    def asked_at(self, body_cm: float) -> float:
        """The ease asked for, for a body, cm."""
        return self.asked + self.asked_share * body_cm


def band_of(ease_cm: float, edges: Edges) -> Band:
    """The band of an ease: tight below the first edge, loose from the third on."""
    a, b, c = edges
    return BANDS[(ease_cm >= a - SAME) + (ease_cm >= b - SAME) + (ease_cm >= c - SAME)]


def ease_rule(
    measure: str,
    body_cm: float,
    *,
    garment: Garment,
    stretch: float,
    preference: EasePreference,
    defaults: EaseDefaults,
) -> EaseRule:
    """How a region of a garment is judged for one person.

    Raises:
        FitError: edges of the person's own are not in rising order.
    """
    chosen = preference.region(measure)
    knit = stretch >= defaults.knit_from - SAME
    share = defaults.negative_share(stretch) if knit else 0.0
    if chosen.edges is not None:
        edges, shares = _own_edges(measure, chosen.edges[0].cm, chosen.edges[1].cm, chosen.edges[2].cm), _OTHER
    elif knit:
        edges, shares = _OTHER, (-share, 0.0, defaults.knit_loose)
    else:
        edges, shares = defaults.edges(measure, garment), _OTHER
    if chosen.own is not None:
        rule = EaseRule(edges, shares, chosen.own.cm, 0.0, "close", own=True)
        return EaseRule(edges, shares, rule.asked, 0.0, band_of(rule.asked, rule.edges_at(body_cm)), own=True)
    band: Band = chosen.band or "close"
    if knit and band == "close" and chosen.edges is None:
        return EaseRule(edges, shares, 0.0, -share * defaults.knit_close, band, own=False)
    return EaseRule(edges, shares, _within(band, edges), _within(band, shares), band, own=False)


def _own_edges(measure: str, a: float, b: float, c: float) -> Edges:
    if not a < b < c:
        raise FitError(f"The band edges of {measure.replace('_', ' ')} must rise: {a:g}, {b:g}, {c:g} cm do not.")
    return (a, b, c)


def _within(band: Band, edges: Edges) -> float:
    """The figure a band asks for: tight the first edge, close and easy the middle, loose the third edge."""
    a, b, c = edges
    return {"tight": a, "close": (a + b) / 2, "easy": (b + c) / 2, "loose": c}[band]
