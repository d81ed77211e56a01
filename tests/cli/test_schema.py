"""`tinbook schema`, and how a new book's files find their schemas."""

import json
import re
from collections.abc import Callable
from pathlib import Path

from click.testing import CliRunner, Result
from jsonschema import Draft202012Validator

from tinbook.cli import main
from tinbook.cli.schema import first_line
from tinbook.models.json_schema import schema_of
from tinbook.models.register import kinds
from tinbook.source import read_yaml

Run = Callable[..., Result]
FIRST = re.compile(r"# yaml-language-server: \$schema=(\S+)\n")


def test_the_schemas_are_written_beside_the_recipes(run: Run, book: Path) -> None:
    done = run("schema")
    assert done.exit_code == 0, done.output
    assert {path.name for path in (book / "schema").iterdir()} == {f"{name}.json" for name in kinds()}
    for name in kinds():
        assert json.loads((book / "schema" / f"{name}.json").read_text("utf-8")) == schema_of(name)
    assert first_line("mixture") in done.output


def test_it_may_be_done_again(run: Run, book: Path) -> None:
    run("schema")
    (book / "schema" / "house.json").write_text("old", "utf-8")
    assert run("schema").exit_code == 0
    assert json.loads((book / "schema" / "house.json").read_text("utf-8")) == schema_of("house")


def test_no_book_no_schema(tmp_path: Path) -> None:
    done = CliRunner().invoke(main, ["--book", str(tmp_path), "schema"])
    assert done.exit_code == 1 and "tinbook new book" in done.output
    assert not any(tmp_path.iterdir())


def test_a_folder_that_cannot_be_written_is_told(run: Run, book: Path) -> None:
    (book / "schema").write_text("mine", "utf-8")
    done = run("schema")
    assert done.exit_code == 1 and "cannot be written" in done.output
    assert (book / "schema").read_text("utf-8") == "mine"


def test_every_file_of_a_new_book_finds_its_schema(tmp_path: Path) -> None:
    folder = tmp_path / "tide house"
    assert CliRunner().invoke(main, ["new", "book", str(folder)]).exit_code == 0
    sources = sorted((folder / "recipes").rglob("*.yaml"))
    assert len(sources) == 5
    for source in sources:
        found = FIRST.match(source.read_text("utf-8"))
        assert found, source
        schema = json.loads((source.parent / found[1]).read_text("utf-8"))
        document, _ = read_yaml(source.read_bytes(), source.name)
        assert document is not None
        assert Draft202012Validator(schema).is_valid(document.data), source
        assert source in folder.glob(f"recipes/{kinds()[schema['title']].path}")


def test_an_editor_is_told_which_schema_is_for_which_files(tmp_path: Path) -> None:
    """For files that begin without the line, in the folder as one editor knows it."""
    assert CliRunner().invoke(main, ["new", "book", str(tmp_path / "x")]).exit_code == 0
    told = json.loads((tmp_path / "x" / ".vscode" / "settings.json").read_text("utf-8"))["yaml.schemas"]
    assert told == {
        f"./schema/{name}.json": [f"recipes/{path}" for path in kind.paths] for name, kind in kinds().items()
    }
    assert told["./schema/bakes.json"] == ["recipes/house/bakes.yaml", "recipes/house/bakes-*.yaml"]
    assert all((tmp_path / "x" / schema).is_file() for schema in told)


def test_a_mixture_drafted_in_such_a_book_begins_with_the_line(run: Run, book: Path) -> None:
    run("new", "mixture", "Without", "--from", "-", text="250 g butter")
    run("schema")
    run("new", "mixture", "With", "--from", "-", text="250 g butter")
    texts = [(book / "recipes" / "mixtures" / f"{name}.yaml").read_text("utf-8") for name in ("without", "with")]
    assert texts[1] == f"{first_line('mixture')}\n{texts[0].replace('Without', 'With')}"
