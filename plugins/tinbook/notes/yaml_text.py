"""Texts as YAML values and comments, each on one line."""

from __future__ import annotations

import yaml


def quoted(text: str | list[str]) -> str:
    """A text, or a list of them, as one YAML value on one line."""
    dumped = yaml.safe_dump(text, allow_unicode=True, width=10**9, default_flow_style=True)
    return dumped.strip().removesuffix("...").strip()


def unsure(text: str, indent: str = "") -> str:
    """A line outside the data: what was found, and that somebody must look at it."""
    return f"{indent}# unsure: {' '.join(text.split())}"


def mark(why: str) -> str:
    """The mark after a value that was read but is not certain."""
    return f"  # unsure: {' '.join(why.split())}" if why else ""
