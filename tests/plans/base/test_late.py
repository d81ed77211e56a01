"""A module that waits until it is called."""

import sys

import pytest

from tinbook.plans.base.late import LateRoom
from tinbook.plans.tables import TABLES


def test_a_function_is_called_in_its_module(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delitem(sys.modules, "colorsys", raising=False)
    grey = LateRoom("colorsys").rgb_to_hls
    assert "colorsys" not in sys.modules
    assert grey(0.5, 0.5, 0.5) == (0.0, 0.5, 0.0)
    assert "colorsys" in sys.modules
    assert (grey.__module__, grey.__name__) == ("colorsys", "rgb_to_hls")


def test_a_name_that_is_not_there_is_told_when_it_is_called() -> None:
    with pytest.raises(AttributeError, match="rgb_to_hsl"):
        LateRoom("colorsys").rgb_to_hsl(0.5, 0.5, 0.5)


def test_every_table_of_the_register_is_there() -> None:
    for table in TABLES.values():
        module = __import__(table.sums.__module__, fromlist=["tables"])
        assert callable(getattr(module, table.sums.__name__))
