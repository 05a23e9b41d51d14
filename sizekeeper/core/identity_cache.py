"""Keeps what was worked out from frozen values, so that many comparisons of the same ones work it out once.

Values are never edited, only replaced, so a result holds for as long as the very same values are asked about: they are
told apart by identity, which costs nothing however large they are. What was asked for longest ago is let go.
"""

from __future__ import annotations

import functools
from collections import OrderedDict
from threading import Lock
from typing import TYPE_CHECKING, ParamSpec, TypeVar

if TYPE_CHECKING:
    from collections.abc import Callable

P = ParamSpec("P")
T = TypeVar("T")


def once_for_these(most: int) -> Callable[[Callable[P, T]], Callable[P, T]]:
    """Make a function of frozen values keep its last results, `most` of them, by the identity of its arguments.

    Equal arguments that are not the same object are worked out anew. The function must not depend on anything else, and
    nobody may change what it returns.
    """

    def keeping(work: Callable[P, T]) -> Callable[P, T]:
        known: OrderedDict[tuple[object, ...], tuple[object, T]] = OrderedDict()
        lock = Lock()

        @functools.wraps(work)
        def recall(*args: P.args, **named: P.kwargs) -> T:
            given = (*args, *named.values())
            key = (*map(id, given), *named)
            with lock:
                found = known.get(key)
                if found is not None:
                    known.move_to_end(key)
                    return found[1]
            made = work(*args, **named)
            with lock:
                known[key] = (given, made)  # holding what was given keeps its identity from being used again
                if len(known) > most:
                    known.popitem(last=False)
            return made

        return recall

    return keeping
