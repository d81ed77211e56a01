"""A number is never parted from its unit, and nothing else of a page changes."""

from __future__ import annotations

from tests.every import every

from tinbook.plugin.together import NBSP, together


@every(
    ("before", "after"),
    [
        ("<p>Bake at 170 °C for 40 min.</p>", "<p>Bake at 170_°C for 40_min.</p>"),
        ("<p>½ tsp, 2 lb, 12.5 cm and\n3 hours</p>", "<p>½_tsp, 2_lb, 12.5_cm and\n3_hours</p>"),
        ("<p><b>5</b> eggs, 3 gulls, 2 l-shaped</p>", "<p><b>5</b> eggs, 3 gulls, 2 l-shaped</p>"),
        ('<a title="20 cm" data-tin="round 20 cm">20 cm</a>', '<a title="20 cm" data-tin="round 20 cm">20_cm</a>'),
        ('<script>["20 cm"]</script>20 cm<code>20 cm</code>', '<script>["20 cm"]</script>20_cm<code>20 cm</code>'),
        ("<option>20 cm</option><title>20 cm</title>", "<option>20 cm</option><title>20 cm</title>"),
        ("<p><b>8</b> g of <i>3 mm</i> rope, <b>2</b> eggs</p>", "<p><b>8</b>_g of <i>3_mm</i> rope, <b>2</b> eggs</p>"),
        ("<pre>\n20 cm</pre> 7 days", "<pre>\n20 cm</pre> 7_days"),
    ],
)  # fmt: skip
def test_the_space_before_a_unit_does_not_break(before: str, after: str) -> None:
    assert together(before) == after.replace("_", NBSP)
