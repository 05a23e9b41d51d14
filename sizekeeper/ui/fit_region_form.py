"""How one region should fit: how it counts, the band she likes, her own ease, and where the bands begin."""

from __future__ import annotations

from typing import TYPE_CHECKING, cast

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QComboBox, QGridLayout, QPushButton, QToolButton, QVBoxLayout, QWidget

from sizekeeper.core.notation import show
from sizekeeper.core.preference import BANDS
from sizekeeper.core.sentences import ROLE_WORDS
from sizekeeper.ui import theme
from sizekeeper.ui.fit_field import FigureField
from sizekeeper.ui.fit_liked import LikedGarment
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.pattern_link import Link

if TYPE_CHECKING:
    from PySide6.QtGui import QStandardItemModel

    from sizekeeper.core.preference import RegionPreference
    from sizekeeper.core.result import RegionFit
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.fit_edits import Counting

EDGES = ("tight up to", "close up to", "easy up to")
_BACK = "↺"


class RegionForm(QWidget):
    """The fields for one region. Each has a button beside it that puts back what usually comes.

    Signals:
        counting(str): how the region counts was picked; "" is as usual.
        band(str): the band she likes was picked; "" is as usual.
        own_typed(str), own(str): her own ease is being typed, and was entered; "" takes it away.
        edge_typed(int, str), edge(int, str): a band edge is being typed, and was entered.
        restored(): Esc took typing back.
        edges_back(): the usual edges are wanted again.
        worn_wanted(): the ease that was worn as wanted is to be her own.
        liked(object, str): an ease taken from a garment, and which one.
    """

    counting = Signal(str)
    band = Signal(str)
    own_typed = Signal(str)
    own = Signal(str)
    edge_typed = Signal(int, str)
    edge = Signal(int, str)
    restored = Signal()
    edges_back = Signal()
    worn_wanted = Signal()
    liked = Signal(object, str)

    def __init__(self, parent: QWidget | None = None) -> None:
        """Empty fields."""
        super().__init__(parent)
        self._grid = QGridLayout()
        self.counts = self._choices("How it counts", [("", "as usual"), *ROLE_WORDS.items()])
        self.likes = self._choices("Band I like", [("", "as usual"), *((band, band) for band in BANDS)])
        self.own_ease = FigureField("Ease I like, exactly", self)
        self.edge_fields = [FigureField(f"Ease at which it is {name}", self) for name in EDGES]
        self.problem = Lettering("", "warning", self)
        self.taken_from = Lettering("", "note", self)
        self.worn = Lettering("", "muted", self)
        self.ask_worn = Link("", parent=self)
        self.show_worn("", "")
        self.resets = [self._reset(what) for what in ("how it counts", "the band", "the exact ease", "the band edges")]
        self.open_liked = QPushButton("Take it from a garment I like …", self)
        self.open_liked.setCheckable(True)
        self.garment = LikedGarment(self)
        self.garment.hide()
        self.say("")
        self._lay_out()
        self._connect()

    def _choices(self, name: str, entries: list[tuple[str, str]]) -> QComboBox:
        box = QComboBox(self)
        box.setAccessibleName(name)
        for key, words in entries:
            box.addItem(words, key)
        return box

    def _reset(self, what: str) -> QToolButton:
        button = QToolButton(self)
        button.setText(_BACK)
        button.setAutoRaise(True)
        button.setToolTip(f"Put {what} back to the usual")
        button.setAccessibleName(f"Put {what} back to the usual")
        policy = button.sizePolicy()
        policy.setRetainSizeWhenHidden(True)
        button.setSizePolicy(policy)
        return button

    def _lay_out(self) -> None:
        grid = self._grid
        grid.setContentsMargins(0, 0, 0, 0)
        grid.setHorizontalSpacing(theme.spacing())
        grid.setVerticalSpacing(theme.spacing(0.75))
        rows: list[tuple[str, QWidget]] = [("counts", self.counts), ("I like it", self.likes)]
        rows += [("or exactly", self.own_ease), *zip(EDGES, self.edge_fields, strict=True)]
        for row, (words, widget) in enumerate(rows):
            grid.addWidget(Lettering(words, "plain", self), row, 0)
            grid.addWidget(widget, row, 1)
        for row, button in enumerate(self.resets):
            grid.addWidget(button, row, 2)
        grid.setColumnStretch(1, 1)
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addLayout(grid)
        for widget in (self.problem, self.taken_from, self.worn):
            column.addWidget(widget)
        column.addWidget(self.ask_worn, 0, Qt.AlignmentFlag.AlignLeft)
        for widget in (self.open_liked, self.garment):
            column.addWidget(widget)

    def _connect(self) -> None:
        self.counts.activated.connect(self._on_counts)
        self.likes.activated.connect(self._on_likes)
        self.own_ease.typed.connect(self.own_typed)
        self.own_ease.entered.connect(self.own)
        for field in self.edge_fields:
            field.typed.connect(self._on_edge_typed)
            field.entered.connect(self._on_edge)
        for field in (self.own_ease, *self.edge_fields):
            field.restored.connect(self.restored)
        for button, act in zip(
            self.resets, (self._counts_back, self._band_back, self._own_back, self.edges_back.emit), strict=True
        ):
            button.clicked.connect(act)
        self.ask_worn.clicked.connect(self.worn_wanted)
        self.open_liked.toggled.connect(self.garment.setVisible)
        self.garment.taken.connect(self.liked)

    def show_region(
        self,
        region: RegionFit | None,
        chosen: RegionPreference,
        counting: Counting,
        words: Wording,
    ) -> None:
        """Show what is set for a region, and what comes where nothing is; without a fit only what is set."""
        self._show_counts(region, counting)
        asked = "" if region is None or region.asked_cm is None else words.length(region.asked_cm)
        self.likes.setItemText(0, "as usual: close")
        self.likes.setCurrentIndex(max(0, self.likes.findData(chosen.band or "")))
        self.own_ease.set_figure(chosen.own.text if chosen.own is not None else "")
        self.own_ease.setPlaceholderText(asked)
        for field, text in zip(self.edge_fields, _edge_texts(region, chosen, words), strict=True):
            field.set_figure(text)
            field.setEnabled(bool(text))
        is_set = (bool(counting), chosen.band is not None, chosen.own is not None, chosen.edges is not None)
        for button, shown in zip(self.resets, is_set, strict=True):
            button.setVisible(shown)
        self.taken_from.setText(f"Taken from {chosen.liked}." if chosen.liked else "")
        self.taken_from.setVisible(bool(chosen.liked))

    def show_worn(self, evidence: str, offer: str) -> None:
        """Say with what ease her finished garments were worn, and offer the one she was content with."""
        say(self.worn, evidence)
        self.ask_worn.setText(offer)
        self.ask_worn.setAccessibleName(offer)
        self.ask_worn.setVisible(bool(offer))

    def _show_counts(self, region: RegionFit | None, counting: Counting) -> None:
        """The usual says what that is. The one that leads by itself gives the lead up only to another."""
        comes = "as usual" if counting or region is None else f"as usual: {ROLE_WORDS[region.role]}"
        self.counts.setItemText(0, comes)
        self.counts.setCurrentIndex(max(0, self.counts.findData(counting)))
        must_fit = self.counts.findData("counted")
        leads = region is not None and region.role == "lead" and counting != "lead"
        flags = Qt.ItemFlag.NoItemFlags if leads else Qt.ItemFlag.ItemIsEnabled | Qt.ItemFlag.ItemIsSelectable
        item = cast("QStandardItemModel", self.counts.model()).item(must_fit)
        item.setFlags(flags)

    def forget(self) -> None:
        """Let go of what is typed: another region is looked at."""
        for field in (self.own_ease, *self.edge_fields):
            field.forget()
        self.garment.clear()
        self.say("")

    def say(self, problem: str) -> None:
        """Say what is wrong with an entered text."""
        self.problem.setText(problem)
        self.problem.setVisible(bool(problem))

    def _on_counts(self) -> None:
        self.counting.emit(str(self.counts.currentData()))

    def _on_likes(self) -> None:
        self.band.emit(str(self.likes.currentData()))

    def _on_edge(self, text: str) -> None:
        place = next(i for i, field in enumerate(self.edge_fields) if field is self.sender())
        self.edge.emit(place, text)

    def _on_edge_typed(self, text: str) -> None:
        place = next(i for i, field in enumerate(self.edge_fields) if field is self.sender())
        self.edge_typed.emit(place, text)

    def _counts_back(self) -> None:
        self.counting.emit("")

    def _band_back(self) -> None:
        self.band.emit("")

    def _own_back(self) -> None:
        self.own.emit("")


def _edge_texts(region: RegionFit | None, chosen: RegionPreference, words: Wording) -> list[str]:
    if chosen.edges is not None:
        return [edge.text for edge in chosen.edges]
    return ["", "", ""] if region is None else [show(edge, words.notation) for edge in region.edges]
