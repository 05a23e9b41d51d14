"""What the toiles say in words: what came up otherwise than printed, the next change, and what would be left."""

from __future__ import annotations

from typing import TYPE_CHECKING

from sizekeeper.core.flat import exact
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.places import join
from sizekeeper.core.work import as_chain
from sizekeeper.core.work_words import amount

if TYPE_CHECKING:
    from collections.abc import Mapping

    from sizekeeper.core.length import Length
    from sizekeeper.core.make import ToileRound
    from sizekeeper.core.toile import ToileState
    from sizekeeper.core.wording import Wording


def place_name(at: str, words: Wording) -> str:
    """What a place of a toile is called."""
    chain = as_chain(at)
    return f"{CHAIN_NAMES[chain].capitalize()}, length" if chain is not None else words.name(at)


def ease_words(cm: float, words: Wording) -> str:
    """An ease as finely as it is pinned, so that printed, found and left ease add up: `1 15/16 in`, `−8 mm`."""
    text = words.drawn(abs(cm))
    return f"−{text}" if cm < 0 and not text.startswith("0 ") else text


def state_words(state: ToileState, words: Wording) -> str:
    """What all rounds say of one place, in one line."""
    chain = as_chain(state.at)
    said = []
    if state.came_up is not None:
        up = state.came_up
        printed = f"printed{_with_change(state, words)}"
        size = f"{amount(up, words)} {'larger' if up > 0 else 'smaller'} than {printed}"
        said.append(f"came up {size}" if up else f"came up as {printed}")
    if state.change:
        more, less = ("longer", "shorter") if chain is not None else ("wider", "narrower")
        said.append(f"make it {amount(state.change, words)} {more if state.change > 0 else less}")
    elif state.felt is not None:
        said.append(f"felt {state.felt}")
    if state.left is not None and chain is None:
        said.append(f"that leaves {ease_words(float(state.left), words)} of ease")
    return f"{place_name(state.at, words)}: {', '.join(said)}." if said else ""


def _with_change(state: ToileState, words: Wording) -> str:
    """The change that the printed figure reckons in: ` plus the 2 cm added`."""
    if not state.altered:
        return ""
    by = amount(state.altered, words)
    return f" plus the {by} added" if state.altered > 0 else f" less the {by} taken off"


def reckoned_words(one: ToileRound, now: Mapping[str, Length], words: Wording) -> str:
    """Which changes of width the printed ease of a round reckons in, and which it does not; empty without any.

    Args:
        one: the round.
        now: the changes that stand in the worksheet now, by measure.
        words: how figures and measures are said.
    """
    noted = one.altered or {}
    held = [f"{words.name(at).lower()} {_wider(amount_, words)}" for at, amount_ in noted.items()]
    said = [f"Printed ease reckons in what was changed before this toile: {join(held)}."] if held else []
    since = [at for at in dict.fromkeys((*noted, *now)) if exact(noted.get(at)) != exact(now.get(at))]
    if names := join([words.name(at).lower() for at in since]):
        said.append(
            f"It was not noted what was changed before this toile, so its printed ease leaves that out: {names}."
            if one.altered is None
            else f"Changed since this toile was begun, and not in its printed ease: {names}."
        )
    return " ".join(said)


def _wider(change: Length, words: Wording) -> str:
    return f"{amount(change.exact_cm, words)} {'wider' if change.value > 0 else 'narrower'}"


def tight_words(state: ToileState, words: Wording) -> str:
    """The warning where what is left passes the tight edge; empty where it does not."""
    if not state.past_tight:
        return ""
    return (
        f"{place_name(state.at, words)}: what is left passes the tight edge by {words.sewn(float(state.past_tight))}."
    )


def contrary_words(state: ToileState, words: Wording) -> str:
    """A question where what was felt speaks against what was pinned; empty where it does not."""
    against = (state.felt == "tight" and state.taken > 0) or (state.felt == "loose" and state.taken < 0)
    if not against:
        return ""
    way = "taken in" if state.taken > 0 else "let out"
    return f"{place_name(state.at, words)}: it felt {state.felt}, and yet it is {way}; look again."
