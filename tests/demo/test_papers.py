"""The papers at the top: what README tells a newcomer to type is typed, and each paper keeps its size."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from tinbook.cli import main

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text("utf-8")
PAGE = """<script type="application/ld+json">{"@context": "https://schema.org", "@type": "Recipe", "name": "Their sponge",
"recipeIngredient": ["200 g butter", "200 g caster sugar"], "recipeInstructions": "Beat."}</script>"""


def blocks(language: str) -> list[str]:
    """What stands in README's fences of a language, without the indent of the list they stand in."""
    found: list[tuple[str, str]] = re.findall(rf"^( *)```{language}\n(.*?)^ *```$", README, re.DOTALL | re.MULTILINE)
    return [re.sub(rf"^{indent}", "", text, flags=re.MULTILINE) for indent, text in found]


def typed(line: str) -> Result:
    """A `tinbook` command run in the folder we stand in."""
    name, *words = shlex.split(line)
    assert name == "tinbook"
    return CliRunner().invoke(main, words)


@pytest.fixture
def book(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The newcomer's book, made as README says, with the note from README as its first mixture."""
    monkeypatch.chdir(tmp_path)
    new, note = (lines.splitlines() for lines in blocks("sh")[-2:])
    assert new[1:] == ["cd ../our-book", "tinbook serve"]
    (tmp_path / "here").mkdir()
    monkeypatch.chdir(tmp_path / "here")
    assert typed(new[0]).exit_code == 0
    folder = tmp_path / "our-book"
    monkeypatch.chdir(folder)
    (folder / "notes.txt").write_text(blocks("text")[0], "utf-8")
    done = typed(note[0])
    assert done.exit_code == 0, done.output
    return folder


def test_the_recipe_in_five_minutes(book: Path) -> None:
    sponge = book / "recipes" / "mixtures" / "our-sponge.yaml"
    written = sponge.read_text("utf-8")
    assert "unsure" not in written and "bake: {oven: 170 °C, time: 45-50 min}" in written
    assert typed("tinbook check").exit_code == 0
    sponge.write_text(written.replace("caster sugar", "caster sugra"), "utf-8")
    slip = typed("tinbook check")
    assert slip.exit_code == 1
    assert blocks("text")[1] in slip.output.replace("\\", "/")


def test_every_command_in_readme_does_what_it_says(book: Path) -> None:
    (book / "page.html").write_text(PAGE, "utf-8")
    commands = [line for line in re.findall(r"`(tinbook [^`]+)`", README) if "build" not in line]
    assert len(commands) >= 10
    for command in commands:
        done = typed(command)
        assert done.exit_code == 0, (command, done.output)
    assert typed('tinbook table scaled --of our-sponge --left "400 g butter"').exit_code == 0
    for made in ("recipes/mixtures/their-sponge.yaml", "recipes/house/bakes.yaml", "line-a-tin.pdf"):
        assert (book / made).is_file(), made
    assert list(book.glob("*strip*.pdf"))


def test_a_paper_is_short() -> None:
    assert len(README.encode()) < 7_000
    assert len((ROOT / "DEVELOPERS.md").read_bytes()) <= 10_000


HELD = (88, 89)
"""Numbers kept for work that is under way beside this."""
LINES = ["Question", "Choice", "Reason", "Cost", "Date"]


def decisions() -> dict[int, tuple[str, str]]:
    """Title and text of each decision, by its number, in the order they stand in."""
    text = (ROOT / "plugins" / "DECISIONS.md").read_text("utf-8").partition("\n## Measured")[0]
    parts = re.split(r'^### <a id="d(\d+)"></a>(\d+)\. (.*)$', text, flags=re.MULTILINE)[1:]
    found = [
        (int(anchor), int(number), title, body) for anchor, number, title, body in zip(*[iter(parts)] * 4, strict=True)
    ]
    assert all(anchor == number for anchor, number, _, _ in found)
    assert len({number for _, number, _, _ in found}) == len(found)
    return {number: (title, body) for _, number, title, body in found}


def test_each_decision_has_its_number_and_five_short_lines() -> None:
    found = decisions()
    assert sorted({*found, *HELD}) == list(range(1, max(found) + 1)) and len(found) >= 76
    for number, (_, body) in found.items():
        lines = dict(re.findall(r"^- \*\*(\w+):\*\* (.*(?:\n  .*)*)", body, re.MULTILINE))
        assert list(lines) == LINES, number
        assert all(len(line) <= 360 for line in lines.values()), (
            number,
            {key: len(line) for key, line in lines.items()},
        )
        assert re.match(r"20\d\d-\d\d-\d\d\b", lines["Date"]), number
        superseded = re.findall(r"superseded.* by (\d+)", lines["Date"].replace("\n", " "))
        assert all(int(later) in found and int(later) > number for later in superseded), number


def test_the_index_lists_every_decision_once() -> None:
    text = (ROOT / "plugins" / "DECISIONS.md").read_text("utf-8")
    index = text.partition("## Index\n")[2].partition("\n## ")[0]
    listed = re.findall(r"^- \[(\d+)\]\(#d(\d+)\) (.*)$", index, re.MULTILINE)
    assert [(int(number), title) for number, _, title in listed] == [
        (n, title) for n, (title, _) in decisions().items()
    ]
    assert all(number == anchor for number, anchor, _ in listed)
    subjects = re.findall(r"^\*\*(.*)\*\*$", index, re.MULTILINE)
    assert subjects == re.findall(r"^## (.*)$", text, re.MULTILINE)[1:-1]


def test_a_decision_that_code_or_papers_name_is_there() -> None:
    found = decisions()
    texts = [*(ROOT / "plugins").rglob("*.py"), *(ROOT / "plugins").rglob("*.js"), ROOT / "DEVELOPERS.md"]
    named = {int(number) for path in texts for number in re.findall(r"decision (\d+)", path.read_text("utf-8"))}
    assert named and named <= set(found)
