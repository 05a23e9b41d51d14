"""What the demo household has made so far, from a file written by hand."""

from __future__ import annotations

from typing import TYPE_CHECKING, get_args

from sizekeeper.core.make import Decision, Felt, Kept, KeptRegion, Make, Place, ToileRound
from sizekeeper.core.measure import REGION_ORDER
from sizekeeper.importing.toml_fields import TomlFields, read_toml

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence
    from pathlib import Path

    from sizekeeper.core.pattern import Pattern
    from sizekeeper.core.person import Person

_FIELDS = (
    "person", "pattern", "view", "size", "decided", "finished", "reason", "toile", "outcome", "next_time", "at",
)  # fmt: skip
_AT = ("body", "ease", "asked", "felt")


def demo_makes(
    path: Path, people: Sequence[Person], patterns: Sequence[Pattern], new_id: Callable[[], str]
) -> list[Make]:
    """The finished makes of a file.

    Args:
        path: the file.
        people: the household, by whose names it tells whose a make is.
        patterns: the patterns, by whose titles it tells what was made.
        new_id: makes an id that no other entry has.

    Raises:
        ReadError: the file is missing or says something unclear; the sentence names file and field.
    """
    file = TomlFields(path.name, read_toml(path))
    file.known(file.table, ("make",), "in a file of makes")
    whose = {person.name: person for person in people}
    what = {pattern.title: pattern for pattern in patterns}
    return [_make(TomlFields(path.name, table), whose, what, new_id()) for table in file.table.get("make", [])]


def _make(fields: TomlFields, whose: dict[str, Person], what: dict[str, Pattern], entry: str) -> Make:
    fields.known(fields.table, _FIELDS, "in a make")
    person, pattern = whose.get(fields.text("person")), what.get(fields.text("pattern"))
    if person is None or pattern is None:
        raise fields.fail("“person” and “pattern” must be names of the demo household.")
    decided = fields.day(fields.table.get("decided", ""), "decided")
    finished = fields.day(fields.table.get("finished", ""), "finished")
    size, at = fields.text("size"), _regions(fields)
    toile = fields.text("toile")
    regions = {measure: region for measure, (region, _) in at.items()}
    return Make(
        id=entry,
        person=person.id,
        pattern=pattern.id,
        view=fields.text("view"),
        name=pattern.title,
        decision=Decision("straight", Place(size), reason=fields.text("reason"), on=decided),
        rounds=(ToileRound(decided, note=toile),) if toile else (),
        progress="finished",
        finished_on=finished,
        outcome=fields.text("outcome"),
        worn={measure: felt for measure, (_, felt) in at.items()},
        next_time=fields.text("next_time"),
        kept=Kept(
            finished,
            f"Cut {size} straight",
            pattern.garment,
            pattern.knit,
            {measure: region.body_cm for measure, region in regions.items()},
            regions,
        ),
    )


def _regions(fields: TomlFields) -> dict[str, tuple[KeptRegion, Felt]]:
    """What stood at each region when it was finished, and how it was worn there."""
    table = fields.section("at")
    fields.known(table, REGION_ORDER, "among the regions of a make")
    found = {}
    for measure, said in table.items():
        fields.known(said, _AT, f"at “{measure}”")
        body, ease, asked = (fields.length(said.get(name, ""), None, f"{measure}.{name}").cm for name in _AT[:3])
        felt: Felt | None = next((each for each in get_args(Felt) if each == said.get("felt")), None)
        if felt is None:
            raise fields.fail(f"“{measure}.felt” must be one of {', '.join(get_args(Felt))}.")
        found[measure] = (KeptRegion(body, ease, ease, asked), felt)
    return {measure: found[measure] for measure in REGION_ORDER if measure in found}
