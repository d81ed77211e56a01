"""What plans/baking says: the oven: times, loads, ways to bake."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
