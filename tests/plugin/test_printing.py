"""Templates of the site: set once, kept, set again where anything they come of has changed."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest

from tinbook.loading import Loaded
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.cake_templates import TemplateFile, template_files
from tinbook.plans.true_size.papers import PAPERS
from tinbook.plugin import printing


@pytest.fixture
def files(demo: Loaded) -> dict[str, TemplateFile]:
    desk = Desk(demo.book, demo.facts, {})
    return {each.path: each for each in template_files(desk) if "coil-of-rope-round-1" in each.path}


@pytest.fixture
def calls(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """What is really set."""
    made: list[str] = []
    setting = printing.templates_pdf

    def counted(title: str, pages: Any) -> bytes:
        made.append(title)
        return setting(title, pages)

    monkeypatch.setattr(printing, "templates_pdf", counted)
    return made


def set_all(files: Mapping[str, TemplateFile], cache: Path) -> dict[str, bytes]:
    return dict(printing.set_templates(files, cache))


def test_what_is_kept_is_not_set_again(files: dict[str, TemplateFile], calls: list[str], tmp_path: Path) -> None:
    first = set_all(files, tmp_path / "kept")
    assert len(calls) == len(files) == 8 and all(each.startswith(b"%PDF-") for each in first.values())
    assert set_all(files, tmp_path / "kept") == first
    assert len(calls) == 8
    assert len(list((tmp_path / "kept").iterdir())) == 8


@pytest.mark.parametrize("what", ["title", "paper", "part", "house", "overlap", "code"])
def test_what_has_changed_is_set_again(
    files: dict[str, TemplateFile], calls: list[str], tmp_path: Path, monkeypatch: pytest.MonkeyPatch, what: str
) -> None:
    path, file = next(iter(files.items()))
    set_all({path: file}, tmp_path)
    (old,) = tmp_path.glob("*.pdf")
    desk = file.desk
    if what == "title":
        file = replace(file, title="Another")
    elif what == "paper":
        file = replace(file, paper=PAPERS["Letter"])
    elif what == "part":
        part = replace(file.made.parts[0], name="post")
        file = replace(file, made=replace(file.made, parts=(part, *file.made.parts[1:])))
    elif what == "house":
        book = replace(desk.book, house=desk.book.house.model_copy(update={"name": "Mudflat"}))
        file = replace(file, desk=replace(desk, book=book))
    elif what == "overlap":
        number = desk.facts.numbers["overlap of sheets"].model_copy(update={"value": 15.0})
        facts = replace(desk.facts, numbers={**desk.facts.numbers, "overlap of sheets": number})
        file = replace(file, desk=replace(desk, facts=facts))
    else:
        monkeypatch.setattr(printing, "_code", lambda: "a later version")
    set_all({path: file}, tmp_path)
    assert len(calls) == 2
    (new,) = tmp_path.glob("*.pdf")
    assert new != old, "what is of no use any more is thrown away"


def test_what_is_spoilt_is_set_again(files: dict[str, TemplateFile], calls: list[str], tmp_path: Path) -> None:
    path, file = next(iter(files.items()))
    whole = set_all({path: file}, tmp_path)
    (kept,) = tmp_path.glob("*.pdf")
    for spoilt in (b"", b"no PDF", kept.read_bytes()[:-200]):
        kept.write_bytes(spoilt)
        assert set_all({path: file}, tmp_path) == whole
        assert kept.read_bytes() == whole[path]
    assert len(calls) == 4


def test_where_nothing_can_be_kept_all_is_set(files: dict[str, TemplateFile], calls: list[str], tmp_path: Path) -> None:
    path, file = next(iter(files.items()))
    (tmp_path / "taken").write_text("a file where the folder would be")
    assert set_all({path: file}, tmp_path / "taken")[path].startswith(b"%PDF-")
    assert calls == [file.title]
