"""`tinbook new`: a book and a mixture of one's own; nothing existing is ever overwritten."""

from collections.abc import Callable
from pathlib import Path

from click.testing import CliRunner, Result
from mkdocs.commands.build import build
from mkdocs.config import load_config

from tinbook.cli import main
from tinbook.loading import load_book

Run = Callable[..., Result]
NOTES = """Sunday tray

425 g self-raising flour
- 425 g caster sugar
• 5 large eggs
½ tsp salt
3 knobs butter
200 g cob nuts

Method
1. Beat for 5 min.
2. Bake 45-50 min at 170 °C.
"""


def test_a_new_book_builds_at_once(tmp_path: Path, monkeypatch: object) -> None:
    folder = tmp_path / "tide house"
    done = CliRunner().invoke(main, ["new", "book", str(folder)])
    assert done.exit_code == 0, done.output
    assert load_book(folder / "recipes").problems == ()
    config = load_config(str(folder / "mkdocs.yml"), strict=True)
    config.plugins.on_startup(command="build", dirty=False)
    build(config)
    assert "Plain sponge" in (folder / "site" / "mixtures" / "plain-sponge" / "index.html").read_text(encoding="utf-8")
    assert load_book(folder / "recipes").book.house.name == "Tide house"


def test_a_folder_with_something_in_it_is_left_alone(tmp_path: Path) -> None:
    (tmp_path / "notes.txt").write_text("mine", encoding="utf-8")
    done = CliRunner().invoke(main, ["new", "book", str(tmp_path)])
    assert done.exit_code == 1 and "is not empty" in done.output
    assert [path.name for path in tmp_path.iterdir()] == ["notes.txt"]


def test_pasted_lines_become_a_mixture(run: Run, book: Path) -> None:
    (book / "notes.txt").write_text(NOTES, encoding="utf-8-sig", newline="\r\n")
    done = run("new", "mixture", "Sunday tray", "--from", str(book / "notes.txt"))
    assert done.exit_code == 0, done.output
    assert "recipes/mixtures/sunday-tray.yaml is written: 5 ingredients, 2 steps." in done.output.replace("\\", "/")
    text = (book / "recipes" / "mixtures" / "sunday-tray.yaml").read_text(encoding="utf-8")
    assert "  - 425 g self-raising flour\n" in text
    assert "# unsure: 3 knobs butter" in text
    assert "200 g cob nuts  # unsure: no card for it" in text


def test_told_all_it_needs_the_mixture_is_sound(run: Run, book: Path) -> None:
    sure = NOTES.replace("3 knobs butter\n200 g cob nuts\n", "425 g butter\n")
    words = ("--kind", "creamed", "--tins", "2 round 15 cm x 10 cm")
    done = run("new", "mixture", "sunday-tray", "--from", "-", *words, text=sure)
    assert done.exit_code == 0, done.output
    loaded = load_book(book / "recipes")
    assert loaded.errors == ()
    assert loaded.book.mixtures["sunday-tray"].name == "Sunday tray"


def test_an_existing_mixture_is_never_overwritten(run: Run, book: Path) -> None:
    path = book / "recipes" / "mixtures" / "madeira-cake.yaml"
    before = path.read_bytes()
    done = run("new", "mixture", "Madeira cake", "--from", "-", text=NOTES)
    assert done.exit_code == 1 and "exists already" in done.output
    assert path.read_bytes() == before


def test_what_is_no_text_is_refused(run: Run, book: Path) -> None:
    (book / "photo.jpg").write_bytes(b"\xff\xd8\xff\xe0\x00\x80")
    done = run("new", "mixture", "Photo", "--from", str(book / "photo.jpg"))
    assert done.exit_code == 1 and "not UTF-8" in done.output
    assert not (book / "recipes" / "mixtures" / "photo.yaml").exists()


def test_no_book_no_mixture(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["--book", str(tmp_path), "new", "mixture", "x", "--from", "-"], input=NOTES)
    assert done.exit_code == 1 and "tinbook new book" in done.output
