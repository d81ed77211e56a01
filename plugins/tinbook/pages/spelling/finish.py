"""What plans/finish says: layers, filling, coats, paste, boards."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {
    "figure_of_house": "{name} {value_mm:g} mm ({said_by})",
    "covered": "as on the page of each mixture; its amounts of one cake together, and what stays in the bowl",
    "cake_before_coats": "cake {high_mm:g} mm high in {layers} layers, before its coats",
    "stays_in_bowl": "{share:.0%} of what is made stays in the bowl",
}
