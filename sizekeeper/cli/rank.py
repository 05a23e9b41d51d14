"""`sizekeeper rank`: the sizes of a chart file ranked for a person file."""

from __future__ import annotations

import json
from dataclasses import replace
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.cli.rank_json import as_json
from sizekeeper.cli.rank_text import as_text
from sizekeeper.core.body import body_figures
from sizekeeper.core.fit import fit
from sizekeeper.core.notation import CENTIMETRES, INCHES
from sizekeeper.core.pattern import KNIT_FROM
from sizekeeper.core.preference import GARMENTS
from sizekeeper.core.question import Question
from sizekeeper.errors import FitError

if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.person import Person
    from sizekeeper.core.preference import Role
    from sizekeeper.importing.draft import Draft, DraftTable

_ROLES: dict[str, Role] = {"free": "free", "count": "counted", "adjustable": "adjustable"}


def add_parser(commands: argparse._SubParsersAction[argparse.ArgumentParser]) -> None:
    """Add the command's words to the command line."""
    parser = commands.add_parser(
        "rank",
        help="rank the sizes of a chart for a person",
        description="Rank the sizes of a chart file for a person by ease, region by region.",
    )
    parser.add_argument("--person", type=Path, required=True, metavar="FILE", help="TOML: name, unit, [measurements]")
    parser.add_argument("--chart", type=Path, required=True, metavar="FILE", help="spreadsheet or CSV with the chart")
    parser.add_argument("--mode", choices=("my", "designer", "body"), help="whose ease decides; default my, or body")
    parser.add_argument("--garment", choices=GARMENTS, default="dress", help="kind of garment (default: dress)")
    parser.add_argument(
        "--stretch", type=_stretch, default=0.0, metavar="SHARE", help="stretch of a knit, 0.25 for 25 %%"
    )
    parser.add_argument("--lead", metavar="MEASURE", help="the measure to choose size by")
    for option, says in (
        ("free", "hangs free here"),
        ("count", "must fit here"),
        ("adjustable", "gathers or has elastic here"),
    ):
        parser.add_argument(f"--{option}", action="append", default=[], metavar="MEASURE", help=f"{says}; may repeat")
    parser.add_argument("--table", metavar="NAME", help="the table or sheet to use when the file has several")
    parser.add_argument("--view", metavar="VIEW", help="the view whose finished measurements count")
    parser.add_argument("--json", action="store_true", help="print everything as JSON, unrounded")


def _stretch(text: str) -> float:
    value = float(text)
    if not 0 <= value <= 1:
        raise ValueError(text)
    return value


def run(args: argparse.Namespace) -> int:
    """Print the ranking.

    Raises:
        SizekeeperError: a file cannot be read, or the two cannot be compared.
    """
    from sizekeeper.importing.person_file import read_person_file  # noqa: PLC0415 - reading is not wanted for --help
    from sizekeeper.importing.read import read_file  # noqa: PLC0415 - the same

    person = read_person_file(args.person)
    question = _question(args, person)
    body_chart, finished_chart = _charts(read_file(args.chart), args)
    if args.mode is None and body_chart is None and finished_chart is None:
        raise FitError(f"{args.chart.name} has no chart with sizes and measures in it.")
    found = fit(body_figures(person, assets.measures()), body_chart, finished_chart, question, assets.ease_defaults())
    if args.json:
        print(json.dumps(as_json(found), ensure_ascii=False, indent=1))
    else:
        print(as_text(found, person.name, INCHES if person.unit == "in" else CENTIMETRES))
    return 0


def _question(args: argparse.Namespace, person: Person) -> Question:
    roles: dict[str, Role] = {}
    for option, role in _ROLES.items():
        for measure in getattr(args, option):
            _known(measure, f"--{option}")
            if roles.get(measure, role) != role:
                raise FitError(f"{measure} cannot be both {roles[measure]} and {role}.")
            roles[measure] = role
    if args.lead is not None:
        _known(args.lead, "--lead")
    return Question(
        garment=args.garment,
        mode=args.mode,
        stretch=args.stretch,
        lead=args.lead,
        roles=roles,
        preference=person.preference(args.garment, knit=args.stretch >= KNIT_FROM),
    )


def _known(measure: str, option: str) -> None:
    known = assets.measures()
    if measure not in known:
        names = ", ".join(m.id for m in known)
        raise FitError(f"{option}: “{measure}” is not a measure; known are {names}.")


def _charts(draft: Draft, args: argparse.Namespace) -> tuple[Chart | None, Chart | None]:
    """The body chart and the finished chart to use, of those in the file.

    Raises:
        FitError: two are possible, and neither --table nor --view says which.
    """
    from sizekeeper.importing.to_chart import to_charts  # noqa: PLC0415 - reading is not wanted for --help
    from sizekeeper.store.codec import new_id  # noqa: PLC0415 - the same

    if args.table is not None:
        draft = replace(draft, tables=_named(draft, args))
    charts = to_charts(draft, "", new_id)
    for kind in ("body", "finished"):
        views = [chart.view for chart in charts if chart.kind == kind]
        if len(set(views)) < len(views):
            tables = _names([table for table in draft.tables if table.kind == kind])
            raise FitError(f"{args.chart.name} has several {kind} tables ({tables}); say which with --table.")
    return _one(charts, "body", args), _one(charts, "finished", args)


def _named(draft: Draft, args: argparse.Namespace) -> tuple[DraftTable, ...]:
    """The tables that --table names, by their title or their sheet, and those of the other kind."""
    name = args.table.casefold()
    exact = [table for table in draft.tables if name in (table.title.casefold(), table.sheet.casefold())]
    named = exact or [table for table in draft.tables if name in f"{table.title} {table.sheet}".casefold()]
    if not named:
        raise FitError(f"{args.chart.name} has no table “{args.table}”; it has {_names(draft.tables)}.")
    kinds = {table.kind for table in named}
    return tuple(table for table in draft.tables if table in named or table.kind not in kinds)


def _names(tables: Sequence[DraftTable]) -> str:
    """Tables by title and sheet, for a message."""
    titles = [f"“{table.title or 'without a title'}” on sheet “{table.sheet}”" for table in tables]
    return ", ".join(titles)


def _one(charts: list[Chart], kind: ChartKind, args: argparse.Namespace) -> Chart | None:
    """The one chart of a kind, of the view that is asked for.

    Raises:
        FitError: the views have figures of their own, and --view does not name one of them.
    """
    found = [chart for chart in charts if chart.kind == kind]
    if args.view is not None and any(chart.view for chart in found):
        return _of_view(found, args.view)
    if len(found) > 1:
        views = ", ".join(f"“{chart.view or 'all others'}”" for chart in found)
        raise FitError(f"{args.chart.name} has {kind} figures for {len(found)} views ({views}); say which with --view.")
    return found[0] if found else None


def _of_view(charts: list[Chart], view: str) -> Chart:
    """The chart of a view, or the one that serves all others.

    Raises:
        FitError: there is neither.
    """
    by_view = {chart.view.casefold(): chart for chart in charts}
    found = by_view.get(view.casefold())
    if found is None:
        views = ", ".join(f"“{chart.view}”" for chart in charts if chart.view)
        raise FitError(f"There is no view “{view}” in the chart; it has {views}.")
    return found
