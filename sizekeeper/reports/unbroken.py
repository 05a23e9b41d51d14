"""Amounts inside sentences, kept together where a line ends."""

from __future__ import annotations

import re

_GLUE = "\N{NO-BREAK SPACE}"
_AMOUNT = re.compile(r"(?:\b(by) )?(?:\b(\d+) )?(?<![\w/])(\d+(?:[./]\d+)?) (cm|mm|in)\b")


def unbroken(text: str) -> str:
    """A sentence whose amounts never break: `by 1 3/8 in` stays in one line, whole, fraction, unit and its `by`."""
    return _AMOUNT.sub(_glued, text)


def _glued(match: re.Match[str]) -> str:
    return _GLUE.join(part for part in match.groups() if part)
