"""Python looks for garbage in circles before a build and after it, and as little during it as it was told to."""

import gc

import pytest

from tinbook.plugin.attention import Attention


@pytest.mark.parametrize("collects", [True, False])
def test_what_was_set_before_is_set_after(collects: bool) -> None:
    before = gc.isenabled()
    try:
        (gc.enable if collects else gc.disable)()
        attention = Attention()
        attention.hold()
        assert not gc.isenabled()
        attention.let_go()
        assert gc.isenabled() == collects
    finally:
        (gc.enable if before else gc.disable)()
