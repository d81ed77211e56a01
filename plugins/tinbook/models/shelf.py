"""The tins in the kitchen: tins.yaml."""

from __future__ import annotations

from dataclasses import replace
from typing import Annotated, Any

from tinbook.models.house import Millilitres
from tinbook.models.reading import Private, Text, Written, spelled, such_as, whole_number
from tinbook.tins import Tin, read_tin, read_tins
from tinbook.units import Measures, Misread


def _one_tin(text: str, measures: Measures) -> Tin:
    count, tin = read_tin(text, sold=measures.tins)
    if count != 1:
        raise Misread(
            "only one tin can go here, without a number in front", 'say how many with "have: 2"', 0, len(text)
        )
    return tin


def _one_or_set(text: str, measures: Measures) -> tuple[Tin, ...]:
    tins = read_tins(text, sold=measures.tins)
    return tuple(tin for _, tin in tins) if len(tins) > 1 else (_one_tin(text, measures),)


class OwnedTin(Written):
    """One tin on the shelf, how many there are (0: known, not owned), and what it holds to the brim if measured with
    water.

    `of_set` is the set it came in, as written. It is made from a `ShelfLine`, and is not in any file.
    """

    tin: Annotated[Tin, spelled(_one_tin), such_as("round 20 cm x 7.5 cm")]
    have: Annotated[int, whole_number(0, 999)] = 1
    measured: Millilitres | None = None
    note: Text | None = None
    of_set: str = ""

    @property
    def measured_tin(self) -> Tin:
        """The tin with its measured volume, which overrides the one worked out from its size."""
        return replace(self.tin, measured_ml=self.measured) if self.measured else self.tin


TinOrSet = Annotated[tuple[Tin, ...], spelled(_one_or_set)]


class ShelfLine(Written):
    """One tin on the shelf, or a set."""

    tin: Annotated[
        TinOrSet,
        such_as("round 20 cm x 7.5 cm", "square 8 in", "set of round 15, 20, 25 cm x 7.5 cm"),
    ]
    """The tin by shape, size and depth, or a set of them."""
    have: Annotated[int, whole_number(0, 999), such_as("2")] = 1
    """How many you own. Write `0` for a tin you know of but would have to borrow."""
    name: Annotated[Text | None, such_as("number 4")] = None
    """The name recipes use for a tin drawn as an outline; such a tin must have one. Left out: it goes by its
    shape and size."""
    measured: Annotated[Millilitres | None, such_as("2350 ml")] = None
    """What it holds to the brim, measured with water. This overrides the calculation. Left out: it is worked out
    from the tin's size."""
    note: Annotated[Text | None, such_as("Browns faster at one corner.")] = None
    """A short note about it, shown with your tins. Left out: nothing is shown."""

    @property
    def owned(self) -> tuple[OwnedTin, ...]:
        """Its tins, one by one."""
        of_set = " ".join(["set of", self.tin[0].shape, ", ".join(tin.size_label for tin in self.tin)])
        same: dict[str, Any] = {"have": self.have, "measured": self.measured, "note": self.note}
        same["of set"] = of_set if len(self.tin) > 1 else ""
        return tuple(OwnedTin.model_construct(tin=replace(tin, called=self.name or ""), **same) for tin in self.tin)


class TinShelf(Written):
    """The tins on your shelf. Every table shows these first."""

    tins: Annotated[
        tuple[ShelfLine, ...],
        such_as("- {tin: round 20 cm x 7.5 cm, have: 2}", "- {tin: standard cups, have: 12}\n- {tin: square 20 cm}"),
    ]
    """Every tin you own, one to a line."""
    private: Annotated[Private, such_as("yes")] = False
    """Whether to leave the whole list out of a public site."""
