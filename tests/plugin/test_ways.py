"""Ways from page to page, the links of the head and the foot, contents with a baker's own titles."""

from __future__ import annotations

from collections.abc import Mapping

import pytest
from mkdocs.structure.files import File
from tests.every import every

from tinbook.plugin.ways import ROOMS, as_nav, rooms_from, way

NAMES = ("index.md", "mixtures/index.md", "mixtures/sponge.md", "tins.md", "photos/harbour.webp")


@pytest.fixture
def files() -> Mapping[str, File]:
    return {name: File(name, "docs", "site", use_directory_urls=True) for name in NAMES}


def test_a_way_leads_from_folder_to_folder(files: Mapping[str, File]) -> None:
    here = files["mixtures/sponge.md"]
    assert way(here, files, "tins") == "../../tins/"
    assert way(here, files, "tins", "brim") == "../../tins/#brim"
    assert way(here, files, "photos/harbour.webp") == "../../photos/harbour.webp"


def test_a_way_to_what_is_not_there_is_refused(files: Mapping[str, File]) -> None:
    with pytest.raises(LookupError, match=r"mixtures/sponge\.md links to techniques/line-a-tin"):
        way(files["mixtures/sponge.md"], files, "techniques/line-a-tin")


def test_rooms_are_those_the_book_has_and_say_where_one_is(files: Mapping[str, File]) -> None:
    rooms = {"Mixtures": "mixtures/index", "Techniques": "techniques/index", "Tins": "tins"}
    assert [(room["title"], room["here"]) for room in rooms_from("mixtures/sponge", rooms, files)] == [
        ("Mixtures", "true"), ("Tins", ""),
    ]  # fmt: skip
    assert [room["here"] for room in rooms_from("tins", rooms, files)] == ["", "page"]
    assert [room["here"] for room in rooms_from("mixtures/index", rooms, files)] == ["page", ""]


@every(
    ("here", "room"),
    [
        ("techniques/cover-a-board", "Techniques"), ("colours", "Techniques"), ("guests", "Tins"), ("boards", "Tins"),
        ("covering", "Tins"), ("portions/index", "Tins"), ("portions/finger", "Tins"), ("on-hand", "Mixtures"),
        ("ingredients", "Measures"), ("ingredients/plain-flour", "Measures"), ("oven", "Measures"),
        ("mixtures/kinds/mud", "Mixtures"), ("lists/mixtures/2", "Mixtures"), ("lists/tags/dates/3", "Mixtures"),
        ("lists/techniques/2", "Techniques"), ("lists/oven/mud/2", "Measures"), ("tags/dates", "Mixtures"),
        ("portions/round/round-40-cm", "Tins"), ("cakes/lighthouse-cake", "Cakes"),
        ("cakes/lighthouse-cake/used", "Cakes"), ("lists/find/2", None), ("changes", None), ("index", None),
    ],
)  # fmt: skip
def test_a_page_lights_the_room_it_belongs_to(here: str, room: str | None) -> None:
    names = [f"{address}.md" for address in ROOMS.values()]
    files = {name: File(name, "docs", "site", use_directory_urls=True) for name in names}
    lit = {each["title"]: each["here"] for each in rooms_from(here, ROOMS, files) if each["here"]}
    assert lit == ({room: "true"} if room else {})


def test_contents_name_files_and_titles_are_text() -> None:
    entries = ["index", {"<b>Sponges</b>": [{"Plain & light": "mixtures/plain"}]}]
    assert as_nav(entries) == [
        "index.md", {"&lt;b&gt;Sponges&lt;/b&gt;": [{"Plain &amp; light": "mixtures/plain.md"}]},
    ]  # fmt: skip
