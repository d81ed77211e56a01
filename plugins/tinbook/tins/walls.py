"""How the walls of a tin rise: the volume below a level, and the level that a volume reaches. Lengths in mm."""

from __future__ import annotations

from dataclasses import dataclass

SOLVED = 1e-12
"""The share of a volume by which a level may miss it: nearly the last digit."""


@dataclass(frozen=True, slots=True)
class Walls:
    """How the area grows from base to rim: area(t) = base + slope t + bend t², t = height / depth.

    Above the rim the walls go straight up, as a paper collar does. depth_mm in mm, the rest in mm².
    """

    depth_mm: float
    base: float
    slope: float
    bend: float

    def volume_mm3(self, fill_mm: float) -> float:
        """Volume in mm³ below a level fill_mm above the base. ValueError for a negative level or NaN."""
        if not fill_mm >= 0.0:
            raise ValueError(f"fill_mm must be 0 or more, not {fill_mm!r}")
        if fill_mm <= self.depth_mm or not (self.slope or self.bend):
            t = fill_mm / self.depth_mm
            return fill_mm * (self.base + t * (self.slope / 2.0 + t * self.bend / 3.0))
        brim = self.depth_mm * (self.base + self.slope / 2.0 + self.bend / 3.0)
        return brim + (fill_mm - self.depth_mm) * (self.base + self.slope + self.bend)

    def fill_mm(self, volume_mm3: float) -> float:
        """The level in mm that volume_mm3 reaches: the inverse of volume_mm3. ValueError likewise."""
        if not volume_mm3 >= 0.0:
            raise ValueError(f"the volume must be 0 or more, not {volume_mm3!r}")
        if not (self.slope or self.bend):
            return volume_mm3 / self.base
        brim = self.volume_mm3(self.depth_mm)
        if volume_mm3 >= brim:
            return self.depth_mm + (volume_mm3 - brim) / (self.base + self.slope + self.bend)
        # Newton steps, kept between two levels known to be too low and too high.
        low, high = 0.0, self.depth_mm
        level = self.depth_mm * volume_mm3 / brim
        for _ in range(200):
            over = self.volume_mm3(level) - volume_mm3
            if abs(over) <= SOLVED * volume_mm3:
                break
            low, high = (low, level) if over > 0.0 else (level, high)
            t = level / self.depth_mm
            area = self.base + t * (self.slope + t * self.bend)
            level = level - over / area if area > 0.0 else low
            if not low < level < high:
                level = (low + high) / 2.0
        return level
