"""What plans/portions says: portions, cutting plans, guests."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence


def _cut_as(way: str, counts: Sequence[int], parts: int) -> str:
    """`grid 4 x 8`, `strips 5+7+7+5`, `wedges 7, twice`, `one each`."""
    if way == "grid":
        return f"grid {counts[0]} x {len(counts)}"
    if way in ("one_each", "none"):
        return way.replace("_", " ")
    words = f"{way} {'+'.join(str(count) for count in counts)}"
    return f"{words}, twice" if parts == 2 else words


def _tins_for_guests(guests: int | None) -> str:
    return f"Tins for {guests} guests" if guests else "Tins for guests"


SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "portions_of_tins": "Portions",
    "cut_as": _cut_as,
    "portions_counted": (
        "a whole grid, or equal pieces of at least about one portion: never more than area of the cake / portion"
    ),
    "same_weight": "length = usual length × usual height / height of this cake; the width stays",
    "usual_height": "the house's cakes are usually {high_mm:g} mm high",
    "portion_size": "{kind} {short_mm:g} × {long_mm:g} mm",
    "cake_to_cut": "cake {high_mm:g} mm high; a dome and a ball are shared out by volume at that height",
    "strips_wide": "strips of equal width while pieces lie within 7 % of their mean, else strips of uneven width",
    "outline_cut": "a tin's outline half-way up; cups are one each",
    "tins_for_guests": _tins_for_guests,
    "set_of_tiers": lambda tins: " + ".join(tins),
    "cups_beside": "{count} {tin}",
    "best_set": "least over, then fewest tins, then least mixture",
    "guest_size": "{short_mm:g} × {long_mm:g} mm a guest, cakes {high_mm:g} mm high",
    "tiers_apart": "tiers of one shape, each at least 5 cm narrower than the one below",
}
