"""Nothing private leaves the kitchen: a secret in every text of every model of the register, looked for in all that
goes out: pages, search, data for machines, the worker's list, sheets and their PDF.
"""

from __future__ import annotations

import subprocess
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import Any

import pytest
import yaml
from click.testing import CliRunner
from tests.books import new_book
from tests.loading.conftest import BASE
from tests.plugin.builds import built

from tinbook.cli import main
from tinbook.loading import load_book
from tinbook.models import read_model, register
from tinbook.models.reading import Private, Text, Written
from tinbook.models.register import Merged, SeenBy, SourceKind, kinds
from tinbook.problems import Problem

pytestmark = pytest.mark.filterwarnings("ignore::DeprecationWarning")

Data = dict[str, Any]


def secret(name: str) -> str:
    """A word that stands in one file only, as it is written and in addresses; where no word can stand, a day or a sum."""
    return {"kitchen": "2031-04-17", "money": "719.43", "prices": "817.29"}.get(name, f"cormorant{name}")


# A sound private entry of each kind: the rest of its texts is planted by `planted`.
ENTRIES: Mapping[str, Data] = {
    "house": {"private": ["address", "cross contact"], "address": f"https://{secret('house')}.example.org"},
    "tins": {"tin": "outline M0 0H80V160H0Z x 5 cm", "name": secret("tins")},
    "ingredients": {"allergens": "none", "private": True},
    "finish": {"private": ["made with"], "made with": {"filling": secret("finish")}},
    "used": {"day": "2026-05-02", "of": "plain-icing", "cake": "round 20 cm", "height": "10 cm", "used": "1600 g"},
    "bakes": {"day": "2026-05-02", "of": "plain-sponge", "tin": "round 20 cm x 7.5 cm", "batter": "700 g",
              "oven": "160 °C", "done after": "37 min"},
    "colours": {"per 100 g": f"2 g gel food colour, {secret('colours')}", "swatch": "#B3261E", "private": True},
    "cutters": {"cutter": "round 40 mm"},
    "mixture": {"name": secret("mixture"), "kind": "buttercream", "mix": ["500 g butter", "500 g caster sugar"],
                "makes": "1 kg",
                "private": True},
    "technique": {"name": secret("technique"), "purpose": secret("technique"), "steps": [secret("technique")],
                  "private": True},
    "supplies": {"what": secret("supplies")},
    "stock": {"day": "2026-05-02", "of": "butter", "counted": "500 g", "line": secret("stock")},
    "labels": {"private": ["maker"], "maker": secret("labels")},
    "opened": {"day": "2026-05-02", "of": "butter", "pack": secret("opened")},
    "money": {"an hour": secret("money")},
    "prices": {"day": "2026-05-02", "of": "butter", "pack": "250 g", "price": secret("prices")},
    "kitchen": {"days off": secret("kitchen")},
    "hours": {"done": "2026-12-05 10:40", "task": secret("hours")},
    "order": {"handle": secret("order"), "hand over": "2026-12-05 11:00", "state": "gone", "cake": secret("order"),
              "size": secret("order"), "change": {"name": secret("order"), "notes": [secret("order")]}},
    "cake": {"name": secret("cake"), "tiers": ["round 20 cm"], "mixture": "plain-sponge", "private": True},
}  # fmt: skip
ICING = {"name": "Plain icing", "kind": "buttercream", "mix": ["500 g butter", "500 g caster sugar"], "makes": "1 kg"}
SAIL = {
    "name": "Set a sail",
    "purpose": "For the front.",
    "steps": ["Cut it."],
    "parts for": "round 20 cm",
    "parts": [{"part": "sail", "solid": "ball 20 mm", "paste": "butter", "colour": secret("coloursname")}],
}
LINKS = {"related", "mixtures", "techniques", "swaps", "care", "counts as", "weighs as", "named for", "pictures", "kind", "made with",
         "private", "additives", "eggs", "allergens", "colour", "batter colour", "plain", "used as", "mixture", "filling", "coat", "cover", "portion"}  # fmt: skip
"""Keys whose words are no free text but lead to something else."""


def planted(model: type[Written], entry: Data, word: str) -> Data:
    """The entry with the word in every key that it leaves out and that takes any text, or a list of them."""
    whole = dict(entry)
    for key in (field.alias or name for name, field in model.model_fields.items()):
        for text in (word, [word]):
            if key not in whole and key not in LINKS and read_model(model, {**whole, key: text}, "it")[0]:
                whole[key] = text
    return whole


def as_file(kind: SourceKind, entry: Data, base: Data | None) -> Data:
    """The whole file with a private entry in it, beside what the small book has there."""
    if kind.merged is Merged.LIST:
        return {kind.key: [*(base or {}).get(kind.key, []), entry], "private": True}
    if kind.merged is Merged.CARDS:
        return {kind.key: {**(base or {}).get(kind.key, {}), secret(f"{kind.name}name"): entry}}
    return {**(base or {}), **entry}


def book_of_secrets(folder: Path) -> Path:
    """A book in which every kind of the register has something private."""
    files: dict[str, Data] = {name: yaml.safe_load(text) for name, text in BASE.items()}
    files["mixtures/plain-icing.yaml"] = ICING
    for name, kind in kinds().items():
        path = kind.path.replace("*", secret(name))
        base = files.get(path)
        whole = {**base, **ENTRIES[name]} if base and not kind.entry else ENTRIES[name]
        files[path] = as_file(kind, planted(kind.entry or kind.model, whole, secret(name)), base)
    # what is private and used: a colour by a public part, a card by another of its names
    files["techniques/set-a-sail.yaml"] = SAIL
    files["house/colours.yaml"]["colours"][secret("coloursname")]["additives"] = ["E129"]
    files["house/ingredients.yaml"]["ingredients"][secret("ingredientsname")] |= {
        "also": ["wick"],
        "weighs as": "salt",
    }
    files["mixtures/plain-icing.yaml"] |= {"mix": [*ICING["mix"], "20 g wick"]}
    files[f"mixtures/{secret('finish')}.yaml"] = ENTRIES["mixture"] | {"name": secret("finish")}
    # beside a private thing, private keys of a public one
    files["mixtures/plain-sponge.yaml"] |= {"notes": [secret("key")], "private": ["notes"]}
    files["techniques/line-a-tin.yaml"] |= {"tips": [secret("key")], "private": ["tips"]}
    for name, data in files.items():
        path = folder / "recipes" / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(yaml.safe_dump(data, allow_unicode=True, sort_keys=False), "utf-8")
    (folder / "book_src").mkdir(exist_ok=True)
    settings = {"site_name": "Lamp Room", "docs_dir": "book_src", "theme": {"name": "material", "font": False}}
    (folder / "mkdocs.yml").write_text(yaml.safe_dump({**settings, "plugins": ["tinbook"]}), "utf-8")
    return folder


def texts(folder: Path) -> Iterator[tuple[str, str]]:
    """Every file below a folder by its name, in small letters; of a PDF its words."""
    for path in sorted(folder.rglob("*")):
        name = path.relative_to(folder).as_posix()
        if path.suffix == ".pdf":
            words = subprocess.run(["pdftotext", path, "-"], capture_output=True, check=True, timeout=60).stdout
            yield name, f"{name} {words.decode()}".lower()
        elif path.is_file():
            yield name, f"{name} {path.read_bytes().decode('utf-8', 'replace')}".lower()


def found(folder: Path, words: set[str]) -> dict[str, list[str]]:
    """The words that stand in files of a folder, with the files."""
    places: dict[str, list[str]] = {}
    for name, text in texts(folder):
        for word in words:
            if word in text:
                places.setdefault(word, []).append(name)
    return places


ALL = {secret(name) for name in (*kinds(), "key", "coloursname", "ingredientsname")}


@pytest.fixture(scope="module")
def secrets(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return book_of_secrets(tmp_path_factory.mktemp("secrets"))


def sound(problems: tuple[Problem, ...]) -> None:
    assert [problem.message for problem in problems] == []


def test_every_kind_has_its_secret(secrets: Path) -> None:
    """The book is sound, so that nothing is missing from the site only because it was broken."""
    sound(load_book(secrets / "recipes").problems)
    sound(load_book(secrets / "recipes", kitchen=False).problems)
    for name, kind in kinds().items():
        text = (secrets / "recipes" / kind.path.replace("*", secret(name))).read_text("utf-8")
        assert secret(name) in text, name


@pytest.mark.parametrize("folder", [False, True], ids=["hosted", "folder"])
def test_a_public_build_has_no_secret(secrets: Path, tmp_path: Path, folder: bool) -> None:
    site = built(secrets, tmp_path / "site", folder=folder)
    assert (site / "mixtures" / "plain-sponge.html").is_file() or (site / "mixtures" / "plain-sponge").is_dir()
    assert found(site, ALL) == {}
    words = dict(texts(site))
    sail = next(words[name] for name in words if name.startswith("techniques/set-a-sail") and name.endswith(".html"))
    assert "may have an adverse effect on activity and attention in children" in sail and "colour 1" in sail


def test_the_kitchens_build_has_them_so_they_can_be_found(secrets: Path, tmp_path: Path) -> None:
    """But for what is read for the sums alone, and what no page shows of a tin, a cutter, a cake, the house's
    finish, an order, the kitchen's hours, what it buys and has, or wants for an hour, when nothing is agreed, or what is
    on its labels and its packs alone."""
    places = found(built(secrets, tmp_path / "site", kitchen=True), ALL)
    unseen = (
        "used", "cutters", "finish", "cake", "kitchen", "hours", "supplies", "stock", "labels", "opened", "money",
    )  # fmt: skip
    assert ALL - set(places) <= {secret(name) for name in unseen}
    assert any(name.endswith("find-index.js") for name in places[secret("mixture")])
    assert any(name == "sw.js" for name in places[secret("mixture")])


def test_a_sheet_has_no_secret(secrets: Path, tmp_path: Path) -> None:
    words = ["--book", str(secrets), "sheet", "line-a-tin", "--pdf", "--output", str(tmp_path / "line-a-tin.html")]
    done = CliRunner().invoke(main, words)
    assert done.exit_code == 0, done.output
    assert {path.suffix for path in tmp_path.iterdir()} == {".html", ".pdf"}
    assert found(tmp_path, ALL) == {}


# Another file of the house: its model, and one line in the register.


class Jar(Written):
    """What stands in the larder."""

    jar: Text
    note: Text | None = None
    private: Private = False


class Shelf(Written):
    """jars.yaml."""

    jars: tuple[Jar, ...]
    private: Private = False


def jars(seen_by: SeenBy) -> SourceKind:
    return SourceKind(
        name="jars", model=Shelf, path="house/jars.yaml", merged=Merged.LIST, seen_by=seen_by, key="jars", entry=Jar,
        kept=frozenset(("jar",)) if seen_by is SeenBy.NOBODY else frozenset(),
    )  # fmt: skip


WRITTEN = f"jars:\n  - {{jar: salt, note: {secret('open')}}}\n  - {{jar: rice, note: {secret('jar')}, private: yes}}\n"


@pytest.fixture
def with_jars(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Callable[[SeenBy], Path]:
    def write(seen_by: SeenBy) -> Path:
        monkeypatch.setattr(register, "REGISTER", (*register.REGISTER, jars(seen_by)))
        new_book(tmp_path / "book")
        (tmp_path / "book/recipes/house/jars.yaml").write_text(WRITTEN, "utf-8")
        return tmp_path / "book"

    return write


@pytest.mark.parametrize(
    ("seen_by", "shown", "held"),
    [
        (SeenBy.EVERYONE, [("salt", secret("open"))], [("salt", secret("open")), ("rice", secret("jar"))]),
        (SeenBy.KITCHEN, [], [("salt", secret("open")), ("rice", secret("jar"))]),
        (SeenBy.NOBODY, [("salt", None), ("rice", None)], [("salt", None), ("rice", None)]),
    ],
    ids=lambda given: given.name if isinstance(given, SeenBy) else "",
)
def test_another_file_is_its_model_and_one_line(
    with_jars: Callable[[SeenBy], Path], seen_by: SeenBy, shown: list[Any], held: list[Any]
) -> None:
    book = with_jars(seen_by)
    kitchen, public = load_book(book / "recipes"), load_book(book / "recipes", kitchen=False)
    sound(kitchen.problems)
    assert [(jar.jar, jar.note) for jar in kitchen.book.others["jars"]] == held
    assert [(jar.jar, jar.note) for jar in public.book.others["jars"]] == shown
    assert (book / "schema/jars.json").is_file()
    assert "house/jars.yaml" in (book / ".vscode/settings.json").read_text("utf-8")
    ignored = (book / ".gitignore").read_text("utf-8").splitlines()
    assert ("recipes/house/jars.yaml" in ignored) == (seen_by is SeenBy.KITCHEN)
    words = {secret("jar")} if seen_by is SeenBy.EVERYONE else {secret("jar"), secret("open")}
    assert found(built(book), words) == {}


def test_a_slip_in_it_is_told_with_its_place(with_jars: Callable[[SeenBy], Path]) -> None:
    book = with_jars(SeenBy.KITCHEN)
    (book / "recipes/house/jars.yaml").write_text("jars:\n  - {jar: salt, notr: fine}\n", "utf-8")
    (problem,) = load_book(book / "recipes").problems
    assert (problem.place.file, problem.place.line, problem.hint) == (
        "recipes/house/jars.yaml",
        2,
        'did you mean "note"?',
    )
    assert load_book(book / "recipes").book.others["jars"] == ()


def test_who_may_see_it_must_be_said() -> None:
    with pytest.raises(TypeError, match="seen_by"):
        SourceKind(name="jars", model=Shelf, path="house/jars.yaml", merged=Merged.LIST)  # type: ignore[call-arg]
