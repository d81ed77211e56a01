"""What plans/baking says: the oven: times, loads, ways to bake."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from tinbook.pages.spelling import formats


def _on_the_dial(degrees: float, unit: str, fan: bool) -> str:
    """`135 °C fan`."""
    return f"{degrees:g} {unit}{' fan' if fan else ''}"


def _oven_off_its_dial(off_c: float) -> str:
    return f"the oven is {abs(off_c):g} °C {'hotter' if off_c > 0 else 'cooler'} than its dial says"


def _nothing_baked(kin: int, kind: str) -> str:
    return "this recipe has not been baked yet" + (f"; based on {_of_other_recipes(kin, kind)}" if kin else "")


def _of_other_recipes(bakes: int, kind: str) -> str:
    of = "1 bake of another recipe" if bakes == 1 else f"{bakes} bakes of other recipes"
    return f"{of} of its kind ({kind.lower()})"


def _so_far_from(wide: float, deep: float, baked: str) -> str:
    """`2 times as wide and 1.5 times as deep as the nearest bake, round 20 cm`; what is as wide and as deep, by its
    bakes alone."""
    times = [f"{times:g} times as {side}" for times, side in ((wide, "wide"), (deep, "deep")) if times != 1.0]
    return f"{' and '.join(times)} {baked}".strip()


def _before_any_bake(width: float, depth: float, typical_min: float | None, oven_c: float) -> str:
    powers = f"before any bakes: p {width:g}, q {depth:g}"
    if typical_min is None:
        return powers
    return f"{powers}, {typical_min:g} min for 20 cm with 4 cm of batter at {oven_c:g} °C"


def _recipes_own_time(span: tuple[float, ...]) -> str:
    """`the time given in the recipe (55–65 min)`."""
    ends = "–".join(f"{end:g}" for end in dict.fromkeys(span))
    return f"the time given in the recipe ({ends} min)" if ends else "the time given in the recipe"


def _learned_from(bakes: tuple[str, ...]) -> str:
    return f"learned from {formats.sentence(bakes)}" if bakes else "nothing baked yet, so the span is wide"


def _few(bakes: int) -> str:
    return "one" if bakes == 1 else str(bakes)


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # loads
    "fits_in_the_tin": "fits",
    "above_the_rim": "above the rim",
    "too_full": "too full",
    "loads_of": "{mixture}, oven loads",
    "loads_worked": (
        "baked = batter depth × rise; oven loads = tins to fill / tins that fit on the shelves, or / tins owned; "
        "busy = oven loads × range of baking times"
    ),
    "refused_above": "above {limit:g} times the tin's depth it is too full; above the rim it may spill",
    "bowl_holds": "bowl {grams:g} g",
    "bowl_unknown": "the size of the mixer bowl is not known",
    # oven
    "on_the_dial": _on_the_dial,
    "gas_mark": "gas mark {mark}",
    "oven_as_its_dial": "the oven is assumed to match its dial",
    "oven_off_its_dial": _oven_off_its_dial,
    # log
    "bakes_of_the_log": "Bakes",
    "dial_of_the_house": (
        "set here = recipe's conventional temperature − how much hotter this oven is than its dial; with a fan "
        "{fan_c:g} °C less; gas: the mark that printed tables give for it, or, failing that, the nearest"
    ),
    "eight_in_ten": "8 out of 10 bakes are done within that range of times",
    "expected_of_a_bake": "expected = what the formula, fitted to all the bakes, gives for this tin, batter and oven",
    # times
    "time_in_the_oven": "{mixture}, time in the oven",
    "nothing_baked": _nothing_baked,
    "as_the_nearest_bake": lambda tin: f"as the nearest bake, {formats.cups_said(tin)}",
    "as_in_its_own_tin": "based on the time given in the recipe",
    "bakes_in_such_a_tin": lambda bakes: f"based on {_few(bakes)} of your own bakes in this tin",
    "bakes_and_own_time": (
        lambda bakes: f"based on {_few(bakes)} of your own bakes in this tin and the time given in the recipe"
    ),
    "so_far_from": _so_far_from,
    "time_law": (
        "minutes = c × width^p × batter depth^q × ln(1.6 (oven − start) / (oven − centre)); "
        "c, p and q fitted to the bakes by Bayesian regression on the logarithms"
    ),
    "before_any_bake": _before_any_bake,
    "learned_from": _learned_from,
    "bakes_of_the_recipe": "{bakes} of your bakes",
    "recipes_own_time": _recipes_own_time,
    "of_other_recipes": _of_other_recipes,
    "learned_powers": "learned: p {width:g}, q {depth:g}",
    "heats_of_a_bake": "oven {oven_c:.0f} °C conventional, batter {start_c:g} °C, done at {centre_c:g} °C",
    "span_and_check": (
        "8 out of 10 bakes are done within that range of times; start checking at {share:.0%} of the likeliest time, "
        "or where the range begins; never before the heat can have reached the middle"
    ),
    "held_by_conduction": (
        "in {tins} of {of} tins the time is set by how fast heat travels, not by past bakes: no time given is shorter "
        "than the time the heat takes to reach the middle"
    ),
    "one_tin_in_a_hot_oven": (
        "for one tin in an oven that is up to heat: several tins at once, or an oven that is not yet hot, take longer, "
        "and that is not allowed for"
    ),
}
