"""A question, and the error for one that does not fit."""

from __future__ import annotations

from dataclasses import FrozenInstanceError, fields

import pytest

from tinbook.plans.base.asking import AskError, Query


def test_an_error_carries_what_to_ask_instead() -> None:
    told = AskError("it has no eggs", "ask by weight")
    assert (str(told), told.message, told.hint) == ("it has no eggs", "it has no eggs", "ask by weight")
    assert AskError("no").hint == ""
    assert isinstance(told, ValueError)


def test_a_plain_question_asks_for_nothing() -> None:
    query = Query(of="plain-sponge")
    assert not any(getattr(query, field.name) for field in fields(query) if field.name != "of")
    with pytest.raises(FrozenInstanceError):
        query.eggs = 4  # type: ignore[misc]
