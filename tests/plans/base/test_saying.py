"""A saying is a value: equal by what it says, fit for a key, and copied whole with its row."""

from dataclasses import asdict, dataclass

from tinbook.plans.base.saying import Saying, saying


def test_a_saying_is_a_value() -> None:
    one = saying("stays_in_bowl", share=0.05)
    assert one == Saying("stays_in_bowl", (("share", 0.05),))
    assert {one: 1}[saying("stays_in_bowl", share=0.05)] == 1
    assert one != saying("stays_in_bowl", share=0.06)


def test_a_saying_stays_whole_in_a_row() -> None:
    @dataclass
    class Line:
        say: Saying

    made = asdict(Line(saying("fill", tins=3)))
    assert isinstance(made["say"], Saying) and made["say"].key == "fill"
