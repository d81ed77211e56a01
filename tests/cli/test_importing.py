"""schema.org data back from a page: every demo recipe keeps its amounts, untidy data is read, hostile data is refused."""

from __future__ import annotations

import json
import shutil
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest
from click.testing import Result
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every, many

from tinbook.cli.drafting import NoteWanted, draft_found
from tinbook.cli.importing import LARGEST, NoRecipe, find_recipe, form_of, minutes_of
from tinbook.loading import Loaded, load_book
from tinbook.pages.lists.schema_org import script_of
from tinbook.site import build_site
from tinbook.source import read_yaml

Run = Callable[..., Result]
ROOT = Path(__file__).parents[2]
PAGE = '<!doctype html>\n<html><head><title>x</title>\n<script type="application/ld+json">{}</script></head><body><p>x</html>'
SPONGE = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Tideline sponge",
    "recipeIngredient": ["250 g butter, soft", "4 eggs"],
    "recipeInstructions": "Beat.\nBake at 160 °C.",
    "recipeCategory": "creamed",
    "recipeYield": "2 round 15 cm x 7.5 cm",
    "cookTime": "PT1H5M",
}


def page_of(data: object) -> str:
    return PAGE.format(json.dumps(data))


@pytest.fixture(scope="module")
def again(demo: Loaded, tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The demo book with each of its mixtures written anew from its page's data."""
    folder = tmp_path_factory.mktemp("again") / "recipes"
    shutil.copytree(ROOT / "recipes", folder)
    shutil.rmtree(folder / "mixtures")
    (folder / "mixtures").mkdir()
    for address, page in build_site(demo.book, demo.facts, {}).pages.items():
        if page.template == "mixture":
            found = find_recipe(PAGE.replace("{}", script_of(page)), "page", page.title)
            made = draft_found(NoteWanted(name=page.title), found, demo.book, demo.facts).main
            (folder / f"{address}.yaml").write_text(made.text, "utf-8")
    return load_book(folder)


def test_every_mixture_comes_back_sound(demo: Loaded, again: Loaded) -> None:
    assert [str(problem) for problem in again.errors] == []
    assert set(again.book.mixtures) == set(demo.book.mixtures)
    assert len(again.book.mixtures) >= 8


def test_every_amount_comes_back(demo: Loaded, again: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        back = again.book.mixtures[slug]
        assert len(back.mix) == len(mixture.mix), slug
        for old, new in zip(mixture.mix, back.mix, strict=True):
            assert new.take.quantity.base == pytest.approx(old.take.quantity.base, rel=1e-12), (slug, old)
            assert new.take.quantity.dimension == old.take.quantity.dimension, (slug, old)
            assert demo.book.house_word(new.take.name) == demo.book.house_word(old.take.name), (slug, old)
            assert new.take.wanted == old.take.wanted, (slug, old)


def test_what_else_the_data_says_comes_back(demo: Loaded, again: Loaded) -> None:
    for slug, mixture in demo.book.mixtures.items():
        back = again.book.mixtures[slug]
        assert (back.name, back.kind, back.also, back.tags) == (mixture.name, mixture.kind, mixture.also, mixture.tags)
        assert back.tins == mixture.tins, slug
        assert (back.about or "").split() == (mixture.about or "").split(), slug
        assert [step.done for step in back.method] == [step.done for step in mixture.method], slug
        if mixture.makes:
            assert back.makes == pytest.approx(mixture.makes, abs=2.5), slug
        if mixture.bake and back.bake:
            assert back.bake.time.high.base == mixture.bake.time.high.base, slug


GRAPH = {
    "@graph": [
        {"@type": "WebSite", "name": "x"},
        {
            "@type": ["Article", "https://schema.org/Recipe"],
            **{key: value for key, value in SPONGE.items() if key[0] != "@"},
        },
    ]
}
SECTIONS = {**SPONGE, "recipeInstructions": [
    {"@type": "HowToSection", "name": "The batter", "itemListElement": [
        {"@type": "HowToStep", "text": "Beat."}, {"@type": "HowToStep", "name": "Fold."}]},
    {"@type": "HowToStep", "itemListElement": [
        {"@type": "HowToDirection", "text": "Bake."}, {"@type": "HowToTip", "text": "Keep the door shut."}]},
    {"@type": "ItemList", "itemListElement": ["Cool.", {"@type": "ListItem", "item": {"text": "Wrap."}}]},
]}  # fmt: skip


@every(
    ("data", "steps"),
    [
        (SPONGE, ["Beat.", "Bake at 160 °C."]),
        ([{"@type": "Person", "name": "x"}, SPONGE], ["Beat.", "Bake at 160 °C."]),
        (GRAPH, ["Beat.", "Bake at 160 °C."]),
        ({"@type": "WebPage", "mainEntity": SPONGE}, ["Beat.", "Bake at 160 °C."]),
        (SECTIONS, ["The batter: Beat.", "Fold.", "Bake.", "Keep the door shut.", "Cool.", "Wrap."]),
        ({**SPONGE, "recipeInstructions": "<ol><li>Beat &amp; fold.</li><li>Bake.</li></ol>"}, ["Beat & fold.", "Bake."]),
        ({**SPONGE, "recipeInstructions": "&lt;p&gt;Beat &amp;amp; fold.&lt;/p&gt;"}, ["Beat & fold."]),
        ({**SPONGE, "recipeInstructions": [["Beat."], None, 3, {"text": ["Bake."]}]}, ["Beat.", "3", "Bake."]),
        ({**SPONGE, "recipeInstructions": None}, []),
    ],
)  # fmt: skip
def test_steps_however_they_are_told(data: Any, steps: list[str]) -> None:
    assert list(find_recipe(page_of(data), "page", "x").steps) == steps
    assert list(find_recipe(json.dumps(data), "json", "x").steps) == steps


@pytest.mark.parametrize(
    ("changes", "read"),
    [
        ({"recipeIngredient": "250 g butter"}, ("250 g butter",)),
        ({"recipeIngredient": ["250&nbsp;g butter", " 4\n eggs "]}, ("250 g butter", "4", "eggs")),
        ({"recipeIngredient": None, "ingredients": ["&frac12; tsp salt"]}, ("½ tsp salt",)),
        ({"recipeIngredient": [{"@type": "PropertyValue", "value": 250, "unitText": "g", "name": "butter"}]},
         ("250 g butter",)),
    ],
)  # fmt: skip
def test_ingredients_however_they_are_told(changes: dict[str, Any], read: tuple[str, ...]) -> None:
    data = {key: value for key, value in {**SPONGE, **changes}.items() if value is not None}
    assert find_recipe(page_of(data), "page", "x").ingredients == read


@every(
    ("text", "minutes"),
    [
        ("PT1H35M", 95), ("PT95M", 95), ("P0DT0H50M", 50), ("P1DT2H", 1560), ("PT0.5H", 30), ("pt1h", 60), ("PT90S", 1.5),
        ("PT0M", None), ("PT", None), ("P1Y", None), ("1 hour", None), ("", None), ("PT" + "9" * 400 + "M", None),
        ("P9W", None), ("-PT5M", None), ("PT1H1H", None), ("PT1H5", None),
    ],
)  # fmt: skip
def test_durations(text: str, minutes: float | None) -> None:
    assert minutes_of(text) == (None if minutes is None else pytest.approx(minutes))


def test_only_scripts_with_data_are_read() -> None:
    data = json.dumps(SPONGE)
    page = f"""<html><!-- <script type="application/ld+json">{{"@type": "Recipe", "name": "no"}}</script> -->
    <script>var x = '<script type="application/ld+json">';</script><style>p {{}}</style>
    <script type="application/ld+json">{{ broken </script>
    <script type='application/LD+JSON; charset=utf-8'>//<![CDATA[\n{data}\n//]]></script>"""
    assert find_recipe(page, "page", "x").ingredients == ("250 g butter, soft", "4 eggs")


def test_of_several_the_one_of_that_name() -> None:
    other = {**SPONGE, "name": "Jetty sponge", "recipeIngredient": ["1 egg"]}
    assert find_recipe(page_of([SPONGE, other]), "page", "jetty sponge").ingredients == ("1 egg",)
    assert find_recipe(page_of([SPONGE, other]), "page", "x").ingredients == ("250 g butter, soft", "4 eggs")
    assert find_recipe(page_of([SPONGE, other]), "page", "x").others == 1


@every(
    ("text", "form", "reason"),
    [
        ("<html><p>250 g butter</html>", "page", "the page has no schema.org Recipe"),
        ("", "page", "the page has no schema.org Recipe"),
        ("{}", "json", "the file has no schema.org Recipe"),
        ("", "json", "line 1, column 1 is not JSON"),
        ('{"@type": "Recipe"', "json", "line 1, column 19 is not JSON"),
        (PAGE.replace("{}", '{"@type": "Recipe",}'), "page", "is not JSON"),
        (PAGE.replace("{}", '{"@type": "HowTo"}'), "page", "the page has no schema.org Recipe"),
        ("[" * 200_000, "json", "nested too deep"),
        ('{"a":' * 200_000, "json", "nested too deep"),
        (" " * (LARGEST + 1), "page", "larger than 5 MB"),
        ("<![", "page", "the page has no"),
        ("<!DOCTYPE [<![CDATA[<!ELEMENT", "page", "the page has no"),
        ('<script type="application/ld+json">{"@type": "Recipe"', "page", "is not JSON"),
    ],
)
def test_what_cannot_be_read_is_told(text: str, form: Any, reason: str) -> None:
    with pytest.raises(NoRecipe, match=reason.replace(".", r"\.")):
        find_recipe(text, form, "x")


@every(
    "piece",
    [
        "<!--",
        "<![CDATA[",
        "<a ",
        "<script>",
        "</",
        '<a b="',
        "<!",
        "<?",
        "&",
        "&#",
        '<script type="application/ld+json">',
        "<a/",
        "<script ",
        '<script "',
    ],
)
def test_a_page_made_to_be_slow_is_read_in_good_time(piece: str) -> None:
    """Half a megabyte of each; what takes the square of the length would take minutes."""
    start = time.process_time()
    with pytest.raises(NoRecipe):
        find_recipe(piece * (500_000 // len(piece)), "page", "x")
    assert time.process_time() - start < 20


@pytest.mark.parametrize("name", ["page.html", "PAGE.HTM", "<stdin>", "notes"])
def test_a_page_is_known_by_its_name_or_its_start(name: str) -> None:
    assert form_of(name, "\n<!DOCTYPE html><html>") == "page"


def test_text_stays_text() -> None:
    assert form_of("notes.txt", "<html>") == ""
    assert form_of("<stdin>", "250 g butter <soft>\n{4 eggs}") == ""
    assert form_of("<stdin>", "[from the tin] sponge") == ""
    assert (form_of("a.json", "x"), form_of("a.jsonld", "x"), form_of("-", ' {"@type":')) == ("json", "json", "json")


VALUES = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=20) | st.floats(),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(["@type", "text", "name", "itemListElement", "value", "item"]), inner, max_size=3
        )
    ),
    max_leaves=8,
)


@many(200)
@given(st.dictionaries(st.sampled_from([*SPONGE, "tool", "keywords", "description", "alternateName"]), VALUES))
def test_any_data_becomes_a_file_that_reads(demo: Loaded, data: dict[str, Any]) -> None:
    found = find_recipe(json.dumps({**data, "@type": "Recipe"}), "json", "Our cake")
    made = draft_found(NoteWanted(name="Our cake"), found, demo.book, demo.facts).main
    document, problems = read_yaml(made.text.encode(), "x.yaml")
    assert document is not None and problems == (), (problems, made.text)
    assert set(document.data) >= {"name", "kind", "mix"}


def test_the_command_reads_a_page(run: Run, book: Path) -> None:
    (book / "page.html").write_text(page_of([SPONGE, {**SPONGE, "name": "Other"}]), "utf-8")
    done = run("new", "mixture", "Tideline sponge", "--from", str(book / "page.html"))
    assert done.exit_code == 0, done.output
    assert "written: 2 ingredients, 2 steps." in done.output
    assert "left out: 1 more on the page" in done.output
    text = (book / "recipes/mixtures/tideline-sponge.yaml").read_text("utf-8")
    assert text == (
        "name: Tideline sponge\nkind: creamed\ntins: 2 round 15 cm x 7.5 cm\nmix:\n  - 250 g butter, soft\n  - 4 eggs\n"
        "bake: {oven: 160 °C, time: 65 min}\n"
        "method:\n  - Beat.\n  - Bake at 160 °C.\n"
    )
    assert load_book(book / "recipes").errors == ()


def test_the_command_reads_pasted_json(run: Run, book: Path) -> None:
    odd = {
        **SPONGE,
        "recipeIngredient": ["salt to taste", "3 knobs butter", "200 g cob nuts"],
        "recipeYield": "12 slices",
    }
    done = run("new", "mixture", "Jetty sponge", "--from", "-", text=json.dumps(odd))
    assert done.exit_code == 0, done.output
    text = (book / "recipes/mixtures/jetty-sponge.yaml").read_text("utf-8")
    for line in ("# unsure: salt to taste", "# unsure: 3 knobs butter", "200 g cob nuts  # unsure", "# unsure: tins:"):
        assert line in text
    assert 'unsure: it says it makes "12 slices"' in done.output


@pytest.mark.parametrize(
    ("name", "raw", "told"),
    [
        ("page.html", b"<html>\xff\xfe", "has no schema.org Recipe"),
        ("page.html", b"<html><p>nothing", "has no schema.org Recipe"),
        ("data.json", b"{", "is not JSON"),
        ("data.json", b"9" * 5000, "has no schema.org Recipe"),
        (
            "data.json",
            b'{"@type": "Recipe", "name": "\\ud800", "description": "\\ud800\\u0000"}',
            "nothing was written",
        ),
    ],
)
def test_the_command_never_falls_over(run: Run, book: Path, name: str, raw: bytes, told: str) -> None:
    (book / name).write_bytes(raw)
    done = run("new", "mixture", "Odd tray", "--from", str(book / name))
    assert told in done.output
    assert (book / "recipes/mixtures/odd-tray.yaml").exists() == (done.exit_code == 0)
