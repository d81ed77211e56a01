"""What is no food in a technique, and what it may be made with, in words."""

from __future__ import annotations

from tinbook.pages.technique.watched import held, inedible_lines
from tinbook.plans.base.versions import Amount
from tinbook.plans.techniques.kit import Inedible, Kit, ToolRow
from tinbook.plans.techniques.technique import MadeWith

N = "\u00a0"


def sticks(count: float, shared: bool = False, name: str = "stick") -> Inedible:
    return Inedible(name=name, wanted="", amount=Amount(count, count, ""), hidden=True, shared=shared)


def test_things_of_one_name_together_and_what_each_person_has() -> None:
    """For three: twelve sticks of their own and two to share."""
    tools = (ToolRow("cake drum", 3, False, True),)
    kit = Kit(3, tools, (), (sticks(12), sticks(2, shared=True), sticks(3, name="dowels")))
    (stick, dowel) = inedible_lines(kit, hidden=True)
    assert (stick.said, stick.each, stick.shared) == ("14 sticks", "4", "2")
    assert (dowel.said, dowel.each, dowel.shared) == (" and 3 dowels", "1", "0")
    (drum,) = inedible_lines(kit, hidden=False)
    assert (drum.said, drum.each) == ("3 cake drums", "1")


def test_what_it_may_be_made_with() -> None:
    assert tuple(held(MadeWith("x", ("egg", "milk"), False))) == ("egg", "milk")
    assert tuple(held(MadeWith("x", ("egg",), True))) == ("egg", "some allergens not known")
    assert tuple(held(MadeWith("x", (), True))) == ("some allergens not known",)
    assert tuple(held(MadeWith("x", (), False))) == ("none of the fourteen listed",)
