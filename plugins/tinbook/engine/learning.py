"""What the house really used, against what was worked out: a correction that trusts a few entries a little."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log


def correction(ratios: Sequence[float], damping: float) -> float:
    """The factor that moves a worked-out amount towards what was used: exp(Σ ln ratio / (n + damping)).

    ratios: used over worked out, each above 0. `damping` counts as that many entries saying "as worked out": with
    nothing logged the factor is 1, with many entries it nears their geometric mean (a normal prior in the logs).
    """
    return exp(sum(map(log, ratios)) / (len(ratios) + damping)) if ratios else 1.0


def is_wild(ratio: float, most: float) -> bool:
    """Whether an entry is too far out to learn from: more than `most` times as much, or as little."""
    return not 1.0 / most <= ratio <= most
