"""The cutter for a part at a cake: its ideal size, the nearest one in the drawer, and how far out that is."""

from __future__ import annotations

from dataclasses import dataclass, replace

from tinbook.models import Book, Cutter, Part

EXACT_MM = 0.05
TURNED = ("oval", "rectangle")
"""Shapes that are the same either way round."""


@dataclass(frozen=True, slots=True, kw_only=True)
class CutterFit:
    """A cutter wanted in a shape and size; the nearest owned one of that shape, and by how much it is larger.

    `marks`: it marks the part or cuts its top, as a share of its width, and does not cut it out. `wanted` of them for
    everyone working, one where it is `shared`; the drawer has `have` of the nearest.
    """

    form: str
    wanted_mm: tuple[float, ...]
    owned: str
    owned_mm: tuple[float, ...]
    off_mm: float | None
    off: float | None
    marks: bool
    shared: bool = False
    wanted: int = 1
    have: int = 0

    @property
    def found(self) -> bool:
        """Whether the drawer has one in that shape."""
        return self.off_mm is not None

    @property
    def exact(self) -> bool:
        """Whether it is exactly the size."""
        return self.off_mm is not None and abs(self.off_mm) < EXACT_MM


def cutter_fit(
    part: Part, lengths_mm: tuple[tuple[str, float], ...], width_mm: float, s: float, book: Book, people: int = 1
) -> CutterFit | None:
    """The cutter of a part at scale s: the one it names, or that of its simple shape; None for other parts."""
    fit: CutterFit | None = None
    if part.cutter:
        share = part.cutter.share
        sizes = (width_mm * share,) if share else tuple(size * s for size in part.cutter.sizes_mm)
        fit = nearest_cutter(part.cutter.form, sizes, book, marks=share is not None)
    elif part.sheet and not part.sheet.rings:
        fit = nearest_cutter(part.sheet.form, tuple(size for name, size in lengths_mm if name != "thick"), book)
    shared = part.cutter_shared
    return replace(fit, shared=shared, wanted=1 if shared else people) if fit else None


def nearest_cutter(form: str, wanted_mm: tuple[float, ...], book: Book, marks: bool = False) -> CutterFit:
    """The owned cutter in that shape with the smallest sum of differences; the larger, if two are equal."""

    def far(cutter: Cutter) -> tuple[float, float]:
        return sum(abs(off) for off in _offs(cutter, wanted_mm)), -sum(cutter.sizes_mm)

    drawer = [own.cutter for own in book.cutters if own.have]
    owned = [cutter for cutter in drawer if cutter.form == form and cutter.sizes_mm]
    if not owned:
        return CutterFit(form=form, wanted_mm=wanted_mm, owned="", owned_mm=(), off_mm=None, off=None, marks=marks)
    best = min(owned, key=far)
    offs = _offs(best, wanted_mm)
    off_mm = max(offs, key=abs)
    return CutterFit(
        form=form,
        wanted_mm=wanted_mm,
        owned=best.written,
        owned_mm=best.sizes_mm,
        off_mm=off_mm,
        off=off_mm / wanted_mm[offs.index(off_mm)],
        marks=marks,
        have=sum(own.have for own in book.cutters if own.cutter == best),
    )


def _offs(cutter: Cutter, wanted_mm: tuple[float, ...]) -> list[float]:
    """By how much each of its sizes is larger, mm; one that is alike both ways is turned to suit."""
    sizes, sought = cutter.sizes_mm, wanted_mm
    if cutter.form in TURNED and len(sizes) == len(sought) == 2 and (sizes[0] < sizes[1]) != (sought[0] < sought[1]):
        sizes = sizes[::-1]
    return [size - wanted for size, wanted in zip(sizes, sought, strict=False)]
