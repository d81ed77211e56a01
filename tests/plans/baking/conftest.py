"""A plain sponge with such a log, and what is known of its time in the oven."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import pytest

from tinbook.facts import Facts
from tinbook.models import Baked, Book, House
from tinbook.plans.baking.bakes import Bakes
from tinbook.plans.baking.times import Baking
from tinbook.plans.base.weighing import Batch
from tinbook.tins import Tin, read_tin

ENTRY = {"day": "2026-05-02", "of": "plain-sponge", "oven": "160 °C", "batter depth": "40 mm"}


def tin(text: str) -> Tin:
    return read_tin(text)[1]


def bake(where: str, minutes: float, **keys: str) -> Baked:
    more = {key.replace("_", " "): value for key, value in keys.items()}
    return Baked.model_validate({**ENTRY, "tin": where, "done after": f"{minutes:g} min", **more})


@pytest.fixture
def known(batch: Callable[..., Batch], kitchen: Book, facts: Facts) -> Callable[..., Baking]:
    """What is known of the plain sponge, with such a log, and such a written bake."""

    def make(*log: Baked, written: object = "as it is", house: House | None = None, **keys: object) -> Baking:
        own = batch(**({} if written == "as it is" else {"bake": written}), **keys)
        book = replace(kitchen, mixtures={own.slug: own.mixture}, bakes=log, house=house or kitchen.house)
        made = Bakes(book, facts).of(own)
        assert made is not None
        return made

    return make


def likely(made: Baking, where: str, depth: float = 40, **asked: float) -> float:
    return made.times([(tin(where), depth)], **asked)[0].likely_min
