"""Templates of the site: set once, kept, set again where anything they come of has changed."""

from __future__ import annotations

import importlib
import subprocess
import sys
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

ROOT = Path(__file__).parents[2]


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


APART = """
import sys
from pathlib import Path
from tinbook.loading import load_book
from tinbook.pages.base.page import Desk
from tinbook.pages.technique.cake_templates import template_files
from tinbook.plugin.printing import set_templates
loaded = load_book(Path({recipes!r}))
files = {{each.path: each for each in template_files(Desk(loaded.book, loaded.facts, {{}})) if {name!r} in each.path}}
made = dict(set_templates(files, Path({cache!r}), apart=True))
assert len(made) == 8 and all(each.startswith(b"%PDF-") for each in made.values())
print("typst" in sys.modules)
"""


@pytest.mark.skipif(sys.platform != "linux", reason="no process is forked there")
@pytest.mark.parametrize("kept", [True, False])
def test_another_process_sets_them(
    files: dict[str, TemplateFile], calls: list[str], tmp_path: Path, kept: bool
) -> None:
    """The library is never at work in the first one, unless nothing can be kept."""
    cache = tmp_path / "kept"
    if not kept:
        cache.write_text("a file where the folder would be", "utf-8")
    told = {"recipes": str(ROOT / "recipes"), "name": "coil-of-rope-round-1", "cache": str(cache)}
    done = subprocess.run(
        [sys.executable, "-c", APART.format(**told)], capture_output=True, text=True, check=False, timeout=120
    )
    assert (done.returncode, done.stdout.strip()) == (0, str(not kept)), done.stderr
    if kept:
        assert set_all(files, cache) and not calls, "they are what this process would set"


def test_where_the_library_is_at_work_nothing_is_forked(
    files: dict[str, TemplateFile], calls: list[str], tmp_path: Path
) -> None:
    importlib.import_module("typst")
    assert dict(printing.set_templates(files, tmp_path, apart=True)).keys() == files.keys()
    assert len(calls) == len(files)
