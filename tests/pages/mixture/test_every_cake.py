"""What becomes of each mixture on a cake."""

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.every_cake import FinishView


def test_what_each_mixture_has(desk: Desk) -> None:
    def of(slug: str) -> tuple[bool, bool, bool]:
        made = FinishView(desk.batches[slug], desk, lambda: pytest.fail("no table is needed to know"))
        return made.is_cut, made.fills, made.covers

    assert of("madeira-cake") == (True, False, False)
    assert of("royal-icing") == of("lemon-curd") == (False, True, False)
    assert of("marzipan") == (False, False, True)
    assert of("modelling-paste") == of("sugar-syrup") == of("cupcakes") == (False, False, False)
