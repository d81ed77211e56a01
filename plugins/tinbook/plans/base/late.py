"""A module that is imported when one of its functions is first called."""

from __future__ import annotations

from collections.abc import Callable
from importlib import import_module
from typing import Any


class LateRoom:
    """Takes the place of a module of functions: each is there by name, and imports the module when called.

    A name the module lacks raises AttributeError, but only when it is called.
    """

    def __init__(self, module: str) -> None:
        self._module = module

    def __getattr__(self, name: str) -> Callable[..., Any]:
        def called(*given: Any) -> Any:
            return getattr(import_module(self._module), name)(*given)

        called.__module__, called.__name__ = self._module, name
        return called
