"""How two houses draft: two patterns, or all patterns of two publishers, by ease, steps and proportions."""

from __future__ import annotations

from itertools import pairwise
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QCheckBox, QHBoxLayout, QPushButton, QStackedLayout, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.draft import TOPICS, Topic
from sizekeeper.core.drafting import Drafting, axes, drafting
from sizekeeper.core.drafting_words import TOPIC_WORDS, main_differences, notes
from sizekeeper.core.wording import Wording
from sizekeeper.ui import theme
from sizekeeper.ui.beside_choice import EntryChoice
from sizekeeper.ui.comparison_window import ComparisonWindow
from sizekeeper.ui.drafting_board import DraftBoard, Legend
from sizekeeper.ui.drafting_source import DraftingSource, kind_of
from sizekeeper.ui.drafting_table import DraftTable
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.page_bar import PageBar

if TYPE_CHECKING:
    from sizekeeper.core.drafting import Side
    from sizekeeper.ui.session import Session
    from sizekeeper.ui.settings import Settings

_PATTERNS, _PUBLISHERS = ("patterns", ""), ("publishers", "")


class DraftingWindow(ComparisonWindow):
    """Chooses two sides and shows how they draft, in a sentence, as plots and as a table."""

    def __init__(self, session: Session, settings: Settings, pattern: str) -> None:
        """Begin with a pattern, by id, against the next one."""
        super().__init__("drafting", "How two houses draft", session, settings, (150, 92))
        self._source = DraftingSource(session)
        self.compared: Drafting | None = None
        self._axis: str | None = None
        self.what = EntryChoice("What is compared", self)
        self.kind = EntryChoice("Kind of garment", self)
        self.left, self.right = EntryChoice("Left side", self), EntryChoice("Right side", self)
        self.swap = QPushButton("S&wap", self)
        self.topics = PageBar(self)
        self.along = EntryChoice("Sizes lined up by", self)
        self.as_table = QCheckBox("As a &table", self)
        self.sentence, self.note = Lettering("", "plain", self), Lettering("", "muted", self)
        self.legend, self.board, self.table = Legend(self), DraftBoard(self), DraftTable(self)
        self._dress()
        self._arrange()
        self._begin(pattern)

    def _dress(self) -> None:
        self.what.offer([(_PATTERNS, "Two patterns"), (_PUBLISHERS, "Two publishers")])
        self.swap.setAutoDefault(False)
        self.swap.setAccessibleName("Swap left and right")
        self.topics.setAccessibleName("Figures compared")
        for topic in TOPICS:
            self.topics.addTab(TOPIC_WORDS[topic])

    def _arrange(self) -> None:
        first = QHBoxLayout()
        first.setSpacing(theme.spacing(1))
        for widget, stretch in ((self.what, 2), (self.kind, 2), (self.left, 4), (self.swap, 0), (self.right, 4)):
            first.addWidget(widget, stretch)
        second = QHBoxLayout()
        second.setSpacing(theme.spacing(1))
        second.addWidget(self.topics)
        second.addStretch(1)
        label = Lettering("Sizes &lined up by", "plain", self)
        label.setWordWrap(False)
        label.setBuddy(self.along)
        second.addWidget(label)
        second.addWidget(self.along)
        second.addWidget(self.as_table)
        holder = QWidget(self)
        self._stack = QStackedLayout(holder)
        self._stack.addWidget(self.board)
        self._stack.addWidget(self.table)
        column = QVBoxLayout(self)
        column.setContentsMargins(*(theme.spacing(2),) * 4)
        column.setSpacing(theme.spacing(1))
        column.addWidget(Lettering("How two houses draft", "title", self))
        column.addLayout(first)
        column.addLayout(second)
        column.addWidget(self.sentence)
        column.addWidget(self.note)
        column.addWidget(self.legend)
        column.addWidget(holder, 1)
        for one, other in pairwise((self.what, self.kind, self.left, self.swap, self.right, self.topics)):
            QWidget.setTabOrder(one, other)

    def _begin(self, pattern: str) -> None:
        self._offer()
        self.left.choose((pattern, ""))
        self._part()
        chosen = self._session.pattern(pattern)
        if chosen is not None:
            self.kind.choose(kind_of(chosen))
        self.what.currentIndexChanged.connect(self._on_what)
        self.kind.currentIndexChanged.connect(self._on_kind)
        for box in (self.left, self.right):
            box.currentIndexChanged.connect(self.compare)
        self.along.currentIndexChanged.connect(self._on_axis)
        self.swap.clicked.connect(self._swap)
        self.topics.currentChanged.connect(self.show_topic)
        self.as_table.toggled.connect(self.show_topic)
        self.compare()
        self.left.setFocus()

    @property
    def topic(self) -> Topic:
        """The figures compared."""
        return TOPICS[self.topics.currentIndex()]

    @property
    def _by_publisher(self) -> bool:
        return self.what.chosen == _PUBLISHERS

    def _offer(self) -> None:
        """Fill the lists with what there is to compare."""
        self.kind.offer(self._source.kinds())
        self.kind.setVisible(self._by_publisher)
        offered = self._source.publishers(self.kind.chosen) if self._by_publisher else self._source.patterns()
        for box in (self.left, self.right):
            box.offer(offered)

    def _part(self) -> None:
        """Let both sides be different where they can be."""
        if self.left.chosen == self.right.chosen and self.right.count() > 1:
            blocked = self.right.blockSignals(True)
            self.right.setCurrentIndex(1 if self.left.currentIndex() == 0 else 0)
            self.right.blockSignals(blocked)

    def _on_what(self) -> None:
        """Show patterns or publishers; a kind of garment that two publishers have, where there is one."""
        self._offer()
        if self._by_publisher and self.left.count() < 2:  # noqa: PLR2004 - two can be compared
            both = [kind for kind, _ in self._source.kinds() if len(self._source.publishers(kind)) > 1]
            if both:
                blocked = self.kind.blockSignals(True)
                self.kind.choose(both[0])
                self.kind.blockSignals(blocked)
                self._offer()
        self._part()
        self.compare()

    def _on_kind(self) -> None:
        self._offer()
        self._part()
        self.compare()

    def _swap(self) -> None:
        left, right = self.left.chosen, self.right.chosen
        for box, choice in ((self.left, right), (self.right, left)):
            blocked = box.blockSignals(True)
            box.choose(choice)
            box.blockSignals(blocked)
        self.compare()

    def follow(self) -> None:
        """Compare again, with the lists as they are now."""
        self._offer()
        self.compare()

    def _sides(self) -> tuple[Side | None, Side | None]:
        if self._by_publisher:
            left, right = (self._source.publisher_side(box.chosen, self.kind.chosen) for box in (self.left, self.right))
        else:
            left, right = (self._source.pattern_side(box.chosen, box.currentText()) for box in (self.left, self.right))
        return left, right

    def compare(self, _what: object = None) -> None:
        """Compare the chosen sides and show them."""
        left, right = self._sides()
        if left is None or right is None or self.left.chosen == self.right.chosen:
            self.compared = None
            self.along.setEnabled(False)
            self.show_topic()
            return
        names = assets.measures().name
        offered = [((axis, ""), names(axis) if axis else "Size label") for axis in axes(left, right)]
        self.compared = drafting(left, right, self._axis)
        blocked = self.along.blockSignals(True)
        self.along.offer(offered)
        self.along.choose((self.compared.axis, ""))
        self.along.blockSignals(blocked)
        self.along.setEnabled(len(offered) > 1)
        self.show_topic()

    def _on_axis(self) -> None:
        """Keep what was chosen for the next two, as far as they can be lined up by it."""
        self._axis = self.along.chosen[0]
        self.compare()

    def show_topic(self, _what: object = None) -> None:
        """Show the figures of the topic in front."""
        words, compared = self._words(), self.compared
        self.board.show_topic(compared, self.topic, words)
        self.table.figures.show_topic(compared, self.topic, words)
        self._stack.setCurrentIndex(1 if self.as_table.isChecked() else 0)
        self.legend.setVisible(compared is not None)
        if compared is None:
            self.sentence.setText(self._nothing())
            say(self.note, "")
            return
        self.sentence.setText(main_differences(compared, self.topic, words))
        say(self.note, " ".join(notes(compared, words)))
        left, right = (self._named(side) for side in (compared.left, compared.right))
        spread = any(len(side.drafts) > 1 for side in (compared.left, compared.right))
        self.legend.show_names(left, right, spread=spread)

    def _named(self, side: Side) -> str:
        """A side with the number of its patterns where it is a house."""
        if not self._by_publisher:
            return side.name
        count = len(side.drafts)
        return f"{side.name} ({'1 pattern' if count == 1 else f'{count} patterns'})"

    def _nothing(self) -> str:
        """What is missing before two can be compared."""
        if self._by_publisher:
            return "Two publishers with charted patterns of this kind are needed. The Pattern page names the publisher."
        if self.left.count() > 1:
            return "Choose two different patterns."
        return "Two patterns with figures in their charts are needed. Type them on the Pattern page, or import them."

    def _words(self) -> Wording:
        pattern = self._session.pattern(self.left.chosen[0])
        unit = self._settings.unit if pattern is None else pattern.unit
        return Wording(self._settings.notation_for(unit), assets.measures().name)
