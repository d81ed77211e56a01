"""A group of keys as a table."""

from __future__ import annotations

from tinbook.loading import Loaded
from tinbook.models import Bake, Finish, House, Mixture, Step, Variation
from tinbook.pages.reference.groups import coded, key_group, slug


def test_a_row_says_all_of_its_key(demo: Loaded) -> None:
    rows = {row.name: row for row in key_group(Bake, demo.facts).rows}
    assert list(rows) == ["oven", "time", "done"]
    oven, done = rows["oven"], rows["done"]
    assert (oven.anchor, oven.left_out, oven.form and oven.form.name) == (
        "the-bake-oven",
        "<b>Always needed.</b>",
        "an oven temperature",
    )
    assert oven.examples[0] == "oven: 170 °C"
    assert (done.left_out, done.form, done.group) == ("The page gives only the time.", None, "")


def test_a_default_is_as_it_would_be_written(demo: Loaded) -> None:
    rows = {row.name: row for row in key_group(House, demo.facts).rows}
    assert rows["usual depth"].left_out == "<code>75 mm</code>"
    assert rows["measures"].left_out == "<code>grams</code>"
    assert (rows["oven"].group, rows["oven"].group_name, rows["oven"].left_out) == (
        "the-oven",
        "the oven",
        "See its own keys.",
    )


def test_the_trades_figure_stands_behind_the_words(demo: Loaded) -> None:
    rows = {row.name: row for row in key_group(Finish, demo.facts).rows}
    assert rows["filling"].left_out == "The trade&#39;s usual figure, 5\N{NO-BREAK SPACE}mm."


def test_a_group_on_another_page_is_led_to_there(demo: Loaded) -> None:
    rows = {row.name: row for row in key_group(Mixture, demo.facts, away={Finish: "reference/house"}).rows}
    assert (rows["finish"].group_page, rows["bake"].group_page) == ("reference/house", "")


def test_of_a_variation_only_its_own_keys_and_the_needed_one_first(demo: Loaded) -> None:
    group = key_group(Variation, demo.facts, own=True, more="And `more`.")
    assert [row.name for row in group.rows] == ["from", "kind", "mix", "method", "change"]
    assert group.lead.endswith("And <code>more</code>.")


def test_what_is_typed_is_marked_and_nothing_else_is_markup() -> None:
    assert coded("Put `<tins>` in & go") == "Put <code>&lt;tins&gt;</code> in &amp; go"


def test_anchors() -> None:
    assert slug("A line of the mix") == "a-line-of-the-mix"
    assert key_group(Step, None, own=True).anchor == "a-step"  # type: ignore[arg-type]
