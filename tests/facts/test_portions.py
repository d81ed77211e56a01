"""The published chart of portions, and the sizes taken from it."""

from tinbook.facts import Facts


def test_the_chart_is_whole(facts: Facts, table) -> None:
    """The serving charts, named in the head of the table."""
    rows = table("portions_us_chart")
    assert len(facts.portions) == len(rows)
    for row, served in zip(rows, facts.portions.values(), strict=True):
        assert served.shape in (row["shape"], "rectangle")
        assert (served.dessert, served.broad) == (int(row["wedding_1x2"]), int(row["party_1.5x2"]))
        assert sorted(served.inches) == sorted(float(size) for size in row["size_in"].split("x"))


def test_portions_are_the_trades_millimetres(facts: Facts) -> None:
    """An inch of the trade is 25 mm, an inch and a half 38."""
    sides = {kind: tuple(facts.numbers[f"{kind} portion {side}"].value for side in ("width", "length"))
             for kind in ("finger", "dessert")}  # fmt: skip
    assert sides == {"finger": (25, 25), "dessert": (25, 50)}
