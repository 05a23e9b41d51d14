"""`sizekeeper read FILE`: prints what was understood of a chart, and what is in doubt."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from sizekeeper.importing.read import read_file
from sizekeeper.importing.reading_json import as_json
from sizekeeper.importing.words import as_text

if TYPE_CHECKING:
    import argparse


def add_parser(subparsers: argparse._SubParsersAction[Any]) -> None:
    """Add the command to the terminal program's commands."""
    parser = subparsers.add_parser("read", help="read a size chart and say what was understood and what is in doubt")
    parser.add_argument("file", metavar="FILE", help="XLSX, XLSM, XLS, ODS, CSV, TSV, text, HTML or PDF with text")
    parser.add_argument(
        "--json", action="store_true", help="print tables and flags as JSON, figures in cm, not rounded"
    )
    parser.set_defaults(run=run)


def run(args: argparse.Namespace) -> int:
    """Read the file and print the draft; 0 when a chart was read.

    Raises:
        ReadError: the file cannot be read or holds no chart.
    """
    draft = read_file(args.file)
    print(json.dumps(as_json(draft), ensure_ascii=False, indent=1) if args.json else as_text(draft))
    return 0
