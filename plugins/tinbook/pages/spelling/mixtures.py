"""What plans/mixtures says: a mixture by itself: balance, batches, the tins on hand."""

from __future__ import annotations

from collections.abc import Callable, Mapping

SAYINGS: Mapping[str, str | Callable[..., str]] = {}
