"""A stack seen from the front: its own width, on a drum that is wide enough."""

from tinbook.loading import Loaded
from tinbook.plans.base.finishing import finishing
from tinbook.plans.base.weighing import weigh
from tinbook.plans.finish.boards import board_row
from tinbook.plans.finish.cake import Cake
from tinbook.plans.finish.elevations import elevations


def test_as_wide_as_its_tin_on_the_houses_drum(demo: Loaded) -> None:
    mixture = demo.book.mixtures["creamed-butter-sponge"]
    batch = weigh("creamed-butter-sponge", mixture, demo.book, demo.facts)
    (drawn,) = elevations(batch, finishing(demo.book.finish, demo.facts, mixture.finish), demo.book, demo.facts)
    assert (round(drawn.across_mm), drawn.tube_mm, drawn.board_mm) == (150, 0.0, 230.0)
    assert drawn.stack.tins == 2 and drawn.drum_mm == 12.0


def test_on_the_drum_that_the_boards_say(demo: Loaded) -> None:
    """Paste and thick coats count: drawn, asked for and printed to be pricked, the drum is one and the same."""
    mixture = demo.book.mixtures["creamed-butter-sponge"]
    batch = weigh("creamed-butter-sponge", mixture, demo.book, demo.facts)
    finish = demo.book.finish.model_copy(update={"final_coat": 34.0, "paste": 9.0})
    settled = finishing(finish, demo.facts)
    (drawn,) = elevations(batch, settled, demo.book, demo.facts)
    cake = Cake(drawn.stack.tin, drawn.stack.stack_mm, drawn.stack.layers)
    row = board_row(cake, True, settled, demo.facts, paste_g_per_ml=1.4, steps=batch.steps)
    # 150 mm and 2 × (2 + 34 + 9) mm
    assert drawn.board_mm == 250.0 and row.chosen.board.size_mm == (250.0, 250.0)
