"""One question, one answer: what a cake is filled, coated, covered, set on, cut into and carried by, at several doors."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from tests.every import every

from tinbook.plans.true_size.cakes import ring_template
from tinbook.plans.true_size.dowelling import dowel_plan, dowel_template

CREAM, SPONGE = "american-buttercream", "creamed-butter-sponge"
PAGE, OWN = f"mixtures/{CREAM}", f"mixtures/{SPONGE}"
GLANCE, ROUND, FINISH = "A cake from each tin", "In and round a cake from each tin", "To finish a cake from each tin"
USUAL = "On the usual drum, the one we use"
CAKE, TIER = "round 20 cm", "round 15 cm"


def coats(d: Any, of: str = CREAM) -> Any:
    return d.row("coats", "--of", of, tin=CAKE)


def at_its_height(d: Any, table: str, of: str) -> Any:
    """The same cake, asked by its height instead of its mixture."""
    high_mm = d.row("layers", "--of", SPONGE, tin=f"{CAKE} x 7.5 cm")["stack_mm"]
    return d.row(table, *(("--of", of) if of else ()), "--height", f"{high_mm} mm", tin=CAKE)


def boards(d: Any, *of: str) -> Any:
    return d.row("boards", *of, tin=CAKE)


def tens(d: Any, key: str, *of: str) -> float:
    """A length of the boards' table in cm, to the half."""
    return float(d.up(0.5, boards(d, *of)[key] / 10.0))


def box(d: Any, *of: str) -> str:
    sizes = (boards(d, *of)[f"usual_box_{key}"] / 10.0 for key in ("width_mm", "length_mm", "height_mm"))
    return "×".join(f"{size:g}" for size in sizes)


def serves(d: Any, kind: int) -> float:
    """What the page of guests hands its script."""
    tins = d.data("guests", "tb-sets")["tins"]
    return float(next(tin[3 + kind] for tin in tins if tin[0].replace("\xa0", " ") == CAKE))


def glance(d: Any, head: str) -> float:
    return float(d.number("covering", GLANCE, CAKE, head))


def finish(d: Any, head: str) -> float:
    return float(d.number(OWN, FINISH, CAKE, head))


def plan(d: Any) -> Any:
    return dowel_plan(d.tin(CAKE), d.tin(TIER), d.loaded.book.finish, d.loaded.facts)


ASKED: dict[str, tuple[Callable[[Any], object], ...]] = {
    "how much buttercream for a usual round 20 cm": (
        lambda d: d.up(5.0, coats(d)["made_g"]),
        lambda d: d.number(PAGE, ROUND, CAKE, "In all"),
        lambda d: d.number(PAGE, "What goes into it for a cake from each tin", CAKE, "In all"),
        lambda d: d.figure(d.cell("covering", GLANCE, CAKE, "In all").split("|")[0]),
    ),
    "how many batches of it": (
        lambda d: coats(d)["batches"],
        lambda d: d.number(PAGE, ROUND, CAKE, "Batches"),
        lambda d: d.figure(d.cell("covering", GLANCE, CAKE, "In all").split("|")[1]),
    ),
    "how much buttercream for the sponge at its own height": (
        lambda d: d.up(5.0, coats(d, SPONGE)["made_g"]),
        lambda d: d.up(5.0, at_its_height(d, "coats", CREAM)["made_g"]),
        lambda d: finish(d, "Pilot's buttercream"),
    ),
    "how much of it is filling": (
        lambda d: d.scales(coats(d)["filling_g"]),
        lambda d: d.number(PAGE, ROUND, CAKE, "Filling"),
        lambda d: glance(d, "Filling"),
        lambda d: d.scales(coats(d, SPONGE)["filling_g"]),
    ),
    "how much of it is crumb coat": (
        lambda d: d.scales(coats(d)["crumb_coat_g"]),
        lambda d: d.number(PAGE, ROUND, CAKE, "Crumb coat"),
        lambda d: glance(d, "Crumb coat"),
    ),
    "how much of it is final coat and border": (
        lambda d: d.scales(coats(d)["final_coat_g"] + coats(d)["border_g"]),
        lambda d: glance(d, "Final coat"),
    ),
    "how much sugarpaste to roll": (
        lambda d: d.up(5.0, d.row("covers", "--of", "sugarpaste", tin=CAKE)["roll_out_g"]),
        lambda d: glance(d, "To roll"),
    ),
    "how much sugarpaste to roll for the sponge": (
        lambda d: d.up(5.0, d.row("covers", "--of", SPONGE, tin=CAKE)["roll_out_g"]),
        lambda d: finish(d, "Sugarpaste"),
        lambda d: d.up(5.0, at_its_height(d, "covers", "sugarpaste")["roll_out_g"]),
    ),
    "how much sugarpaste stays on the cake": (
        lambda d: d.scales(d.row("covers", "--of", "sugarpaste", tin=CAKE)["on_the_cake_g"]),
        lambda d: glance(d, "On the cake"),
    ),
    "how wide is it rolled": (
        lambda d: d.up(0.5, d.row("covers", "--of", "sugarpaste", tin=CAKE)["rolled_width_mm"] / 10.0),
        lambda d: glance(d, "Roll out to"),
        lambda d: d.number("mixtures/marzipan", "Over a cake from each tin", CAKE, "Roll out to"),
    ),
    "which drum": (
        lambda d: boards(d)["taken_width_mm"] / 10.0,
        lambda d: d.number("boards", USUAL, CAKE, "Drum"),
        lambda d: glance(d, "Drum"),
        lambda d: finish(d, "Drum"),
        lambda d: d.drawn(ring_template(d.tin(CAKE), d.loaded.book, d.loaded.facts), "cut")[1] / 10.0,
    ),
    "how wide is the guide ring": (
        lambda d: d.to(1.0, boards(d)["guide_mm"]),
        lambda d: d.number("boards", USUAL, CAKE, "Guide ring"),
    ),
    "how wide is the guide ring, to the tenth": (
        lambda d: boards(d)["guide_mm"],
        lambda d: round(d.drawn(ring_template(d.tin(CAKE), d.loaded.book, d.loaded.facts), "inner")[1], 1),
    ),
    "how much ribbon round the drum": (
        lambda d: tens(d, "usual_ribbon_mm"),
        lambda d: d.number("boards", USUAL, CAKE, "Ribbon|board"),
        lambda d: glance(d, "Ribbon|board"),
        lambda d: finish(d, "Ribbon|board"),
    ),
    "how much ribbon round the cake": (
        lambda d: tens(d, "cake_ribbon_mm"),
        lambda d: d.number("boards", USUAL, CAKE, "Ribbon|cake"),
        lambda d: glance(d, "Ribbon|cake"),
        lambda d: tens(d, "cake_ribbon_mm", "--of", SPONGE),
    ),
    "how much paste on the drum": (
        lambda d: d.scales(boards(d)["usual_whole_board_g"]),
        lambda d: d.number("boards", USUAL, CAKE, "Paste|all over"),
    ),
    "which box": (
        lambda d: box(d),
        lambda d: d.cell("boards", USUAL, CAKE, "Box").replace(" ", ""),
    ),
    "which box for the sponge": (
        lambda d: box(d, "--of", SPONGE),
        lambda d: d.cell(OWN, FINISH, CAKE, "Box").replace(" ", ""),
    ),
    "how many dessert portions": (
        lambda d: d.row("portions", tin=CAKE)["dessert_count"],
        lambda d: d.row("portions", "--of", SPONGE, tin=CAKE)["dessert_count"],
        lambda d: d.number("portions/index", "Portions from our tins", CAKE, "Dessert"),
        lambda d: finish(d, "Dessert"),
        lambda d: serves(d, 1),
        lambda d: d.figure(d.words("portions/round").split("Round 20 cm, 8 in ", 1)[1].split(" dessert portions")[0].rsplit(" ", 1)[1]),
    ),
    "how many tea slices": (
        lambda d: d.row("portions", tin=CAKE)["tea_slice_count"],
        lambda d: d.number("portions/index", "Portions from our tins", CAKE, "Tea slice"),
        lambda d: serves(d, 2),
    ),
    "what does a dessert portion of the sponge weigh": (
        lambda d: d.to(1.0, d.row("portions", "--of", SPONGE, tin=CAKE)["dessert_g"]),
        lambda d: d.figure(d.cell(OWN, FINISH, CAKE, "Dessert").split("(")[1]),
    ),
    "what serves forty": (
        lambda d: d.row("guests", "--guests", "40", tiers=d.rows("guests", "--guests", "40")[0]["tiers"])["serves"],
        lambda d: d.figure(d.cell("guests", "Dessert portions", "40", "Stacked").split("serves")[1]),
    ),
    "how many dowels under a 15 cm tier on a 20 cm cake": (
        lambda d: d.row("dowels", "--tin", CAKE, "--above", TIER)["dowels"],
        lambda d: d.row("dowels", cake=CAKE, above=TIER)["dowels"],
        lambda d: d.drawn(dowel_template(plan(d)), "hidden")[0],
        lambda d: d.figure(re.split(r"## Have ready.*? cups", d.words("techniques/stack-two-tiers"))[1]),
        lambda d: d.loaded.book.finish.dowels,
    ),
    "how far in from the edge do they stand": (
        lambda d: d.to(1.0, d.row("dowels", "--tin", CAKE, "--above", TIER)["from_the_edge_mm"]),
        lambda d: d.figure(d.words("techniques/stack-two-tiers").split("dowels on the 74 mm ring C,", 1)[1]),
        lambda d: d.to(1.0, (150.0 - d.figure(d.words("techniques/stack-two-tiers").split("five dowels on the", 1)[1])) / 2.0),
    ),
}  # fmt: skip
"""Questions of cakes, with the ways of asking each."""


@every("question", ASKED)
def test_one_answer(question: str, agree: Callable[[Any], None]) -> None:
    agree(ASKED[question])
