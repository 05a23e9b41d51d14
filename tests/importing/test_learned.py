from __future__ import annotations

from functools import partial

from sizekeeper.core.learned import Learned
from sizekeeper.importing.draft import Corrections
from sizekeeper.importing.learned import corrected, forgotten, name_key, remembered, taught
from sizekeeper.importing.setting import with_measure
from tests.importing.charts import BODY, MISSPELT, after, opened

BUSST = ("Sheet1", "A2")


def test_a_label_is_one_name_whatever_its_unit_and_capitals() -> None:
    assert name_key("Busst (cm)") == name_key("BUSST") == name_key("busst, in inches".replace(", in inches", " (in)"))


def test_a_name_taught_again_means_what_was_said_last() -> None:
    assert taught(taught(Learned(), "Busst", "waist"), "busst (cm)", "bust").names == {"busst": "bust"}


def test_a_label_without_a_letter_is_nothing_to_learn() -> None:
    assert taught(Learned(), "–", "bust") == Learned()


def test_a_forgotten_name_leaves_the_others() -> None:
    known = taught(taught(Learned(), "Busst", "bust"), "Wiast", "waist")
    assert forgotten(known, "BUSST").names == {"wiast": "waist"}


def test_forgetting_a_name_that_was_never_learned_changes_nothing() -> None:
    assert forgotten(taught(Learned(), "Busst", "bust"), "Hip") == taught(Learned(), "Busst", "bust")


def test_a_learned_name_is_found_at_its_label_in_the_next_chart() -> None:
    assert remembered(Learned(names={"busst": "hip"}), opened(MISSPELT).draft, Corrections()) == {BUSST: "hip"}


def test_a_correction_in_this_chart_goes_before_what_was_learned() -> None:
    here = Corrections(measures={BUSST: "waist"})
    assert remembered(Learned(names={"busst": "hip"}), opened(MISSPELT).draft, here) == {}


def test_what_can_be_learned_is_every_corrected_label_with_its_measure() -> None:
    reading = after(opened(MISSPELT), partial(with_measure, row=BUSST, measure="hip"))
    assert list(corrected(reading.draft, reading.answers.corrections)) == [(BUSST, "Busst", "hip")]


def test_nothing_can_be_learned_of_a_chart_that_was_not_corrected() -> None:
    assert list(corrected(opened(BODY).draft, Corrections())) == []
