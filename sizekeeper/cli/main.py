"""The terminal command `sizekeeper`."""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from sizekeeper import __version__
from sizekeeper.errors import SizekeeperError

if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

_WRONG = 2

_ABOUT = """\
Choose the size to cut from a multi-size sewing pattern: finished garment measurements minus your own,
region by region, against the ease you like.

Without a command it opens the window on your library."""

_EXAMPLES = """\
examples:
  sizekeeper                                         open the window
  sizekeeper demo                                    open the window on the demo household (a copy of its own)
  sizekeeper read chart.xlsx                         show how a chart file is understood
  sizekeeper rank --person me.toml --chart dress.csv rank the sizes of a chart for a person
  sizekeeper sheet --person Marit --pattern "Wrap dress" --out marit.pdf
                                                     make a decision sheet; see sizekeeper sheet --help"""


def parser() -> argparse.ArgumentParser:
    """The command line's words."""
    import argparse  # noqa: PLC0415 - the window, which is opened without a word, starts without it

    from sizekeeper.cli import rank, read, sheet  # noqa: PLC0415 - they know the measures, which the window need not load first

    top = argparse.ArgumentParser(
        prog="sizekeeper",
        description=_ABOUT,
        epilog=_EXAMPLES,
        formatter_class=argparse.RawDescriptionHelpFormatter,
    )
    top.add_argument("--version", action="version", version=f"%(prog)s {__version__}")
    top.add_argument("--library", type=Path, metavar="FILE", help="open this library file instead of your own")
    commands = top.add_subparsers(dest="command", title="commands", metavar="COMMAND")
    commands.add_parser("demo", help="open the window on the invented demo household")
    read.add_parser(commands)
    rank.add_parser(commands)
    sheet.add_parser(commands)
    return top


def main(arguments: Sequence[str] | None = None) -> int:
    """Run the command; errors of the user's world are one sentence on stderr and exit code 2."""
    words = list(sys.argv[1:] if arguments is None else arguments)
    try:
        return _run(parser().parse_args(words)) if words else _open_window()
    except SizekeeperError as error:
        print(f"sizekeeper: {error}", file=sys.stderr)
        return _WRONG


def _open_window(library: Path | None = None, *, demo: bool = False) -> int:
    from sizekeeper.cli import window  # noqa: PLC0415 - each command loads only what it needs

    return window.run(library, demo=demo)


def _run(args: argparse.Namespace) -> int:
    if args.command == "read":
        from sizekeeper.cli import read  # noqa: PLC0415 - each command loads only what it needs

        return read.run(args)
    if args.command == "rank":
        from sizekeeper.cli import rank  # noqa: PLC0415 - each command loads only what it needs

        return rank.run(args)
    if args.command == "sheet":
        from sizekeeper.cli import sheet  # noqa: PLC0415 - each command loads only what it needs

        return sheet.run(args)
    return _open_window(args.library, demo=args.command == "demo")
