"""What a screen reader would say: the widgets that it has no name for."""

from __future__ import annotations

from PySide6.QtCore import Qt
from PySide6.QtGui import QAccessible
from PySide6.QtWidgets import QAbstractScrollArea, QScrollArea, QScrollBar, QWidget


def _takes_focus(widget: QWidget) -> bool:
    if widget.focusPolicy() == Qt.FocusPolicy.NoFocus or widget.focusProxy() is not None:
        return False
    return not isinstance(widget, QScrollBar)


def _is_inside(widget: QWidget) -> bool:
    """Whether the widget is the inner part of another one, which has the name: a spin box's field, an area's ground."""
    parent = widget.parentWidget()
    if parent is None:
        return False
    popup = parent.metaObject().className() == "QComboBoxPrivateContainer"
    ground = isinstance(parent, QAbstractScrollArea) and not isinstance(parent, QScrollArea)
    return popup or ground or widget.objectName().startswith("qt_")


def nameless(window: QWidget) -> list[str]:
    """The widgets of a window that can take the focus, as it is shown or would be, and have no name."""
    found = []
    for child in (window, *window.findChildren(QWidget)):
        if not _takes_focus(child) or _is_inside(child) or not (child is window or child.isVisibleTo(window)):
            continue
        spoken = QAccessible.queryAccessibleInterface(child)
        if not spoken.text(QAccessible.Text.Name).strip():
            found.append(f"{type(child).__name__} {child.objectName()} in {type(child.parentWidget()).__name__}")
    return found
