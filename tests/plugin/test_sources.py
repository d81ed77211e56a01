"""A folder becomes a site, and what is wrong with it is told."""

from __future__ import annotations

import logging
from pathlib import Path

import pytest
from tests.loading.conftest import write_book

from tinbook.loading import Parses
from tinbook.models.ledger import Kept
from tinbook.plugin.sources import SiteRead, read_site


def site_of(folder: Path, files: dict[str, str | bytes | None]) -> SiteRead:
    return read_site(write_book(folder / "recipes", files), True, Kept(), Parses())


def test_a_sound_book_is_read_in_silence(tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    with caplog.at_level(logging.INFO, "mkdocs"):
        read = site_of(tmp_path, {})
    assert "mixtures/plain-sponge/tables" in read.site.pages and not read.house_broken
    assert caplog.records == []


def test_what_is_wrong_is_a_warning_and_what_is_only_worth_knowing_is_not(
    tmp_path: Path, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.INFO, "mkdocs"):
        read = site_of(
            tmp_path, {"house/house.yaml": "book: 1\nname: A\neggz: UK large\n", "pictures/lost.svg": "<svg/>"}
        )
    assert read.house_broken
    assert {record.levelname for record in caplog.records} == {"WARNING", "INFO"}
    (warning,) = (record.getMessage() for record in caplog.records if record.levelno == logging.WARNING)
    assert "recipes/house/house.yaml:3:1" in warning
