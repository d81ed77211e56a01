"""What plans/finish says: layers, filling, coats, paste, boards."""

from __future__ import annotations

from collections.abc import Callable, Mapping


def _cakes_took(cakes: int, percent: float) -> str:
    """`5 of your cakes took 4.2% more than calculated`."""
    if not percent:
        return f"{cakes} of your cakes took just what was calculated"
    return f"{cakes} of your cakes took {abs(percent):g}% {'more' if percent > 0 else 'less'} than calculated"


def _no_chart_of_its_own(kind: str) -> str:
    return f"the range is the one for sugarpaste: we know of no published chart for {kind.lower()}"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    # layers
    "in_layers": "{mixture}, in layers",
    "for_layers": "{mixture}, for layers",
    "layers_worked": (
        "levelled = batter depth × rise × (1 − dome); layer = levelled / number of layers cut from each cake; "
        "stack = layers × layer + filling between them"
    ),
    "rise_by_the_log": "rise {rise:g}, from {bakes} of your bakes",
    "rise_of_its_kind": "rise {rise:g}, for its kind {low:g} to {high:g}",
    "rise_of_the_house": "rise {rise:g}, as measured in this kitchen",
    "dome_of_the_baked": "dome {share:.0%} of the baked depth",
    "lost_in_the_oven": "weight lost in the oven {share:.1%}",
    "lost_by_the_log": "weight lost in the oven {share:.1%}, from {bakes} of your bakes",
    "each_cake_cut": "each cake cut into {layers}",
    "layers_as_near": "layers as close to {mm:g} mm as possible",
    "filling_and_coats": "filling {filling_mm:g} mm, coats {coats_mm:g} mm on top",
    # filling, coats and paste
    "in_and_round": "{mixture}, in and round a cake",
    "over_a_cake": "{mixture}, over a cake",
    "covered": "as on each recipe's page: the amounts for one cake added up, including what stays in the bowl",
    "coats_worked": "filling = area × thickness × (layers − 1); a coat = the cake with it − the cake without it",
    "paste_worked": (
        "on the cake = (top + sides) × thickness; rolled out to = top + both sides + overhang, each way; "
        "to roll = the rolled-out area × the rolled thickness, but never less than what stays on the cake plus the "
        "trimmings"
    ),
    "cake_before_coats": "cake {high_mm:g} mm high in {layers} layers, before it is coated",
    "cakes_as_baked": "each cake as high as {mixture} bakes in its tin, filled but not yet coated",
    "cake_and_coats": "cake {high_mm:g} mm high and coats of {coats_mm:g} mm",
    "stays_in_bowl": "{share:.0%} of what is made stays in the bowl",
    "stays_in_bag": "{ml:g} ml of any icing that is piped stays on the beater and in the bag",
    "as_thick_as": "{name} {mm:g} mm ({said_by})",
    "weight_of_a_ml": "1 ml weighs {grams:g} g ({low:g} to {high:g})",
    "border_piped": (
        "border at the {edges}: {marks} {pitch_mm:g} mm from one to the next, "
        "each piped {stroke_mm:g} mm long from a nozzle with an opening {opening_mm:g} mm wide"
    ),
    "published_pastes": (
        "the range: three publishers' charts work out at {low_mm:g} to {high_mm:g} mm of sugarpaste, middle figure "
        "{mm:g} mm, including some of the trimmings"
    ),
    "published_marzipan": (
        "the range is the one for sugarpaste; one chart for marzipan works out at {low_mm:g} to {high_mm:g} mm, "
        "with a middle figure of {mm:g} mm"
    ),
    "no_chart_of_its_own": _no_chart_of_its_own,
    "cakes_took": _cakes_took,
    "rolled_to_a_disc": "disc",
    "rolled_to_a_rectangle": "rectangle",
    # boards
    "boards_and_ribbon": "Boards and ribbon",
    "boards_worked": "drum = cake + margin, up to the next stock size; ribbon = edge + overlap",
    "coats_and_paste": "coats {coats_mm:g} mm, paste {paste_mm:g} mm",
    "drum_wider_by": "drum wider by {least_mm:g} mm (smallest), {usual_mm:g} mm (usual), {wide_mm:g} mm (wide)",
    "paste_and_ribbon": "paste on the board {paste_mm:g} mm, ribbon overlap {over_mm:g} mm",
    "box_room": "room in the box: {beside_mm:g} mm beside the board, {above_mm:g} mm above the cake",
}
