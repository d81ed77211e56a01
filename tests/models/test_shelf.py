"""The tins of the house, read from plain data."""

from __future__ import annotations

from tinbook.models import OwnedTin, ShelfLine, TinShelf, read_model
from tinbook.tins import Tin


def test_a_measured_tin_holds_its_measure() -> None:
    own, _ = read_model(OwnedTin, {"tin": "round 9 in x 3 in", "have": "2", "measured": "2.85 l"}, "a tin")
    assert own is not None
    assert own.measured_tin == Tin(shape="round", sizes_mm=(230.0,), depth_mm=75.0, measured_ml=2850.0)
    assert own.tin.measured_ml is None
    plain, _ = read_model(OwnedTin, {"tin": "round 9 in x 3 in"}, "a tin")
    assert plain is not None and plain.measured_tin == plain.tin and plain.have == 1


def test_a_tin_is_owned_by_have_and_not_by_its_number() -> None:
    _, (flaw,) = read_model(OwnedTin, {"tin": "2 round 15 cm"}, "a tin")
    assert flaw.path == ("tin",) and "have: 2" in flaw.hint
    _, (flaw,) = read_model(TinShelf, {"tins": [{"tin": "round 15 cm"}, {"tin": "round 15 cmm"}]}, "the tins")
    assert flaw.path == ("tins", 1, "tin")


def test_a_set_is_its_tins_one_by_one() -> None:
    line, flaws = read_model(ShelfLine, {"tin": "set of round 15, 20 cm x 7.5 cm", "note": "Nested."}, "a tin")
    assert line is not None, flaws
    assert [own.tin.sizes_mm for own in line.owned] == [(150.0,), (200.0,)]
    assert {own.of_set for own in line.owned} == {"set of round 15 cm, 20 cm"}
    assert {own.note for own in line.owned} == {"Nested."}
