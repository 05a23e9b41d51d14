"""`sizekeeper rank`: the sizes of a chart file ranked for a person file."""

from __future__ import annotations

import json
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper import assets
from sizekeeper.cli.chart_choice import charts_in
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

    from sizekeeper.core.person import Person
    from sizekeeper.core.preference import Role

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
        "--stretch", type=stretch_share, default=0.0, metavar="SHARE", help="stretch of a knit, 0.25 for 25 %%"
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


def stretch_share(text: str) -> float:
    """A stretch as an option gives it, 0 to 1.

    Raises:
        ValueError: it is no such share.
    """
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

    person = read_person_file(args.person)
    question = _question(args, person)
    body_chart, finished_chart = charts_in(args.chart, table=args.table, view=args.view)
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
