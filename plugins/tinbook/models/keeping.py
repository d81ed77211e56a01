"""When a mixture is in season, and where and how long it keeps."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from tinbook.models.reading import ONE_OR_MORE, spelled
from tinbook.models.steps import read_stand
from tinbook.problems import nearest
from tinbook.units import Measures, Misread

MONTHS = (
    "January", "February", "March", "April", "May", "June", "July", "August", "September", "October", "November",
    "December",
)  # fmt: skip
SEASONS = {"spring": (3, 4, 5), "summer": (6, 7, 8), "autumn": (9, 10, 11), "winter": (12, 1, 2)}
"""The months of each season, counted from 1, north of the equator. Common practice of weather services."""
ALL_YEAR = "all year"
ALSO = {"fall": "autumn"}
FRIDGE, FREEZER, COOL = "in the fridge", "in the freezer", "somewhere cool"
PLACES = (COOL, FRIDGE, FREEZER)


@dataclass(frozen=True, slots=True)
class Season:
    """A time of year: its months in order, counted from 1, and the text as written."""

    months: tuple[int, ...]
    written: str


def read_season(text: str, _: Measures) -> Season:
    """`autumn`, `October`, `Oct to Dec`, `autumn to spring`, `all year`; raises Misread."""
    if text.lower() == ALL_YEAR:
        return Season(tuple(range(1, 13)), text)
    first, between, last = text.replace("–", " to ").partition(" to ")
    start = _months(text, first, 0)
    if not between:
        return Season(start, text)
    end = _months(text, last, len(text) - len(last))
    count = (end[-1] - start[0]) % 12 + 1
    return Season(tuple((start[0] + later - 1) % 12 + 1 for later in range(count)), text)


def _months(text: str, written: str, at: int) -> tuple[int, ...]:
    """The months one name covers; `written` is in `text` at `at`."""
    word = written.strip().lower()
    season = ALSO.get(word, word)
    if season in SEASONS:
        return SEASONS[season]
    known = [name.lower() for name in MONTHS]
    meant = [at for at, name in enumerate(known) if word == name or (word.rstrip(".") == name[:3])]
    if meant:
        return (meant[0] + 1,)
    close = nearest(written.strip(), [*SEASONS, *MONTHS])
    hint = (
        f'did you mean "{close}"?' if close else 'write spring, summer, autumn, winter, or months: "October to March"'
    )
    start = at + len(written) - len(written.lstrip())
    raise Misread(f'"{written.strip()}" is not a season or a month', hint, start, start + len(written.strip()))


@dataclass(frozen=True, slots=True)
class Keep:
    """How long something keeps in a place: minutes, one of PLACES, and the text as written."""

    minutes: float
    place: str
    written: str


def read_keep(text: str, measures: Measures) -> Keep:
    """`3 days`, `1 week in the fridge`, `2 months in the freezer`; without a place: somewhere cool. Raises Misread."""
    time, place = text, COOL
    for sign in (" in ", " somewhere "):
        if sign in text:
            time, _, rest = text.partition(sign)
            place, start = sign.strip() + " " + rest.strip(), len(time) + 1
            if place not in PLACES:
                close = nearest(place, PLACES)
                hint = f'did you mean "{close}"?' if close else "write one of: " + ", ".join(PLACES)
                raise Misread(f'"{place}" is not a place to keep it', hint, start, len(text))
            break
    return Keep(read_stand(time.strip(), measures).minutes, place, text)


OneSeason = Annotated[Season, spelled(read_season)]
OneKeep = Annotated[Keep, spelled(read_keep)]
Seasons = Annotated[tuple[OneSeason, ...], ONE_OR_MORE]
KeepsFor = Annotated[tuple[OneKeep, ...], ONE_OR_MORE]
