"""What plans/portions says: portions, cutting plans, guests."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
