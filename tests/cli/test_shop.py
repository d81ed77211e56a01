"""`tinbook shop`: the demo's list, one order of it, a week of it; and every way it can go wrong."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result

Run = Callable[..., Result]
TODAY = ("--today", "2026-12-05")


def lines(done: Result) -> dict[str, dict[str, object]]:
    assert done.exit_code == 0, done.output
    return {each["of"]: each for each in json.loads(done.stdout)["lines"]}


def test_the_demos_list(run: Run) -> None:
    done = run("shop", *TODAY)
    assert done.exit_code == 0, done.output
    assert "things to buy for rope class (Tue 8 Dec), slipway birthday (Fri 11 Dec), boathouse wedding" in done.output
    assert "Only asked for so far, so not on this list: regatta club cups." in done.output
    told = lines(run("shop", *TODAY, "--format", "json"))
    assert told["butter"]["at_home_g"] == 500.0 and told["butter"]["packs"] == [{"count": 12, "pack": "250 g"}]


def test_orders_one_by_one_add_up_to_all(run: Run) -> None:
    whole = lines(run("shop", *TODAY, "--format", "json"))
    handles = ("rope class", "2026-12-11-slipway-birthday", "Boathouse wedding")
    each = [lines(run("shop", *TODAY, "--orders", handle, "--format", "json")) for handle in handles]
    for name, line in whole.items():
        key = next(key for key in line if key.startswith("missing_"))
        assert sum(one[name][key] for one in each if name in one) == pytest.approx(line[key], abs=1e-6), name
    both = lines(run("shop", *TODAY, "--orders", "rope class, regatta club cups", "--format", "json"))
    assert both["cases for standard cups"]["packs"] == [{"count": 2, "pack": "25"}]


def test_a_week_of_it(run: Run) -> None:
    done = run("shop", *TODAY, "--week", "2026-12-02", "--format", "json")
    assert [each["order"] for each in json.loads(done.stdout)["orders"]] == ["2026-12-08-rope-class"]
    none = run("shop", *TODAY, "--week", "2027-03-01")
    assert none.exit_code == 0 and "There is nothing to buy" in none.output


def test_how_the_stock_came_about(run: Run) -> None:
    done = run("shop", *TODAY, "--stock")
    assert "butter: 500 g counted on Sat 28 Nov; 500 g left" in done.output


def test_what_cannot_be_asked_is_told(run: Run) -> None:
    wrong = run("shop", *TODAY, "--orders", "rope clas")
    assert wrong.exit_code == 1 and 'did you mean "rope class"?' in wrong.output
    both = run("shop", *TODAY, "--orders", "rope class", "--week", "2026-12-07")
    assert both.exit_code == 1 and "either --orders or --week" in both.output


def test_a_slip_in_the_stock_comes_first(run: Run, book: Path) -> None:
    path = book / "recipes/house/stock.yaml"
    path.write_text(path.read_text("utf-8").replace("counted: 2 x 250 g", "counted: -5 g"), "utf-8")
    done = run("shop", *TODAY)
    assert done.exit_code == 1 and "stock.yaml" in done.output and "put these right first" in done.output


def test_what_is_done_comes_off_the_stock(run: Run, book: Path) -> None:
    path = book / "recipes/orders/2026-12-08-rope-class.yaml"
    before = lines(run("shop", *TODAY, "--orders", "boathouse wedding", "--format", "json"))["icing sugar"]
    path.write_text(path.read_text("utf-8").replace("state: agreed", "state: gone"), "utf-8")
    done = run("shop", "--today", "2026-12-09", "--stock")
    assert "used for 2026-12-08-rope-class" in done.output and "rope class (Tue" not in done.output
    after = lines(run("shop", "--today", "2026-12-09", "--orders", "boathouse wedding", "--format", "json"))
    # what the class would have taken it has taken: the next order gets no more and no less
    assert after["icing sugar"]["missing_g"] == pytest.approx(before["missing_g"])
