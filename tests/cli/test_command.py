"""The command as a whole."""

from collections.abc import Callable

import click
import pytest
from click.testing import Result

from tinbook.cli.command import PARTS, main, part_called


def test_help_names_every_part(run: Callable[..., Result]) -> None:
    told = run("--help").output
    assert all(word in told for word in (*PARTS, "--book"))


@pytest.mark.parametrize("width", [40, 80, 200])
def test_help_tells_of_each_part_what_the_part_says_of_itself(width: int) -> None:
    """As click would write it with every part imported."""
    whole = click.Group(commands=[part_called(name) for name in PARTS], params=main.params, help=main.help)
    settings = {"terminal_width": width, "max_content_width": width, "help_option_names": ["-h", "--help"]}
    told, expected = (
        group.get_help(click.Context(group, info_name="tinbook", **settings))  # type: ignore[arg-type]
        for group in (main, whole)
    )
    assert told == expected


def test_a_part_is_called_by_its_name() -> None:
    assert {name: part_called(name).name for name in PARTS} == {name: name for name in PARTS}


def test_an_unknown_part_is_refused(run: Callable[..., Result]) -> None:
    refused = run("bake")
    assert refused.exit_code == 2
    assert "No such command 'bake'" in refused.output
