"""The strip of tins: the house's own and the written ones, told apart in as few letters as may be."""

from dataclasses import replace

from tinbook.models import OwnedTin
from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.chips import ChipGroup
from tinbook.pages.mixture.view import MixtureView
from tinbook.tins import read_tin

N = "\u00a0"


def groups(desk: Desk, slug: str) -> tuple[ChipGroup, ...]:
    return MixtureView(desk.batches[slug], desk).chips


def test_the_house_first_by_shape_and_the_written_one_chosen(desk: Desk) -> None:
    made = groups(desk, "creamed-butter-sponge")
    assert [group.title for group in made] == ["Round", "Square", "Other"]
    rows = MixtureView(desk.batches["creamed-butter-sponge"], desk).table.rows
    chips = [chip for group in made for chip in group.chips]
    assert {chip.name for chip in chips} == {row.tin.name for row in rows if row.owned}
    assert [chip.name for chip in chips if chip.chosen] == ["round 15 cm"]
    assert not any(chip.lent for chip in chips)


def test_labels_are_short_and_no_two_of_a_group_alike(desk: Desk) -> None:
    made = {group.title: [chip.label for chip in group.chips] for group in groups(desk, "creamed-butter-sponge")}
    assert made["Round"] == ["15", "18", "20", "23", "25"] and made["Square"] == ["15", "20", "25"]
    assert made["Other"] == ["23×33", f"2{N}lb", "ring", "heart", "dome", f"number{N}1", "cups"]
    assert all(len(set(labels)) == len(labels) for labels in made.values())


def test_two_hearts_are_told_apart_by_their_size(desk: Desk) -> None:
    heart = OwnedTin.model_validate({"tin": "heart 25 cm x 7.5 cm"})
    two = Desk(replace(desk.book, tins=(*desk.book.tins, heart)), desk.facts, {})
    labels = [chip.label for chip in groups(two, "creamed-butter-sponge")[-1].chips]
    assert f"heart{N}20" in labels and f"heart{N}25" in labels


def test_a_written_tin_that_is_not_owned_stands_there_dashed(desk: Desk) -> None:
    count, tin = read_tin("round 30 cm x 7.5 cm")
    batch = desk.batches["creamed-butter-sponge"]
    made = MixtureView(replace(batch, tins=((count, tin),)), desk).chips
    (chip,) = [chip for group in made for chip in group.chips if chip.lent]
    assert chip.name == "round 30 cm" and chip.chosen and chip.words.endswith("to borrow")


def test_what_is_made_by_weight_has_none(desk: Desk) -> None:
    assert groups(desk, "dark-ganache") == ()
