"""The time in the oven on a mixture's page: what the plans say, in the table, at the bench, in the fold."""

from __future__ import annotations

import json
import re
from collections.abc import Callable
from html import unescape

import pytest

from tinbook.pages.base.page import Desk
from tinbook.pages.mixture.baking import BakingView
from tinbook.pages.mixture.view import MixtureView
from tinbook.pages.spelling.sayings import spell
from tinbook.plans.baking.tables import times
from tinbook.plans.base.asking import Query

N = "\u00a0"


def view(desk: Desk, slug: str) -> BakingView:
    made = MixtureView(desk.batches[slug], desk).baking
    assert made is not None
    return made


@pytest.mark.parametrize("slug", ["mud-cake", "creamed-butter-sponge", "cupcakes"])
def test_the_table_of_tins_has_the_times_of_the_plans(desk: Desk, filled: Callable[[str], str], slug: str) -> None:
    rows = times(desk.book, desk.facts, Query(of=slug)).rows
    text = filled(f"mixtures/{slug}/tables")
    lines = []
    for body in re.finditer(r'<tbody data-eggs="whole"[^>]*>(.*?)</table>', text, re.DOTALL):
        heads = re.findall(
            r"<th scope=col>(?:<span>)?([^<]*)",
            text[text.rindex("<thead>", 0, body.start()) : body.start()],
        )
        if "Check" in heads:
            at = heads.index("Check")
            assert heads[at + 1] == "Done"
            lines += [(at, line) for line in body[1].strip().split("\n")]
    assert len(lines) == len(rows)
    owned = [row.owned for row in view(desk, slug).table.rows]
    rows = [row for _, row in sorted(zip(owned, rows, strict=True), key=lambda each: not each[0])]
    for (at, line), row in zip(lines, rows, strict=True):
        cells = [re.sub(r"<.*", "", cell) for cell in re.split(r"<t[dh][^>]*>", line)[1:]]
        low, high = row["low_min"], row["high_min"]
        assert cells[at] == f"{row['check_min']:g}"
        assert cells[at + 1] == (f"{low:g}–{high:g}" if low != high else f"{low:g}")


def test_what_is_not_baked_has_no_time(desk: Desk, filled: Callable[[str], str]) -> None:
    assert MixtureView(desk.batches["dark-ganache"], desk).baking is None
    text = filled("mixtures/dark-ganache")
    assert "Check at" not in text and ">Check<" not in filled("mixtures/dark-ganache/tables")


def test_the_bench_says_it_for_the_written_tin_before_any_script_runs(filled: Callable[[str], str], desk: Desk) -> None:
    made = view(desk, "mud-cake")
    time = made.sums.times[made.written]
    assert made.table.rows[made.written].tin.name == "round 20 cm"
    assert (made.check, made.span) == (f"{time.check_shown_min:g}", f"{time.low_shown_min:g}–{time.high_shown_min:g}")
    text = unescape(filled("mixtures/mud-cake"))
    assert f"Check at <b>{made.check}{N}min</b>, most likely done in <b>{made.span}{N}min</b>." in text
    assert f'; <span class="tb-far">{made.far}</span>. The middle reads 97{N}°C.' in text
    # the timer of the bake rings for the first look
    assert (
        f'tb-look" data-minutes="{made.check_min}" data-name="Oven' in text
        and f">check {made.check}{N}min</button>" in text
    )


def test_the_browser_can_say_how_far_each_tin_lies(desk: Desk, filled: Callable[[str], str]) -> None:
    made = view(desk, "mud-cake")
    found = re.search(r'id="tb-recipe">(.*?)</script>', filled("mixtures/mud-cake"), re.DOTALL)
    assert found
    handed = json.loads(found[1])["bake"]
    assert handed["oven"] == "135 °C fan" and desk.book.mixtures["mud-cake"].method[handed["step"]].do.startswith(
        "Bake"
    )
    assert [tuple(each) for each in handed["times"]] == made.cells
    for (wide, deep, at), far in zip(handed["far"], made.sums.far, strict=True):
        assert (wide / 10, deep / 10) == (far.wide, far.deep)
        assert handed["bakes"][at].replace(N, " ").replace("×", "x") == spell(far.baked)
    assert len(handed["bakes"]) == len(set(handed["bakes"])) < 12


def test_the_method_says_what_to_set_on_this_dial(filled: Callable[[str], str]) -> None:
    # 160 °C, a fan oven that runs 5 °C hot
    text = unescape(filled("mixtures/mud-cake"))
    assert f"<b data-tins>1 × round 20{N}cm</b> at 160{N}°C (135{N}°C{N}fan on this oven's dial): " in text
    assert f'<b class="tb-dial">135{N}°C</b><small>fan on this oven\'s dial</small>' in text


def test_the_fold_says_what_it_rests_on(filled: Callable[[str], str]) -> None:
    text = filled("mixtures/mud-cake/tables")
    fold = text[text.index("data-eggs") : text.index("## Layers")]
    assert "minutes = c × width^p × batter depth^q" in fold and "before any bakes: p " in fold
    assert (
        "learned from 3 of your bakes and the time given in the recipe (95–110 min)" in unescape(fold)
        and "learned: p " in fold
    )
