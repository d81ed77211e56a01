"""One way to write a value: where it stands on its page, and what reads it."""

from __future__ import annotations

from tinbook.models.a_form import WrittenForm
from tinbook.models.keys import readers_in
from tinbook.models.orders import Moment
from tinbook.models.reading import YesNo


def form(place: str = "") -> WrittenForm:
    return WrittenForm(name="a tide table", says="High water.", examples={}, types=(Moment, YesNo), place=place)


def test_its_address_is_its_name_unless_it_had_an_older_one() -> None:
    assert form().anchor == "a-tide-table"
    assert form("tides").anchor == "tides"


def test_it_is_read_by_what_reads_each_of_its_types() -> None:
    assert form().readers == {id(reader) for each in (Moment, YesNo) for reader in readers_in(each)}
    assert len(form().readers) >= 2
