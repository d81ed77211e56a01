"""Pictures of a book on disk: what is read, what is refused and where that is told, what is kept back."""

from __future__ import annotations

import os
from collections.abc import Callable
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
from PIL import Image

from tinbook.loading import Loaded, Parses, load_book, pictures
from tinbook.problems import Problem, spell

Write = Callable[..., Path]
HULL = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 9"><path d="M0 0h9v9z"/></svg>'
LINE = """\
name: Line a tin
purpose: So that the cake comes out whole.
steps:
  - Cut the paper to the base.
mixtures: [plain-sponge]
pictures:
  - {file: hull.svg, alt: A hull.}
"""


def photo(wide: int = 40) -> bytes:
    out = BytesIO()
    Image.new("RGB", (wide, 30), "red").save(out, "JPEG")
    return out.getvalue()


def naming(file: str) -> dict[str, str]:
    return {"techniques/line-a-tin.yaml": LINE.replace("hull.svg", file)}


def told(loaded: Loaded) -> str:
    return "\n".join(spell(problem) for problem in loaded.problems)


def only(loaded: Loaded) -> Problem:
    (problem,) = loaded.problems
    return problem


@pytest.fixture
def read(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """The names of the pictures that are opened from here on."""
    opened: list[str] = []
    real = Path.open

    def watch(path: Path, *rest: Any, **more: Any) -> Any:
        if path.suffix != ".yaml" and "rb" in rest:
            opened.append(path.name)
        return real(path, *rest, **more)

    monkeypatch.setattr(Path, "open", watch)
    return opened


def test_a_drawing_and_a_photo(write: Write) -> None:
    both = LINE + "  - {file: Quay 1.JPG, alt: A quay., shows: Low water.}\n"
    files = {"techniques/line-a-tin.yaml": both, "pictures/hull.svg": HULL, "pictures/Quay 1.JPG": photo()}
    loaded = load_book(write(files))
    assert not loaded.problems
    hull, quay = loaded.book.pictures["hull.svg"], loaded.book.pictures["Quay 1.JPG"]
    assert (hull.kind, quay.kind) == ("drawing", "photo")
    assert quay.copies[0].name.startswith("quay-1.")


def test_only_what_is_named_is_read(write: Write, read: list[str]) -> None:
    loaded = load_book(write({**naming("hull.svg"), "pictures/hull.svg": HULL, "pictures/gull.svg": "<no drawing"}))
    assert read == ["hull.svg"]
    assert told(loaded) == (
        "recipes/pictures/gull.svg:1:1: note: no technique shows this file\n"
        '      | name it under "pictures:" of a technique, or take it out'
    )
    assert not loaded.errors
    assert "line-a-tin" in loaded.book.techniques


def test_a_name_within_a_longer_one_is_another(write: Write) -> None:
    files = {**naming("hull.svg"), "pictures/hull.svg": HULL, "pictures/l.svg": HULL, "pictures/old/hull.svg": HULL}
    notes = [problem.place.file for problem in load_book(write(files)).problems]
    assert notes == ["recipes/pictures/l.svg", "recipes/pictures/old/hull.svg"]


def test_what_systems_leave_among_them_is_no_fault(write: Write) -> None:
    files = {**naming("hull.svg"), "pictures/hull.svg": HULL, "pictures/.DS_Store": b"\0", "pictures/hull.svg~": "x"}
    assert not load_book(write(files)).problems


def test_a_missing_picture_is_told_where_it_is_named(write: Write) -> None:
    loaded = load_book(write({**naming("hul.svg"), "pictures/hull.svg": HULL}))
    assert told(loaded).endswith(
        'recipes/techniques/line-a-tin.yaml:7:12: there is no "hul.svg" in pictures/\n'
        "    7 |   - {file: hul.svg, alt: A hull.}\n"
        '      |            ^^^^^^^ did you mean "hull.svg"?'
    )
    assert "techniques/line-a-tin" in loaded.broken
    assert "line-a-tin" not in loaded.book.techniques
    assert not loaded.book.pictures
    assert "plain-sponge" in loaded.book.mixtures


def test_no_folder_of_pictures(write: Write) -> None:
    assert only(load_book(write(naming("hull.svg")))).message == 'there is no "hull.svg" in pictures/'


@pytest.mark.parametrize(
    "name", ["../secret.svg", "/etc/secret.svg", "..\\\\secret.svg", "C:secret.svg", "old/hull.svg", ".hull.svg", ".."]
)
def test_no_name_leads_out_of_the_folder(write: Write, tmp_path: Path, read: list[str], name: str) -> None:
    (tmp_path / "secret.svg").write_text(HULL)
    loaded = load_book(write({**naming(f'"{name}"'), "pictures/old/hull.svg": HULL, "secret.svg.yaml": "name: x\n"}))
    told_ = [problem for problem in loaded.problems if problem.place.file.endswith("line-a-tin.yaml")]
    assert [problem.code for problem in told_] == ["outside"]
    assert "is not a plain file name" in told_[0].message
    assert read == []


class TestLinks:
    @pytest.fixture
    def folder(self, write: Write) -> Path:
        folder = write(naming("hull.svg"))
        (folder / "pictures").mkdir()
        return folder

    def test_to_a_file_outside(self, folder: Path, tmp_path: Path, read: list[str]) -> None:
        (tmp_path / "hull.svg").write_text(HULL)
        (folder / "pictures" / "hull.svg").symlink_to(tmp_path / "hull.svg")
        problem = only(load_book(folder))
        assert (problem.code, problem.message) == ("outside", '"hull.svg" leads to a file outside pictures/')
        assert read == []

    def test_of_the_folder_itself(self, folder: Path, tmp_path: Path, read: list[str]) -> None:
        (tmp_path / "elsewhere").mkdir()
        (tmp_path / "elsewhere" / "hull.svg").write_text(HULL)
        (folder / "pictures").rmdir()
        (folder / "pictures").symlink_to(tmp_path / "elsewhere")
        errors = load_book(folder).errors
        assert [problem.code for problem in errors] == ["outside"]
        assert read == []

    def test_to_nothing_and_to_itself(self, folder: Path) -> None:
        link = folder / "pictures" / "hull.svg"
        for target in ("gone.svg", "hull.svg"):
            link.symlink_to(target)
            assert only(load_book(folder)).code == "unreadable"
            link.unlink()

    def test_to_another_picture(self, folder: Path) -> None:
        (folder / "pictures" / "boat.svg").write_text(HULL)
        (folder / "pictures" / "hull.svg").symlink_to("boat.svg")
        loaded = load_book(folder)
        assert not loaded.errors
        assert loaded.book.pictures["hull.svg"].svg

    def test_the_book_behind_a_link(self, folder: Path, tmp_path: Path) -> None:
        (folder / "pictures" / "hull.svg").write_text(HULL)
        (tmp_path / "shelf").symlink_to(folder)
        assert not load_book(tmp_path / "shelf").problems

    def test_a_pipe_is_not_waited_for(self, folder: Path) -> None:
        os.mkfifo(folder / "pictures" / "hull.svg")
        assert only(load_book(folder)).message == '"hull.svg" is not a file'

    def test_a_folder_by_that_name(self, folder: Path) -> None:
        (folder / "pictures" / "hull.svg").mkdir()
        assert only(load_book(folder)).message == '"hull.svg" is not a file'


@pytest.mark.parametrize("name", ["hull.heic", "hull.gif", "hull.svgz", "hull", "hull.svg.html"])
def test_an_unknown_kind(write: Write, read: list[str], name: str) -> None:
    problem = only(load_book(write({**naming(name), f"pictures/{name}": HULL})))
    assert problem.code == "picture"
    assert problem.hint == "save it as .svg, .jpg, .jpeg, .png or .webp"
    assert read == []


def test_too_large_a_file(write: Write) -> None:
    folder = write({**naming("hull.jpg"), "pictures/hull.jpg": photo()})
    with (folder / "pictures" / "hull.jpg").open("r+b") as file:
        file.truncate(25_000_001)
    assert only(load_book(folder)).message == "the picture is larger than 25 MB"


def test_a_file_that_may_not_be_read(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    real = Path.open

    def refuse(path: Path, *rest: Any, **more: Any) -> Any:
        if path.suffix == ".svg":
            raise PermissionError(13, "Permission denied")
        return real(path, *rest, **more)

    folder = write({**naming("hull.svg"), "pictures/hull.svg": HULL})
    monkeypatch.setattr(Path, "open", refuse)
    problem = only(load_book(folder))
    assert problem.message == "the picture cannot be read: Permission denied"


def test_what_is_wrong_with_a_picture_is_told_at_its_name(write: Write) -> None:
    bad = HULL.replace("<path", "<script/><path")
    assert told(load_book(write({**naming("hull.svg"), "pictures/hull.svg": bad}))) == (
        "recipes/techniques/line-a-tin.yaml:7:12: it contains a script\n"
        "    7 |   - {file: hull.svg, alt: A hull.}\n"
        "      |            ^^^^^^^^ save it as a plain drawing, without script"
    )


def test_one_bad_picture_hides_no_other(write: Write) -> None:
    other = LINE.replace("Line a tin", "Other").replace("hull.svg", "quay.jpg")
    files = {**naming("gone.svg"), "techniques/other.yaml": other, "pictures/quay.jpg": photo()}
    loaded = load_book(write(files))
    assert list(loaded.book.techniques) == ["other"]
    assert list(loaded.book.pictures) == ["quay.jpg"]


@pytest.mark.parametrize("private", ["yes", "[pictures]"])
def test_a_private_picture_is_not_even_read_for_a_site(write: Write, read: list[str], private: str) -> None:
    files = {"techniques/line-a-tin.yaml": LINE + f"private: {private}\n", "pictures/hull.svg": HULL}
    folder = write(files)
    assert "hull.svg" in load_book(folder, kitchen=True).book.pictures
    read.clear()
    site = load_book(folder, kitchen=False)
    assert not site.book.pictures and not site.problems
    assert read == []


def test_a_picture_that_a_private_technique_shares_stays(write: Write) -> None:
    shared = LINE.replace("Line a tin", "Secret") + "private: yes\n"
    loaded = load_book(
        write({**naming("hull.svg"), "techniques/secret.yaml": shared, "pictures/hull.svg": HULL}), kitchen=False
    )
    assert list(loaded.book.pictures) == ["hull.svg"]


def test_unchanged_pictures_are_not_worked_again(write: Write, monkeypatch: pytest.MonkeyPatch) -> None:
    folder = write({**naming("quay.jpg"), "pictures/quay.jpg": photo()})
    worked: list[str] = []
    real = pictures.read_photo
    monkeypatch.setattr(pictures, "read_photo", lambda raw, name, slug: worked.append(name) or real(raw, name, slug))
    parses = Parses()
    first = load_book(folder, parses=parses).book.pictures
    again = load_book(folder, parses=Parses(parses.learnt)).book.pictures
    assert (worked, again) == (["quay.jpg"], first)
    (folder / "pictures" / "quay.jpg").write_bytes(photo(50))
    changed = load_book(folder).book.pictures
    assert len(worked) == 2 and changed["quay.jpg"].width == 50


def test_a_picture_in_another_folder_is_shown_the_way(write: Write) -> None:
    problem = only(load_book(write({"techniques/hull.svg": HULL})))
    assert (problem.place.file, problem.message) == ("recipes/techniques/hull.svg", "is a picture")
    assert problem.hint == "move it to pictures/"
