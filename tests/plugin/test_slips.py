"""What is wrong in mkdocs.yml, as MkDocs itself finds it and as a baker reads it."""

from __future__ import annotations

import logging
from pathlib import Path

import pytest
from mkdocs.config import load_config
from mkdocs.exceptions import Abort, ConfigurationError

from tinbook.plugin.slips import SETTINGS_LOG, PlainSlips, refused

GOOD = """site_name: Gull house
docs_dir: pages
theme:
  name: material
plugins:
  - search
  - tinbook:
      kitchen: true
"""
TOLD = [
    ("theme:", "theem: x\ntheme:", 'mkdocs.yml:3:1: there is no setting "theem"', 'did you mean "theme"?'),
    ("theme:", "gulls: x\ntheme:", 'mkdocs.yml:3:1: there is no setting "gulls"', "under extra"),
    ("material", "materiel", 'mkdocs.yml:4:9: there is no theme "materiel"', "write name: material"),
    ("material", "material\n  custom_dir: sheds", 'mkdocs.yml:5:3: there is no folder "sheds"', "put it back"),
    ("- tinbook", "- tinbok", 'mkdocs.yml:7:5: there is no plugin "tinbok"', 'did you mean "tinbook"?'),
    ("- search", "- lighthouse", 'mkdocs.yml:6:5: there is no plugin "lighthouse"', "install it"),
    ("kitchen: true", "kichen: true", 'mkdocs.yml:8:7: the plugin tinbook has no setting "kichen"', '"kitchen"?'),
    ("kitchen: true", "kitchen: mine", 'mkdocs.yml:8:7: "kitchen" of the plugin tinbook cannot be text',
     "write true or false"),
    ("pages", "moored", 'mkdocs.yml:2:11: there is no folder "moored"', "put it back"),
    ("theme:", "hooks: [./sub/gull.py]\ntheme:", 'mkdocs.yml:3:9: there is no file "gull.py"', "put it back"),
    ("site_name: Gull house\n", "", 'mkdocs.yml:1:1: "site_name" is missing', "start with site_name:"),
    ("Gull house", "7", 'mkdocs.yml:1:1: "site_name" cannot be a whole number', "write text"),
    ("theme:", "site_url: 5\ntheme:", 'mkdocs.yml:3:1: "site_url" cannot be a whole number', "write text"),
    ("theme:", "nav: 5\ntheme:", 'mkdocs.yml:3:1: "nav": Expected nav to be a list', "nav: 5"),
    ("theme:", "markdown_extensions:\n  - nosuch\ntheme:",
     'mkdocs.yml:4:5: the extension "nosuch" cannot be loaded', "take out the line"),
    ("theme:", "markdown_extensions:\n  - toc: {permalnk: 1}\ntheme:",
     'mkdocs.yml:4:11: the extension toc has no setting "permalnk"', "take it out"),
]  # fmt: skip
REFUSED = [
    ("theme:", "theme: [a", "mkdocs.yml:3:8: a list in [ ] is not closed", 'end the list with "]"'),
    ("theme:", "\tx: 1\ntheme:", "mkdocs.yml:3:1: there is a tab at the start of this line", "use spaces instead"),
    ("  name", "    extra: 1\n  name", "mkdocs.yml:5:3: this does not line up with the lines above", "line it up with"),
    ("Gull", "é".encode("latin-1").decode("utf-8", "surrogateescape"), "mkdocs.yml:1:12: this character is not saved",
     "save the file as UTF-8"),
    ("theme:", "extra: {a: !gull b}\ntheme:", 'mkdocs.yml:3:12: "!gull" means nothing here', "in quotes"),
    ("theme:", "INHERIT: all.yml\ntheme:", 'mkdocs.yml:3:1: there is no file "all.yml"', "put it back"),
    (GOOD, "Gull house", "mkdocs.yml:1:1: the file is plain text, not names and values", "start with site_name:"),
]  # fmt: skip


@pytest.fixture
def settings(tmp_path: Path) -> Path:
    (tmp_path / "pages").mkdir()
    (tmp_path / "mkdocs.yml").write_text(GOOD, "utf-8")
    return tmp_path / "mkdocs.yml"


def spoil(path: Path, old: str, new: str) -> None:
    text = path.read_text("utf-8")
    assert old in text
    path.write_bytes(text.replace(old, new, 1).encode("utf-8", "surrogateescape"))


def told(path: Path, caplog: pytest.LogCaptureFixture) -> str:
    PlainSlips(path).listen()
    try:
        with caplog.at_level(logging.WARNING, SETTINGS_LOG):
            load_config(str(path))
    except Abort:
        pass
    finally:
        PlainSlips(path).leave()
    return "\n".join(record.getMessage() for record in caplog.records)


def test_good_settings_are_let_through(settings: Path, caplog: pytest.LogCaptureFixture) -> None:
    assert told(settings, caplog) == ""


@pytest.mark.parametrize(("old", "new", "message", "hint"), TOLD)
def test_a_setting_is_told_with_its_place(
    settings: Path, caplog: pytest.LogCaptureFixture, old: str, new: str, message: str, hint: str
) -> None:
    spoil(settings, old, new)
    said = told(settings, caplog)
    assert message in said and hint in said
    assert "Traceback" not in said and "class '" not in said


@pytest.mark.parametrize(("old", "new", "message", "hint"), REFUSED)
def test_settings_that_cannot_be_read(settings: Path, old: str, new: str, message: str, hint: str) -> None:
    spoil(settings, old, new)
    with pytest.raises(ConfigurationError) as error:
        load_config(str(settings))
    said = refused(settings, error.value)
    assert message in said and hint in said


def test_settings_that_go_on_from_another_file(settings: Path) -> None:
    """The file that is wrong is named, not the one that asks for it."""
    spoil(settings, "theme:", "INHERIT: all.yml\ntheme:")
    (settings.parent / "all.yml").write_text("extra: {a: 1\n", "utf-8")
    with pytest.raises(ConfigurationError) as error:
        load_config(str(settings))
    assert refused(settings, error.value).startswith("all.yml:1:8: a group in { } is not closed")


def test_settings_that_are_gone_or_locked(settings: Path) -> None:
    settings.unlink()
    with pytest.raises(ConfigurationError) as error:
        load_config(str(settings))
    assert refused(settings, error.value) == "mkdocs.yml is missing: put it back"
    assert refused(settings, PermissionError(13, "Permission denied")) == "mkdocs.yml cannot be read: permission denied"


def test_of_a_name_written_twice_the_last_is_shown(settings: Path, caplog: pytest.LogCaptureFixture) -> None:
    spoil(settings, "theme:", "docs_dir: moored\ntheme:")
    assert 'mkdocs.yml:3:11: there is no folder "moored"' in told(settings, caplog)
