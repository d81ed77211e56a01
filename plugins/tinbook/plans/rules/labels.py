"""Rules for what the house says about its labels, and for the packs it has opened."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from tinbook.models import Book, Flaw, word_in
from tinbook.models.labels import Labelling
from tinbook.models.opened import PackOpened
from tinbook.plans.rules.fields import FOLLOWS, Spoilt, no_card

GRAIN_MM = 0.05
NARROWEST_MM, LOWEST_MM = 20.0, 15.0
"""No label with a list on it is smaller. Our own judgement."""


def labelling_flaws(house: Labelling) -> Iterator[Flaw]:
    """Sheets of labels that do not fit their paper, or whose labels lie on one another."""
    for name, sheet in house.sheets.items():
        path = ("sheets", name)
        wide, high = sheet.paper_mm
        for key, pitch, own in (("across", sheet.across_mm, sheet.wide), ("down", sheet.down_mm, sheet.high)):
            if pitch < own - GRAIN_MM:
                hint = "measure from one edge of a label to the same edge of the next"
                message = (
                    f"these labels would lie on one another: {pitch:g} mm from one to the next, and {own:g} mm each"
                )
                yield Flaw(code="labels", path=(*path, key), message=message, hint=hint)
        right = sheet.left + (sheet.columns - 1) * sheet.across_mm + sheet.wide
        foot = sheet.top + (sheet.rows - 1) * sheet.down_mm + sheet.high
        for key, end, most in (("columns", right, wide), ("rows", foot, high)):
            if end > most + GRAIN_MM:
                message = f"these labels end {end:g} mm along a sheet of {most:g} mm"
                hint = "measure the first label and from one to the next again, or count them"
                yield Flaw(code="labels", path=(*path, key), message=message, hint=hint)
        for key, size, least in (("wide", sheet.wide, NARROWEST_MM), ("high", sheet.high, LOWEST_MM)):
            if size < least:
                message = f"a label {size:g} mm {key} is too small for words"
                yield Flaw(
                    code="labels", path=(*path, key), message=message, hint=f"take one at least {least:g} mm {key}"
                )
    if house.strip is not None and not NARROWEST_MM <= house.strip <= 210.0:
        hint = "measure the roll in your label printer, such as 62 mm"
        yield Flaw(code="labels", path=("strip",), message=f"no roll is {house.strip:g} mm wide", hint=hint)


def opened_flaws(entry: PackOpened, book: Book, spoilt: Spoilt, today: date | None = None) -> Iterator[Flaw]:
    """What is wrong with one opened pack."""
    if book.house_word(entry.of) is None:
        if word_in(spoilt.names, entry.of) or spoilt.more:
            message, hint = f'the card for "{entry.of}" has a mistake in it', "fix it in house/ingredients.yaml"
            yield Flaw(code=FOLLOWS, path=("of",), message=message, hint=hint)
        else:
            yield no_card(("of",), entry.of, book.names)
    if entry.finished is not None and entry.finished < entry.day:
        message = "it was finished before it was opened"
        yield Flaw(code="day", path=("finished",), message=message, hint="look at both days again")
    if today is not None and entry.day > today:
        message = f"{entry.day.isoformat()} is still to come"
        yield Flaw(code="day", path=("day",), message=message, hint="write the day you opened it")
