"""Whatever a book loses, all its other pages stand, in the kitchen's book and in the public one.

Every file and every entry of every file of the register is spoilt, taken out, or kept back, one after the other, in a
small book cut from the demo; then each of its pages is written that has read something that is another now. Of the
others, what they link to must be there still. That no page reads what it does not say is tests/plugin/test_remaking.py's
to see; with --all-seeds all of them are written each time.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any, NamedTuple

import pytest
import yaml
from tests.every import all_seeds, check_every
from tests.loading.conftest import BASE

from tinbook.loading import Loaded, load_book
from tinbook.loading.parses import Parses
from tinbook.models.ledger import Kept, Ledger, digest_of
from tinbook.models.register import Merged, kinds
from tinbook.pages.base.page import Page
from tinbook.site import build_site

DEMO = Path(__file__).parents[2] / "recipes"
KEPT = {
    "mixtures": ("creamed-butter-sponge", "coffee-and-walnut-sponge", "american-buttercream", "coffee-buttercream",
                 "mocha-buttercream", "modelling-paste"),
    "cakes": ("lighthouse-cake",),
    "techniques": ("line-a-tin", "lighthouse-for-the-front", "bream-with-scales", "colour-paste"),
}  # fmt: skip
ENTRIES, EVERY_CARD = 1, 12
"""Of tins, cutters, colours and the logs, as many are lost; of the cards every twelfth."""
SELDOM = ("cuts", "portions", "guests", "boards")
"""Kinds of page that take long to write and go by the house alone: they are written where that loses something."""
WAYS = ("spoilt", "astray", "taken out", "private")
Tree = dict[str, Any]


def small_book() -> dict[str, Tree]:
    """Files by their path below recipes/, as plain data: mixtures with a base and without, pastes, parts, logs."""
    wanted = {f"{folder}/{slug}.yaml" for folder, slugs in KEPT.items() for slug in slugs}
    files: dict[str, Tree] = {}
    for path in sorted(DEMO.rglob("*.yaml")):
        name = path.relative_to(DEMO).as_posix()
        if name.startswith("house/") or name in wanted:
            files[name] = yaml.load(path.read_text("utf-8"), Loader=yaml.CBaseLoader)
    written = " ".join(str(data) for name, data in files.items() if not name.startswith("house/"))
    for name, data in files.items():
        for key in ("related", "mixtures", "techniques"):
            if key in data:
                data[key] = [slug for slug in data[key] if f"{slug}.yaml" in str(wanted)]
        if name.startswith("techniques/"):
            data.pop("pictures", None)
            data["steps"] = [{"do": step} if isinstance(step, str) else without_picture(step) for step in data["steps"]]
    cards = files["house/ingredients.yaml"]["ingredients"]
    written += " ".join(card.get("plain", "") for card in cards.values())
    needed = {word: card for word, card in cards.items() if word in written or "each" in card}
    files["house/ingredients.yaml"]["ingredients"] = needed
    for name in ("tins", "cutters", "bakes", "used"):
        entries = files[f"house/{name}.yaml"][name]
        known = [each for each in entries if "of" not in each or f"mixtures/{each['of']}.yaml" in wanted]
        files[f"house/{name}.yaml"][name] = known[:ENTRIES]
    for name in ("stock", "prices", "opened"):
        if entries := files.get(f"house/{name}.yaml"):
            entries[name] = [each for each in entries[name] if each["of"] in needed]
    return files


def without_picture(step: Tree) -> Tree:
    return {key: value for key, value in step.items() if key != "picture"}


BOOK = small_book()


def things() -> Iterator[tuple[str, str | int | None]]:
    """Every file of the book, and every entry in one: the file's path, and where in its list or under which name."""
    for path, data in BOOK.items():
        yield path, None
        kind = next((kind for kind in kinds().values() if kind.path == path), None)
        if kind and kind.key:
            held = data[kind.key]
            lost = list(held)[::EVERY_CARD] if path == "house/ingredients.yaml" else list(held)[:ENTRIES]
            yield from ((path, each if isinstance(held, dict) else at) for at, each in enumerate(lost))


def without(ways: str, path: str, entry: str | int | None) -> dict[str, Tree]:
    """The book in which a thing is `spoilt`, `astray` (sound by itself, but it leads nowhere), `taken out`, `private`."""
    files = yaml.load(yaml.dump(BOOK, Dumper=yaml.CSafeDumper), Loader=yaml.CBaseLoader)
    holder = files if entry is None else files[path][next(kind.key for kind in kinds().values() if kind.path == path)]
    key: Any = path if entry is None else entry
    if ways == "astray":
        holder[key] |= {"techniques" if path.startswith(("mixtures/", "cakes/")) else "related": ["driftwood"]}
    elif ways == "taken out":
        del holder[key]
    elif isinstance(holder[key], dict):
        holder[key] |= {"driftwood": "wet"} if ways == "spoilt" else {"private": "yes"}
    else:
        holder[key] = {"driftwood": "wet"} if ways == "spoilt" else {"tin": holder[key], "private": "yes"}
    return files


class Written(NamedTuple):
    """The pages of a book, once each was written: what each is made from and what it links to, by its address."""

    work: Kept = Kept()
    made_from: Mapping[str, bytes] = {}
    links: Mapping[str, frozenset[str]] = {}


def write_pages(loaded: Loaded, leave: tuple[str, ...] = (), sound: Written = Written()) -> Written:  # noqa: B008
    """Every page of a book, whole, except those that stand as in the `sound` book; a link that leads nowhere raises."""
    ledger = Ledger(sound.work)
    site = build_site(loaded.book, loaded.facts, loaded.broken, ledger)
    made_from, links = {}, {}
    there = {*site.pages, *site.photos, *site.templates}
    standing: dict[str, bool] = {}
    for address, page in site.pages.items():
        if page.template in leave:
            continue
        made_from[address], group = made_of(page), site.group_of(address)
        if sound.made_from.get(address) == made_from[address] and standing.setdefault(group, ledger.stands(group)):
            links[address] = sound.links[address]
        else:
            linked = set[str]()

            def link(address: str, anchor: str = "", linked: set[str] = linked) -> str:
                linked.add(address)
                return f"/{address}#{anchor}"

            with site.reading(address):
                assert page.fill(page.markdown, link), address
            links[address] = frozenset(linked)
        assert links[address] <= there, (address, links[address] - there)
    return Written(ledger.kept() if not sound.links else Kept(), made_from, links)


@pytest.fixture(scope="module")
def loaded_of() -> Callable[[Path, bool], Loaded]:
    """The book of a folder, the kitchen's or the public one. What is as it was in the one loaded before is not read anew,
    except with --all-seeds: how a book is read, loading's own tests see."""
    known = {kitchen: Parses() for kitchen in (True, False)}
    return lambda folder, kitchen: load_book(folder, kitchen, None if all_seeds() else known[kitchen])


def made_of(page: Page) -> bytes:
    """What a page is made from, besides what it reads of the book."""
    return digest_of((page.template, page.title, page.section, page.view, page.part, page.sheet))


@pytest.fixture(scope="module")
def book_with(tmp_path_factory: pytest.TempPathFactory) -> Callable[[Mapping[str, Tree]], Path]:
    """The folder of a book of these files; a file that is as before is not written anew."""
    folder, there = tmp_path_factory.mktemp("dropped") / "recipes", {}

    def write(files: Mapping[str, Tree]) -> Path:
        for name in there.keys() - files.keys():
            (folder / name).unlink()
            del there[name]
        for name, data in files.items():
            if there.get(name) != data:
                (folder / name).parent.mkdir(parents=True, exist_ok=True)
                (folder / name).write_text(yaml.dump(data, Dumper=yaml.CSafeDumper, allow_unicode=True), "utf-8")
                there[name] = data
        return folder

    return write


@pytest.fixture(scope="module")
def sound(
    book_with: Callable[[Mapping[str, Tree]], Path], loaded_of: Callable[[Path, bool], Loaded]
) -> Callable[[bool, Mapping[str, Tree]], Written]:
    """The pages of a book before it loses anything, the kitchen's or the public one; none with --all-seeds."""
    made: dict[tuple[bool, int], Written] = {}

    def written(kitchen: bool, files: Mapping[str, Tree]) -> Written:
        if all_seeds():
            return Written()
        if (kitchen, id(files)) not in made:
            made[kitchen, id(files)] = write_pages(loaded_of(book_with(files), kitchen))
        return made[kitchen, id(files)]

    return written


def test_the_small_book_is_sound_and_has_every_kind(book_with: Callable[[Mapping[str, Tree]], Path]) -> None:
    for kitchen in (True, False):
        loaded = load_book(book_with(BOOK), kitchen)
        assert not loaded.errors
        assert write_pages(loaded).links
    assert set(kinds()) == {
        "mixture",
        "technique",
        "cake",
        "order",
        *(Path(name).stem for name in BOOK if name.startswith("house/")),
    }
    assert loaded.book.varies and loaded.book.bakes and loaded.book.used and loaded.book.colours and loaded.book.cutters
    assert all(
        getattr(loaded.book, kind.field) for kind in kinds().values() if kind.field and kind.merged is not Merged.WHOLE
    )


@pytest.mark.parametrize("ways", WAYS)
@pytest.mark.parametrize("path", BOOK)
def test_every_other_page_stands(
    path: str,
    ways: str,
    book_with: Callable[[Mapping[str, Tree]], Path],
    sound: Callable[[bool, Mapping[str, Tree]], Written],
    loaded_of: Callable[[Path, bool], Loaded],
) -> None:
    """What is kept back is read both ways; for the rest the kitchen's book and the public one take turns, and with
    --all-seeds each thing is tried in both."""
    first = list(BOOK).index(path) + WAYS.index(ways)
    lost = [
        (entry, kitchen)
        for turn, entry in enumerate((entry for name, entry in things() if name == path), first)
        if not (((ways == "private" and entry is None) or ways == "astray") and path.startswith("house/"))
        for kitchen in (True, False)
        if ways == "private" or kitchen == (turn % 2 == 0) or all_seeds()
    ]

    def stands(case: tuple[str | int | None, bool]) -> None:
        entry, kitchen = case
        before = sound(kitchen, BOOK)
        leave = () if path in ("house/house.yaml", "house/finish.yaml") or entry == 0 else SELDOM
        loaded = loaded_of(book_with(without(ways, path, entry)), kitchen)
        written = write_pages(loaded, leave, before).links
        assert set(loaded.broken) <= set(written)
        assert {f"mixtures/{slug}" for slug in loaded.book.mixtures} <= set(written)

    if lost:
        check_every(lost, stands)


BAD = Path(__file__).parents[1] / "source"
SLIPS = sorted([*BAD.glob("bad/*.yaml"), *BAD.glob("bad/*/*.yaml"), *BAD.glob("variations/*.yaml")])


@pytest.mark.parametrize("kitchen", [True, False], ids=["kitchen", "public"])
def test_every_bad_file_leaves_the_rest(
    kitchen: bool,
    book_with: Callable[[Mapping[str, Tree]], Path],
    sound: Callable[[bool, Mapping[str, Tree]], Written],
    loaded_of: Callable[[Path, bool], Loaded],
) -> None:
    """Every fourth file of tests/source in the book of the loading tests, others in either mode, and with --all-seeds
    all of them in both: it is told, and every page is written."""
    small = {name: yaml.load(text, Loader=yaml.CBaseLoader) for name, text in BASE.items()}

    def stands(slip: Path) -> None:
        whole, folder, room = sound(kitchen, small), book_with(small), slip.parent.name
        where = f"{room}/{slip.name}" if room in KEPT else f"house/{room}.yaml"
        if room in ("bad", "variations"):
            where = f"mixtures/{slip.name}"
        before = (folder / where).read_bytes() if (folder / where).exists() else None
        (folder / where).write_bytes(slip.read_bytes())
        try:
            loaded = loaded_of(folder, kitchen)
            written = write_pages(loaded, () if room == "house" else SELDOM, whole).links
            assert loaded.errors
            assert set(loaded.broken) <= set(written)
        finally:
            if before is None:
                (folder / where).unlink()
            else:
                (folder / where).write_bytes(before)

    check_every(SLIPS if all_seeds() else SLIPS[2 * kitchen :: 4], stands)
