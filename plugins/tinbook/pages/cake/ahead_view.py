"""What can be made ahead for a cake, and how long it keeps, spelled."""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.models.steps import DAY_MIN
from tinbook.pages.spelling import formats
from tinbook.plans.making.ahead import AheadOf, AheadTable


@dataclass(frozen=True, slots=True, kw_only=True)
class AheadLine:
    """A part, its page, how long ahead, and how it keeps."""

    name: str
    address: str
    ahead: str
    keeps: str


@dataclass(frozen=True, slots=True, kw_only=True)
class AheadView:
    """Every part; how long the whole cake keeps, and because of which part; the parts that do not say."""

    lines: tuple[AheadLine, ...]
    keeps: str
    least: str
    unknown: str


def ahead_view(found: AheadTable) -> AheadView:
    """The table in words."""
    return AheadView(
        lines=tuple(
            AheadLine(
                name=each.name,
                address=each.address,
                ahead=_ahead(each),
                keeps=", or ".join(keep.written for keep in each.keeps),
            )
            for each in found.parts
            if each.ahead_min or each.keeps
        ),
        keeps=found.keeps.written if found.keeps else "",
        least=found.least,
        unknown=formats.sentence(found.unknown) if found.unknown else "",
    )


def _ahead(each: AheadOf) -> str:
    """`up to 14 days; the last step on the day`."""
    if not each.ahead_min:
        return ""
    left = each.on_the_day or 0
    steps = "" if not left else "; the last step on the day" if left == 1 else f"; {left} steps on the day"
    return f"up to {_long(each.ahead_min)}{steps}"


def _long(minutes: float) -> str:
    if minutes < DAY_MIN:
        return formats.with_unit(formats.number(round(minutes / 60.0, 1)), "h")
    days = minutes / DAY_MIN
    return formats.with_unit(formats.number(round(days, 1)), "day" if days == 1.0 else "days")
