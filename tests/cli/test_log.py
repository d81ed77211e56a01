"""`tinbook log bake`: one line more, and not a byte of what was there is touched."""

from __future__ import annotations

from collections.abc import Callable
from datetime import date
from pathlib import Path

import pytest
from click.testing import Result

from tinbook.loading import load_book
from tinbook.source import LARGEST_BYTES

Run = Callable[..., Result]
BAKE = (
    "log", "bake", "creamed-butter-sponge", "--tin", "round 20 cm x 7.5 cm", "--oven", "140 °C fan",
    "--done-after", "1 h 10 min",
)  # fmt: skip


@pytest.fixture
def path(book: Path) -> Path:
    return book / "recipes/house/bakes.yaml"


def test_a_line_is_added_and_the_change_is_told(run: Run, book: Path, path: Path) -> None:
    before = path.read_bytes()
    done = run(*BAKE, "--batter", "1150 g", "--baked", "55 mm", "--out", "1.08 kg", "--day", "2026-11-02")
    assert done.exit_code == 0, done.output
    after = path.read_bytes()
    assert after.startswith(before) and after.count(b"\n") == before.count(b"\n") + 1
    line = (
        "  - {day: 2026-11-02, of: creamed-butter-sponge, tin: round 20 cm x 7.5 cm, batter: 1150 g, oven: 140 °C fan, "
        "done after: 1 h 10 min, baked: 55 mm, out: 1.08 kg}"
    )
    assert after[len(before) :].decode() == line + "\n"
    assert "Added one line to recipes/house/bakes.yaml:" in done.output and line in done.output
    assert "going by 6 of your bakes" in done.output and "start checking at" in done.output
    assert "it rises" in done.output and "it loses" in done.output
    loaded = load_book(book / "recipes")
    assert not loaded.problems and loaded.book.bakes[-1].done_after == 70.0


@pytest.mark.parametrize(
    ("old", "added"),
    [
        (b"bakes:\n  - {%s}", b"\n  - {"),
        (b"\xef\xbb\xbf# ours\r\nbakes:\r\n- {%s}\r\n", b"- {"),
        (b"bakes:\n    - {%s}\n\n# the end\n", b"    - {"),
        (None, b"# What came out of this oven, one line for each bake.\nbakes:\n  - {"),
    ],
)
def test_it_is_written_as_the_file_is(run: Run, path: Path, old: bytes | None, added: bytes) -> None:
    entry = b"day: 2026-05-02, of: mud-cake, tin: round 20 cm, batter: 1 kg, oven: 160 \xc2\xb0C, done after: 80 min"
    if old is None:
        path.unlink()
        before = b""
    else:
        before = old % entry
        path.write_bytes(before)
    done = run(*BAKE, "--batter-depth", "44 mm")
    assert done.exit_code == 0, done.output
    after = path.read_bytes()
    assert after.startswith(before) and after[len(before) :].startswith(added)
    assert after.endswith(b"\r\n") == (b"\r\n" in before)
    assert date.today().isoformat().encode() in after[len(before) :]


@pytest.mark.parametrize(
    ("old", "told"),
    [
        (b"bakes: []\n", "nothing can be added at the end"),
        (b"bakes:\n  - {%s}\nprivate: yes\n", "nothing can be added at the end"),
        (b"bakes:\n  - {%s, centre: 140 \xc2\xb0C}\n", "has a mistake in it"),
        (b"bakes:\n\t- x\n", "has a mistake in it"),
    ],
)
def test_where_it_cannot_be_added_the_line_is_given(run: Run, path: Path, old: bytes, told: str) -> None:
    entry = b"day: 2026-05-02, of: mud-cake, tin: round 20 cm, batter: 1 kg, oven: 160 \xc2\xb0C, done after: 80 min"
    old = old.replace(b"%s", entry)
    path.write_bytes(old)
    done = run(*BAKE, "--batter", "1150 g")
    assert done.exit_code == 1 and told in done.output
    assert "  - {day: " in done.output
    assert path.read_bytes() == old


@pytest.mark.parametrize(
    ("change", "told"),
    [
        (("creamed-butter-sponge", "creamd-butter-sponge"), 'did you mean "creamed-butter-sponge"?'),
        (("creamed-butter-sponge", "lemon-curd"), "is not baked"),
        (("1 h 10 min", "70"), '--done-after: no unit after "70": write it with its unit, for example 45 min'),
        (("1 h 10 min", "6 h"), "--done-after: 360 min is far from"),
        (("140 °C fan", "140"), '--oven: is "140" in °C or °F?'),
        (("round 20 cm x 7.5 cm", "2 round 20 cm"), "--tin: only one tin can go here"),
    ],
)
def test_a_slip_is_told_and_nothing_is_written(run: Run, path: Path, change: tuple[str, str], told: str) -> None:
    before = path.read_bytes()
    words = [change[1] if word == change[0] else word for word in BAKE]
    done = run(*words, "--batter", "1150 g")
    assert done.exit_code == 1 and told in done.output
    assert path.read_bytes() == before


def test_without_batter_it_asks(run: Run, path: Path) -> None:
    done = run(*BAKE)
    assert done.exit_code == 1 and "how much batter was in the tin?" in done.output


@pytest.mark.parametrize(
    "note", ["Nice: a gull", 'the "old" tin, {bent}', "null", "# not a remark", "½ mm short", "- no"]
)
def test_a_note_comes_back_as_it_was_said(run: Run, book: Path, note: str) -> None:
    done = run(*BAKE, "--batter", "1150 g", "--note", note)
    assert done.exit_code == 0, done.output
    assert load_book(book / "recipes").book.bakes[-1].note == note


def test_a_tin_with_a_comma_is_quoted(run: Run, book: Path) -> None:
    words = ["ring 23 cm x 7.5 cm, tube 7.5 cm" if word.startswith("round") else word for word in BAKE]
    done = run(*words, "--batter", "1150 g")
    assert done.exit_code == 0, done.output
    assert load_book(book / "recipes").book.bakes[-1].tin.shape == "ring"


def test_a_full_log_goes_on_by_year(run: Run, book: Path, path: Path) -> None:
    """A file of a book is read up to 1 MB; a bake more would close the whole log."""
    entry = "  - {day: 2026-05-02, of: mud-cake, tin: round 20 cm, batter: 1 kg, oven: 160 °C, done after: 80 min}\n"
    many, remark = 50, "  # as it was written down at the time\n"
    filled = "bakes:\n" + entry * many
    filled += remark * ((LARGEST_BYTES - 10 - len(filled.encode())) // len(remark))
    assert LARGEST_BYTES - len(entry.encode()) < len(filled.encode()) < LARGEST_BYTES
    path.write_text(filled, "utf-8")
    before = path.read_bytes()
    for day in ("2026-11-02", "2027-01-05", "2026-11-09"):
        done = run(*BAKE, "--batter", "1150 g", "--day", day)
        assert done.exit_code == 0, done.output
        assert f"Added one line to recipes/house/bakes-{day[:4]}.yaml:" in done.output
    assert path.read_bytes() == before
    loaded = load_book(book / "recipes")
    assert not loaded.problems
    assert [bake.day.isoformat() for bake in loaded.book.bakes[many:]] == ["2026-11-02", "2026-11-09", "2027-01-05"]


def test_a_log_that_is_too_large_says_where_it_goes_on(run: Run, book: Path, path: Path) -> None:
    path.write_text("bakes:\n" + "  # x\n" * 200_000, "utf-8")
    done = run("check")
    assert "larger than 1 MB" in done.output and "house/bakes-2026.yaml" in done.output
