"""One thing that Find can answer with."""

from tinbook.pages.finding.find import FIELDS, Find


def test_each_field_is_looked_through() -> None:
    found = Find(
        kind="mixture", title="Sponge", address="mixtures/sponge", names=("cake",), tags=("light",), text=("butter",)
    )
    assert [found.field(name) for name in FIELDS] == [("Sponge",), ("cake",), ("light",), ("butter",)]
