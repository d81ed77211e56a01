"""What the second mixture of a note is and what it may be on a cake, by what its kind plays."""

from __future__ import annotations

import pytest

from tinbook.loading import Loaded
from tinbook.notes.lines import Read
from tinbook.notes.reading import NotePart
from tinbook.notes.roles import kind_called, kind_of, role_of, weight_of


@pytest.mark.parametrize(
    ("name", "kind", "role"),
    [
        ("buttercream filling", "buttercream", "filling"),
        ("chocolate ganache topping", "ganache", "final coat"),
        ("royal icing", "royal icing", "final coat"),
        ("lemon curd", "curd", "filling"),
        ("syrup", "syrup", ""),
    ],
)
def test_by_its_own_name(demo: Loaded, name: str, kind: str, role: str) -> None:
    part = NotePart(name=name)
    guess = kind_of(part, demo.book, demo.facts)
    assert (guess.kind, guess.doubt) == (kind, "")
    assert role_of(part, kind, demo.facts) == (role, "")
    assert not role or role in demo.facts.kinds[kind].plays


def test_by_what_goes_in_is_a_guess(demo: Loaded) -> None:
    part = NotePart(name="icing", mix=[Read("x", "200 g butter"), Read("x", "400 g icing sugar, sifted")])
    guess = kind_of(part, demo.book, demo.facts)
    assert guess.kind == "buttercream" and guess.doubt
    assert kind_of(NotePart(name="topping"), demo.book, demo.facts).kind == ""


def test_a_role_that_may_be_two_is_not_certain(demo: Loaded) -> None:
    assert role_of(NotePart(name="buttercream"), "buttercream", demo.facts)[1]


def test_the_weight_of_what_goes_in(demo: Loaded) -> None:
    part = NotePart(name="icing", mix=[Read("x", "200 g butter"), Read("x", "400 g icing sugar, sifted")])
    assert weight_of(part, demo.book, demo.facts) == 600
    part.mix.append(Read("a knob of lard", doubt="how much is it?"))
    assert weight_of(part, demo.book, demo.facts) == 0


def test_what_a_title_ends_in_is_its_kind(demo: Loaded) -> None:
    for title, kind in (("Swiss meringue buttercream", "meringue buttercream"), ("Lemon curd", "curd"),
                        ("A cake with marzipan on it", ""), ("Swiss roll", "")):  # fmt: skip
        assert kind_called(title, demo.facts) == kind, title
