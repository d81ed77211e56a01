"""One bad file for each kind of fault, with the exact text a baker is shown."""

from pathlib import Path

from tests.every import every

from tinbook.problems import spell
from tinbook.source import read_yaml

BAD = Path(__file__).parent / "bad"
FILES = sorted(BAD.glob("*.yaml"))
# Faults that leave the rest of the file as it was meant.
READ_ON = {
    "anchor",
    "anchor-on-a-list",
    "braces-text",
    "group-as-name",
    "list-as-name",
    "odd-space-name",
    "quoted-name-with-space",
    "short-tag",
    "tag",
    "twice",
    "twice-in-a-group",
}


@every("path", FILES, ids=lambda path: path.stem)
def test_the_baker_is_told(path: Path) -> None:
    document, problems = read_yaml(path.read_bytes(), path.name)
    told = "".join(f"{spell(problem)}\n" for problem in problems)
    assert told == path.with_suffix(".txt").read_text(encoding="utf-8")
    assert (document is not None) == (path.stem in READ_ON)


@every("path", FILES, ids=lambda path: path.stem)
def test_no_words_of_the_parser_get_through(path: Path) -> None:
    """Each fault is known by name: none falls through to the sentence for everything else."""
    _, problems = read_yaml(path.read_bytes(), path.name)
    for problem in problems:
        words = f"{problem.message} {problem.hint}"
        assert problem.hint
        assert "cannot be read" not in words
        for strange in ("token", "scalar", "mapping", "sequence", "node", "stream", "YAML"):
            assert strange not in words


def test_every_bad_file_has_its_text_and_every_text_its_file() -> None:
    assert {path.stem for path in BAD.glob("*.txt")} == {path.stem for path in FILES}
    assert len(FILES) > 50


def test_codes() -> None:
    codes = {problem.code for path in FILES for problem in read_yaml(path.read_bytes(), path.name)[1]}
    assert codes == {
        "alias",
        "anchor",
        "control",
        "depth",
        "documents",
        "duplicate",
        "empty",
        "encoding",
        "merge",
        "name",
        "odd space",
        "tab",
        "tag",
        "top",
        "yaml",
    }


def test_too_large() -> None:
    document, problems = read_yaml(b"a: " + b"x" * 1_000_000, "large.yaml")
    assert document is None
    assert [spell(problem) for problem in problems] == [
        "large.yaml:1:1: the file is larger than 1 MB\n      | split it into several files"
    ]
    document, problems = read_yaml(b"a: " + b"x" * 999_997, "large.yaml")
    assert document is not None and not problems
