"""`tinbook trace`: what a pack went into, and which packs a batch was made from."""

from __future__ import annotations

import json
from collections.abc import Callable

from click.testing import Result

Run = Callable[..., Result]


def test_a_pack(run: Run) -> None:
    done = run("trace", "--pack", "M0412")
    assert done.exit_code == 0 and "2026-10-02 cupcakes" in done.output, done.output
    told = json.loads(run("trace", "--pack", "M0412", "--format", "json").stdout)
    assert [each["pack"] for each in told["packs"]] == ["M0412"]
    assert {each["how"] for each in told["orders"]} <= {"had", "may_have_had"} and told["not_logged"]


def test_a_batch(run: Run) -> None:
    told = json.loads(run("trace", "--batch", "2026-10-02 cupcakes", "--format", "json").stdout)
    assert {each["pack"] for each in told["packs"]} == {"M0412", "L2291"}
    assert any("no pack was logged of" in said for said in told["not_logged"])


def test_what_cannot_be_asked(run: Run) -> None:
    assert "either --pack or --batch" in run("trace").output
    assert "either --pack or --batch" in run("trace", "--pack", "x", "--batch", "y").output
    assert 'did you mean "M0412"?' in run("trace", "--pack", "M0421").output
    assert "no bake" in run("trace", "--batch", "2026-10-03 cupcakes").output
