"""The look: spacing, fonts and colours, all derived from the application's font and palette.

Nothing here is a fixed pixel size or a fixed ground colour, so that text size and light or dark follow the system
live. A widget asks again in its `changeEvent`, when `font_changed` or `palette_changed` says so. A widget that was
given a font of its own hears nothing of a new text size: it connects to `text_size().changed`. `lettering.py` has
labels and rules that already do.
"""

from __future__ import annotations

from functools import cache

from PySide6.QtCore import QEvent, Signal
from PySide6.QtGui import QColor, QFont, QFontMetricsF, QPalette
from PySide6.QtWidgets import QApplication, QWidget

READABLE = 4.5
"""The least contrast of text on its ground (WCAG 2.1, success criterion 1.4.3)."""

_PLUM = QColor("#6d2b5e")
PLUM_ON_DARK = QColor("#d8a6cd")
_SELECTED = QColor("#74376a")
_DARK_BELOW = 0.18
"""The luminance below which a ground counts as dark; midway between black and white for the eye (from memory)."""
_WELL = 1.5
"""How much lighter than a field or an empty tick box a dark page is, so that they stand out as wells (coined)."""


def spacing(steps: float = 1) -> int:
    """A distance in pixels: 8 for each step at normal text size, growing and shrinking with the font."""
    return max(1, round(steps * QFontMetricsF(QApplication.font()).height() / 2))


def heading_font(level: int = 1) -> QFont:
    """The font of a heading: 1 for the page's title or the verdict, 2 for a part of it, 3 for a small heading."""
    sizes = {1: (1.7, QFont.Weight.Normal), 2: (1.25, QFont.Weight.DemiBold), 3: (1.0, QFont.Weight.DemiBold)}
    factor, weight = sizes[level]
    font = scaled_font(factor)
    font.setWeight(weight)
    return font


def small_font() -> QFont:
    """The font of notes and of figures beside a larger one."""
    return scaled_font(0.88)


def scaled_font(factor: float) -> QFont:
    """The application's font, larger or smaller by a factor."""
    font = QFont(QApplication.font())
    if font.pointSizeF() > 0:
        font.setPointSizeF(font.pointSizeF() * factor)
    else:
        font.setPixelSize(max(1, round(font.pixelSize() * factor)))
    return font


def font_changed(event: QEvent) -> bool:
    """Whether a `changeEvent` says that distances and fonts are to be asked for again.

    A widget with a font of its own gets no such event: see `text_size`.
    """
    return event.type() in (QEvent.Type.FontChange, QEvent.Type.ApplicationFontChange, QEvent.Type.StyleChange)


def palette_changed(event: QEvent) -> bool:
    """Whether a `changeEvent` says that colours are to be asked for again."""
    return event.type() in (QEvent.Type.PaletteChange, QEvent.Type.ApplicationPaletteChange)


class TextSize(QWidget):
    """Hears of a new text size. Qt tells that only to windows, so this is one, never shown.

    Signals:
        changed(): the application's font is another one now.
    """

    changed = Signal()

    def event(self, event: QEvent) -> bool:
        """Pass on the news."""
        if event.type() == QEvent.Type.ApplicationFontChange:
            self.changed.emit()
        return super().event(event)


def text_size() -> TextSize:
    """The one that hears of a new text size."""
    app = QApplication.instance()
    known = getattr(app, "_text_size", None)
    if not isinstance(known, TextSize):
        known = TextSize()
        app._text_size = known  # type: ignore[union-attr]  # noqa: SLF001 - it lives as long as the application
    return known


def luminance(colour: QColor) -> float:
    """The relative luminance of a colour, 0 to 1 (WCAG 2.1, definition of relative luminance)."""
    parts = (colour.redF(), colour.greenF(), colour.blueF())
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in parts]  # noqa: PLR2004 - sRGB
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: QColor, other: QColor) -> float:
    """The contrast ratio of two colours, 1 to 21 (WCAG 2.1, definition of contrast ratio)."""
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def mix(one: QColor, other: QColor, share: float) -> QColor:
    """A colour on the way from one to the other; a share of 0 is the first, 1 the other."""
    return QColor.fromRgbF(
        one.redF() + (other.redF() - one.redF()) * share,
        one.greenF() + (other.greenF() - one.greenF()) * share,
        one.blueF() + (other.blueF() - one.blueF()) * share,
    )


def is_dark(palette: QPalette) -> bool:
    """Whether the palette is light text on a dark ground."""
    return luminance(palette.color(QPalette.ColorRole.Window)) < _DARK_BELOW


def paper(palette: QPalette) -> QColor:
    """The ground of a page: in the light nearer to the fields' ground than the window's frame is, in the dark above it.

    In the dark the style draws the edge of a tick box darker than the page, which nobody sees on a ground as dark as
    the box itself.
    """
    window, base = palette.color(QPalette.ColorRole.Window), palette.color(QPalette.ColorRole.Base)
    if not is_dark(palette):
        return mix(window, base, 0.7)
    return QColor.fromRgb(_above(window.rgb(), base.rgb(), palette.color(QPalette.ColorRole.WindowText).rgb()))


@cache
def _above(window: int, base: int, text: int) -> int:
    """The window's colour, moved towards the text's until it is lighter enough than the fields; as `QColor.rgb`."""
    field = luminance(QColor.fromRgb(base)) + 0.05
    for step in range(51):
        moved = mix(QColor.fromRgb(window), QColor.fromRgb(text), step / 100)
        if luminance(moved) + 0.05 >= _WELL * field:
            return moved.rgb()
    return window


def surface(palette: QPalette) -> QColor:
    """The ground of a card that lies on a page."""
    if is_dark(palette):
        return mix(paper(palette), palette.color(QPalette.ColorRole.WindowText), 0.05)
    return palette.color(QPalette.ColorRole.Base)


def rule_colour(palette: QPalette) -> QColor:
    """The colour of a thin rule between parts of a page."""
    ground = paper(palette) if is_dark(palette) else palette.color(QPalette.ColorRole.Window)
    return mix(ground, palette.color(QPalette.ColorRole.WindowText), 0.2)


def muted_text(palette: QPalette) -> QColor:
    """The colour of text that steps back, still readable on the window, a page and a card."""
    text = palette.color(QPalette.ColorRole.WindowText)
    return _readable(mix(palette.color(QPalette.ColorRole.Window), text, 0.62), text, palette)


def accent(palette: QPalette) -> QColor:
    """The program's own plum for what is chosen or leads, readable as text on the window, a page and a card."""
    start = PLUM_ON_DARK if is_dark(palette) else _PLUM
    return _readable(start, palette.color(QPalette.ColorRole.WindowText), palette)


def accent_wash(palette: QPalette) -> QColor:
    """A pale ground in the accent's hue, for what is chosen; ordinary text stays readable on it."""
    return mix(paper(palette), accent(palette), 0.14)


def warning_text(palette: QPalette) -> QColor:
    """The colour of a sentence that asks for attention; it never stands without words."""
    start = QColor("#f0b48a") if is_dark(palette) else QColor("#8f3d12")
    return _readable(start, palette.color(QPalette.ColorRole.WindowText), palette)


def _readable(colour: QColor, towards: QColor, palette: QPalette) -> QColor:
    """The colour, moved towards the text's until it can be read on every ground."""
    grounds = (
        palette.color(QPalette.ColorRole.Window),
        palette.color(QPalette.ColorRole.Base),
        paper(palette),
        surface(palette),
    )
    for step in range(21):
        moved = mix(colour, towards, step / 20)
        if all(contrast(moved, ground) >= READABLE for ground in grounds):
            return moved
    return towards


def with_text(colour: QColor) -> QPalette:
    """A palette that sets nothing but the colour of text on windows, for a label that steps back or forward."""
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.WindowText, colour)
    return palette


def with_ground(colour: QColor) -> QPalette:
    """A palette that sets nothing but the ground, so that what lies on it keeps the other colours it has of its own."""
    palette = QPalette()
    palette.setColor(QPalette.ColorRole.Window, colour)
    return palette


STYLE = ("-style", "fusion")
"""Words that give a new application its style; `setStyle` would load all the names of `QStyle` at the start."""


def dress(app: QApplication) -> None:
    """Put the program's plum on selections; all else follows the system."""
    own = QPalette()
    for role, colour in (
        (QPalette.ColorRole.Highlight, _SELECTED),
        (QPalette.ColorRole.HighlightedText, QColor("white")),
    ):
        for group in (QPalette.ColorGroup.Active, QPalette.ColorGroup.Inactive):
            own.setColor(group, role, colour)
    app.setPalette(own)
