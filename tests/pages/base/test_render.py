"""The one Jinja environment."""

import shutil
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from jinja2 import DictLoader, Environment, UndefinedError

from tinbook.pages.base import render
from tinbook.pages.base.render import FILTERS, environment


def test_text_is_escaped_and_unknown_names_refused() -> None:
    made = environment()
    assert made.from_string("{{ x }}").render(x="<b>") == "&lt;b&gt;"
    with pytest.raises(UndefinedError):
        made.from_string("{{ y }}").render()


def test_every_filter_is_registered_by_its_name() -> None:
    assert all(environment().filters[spell.__name__] is spell for spell in FILTERS)


def test_embedded_data_cannot_leave_its_script() -> None:
    assert "</script>" not in environment().from_string("{{ x | tojson }}").render(x={"a": "</script><b>"})


@pytest.fixture
def temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Iterator[Path]:
    """Another folder for temporary files, and nothing compiled yet."""
    monkeypatch.setattr(tempfile, "tempdir", str(tmp_path))
    render.compiled.cache_clear()
    yield tmp_path
    render.compiled.cache_clear()


def small(text: str) -> str:
    made = Environment(loader=DictLoader({"a": text}), bytecode_cache=render.compiled())
    return made.get_template("a").render(x=1)


def test_a_template_is_compiled_once_until_it_changes(temporary: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    assert small("{{ x }} tin") == "1 tin"
    assert len(list(temporary.rglob("tinbook-*"))) == 1
    with monkeypatch.context() as patch:
        patch.setattr(Environment, "compile", lambda *_, **__: pytest.fail("compiled again"))
        assert small("{{ x }} tin") == "1 tin"
    assert small("{{ x }} tins") == "1 tins"


def test_a_template_is_shown_where_nothing_can_be_kept(temporary: Path) -> None:
    kept = render.compiled()
    assert kept
    shutil.rmtree(kept.directory)
    assert small("{{ x }} tin") == "1 tin"


def test_a_folder_that_others_could_write_to_is_not_used(temporary: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def unsafe(self: object) -> str:
        raise RuntimeError

    monkeypatch.setattr(render.Compiled, "_get_default_cache_dir", unsafe)
    assert render.compiled() is None
    assert small("{{ x }} tin") == "1 tin"
