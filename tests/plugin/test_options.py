"""What a book says about the plugin, and what holds where it says nothing."""

from __future__ import annotations

from tinbook.plugin.options import TinbookConfig


def test_what_holds_where_nothing_is_said() -> None:
    options = TinbookConfig()
    assert options.validate() == ([], [])
    assert dict(options) == {"recipes": "recipes", "kitchen": False, "folder": False, "keep": True}


def test_what_is_no_option_is_named() -> None:
    options = TinbookConfig()
    options.load_dict({"kitchen": "perhaps", "keeps": True})
    errors, warnings = options.validate()
    assert [name for name, _ in errors] == ["kitchen"] and [name for name, _ in warnings] == ["keeps"]
