"""What plans/portions says: portions, cutting plans, guests."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence

from tinbook.pages.spelling import formats


def _cut_as(way: str, counts: Sequence[int], parts: int) -> str:
    """`grid 4 x 8`, `strips 5+7+7+5`, `wedges 7, twice`, `one each`."""
    if way == "grid":
        return f"grid {counts[0]} x {len(counts)}"
    if way in ("one_each", "none"):
        return way.replace("_", " ")
    words = f"{way} {'+'.join(str(count) for count in counts)}"
    return f"{words}, twice" if parts == 2 else words


def _share_served(small: float, known: Sequence[tuple[float, float]], long: float) -> str:
    told = [f"{100.0 * share:g}% at {width / 10.0:g} cm" for width, share in known]
    told[-1] = told[-1].replace(" at ", " from ") + " up"
    smaller = f"{100.0 * small:g}% below {known[0][0] / 10.0:g} cm"
    shares = ", ".join((smaller, *told))
    narrow = f"for long cakes, down to {100.0 * long:.0f}% of that"
    return f"share served, as for a round of the same area: {shares}; {narrow}"


def _tins_for_guests(guests: int | None) -> str:
    return f"Tins for {guests} guests" if guests else "Tins for guests"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "portions_of_tins": "Portions",
    "portions_of_mixture": "{mixture}, in portions",
    "cut_as": _cut_as,
    "portions_counted": (
        "squares, rectangles and sheets: a whole grid, with what is left cut the other way; all others: area / "
        "portion × the "
        "share that cake makers serve, in whole portions only"
    ),
    "share_served": _share_served,
    "same_weight": "length = usual length × usual height / height of this cake; the width stays the same",
    "usual_height": "cakes here are usually {high_mm:g} mm high",
    "portion_size": "{kind} {short_mm:g} × {long_mm:g} mm",
    "cake_to_cut": "cake {high_mm:g} mm high; domes and balls are divided by volume, at that height",
    "strips_wide": "strips of equal width as long as all pieces are within 7% of the average size, otherwise "
    "strips of uneven width",
    "outline_cut": "a tin's outline halfway up; cupcakes are one each",
    "tins_for_guests": _tins_for_guests,
    "set_of_tiers": lambda tins: " + ".join(tins),
    "cups_beside": "{count} {tin}",
    "best_set": "everyday shapes first, then tins you own; then those with the fewest portions left over, the "
    "fewest tins and the least mixture",
    "set_named": "A set of tiers",
    "set_serves": "portions from a set = portions from all its tiers together",
    "set_short": "{short} short",
    "set_judged": lambda said: "; ".join(said) or "the steps between the tiers are as usual, and you have every tin",
    "ledge_narrow": "{upper} is only {apart_mm:g} mm narrower than {lower}; 50 to 100 is usual",
    "ledge_wide": "{upper} is {apart_mm:g} mm narrower than {lower}; 50 to 100 is usual",
    "tier_not_owned": lambda tin: f"you have no {tin.removeprefix('the ')} tin",
    "tier_too_wide": lambda tin: f"{formats.a_said(tin)} tin will not fit in your oven",
    "tier_no_drum": "no standard-size drum is large enough for {tin}",
    "guest_size": "{short_mm:g} × {long_mm:g} mm for each guest, cakes {high_mm:g} mm high",
    "tiers_apart": "all tiers the same shape, each 5 to 10 cm narrower than the one below",
    "tins_that_serve": "only tins that fit the oven, and give cakes that fit on a standard-size drum",
}
