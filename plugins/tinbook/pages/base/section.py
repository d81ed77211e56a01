"""A stack of layers in section, as numbers: where its parts, dimensions and words go. The template only puts them
there.

All lengths in the drawing's own units, y downwards. Hatching shows what a thing is: layers slant, filling is dotted,
the crumb coat is bare and the final coat slants the other way.
"""

from __future__ import annotations

from dataclasses import dataclass

from tinbook.pages.base.drawings import spread
from tinbook.pages.spelling import formats
from tinbook.plans.finish.elevations import Elevation
from tinbook.tins.trade import called_mm

WIDE = 460.0
LEFT, RIGHT, TOP = 112.0, 126.0, 34.0
ROOM_HIGH = 220.0
LINE = 25.0
"""The least distance between two lines of words."""
UNDER = 38.0
"""Room below the ground for the scale."""


@dataclass(frozen=True, slots=True)
class Word:
    """A word or a figure, and where it stands."""

    x: float
    y: float
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class Section:
    """One drawing: paths of the layers, fillings and coats, of the drum, of hidden lines, leaders and dimensions."""

    height: float
    layers: str
    fillings: str
    crumb: str
    final: str
    drum: str
    tube: str
    ground: float
    leaders: str
    names: tuple[Word, ...]
    heights: tuple[Word, ...]
    widths: tuple[Word, ...]
    words: str
    scale_at: float
    scale_to: float
    scale_text: float


@dataclass(frozen=True, slots=True)
class Frame:
    """Where millimetres of the cake are on the drawing."""

    middle: float
    foot: float
    scale: float

    def across(self, width_mm: float) -> tuple[float, float]:
        """Left and right ends of something in the middle."""
        return self.middle - width_mm * self.scale / 2.0, self.middle + width_mm * self.scale / 2.0

    def up(self, height_mm: float) -> float:
        """A height above the foot of the cake."""
        return self.foot - height_mm * self.scale


def section(drawn: Elevation, name: str) -> Section:
    """The stack `drawn`; `name` says which tins it is from."""
    stack = drawn.stack
    coats = drawn.crumb_mm + drawn.final_mm
    widest = max(drawn.board_mm or 0.0, drawn.across_mm + 2.0 * coats)
    drum = drawn.drum_mm if drawn.board_mm else 0.0
    scale = min((WIDE - LEFT - RIGHT) / widest, ROOM_HIGH / (stack.coated_mm + drum))
    middle = LEFT + (WIDE - LEFT - RIGHT) / 2.0
    ground = TOP + (stack.coated_mm + drum) * scale
    foot = ground - drum * scale
    frame = Frame(middle, foot, scale)
    across, up = frame.across, frame.up
    left, right = across(drawn.across_mm)
    inner, outer = across(drawn.across_mm + 2.0 * drawn.crumb_mm), across(drawn.across_mm + 2.0 * coats)
    step = stack.layer_mm + drawn.filling_mm
    layers = [_box(left, right, up(i * step), up(i * step + stack.layer_mm)) for i in range(stack.layers)]
    between = range(1, stack.layers if drawn.filling_mm else 0)
    fillings = [_box(left, right, up(i * step - drawn.filling_mm), up(i * step)) for i in between]
    top, crumb_top, final_top = up(stack.stack_mm), up(stack.stack_mm + drawn.crumb_mm), up(stack.coated_mm)
    cake = _box(left, right, foot, top)
    crumbed = _box(*inner, foot, crumb_top)
    drum_path = _box(*across(drawn.board_mm), ground, foot) if drawn.board_mm else ""
    tube = across(drawn.tube_mm) if drawn.tube_mm else ()
    measured = [(LEFT - 18.0, top, stack.stack_shown_mm)]
    if coats:
        measured.append((LEFT - 64.0, final_top, stack.coated_shown_mm))
    named = _named(drawn, frame, right, (foot + ground) / 2.0)
    return Section(
        height=round(max(ground + UNDER, named[-1][2] + UNDER / 2.0), 1),
        layers="".join(layers),
        fillings="".join(fillings),
        crumb=cake + crumbed if drawn.crumb_mm else "",
        final=crumbed + _box(*outer, foot, final_top) if drawn.final_mm else "",
        drum=drum_path,
        tube="".join(f"M{_short(x)} {_short(foot)}V{_short(top)}" for x in tube),
        ground=round(ground, 1),
        leaders=_leaders(named) + "".join(_dimension(x, foot, y) for x, y, _ in measured),
        names=tuple(Word(WIDE - RIGHT + 20.0, round(y + 7.0, 1), text) for _, _, y, text in named),
        heights=tuple(
            Word(x - 6.0, round((foot + y) / 2.0 + 7.0, 1), formats.number(shown)) for x, y, shown in measured
        ),
        widths=(Word(middle, TOP - 12.0, formats.number(stack.tin.bounds_mm[0])),),
        words=words(drawn, name),
        scale_at=LEFT,
        scale_to=round(LEFT + 100.0 * scale, 1),
        scale_text=round(LEFT + 100.0 * scale + 10.0, 1),
    )


Named = tuple[float, float, float, str]
"""Where a leader starts, at what height its word stands, and the word."""


def _named(drawn: Elevation, frame: Frame, right: float, drum_y: float) -> list[Named]:
    stack, inside, up = drawn.stack, right - 12.0, frame.up
    coats = drawn.crumb_mm + drawn.final_mm
    labels: list[tuple[float, float, str]] = []
    if coats:
        labels.append((inside, up(stack.stack_mm + coats / 2.0), f"coats {formats.number(coats)}"))
    layer = stack.stack_mm - stack.layer_mm / 2.0
    labels.append((inside, up(layer), f"layer {formats.number(stack.layer_shown_mm)}"))
    if stack.layers > 1 and drawn.filling_mm:
        filling = stack.stack_mm - stack.layer_mm - drawn.filling_mm / 2.0
        labels.append((inside, up(filling), f"filling {formats.number(drawn.filling_mm)}"))
    if drawn.board_mm:
        end = frame.across(drawn.board_mm)[1] - 4.0
        labels.append((end, drum_y, f"drum {formats.number(drawn.board_mm)}"))
    heights = spread([y for _, y, _ in labels], LINE)
    return [(x, y, word_y, text) for (x, y, text), word_y in zip(labels, heights, strict=True)]


def _leaders(named: list[Named]) -> str:
    end = WIDE - RIGHT + 14.0
    return "".join(
        f"M{_short(x)} {_short(y)}L{_short(end - 10.0)} {_short(word_y)}H{_short(end)}" for x, y, word_y, _ in named
    )


def _dimension(x: float, low: float, high: float) -> str:
    """A line from one height to another with an end mark at each."""
    return (
        f"M{_short(x)} {_short(low)}V{_short(high)}M{_short(x - 5)} {_short(low)}h10M{_short(x - 5)} {_short(high)}h10"
    )


def _box(left: float, right: float, low: float, high: float) -> str:
    return f"M{_short(left)} {_short(low)}V{_short(high)}H{_short(right)}V{_short(low)}z"


def _short(value: float) -> str:
    return f"{value:.1f}".removesuffix(".0")


def words(drawn: Elevation, name: str) -> str:
    """What the drawing shows, in words."""
    stack, mm = drawn.stack, formats.millimetres
    layers = f"{stack.layers} layers of {mm(stack.layer_shown_mm)}" if stack.layers > 1 else mm(stack.layer_shown_mm)
    between = f" with {_length(drawn.filling_mm)} of filling between" if stack.layers > 1 and drawn.filling_mm else ""
    coats = [
        f"{_length(thick)} of {what}"
        for thick, what in ((drawn.crumb_mm, "crumb coat"), (drawn.final_mm, "final coat"))
        if thick
    ]
    coated = f"; {mm(stack.coated_shown_mm)} with {formats.sentence(coats)}" if coats else ""
    drum = f", on a {formats.centimetres(called_mm(drawn.board_mm, stack.tin.sold))} drum" if drawn.board_mm else ""
    return f"{name} in section: {layers}{between}, {mm(stack.stack_shown_mm)} high{coated}{drum}"


def _length(value: float) -> str:
    return formats.with_unit(formats.number(value), "mm")
