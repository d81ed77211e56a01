"""Amounts inside a step: what the marks mean, and that no word of a step is lost."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from tests.every import every

from tinbook.models import Book
from tinbook.plans.mixtures.inline import MARK, StepPiece, pieces, step_flaws

Make = Callable[..., Any]
WORDS = st.lists(
    st.sampled_from(["Beat ", "<butter>", "<1/2 milk>", "<tins>", "<sand>", "<", ">", "<<eggs>>", ". ", "<>", "é"]),
    max_size=8,
).map("".join)


def test_a_name_of_the_mix_is_an_amount(mixture: Make, kitchen: Book) -> None:
    made = mixture(mix=["250 g butter", "250 g caster sugar", "4 eggs"])
    assert pieces("Beat <butter> and <superfine sugar>.", made, kitchen) == (
        StepPiece("Beat "), StepPiece("butter", 0), StepPiece(" and "), StepPiece("superfine sugar", 1), StepPiece("."),
    )  # fmt: skip


@pytest.mark.parametrize(
    ("mark", "share"), [("<1/2 butter>", 0.5), ("<½ butter>", 0.5), ("<0.25 butter>", 0.25), ("<butter>", 1.0)]
)
def test_a_part_of_a_line(mixture: Make, kitchen: Book, mark: str, share: float) -> None:
    (piece,) = pieces(mark, mixture(), kitchen)
    assert (piece.text, piece.line, piece.share, piece.tins) == ("butter", 0, share, False)


def test_the_tins(mixture: Make, kitchen: Book) -> None:
    assert [piece.tins for piece in pieces("Line the <tins>, both.", mixture(), kitchen)] == [False, True, False]


@every("text", ["Chill below <5 °C>.", "a < b > c", "<honey>", "<script>alert(1)</script>", "", "<>", "<sand>"])
def test_anything_else_between_the_signs_is_text(mixture: Make, kitchen: Book, text: str) -> None:
    found = pieces(text, mixture(), kitchen)
    assert "".join(piece.text for piece in found) == text
    assert all(piece.line is None and not piece.tins for piece in found)


@given(text=WORDS)
def test_no_word_is_lost(mixture: Make, kitchen: Book, text: str) -> None:
    found = pieces(text, mixture(), kitchen)
    assert all(piece.text for piece in found)
    left = text
    for piece in found:
        at = left.index(piece.text)
        # Between the pieces lie the signs and the share, no more.
        assert set(left[:at]) <= set("<>1/2 "), (text, found)
        left = left[at + len(piece.text) :]
    assert set(left) <= {">"}


def test_a_slip_in_a_name_is_told_at_its_place(mixture: Make, kitchen: Book) -> None:
    made = mixture(method=["Line the <tins>.", "Beat <buter> and <honey> to <5 °C>."])
    (flaw,) = step_flaws(made, kitchen)
    assert flaw.path == ("method", 1, "do")
    assert made.method[1].do[flaw.start : flaw.end] == "<buter>"
    assert "<butter>" in flaw.hint


def test_a_mark_is_short_and_on_one_line() -> None:
    assert MARK.fullmatch("<caster sugar>")
    assert not MARK.fullmatch("<caster\nsugar>")
    assert not MARK.fullmatch("<" + "a" * 61 + ">")
