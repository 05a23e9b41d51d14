"""`sizekeeper sheet`: decision sheets and household sheets from the library or from files."""

from __future__ import annotations

import argparse
import datetime as dt
import os
import re
import sys
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.cli.rank import stretch_share
from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.core.preference import GARMENTS
from sizekeeper.errors import ReportError, SizekeeperError
from sizekeeper.reports.export import FORMATS, Format, export, format_of
from sizekeeper.reports.filing import ExistsError, free_name, is_there, write_file
from sizekeeper.reports.household_export import HOUSEHOLD_FORMATS, Gathering, household_written
from sizekeeper.reports.papers import paper_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from sizekeeper.reports.sheet import Paper
    from sizekeeper.reports.snapshot import Pairing, Snapshot

    Job = Pairing | Gathering

_ABOUT = """\
Make the decision sheet of a person and a pattern: what to cut and why, the ease region by region, the work in its
order and the pieces to trace. The suffix of FILE says in which format: .pdf, .html, .xlsx or .csv.

PERSON and PATTERN are names or ids in the library (the beginning of a name is enough where only one begins so), or
files: a person file and a chart file as `sizekeeper rank` takes them. The library is only looked at: it may be open
in the window meanwhile.

With --household the sheet compares everybody with the pattern and says which lines to trace for all (.pdf or .xlsx)."""

_EXAMPLES = """\
examples:
  sizekeeper sheet --person Marit --pattern "Wrap dress" --out marit.pdf
  sizekeeper sheet --person me.toml --pattern dress.csv --garment dress --out me.html
  sizekeeper sheet --person Marit --pattern "Wrap dress" --private --out for-the-tailor.pdf
  sizekeeper sheet --all --out sheets --format pdf              everybody and every pattern
  sizekeeper sheet --all --person Marit --out sheets            one person, every pattern
  sizekeeper sheet --household --pattern "Wrap dress" --out everybody.pdf"""

_STOPPED = 130
"""The exit code of a command that was stopped at the keyboard, as the shell has it."""

_SEVERAL = 3
"""From so many sheets on their progress is shown."""


def add_parser(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add the command's words to the command line."""
    parser = commands.add_parser(
        "sheet",
        help="make the decision sheet of a person and a pattern",
        description=_ABOUT,
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    parser.add_argument("--person", metavar="PERSON", help="a name or id in the library, or a person file (TOML)")
    parser.add_argument("--pattern", metavar="PATTERN", help="a title or id in the library, or a chart file")
    parser.add_argument("--out", type=Path, required=True, metavar="FILE", help="where it goes; a folder with --all")
    parser.add_argument(
        "--all", action="store_true", help="one sheet for each person and pattern, or for those that are named"
    )
    parser.add_argument(
        "--household", action="store_true", help="everybody against the pattern, and the lines to trace for all"
    )
    parser.add_argument("--format", choices=FORMATS, help="the format, where the suffix does not say it (default: pdf)")
    parser.add_argument(
        "--private",
        action="store_true",
        help="without body measurements, to hand to someone else; amounts to alter stay on it",
    )
    parser.add_argument(
        "--paper", choices=("a4", "letter"), help="of a PDF; default: as usual in the country of your locale, else a4"
    )
    parser.add_argument("--replace", action="store_true", help="write over files that are there already")
    parser.add_argument("--view", metavar="VIEW", help="the view whose finished measurements count")
    parser.add_argument(
        "--mode", choices=("my", "designer", "body"), help="whose ease decides; default: as set for the person"
    )
    parser.add_argument(
        "--library", type=Path, default=argparse.SUPPRESS, metavar="FILE", help="another library than your own"
    )
    files = parser.add_argument_group("for a chart file")
    files.add_argument("--garment", choices=GARMENTS, help="kind of garment (default: dress)")
    files.add_argument("--stretch", type=stretch_share, metavar="SHARE", help="stretch of a knit, 0.25 for 25 %%")
    files.add_argument("--table", metavar="NAME", help="the table or sheet to use when the file has several")


def run(args: argparse.Namespace) -> int:
    """Write the sheet, or all of them.

    Raises:
        SizekeeperError: something is not there, cannot be compared, or cannot be written.
    """
    from sizekeeper.cli.sheet_choice import gatherings_of, pairings_of  # noqa: PLC0415 - not wanted for --help
    from sizekeeper.cli.sheet_library import ShelfLibrary  # noqa: PLC0415 - the same

    _check(args)
    form = _format(args)
    library = ShelfLibrary(args.library)
    snapshot, jobs = gatherings_of(args, library) if args.household else pairings_of(args, library)
    maker = _Maker(snapshot, form, args)
    return _write_all(maker, jobs, args) if args.all else _write_one(maker, jobs[0], args)


def _check(args: argparse.Namespace) -> None:
    """Refuse what does not go together.

    Raises:
        ReportError: something is missing or too much; the sentence says what.
    """
    if args.household:
        if args.person is not None or args.private:
            option = "--private" if args.private else "--person"
            raise ReportError(f"A household sheet shows everybody with their ease; leave {option} out.")
        if not args.all and args.pattern is None:
            raise ReportError("Name a pattern with --pattern, or say --all.")
    elif not args.all and (args.person is None or args.pattern is None):
        raise ReportError("Name a person with --person and a pattern with --pattern, or say --all.")


def _format(args: argparse.Namespace) -> Format:
    """The format that is asked for, by option or by suffix.

    Raises:
        ReportError: neither says it, they do not agree, or there is no such sheet in it.
    """
    asked: Format | None = args.format
    by_suffix = None if args.all else format_of(args.out)
    if by_suffix and asked and by_suffix != asked:
        raise ReportError(f"“{args.out.name}” asks for {by_suffix} and --format for {asked}; say only one of them.")
    found = asked or by_suffix or ("pdf" if args.all else None)
    known = HOUSEHOLD_FORMATS if args.household else FORMATS
    if found is None:
        ends = f"{', '.join(f'.{form}' for form in known[:-1])} or .{known[-1]}"
        raise ReportError(f"“{args.out.name}” does not say in which format: end it in {ends}.")
    if found not in known:
        raise ReportError(f"A household sheet is written as {' or '.join(known)}, not as {found}.")
    return found


class _Maker:
    """Makes the bytes of one sheet after another."""

    def __init__(self, snapshot: Snapshot, form: Format, args: argparse.Namespace) -> None:
        self._snapshot, self.form, self._args = snapshot, form, args
        self._today = dt.datetime.now().astimezone().date()
        self._paper: Paper = "us-letter" if args.paper == "letter" else "a4" if args.paper else paper_of(_country())

    def made(self, job: Job) -> bytes:
        """The sheet of a pairing or of a household.

        Raises:
            ReportError: nothing can be compared, or not as asked.
        """
        if isinstance(job, Gathering):
            return household_written(
                self._snapshot,
                job,
                self.form,
                notations={"cm": CENTIMETRES, "in": INCHES},
                today=self._today,
                paper=self._paper,
            )
        return self._decision(job)

    def _decision(self, pairing: Pairing) -> bytes:
        found = self._snapshot.found(pairing)
        if found.fit is not None and self._args.mode not in (None, found.fit.mode):
            lacks = "finished measurements" if not found.charts[1] else "a body chart"
            raise ReportError(
                f"{pairing.words}: the pattern has not got {lacks}, so --mode {self._args.mode} has none."
            )
        return export(
            found,
            self._snapshot.planned(found),
            self.form,
            today=self._today,
            names=assets.measures().name,
            private=self._args.private,
            paper=self._paper,
            view_words=pairing.view_words,
            next_time=self._snapshot.next_time(found),
        )


def _write_one(maker: _Maker, job: Job, args: argparse.Namespace) -> int:
    if is_there(args.out) and not args.replace:
        raise ExistsError(f"“{args.out}” exists already and was left as it is; --replace writes over it.")
    write_file(args.out, maker.made(job), replace=args.replace)
    print(f"The sheet for {job.words} is in “{args.out}”.")
    return 0


def _write_all(maker: _Maker, jobs: Sequence[Job], args: argparse.Namespace) -> int:
    """Write a file each; pairs that cannot be compared are told and left out."""
    folder = _folder(args.out)
    named = _names(jobs, f".{maker.form}", private=args.private)
    there = [name for name in named if (folder / name).exists()]
    if there and not args.replace:
        more = f" and {len(there) - 1} more" if len(there) > 1 else ""
        raise ExistsError(
            f"“{folder / there[0]}”{more} exist{'' if more else 's'} already, so nothing was written; "
            "--replace writes over."
        )
    written, left_out = 0, list[str]()
    try:
        for number, (name, job) in enumerate(named.items(), start=1):
            _progress(f"Sheet {number} of {len(named)}: {job.words}", len(named))
            try:
                data = maker.made(job)
            except SizekeeperError as error:
                left_out.append(str(error))
                continue
            write_file(folder / name, data, replace=args.replace)
            written += 1
    except KeyboardInterrupt:
        _progress("", len(named))
        print(f"Stopped: {written} of {len(named)} sheets are in “{folder}”.", file=sys.stderr)
        return _STOPPED
    _progress("", len(named))
    for sentence in left_out:
        print(f"No sheet for {sentence}", file=sys.stderr)
    if not written:
        raise ReportError("There is nothing to make a sheet of.")
    print(f"{written} {'sheet is' if written == 1 else 'sheets are'} in “{folder}”.")
    return 0


def _folder(out: Path) -> Path:
    """The folder for many sheets, made where only its last part is missing.

    Raises:
        ReportError: it cannot be used.
    """
    if format_of(out) is not None and not out.is_dir():
        raise ReportError(f"--all writes a file each: name a folder with --out, “{out}” is the name of one file.")
    try:
        out.mkdir(exist_ok=True)
    except OSError as error:
        why = "it is a file" if out.is_file() else (error.strerror or str(error)).lower()
        raise ReportError(f"“{out}” cannot be used as a folder for the sheets: {why}.") from error
    return out


def _names(jobs: Sequence[Job], suffix: str, *, private: bool) -> dict[str, Job]:
    """What each file is called; people of one name get numbers."""
    named: dict[str, Job] = {}
    for job in jobs:
        plain = job.file_name(suffix) if isinstance(job, Gathering) else job.file_name(suffix, private=private)
        named[free_name(plain, named)] = job
    return named


def _progress(words: str, total: int) -> None:
    """Say on a terminal how far it is; an empty text takes the line away."""
    if total >= _SEVERAL and sys.stderr.isatty():
        print(f"\r\x1b[K{words}", end="", file=sys.stderr, flush=True)


def _country() -> str:
    """The country of the terminal's locale, such as the US of `en_US.UTF-8`; empty where it names none."""
    for name in ("LC_ALL", "LC_PAPER", "LANG"):
        if value := os.environ.get(name):
            found = re.match(r"[a-z]{2,3}_([A-Z]{2})\b", value)
            return found[1] if found else ""
    return ""
