"""What water pipes measure inside, how stiff they are, and how rough they become."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.answer import Basis, Source

__all__ = ["ROUGHNESS", "SIZES", "STIFFNESS", "Kind", "Material", "Pipe", "Surface", "standard"]

Kind = Literal["copper K", "copper L", "copper M", "PEX", "CPVC", "steel schedule 40"]
Material = Literal["copper", "steel", "CPVC", "PEX"]
Surface = Literal[
    "new plastic", "new copper", "new galvanised steel", "galvanised steel, 20 years", "galvanised steel, rusted inside",
    "cast iron, 20 years",
]  # fmt: skip

#: Young's modulus in GPa; plastics at room temperature and quick loading. Handbook values, recalled.
STIFFNESS: dict[str, float] = {"copper": 117.0, "steel": 200.0, "CPVC": 2.9, "PEX": 0.9}

#: C of Hazen and Williams, lowest and highest in the tables read (two engineering reference tables and a table of a
#: utility; the years are those of the tables, where the water decides more than the years do).
ROUGHNESS: dict[str, tuple[Decimal, Decimal]] = {
    "new plastic": (Decimal(140), Decimal(150)),
    "new copper": (Decimal(130), Decimal(150)),
    "new galvanised steel": (Decimal(110), Decimal(120)),
    "galvanised steel, 20 years": (Decimal(80), Decimal(100)),
    "galvanised steel, rusted inside": (Decimal(60), Decimal(80)),
    "cast iron, 20 years": (Decimal(90), Decimal(95)),
}


@dataclass(frozen=True, slots=True)
class Pipe:
    """One size: *outside* diameter and *wall* in inches; plastics with the mean of their wall's limits."""

    outside: Decimal
    wall: Decimal

    @property
    def inside(self) -> Decimal:
        """Inside diameter in inches.

        >>> SIZES["copper L"][Decimal("0.75")].inside
        Decimal('0.785')
        """
        return self.outside - 2 * self.wall


def _pipes(outside: str, walls: str) -> dict[Decimal, Pipe]:
    sizes = (Decimal("0.5"), Decimal("0.75"), Decimal(1), Decimal("1.25"))
    return {
        size: Pipe(Decimal(o), Decimal(w)) for size, o, w in zip(sizes, outside.split(), walls.split(), strict=False)
    }


_TUBE = ".625 .875 1.125 1.375"
SIZES: dict[str, dict[Decimal, Pipe]] = {
    "copper K": _pipes(_TUBE, ".049 .065 .065 .065"),
    "copper L": _pipes(_TUBE, ".040 .045 .050 .055"),
    "copper M": _pipes(_TUBE, ".028 .032 .035 .042"),
    "PEX": _pipes(_TUBE, ".075 .102 .1315 .1605"),
    "CPVC": _pipes(_TUBE, ".078 .090 .112 .135"),
    "steel schedule 40": _pipes(".840 1.050 1.315 1.660", ".109 .113 .133 .140"),
}
_STANDARDS: dict[str, tuple[str, Basis]] = {
    "copper K": ("ASTM B88", "memory"),
    "copper L": ("ASTM B88", "seen in a copy"),
    "copper M": ("ASTM B88", "memory"),
    "PEX": ("ASTM F876, SDR 9", "seen in a copy"),
    "CPVC": ("ASTM D2846, SDR 11", "memory"),
    "steel schedule 40": ("ASTM A53, schedule 40", "seen in a copy"),
}


def standard(kind: str) -> Source:
    """The standard that fixes the dimensions of a kind of pipe.

    >>> standard("PEX").document
    'ASTM F876, SDR 9'
    """
    document, basis = _STANDARDS[kind]
    return Source(document, "", "dimensions", basis)
