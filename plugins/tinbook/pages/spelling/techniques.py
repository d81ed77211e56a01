"""What plans/techniques says: times, kit, parts, colours, marks."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
