"""A person written by hand in a TOML file: name, unit, measurements, and the ease she likes.

name = "Ilse"
unit = "in"                       # of bare numbers: "cm" or "in"
measured_by = "alone"             # or "trained", "helped" (where nothing is said)
measured_on = 2026-10-11
[measurements]
bust = "38 1/2"
waist = [{ figure = "29" }, { figure = "74 cm", by = "helped" }]
[ease]                            # her own figures, for every garment
bust = "2 in"
[ease.jacket]                     # and for one kind of garment
bust = "4 in"
"""

from __future__ import annotations

import datetime as dt
import uuid
from typing import TYPE_CHECKING, Any, Literal, get_args

from sizekeeper import assets
from sizekeeper.core.measure import REGION_ORDER, MeasuredBy
from sizekeeper.core.person import Person, Reading
from sizekeeper.core.preference import GARMENTS, EasePreference, RegionPreference
from sizekeeper.importing.toml_fields import TomlFields, nearest, read_toml

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping
    from pathlib import Path


_FIELDS = ("name", "unit", "born", "child", "measured_on", "measured_by", "groups", "notes", "measurements", "ease")
_READING_FIELDS = ("figure", "on", "by", "over", "note")
_UNITS: dict[str, Literal["cm", "in"]] = {
    "cm": "cm", "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "in": "in", "inch": "in", "inches": "in", '"': "in",
}  # fmt: skip
_INCH_FAMILY = ("in", "ft", "yd")


def read_person_file(path: Path, *, today: dt.date | None = None) -> Person:
    """The person that a TOML file describes, with an id of her own.

    Args:
        path: the file.
        today: the day of readings that name none; the day of reading the file if not given.

    Raises:
        ReadError: the file cannot be read or says something unclear; the sentence names the file and the field.
    """
    table = read_toml(path)
    file = _PersonFile(path.name, table)
    return file.person(today or dt.datetime.now().astimezone().date())


class _PersonFile(TomlFields):
    """The fields of a person's file and the person they describe."""

    @property
    def unit(self) -> Literal["cm", "in"] | None:
        """The unit of bare numbers, None where the file names none."""
        if "unit" not in self.table:
            return None
        unit = _UNITS.get(self.text("unit").casefold())
        if unit is None:
            raise self.fail(f"“unit” must be cm or in, not “{self.text('unit')}”.")
        return unit

    def person(self, today: dt.date) -> Person:
        self.known(self.table, _FIELDS, "in a person's file")
        name = self.text("name")
        if not name:
            raise self.fail("“name” is missing.")
        day = self.day(self.table["measured_on"], "measured_on") if "measured_on" in self.table else today
        readings = tuple(self._readings(day, self._by(self.table.get("measured_by", "helped"), "measured_by")))
        return Person(
            id=uuid.uuid4().hex,
            name=name,
            unit=self.unit or _usual_unit(readings),
            readings=readings,
            preferences=self._preferences(),
            born=self.day(self.table["born"], "born") if "born" in self.table else None,
            child=self.flag("child"),
            groups=self.texts("groups"),
            notes=self.text("notes"),
        )

    def _by(self, value: object, field: str) -> MeasuredBy:
        for by in get_args(MeasuredBy):
            if value == by:
                return by  # type: ignore[no-any-return]  # get_args does not say what the literal holds
        raise self.fail(f"“{field}” must be trained, helped or alone.")

    def _readings(self, day: dt.date, by: MeasuredBy) -> Iterator[Reading]:
        seen: set[str] = set()
        for written, value in self.section("measurements").items():
            measure = self._measure(written)
            if measure in seen:
                raise self.fail(f"“{written}” is measured twice; put its figures in one list.")
            seen.add(measure)
            for one in value if isinstance(value, list) else [value]:
                yield self._reading(measure, written, one if isinstance(one, dict) else {"figure": one}, day, by)

    def _reading(self, measure: str, field: str, row: Mapping[str, Any], day: dt.date, by: MeasuredBy) -> Reading:
        self.known(row, _READING_FIELDS, f"in “{field}”")
        if "figure" not in row:
            raise self.fail(f"“{field}” has no figure.")
        length = self.length(row["figure"], self.unit, field)
        if length.value <= 0:
            raise self.fail(f"“{field}” must be more than nothing.")
        inner = TomlFields(self.file, row)
        return Reading(
            measure=measure,
            text=length.text,
            length=length,
            on=self.day(row["on"], f"{field}.on") if "on" in row else day,
            by=self._by(row["by"], f"{field}.by") if "by" in row else by,
            over=inner.text("over"),
            note=inner.text("note"),
        )

    def _measure(self, written: str) -> str:
        """The body measure that a key names; capitals, spaces and hyphens do not matter."""
        known = assets.measures()
        measure = "_".join(written.casefold().replace("-", " ").split())
        if measure not in known:
            names = {name: m.id for m in known if m.use != "finished" for name in (m.id, *_names(m.synonyms))}
            raise self.fail(f"“{written}” is not a measure we know{nearest(written, names)}")
        if known[measure].use == "finished":
            raise self.fail(f"“{written}” is a measure of garments, not of a body.")
        return measure

    def _preferences(self) -> tuple[EasePreference, ...]:
        """Her own figures as preferences: those for every garment, and over them those for one kind."""
        section = self.section("ease")
        everywhere = {region: value for region, value in section.items() if not isinstance(value, dict)}
        kinds = {kind: value for kind, value in section.items() if isinstance(value, dict)}
        self.known(kinds, GARMENTS, "as a kind of garment in [ease]")
        out: list[EasePreference] = []
        for garment in GARMENTS:
            regions = {**self._own(everywhere, "ease"), **self._own(kinds.get(garment, {}), f"ease.{garment}")}
            if regions:
                out += [EasePreference(garment, knit=knit, regions=regions) for knit in (False, True)]
        return tuple(out)

    def _own(self, section: Mapping[str, Any], where: str) -> dict[str, RegionPreference]:
        self.known(section, REGION_ORDER, f"in [{where}], which is about regions")
        return {
            region: RegionPreference(own=self.length(value, self.unit, f"{where}.{region}"))
            for region, value in section.items()
        }


def _usual_unit(readings: tuple[Reading, ...]) -> Literal["cm", "in"]:
    """The unit she writes: that of the first reading."""
    first = next((r.length.unit for r in readings if r.length is not None), "cm")
    return "in" if first in _INCH_FAMILY else "cm"


def _names(synonyms: Mapping[str, tuple[str, ...]]) -> Iterator[str]:
    for names in synonyms.values():
        yield from names
