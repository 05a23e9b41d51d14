"""How she likes it to fit, next to where it acts: by what a size is judged, and each region's wishes."""

from __future__ import annotations

from typing import TYPE_CHECKING

from PySide6.QtWidgets import QComboBox, QVBoxLayout, QWidget

from sizekeeper import assets
from sizekeeper.core.found import usual_mode
from sizekeeper.core.make import Make
from sizekeeper.core.person import Person
from sizekeeper.core.preference import BANDS
from sizekeeper.core.worn import Worn, evidence_words, worn_ease
from sizekeeper.errors import SizekeeperError
from sizekeeper.ui import fit_edits, theme
from sizekeeper.ui.fit_mode import MODE_WORDS, ModePart
from sizekeeper.ui.fit_region_form import RegionForm
from sizekeeper.ui.lettering import Lettering, Rule
from sizekeeper.ui.selection import Place

if TYPE_CHECKING:
    from collections.abc import Callable

    from sizekeeper.core.found import Found
    from sizekeeper.core.length import Length
    from sizekeeper.core.result import Mode, RegionFit
    from sizekeeper.core.wording import Wording
    from sizekeeper.ui.fit_field import FigureField
    from sizekeeper.ui.session import Session


class LikesPart(QWidget):
    """Edits a person's ease preferences for the kind of garment in front of her."""

    def __init__(self, session: Session, parent: QWidget | None = None) -> None:
        """Edits go to a session."""
        super().__init__(parent)
        self._session = session
        self._found: Found | None = None
        self._words: Wording | None = None
        self._measure = ""
        self.mode = ModePart(self)
        self.where = QComboBox(self)
        self.where.setAccessibleName("Region")
        self.form = RegionForm(self)
        self.kept = Lettering("", "note", self)
        self._lay_out()
        self._connect()

    def _lay_out(self) -> None:
        column = QVBoxLayout(self)
        column.setContentsMargins(0, 0, 0, 0)
        column.setSpacing(theme.spacing())
        column.addWidget(Lettering("Judge a size by", "muted", self))
        column.addWidget(self.mode)
        column.addSpacing(theme.spacing(0.5))
        column.addWidget(Rule(self))
        column.addSpacing(theme.spacing(0.5))
        column.addWidget(Lettering("How it should fit at", "muted", self))
        for widget in (self.where, self.form, self.kept):
            column.addWidget(widget)
        column.addStretch(1)

    def _connect(self) -> None:
        self.mode.chosen.connect(self._on_mode)
        self.where.activated.connect(self._on_where)
        self.form.counting.connect(self._on_counting)
        self.form.band.connect(self._on_band)
        self.form.own_typed.connect(self._on_own_typed)
        self.form.own.connect(self._on_own)
        self.form.edge_typed.connect(self._on_edge_typed)
        self.form.edge.connect(self._on_edge)
        self.form.restored.connect(self._on_restored)
        self.form.edges_back.connect(self._on_edges_back)
        self.form.worn_wanted.connect(self._on_worn_wanted)
        self.form.liked.connect(self._on_liked)

    def show_found(self, found: Found, words: Wording) -> None:
        """Show the preferences that act on a fit; what is typed for another person or pattern is let go."""
        before = self._found
        self._found, self._words = found, words
        if before is not None and (before.person.id, before.pattern.id) != (found.person.id, found.pattern.id):
            self.form.forget()
        if found.comparison is not None:
            self.mode.show_mode(found.comparison.mode, found.charts)
        self.mode.setEnabled(not found.read_only)
        self._show_where(found, words)
        self._refresh()
        fabric = "knit" if found.pattern.knit else "woven"
        self.kept.setText(f"Kept for {found.person.name}: {fabric}, {found.pattern.garment}.")

    def _show_where(self, found: Found, words: Wording) -> None:
        """The regions to pick from: those judged; while nothing can be judged, those with something set."""
        judged = [r.measure for r in found.fit.regions] if found.fit else list(found.preference.regions)
        if [self.where.itemData(i) for i in range(self.where.count())] != judged:
            self.where.clear()
            for measure in judged:
                self.where.addItem(words.name(measure), measure)
        if self._measure not in judged:
            leads = [r.measure for r in found.fit.regions if r.role == "lead"] if found.fit else []
            self._measure = next(iter([*leads, *judged]), "")
        self.where.setCurrentIndex(max(0, self.where.findData(self._measure)))

    def pick(self, measure: str) -> None:
        """Look at a region."""
        if self.where.findData(measure) >= 0:
            self.where.setCurrentIndex(self.where.findData(measure))
            self._on_where()

    def _on_where(self) -> None:
        if self.where.currentData() != self._measure:
            self._measure = str(self.where.currentData())
            self._session.drop_draft(self._found.person.id if self._found is not None else "")
            self.form.forget()
            self._refresh()

    def _region(self) -> RegionFit | None:
        if self._found is None or self._found.fit is None:
            return None
        return next((r for r in self._found.fit.regions if r.measure == self._measure), None)

    def _refresh(self) -> None:
        region, found = self._region(), self._found
        self.form.setEnabled(found is not None and bool(self._measure) and not self._session.read_only)
        if found is None or self._words is None or not self._measure:
            return
        how = fit_edits.counting(found.person, found.pattern, self._measure)
        self.form.show_region(region, found.preference.region(self._measure), how, self._words)
        figure = found.figure(self._measure)
        body = figure.exact_cm if figure is not None else None
        self.form.garment.show_region(found.person, self._measure, body, self._words)
        self._show_worn(found, self._words)

    def _worn(self, found: Found) -> Worn:
        """What her finished garments of this kind tell of the region."""
        makes = (value for value in self._session.values() if isinstance(value, Make))
        pattern = found.pattern
        return worn_ease(makes, found.person.id, pattern.garment, self._measure, knit=pattern.knit)

    def _show_worn(self, found: Found, words: Wording) -> None:
        """Say it, and offer the ease she was content with while she does not ask for it already."""
        worn = self._worn(found)
        offer, own = worn.liked_cm, found.preference.region(self._measure).own
        liked = None if offer is None else fit_edits.ease_worn(offer, found.person.unit)
        new = liked is not None and (own is None or own.exact_cm != liked.exact_cm)
        self.form.show_worn(
            evidence_words(worn, words), f"Ask for this ease, {liked.text}" if liked is not None and new else ""
        )

    def _saved(self) -> tuple[Person, Found]:
        """The person as last edited: a preference is set on what is saved, not on a half-typed measurement."""
        assert self._found is not None  # noqa: S101 - the form is disabled without
        value = self._session.committed(self._found.person.id)
        return (value if isinstance(value, Person) else self._found.person), self._found

    def _apply(self, what: str, after: Person) -> None:
        before, found = self._saved()
        self.form.say("")
        name = assets.measures().name(self._measure).lower()
        place = Place("fit", before.id, f"{found.pattern.id}/{self._measure}")
        self._session.apply(f"Change {what} at the {name}", before, after, place=place)

    def _on_mode(self, mode: Mode) -> None:
        person, found = self._saved()
        wanted = None if mode == usual_mode(found.charts) else mode
        after = fit_edits.with_mode(person, found.pattern, wanted)
        place = Place("fit", person.id, f"{found.pattern.id}/{self._measure}")
        self._session.apply(f"Judge by {MODE_WORDS[mode][0].lower()}", person, after, place=place)

    def _on_counting(self, how: fit_edits.Counting) -> None:
        person, found = self._saved()
        self._apply("what counts", fit_edits.with_counting(person, found.pattern, self._measure, how))

    def _on_band(self, band: str) -> None:
        person, found = self._saved()
        picked = next((each for each in BANDS if each == band), None)
        self._apply("the band liked", fit_edits.with_band(person, found.pattern, self._measure, picked))

    def _with_own(self, text: str) -> Person:
        person, found = self._saved()
        own = fit_edits.ease_typed(text, person.unit)
        return fit_edits.with_own(person, found.pattern, self._measure, own)

    def _with_edge(self, place: int, text: str) -> Person:
        person, found = self._saved()
        edge = fit_edits.ease_typed(text, person.unit)
        if edge is None:
            return fit_edits.with_edges_as_they_come(person, found.pattern, self._measure)
        region = self._region()
        now = region.edges if region is not None else (0.0, 0.0, 0.0)
        return fit_edits.with_edge(person, found.pattern, self._measure, place, edge, now)

    def _on_own_typed(self, text: str) -> None:
        self._draft(self.form.own_ease, lambda: self._with_own(text))

    def _on_edge_typed(self, place: int, text: str) -> None:
        self._draft(self.form.edge_fields[place], lambda: self._with_edge(place, text))

    def _draft(self, field: FigureField, make: Callable[[], Person]) -> None:
        """Show what a text would do while it is typed; what is no figure yet is only said."""
        try:
            after = make()
        except SizekeeperError as error:
            field.set_problem(str(error))
            self.form.say(str(error))
            return
        field.set_problem("")
        self.form.say("")
        self._session.draft(after)

    def _on_own(self, text: str) -> None:
        self._enter(self.form.own_ease, "the ease liked", lambda: self._with_own(text))

    def _on_edge(self, place: int, text: str) -> None:
        self._enter(self.form.edge_fields[place], "a band edge", lambda: self._with_edge(place, text))

    def _enter(self, field: FigureField, what: str, make: Callable[[], Person]) -> None:
        """Make the edit; a text that is not taken stays in its field with the sentence beneath."""
        person, _ = self._saved()
        try:
            after = make()
        except SizekeeperError as error:
            self._session.drop_draft(person.id)
            field.refuse(str(error))
            self.form.say(str(error))
            return
        field.set_problem("")
        self._apply(what, after)
        self._session.drop_draft(person.id)

    def _on_restored(self) -> None:
        self._session.drop_draft(self._saved()[0].id)
        self.form.say("")

    def _on_edges_back(self) -> None:
        person, found = self._saved()
        self._apply("the band edges", fit_edits.with_edges_as_they_come(person, found.pattern, self._measure))

    def _on_worn_wanted(self) -> None:
        person, found = self._saved()
        liked = self._worn(found).liked_cm
        if liked is not None:
            ease = fit_edits.ease_worn(liked, person.unit)
            made = "garments made before"
            self._apply("the ease liked", fit_edits.with_own(person, found.pattern, self._measure, ease, made))

    def _on_liked(self, ease: Length, garment: str) -> None:
        person, found = self._saved()
        liked = garment or "a garment I like"
        self._apply("the ease liked", fit_edits.with_own(person, found.pattern, self._measure, ease, liked))
        self.form.open_liked.setChecked(False)
