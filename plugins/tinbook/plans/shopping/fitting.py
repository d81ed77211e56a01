"""Boards, boxes, sticks and ribbon by size: the nearest that will do, of those at home and those that are sold."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from math import prod

from tinbook.engine.sticks import sticks_for
from tinbook.engine.tolerance import fits
from tinbook.models.supplies import BOX, FLAT, RIBBON, STICKS, SupplySize, size_written
from tinbook.plans.shopping.things import SAME_MM, SizedNeed, Thing, Things

THICK_MM = 1.0
"""A dowel does for another that differs by no more in thickness: 6 mm and a quarter of an inch (our own judgement)."""


@dataclass
class Fitter:
    """Chooses for one order after another. `home`: how many there are of each thing by name, less what was chosen;
    `ends_mm`: what is left of sticks that were cut into, by the stick's name."""

    things: Things
    home: dict[str, float]
    ends_mm: dict[str, list[float]] = field(default_factory=dict)

    def choose(self, sized: Iterable[SizedNeed]) -> dict[str, float]:
        """How much of which thing an order takes, by name. What is at home is used before what would have to be bought,
        if both are equally near."""
        chosen: dict[str, float] = {}
        sticks: dict[str, list[float]] = {}
        for need in sized:
            if need.what in STICKS:
                stick = self._stick(need)
                sticks.setdefault(stick.name, []).extend([need.sides_mm[1]] * need.count)
            elif need.what == RIBBON:
                self._take(chosen, self._ribbon(need), need.sides_mm[1] * need.count)
            else:
                for _ in range(need.count):
                    self._take(chosen, self._nearest(need), 1.0)
        for name, pieces_mm in sticks.items():
            thing = self.things.called(name)
            long_mm = thing.size.sides_mm[1] if thing and thing.size else max(pieces_mm)
            count = sticks_for(pieces_mm, long_mm, self.ends_mm.setdefault(name, []))
            if thing:
                self._take(chosen, thing, float(count))
        return chosen

    def _take(self, chosen: dict[str, float], thing: Thing, amount: float) -> None:
        chosen[thing.name] = chosen.get(thing.name, 0.0) + amount
        self.home[thing.name] = max(0.0, self.home.get(thing.name, 0.0) - amount)

    def _of(self, what: str) -> Iterator[Thing]:
        """What there is of a kind: at home first, then what is sold."""
        at_home = (self.things.called(name) for name, count in self.home.items() if count > 0.0)
        yield from (thing for thing in at_home if thing and thing.what == what and thing.size)
        yield from self.things.sized(what)

    def _nearest(self, need: SizedNeed) -> Thing:
        """The smallest board of its shape, or box, that is large enough; as asked for, if there is none."""
        large = [thing for thing in self._of(need.what) if thing.size and _holds(thing.size, need)]
        if large:
            return min(large, key=lambda thing: _room(thing.size))
        return self.things.of_size(need.what, size_written(need.shape if need.what in FLAT else "", need.sides_mm))

    def _stick(self, need: SizedNeed) -> Thing:
        thick, long = need.sides_mm
        good = [
            thing
            for thing in self._of(need.what)
            if thing.size and abs(thing.size.sides_mm[0] - thick) <= THICK_MM and fits(long, thing.size.sides_mm[1])
        ]
        if good:
            return min(good, key=lambda thing: abs(thing.size.sides_mm[0] - thick) if thing.size else 0.0)
        return self.things.of_size(need.what, size_written("", need.sides_mm))

    def _ribbon(self, need: SizedNeed) -> Thing:
        wide = need.sides_mm[0]
        good = [thing for thing in self._of(RIBBON) if thing.size and abs(thing.size.sides_mm[0] - wide) <= THICK_MM]
        if good:
            return good[0]
        return self.things.of_size(RIBBON, size_written("", (wide,)))


def _holds(size: SupplySize, need: SizedNeed) -> bool:
    """Whether a board is as large as the one wanted, or a box has room for what goes in, whichever way it is turned."""
    if need.what == BOX:
        (*sides, high), (*wanted, wanted_high) = size.sides_mm, need.sides_mm
        return fits(wanted_high, high) and _covers(sides, wanted, 0.0)
    square = size.shape or "round"
    if square != need.shape and not {square, need.shape} <= {"square", "oblong"}:
        return False
    return _covers(_both(size.sides_mm), _both(need.sides_mm), SAME_MM)


def _both(sides: tuple[float, ...]) -> tuple[float, ...]:
    return sides if len(sides) > 1 else sides * 2


def _covers(sides: Iterable[float], wanted: Iterable[float], slack_mm: float) -> bool:
    return all(fits(want, have + slack_mm) for have, want in zip(sorted(sides), sorted(wanted), strict=True))


def _room(size: SupplySize | None) -> float:
    """Its area or volume, by which the smallest is found."""
    sides = size.sides_mm if size else ()
    return prod(sides if len(sides) == 3 else _both(sides), start=1.0)
