"""A rule is not gone over again for what was found sound, and never skipped where something it reads changed."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest
from tests.loading.conftest import BASE, Write

from tinbook.loading import Learnt, Parses, load_book
from tinbook.models.ledger import Kept
from tinbook.plans.rules import fields

PATHS: Mapping[str, tuple[str, str]] = {
    "mixtures/plain-sponge.yaml": ("300 g butter", "300 g buttre"),
    "house/ingredients.yaml": ("  butter:", "  margarine:"),
    "house/tins.yaml": ("round 20 cm x 7.5 cm", "round 20 cm x 2 cm"),
    "techniques/line-a-tin.yaml": ("name: Line a tin", "nam: Line a tin"),
    "house/house.yaml": ("book: 1", "book: 1\ntins sold in: in"),
}
"""A change in each file that checks of the sponge may read."""


@pytest.mark.parametrize("name", PATHS)
def test_after_any_change_the_same_is_said_as_by_a_first_reading(write: Write, name: str) -> None:
    folder, parses = write(), Parses()
    load_book(folder, parses=parses)
    path = Path(folder, name)
    for old, new in (PATHS[name], PATHS[name][::-1]):
        text = path.read_text("utf-8")
        assert old in text
        path.write_text(text.replace(old, new, 1), "utf-8")
        again, first = load_book(folder, parses=parses), load_book(folder)
        assert again.problems == first.problems and again.broken == first.broken
        assert again.book == first.book


@pytest.mark.parametrize("name", PATHS)
def test_the_next_process_says_the_same_too(write: Write, name: str) -> None:
    folder, parses = write(), Parses()
    load_book(folder, parses=parses)
    sound = parses.learnt.sound
    learnt = parses.learnt._replace(sound=Kept(sound.reads, sound.digests))
    path, (old, new) = Path(folder, name), PATHS[name]
    path.write_text(path.read_text("utf-8").replace(old, new, 1), "utf-8")
    again, first = load_book(folder, parses=Parses(learnt)), load_book(folder)
    assert again.problems == first.problems and again.broken == first.broken and again.book == first.book


def test_what_was_sound_is_not_gone_over(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, parses, checked = write({"mixtures/icing.yaml": ICING}), Parses(), list[str]()

    def counting(mixture: object, *rest: object) -> object:
        checked.append(mixture.name)  # type: ignore[attr-defined]
        return rules(mixture, *rest)  # type: ignore[arg-type]

    rules = fields.mixture_flaws
    monkeypatch.setattr(fields, "mixture_flaws", counting)

    def load() -> None:
        load_book(folder, parses=parses)

    load()
    assert sorted(checked) == ["Icing", "Plain sponge"]
    checked.clear()
    load()
    load_book(folder, parses=Parses(Learnt(Kept(parses.learnt.sound.reads, parses.learnt.sound.digests))))
    assert checked == []
    Path(folder, "mixtures/icing.yaml").write_text(ICING.replace("200 g", "210 g"), "utf-8")
    load()
    assert checked == ["Icing"]


def test_what_was_wrong_is_gone_over_each_time(write: Write) -> None:
    folder, parses = write({"mixtures/icing.yaml": ICING.replace("g butter", "g buttre")}), Parses()
    said = [load_book(folder, parses=parses).problems for _ in range(3)]
    assert said[0] == said[1] == said[2] and len(said[0]) == 1


ICING = "name: Icing\nkind: buttercream\nmakes: 600 g\nmix: [200 g butter, 400 g caster sugar]\n"
assert set(PATHS) <= set(BASE)
