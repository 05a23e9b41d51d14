"""How the window for many sheets is laid out."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QFormLayout, QHBoxLayout, QVBoxLayout

from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule

if TYPE_CHECKING:
    from sizekeeper.ui.sheet_everybody import SheetsForEverybody


def arrange(window: SheetsForEverybody) -> None:
    """Who and what side by side, then how and where, then what happens."""
    edge = theme.spacing(3)
    lists = QHBoxLayout()
    lists.setSpacing(theme.spacing(3))
    lists.addWidget(window.people, 1)
    lists.addWidget(window.patterns, 1)
    column = QVBoxLayout()
    column.setContentsMargins(edge, theme.spacing(2), edge, theme.spacing(2))
    column.setSpacing(theme.spacing(1.5))
    column.addWidget(Lettering("Save sheets for everybody", "title", window))
    column.addLayout(lists, 1)
    column.addLayout(_form(window))
    column.addWidget(window.details)
    window.details.setMaximumHeight(theme.spacing(14))
    whole = QVBoxLayout(window)
    whole.setContentsMargins(0, 0, 0, 0)
    whole.setSpacing(0)
    whole.addLayout(column, 1)
    whole.addWidget(Rule(window))
    whole.addLayout(_foot(window))
    window.resize(theme.spacing(96), theme.spacing(76))


def _form(window: SheetsForEverybody) -> QFormLayout:
    how = QHBoxLayout()
    how.setSpacing(theme.spacing(1.5))
    how.addWidget(window.format_choice)
    how.addWidget(Lettering("on", "muted", window))
    how.addWidget(window.paper_choice)
    how.addSpacing(theme.spacing(1))
    how.addWidget(window.private_choice)
    how.addStretch(1)
    where = QHBoxLayout()
    where.setSpacing(theme.spacing(1))
    where.addWidget(window.folder, 1)
    where.addWidget(window.browse)
    form = QFormLayout()
    form.setHorizontalSpacing(theme.spacing(2))
    form.setVerticalSpacing(theme.spacing(1))
    what = QHBoxLayout()
    what.addWidget(window.kind_choice)
    what.addStretch(1)
    form.addRow("Sheets", what)
    form.addRow("Format", how)
    form.addRow("Folder", where)
    return form


def _foot(window: SheetsForEverybody) -> QHBoxLayout:
    words = QVBoxLayout()
    words.setSpacing(theme.spacing(0.5))
    for widget in (window.progress, window.summary, window.trouble):
        words.addWidget(widget)
    window.progress.setTextVisible(False)
    foot = QHBoxLayout()
    foot.setContentsMargins(theme.spacing(3), theme.spacing(1.5), theme.spacing(3), theme.spacing(1.5))
    foot.setSpacing(theme.spacing(1.5))
    foot.addLayout(words, 1)
    for button in (window.stop, window.put_away, window.save):
        foot.addWidget(button)
    return foot
