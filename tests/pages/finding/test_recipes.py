"""Mixtures and techniques as Find answers with them."""

from collections.abc import Mapping

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.finding.find import Find
from tinbook.pages.finding.recipes import mixtures_found, techniques_found


@pytest.fixture(scope="module")
def mixtures(desk: Desk) -> Mapping[str, Find]:
    return {each.address: each for each in mixtures_found(desk) if each.kind == "mixture"}


def test_every_mixture_is_there_with_its_other_names_and_what_it_makes(
    desk: Desk, mixtures: Mapping[str, Find]
) -> None:
    assert set(mixtures) == {f"mixtures/{slug}" for slug in desk.book.mixtures}
    madeira, curd = mixtures["mixtures/madeira-cake"], mixtures["mixtures/lemon-curd"]
    assert "Madeira cake" in madeira.names and "keeps well" in madeira.tags and "butter" in madeira.text
    assert (madeira.figure, madeira.under) == ("5\u00a0eggs", "1 × round 20\u00a0cm")
    assert (madeira.tin, madeira.at_bench) == ("round 20 cm", True)
    assert (curd.under, curd.tin, curd.at_bench) == ("makes", "", False)


def test_a_note_leads_to_its_mixture(desk: Desk) -> None:
    notes = [each for each in mixtures_found(desk) if each.kind == "note"]
    assert len(notes) == sum(len(mixture.notes) for mixture in desk.book.mixtures.values())
    sunken = next(each for each in notes if "sunken middle" in each.title)
    assert (sunken.address, sunken.second) == ("mixtures/creamed-butter-sponge", "Creamed butter sponge")


def test_a_technique_by_what_it_is_for_its_steps_and_its_faults(desk: Desk) -> None:
    board = [each for each in techniques_found(desk) if each.address == "techniques/cover-a-board"]
    technique = desk.book.techniques["cover-a-board"]
    assert board[0].second == technique.purpose and technique.purpose in board[0].tags
    steps = [each for each in board if each.kind == "step"]
    assert [each.anchor for each in steps] == [f"step-{nth}" for nth in range(1, len(technique.steps) + 1)]
    assert steps[0].second.endswith("Brush it thinly with water, right to the edge. Puddles make the paste slide.")
    faults = [each for each in board if each.kind == "fault"]
    assert [each.title for each in faults] == [fault.fault for fault in technique.faults]
    assert technique.faults[0].cure in faults[0].second and faults[0].anchor == "fault-1"


def test_no_mark_of_a_step_is_left(desk: Desk) -> None:
    shown = [word for each in (*mixtures_found(desk), *techniques_found(desk)) for word in (each.second, *each.text)]
    assert shown and not [text for text in shown if "<" in text or ">" in text]
