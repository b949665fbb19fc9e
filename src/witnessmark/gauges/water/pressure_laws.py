"""What each law asks of the water pressure that was read, one row a question, undecided where a fact was not given.

The laws differ in what they ask to be reported, so their rows are kept apart and never merged into one limit. Pure:
pressures are exact decimals in psi.
"""

from __future__ import annotations

from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from witnessmark.gauges.answer import Source
from witnessmark.gauges.water.sources import TEXAS_2009, TEXAS_2022, code

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
    """What stands at the service, each None when it was not given."""

    regulator: bool | None = None
    closing_device: bool | None = None
    expansion_tank: bool | None = None
    storage_heater: bool | None = None
    relief_valve_100: bool | None = None

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
        Asked80("report", law, "(a)(1)(A)(iii)", "report the static pressure", "report", f"{pressure:f} psi", source),
        Asked80("pressure", law, "(a)(1)(B)(ii)", "deficient above 80 psi", _high(pressure), f"{pressure:f} psi", source),
        Asked80("regulator", law, "(a)(1)(B)(iii)", "deficient: no pressure reducing valve above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], source),
        Asked80("expansion", law, "(a)(1)(B)(iv)", "deficient: no visible expansion tank where a pressure reducing valve, "
                "check valve or backflow preventer is in place", tank, _TANK_WORDS[tank], source),
    ]  # fmt: skip
    if edition == TEXAS_EDITIONS[0]:
        low: Outcome = "beyond" if pressure < _LOW else "within"
        rows.append(Asked80("low", law, "recalled", "deficient below 40 psi", low, f"{pressure:f} psi", source))
    return tuple(rows)


def upc(pressure: Decimal, facts: Facts, edition: int) -> tuple[Asked80, ...]:
    """Rows of the Uniform Plumbing Code, 608.1 to 608.3.

    >>> {row.key: row.outcome for row in upc(Decimal(92), Facts(), 2018)}["regulator"]
    'undecided'
    """
    law = f"Uniform Plumbing Code ({edition})"
    seen, recalled = code("UPC", edition, "608.2", "seen in a copy"), code("UPC", edition, "608.1, 608.3", "memory")
    regulator = _present(pressure > HIGH, facts.regulator)
    tank = _present(facts.closed, facts.expansion_tank or facts.relief_valve_100)
    # An engineered relief valve may stand in for the tank, so a missing tank alone does not decide.
    if tank == "beyond" and facts.relief_valve_100 is None:
        tank = "undecided"
    words = "no tank; whether a relief valve of 100 psi or less stands in was not given"
    tank_words = words if tank == "undecided" and facts.expansion_tank is False and facts.closed else _TANK_WORDS[tank]
    low: Outcome = "beyond" if pressure < _RESIDUAL else "undecided"
    low_words = "below it already at rest" if low == "beyond" else "a pressure at rest does not show it: run fixtures"
    return (
        Asked80("pressure", law, "608.2", "at most 80 psi at rest", _high(pressure), f"{pressure:f} psi", seen),
        Asked80("regulator", law, "608.2", "a regulator with a strainer above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], seen),
        Asked80("expansion", law, "608.2, 608.3", "an expansion tank downstream of a regulator or closing device, or in an "
                "engineered system a relief valve of 100 psi or less", tank, tank_words, seen),
        Asked80("residual", law, "608.1", "15 psi left at the fixtures with water running", low, low_words, recalled),
    )  # fmt: skip


def _least_service(pressure: Decimal, edition: int, law: str) -> Asked80:
    outcome: Outcome = "beyond" if pressure < _LOW else "within"
    words, asks = f"{pressure:f} psi", "at least 40 psi at rest where the service enters"
    if edition >= _NO_FORTY:
        outcome, words = "undecided", "a pressure at rest does not show it: see Table P2903.1 and run fixtures"
        asks = "enough at the fixtures (Table P2903.1); no least static pressure is named"
    elif edition == _UNSURE and outcome == "beyond":
        outcome, words = "undecided", "whether this edition still names 40 psi is not sure here: check the text"
    return Asked80("low", law, "P2903.3", asks, outcome, words, code("IRC", edition, "P2903.3", "seen in a copy"))


def irc(pressure: Decimal, facts: Facts, edition: int) -> tuple[Asked80, ...]:
    """Rows of the International Residential Code, P2903.3, P2903.3.1 and P2903.4.

    >>> {row.key: row.outcome for row in irc(Decimal(35), Facts(), 2012)}["low"]
    'beyond'
    """
    law = f"International Residential Code ({edition})"
    most = code("IRC", edition, "P2903.3.1", "seen in a copy")
    expands = code("IRC", edition, "P2903.4", "memory")
    regulator = _present(pressure > HIGH, facts.regulator)
    needed = True if facts.regulator else facts.closed
    if needed and not facts.regulator:  # a check valve alone matters only with stored hot water
        needed = facts.storage_heater
    tank = _present(needed, facts.expansion_tank)
    return (
        Asked80("pressure", law, "P2903.3.1", "at most 80 psi at rest", _high(pressure), f"{pressure:f} psi", most),
        Asked80("regulator", law, "P2903.3.1", "a pressure reducing valve above 80 psi", regulator,
                _REGULATOR_WORDS[regulator], most),
        Asked80("expansion", law, "P2903.4", "a device that holds the rise from heating where a regulator, or a check valve or "
                "backflow preventer with a storage heater, closes the system", tank, _TANK_WORDS[tank], expands),
        _least_service(pressure, edition, law),
    )  # fmt: skip
