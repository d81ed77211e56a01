"""What plans/base says: what is weighed and scaled, and how the house finishes its cakes."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
