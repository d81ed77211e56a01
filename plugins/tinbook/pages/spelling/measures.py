"""What plans/measures says: kitchen measures, eggs, ounces, what stands in for what."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
