"""`sizekeeper rank`: the sizes of a chart file ranked for a person file."""

from __future__ import annotations

import json
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

    from sizekeeper.core.chart import Chart, ChartKind
    from sizekeeper.core.person import Person
    from sizekeeper.core.preference import Role
    from sizekeeper.importing.draft import Draft

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
    """The body chart and the finished chart to use, of those in the file."""
    from sizekeeper.importing.to_chart import to_charts  # noqa: PLC0415 - reading is not wanted for --help
    from sizekeeper.store.codec import new_id  # noqa: PLC0415 - the same

    charts = to_charts(draft, "", new_id)
    return _one(charts, "body", args), _one(charts, "finished", args)


def _one(charts: list[Chart], kind: ChartKind, args: argparse.Namespace) -> Chart | None:
    """The one chart of a kind.

    Raises:
        FitError: two are possible, and neither --table nor --view says which.
    """
    found = [chart for chart in charts if chart.kind == kind]
    if args.view is not None and any(chart.view for chart in found):
        found = _of_view(found, args.view)
    if args.table is not None and len(found) > 1:
        found = [chart for chart in found if _named(chart, args.table)] or found
    if len(found) > 1:
        names = ", ".join(f"“{chart.view or chart.name or 'without a name'}”" for chart in found)
        option = "--view" if any(chart.view for chart in found) else "--table"
        raise FitError(f"{args.chart.name} has {len(found)} {kind} tables ({names}); say which with {option}.")
    return found[0] if found else None


def _of_view(charts: list[Chart], view: str) -> list[Chart]:
    own = [chart for chart in charts if chart.view.casefold() == view.casefold()]
    if not own:
        views = ", ".join(f"“{chart.view}”" for chart in charts if chart.view)
        raise FitError(f"There is no view “{view}” in the chart; it has {views}.")
    return own


def _named(chart: Chart, name: str) -> bool:
    return name.casefold() in chart.name.casefold()
