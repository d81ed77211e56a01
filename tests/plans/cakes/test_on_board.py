"""What stands on the board beside a cake: lengths by hand."""

from __future__ import annotations

from typing import Any

import pytest
from tests.every import every
from tests.plans.cakes.conftest import Design, Made

from tinbook.loading import Loaded
from tinbook.plans.base.asking import AskError
from tinbook.plans.cakes.asked import tiers_asked
from tinbook.plans.cakes.on_board import NoRoom, no_room, stands_there
from tinbook.plans.cakes.sizes import cake_sizes
from tinbook.plans.cakes.stacking import board_under
from tinbook.plans.cakes.tiers import cake_asked_for
from tinbook.plans.cakes.whole import written_tins

LIGHT = "lighthouse-for-the-front"
"""Its rock is 84 x 70 mm for a cake of 20 cm."""


def cake(board: Any, tiers: Any = "20 cm", **more: Any) -> dict[str, Any]:
    said = {"technique": LIGHT, "on": "board", **{key.replace("_", " "): value for key, value in more.items()}}
    # 2 + 4 mm of coats and no paste: 212 mm
    return {"tiers": tiers, "mixture": "madeira-cake", "cover": "none", "board": board, "decorations": [said]}


def room(demo: Loaded, design: Design, data: dict[str, Any]) -> NoRoom | None:
    made = design(data)
    tins = written_tins(made)
    foot = tiers_asked(made, tins, demo.book, demo.facts)[0]
    solid = cake_asked_for(foot)
    assert solid
    return no_room(
        made, tins, board_under(made, foot, solid, tins, demo.book, demo.facts), foot.settled, demo.book, demo.facts
    )


@every(
    ("board", "fits"),
    # at least 25 mm of board behind: 300 - 212 - 25 = 63 mm in front, 330 - 212 - 25 = 93 mm
    [("30 cm", False), ("33 cm", True), ("40 cm", True)],
)
def test_the_rock_of_the_lighthouse_takes_70_mm(demo: Loaded, design: Design, board: str, fits: bool) -> None:
    found = room(demo, design, cake(board))
    assert (found is None) is fits
    if found:
        assert found.message == "the rock is 84 x 70 mm, and the 30 cm board leaves 63 mm in front of the cake"
        assert found.hint == 'use a 33 cm board, or "sized for: round 18 cm"' and found.nth == 0


def test_what_is_told_instead_has_room(demo: Loaded, design: Design) -> None:
    assert room(demo, design, cake("30 cm", sized_for="round 18 cm")) is None
    many = room(demo, design, cake("33 cm", count="9"))
    assert many and many.message.startswith("only ") and many.hint.startswith('use "count: ')
    have = many.hint.partition("count: ")[2].partition('"')[0]
    assert many.message == f"only {have} of 9 lighthouse for the front fit on the 33 cm board beside the cake"
    assert room(demo, design, cake("33 cm", count=have)) is None
    assert room(demo, design, cake("33 cm", count=str(int(have) + 1))) is not None
    # so far apart that fewer do
    wide = room(demo, design, cake("33 cm", count=have, gap="10 cm"))
    assert wide and int(wide.hint.partition("count: ")[2].partition('"')[0]) < int(have)


def test_two_decorations_share_the_board(demo: Loaded, design: Design) -> None:
    data = cake("33 cm")
    coil = {"technique": "coil-of-rope", "on": "board"}
    assert room(demo, design, {**data, "decorations": [*data["decorations"], coil]}) is None
    full = room(
        demo, design, {**data, "decorations": [{**data["decorations"][0], "count": "5"}, {**coil, "count": "9"}]}
    )
    assert full is not None


def test_what_goes_elsewhere_takes_no_board(demo: Loaded, design: Design) -> None:
    for place in ("top", "side"):
        assert room(demo, design, cake("23 cm", on=place)) is None
    assert room(demo, design, {**cake("23 cm"), "decorations": []}) is None


def test_every_board_is_too_small_for_something(demo: Loaded, design: Design) -> None:
    """A cake of 30 cm on the widest board sold, 46 cm: no larger one is told, only smaller figures."""
    found = room(demo, design, cake("46 cm", "30 cm", count="12"))
    assert found and "board" not in found.hint and "count" in found.hint


def test_a_cake_is_not_worked_out_without_room(made: Made, demo: Loaded, design: Design) -> None:
    with pytest.raises(AskError, match="the 30 cm board leaves 63 mm") as told:
        made(cake("30 cm"))
    assert told.value.hint
    data = design(cake("35 cm"))
    foot = tiers_asked(data, written_tins(data), demo.book, demo.facts)[0]
    solid = cake_asked_for(foot)
    assert solid
    board = board_under(data, foot, solid, written_tins(data), demo.book, demo.facts)
    stands_there(data, written_tins(data), board, foot.settled, demo.book, demo.facts)


def test_a_board_that_is_not_written_is_as_large_as_what_stands_on_it_needs(made: Made) -> None:
    """The usual one for a figure is 10 cm wider; a rock of 105 x 88 mm needs 254 + 25 + 88 mm."""
    data = cake("35 cm", "25 cm")
    del data["board"]
    drums = []
    for decorations in (
        [],
        data["decorations"],
        [{"technique": "coil-of-rope", "on": "board", "sized for": "round 10 cm"}],
    ):
        drum = made({**data, "decorations": decorations}).stacked.drum
        assert drum and drum.board.size_mm
        drums.append(drum.board.size_mm[0])
    assert drums == [330.0, 380.0, 350.0]
    with pytest.raises(AskError, match="leaves"):
        made({**data, "board": {"wider": "wide"}})


def test_a_size_without_room_says_so(demo: Loaded, design: Design) -> None:
    """A board as much wider at every size, a figure that grows with its tier: from some size on it has no room."""
    found = cake_sizes(design(cake("33 cm")), demo.book, demo.facts)
    why = {size.key: " ".join(map(str, size.why)) for size in found.others}
    assert found.written.offered and "-1" not in why
    assert "the rock is 126 x 105 mm" in why["+4"] and "leaves" in why["+4"]


def test_the_demos_cakes_have_room_in_every_size_offered(demo: Loaded) -> None:
    for cake_ in demo.book.cakes.values():
        found = cake_sizes(cake_, demo.book, demo.facts)
        named = [size for size in found.sizes if size.steps is None or size.steps == 0]
        assert [size.why for size in named] == [()] * len(named)
