"""Loops for tests: many cases in one test, of which every failing one is reported by its name."""

from __future__ import annotations

import inspect
import traceback
from collections.abc import Callable, Iterable
from pathlib import Path
from typing import Any, TypeVar

import pytest
from hypothesis import settings

SEEDS = 100
"""Examples of a property in the ordinary run, the same ones each time."""
HERE = Path(__file__).parent
Case = TypeVar("Case")


def all_seeds() -> bool:
    """Whether this run tries everything: --all-seeds."""
    return not settings.default.derandomize


def many(examples: int) -> settings:
    """This many examples of a property with --all-seeds, else at most the hundred fixed ones."""
    return settings(max_examples=examples if all_seeds() else min(examples, SEEDS))


def check_every(cases: Iterable[Case], check: Callable[[Case], object], name: Callable[[Case], object] = str) -> None:
    """Checks each case, and fails at the end with what was wrong of each one that failed. A case that skips has failed."""
    failed, cases = [], list(cases)
    assert cases, "there is no case to check"
    for case in cases:
        try:
            check(case)
        except (Exception, pytest.fail.Exception, pytest.skip.Exception) as wrong:
            failed.append(f"{name(case)}: {_told(wrong)}")
    if failed:
        pytest.fail("\n".join((f"{len(failed)} of {len(cases)} failed", *failed)), pytrace=False)


def _told(wrong: BaseException) -> str:
    """What went wrong and on which line: of a loop within a loop, each of its cases by itself."""
    if isinstance(wrong, BaseExceptionGroup):
        return "\n    ".join(map(_told, wrong.exceptions))
    text = "\n".join((str(wrong), *getattr(wrong, "__notes__", ())))
    if not (isinstance(wrong, pytest.fail.Exception) and not wrong.pytrace):
        frames = [each for each in traceback.extract_tb(wrong.__traceback__) if each.filename != __file__]
        last = next((each for each in reversed(frames) if Path(each.filename).is_relative_to(HERE)), frames[-1])
        kind = "" if isinstance(wrong, AssertionError) else f"{type(wrong).__name__}: "
        text = f"{Path(last.filename).name}:{last.lineno}: {kind}{text}"
    return text.replace("\n", "\n    ")


def every(
    names: str | tuple[str, ...], cases: Iterable[Any], ids: Callable[[Any], object] | Iterable[object] | None = None
) -> Callable[[Callable[..., None]], Callable[..., None]]:
    """Written like `pytest.mark.parametrize`, but one test that goes through all of its cases.

    Only for tests whose fixtures are the same for each case: what belongs to one test alone (a folder, a page) is shared.
    """
    words = tuple(word.strip() for word in names.split(",")) if isinstance(names, str) else tuple(names)
    listed = list(cases)
    assert listed, "there is no case to check"
    called = [_named(case, ids) for case in listed] if ids is None or callable(ids) else list(ids)
    assert len(called) == len(listed), "each case has its name"

    def looped(test: Callable[..., None]) -> Callable[..., None]:
        taken = inspect.signature(test)
        assert set(words) <= set(taken.parameters), f"{test.__name__} does not take {words}"

        def run(**fixtures: Any) -> None:
            def one(at: int) -> None:
                values = listed[at] if len(words) > 1 else (listed[at],)
                test(**fixtures, **dict(zip(words, values, strict=True)))

            check_every(range(len(listed)), one, lambda at: called[at])

        run.__signature__ = taken.replace(  # type: ignore[attr-defined]
            parameters=[
                parameter.replace(kind=inspect.Parameter.KEYWORD_ONLY)
                for name, parameter in taken.parameters.items()
                if name not in words
            ],
            return_annotation=None,
        )
        run.__name__, run.__qualname__, run.__doc__, run.__module__ = (
            test.__name__, test.__qualname__, test.__doc__, test.__module__,
        )  # fmt: skip
        if hasattr(test, "pytestmark"):
            run.pytestmark = test.pytestmark  # type: ignore[attr-defined]
        return run

    return looped


def _named(case: object, spelled: Callable[[Any], object] | None) -> str:
    parts = case if isinstance(case, tuple) else (case,)
    return "-".join(str(part if spelled is None else spelled(part)) for part in parts)
