"""`tinbook plan`: the demo's week, a week of it, one order of it; and every way it can go wrong, without a traceback."""

from __future__ import annotations

import json
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.plans.orders import solving

Run = Callable[..., Result]
TODAY = ("--today", "2026-11-30 08:00")
GONE = "2026-10-03-point-light"


@pytest.fixture
def orders(book: Path) -> Path:
    """The orders that are quickly planned: a class and cups."""
    folder = book / "recipes" / "orders"
    for path in folder.iterdir():
        if not {"class", "mixtures"} & {line.partition(":")[0] for line in path.read_text("utf-8").splitlines()}:
            path.unlink()
    return folder


def add(orders: Path, name: str, *lines: str) -> None:
    (orders / f"{name}.yaml").write_text("\n".join((f"handle: {name}", "state: agreed", *lines, "")))


def test_the_demos_week_is_ready_in_time(run: Run) -> None:
    done = run("plan", *TODAY, "--format", "json")
    assert done.exit_code == 0, done.output
    told = json.loads(done.output)
    assert {each["order"] for each in told["orders"]} > {"2026-12-12-boathouse-wedding"}
    assert GONE not in done.output and all(each["late_min"] == 0 for each in told["orders"])
    assert [each["start"] for each in told["tasks"]] == sorted(each["start"] for each in told["tasks"])


def test_one_week_and_one_order_of_it(run: Run, orders: Path) -> None:
    whole = json.loads(run("plan", *TODAY, "--format", "json").output)["tasks"]
    week = json.loads(run("plan", *TODAY, "--week", "2026-12-07", "--format", "json").output)["tasks"]
    assert week == [each for each in whole if "2026-12-07" <= each["start"] < "2026-12-14"]
    mine = json.loads(run("plan", *TODAY, "--order", "Rope class", "--format", "json").output)["tasks"]
    assert mine and all(each["orders"] == ["2026-12-08-rope-class"] for each in mine)
    wrong = run("plan", *TODAY, "--order", "rope clas")
    assert wrong.exit_code == 1 and 'did you mean "rope class"?' in wrong.output


def test_a_calendar_is_written(run: Run, orders: Path, tmp_path: Path) -> None:
    done = run("plan", *TODAY, "--ics", str(tmp_path / "week.ics"))
    assert done.exit_code == 0, done.output
    assert (tmp_path / "week.ics").read_bytes().startswith(b"BEGIN:VCALENDAR\r\n")
    assert run("plan", *TODAY, "--ics", str(tmp_path / "none" / "week.ics")).exit_code == 1


def test_what_cannot_be_ready_is_told_and_the_exit_code_says_so(run: Run, orders: Path) -> None:
    add(orders, "tubs", "mixtures: [modelling-paste]", "hand over: 2026-12-01 09:00")
    done = run("plan", *TODAY)
    assert done.exit_code == 1 and "tubs cannot be ready by Tue 1 Dec, 09:00" in done.output


def test_a_mistake_in_an_order_comes_first(run: Run, orders: Path) -> None:
    add(orders, "light", "cake: lighthose-cake", "hand over: 2026-12-11 11:00")
    done = run("plan", *TODAY)
    assert done.exit_code == 1 and 'did you mean "lighthouse-cake"?' in done.output and "put these right" in done.output


def test_what_is_overdue_is_left_out_with_a_word(run: Run, orders: Path) -> None:
    done = run("plan", "--today", "2026-12-09 08:00")
    assert '"rope class" was due Tue 8 Dec, 14:00: it is left out.' in done.output


def test_without_the_library_it_says_how_to_get_it(run: Run, orders: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def absent() -> None:
        raise solving.NoSolver

    monkeypatch.setattr(solving, "_library", absent)
    monkeypatch.setattr("tinbook.cli.plan.ProcessPoolExecutor", lambda count, **_: ThreadPoolExecutor(count))
    done = run("plan", *TODAY)
    assert done.exit_code == 1 and "pip install" in done.output and "Traceback" not in done.output


def test_hours_nobody_can_work_in(run: Run, book: Path, orders: Path) -> None:
    (book / "recipes" / "house" / "kitchen.yaml").write_text("at a pinch: 09:00-09:30\n")
    done = run("plan", *TODAY)
    assert done.exit_code == 1 and "finds no room in the kitchen's hours" in done.output


def test_a_book_without_orders(run: Run, orders: Path) -> None:
    for path in orders.iterdir():
        path.unlink()
    done = run("plan", *TODAY)
    assert done.exit_code == 0 and done.output == "There is nothing to do.\n"


def test_public_holidays_of_nowhere(run: Run, book: Path, orders: Path) -> None:
    (book / "recipes" / "house" / "kitchen.yaml").write_text("days off: public holidays in ZZ\n")
    done = run("plan", *TODAY)
    assert done.exit_code == 1 and "public holidays" in done.output and "Traceback" not in done.output
