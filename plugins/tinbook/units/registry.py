"""The measures of kitchen.txt, worked out by pint, and `sizes.py` written from them.

Pint is a large library, needed only when kitchen.txt changes. Then write the sizes again, from the top of the project:

    PYTHONPATH=plugins python -c "from tinbook.units import registry; print(registry.module(), end='')" > sizes.py
    mv sizes.py plugins/tinbook/units/sizes.py
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from importlib import resources

import pint

BASES: Mapping[str, str] = {
    "GRAMS": "gram",
    "MILLIMETRES": "millimetre",
    "MINUTES": "minute",
    "MILLILITRES": "millilitre",
}
"""The tables of sizes, and the unit each counts in."""
TOLD = '''"""The sizes of the kitchen's measures, as pint works them out from kitchen.txt.

Written by `registry.module`, which says how; a test works every size out again. Do not change it by hand.
"""

from __future__ import annotations

from collections.abc import Mapping
'''


def _registry() -> pint.UnitRegistry[float]:
    registry: pint.UnitRegistry[float] = pint.UnitRegistry(None)
    registry.load_definitions(
        resources.files("tinbook.units").joinpath("kitchen.txt").read_text(encoding="utf-8").splitlines()
    )
    return registry


def _rounded(size: float) -> float:
    """A size to 13 digits, as defined sizes have no more; what follows is rounding from the multiplication."""
    return float(f"{size:.13g}")


def sizes() -> dict[str, dict[str, float]]:
    """By table, how much of its base each unit of kitchen.txt holds; the base itself is left out."""
    registry = _registry()
    units = {base: registry.Unit(base) for base in BASES.values()}
    tables: dict[str, dict[str, float]] = {}
    for table, base in BASES.items():
        names = [name for name in registry if name != base and registry.Unit(name).is_compatible_with(units[base])]
        tables[table] = {name: _rounded(registry.Quantity(1.0, name).to(base).magnitude) for name in names}
    return tables


def heats() -> dict[str, float]:
    """How °F follow from °C: how many to one, and where 0 °C lies."""
    registry = _registry()
    return {
        "FAHRENHEIT_PER_CELSIUS": _rounded(
            registry.Quantity(1.0, "delta_degree_Celsius").to("delta_degree_Fahrenheit").magnitude
        ),
        "FAHRENHEIT_AT_0_C": _rounded(registry.Quantity(0.0, "degree_Celsius").to("degree_Fahrenheit").magnitude),
    }


def module() -> str:
    """The text of `sizes.py`."""
    return TOLD + "\n" + "".join(f"{line}\n" for line in _lines())


def _lines() -> Iterator[str]:
    for table, rows in sizes().items():
        yield f"{table}: Mapping[str, float] = {{"
        yield from (f'    "{name}": {size!r},' for name, size in rows.items())
        yield "}"
    for name, size in heats().items():
        yield f"{name} = {size!r}"
