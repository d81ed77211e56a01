"""A base plus its changes against the same recipe written out by hand, line by line."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import many

from tinbook.facts import Facts
from tinbook.models import Book, Flaw, Mixture, Variation, read_model
from tinbook.plans.base.scaling import tin_table
from tinbook.plans.base.weighing import weigh
from tinbook.plans.mixtures.batches import weight_table
from tinbook.plans.mixtures.inline import pieces
from tinbook.plans.mixtures.safety import allergens, card_notes, cautions
from tinbook.plans.variations.written_out import Varied, vary

Make = Callable[..., Mixture]
DRY = ("butter", "caster sugar", "self-raising flour", "plain flour", "dark chocolate", "cocoa powder")
WET = ("milk", "buttermilk", "oil", "water", "honey")
SPOONED = ("vanilla extract", "baking powder", "instant coffee", "bicarbonate of soda")
POOL = (*DRY, *WET, *SPOONED, "egg", "egg yolk")
ALSO = {"butter": "sweet butter", "caster sugar": "superfine sugar", "egg": "eggs"}
CAKE = {"kind": "creamed", "tins": "2 round 20 cm x 10 cm", "bake": {"oven": "160 °C", "time": "35-40 min"}}


@dataclass
class Told:
    """A base, what a variation says of it, and the same written out, as plain data."""

    base: list[Any]
    steps: list[Any]
    changes: list[dict[str, Any]] = field(default_factory=list)
    method: list[dict[str, Any]] = field(default_factory=list)
    mix_out: list[Any] = field(default_factory=list)
    steps_out: list[str] = field(default_factory=list)


def amount(draw: st.DrawFn, name: str) -> str:
    if name in SPOONED:
        return f"{draw(st.sampled_from(['1', '2', '1 1/2']))} tsp"
    if name.startswith("egg"):
        return str(draw(st.integers(1, 4)))
    return f"{draw(st.integers(20, 240))} {'ml' if name in WET else 'g'}"


def kin(name: str) -> tuple[str, ...]:
    """Ingredients that an amount of this one can be an amount of."""
    group = next(each for each in (DRY, WET, SPOONED, ("egg", "egg yolk")) if name in each)
    return tuple(other for other in group if other != name)


@st.composite
def recipes(draw: st.DrawFn) -> Told:
    """A base of four to seven lines, each named by a step of its own, and any set of changes to it.

    What is written out is put together by places, never by names.
    """
    names = draw(st.lists(st.sampled_from(POOL), min_size=4, max_size=7, unique=True))
    spare = [name for name in POOL if name not in names]
    lines = [f"{amount(draw, name)} {name}{draw(st.sampled_from(['', ', soft']))}" for name in names]
    told = Told(lines, [f"Stir in <{ALSO.get(name, name)}>." for name in names])
    for at, (name, line) in enumerate(zip(names, lines, strict=True)):
        mix, step = [line], [f"Stir in <{ALSO.get(name, name)}>."]
        do = draw(st.sampled_from(["keep", "keep", "swap", "swap whole", "amount", "leave out"]))
        other = next((each for each in draw(st.permutations(spare)) if do == "swap whole" or each in kin(name)), None)
        written = ALSO.get(name, name)
        if do == "amount":
            mix = [f"{amount(draw, name)} {written}, cold"]
            told.changes.append({"amount": mix[0]})
        elif do == "leave out" and at:
            mix, step = [], []
            told.changes.append({"leave out": written})
            told.method.append({"leave out": str(at + 1)})
        elif do.startswith("swap") and other:
            spare.remove(other)
            step = [f"Stir in <{other}>."]
            if do == "swap":
                head, comma, wanted = line.partition(", ")
                mix = [f"{head.removesuffix(name)}{other}{comma}{wanted}"]
                told.changes.append({"swap": written, "for": other})
            else:
                mix = [f"{amount(draw, other)} {other}, sifted"]
                told.changes.append({"swap": written, "for": mix[0]})
        if spare and draw(st.booleans()):
            new = spare.pop()
            added = f"{amount(draw, new)} {new}"
            where = draw(st.sampled_from(["after", "before"]))
            told.changes.append({"add": added, where: written, "note": "by hand"})
            mix = [*mix, {"take": added, "note": "by hand"}] if where == "after" else [
                {"take": added, "note": "by hand"}, *mix
            ]  # fmt: skip
            told.method.append({f"add {where}": str(at + 1), "do": f"Put in <{new}>."})
            step = [*step, f"Put in <{new}>."] if where == "after" else [f"Put in <{new}>.", *step]
        told.mix_out += mix
        told.steps_out += step
    told.changes = draw(st.permutations(told.changes))
    return told


def read(cls: type[Any], data: Mapping[str, Any]) -> Any:
    model, flaws = read_model(cls, data, "it")
    assert model is not None, flaws
    return model


def varied(base: Mixture, data: Mapping[str, Any], book: Book, facts: Facts) -> Varied:
    return vary(read(Variation, {"name": "Another", "from": "base", **data}), base, book, facts)


@many(150)
@given(told=recipes())
def test_base_plus_change_is_the_recipe_written_out(told: Told, kitchen: Book, facts: Facts) -> None:
    base = read(Mixture, {"name": "Base", **CAKE, "mix": told.base, "method": told.steps})
    made = varied(base, {"change": told.changes, "method": told.method}, kitchen, facts)
    assert not made.flaws and made.mixture is not None
    out = read(Mixture, {"name": "Another", **CAKE, "mix": told.mix_out, "method": told.steps_out})
    assert [step.do for step in made.mixture.method] == [step.do for step in out.method]
    for one, other in zip(made.mixture.method, out.method, strict=True):
        assert pieces(one.do, made.mixture, kitchen) == pieces(other.do, out, kitchen)
    here, there = (weigh("another", each, kitchen, facts) for each in (made.mixture, out))
    assert here.ingredients == there.ingredients
    assert (here.mass_g, here.batter_ml, here.depth_mm, here.eggs) == (
        there.mass_g, there.batter_ml, there.depth_mm, there.eggs,
    )  # fmt: skip
    assert allergens(here, kitchen, facts) == allergens(there, kitchen, facts)
    assert cautions(here, kitchen, facts) == cautions(there, kitchen, facts)
    assert card_notes(here, kitchen) == card_notes(there, kitchen)
    assert tin_table(here, kitchen, facts).rows == tin_table(there, kitchen, facts).rows
    assert weight_table(here, facts).rows == weight_table(there, facts).rows


@given(told=recipes())
def test_no_change_is_the_base_by_another_name(told: Told, kitchen: Book, facts: Facts) -> None:
    keys = {"keeps": "A week.", "notes": ["Cold."], "tags": ["plain"], "batter depth": "40 mm", "off balance": "So."}
    base = read(Mixture, {"name": "Base", **CAKE, **keys, "mix": told.base, "method": told.steps})
    made = varied(base, {}, kitchen, facts)
    assert made.mixture == base.model_copy(update={"name": "Another"})
    assert (made.varies.lines, made.varies.steps, made.varies.anew) == ((), (), False)


STEPS = ["Beat <butter>.", "Beat in <eggs>.", {"do": "Fold in <1/2 self-raising flour>.", "called": "fold"}, "Bake."]
MIX = ["300 g butter", "300 g caster sugar", {"take": "4 eggs", "note": "beaten"}, "300 g self-raising flour"]


@pytest.fixture
def base(mixture: Make) -> Mixture:
    return mixture(mix=MIX, method=STEPS, batter_depth="40 mm", tins="2 round 15 cm x 10 cm")


def flaws(base: Mixture, book: Book, facts: Facts, **data: Any) -> tuple[Flaw, ...]:
    return varied(base, {key.replace("_", " "): value for key, value in data.items()}, book, facts).flaws


def done(base: Mixture, book: Book, facts: Facts, **data: Any) -> Mixture:
    made = varied(base, {key.replace("_", " "): value for key, value in data.items()}, book, facts)
    assert made.mixture is not None, made.flaws
    return made.mixture


def test_what_is_written_stands_instead_of_the_bases(base: Mixture, kitchen: Book, facts: Facts) -> None:
    keys = {"tags": ["new"], "keeps": "A day.", "bake": {"oven": "180 °C", "time": "20 min"}, "kind": "madeira"}
    made = done(base, kitchen, facts, **keys)
    assert (made.tags, made.keeps, made.kind) == (("new",), "A day.", "madeira")
    assert made.bake is not None and made.bake.oven.celsius == 180.0
    assert made.tins == base.tins


def test_the_measured_depth_follows_the_weight_in_the_same_tins(base: Mixture, kitchen: Book, facts: Facts) -> None:
    """By proportion: the tins' sides are straight."""
    before = weigh("base", base, kitchen, facts).mass_g
    made = done(base, kitchen, facts, change=[{"amount": "350 g butter"}])
    assert made.batter_depth == pytest.approx(40.0 * (before + 50) / before)
    assert done(base, kitchen, facts, tins="round 23 cm x 10 cm").batter_depth is None
    assert done(base, kitchen, facts, kind="madeira").batter_depth is None
    assert done(base, kitchen, facts, batter_depth="45 mm").batter_depth == 45.0
    assert done(base, kitchen, facts, change=[{"amount": "3 kg butter"}]).batter_depth is None


def test_what_it_makes_follows_the_weight(mixture: Make, kitchen: Book, facts: Facts) -> None:
    """A tenth was lost in the pan, and is lost still."""
    icing = mixture(kind="buttercream", tins=None, bake=None, makes="900 g", mix=["400 g butter", "600 g caster sugar"])
    made = done(icing, kitchen, facts, change=[{"add": "100 g dark chocolate"}])
    assert made.makes == pytest.approx(990.0)
    assert done(icing, kitchen, facts, makes="950 g", change=[{"add": "100 g dark chocolate"}]).makes == 950.0


def test_tins_set_aside_what_it_makes_and_the_other_way_round(base: Mixture, kitchen: Book, facts: Facts) -> None:
    made = done(base, kitchen, facts, makes="900 g", kind="buttercream")
    assert (made.tins, made.bake, made.batter_depth, made.makes) == ((), None, None, 900.0)


def test_how_long_it_keeps_is_taken_over_whole_or_not_at_all(mixture: Make, kitchen: Book, facts: Facts) -> None:
    made = mixture(keeps="Three days.", keeps_for=["3 days"])
    both = done(made, kitchen, facts)
    assert (both.keeps, both.keeps_for) == (made.keeps, made.keeps_for)
    said = done(made, kitchen, facts, keeps="Four days.")
    assert (said.keeps, said.keeps_for) == ("Four days.", ())


def test_what_goes_off_sooner_asks_how_long_it_keeps(mixture: Make, kitchen: Book, facts: Facts) -> None:
    keys = {"kind": "buttercream", "tins": None, "bake": None, "makes": "900 g", "keeps": "A month."}
    icing = mixture(mix=["400 g butter", "600 g caster sugar"], **keys)
    change = [{"add": "2 egg whites"}]
    (flaw,) = flaws(icing, kitchen, facts, change=change)
    assert flaw.path == ("change", 0, "add") and "keeps" in flaw.hint
    assert not flaws(icing, kitchen, facts, change=change, keeps="Two days.")
    assert not flaws(icing, kitchen, facts, change=[{"add": "20 g cocoa powder"}])
    baked = mixture(keeps="Three days.", mix=["300 g butter", "300 g plain flour"])
    assert not flaws(baked, kitchen, facts, change=change)


def test_flaws_are_told_where_the_variation_says_it(base: Mixture, kitchen: Book, facts: Facts) -> None:
    change = [{"swap": "butter", "for": "ghee"}, {"add": "9 g sand"}]
    made = varied(base, {"change": change, "method": [{"add after": "4", "do": "Cool."}]}, kitchen, facts)
    paths = {
        ("mix", 0, "take"): ("change", 0, "for"), ("mix", 4, "take"): ("change", 1, "add"),
        ("mix", 1, "take"): ("change",), ("method", 4, "do"): ("method", 0, "do"), ("tins",): ("change",),
        ("batter depth",): ("change",), (): (),
    }  # fmt: skip
    for path, told in paths.items():
        assert made.placed(Flaw(code="value", path=path, message="wrong")).path == told
    bare = varied(base, {}, kitchen, facts)
    assert bare.placed(Flaw(code="value", path=("tins",), message="wrong")).path == ("from",)
