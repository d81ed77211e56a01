"""A second build hands on what nothing has changed for, and is the build from nothing all the same."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest
from mkdocs.config import load_config
from tests.books import light
from tests.plugin.builds import SPONGE, Built, change

from tinbook.pages.base.sheets import ROWS
from tinbook.plugin.keeping import LEADS, surroundings


def test_a_second_build_makes_nothing_again(first: tuple[Path, Built], book: Path) -> None:
    built, second = first[1], Built(book)
    assert built.made == built.pages
    assert second.files == built.files
    # what the reference says of a key names functions of this process
    assert {page.partition("/")[0] for page in second.made} <= {"reference"}


def test_a_change_makes_what_it_reaches_and_no_more(book: Path) -> None:
    change(book, SPONGE, "about: ", "about: Tideline. ") if "about: " in (book / SPONGE).read_text("utf-8") else change(
        book, SPONGE, "name: ", "about: Tideline.\nname: "
    )
    second = Built(book)
    assert {"mixtures/plain-sponge", "mixtures/plain-sponge/tables"} <= second.made
    assert len(second.made) < len(second.pages) / 2
    assert second.files == Built(book, "beside", keep=False).files


@pytest.mark.parametrize("what", ["name", "delete", "add", "house", "by hand", "settings", "options"])
def test_whatever_changes_it_is_the_build_from_nothing(book: Path, what: str) -> None:
    sponge, options = book / SPONGE, {}
    if what == "name":
        change(book, SPONGE, "name: ", "name: Another ")
    elif what == "delete":
        sponge.unlink()
    elif what == "add":
        text = sponge.read_text("utf-8").replace("name: ", "name: Another ", 1)
        sponge.with_stem("another-sponge").write_text(text, "utf-8")
    elif what == "house":
        change(book, "recipes/house/house.yaml", "name: ", "measures: cups\nname: ")
    elif what == "by hand":
        (book / "book_src" / "ours.md").write_text("# Ours\n\n[The sponge](mixtures/plain-sponge.md#method)\n", "utf-8")
    elif what == "settings":
        change(book, "mkdocs.yml", "site_name: ", "copyright: Nobody\nsite_name: ")
    else:
        options = {"kitchen": True}
    again = Built(book, **options)
    assert again.files == Built(book, "beside", keep=False, **options).files


def test_other_plugins_and_hooks_are_asked_about_every_page(book: Path) -> None:
    (book / "hook.py").write_text("def on_post_page(output, **_):\n    return output + '<!-- hooked -->'\n", "utf-8")
    (book / "mkdocs.yml").open("a", encoding="utf-8").write("\nhooks: [hook.py]\n")
    Built(book)
    again = Built(book)
    assert again.made == again.pages
    assert again.files["index.html"].endswith(b"<!-- hooked -->")


def test_the_themes_own_search_finds_the_same_each_time(book: Path) -> None:
    change(book, "mkdocs.yml", "plugins:", "plugins:\n  - search")
    index = "search/search_index.json"
    first = Built(book).files[index]
    assert b"plain-sponge" in first and Built(book).files[index] == first


def test_the_same_settings_have_the_same_digest(book: Path) -> None:
    one, other = (load_config(str(book / "mkdocs.yml"), site_dir=str(book / name)) for name in ("a", "b"))
    assert surroundings(one, serving=False) == surroundings(other, serving=False)
    assert surroundings(one, serving=False) != surroundings(one, serving=True)
    other["site_name"] = "Another"
    assert surroundings(one, serving=False) != surroundings(other, serving=False)


def test_what_leads_elsewhere() -> None:
    assert LEADS.search('<p>See <a href="../x/">it</a></p>') and LEADS.search("<img alt='' src='a.png'>")
    assert not LEADS.search('<a class="headerlink" href="#mix">¶</a> <b>5 cm</b>')


def test_all_sheets_are_made_again_when_their_list_grows(tmp_path: Path) -> None:
    (tmp_path / "book").mkdir()
    book = light(tmp_path / "book", ROWS + 2, every=1)
    lists = ("mixtures", "find", "tags/everyday")
    sheets = {"mixtures/index", "find", "tags/everyday", *(f"lists/{name}/2" for name in lists)}
    first = Built(book)
    assert sheets <= first.made
    source = book / "recipes/mixtures/m0150.yaml"
    shutil.copy(source, source.with_name("m0152.yaml"))
    second = Built(book)
    assert sheets <= second.made and "mixtures/m0001" not in second.made
    for name in ("mixtures", "tags/everyday"):
        first_sheet, last = (second.files[f"{each}/index.html"].decode() for each in (name, f"lists/{name}/2"))
        assert "1 to 150 of 153" in first_sheet and "151 to 153 of 153" in last
