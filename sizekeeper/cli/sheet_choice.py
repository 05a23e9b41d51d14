"""Whose sheet for which pattern: names and ids of the library, or files, made into one snapshot to work from."""

from __future__ import annotations

import os
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from sizekeeper.cli.chart_choice import charts_in
from sizekeeper.core.pattern import KNIT_FROM, Pattern
from sizekeeper.core.person import Person
from sizekeeper.errors import ReportError
from sizekeeper.reports.household_export import Gathering, gatherings
from sizekeeper.reports.snapshot import Pairing, Snapshot

if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from sizekeeper.cli.sheet_library import ShelfLibrary

_PERSON_FILES = (".toml",)
_CHART_FILES = (
    ".xlsx", ".xlsm", ".xlsb", ".xls", ".ods", ".csv", ".tsv", ".tab", ".txt", ".html", ".htm", ".mht", ".pdf",
)  # fmt: skip
_NEAR = 60
"""The likeness, of 100, from which a name is offered for another; coined."""

_FEW = 8
"""So many names are listed where none is near."""

_Entry = TypeVar("_Entry", Person, Pattern)
_Job = TypeVar("_Job", Pairing, Gathering)


def pairings_of(args: argparse.Namespace, library: ShelfLibrary) -> tuple[Snapshot, list[Pairing]]:
    """What to make sheets of, and the snapshot to make them from.

    Args:
        args: the words of the command line.
        library: opened only for what no file gives.

    Raises:
        SizekeeperError: a name or a file is not there, or says too little.
    """
    snapshot, people, patterns = _chosen(args, library)
    return snapshot, _in_view(snapshot, snapshot.pairings(people, patterns), patterns, args)


def gatherings_of(args: argparse.Namespace, library: ShelfLibrary) -> tuple[Snapshot, list[Gathering]]:
    """What to make household sheets of, everybody against each pattern, and the snapshot to make them from.

    Raises:
        SizekeeperError: a name or a file is not there, or says too little.
    """
    snapshot, people, patterns = _chosen(args, library)
    return snapshot, _in_view(snapshot, gatherings(snapshot, tuple(people), patterns), patterns, args)


def _chosen(args: argparse.Namespace, library: ShelfLibrary) -> tuple[Snapshot, list[Person], list[Pattern]]:
    from_files: list[object] = []
    people = _people(args, library, from_files)
    patterns = _patterns(args, library, from_files)
    people = [_judged(person, patterns, args.mode) for person in people]
    return Snapshot([*library.values_if_read(), *from_files]), people, patterns


def _in_view(
    snapshot: Snapshot, found: list[_Job], patterns: Sequence[Pattern], args: argparse.Namespace
) -> list[_Job]:
    """The sheets of the view that is asked for.

    Raises:
        ReportError: one sheet is wanted of a pattern with several views, and none is said.
    """
    if args.view is not None:
        wanted = {pattern.id: _view(snapshot, pattern, args) for pattern in patterns}
        return [job for job in found if wanted[job.pattern.id] in (job.view, None)]
    if not args.all and len(found) > 1:
        views = " and ".join(job.view_words for job in found)
        title = found[0].pattern.title
        raise ReportError(f"“{title}” has different finished measurements for {views}; say which with --view.")
    return found


def _people(args: argparse.Namespace, library: ShelfLibrary, from_files: list[object]) -> list[Person]:
    if args.person is None:
        return library.snapshot.people()
    if not _means_file(args.person, _PERSON_FILES):
        return [_named(library.snapshot.people(hidden=True), args.person, library.name)]
    from sizekeeper.importing.person_file import read_person_file  # noqa: PLC0415 - wanted for files only

    person = read_person_file(Path(args.person))
    from_files.append(person)
    return [person]


def _patterns(args: argparse.Namespace, library: ShelfLibrary, from_files: list[object]) -> list[Pattern]:
    if args.pattern is not None and _means_file(args.pattern, _CHART_FILES):
        return [_from_file(args, from_files)]
    for option in ("garment", "stretch", "table"):
        if getattr(args, option) is not None:
            raise ReportError(f"--{option} is for a chart file; a pattern of the library has its own.")
    if args.pattern is None:
        return library.snapshot.patterns()
    return [_named(library.snapshot.patterns(hidden=True), args.pattern, library.name)]


def _means_file(text: str, suffixes: Sequence[str]) -> bool:
    """Whether a text is the path of a file, not a name in the library."""
    folders = [mark for mark in (os.sep, os.altsep) if mark]
    return Path(text).suffix.casefold() in suffixes or any(mark in text for mark in folders)


def _from_file(args: argparse.Namespace, from_files: list[object]) -> Pattern:
    """A pattern of the charts in a file; of several views the one that is asked for.

    Raises:
        ReportError: the file has no chart.
    """
    file = Path(args.pattern)
    charts = [c for c in charts_in(file, table=args.table, view=args.view) if c is not None]
    if not charts:
        raise ReportError(f"{file.name} has no chart with sizes and measures in it.")
    stretch = args.stretch or 0.0
    pattern = Pattern(
        str(file),
        file.stem,
        garment=args.garment or "dress",
        fabric="knit" if stretch >= KNIT_FROM else "woven",
        stretch=stretch,
        views=tuple(dict.fromkeys(chart.view for chart in charts if chart.view)),
        unit="in" if charts[-1].unit == "in" else "cm",
    )
    from_files += [pattern, *(replace(chart, pattern=pattern.id) for chart in charts)]
    return pattern


def _judged(person: Person, patterns: Sequence[Pattern], mode: str | None) -> Person:
    """The person, with the mode that is asked for in her preferences for these patterns."""
    if mode is None:
        return person
    kept = {(p.garment, p.knit): p for p in person.preferences}
    for pattern in patterns:
        own = person.preference(pattern.garment, knit=pattern.knit)
        kept[own.garment, own.knit] = replace(own, mode=mode)  # type: ignore[arg-type]  # one of the option's choices
    return replace(person, preferences=tuple(kept.values()))


def _view(snapshot: Snapshot, pattern: Pattern, args: argparse.Namespace) -> str | None:
    """The choice of view that is asked for; None where a pattern without views is one of many.

    Raises:
        ReportError: the pattern has no such view.
    """
    if args.all and not pattern.views:
        return None
    known = {name.casefold(): view for view in pattern.views for name in (view, f"View {view}")}
    view = known.get(args.view.casefold())
    if view is None and not _means_file(pattern.id, _CHART_FILES):
        has = " and ".join(f"“{name}”" for name in pattern.views) or "none"
        raise ReportError(f"“{pattern.title}” has no view “{args.view}”; it has {has}.")
    return view if view in snapshot.views(pattern) else next(iter(snapshot.views(pattern)), "")


def _name(entry: Person | Pattern) -> str:
    return entry.name if isinstance(entry, Person) else entry.title


def _named(entries: Sequence[_Entry], wanted: str, library: str) -> _Entry:
    """The entry of a name, of the beginning of a name, or of an id; capitals make no difference.

    Raises:
        ReportError: there is none, or there are several.
    """
    name = " ".join(wanted.casefold().split())
    by_id = [entry for entry in entries if entry.id == wanted]
    alike = [entry for entry in entries if " ".join(_name(entry).casefold().split()) == name]
    begins = [entry for entry in entries if name and _name(entry).casefold().startswith(name) and not entry.hidden]
    found = by_id or alike or begins
    if len(found) == 1:
        return found[0]
    if not found:
        raise ReportError(f"“{library}” has nobody and nothing called “{wanted}”{_offer(entries, wanted)}")
    ids = ", ".join(f"“{_name(entry)}” {entry.id}" for entry in found)
    raise ReportError(f"“{wanted}” could be {len(found)} in “{library}”; say which by its whole name or its id: {ids}.")


def _offer(entries: Sequence[_Entry], wanted: str) -> str:
    """The end of a sentence: the names that are near, else all of them where they are few."""
    from rapidfuzz import fuzz, process

    names = [_name(entry) for entry in entries if not entry.hidden]
    near = process.extract(
        wanted.casefold(), names, scorer=fuzz.WRatio, processor=str.casefold, limit=3, score_cutoff=_NEAR
    )
    if near:
        return f"; did you mean {' or '.join(f'“{name}”' for name, *_ in near)}?"
    if names and len(names) <= _FEW:
        return f"; it has {', '.join(f'“{name}”' for name in names)}."
    return "."
