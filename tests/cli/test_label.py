"""`tinbook label`: printed, told, or refused with everything that is missing."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from pathlib import Path

from click.testing import Result
from tests.every import every

Run = Callable[..., Result]
CAKE = ("label", "--of", "night-watch-cake", "--made", "2026-12-20")


def test_a_label_is_written(run: Run, tmp_path: Path) -> None:
    for paper in ("plain", "strip", "card", "eight to a sheet"):
        file = tmp_path / f"{paper}.pdf"
        done = run(*CAKE, "--paper", paper, "-o", str(file))
        assert done.exit_code == 0 and file.read_bytes().startswith(b"%PDF"), done.output
        assert "local authority has the last word" in done.output
    again = run(*CAKE, "-o", str(tmp_path / "plain.pdf"))
    assert again.exit_code == 1 and "--force" in again.output


def test_it_is_told_in_words_and_for_programs(run: Run) -> None:
    text = run(*CAKE, "--format", "text").output
    assert "folic acid" in text and "Batch 2026-12-20 night-watch-cake" in text and "Article 21(1)" in text
    told = json.loads(run(*CAKE, "--format", "json").stdout)
    assert told["ready"] and told["contains"] == ["wheat", "egg", "milk", "walnut"] and told["missing"] == []
    assert {"milk", "egg", "wheat", "walnuts"} <= set(told["emphasised"])
    before = json.loads(run("label", "--of", "night-watch-cake", "--made", "2026-12-12", "--format", "json").stdout)
    assert "folic acid" not in before["ingredients"]


def test_what_is_missing_is_listed_with_its_line(run: Run, book: Path) -> None:
    done = run("label", "--of", "lighthouse-cake")
    assert done.exit_code == 1 and "4 to fill in" in done.output
    lines = (book / "recipes" / "house" / "ingredients.yaml").read_text("utf-8").splitlines()
    places = re.findall(r'ingredients\.yaml:(\d+): the card for "([^"]+)"', done.output)
    assert places and all(lines[int(line) - 1].strip() == f"{name}:" for line, name in places)
    assert not list(Path().glob("label-lighthouse-cake.pdf"))


def test_no_nation_no_label(run: Run, book: Path) -> None:
    (book / "recipes" / "house" / "labels.yaml").unlink()
    done = run(*CAKE)
    assert done.exit_code == 1 and 'write "sold in: ..." with your nation' in done.output
    assert "Contains" in run(*CAKE, "--format", "text").output


@every(
    ("asked", "said"),
    [
        (("label",), "--of once"),
        (("label", "--of", "a", "--of", "b"), "--of once"),
        (("label", "--of", "night-wach-cake"), 'did you mean "night-watch-cake"?'),
        ((*CAKE, "--paper", "eight to a shet"), 'did you mean "eight to a sheet"?'),
        ((*CAKE, "--paper", "eight to a sheet", "--first", "9"), "only 8 labels on a sheet"),
        (("label", "--paper", "table"), "give --of once for each"),
        ((*CAKE, "--made", "5 December"), "5 December"),
    ],
)
def test_what_cannot_be_asked(asked: tuple[str, ...], said: str, run: Run) -> None:
    done = run(*asked)
    assert done.exit_code and said in done.output, done.output


def test_words_that_do_not_fit_are_refused_with_the_size_that_would_do(run: Run, book: Path) -> None:
    labels = book / "recipes" / "house" / "labels.yaml"
    small = "  tiny: {columns: 2, rows: 4, wide: 50 mm, high: 25 mm, left: 5 mm, top: 14 mm}\n"
    labels.write_text(labels.read_text("utf-8").replace("strip:", f"{small}strip:"), "utf-8")
    done = run(*CAKE, "--paper", "tiny")
    assert done.exit_code == 1 and "do not fit on a label 25 mm high" in done.output
    assert re.search(r"at 50 mm wide they need \d+ mm", done.output)


def test_the_card_for_a_table_of_cakes(run: Run, tmp_path: Path) -> None:
    file = tmp_path / "table.pdf"
    done = run("label", "--paper", "table", "--of", "night-watch-cake", "--of", "madeira-cake", "-o", str(file))
    assert done.exit_code == 0 and file.read_bytes().startswith(b"%PDF"), done.output
