"""The wearer: a child's two sizes and what to grow into, and getting in and out."""

from __future__ import annotations

from dataclasses import replace
from functools import partial
from typing import TYPE_CHECKING

from sizekeeper.core.children import child_sizes, tucks
from sizekeeper.core.found_words import for_child
from sizekeeper.core.lengths import CHAIN_NAMES
from sizekeeper.core.notation import parse_length
from sizekeeper.core.places import join
from sizekeeper.core.work import chains, passages_of, without_lengths
from sizekeeper.core.work_words import passage_words
from sizekeeper.ui.lettering import Lettering, say
from sizekeeper.ui.person_fields import CalmCombo
from sizekeeper.ui.plan_edits import length_typed
from sizekeeper.ui.plan_field import MakeField
from sizekeeper.ui.plan_fold import Fold, figures
from sizekeeper.ui.plan_lengths import with_growth

if TYPE_CHECKING:
    import datetime as dt
    from collections.abc import Callable

    from PySide6.QtWidgets import QWidget

    from sizekeeper.core.make import Make
    from sizekeeper.core.planned import Planned
    from sizekeeper.core.wording import Wording
    from sizekeeper.core.work import Work
    from sizekeeper.ui.plan_edits import MakeEdits

_TUCK = parse_length("1", "cm").exact_cm


class ChildFold(Fold):
    """The size for the girths, the size for the lengths, and growth in length only."""

    title = "To grow into"

    def __init__(self, edits: MakeEdits, today: Callable[[], dt.date], parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._today = today
        self._unit = ["cm"]
        self.whose = CalmCombo("Size whose lengths are taken", self.body)
        write = partial(with_growth, self._unit)
        self.growth = MakeField(
            edits, "Length to grow into", "Change what to grow into", write, self.problem, self.body
        )
        self.said = Lettering("", "plain", self.body)
        self.inside.addLayout(
            figures(self.body, [("lengths of size", self.whose), ("longer, to grow into", self.growth)], columns=2)
        )
        self.inside.addWidget(self.problem)
        self.inside.addWidget(self.said)
        self.whose.activated.connect(self._on_size)

    def applies(self, planned: Planned, _work: Work) -> bool:
        """Whether it is for a child."""
        return for_child(planned.found, self._today())

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Show both sizes."""
        self._unit[0] = planned.found.person.unit
        labels = list(planned.plans.labels)
        entries = ["as the body says", *labels]
        if [self.whose.itemText(i) for i in range(self.whose.count())] != entries:
            self.whose.clear()
            self.whose.addItems(entries)
        size = planned.make.length_size
        self.whose.setCurrentIndex(labels.index(size) + 1 if size in labels else 0)
        self.whose.setEnabled(not self.edits.read_only)
        growth = planned.make.growth
        self.growth.show_value(growth.text if growth is not None else "", "0")
        chart = planned.found.laid[0]
        found = child_sizes(planned.found.body, chart) if chart is not None else None
        said = ["Add growth in length only; keep it in tucks or a deep hem, to be let down later."]
        if found is not None and chart is not None:
            girth, length = (chart.sizes[at].label for at in (found.girth, found.length))
            by = (words.name(found.girth_by).lower(), words.name(found.length_by).lower())
            said.insert(0, f"By the {by[0]} the size is {girth}, by the {by[1]} {length}.")
        if lacking := _lacking_words(planned):
            said.append(lacking)
        if growth is not None and growth.value > 0:
            count, each = tucks(growth.exact_cm, _TUCK), words.length(float(_TUCK))
            said.append(f"It takes {count} {'tuck' if count == 1 else 'tucks'} of {each} depth.")
        say(self.said, "\n".join(said))
        return f"{said[0][:1].lower()}{said[0][1:].rstrip('.')}" if found is not None else ""

    def _on_size(self, row: int) -> None:
        size = self.whose.itemText(row) if row else ""
        self.edits.apply("Change the size for lengths", replace(self.edits.make, length_size=size))


def _lacking_words(planned: Planned) -> str:
    """That a size for the lengths changes nothing, or which lengths it leaves as they are; empty where it changes all.

    While no size is chosen only the first is worth saying.
    """
    lacking, asked = without_lengths(planned), chains(planned)
    names = join([CHAIN_NAMES[chain] for chain in lacking])
    if not lacking:
        return ""
    if len(lacking) == len(asked):
        return (
            f"The charts give no lengths to compare for {names}, so the size of the lengths changes nothing. "
            "Type them on the Pattern page, or say under Lengths how long each is to be."
        )
    if not planned.make.length_size:
        return ""
    return f"The charts give no length to compare for {names}: there the size of the lengths changes nothing."


def _with_shoulders(unit: list[str], make: Make, text: str) -> Make:
    return replace(make, shoulders=length_typed(text, unit[0]))


class OpeningFold(Fold):
    """Whether what must pass the openings does."""

    title = "Getting in"

    def __init__(self, edits: MakeEdits, today: Callable[[], dt.date], parent: QWidget | None = None) -> None:
        """Silent."""
        super().__init__(edits, parent)
        self._today = today
        self._unit = ["cm"]
        write = partial(_with_shoulders, self._unit)
        self.shoulders = MakeField(
            edits, "Around both shoulders", "Change the shoulders’ girth", write, self.problem, self.body
        )
        self.said, self.warning = Lettering("", "plain", self.body), Lettering("", "warning", self.body)
        self.inside.addLayout(figures(self.body, [("around both shoulders", self.shoulders)]))
        for widget in (self.problem, self.warning, self.said):
            self.inside.addWidget(widget)

    def applies(self, planned: Planned, _work: Work) -> bool:
        """Whether the pattern's openings are listed."""
        return bool(planned.pieces.openings)

    def show_planned(self, planned: Planned, _work: Work, words: Wording) -> str:
        """Say what passes and what does not."""
        self._unit[0] = planned.found.person.unit
        shoulders = planned.make.shoulders
        self.shoulders.show_value(shoulders.text if shoulders is not None else "")
        found = passages_of(planned, child=for_child(planned.found, self._today()))
        said = [passage_words(passage, words) for passage in found]
        say(self.warning, "\n".join(text for text, bad in said if bad))
        say(self.said, "\n".join(text for text, bad in said if not bad))
        bad = sum(bad for _, bad in said)
        unknown = any(p.short_cm is None for p in found)
        return f"{bad} too narrow" if bad else "not all known" if unknown else "everything passes"
