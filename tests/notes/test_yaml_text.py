"""Texts as YAML on one line: read back they are what they were."""

from __future__ import annotations

import yaml
from hypothesis import given
from hypothesis import strategies as st

from tinbook.notes.yaml_text import mark, quoted, unsure

WORDS = st.text(st.characters(codec="utf-8", categories=("L", "N", "P", "S", "Zs")), min_size=1, max_size=40).filter(
    lambda text: text == text.strip() != ""
)


@given(WORDS)
def test_a_text_comes_back(text: str) -> None:
    written = quoted(text)
    assert "\n" not in written
    assert str(yaml.load(f"x: {written}", Loader=yaml.BaseLoader)["x"]) == text


@given(WORDS)
def test_a_mark_is_a_comment(text: str) -> None:
    assert yaml.safe_load(f"a: b{mark(text)}\n{unsure(text)}\n") == {"a": "b"}
    assert mark("") == ""
