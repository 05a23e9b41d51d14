"""Which writing needs the machine's fonts."""

from __future__ import annotations

import unicodedata

import pytest
import typst

from sizekeeper.reports.pdf_scripts import _OWN, beyond_own_fonts


@pytest.mark.parametrize("name", ["Ilse", "Zoë Müller", "Łucja", "Ελένη", "Ольга", "נועה", "½ – ’ € ×"])
def test_the_own_fonts_do_for_the_scripts_they_have(name: str) -> None:
    assert not beyond_own_fonts(name)


@pytest.mark.parametrize("name", ["美咲", "ليلى", "Ida 🧵", "अनु"])
def test_others_ask_the_machine(name: str) -> None:
    assert beyond_own_fonts(f"Sheet for {name}")


@pytest.mark.parametrize(("first", "last"), _OWN)
def test_the_own_fonts_hold_every_sign_they_are_said_to(first: int, last: int) -> None:
    signs = "".join(chr(c) for c in range(first, last + 1) if unicodedata.category(chr(c)) not in ("Cc", "Cn"))
    page = b'#set text(font: "Libertinus Serif")\n#sys.inputs.signs'
    own = typst.Fonts(include_system_fonts=False)
    # A file for archives may hold no sign without a picture: typst refuses to make one.
    assert typst.Compiler(page, font_paths=own, sys_inputs={"signs": signs}).compile(pdf_standards="a-2u")


def test_a_sign_that_no_own_font_holds_is_refused_by_that_check() -> None:
    page = b"#sys.inputs.signs"
    own = typst.Fonts(include_system_fonts=False)
    with pytest.raises(typst.TypstError, match="could not be displayed"):
        typst.Compiler(page, font_paths=own, sys_inputs={"signs": "美"}).compile(pdf_standards="a-2u")
