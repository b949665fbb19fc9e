"""What each source asks before a thermal survey of a building may be believed, source by source, never mixed."""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction
from typing import Literal

__all__ = ["RULES", "Condition", "Scan", "Wall", "band", "difference_needed"]

Wall = Literal["light frame", "masonry veneer", "masonry"]

#: 10 K and 5 K as differences in °F, in which they are exact as typed in either scale.
_TEN, _FIVE, _FIFTEEN, _TWO = Decimal(18), Decimal(9), Decimal(27), Decimal("3.6")
_WIND_ASTM, _WIND_EN = Decimal("6.7056"), Decimal(5)  # 15 mph and 5 m/s, in m/s


@dataclass(frozen=True, slots=True)
class Scan:
    """A survey as it was: differences in °F, hours, wind in m/s, U in W/(m2 K); None where it was not noted."""

    difference: Decimal
    hours_held: Decimal | None = None
    hours_since_sun: Decimal | None = None
    wind: Decimal | None = None
    dry_hours: Decimal | None = None
    wall: Wall = "light frame"
    heated: bool = True
    u_value: Decimal | None = None
    outside_change_day: Decimal | None = None
    outside_change_during: Decimal | None = None
    inside_change_during: Decimal | None = None


@dataclass(frozen=True, slots=True)
class Condition:
    """One condition of one source: what it asks, and whether it was met (None: not noted)."""

    asks: str
    met: bool | None


def _at_least(asks: str, given: Decimal | None, least: Decimal | int) -> Condition:
    return Condition(asks, None if given is None else given >= least)


def _at_most(asks: str, given: Decimal | None, most: Decimal) -> Condition:
    return Condition(asks, None if given is None else abs(given) <= most)


def difference_needed(u_value: Decimal) -> Decimal:
    """Difference in K that ISO 6781 and EN 13187 ask over 24 hours for a wall of *u_value* W/(m2 K): 3/U, at least 5.

    >>> difference_needed(Decimal("0.30")), difference_needed(Decimal("0.75"))
    (Decimal('1E+1'), Decimal('5'))
    """
    return max(Decimal(5), Decimal(3) / u_value)


def band(difference: Decimal) -> str:
    """The band of the guide for surveys in the United Kingdom for a *difference* in °F.

    >>> [band(Decimal(d)) for d in (8, 9, 18, 27, 28)]
    ['inadequate', 'marginal', 'good', 'good', 'ideal']
    """
    if difference < _FIVE:
        return "inadequate"
    if difference < _TEN:
        return "marginal"
    return "good" if difference <= _FIFTEEN else "ideal"


def ashrae_101(scan: Scan) -> tuple[Condition, ...]:
    """ANSI/ASHRAE 101-1981.

    >>> [one.met for one in ashrae_101(Scan(Decimal(18), Decimal(3)))]
    [True, True]
    """
    return (
        Condition("a difference of 18 °F (10 K) or more", scan.difference >= _TEN),
        _at_least("held for 3 hours before", scan.hours_held, 3),
    )


def astm_c1060(scan: Scan) -> tuple[Condition, ...]:
    """ASTM C1060; for frame buildings only, so nothing for solid masonry. 10 K for 4 hours and 8 hours behind masonry veneer are recalled.

    >>> [one.met for one in astm_c1060(Scan(Decimal(18), Decimal(4), Decimal(3), Decimal("6.7056")))]
    [True, True, True, True]
    """
    if scan.wall == "masonry":
        return ()
    sun = 3 if scan.wall == "light frame" else 8
    return (
        Condition("a difference of 18 °F (10 K) or more (recalled)", scan.difference >= _TEN),
        _at_least("held for 4 hours before (recalled)", scan.hours_held, 4),
        _at_least(f"no direct sun for {sun} hours before", scan.hours_since_sun, sun),
        _at_most("wind of 15 mph or less", scan.wind, _WIND_ASTM),
    )


def en_13187_practice(scan: Scan) -> tuple[Condition, ...]:
    """Practice sheet for surveys to BS EN 13187:1999.

    >>> [one.met for one in en_13187_practice(Scan(Decimal(18), Decimal(24), Decimal(2), Decimal(5), Decimal(12)))]
    [True, True, True, True, True]
    """
    held = 24 if scan.heated else 72
    dry = 12 if scan.wall == "light frame" else 24
    return (
        Condition("a difference of 18 °F (10 K) or more", scan.difference >= _TEN),
        _at_least(f"held for {held} hours before", scan.hours_held, held),
        _at_least(f"surfaces dry for {dry} hours", scan.dry_hours, dry),
        _at_least("no sun on the surface for 2 hours before", scan.hours_since_sun, 2),
        _at_most("wind of 5 m/s (11 mph) or less", scan.wind, _WIND_EN),
    )


def iso_6781(scan: Scan) -> tuple[Condition, ...]:
    """ISO 6781 and EN 13187, recalled: difference over 24 hours of 3/U and at least 5 K, steady, no sun for 12 hours.

    >>> [one.met for one in iso_6781(Scan(Decimal(18), Decimal(24), u_value=Decimal("0.3")))][:3]
    [True, True, True]
    """
    by_u = None if scan.u_value is None else Fraction(scan.difference) * 5 * Fraction(scan.u_value) >= 27  # noqa: PLR2004 - 3/U in K is 27/(5 U) in °F
    return (
        Condition("never less than 9 °F (5 K) of difference", scan.difference >= _FIVE),
        Condition("a difference of at least 3/U in kelvin", by_u),
        _at_least("held for 24 hours before", scan.hours_held, 24),
        _at_most("outside within 18 °F (10 K) over 24 hours", scan.outside_change_day, _TEN),
        _at_most("outside within 9 °F (5 K) during the survey", scan.outside_change_during, _FIVE),
        _at_most("inside within 3.6 °F (2 K) during the survey", scan.inside_change_during, _TWO),
        _at_least("no sun on the surface for 12 hours before", scan.hours_since_sun, 12),
    )


#: Name for programs: name for people, and the conditions. The bands of the guide stand apart, see `band`.
RULES = {
    "ashrae_101": ("ASHRAE 101 (1981)", ashrae_101),
    "astm_c1060": ("ASTM C1060", astm_c1060),
    "en_13187_practice": ("Practice sheet to BS EN 13187", en_13187_practice),
    "iso_6781": ("ISO 6781 / EN 13187, recalled", iso_6781),
}
