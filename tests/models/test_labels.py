"""What the house says of its labels: a sheet by its measures."""

from __future__ import annotations

from tinbook.models import read_model
from tinbook.models.labels import NATIONS, SALES, TO_ORDER, Labelling, LabelSheet
from tinbook.units import METRIC

SHEET = {"columns": "2", "rows": "4", "wide": "99 mm", "high": "68 mm", "left": "5 mm", "top": "13 mm"}


def test_labels_touch_unless_it_is_said_how_far_apart_they_are() -> None:
    sheet, _ = read_model(LabelSheet, SHEET, "a sheet", METRIC)
    assert sheet is not None and (sheet.across_mm, sheet.down_mm, sheet.count) == (99.0, 68.0, 8)
    apart, _ = read_model(LabelSheet, {**SHEET, "across": "101 mm", "letter paper": "yes"}, "a sheet", METRIC)
    assert apart is not None and apart.across_mm == 101.0 and apart.paper_mm == (215.9, 279.4)


def test_nothing_is_taken_for_granted() -> None:
    said = Labelling()
    assert said.sold_in is None and said.sold == TO_ORDER and said.maker is None and not said.sheets


def test_every_nation_and_sale_can_be_written() -> None:
    for nation in NATIONS:
        for sale in SALES:
            said, flaws = read_model(Labelling, {"sold in": nation, "sold": sale}, "labels.yaml", METRIC)
            assert said is not None and not flaws
    _, flaws = read_model(Labelling, {"sold in": "Englnd"}, "labels.yaml", METRIC)
    assert flaws[0].hint == 'did you mean "England"?'
