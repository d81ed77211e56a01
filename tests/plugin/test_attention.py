"""Python looks for garbage in circles before a build and after it, and as little during it as it was told to."""

import gc
import weakref

import pytest

from tinbook.plugin.attention import FEW, Attention


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


class Circle:
    """Something that only the collector can free."""

    def __init__(self) -> None:
        self.self = self


def test_what_a_change_leaves_is_collected() -> None:
    gc.collect()
    with Attention().held():
        assert not gc.isenabled()
        kept = weakref.ref(Circle())
        assert kept() is not None
    assert kept() is None and gc.isenabled()


def test_memory_is_tidied_while_pages_are_made() -> None:
    attention = Attention()
    attention.hold()
    try:
        kept = weakref.ref(Circle())
        for _ in range(FEW):
            attention.tidy()
        assert kept() is None
    finally:
        attention.let_go()


def test_what_is_set_aside_is_not_looked_at() -> None:
    attention = Attention()
    attention.hold()
    try:
        before = weakref.ref(Circle())
        attention.set_aside()
        after = weakref.ref(Circle())
        for _ in range(FEW):
            attention.tidy()
        assert before() is not None and after() is None
    finally:
        attention.let_go()
    gc.collect()
    assert before() is None


def test_a_served_site_is_set_aside_until_the_next_one_stands() -> None:
    attention = Attention()
    attention._serving = True
    frozen = gc.get_freeze_count()
    try:
        for _ in range(2):
            attention.hold()
            old = weakref.ref(Circle())
            attention.let_go()
            assert gc.get_freeze_count() > frozen and gc.isenabled()
        attention.hold()
        attention.let_go()
        assert old() is None, "what was left of an earlier site is collected"
    finally:
        gc.unfreeze()
