"""A stack seen from the front: its own width, on a drum that is wide enough."""

from tinbook.loading import Loaded
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import weigh
from tinbook.plans.finish.elevations import elevations


def test_as_wide_as_its_tin_on_the_houses_drum(demo: Loaded) -> None:
    mixture = demo.book.mixtures["creamed-butter-sponge"]
    batch = weigh("creamed-butter-sponge", mixture, demo.book, demo.facts)
    (drawn,) = elevations(batch, finishing(demo.book.finish, demo.facts, mixture.finish), demo.book, demo.facts)
    assert (round(drawn.across_mm), drawn.tube_mm, drawn.board_mm) == (150, 0.0, 230.0)
    assert drawn.stack.tins == 2 and drawn.drum_mm == 12.0
