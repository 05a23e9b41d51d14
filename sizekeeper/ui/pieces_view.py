"""The pieces of a pattern on its page: list, drawing and fields, and below them what follows from the paper."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtCore import QEvent, Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QScrollArea, QVBoxLayout, QWidget

from sizekeeper.assets import measures
from sizekeeper.core.notation import show
from sizekeeper.ui import theme
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.pattern_link import Link
from sizekeeper.ui.piece_drawing import PieceDrawing
from sizekeeper.ui.piece_form import PieceForm
from sizekeeper.ui.pieces_contents import PiecesContents
from sizekeeper.ui.pieces_desk import PiecesDesk
from sizekeeper.ui.pieces_fabric import FabricPart
from sizekeeper.ui.pieces_girths import GirthsPart
from sizekeeper.ui.pieces_openings import OpeningsPart
from sizekeeper.ui.pieces_square import SquarePart

if TYPE_CHECKING:
    from PySide6.QtGui import QResizeEvent

    from sizekeeper.core.chart import Chart
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

_LEFT, _LEAST, _WIDEST, _DRAWN, _HIGH = 32, 20, 170, 28, 38
"""Steps of spacing: the width of the list's column, and at least; of the fields at most; of the drawing at least, and
its height."""


class PiecesView(QWidget):
    """Everything about the paper of one pattern.

    Signals:
        allowance_wanted(): the field of the pattern's seam allowance is wanted.
        view_wanted(str): another view's figures are wanted, "" for those that serve all views.
    """

    allowance_wanted = Signal()
    view_wanted = Signal(str)

    def __init__(self, session: Session, settings: Settings, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.desk = PiecesDesk(session, settings, self)
        self.title = Lettering("", "title", self)
        self.title.setWordWrap(True)
        self.says = Lettering("", "muted", self)
        self.says.setWordWrap(False)
        self.allowance = Link("Type the seam allowance", "", self)
        self.contents = PiecesContents(self.desk, self)
        self.drawing = PieceDrawing(parent=self)
        self.form = PieceForm(self.desk, self)
        self.square = SquarePart(self.desk, self)
        self.girths = GirthsPart(self.desk, self)
        self.openings = OpeningsPart(self.desk, measures().name, self)
        self.fabric = FabricPart(self.desk, self)
        self._lay()
        self.desk.changed.connect(self.refresh)
        self.desk.drafted.connect(self._on_drafted)
        self.contents.details_wanted.connect(self._on_details)
        self.contents.list.chosen.connect(self._on_chosen)
        self.allowance.clicked.connect(self.allowance_wanted)
        self.girths.view_wanted.connect(self.view_wanted)

    def _lay(self) -> None:
        self._content = QWidget()
        self._column = QVBoxLayout(self._content)
        self._column.addWidget(self.title)
        line = QHBoxLayout()
        line.addWidget(self.says)
        line.addWidget(self.allowance)
        line.addStretch(1)
        self._column.addLayout(line)
        self._column.addLayout(self._main())
        for part in (self.girths, self.square, self.openings, self.fabric):
            self._column.addWidget(Rule())
            self._column.addWidget(part)
        self._column.addStretch(1)
        self.area = QScrollArea(self)
        self.area.setWidgetResizable(True)
        self.area.setFrameShape(QFrame.Shape.NoFrame)
        self.area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.area.setWidget(self._content)
        outer = QVBoxLayout(self)
        outer.setContentsMargins(0, 0, 0, 0)
        outer.addWidget(self.area)
        self._space()

    def _main(self) -> QHBoxLayout:
        """List and drawing at the left, the fields at the right."""
        self._left = QWidget(self._content)
        self._below_list = QVBoxLayout(self._left)
        self._below_list.setContentsMargins(0, 0, 0, 0)
        self._below_list.setSpacing(theme.spacing(1.5))
        self._below_list.addWidget(self.contents)
        self._below_list.addWidget(self.drawing, 1)
        self._below_list.addStretch(0)
        self._sides = QHBoxLayout()
        self._sides.addWidget(self._left)
        self._sides.addWidget(self.form, 1)
        self._sides.addStretch(0)
        return self._sides

    def _space(self) -> None:
        margin = theme.spacing(3)
        self._column.setContentsMargins(margin, theme.spacing(1.5), margin, margin)
        self._column.setSpacing(theme.spacing(2))
        self._sides.setSpacing(theme.spacing(2.5))
        self.form.setMaximumWidth(theme.spacing(_WIDEST))
        self._place_drawing()

    def _place_drawing(self) -> None:
        """The drawing stands beside the figures where there is room, else below the list."""
        room = self.width() - theme.spacing(3 + 3 + 3 + 3) - self.form.sheet.minimumSizeHint().width()
        self._left.setFixedWidth(min(max(room, theme.spacing(_LEAST)), theme.spacing(_LEFT)))
        wide = room >= theme.spacing(_LEFT + _DRAWN)
        wanted = self.form.beside if wide else self._below_list
        if wanted.indexOf(self.drawing) < 0:
            wanted.addWidget(self.drawing, 1)
            self.drawing.setMinimumHeight(theme.spacing(_HIGH))
        self.contents.list.be_short(short=not wide)

    def show_pattern(self, entry: str, finished: Chart, body: Chart) -> None:
        """Show the pieces of a pattern, with the charts that girths, openings and fabric refer to."""
        self.girths.show_charts(finished, body)
        self.openings.show_chart(finished)
        self.fabric.show_charts(finished, body)
        self.desk.show_pattern(entry)
        self.refresh()

    def refresh(self) -> None:
        """Show everything as it is now; while the pieces are not in front it waits for the page to ask again."""
        pattern = self.desk.pattern
        if pattern is None or not self.isVisible():
            return
        self.title.setText(pattern.title or "No title")
        self._say()
        self.contents.refresh()
        piece, drafted = self.desk.piece, self.desk.drafted_piece
        self.drawing.setVisible(piece is not None)
        self.form.setVisible(piece is not None)
        if piece is not None and drafted is not None:
            self.form.refresh(piece, drafted)
        self._draw()
        for part in (self.square, self.girths, self.openings, self.fabric):
            part.refresh()

    def _say(self) -> None:
        """How many pieces there are, and with which allowance."""
        pattern = self.desk.pattern
        assert pattern is not None  # noqa: S101 - asked for while one is shown
        count = len(self.desk.committed.pieces)
        listed = "No pieces listed" if not count else "1 piece" if count == 1 else f"{count} pieces"
        known = pattern.seam_allowance
        words = (
            f"seam allowance {show(known.exact_cm, self.desk.notation)}" if known else "seam allowance not known yet"
        )
        self.says.setText(f"{listed}, {words}. Measure on the paper, all in one size.")
        self.allowance.setVisible(known is None and self.desk.writable)

    def _draw(self) -> None:
        self.drawing.show_piece(self.desk.drafted_piece, notation=self.desk.notation)

    def _on_drafted(self) -> None:
        """Follow what is being typed."""
        drafted = self.desk.drafted_piece
        if not self.isVisible() or drafted is None:
            return
        self._draw()
        self.contents.refresh()
        self.form.sheet.refresh_nets(drafted)
        self.girths.refresh()
        self.square.refresh()

    def _on_chosen(self) -> None:
        """Bring the drawing of the piece into view with the list, where it stands below it."""
        if self._below_list.indexOf(self.drawing) >= 0:
            self.area.ensureWidgetVisible(self.drawing, 0, 0)
            self.area.ensureWidgetVisible(self.contents.list, 0, 0)

    def _on_details(self) -> None:
        self.form.name.setFocus(Qt.FocusReason.OtherFocusReason)
        self.form.name.selectAll()

    def start(self) -> None:
        """Put the cursor where the work goes on."""
        first = self.contents.list if self.desk.committed.pieces else self.contents.start
        first.setFocus(Qt.FocusReason.OtherFocusReason)

    def reveal(self, field: str) -> None:
        """Put the cursor into the field in which an edit happened; `field` is a piece's id and the field's name."""
        piece, _, name = field.partition("|")
        if self.desk.committed.piece(piece) is not None:
            self.desk.choose(piece)
        self.refresh()
        kind, _, place = name.partition(":")
        if kind == "fabric":
            self.fabric.go_to_first()
            target: QWidget | None = self.fabric.table
        elif kind == "square":
            target = self.square.measured
        elif kind == "measured_in":
            target = self.girths.size_box
        elif kind == "opening":
            rows = self.openings.rows
            target = rows[int(place)].name if int(place) < len(rows) else self.openings.add
        elif kind == "list" or self.desk.piece is None:
            target = self.contents.list if self.desk.piece is not None else self.contents.add
        else:
            target = self.form.field(name)
        if target is not None:
            target.setFocus(Qt.FocusReason.OtherFocusReason)
            self.area.ensureWidgetVisible(target)

    def finish(self) -> None:
        """Make the edit of whatever is being typed."""
        for part in (self.form, self.square, self.openings, self.fabric):
            part.finish()

    def resizeEvent(self, event: QResizeEvent) -> None:
        """Find the place of the drawing."""
        super().resizeEvent(event)
        self._place_drawing()

    def changeEvent(self, event: QEvent) -> None:
        """Follow the text size."""
        super().changeEvent(event)
        if theme.font_changed(event) and hasattr(self, "_sides"):
            self._space()
