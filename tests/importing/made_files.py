"""Small files of every kind, made by hand, for the readers of files."""

from __future__ import annotations

import io
import zipfile
from typing import TYPE_CHECKING

import openpyxl

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence

Rows = list[list[object]]
CHART: Rows = [["Body measurements (cm)", 8, 10, 12], ["Bust", 82.5, 86.5, 90.5], ["Waist", 64, 68, 72]]
TYPES = "http://schemas.openxmlformats.org/"


def workbook(sheets: Mapping[str, Rows]) -> bytes:
    """An XLSX workbook with the sheets."""
    book = openpyxl.Workbook()
    book.remove(book.worksheets[0])
    for name, rows in sheets.items():
        sheet = book.create_sheet(name)
        for row in rows:
            sheet.append(row)
    made = io.BytesIO()
    book.save(made)
    return made.getvalue()


def packed(parts: Mapping[str, bytes]) -> bytes:
    """A ZIP file of the parts."""
    made = io.BytesIO()
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in parts.items():
            archive.writestr(name, content)
    return made.getvalue()


def with_part(data: bytes, name: str, content: bytes) -> bytes:
    """A packed file with one part replaced or added."""
    with zipfile.ZipFile(io.BytesIO(data)) as archive:
        parts = {part: archive.read(part) for part in archive.namelist()}
    return packed(parts | {name: content})


def open_document(rows: Sequence[Sequence[object]], *, repeated: str = "") -> bytes:
    """An ODS spreadsheet; `repeated` is put into its last row as attributes."""
    lines = []
    for row in rows:
        cells = "".join(_ods_cell(value) for value in row)
        lines.append(f"<table:table-row>{cells}</table:table-row>")
    if repeated:
        lines.append(f"<table:table-row {repeated}>{_ods_cell(7, repeated)}</table:table-row>")
    office = "urn:oasis:names:tc:opendocument:xmlns:"
    content = (
        f'<?xml version="1.0" encoding="UTF-8"?><office:document-content xmlns:office="{office}office:1.0" '
        f'xmlns:table="{office}table:1.0" xmlns:text="{office}text:1.0"><office:body><office:spreadsheet>'
        f'<table:table table:name="Chart">{"".join(lines)}</table:table></office:spreadsheet></office:body>'
        "</office:document-content>"
    )
    manifest = f'<manifest:manifest xmlns:manifest="{office}manifest:1.0"/>'.encode()
    mimetype = b"application/vnd.oasis.opendocument.spreadsheet"
    return packed({"mimetype": mimetype, "content.xml": content.encode(), "META-INF/manifest.xml": manifest})


def _ods_cell(value: object, extra: str = "") -> str:
    extra = extra.replace("rows", "columns")
    if isinstance(value, str):
        return f'<table:table-cell office:value-type="string" {extra}><text:p>{value}</text:p></table:table-cell>'
    shown = f"<text:p>{value}</text:p>"
    return f'<table:table-cell office:value-type="float" office:value="{value}" {extra}>{shown}</table:table-cell>'


def pdf(rows: Sequence[Sequence[object]], *, ruled: bool, title: str = "") -> bytes:
    """A PDF page with one text for each cell, ruled lines around the cells where asked, and a title above them."""
    parts = [f"BT /F1 12 Tf 52 740 Td ({title}) Tj ET"]
    for r, row in enumerate(rows):
        for c, value in enumerate(row):
            x, y = 52 + 60 * c + (100 if c else 0), 700 - 20 * r
            parts.append(f"BT /F1 10 Tf {x} {y} Td ({value}) Tj ET")
    if ruled:
        edges = [50, *(150 + 60 * c for c in range(1, len(rows[0]) + 1))]
        parts += [f"50 {714 - 20 * r} m {edges[-1]} {714 - 20 * r} l S" for r in range(len(rows) + 1)]
        parts += [f"{x} 714 m {x} {714 - 20 * len(rows)} l S" for x in edges]
    stream = "\n".join(parts).encode("latin-1")
    objects = [
        b"<< /Type /Catalog /Pages 2 0 R >>",
        b"<< /Type /Pages /Kids [3 0 R] /Count 1 >>",
        (
            b"<< /Type /Page /Parent 2 0 R /MediaBox [0 0 612 792] /Contents 4 0 R "
            b"/Resources << /Font << /F1 5 0 R >> >> >>"
        ),
        b"<< /Length %d >>\nstream\n%s\nendstream" % (len(stream), stream),
        b"<< /Type /Font /Subtype /Type1 /BaseFont /Helvetica >>",
    ]
    made, places = b"%PDF-1.4\n", []
    for number, content in enumerate(objects, 1):
        places.append(len(made))
        made += b"%d 0 obj\n%s\nendobj\n" % (number, content)
    table = b"".join(b"%010d 00000 n \n" % place for place in places)
    end = b"trailer << /Size %d /Root 1 0 R >>\nstartxref\n%d\n%%%%EOF\n" % (len(objects) + 1, len(made))
    return made + b"xref\n0 %d\n0000000000 65535 f \n" % (len(objects) + 1) + table + end
