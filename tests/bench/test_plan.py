"""How long a plan of the week takes, and how good it is: whole processes of `tinbook plan`.

Run with `pytest tests/bench -n0 --benchmark-enable --benchmark-only -s`; ordinary runs skip it.
"""

from __future__ import annotations

import json
import shutil
import statistics
import subprocess
import sys
import time
from pathlib import Path
from typing import Any

import pytest
from tests.bench.books import DEMO, dump

THREE_S, TEN_S, ROUNDS = 3.0, 20.0, 5
WEEK: tuple[dict[str, Any], ...] = (
    {"cake": "estuary-wedding-cake", "hand over": "2026-12-12 15:00", "delivered": "25 min"},
    {"cake": "lighthouse-cake", "guests": "30", "hand over": "2026-12-11 11:00"},
    {"mixtures": [{"mixture": "cupcakes", "count": "48"}], "hand over": "2026-12-12 10:00"},
)
"""Three tiers, one tier with a figure, and 48 cups."""
MORE: tuple[dict[str, Any], ...] = (
    {"cake": "thrift-island-cake", "hand over": "2026-12-15 12:00"},
    {"cake": "sea-garden-cups", "hand over": "2026-12-16 14:00", "delivered": "15 min"},
    {"cake": "first-season-cake", "hand over": "2026-12-17 10:00"},
    {"class": {"techniques": ["rope-edge"], "people": "4", "lasts": "3 h"}, "hand over": "2026-12-14 14:00"},
    {"mixtures": ["madeira-cake", "american-buttercream"], "hand over": "2026-12-18 11:00"},
    {"cake": "lighthouse-cake", "hand over": "2026-12-19 11:00"},
    {"mixtures": [{"mixture": "cocoa-cupcakes", "count": "24"}], "hand over": "2026-12-19 16:00"},
)


@pytest.mark.parametrize(("orders", "most_s"), [(WEEK, THREE_S), (WEEK + MORE, TEN_S)], ids=["three", "ten"])
def test_a_plan(orders: tuple[dict[str, Any], ...], most_s: float, benchmark: Any, tmp_path: Path) -> None:
    shutil.copytree(DEMO, tmp_path / "recipes", ignore=shutil.ignore_patterns("orders"))
    for number, order in enumerate(orders, 1):
        dump(
            tmp_path / f"recipes/orders/order-{number}.yaml", {"handle": f"order {number}", "state": "agreed", **order}
        )
    command = [
        str(Path(sys.executable).with_name("tinbook")),
        "plan",
        "--today",
        "2026-11-30 08:00",
        "--format",
        "json",
    ]
    took: list[float] = []
    told: dict[str, Any] = {}

    def plan() -> None:
        start = time.perf_counter()
        done = subprocess.run(command, cwd=tmp_path, capture_output=True, text=True, check=False)
        took.append(time.perf_counter() - start)
        assert done.returncode == 0, done.stdout[:2000] + done.stderr
        told.update(json.loads(done.stdout))

    benchmark.pedantic(plan, rounds=ROUNDS, iterations=1, warmup_rounds=1)
    print(
        f"\n{len(orders)} orders, {len(told['tasks'])} tasks: {statistics.median(took[1:]):.2f} s; proven {told['proven']}"
    )
    print("  " + "; ".join(f"{name} {tuple(aim.values())}" for name, aim in told["aims"].items()))
    assert statistics.median(took[1:]) <= most_s
