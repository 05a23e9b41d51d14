"""The order in which Tab goes through widgets, where some are made later than those that follow them."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QWidget

if TYPE_CHECKING:
    from collections.abc import Sequence


def one_after_the_other(*widgets: QWidget) -> None:
    """Make Tab go through widgets in this order."""
    for here, there in itertools.pairwise(widgets):
        QWidget.setTabOrder(here, there)


def first_of(widgets: Sequence[QWidget]) -> QWidget | None:
    """The first of widgets that can have the focus now; None where none can."""
    return next((widget for widget in widgets if widget.isEnabled() and not widget.isHidden()), None)
