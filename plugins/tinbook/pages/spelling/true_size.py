"""What plans/true_size says: templates at true size."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
