"""What is asked of a person and a pattern: in which mode, for which garment, by which preferences."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

from sizekeeper.core.preference import EasePreference, Garment, Role
from sizekeeper.core.result import Mode

LEAD_OF: dict[Garment, str] = {
    "dress": "bust",
    "top": "bust",
    "jacket": "bust",
    "coat": "bust",
    "skirt": "hip",
    "trousers": "hip",
}
"""The measure to choose size by. For women's skirts and trousers hip is the primary dimension (ISO 8559-2)."""

_TORSO = frozenset({"waist", "high_hip", "hip"})
_ABOVE = _TORSO | {"across_back", "bust", "upper_arm", "wrist"}
WORN_AT: dict[Garment, frozenset[str]] = {
    "dress": _ABOVE,
    "top": _ABOVE,
    "jacket": _ABOVE,
    "coat": _ABOVE,
    "skirt": _TORSO,
    "trousers": _TORSO | {"thigh", "calf"},
}
"""The regions that a garment is fitted at; the legs in a dress or skirt hang free (common practice, no source)."""


@dataclass(frozen=True)
class Question:
    """How to compare. `mode` None takes the default; `lead` and `roles` go before the person's preferences."""

    garment: Garment = "dress"
    mode: Mode | None = None
    stretch: float = 0.0
    lead: str | None = None
    roles: Mapping[str, Role] = field(default_factory=dict)
    preference: EasePreference | None = None

    @property
    def preferences(self) -> EasePreference:
        """The person's preferences, empty where she set none."""
        return self.preference or EasePreference(garment=self.garment)
