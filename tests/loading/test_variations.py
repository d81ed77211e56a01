"""Variations in a book: each slip told once at its place, bases that are missing, broken, private or in a circle.

tests/source/variations/NAME.yaml is put into a small sound book as a mixture; beside it stands what the baker is told.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path

import pytest
from tests.every import every

from tinbook.loading import Loaded, load_book
from tinbook.plans.techniques.naming import mixture_called
from tinbook.problems import spell

Write = Callable[..., Path]
SLIPS = Path(__file__).parents[1] / "source" / "variations"
CASES = sorted(SLIPS.glob("*.yaml"))
SECRET = "cormorant"
CARDS = """\
  milk: {weighs: 1.03 g/ml, allergens: [milk]}
  water: {weighs: 1 g/ml, allergens: none}
  honey: {weighs: 1.4 g/ml, allergens: none, care: [honey]}
  walnuts: {weighs: no volume measure, allergens: [walnut]}
"""
SPONGE = """\
name: Base sponge
kind: creamed
also: [sea sponge]
tags: [everyday]
about: The plain one.
tins: 2 round 20 cm x 7.5 cm
batter depth: 30 mm
mix:
  - 300 g butter, soft
  - 300 g caster sugar
  - {take: 6 eggs, note: beaten}
  - 300 g self-raising flour
  - 60 ml milk
bake: {oven: 160 °C, time: 35-40 min}
method:
  - Beat <butter> and <caster sugar> until pale.
  - Beat in <eggs>, one at a time.
  - {do: "Fold in <self-raising flour>, then <milk>.", called: fold}
  - Bake until done. Wash hands that touched raw eggs.
keeps: Three days.
notes: [Freezes well.]
"""
PAN = """\
name: Base pan cake
kind: mud
tins: round 20 cm x 7.5 cm
mix:
  - {take: 200 g butter, part: for the pan}
  - {take: 200 g caster sugar, part: for the pan}
  - {take: 50 g caster sugar, part: for the top}
  - {take: 4 eggs, part: for the bowl}
  - {take: 200 g self-raising flour, part: for the bowl}
bake: {oven: 160 °C, time: 70-80 min}
method:
  - Melt <butter>.
"""
FILLING = """\
name: Base filling
kind: buttercream
makes: 400 g
mix:
  - 200 g butter
  - 200 g caster sugar
keeps: A week.
"""


@pytest.fixture
def book(write: Write, base: Mapping[str, str]) -> Callable[..., Path]:
    """`book({"mixtures/x.yaml": ...})`: the small book with bases that have a method."""
    files = {
        "house/ingredients.yaml": base["house/ingredients.yaml"] + CARDS,
        "mixtures/base-sponge.yaml": SPONGE,
        "mixtures/base-pan.yaml": PAN,
        "mixtures/base-filling.yaml": FILLING,
        "mixtures/base-secret.yaml": SPONGE.replace("Base sponge", SECRET) + "private: yes\n",
    }
    return lambda more: write({**files, **more})


def told(loaded: Loaded) -> str:
    return "".join(f"{spell(problem)}\n" for problem in loaded.problems)


@every("slip", CASES, ids=lambda path: path.stem)
@every("kitchen", [True, False], ids=["kitchen", "public"])
def test_a_slip_is_told_once_at_its_place(slip: Path, kitchen: bool, book: Callable[..., Path]) -> None:
    folder = book({f"mixtures/{slip.name}": slip.read_bytes()})
    loaded = load_book(folder, kitchen)
    (folder / "mixtures" / slip.name).unlink()
    assert told(loaded) == slip.with_suffix(".txt").read_text(encoding="utf-8")
    (problem,) = loaded.problems
    assert problem.place.file == f"recipes/mixtures/{slip.name}"
    assert problem.hint and len(problem.message) <= 90 and len(problem.hint) <= 240
    hidden = not kitchen and ("private" in slip.read_text("utf-8") or "base-secret" in slip.read_text("utf-8"))
    assert set(loaded.broken) == (set() if hidden else {f"mixtures/{slip.stem}"})
    assert {"plain-sponge", "base-sponge", "base-pan"} <= set(loaded.book.mixtures)


def test_every_slip_has_its_text() -> None:
    assert {path.stem for path in SLIPS.glob("*.txt")} == {path.stem for path in CASES}
    assert len(CASES) > 40


VARIATION = """\
name: Water sponge
from: base-sponge
change:
  - {swap: milk, for: water}
"""


def test_a_variation_is_a_mixture_like_any_other(book: Callable[..., Path]) -> None:
    loaded = load_book(book({"mixtures/water-sponge.yaml": VARIATION}))
    assert not loaded.problems
    made, base = loaded.book.mixtures["water-sponge"], loaded.book.mixtures["base-sponge"]
    assert [line.take.name for line in made.mix] == ["butter", "caster sugar", "eggs", "self-raising flour", "water"]
    assert (made.tins, made.bake, made.keeps, made.notes, made.tags) == (
        base.tins, base.bake, base.keeps, base.notes, base.tags,
    )  # fmt: skip
    assert (made.also, made.about) == ((), None)
    assert made.method[2].do == "Fold in <self-raising flour>, then <water>."
    assert loaded.book.varies["water-sponge"].base == "base-sponge"
    assert list(loaded.book.mixtures) == sorted(loaded.book.mixtures)
    assert loaded.book.variations == {"base-sponge": ("water-sponge",)}


def test_a_variation_may_start_from_a_variation_before_or_after_it(book: Callable[..., Path]) -> None:
    files = {
        "mixtures/water-sponge.yaml": VARIATION,
        "mixtures/a-deep-sponge.yaml": "name: A\nfrom: b-sweet-sponge\nchange: [{amount: 320 g butter}]\n",
        "mixtures/b-sweet-sponge.yaml": "name: B\nfrom: water-sponge\nchange: [{amount: 310 g caster sugar}]\n",
    }
    loaded = load_book(book(files))
    assert not loaded.problems
    grams = [line.take.quantity.base for line in loaded.book.mixtures["a-deep-sponge"].mix]
    assert grams == [320.0, 310.0, 6.0, 300.0, 60.0]


def test_a_circle_is_told_once_and_holds_back_all_of_it(book: Callable[..., Path]) -> None:
    files = {
        "mixtures/x-one.yaml": "name: One\nfrom: x-two\n",
        "mixtures/x-two.yaml": "name: Two\nfrom: x-three\n",
        "mixtures/x-three.yaml": "name: Three\nfrom: x-one\n",
        "mixtures/a-hanger-on.yaml": "name: Hanger-on\nfrom: x-two\n",
    }
    loaded = load_book(book(files))
    assert told(loaded) == (
        "recipes/mixtures/x-one.yaml:2:7: its base leads back to itself\n"
        "    2 | from: x-two\n"
        "      |       ^^^^^ x-one from x-two from x-three from x-one: write one of them out in full, without a base\n"
    )
    assert set(loaded.broken) == {f"mixtures/{slug}" for slug in ("x-one", "x-two", "x-three", "a-hanger-on")}
    assert "base-sponge" in loaded.book.mixtures


@pytest.mark.parametrize(
    "spoilt",
    [SPONGE.replace("300 g butter", "300 g buter"), SPONGE.replace("kind: creamed", "kind: [creamed]"), "name: ["],
)
def test_a_broken_base_is_told_once(book: Callable[..., Path], spoilt: str) -> None:
    files = {
        "mixtures/base-sponge.yaml": spoilt,
        "mixtures/water-sponge.yaml": VARIATION,
        "mixtures/a-deep-sponge.yaml": "name: A\nfrom: water-sponge\n",
    }
    loaded = load_book(book(files))
    (problem,) = loaded.problems
    assert problem.place.file == "recipes/mixtures/base-sponge.yaml"
    (follows,) = loaded.broken["mixtures/water-sponge"]
    assert (follows.message, follows.hint, follows.place.line) == (
        'its base "base-sponge" has a mistake in it', "fix mixtures/base-sponge.yaml first", 2,
    )  # fmt: skip
    assert loaded.broken["mixtures/a-deep-sponge"][0].message == 'its base "water-sponge" has a mistake in it'


def test_a_technique_may_take_a_variation_as_material(book: Callable[..., Path], base: Mapping[str, str]) -> None:
    text = base["techniques/line-a-tin.yaml"] + "materials: [200 g water sponge]\n"
    loaded = load_book(book({"mixtures/water-sponge.yaml": VARIATION, "techniques/line-a-tin.yaml": text}))
    assert not loaded.problems
    assert mixture_called("water sponge", loaded.book) == "water-sponge"


def test_a_variation_in_the_wrong_folder(book: Callable[..., Path]) -> None:
    loaded = load_book(book({"techniques/water-sponge.yaml": VARIATION}))
    assert [(each.message, each.hint) for each in loaded.problems] == [
        ("this is a mixture, not a technique", "move the file to mixtures/")
    ]


def both(folder: Path) -> tuple[Loaded, Loaded]:
    return load_book(folder, kitchen=True), load_book(folder, kitchen=False)


def test_a_private_variation_of_a_private_base_stays_in_the_kitchen(book: Callable[..., Path]) -> None:
    text = VARIATION.replace("base-sponge", "base-secret") + "private: yes\n"
    kitchen, site = both(book({"mixtures/water-sponge.yaml": text}))
    assert not kitchen.problems and "water-sponge" in kitchen.book.mixtures
    assert "water-sponge" not in site.book.mixtures and not site.book.varies
    assert SECRET not in repr(site) and "base-secret" not in repr(site)


@pytest.mark.parametrize(
    "text",
    [
        VARIATION,
        VARIATION.replace("swap: milk", "swap: mlik"),
        VARIATION.replace("Water sponge", "[]"),
        "name: A\nfrom: base-secret\nchange: [{leave out: milk}]\n",
    ],
)
def test_a_public_slip_tells_nothing_of_a_private_base(book: Callable[..., Path], text: str) -> None:
    _, site = both(book({"mixtures/water-sponge.yaml": text.replace("base-sponge", "base-secret")}))
    assert site.errors
    assert SECRET not in repr((site.book, site.broken)) and "base-secret" not in repr((site.book, site.broken))


HELD = SPONGE.replace("Freezes well.", SECRET).replace("until pale", SECRET).replace("Three days.", SECRET)


def test_what_a_base_holds_back_its_variations_hold_back(book: Callable[..., Path]) -> None:
    base = HELD + "private: [notes, method, keeps]\n"
    files = {"mixtures/base-sponge.yaml": base, "mixtures/water-sponge.yaml": VARIATION}
    kitchen, site = both(book(files))
    assert not kitchen.problems
    assert SECRET in repr(kitchen.book.mixtures["water-sponge"])
    made = site.book.mixtures["water-sponge"]
    assert (made.notes, made.method, made.keeps) == ((), (), None)
    assert [line.take.name for line in made.mix][-1] == "water"
    assert SECRET not in repr(site)


def test_what_a_variation_says_itself_is_its_own(book: Callable[..., Path]) -> None:
    base = HELD + "private: [notes, method, keeps]\n"
    own = VARIATION + "keeps: Two days.\nnotes: [Fold gently.]\nmethod: [Mix all with <water>.]\nprivate: [notes]\n"
    kitchen, site = both(book({"mixtures/base-sponge.yaml": base, "mixtures/water-sponge.yaml": own}))
    assert not kitchen.problems
    made = site.book.mixtures["water-sponge"]
    assert (made.notes, made.keeps, [step.do for step in made.method]) == ((), "Two days.", ["Mix all with <water>."])
    assert SECRET not in repr(site)


def test_a_step_changed_in_a_private_method_is_private_too(book: Callable[..., Path]) -> None:
    base = HELD + "private: [notes, method, keeps]\n"
    text = VARIATION + "method: [{instead of: 4, do: Bake it.}]\n"
    _, site = both(book({"mixtures/base-sponge.yaml": base, "mixtures/water-sponge.yaml": text}))
    assert site.book.mixtures["water-sponge"].method == ()
    assert SECRET not in repr(site)
