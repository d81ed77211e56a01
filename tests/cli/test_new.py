"""`tinbook new`: a book and a mixture of one's own; nothing existing is ever overwritten."""

from collections.abc import Callable
from pathlib import Path

import pytest
from click.testing import CliRunner, Result
from mkdocs.commands.build import build
from mkdocs.config import load_config

from tinbook.cli import main
from tinbook.loading import Loaded, load_book
from tinbook.source import read_yaml

Run = Callable[..., Result]
NOTES = """Sunday tray

250 g self-raising flour
- 250 g caster sugar
• 5 large eggs
½ tsp salt
3 knobs butter
200 g cob nuts

Method
1. Beat for 5 min.
2. Bake 45-50 min at 170 °C.
"""


def test_a_new_book_builds_at_once(tmp_path: Path, monkeypatch: object) -> None:
    folder = tmp_path / "tide house"
    done = CliRunner().invoke(main, ["new", "book", str(folder)])
    assert done.exit_code == 0, done.output
    assert load_book(folder / "recipes").problems == ()
    config = load_config(str(folder / "mkdocs.yml"), strict=True)
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    assert "Plain sponge" in (folder / "site" / "mixtures" / "plain-sponge" / "index.html").read_text(encoding="utf-8")
    house = load_book(folder / "recipes").book.house
    assert (house.name, house.tins_sold_in) == ("Tide house", "cm")
    assert "tins sold in: cm       # cm or inches" in (folder / "recipes/house/house.yaml").read_text("utf-8")


@pytest.fixture(scope="module")
def larder(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The book that a newcomer starts from."""
    folder = tmp_path_factory.mktemp("starter") / "book"
    assert CliRunner().invoke(main, ["new", "book", str(folder)]).exit_code == 0
    return load_book(folder / "recipes")


def test_a_new_book_has_a_larder(larder: Loaded) -> None:
    cards = larder.book.cards
    assert larder.problems == () and len(cards) >= 120
    published = [card for card in cards.values() if card.weighs_as and larder.facts.densities[card.weighs_as].source]
    assert len(published) >= 80
    assert larder.book.house_word("large eggs") == "egg" and larder.book.house_word("medium eggs") is None


# Annex II of Regulation (EU) No 1169/2011 (https://eur-lex.europa.eu/eli/reg/2011/1169/oj): what each group is made of
GROUPS = {
    "milk": ("milk", "cream", "butter", "yogurt", "cheese", "mascarpone"),
    "wheat": ("plain flour", "self-raising flour", "white flour", "cake flour", "wholemeal", "semolina"),
    "oats": ("oat",), "rye": ("rye",), "spelt": ("spelt",), "egg": ("egg",), "soya": ("soya",), "almond": ("almond",),
    "hazelnut": ("hazelnut",), "walnut": ("walnut",), "pecan": ("pecan",), "pistachio": ("pistachio",), "sesame": ("sesame",),
    "peanut": ("peanut",),
}  # fmt: skip
MADE_UP = (
    "margarine", "milk chocolate", "dark chocolate", "white chocolate", "sugarpaste", "apricot jam", "mixed peel", "sultanas",
    "dried apricots", "mixed spice", "vegan baking block", "gluten-free flour blend", "peanut butter", "brandy",
)  # fmt: skip


def test_no_card_of_the_larder_is_free_of_what_it_is_made_of(larder: Loaded) -> None:
    other = ("coconut milk", "cream of tartar", "soya drink", "oat drink", "almond drink")
    for name, card in larder.book.cards.items():
        for group, words in GROUPS.items():
            made_of = any(word in name for word in words) and not (group == "milk" and name in other)
            if made_of and card.known_allergens is not None:
                assert group in card.known_allergens, (name, group)
    assert [name for name in MADE_UP if larder.book.cards[name].known_allergens is not None] == []


def test_a_folder_with_something_in_it_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    done = CliRunner().invoke(main, ["new", "book", str(tmp_path)])
    assert done.exit_code == 1 and "is not empty" in done.output
    assert [path.name for path in tmp_path.iterdir()] == ["notes.txt"]


def test_pasted_lines_become_a_mixture(run: Run, book: Path) -> None:
    (book / "notes.txt").write_text(NOTES, encoding="utf-8-sig", newline="\r\n")
    done = run("new", "mixture", "Sunday tray", "--from", str(book / "notes.txt"))
    assert done.exit_code == 0, done.output
    assert "recipes/mixtures/sunday-tray.yaml written: 5 ingredients, 2 steps." in done.output.replace("\\", "/")
    text = (book / "recipes" / "mixtures" / "sunday-tray.yaml").read_text(encoding="utf-8")
    assert "  - 250 g self-raising flour\n" in text
    assert "# unsure: 3 knobs butter" in text
    assert "200 g cob nuts  # unsure: no card for it" in text


def test_told_all_it_needs_the_mixture_is_sound(run: Run, book: Path) -> None:
    sure = NOTES.replace("3 knobs butter\n200 g cob nuts\n", "250 g butter\n")
    words = ("--kind", "creamed", "--tins", "2 round 15 cm x 10 cm")
    done = run("new", "mixture", "sunday-tray", "--from", "-", *words, text=sure)
    assert done.exit_code == 0, done.output
    loaded = load_book(book / "recipes")
    assert loaded.errors == ()
    assert loaded.book.mixtures["sunday-tray"].name == "Sunday tray"


def test_an_existing_mixture_is_never_overwritten(run: Run, book: Path) -> None:
    path = book / "recipes" / "mixtures" / "madeira-cake.yaml"
    before = path.read_bytes()
    done = run("new", "mixture", "Madeira cake", "--from", "-", text=NOTES)
    assert done.exit_code == 1 and "already exists" in done.output
    assert path.read_bytes() == before


def test_what_is_no_text_is_refused(run: Run, book: Path) -> None:
    (book / "photo.jpg").write_bytes(b"\xff\xd8\xff\xe0\x00\x80")
    done = run("new", "mixture", "Photo", "--from", str(book / "photo.jpg"))
    assert done.exit_code == 1 and "not UTF-8" in done.output
    assert not (book / "recipes" / "mixtures" / "photo.yaml").exists()


def test_no_book_no_mixture(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["--book", str(tmp_path), "new", "mixture", "x", "--from", "-"], input=NOTES)
    assert done.exit_code == 1 and "tinbook new book" in done.output


@pytest.mark.parametrize("name", ['a "quoted" house', "back\\slash", "new\nline", "- dash: colon #", "été 2026", "-_-"])
def test_a_book_in_a_folder_of_any_name_is_sound(tmp_path: Path, name: str) -> None:
    done = CliRunner().invoke(main, ["new", "book", str(tmp_path / name)])
    assert done.exit_code == 0, done.output
    assert load_book(tmp_path / name / "recipes").problems == ()
    assert load_config(str(tmp_path / name / "mkdocs.yml")).site_name


def test_an_empty_folder_may_be_there_already(tmp_path: Path) -> None:
    assert CliRunner().invoke(main, ["new", "book", str(tmp_path)]).exit_code == 0
    assert (tmp_path / ".gitignore").is_file()


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("mine", encoding="utf-8")
    for folder in (tmp_path / "file", tmp_path / "file" / "inside"):
        done = CliRunner().invoke(main, ["new", "book", str(folder)])
        assert done.exit_code == 1 and done.output.startswith("Error: "), done.output
    assert (tmp_path / "file").read_text(encoding="utf-8") == "mine"


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (b"\xef\xbb\xbf425 g butter\r\n5 eggs\r\n", "2 ingredients, 0 steps"),
        ("\u202e425 g butter\u202c\n\u2028\n5 eggs\x85".encode(), "2 ingredients, 0 steps"),
        ("425 g butter\n5 eggs\n".encode("utf-16"), "2 ingredients, 0 steps"),
        ("425 g butter\n5 eggs\n".encode("utf-16-be"), "2 ingredients, 0 steps"),
        ("425 g butter\n½ tsp salt, café style\n".encode("cp1252"), "2 ingredients, 0 steps"),
    ],
    ids=["Windows", "invisible", "UTF-16", "UTF-16 without a mark", "Windows-1252"],
)
def test_odd_texts_become_a_file_to_put_right(run: Run, book: Path, raw: bytes, told: str) -> None:
    (book / "notes.txt").write_bytes(raw)
    done = run("new", "mixture", "Odd tray", "--from", str(book / "notes.txt"))
    assert done.exit_code == 0, done.output
    assert told in done.output and "unsure" in done.output
    document, problems = read_yaml((book / "recipes/mixtures/odd-tray.yaml").read_bytes(), "odd-tray.yaml")
    assert document is not None, problems


@pytest.mark.parametrize(
    "raw",
    [
        b"",
        b"\x00\x01\x02 nothing of a recipe \x7f",
        b"8" * 5000 + b" min\nbake " + b"9" * 5000 + b" minutes at 1" + b"0" * 400 + b" C",
        b"1 cup of kindness\n",
    ],
    ids=["empty", "control", "huge numbers", "whose cup"],
)
def test_where_nothing_was_read_nothing_is_written(run: Run, book: Path, raw: bytes) -> None:
    (book / "notes.txt").write_bytes(raw)
    before = sorted((book / "recipes/mixtures").iterdir())
    done = run("new", "mixture", "Odd tray", "--from", str(book / "notes.txt"))
    assert done.exit_code == 1 and "nothing was written" in done.output
    assert sorted((book / "recipes/mixtures").iterdir()) == before


ICED = """Sunday tray
250 g butter
250 g self-raising flour
1 cup caster sugar
Bake 45 min at 170 °C in a 20 cm square tin.

For the buttercream filling
200 g butter
400 g icing sugar
60 g sea buckthorn
Sent from my phone
"""


def test_an_icing_is_a_mixture_of_its_own_and_the_cake_names_it(run: Run, book: Path) -> None:
    done = run("new", "mixture", "Sunday tray", "--from", "-", "--kind", "creamed", text=ICED)
    assert done.exit_code == 0, done.output
    cake = (book / "recipes/mixtures/sunday-tray.yaml").read_text("utf-8")
    icing = (book / "recipes/mixtures/sunday-tray-buttercream-filling.yaml").read_text("utf-8")
    assert "finish: {made with: {filling: sunday-tray-buttercream-filling}}" in cake
    assert "kind: buttercream\n" in icing and "400 g icing sugar" in icing and "400 g icing sugar" not in cake
    assert "left out: Sent from my phone" in done.output
    assert "sea buckthorn: {}   # allergens: unknown" in done.output
    assert "Next: " in done.output


def test_only_tried_nothing_is_written(run: Run, book: Path) -> None:
    before = sorted((book / "recipes/mixtures").iterdir())
    done = run("new", "mixture", "Sunday tray", "--from", "-", "--try", text=ICED)
    assert done.exit_code == 0, done.output
    assert "# recipes/mixtures/sunday-tray.yaml\nname: Sunday tray\n" in done.output
    assert "would be written: 2 ingredients" in done.output
    assert sorted((book / "recipes/mixtures").iterdir()) == before


@pytest.mark.parametrize(("kitchen", "cup"), [("US", "US cup"), ("metric", "metric cup"), ("Australian", "metric cup")])
def test_whose_cups_can_be_said(run: Run, book: Path, kitchen: str, cup: str) -> None:
    done = run("new", "mixture", "Sunday tray", "--from", "-", "--kitchen", kitchen, text=ICED)
    assert done.exit_code == 0, done.output
    assert f"- 1 {cup} caster sugar" in (book / "recipes/mixtures/sunday-tray.yaml").read_text("utf-8")


@pytest.mark.parametrize("name", ["", "  ", "x" * 300, "long " * 60])
def test_a_name_that_is_none_is_refused(run: Run, book: Path, name: str) -> None:
    before = sorted((book / "recipes/mixtures").iterdir())
    done = run("new", "mixture", name, "--from", "-", text=NOTES)
    assert done.exit_code == 1 and "name" in done.output
    assert sorted((book / "recipes/mixtures").iterdir()) == before


@pytest.mark.parametrize("name", ["../outside", "a/b", "..", "Ünïcode tray", "x: y #"])
def test_a_file_of_any_name_lies_among_the_mixtures(run: Run, book: Path, name: str) -> None:
    before = {path for path in book.parent.rglob("*") if path.is_file()}
    done = run("new", "mixture", name, "--from", "-", text=NOTES)
    assert done.exit_code == 0, done.output
    (made,) = {path for path in book.parent.rglob("*") if path.is_file()} - before
    assert made.parent == book / "recipes/mixtures"
    document, problems = read_yaml(made.read_bytes(), made.name)
    assert document is not None and document.data["name"], problems


def test_a_file_that_is_not_there(run: Run) -> None:
    done = run("new", "mixture", "Lost tray", "--from", "no-such-notes.txt")
    assert done.exit_code == 2 and "no-such-notes.txt" in done.output
