"""`tinbook sheet` for a whole cake: in any size it can be made in, and with nothing of the house that is private."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import Result
from tests.cli.test_sheet import SECRET, Words, asked, unpacked

Run = Callable[..., Result]


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """An empty folder to write into."""
    (tmp_path / "out").mkdir()
    monkeypatch.chdir(tmp_path / "out")
    return tmp_path / "out"


def text_of(page: Path) -> str:
    return Words(page.read_text("utf-8")).text.replace("\N{NO-BREAK SPACE}", " ")


def test_a_cake_in_one_file_and_on_paper(run: Run, book: Path, here: Path) -> None:
    done = run("sheet", "estuary-wedding-cake", "--pdf")
    assert done.exit_code == 0, done.output
    assert sorted(path.name for path in here.iterdir()) == ["estuary-wedding-cake.html", "estuary-wedding-cake.pdf"]
    text = text_of(here / "estuary-wedding-cake.html")
    for told in ("Heronsmouth house book", "25 + 20 + 15 cm round", "Pilot's buttercream", "Heron for the side",
                 "Self-raising flour", "Contains:", "Load 1: 1 × round 25 cm", "What holds it up", "Not food: 1 centre dowel and 10 dowels.", "Moving and carrying."):  # fmt: skip
        assert told in text, told
    info = dict(line.split(":", 1) for line in asked("pdfinfo", here / "estuary-wedding-cake.pdf").splitlines())
    assert (info["Title"].strip(), info["Pages"].strip(), info["Tagged"].strip()) == (
        "Estuary wedding cake", "2", "yes",
    )  # fmt: skip


@pytest.mark.parametrize(
    ("words", "name", "size"),
    [
        (("--size", "small"), "lighthouse-cake-small", "15 cm round, small"),
        (("--size", "+1"), "lighthouse-cake-round-23-cm", "23 cm round"),
        (("--guests", "12"), "lighthouse-cake-round-18-cm", "18 cm round"),
        ((), "lighthouse-cake", "20 cm round"),
    ],
)
def test_in_the_size_asked_for(run: Run, book: Path, here: Path, words: tuple[str, ...], name: str, size: str) -> None:
    done = run("sheet", "lighthouse cake", *words)
    assert done.exit_code == 0, done.output
    assert [path.stem for path in here.iterdir()] == [name]
    assert size in text_of(here / f"{name}.html")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("lighthouse-cake", "--guests", "400"), "no size of this cake serves 400"),
        (("lighthouse-cake", "--size", "smal"), 'there is no size "smal": did you mean "small"?'),
        (("lighthouse-cake", "--size", "+1", "--guests", "9"), "--size and --guests cannot be used together"),
        (("lighthouse-cake", "--people", "4"), "--people goes with a technique: leave it out"),
        (("lighthouse-cake", "--cake", "round 20 cm"), "--cake goes with a technique: leave it out"),
        (("line-a-tin", "--guests", "9"), "--guests goes with a whole cake in the book: leave it out"),
        (("lighthouse-cak",), 'the book has no technique or cake "lighthouse-cak"; did you mean "lighthouse-cake"?'),
    ],
)
def test_what_cannot_be_is_said(run: Run, book: Path, here: Path, words: tuple[str, ...], told: str) -> None:
    done = run("sheet", *words)
    assert done.exit_code == 1 and told in done.output, done.output
    assert not list(here.iterdir())


def test_a_cake_and_a_technique_of_one_name(run: Run, book: Path, here: Path) -> None:
    (book / "recipes/cakes/line-a-tin.yaml").write_text(
        "name: Tin cake\ntiers: 20 cm\nmixture: madeira-cake\n", "utf-8"
    )
    done = run("sheet", "line-a-tin")
    assert done.exit_code == 1
    assert 'the book has more than one "line-a-tin": write "techniques/line-a-tin" or "cakes/line-a-tin"' in done.output
    assert run("sheet", "cakes/line-a-tin").exit_code == 0
    assert "Tin cake" in text_of(here / "line-a-tin.html")


def test_nothing_private_goes_along(run: Run, book: Path, here: Path) -> None:
    cake = book / "recipes/cakes/lighthouse-cake.yaml"
    sponge = book / "recipes/mixtures/creamed-butter-sponge.yaml"
    cake.write_text(
        cake.read_text("utf-8").replace("notes: [The lighthouse", f"private: [notes]\nnotes: [{SECRET} The lighthouse")
        .replace("also: [", f"also: [{SECRET} cake, ").replace("tags: [", f"tags: [{SECRET}, "),
        "utf-8",
    )  # fmt: skip
    sponge.write_text(sponge.read_text("utf-8").replace("also: [", f"also: [{SECRET} sponge, "), "utf-8")
    assert SECRET not in run("check").output, "what was planted is not sound"
    assert run("sheet", "lighthouse-cake", "--pdf").exit_code == 0
    html, pdf = (here / "lighthouse-cake.html").read_text("utf-8"), (here / "lighthouse-cake.pdf").read_bytes()
    assert SECRET not in html.lower() and SECRET.encode() not in unpacked(pdf).lower()
    for place in (str(book), str(Path.home())):
        assert place not in html and place.encode() not in unpacked(pdf)
    cake.write_text(cake.read_text("utf-8").replace("private: [notes]", "private: yes"), "utf-8")
    assert '"lighthouse-cake" is private' in run("sheet", "lighthouse-cake").output
