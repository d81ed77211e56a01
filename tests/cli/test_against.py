"""`tinbook table allergens --against FILE`: what a changed card changes."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path

from click.testing import Result
from tests.every import every

Run = Callable[..., Result]


def test_nothing_has_changed_against_itself(run: Run, tmp_path: Path) -> None:
    saved = tmp_path / "before.json"
    saved.write_text(run("table", "allergens", "--format", "json").stdout, "utf-8")
    done = run("table", "allergens", "--against", str(saved))
    assert done.exit_code == 0 and done.output.strip() == "Nothing has changed."


def test_a_changed_answer_is_told_with_its_product(run: Run, tmp_path: Path) -> None:
    told = json.loads(run("table", "allergens", "--format", "json").stdout)
    row = next(row for row in told["rows"] if row["product"] == "mixtures/madeira-cake")
    row["milk"] = "no"
    saved = tmp_path / "before.json"
    saved.write_text(json.dumps(told), "utf-8")
    done = run("table", "allergens", "--against", str(saved))
    assert done.output.strip() == "mixtures/madeira-cake: milk: no, now yes"
    (change,) = json.loads(run("table", "allergens", "--against", str(saved), "--format", "json").stdout)
    assert change == {"product": "mixtures/madeira-cake", "allergen": "milk", "was": "no", "now": "yes"}


@every("text", ["", "{", "[]", '{"table": "allergens", "rows": [1]}', '{"table": "tins", "rows": []}', "\xff"])
def test_a_file_that_is_no_such_table(text: str, run: Run, tmp_path: Path) -> None:
    saved = tmp_path / "before.json"
    saved.write_text(text, "latin-1")
    done = run("table", "allergens", "--against", str(saved))
    assert done.exit_code == 1 and "--against is not a" in done.output and "--format json" in done.output


def test_other_tables_cannot_use_it(run: Run, tmp_path: Path) -> None:
    saved = tmp_path / "before.json"
    saved.write_text("{}", "utf-8")
    for asked in (("tins", "--of", "madeira-cake"), ("allergens", "--of", "madeira-cake")):
        done = run("table", *asked, "--against", str(saved))
        assert done.exit_code == 1 and "cannot use --against" in done.output
