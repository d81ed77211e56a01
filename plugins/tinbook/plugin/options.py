"""What a book can say about the plugin in mkdocs.yml."""

from __future__ import annotations

from mkdocs.config import config_options
from mkdocs.config.base import Config


class TinbookConfig(Config):  # type: ignore[no-untyped-call]
    """`recipes`: the folder of the book's sources, next to mkdocs.yml. `kitchen`: show what is private.

    `folder`: build a book to be copied as a folder and opened from there, without a server. `keep`: keep pages between
    builds, in `.cache`.
    """

    recipes = config_options.Type(str, default="recipes")
    kitchen = config_options.Type(bool, default=False)
    folder = config_options.Type(bool, default=False)
    keep = config_options.Type(bool, default=True)
