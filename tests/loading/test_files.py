"""Which files make a book: every file is read or answered for, none is written, and no link leads out of it."""

from __future__ import annotations

import hashlib
import os
from collections.abc import Callable
from pathlib import Path
from typing import Any

import pytest

from tinbook.loading import load_book
from tinbook.loading.files import SLUG, read_sources, slug_of
from tinbook.problems import Problem, spell

Write = Callable[..., Path]
CAKE = "name: Cake\n"


def told(problems: tuple[Problem, ...]) -> str:
    return "\n".join(spell(problem) for problem in problems)


def test_the_files_in_order_with_address_name_and_bytes(write: Write) -> None:
    sources, refused, problems = read_sources(write({"mixtures/a-1.yaml": b"\xff\x00"}))
    assert [source.address for source in sources] == [
        "house/house",
        "house/ingredients",
        "house/tins",
        "mixtures/a-1",
        "mixtures/plain-sponge",
        "techniques/line-a-tin",
    ]
    assert sources[3].shown == "recipes/mixtures/a-1.yaml"
    assert sources[3].raw == b"\xff\x00"
    assert not refused
    assert not problems


@pytest.mark.parametrize(
    ("name", "meant", "text"),
    [
        (
            "mixtures/Lemon Cake.yaml",
            "mixtures/lemon-cake",
            "recipes/mixtures/Lemon Cake.yaml:1:1: this file's name cannot be a page's address\n"
            '      | name it "lemon-cake.yaml": lower case, figures and hyphens',
        ),
        (
            "mixtures/crème_brûlée.yaml",
            "mixtures/cr-me-br-l-e",
            "recipes/mixtures/crème_brûlée.yaml:1:1: this file's name cannot be a page's address\n"
            '      | name it "cr-me-br-l-e.yaml": lower case, figures and hyphens',
        ),
        (
            "mixtures/lemon-cake.yml",
            "mixtures/lemon-cake",
            'recipes/mixtures/lemon-cake.yml:1:1: is not a .yaml file\n      | name it "lemon-cake.yaml"',
        ),
        (
            "techniques/Level.YAML",
            "techniques/level",
            'recipes/techniques/Level.YAML:1:1: is not a .yaml file\n      | name it "level.yaml"',
        ),
        (
            "house/house.yml",
            "house/house",
            'recipes/house/house.yml:1:1: is not a .yaml file\n      | name it "house.yaml"',
        ),
        (
            "house/ingredient.yaml",
            "house/ingredients",
            'recipes/house/ingredient.yaml:1:1: is not one of the house\'s files\n      | did you mean "ingredients.yaml"?',
        ),
        (
            "house/birds.yaml",
            "house/birds",
            "recipes/house/birds.yaml:1:1: is not one of the house's files\n"
            "      | the house has house.yaml, tins.yaml, ingredients.yaml",
        ),
        (
            "mixture/lemon-cake.yaml",
            "mixtures/lemon-cake",
            "recipes/mixture/lemon-cake.yaml:1:1: is not in any of the book's folders\n"
            '      | did you mean the folder "mixtures"?',
        ),
        (
            "birds/tern.yaml",
            "birds/tern",
            "recipes/birds/tern.yaml:1:1: is not in any of the book's folders\n"
            "      | put it in house/, mixtures/, techniques/, cakes/ or orders/",
        ),
        (
            "mixtures/lemon/cake.yaml",
            "mixtures/cake",
            "recipes/mixtures/lemon/cake.yaml:1:1: is not in any of the book's folders\n"
            "      | put it in house/, mixtures/, techniques/, cakes/ or orders/",
        ),
        (
            "cake.yaml",
            "cake.yaml/cake",
            "recipes/cake.yaml:1:1: is not in any of the book's folders\n      | put it in house/, mixtures/, techniques/, cakes/ or orders/",
        ),
    ],
)
def test_a_file_that_is_no_part_of_the_book(write: Write, name: str, meant: str, text: str) -> None:
    sources, refused, problems = read_sources(write({name: CAKE}))
    assert told(problems) == text
    assert refused == {meant}
    assert len(sources) == 5


@pytest.mark.parametrize(
    "name", [".hidden.yaml", "mixtures/.plain.yaml.swp", "mixtures/plain.yaml~", ".git/x.yaml", "~lock/x"]
)
def test_what_systems_and_editors_leave_behind_is_no_fault(write: Write, name: str) -> None:
    sources, refused, problems = read_sources(write({name: "\0"}))
    assert (len(sources), len(refused), len(problems)) == (5, 0, 0)


def test_no_folder(tmp_path: Path) -> None:
    sources, _, problems = read_sources(tmp_path / "recipes")
    assert not sources
    assert told(problems).startswith("recipes/:1:1: there is no such folder\n")
    assert "name it with --book" in told(problems)
    (tmp_path / "recipes").write_text("a file")
    assert read_sources(tmp_path / "recipes")[2][0].code == "no book"
    loaded = load_book(tmp_path / "recipes")
    assert [problem.code for problem in loaded.problems] == ["no book"]
    assert not loaded.book.mixtures


def test_an_empty_folder_wants_its_house(tmp_path: Path) -> None:
    (tmp_path / "recipes").mkdir()
    assert told(load_book(tmp_path / "recipes").problems) == (
        "recipes/house/house.yaml:1:1: the book has no house.yaml\n"
        '      | write one, starting with "book: 1" and "name: ..."'
    )


def test_spaces_and_letters_in_the_way_to_the_book(write: Write, tmp_path: Path) -> None:
    there = tmp_path / "Möwe & Söhne" / "my cakes"
    there.parent.mkdir()
    write().rename(there)
    loaded = load_book(there)
    assert not loaded.problems
    assert "plain-sponge" in loaded.book.mixtures


class TestLinks:
    """A link is followed to a file inside the book, and nowhere else."""

    @pytest.fixture
    def folder(self, write: Write) -> Path:
        return write()

    def refused(self, folder: Path) -> str:
        sources, _, problems = read_sources(folder)
        assert not any(source.address.endswith("linked") for source in sources)
        return told(problems)

    def test_to_a_file_outside(self, folder: Path, tmp_path: Path) -> None:
        secret = tmp_path / "secret.yaml"
        secret.write_text("name: Nobody should read this\n")
        (folder / "mixtures" / "linked.yaml").symlink_to(secret)
        assert self.refused(folder) == (
            "recipes/mixtures/linked.yaml:1:1: leads to a file outside the book\n"
            "      | copy the file itself into the book"
        )
        assert "Nobody" not in repr(load_book(folder))

    def test_to_a_file_beside_whose_way_starts_the_same(self, folder: Path, tmp_path: Path) -> None:
        beside = tmp_path / "recipes2"
        beside.mkdir()
        (beside / "x.yaml").write_text(CAKE)
        (folder / "mixtures" / "linked.yaml").symlink_to("../../recipes2/x.yaml")
        assert "outside the book" in self.refused(folder)

    def test_to_a_folder_outside(self, folder: Path, tmp_path: Path) -> None:
        outside = tmp_path / "outside"
        outside.mkdir()
        (outside / "linked.yaml").write_text(CAKE)
        (folder / "mixtures" / "more").symlink_to(outside)
        assert "recipes/mixtures/more:1:1: leads to a file outside the book" in self.refused(folder)

    def test_to_a_folder_inside(self, folder: Path) -> None:
        (folder / "mixtures" / "linked.yaml").symlink_to(folder / "house")
        assert "leads to a folder" in self.refused(folder)

    def test_to_nothing(self, folder: Path) -> None:
        (folder / "mixtures" / "linked.yaml").symlink_to("gone.yaml")
        assert "leads to a file that is not there" in self.refused(folder)

    def test_to_itself(self, folder: Path) -> None:
        (folder / "mixtures" / "linked.yaml").symlink_to("linked.yaml")
        assert "leads to a file that is not there" in self.refused(folder)

    def test_to_a_file_of_the_book(self, folder: Path) -> None:
        (folder / "mixtures" / "second-name.yaml").symlink_to("plain-sponge.yaml")
        loaded = load_book(folder)
        assert not loaded.problems
        assert loaded.book.mixtures["second-name"] == loaded.book.mixtures["plain-sponge"]

    def test_the_book_itself_behind_a_link(self, folder: Path, tmp_path: Path) -> None:
        (tmp_path / "shelf").symlink_to(folder)
        loaded = load_book(tmp_path / "shelf")
        assert not loaded.problems
        assert "plain-sponge" in loaded.book.mixtures


def test_a_pipe_is_not_waited_for(write: Write) -> None:
    folder = write()
    os.mkfifo(folder / "mixtures" / "pipe.yaml")
    assert len(read_sources(folder)[0]) == 5


def test_a_name_that_is_no_text(write: Write) -> None:
    folder = write()
    try:
        (folder / "mixtures" / os.fsdecode(b"tern-\xff.yaml")).write_text(CAKE)
    except (OSError, UnicodeError):
        pytest.skip("this disk takes no such names")
    (problem,) = read_sources(folder)[2]
    problem.place.file.encode("utf-8")
    assert problem.code == "file name"


def test_a_file_that_may_not_be_read(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    folder, opened = write(), Path.open

    def refuse(path: Path, *rest: Any, **more: Any) -> Any:
        if path.name == "plain-sponge.yaml":
            raise PermissionError(13, "Permission denied")
        return opened(path, *rest, **more)

    monkeypatch.setattr(Path, "open", refuse)
    loaded = load_book(folder)
    assert told(loaded.problems) == (
        "recipes/mixtures/plain-sponge.yaml:1:1: cannot be read: Permission denied\n      | check its permissions"
    )
    assert "line-a-tin" in loaded.book.techniques


def test_a_large_file_is_not_read_to_its_end(write: Write) -> None:
    folder = write({"mixtures/large.yaml": b"about: " + b"x" * 1_500_000})
    (large,) = (source for source in read_sources(folder)[0] if source.address == "mixtures/large")
    assert len(large.raw) == 1_000_001
    loaded = load_book(folder)
    assert told(loaded.problems) == (
        "recipes/mixtures/large.yaml:1:1: the file is larger than 1 MB\n      | split it into several files"
    )
    assert "plain-sponge" in loaded.book.mixtures


@pytest.mark.parametrize(
    ("name", "slug"),
    [
        ("Lemon Cake", "lemon-cake"),
        ("Baker's  half-pound", "bakers-half-pound"),
        ("2 lb loaf", "2-lb-loaf"),
        ("--", "unnamed"),
        ("蛋糕", "unnamed"),
    ],
)
def test_a_slug(name: str, slug: str) -> None:
    assert slug_of(name) == slug
    assert SLUG.fullmatch(slug)


@pytest.mark.parametrize("kitchen", [True, False])
def test_no_source_is_ever_touched(write: Write, kitchen: bool) -> None:
    folder = write(
        {
            "mixtures/broken.yaml": "name: [",
            "mixtures/Wrong Name.yaml": CAKE,
            "mixtures/lines.yaml": b"name: x\r\nkind: creamed",
            "house/house.yaml": b"\xef\xbb\xbfbook: 1\nname: x\nprivate: [mixer bowl]\n",
        }
    )

    def state() -> dict[str, tuple[str, int, int]]:
        return {
            str(path): (hashlib.sha256(path.read_bytes()).hexdigest(), path.stat().st_mtime_ns, path.stat().st_mode)
            for path in sorted(folder.parent.rglob("*"))
            if path.is_file()
        }

    before = state()
    load_book(folder, kitchen)
    assert state() == before
