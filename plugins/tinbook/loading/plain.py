"""A file in the register with no reader of its own: read by its model alone."""

from __future__ import annotations

from typing import Any

from tinbook.loading.intake import Intake
from tinbook.models.register import Merged, SourceKind


def read_plain(intake: Intake, kind: SourceKind) -> Any:
    """What a file or a folder holds, as far as it can be read; what is wrong with the rest is reported.

    A list or cards with a part that cannot be trusted give nothing: what is missing may be what matters.
    """
    if kind.merged is Merged.FOLDER:
        return _each_file(intake, kind)
    if kind.merged is Merged.LIST:
        return tuple(entry for file in intake.years_of(kind) for entry in _entries(intake, file))
    data = intake.data_of(kind)
    if data is None:
        return kind.nothing
    if kind.merged is Merged.WHOLE:
        whole = intake.whole(kind, data)
        return kind.nothing if kind.address in intake.broken else whole
    certain = kind.address not in intake.broken
    cards = {name: card for name, _, card in intake.cards(kind, data) if card is not None}
    return cards if certain else kind.nothing


def _entries(intake: Intake, kind: SourceKind) -> tuple[Any, ...]:
    data, certain = intake.data_of(kind), kind.address not in intake.broken
    entries = () if data is None else tuple(entry for _, entry in intake.entries(kind, data))
    return entries if certain else ()


def _each_file(intake: Intake, kind: SourceKind) -> dict[str, Any]:
    """Every readable file in a folder, by its name."""
    models = {}
    for address in intake.sources:
        data = intake.open(address) if address.startswith(kind.address) else None
        model = None if data is None else intake.part(address, kind.model, data, kind.spoken[0], ())
        if model is not None and address not in intake.broken:
            models[address.removeprefix(kind.address)] = model
    return models
