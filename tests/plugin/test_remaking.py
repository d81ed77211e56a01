"""A preview shows what a build from nothing would show, byte for byte, whatever was changed."""

from __future__ import annotations

import random
import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from tests.every import all_seeds
from tests.plugin.preview import Hand, Preview, changed, values

from tinbook.plugin.remaking import edited_first

ROOT = Path(__file__).parents[2]
SMALL = (
    "mixtures/creamed-butter-sponge", "mixtures/ginger-sponge", "mixtures/coffee-and-walnut-sponge", "mixtures/madeira-cake",
    "mixtures/american-buttercream", "mixtures/modelling-paste", "techniques/line-a-tin", "techniques/coil-of-rope",
    "techniques/colour-paste", "techniques/wave-and-reed-pattern",
)  # fmt: skip
"""Sources of the demo that lead to one another, besides those of its house."""


LINKS = re.compile(r"^(techniques|related|mixtures): .*$", re.MULTILINE)
LEADS_TO = {"techniques": "line-a-tin", "related": "colour-paste", "mixtures": "modelling-paste, madeira-cake"}
"""Links to what the demo has besides are links within the small book."""


CARD = re.compile(r"(?m)^  (?=[^\s#])")
"""Before each card of the larder."""


def few_cards(text: str, sources: str) -> str:
    """The larder with the cards that sources name, and those that these name: a card is a page."""
    head, *cards = CARD.split(text)
    kept: set[int] = set()
    while new := {at for at, card in enumerate(cards) if at not in kept and card.partition(":")[0] in sources}:
        kept |= new
        sources += "".join(cards[at].partition(":")[2] for at in new)
    assert 20 < len(kept) < len(cards)
    return "  ".join((head, *(cards[at] for at in sorted(kept))))


@pytest.fixture(scope="module")
def served(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Preview]:
    """A small book of real sources, and its preview."""
    tmp_path = tmp_path_factory.mktemp("served")
    shutil.copytree(ROOT / "recipes/house", tmp_path / "recipes/house")
    sources = "".join((ROOT / "recipes" / f"{name}.yaml").read_text("utf-8") for name in SMALL)
    larder = tmp_path / "recipes/house/ingredients.yaml"
    larder.write_text(few_cards(larder.read_text("utf-8"), sources), "utf-8")
    for name in SMALL:
        path = tmp_path / "recipes" / f"{name}.yaml"
        path.parent.mkdir(exist_ok=True)
        text = (ROOT / "recipes" / f"{name}.yaml").read_text("utf-8")
        path.write_text(LINKS.sub(lambda found: f"{found[1]}: [{LEADS_TO[found[1]]}]", text), "utf-8")
    shutil.copytree(ROOT / "recipes/pictures", tmp_path / "recipes/pictures")
    (tmp_path / "book_src").mkdir()
    (tmp_path / "book_src/by-hand.md").write_text("# By hand\n\nWords of our own.\n", "utf-8")
    text = (ROOT / "mkdocs.yml").read_text("utf-8")
    (tmp_path / "mkdocs.yml").write_text(text.replace("site_demo/book", "site"), "utf-8")
    made = Preview(tmp_path)
    yield made
    made._forget()


def sources(book: Path) -> dict[Path, bytes]:
    found = [path for name in ("recipes", "book_src") for path in (book / name).rglob("*") if path.is_file()]
    return {path: path.read_bytes() for path in found}


@pytest.fixture
def preview(served: Preview) -> Iterator[Preview]:
    """That preview; after a test its book is as it was before, and so is what is shown."""
    before = sources(served.book)
    yield served
    for path in sources(served.book).keys() - before.keys():
        path.unlink()
    for path, content in before.items():
        if not path.is_file() or path.read_bytes() != content:
            path.write_bytes(content)
    served.follow()


@pytest.fixture
def book(preview: Preview) -> Path:
    return preview.book


def same(preview: Preview, told: str) -> None:
    shown, whole = preview.shown(), preview.from_nothing()
    assert set(shown) == set(whole), told
    assert [name for name in whole if shown[name] != whole[name]] == [], told


@pytest.mark.long
def test_every_kind_of_value_of_every_source(book: Path, preview: Preview) -> None:
    """In an ordinary run a dozen values of as many files, and three are followed before what is shown is looked at, as a
    build from nothing is what costs; each value of all files by itself, with --all-seeds."""
    places = list(values(book))
    assert len(places) > 600
    at_once, outcomes = 1, []
    if not all_seeds():
        dice, files = random.Random(1), sorted({path for path, *_ in places})
        places = [dice.choice([each for each in places if each[0] == path]) for path in dice.sample(files, 12)]
        at_once = 3
    for first in range(0, len(places), at_once):
        told, before = "", {}
        for path, start, end in places[first : first + at_once]:
            text = before[path] = path.read_text("utf-8")
            told += f"{path.name}: {text[max(0, start - 20) : end]}\n"
            path.write_text(text[:start] + changed(text[start:end]) + text[end:], "utf-8")
            outcomes.append(preview.follow())
        same(preview, told)
        for path, text in before.items():
            path.write_text(text, "utf-8")
        preview.follow()
    same(preview, "as it was")
    assert outcomes.count("too far") < len(outcomes) / 2


@pytest.mark.parametrize("seed", [1])
def test_whatever_a_hand_does(book: Path, preview: Preview, seed: int) -> None:
    """Values changed, files broken and mended, renamed, deleted, added: ten edits, and what is shown is looked at after
    every other one; two hundred and after each, with --all-seeds."""
    hand, told = Hand(book, seed), ""
    for edit in range(200 if all_seeds() else 10):
        told += f"{hand.edit()}\n"
        preview.follow()
        if edit % 2 or all_seeds():
            same(preview, told)


def test_nothing_written_is_nothing_made(preview: Preview, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(type(preview.plugin._last), "_make", None)
    assert preview.follow() == "shown"


def test_the_edited_page_comes_first_and_what_was_left_follows(book: Path, preview: Preview) -> None:
    path = book / "recipes/mixtures/creamed-butter-sponge.yaml"
    path.write_text(
        path.read_text("utf-8").replace("name: ", "name: ", 1).replace("about: |\n  ", "about: |\n  Tideline. ", 1),
        "utf-8",
    )
    page = preview.site / "mixtures/creamed-butter-sponge/index.html"
    assert preview.follow(waiting=lambda: True) == "shown"
    assert "Tideline." in page.read_text("utf-8")
    preview.follow()
    same(preview, "what was left is made, though nothing else was written")


def test_an_edit_taken_back_while_the_rest_was_left(book: Path, preview: Preview) -> None:
    path = book / "recipes/mixtures/creamed-butter-sponge.yaml"
    before = path.read_text("utf-8")
    path.write_text(before.replace("about: |\n  ", "about: |\n  Tideline. ", 1), "utf-8")
    preview.follow(waiting=lambda: True)
    path.write_text(before, "utf-8")
    preview.follow()
    same(preview, "the page shows what is written")


def test_a_page_written_by_hand_or_a_setting_reaches_the_whole_site(book: Path, preview: Preview) -> None:
    (book / "book_src/by-hand.md").write_text("# By hand\n\nOther words.\n", "utf-8")
    assert preview.follow() == "too far"
    same(preview, "a page by hand")


def test_which_pages_are_the_edited_ones() -> None:
    pages = ["home", "mixtures/a", "mixtures/a/tables", "mixtures/b", "techniques/a", "mixtures/index"]
    assert edited_first(pages, {"mixtures/a"}.__contains__) == (
        ["mixtures/a", "mixtures/a/tables"],
        ["home", "mixtures/b", "techniques/a", "mixtures/index"],
    )
