"""What each law asks of the water pressure that was read, one row a question, undecided where a fact was not given.

The laws differ in what they ask to be reported, so their rows are kept apart and never merged into one limit. Pure:
pressures are exact decimals in psi.
"""

from __future__ import annotations

import typing
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.answer import Source
from witnessmark.gauges.water.sources import TEXAS_2009, TEXAS_2022, of_edition
from witnessmark.units import Quantity, say

__all__ = ["HIGH", "TEXAS_EDITIONS", "Asked80", "Facts", "Outcome", "irc", "texas", "upc"]

HIGH = Decimal(80)
_LOW = Decimal(40)
_RESIDUAL = Decimal(15)
#: The 2009 text also called a pressure below 40 psi deficient; the text in force since 2022 does not.
TEXAS_EDITIONS = (2009, 2022)
#: First IRC edition that names no least service pressure but asks for enough at the fixtures; the change may have come
#: in 2015, which is left undecided.
_NO_FORTY, _UNSURE = 2018, 2015

Outcome = Literal["within", "beyond", "undecided", "report"]


@dataclass(frozen=True, slots=True)
class Facts:
    """What stands at the service, and the pressure left with water running; each None when it was not given."""

    regulator: bool | None = None
    closing_device: bool | None = None
    expansion_tank: bool | None = None
    storage_heater: bool | None = None
    relief_valve_100: bool | None = None
    residual: Decimal | None = None

    @property
    def closed(self) -> bool | None:
        """Whether water that expands cannot go back into the main.

        >>> Facts(regulator=False).closed is None
        True
        """
        if self.regulator or self.closing_device:
            return True
        return False if self.regulator is False and self.closing_device is False else None


@dataclass(frozen=True, slots=True)
class Asked80:
    """One row: the question's *key*, the law's *section*, what it *asks*, the *outcome*, and words for the report."""

    key: str
    law: str
    section: str
    asks: str
    outcome: Outcome
    words: str
    source: Source


def _present(needed: bool | None, there: bool | None) -> Outcome:
    """The outcome of something that must be there when *needed*.

    Nothing is missing where it is there or not needed; everything else waits for the facts.
    """
    if there or needed is False:
        return "within"
    return "beyond" if needed and there is False else "undecided"


def _psi(pressure: Decimal) -> str:
    return say(Quantity(pressure, "[psi]"))


def _high(pressure: Decimal) -> Outcome:
    return "beyond" if pressure > HIGH else "within"


_REGULATOR_WORDS: dict[Outcome, str] = {
    "within": "no regulator is called for by this reading, or one is there",
    "beyond": "there is no pressure regulator",
    "undecided": "whether there is a pressure regulator was not given",
    "report": "",
}
_TANK_WORDS: dict[Outcome, str] = {
    "within": "none is called for, or one is there",
    "beyond": "there is no visible expansion tank although the system is closed",
    "undecided": "whether the system is closed, or whether a tank is there, was not given",
    "report": "",
}


def texas(pressure: Decimal, facts: Facts, edition: int) -> tuple[Asked80, ...]:
    """Rows of 22 TAC 535.231 in the text of *edition* (2009 or 2022).

    >>> [row.outcome for row in texas(Decimal(80), Facts(True, expansion_tank=False), 2022)]
    ['report', 'within', 'within', 'beyond']
    """
    source = TEXAS_2022 if edition != TEXAS_EDITIONS[0] else TEXAS_2009
    law = f"22 TAC 535.231 ({edition})"
    regulator = _present(pressure > HIGH, facts.regulator)
    tank = _present(facts.closed, facts.expansion_tank)
    rows = [
        Asked80("report", law, "(a)(1)(A)(iii)", "report the static pressure", "report", _psi(pressure), source),
        Asked80("pressure", law, "(a)(1)(B)(ii)", "deficient above 80 psi", _high(pressure), _psi(pressure), source),
        Asked80("regulator", law, "(a)(1)(B)(iii)", "deficient: no pressure reducing valve above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], source),
        Asked80("expansion", law, "(a)(1)(B)(iv)", "deficient: no visible expansion tank where a pressure reducing valve, "
                "check valve or backflow preventer is in place", tank, _TANK_WORDS[tank], source),
    ]  # fmt: skip
    if edition == TEXAS_EDITIONS[0]:
        low: Outcome = "beyond" if pressure < _LOW else "within"
        rows.append(Asked80("low", law, "recalled", "deficient below 40 psi", low, _psi(pressure), source))
    return tuple(rows)


def _left_running(pressure: Decimal, residual: Decimal | None, law: str, source: Source) -> Asked80:
    asks, outcome = "15 psi left at the fixtures with water running", "undecided"
    words = "a pressure at rest does not show it: run fixtures"
    if pressure < _RESIDUAL:
        outcome, words = "beyond", "below it already at rest"
    elif residual is not None:
        outcome, words = "beyond" if residual < _RESIDUAL else "within", f"{_psi(residual)} with water running"
    return Asked80("residual", law, "608.1", asks, typing.cast("Outcome", outcome), words, source)


def upc(pressure: Decimal, facts: Facts, edition: int) -> tuple[Asked80, ...]:
    """Rows of the Uniform Plumbing Code, 608.1 to 608.3.

    >>> {row.key: row.outcome for row in upc(Decimal(92), Facts(), 2018)}["regulator"]
    'undecided'
    """
    law = f"Uniform Plumbing Code ({edition})"
    seen, recalled = of_edition("UPC", edition, "608.2", 2015), of_edition("UPC", edition, "608.1, 608.3")
    regulator = _present(pressure > HIGH, facts.regulator)
    # An engineered relief valve may stand in for the tank: only both missing is missing.
    both_missing = facts.expansion_tank is False and facts.relief_valve_100 is False
    there = True if facts.expansion_tank or facts.relief_valve_100 else False if both_missing else None
    tank = _present(facts.closed, there)
    words = "no tank; whether a relief valve of 100 psi or less stands in was not given"
    tank_words = words if tank == "undecided" and facts.expansion_tank is False and facts.closed else _TANK_WORDS[tank]
    return (
        Asked80("pressure", law, "608.2", "at most 80 psi at rest", _high(pressure), _psi(pressure), seen),
        Asked80("regulator", law, "608.2", "a regulator with a strainer above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], seen),
        Asked80("expansion", law, "608.2, 608.3", "an expansion tank downstream of a regulator or closing device, or in an "
                "engineered system a relief valve of 100 psi or less", tank, tank_words, seen),
        _left_running(pressure, facts.residual, law, recalled),
    )  # fmt: skip


def _least_service(pressure: Decimal, edition: int, law: str) -> Asked80:
    outcome: Outcome = "beyond" if pressure < _LOW else "within"
    words, asks = _psi(pressure), "at least 40 psi at rest where the service enters"
    if edition >= _NO_FORTY:
        outcome, words = "within", "no least static pressure is named from 2018 on"
        asks = "enough at the fixtures with water running (Table P2903.1)"
    elif edition == _UNSURE and outcome == "beyond":
        outcome, words = "undecided", "whether this edition still names 40 psi is not sure here: check the text"
    return Asked80("low", law, "P2903.3", asks, outcome, words, of_edition("IRC", edition, "P2903.3"))


def irc(pressure: Decimal, facts: Facts, edition: int) -> tuple[Asked80, ...]:
    """Rows of the International Residential Code, P2903.3, P2903.3.1 and P2903.4.

    >>> {row.key: row.outcome for row in irc(Decimal(35), Facts(), 2012)}["low"]
    'beyond'
    """
    law = f"International Residential Code ({edition})"
    most = of_edition("IRC", edition, "P2903.3.1", 2021)
    expands = of_edition("IRC", edition, "P2903.4")
    regulator = _present(pressure > HIGH, facts.regulator)
    needed = True if facts.regulator else facts.closed
    if needed and not facts.regulator:  # a check valve alone matters only with stored hot water
        needed = facts.storage_heater
    tank = _present(needed, facts.expansion_tank)
    return (
        Asked80("pressure", law, "P2903.3.1", "at most 80 psi at rest", _high(pressure), _psi(pressure), most),
        Asked80("regulator", law, "P2903.3.1", "a pressure reducing valve above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], most),
        Asked80("expansion", law, "P2903.4", "a device that holds the rise from heating where a regulator, or a check valve or "
                "backflow preventer with a storage heater, closes the system", tank, _TANK_WORDS[tank], expands),
        _least_service(pressure, edition, law),
    )  # fmt: skip
