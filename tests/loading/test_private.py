"""What is private is in the kitchen's book, and nowhere in the one a site is built from."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import fields
from pathlib import Path
from typing import Any

import pytest
from pydantic import BaseModel
from tests.every import every

from tinbook.loading import Loaded, load_book
from tinbook.loading.private import private_flaws, public
from tinbook.models import Book, Card, House, Larder, Mixture, Technique, TinShelf, read_model
from tinbook.plans.base.weighing import weigh_all
from tinbook.plans.mixtures.safety import allergens, cautions

Write = Callable[..., Path]
# A word that is written in private places only.
SECRET = "cormorant"
SPONGE = "mixtures/plain-sponge.yaml"
CARDS = "house/ingredients.yaml"


def with_lines(text: str, card: str, *lines: str) -> str:
    """The ingredients with more lines on a card."""
    assert f"  {card}:\n" in text
    return text.replace(f"  {card}:\n", "".join([f"  {card}:\n", *(f"    {line}\n" for line in lines)]))


def words(found: Any) -> str:
    """Everything in a book, as one text."""
    return repr(found).lower()


def both(folder: Path) -> tuple[Loaded, Loaded]:
    return load_book(folder, kitchen=True), load_book(folder, kitchen=False)


def test_a_private_mixture(write: Write, base: Mapping[str, str]) -> None:
    text = base[SPONGE].replace("Plain sponge", SECRET) + "private: yes\n"
    kitchen, site = both(write({f"mixtures/{SECRET}.yaml": text}))
    assert SECRET in kitchen.book.mixtures
    assert SECRET not in words(site)
    assert "plain-sponge" in site.book.mixtures
    assert not kitchen.problems
    assert not site.problems


def test_a_private_technique_that_is_linked_to(write: Write, base: Mapping[str, str]) -> None:
    text = base["techniques/line-a-tin.yaml"] + f"tips: [{SECRET}]\nprivate: yes\n"
    kitchen, site = both(write({"techniques/line-a-tin.yaml": text}))
    assert SECRET in words(kitchen.book)
    assert SECRET not in words(site)
    assert "line-a-tin" not in site.book.techniques
    assert not site.problems


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("also", f"[{SECRET}]"),
        ("tags", f"[{SECRET}]"),
        ("about", SECRET),
        ("method", f"[{SECRET}]"),
        ("techniques", "[line-a-tin]"),
        ("keeps", SECRET),
        ("notes", f"[{SECRET}]"),
        ("off balance", SECRET),
    ],
)
def test_a_private_key_of_a_mixture(write: Write, base: Mapping[str, str], key: str, value: str) -> None:
    text = base[SPONGE].replace("techniques: [line-a-tin]\n", "") + f"{key}: {value}\nprivate: [{key}]\n"
    kitchen, site = both(write({SPONGE: text}))
    assert not kitchen.problems
    written = getattr(kitchen.book.mixtures["plain-sponge"], key.replace(" ", "_"))
    assert written
    assert not getattr(site.book.mixtures["plain-sponge"], key.replace(" ", "_"))
    assert SECRET not in words(site)
    assert site.book.mixtures["plain-sponge"].private is False


@pytest.mark.parametrize("key", ["also", "tags", "tips", "related", "mixtures"])
def test_a_private_key_of_a_technique(write: Write, base: Mapping[str, str], key: str) -> None:
    value = {"related": "line-a-tin", "mixtures": "plain-sponge"}.get(key, SECRET)
    text = base["techniques/line-a-tin.yaml"].replace("mixtures: [plain-sponge]\n", "")
    kitchen, site = both(write({"techniques/line-a-tin.yaml": text + f"{key}: [{value}]\nprivate: [{key}]\n"}))
    assert not kitchen.problems
    assert len(getattr(kitchen.book.techniques["line-a-tin"], key)) == 1
    assert getattr(site.book.techniques["line-a-tin"], key) == ()
    assert SECRET not in words(site)


def test_private_keys_of_the_house(write: Write, base: Mapping[str, str]) -> None:
    house = base["house/house.yaml"] + "mixer bowl: 1771 g\nshelves: 7\nprivate: [mixer bowl, shelves]\n"
    kitchen, site = both(write({"house/house.yaml": house}))
    assert (kitchen.book.house.mixer_bowl, kitchen.book.house.shelves) == (1771.0, 7)
    assert (site.book.house.mixer_bowl, site.book.house.shelves) == (None, 1)
    assert "1771" not in words(site)


def test_private_tins(write: Write) -> None:
    kitchen, site = both(write({"house/tins.yaml": "tins:\n  - {tin: round 33 cm x 7.5 cm}\nprivate: yes\n"}))
    assert len(kitchen.book.tins) == 1
    assert site.book.tins == ()
    assert "330.0" not in words(site)


@pytest.mark.parametrize(("word", "held"), [("no", False), ("No", False), ("false", False), ("Yes", True)])
def test_how_no_is_spelled(write: Write, base: Mapping[str, str], word: str, held: bool) -> None:
    text = base["house/tins.yaml"] + f"private: {word}\n"
    kitchen, site = both(write({"house/tins.yaml": text}))
    assert not kitchen.problems
    assert (site.book.tins == ()) == held


@pytest.mark.parametrize("slip", ["maybe", "[tins]", "{a: b}", "~", "yes\nprivate: no"])
def test_in_doubt_tins_are_held_back(write: Write, base: Mapping[str, str], slip: str) -> None:
    _, site = both(write({"house/tins.yaml": base["house/tins.yaml"] + f"private: {slip}\n"}))
    assert len(site.problems) == 1
    assert site.book.tins == ()


def test_a_private_note_of_a_card(write: Write, base: Mapping[str, str]) -> None:
    text = with_lines(base[CARDS], "butter", f"notes: [{SECRET}]", "private: [notes]")
    kitchen, site = both(write({CARDS: text}))
    assert kitchen.book.cards["butter"].notes == (SECRET,)
    assert site.book.cards["butter"].notes == ()
    assert SECRET not in words(site)


def test_a_private_card_keeps_its_swaps_back(write: Write, base: Mapping[str, str]) -> None:
    text = with_lines(base[CARDS], "caster sugar", "private: yes", "swaps: [caster from granulated]")
    kitchen, site = both(write({CARDS: text}))
    assert kitchen.book.cards["caster sugar"].swaps == ("caster from granulated",)
    assert site.book.cards["caster sugar"].swaps == ()


PRIVATE_CARDS: dict[str, Callable[[str], str]] = {
    "the card": lambda text: with_lines(text, "caster sugar", "private: yes", f"notes: [{SECRET}]"),
    "what it is": lambda text: with_lines(text, "caster sugar", "private: [also, about]", f"about: {SECRET}"),
    "the card with what it is": lambda text: with_lines(text, "caster sugar", "private: yes", f"about: {SECRET}"),
    "all cards": lambda text: "private: yes\n" + with_lines(text, "caster sugar", f"notes: [{SECRET}]"),
    "its other names": lambda text: with_lines(text, "caster sugar", "private: [also]"),
}


@pytest.mark.parametrize("change", PRIVATE_CARDS.values(), ids=PRIVATE_CARDS)
def test_a_private_card_keeps_what_sums_and_safety_need(
    write: Write, base: Mapping[str, str], change: Callable[[str], str]
) -> None:
    """Its words go; a mixture that calls it by a name held back is weighed as before, with its allergens.

    What is private as a whole goes by the word the mixture writes, what has private keys by the name on its card.
    """
    text = change(base[CARDS].replace("allergens: none\n  egg", "allergens: [milk]\n    care: [honey]\n  egg"))
    sponge = base[SPONGE].replace("300 g caster sugar", "300 g superfine sugar")
    kitchen, site = both(write({CARDS: text, SPONGE: sponge}))
    assert not kitchen.problems
    assert SECRET not in words(site)
    name = "superfine sugar" if "private: yes" in text else "caster sugar"
    mine, shown = kitchen.book.cards["caster sugar"], site.book.cards[name]
    assert len({"superfine sugar", "caster sugar"} & set(site.book.cards)) == 1
    assert mine.also == ("superfine sugar",)
    assert shown.also == ()
    assert (shown.weighs_as, shown.allergens, shown.care) == (mine.weighs_as, mine.allergens, mine.care)
    ours = weigh_all(kitchen.book, kitchen.facts)["plain-sponge"]
    theirs = weigh_all(site.book, site.facts)["plain-sponge"]

    def named(found: object) -> str:
        return repr(found).replace("'caster sugar'", repr(name))

    assert named(ours.ingredients) == repr(theirs.ingredients)
    assert named(allergens(ours, kitchen.book, kitchen.facts)) == repr(allergens(theirs, site.book, site.facts))
    assert cautions(ours, kitchen.book, kitchen.facts) == cautions(theirs, site.book, site.facts)


@every(
    ("model", "data"),
    [
        (House, {"book": "1", "name": "x"}),
        (Card, {}),
        (Mixture, {"name": "x", "kind": "creamed", "mix": ["1 kg butter"]}),
        (Technique, {"name": "x", "purpose": "x", "steps": ["x"]}),
        (Larder, {"ingredients": {}}),
        (TinShelf, {"tins": []}),
    ],
    ids=lambda given: given.__name__ if isinstance(given, type) else "",
)
def test_what_sums_and_safety_need_cannot_be_private(model: type[Any], data: dict[str, Any]) -> None:
    for name, field in model.model_fields.items():
        key = field.alias or name
        read, flaws = read_model(model, {**data, "private": [key]}, "it")
        assert read is not None, flaws
        found = list(private_flaws(read))
        if field.is_required() or key in model.needed or key == "private":
            assert [flaw.path for flaw in found] == [("private", 0)]
            assert public(read) is not None or key != "private"
        else:
            assert not found
            shown = public(read)
            assert shown is not None
            assert getattr(shown, name) == field.get_default()


def test_every_needed_key_is_one() -> None:
    for model in (House, Card, Mixture, Technique, Larder, TinShelf):
        assert model.needed <= {field.alias or name for name, field in model.model_fields.items()}


def test_sums_are_the_same_on_the_site(write: Write, base: Mapping[str, str], demo: Loaded) -> None:
    """Whatever is held back, the demo's tables do not change by it."""
    site = load_book(Path(__file__).parents[2] / "recipes", kitchen=False)
    ours, theirs = weigh_all(demo.book, demo.facts), weigh_all(site.book, site.facts)
    assert set(theirs) <= set(ours)
    assert theirs
    for slug, batch in theirs.items():
        assert batch.ingredients == ours[slug].ingredients
        assert batch.depth_mm == ours[slug].depth_mm


SOUND = "kind: creamed\nmakes: 1 kg\nmix: [1 kg butter]\n"
BROKEN = {
    "unreadable": f"name: {SECRET}\nprivate: yes\nmix: [\n",
    "unreadable before that": f"name: {SECRET}\nmix: [\nprivate: yes\n",
    "a slip": f"name: {SECRET}\nkind: {SECRET}\nmakes: 1 kg\nmix: [1 kg {SECRET}]\nprivate: yes\n",
    "a slip in what is private": f"name: x\n{SOUND}notes: [{{{SECRET}: x}}]\nprivate: [notes]\n",
    "misspelled": f"name: {SECRET}\n{SOUND}privat: yes\n",
    "in capitals": f"name: {SECRET}\n{SOUND}PRIVATE: yes\n",
    "neither yes nor no": f"name: {SECRET}\n{SOUND}private: maybe\n",
    "twice": f"name: {SECRET}\nname: x\nprivate: yes\n",
    "in two documents": f"name: {SECRET}\n---\nprivate: yes\n",
}


@pytest.mark.parametrize("text", BROKEN.values(), ids=BROKEN)
@pytest.mark.parametrize("code", ["utf-8", "utf-16", "latin-1"])
def test_a_broken_private_page_is_not_shown_either(write: Write, text: str, code: str) -> None:
    kitchen, site = both(write({f"mixtures/{SECRET}.yaml": text.encode(code)}))
    assert kitchen.problems
    assert f"mixtures/{SECRET}" in kitchen.broken
    assert SECRET not in words(site.book)
    assert SECRET not in words(site.broken)


def test_a_broken_page_of_no_secret_is_shown(write: Write) -> None:
    _, site = both(write({"mixtures/open.yaml": "name: [\n"}))
    assert set(site.broken) == {"mixtures/open"}


def test_no_hint_on_a_broken_page_names_what_is_private(write: Write, base: Mapping[str, str]) -> None:
    files = {
        CARDS: base[CARDS].replace("  lavender:\n", f"  {SECRET} egg:\n    private: yes\n"),
        f"techniques/{SECRET}.yaml": "name: x\npurpose: x\nsteps: [x]\nprivate: yes\n",
        SPONGE: base[SPONGE].replace("6 eggs", "6 cormoran egg").replace("[line-a-tin]", "[cormoran]"),
    }
    kitchen, site = both(write(files))
    assert [problem.hint.count(SECRET) for problem in kitchen.broken["mixtures/plain-sponge"]] == [1, 1]
    assert len(site.broken["mixtures/plain-sponge"]) == 2
    assert SECRET not in words(site.broken)


def test_a_page_kept_back_by_a_private_card_does_not_show_the_card(write: Write, base: Mapping[str, str]) -> None:
    text = base[CARDS].replace("    allergens: [milk]\n", f"    allergens: [{SECRET}]\n    private: yes\n")
    kitchen, site = both(write({CARDS: text}))
    assert SECRET in words(kitchen.problems)
    assert [problem.message for problem in site.broken["mixtures/plain-sponge"]] == [
        'the card for "butter" has a mistake in it'
    ]
    assert SECRET not in words(site.broken)


SLIPS = {
    "a colour": ("techniques/sail.yaml", "parts: [{part: a, solid: ball 20 mm, paste: butter, colour: cormorand}]\n"),
    "a paste": ("techniques/sail.yaml", "parts: [{part: a, solid: ball 20 mm, paste: cormorand blend}]\n"),
    "a mark": (SPONGE, "method: [Beat <cormorand butter>.]\n"),
    "what a cake is made with": (SPONGE, "finish: {made with: {filling: cormorand}}\n"),
}


@pytest.mark.parametrize("slip", SLIPS)
def test_a_slip_on_a_public_page_names_nothing_private(write: Write, base: Mapping[str, str], slip: str) -> None:
    """The cure names what is near, and what is near may be private."""
    name, more = SLIPS[slip]
    sail = "name: Sail\npurpose: For show.\nsteps: [Cut it.]\nparts for: round 20 cm\n"
    icing = f"name: {SECRET}\nkind: buttercream\nmakes: 500 g\nmix: [500 g butter]\nprivate: yes\n"
    cards = (
        with_lines(base[CARDS], "butter", "private: yes", f"also: [{SECRET} butter]")
        + f"  {SECRET} blend: {{private: yes}}\n"
    )
    files = {
        CARDS: cards, f"mixtures/{SECRET}.yaml": icing, SPONGE: base[SPONGE],
        "house/colours.yaml": f'colours: {{{SECRET}: {{per 100 g: 2 g gel, swatch: "#B3261E", private: yes}}}}\n',
    }  # fmt: skip
    files[name] = (sail if name.startswith("techniques") else base[SPONGE]) + more
    kitchen, site = both(write(files))
    assert SECRET in words(kitchen.problems)
    assert site.broken and SECRET not in words(site.broken)


def test_a_broken_list_of_private_keys_holds_back_all_the_same(write: Write, base: Mapping[str, str]) -> None:
    house = base["house/house.yaml"] + "mixer bowl: 1771 g\nprivate: [mixer bwl]\n"
    _, site = both(write({"house/house.yaml": house}))
    assert site.problems
    assert site.book.house.mixer_bowl is None


def test_nothing_of_a_model_is_left_that_is_private(demo: Loaded) -> None:
    """In the book of the site no model is private as a whole, but cards, and no list of private keys is left."""
    site = load_book(Path(__file__).parents[2] / "recipes", kitchen=False).book

    def models(found: Any) -> list[BaseModel]:
        if isinstance(found, BaseModel):
            return [found, *(inner for value in found.__dict__.values() for inner in models(value))]
        if isinstance(found, Mapping):
            return [inner for value in found.values() for inner in models(value)]
        return [inner for value in found for inner in models(value)] if isinstance(found, tuple) else []

    everything = [model for field in fields(Book) for model in models(getattr(site, field.name))]
    assert len(everything) > 100
    for model in everything:
        private = getattr(model, "private", False)
        assert private is False or (isinstance(model, Card) and private is True and not model.notes)


def test_what_is_read_for_the_sums_alone_leaves_its_words_in_the_file(write: Write) -> None:
    """In the kitchen's own book too: how much went on is kept, the note beside it is not."""
    icing = "name: Plain icing\nkind: buttercream\nmakes: 600 g\nmix: [200 g butter, 400 g caster sugar]\n"
    used = (
        "used:\n  - {day: 2026-05-02, of: plain-icing, cake: round 20 cm, height: 10 cm, used: 850 g, "
        f"note: {SECRET} weather}}\n"
    )
    for loaded in both(write({"mixtures/plain-icing.yaml": icing, "house/used.yaml": used})):
        (entry,) = loaded.book.used
        assert not loaded.problems and (entry.used, entry.of) == (850.0, "plain-icing")
        assert entry.note is None and SECRET not in repr(loaded.book.used)
