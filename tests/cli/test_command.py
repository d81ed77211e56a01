"""The command as a whole."""

from collections.abc import Callable

from click.testing import Result


def test_help_names_every_part(run: Callable[..., Result]) -> None:
    told = run("--help").output
    assert all(word in told for word in ("check", "table", "new", "--book"))


def test_an_unknown_part_is_refused(run: Callable[..., Result]) -> None:
    assert run("bake").exit_code == 2
